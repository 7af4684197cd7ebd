namespace ShopDrawings.Kernel;

/// <summary>Finds bores that leave their panel sideways or come through where they must not.</summary>
internal sealed class BoreInPanel() : Check("bore-in-panel", "Every bore stays inside its panel and no blind bore comes through.", Floor)
{
    /// <summary>Material left under a blind bore.</summary>
    internal static readonly CheckLimit Floor = new("bore-in-panel", "floor", 2, "Least material left under a blind bore in a face. 2 mm: common practice, no source.");

    /// <inheritdoc/>
    public override IEnumerable<Finding> Run(Assembly assembly, CheckSettings settings, LengthStyle lengths)
    {
        var floor = settings.Limit(Floor).Value;
        var intoFaces = assembly.Joints.Where(j => j.Held.IsFace()).Select(j => j.Id).ToHashSet();
        foreach (var panel in assembly.Panels)
            foreach (var bore in panel.Features.OfType<Bore>())
            {
                if (Leaves(panel, bore, lengths) is { } leaves) yield return leaves;
                // A screw too long is the screw's fault: another check says so, in its words.
                if (!(bore.Use == BoreUse.Pilot && intoFaces.Contains(bore.Origin)) && ComesThrough(panel, bore, floor, lengths) is { } through) yield return through;
            }
    }

    private Finding? Leaves(Panel panel, Bore bore, LengthStyle lengths)
    {
        var radius = bore.Diameter.Value / 2;
        var margin = bore.Surface.IsFace() ? InFace(panel, bore.At.Point) : InEdge(panel, bore);
        return margin >= radius - Tolerance.Length ? null : Make(
            panel, bore,
            $"{Describe(panel, bore, lengths)} leaves the panel: its centre is {(margin < 0 ? $"{lengths.Describe(-margin)} outside the material" : $"{lengths.Describe(margin)} from the nearest edge of the material")}, its radius {lengths.Describe(radius)}",
            [new("distance of the centre from the edge of the material", margin, "mm"), new("radius", radius, "mm")],
            "move it inwards, or make it smaller");
    }

    private Finding? ComesThrough(Panel panel, Bore bore, double floor, LengthStyle lengths)
    {
        if (bore.Depth is not { } depth) return null;
        var behind = panel.Behind(bore.Surface).Value;
        var left = BoreDepths.Floor(behind, depth.Value);
        var least = bore.Surface.IsFace() ? floor : 0;
        if (left >= least - Tolerance.Length && left > Tolerance.Length) return null;
        var far = bore.Surface.IsFace() ? "face" : "edge";
        return Make(
            panel, bore,
            left > Tolerance.Length
                ? $"{Describe(panel, bore, lengths)} leaves only {lengths.Describe(left)} of {lengths.Describe(behind)} under it; at least {lengths.Describe(least)} must stay"
                : $"{Describe(panel, bore, lengths)} comes through the far {far}: it is {lengths.Describe(depth.Value)} deep in {lengths.Describe(behind)}",
            [new("depth", depth.Value, "mm"), new("material", behind, "mm"), new("least left", least, "mm")],
            $"make it at most {lengths.Describe(Math.Max(behind - least, 0))} deep" + (bore.Surface.IsFace() ? ", or give it no depth so that it goes through" : ""));
    }

    // Positive inside: the distance to the outline or to the nearest cut-out.
    private static double InFace(Panel panel, Point2 at)
    {
        var margin = panel.Outline.DistanceTo(at) * (panel.Outline.Contains(at) ? 1 : -1);
        foreach (var cutOut in panel.Features.OfType<CutOut>())
            margin = Math.Min(margin, cutOut.Outline.DistanceTo(at) * (cutOut.Outline.Contains(at) ? -1 : 1));
        return margin;
    }

    // On an edge the material is as wide as the board is thick and as long as the outline runs straight there.
    private static double InEdge(Panel panel, Bore bore)
    {
        var at = bore.At.Point;
        var across = Math.Min(at.Y, panel.Thickness.Value - at.Y);
        var entry = panel.OnSurface(bore.Surface, at);
        var alongX = bore.Surface is Surface.Near or Surface.Far;
        bool IsOnEdge(Point2 p) => Tolerance.Same(alongX ? p.Y : p.X, alongX ? entry.Y : entry.X);
        var along = -panel.Outline.DistanceTo(new Point2(entry.X, entry.Y));
        foreach (var s in panel.Outline.Segments.Where(s => s.IsLine && IsOnEdge(s.Start) && IsOnEdge(s.End)))
        {
            var (a, b) = alongX ? (s.Start.X, s.End.X) : (s.Start.Y, s.End.Y);
            along = Math.Max(along, Math.Min(at.X - Math.Min(a, b), Math.Max(a, b) - at.X));
        }

        return Math.Min(across, along);
    }

    private static string Describe(Panel panel, Bore bore, LengthStyle lengths)
    {
        var who = bore.Origin == panel.Id ? "" : $" of {bore.Origin}";
        var kind = bore.Surface.IsFace() ? $"in the {panel.NameOf(bore.Surface)} face" : $"in the {panel.NameOf(bore.Surface)} edge";
        return $"{panel.Id}: the {lengths.Describe(bore.Diameter.Value)} bore{who} {kind} at {lengths.Describe(bore.At.X.Value)}, {lengths.Describe(bore.At.Y.Value)}";
    }

    private Finding Make(Panel panel, Bore bore, string message, NamedNumber[] numbers, string cure)
    {
        var entry = panel.OnSurface(bore.Surface, bore.At.Point);
        var end = entry + bore.Surface.Into() * (bore.Depth ?? panel.Behind(bore.Surface)).Value;
        var radius = bore.Diameter.Value / 2;
        var reach = new Point3(radius, radius, radius);
        return new Finding(Rule, Severity.Error, [panel.Id], message, [.. numbers], "derived (geometry); least material: common practice, no source", cure,
            new Indicator(panel.Id, new Box3(Point3.Min(entry, end) - reach, Point3.Max(entry, end) + reach)));
    }
}
