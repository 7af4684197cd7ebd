using CsCheck;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;
using static ShopDrawings.Tests.Machining.RandomPanels;

namespace ShopDrawings.Tests.Machining;

/// <summary>Panels on sheets: turned and turned over as rigid bodies, never mirrored, and cut only where they can be.</summary>
public class SheetTests
{
    private static readonly Machine Router = Machines.Milling(6, 3) with
    {
        Paths = CutLines.Finished, Tools = [.. new[] { 2.5, 3, 4.5, 5, 8, 10, 15, 35 }.Select(d => new Tool(ToolKind.Drill, d)), new Tool(ToolKind.Countersink, 70), new Tool(ToolKind.Cutter, 6), new Tool(ToolKind.Cutter, 3), new Tool(ToolKind.Engraver, 1)],
        SmallParts = new SmallParts(1e5, 100, 5, 2),
    };

    private static readonly Gen<(Point2 At, int Turns, Surface Up)> AnyLie = Gen.Select(Gen.Double[0, 500], Gen.Double[0, 500], Gen.Int[0, 3], Gen.Bool).Select(l => (new Point2(l.Item1, l.Item2), l.Item3, l.Item4 ? Surface.Inside : Surface.Outside));

    [Theory]
    [InlineData(0, 110, 230)]
    [InlineData(1, 370, 210)]
    [InlineData(2, 690, 470)]
    [InlineData(3, 130, 790)]
    public void Bore_goes_where_a_panel_that_is_turned_takes_it(int quarters, double x, double y)
    {
        // 600 × 300 at (100, 200); the bore 10 from the start and 30 from the near edge.
        var sheet = SheetOf(LyingPanel.At(Plain(600, 300, Through(10, 30, 8)), new(100, 200), quarters, Surface.Inside));

        Assert.Equal(new Point2(x, y), OnSheet(sheet, Router).Operations.OfType<DrillOperation>().Single().At);
    }

    [Fact]
    public void Panel_lies_with_the_corner_of_its_sawn_outline_where_it_is_put() => Gen.Select(Any, AnyLie).Sample((panel, lie) =>
    {
        var box = LyingPanel.At(panel, lie.At, lie.Turns, lie.Up).Outline.Bounds;
        Assert.True(box.Min.DistanceTo(lie.At) < 1e-9);
        var (length, width) = (panel.CutLength.Value, panel.CutWidth.Value);
        Assert.Equal(lie.Turns % 2 == 0 ? (length, width) : (width, length), (Math.Round(box.Width, 9), Math.Round(box.Height, 9)), Near);
    });

    [Fact]
    public void Operations_on_a_sheet_are_those_of_the_panels_own_program_moved() => Gen.Select(Any, AnyLie, Gen.Enum<Corner>(), Gen.Bool).Sample((panel, lie, origin, isDrawing) =>
    {
        var machine = isDrawing ? Machines.Drawing with { Origin = origin } : Router with { Origin = origin };
        machine = machine with { FaceUp = lie.Up == Surface.Inside ? FaceUp.Inside : FaceUp.Outside };
        var own = Machines.PlanOf(panel, machine).Programs[0];
        var lying = LyingPanel.At(panel, lie.At, lie.Turns, lie.Up);
        var program = OnSheet(SheetOf(lying), machine);

        // Where three points of the panel go says where all go.
        var (from, to) = (own.Panels.Single().Lie, program.Panels.Single().Lie);
        var (o, x) = (from.Of(default(Point2)), from.Of(new Point2(1, 0)) - from.Of(default(Point2)));
        var (p, u) = (to.Of(default(Point2)), to.Of(new Point2(1, 0)) - to.Of(default(Point2)));
        Point2 Moved(Point2 q) => p + u * (q - o).Dot(x) + u.Left * x.Cross(q - o);
        Assert.Equal(own.Operations.SelectMany(q => Rows(q, Moved)).Order(), program.Operations.SelectMany(q => Rows(q, r => r)).Order());
    }, iter: Fuzz.Iterations(200));

