using CsCheck;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;
using ShopDrawings.Tests.Cabinet;

namespace ShopDrawings.Tests.Panels;

public class PanelStacksTests
{
    // A rigid motion: image of the panel's origin and of its three axes, in the frame of the first panel.
    private sealed record Motion(Point3 Origin, Point3 X, Point3 Y, Point3 Z)
    {
        public Point3 Of(Point3 p) => Origin + X * p.X + Y * p.Y + Z * p.Z;
    }

    [Fact]
    public void Bores_of_a_stack_meet_when_it_is_laid_as_told() => RandomCabinet.Any.Sample(cabinet =>
    {
        var assembly = Fixtures.DesignOf(cabinet.Text).Assembly;
        foreach (var stack in PanelStacks.Find(assembly.Panels)) AssertMeets(assembly, stack);
    }, iter: 200);

    [Theory]
    [MemberData(nameof(Fixtures.Names), MemberType = typeof(Fixtures))]
    public void Bores_of_a_stack_in_a_fixture_meet_when_it_is_laid_as_told(string name)
    {
        var assembly = Fixtures.Design(name).Assembly;

        Assert.All(PanelStacks.Find(assembly.Panels), stack => AssertMeets(assembly, stack));
    }

    [Fact]
    public void Every_bore_in_a_face_is_drilled_in_the_stack_or_apart_and_no_blind_one_in_the_stack() => RandomCabinet.Any.Sample(cabinet =>
    {
        var assembly = Fixtures.DesignOf(cabinet.Text).Assembly;
        var stacks = PanelStacks.Find(assembly.Panels);
        foreach (var stack in stacks)
        {
            Assert.True(stack.Through.Length >= 2);
            Assert.All(stack.Through, b => Assert.True(b.Depth is null && b.Surface.IsFace()));
            foreach (var panel in stack.Panels)
            {
                var own = assembly.Panel(panel.Id).Features.OfType<Bore>().Where(b => b.Surface.IsFace()).ToList();
                Assert.Equal(own.Count, stack.Through.Length + panel.Apart.Length);
                Assert.All(own.Where(b => b.Depth is not null), b => Assert.Contains(b, panel.Apart));
            }
        }

        var ids = stacks.SelectMany(s => s.Panels).Select(p => p.Id).ToList();
        Assert.Equal(ids.Distinct(), ids);
    }, iter: 100);

    // Both sides have the same rows; a divider has none of its own.
    [Fact]
    public void Sides_of_a_cabinet_are_a_stack_even_where_doors_hang_on_one() => RandomCabinet.Any.Where(c => !c.Divider).Sample(cabinet =>
    {
        var assembly = Fixtures.DesignOf(cabinet.Text).Assembly;
        bool Goes(string id) => assembly.Panel(id).Features.OfType<Bore>().Count(b => b.Depth is null) >= 2;

        var stack = PanelStacks.Find(assembly.Panels).SingleOrDefault(s => s.Panels[0].Id == "left-side");

        if (!Goes("left-side")) Assert.Null(stack);
        else Assert.Equal(["left-side", "right-side"], stack!.Panels.Select(p => p.Id));
    }, iter: 100);

    // Panels a and b of 400 × 200: what b must be for two holes of a, at [50, 30] and [120, 60], to go through both.
    [Theory]
    [InlineData("{at: [50, 30], diameter: 8}, {at: [120, 60], diameter: 8}", Twinship.Same, "left on left, front on front")]
    [InlineData("{at: [350, 170], diameter: 8}, {at: [280, 140], diameter: 8}", Twinship.Same, "right on left, back on front")]
    [InlineData("{at: [50, 170], diameter: 8}, {at: [120, 140], diameter: 8}", Twinship.Mirrored, "left on left, back on front")]
    [InlineData("{at: [350, 30], diameter: 8}, {at: [280, 60], diameter: 8}", Twinship.Mirrored, "right on left, front on front")]
    [InlineData("{at: [50, 170], diameter: 8, face: outside}, {at: [120, 140], diameter: 8}, {at: [9, 9], diameter: 8}", Twinship.Mirrored, "left on left, back on front")]
    public void Two_panels_stack_as_their_holes_lie(string second, Twinship twinship, string edges)
    {
        var assembly = Pair("{at: [50, 30], diameter: 8}, {at: [120, 60], diameter: 8}, {at: [60, 90], diameter: 5, depth: 6}", second);

        var stack = Assert.Single(PanelStacks.Find(assembly.Panels));

        Assert.Equal((twinship, edges), (stack.Twinship, string.Join(", ", stack.Panels[1].Edges.Select(e => $"{e.Own} on {e.First}"))));
        Assert.Equal((2, 1), (stack.Through.Length, stack.Panels[0].Apart.Length));
        AssertMeets(assembly, stack);
    }

