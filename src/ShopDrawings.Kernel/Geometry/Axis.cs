namespace ShopDrawings.Kernel;

/// <summary>A straight stretch in space from one point to another, in mm: the axis of a bore or a screw.</summary>
public readonly record struct Axis(Point3 From, Point3 To)
{
    /// <summary>
    /// Distance between the nearest points of two stretches: the closest-point parameters of both, clamped to their ends, parallel ones
    /// apart (derived, geometry).
    /// </summary>
    public double DistanceTo(Axis other)
    {
        var (d1, d2, r) = (To - From, other.To - other.From, From - other.From);
        var (a, e, f) = (d1.Dot(d1), d2.Dot(d2), d2.Dot(r));
        double s, t;
        if (a <= Tolerance.Length * Tolerance.Length)
        {
            s = 0;
            t = e == 0 ? 0 : Math.Clamp(f / e, 0, 1);
        }
        else
        {
            var c = d1.Dot(r);
            if (e <= Tolerance.Length * Tolerance.Length)
            {
                t = 0;
                s = Math.Clamp(-c / a, 0, 1);
            }
            else
            {
                var b = d1.Dot(d2);
                var slant = a * e - b * b;
                s = slant > 1e-12 * a * e ? Math.Clamp((b * f - c * e) / slant, 0, 1) : 0;
                t = (b * s + f) / e;
                if (t < 0) (t, s) = (0, Math.Clamp(-c / a, 0, 1));
                else if (t > 1) (t, s) = (1, Math.Clamp((b - c) / a, 0, 1));
            }
        }

        return (From + d1 * s - (other.From + d2 * t)).Length;
    }

    /// <summary>Wood left between two round holes or screws around two axes: negative where they run into each other.</summary>
    /// <param name="other">The other axis.</param>
    /// <param name="diameter">Around this axis, in mm.</param>
    /// <param name="otherDiameter">Around the other, in mm.</param>
    public double Gap(Axis other, double diameter, double otherDiameter) => DistanceTo(other) - (diameter + otherDiameter) / 2;
}
