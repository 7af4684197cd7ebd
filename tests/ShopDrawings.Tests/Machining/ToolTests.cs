using CsCheck;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;
using static ShopDrawings.Tests.Machining.RandomPanels;

namespace ShopDrawings.Tests.Machining;

/// <summary>Which tool makes what, what is said where there is none, and the order in which all is made.</summary>
public class ToolTests
{
    private static Machine Router(params Tool[] tools) => Machines.Milling() with { Tools = [.. tools] };

    private static Tool Drill(double diameter) => new(ToolKind.Drill, diameter);

    private static Tool Cutter(double diameter) => new(ToolKind.Cutter, diameter);

    [Theory]
    [InlineData(8, "Drill 8")]              // its own drill
    [InlineData(8.01, "Drill 8")]           // as good as that
    [InlineData(6, "Cutter 6 plunged")]     // a cutter of its diameter plunges
    [InlineData(8.02, "Cutter 6 milled")]
    [InlineData(35, "Cutter 6 milled")]     // the widest that goes in
    [InlineData(5, "Cutter 3 milled")]
    [InlineData(2.5, "Drill 2.5 unknown")]
    public void Bore_is_made_by_its_drill_or_milled_by_the_widest_cutter_that_goes_in(double diameter, string expected)
    {
        var plan = Machines.PlanOf(Plain(200, 100, Through(50, 50, diameter)), Router(Drill(8), Cutter(6), Cutter(3)));

        var made = plan.Programs.Single().Operations[0];
        Assert.Equal(expected, FormattableString.Invariant($"{made.Tool.Kind} {made.Tool.Diameter}{(made is PocketOperation ? " milled" : made.Tool.Kind == ToolKind.Cutter ? " plunged" : made.Tool.IsKnown ? "" : " unknown")}"));
        Assert.Equal(expected.EndsWith("unknown", StringComparison.Ordinal), !plan.Findings.IsEmpty);
    }

    [Fact]
    public void Countersink_takes_the_narrowest_that_is_wide_enough()
    {
        Tool Of(double diameter, params double[] sinks) =>
            Machines.ProgramOf(Plain(200, 100, Blind(50, 50, diameter, 4, use: BoreUse.Countersink)), Router([.. sinks.Select(d => new Tool(ToolKind.Countersink, d)), Cutter(6), Drill(diameter)])).Operations[0].Tool;

        Assert.Equal(new Tool(ToolKind.Countersink, 12), Of(9, 8, 20, 12, 16));
        Assert.Equal(new Tool(ToolKind.Countersink, 9), Of(9, 9, 12));
        Assert.Equal(new Tool(ToolKind.Countersink, 9) { IsKnown = false }, Of(9, 8));
    }

    [Fact]
    public void Missing_drills_are_said_once_a_diameter_with_the_panels_and_the_bore_stays()
    {
        var a = Plain(600, 300, Through(50, 50, 2), Through(90, 50, 2), Through(130, 50, 2.5));
        var b = Panel.Rectangular("other", BoardOf(18), Mm(600), Mm(300)).WithFeatures([Through(50, 50, 2)]);

        var plan = MachiningPlanner.Plan([a, b], [], Router(Cutter(6)), LengthStyle.Millimetres);

        Assert.Equal(["router: no tool makes bores of 2 mm: 3 bores in panel, other", "router: no tool makes bores of 2.5 mm: 1 bore in panel"], plan.Findings.Select(f => f.Message));
        Assert.Equal([["panel", "other"], ["panel"]], plan.Findings.Select(f => f.Panels.ToArray()));
        Assert.All(plan.Findings, f => Assert.Equal(Severity.Warning, f.Severity));
        Assert.Equal([3, 1], plan.Programs.Select(p => p.Operations.OfType<DrillOperation>().Count()));
    }

