using CsCheck;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;
using ShopDrawings.Tests.Cabinet;

namespace ShopDrawings.Tests.Drilling;

public class BoreMethodTests
{
    private const string Shelf = "project: p\nboards: {ply: {kind: plywood, thickness: 18}}\ncabinet: {width: 600, height: 800, depth: 520, board: ply, sliding-shelf: {slide: side-450}, applied-top: {board: ply}}\n";

    public static TheoryData<string, string> Habits => new(
        from faces in new[] { "machined", "marked" }
        from edges in new[] { "machined", "marked", "in-place" }
        select (faces, edges));

    // Every screw of a butt joint passes through its mate, so nothing else than the pilots' own habit decides.
    [Theory]
    [MemberData(nameof(Habits))]
    public void Bores_of_a_cabinet_follow_the_shop(string faces, string edges) => RandomCabinet.Any.Sample(cabinet =>
    {
        foreach (var panel in Fixtures.DesignOf(cabinet.Text + $"methods: {{faces: {faces}, edges: {edges}}}\n").Assembly.Panels)
            foreach (var bore in panel.Features.OfType<Bore>())
                Assert.Equal(bore.Surface.IsFace() ? faces : edges, bore.Method.Word());
    }, iter: 30);

    [Fact]
    public void Faces_are_machined_and_edges_drilled_in_place_where_nothing_is_said()
    {
        var bores = Fixtures.DesignOf(Shelf).Assembly.Panels.SelectMany(p => p.Features).OfType<Bore>().ToList();

        Assert.All(bores, b => Assert.Equal(b.Surface.IsFace() ? BoreMethod.Machined : BoreMethod.InPlace, b.Method));
        Assert.Contains(bores, b => b.Method == BoreMethod.InPlace);
    }

    [Theory]
    [InlineData("marked", BoreMethod.Transferred)]
    [InlineData("machined", BoreMethod.Machined)]
    public void Pilots_in_a_face_are_transferred_where_faces_are_marked(string faces, BoreMethod expected)
    {
        var assembly = Fixtures.DesignOf(Shelf + $"methods: {{faces: {faces}}}\n").Assembly;
        var joint = assembly.Joints.Single(j => j.Held.IsFace());

        Assert.All(assembly.Panel(joint.Receiving).Features.OfType<Bore>().Where(b => b.Origin == joint.Id), b => Assert.Equal(expected, b.Method));
        Assert.All(assembly.Panel(joint.Through).Features.OfType<Bore>().Where(b => b.Origin == joint.Id), b => Assert.NotEqual(BoreMethod.Transferred, b.Method));
    }

    [Fact]
    public void Bore_in_an_edge_with_nothing_before_it_is_marked()
    {
        var bore = Bores("", "{edge: left, at: 50, diameter: 3, depth: 20}").Single();

        Assert.Equal(BoreMethod.Marked, bore.Method);
    }

    [Theory]
    [InlineData("machined", BoreMethod.Machined)]
    [InlineData("marked", BoreMethod.Marked)]
    [InlineData("transferred", BoreMethod.Transferred)]
    [InlineData("given", BoreMethod.Given)]
    public void Own_method_comes_before_that_of_the_shop(string method, BoreMethod expected)
    {
        var bores = Bores("methods: {faces: marked, edges: machined}\n", $"{{at: [50, 50], diameter: 3, depth: 10, method: {method}}}, {{edge: left, at: 50, diameter: 3, depth: 20, method: {method}}}");

        Assert.All(bores, b => Assert.Equal(expected, b.Method));
    }

    [Fact]
    public void Hole_at_a_named_place_has_a_method_too()
    {
        var panel = Fixtures.DesignOf(Shelf + "holes: [{panel: left-side, from: {front: 9, bottom: 700}, diameter: 7, method: marked}]\n").Assembly.Panel("left-side");

        Assert.Equal(BoreMethod.Marked, panel.Features.OfType<Bore>().Single(b => b.Origin == panel.Id).Method);
    }

    // A rail end 18 mm thick against a batten 18 mm thick with a hole where the rail's bore begins; what is drilled in place follows.
    [Theory]
    [InlineData(8, 9, 0, BoreMethod.InPlace, 48)]           // 30 deep + 18
    [InlineData(8.5, 9, 0, BoreMethod.InPlace, 48)]
    [InlineData(7.9, 9, 0, BoreMethod.Marked, 30)]          // too narrow
    [InlineData(8, 9.1, 0, BoreMethod.Marked, 30)]          // beside the axis
    [InlineData(8, 9, 1, BoreMethod.Marked, 30)]            // a gap between them
    public void Bore_is_drilled_in_place_only_through_a_hole_before_it(double hole, double at, double gap, BoreMethod expected, double stop)
    {
        var assembly = Fixtures.DesignOf(FormattableString.Invariant($$"""
            project: p
            boards: {ply: {kind: plywood, thickness: 18} }
            panels:
              rail: {board: ply, length: 300, width: 100, bores: [{edge: left, at: 50, diameter: 8, depth: 30}], place: {corner: [{{18 + gap}}, 0, 0], outside: bottom} }
              batten: {board: ply, length: 100, width: 100, bores: [{at: [{{at}}, 50], diameter: {{hole}} }], place: {corner: [0, 0, 0], outside: left, along: top} }
            """)).Assembly;
        var (rail, bore) = (assembly.Panel("rail"), assembly.Panel("rail").Features.OfType<Bore>().Single());

        var drilling = Kernel.Drilling.Of(rail, bore, new ThroughHoles(assembly.Panels));

        Assert.Equal((expected, stop), (bore.Method, Math.Round(drilling.Stop!.Value, 9)));
        Assert.Equal(expected == BoreMethod.InPlace ? ["batten"] : [], drilling.Mates.Select(m => m.Id));
        Assert.Null(drilling.Exit);
    }

