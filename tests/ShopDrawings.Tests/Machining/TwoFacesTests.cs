using CsCheck;
using ShopDrawings.Kernel;
using static ShopDrawings.Tests.Machining.RandomPanels;

namespace ShopDrawings.Tests.Machining;

/// <summary>What is made in which face, where it lies when the panel is turned over, and what is not made at all.</summary>
public class TwoFacesTests
{
    private static readonly Gen<Machine> AnyRouter =
        Gen.Select(Gen.Enum<FlipAxis>(), Gen.Enum<Corner>(), Gen.Bool, Gen.Enum<FaceUp>(), Gen.Bool).Select(m => Machines.Milling(6, 3) with
        {
            Paths = CutLines.Finished, Flip = m.Item1, Origin = m.Item2, IsOriginSawn = m.Item3, FaceUp = m.Item4, Pins = m.Item5 ? new LocatingPins(8, 25) : null,
            Tools = [.. new[] { 3.0, 5, 8, 15, 35 }.Select(d => new Tool(ToolKind.Drill, d)), new Tool(ToolKind.Cutter, 6)],
        });

    [Fact]
    public void Groove_in_the_outside_of_a_side_is_milled_with_the_side_turned_over()
    {
        var panel = Plain(720, 300, Groove(0, 290, 720, 290, 6, 8), Blind(100, 50, 5, 12), Blind(600, 40, 8, 10, Surface.Outside), Through(20, 30, 4));

        var plan = Machines.PlanOf(panel, Machines.Milling(6, 3) with { Paths = CutLines.Finished, Tools = [new(ToolKind.Drill, 5), new(ToolKind.Drill, 8), new(ToolKind.Drill, 4), new(ToolKind.Cutter, 6)] });

        Assert.Equal(["panel", "panel_outside"], plan.Programs.Select(p => p.Name));
        Assert.Equal([new(20, 30), new(100, 50)], plan.Programs[0].Operations.OfType<DrillOperation>().Select(d => d.At).OrderBy(p => p.X));
        var turned = Assert.Single(plan.Programs[1].Operations);
        Assert.Equal((new Point2(600, 260), Surface.Outside), (((DrillOperation)turned).At, turned.Face));
    }

    [Theory]
    [InlineData(FlipAxis.Length, 600, 260)]
    [InlineData(FlipAxis.Width, 120, 40)]
    public void Turned_panel_lies_mirrored_about_the_axis_it_was_turned_about(FlipAxis flip, double x, double y)
    {
        var panel = Plain(720, 300, Blind(600, 40, 8, 10, Surface.Outside));

        var turned = Machines.PlanOf(panel, Machines.Milling(6) with { Flip = flip, Tools = [new(ToolKind.Drill, 8), new(ToolKind.Cutter, 6)] }).Programs[1];

        Assert.True(turned.IsSecond);
        Assert.Equal(new Point2(x, y), turned.Operations.OfType<DrillOperation>().Single().At);
    }

    // The machine's frame, undone by the physical turn: a point of the table, the panel picked up, turned about the axis and put back.
    [Fact]
    public void Turned_back_every_bore_is_the_panels_own() => Gen.Select(Drilled, AnyRouter).Sample((panel, machine) =>
    {
        var programs = Machines.PlanOf(panel, machine).Programs;
        var found = programs.SelectMany(program => program.Operations.OfType<DrillOperation>().Where(d => !d.IsForPin).Select(d => Row(Back(programs, program, panel, d.At), d.Depth is null ? null : d.Face, d.Diameter, d.Depth)));

        var expected = panel.Features.OfType<Bore>().Select(b => Row(b.At.Point, b.Depth is null ? null : b.Surface, b.Diameter.Value, b.Depth?.Value));
        Assert.Equal(expected.Order(), found.Order());
        Assert.All(programs, p => Assert.All(p.Operations, o => Assert.True(o.Depth is null || o.Face == p.Panels.Single().Lie.Up, $"{p.Name} holds {o}")));
    }, iter: Fuzz.Iterations(200));

