using System.Globalization;

namespace ShopDrawings.Tests.Joints;

/// <summary>
/// The bores of one corner for each fastener, worked out by hand. The cabinet is 600 wide, 700 high and 200 deep, so that a row on 200 mm has
/// its ends at a quarter, 50, and one gap of 100: two fasteners, 50 and 150 from the front. Bottom and top lie between the sides, so the middle
/// of their edges is at t/2 and 700 − t/2, and they begin at x = t.
/// </summary>
public class CornerBoresTests
{
    private static string N(double value) => (Math.Round(value, 4) + 0.0).ToString("0.####", CultureInfo.InvariantCulture);

    private static Kernel.Assembly Cabinet(double t, string joint, string more = "") => Fixtures.DesignOf(
        $$$"""
        project: Corners
        boards: {main: {kind: melamine, thickness: {{{N(t)}}}}}
        cabinet: {width: 600, height: 700, depth: 200, board: main, joint: {{{joint}}}{{{more}}}}
        """).Assembly;

    private static string[] Bores(Kernel.Assembly assembly, string joint) =>
        [.. Hole.Of(assembly).Where(h => h.Bore.Origin == joint).Select(h => h.ToString()).Order(StringComparer.Ordinal)];

    private static void Same(IEnumerable<string> byHand, IEnumerable<string> bores) =>
        Assert.Equal(byHand.Order(StringComparer.Ordinal), bores.Order(StringComparer.Ordinal));

    // Clearance 4.5 and pilot 2.8: common practice, no source. The pilot is what 50 mm leave behind a side: 34, 32, 30.95.
    [Theory]
    [InlineData(16, 34)]
    [InlineData(18, 32)]
    [InlineData(19.05, 30.95)]
    public void Screw_4x50(double t, double pilot) => Same(
        new[] { 50, 150 }.SelectMany(y => new[] { $"left-side 0 {y} {N(t / 2)} +x 4.5 through clearance", $"bottom {N(t)} {y} {N(t / 2)} +x 2.8 deep {N(pilot)} pilot" }),
        Bores(Cabinet(t, "wood-4x50"), "left-side/bottom"));

    // SJ-25: the cone of a 9 mm head on a 4.5 mm shank is 2.25 deep; 0.5 below the face makes 2.75. SJ-19: 50 + 0.5 − 16 = 34.5.
    [Theory]
    [InlineData(16, 34.5)]
    [InlineData(18, 32.5)]
    [InlineData(19.05, 31.45)]
    public void Sunk_screw_45x50(double t, double pilot) => Same(
        new[] { 50, 150 }.SelectMany(y => new[]
        {
            $"left-side 0 {y} {N(t / 2)} +x 5 through clearance", $"left-side 0 {y} {N(t / 2)} +x 9 deep 2.75 countersink", $"bottom {N(t)} {y} {N(t / 2)} +x 3 deep {N(pilot)} pilot",
        }),
        Bores(Cabinet(t, "{fastener: wood-45x50, sunk: 0.5}"), "left-side/bottom"));

    // SJ-25 alone: flush.
    [Fact]
    public void Flush_screw_45x50() => Same(
        new[] { 50, 150 }.SelectMany(y => new[] { $"left-side 0 {y} 8 +x 5 through clearance", $"left-side 0 {y} 8 +x 9 deep 2.25 countersink", $"bottom 16 {y} 8 +x 3 deep 34 pilot" }),
        Bores(Cabinet(16, "{fastener: wood-45x50, sunk: 0}"), "left-side/bottom"));

    // SJ-24: an inch screw's cone has 82 degrees, so a 0.332 in head on a 0.164 in shank sits 2.4544 mm deep. 2 in − 16 = 34.8.
    [Fact]
    public void Flush_number_8_screw() => Same(
        new[] { 50, 150 }.SelectMany(y => new[] { $"left-side 0 {y} 8 +x 4.3656 through clearance", $"left-side 0 {y} 8 +x 8.4328 deep 2.4544 countersink", $"bottom 16 {y} 8 +x 2.7781 deep 34.8 pilot" }),
        Bores(Cabinet(16, "{fastener: wood-no8x2, sunk: 0}"), "left-side/bottom"));

