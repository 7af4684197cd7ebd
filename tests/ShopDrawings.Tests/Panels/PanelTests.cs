using ShopDrawings.Kernel;
using UnitsNet;

namespace ShopDrawings.Tests.Panels;

public class PanelTests
{
    private static readonly Board Eighteen = Board.Create("eighteen", BoardKind.Melamine, Length.FromMillimeters(18));

    private static Size Mm(double value) => Size.Given(value, "size", default);

    private static Panel Loose(double length, double width) => Panel.Rectangular("p", Eighteen, Mm(length), Mm(width));

    private static Panel Placed(Direction outside, Direction along) =>
        Panel.Rectangular("p", Eighteen, Mm(600), Mm(300), Placement.Facing(Size.Zero, Size.Zero, Size.Zero, outside, along));

    // Someone stands before the cabinet; names of the edges at x = 0, x = length, y = 0, y = width.
    [Theory]
    [InlineData("left side", Direction.Left, Direction.Top, "bottom", "top", "back", "front")]
    [InlineData("right side", Direction.Right, Direction.Top, "bottom", "top", "front", "back")]
    [InlineData("bottom", Direction.Bottom, Direction.Right, "left", "right", "front", "back")]
    [InlineData("top", Direction.Top, Direction.Right, "left", "right", "back", "front")]
    [InlineData("back", Direction.Back, Direction.Top, "bottom", "top", "right", "left")]
    [InlineData("door", Direction.Front, Direction.Top, "bottom", "top", "left", "right")]
    public void Edges_are_called_by_where_they_sit(string what, Direction outside, Direction along, string start, string end, string near, string far)
    {
        var panel = Placed(outside, along);

        Assert.Equal((what, start, end, near, far), (what, panel.NameOf(Surface.Start), panel.NameOf(Surface.End), panel.NameOf(Surface.Near), panel.NameOf(Surface.Far)));
        Assert.Equal(("inside", "outside"), (panel.NameOf(Surface.Inside), panel.NameOf(Surface.Outside)));
        Assert.Equal(outside, panel.Facing(Surface.Outside));
        Assert.Equal(outside.Opposite(), panel.Facing(Surface.Inside));
        Assert.All(Surfaces.Edges, edge => Assert.Equal(edge, panel.EdgeFacing(panel.Facing(edge))));
        Assert.Null(panel.EdgeFacing(outside));
        Assert.Null(panel.EdgeFacing(outside.Opposite()));
    }

    [Fact]
    public void Edges_of_a_loose_panel_are_called_as_it_lies_in_its_drawing()
    {
        var panel = Loose(600, 300);

        Assert.Equal(["left", "right", "front", "back"], Surfaces.Edges.Select(panel.NameOf));
        Assert.Equal(Direction.Top, panel.Facing(Surface.Inside));
        Assert.Equal(Direction.Bottom, panel.Facing(Surface.Outside));
    }

    [Fact]
    public void Facing_is_where_the_surface_lies_in_the_assembly()
    {
        foreach (var outside in Enum.GetValues<Direction>())
            foreach (var along in Enum.GetValues<Direction>().Where(d => d.Axis() != outside.Axis()))
            {
                var panel = Placed(outside, along);
                var block = panel.Placement!.ToAssembly(panel.Box);
                foreach (var surface in Enum.GetValues<Surface>())
                {
                    var direction = panel.Facing(surface);
                    var at = panel.Placement.ToAssembly(panel.OnSurface(surface, new Point2(5, 6)));
                    double[] coordinate = [at.X, at.Y, at.Z], low = [block.Min.X, block.Min.Y, block.Min.Z], high = [block.Max.X, block.Max.Y, block.Max.Z];

                    Assert.Equal((direction.IsPositive() ? high : low)[direction.Axis()], coordinate[direction.Axis()]);
                    Assert.Equal((high[direction.Axis()] - low[direction.Axis()]), panel.Behind(surface).Value);
                }
            }
    }

