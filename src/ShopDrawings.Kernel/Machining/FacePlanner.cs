using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>Turns the features of one face of one lying panel into operations, in the machine's frame.</summary>
internal sealed class FacePlanner(Machine machine, MachiningRemarks remarks, LengthStyle lengths)
{
    private const string Tools = "machine-tools";
    private const double ArcTolerance = 0.01;

    private readonly ToolChoice tools = new(machine);

    /// <summary>What is made in the face that lies up, and what goes through where that is wanted.</summary>
    /// <param name="lying">The panel where it lies.</param>
    /// <param name="withThrough">Whether bores that go through, and openings, are made now.</param>
    /// <param name="withOutline">Whether the panel is cut out now.</param>
    /// <param name="blindFaces">The faces whose grooves, marks and blind bores are made, or shown as seen through.</param>
    public IEnumerable<MachineOperation> Plan(LyingPanel lying, bool withThrough, bool withOutline, ImmutableArray<Surface> blindFaces)
    {
        foreach (var feature in lying.Panel.Features)
            if (Of(lying, feature, withThrough, blindFaces) is { } operation) yield return operation;
        if (withOutline) yield return Outline(lying);
    }

    /// <summary>Whether a feature is for a machine, and blind in a face or scribed on it.</summary>
    public static bool IsBlindIn(Feature feature, Surface face) => feature switch
    {
        Bore { Method: BoreMethod.Machined, Depth: not null } bore => bore.Surface == face,
        Groove groove => groove.Face == face,
        Mark mark => mark.Face == face,
        _ => false,
    };

    /// <summary>A bore for a pin in the table, beside a panel.</summary>
    public DrillOperation PinBore(LyingPanel lying, Point2 at, double diameter)
    {
        var tool = tools.ForPin(diameter);
        if (!tool.IsKnown)
            Say(lying, $"no drill makes the bores of {lengths.Describe(diameter)} for its pins", [new("diameter", diameter, "mm")], "add a drill of that diameter to the machine, or take other pins", "bore");
        return new DrillOperation(lying.Lie.Up, tool, null, at, diameter) { IsForPin = true };
    }

    private MachineOperation? Of(LyingPanel lying, Feature feature, bool withThrough, ImmutableArray<Surface> blindFaces)
    {
        switch (feature)
        {
            case Bore { Method: BoreMethod.Machined, Depth: null } bore when withThrough:
                return Through(lying, bore);
            case CutOut cutOut when withThrough:
                return Profile(lying, cutOut.Outline, isOutside: false, hold: null);
            case Bore bore when blindFaces.Contains(bore.Surface) && IsBlindIn(bore, bore.Surface):
                return Blind(lying, bore);
            case Groove groove when blindFaces.Contains(groove.Face):
                return GrooveOf(lying, groove);
            case Mark mark when blindFaces.Contains(mark.Face):
                return MarkOf(lying, mark);
            default:
                return null;
        }
    }

    private MachineOperation Through(LyingPanel lying, Bore bore)
    {
        if (machine.Kind == MachineKind.Laser) return Profile(lying, Contour.Circle(bore.At.Point, bore.Diameter.Value / 2), isOutside: false, hold: null);
        var face = machine.SecondFace == SecondFace.SeenThrough ? bore.Surface : lying.Lie.Up;
        return Plunged(lying, bore, face, null);
    }

    private MachineOperation? Blind(LyingPanel lying, Bore bore)
    {
        if (machine.Kind != MachineKind.Laser) return Plunged(lying, bore, bore.Surface, bore.Depth!.Value);
        return Score(lying, bore.Surface, Contour.Circle(bore.At.Point, bore.Diameter.Value / 2), "blind bore");
    }

