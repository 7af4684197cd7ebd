namespace ShopDrawings.Kernel;

/// <summary>Finds openings, grooves and marks that miss their panel, and openings that leave nothing of it or cut it apart.</summary>
internal sealed class FeatureInPanel() : Check("feature-in-panel", "Every opening, groove and mark meets its panel, and openings leave it in one piece.")
{
    private const double ArcTolerance = 0.01;

    /// <inheritdoc/>
    public override IEnumerable<Finding> Run(Assembly assembly, CheckSettings settings, LengthStyle lengths)
    {
        foreach (var panel in assembly.Panels)
        {
            foreach (var feature in panel.Features)
                if (Missing(panel, feature, lengths) is { } missing) yield return missing;
            if (Apart(panel) is { } apart) yield return apart;
        }
    }

    private Finding? Missing(Panel panel, Feature feature, LengthStyle lengths)
    {
        var (what, outline, points) = feature switch
        {
            CutOut cutOut => ("an opening", cutOut.Outline, Array.Empty<Point2>()),
            Groove groove => ("a groove", groove.Outline, []),
            Mark mark => ("a mark", null, mark.To is { } to ? [mark.From.Point, to.Point] : new[] { mark.From.Point }),
            _ => ("", null, []),
        };
        var isMissing = outline is not null
            ? !PolygonOperations.RegionOf(panel.Outline, ArcTolerance).And(PolygonOperations.RegionOf(outline, ArcTolerance)).Pieces.Any()
            : points.Any(p => !panel.Outline.Contains(p));
        if (!isMissing) return null;
        var box = outline?.Bounds ?? Box2.Around(points);
        return Make(panel, box,
            $"{panel.Id}: {what} from {lengths.Describe(box.Min.X)}, {lengths.Describe(box.Min.Y)} to {lengths.Describe(box.Max.X)}, {lengths.Describe(box.Max.Y)} {(outline is null ? "leaves" : "misses")} the panel, which is {lengths.Describe(panel.Length.Value)} × {lengths.Describe(panel.Width.Value)}",
            "places count from corner 0 of the panel's drawing; move it there");
    }

    private Finding? Apart(Panel panel)
    {
        var cutOuts = panel.Features.OfType<CutOut>().ToList();
        if (cutOuts.Count == 0) return null;
        var left = cutOuts.Aggregate(PolygonOperations.RegionOf(panel.Outline, ArcTolerance), (region, c) => region.Minus(PolygonOperations.RegionOf(c.Outline, ArcTolerance))).Pieces.Count();
        return left == 1 ? null : Make(panel, panel.Outline.Bounds,
            left == 0 ? $"{panel.Id}: its openings leave nothing of the panel" : FormattableString.Invariant($"{panel.Id}: its openings cut the panel into {left} pieces"),
            "make an opening smaller, or write two panels");
    }

    private Finding Make(Panel panel, Box2 box, string message, string cure) => new(
        Rule, Severity.Error, [panel.Id], message, [new("length", panel.Length.Value, "mm"), new("width", panel.Width.Value, "mm")], "derived (geometry)", cure,
        new Indicator(panel.Id, new Box3(new(box.Min.X, box.Min.Y, 0), new(box.Max.X, box.Max.Y, panel.Thickness.Value))));
}
