using ShopDrawings.Kernel;

namespace ShopDrawings.Tests.Hardware;

/// <summary>
/// Hardware lands where someone who stands before the face puts it. The places are worked out in the assembly, from where that person looks,
/// and not in the panel's frame.
/// </summary>
public class FittingTests
{
    // Nothing about it is symmetrical.
    private const string Bracket =
        """
        hardware:
          bracket:
            length: 50
            width: 30
            height: 12
            bores:
              - {at: [10, 3], diameter: 4}
              - {at: [-11, 8], diameter: 5, depth: 6}
            slots: [{from: [-20, -5], to: [-8, -5], width: 4}]
            cut-outs:
              - {rectangle: {at: [12, 6], length: 8, width: 5, corner-radius: 1}}
              - {circle: {at: [-3, -11], diameter: 6}}
              - outline: [[2, 2], [6, 2], {through: [5, 4], to: [3, 5]}]
            marks:
              - {from: [5, -7], to: [15, -9]}
              - {at: [21, -13]}
        """;

    public static TheoryData<string, string, string, int> Places =>
    [
        .. from outside in new[] { "front", "back", "left", "right", "top", "bottom" }
           from face in new[] { "inside", "outside" }
           from turn in new[] { 0, 90, 180, 270 }
           select (outside, outside is "left" or "right" ? "back" : outside is "top" or "bottom" ? "front" : "left", face, turn),
    ];

    [Theory]
    [MemberData(nameof(Places))]
    public void Hardware_lands_where_the_maker_sees_it(string outside, string along, string face, int turn)
    {
        var assembly = Fixtures.DesignOf(
            $$$$"""
            project: One bracket
            boards: {ply: {kind: plywood, thickness: 18}}
            panels: {board: {board: ply, length: 300, width: 200, place: {corner: [100, 200, 300], outside: {{{{outside}}}}, along: {{{{along}}}}}}}
            fittings: {one: {hardware: bracket, panel: board, face: {{{{face}}}}, at: [120, 70], turn: {{{{turn}}}}}}
            {{{{Bracket}}}}
            """).Assembly;
        var panel = assembly.Panel("board");
        var placement = panel.Placement!;
        var surface = face == "inside" ? Surface.Inside : Surface.Outside;

        // The person looks into the face and holds their head so that the panel's y points up.
        var look = Vector(panel.Facing(surface).Opposite());
        var up = Vector(placement.AlongWidth);
        var right = look.Cross(up);
        var foot = placement.ToAssembly(panel.OnSurface(surface, new Point2(120, 70)));
        var (cos, sin) = (Math.Cos(turn * Math.PI / 180), Math.Sin(turn * Math.PI / 180));
        Point3 Seen(double x, double y) => foot + right * (x * cos - y * sin) + up * (x * sin + y * cos);
        Point3 On(Point2 p) => placement.ToAssembly(panel.OnSurface(surface, p));

        var bores = panel.Features.OfType<Bore>().ToList();
        Near(Seen(10, 3), On(bores[0].At.Point));
        Near(Seen(-11, 8), On(bores[1].At.Point));
        Assert.Equal((4, null, 5, 6), (bores[0].Diameter.Value, bores[0].Depth?.Value, bores[1].Diameter.Value, bores[1].Depth?.Value));
        Assert.All(bores, b => Assert.Equal(surface, b.Surface));

        var cutOuts = panel.Features.OfType<CutOut>().Select(c => c.Outline).ToList();
        Assert.Equal(4, cutOuts.Count);
        AllNear([Seen(-20, -7), Seen(-8, -7), Seen(-8, -3), Seen(-20, -3)], Ends(cutOuts[0]));
        AllNear([Seen(-22, -5), Seen(-6, -5)], cutOuts[0].Segments.Where(s => !s.IsLine).Select(s => On(s.Middle)));
        AllNear([Seen(13, 6), Seen(19, 6), Seen(20, 7), Seen(20, 10), Seen(19, 11), Seen(13, 11), Seen(12, 10), Seen(12, 7)], Ends(cutOuts[1]));
        AllNear([Seen(13, 7), Seen(19, 7), Seen(19, 10), Seen(13, 10)], cutOuts[1].Segments.Where(s => !s.IsLine).Select(s => On(s.Centre)));
        Near(Seen(-3, -11), On(cutOuts[2].AsCircle!.Value.Centre));
        AllNear([Seen(2, 2), Seen(6, 2), Seen(3, 5)], Ends(cutOuts[3]));
        Assert.True(Assert.Single(cutOuts[3].Segments, s => !s.IsLine) is var arc && Math.Abs((On(arc.Centre) - Seen(5, 4)).Length - arc.Radius) < 1e-9);
        Assert.Equal([12 * 4 + Math.PI * 4, 8 * 5 - (4 - Math.PI), Math.PI * 9], cutOuts[..3].Select(c => c.Area), (a, b) => Math.Abs(a - b) < 1e-9);
        Assert.All(cutOuts, c => Assert.True(c.Area > 0));
        IEnumerable<Point3> Ends(Contour contour) => contour.Segments.Select(s => On(s.Start));

        var marks = panel.Features.OfType<Mark>().ToList();
        AllNear([Seen(5, -7), Seen(15, -9)], [On(marks[0].From.Point), On(marks[0].To!.Value.Point)]);
        Near(Seen(21, -13), On(marks[1].From.Point));
        Assert.Null(marks[1].To);
        Assert.All(marks, m => Assert.Equal(surface, m.Face));

        var volume = placement.ToAssembly(Assert.Single(Assert.Single(assembly.Hardware).Volumes));
        var block = Box3.Between(Seen(-25, -15), Seen(25, 15) + look * -12);
        Near(block.Min, volume.Min);
        Near(block.Max, volume.Max);
    }

