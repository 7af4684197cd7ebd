using ShopDrawings.Kernel;

namespace ShopDrawings.Dxf;

/// <summary>The numbers of an ARC, as six decimals can hold them.</summary>
internal static class ArcGroups
{
    /// <summary>Radius in mm up to which half a unit of an angle's sixth decimal moves no point by more than <see cref="Tolerance"/>.</summary>
    public const double GreatestPlain = 5000;

    /// <summary>How far, in mm, an arc may be off where nothing else is asked for.</summary>
    public const double Tolerance = 5e-5;

    // A centre farther off leaves its readers too few digits for the arc.
    private const double Greatest = 1e8;
    private const double Smallest = 1e-4;

    /// <summary>Whether a line says the same: the middle is off the chord by less than two equal lengths may differ, or the arc is a dot.</summary>
    public static bool IsFlat(Segment s) =>
        s.IsLine || Math.Abs(s.Bulge) * s.Start.DistanceTo(s.End) / 2 <= Kernel.Tolerance.Length || s.Radius < Smallest;

    /// <summary>The centre, the radius and both angles of an arc in degrees; nothing where no ARC is near enough.</summary>
    public static (Point2 Centre, double Radius, double Start, double End)? Of(Segment s)
    {
        var arc = s.Radius <= GreatestPlain ? Plain(s) : s.Radius <= Greatest && Math.Abs(s.Bulge) <= 1 ? Fitted(s) : default;
        var isThere = arc.Radius > 0 && Math.Abs(arc.Centre.X) < FixedPoint.Limit && Math.Abs(arc.Centre.Y) < FixedPoint.Limit;
        return isThere && !FixedPoint.Same(arc.Start, arc.End) ? arc : null;
    }

    private static (Point2 Centre, double Radius, double Start, double End) Plain(Segment s)
    {
        var centre = s.Centre;
        var (from, to) = s.Bulge > 0 ? (s.Start - centre, s.End - centre) : (s.End - centre, s.Start - centre);
        return (centre, s.Radius, Angle.Of(from), Angle.Of(to));
    }

    // The angles are rounded first; then centre and radius are those that bring the ends to their places all the same.
    private static (Point2 Centre, double Radius, double Start, double End) Fitted(Segment s)
    {
        const double Degree = Math.PI / 180;
        var chord = s.Bulge > 0 ? s.End - s.Start : s.Start - s.End;
        var half = Math.Abs(s.SweepRadians) / Degree / 2;
        var middle = Math.Atan2(chord.Y, chord.X) / Degree - 90;
        var (start, end) = (Rounded(middle - half), Rounded(middle + half));
        var (sin, cos) = Math.SinCos((end - start) / 2 * Degree);
        var radius = chord.Length / (2 * sin);
        var (y, x) = Math.SinCos((start + end) / 2 * Degree);
        return ((s.Start + s.End) * 0.5 - new Point2(x, y) * (radius * cos), radius, Angle.Normal(start), Angle.Normal(end));
    }

    private static double Rounded(double degrees) => FixedPoint.Millionths(degrees) / 1e6;
}
