namespace ShopDrawings.Kernel;

/// <summary>
/// A straight line or a circular arc from <paramref name="Start"/> to <paramref name="End"/>, in mm.
/// <paramref name="Bulge"/> is the tangent of a quarter of the turned angle: 0 straight, 1 a half circle,
/// positive anticlockwise (DXF Reference, LWPOLYLINE, group 42).
/// </summary>
public readonly record struct Segment(Point2 Start, Point2 End, double Bulge = 0)
{
    // An arc that stands out less than this from its chord is a line: its centre is too far off to reckon with.
    private const double LeastRise = 1e-7;

    /// <summary>Whether it is a straight line, or an arc that rises less than 1e-7 mm above its chord.</summary>
    public bool IsLine => Math.Abs(Bulge) * Start.DistanceTo(End) < 2 * LeastRise;

    /// <summary>The turned angle in radians, positive anticlockwise; 0 for a line.</summary>
    public double SweepRadians => 4 * Math.Atan(Bulge);

    /// <summary>Radius of the arc in mm. Only for arcs.</summary>
    public double Radius => Start.DistanceTo(End) * (1 + Bulge * Bulge) / (4 * Math.Abs(Bulge));

    /// <summary>Centre of the arc. Only for arcs.</summary>
    public Point2 Centre
    {
        get
        {
            var chord = End - Start;
            return (Start + End) * 0.5 + chord.Left * ((1 - Bulge * Bulge) / (4 * Bulge));
        }
    }

    /// <summary>Length along the line or the arc.</summary>
    public double Length => IsLine ? Start.DistanceTo(End) : Radius * Math.Abs(SweepRadians);

    /// <summary>The middle, on the line or the arc.</summary>
    public Point2 Middle => (Start + End) * 0.5 - (End - Start).Left * (Bulge / 2);

    /// <summary>The point after a share of the length, 0 to 1.</summary>
    public Point2 At(double share)
    {
        if (share <= 0) return Start;
        if (share >= 1) return End;
        if (IsLine) return Start + (End - Start) * share;
        var (sin, cos) = Math.SinCos(SweepRadians * share);
        var (centre, ray) = (Centre, Start - Centre);
        return centre + new Point2(ray.X * cos - ray.Y * sin, ray.X * sin + ray.Y * cos);
    }

    /// <summary>The part between two shares of the length, 0 to 1, the first smaller.</summary>
    public Segment Part(double from, double to) => new(At(from), At(to), IsLine ? 0 : Math.Tan(SweepRadians * (to - from) / 4));

    /// <summary>The direction it runs in at a share of the length, 0 to 1; of length 1.</summary>
    public Point2 DirectionAt(double share)
    {
        var chord = (End - Start) * (1 / Start.DistanceTo(End));
        if (IsLine) return chord;
        var (sin, cos) = Math.SinCos(SweepRadians * (share - 0.5));
        return new Point2(chord.X * cos - chord.Y * sin, chord.X * sin + chord.Y * cos);
    }

    /// <summary>The same path run backwards.</summary>
    public Segment Reversed => new(End, Start, -Bulge);

    /// <summary>The arc through three points, or the line from the first to the last where all lie in one.</summary>
    public static Segment Through(Point2 start, Point2 middle, Point2 end)
    {
        var a = middle - start;
        var b = end - middle;
        var turn = Math.Atan2(a.Cross(b), a.Dot(b));
        return Math.Abs(Math.Sin(turn)) < 1e-12 ? new Segment(start, end) : new Segment(start, end, Math.Tan(turn / 2));
    }

    /// <summary>The smallest upright box around it, exact for arcs.</summary>
    public Box2 Bounds
    {
        get
        {
            var box = Box2.Around([Start, End]);
            if (IsLine) return box;
            var centre = Centre;
            var radius = Radius;
            foreach (var direction in (ReadOnlySpan<Point2>)[new(1, 0), new(0, 1), new(-1, 0), new(0, -1)])
            {
                var quadrant = centre + direction * radius;
                if (IsBeside(quadrant)) box = box.Union(new Box2(quadrant, quadrant));
            }

            return box;
        }
    }

    /// <summary>Distance from a point to the nearest point of the line or arc.</summary>
    public double DistanceTo(Point2 point)
    {
        if (IsLine)
        {
            var along = End - Start;
            var square = along.Dot(along);
            var share = square == 0 ? 0 : Math.Clamp((point - Start).Dot(along) / square, 0, 1);
            return point.DistanceTo(Start + along * share);
        }

        return IsBeside(point)
            ? Math.Abs(OffCarrier(point).Distance) * 2 * Radius / (point.DistanceTo(Centre) + Radius)
            : Math.Min(point.DistanceTo(Start), point.DistanceTo(End));
    }

    /// <summary>
    /// The power of a point about the whole circle divided by its diameter, negative inside an anticlockwise arc, or the distance from the
    /// whole line, negative on its left; and the direction in which that grows. Near the circle that is the distance from it. Never asks for
    /// the centre, so that an almost straight arc loses no digits.
    /// </summary>
    internal (double Distance, Point2 Normal) OffCarrier(Point2 point)
    {
        var (fromStart, fromEnd, chord) = (point - Start, point - End, End - Start);
        var (bulge, length) = (IsLine ? 0 : Bulge, chord.Length);
        var curvature = 2 * bulge / (length * (1 + bulge * bulge));
        var left = chord.Left * ((1 - bulge * bulge) / ((1 + bulge * bulge) * length));
        return (curvature * fromStart.Dot(fromEnd) - left.Dot(fromStart), (fromStart + fromEnd) * curvature - left);
    }

    /// <summary>As <c>(x, y) to (x, y) bulge b</c>.</summary>
    public override string ToString() => FormattableString.Invariant($"{Start} to {End} bulge {Bulge}");

    /// <summary>Whether the ray from the arc's centre through the point meets the arc.</summary>
    private bool IsBeside(Point2 point)
    {
        // Seen from the chord, the arc and its wedge beyond lie on one side for bulges up to 1, all but the other side beyond.
        var centre = Centre;
        var from = Bulge > 0 ? Start - centre : End - centre;
        var ray = point - centre;
        var angle = Math.Atan2(from.Cross(ray), from.Dot(ray));
        if (angle < 0) angle += 2 * Math.PI;
        return angle <= Math.Abs(SweepRadians);
    }
}
