using System.Collections.Immutable;
using CsCheck;
using ShopDrawings.Kernel;

namespace ShopDrawings.Tests.Geometry;

/// <summary>Slow, plain versions of the geometry, by stepping along outlines, and outlines to try it on.</summary>
internal static class Samples
{
    /// <summary>An arc made from its centre, which the kernel has to find again.</summary>
    public static Segment Arc(Point2 centre, double radius, double from, double sweep) =>
        new(OnCircle(centre, radius, from), OnCircle(centre, radius, from + sweep), Math.Tan(sweep / 4));

    public static Point2 OnCircle(Point2 centre, double radius, double angle) =>
        centre + new Point2(Math.Cos(angle) * radius, Math.Sin(angle) * radius);

    /// <summary>Points along a line or an arc, both ends included. Halves the arc again and again: no centre, no radius.</summary>
    public static IEnumerable<Point2> Along(Segment s, int halvings)
    {
        yield return s.Start;
        foreach (var p in Between(s.Start, s.End, s.Bulge, halvings)) yield return p;
        yield return s.End;
    }

    private static IEnumerable<Point2> Between(Point2 start, Point2 end, double bulge, int halvings)
    {
        if (halvings == 0) yield break;
        var chord = end - start;
        var middle = (start + end) * 0.5 + new Point2(chord.Y, -chord.X) * (bulge / 2);
        var half = Math.Tan(Math.Atan(bulge) / 2);
        foreach (var p in Between(start, middle, half, halvings - 1)) yield return p;
        yield return middle;
        foreach (var p in Between(middle, end, half, halvings - 1)) yield return p;
    }

    public static List<Point2> Flattened(IEnumerable<Segment> segments, int halvings) =>
        [.. segments.SelectMany(s => Along(s, s.Bulge == 0 ? 0 : halvings).SkipLast(1))];

    /// <summary>Shoelace formula.</summary>
    public static double Area(List<Point2> points)
    {
        var doubled = 0.0;
        for (var i = 0; i < points.Count; i++) doubled += points[i].Cross(points[(i + 1) % points.Count]);
        return doubled / 2;
    }

    /// <summary>How often a polygon runs round a point, by adding up the angles.</summary>
    public static int Winding(List<Point2> points, Point2 at)
    {
        var turned = 0.0;
        for (var i = 0; i < points.Count; i++)
        {
            var (a, b) = (points[i] - at, points[(i + 1) % points.Count] - at);
            turned += Math.Atan2(a.Cross(b), a.Dot(b));
        }

        return (int)Math.Round(turned / (2 * Math.PI));
    }

    /// <summary>Outlines with straight and round parts round a common middle, convex and not, either way round.</summary>
    public static Gen<Contour> Contours { get; } =
        Gen.Select(Gen.Double[20, 100], Gen.OneOf(Gen.Const(0.0), Gen.Double[-0.4, 0.6])).Array[3, 9].Select(Gen.Double[0, 1], Gen.Bool)
        .Select((parts, turn, backwards) =>
        {
            var corners = parts.Select((p, i) => OnCircle(new(7, -3), p.Item1, (i + turn) * 2 * Math.PI / parts.Length)).ToArray();
            IEnumerable<Segment> segments = corners.Select((c, i) => new Segment(c, corners[(i + 1) % corners.Length], parts[i].Item2));
            if (backwards) segments = segments.Reverse().Select(s => s.Reversed);
            return Contour.TryCreate(segments, out var contour) is null ? contour : null;
        })
        .Where(c => c is not null).Select(c => c!);

    /// <summary>Outlines on a grid, where points fall exactly on chords, corners and their heights.</summary>
    public static ImmutableArray<Contour> OnGrid { get; } =
    [
        Contour.Rectangle(-3, -2, 4, 5),
        Contour.Circle(new(1, 0), 4),
        Contour.Slot(new(-4, 0), new(4, 0), 4),
        Contour.Slot(new(0, -3), new(0, 3), 2),
        Contour.RoundedRectangle(-5, -4, 5, 4, 2),
        Contour.FromSegments([new(new(-4, 0), new(4, 0), 1), new(new(4, 0), new(0, 0), -1), new(new(0, 0), new(-4, 0), -1)]),
        Contour.FromSegments([new(new(-4, -4), new(0, -4)), new(new(0, -4), new(4, -4), -1), new(new(4, -4), new(6, -4)), new(new(6, -4), new(6, 3)), new(new(6, 3), new(-4, 3)), new(new(-4, 3), new(-4, -4))]),
        Contour.FromSegments([new(new(0, -5), new(5, 0)), new(new(5, 0), new(0, 5)), new(new(0, 5), new(-5, 0)), new(new(-5, 0), new(0, -5))]),
        Contour.FromSegments([new(new(-4, 0), new(4, 0)), new(new(4, 0), new(-4, 0), 0.5)]),
        Contour.FromSegments([new(new(0, -4), new(0, 4), 2), new(new(0, 4), new(0, -4), -0.5)]),
    ];
}
