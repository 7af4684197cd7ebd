using System.Text;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;
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

    public static TheoryData<string> Names => ["every entity", "panels/left-side"];

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
    public void Letters_lie_where_the_pdf_has_them_and_are_those_of_the_svg(string name)
    {
        var drawing = Named(name);

        using var picture = Image.Load<L8>(PrintFiles.Png(drawing, DotsPerInch));

        using var ofPdf = PrintFiles.PictureOfPdf(PrintFiles.Pdf(drawing), DotsPerInch);
        Assert.InRange(Difference(picture, ofPdf, SquareOfTexts), 0, MostOfTexts);
        // This one heeds no length of text and lays letters by widths of its own, so that only their ink can be compared.
        using var ofSvg = PrintFiles.PictureOfSvg(SvgSample.Bytes(drawing), DotsPerInch);
        Assert.Equal(1, Ink(picture) / Ink(ofSvg), 0.02);
    }

    // The picture's letters come from the whole font, those of the PDF from the subset that is embedded in it.
    [Fact]
    public void Every_character_of_the_font_is_itself_in_the_pdf()
    {
        const int inLine = 100;
        var characters = Enumerable.Range(0x21, 0x1FFFF - 0x21).Where(c => Rune.IsValid(c) && !Rune.IsControl(new Rune(c)) && FontMetrics.Default.Glyph(c) > 0).Select(c => new Rune(c).ToString()).ToList();
        Assert.True(characters.Count > 5500, "The font has fewer characters than it had.");
        var lines = characters.Chunk(inLine).Select((line, i) => new TextEntity(PrintFiles.Notes, new(5, 8 + 8 * i), 3.5, string.Concat(line))).ToList();
        var drawing = new Drawing("Characters", "", new Point2(lines.Max(l => l.Bounds.Max.X) + 5, 8 * lines.Count + 8), lines);

        using var picture = Image.Load<L8>(PrintFiles.Png(drawing, DotsPerInch / 2.0));

        using var ofPdf = PrintFiles.PictureOfPdf(PrintFiles.Pdf(drawing), DotsPerInch / 2);
        Assert.InRange(Difference(picture, ofPdf, SquareOfTexts), 0, MostOfTexts);
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
