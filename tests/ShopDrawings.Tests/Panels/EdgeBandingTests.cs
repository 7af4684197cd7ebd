using System.Globalization;
using CsCheck;
using ShopDrawings.Kernel;
using Size = ShopDrawings.Kernel.Size;

namespace ShopDrawings.Tests.Panels;

public class EdgeBandingTests
{
    private const string Project = """
        project: Bands
        boards:
          thin: {kind: mdf, thickness: 16}
          thick: {kind: mdf, thickness: 25}
          thickest: {kind: mdf, thickness: 80}
        panels:
          shelf: {board: thin, length: 600, width: 400, bands: {left: 2, right: 2, front: 2, back: 2}}
          top: {board: thick, length: 700, width: 300, bands: {front: 2}}
          block: {board: thickest, length: 500, width: 200, bands: {left: 0.4, front: 2}}
        """;

    // Worked by hand: 16 + 4 takes 22, 25 + 4 takes 44 since 28 stands over by 1.5 only, 80 + 4 takes 84, 110 + 4 is more
    // than any.
    [Theory]
    [InlineData(16, 22)]
    [InlineData(18, 22)]
    [InlineData(18.1, 28)]
    [InlineData(24, 28)]
    [InlineData(25, 44)]
    [InlineData(80, 84)]
    [InlineData(110, 114)]
    public void Tape_stands_over_both_faces(double thickness, double width) => Assert.Equal(width, EdgeBanding.TapeWidth(thickness));

    [Fact]
    public void Tape_always_covers_its_edge() => Gen.Double[0.5, 120].Sample(thickness =>
        Assert.True(EdgeBanding.OverhangEach(EdgeBanding.TapeWidth(thickness), thickness) >= 2 - 1e-6));

    // (600 + 400 + 600 + 400 + 4 × 25) × 1.1 of the first tape, (700 + 25) × 1.1 of the second.
    [Fact]
    public void List_says_what_to_buy_of_each_tape() => Assert.Equal(
        """
        thickness_mm,tape_width_mm,panel,edge,length_mm,to_buy_mm
        2,22,shelf,left,400,
        2,22,shelf,right,400,
        2,22,shelf,front,600,
        2,22,shelf,back,600,
        2,22,all,,2000,2310
        2,44,top,front,700,
        2,44,all,,700,798
        0.4,84,block,left,200,
        0.4,84,all,,200,248
        2,84,block,front,500,
        2,84,all,,500,578

        """.ReplaceLineEndings("\n"), Bands(Project));

    [Fact]
    public void Project_says_how_much_more_to_buy()
    {
        var bought = Bands(Project + "\nbanding: {allowance: 3 cm, waste: 0}\n").Split('\n');

        Assert.Contains("2,22,all,,2000,2120", bought);
        Assert.Contains("2,44,all,,700,730", bought);
    }

    // 600 − 2 − 2 + 0.5 + 0.5; holes stay where they are, in the frame of the finished panel.
    [Theory]
    [InlineData(0, 596, 396)]
    [InlineData(0.5, 597, 397)]
    [InlineData(3, 602, 402)]
    public void Panels_are_sawn_larger_by_what_is_milled_off(double mill, double length, double width)
    {
        var assembly = Fixtures.DesignOf(Project + string.Create(CultureInfo.InvariantCulture, $"\nbanding: {{pre-mill: {mill}}}\n")).Assembly;
        var shelf = assembly.Panel("shelf");

        Assert.Equal((length, width), (shelf.CutLength.Value, shelf.CutWidth.Value));
        Assert.Equal(new Box2(new(2 - mill, 2 - mill), new(598 + mill, 398 + mill)), shelf.CutOutline.Bounds);
        Assert.Equal((600.0, 400.0), (shelf.Length.Value, shelf.Width.Value));
        Assert.All(shelf.Sizes, s => Assert.Equal(s.Value, s.Recomputed()));
        Assert.Equal(300 - 2 + mill, assembly.Panel("top").CutWidth.Value);
        Assert.Equal(700, assembly.Panel("top").CutLength.Value);
    }

    [Fact]
    public void Cabinet_is_milled_too()
    {
        var side = Fixtures.DesignOf("""
            project: Cabinet
            boards: {main: {kind: melamine, thickness: 16}}
            cabinet: {width: 600, height: 720, depth: 300, board: main, bands: {front: 1}}
            banding: {pre-mill: 0.5}
            """).Assembly.Panel("left-side");

        Assert.Equal((720, 299.5), (side.CutLength.Value, side.CutWidth.Value));
    }

    [Fact]
    public void Bands_with_nothing_between_them_are_refused_whatever_is_milled() => Assert.Throws<ArgumentException>(() =>
        Panel.Rectangular("panel", Board.Create("board", BoardKind.Mdf, UnitsNet.Length.FromMillimeters(16)), Size.Constant(600), Size.Constant(4))
            .WithBands([new(Surface.Near, Size.Constant(2)) { PreMilled = Size.Constant(1) }, new(Surface.Far, Size.Constant(2)) { PreMilled = Size.Constant(1) }]));

    private static string Bands(string text)
    {
        var design = Fixtures.DesignOf(text);
        using var written = new MemoryStream();
        new CsvExporter().Export(Shop.Draw(design, Shop.Check(design))).Single(o => o.Path == "lists/bands.csv").Write(written);
        return System.Text.Encoding.UTF8.GetString(written.ToArray());
    }
}
