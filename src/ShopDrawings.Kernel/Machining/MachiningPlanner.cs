using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>Makes the programs of a machine for panels and sheets.</summary>
public static class MachiningPlanner
{
    private const string Faces = "machine-faces", Material = "machine-material";

    /// <summary>The programs of one machine, and what it cannot do. A sheet on which panels do not fit gets no program.</summary>
    /// <param name="panels">The panels, each on its own.</param>
    /// <param name="sheets">The sheets with the panels that lie on them.</param>
    /// <param name="machine">The machine.</param>
    /// <param name="lengths">How messages print lengths.</param>
    public static MachinePlan Plan(IEnumerable<Panel> panels, IEnumerable<CutSheet> sheets, Machine machine, LengthStyle lengths)
    {
        var remarks = new MachiningRemarks(machine);
        var planner = new FacePlanner(machine, remarks, lengths);
        var programs = ImmutableArray.CreateBuilder<FaceProgram>();
        foreach (var panel in panels)
        {
            CheckMaterial(panel, machine, remarks, lengths);
            programs.AddRange(OfPanel(panel, machine, planner, remarks, lengths));
            CheckHidden(panel, machine, remarks);
        }

        // What the tools cannot do was said of each panel.
        var unheard = new FacePlanner(machine, new MachiningRemarks(machine), lengths);
        programs.AddRange(sheets.Where(s => SheetFits.IsSound(s, machine, remarks, lengths)).SelectMany(s => OfSheet(s, machine, unheard)));
        return new MachinePlan(machine, programs.ToImmutable(), remarks.Findings);
    }

    private static IEnumerable<FaceProgram> OfPanel(Panel panel, Machine machine, FacePlanner planner, MachiningRemarks remarks, LengthStyle lengths)
    {
        var first = FirstFace(panel, machine);
        var lying = Zeroed(new LyingPanel(panel, Lie.On(panel, first, machine.Flip)), machine, machine.IsOriginSawn);
        if (machine.SecondFace == SecondFace.SeenThrough)
        {
            yield return Program(panel.Id, machine, lying, isSecond: false, [], planner.Plan(lying, withThrough: true, withOutline: true, [Surface.Inside, Surface.Outside]));
            yield break;
        }

        // A panel on pins is cut out when all else is done, and keeps its origin; one against stops is cut out before it is turned, and then
        // its sawn edges are what it lies against.
        var isTurned = IsTurned(panel, first, machine);
        var pins = isTurned && machine.Pins is { } wanted ? Pins(lying, machine, wanted, remarks, lengths) : [];
        yield return Program(panel.Id, machine, lying, isSecond: false, pins, [.. pins, .. planner.Plan(lying, withThrough: true, withOutline: pins.IsEmpty, [first]), .. NameOf(lying, machine)]);
        if (!isTurned) yield break;
        var turned = new LyingPanel(panel, Lie.On(panel, first.Opposite(), machine.Flip));
        turned = pins.IsEmpty ? Zeroed(turned, machine, isSawn: true) : turned with { Lie = turned.Lie.Moved(lying.Lie.Shift - Lie.On(panel, first, machine.Flip).Shift) };
        yield return Program(SecondName(panel.Id, first.Opposite()), machine, turned, isSecond: true, pins, planner.Plan(turned, withThrough: false, withOutline: !pins.IsEmpty, [first.Opposite()]));
    }

