using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings;

/// <summary>
/// The moves of a program's operations, in their order. The tool moves across at the safe height alone, rapidly down to the clearance over the face,
/// and everything below the face is fed; so no rapid move but a retraction is ever in the material. Cuts go down in passes of equal depth.
/// </summary>
internal sealed class ProgramMoves(ProgramText text, ProgramSettings settings, double thickness)
{
    private readonly double top = settings.IsZeroOnTable ? thickness : 0;

    private double Safe => top + settings.SafeHeight;

    private double Clear => top + settings.Clearance;

    /// <summary>How deep below the face the tool's end goes: what goes through by the allowance into the table, a countersink until it is as wide as asked at the face.</summary>
    public static double DepthOf(MachineOperation operation, ProgramSettings settings, double thickness) => operation switch
    {
        DrillOperation { IsForPin: true } => thickness + (settings.PinDepth ?? settings.Spoil),
        DrillOperation { Tool.Kind: ToolKind.Countersink } sink => sink.Diameter / 2 / Math.Tan(sink.Tool.ConeDegrees * Math.PI / 360),
        // Without room for tabs along its way the part is held by a skin as thick as they would be.
        ProfileOperation { Tabs.IsEmpty: false, WayTabs.IsEmpty: true } profile => profile.TabDepth,
        { Depth: { } depth } => depth,
        _ => thickness + settings.Spoil,
    };

    /// <summary>Whether a program can make it: with a tool the machine has and that reaches, along a way, and no deeper than anything may go.</summary>
    public static bool IsMade(MachineOperation operation, ProgramSettings settings, double thickness) =>
        operation.Tool.IsKnown
        && (operation.Tool.Reach is not { } reach || !Tolerance.Exceeds(operation.Depth ?? thickness, reach))
        && operation is not (PocketOperation { Paths.IsEmpty: true } or ProfileOperation { Paths.IsEmpty: true })
        && (operation is DrillOperation { IsForPin: true } || !Tolerance.Exceeds(DepthOf(operation, settings, thickness), thickness + settings.Spoil));

    /// <summary>To the height at which the tool moves across.</summary>
    public void ToSafety() => text.Height(Safe);

    /// <summary>The moves of operations that follow each other with one tool, which is at the safe height before and after.</summary>
    public void Write(IReadOnlyList<MachineOperation> operations)
    {
        for (var i = 0; i < operations.Count;)
        {
            var depth = DepthOf(operations[i], settings, thickness);
            if (operations[i] is not DrillOperation)
            {
                Cut(operations[i++], depth);
                continue;
            }

            var row = operations.Skip(i).TakeWhile(o => o is DrillOperation && Tolerance.Same(DepthOf(o, settings, thickness), depth)).Cast<DrillOperation>().ToList();
            Bore([.. row.Select(d => d.At)], row[0].Tool, depth);
            i += row.Count;
        }
    }

    private void Bore(ImmutableArray<Point2> places, Tool tool, double depth)
    {
        // A cutter that bores goes in as slowly as it plunges.
        var data = CuttingData.Of(tool);
        var feed = tool.Kind == ToolKind.Drill ? data.Feed : data.Plunge;
        var peck = settings.Peck is { } step && Tolerance.Exceeds(depth, step) ? step : (double?)null;
        if (settings.HasCycles)
        {
            text.Cycle(places, top - depth, Clear, peck, feed);
            return;
        }

        foreach (var place in places)
        {
            text.Across(place);
            text.Height(Clear);
            // Back down through the chips it is fed, too.
            foreach (var level in Levels(depth, peck ?? depth))
            {
                text.Plunge(top - level, feed);
                if (level < depth) text.Height(Clear);
            }

            text.Height(Safe);
        }
    }

    private void Cut(MachineOperation operation, double depth)
    {
        var (tool, data) = (operation.Tool, CuttingData.Of(operation.Tool));
        var levels = Levels(depth, data.Pass);
        switch (operation)
        {
            case EngraveOperation engraved:
                foreach (var stroke in engraved.Strokes) Follow([stroke], [depth], tool);
                break;
            case PocketOperation { Paths: [{ IsClosed: false } slot] }:
                Slot(slot, levels, data);
                break;
            case PocketOperation pocket:
                Follow(pocket.Paths, levels, tool);
                break;
            case ProfileOperation { WayTabs: [_, ..] tabs, Paths: [var way] } profile:
                Tabbed(way, tabs, profile.TabDepth, levels, data);
                break;
            case ProfileOperation profile:
                foreach (var way in profile.Paths) Follow([way], levels, tool);
                break;
            default:
                throw new InvalidOperationException($"{operation.GetType().Name} is no cut.");
        }

        text.Height(Safe);
    }

    // All ways at one depth, then all at the next. From way to way the tool stays down where they lie side by side in one pocket.
    private void Follow(ImmutableArray<ToolPath> ways, ImmutableArray<double> levels, Tool tool)
    {
        // Ways lie 0.45 diameters apart; around a right corner that is 0.64.
        const double Beside = 0.7;
        var data = CuttingData.Of(tool);
        var at = ways[0].Segments[0].Start;
        Enter(at);
        foreach (var level in levels)
            for (var i = 0; i < ways.Length; i++)
            {
                var start = ways[i].Segments[0].Start;
                if (start.DistanceTo(at) > (i == 0 ? Tolerance.Length : Beside * tool.Diameter)) Enter(start);
                else text.Along(new Segment(at, start), data.Feed);
                text.Plunge(top - level, data.Plunge);
                foreach (var segment in ways[i].Segments) text.Along(segment, data.Feed);
                at = ways[i].Segments[^1].End;
            }
    }

    // There and back again, so that nothing is moved idly.
    private void Slot(ToolPath slot, ImmutableArray<double> levels, CuttingData data)
    {
        Enter(slot.Segments[0].Start);
        for (var i = 0; i < levels.Length; i++)
        {
            text.Plunge(top - levels[i], data.Plunge);
            foreach (var segment in i % 2 == 0 ? slot.Segments : slot.Segments.Reverse().Select(s => s.Reversed)) text.Along(segment, data.Feed);
        }
    }

    // Round from the end of the last tab, so that none is met half way; in the passes below their tops the cutter is lifted over them.
    private void Tabbed(ToolPath way, ImmutableArray<(double From, double To)> tabs, double tabDepth, ImmutableArray<double> levels, CuttingData data)
    {
        var begin = tabs[^1].To - way.Length;
        Enter(way.Part(tabs[^1].To, tabs[^1].To + way.Length).Segments[0].Start);
        foreach (var level in levels)
        {
            var at = begin;
            foreach (var (from, to) in tabs)
            {
                text.Plunge(top - level, data.Plunge);
                Part(at, from);
                if (level > tabDepth) text.Plunge(top - tabDepth, data.Plunge);
                Part(from, to);
                at = to;
            }
        }

        void Part(double from, double to)
        {
            var shift = from < 0 ? way.Length : 0;
            foreach (var segment in way.Part(from + shift, to + shift).Segments) text.Along(segment, data.Feed);
        }
    }

    private void Enter(Point2 at)
    {
        text.Height(Safe);
        text.Across(at);
        text.Height(Clear);
    }

    // Equal passes, none deeper than a step.
    private static ImmutableArray<double> Levels(double depth, double step)
    {
        var count = Math.Max(1, (int)Math.Ceiling(depth / step - 1e-9));
        return [.. Enumerable.Range(1, count).Select(i => i == count ? depth : depth * i / count)];
    }
}