    [Fact]
    public void Drill_that_is_too_short_gives_way_to_any_that_is_not()
    {
        Tool Of(double depth, params Tool[] tools) => Machines.ProgramOf(Plain(200, 100, Blind(50, 50, 8, depth)), Router([.. tools, Cutter(3)])).Operations[0].Tool;

        Tool stub = Drill(8) with { Reach = 10 }, longer = Drill(8) with { Reach = 40, Number = 2 }, mill = Cutter(8) with { Reach = 40 };
        Assert.Equal(stub, Of(10, stub, longer));
        Assert.Equal(longer, Of(12, stub, longer));
        Assert.Equal(mill, Of(12, stub, mill));
        Assert.Equal(stub, Of(10, mill, stub));
    }

    [Fact]
    public void Too_short_a_tool_is_said()
    {
        var plan = Machines.PlanOf(Plain(200, 100, Through(50, 50, 8)), Router(Drill(8) with { Reach = 15 }, Cutter(6) with { Reach = 17.5 }));

        Assert.Equal(
            ["router: its drill of 8 mm reaches 15 mm, and 18 mm are asked for: bore of 8 mm: 1 cut in panel", "router: its cutter of 6 mm reaches 17.5 mm, and 18 mm are asked for: outline: 1 cut in panel"],
            plan.Findings.Select(f => f.Message));
    }

    [Theory]
    [InlineData(6, 6.0)]
    [InlineData(6.3, 6.0)]
    [InlineData(5.9, 3.0)]
    [InlineData(2.9, null)]
    public void Groove_takes_the_widest_cutter_that_goes_in(double width, double? cutter)
    {
        var plan = Machines.PlanOf(Plain(200, 100, Groove(20, 50, 180, 50, width, 6)), Router(Cutter(3), Cutter(6)));

        var pocket = plan.Programs.Single().Operations.OfType<PocketOperation>().Single();
        Assert.Equal((cutter ?? width, cutter is not null), (pocket.Tool.Diameter, pocket.Tool.IsKnown));
        Assert.Equal(cutter is null, pocket.Paths.IsEmpty);
        if (cutter is null) Assert.Equal("router: no cutter is narrow enough for grooves 2.9 mm wide: 1 groove in panel", Assert.Single(plan.Findings).Message);
        else Assert.Empty(plan.Findings);
    }

