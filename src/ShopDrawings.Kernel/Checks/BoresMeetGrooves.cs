namespace ShopDrawings.Kernel;

/// <summary>
/// Finds holes of joints and hardware that run into a groove or an opening of their panel, where a screw does not hold or meets what sits in
/// the groove; and grooves and blind bores from both faces that leave too little between them.
/// </summary>
internal sealed class BoresMeetGrooves() : Check("bores-meet-grooves", "Holes of joints and hardware stay clear of grooves and openings, and what is cut from both faces leaves wood between.", Floor)
{
    /// <summary>Material left between two things cut from opposite faces, and under a groove.</summary>
    internal static readonly CheckLimit Floor = new("bores-meet-grooves", "floor", 2, "Least material left under a groove, and between what is cut from both faces. 2 mm: common practice, no source.");

    /// <inheritdoc/>
    public override IEnumerable<Finding> Run(Assembly assembly, CheckSettings settings, LengthStyle lengths)
    {
        var floor = settings.Limit(Floor).Value;
        foreach (var panel in assembly.Panels)
        {
            var cuts = panel.Features.Select(f => Cut.Of(panel, f)).OfType<Cut>().ToList();
            for (var i = 0; i < cuts.Count; i++)
                for (var j = i + 1; j < cuts.Count; j++)
                    if ((Meeting(panel, cuts[i], cuts[j], lengths) ?? Thin(panel, cuts[i], cuts[j], floor, lengths)) is { } finding) yield return finding;
            foreach (var groove in cuts.Where(c => c.Feature is Groove))
                if (panel.Thickness.Value - groove.Depth < floor - Tolerance.Length)
                    yield return Make(panel, groove, groove, $"{panel.Id}: {groove.Name} leaves only {lengths.Describe(panel.Thickness.Value - groove.Depth)} of {lengths.Describe(panel.Thickness.Value)} under it; at least {lengths.Describe(floor)} must stay", "make it shallower");
        }
    }

    // A hole of a joint or of hardware with a groove or an opening.
    private Finding? Meeting(Panel panel, Cut a, Cut b, LengthStyle lengths)
    {
        var (hole, other) = a.Feature is Bore ? (a, b) : (b, a);
        if (hole.Feature is not Bore bore || other.Feature is Bore || bore.Origin == panel.Id || bore.Origin == other.Feature.Origin || !hole.Meets(other)) return null;
        return Make(panel, hole, other, $"{panel.Id}: the {lengths.Describe(bore.Diameter.Value)} bore of {bore.Origin} at {lengths.Describe(bore.At.X.Value)}, {lengths.Describe(bore.At.Y.Value)} in the {panel.NameOf(bore.Surface)} {(bore.Surface.IsFace() ? "face" : "edge")} runs into {other.Name}",
            "move what needs it, change the spread of the screws, or move the groove or the opening");
    }

    // Two blind cuts from opposite faces.
    private Finding? Thin(Panel panel, Cut a, Cut b, double floor, LengthStyle lengths)
    {
        if (a.Face is not { } face || b.Face is not { } other || face == other || (a.Feature is Bore && b.Feature is Bore)) return null;
        var left = panel.Thickness.Value - a.Depth - b.Depth;
        return left >= floor - Tolerance.Length || !a.Overlaps(b) ? null : Make(panel, a, b,
            $"{panel.Id}: {a.Name} and {b.Name} from the other face leave {(left > 0 ? $"only {lengths.Describe(left)}" : "nothing")} between them; at least {lengths.Describe(floor)} must stay", "make them shallower, or move one");
    }

    private Finding Make(Panel panel, Cut a, Cut b, string message, string cure)
    {
        var box = a.Outline.Bounds.Union(b.Outline.Bounds);
        return new Finding(Rule, Severity.Error, [panel.Id], message, [], "derived (geometry); least material: common practice, no source", cure,
            new Indicator(panel.Id, new Box3(new(box.Min.X, box.Min.Y, 0), new(box.Max.X, box.Max.Y, panel.Thickness.Value))));
    }
}