    [Fact]
    public void Origin_is_the_corner_it_is_said_to_be() => Gen.Select(Drilled, AnyRouter).Sample((panel, machine) =>
    {
        foreach (var program in Machines.PlanOf(panel, machine with { Pins = null }).Programs)
        {
            var lie = program.Panels.Single().Lie;
            var box = lie.Of(machine.IsOriginSawn || program.IsSecond ? panel.CutOutline : panel.Outline).Bounds;
            var corner = machine.Origin switch { Corner.LowerLeft => box.Min, Corner.UpperRight => box.Max, Corner.LowerRight => new(box.Max.X, box.Min.Y), _ => new(box.Min.X, box.Max.Y) };
            Assert.True(corner.Length < 1e-9, $"{corner}");
        }
    }, iter: Fuzz.Iterations(60));

    [Fact]
    public void Pins_are_the_same_holes_before_and_after_the_turn() => Gen.Select(Drilled, AnyRouter).Sample((panel, machine) =>
    {
        machine = machine with { Pins = new LocatingPins(8, 25) };
        var programs = Machines.PlanOf(panel, machine).Programs;
        if (programs.Length == 1)
        {
            Assert.DoesNotContain(programs[0].Operations, o => o is DrillOperation { IsForPin: true });
            Assert.Contains(programs[0].Operations, o => o is ProfileOperation { IsOutside: true });
            return;
        }

        var pins = programs[0].Operations.OfType<DrillOperation>().Where(d => d.IsForPin).Select(d => d.At).ToList();
        Assert.Equal(2, pins.Count);
        Assert.DoesNotContain(programs[1].Operations, o => o is DrillOperation { IsForPin: true });
        // The table's holes stay; the turn about the line through them carries the panel of the first file to that of the second.
        var axis = machine.Flip == FlipAxis.Length ? (pins[0].Y, pins[1].Y) : (pins[0].X, pins[1].X);
        Assert.Equal(axis.Item1, axis.Item2, 1e-9);
        Point2 Turned(Point2 p) => machine.Flip == FlipAxis.Length ? p with { Y = 2 * axis.Item1 - p.Y } : p with { X = 2 * axis.Item1 - p.X };
        var (before, after) = (programs[0].Panels.Single().Lie, programs[1].Panels.Single().Lie);
        foreach (var p in new[] { new Point2(0, 0), new(10, 0), new(0, 10) }) Assert.True(Turned(before.Of(p)).DistanceTo(after.Of(p)) < 1e-9, $"{Turned(before.Of(p))} is not {after.Of(p)}");
        // Beyond the ends, so that they are not in the panel.
        Assert.All(pins, p => Assert.Equal(25, programs[0].Panels.Single().Outline.DistanceTo(p), 1e-6));
    }, iter: Fuzz.Iterations(100));

    [Fact]
    public void Panel_on_pins_is_cut_out_last_and_one_against_stops_first() => Gen.Select(Drilled, AnyRouter).Sample((panel, machine) =>
    {
        var programs = Machines.PlanOf(panel, machine).Programs;
        Assert.Equal(programs.Select((_, i) => i == (machine.Pins is null ? 0 : programs.Length - 1)), programs.Select(p => p.Operations.Any(o => o is ProfileOperation { IsOutside: true })));
        Assert.Single(programs.SelectMany(p => p.Operations), o => o is ProfileOperation { IsOutside: true });
    }, iter: Fuzz.Iterations(100));

    [Fact]
    public void Pins_without_a_tool_are_said()
    {
        var plan = Machines.PlanOf(Plain(200, 100, Blind(50, 50, 6, 8, Surface.Outside)), Machines.Milling(6) with { Pins = new LocatingPins(8, 25) });

        Assert.Contains(plan.Findings, f => f is { Rule: "machine-tools", Severity: Severity.Warning, Panels.IsEmpty: true, Message: "router: no tool makes the bores of its pins, 8 mm" });
    }

    [Fact]
    public void Busier_face_lies_up()
    {
        var machine = Machines.Milling(6) with { FaceUp = FaceUp.Busier };
        Surface First(params Feature[] features) => Machines.PlanOf(Plain(300, 200, features), machine).Programs[0].Panels.Single().Lie.Up;

        Assert.Equal(Surface.Outside, First(Blind(50, 50, 8, 5, Surface.Outside), new Mark("test", Surface.Outside, At(10, 10), null), Blind(90, 50, 8, 5)));
        Assert.Equal(Surface.Inside, First(Blind(50, 50, 8, 5, Surface.Outside), Blind(90, 50, 8, 5)));
        Assert.Equal(Surface.Inside, First(Bore.Through("test", Surface.Outside, At(50, 50), Mm(8)), Blind(100, 5, 8, 20, Surface.Near)));
        Assert.Equal(Surface.Inside, First(Blind(50, 50, 8, 5, Surface.Outside) with { Method = BoreMethod.Marked }));
    }