    [Theory]
    [InlineData("{at: [50, 30], diameter: 8}")]                                                          // one alone is not worth it
    [InlineData("{at: [50, 30], diameter: 8}, {at: [120, 60], diameter: 8.5}")]                          // another bit
    [InlineData("{at: [50, 30], diameter: 8}, {at: [120, 60], diameter: 8, depth: 17}")]                 // blind
    [InlineData("{at: [50, 30], diameter: 8}, {at: [120, 60.5], diameter: 8}")]                          // another place
    [InlineData("{at: [50, 30], diameter: 8}, {at: [120, 60], diameter: 8, method: transferred}")]
    [InlineData("{at: [50, 30], diameter: 8}, {at: [120, 60], diameter: 8, method: given}")]
    public void Panels_that_do_not_share_two_holes_are_no_stack(string second) =>
        Assert.Empty(PanelStacks.Find(Pair("{at: [50, 30], diameter: 8}, {at: [120, 60], diameter: 8}", second).Panels));

    [Theory]
    [InlineData("board: other, length: 400, width: 200")]
    [InlineData("board: ply, length: 400, width: 201")]
    [InlineData("board: ply, length: 400, width: 200, bands: {front: 1}")]
    [InlineData("board: ply, length: 400, width: 200, outline: [[0, 0], [400, 0], [400, 150], [350, 200], [0, 200]]")]
    public void Panels_of_another_blank_are_no_stack(string second) => Assert.Empty(PanelStacks.Find(Fixtures.DesignOf(
        "project: p\nboards: {ply: {kind: plywood, thickness: 18}, other: {kind: plywood, thickness: 18}}\npanels:\n"
        + "  a: {board: ply, length: 400, width: 200, bores: [{at: [50, 30], diameter: 8}, {at: [120, 60], diameter: 8}]}\n"
        + "  b: {" + second + ", bores: [{at: [50, 30], diameter: 8}, {at: [120, 60], diameter: 8}]}\n").Assembly.Panels));

    [Fact]
    public void Equal_panels_make_one_stack_as_long_as_no_hole_is_lost()
    {
        const string Holes = "{at: [50, 30], diameter: 8}, {at: [120, 60], diameter: 8}";
        string Panel(string name, string bores) => $"  {name}: {{board: ply, length: 400, width: 200, bores: [{bores}]}}\n";
        var assembly = Fixtures.DesignOf("project: p\nboards: {ply: {kind: plywood, thickness: 18}}\npanels:\n"
            + Panel("a", Holes + ", {at: [70, 70], diameter: 5}") + Panel("b", Holes) + Panel("c", Holes + ", {at: [70, 70], diameter: 5}") + Panel("d", Holes + ", {at: [70, 70], diameter: 5}")).Assembly;

        var stack = Assert.Single(PanelStacks.Find(assembly.Panels));

        Assert.Equal(["a", "c", "d"], stack.Panels.Select(p => p.Id));
        Assert.Equal((3, "all inside face up"), (stack.Through.Length, stack.Lay));
        AssertMeets(assembly, stack);
    }

