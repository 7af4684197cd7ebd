using CsCheck;
using ShopDrawings.Kernel;
using ShopDrawings.Tests.Hardware;

namespace ShopDrawings.Tests.Joints;

/// <summary>Where the fasteners of a row stand on a real cabinet, and how one moves clear of what is in its way. Worked out by hand.</summary>
public class RowTests
{
    private static double[] Fronts(Design design, string joint) =>
        [.. design.Assembly.Joints.Single(j => j.Id == joint).Fasteners.Select(f => Math.Round(f.Head.Y, 6))];

    // Gaps = (depth − 2 × end) ÷ pitch rounded up, at least two over 300 mm; SJ-32 and SJ-33 are the first. Whatever the fastener.
    [Theory]
    [InlineData(560, "", new[] { 50.0, 165, 280, 395, 510 })]
    [InlineData(400, "", new[] { 50.0, 200, 350 })]
    [InlineData(300, ", pitch: 300", new[] { 50.0, 250 })]
    [InlineData(301, ", pitch: 300", new[] { 50, 150.5, 251 })]
    [InlineData(400, ", end-distance: 37, pitch: 96", new[] { 37, 118.5, 200, 281.5, 363 })]
    [InlineData(160, "", new[] { 40.0, 120 })]
    public void Every_kind_of_fastener_keeps_the_row(double depth, string rule, double[] byHand)
    {
        foreach (var fastener in new[] { "wood-4x50", "wood-45x50, sunk: 0.5", "connector-7x50", "dowel-8x30", "cam-15", "bracket-30" })
            Assert.Equal(byHand, Fronts(InACabinet.Of(18, depth, $"joint: {{fastener: {fastener}{rule}}}"), "left-side/bottom"));
    }

    // Each case: what is in the way, where the first screw then stands, and what its place says. The screw's hole is 4.5 wide.
    // A 10 mm hole at 50: 5 + 2.25 + 3 = 10.25, so 11 on. An opening of 20 mm: 10 + 2.25 = 12.25, so 13 on.
    [Theory]
    [InlineData("joint: wood-4x50", "holes: [{panel: left-side, from: {front: 50, bottom: 9}, diameter: 10}]", "left-side/bottom", 61, "moved-clear-of-left-side")]
    [InlineData("joint: wood-4x50", "fittings: {vent: {hardware: round, panel: left-side, from: {front: 50, bottom: 9}}}\nhardware: {round: {length: 24, width: 12, height: 0, cut-outs: [{circle: {at: [0, 0], diameter: 20}}]}}", "left-side/bottom", 63, "moved-clear-of-vent")]
    // The plate's hole 5 wide at 37 and at 1.5 + 90 − 16 = 75.5, before the shelf's middle: 2.5 + 2.25 + 3 = 7.75, so 8 on.
    [InlineData("joint: {fastener: wood-4x50, end-distance: 37}, shelves: [{top: 84.5}], doors: {board: main, hang: left, cups: [90, 600]}", "", "left-side/shelf-1", 45, "moved-clear-of-door/hinge-1")]
    // A slide's hole 2.5 wide at 3 + 35 = 38 and 18 + 10 + 35 = 63 up, on the other face of the divider: 1.25 + 2.25 + 3 = 6.5, so 7 on.
    [InlineData("joint: {fastener: wood-4x50, end-distance: 38}, side-by-side: [{name: west, sliding-shelf: {slide: side-400}}, {name: east, shelves: [{top: 72}]}]", "", "east-divider/east/shelf-1", 45, "moved-clear-of-west/right-slide")]
    public void First_screw_moves_clear_of_what_is_in_its_way(string keys, string parts, string joint, double front, string rule)
    {
        var first = InACabinet.Of(18, 500, keys, parts).Assembly.Joints.Single(j => j.Id == joint).Fasteners.MinBy(f => f.Head.Y)!;

        Assert.Equal((front, rule), (Math.Round(first.Head.Y, 6), first.Along.Rule));
    }

    // The groove lies from 500 − 10 − 6.3 = 483.7 to 490: a hole 4.5 wide, wanted at 485, ends before it at 481.
    [Fact]
    public void Last_screw_moves_clear_of_the_groove()
    {
        var last = InACabinet.Of(18, 500, "joint: {fastener: wood-4x50, end-distance: 15}, back: {board: thin}").Assembly.Joints.Single(j => j.Id == "left-side/bottom").Fasteners.MaxBy(f => f.Head.Y)!;

        Assert.Equal((481.0, "moved-clear-of-back"), (Math.Round(last.Head.Y, 6), last.Along.Rule));
    }

    // Both rows run in the middle of the bottom and would meet at 25 from its corner.
    [Theory]
    [InlineData("wood-4x50", 25)]
    [InlineData("wood-45x50", 25)]
    [InlineData("wood-4x50", 30)]
    public void Rows_that_meet_in_a_corner_leave_3_mm_of_wood(string screw, int end)
    {
        var design = InACabinet.Of(18, 400, $"joint: {{fastener: {screw}, end-distance: {end}}}, back: {{board: thin, fit: behind}}");
        var pilots = Hole.Of(design.Assembly).Where(h => h.Panel.Id == "bottom" && h.Bore.Use == BoreUse.Pilot).ToList();

        Assert.Contains(pilots, h => h.Axis == 0);
        Assert.Contains(pilots, h => h.Axis == 1);
        foreach (var a in pilots.Where(h => h.Axis == 0))
            foreach (var b in pilots.Where(h => h.Axis == 1)) Assert.True(a.AxesApart(b) - a.Radius - b.Radius >= 3 - 1e-6, $"{a} and {b} are too near");
        Assert.Empty(design.Faults());
    }

    // What is the same on both sides moves alike.
    [Fact]
    public void Sides_stay_mirror_images() => FittedCabinet.Any.Where(c => !(c.Corners + c.Inside + c.Doors).Contains("left", StringComparison.Ordinal) && !(c.Corners + c.Inside + c.Doors).Contains("right", StringComparison.Ordinal) && !c.Inside.Contains("side-by-side", StringComparison.Ordinal) && !c.Inside.Contains("latch", StringComparison.Ordinal)).Sample(cabinet =>
    {
        if (Shop.Resolve(Shop.Load(cabinet.Text, "test.yaml").Value!).Value is not { } design) return;
        string[] Keys(string side, Func<double, double> across) =>
            [.. Hole.Of(design.Assembly).Where(h => h.Panel.Id == side).Select(h => FormattableString.Invariant($"{across(h.Entry[0]):0.0000} {h.Entry[1]:0.0000} {h.Entry[2]:0.0000} {h.Bore.Diameter.Value:0.0000} {h.Depth:0.0000}")).Order(StringComparer.Ordinal)];

        Assert.Equal(Keys("left-side", x => x), Keys("right-side", x => cabinet.Width - x));
    }, iter: 60);
}
