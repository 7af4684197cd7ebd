using System.Globalization;
using CsCheck;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;
using ShopDrawings.Print;
using ShopDrawings.Tests.Dxf;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.Formats.Png;
using SixLabors.ImageSharp.PixelFormats;

namespace ShopDrawings.Tests.Print;

public class PngExporterTests
{
    [Theory]
    [InlineData(210, 297, 150, 1240, 1754)]
    [InlineData(420, 297, 150, 2481, 1754)] // 5906 pixels to the metre
    [InlineData(215.9, 279.4, 300, 2550, 3300)]
    [InlineData(100, 60, 72, 284, 170)]
    public void Picture_has_its_physical_size(double width, double height, double dotsPerInch, int across, int down)
    {
        var png = PrintFiles.Png(new Drawing("Frame", "", new Point2(width, height), [new ContourEntity(PrintFiles.Outline, Contour.Rectangle(10, 10, width - 10, height - 10))]), dotsPerInch);

        using var image = Image.Load<L8>(png);
        Assert.Equal((across, down), (image.Width, image.Height));
        using var folder = new TemporaryFolder();
        File.WriteAllBytes(folder["frame.png"], png);
        string N(double value) => value.ToString(CultureInfo.InvariantCulture);
        var result = OutsideProgram.RunOracle("png_check.py", "json", folder["frame.png"], "--size", $"{N(width)}x{N(height)}", "--dpi", N(dotsPerInch), "--ink", "0.2,10");
        Assert.True(result.ExitCode == 0, result.Output + result.Errors);
    }

    [Fact]
    public void Resolution_is_150_dots_per_inch_unless_asked_for() => Assert.Equal(150, new PngExporter().DotsPerInch);

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(2401)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Resolution_out_of_range_is_refused(double dotsPerInch) => Assert.Throws<ArgumentOutOfRangeException>(() => new PngExporter { DotsPerInch = dotsPerInch });

    [Fact]
    public void Picture_too_large_to_hold_is_refused()
    {
        Assert.Throws<ArgumentException>(() => PrintFiles.Png(new Drawing("Long", "", new Point2(6000, 1), [])));
        Assert.Throws<ArgumentException>(() => PrintFiles.Png(new Drawing("Large", "", new Point2(2000, 2100), []), 300));
    }

    [Fact]
    public void Smallest_picture_is_one_pixel()
    {
        using var image = Image.Load<L8>(PrintFiles.Png(new Drawing("Speck", "", new Point2(0.01, 0.01), [])));

        Assert.Equal((1, 1), (image.Width, image.Height));
    }

    [Fact]
    public void Line_covers_the_pixels_it_crosses()
    {
        // At 254 dots per inch a pixel is 0.1 mm: a line 0.5 mm wide fills five rows, from the top of the paper down.
        var drawing = new Drawing("Line", "", new Point2(10, 10), [new SegmentEntity(PrintFiles.Outline, new(new(-1, 7.05), new(11, 7.05)))]);

        using var image = Image.Load<L8>(PrintFiles.Png(drawing, 254));

        Assert.Equal((100, 100), (image.Width, image.Height));
        for (var y = 0; y < 100; y++) Assert.Equal(y is >= 27 and < 32 ? 0 : 255, image[50, y].PackedValue);
    }

    [Fact]
    public void Colours_come_out_where_the_style_has_them()
    {
        var layer = new Layer("WARNING", Role.Warning, "Findings");
        var drawing = new Drawing("Red", "", new Point2(10, 10), [new HatchEntity(layer, Contour.Rectangle(2, 2, 8, 8), [Contour.Rectangle(4, 4, 6, 6)], null)]);

        using var image = Image.Load<Rgb24>(PrintFiles.Png(drawing, 254));

        Assert.Equal((new Rgb24(0xc0, 0, 0), new Rgb24(255, 255, 255), new Rgb24(255, 255, 255)), (image[30, 30], image[50, 50], image[5, 5]));
        Assert.Equal(PngColorType.Rgb, image.Metadata.GetPngMetadata().ColorType);
    }

    [Fact]
    public void Title_and_description_are_in_the_file()
    {
        const string title = "Left <side> é 合板 \U0001FA9A";

        using var image = Image.Load(PrintFiles.Png(new Drawing(title, "A sentence\nor two.", new Point2(10, 10), [])));

        var texts = image.Metadata.GetPngMetadata().TextData;
        Assert.Equal([("Title", title), ("Description", "A sentence or two.")], texts.Select(t => (t.Keyword, t.Value)));
    }

    [Fact]
    public void Random_drawings_give_pictures() => RandomDrawings.Drawing.Sample(drawing =>
        Assert.NotEmpty(PrintFiles.Png(new Drawing("Random", "", new Point2(420, 297), drawing.Entities), 40)), iter: Fuzz.Iterations(40));

    [Fact]
    public void Any_string_gives_a_picture() => Gen.String[Gen.Char, 0, 40].Sample(text =>
        Assert.NotEmpty(PrintFiles.Png(new Drawing(text, text, new Point2(50, 20), [new TextEntity(PrintFiles.Notes, new(5, 5), 3.5, text)]), 40)), iter: Fuzz.Iterations(100));
}