    // Wider than it is long, and shorter than the cutter is wide.
    [Fact]
    public void Groove_too_short_for_a_cutter_takes_a_narrower_one_or_is_said()
    {
        var panel = Plain(200, 100, Groove(20, 50, 24, 50, 10, 6));
        PocketOperation Of(MachinePlan plan) => plan.Programs.Single().Operations.OfType<PocketOperation>().Single();

        var (both, wide) = (Machines.PlanOf(panel, Router(Cutter(6), Cutter(3))), Machines.PlanOf(panel, Router(Cutter(6))));
        Assert.Equal((3, false), (Of(both).Tool.Diameter, Of(both).Paths.IsEmpty));
        Assert.Contains("no cutter is narrow enough", Assert.Single(wide.Findings).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(3, 6, true)]        // as round as the cutter
    [InlineData(2.5, 3, true)]
    [InlineData(1, 3, false)]
    public void Round_hollows_decide_the_cutter_of_an_opening(double radius, double cutter, bool isKnown)
    {
        var plan = Machines.PlanOf(Plain(300, 200, Opening(Contour.RoundedRectangle(50, 50, 150, 100, radius))), Router(Cutter(6), Cutter(3)));

        var opening = plan.Programs.Single().Operations.OfType<ProfileOperation>().Single(p => !p.IsOutside);
        Assert.Equal(isKnown, opening.Tool.IsKnown);
        if (isKnown) Assert.Equal(cutter, opening.Tool.Diameter);
        Assert.Equal(isKnown, plan.Findings.IsEmpty);
        Assert.Equal(!isKnown, opening.Paths.IsEmpty);
        if (isKnown) return;
        // The missing one is as wide as the hollows are round.
        Assert.InRange(opening.Tool.Diameter, 2 * radius - 0.01, 2 * radius + 0.1);
        Assert.Equal($"router: no cutter follows an opening into all its hollows; one of {LengthStyle.Millimetres.Describe(opening.Tool.Diameter)} would: 1 opening in panel", Assert.Single(plan.Findings).Message);
    }

    [Fact]
    public void Cutter_as_round_as_a_hollow_turns_in_its_corner()
    {
        var ways = Machines.ProgramOf(Plain(300, 200, Opening(Contour.RoundedRectangle(50, 50, 150, 100, 3))), Router(Cutter(6))).Operations.OfType<ProfileOperation>().Single(p => !p.IsOutside).Paths;

        Assert.Equal(Contour.Rectangle(53, 53, 147, 97).Bounds, Assert.Single(ways).Bounds);
        Assert.Equal(4, ways[0].Segments.Length);
    }

    // It goes once along the middle, and nothing falls out.
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Opening_as_wide_as_the_cutter_is_one_way_along_its_middle(bool isRound)
    {
        var outline = isRound ? Contour.Slot(new(50, 50), new(90, 80), 6) : Contour.Rectangle(50, 50, 100, 56);
        var plan = Machines.PlanOf(Plain(300, 200, Opening(outline)), Router(Cutter(6), Cutter(3)));

        Assert.Empty(plan.Findings);
        Assert.Single(plan.Programs.Single().Operations.OfType<ProfileOperation>());
        var slot = Assert.Single(plan.Programs.Single().Operations.OfType<PocketOperation>());
        Assert.Equal((6, null, outline), (slot.Tool.Diameter, slot.Depth, slot.Finished));
        var way = Assert.Single(slot.Paths);
        Assert.False(way.IsClosed);
        var middle = Assert.Single(way.Segments);
        Point2[] ends = isRound ? [new(50, 50), new(90, 80)] : [new(53, 53), new(97, 53)];
        Assert.True(middle.IsLine);
        Assert.All(new[] { middle.Start, middle.End }.OrderBy(p => p.X).Zip(ends), p => Assert.True(p.First.DistanceTo(p.Second) < 1e-9, $"{p}"));
    }

    [Theory]
    [InlineData(6, true)]
    [InlineData(6.005, true)]       // as good as that
    [InlineData(6.02, false)]
    public void Round_opening_as_wide_as_the_cutter_is_plunged(double diameter, bool isPlunged)
    {
        var plan = Machines.PlanOf(Plain(300, 200, Opening(Contour.Circle(new(50, 60), diameter / 2))), Router(Cutter(6)));

        Assert.Empty(plan.Findings);
        Assert.Equal(isPlunged ? 1 : 2, plan.Programs.Single().Operations.OfType<ProfileOperation>().Count());
        if (!isPlunged) return;
        var plunged = Assert.Single(plan.Programs.Single().Operations.OfType<DrillOperation>());
        Assert.Equal((Cutter(6), null, new Point2(50, 60), diameter), (plunged.Tool, plunged.Depth, plunged.At, Math.Round(plunged.Diameter, 9)));
    }

    // Grooves, bores and cuts: what is missing is drawn, so that nobody overlooks it, and cannot be taken for a way.
    [Fact]
    public void What_no_tool_makes_stands_as_its_finished_edge_on_a_layer_of_its_own()
    {
        var (opening, groove) = (Contour.RoundedRectangle(50, 100, 150, 150, 1), Groove(20, 50, 180, 50, 4, 6));
        var machine = Machines.Milling(6);
        var panel = Plain(300, 200, Opening(opening), groove);

        var drawing = MachineDrawing.Of(Machines.ProgramOf(panel, machine), new());

        var untold = drawing.Entities.Where(e => e.Layer.Role == Role.NoTool).ToList();
        Assert.Equal(["NO_TOOL", "NO_TOOL"], untold.Select(e => e.Layer.Name));
        Assert.Equal([groove.Outline.Bounds, opening.Bounds], untold.Select(e => e.Bounds).OrderBy(b => b.Min.Y));
        Assert.Equal(["OUTLINE_PATH_600"], drawing.Entities.Except(untold).Select(e => e.Layer.Name));
        // In a drawing of finished edges they are what they are.
        Assert.DoesNotContain(MachineDrawing.Of(Machines.ProgramOf(panel, machine with { Paths = CutLines.Finished }), new()).Layers, l => l.Role == Role.NoTool);
    }

    // A notch narrower than the cutter, a neck between two wide halves, an arm of an opening.
    public static TheoryData<string, double> Narrows => new() { { "notch", 4 }, { "neck", 4 }, { "arm", 4 }, { "notch", 2 }, { "neck", 2 }, { "arm", 2 } };

    [Theory]
    [MemberData(nameof(Narrows))]
    public void Straight_hollows_decide_the_cutter_too(string what, double width)
    {
        var panel = what switch
        {
            "notch" => Plain(300, 200).WithOutline(Polygon((0, 0), (300, 0), (300, 200), (150 + width, 200), (150 + width, 150), (150, 150), (150, 200), (0, 200))),
            "neck" => Plain(300, 200, Opening(Polygon((50, 50), (100, 50), (100, 70), (120, 70), (120, 50), (170, 50), (170, 100), (120, 100), (120, 70 + width), (100, 70 + width), (100, 100), (50, 100)))),
            _ => Plain(300, 200, Opening(Polygon((50, 50), (150, 50), (150, 50 + width), (90, 50 + width), (90, 100), (50, 100)))),
        };

        var plan = Machines.PlanOf(panel, Router(Cutter(6), Cutter(3)));

        var profile = plan.Programs.Single().Operations.OfType<ProfileOperation>().Single(p => p.IsOutside == (what == "notch"));
        Assert.Equal((width == 4, width == 4), (profile.Tool.IsKnown, plan.Findings.IsEmpty));
        if (profile.Tool.IsKnown) Assert.Equal(3, profile.Tool.Diameter);
        else Assert.Contains(what == "notch" ? "no cutter follows an outline" : "no cutter follows an opening", Assert.Single(plan.Findings).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Cutter_reaches_every_straight_or_round_part_of_an_edge_it_is_chosen_for() => Geometry.Samples.Contours.Sample(outline =>
    {
        var moved = outline.Moved(outline.Bounds.Min * -1);
        var panel = Panel.Rectangular("panel", BoardOf(18), Mm(moved.Bounds.Width), Mm(moved.Bounds.Height)).WithOutline(moved);
        var profile = Machines.ProgramOf(panel, Router(Cutter(6), Cutter(3))).Operations.OfType<ProfileOperation>().Single();
        if (!profile.Tool.IsKnown) return;
        Assert.All(moved.Segments, s => Assert.InRange(profile.Paths.SelectMany(p => p.Segments).Min(w => w.DistanceTo(s.Middle)), profile.Tool.Diameter / 2 - 0.01, profile.Tool.Diameter / 2 + 0.01));
    });

    [Fact]
    public void Marks_without_an_engraver_are_left_out_and_said()
    {
        var panel = Plain(300, 200, new Mark("test", Surface.Inside, At(10, 10), null), new Mark("test", Surface.Inside, At(10, 50), At(90, 50)));

        var (without, with) = (Machines.PlanOf(panel, Router(Cutter(6))), Machines.PlanOf(panel, Router(Cutter(6), new(ToolKind.Engraver, 1))));

        Assert.Equal("router: it has no engraver, so marks are left out: 2 marks in panel", Assert.Single(without.Findings).Message);
        Assert.Equal((0, 2, 0), (without.Programs.Single().Operations.OfType<EngraveOperation>().Count(), with.Programs.Single().Operations.OfType<EngraveOperation>().Count(), with.Findings.Length));
    }

    [Fact]
    public void Laser_scores_what_has_a_depth_and_warns_of_what_it_must_not_cut()
    {
        var laser = new Machine { Name = "laser", Kind = MachineKind.Laser, Tools = [new(ToolKind.Beam, 0.2), new(ToolKind.Engraver, 0.1)], Thickest = 6 };
        var panel = Panel.Rectangular("panel", Board.Create("faced", BoardKind.Melamine, UnitsNet.Length.FromMillimeters(16)), Mm(300), Mm(200))
            .WithFeatures([Blind(50, 50, 5, 8), Groove(20, 100, 200, 100, 6, 5), Through(90, 50, 5)]).WithBands([new EdgeBand(Surface.Near, Mm(1))]);

        var plan = Machines.PlanOf(panel, laser);

        Assert.Equal(["Score", "Score"], plan.Programs.Single().Operations.OfType<EngraveOperation>().Select(e => e.What.ToString()));
        Assert.DoesNotContain(plan.Programs.Single().Operations, o => o is DrillOperation or PocketOperation);
        Assert.Equal(["machine-material", "machine-material", "machine-material", "machine-tools", "machine-tools"], plan.Findings.Select(f => f.Rule));
    }

    // The cutter of 6 mm goes round: 12 mm more each way.
    [Theory]
    [InlineData(588, 388, true)]
    [InlineData(388, 588, true)]
    [InlineData(588.1, 388, false)]
    [InlineData(500, 388.1, false)]
    public void Panel_and_the_cutter_round_it_must_fit_the_bed(double length, double width, bool fits)
    {
        var findings = Machines.PlanOf(Plain(length, width), Router(Cutter(6)) with { Bed = new WorkingArea(600, 400) }).Findings;

        Assert.Equal(fits ? [] : ["machine-material: router: its bed, 600 mm × 400 mm, is too small for these and the tool that goes round them: panel"], findings.Select(f => $"{f.Rule}: {f.Message}"));
    }

    [Fact]
    public void Order_is_pins_drills_countersinks_pockets_engraving_openings_outlines() => Gen.Select(Any, Any, Gen.Bool).Sample((a, b, onSheet) =>
    {
        var machine = Machines.Milling(6, 3) with
        {
            Pins = new LocatingPins(8, 20), NameHeight = 8,
            Tools = [.. new[] { 2.5, 5, 8 }.Select(d => new Tool(ToolKind.Drill, d)), new Tool(ToolKind.Countersink, 70), Cutter(6), Cutter(3), new Tool(ToolKind.Engraver, 1)],
        };
        var sheet = new CutSheet("sheet", a.Board, Mm(2440), Mm(1220), [LyingPanel.At(a, new(20, 20), 0, Surface.Inside), LyingPanel.At(b, new(1000, 20), 1, Surface.Outside)]);
        foreach (var program in MachiningPlanner.Plan([a], onSheet ? [sheet] : [], machine, LengthStyle.Millimetres).Programs)
        {
            int[] stages = [.. program.Operations.Select(Stage)];
            Assert.Equal(stages.Order(), stages);
            // Tool by tool within a stage: none is fetched twice.
            foreach (var stage in program.Operations.GroupBy(Stage))
                Assert.Equal(stage.Select(o => o.Tool).Distinct().Count(), 1 + stage.Zip(stage.Skip(1)).Count(p => p.First.Tool != p.Second.Tool));
        }
    }, iter: Fuzz.Iterations(50));

    [Fact]
    public void Program_does_not_depend_on_the_order_of_panels_or_on_another_run() => Gen.Select(Any, Any).Sample((a, b) =>
    {
        b = Panel.Rectangular("other", b.Board, b.Length, b.Width).WithBands(b.Bands).WithFeatures(b.Features);
        var machine = Machines.Milling(6, 3) with { NameHeight = 8, SmallParts = new SmallParts(1e5, 100, 5, 2) };
        string[] Of(params Panel[] panels) => [.. MachiningPlanner.Plan(panels, [], machine, LengthStyle.Millimetres).Programs.OrderBy(p => p.Name, StringComparer.Ordinal).Select(p => $"{p.Name} {Convert.ToHexString(MachineFiles.Write(p, new(), new()))}")];

        var first = Of(a, b);
        Assert.Equal(first, Of(a, b));
        Assert.Equal(first, Of(b, a));
    }, iter: Fuzz.Iterations(8));

    private static int Stage(MachineOperation operation) => operation switch
    {
        DrillOperation { IsForPin: true } => 0,
        DrillOperation { Tool.Kind: ToolKind.Countersink } => 2,
        DrillOperation => 1,
        PocketOperation => 3,
        EngraveOperation => 4,
        ProfileOperation { IsOutside: false } => 5,
        _ => 6,
    };
}