    private MachineOperation Plunged(LyingPanel lying, Bore bore, Surface face, double? depth)
    {
        var (at, diameter) = (lying.Lie.Of(bore.At.Point), bore.Diameter.Value);
        var reach = depth ?? lying.Panel.Thickness.Value;
        var tool = tools.For(bore, reach);
        if (!tool.IsKnown)
            Say(lying, $"no tool makes {(bore.Use == BoreUse.Countersink ? "countersinks" : "bores")} of {lengths.Describe(diameter)}", [new("diameter", diameter, "mm")], "add a drill of that diameter or a narrower cutter to the machine, or make these bores by hand: “method: marked”", "bore");
        CheckReach(lying, tool, reach);
        if (tool.Kind != ToolKind.Cutter || tool.Diameter > diameter - ArcTolerance) return new DrillOperation(face, tool, depth, at, diameter);
        var edge = Contour.Circle(at, diameter / 2);
        return new PocketOperation(face, tool, depth, edge, ToolWays.Within(edge, tool.Diameter, [], machine.ChordTolerance));
    }

    private MachineOperation? GrooveOf(LyingPanel lying, Groove groove)
    {
        if (machine.Kind == MachineKind.Laser) return Score(lying, groove.Face, groove.Outline, "groove");
        var (width, depth) = (groove.Width.Value, groove.Depth.Value);
        var (from, to) = (groove.From.Point, groove.To.Point);
        (bool From, bool To) isOpen = (RunsOut(lying.Panel, from), RunsOut(lying.Panel, to));
        var tool = tools.ForGroove(width, isOpen.From || isOpen.To ? double.PositiveInfinity : from.DistanceTo(to), depth);
        if (!tool.IsKnown)
            Say(lying, $"no cutter is narrow enough for grooves {lengths.Describe(tool.Diameter)} wide", [new("width", tool.Diameter, "mm")], "add a narrower cutter to the machine, or cut the groove otherwise", "groove");
        CheckReach(lying, tool, depth);
        var (a, b) = (lying.Lie.Of(from), lying.Lie.Of(to));
        ImmutableArray<CornerRelief.Bay> bays = [];
        if (machine.Corners == InnerCorners.Relieved)
        {
            var along = b - a;
            bays = CornerRelief.Of(Contour.Strip(a, b, width), isOutside: false, tool.Diameter / 2);
            if (bays.IsEmpty)
            {
                // Too narrow for bays: a closed end is cut on by the cutter's radius.
                along *= tool.Diameter / 2 / along.Length;
                (a, b) = (isOpen.From ? a : a - along, isOpen.To ? b : b + along);
            }
            else bays = [.. bays.Where(y => (y.Corner - a).Dot(along) < along.Dot(along) / 2 ? !isOpen.From : !isOpen.To)];
        }

        var edge = CornerRelief.Freed(Contour.Strip(a, b, width), bays);
        var ways = tool.IsKnown ? ToolWays.Groove(a, b, width, tool.Diameter, bays, isOpen, machine.ChordTolerance) : [ToolPath.Along(edge, isOutside: false)];
        return new PocketOperation(groove.Face, tool, depth, edge, ways);
    }

    private EngraveOperation? MarkOf(LyingPanel lying, Mark mark)
    {
        if (tools.Engraver is not { } engraver)
        {
            remarks.Add(lying.Panel.Id, new(Tools, Severity.Note, "it has no engraver, so marks are left out", [], MachiningRemarks.Practice, "add an engraver to the machine, or mark by hand", "mark"));
            return null;
        }

        var from = lying.Lie.Of(mark.From.Point);
        // A centre is a cross.
        const double Arm = 2;
        return new EngraveOperation(mark.Face, engraver, machine.EngravingDepth, Engraving.Mark, mark.To is { } to
            ? [ToolPath.Through([from, lying.Lie.Of(to.Point)])]
            : [ToolPath.Through([from - new Point2(Arm, 0), from + new Point2(Arm, 0)]), ToolPath.Through([from - new Point2(0, Arm), from + new Point2(0, Arm)])]);
    }