    [Fact]
    public void Place_by_two_edges_is_that_of_a_maker_for_left_and_right_alike()
    {
        var assembly = Fixtures.DesignOf(
            """
            project: Two clips
            boards: {ply: {kind: plywood, thickness: 18}}
            cabinet: {width: 600, height: 700, depth: 300, board: ply}
            fittings:
              one: {hardware: cable-clip, panel: left-side, from: {front: 60, top: 100}}
              two: {hardware: cable-clip, panel: right-side, from: {front: 60, top: 100}}
            """).Assembly;

        Point3 Entry(string id) => assembly.Panel(id) is var p && p.Features.OfType<Bore>().Single(b => b.Origin is "one" or "two") is var bore
            ? p.Placement!.ToAssembly(p.OnSurface(bore.Surface, bore.At.Point)) : default;

        Near(new Point3(18, 60, 600), Entry("left-side"));
        Near(new Point3(582, 60, 600), Entry("right-side"));
    }

    [Fact]
    public void Openings_go_on_through_a_lining_in_their_true_shape_and_marks_and_blind_bores_do_not()
    {
        var assembly = Fixtures.DesignOf(
            $$$$"""
            project: Bracket behind a lining
            boards: {ply: {kind: plywood, thickness: 18}, thin: {kind: hardboard, thickness: 6}}
            cabinet:
              width: 600
              height: 700
              depth: 300
              board: ply
              back: {board: ply, fit: within-sides}
              stacked: [{height: 200}, {name: up, lining: {board: thin, faces: [back, left]}}]
            fittings:
              one: {hardware: bracket, panel: back, face: outside, from: {left: 150, top: 130}, turn: 90}
              two: {hardware: bracket, panel: back, from: {left: 300, top: 130}}
              below: {hardware: bracket, panel: back, from: {left: 300, bottom: 100}}
            {{{{Bracket}}}}
            """).Assembly;
        var (back, lining) = (assembly.Panel("back"), assembly.Panel("up/back-lining"));

        // Seen from the front, every opening of the two brackets above stands in both.
        string[] Seen(Panel panel, string origin) =>
        [
            .. panel.Features.OfType<CutOut>().Where(c => c.Origin == origin).Select(c => c.Outline).Select(outline => string.Join(" ", outline.Segments
                .SelectMany(s => new[] { s.Start, s.Middle }).Select(p => panel.Placement!.ToAssembly(new Point3(p.X, p.Y, 0)))
                .Select(p => FormattableString.Invariant($"{Math.Round(p.X, 6)},{Math.Round(p.Z, 6)}")).Order(StringComparer.Ordinal))).Order(StringComparer.Ordinal),
        ];
        foreach (var origin in new[] { "one", "two" })
        {
            Assert.Equal(4, Seen(back, origin).Length);
            Assert.Equal(Seen(back, origin), Seen(lining, origin));
            Assert.Equal(4, Assert.Single(lining.Features.OfType<Bore>(), b => b.Origin == origin).Diameter.Value);
        }

        Assert.Equal(4, Seen(back, "below").Length);
        Assert.Empty(Seen(lining, "below"));
        Assert.DoesNotContain(lining.Features, f => f is Mark or Bore { Depth: not null });
        Assert.All(lining.Features.OfType<CutOut>(), c => Assert.True(c.Outline.Area > 0));
        Assert.DoesNotContain(assembly.Panel("up/left-lining").Features, f => f.Origin is "one" or "two" or "below");
    }

