using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>Turns the features of one face of one lying panel into operations, in the machine's frame.</summary>
internal sealed class FacePlanner(Machine machine, MachiningRemarks remarks, LengthStyle lengths)
{
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
        if (withOutline) yield return Profile(lying, lying.Panel.CutOutline, isOutside: true);
    }

    /// <summary>Whether a feature is for this machine, and blind in a face or scribed on it. In a drawing all are, however they are made.</summary>
    public static bool IsBlindIn(Feature feature, Surface face, Machine machine) => feature switch
    {
        Bore { Depth: not null } bore => bore.Surface == face && IsMade(bore, machine),
        Groove groove => groove.Face == face,
        Mark mark => mark.Face == face,
        _ => false,
    };

    private static bool IsMade(Bore bore, Machine machine) => bore.Method == BoreMethod.Machined || machine.Kind == MachineKind.Drawing;

    private MachineOperation? Of(LyingPanel lying, Feature feature, bool withThrough, ImmutableArray<Surface> blindFaces)
    {
        switch (feature)
        {
            case Bore { Depth: null } bore when withThrough && IsMade(bore, machine):
                return machine.Kind == MachineKind.Laser ? Profile(lying, Contour.Circle(bore.At.Point, bore.Diameter.Value / 2), isOutside: false)
                    : Plunged(lying, bore, machine.SecondFace == SecondFace.SeenThrough ? bore.Surface : lying.Lie.Up, null);
            case CutOut cutOut when withThrough:
                return Profile(lying, cutOut.Outline, isOutside: false);
            case Bore bore when blindFaces.Contains(bore.Surface) && IsBlindIn(bore, bore.Surface, machine):
                return machine.Kind == MachineKind.Laser ? Score(lying, bore) : Plunged(lying, bore, bore.Surface, bore.Depth!.Value);
            case Groove groove when blindFaces.Contains(groove.Face):
                return machine.Kind == MachineKind.Laser ? Score(lying, groove.Face, "groove", [ToolPath.Along(lying.Lie.Of(groove.Outline), isOutside: true)]) : Pocket(lying, groove);
            case Mark mark when blindFaces.Contains(mark.Face):
                return Marked(lying, mark);
            default:
                return null;
        }
    }

    private MachineOperation Plunged(LyingPanel lying, Bore bore, Surface face, double? depth)
    {
        var (at, diameter) = (lying.Lie.Of(bore.At.Point), bore.Diameter.Value);
        var reach = depth ?? lying.Panel.Thickness.Value;
        var tool = tools.For(bore, reach);
        var what = bore.Use == BoreUse.Countersink ? "countersink" : "bore";
        if (!tool.IsKnown)
            Say(lying, $"no tool makes {what}s of {lengths.Describe(diameter)}", [new("diameter", diameter, "mm")], $"add a {(bore.Use == BoreUse.Countersink ? "wider countersink" : "drill of that diameter or a narrower cutter")} to the machine, or make these by hand: “method: marked”", what);
        CheckReach(lying, tool, reach, $"{what} of {lengths.Describe(diameter)}");
        if (tool.Kind != ToolKind.Cutter || tool.Diameter > diameter - ToolChoice.SameDiameter) return new DrillOperation(face, tool, depth, at, diameter);
        var edge = Contour.Circle(at, diameter / 2);
        return new PocketOperation(face, tool, depth, edge, ToolWays.Within(edge, tool.Diameter, [], machine.ChordTolerance));
    }

    private PocketOperation Pocket(LyingPanel lying, Groove groove)
    {
        var (width, depth) = (groove.Width.Value, groove.Depth.Value);
        var tool = tools.ForGroove(width, GroovePocket.LengthOf(lying.Panel, groove), depth);
        if (machine.Kind == MachineKind.Drawing || !tool.IsKnown)
        {
            if (!tool.IsKnown)
                Say(lying, $"no cutter is narrow enough for grooves {lengths.Describe(tool.Diameter)} wide", [new("width", tool.Diameter, "mm")], "add a narrower cutter to the machine, or cut these otherwise", "groove");
            return new PocketOperation(groove.Face, tool, depth, lying.Lie.Of(groove.Outline), []);
        }

        CheckReach(lying, tool, depth, $"groove {lengths.Describe(width)} wide");
        var pocket = GroovePocket.Of(lying, groove, tool.Diameter, machine.Corners != InnerCorners.Round);
        if (pocket.StopsRound)
            remarks.Add(lying.Panel.Id, new(MachiningRemarks.Tools, Severity.Note, $"grooves that stop inside their panel end as round as the cutter of {lengths.Describe(tool.Diameter)}", [new("cutter", tool.Diameter, "mm")], "derived (geometry)", "give the machine “corners: joinery”, or ease the corners of what sits in them", "groove"));
        return new PocketOperation(groove.Face, tool, depth, CornerRelief.Freed(pocket.Edge, pocket.Bays), ToolWays.Within(pocket.Edge, tool.Diameter, pocket.Bays, machine.ChordTolerance));
    }

    private EngraveOperation? Marked(LyingPanel lying, Mark mark)
    {
        if (tools.Engraver is not { } engraver)
        {
            remarks.Add(lying.Panel.Id, new(MachiningRemarks.Tools, Severity.Note, "it has no engraver, so marks are left out", [], MachiningRemarks.Practice, "add an engraver to the machine, or mark by hand", "mark"));
            return null;
        }

        var from = lying.Lie.Of(mark.From.Point);
        return new EngraveOperation(mark.Face, engraver, machine.EngravingDepth, Engraving.Mark, mark.To is { } to ? [ToolPath.Through([from, lying.Lie.Of(to.Point)])] : Cross(from));
    }

    private EngraveOperation? Score(LyingPanel lying, Bore bore)
    {
        var at = lying.Lie.Of(bore.At.Point);
        return Score(lying, bore.Surface, "blind bore", [ToolPath.Along(Contour.Circle(at, bore.Diameter.Value / 2), isOutside: true), .. Cross(at)]);
    }

    private EngraveOperation? Score(LyingPanel lying, Surface face, string what, ImmutableArray<ToolPath> strokes)
    {
        remarks.Add(lying.Panel.Id, new(MachiningRemarks.Tools, Severity.Note, $"a laser cuts nothing of a given depth; each {what} is {(tools.Engraver is null ? "left out" : "only scored")}", [], MachiningRemarks.Practice, "drill or mill them afterwards", what));
        return tools.Engraver is { } engraver ? new EngraveOperation(face, engraver, machine.EngravingDepth, Engraving.Score, strokes) : null;
    }

    private static ImmutableArray<ToolPath> Cross(Point2 at)
    {
        const double Arm = 2;
        return [ToolPath.Through([at - new Point2(Arm, 0), at + new Point2(Arm, 0)]), ToolPath.Through([at - new Point2(0, Arm), at + new Point2(0, Arm)])];
    }

    private MachineOperation Profile(LyingPanel lying, Contour outline, bool isOutside)
    {
        var (edge, thickness) = (lying.Lie.Of(outline), lying.Panel.Thickness.Value);
        var tool = tools.ForEdge(edge, isOutside, thickness);
        var what = isOutside ? "outline" : "opening";
        if (!tool.IsKnown)
        {
            Say(lying, machine.Kind == MachineKind.Laser ? $"its kerf is too wide to follow an {what} into all its corners" : $"no cutter follows an {what} into all its hollows; one of {lengths.Describe(tool.Diameter)} would", [new("diameter", tool.Diameter, "mm")], "add a narrower one to the machine, or make the hollows wider and rounder", what);
            return new ProfileOperation(lying.Lie.Up, tool, null, edge, isOutside, []);
        }

        CheckReach(lying, tool, thickness, what);
        // An opening as wide and as long as the cutter.
        if (!isOutside && machine.Kind == MachineKind.Router && edge.AsCircle is var (centre, radius) && Math.Abs(2 * radius - tool.Diameter) <= ToolChoice.SameDiameter)
            return new DrillOperation(lying.Lie.Up, tool, null, centre, 2 * radius);
        // One as wide as the cutter: nothing falls out of it.
        if (!isOutside && ToolWays.Along(edge, isOutside, tool.Diameter, [], machine.ChordTolerance) is [{ IsClosed: false }] middle)
            return new PocketOperation(lying.Lie.Up, tool, null, edge, middle);
        var bays = machine.Kind == MachineKind.Router && machine.Corners == InnerCorners.Relieved ? CornerRelief.Of(edge, isOutside, tool.Diameter / 2) : [];
        var profile = new ProfileOperation(lying.Lie.Up, tool, null, CornerRelief.Freed(edge, bays), isOutside, ToolWays.Along(edge, isOutside, tool.Diameter, bays, machine.ChordTolerance));
        return machine.Kind == MachineKind.Router && machine.SmallParts is { } small && IsHeld(small, outline, isOutside, tool) ? Held(lying, profile, small) : profile;
    }

    // Of an opening, what falls out; smaller pieces go with the chips.
    private static bool IsHeld(SmallParts small, Contour outline, bool isOutside, Tool tool)
    {
        const double Chip = 20;
        return small.Hold(outline) && (isOutside || Math.Min(outline.Bounds.Width, outline.Bounds.Height) - 2 * tool.Diameter > Chip);
    }

    private ProfileOperation Held(LyingPanel lying, ProfileOperation profile, SmallParts small)
    {
        var thickness = lying.Panel.Thickness.Value;
        if (small.Thickness >= thickness - Tolerance.Length)
        {
            Say(lying, $"{(small.TabWidth > 0 ? "tabs" : "a skin")} of {lengths.Describe(small.Thickness)} would be as thick as the board; a small part is not held", [new("thickness", small.Thickness, "mm"), new("board", thickness, "mm")], "make them thinner", "part");
            return profile;
        }

        if (small.TabWidth == 0) return profile with { Depth = thickness - small.Thickness };
        // Along the tool's way a tab is longer by the tool's diameter. Four where there is room, else two.
        var isWay = machine.Paths == CutLines.ToolCentre;
        var line = isWay && profile.Paths is [var way] ? way : ToolPath.Along(profile.Finished, profile.IsOutside);
        var width = small.TabWidth + (isWay ? profile.Tool.Diameter : 0);
        var count = line.Length > 6 * width ? 4 : line.Length > 3 * width ? 2 : 0;
        if (count == 0 || profile.Paths.Length != 1)
        {
            Say(lying, $"tabs {lengths.Describe(small.TabWidth)} wide find no room; a small part is not held", [new("width", small.TabWidth, "mm"), new("way", line.Length, "mm")], "make them narrower, or leave a skin", "part");
            return profile;
        }

        var onWay = isWay ? line : profile.Paths[0];
        return profile with
        {
            Tabs = TabsOn(line, count, width),
            WayTabs = TabsOn(onWay, count, small.TabWidth + profile.Tool.Diameter),
            TabDepth = thickness - small.Thickness,
        };
    }

    // The first in the middle of the longest stretch, so that those of a rectangle are in the middle of its sides; nothing where they would meet.
    private static ImmutableArray<(double From, double To)> TabsOn(ToolPath line, int count, double width)
    {
        if (line.Length <= count * width * 1.2) return [];
        var longest = line.Segments.MaxBy(s => Math.Round(s.Length, 3));
        var first = line.Segments.TakeWhile(s => s != longest).Sum(s => s.Length) + longest.Length / 2;
        var tabs = Enumerable.Range(0, count).Select(i => (first + i * line.Length / count) % line.Length).Order().Select(m => (m - width / 2, m + width / 2));
        return [.. tabs.Select(t => t.Item1 < 0 ? (t.Item1 + line.Length, t.Item2 + line.Length) : t).OrderBy(t => t.Item1)];
    }

    private void CheckReach(LyingPanel lying, Tool tool, double depth, string what)
    {
        if (!ToolChoice.Reaches(tool, depth))
            Say(lying, $"its {tool.Kind.ToString().ToLowerInvariant()} of {lengths.Describe(tool.Diameter)} reaches {lengths.Describe(tool.Reach!.Value)}, and {lengths.Describe(depth)} are asked for: {what}", [new("reach", tool.Reach.Value, "mm"), new("depth", depth, "mm")], "add a longer tool to the machine, or make these by hand", "cut");
    }

    private void Say(LyingPanel lying, string message, ImmutableArray<NamedNumber> numbers, string cure, string counted) =>
        remarks.Add(lying.Panel.Id, new(MachiningRemarks.Tools, Severity.Warning, message, numbers, "derived (geometry)", cure, counted));
}
