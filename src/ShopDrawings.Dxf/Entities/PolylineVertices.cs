using ShopDrawings.Kernel;

namespace ShopDrawings.Dxf;

/// <summary>The vertices and bulges of an outline as six decimals can hold them.</summary>
internal static class PolylineVertices
{
    /// <summary>How many numbers stand for one vertex: x, y, bulge.</summary>
    public const int Numbers = 3;

    /// <summary>Adds x, y and bulge for each vertex to <paramref name="vertices"/>.</summary>
    /// <param name="segments">Lines and arcs end to end.</param>
    /// <param name="closed">Whether the last joins the first; otherwise the end point becomes the last vertex.</param>
    /// <param name="unit">The unit of the file: vertices with the same digits in it are not written twice.</param>
    /// <param name="vertices">Receives the numbers.</param>
    public static void Collect(ReadOnlySpan<Segment> segments, bool closed, DrawingUnit unit, List<double> vertices)
    {
        for (var i = 0; i < segments.Length; i++)
        {
            var s = segments[i];
            var end = closed ? segments[(i + 1) % segments.Length].Start : s.End;
            if (!AreSame(s.Start, end, unit)) Add(s, vertices);
        }

        if (!closed && segments is [.., var last]) vertices.AddRange(last.End.X, last.End.Y, 0);
    }

    /// <summary>Whether two points, in mm, have the same digits in a file.</summary>
    public static bool AreSame(Point2 a, Point2 b, DrawingUnit unit)
    {
        if (Math.Abs(a.X - b.X) > 1e-4 || Math.Abs(a.Y - b.Y) > 1e-4) return false;
        var mm = unit.Millimetres();
        return FixedPoint.Same(a.X / mm, b.X / mm) && FixedPoint.Same(a.Y / mm, b.Y / mm);
    }

    private static void Add(Segment s, List<double> vertices)
    {
        // A bulge rounded to six decimals moves the middle of its arc; by too much, and the arc is written as two.
        var rounded = Rounded(s.Bulge);
        if (Math.Abs(s.Bulge - rounded) * s.Start.DistanceTo(s.End) / 2 <= ArcGroups.Tolerance)
        {
            vertices.AddRange(s.Start.X, s.Start.Y, rounded);
            return;
        }

        var (first, second) = Split(s);
        Add(first, vertices);
        Add(second, vertices);
    }

    // The first part gets a bulge of six decimals; what that leaves over falls to a second part too short for rounding to matter.
    private static (Segment First, Segment Second) Split(Segment s)
    {
        const double Short = 2 * ArcGroups.Tolerance / 0.5e-6;
        var chord = s.Start.DistanceTo(s.End);
        var quarter = Math.Atan(s.Bulge);       // of the turned angle
        var bulge = Rounded(Math.Tan(quarter - Math.Asin(Math.Min(Short / chord, 0.5) * Math.Sin(2 * quarter)) / 2));
        var isPart = Math.Abs(bulge) >= Math.Abs(s.Bulge) / 4 && Math.Abs(bulge) < Math.Abs(s.Bulge);
        if (!isPart) bulge = Math.Tan(quarter / 2);     // so flat that six decimals leave no choice: halves

        var first = ArcChords.Part(s, Math.Atan(bulge) / quarter) with { Bulge = bulge };
        return (first, new Segment(first.End, s.End, Math.Tan(quarter - Math.Atan(bulge))));
    }

    private static double Rounded(double bulge) => FixedPoint.Millionths(bulge) / 1e6;
}