    // A sheet, then each panel of it that has something in the face that lay below: it is cut out by then.
    private static IEnumerable<FaceProgram> OfSheet(CutSheet sheet, Machine machine, FacePlanner planner)
    {
        var shift = CornerOf(sheet.Bounds, machine.Origin) * -1;
        ImmutableArray<LyingPanel> lying = [.. sheet.Panels.Select(p => p with { Lie = p.Lie.Moved(shift) })];
        var isBoth = machine.SecondFace == SecondFace.SeenThrough;
        var operations = lying.SelectMany(l => (IEnumerable<MachineOperation>)[.. planner.Plan(l, withThrough: true, withOutline: true, isBoth ? [Surface.Inside, Surface.Outside] : [l.Lie.Up]), .. NameOf(l, machine)]);
        yield return new FaceProgram(sheet.Id, machine, lying, sheet, shift, IsSecond: false, [], OperationOrder.Of(operations));
        foreach (var (panel, lie) in sheet.Panels.Select(p => (p.Panel, p.Lie)).Where(p => IsTurned(p.Panel, p.Lie.Up, machine)))
        {
            var turned = Zeroed(new LyingPanel(panel, Lie.On(panel, lie.Up.Opposite(), machine.Flip)), machine, isSawn: true);
            yield return Program(SecondName($"{sheet.Id}_{panel.Id.Replace('/', '_')}", lie.Up.Opposite()), machine, turned, isSecond: true, [], planner.Plan(turned, withThrough: false, withOutline: false, [lie.Up.Opposite()])) with { Sheet = sheet };
        }
    }

    private static FaceProgram Program(string name, Machine machine, LyingPanel lying, bool isSecond, ImmutableArray<DrillOperation> pins, IEnumerable<MachineOperation> operations) =>
        new(name, machine, [lying], null, default, isSecond, pins, OperationOrder.Of(operations));

    private static string SecondName(string name, Surface up) => $"{name}_{up.ToString().ToLowerInvariant()}";

    // With the origin corner of the machine at the origin.
    private static LyingPanel Zeroed(LyingPanel lying, Machine machine, bool isSawn) =>
        lying with { Lie = lying.Lie.Moved(CornerOf(lying.Lie.Of(isSawn ? lying.Panel.CutOutline : lying.Panel.Outline).Bounds, machine.Origin) * -1) };

    private static bool IsTurned(Panel panel, Surface up, Machine machine) =>
        machine.SecondFace == SecondFace.TurnedOver && machine.Kind != MachineKind.Drawing && panel.Features.Any(f => FacePlanner.IsBlindIn(f, up.Opposite(), machine));

    private static Surface FirstFace(Panel panel, Machine machine)
    {
        int Count(Surface face) => panel.Features.Count(f => FacePlanner.IsBlindIn(f, face, machine));
        return machine.FaceUp switch
        {
            FaceUp.Inside => Surface.Inside,
            FaceUp.Outside => Surface.Outside,
            _ => Count(Surface.Outside) > Count(Surface.Inside) ? Surface.Outside : Surface.Inside,
        };
    }

    // Beyond both ends of the panel on the axis it is turned about, in the waste around it.
    private static ImmutableArray<DrillOperation> Pins(LyingPanel lying, Machine machine, LocatingPins pins, MachiningRemarks remarks, LengthStyle lengths)
    {
        var bounds = lying.Outline.Bounds;
        var middle = lying.Lie.Of(lying.Panel.Outline).Bounds.Centre;
        var tool = new ToolChoice(machine).ForPin(pins.Diameter);
        if (!tool.IsKnown)
            remarks.Add("", new(MachiningRemarks.Tools, Severity.Warning, $"no tool makes the bores of its pins, {lengths.Describe(pins.Diameter)}", [new("diameter", pins.Diameter, "mm")], "derived (geometry)", "add a drill of that diameter, or take pins of one it has"));
        ReadOnlySpan<Point2> places = machine.Flip == FlipAxis.Length
            ? [new(bounds.Min.X - pins.Distance, middle.Y), new(bounds.Max.X + pins.Distance, middle.Y)]
            : [new(middle.X, bounds.Min.Y - pins.Distance), new(middle.X, bounds.Max.Y + pins.Distance)];
        var bores = ImmutableArray.CreateBuilder<DrillOperation>();
        foreach (var at in places) bores.Add(new DrillOperation(lying.Lie.Up, tool, null, at, pins.Diameter) { IsForPin = true });
        return bores.ToImmutable();
    }