    [Fact]
    public void Drill_passes_every_panel_before_the_bore()
    {
        var assembly = Fixtures.DesignOf(
            """
            project: p
            boards: {ply: {kind: plywood, thickness: 18}, thin: {kind: hardboard, thickness: 3}}
            panels:
              rail: {board: ply, length: 300, width: 100, bores: [{edge: left, at: 50, diameter: 3, depth: 30}], place: {corner: [21, 0, 0], outside: bottom}}
              sheet: {board: thin, length: 100, width: 100, bores: [{at: [9, 50], diameter: 5}], place: {corner: [0, 0, 0], outside: left, along: top}}
              batten: {board: ply, length: 100, width: 100, bores: [{at: [9, 50], diameter: 4}], place: {corner: [3, 0, 0], outside: left, along: top}}
            """).Assembly;
        var (rail, bore) = (assembly.Panel("rail"), assembly.Panel("rail").Features.OfType<Bore>().Single());

        var drilling = Kernel.Drilling.Of(rail, bore, new ThroughHoles(assembly.Panels));

        Assert.Equal(["batten", "sheet"], drilling.Mates.Select(m => m.Id));
        Assert.Equal(51, drilling.Stop!.Value, 1e-9);       // 30 + 18 + 3
        Assert.Equal(drilling.Stop.Value, drilling.Stop.Recomputed(), 1e-9);
    }

    // A screw flush with the face reaches as far as the stop is set when its pilot is drilled in place.
    [Fact]
    public void Stop_of_a_pilot_in_place_is_the_length_of_its_screw() => RandomCabinet.Any.Sample(cabinet =>
    {
        var assembly = Fixtures.DesignOf(cabinet.Text).Assembly;
        var holes = new ThroughHoles(assembly.Panels);
        foreach (var joint in assembly.Joints)
            foreach (var bore in assembly.Panel(joint.Receiving).Features.OfType<Bore>().Where(b => b.Origin == joint.Id))
            {
                var drilling = Kernel.Drilling.Of(assembly.Panel(joint.Receiving), bore, holes);
                Assert.Equal([joint.Through], drilling.Mates.Select(m => m.Id));
                Assert.Equal(((Screw)joint.Fasteners[0].Fastener).Length.Value, drilling.Stop!.Value, 1e-9);
            }
    }, iter: 60);

    [Theory]
    [InlineData("{at: [50, 50], diameter: 3, depth: 10}", null, 10.0)]
    [InlineData("{at: [50, 50], diameter: 3}", Surface.Outside, null)]
    [InlineData("{at: [50, 50], diameter: 3, face: outside}", Surface.Inside, null)]
    [InlineData("{at: [50, 50], diameter: 3, depth: 18}", Surface.Outside, 18.0)]
    [InlineData("{at: [50, 50], diameter: 3, depth: 10, method: given}", null, null)]
    [InlineData("{edge: left, at: 50, diameter: 3, depth: 20}", null, 20.0)]
    public void Backing_and_stop_follow_from_the_depth(string bore, Surface? exit, double? stop)
    {
        var assembly = Loose("", bore);

        var drilling = Kernel.Drilling.Of(assembly.Panels[0], assembly.Panels[0].Features.OfType<Bore>().Single(), new ThroughHoles(assembly.Panels));

        Assert.Equal((exit, stop), (drilling.Exit, drilling.Stop?.Value));
    }

    [Theory]
    [MemberData(nameof(Habits))]
    public void Machine_drawing_has_the_machined_bores_only_and_everything_else(string faces, string edges) => RandomCabinet.Any.Sample(cabinet =>
    {
        var (plain, made) = (Fixtures.DesignOf(cabinet.Text).Assembly, Fixtures.DesignOf(cabinet.Text + $"methods: {{faces: {faces}, edges: {edges}}}\n").Assembly);
        foreach (var (before, panel) in plain.Panels.Zip(made.Panels))
        {
            var circles = Machines.RoutedOf(panel).OfType<CircleEntity>().Count();
            Assert.Equal(panel.Features.OfType<Bore>().Count(b => b.Surface.IsFace() && b.Method == BoreMethod.Machined), circles);
            Assert.Equal(Machines.RoutedOf(before).Where(e => e is not CircleEntity), Machines.RoutedOf(panel).Where(e => e is not CircleEntity));
        }
    }, iter: 10);

    [Fact]
    public void Given_bores_are_not_in_the_machine_drawing() =>
        Assert.Single(Machines.RoutedOf(Loose("", "{at: [50, 50], diameter: 35, depth: 12, method: given}, {at: [90, 50], diameter: 5}").Panels[0]).OfType<CircleEntity>());

    private static Assembly Loose(string more, string bores) =>
        Fixtures.DesignOf("project: p\nboards: {ply: {kind: plywood, thickness: 18}}\n" + more + "panels: {a: {board: ply, length: 400, width: 200, bores: [" + bores + "]}}\n").Assembly;

    private static IEnumerable<Bore> Bores(string more, string bores) => Loose(more, bores).Panels[0].Features.OfType<Bore>();
}
