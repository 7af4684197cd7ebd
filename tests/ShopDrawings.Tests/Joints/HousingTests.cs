using System.Globalization;
using ShopDrawings.Kernel;

namespace ShopDrawings.Tests.Joints;

/// <summary>Grooves and rabbets that panels sit in, 6 mm deep, worked out by hand. 600 wide, 700 high, 200 deep: two fasteners, at 50 and 150.</summary>
public class HousingTests
{
    private static string N(double value) => (Math.Round(value, 4) + 0.0).ToString("0.####", CultureInfo.InvariantCulture);

    private static Assembly Cabinet(double t, string more) => Fixtures.DesignOf(
        $$$"""
        project: Housings
        boards: {main: {kind: melamine, thickness: {{{N(t)}}}}}
        cabinet: {width: 600, height: 700, depth: 200, board: main, {{{more}}}}
        """).Assembly;

    private static Box3 Box(Assembly assembly, string id) => assembly.Panel(id).Placement!.ToAssembly(assembly.Panel(id).Box);

    // The block a groove takes away, from its centre line and width alone.
    private static double[] Taken(Assembly assembly, string panelId, string joint)
    {
        var panel = assembly.Panel(panelId);
        var groove = Assert.Single(panel.Features.OfType<Groove>(), g => g.Origin == joint);
        var (a, b) = (groove.From.Point, groove.To.Point);
        var half = groove.Width.Value / 2;
        var (low, high) = groove.Face == Surface.Inside ? (panel.Thickness.Value - groove.Depth.Value, panel.Thickness.Value) : (0, groove.Depth.Value);
        var isAlongX = Math.Abs(a.Y - b.Y) < 1e-9;
        var ends = new[] { a, b }.SelectMany(p => new[] { -half, half }.Select(s => isAlongX ? (p.X, p.Y + s) : (p.X + s, p.Y))).ToList();
        var placement = panel.Placement!;
        var box = Box3.Between(
            placement.ToAssembly(new Point3(ends.Min(e => e.Item1), ends.Min(e => e.Item2), low)), placement.ToAssembly(new Point3(ends.Max(e => e.Item1), ends.Max(e => e.Item2), high)));
        return [.. new[] { box.Min.X, box.Max.X, box.Min.Y, box.Max.Y, box.Min.Z, box.Max.Z }.Select(v => Math.Round(v, 6))];
    }

    // The shelf is 600 − 2t + 12 long, the screws pass the 6 to 13 mm that are left: in 18 mm board 12, so that 50 − 12 = 38 hold.
    [Theory]
    [InlineData(16, 580, 10, 40)]
    [InlineData(18, 576, 12, 38)]
    [InlineData(19.05, 573.9, 13.05, 36.95)]
    public void Shelf_sits_6_mm_deep_in_both_sides(double t, double length, double left, double pilot)
    {
        var assembly = Cabinet(t, "shelves: [{top: 380}], corners: {shelves: {housing: 6}}");

        Assert.Equal(length, assembly.Panel("shelf-1").Length.Value, 1e-9);
        Assert.Equal(left, Box(assembly, "shelf-1").Min.X, 1e-9);
        Assert.Equal([left, t, 0, 200, 380 - t, 380], Taken(assembly, "left-side", "left-side/shelf-1"));
        Assert.Equal([600 - t, 600 - left, 0, 200, 380 - t, 380], Taken(assembly, "right-side", "right-side/shelf-1"));
        var z = N(380 - t / 2);
        Assert.Equal(
            new[] { 50, 150 }.SelectMany(y => new[] { $"left-side 0 {y} {z} +x 4.5 through clearance", $"shelf-1 {N(left)} {y} {z} +x 2.8 deep {N(pilot)} pilot" }).Order(StringComparer.Ordinal),
            Hole.Of(assembly).Where(h => h.Bore.Origin == "left-side/shelf-1").Select(h => h.ToString()).Order(StringComparer.Ordinal));
    }

    // Play of 0.2: the groove is 18.2 wide, a tenth beyond the shelf on either side.
    [Fact]
    public void Play_widens_the_groove_on_both_sides() =>
        Assert.Equal([12, 18, 0, 200, 361.9, 380.1], Taken(Cabinet(18, "shelves: [{top: 380}], corners: {shelves: {housing: 6, housing-play: 0.2}}"), "left-side", "left-side/shelf-1"));

