using ShopDrawings.Kernel;

namespace ShopDrawings.Dxf;

/// <summary>Angles in degrees, anticlockwise from x, at least 0 and below 360 also when rounded to six decimals.</summary>
internal static class Angle
{
    /// <summary>The direction of a vector.</summary>
    public static double Of(Point2 vector) => Normal(Math.Atan2(vector.Y, vector.X) * (180 / Math.PI));

    /// <summary>The angle without full turns.</summary>
    public static double Normal(double degrees)
    {
        var rest = Math.IEEERemainder(degrees, 360);
        if (FixedPoint.Millionths(rest) < 0) rest += 360;
        return rest;
    }
}
