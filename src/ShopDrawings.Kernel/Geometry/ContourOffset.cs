using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>Moves an outline outwards or inwards by a distance, as a tool's radius or half a kerf demands.</summary>
public static class ContourOffset
{
    /// <summary>
    /// The outlines at <paramref name="distance"/> mm outside (positive) or inside (negative) a contour. Lines stay lines and arcs stay
    /// arcs, corners stay sharp, and the result is exact wherever the outline keeps all its parts. Where parts vanish, the polygon library
    /// takes over: arcs become chords no further than <paramref name="tolerance"/> mm from them and convex corners become round.
    /// </summary>
    /// <param name="contour">The outline.</param>
    /// <param name="distance">How far it moves, in mm.</param>
    /// <param name="tolerance">How far chords may be off their arcs, in mm.</param>
    /// <param name="tip">A corner that would stand out by more than this beyond the distance becomes an arc about the corner it comes from, in mm.</param>
    /// <returns>Nothing where the outline vanishes; several outlines where it falls apart.</returns>
    /// <exception cref="ArgumentException">The tolerance is not positive.</exception>
    public static ImmutableArray<Contour> Offset(this Contour contour, double distance, double tolerance, double tip = double.PositiveInfinity)
    {
        if (!(tolerance > 0)) throw new ArgumentException("The tolerance must be positive.", nameof(tolerance));
        if (Math.Abs(distance) <= Tolerance.Length) return [contour];
        // No point of it is further inside than half its width or height.
        if (-distance + Tolerance.Length >= Math.Min(contour.Bounds.Width, contour.Bounds.Height) / 2) return [];
        if (contour.AsCircle is var (centre, radius)) return [Contour.Circle(centre, radius + distance)];
        return Exact(contour, distance, tip) is { } exact ? [exact] : PolygonOperations.Buffer(contour, distance, tolerance);
    }

    private static Contour? Exact(Contour contour, double distance, double tip)
    {
        // An arc may shrink to the corner in its middle.
        double Left(Segment s) => s.IsLine ? double.PositiveInfinity : s.Radius + distance * Math.Sign(s.Bulge);
        if (contour.Segments.Any(s => Left(s) < -Tolerance.Length)) return null;
        var kept = contour.Segments.Where(s => Left(s) > Tolerance.Length).ToList();
        if (kept.Count < 2) return null;
        var moved = kept.ConvertAll(s => Moved(s, distance));

        var corners = new Point2[moved.Count];
        for (var i = 0; i < moved.Count; i++)
        {
            if (Corner(moved[i], moved[(i + 1) % moved.Count]) is not { } corner) return null;
            corners[i] = corner;
        }

        var tips = new List<(int After, Segment Arc)>();
        var result = new List<Segment>();
        for (var i = 0; i < moved.Count; i++)
        {
            if (Between(moved[i], corners[(i + moved.Count - 1) % moved.Count], corners[i]) is not { } s) return null;
            result.Add(s);
        }

        if (Contour.TryCreate(result, out var offset) is not null || !KeepsDistance(contour, offset!, distance)) return null;
        bool IsTip(int i) => IsSwungAround(kept[i], kept[(i + 1) % kept.Count], corners[i], distance, tip);
        if (!Enumerable.Range(0, kept.Count).Any(IsTip)) return offset;
        for (var i = moved.Count - 1; i >= 0; i--)
        {
            if (!IsTip(i)) continue;
            var (corner, next) = (kept[i].End, (i + 1) % moved.Count);
            var (from, to) = (moved[i].End, moved[next].Start);
            var (a, b) = (from - corner, to - corner);
            if (Shortened(result[i], result[i].Start, from) is not { } before || Shortened(result[next], to, result[next].End) is not { } after) return null;
            (result[i], result[next]) = (before, after);
            tips.Add((i, new Segment(from, to, Math.Tan(Math.Atan2(a.Cross(b), a.Dot(b)) / 4))));
        }

        foreach (var (after, arc) in tips) result.Insert(after + 1, arc);
        Contour.TryCreate(result, out var rounded);
        return rounded;
    }

    // A corner the moved outline swings around, which stands out further than wanted.
    private static bool IsSwungAround(Segment a, Segment b, Point2 moved, double distance, double tip) =>
        a.End.DistanceTo(b.Start) <= Tolerance.Length && moved.DistanceTo(a.End) > Math.Abs(distance) + tip && a.DirectionAt(1).Cross(b.DirectionAt(0)) * distance > 0;

    // The same line or arc between two points of it.
    private static Segment? Shortened(Segment s, Point2 from, Point2 to) => from.DistanceTo(to) <= Tolerance.Length ? null : Between(s, from, to);