    // SJ-27: 50 − 16 + 4 = 38 deep, 5 mm (Eur. J. Wood Prod. 2023); through 7 and seat 10 × 3.5: common practice, no source.
    [Theory]
    [InlineData(16, 38)]
    [InlineData(18, 36)]
    [InlineData(19.05, 34.95)]
    public void Connector_7x50(double t, double pilot) => Same(
        new[] { 50, 150 }.SelectMany(y => new[]
        {
            $"left-side 0 {y} {N(t / 2)} +x 7 through clearance", $"left-side 0 {y} {N(t / 2)} +x 10 deep 3.5 seat", $"bottom {N(t)} {y} {N(t / 2)} +x 5 deep {N(pilot)} pilot",
        }),
        Bores(Cabinet(t, "connector-7x50"), "left-side/bottom"));

    // SJ-26: 11 in the face and 30 − 11 + 2 = 21 in the edge. 3 mm stay under it (common practice, no source): 11 is less than t − 3 in all three.
    [Theory]
    [InlineData(16)]
    [InlineData(18)]
    [InlineData(19.05)]
    public void Dowel_8x30(double t) => Same(
        new[] { 50, 150 }.SelectMany(y => new[] { $"left-side {N(t)} {y} {N(t / 2)} -x 8 deep 11 seat", $"bottom {N(t)} {y} {N(t / 2)} +x 8 deep 21 seat" }),
        Bores(Cabinet(t, "dowel-8x30"), "left-side/bottom"));

    // 12 mm board: 9 in the face, 30 − 9 + 2 = 23 in the edge.
    [Fact]
    public void Dowel_leaves_3_mm_under_it_in_thin_board() => Same(
        new[] { 50, 150 }.SelectMany(y => new[] { $"left-side 12 {y} 6 -x 8 deep 9 seat", $"bottom 12 {y} 6 +x 8 deep 23 seat" }),
        Bores(Cabinet(12, "dowel-8x30"), "left-side/bottom"));

    // Hardware catalogues (from memory): 15 mm, 12.5 deep in 16, 13.5 in 18, about 14 in 19; edge bore 8, bolt 5 × 11; centre 34 from the edge.
    // SJ-28: 16 − 12.5 = 3.5 stay. In the lower face of the bottom, the inside of the top.
    [Theory]
    [InlineData(16, 12.5)]
    [InlineData(18, 13.5)]
    [InlineData(19.05, 14.025)]
    public void Cam_15(double t, double deep)
    {
        var assembly = Cabinet(t, "cam-15");

        Same(
            new[] { 50, 150 }.SelectMany(y => new[]
            {
                $"left-side {N(t)} {y} {N(t / 2)} -x 5 deep 11 pilot", $"bottom {N(t)} {y} {N(t / 2)} +x 8 deep 34 seat", $"bottom {N(t + 34)} {y} 0 +z 15 deep {N(deep)} seat",
            }),
            Bores(assembly, "left-side/bottom"));
        Same(
            new[] { 50, 150 }.SelectMany(y => new[]
            {
                $"right-side {N(600 - t)} {y} {N(700 - t / 2)} +x 5 deep 11 pilot", $"top {N(600 - t)} {y} {N(700 - t / 2)} -x 8 deep 34 seat",
                $"top {N(600 - t - 34)} {y} {N(700 - t)} +z 15 deep {N(deep)} seat",
            }),
            Bores(assembly, "right-side/top"));
    }

    // Dowels 32 mm (one step of the grid, common practice, no source) nearer to the middle: 82 and 118.
    [Theory]
    [InlineData(16, 12.5)]
    [InlineData(18, 13.5)]
    [InlineData(19.05, 14.025)]
    public void Cam_15_with_a_dowel_beside(double t, double deep) => Same(
        new[] { 50, 150 }.SelectMany(y => new[]
        {
            $"left-side {N(t)} {y} {N(t / 2)} -x 5 deep 11 pilot", $"bottom {N(t)} {y} {N(t / 2)} +x 8 deep 34 seat", $"bottom {N(t + 34)} {y} 0 +z 15 deep {N(deep)} seat",
        }).Concat(new[] { 82, 118 }.SelectMany(y => new[] { $"left-side {N(t)} {y} {N(t / 2)} -x 8 deep 11 seat", $"bottom {N(t)} {y} {N(t / 2)} +x 8 deep 21 seat" })),
        Bores(Cabinet(t, "{fastener: cam-15, beside: dowel-8x30}"), "left-side/bottom"));