    [Fact]
    public void Machine_that_turns_nothing_over_makes_one_face_and_says_so() => Gen.Select(Drilled, Gen.Enum<FaceUp>()).Sample((panel, up) =>
    {
        var plan = Machines.PlanOf(panel, Machines.Milling(2.5) with { FaceUp = up, SecondFace = SecondFace.None });
        var program = Assert.Single(plan.Programs);
        var hidden = program.Panels.Single().Lie.Up.Opposite();
        var count = panel.Features.OfType<Bore>().Count(b => b.Depth is not null && b.Surface == hidden);
        Assert.DoesNotContain(program.Operations, o => o.Depth is not null && o.Face == hidden);
        if (count == 0) Assert.Empty(plan.Findings);
        else Assert.Contains($"{count} feature{(count == 1 ? "" : "s")} in panel", Assert.Single(plan.Findings, f => f.Rule == "machine-faces").Message, StringComparison.Ordinal);
    }, iter: Fuzz.Iterations(60));

    [Theory]
    [InlineData(MachineKind.Router, 2)]
    [InlineData(MachineKind.Laser, 2)]
    [InlineData(MachineKind.Drawing, 0)]
    public void Bores_in_edges_that_are_left_out_are_noted(MachineKind kind, int count)
    {
        var bore = Blind(100, 9, 8, 20, Surface.Near);
        var machine = new Machine { Name = "any", Kind = kind, Tools = [new(ToolKind.Cutter, 6), new(ToolKind.Beam, 0.2)] };

        var plan = Machines.PlanOf(Plain(300, 200, bore, bore with { Method = BoreMethod.Marked }, Blind(100, 9, 8, 20, Surface.Start)), machine);

        Assert.Equal(
            count == 0 ? [] : [(Severity.Note, "any: it drills no edges: 2 bores in panel")],
            plan.Findings.Where(f => f.Rule == "machine-faces").Select(f => (f.Severity, f.Message)));
    }

    [Fact]
    public void Drawing_shows_the_other_face_as_seen_through() => Drilled.Sample(panel =>
    {
        var program = Machines.ProgramOf(panel, Machines.Drawing);

        Assert.Equal(
            panel.Features.OfType<Bore>().Select(b => Row(b.At.Point, b.Surface, b.Diameter.Value, b.Depth?.Value)).Order(),
            program.Operations.OfType<DrillOperation>().Select(d => Row(d.At, d.Face, d.Diameter, d.Depth)).Order());
    }, iter: Fuzz.Iterations(40));

    // From the table to the panel's own frame: from the origin corner to the panel's, then turned back about the axis. On pins the origin stays
    // where it was; against stops the panel that is turned over lies with its sawn edges.
    private static Point2 Back(IReadOnlyList<FaceProgram> programs, FaceProgram program, Panel panel, Point2 at)
    {
        var machine = program.Machine;
        var zeroed = machine.Pins is null ? program : programs[0];
        var corners = (machine.IsOriginSawn || zeroed.IsSecond ? panel.CutOutline : panel.Outline).Segments.Select(s => Turned(zeroed, s.Start)).ToList();
        var origin = new Point2(
            machine.Origin is Corner.LowerLeft or Corner.UpperLeft ? corners.Min(c => c.X) : corners.Max(c => c.X),
            machine.Origin is Corner.LowerLeft or Corner.LowerRight ? corners.Min(c => c.Y) : corners.Max(c => c.Y));
        return Turned(program, at + origin);

        // There and back are one.
        Point2 Turned(FaceProgram lying, Point2 p) =>
            lying.Panels.Single().Lie.Up == Surface.Inside ? p : machine.Flip == FlipAxis.Length ? p with { Y = panel.Width.Value - p.Y } : p with { X = panel.Length.Value - p.X };
    }

    private static string Row(Point2 at, Surface? face, double diameter, double? depth) => FormattableString.Invariant($"{at.X:0.0000} {at.Y:0.0000} {face} {diameter:0.0000} {depth:0.0000}");
}
