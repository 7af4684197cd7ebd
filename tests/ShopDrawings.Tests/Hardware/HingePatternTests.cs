using ShopDrawings.Kernel;
using static ShopDrawings.Tests.Hardware.InACabinet;

namespace ShopDrawings.Tests.Hardware;

/// <summary>
/// Bores of cup hinges by pattern and mount, worked out by hand in 16 mm board. An overlay door stands 1.5 inside the cabinet's outside and 2 mm
/// (a buffer: common practice, no source) before it; its first hinge is 100 above its lower edge (common practice, no source).
/// </summary>
public class HingePatternTests
{
    private const string Third =
        "hinges: {third: {cup-diameter: 35, cup-depth: 11, boring-distance: 4, fixing-span: 52, fixing-offset: 5.5, fixing-diameter: 2.5, fixing-depth: 11, plate-set-back: 37, plate-spacing: 32, plate-diameter: 5, plate-depth: 12, fixed-distance: 13, body-depth: 70, body-reach: 20, body-height: 60, intrusion: 0}}";

    // Cup at 1.5 + 5 + 17.5 = 24, fixing holes 9.5 further (HG-06: 32 from the door's edge), 22.5 up and down from 101.5; the plate's 16 (HG-22).
    private static readonly string[] Upright =
    [
        "door 24 -2 101.5 -y 35 deep 12.5 seat", "door 33.5 -2 79 -y 2.5 deep 11 pilot", "door 33.5 -2 124 -y 2.5 deep 11 pilot",
        "left-side 16 37 85.5 -x 5 deep 12 pilot", "left-side 16 37 117.5 -x 5 deep 12 pilot",
    ];

    [Fact]
    public void Pattern_45_with_an_upright_plate() => Same(Upright, Of(16, 300, "doors: {board: main, hang: left}").Bores("door/hinge-1"));

    // Everything from the other side: x becomes 600 − x.
    [Fact]
    public void Door_hung_right_is_the_mirror_image() => Same(
        [
            "door 576 -2 101.5 -y 35 deep 12.5 seat", "door 566.5 -2 79 -y 2.5 deep 11 pilot", "door 566.5 -2 124 -y 2.5 deep 11 pilot",
            "right-side 584 37 85.5 +x 5 deep 12 pilot", "right-side 584 37 117.5 +x 5 deep 12 pilot",
        ],
        Of(16, 300, "doors: {board: main, hang: right}").Bores("door/hinge-1"));

    // HG-07: 28.5 from the door's edge, HG-09: 24 from the cup's centre; 1.5 + 28.5 = 30. The plate in line: 37 and 69.
    [Fact]
    public void Pattern_48_with_a_plate_in_line() => Same(
        [
            "door 24 -2 101.5 -y 35 deep 12.5 seat", "door 30 -2 77.5 -y 2.5 deep 11 pilot", "door 30 -2 125.5 -y 2.5 deep 11 pilot",
            "left-side 16 37 101.5 -x 2.5 deep 12 pilot", "left-side 16 69 101.5 -x 2.5 deep 12 pilot",
        ],
        Of(16, 300, "doors: {board: main, hang: left, hinge: cup-35-in-line}").Bores("door/hinge-1"));

    // HG-08: 4 + 17.5 + 5.5 = 27 from the door's edge; cup at 1.5 + 21.5 = 23.
    [Fact]
    public void Pattern_52_of_the_users_own() => Same(
        [
            "door 23 -2 101.5 -y 35 deep 11 seat", "door 28.5 -2 75.5 -y 2.5 deep 11 pilot", "door 28.5 -2 127.5 -y 2.5 deep 11 pilot",
            "left-side 16 37 85.5 -x 5 deep 12 pilot", "left-side 16 37 117.5 -x 5 deep 12 pilot",
        ],
        Of(16, 300, "doors: {board: main, hang: left, hinge: third}", Third).Bores("door/hinge-1"));

    // Inset: the door begins at 16 + 2 = 18 and 18 up, its back at 16; cup 40.5, hinge 118, plate 37 + 16 = 53 (HG-20).
    [Fact]
    public void Door_between_the_sides() => Same(
        [
            "door 40.5 16 118 -y 35 deep 12.5 seat", "door 50 16 95.5 -y 2.5 deep 11 pilot", "door 50 16 140.5 -y 2.5 deep 11 pilot",
            "left-side 16 53 102 -x 5 deep 12 pilot", "left-side 16 53 134 -x 5 deep 12 pilot",
        ],
        Of(16, 300, "doors: {board: main, mount: inset, hang: left}").Bores("door/hinge-1"));

