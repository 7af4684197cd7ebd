using ShopDrawings.Kernel;

namespace ShopDrawings.Print;

/// <summary>Arcs of circles and ellipses as cubic Bézier curves.</summary>
internal static class Curves
{
    /// <summary>How far in mm a curve may be from the arc it stands for.</summary>
    public const double Tolerance = 0.001;

    /// <summary>Draws the part of an ellipse from one parameter to another, in radians, starting where the path ends.</summary>
    /// <param name="plotter">What draws it.</param>
    /// <param name="centre">The centre.</param>
    /// <param name="axis">From the centre to parameter 0.</param>
    /// <param name="quarter">From the centre to parameter π/2.</param>
    /// <param name="from">Where it starts.</param>
    /// <param name="to">Where it ends; below the start it runs clockwise.</param>
    public static void Arc(IPlotter plotter, Point2 centre, Point2 axis, Point2 quarter, double from, double to)
    {
        var pieces = Pieces(Math.Max(axis.Length, quarter.Length), Math.Abs(to - from));
        var step = (to - from) / pieces;
        // The handle that brings the middle of the curve onto the circle.
        var handle = 4 / 3.0 * Math.Tan(step / 4);
        for (var i = 0; i < pieces; i++)
        {
            var (sin0, cos0) = Math.SinCos(from + i * step);
            var (sin1, cos1) = Math.SinCos(from + (i + 1) * step);
            plotter.CurveTo(
                At(cos0 - handle * sin0, sin0 + handle * cos0),
                At(cos1 + handle * sin1, sin1 - handle * cos1),
                At(cos1, sin1));
        }

        Point2 At(double x, double y) => centre + axis * x + quarter * y;
    }

    /// <summary>How many equal pieces, of a quarter turn at most, keep an arc within the tolerance.</summary>
    public static int Pieces(double radius, double sweep)
    {
        // Half of it is left to the rounding of coordinates.
        for (var pieces = Math.Max(1, (int)Math.Ceiling(sweep / (Math.PI / 2) - 1e-6)); ; pieces++)
        {
            if (radius * Bulge(sweep / pieces) <= Tolerance / 2) return pieces;
        }
    }

    /// <summary>
    /// The most a curve with that handle stands out from the circle of radius 1 it replaces over an angle: 2/27 · sin⁶(θ/4) / cos²(θ/4), the
    /// first term of the series; derived, and measured by a test.
    /// </summary>
    private static double Bulge(double angle)
    {
        var (sin, cos) = Math.SinCos(angle / 4);
        return 2 / 27.0 * Math.Pow(sin, 6) / (cos * cos);
    }
}
