using CsCheck;
using ShopDrawings.Kernel;
using ShopDrawings.Tests.Cabinet;

namespace ShopDrawings.Tests.Panels;

public class PanelTwinsTests
{
    [Fact]
    public void Sides_of_a_cabinet_without_a_divider_are_mirror_images() => RandomCabinet.Any.Where(c => !c.Divider && c.Doors is "none" or "pair").Sample(cabinet =>
    {
        var twins = PanelTwins.Find(Fixtures.DesignOf(cabinet.Text).Assembly.Panels);

        Assert.Equal("left-side", twins["right-side"].Of);
        if (cabinet.Doors == "pair") Assert.Equal("left-door", twins["right-door"].Of);        // the same where its hinges lie evenly
    }, iter: 60);

    // One hole off the middle, and where it lies in the second panel; its far face and the edges follow.
    [Theory]
    [InlineData("{at: [50, 30], diameter: 8, depth: 10}", "{at: [50, 30], diameter: 8, depth: 10}", Twinship.Same)]
    [InlineData("{at: [50, 30], diameter: 8, depth: 10}", "{at: [350, 170], diameter: 8, depth: 10}", Twinship.Same)]          // turned round
    [InlineData("{at: [50, 30], diameter: 8, depth: 10}", "{at: [50, 170], diameter: 8, depth: 10}", Twinship.Mirrored)]
    [InlineData("{at: [50, 30], diameter: 8, depth: 10}", "{at: [350, 30], diameter: 8, depth: 10}", Twinship.Mirrored)]
    [InlineData("{at: [50, 30], diameter: 8, depth: 10}", "{at: [50, 30], diameter: 8, depth: 10, face: outside}", null)]
    [InlineData("{at: [50, 30], diameter: 8, depth: 10}", "{at: [50, 31], diameter: 8, depth: 10}", null)]
    [InlineData("{at: [50, 30], diameter: 8, depth: 10}", "{at: [50, 30], diameter: 8, depth: 11}", null)]
    [InlineData("{edge: left, at: 30, diameter: 8, depth: 20}", "{edge: left, at: 170, diameter: 8, depth: 20}", Twinship.Mirrored)]
    [InlineData("{edge: left, at: 30, diameter: 8, depth: 20}", "{edge: right, at: 170, diameter: 8, depth: 20}", Twinship.Same)]
    [InlineData("{edge: left, at: 30, diameter: 8, depth: 20}", "{edge: left, at: [30, 8], diameter: 8, depth: 20}", null)]
    public void Panels_with_one_hole_are_twins_as_it_lies(string first, string second, Twinship? expected)
    {
        var panels = Fixtures.DesignOf("project: p\nboards: {ply: {kind: plywood, thickness: 18}}\npanels:\n  a: {board: ply, length: 400, width: 200, bores: [" + first
            + "]}\n  b: {board: ply, length: 400, width: 200, bores: [" + second + "]}\n").Assembly.Panels;

        Assert.Equal(expected is { } twinship ? new PanelTwin(twinship, "a") : null, PanelTwins.Find(panels).GetValueOrDefault("b"));
    }

    [Theory]
    [InlineData("board: other, length: 400, width: 200")]
    [InlineData("board: ply, length: 400, width: 201")]
    [InlineData("board: ply, length: 400, width: 200, bands: {front: 1}")]
    [InlineData("board: ply, length: 400, width: 200, cut-outs: [{circle: {at: [100, 100], diameter: 20}}]")]
    public void Panels_that_differ_are_no_twins(string second) => Assert.Empty(PanelTwins.Find(Fixtures.DesignOf(
        "project: p\nboards: {ply: {kind: plywood, thickness: 18}, other: {kind: plywood, thickness: 18}}\npanels:\n  a: {board: ply, length: 400, width: 200}\n  b: {" + second + "}\n").Assembly.Panels));
}
