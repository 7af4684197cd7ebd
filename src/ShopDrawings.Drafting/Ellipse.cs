using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>
/// An ellipse or a part of one, anticlockwise. Its points are centre + cos t · major + sin t · ratio · major turned a quarter to the left.
/// </summary>
/// <param name="Layer">The layer.</param>
/// <param name="Centre">The centre.</param>
/// <param name="Major">From the centre to an end of the longer axis.</param>
/// <param name="Ratio">The shorter axis as a share of the longer one, above 0 and at most 1.</param>
/// <param name="StartDegrees">The parameter t where it starts, at least 0.</param>
/// <param name="EndDegrees">The parameter t where it ends, above the start by at most 360.</param>
public sealed record EllipseEntity(Layer Layer, Point2 Centre, Point2 Major, double Ratio, double StartDegrees = 0, double EndDegrees = 360) : Entity(Layer)
{
    /// <summary>Whether it ends where it starts.</summary>
    public bool IsFull => EndDegrees - StartDegrees >= 360;

    /// <inheritdoc/>
    public override Box2 Bounds
    {
        get
        {
            // Where a coordinate turns, tan t = minor / major of that coordinate.
            var minor = Minor;
            double[] turns = [Math.Atan2(minor.X, Major.X), Math.Atan2(minor.Y, Major.Y)];
            var inside = turns.SelectMany(t => new[] { t, t + Math.PI }).Select(t => t * (180 / Math.PI))
                .Select(t => t + 360 * Math.Ceiling((StartDegrees - t) / 360)).Where(t => t < EndDegrees);
            return Box2.Around([At(StartDegrees), At(EndDegrees), .. inside.Select(At)]);
        }
    }

    private Point2 Minor => Major.Left * Ratio;

    /// <summary>The point at a parameter in degrees.</summary>
    public Point2 At(double degrees)
    {
        var (sin, cos) = Math.SinCos(degrees * (Math.PI / 180));
        return Centre + Major * cos + Minor * sin;
    }

    /// <summary>Arcs end to end that stay within a tolerance in mm of it, for formats without ellipses.</summary>
    public IEnumerable<Segment> Arcs(double tolerance)
    {
        // Quarters first, so that no arc is asked to turn back.
        var pieces = Math.Max(1, (int)Math.Ceiling((EndDegrees - StartDegrees) / 90));
        var step = (EndDegrees - StartDegrees) / pieces;
        for (var i = 0; i < pieces; i++)
        {
            foreach (var arc in Arcs(StartDegrees + i * step, StartDegrees + (i + 1) * step, tolerance)) yield return arc;
        }
    }

    // The arc through both ends and the middle parameter; halved until the points between agree too.
    private IEnumerable<Segment> Arcs(double from, double to, double tolerance)
    {
        const double Shortest = 0.01;
        var (start, middle, end) = (At(from), At((from + to) / 2), At(to));
        var (a, b) = (start - middle, end - middle);
        // The turned angle at the middle is half a circle less half the sweep; bulge is the tangent of a quarter of the sweep.
        var quarter = (Math.PI - Math.Abs(Math.Atan2(a.Cross(b), a.Dot(b)))) / 2;
        var arc = new Segment(start, end, Math.Tan(quarter));
        var isNear = new[] { 0.15, 0.3, 0.7, 0.85 }.All(share => arc.DistanceTo(At(from + share * (to - from))) <= tolerance / 2);
        return isNear || to - from < Shortest ? [arc] : Arcs(from, (from + to) / 2, tolerance).Concat(Arcs((from + to) / 2, to, tolerance));
    }
}