    // Three bores as somebody who stands before that face of the finished piece sees them, against the file.
    [Theory]
    [InlineData(Surface.Inside)]
    [InlineData(Surface.Outside)]
    public void Nothing_is_mirrored(Surface up)
    {
        foreach (var panel in Fixtures.Design("seedling-cabinet").Assembly.Panels.Where(p => p.Placement is not null))
            for (var turns = 0; turns < 4; turns++)
            {
                Point2[] corners = [new(10, 20), new(110, 20), new(10, 50)];
                var probe = Panel.Rectangular(panel.Id, panel.Board, panel.Length, panel.Width).WithFeatures(corners.Select((c, i) => (Feature)Through(c.X, c.Y, 5 + i)));
                var bores = OnSheet(SheetOf(LyingPanel.At(probe, new(50, 50), turns, up), panel.Board), Machines.Drawing).Operations.OfType<DrillOperation>().OrderBy(d => d.Diameter).Select(d => d.At).ToList();
                var built = corners.Select(c => panel.Placement!.ToAssembly(panel.OnSurface(up, c))).ToList();
                var towardsEye = panel.Placement!.DirectionToAssembly(up.Into() * -1);

                var seen = (built[1] - built[0]).Cross(built[2] - built[0]).Dot(towardsEye);
                Assert.Equal(Math.Sign(seen), Math.Sign((bores[1] - bores[0]).Cross(bores[2] - bores[0])));
                Assert.Equal(100, bores[0].DistanceTo(bores[1]), 1e-9);
            }
    }

    [Fact]
    public void Features_of_the_face_below_are_not_made_and_are_said_where_nothing_is_turned_over()
    {
        var panel = Plain(600, 300, Blind(50, 50, 5, 10), Blind(90, 50, 8, 10, Surface.Outside), Blind(90, 90, 8, 10, Surface.Outside), Through(200, 200, 5));
        var plan = MachiningPlanner.Plan([], [SheetOf(LyingPanel.At(panel, new(10, 10), 0, Surface.Inside))], Router with { SecondFace = SecondFace.None }, LengthStyle.Millimetres);

        Assert.Equal(2, Assert.Single(plan.Programs).Operations.OfType<DrillOperation>().Count());
        var note = Assert.Single(plan.Findings);
        Assert.Equal(("sheet-fits", Severity.Warning, "router: panel lies on sheet sheet with 2 features in the face below, and nothing is turned over"), (note.Rule, note.Severity, note.Message));
    }

    [Fact]
    public void Sheet_larger_than_the_bed_is_said_and_keeps_its_file()
    {
        var sheet = SheetOf(LyingPanel.At(Plain(600, 300), new(10, 10), 0, Surface.Inside));
        var plan = MachiningPlanner.Plan([], [sheet], Router with { Bed = new WorkingArea(sheet.Length.Value - 1, sheet.Width.Value) }, LengthStyle.Millimetres);

        Assert.Single(plan.Programs);
        Assert.Equal("sheet-fits", Assert.Single(plan.Findings).Rule);
        Assert.Empty(MachiningPlanner.Plan([], [sheet], Router with { Bed = new WorkingArea(sheet.Length.Value, sheet.Width.Value) }, LengthStyle.Millimetres).Findings);
    }

    // Two bores that meet are an error, so their panel is not cut; nor is the sheet it lies on.
    [Fact]
    public void Sheet_with_a_panel_that_must_not_be_cut_is_named_and_gets_no_file()
    {
        static IEnumerable<string> Said(string depth) => Shop.Check(Fixtures.DesignOf("""
            project: p
            machine-files: [router]
            boards: {ply: {kind: plywood, thickness: 18}}
            panels:
              sound: {board: ply, length: 400, width: 200}
              other: {board: ply, length: 400, width: 200}
              drilled: {board: ply, length: 400, width: 200, bores: [{at: [50, 50], diameter: 8, depth: DEPTH}, {edge: front, at: 50, diameter: 8, depth: 60}]}
            sheets:
              offcut: {board: ply, length: 900, width: 600, panels: [{panel: sound, at: [20, 20]}, {panel: drilled, at: [20, 300]}]}
              rest: {board: ply, length: 900, width: 600, panels: [{panel: other, at: [20, 20]}]}
            """.Replace("DEPTH", depth, StringComparison.Ordinal))).Where(f => f.Rule == "sheet-fits").Select(f => $"{f.Severity} {f.Message}");

        Assert.Equal(["Note router: sheet offcut gets no file, since drilled must not be cut"], Said("12"));
        Assert.Empty(Said("2"));
    }

