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
        var programs = ImmutableArray.CreateBuilder<FaceProgram>();
        foreach (var panel in panels)
        {
            CheckMaterial(panel, machine, remarks, lengths);
            programs.AddRange(OfPanel(panel, machine, new FacePlanner(machine, remarks, lengths)));
            if (machine.SecondFace == SecondFace.None) CheckHidden(panel, FirstFace(panel, machine), remarks);
        }

        // What the tools cannot do was said of each panel.
        var unheard = new FacePlanner(machine, new MachiningRemarks(machine), lengths);
        programs.AddRange(sheets.Where(s => SheetFits.IsSound(s, machine, remarks, lengths)).Select(s => OfSheet(s, machine, unheard)));
        return new MachinePlan(machine, programs.ToImmutable(), remarks.Findings);
    }

    private static IEnumerable<FaceProgram> OfPanel(Panel panel, Machine machine, FacePlanner planner)
    {
        var first = FirstFace(panel, machine);
        if (machine.SecondFace == SecondFace.SeenThrough)
        {
            yield return Program(panel, machine, first, isSecond: false, lying => planner.Plan(lying, withThrough: true, withOutline: true, [Surface.Inside, Surface.Outside]));
            yield break;
        }

        // A panel on pins is cut out when all else is done; one against stops is cut out before it is turned.
        var isTurned = machine.SecondFace == SecondFace.TurnedOver && panel.Features.Any(f => FacePlanner.IsBlindIn(f, first.Opposite()));
        var pins = isTurned ? machine.Pins : null;
        yield return Program(panel, machine, first, isSecond: false, lying =>
            [.. PinBores(lying, machine, pins, planner), .. planner.Plan(lying, withThrough: true, withOutline: pins is null, [first]), .. NameOf(lying, machine)]);
        if (isTurned)
            yield return Program(panel, machine, first.Opposite(), isSecond: true, lying => planner.Plan(lying, withThrough: false, withOutline: pins is not null, [first.Opposite()]));
    }

    private static FaceProgram Program(Panel panel, Machine machine, Surface up, bool isSecond, Func<LyingPanel, IEnumerable<MachineOperation>> plan)
    {
        var lie = Lie.On(panel, up, machine.Flip);
        // On pins the panel has no sawn corner yet when it is turned over, and the table does not move.
        var cornered = isSecond && machine.Pins is not null ? Lie.On(panel, up.Opposite(), machine.Flip) : lie;
        var origin = CornerOf(cornered.Of(machine.IsOriginSawn ? panel.CutOutline : panel.Outline).Bounds, machine.Origin);
        var lying = new LyingPanel(panel, lie.Moved(origin * -1));
        var name = isSecond ? $"{panel.Id}_{up.ToString().ToLowerInvariant()}" : panel.Id;
        return new FaceProgram(name, machine, [lying], null, origin * -1, isSecond, OperationOrder.Of(plan(lying)));
    }

    private static FaceProgram OfSheet(CutSheet sheet, Machine machine, FacePlanner planner)
    {
        var shift = CornerOf(sheet.Bounds, machine.Origin) * -1;
        ImmutableArray<LyingPanel> lying = [.. sheet.Panels.Select(p => p with { Lie = p.Lie.Moved(shift) })];
        var operations = lying.SelectMany(l => (IEnumerable<MachineOperation>)[.. planner.Plan(l, withThrough: true, withOutline: true, machine.SecondFace == SecondFace.SeenThrough ? [Surface.Inside, Surface.Outside] : [l.Lie.Up]), .. NameOf(l, machine)]);
        return new FaceProgram(sheet.Id, machine, lying, sheet, shift, IsSecond: false, OperationOrder.Of(operations));
    }

    private static Surface FirstFace(Panel panel, Machine machine)
    {
        int Count(Surface face) => panel.Features.Count(f => FacePlanner.IsBlindIn(f, face));
        return machine.FaceUp switch
        {
            FaceUp.Inside => Surface.Inside,
            FaceUp.Outside => Surface.Outside,
            _ => Count(Surface.Outside) > Count(Surface.Inside) ? Surface.Outside : Surface.Inside,
        };
    }

    private static IEnumerable<MachineOperation> PinBores(LyingPanel lying, Machine machine, LocatingPins? pins, FacePlanner planner)
    {
        if (pins is null) return [];
        var bounds = lying.Outline.Bounds;
        var middle = lying.Lie.Of(lying.Panel.Outline).Bounds.Centre;
        IEnumerable<Point2> places = machine.Flip == FlipAxis.Length
            ? [new(bounds.Min.X - pins.Distance, middle.Y), new(bounds.Max.X + pins.Distance, middle.Y)]
            : [new(middle.X, bounds.Min.Y - pins.Distance), new(middle.X, bounds.Max.Y + pins.Distance)];
        return places.Select(at => planner.PinBore(lying, at, pins.Diameter));
    }

    private static IEnumerable<MachineOperation> NameOf(LyingPanel lying, Machine machine) =>
        machine.NameHeight is { } height && new ToolChoice(machine).Engraver is { } engraver && NameEngraving.Strokes(lying, height) is { IsEmpty: false } strokes
            ? [new EngraveOperation(lying.Lie.Up, engraver, machine.EngravingDepth, Engraving.Name, strokes)]
            : [];

    private static void CheckHidden(Panel panel, Surface up, MachiningRemarks remarks)
    {
        var hidden = panel.Features.Count(f => FacePlanner.IsBlindIn(f, up.Opposite()));
        for (var i = 0; i < hidden; i++)
            remarks.Add(panel.Id, new(Faces, Severity.Warning, $"it does not turn panels over, so what is blind in the {up.Opposite().ToString().ToLowerInvariant()} face is not made", [], "derived (geometry)", "make it by hand, or give the machine “second-face: turned-over”", "feature"));
    }

    private static void CheckMaterial(Panel panel, Machine machine, MachiningRemarks remarks, LengthStyle lengths)
    {
        if (machine.Thickest is { } thickest && Tolerance.Exceeds(panel.Thickness.Value, thickest))
            remarks.Add(panel.Id, new(Material, Severity.Warning, $"it cuts boards up to {lengths.Describe(thickest)}, and {panel.Board.Name} is {lengths.Describe(panel.Thickness.Value)}",
                [new("thickest", thickest, "mm"), new("board", panel.Thickness.Value, "mm")], "derived (geometry)", "take a thinner board, or another machine"));
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