    [Theory]
    [InlineData("a", "{at: [50, 30], diameter: 8}, {at: [120, 60], diameter: 8}, {at: [9, 9], diameter: 8}", new[] { "Stack with b,", "all inside face up, same edges together:", "2 bores through both, 0 here apart." })]
    [InlineData("b", "{at: [50, 170], diameter: 8}, {at: [120, 140], diameter: 8}, {at: [9, 9], diameter: 8}", new[] { "Stack with a,", "outside faces together,", "left on its left, back on its front:", "2 bores through both, 1 here apart." })]
    [InlineData("a", "{at: [350, 170], diameter: 8}, {at: [280, 140], diameter: 8}", new[] { "Stack with b,", "all inside face up,", "left on its right, front on its back:", "2 bores through both, 0 here apart." })]
    public void Sheet_says_how_a_panel_is_stacked(string id, string second, string[] expected)
    {
        var assembly = Pair("{at: [50, 30], diameter: 8}, {at: [120, 60], diameter: 8}", second);

        var sheet = PanelSheet.Of(assembly.Panel(id), "p", new SheetSettings(DrawingStandard.Iso, LengthStyle.Millimetres), [], null, PanelStacks.Find(assembly.Panels).Single())[0];

        var texts = sheet.Entities.OfType<TextEntity>().Where(t => expected.Contains(t.Text)).OrderByDescending(t => t.Position.Y).Select(t => t.Text);
        Assert.Equal(expected, texts);
    }

    private static Assembly Pair(string first, string second) => Fixtures.DesignOf("project: p\nboards: {ply: {kind: plywood, thickness: 18}}\npanels:\n  a: {board: ply, length: 400, width: 200, bores: ["
        + first + "]}\n  b: {board: ply, length: 400, width: 200, bores: [" + second + "]}\n").Assembly;

    // Lays every panel on the first with its named edges where they are told to be, and asks for a hole on the axis of each bore.
    private static void AssertMeets(Assembly assembly, StackedPanels stack)
    {
        var first = assembly.Panel(stack.Panels[0].Id);
        foreach (var stacked in stack.Panels)
        {
            var panel = assembly.Panel(stacked.Id);
            var motion = Laid(first, panel, stacked, stack.Twinship == Twinship.Mirrored && panel != first);
            foreach (var bore in stack.Through)
            {
                Assert.Contains(panel.Features.OfType<Bore>().Where(b => b.Surface.IsFace() && b.Depth is null), b =>
                {
                    var (outside, inside) = (motion.Of(new Point3(b.At.X.Value, b.At.Y.Value, 0)), motion.Of(new Point3(b.At.X.Value, b.At.Y.Value, panel.Thickness.Value)));
                    return new[] { outside, inside }.All(p => Math.Abs(p.X - bore.At.X.Value) < 1e-4 && Math.Abs(p.Y - bore.At.Y.Value) < 1e-4)
                        && Math.Abs(b.Diameter.Value - bore.Diameter.Value) < 1e-4;
                });
            }

            if (panel == first) continue;
            Assert.Equal(stack.Twinship == Twinship.Mirrored, Math.Abs(motion.Of(default).Z) < 1e-9);
            Assert.Equal(1, motion.X.Cross(motion.Y).Dot(motion.Z), 1e-9);      // turned, never mirrored
        }
    }

    // The panel's outward directions of the two edges that lie on the first panel's start and near edge become -x and -y there.
    private static Motion Laid(Panel first, Panel panel, StackedPanel stacked, bool isTurnedOver)
    {
        Surface Edge(Panel of, string name) => Surfaces.Edges.Single(e => of.NameOf(e) == name);
        Assert.Equal([Surface.Start, Surface.Near], stacked.Edges.Select(e => Edge(first, e.First)));
        var (onStart, onNear) = (Edge(panel, stacked.Edges[0].Own), Edge(panel, stacked.Edges[1].Own));
        Assert.True(onStart is Surface.Start or Surface.End && onNear is Surface.Near or Surface.Far);
        var x = new Point3(onStart == Surface.Start ? 1 : -1, 0, 0);
        var y = new Point3(0, onNear == Surface.Near ? 1 : -1, 0);
        var z = new Point3(0, 0, isTurnedOver ? -1 : 1);
        var origin = new Point3(onStart == Surface.Start ? 0 : first.Length.Value, onNear == Surface.Near ? 0 : first.Width.Value, isTurnedOver ? 0 : -first.Thickness.Value);
        return new Motion(origin, x, y, z);
    }
}