    // The panel lies with its outside up, turned by a quarter; what is in the inside comes when it is cut out and turned about its length.
    [Fact]
    public void Face_below_is_made_from_a_program_of_the_panels_own_once_it_is_cut_out()
    {
        var panel = Panel.Rectangular("bay/side", BoardOf(18), Mm(600), Mm(300))
            .WithFeatures([Blind(50, 40, 5, 10), Blind(90, 50, 8, 10, Surface.Outside), Through(200, 200, 5), Blind(100, 9, 8, 20, Surface.Near)]).WithBands([new EdgeBand(Surface.Start, Mm(2)), new EdgeBand(Surface.Near, Mm(1))]);
        var plain = Panel.Rectangular("plain", BoardOf(18), Mm(200), Mm(100)).WithFeatures([Blind(50, 50, 5, 10, Surface.Outside)]);
        var sheet = SheetOf(LyingPanel.At(panel, new(10, 10), 1, Surface.Outside), LyingPanel.At(plain, new(600, 10), 0, Surface.Outside));

        var plan = MachiningPlanner.Plan([], [sheet], Router with { Pins = new LocatingPins(8, 25) }, LengthStyle.Millimetres);

        Assert.Equal(["sheet", "sheet_bay_side_inside"], plan.Programs.Select(p => p.Name));
        Assert.Equal([false, true], plan.Programs.Select(p => p.IsSecond));
        Assert.All(plan.Programs, p => Assert.Same(sheet, p.Sheet));
        Assert.Empty(plan.Programs[1].Pins);
        // From the corner of the sawn panel: 2 and 1 mm of bands are not there yet.
        var bore = (DrillOperation)Assert.Single(plan.Programs[1].Operations);
        Assert.Equal((new Point2(48, 39), Surface.Inside, 10), (bore.At, bore.Face, bore.Depth));
        Assert.Equal(["panel_outside"], MachiningPlanner.Plan([], [SheetOf(LyingPanel.At(Plain(600, 300, Blind(50, 50, 5, 10, Surface.Outside)), new(10, 10), 0, Surface.Inside))], Router, LengthStyle.Millimetres).Programs.Skip(1).Select(p => p.Name["sheet_".Length..]));
        // What is drawn beside the bore is the panel as it was sawn, and no sheet.
        var drawing = MachineDrawing.Of(plan.Programs[1], new MachineDrawingSettings());
        Assert.Equal(new Box2(default, new(598, 299)), Assert.Single(drawing.Entities, e => e.Layer.Role == Role.Reference).Bounds);
    }

    [Fact]
    public void Grain_across_the_sheet_is_warned_of()
    {
        Finding[] Said(int turns, bool hasGrain) => [.. MachiningPlanner.Plan([], [SheetOf(LyingPanel.At(Panel.Rectangular("panel", BoardOf(18, hasGrain), Mm(600), Mm(300)), new(10, 10), turns, Surface.Inside), BoardOf(18, hasGrain))], Router, LengthStyle.Millimetres).Findings];

        Assert.All(new[] { 1, 3 }, turns => Assert.Contains("grain of panel runs across", Assert.Single(Said(turns, true)).Message, StringComparison.Ordinal));
        Assert.All(new[] { Said(0, true), Said(2, true), Said(1, false) }, Assert.Empty);
    }

    [Fact]
    public void Panels_that_cannot_be_cut_withhold_their_sheet_and_nothing_else()
    {
        var (a, b) = (Panel.Rectangular("a", BoardOf(18, false), Mm(600), Mm(300)), Panel.Rectangular("b", BoardOf(18, false), Mm(400), Mm(200)));
        CutSheet Of(string id, Point2 at, int turns = 0) => SheetOf(LyingPanel.At(a, new(10, 10), 0, Surface.Inside), LyingPanel.At(b, at, turns, Surface.Inside)) with { Id = id };
        CutSheet[] sheets = [Of("beyond", new(2100, 10)), Of("left", new(-0.5, 400)), Of("above", new(700, 900), 1), Of("upon", new(609, 309)), Of("near", new(615.5, 10)), Of("touching", new(610, 10)), Of("apart", new(616, 10))];

        var plan = MachiningPlanner.Plan([a, b], sheets, Router, LengthStyle.Millimetres);

        Assert.Equal(["a", "b", "apart"], plan.Programs.Select(p => p.Name));
        Assert.Equal(
            ["b lies 60 mm beyond the edge of sheet beyond", "b lies 0.5 mm beyond the edge of sheet left", "b lies 80 mm beyond the edge of sheet above", "a and b lie on each other on sheet upon",
             "a and b lie 5.5 mm apart on sheet near, and the cut between them is 6 mm wide", "a and b lie 0 mm apart on sheet touching, and the cut between them is 6 mm wide"],
            plan.Findings.Where(f => f.Severity == Severity.Error).Select(f => f.Message["router: ".Length..]));
        // Nothing else is withheld for a sheet.
        Assert.All(plan.Findings, f => Assert.Empty(f.Panels));
    }