    private EngraveOperation? Score(LyingPanel lying, Surface face, Contour edge, string what)
    {
        if (tools.Engraver is not { } engraver) return null;
        remarks.Add(lying.Panel.Id, new(Tools, Severity.Note, $"a laser cuts nothing of a given depth; each {what} is only scored", [], MachiningRemarks.Practice, "drill or mill them afterwards, along the scored lines", what));
        return new EngraveOperation(face, engraver, machine.EngravingDepth, Engraving.Score, [ToolPath.Along(lying.Lie.Of(edge), isOutside: true)]);
    }

    private ProfileOperation Outline(LyingPanel lying)
    {
        var hold = machine.Kind == MachineKind.Router && machine.SmallParts is { } small && small.Hold(lying.Panel) ? small : null;
        return Profile(lying, lying.Panel.CutOutline, isOutside: true, hold);
    }

    private ProfileOperation Profile(LyingPanel lying, Contour outline, bool isOutside, SmallParts? hold)
    {
        var edge = lying.Lie.Of(outline);
        var tool = tools.ForEdge(edge, isOutside);
        if (!tool.IsKnown)
            Say(lying, machine.Kind == MachineKind.Laser ? "its kerf is not known" : $"no cutter follows an {(isOutside ? "outline" : "opening")} into hollows {lengths.Describe(tool.Diameter)} wide", [new("width", tool.Diameter, "mm")], "add a narrower cutter to the machine, or make the hollows wider", isOutside ? "outline" : "opening");
        CheckReach(lying, tool, lying.Panel.Thickness.Value);
        var bays = machine.Kind == MachineKind.Router && machine.Corners == InnerCorners.Relieved ? CornerRelief.Of(edge, isOutside, tool.Diameter / 2) : [];
        var ways = tool.IsKnown ? ToolWays.Along(edge, isOutside, tool.Diameter, bays, machine.ChordTolerance) : [ToolPath.Along(edge, isOutside)];
        double? depth = hold is { TabWidth: 0, Thickness: var skin } && skin < lying.Panel.Thickness.Value ? lying.Panel.Thickness.Value - skin : null;
        var profile = new ProfileOperation(lying.Lie.Up, tool, depth, CornerRelief.Freed(edge, bays), isOutside, ways);
        return hold is { TabWidth: > 0 } tabs ? profile with { Tabs = TabsOf(profile, tabs), TabThickness = tabs.Thickness } : profile;
    }

    // In the middle of the longest stretches, at most four; along the tool's way they are longer by its diameter.
    private ImmutableArray<Segment> TabsOf(ProfileOperation profile, SmallParts small)
    {
        const int Most = 4;
        var isWay = machine.Paths == CutLines.ToolCentre;
        var width = small.TabWidth + (isWay ? profile.Tool.Diameter : 0);
        var line = isWay ? profile.Paths.SelectMany(p => p.Segments) : profile.Finished.Segments;
        return [.. line.Where(s => s.Length > 2 * width).OrderByDescending(s => Math.Round(s.Length, 3)).Take(Most).Select(s => s.MiddlePart(width / s.Length))];
    }

    private void CheckReach(LyingPanel lying, Tool tool, double depth)
    {
        if (!ToolChoice.Reaches(tool, depth))
            Say(lying, $"its {tool.Kind.ToString().ToLowerInvariant()} of {lengths.Describe(tool.Diameter)} reaches {lengths.Describe(tool.Reach!.Value)}, and {lengths.Describe(depth)} are asked for", [new("reach", tool.Reach.Value, "mm"), new("depth", depth, "mm")], "add a longer tool to the machine, or make these from both faces by hand", "cut");
    }

    private void Say(LyingPanel lying, string message, ImmutableArray<NamedNumber> numbers, string cure, string counted) =>
        remarks.Add(lying.Panel.Id, new(Tools, Severity.Warning, message, numbers, "derived (geometry)", cure, counted));

    // Out of the finished panel, or of the sawn one, which is larger where more is milled off than the band is thick.
    private static bool RunsOut(Panel panel, Point2 end) => new[] { panel.Outline, panel.CutOutline }.Any(o => !o.Contains(end) || o.DistanceTo(end) <= Tolerance.Length);
}
