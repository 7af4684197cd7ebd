using ShopDrawings.Kernel;

namespace ShopDrawings.Dxf;

/// <summary>The vertices and bulges of an outline as six decimals can hold them.</summary>
internal static class PolylineVertices
{
    /// <summary>How many numbers stand for one vertex: x, y, bulge.</summary>
    public const int Numbers = 3;

    // A bulge rounded to six decimals moves the middle of its arc; more than this, in mm, and the arc is written as two.
    private const double MiddleTolerance = 5e-5;

    /// <summary>Puts x, y and bulge for each vertex into <paramref name="vertices"/>, replacing what it held.</summary>
    /// <param name="segments">Lines and arcs end to end.</param>
    /// <param name="closed">Whether the last joins the first; otherwise the end point becomes the last vertex.</param>
    /// <param name="digits">Gives a length in mm as the file shows it, so that vertices with the same digits are not written twice.</param>
    /// <param name="vertices">Receives the numbers.</param>
    public static void Collect(ReadOnlySpan<Segment> segments, bool closed, Func<double, double> digits, List<double> vertices)
    {
        vertices.Clear();
        for (var i = 0; i < segments.Length; i++)
        {
            var s = segments[i];
            var end = closed ? segments[(i + 1) % segments.Length].Start : s.End;
            if (!Same(s.Start, end)) Add(s, vertices);
        }

        if (!closed && segments is [.., var last]) vertices.AddRange(last.End.X, last.End.Y, 0);

        bool Same(Point2 a, Point2 b) => Math.Abs(a.X - b.X) < 1e-4 && Math.Abs(a.Y - b.Y) < 1e-4
            && FixedPoint.Same(digits(a.X), digits(b.X)) && FixedPoint.Same(digits(a.Y), digits(b.Y));
    }

    private static void Add(Segment s, List<double> vertices)
    {
        var rounded = Rounded(s.Bulge);
        if (Math.Abs(s.Bulge - rounded) * s.Start.DistanceTo(s.End) / 2 <= MiddleTolerance)
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
        const double Short = 2 * MiddleTolerance / 0.5e-6;
        var chord = s.Start.DistanceTo(s.End);
        var quarter = Math.Atan(s.Bulge);       // of the turned angle
        var bulge = Rounded(Math.Tan(quarter - Math.Asin(Math.Min(Short / chord, 0.5) * Math.Sin(2 * quarter)) / 2));
        var isPart = Math.Abs(bulge) >= Math.Abs(s.Bulge) / 4 && Math.Abs(bulge) < Math.Abs(s.Bulge);
        if (!isPart) bulge = Math.Tan(quarter / 2);     // so flat that six decimals leave no choice: halves

        // Seen from the start, chords lie half as far round as the arcs they span.
        var part = Math.Atan(bulge);
        var (sin, cos) = Math.SinCos(2 * (part - quarter));
        var along = (s.End - s.Start) * (Math.Sin(2 * part) / Math.Sin(2 * quarter));
        var middle = s.Start + new Point2(along.X * cos - along.Y * sin, along.X * sin + along.Y * cos);
        return (new Segment(s.Start, middle, bulge), new Segment(middle, s.End, Math.Tan(quarter - part)));
    }

    private static double Rounded(double bulge) => FixedPoint.Millionths(bulge) / 1e6;
}
