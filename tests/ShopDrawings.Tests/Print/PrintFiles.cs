using System.Globalization;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;
using ShopDrawings.Print;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;

namespace ShopDrawings.Tests.Print;

/// <summary>What the tests of the printed formats share: layers, ways to write and to look at a file.</summary>
internal static class PrintFiles
{
    public static readonly Layer Outline = new("OUTLINE", Role.Outline, "Outer edge");
    public static readonly Layer Notes = new("NOTES", Role.Lettering, "Notes");

    public static byte[] Pdf(params Drawing[] sheets) => Written(stream =>
    {
        if (sheets is [var only]) new PdfExporter().Write(only, stream);
        else new PdfExporter().Write(sheets, stream, "All sheets");
    });

    public static byte[] Png(Drawing drawing, double dotsPerInch = 150) => Written(stream => new PngExporter { DotsPerInch = dotsPerInch }.Write(drawing, stream));

    /// <summary>Both printed formats of one drawing.</summary>
    public static byte[][] Both(Drawing drawing) => [Pdf(drawing), Png(drawing, 30)];

    public static byte[] Written(Action<Stream> write)
    {
        using var stream = new MemoryStream();
        write(stream);
        return stream.ToArray();
    }

    /// <summary>An A4 sheet that holds what is given.</summary>
    public static Drawing Sheet(params Entity[] entities) => new("Sheet", "A sheet.", new Point2(210, 297), entities);

    /// <summary>A drawing's entities without its texts, dimensions taken apart.</summary>
    public static Drawing WithoutTexts(Drawing drawing) => new(drawing.Title, drawing.Description, drawing.Page,
        drawing.Entities.SelectMany(e => e is Dimension dimension ? DimensionGraphics.Of(dimension) : [e]).Where(e => e is not TextEntity));

    /// <summary>What a program says of a file; fails where it ends with anything but 0.</summary>
    /// <param name="program">The program.</param>
    /// <param name="file">The file's bytes.</param>
    /// <param name="arguments">What it is called with, <c>{file}</c> for the file.</param>
    public static string Ask(string program, byte[] file, params string[] arguments)
    {
        using var folder = new TemporaryFolder();
        File.WriteAllBytes(folder["file"], file);
        var result = OutsideProgram.Run(program, [.. arguments.Select(a => a.Replace("{file}", folder["file"], StringComparison.Ordinal))]);
        Assert.True(result.ExitCode == 0, $"{program} ended with {result.ExitCode}: {result.Output}{result.Errors}");
        return result.Output;
    }

    /// <summary>Fails unless an outside reader finds nothing to remark on in a PDF.</summary>
    public static void Check(byte[] pdf) => Assert.DoesNotContain("WARNING", Ask("qpdf", pdf, "--check", "{file}"), StringComparison.Ordinal);

    /// <summary>The picture an outside program makes of a file.</summary>
    /// <param name="program">The program.</param>
    /// <param name="file">The file's bytes.</param>
    /// <param name="arguments">What it is called with, <c>{file}</c> for the file, <c>{picture}</c> for the picture without its extension.</param>
    public static Image<L8> Picture(string program, byte[] file, params string[] arguments)
    {
        using var folder = new TemporaryFolder();
        File.WriteAllBytes(folder["file"], file);
        var result = OutsideProgram.Run(program, [.. arguments.Select(a => a.Replace("{file}", folder["file"], StringComparison.Ordinal).Replace("{picture}", folder["picture"], StringComparison.Ordinal))]);
        Assert.True(result.ExitCode == 0, $"{program} ended with {result.ExitCode}: {result.Output}{result.Errors}");
        return Image.Load<L8>(folder["picture.png"]);
    }

    /// <summary>A PDF's first page as another program draws it.</summary>
    public static Image<L8> PictureOfPdf(byte[] pdf, int dotsPerInch) =>
        Picture("pdftocairo", pdf, "-png", "-singlefile", "-r", dotsPerInch.ToString(CultureInfo.InvariantCulture), "{file}", "{picture}");

    /// <summary>An SVG as another program draws it.</summary>
    public static Image<L8> PictureOfSvg(byte[] svg, int dotsPerInch)
    {
        var resolution = dotsPerInch.ToString(CultureInfo.InvariantCulture);
        return Picture("rsvg-convert", svg, "-d", resolution, "-p", resolution, "-b", "white", "-o", "{picture}.png", "{file}");
    }
}
