namespace ShopDrawings.Kernel;

/// <summary>A block with its edges along the axes, ends included, in mm.</summary>
public readonly record struct Box3(Point3 Min, Point3 Max)
{
    /// <summary>Extent along x, y and z.</summary>
    public Point3 Size => Max - Min;

    /// <summary>Content in mm³.</summary>
    public double Volume => Size.X * Size.Y * Size.Z;

    /// <summary>The part inside both, or nothing where they share no volume beyond <see cref="Tolerance.Length"/>.</summary>
    public Box3? Intersection(Box3 other)
    {
        var min = Point3.Max(Min, other.Min);
        var max = Point3.Min(Max, other.Max);
        return Tolerance.Exceeds(max.X, min.X) && Tolerance.Exceeds(max.Y, min.Y) && Tolerance.Exceeds(max.Z, min.Z)
            ? new Box3(min, max)
            : null;
    }

    /// <summary>Whether another block lies inside this one, to <see cref="Tolerance.Length"/>.</summary>
    public bool Contains(Box3 other)
    {
        var (low, high) = (other.Min - Min, Max - other.Max);
        return Math.Min(Math.Min(low.X, low.Y), low.Z) >= -Tolerance.Length && Math.Min(Math.Min(high.X, high.Y), high.Z) >= -Tolerance.Length;
    }

    /// <summary>The smallest box around two opposite corners in any order.</summary>
    public static Box3 Between(Point3 a, Point3 b) => new(Point3.Min(a, b), Point3.Max(a, b));

    /// <summary>The smallest box around both.</summary>
    public Box3 Union(Box3 other) => new(Point3.Min(Min, other.Min), Point3.Max(Max, other.Max));
}
