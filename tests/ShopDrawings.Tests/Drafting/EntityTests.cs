using CsCheck;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;
using ShopDrawings.Tests.Dxf;
using Xunit;

namespace ShopDrawings.Tests.Drafting;

public class EntityTests
{
    [Fact]
    public void Ellipse_lies_in_its_box_and_touches_it() => RandomDrawings.Ellipse.Sample(e =>
    {
        var box = Box2.Around(Enumerable.Range(0, 4001).Select(i => e.At(e.StartDegrees + (e.EndDegrees - e.StartDegrees) * i / 4000)));

        Assert.InRange(e.Bounds.Max.DistanceTo(box.Max), 0, 1e-2);
        Assert.InRange(e.Bounds.Min.DistanceTo(box.Min), 0, 1e-2);
    }, iter: 500);

    [Fact]
    public void Arcs_of_an_ellipse_join_and_stay_within_the_tolerance() => Gen.Select(RandomDrawings.Ellipse, Gen.Double[0.0005, 1]).Sample((e, tolerance) =>
    {
        var arcs = e.Arcs(tolerance).ToList();

        Assert.All(arcs.Zip(arcs.Skip(1)), pair => Assert.Equal(pair.First.End, pair.Second.Start));
        Assert.True(arcs[0].Start.DistanceTo(e.At(e.StartDegrees)) < 1e-9 && arcs[^1].End.DistanceTo(e.At(e.EndDegrees)) < 1e-9);
        for (var i = 0; i <= 500; i++)
        {
            var p = e.At(e.StartDegrees + (e.EndDegrees - e.StartDegrees) * i / 500);
            Assert.InRange(arcs.Min(a => a.DistanceTo(p)), 0, tolerance);
        }
    }, iter: 60);

    [Fact]
    public void Hatch_lines_cover_the_area_and_end_on_its_edges() => RandomDrawings.Hatch.Sample(hatch =>
    {
        var fine = hatch.Pattern! with { Spacing = hatch.Outline.Bounds.Width / 400 };
        var lines = hatch.Lines(fine).ToList();

        var area = hatch.Outline.Area - hatch.Islands.Sum(i => i.Area);
        Assert.InRange(lines.Sum(l => l.Start.DistanceTo(l.End)) * fine.Spacing / area, 0.99, 1.01);
        foreach (var line in lines.Take(200))
        {
            Assert.All(new[] { line.Start, line.End }, p => Assert.InRange(hatch.Islands.Prepend(hatch.Outline).Min(c => c.DistanceTo(p)), 0, 1e-5));
            Assert.True(hatch.Outline.Contains(line.Middle) && !hatch.Islands.Any(i => i.DistanceTo(line.Middle) > 1e-5 && i.Contains(line.Middle)));
        }
    }, iter: 100);

    [Theory]
    [InlineData(10, 0, 0, 10, 90)]
    [InlineData(0, 10, 10, 0, 270)]
    [InlineData(10, 0, -10, 0, 180)]
    public void Angle_is_measured_anticlockwise(double x1, double y1, double x2, double y2, double expected) =>
        Assert.Equal(expected, new AngularDimension(DxfFiles.Dimensions, default, new(x1, y1), new(x2, y2), 5, "", 3.5).Measured, 1e-9);

    [Fact]
    public void Dimension_text_is_read_from_below_or_from_the_right() => RandomDrawings.Dimension.Sample(dimension =>
    {
        var text = DimensionGraphics.Of(dimension).OfType<TextEntity>().Single();

        Assert.Equal(dimension.Text, text.Text);
        Assert.InRange(text.AngleDegrees, -90 + 1e-9, 90);
    });

    [Fact]
    public void Insert_is_the_block_turned_scaled_and_moved()
    {
        var parts = new InsertEntity(DxfFiles.Notes, DxfFiles.Cup, new(100, 200), 90, 2).Parts.ToList();

        var bore = Assert.IsType<CircleEntity>(parts[1]);
        Assert.InRange(bore.Centre.DistanceTo(new(100 - 11, 200 - 45)), 0, 1e-9);
        Assert.Equal((2.5, DxfFiles.Bores), (bore.Radius, bore.Layer));
        var text = Assert.IsType<TextEntity>(parts[4]);
        Assert.Equal((6, 90), (text.Height, text.AngleDegrees));
    }

    [Fact]
    public void Block_that_no_file_could_hold_is_refused()
    {
        Assert.Throws<ArgumentException>(() => new Block("a b", [new PointEntity(DxfFiles.Notes, default)]));
        Assert.Throws<ArgumentException>(() => new Block("EMPTY", []));
        Assert.Throws<ArgumentException>(() => new Block("NESTED", [new InsertEntity(DxfFiles.Notes, DxfFiles.Cup, default)]));
        var twice = new[] { DxfFiles.Cup, new Block("CUP", DxfFiles.Cup.Entities) };
        Assert.Throws<ArgumentException>(() => new Drawing("Any", "", null, twice.Select(b => new InsertEntity(DxfFiles.Notes, b, default))));
    }

    [Fact]
    public void Layers_that_only_blocks_use_are_listed() =>
        Assert.Equal([DxfFiles.Notes, DxfFiles.Bores, DxfFiles.Centres], new Drawing("Any", "", null, [new InsertEntity(DxfFiles.Notes, DxfFiles.Cup, default)]).Layers);
}
