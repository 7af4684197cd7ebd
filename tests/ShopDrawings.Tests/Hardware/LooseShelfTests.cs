using ShopDrawings.Tests.Joints;
using static ShopDrawings.Tests.Hardware.InACabinet;

namespace ShopDrawings.Tests.Hardware;

/// <summary>Rows of pins and the shelves on them, worked out by hand. Holes 32 mm apart, the first row 37 behind the front: common practice, no source.</summary>
public class LooseShelfTests
{
    // SJ-30: in 560 the last row is at 37 + 32 × 15 = 517; SJ-29: 554 = 74 + 32 × 15 balances it. Between 112 and 588 fit 15 holes.
    [Theory]
    [InlineData(560, 517)]
    [InlineData(554, 517)]
    [InlineData(553, 485)]
    public void Rows_run_from_end_to_end(double depth, int last) => Same(
        Enumerable.Range(0, 15).SelectMany(i => new[] { 37, last }.Select(y => $"left-side 16 {y} {112 + 32 * i} -x 5 deep 11 seat")),
        Of(16, depth, "loose-shelves: {count: 1}").Bores("left-pins"));

    // Half way is 350, the nearest hole 336, the shelf 2.5 above it; 1 mm at each end and 5 at the front.
    [Fact]
    public void Shelf_lies_at_the_hole_nearest_to_an_even_spread() =>
        Assert.Equal([17, 583, 5, 560, 338.5, 354.5], Of(16, 560, "loose-shelves: {count: 1}").Block("loose-shelf-1"));

    // Behind a door 16 thick and 3 mm: 19 + 37 = 56, and 56 + 32 × 14 = 504, as (541 − 74)/32 = 14.6.
    [Fact]
    public void Rows_begin_behind_a_door_between_the_panels()
    {
        var design = Of(16, 560, "loose-shelves: {count: 1}, doors: {board: main, mount: inset, hang: left}");

        Assert.Equal([56.0, 504], Hole.Of(design.Assembly).Where(h => h.Bore.Origin == "right-pins").Select(h => Math.Round(h.Entry[1], 6)).Distinct().Order());
        Assert.Equal([24.0, 560], design.Block("loose-shelf-1")[2..4]);
    }

    // (18 − 2)/2 = 8 deep from either face: 2 mm stay between.
    [Fact]
    public void Pins_from_both_faces_of_a_divider_leave_material()
    {
        var design = Of(18, 560, "side-by-side: [{name: west, loose-shelves: {count: 1}}, {name: east, loose-shelves: {count: 2}}]");
        var pins = Hole.Of(design.Assembly).Where(h => h.Panel.Id == "east-divider" && h.Bore.Origin.EndsWith("-pins", StringComparison.Ordinal)).ToList();

        Assert.Equal([8.0], pins.Select(p => p.Depth).Distinct());
        Assert.Equal([291.0, 309], pins.Select(p => p.Entry[0]).Distinct().Order());
        Assert.Empty(design.Faults());
    }

    // Its nearest hole would bring it to 338.5 to 354.5, where the fixed shelf stands from 334 to 350.
    [Fact]
    public void Loose_shelf_keeps_clear_of_a_fixed_one()
    {
        var design = Of(16, 560, "shelves: [{top: 350}], loose-shelves: {count: 1}");
        var (loose, firm) = (design.Block("loose-shelf-1"), design.Block("shelf-1"));

        Assert.True(loose[4] >= firm[5] || loose[5] <= firm[4]);
        Assert.Empty(design.Faults());
    }
}
