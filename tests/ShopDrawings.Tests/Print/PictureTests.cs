using ShopDrawings.Drafting;
using ShopDrawings.Tests.Svg;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;

namespace ShopDrawings.Tests.Print;

/// <summary>
/// A drawing's PNG, its PDF and its SVG look alike, the last two as outside programs show them. Programs smooth edges each in its own way, so
/// that single pixels differ; compared are the means of small squares, in grey levels of 255.
/// </summary>
public class PictureTests
{
    // Ten pixels to the millimetre.
    private const int DotsPerInch = 254;

    // In squares of 0.4 mm a line that is missing makes 159 levels (0.25 mm wide), one displaced by 0.05 mm as many as this. Measured: up to 20.
    private const int SquareOfLines = 4, MostOfLines = 32;

    // Others put letters at quarters of a pixel and fit them to the grid. In squares of 0.8 mm the upright of a letter 2.5 mm high makes 95.
    // Measured: up to 26.
    private const int SquareOfTexts = 8, MostOfTexts = 40;

    public static TheoryData<string> Names => ["every entity", "panels/left-side", "panels/left-door"];

    [Theory]
    [MemberData(nameof(Names))]
    public void Lines_lie_where_the_svg_and_the_pdf_have_them(string name)
    {
        var drawing = PrintFiles.WithoutTexts(Named(name));

        using var picture = Image.Load<L8>(PrintFiles.Png(drawing, DotsPerInch));

        using var ofSvg = PrintFiles.PictureOfSvg(SvgSample.Bytes(drawing), DotsPerInch);
        using var ofPdf = PrintFiles.PictureOfPdf(PrintFiles.Pdf(drawing), DotsPerInch);
        Assert.InRange(Difference(picture, ofSvg, SquareOfLines), 0, MostOfLines);
        Assert.InRange(Difference(picture, ofPdf, SquareOfLines), 0, MostOfLines);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Letters_lie_where_the_pdf_has_them(string name)
    {
        var drawing = Named(name);

        using var picture = Image.Load<L8>(PrintFiles.Png(drawing, DotsPerInch));

        using var ofPdf = PrintFiles.PictureOfPdf(PrintFiles.Pdf(drawing), DotsPerInch);
        Assert.InRange(Difference(picture, ofPdf, SquareOfTexts), 0, MostOfTexts);
    }

    // The outside program heeds no length of text and lays letters by widths of its own, so that only their ink can be compared.
    [Theory]
    [MemberData(nameof(Names))]
    public void Letters_have_the_ink_of_the_svg(string name)
    {
        var drawing = Named(name);

        using var picture = Image.Load<L8>(PrintFiles.Png(drawing, DotsPerInch));

        using var ofSvg = PrintFiles.PictureOfSvg(SvgSample.Bytes(drawing), DotsPerInch);
        Assert.Equal(1, Ink(picture) / Ink(ofSvg), 0.02);
    }

    private static Drawing Named(string name)
    {
        if (name == "every entity") return SvgSample.Sheet();
        var design = Fixtures.Design("seedling-cabinet");
        return Shop.Draw(design, Shop.Check(design)).Drawings.Single(d => d.Path == name && d.Format == "svg").Drawing;
    }

    /// <summary>The largest difference of the means of squares, from the upper left corner.</summary>
    private static double Difference(Image<L8> a, Image<L8> b, int square)
    {
        Assert.InRange(Math.Abs(a.Width - b.Width), 0, 1);
        Assert.InRange(Math.Abs(a.Height - b.Height), 0, 1);
        var (columns, rows) = (Math.Min(a.Width, b.Width) / square, Math.Min(a.Height, b.Height) / square);
        var sums = new int[columns, rows];
        var (left, right) = (Pixels(a), Pixels(b));
        for (var y = 0; y < rows * square; y++)
            for (var x = 0; x < columns * square; x++)
                sums[x / square, y / square] += left[y * a.Width + x].PackedValue - right[y * b.Width + x].PackedValue;
        return sums.Cast<int>().Max(Math.Abs) / (double)(square * square);
    }

    private static double Ink(Image<L8> image) => Pixels(image).Sum(p => 255.0 - p.PackedValue);

    private static L8[] Pixels(Image<L8> image)
    {
        var pixels = new L8[image.Width * image.Height];
        image.CopyPixelDataTo(pixels);
        return pixels;
    }
}
