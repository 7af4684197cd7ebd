using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>Parallel unbroken hatch lines.</summary>
/// <param name="AngleDegrees">Direction of the lines, anticlockwise from x.</param>
/// <param name="Spacing">Distance from line to line in mm, above 0.</param>
/// <param name="Origin">A point one of the lines runs through.</param>
public sealed record HatchPattern(double AngleDegrees, double Spacing, Point2 Origin = default);

/// <summary>An area filled or hatched: inside the outline, outside the islands, which do not cross it or each other.</summary>
/// <param name="Layer">The layer.</param>
/// <param name="Outline">The outer edge.</param>
/// <param name="Islands">What is left out; an island within an island is hatched again.</param>
/// <param name="Pattern">The lines, or nothing for a solid fill.</param>
public sealed record HatchEntity(Layer Layer, Contour Outline, ImmutableArray<Contour> Islands, HatchPattern? Pattern) : Entity(Layer)
{
    /// <inheritdoc/>
    public override Box2 Bounds => Outline.Bounds;

    /// <summary>The lines of a pattern, cut at the edges; exact for arcs.</summary>
    public IEnumerable<Segment> Lines(HatchPattern pattern)
    {
        var (sin, cos) = Math.SinCos(pattern.AngleDegrees * (Math.PI / 180));
        var (along, across) = (new Point2(cos, sin), new Point2(-sin, cos));

        // In the frame of the lines they are level: a crossing is an x at a height.
        var edges = new[] { Outline }.Concat(Islands).SelectMany(c => c.Segments).SelectMany(s => Edge.Of(Framed(s))).ToArray();
        var (low, high) = (edges.Min(e => e.Low), edges.Max(e => e.High));
        var crossings = new List<double>();
        for (var n = Math.Ceiling(low / pattern.Spacing); n * pattern.Spacing < high; n++)
        {
            var y = n * pattern.Spacing;
            crossings.Clear();
            foreach (var edge in edges)
            {
                // Half open, so that a line through a corner crosses once or twice, but never only one of two edges that go on.
                if (edge.Low <= y && y < edge.High) crossings.Add(edge.At(y));
            }

            crossings.Sort();
            for (var i = 1; i < crossings.Count; i += 2)
            {
                if (crossings[i] - crossings[i - 1] > Tolerance.Length) yield return new Segment(Back(crossings[i - 1], y), Back(crossings[i], y));
            }
        }

        Segment Framed(Segment s) => new(Frame(s.Start), Frame(s.End), s.Bulge);
        Point2 Frame(Point2 p) => new((p - pattern.Origin).Dot(along), (p - pattern.Origin).Dot(across));
        Point2 Back(double x, double y) => pattern.Origin + along * x + across * y;
    }

    // A piece of an edge that rises or falls all along: of a line, or of one side of a circle.
    private readonly record struct Edge(Point2 Bottom, Point2 Top, Point2 Centre, double Radius, int Side)
    {
        public double Low => Bottom.Y;

        public double High => Top.Y;

        public static IEnumerable<Edge> Of(Segment s)
        {
            if (s.IsLine || Math.Abs(s.Bulge) * s.Start.DistanceTo(s.End) / 2 <= Tolerance.Length)
            {
                yield return Between(s.Start, s.End, default, 0, 0);
                yield break;
            }

            // Split at the circle's lowest and highest point.
            var (centre, radius, sweep) = (s.Centre, s.Radius, s.SweepRadians);
            var start = Math.Atan2(s.Start.Y - centre.Y, s.Start.X - centre.X);
            var (from, to) = sweep > 0 ? (start, start + sweep) : (start + sweep, start);
            var (p, end) = sweep > 0 ? (s.Start, s.End) : (s.End, s.Start);
            var turn = Math.PI * (Math.Floor(from / Math.PI - 0.5) + 1.5);
            for (var angle = from; ; angle = turn, turn += Math.PI)
            {
                var side = Math.Cos((angle + Math.Min(turn, to)) / 2) > 0 ? 1 : -1;
                var q = turn < to ? centre + new Point2(0, Math.Sin(turn) > 0 ? radius : -radius) : end;
                yield return Between(p, q, centre, radius, side);
                if (turn >= to) yield break;
                p = q;
            }
        }

        public double At(double y)
        {
            if (Side == 0) return Bottom.X + (Top.X - Bottom.X) * ((y - Bottom.Y) / (Top.Y - Bottom.Y));
            var height = y - Centre.Y;
            return Centre.X + Side * Math.Sqrt(Math.Max(0, Radius * Radius - height * height));
        }

        private static Edge Between(Point2 a, Point2 b, Point2 centre, double radius, int side) =>
            a.Y <= b.Y ? new Edge(a, b, centre, radius, side) : new Edge(b, a, centre, radius, side);
    }
}
