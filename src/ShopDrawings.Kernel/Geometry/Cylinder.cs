namespace ShopDrawings.Kernel;

/// <summary>A solid cylinder with flat ends around an axis, in mm: what a bore takes away.</summary>
internal readonly record struct Cylinder(Axis Axis, double Diameter)
{
    /// <summary>Distance from a point to the cylinder; 0 inside.</summary>
    public double DistanceTo(Point3 point)
    {
        var along = Axis.To - Axis.From;
        var length = along.Length;
        var unit = along * (1 / length);
        var from = point - Axis.From;
        var s = from.Dot(unit);
        var across = Math.Max((from - unit * s).Length - Diameter / 2, 0);
        var beyond = Math.Max(Math.Max(-s, s - length), 0);
        return Math.Sqrt(across * across + beyond * beyond);
    }

    /// <summary>Distance from a stretch to the cylinder; 0 where they meet. To 1e-9 mm.</summary>
    public double DistanceTo(Axis stretch)
    {
        // The distance to a convex body is convex along a line: golden section.
        var body = this;
        double At(double share) => body.DistanceTo(stretch.From + (stretch.To - stretch.From) * share);
        var ratio = (Math.Sqrt(5) - 1) / 2;
        var (low, high) = (0.0, 1.0);
        var (a, b) = (high - ratio, low + ratio);
        var (atA, atB) = (At(a), At(b));
        for (var i = 0; i < 60; i++)
        {
            if (atA <= atB)
            {
                (high, b, atB) = (b, a, atA);
                a = high - ratio * (high - low);
                atA = At(a);
            }
            else
            {
                (low, a, atA) = (a, b, atB);
                b = low + ratio * (high - low);
                atB = At(b);
            }
        }

        return Math.Min(Math.Min(atA, atB), Math.Min(DistanceTo(stretch.From), DistanceTo(stretch.To)));
    }

    /// <summary>
    /// Wood left between two bores; 0 or less where they run into each other. The thinner one counts as round at its ends, which a drill's
    /// point is: exact beside its side, up to a third of its diameter too much beside its corner.
    /// </summary>
    public double Gap(Cylinder other)
    {
        var (thick, thin) = Diameter >= other.Diameter ? (this, other) : (other, this);
        var along = thin.Axis.To - thin.Axis.From;
        var shortened = Math.Max(along.Length - thin.Diameter / 2, along.Length / 2);
        return thick.DistanceTo(new Axis(thin.Axis.From, thin.Axis.From + along * (shortened / along.Length))) - thin.Diameter / 2;
    }
}
