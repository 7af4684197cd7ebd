namespace ShopDrawings.Kernel;

/// <summary>Finds two placed panels that want the same space; a tongue in its groove does not.</summary>
internal sealed class PanelsOverlap() : Check("panels-overlap", "No two panels take the same space.")
{
    /// <inheritdoc/>
    public override IEnumerable<Finding> Run(Assembly assembly, CheckSettings settings, LengthStyle lengths)
    {
        var placed = assembly.Panels.Where(p => p.Placement is not null).ToList();
        var boxes = placed.ConvertAll(p => p.Placement!.ToAssembly(p.Box));
        var solids = new Solid?[placed.Count];
        Solid SolidOf(int i) => solids[i] ??= Solid.Of(placed[i]);
        for (var i = 0; i < placed.Count; i++)
            for (var j = i + 1; j < placed.Count; j++)
            {
                if (boxes[i].Intersection(boxes[j]) is null || SolidOf(i).Overlap(SolidOf(j)) is not { } shared) continue;
                var (a, b) = (placed[i], placed[j]);
                var size = shared.Size;
                yield return new Finding(
                    Rule, Severity.Error, [a.Id, b.Id],
                    $"{a.Id} and {b.Id} take the same space, {lengths.Describe(size.X)} × {lengths.Describe(size.Y)} × {lengths.Describe(size.Z)} at {lengths.Describe(shared.Min.X)} from the left, {lengths.Describe(shared.Min.Y)} from the front, {lengths.Describe(shared.Min.Z)} from the bottom",
                    [new("overlap x", size.X, "mm"), new("overlap y", size.Y, "mm"), new("overlap z", size.Z, "mm")],
                    "derived (geometry)",
                    "move or shorten one of them, or cut a groove or an opening for it",
                    new Indicator(a.Id, Box3.Between(a.Placement!.ToPanel(shared.Min), a.Placement.ToPanel(shared.Max))));
            }
    }
}