    [Theory]
    [InlineData(600, 2, 2, 596)]
    [InlineData(400, 1, 0, 399)]
    [InlineData(400, 0, 1, 399)]
    [InlineData(400, 0, 0, 400)]
    public void Cut_size_is_the_finished_size_less_the_bands(double finished, double first, double second, double cut)
    {
        IEnumerable<EdgeBand> Bands(Surface a, Surface b) => new[] { new EdgeBand(a, Mm(first)), new EdgeBand(b, Mm(second)) }.Where(band => band.Thickness.Value > 0);
        var across = Loose(finished, 300).WithBands(Bands(Surface.Start, Surface.End));
        var along = Loose(700, finished).WithBands(Bands(Surface.Near, Surface.Far));

        Assert.Equal((cut, 300.0), (across.CutLength.Value, across.CutWidth.Value));
        Assert.Equal((700.0, cut), (along.CutLength.Value, along.CutWidth.Value));
        Assert.Equal(new Box2(new(first, 0), new(finished - second, 300)), across.CutOutline.Bounds);
        Assert.Equal(new Box2(new(0, first), new(700, finished - second)), along.CutOutline.Bounds);
        Assert.Equal(finished, across.Length.Value);
        Assert.True(across.IsRectangular);
        Assert.All([across.CutLength, across.CutWidth], size => Assert.Equal(size.Value, size.Recomputed()));
        Assert.Equal(("cut-length", "cut-width"), (across.CutLength.Rule, across.CutWidth.Rule));
    }

    [Fact]
    public void Outline_without_bands_is_cut_as_it_is_finished()
    {
        var outline = Contour.RoundedRectangle(0, 0, 600, 300, 20);

        var panel = Loose(600, 300).WithOutline(outline);

        Assert.Same(outline, panel.CutOutline);
        Assert.False(panel.IsRectangular);
        Assert.Equal((600.0, 300.0), (panel.CutLength.Value, panel.CutWidth.Value));
        Assert.Equal((180000 - 1600 + 400 * Math.PI) * 18 * 650e-9, panel.MassKg, 1e-9);
    }

    [Fact]
    public void Outline_that_does_not_fill_length_and_width_is_refused()
    {
        Assert.Throws<ArgumentException>(() => Loose(600, 300).WithOutline(Contour.Rectangle(0, 0, 600, 299.99)));
        Assert.Throws<ArgumentException>(() => Loose(600, 300).WithOutline(Contour.Rectangle(0, 0, 600.01, 300)));
        Assert.Throws<ArgumentException>(() => Loose(600, 300).WithOutline(Contour.Rectangle(1, 0, 601, 300)));
        Assert.Throws<ArgumentException>(() => Loose(600, 300).WithOutline(Contour.Rectangle(-600, -300, 0, 0)));
    }

    [Fact]
    public void Bands_no_panel_can_have_are_refused()
    {
        Assert.Throws<ArgumentException>(() => Loose(600, 300).WithBands([new(Surface.Inside, Mm(1))]));
        Assert.Throws<ArgumentException>(() => Loose(600, 300).WithBands([new(Surface.Near, Mm(1)), new(Surface.Near, Mm(2))]));
        Assert.Throws<ArgumentException>(() => Loose(600, 300).WithOutline(Contour.RoundedRectangle(0, 0, 600, 300, 20)).WithBands([new(Surface.Near, Mm(1))]));
        Assert.Throws<ArgumentException>(() => Loose(600, 300).WithBands([new(Surface.Near, Mm(150)), new(Surface.Far, Mm(150))]));
        Assert.Throws<ArgumentException>(() => Loose(600, 300).WithBands([new(Surface.Start, Mm(601))]));
    }

    [Fact]
    public void Banded_panel_that_gets_another_outline_is_refused() =>
        Assert.Throws<ArgumentException>(() => Loose(600, 300).WithBands([new(Surface.Near, Mm(1))]).WithOutline(Contour.RoundedRectangle(0, 0, 600, 300, 20)));

    [Theory]
    [InlineData(0, 300)]
    [InlineData(600, -1)]
    [InlineData(double.NaN, 300)]
    public void Panel_without_a_size_is_refused(double length, double width) =>
        Assert.Throws<ArgumentException>(() => Loose(length, width));