    private static IEnumerable<MachineOperation> NameOf(LyingPanel lying, Machine machine) =>
        machine.NameHeight is { } height && new ToolChoice(machine).Engraver is { } engraver && NameEngraving.Strokes(lying, height) is { IsEmpty: false } strokes
            ? [new EngraveOperation(lying.Lie.Up, engraver, machine.EngravingDepth, Engraving.Name, strokes)]
            : [];

    // What this machine does not see: the other face where it turns nothing over, and the edges.
    private static void CheckHidden(Panel panel, Machine machine, MachiningRemarks remarks)
    {
        if (machine.Kind == MachineKind.Drawing) return;
        var hidden = FirstFace(panel, machine).Opposite();
        if (machine.SecondFace == SecondFace.None)
            foreach (var _ in panel.Features.Where(f => FacePlanner.IsBlindIn(f, hidden, machine)))
                remarks.Add(panel.Id, new(Faces, Severity.Warning, $"it does not turn panels over, so what is blind in the {hidden.ToString().ToLowerInvariant()} face is not made", [], "derived (geometry)", "make it by hand, or give the machine “second-face: turned-over”", "feature"));
        foreach (var _ in panel.Features.OfType<Bore>().Where(b => !b.Surface.IsFace() && b.Method == BoreMethod.Machined))
            remarks.Add(panel.Id, new(Faces, Severity.Note, "it drills no edges", [], MachiningRemarks.Practice, "drill them by lists/bores.csv and the panel’s drawing, or ask for views of the edges: “edge-views: true”", "bore"));
    }

    private static void CheckMaterial(Panel panel, Machine machine, MachiningRemarks remarks, LengthStyle lengths)
    {
        if (machine.Thickest is { } thickest && Tolerance.Exceeds(panel.Thickness.Value, thickest))
            remarks.Add(panel.Id, new(Material, Severity.Warning, $"it cuts boards up to {lengths.Describe(thickest)}, and {panel.Board.Name} is {lengths.Describe(panel.Thickness.Value)}",
                [new("thickest", thickest, "mm"), new("board", panel.Thickness.Value, "mm")], "derived (geometry)", "take a thinner board, or another machine"));
        var (x, y) = (panel.CutLength.Value, panel.CutWidth.Value);
        if (machine.Bed is { } bed && !machine.Holds(x, y) && !machine.Holds(y, x))
            remarks.Add(panel.Id, new(Material, Severity.Warning, $"its bed, {lengths.Describe(bed.X)} × {lengths.Describe(bed.Y)}, is too small for these and the tool that goes round them", [new("bed x", bed.X, "mm"), new("bed y", bed.Y, "mm")], "derived (geometry)", "cut them on another machine, or by hand after their drawings"));
        if (machine.Kind != MachineKind.Laser) return;
        const string Caution = "ask the maker of the laser and of the board; extract the fumes, never leave the beam alone, and follow local rules for fire and air";
        if (panel.Board.Kind != BoardKind.Plywood)
            remarks.Add(panel.Id, new(Material, Severity.Warning, $"{panel.Board.Name} is {Words(panel.Board.Kind)}, which a laser cuts poorly and whose fumes harm", [], MachiningRemarks.Practice, $"use a laser for thin plywood and acrylic templates; {Caution}"));
        if (!panel.Bands.IsEmpty)
            remarks.Add(panel.Id, new(Material, Severity.Warning, "these panels get edge bands, which may be of PVC; burnt PVC gives off chlorine compounds that harm people and machine", [], MachiningRemarks.Practice, $"cut them before they are banded, and never laser a banded edge; {Caution}"));
    }

    private static string Words(BoardKind kind) => kind switch
    {
        BoardKind.Melamine => "faced particleboard",
        BoardKind.Mdf => "fibreboard",
        _ => kind.ToString().ToLowerInvariant(),
    };

    private static Point2 CornerOf(Box2 box, Corner corner) => corner switch
    {
        Corner.LowerLeft => box.Min,
        Corner.LowerRight => new(box.Max.X, box.Min.Y),
        Corner.UpperLeft => new(box.Min.X, box.Max.Y),
        _ => box.Max,
    };
}