    [Fact]
    public void Shaped_panels_may_lie_in_each_others_hollows()
    {
        Panel Ell(string id) => Panel.Rectangular(id, BoardOf(18), Mm(300), Mm(300)).WithOutline(Polygon((0, 0), (300, 0), (300, 100), (100, 100), (100, 300), (0, 300)));
        CutSheet Of(double at) => SheetOf(LyingPanel.At(Ell("a"), new(10, 10), 0, Surface.Inside), LyingPanel.At(Ell("b"), new(at, at), 2, Surface.Inside));

        Assert.Single(MachiningPlanner.Plan([], [Of(117)], Router, LengthStyle.Millimetres).Programs);
        Assert.Empty(MachiningPlanner.Plan([], [Of(112)], Router, LengthStyle.Millimetres).Programs);
    }

    [Fact]
    public void Lines_of_a_sheet_are_drawn_on_it() => Gen.Select(Any, AnyLie).Sample((panel, lie) =>
    {
        var sheet = SheetOf(LyingPanel.At(panel, lie.At, lie.Turns, lie.Up));
        var drawing = MachineDrawing.Of(OnSheet(sheet, Machines.Drawing), new MachineDrawingSettings());
        Assert.Equal(new Box2(default, new(2440, 1600)), drawing.Entities.First(e => e.Layer.Role == Role.Reference).Bounds);
    }, iter: Fuzz.Iterations(20));

    private static bool Near((double, double) a, (double, double) b) => Math.Abs(a.Item1 - b.Item1) < 1e-6 && Math.Abs(a.Item2 - b.Item2) < 1e-6;

    private static CutSheet SheetOf(LyingPanel lying, Board board) => new("sheet", board, Mm(2440), Mm(1600), [lying]);

    private static CutSheet SheetOf(params LyingPanel[] lying) => new("sheet", BoardOf(18), Mm(2440), Mm(1220), [.. lying]) { Width = lying.Length == 1 ? Mm(1600) : Mm(1220) };

    private static FaceProgram OnSheet(CutSheet sheet, Machine machine) => Assert.Single(MachiningPlanner.Plan([], [sheet], machine, LengthStyle.Millimetres).Programs, p => !p.IsSecond);

    // To 0.001 mm, the steps where no coordinate of a panel is likely to lie.
    private static double Rounded(double mm) => Math.Round(mm + 0.000317, 3) + 0.0;

    // What an operation is but for the crosses of centres, which stand upright, whatever order and direction its lines run in.
    private static IEnumerable<string> Rows(MachineOperation operation, Func<Point2, Point2> move)
    {
        // A circle begins somewhere; where does not matter.
        string Part(Segment s) => Math.Abs(Math.Abs(s.Bulge) - 1) < 1e-6 ? $"{At(s.Centre)} {s.Radius:0.000}" : At(s.Middle);
        string At(Point2 p) => FormattableString.Invariant($"{Rounded(move(p).X)} {Rounded(move(p).Y)}");
        var what = FormattableString.Invariant($"{operation.GetType().Name} {(operation.Depth is null ? "" : operation.Face)} {operation.Tool} {operation.Depth:0.0000}");
        return operation switch
        {
            DrillOperation d => [$"{what} {At(d.At)} {d.Diameter:0.000}"],
            PocketOperation p => [.. p.Finished.Segments.Select(s => $"{what} {Part(s)}"), .. p.Paths.SelectMany(w => w.Segments).Select(s => $"{what} way {Part(s)}")],
            ProfileOperation p => [.. p.Finished.Segments.Select(s => $"{what} {p.IsOutside} {Part(s)}"), $"{what} tabs {p.Tabs.Length} {p.TabDepth}"],
            EngraveOperation e => [.. e.Strokes.SelectMany(w => w.Segments).Where(s => e.What != Engraving.Mark || !Tolerance.Same(s.Length, 4)).Select(s => $"{what} {At(s.Middle)}")],
            _ => throw new InvalidOperationException(),
        };
    }
}