    // Overlay 16 − reveal, H = 13 + 5 − overlay. HG-01: overlay 16 gives 2, HG-03: reveal 2 gives 4. Half: 8 − 1.5 = 6.5, 4 + 5 − 6.5 = 2.5.
    // HG-04: −4 + 5 + 2 = 3.
    [Theory]
    [InlineData("reveal: 0", 2)]
    [InlineData("reveal: 2", 4)]
    [InlineData("mount: half-overlay", 2.5)]
    [InlineData("mount: inset", 3)]
    public void Plate_is_as_high_as_the_mount_asks(string mount, double height)
    {
        var design = Of(16, 300, $"doors: {{board: main, hang: left, {mount}}}");

        Assert.Equal(height, design.SizeOf("door/hinge-1", "plate-height"));
        Assert.Empty(design.Faults());
    }

    // HG-02: boring distance 3 and overlay 16 need no plate height.
    [Fact]
    public void Plate_of_no_height() => Assert.Equal(0, Of(16, 300, "doors: {board: main, hang: left, hinge: third, reveal: 0}", Third.Replace("boring-distance: 4", "boring-distance: 3", StringComparison.Ordinal)).SizeOf("door/hinge-1", "plate-height"));

    // Middle of the 18 mm divider at 300, less half of 3: the doors end at 298.5 and begin at 301.5, each 7.5 over it; 4 + 5 − 7.5 = 1.5.
    [Fact]
    public void Two_doors_share_a_divider()
    {
        var design = Of(18, 300, "side-by-side: [{name: west, doors: {board: main, hang: right}}, {name: east, doors: {board: main, hang: left}}]");

        Assert.Equal((298.5, 301.5), (design.Block("west/door")[1], design.Block("east/door")[0]));
        Assert.Equal((1.5, 1.5), (design.SizeOf("west/door/hinge-1", "plate-height"), design.SizeOf("east/door/hinge-1", "plate-height")));
        Assert.Empty(design.Faults());
    }

    // The door's edge is at 1.5: cups at 90 and 590 above it. They come with the door; the plates are drilled here.
    [Fact]
    public void Doors_that_come_bored_say_where_the_plates_are()
    {
        var design = Of(16, 300, "doors: {board: main, hang: left, cups: [90, 590]}");

        Same(
            [
                "door 24 -2 591.5 -y 35 deep 12.5 seat", "door 33.5 -2 569 -y 2.5 deep 11 pilot", "door 33.5 -2 614 -y 2.5 deep 11 pilot",
                "left-side 16 37 575.5 -x 5 deep 12 pilot", "left-side 16 37 607.5 -x 5 deep 12 pilot",
            ],
            design.Bores("door/hinge-2"));
        Assert.All(design.Assembly.Panel("door").Features.OfType<Bore>(), b => Assert.Equal(BoreMethod.Given, b.Method));
        Assert.All(design.Assembly.Panel("left-side").Features.OfType<Bore>(), b => Assert.NotEqual(BoreMethod.Given, b.Method));
    }

    // Half way up a shelf would stand from 342 to 358, behind the hinge at 1.5 + 340.5 = 342 with a body from 312 to 372.
    [Fact]
    public void Even_shelf_gives_way_to_given_cups()
    {
        var design = Of(16, 300, "shelves: 1, doors: {board: main, hang: left, cups: [90, 340.5, 610]}");
        var shelf = design.Block("shelf-1");

        Assert.True(shelf[4] >= 375 || shelf[5] <= 309, $"the shelf stands from {shelf[4]} to {shelf[5]}");
        Assert.Empty(design.Faults());
    }

    [Fact]
    public void Shelf_with_a_height_does_not_and_is_found() => Assert.Contains(
        Of(16, 300, "shelves: [{top: 358}], doors: {board: main, hang: left, cups: [90, 340.5, 610]}").Faults(),
        f => f.Contains("door/hinge-2", StringComparison.Ordinal) && f.Contains("shelf-1", StringComparison.Ordinal));

    // A keeper 13 wide on a door that ends 2 below the ceiling at 684 has its middle at 682 − 6.5 − 1 at most.
    [Fact]
    public void Keeper_stays_on_a_door_between_the_panels()
    {
        var design = Of(16, 300, "doors: {board: main, mount: inset, hang: left, catch: {body: catch-body, keeper: catch-keeper}}");

        Assert.Empty(design.Faults());
        Assert.All(design.Bores("door/keeper"), b => Assert.Contains(" 674.5 -y", b, StringComparison.Ordinal));
    }

    // The strip covers 40 mm about the gap, from 280 to 320; the right-hand door begins at 301.5: one row in the middle of what they share, 310.75.
    [Fact]
    public void Centre_strip_is_screwed_to_its_own_door_alone()
    {
        var design = Of(18, 300, "doors: {board: main, centre-strip: {board: main}}");

        Assert.Empty(design.Faults());
        Assert.All(design.Bores("centre-strip/right-door"), b => Assert.Contains(" 310.75 ", b, StringComparison.Ordinal));
    }
}