    [Fact]
    public void More_features_stand_behind_the_ones_there_are()
    {
        var (first, second) = (Through(Surface.Inside, 5), Through(Surface.Outside, 6));

        var panel = Loose(600, 300).WithFeatures([first]).WithFeatures([second]);

        Assert.Equal([first, second], panel.Features);
        Assert.Contains(second.Diameter, panel.Sizes);
        Assert.Empty(Loose(600, 300).Features);
    }

    private static Bore Through(Surface face, double diameter) => Bore.Through("p", face, new(Mm(10), Mm(20)), Mm(diameter));

    [Fact]
    public void Bore_no_drill_can_make_is_refused()
    {
        var at = new Position(Mm(10), Mm(20));

        Assert.All(Surfaces.Edges, edge => Assert.Throws<ArgumentException>(() => Through(edge, 5)));
        Assert.Throws<ArgumentException>(() => Through(Surface.Inside, 0));
        Assert.Throws<ArgumentException>(() => Bore.Blind("p", Surface.Near, at, Mm(-1), Mm(10)));
        Assert.Throws<ArgumentException>(() => Bore.Blind("p", Surface.Near, at, Mm(5), Mm(0)));
        Assert.Throws<ArgumentException>(() => Bore.Blind("p", Surface.Near, at, Mm(5), Mm(double.NaN)));
        Assert.Null(Through(Surface.Inside, 5).Depth);
        Assert.Equal(4, Bore.Blind("p", Surface.Near, at, Mm(5), Mm(10)).Sizes.Length);
    }

    [Fact]
    public void Groove_no_cutter_can_make_is_refused()
    {
        var (from, to) = (new Position(Mm(0), Mm(20)), new Position(Mm(100), Mm(20)));

        Assert.All(Surfaces.Edges, edge => Assert.Throws<ArgumentException>(() => Groove.Along("p", edge, from, to, Mm(4), Mm(8))));
        Assert.Throws<ArgumentException>(() => Groove.Along("p", Surface.Inside, from, new(Mm(0), Mm(20)), Mm(4), Mm(8)));
        Assert.Throws<ArgumentException>(() => Groove.Along("p", Surface.Inside, from, to, Mm(0), Mm(8)));
        Assert.Throws<ArgumentException>(() => Groove.Along("p", Surface.Inside, from, to, Mm(4), Mm(-8)));
        Assert.Equal(new Box2(new(0, 18), new(100, 22)), Groove.Along("p", Surface.Inside, from, to, Mm(4), Mm(8)).Outline.Bounds);
    }

    [Theory]
    [InlineData(BoardKind.Particleboard, 650, false)]
    [InlineData(BoardKind.Melamine, 650, false)]
    [InlineData(BoardKind.Mdf, 750, false)]
    [InlineData(BoardKind.Plywood, 680, true)]
    [InlineData(BoardKind.Hardboard, 900, false)]
    public void Board_has_the_density_and_grain_of_its_kind(BoardKind kind, double density, bool hasGrain)
    {
        var board = Board.Create("b", kind, Length.FromInches(0.75));
        var other = Board.Create("b", kind, Length.FromInches(0.75), "3/4 in", !hasGrain, Density.FromKilogramsPerCubicMeter(555));

        Assert.Equal((density, hasGrain, ""), (board.DensityKgPerM3, board.HasGrain, board.Label));
        Assert.Equal((555.0, !hasGrain, "3/4 in"), (other.DensityKgPerM3, other.HasGrain, other.Label));
        Assert.Equal(19.05, board.Thickness.Value, 1e-9);
    }

    [Fact]
    public void Board_without_substance_is_refused()
    {
        Assert.Throws<ArgumentException>(() => Board.Create("b", BoardKind.Mdf, Length.Zero));
        Assert.Throws<ArgumentException>(() => Board.Create("b", BoardKind.Mdf, Length.FromMillimeters(18), density: Density.Zero));
    }
}