    // Legs of 30 mm with a hole at 20, pilots 2.5 × 12: common practice, no source. On the bottom's upper face the corner is at x = t, z = t.
    [Theory]
    [InlineData(16)]
    [InlineData(18)]
    [InlineData(19.05)]
    public void Bracket_30(double t) => Same(
        new[] { 50, 150 }.SelectMany(y => new[] { $"left-side {N(t)} {y} {N(t + 20)} -x 2.5 deep 12 pilot", $"bottom {N(t + 20)} {y} {N(t)} -z 2.5 deep 12 pilot" }),
        Bores(Cabinet(t, "{fastener: bracket-30, face: inside}"), "left-side/bottom"));

    // Under the top its corner is at 700 − t.
    [Fact]
    public void Bracket_30_sits_under_the_top() => Same(
        new[] { 50, 150 }.SelectMany(y => new[] { $"right-side 582 {y} 662 +x 2.5 deep 12 pilot", $"top 562 {y} 682 +z 2.5 deep 12 pilot" }),
        Bores(Cabinet(18, "bracket-30"), "right-side/top"));

    // Nothing goes on below a bottom flush with the sides, so its brackets sit on its upper face.
    [Fact]
    public void Bracket_30_sits_on_a_bottom_flush_with_the_sides() => Same(
        new[] { 50, 150 }.SelectMany(y => new[] { $"left-side 18 {y} 38 -x 2.5 deep 12 pilot", $"bottom 38 {y} 18 -z 2.5 deep 12 pilot" }),
        Bores(Cabinet(18, "bracket-30"), "left-side/bottom"));

    // In a housing the bracket still lies against the side's face, 20 mm from the corner on either leg.
    [Fact]
    public void Bracket_30_beside_a_housing() => Same(
        new[] { 50, 150 }.SelectMany(y => new[] { $"right-side 582 {y} 662 +x 2.5 deep 12 pilot", $"top 562 {y} 682 +z 2.5 deep 12 pilot" }),
        Bores(Cabinet(18, "{fastener: bracket-30, housing: 6}"), "right-side/top"));

    // The top runs over the sides: screws go down into their upper ends, at x = t/2 and 600 − t/2.
    [Theory]
    [InlineData(16, 34)]
    [InlineData(18, 32)]
    [InlineData(19.05, 30.95)]
    public void Screw_through_a_top_over_the_sides(double t, double pilot) => Same(
        new[] { 50, 150 }.SelectMany(y => new[] { $"top {N(600 - t / 2)} {y} 700 -z 4.5 through clearance", $"right-side {N(600 - t / 2)} {y} {N(700 - t)} -z 2.8 deep {N(pilot)} pilot" }),
        Bores(Cabinet(t, "wood-4x50", ", top: over"), "top/right-side"));

    // Each corner gets what was asked for it, a group before it what the corner leaves open, and all others the usual joint.
    [Fact]
    public void Corners_are_chosen_one_by_one()
    {
        var assembly = Cabinet(18, "wood-4x50", ", shelves: 1, corners: {top-left: {fastener: dowel-8x30}, bottom: connector-7x50, bottom-right: {fastener: cam-15}, shelves: wood-45x50}");

        var fasteners = assembly.Joints.ToDictionary(j => j.Id, j => string.Join(' ', j.Fasteners.Select(f => f.Fastener.Name).Distinct()));

        Assert.Equal(
            new SortedDictionary<string, string>
            {
                ["left-side/bottom"] = "connector-7x50", ["right-side/bottom"] = "cam-15", ["left-side/top"] = "dowel-8x30", ["right-side/top"] = "wood-4x50",
                ["left-side/shelf-1"] = "wood-45x50", ["right-side/shelf-1"] = "wood-45x50",
            },
            new SortedDictionary<string, string>(fasteners));
    }
}
