using ShopDrawings.Kernel;

namespace ShopDrawings.Dxf;

/// <summary>How the lines and arcs of a drawing are written.</summary>
/// <param name="Outlines">Outlines as polylines or in pieces.</param>
/// <param name="ChordTolerance">How far, in mm, chords may be off the arcs they stand for; nothing where arcs stay arcs.</param>
internal sealed record PathForm(DxfOutlines Outlines, double? ChordTolerance)
{
    // Below: more lines than a controller reads, and no room left for the arcs that stand for ellipses. Above: no outline left.
    private const double LeastTolerance = 0.005, GreatestTolerance = 100;

    /// <summary>Outlines as polylines, arcs as arcs.</summary>
    public static PathForm Usual { get; } = new(DxfOutlines.Polylines, null);

    /// <summary>R12 has no ellipses, nor have files without arcs: arcs that stay this near, in mm; in a block, before an insert scales it.</summary>
    public const double EllipseTolerance = 0.001;

    /// <summary>For the arcs that stand for an ellipse: what they are off counts too.</summary>
    public PathForm OfEllipses => this with { ChordTolerance = ChordTolerance - EllipseTolerance };

    /// <summary>Refuses a tolerance that is none.</summary>
    /// <exception cref="ArgumentException">The tolerance lies below 0.005 mm or above 100 mm.</exception>
    public void Check()
    {
        if (ChordTolerance is not (null or (>= LeastTolerance and <= GreatestTolerance)))
            throw new ArgumentException("The chord tolerance must lie between 0.005 mm and 100 mm.");
    }

    /// <summary>At least as many entities as an outline becomes.</summary>
    public long MostParts(ReadOnlySpan<Segment> segments)
    {
        if (Outlines == DxfOutlines.Polylines) return 1;
        var parts = 0L;
        foreach (var s in segments) parts += MostParts(s);
        return parts;
    }

    /// <summary>At least as many entities as a line or an arc by itself becomes.</summary>
    public long MostParts(Segment s)
    {
        if (ArcGroups.IsFlat(s)) return 1;
        if (ChordTolerance is { } tolerance) return ArcChords.Count(s, tolerance);
        return s.Radius <= ArcGroups.GreatestPlain ? 1 : Math.Max(2, ArcChords.Count(s, ArcGroups.Tolerance));
    }
}
