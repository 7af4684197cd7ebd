namespace ShopDrawings.Kernel;

/// <summary>What a feature takes away from its panel: an outline in plan and a stretch of the thickness. Arcs are judged to 0.01 mm.</summary>
/// <param name="Feature">The feature.</param>
/// <param name="Name">What messages call it.</param>
/// <param name="Outline">In the panel's frame.</param>
/// <param name="Low">From the outside face, in mm.</param>
/// <param name="High">From the outside face, in mm.</param>
/// <param name="Face">The face it is cut from where it does not go through.</param>
internal sealed record Cut(Feature Feature, string Name, Contour Outline, double Low, double High, Surface? Face)
{
    private const double ArcTolerance = 0.01;

    /// <summary>How deep it is.</summary>
    public double Depth => High - Low;

    /// <summary>What a feature takes away; nothing for a mark.</summary>
    public static Cut? Of(Panel panel, Feature feature)
    {
        var t = panel.Thickness.Value;
        switch (feature)
        {
            case CutOut cutOut:
                return new Cut(cutOut, "an opening", cutOut.Outline, 0, t, null);
            case Groove groove:
                var isInside = groove.Face == Surface.Inside;
                return new Cut(groove, $"the groove in the {panel.NameOf(groove.Face)} face", groove.Outline, isInside ? t - groove.Depth.Value : 0, isInside ? t : groove.Depth.Value, groove.Face);
            case Bore bore when bore.Surface.IsFace():
                var depth = Math.Min(bore.Depth?.Value ?? t, t);
                var isFromInside = bore.Surface == Surface.Inside;
                return new Cut(bore, $"the bore in the {panel.NameOf(bore.Surface)} face", Contour.Circle(bore.At.Point, bore.Diameter.Value / 2),
                    isFromInside ? t - depth : 0, isFromInside ? t : depth, bore.Depth is null ? null : bore.Surface);
            case Bore bore:
                var axis = bore.AxisIn(panel);
                var radius = bore.Diameter.Value / 2;
                return new Cut(bore, $"the bore in the {panel.NameOf(bore.Surface)} edge", Contour.Strip(new(axis.From.X, axis.From.Y), new(axis.To.X, axis.To.Y), bore.Diameter.Value), axis.From.Z - radius, axis.From.Z + radius, null);
            default:
                return null;
        }
    }

    /// <summary>Whether both take away some of the same material.</summary>
    public bool Meets(Cut other) => Math.Min(High, other.High) > Math.Max(Low, other.Low) + Tolerance.Length && Overlaps(other);

    /// <summary>Whether their outlines overlap in plan.</summary>
    public bool Overlaps(Cut other)
    {
        var (a, b) = (Outline.Bounds, other.Outline.Bounds);
        if (a.Min.X > b.Max.X || b.Min.X > a.Max.X || a.Min.Y > b.Max.Y || b.Min.Y > a.Max.Y) return false;
        return PolygonOperations.RegionOf(Outline, ArcTolerance).And(PolygonOperations.RegionOf(other.Outline, ArcTolerance)).Pieces.Any(p => p.Width > Tolerance.Length && p.Height > Tolerance.Length);
    }
}
