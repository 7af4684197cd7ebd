using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>The order of operations: tool by tool, inside before outside, each nearest to the one before.</summary>
internal static class OperationOrder
{
    /// <summary>The operations in order, those that say the same left out.</summary>
    public static ImmutableArray<MachineOperation> Of(IEnumerable<MachineOperation> operations)
    {
        var ordered = ImmutableArray.CreateBuilder<MachineOperation>();
        var at = default(Point2);
        var steps = operations.DistinctBy(o => (o.GetType(), o.Face, o.Tool, o.Depth, What(o))).GroupBy(o => (Stage: Stage(o), o.Tool.Kind, o.Tool.Diameter, o.Tool.Number, Depth: o.Depth ?? double.PositiveInfinity))
            .OrderBy(g => g.Key.Stage).ThenBy(g => g.Key.Kind).ThenBy(g => g.Key.Number ?? int.MaxValue).ThenBy(g => g.Key.Diameter).ThenBy(g => g.Key.Depth);
        foreach (var step in steps)
        {
            var rest = step.ToList();
            while (rest.Count > 0)
            {
                var from = at;
                var next = rest.MinBy(o => Math.Round(Place(o).DistanceTo(from), 3))!;
                rest.Remove(next);
                ordered.Add(next);
                at = Place(next);
            }
        }

        return ordered.ToImmutable();
    }

    private static object What(MachineOperation operation) => operation switch
    {
        DrillOperation drill => (drill.At, drill.Diameter),
        PocketOperation pocket => pocket.Finished,
        ProfileOperation profile => (profile.Finished, profile.IsOutside),
        EngraveOperation { Strokes: [var stroke, ..] } => stroke,
        _ => Place(operation),
    };

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

    private static Point2 Place(MachineOperation operation) => operation switch
    {
        DrillOperation drill => drill.At,
        PocketOperation pocket => pocket.Finished.Segments[0].Start,
        ProfileOperation profile => profile.Finished.Segments[0].Start,
        EngraveOperation { Strokes: [var stroke, ..] } => stroke.Segments[0].Start,
        _ => default,
    };
}