    // The lining ends 582 mm from the left and 236 mm from below. The second circle is 56.6 mm away from that corner, the box around it is not.
    [Fact]
    public void Opening_over_the_edge_of_a_lining_is_cut_there_and_one_beside_its_corner_is_not()
    {
        var assembly = Fixtures.DesignOf(
            """
            project: Portholes
            boards: {ply: {kind: plywood, thickness: 18}, thin: {kind: hardboard, thickness: 6}}
            cabinet:
              width: 600
              height: 700
              depth: 300
              board: ply
              back: {board: ply, fit: behind}
              stacked: [{height: 200}, {name: up, lining: {board: thin, faces: [back, left]}}]
            hardware: {porthole: {length: 100, width: 100, height: 0, cut-outs: [{circle: {at: [0, 0], diameter: 100}}]}}
            fittings:
              over-the-edge: {hardware: porthole, panel: back, from: {left: 300, bottom: 200}}
              beside-the-corner: {hardware: porthole, panel: back, from: {left: 622, bottom: 196}}
            """).Assembly;
        var (back, lining) = (assembly.Panel("back"), assembly.Panel("up/back-lining"));

        Assert.Equal(2, back.Features.OfType<CutOut>().Count());
        Assert.Equal((582, 236), (Right(lining), Lower(lining)));
        Assert.Equal("over-the-edge", Assert.Single(lining.Features.OfType<CutOut>()).Origin);
        Assert.Empty(assembly.Hardware.SelectMany(h => h.Volumes));

        static double Right(Panel panel) => panel.Placement!.ToAssembly(panel.Box).Max.X;
        static double Lower(Panel panel) => panel.Placement!.ToAssembly(panel.Box).Min.Z;
    }

    [Fact]
    public void Every_part_of_the_shipped_catalogue_can_be_fixed_without_a_finding()
    {
        var names = Fixtures.Mistakes(
            """
            project: Which parts are there?
            boards: {ply: {kind: plywood, thickness: 18}}
            panels: {board: {board: ply, length: 300, width: 200}}
            fittings: {x: {hardware: zzzzzzzzzz, panel: board, at: [0, 0]}}
            """).Single().Message.Split("known are ")[1].Split(", ");
        Assert.True(names.Length >= 15);

        foreach (var name in names)
        {
            var design = Fixtures.DesignOf(
                $$$$"""
                project: One part
                boards: {ply: {kind: plywood, thickness: 18}}
                panels: {board: {board: ply, length: 1200, width: 300, place: {corner: [0, 0, 0], outside: bottom}}}
                fittings: {part: {hardware: {{{{name}}}}, panel: board, at: [600, 150]}}
                """);

            Assert.Empty(Shop.Check(design));
            Assert.NotEmpty(design.Assembly.Panel("board").Features);
        }
    }

    // Screw holes of square fans and the opening between them, worked by hand: corners of the square, frame less 4 mm.
    [Theory]
    [InlineData("fan-80", 71.5, 76)]
    [InlineData("fan-92", 82.5, 88)]
    [InlineData("fan-120", 105, 116)]
    public void Fan_has_its_square_of_holes_and_its_opening(string name, double square, double opening)
    {
        var panel = Fixtures.DesignOf(
            $$$$"""
            project: One fan
            boards: {ply: {kind: plywood, thickness: 18}}
            panels: {board: {board: ply, length: 400, width: 300}}
            fittings: {fan: {hardware: {{{{name}}}}, panel: board, at: [200, 150]}}
            """).Assembly.Panel("board");

        var holes = panel.Features.OfType<Bore>().Select(b => b.At.Point).ToList();
        Assert.Equal(4, holes.Distinct().Count());
        Assert.All(holes, h => Assert.Equal((square / 2, square / 2), (Math.Abs(h.X - 200), Math.Abs(h.Y - 150))));
        Assert.Equal((new Point2(200, 150), opening / 2), panel.Features.OfType<CutOut>().Single().Outline.AsCircle);
    }

    private static Point3 Vector(Direction direction) => direction switch
    {
        Direction.Left => new(-1, 0, 0),
        Direction.Right => new(1, 0, 0),
        Direction.Front => new(0, -1, 0),
        Direction.Back => new(0, 1, 0),
        Direction.Bottom => new(0, 0, -1),
        _ => new(0, 0, 1),
    };

    private static void Near(Point3 expected, Point3 actual) => Assert.True((expected - actual).Length < 1e-9, $"{actual} instead of {expected}");

    // The same places, in any order.
    private static void AllNear(Point3[] expected, IEnumerable<Point3> actual)
    {
        var left = actual.ToList();
        Assert.Equal(expected.Length, left.Count);
        foreach (var point in expected) Assert.Equal(1, left.RemoveAll(p => (p - point).Length < 1e-9));
    }
}