    // A rabbet reaches to the end of the side; its play goes inwards, where the top does not show.
    [Theory]
    [InlineData("{housing: 6}", 682)]
    [InlineData("{housing: 6, housing-play: 0.2}", 681.8)]
    public void Top_sits_in_a_rabbet_open_to_the_end(string joint, double low)
    {
        var assembly = Cabinet(18, $"corners: {{top: {joint}}}");

        Assert.Equal((576, 564), (assembly.Panel("top").Length.Value, assembly.Panel("bottom").Length.Value));
        Assert.Equal(700, assembly.Panel("left-side").Length.Value, 1e-9);
        Assert.Equal([12, 18, 0, 200, low, 700], Taken(assembly, "left-side", "left-side/top"));
        Assert.Equal([582, 588, 0, 200, low, 700], Taken(assembly, "right-side", "right-side/top"));
    }

    // Housed on one side alone, the top grows on that side alone.
    [Fact]
    public void One_corner_in_a_rabbet_moves_one_end()
    {
        var top = Box(Cabinet(18, "corners: {top-left: {housing: 6}}"), "top");

        Assert.Equal((12, 582), (top.Min.X, top.Max.X));
    }

    // Sides under a top that runs over them reach 6 mm up into it: 700 − 18 + 6 = 688.
    [Fact]
    public void Sides_reach_into_a_top_over_them()
    {
        var assembly = Cabinet(18, "top: over, corners: {top: {housing: 6}}");

        Assert.Equal(688, assembly.Panel("left-side").Length.Value, 1e-9);
        Assert.Equal([0, 18, 0, 200, 682, 688], Taken(assembly, "top", "top/left-side"));
        Assert.Equal([582, 600, 0, 200, 682, 688], Taken(assembly, "top", "top/right-side"));
    }

    // 700 − 36 + 12 = 676 high, in the middle; the screws come up through the bottom's remaining 12 mm.
    [Fact]
    public void Divider_sits_in_bottom_and_top()
    {
        var assembly = Cabinet(18, "side-by-side: [{}, {}], corners: {dividers: {housing: 6}}");

        Assert.Equal(676, assembly.Panel("bay-2-divider").Length.Value, 1e-9);
        Assert.Equal([291, 309, 0, 200, 12, 18], Taken(assembly, "bottom", "bottom/bay-2-divider"));
        Assert.Equal([291, 309, 0, 200, 682, 688], Taken(assembly, "top", "top/bay-2-divider"));
        Assert.Equal(
            new[] { 50, 150 }.SelectMany(y => new[] { $"bottom 300 {y} 0 +z 4.5 through clearance", $"bay-2-divider 300 {y} 12 +z 2.8 deep 38 pilot" }).Order(StringComparer.Ordinal),
            Hole.Of(assembly).Where(h => h.Bore.Origin == "bottom/bay-2-divider").Select(h => h.ToString()).Order(StringComparer.Ordinal));
    }

    // A dowel stands in the bottom of the housing: 11 or what 3 mm under it leave of the 12, so 9; below the face 9 + 6 = 15. In the edge 30 − 9 + 2 = 23.
    [Fact]
    public void Dowel_begins_in_the_bottom_of_the_housing() => Assert.Equal(
        new[] { 50, 150 }.SelectMany(y => new[] { $"left-side 18 {y} 371 -x 8 deep 15 seat", $"shelf-1 12 {y} 371 +x 8 deep 23 seat" }).Order(StringComparer.Ordinal),
        Hole.Of(Cabinet(18, "shelves: [{top: 380}], corners: {shelves: {fastener: dowel-8x30, housing: 6}}")).Where(h => h.Bore.Origin == "left-side/shelf-1").Select(h => h.ToString()).Order(StringComparer.Ordinal));

    [Fact]
    public void Housed_panels_overlap_nothing() =>
        Assert.Empty(Shop.Check(Fixtures.DesignOf(
            """
            project: Housed throughout
            boards: {main: {kind: melamine, thickness: 18}, thin: {kind: plywood, thickness: 6.3}}
            cabinet: {width: 800, height: 700, depth: 300, board: main, back: {board: thin}, joint: {fastener: wood-4x50, housing: 6}, side-by-side: [{shelves: 1}, {shelves: 2}]}
            """)).Select(f => f.Message));

    // 18.6 mm is no whole number in binary: groove and shelf differ in their last digit, which leaves a sliver along the groove.
    [Fact]
    public void Shelf_fills_a_groove_as_wide_as_it_is_thick() =>
        Assert.DoesNotContain("panels-overlap", Shop.Check(Fixtures.DesignOf(
            """
            project: Slivers
            boards: {main: {kind: melamine, thickness: 18.6}}
            cabinet: {width: 756.5, height: 1069.6, depth: 593.8, board: main, back: {board: main, fit: between}, joint: {fastener: dowel-8x30, housing: 6}, corners: {top: {housing: 4}}, stacked: [{}, {shelves: 1}]}
            """)).Select(f => f.Rule));
}