    // A part that moved past another part of the outline is nearer to it than the distance.
    private static bool KeepsDistance(Contour contour, Contour offset, double distance) =>
        offset.Segments.All(s => contour.DistanceTo(s.Middle) >= Math.Abs(distance) - Tolerance.Length && contour.DistanceTo(s.Start) >= Math.Abs(distance) - Tolerance.Length)
        && contour.Segments.All(s => offset.DistanceTo(s.Middle) >= Math.Abs(distance) - Tolerance.Length)
        && offset.Segments.All(s => contour.Contains(s.Middle) == distance < 0)
        && offset.Area > contour.Area == distance > 0;

    // An anticlockwise outline has its outside on the right.
    private static Segment Moved(Segment s, double distance) =>
        new(s.Start + Outwards(s, s.Start) * distance, s.End + Outwards(s, s.End) * distance, s.IsLine ? 0 : s.Bulge);

    private static Point2 Outwards(Segment s, Point2 at)
    {
        var normal = s.OffCarrier(at).Normal;
        return normal * (1 / normal.Length);
    }

    // Near enough to its chord to begin with, and too far from its centre to reckon with that.
    private static bool IsAlmostStraight(Segment s) => s.IsLine || (Math.Abs(s.Bulge) < 0.1 && s.Radius > 1e5);

    private static Point2? Corner(Segment a, Segment b)
    {
        if (a.End.DistanceTo(b.Start) <= Tolerance.Length) return a.End;
        var candidates = (IsAlmostStraight(a), IsAlmostStraight(b)) switch
        {
            (true, true) => LineLine(a, b),
            (true, false) => LineCircle(a, b),
            (false, true) => LineCircle(b, a),
            _ => CircleCircle(a, b),
        };
        var near = (a.End + b.Start) * 0.5;
        return candidates.Count == 0 ? null : Refined(candidates.MinBy(p => p.DistanceTo(near)), a, b);
    }

    // A few steps of Newton's method: the closed form loses all its digits where an arc is almost straight and its centre far away.
    private static Point2 Refined(Point2 p, Segment a, Segment b)
    {
        for (var i = 0; i < 4; i++)
        {
            var ((da, na), (db, nb)) = (a.OffCarrier(p), b.OffCarrier(p));
            var cross = na.Cross(nb);
            if (Math.Abs(cross) < 1e-9) return p;
            p += new Point2((db * na.Y - da * nb.Y) / cross, (da * nb.X - db * na.X) / cross);
        }

        return p;
    }

    private static List<Point2> LineLine(Segment a, Segment b)
    {
        var (u, v) = (a.End - a.Start, b.End - b.Start);
        var cross = u.Cross(v);
        return Math.Abs(cross) <= 1e-12 * u.Length * v.Length ? [] : [a.Start + u * ((b.Start - a.Start).Cross(v) / cross)];
    }

    private static List<Point2> LineCircle(Segment line, Segment arc)
    {
        var u = (line.End - line.Start) * (1 / line.Start.DistanceTo(line.End));
        var foot = line.Start + u * (arc.Centre - line.Start).Dot(u);
        var half = arc.Radius * arc.Radius - (foot - arc.Centre).Dot(foot - arc.Centre);
        return half < 0 ? [] : [foot + u * Math.Sqrt(half), foot - u * Math.Sqrt(half)];
    }

    private static List<Point2> CircleCircle(Segment a, Segment b)
    {
        var between = b.Centre - a.Centre;
        var distance = between.Length;
        if (distance <= Tolerance.Length) return [];
        var along = (distance * distance + a.Radius * a.Radius - b.Radius * b.Radius) / (2 * distance);
        var half = a.Radius * a.Radius - along * along;
        if (half < 0) return [];
        var u = between * (1 / distance);
        var foot = a.Centre + u * along;
        return [foot + u.Left * Math.Sqrt(half), foot - u.Left * Math.Sqrt(half)];
    }

    // The moved segment cut or lengthened to its corners; nothing where it would run backwards.
    private static Segment? Between(Segment s, Point2 start, Point2 end)
    {
        if (s.IsLine) return (end - start).Dot(s.End - s.Start) > Tolerance.Length ? new Segment(start, end) : null;
        var (from, to) = (start - s.Centre, end - s.Centre);
        var sweep = Math.Atan2(from.Cross(to), from.Dot(to));
        if (s.Bulge > 0 && sweep <= 0) sweep += 2 * Math.PI;
        if (s.Bulge < 0 && sweep >= 0) sweep -= 2 * Math.PI;
        return Math.Abs(sweep - s.SweepRadians) < Math.PI ? new Segment(start, end, Math.Tan(sweep / 4)) : null;
    }
}
