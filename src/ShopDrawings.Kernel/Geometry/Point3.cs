namespace ShopDrawings.Kernel;

/// <summary>A point or a vector in assembly space: x to the right, y to the back, z up, in mm. <c>default</c> is the origin.</summary>
public readonly record struct Point3(double X, double Y, double Z)
{
    /// <summary>The sum of two vectors.</summary>
    public static Point3 operator +(Point3 a, Point3 b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    /// <summary>The vector from <paramref name="b"/> to <paramref name="a"/>.</summary>
    public static Point3 operator -(Point3 a, Point3 b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    /// <summary>A vector times a number.</summary>
    public static Point3 operator *(Point3 a, double factor) => new(a.X * factor, a.Y * factor, a.Z * factor);

    /// <summary>Distance from the origin.</summary>
    public double Length => Math.Sqrt(X * X + Y * Y + Z * Z);

    /// <summary>Scalar product.</summary>
    public double Dot(Point3 other) => X * other.X + Y * other.Y + Z * other.Z;

    /// <summary>Vector product, right-handed.</summary>
    public Point3 Cross(Point3 other) =>
        new(Y * other.Z - Z * other.Y, Z * other.X - X * other.Z, X * other.Y - Y * other.X);

    /// <summary>Smallest coordinate of each axis.</summary>
    public static Point3 Min(Point3 a, Point3 b) => new(Math.Min(a.X, b.X), Math.Min(a.Y, b.Y), Math.Min(a.Z, b.Z));

    /// <summary>Largest coordinate of each axis.</summary>
    public static Point3 Max(Point3 a, Point3 b) => new(Math.Max(a.X, b.X), Math.Max(a.Y, b.Y), Math.Max(a.Z, b.Z));

    /// <summary>As <c>(x, y, z)</c>.</summary>
    public override string ToString() => FormattableString.Invariant($"({X}, {Y}, {Z})");
}
