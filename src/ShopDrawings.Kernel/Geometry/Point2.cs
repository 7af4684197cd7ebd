namespace ShopDrawings.Kernel;

/// <summary>A point or a vector in a plane: x to the right, y up, in mm. <c>default</c> is the origin.</summary>
public readonly record struct Point2(double X, double Y)
{
    /// <summary>The sum of two vectors.</summary>
    public static Point2 operator +(Point2 a, Point2 b) => new(a.X + b.X, a.Y + b.Y);

    /// <summary>The vector from <paramref name="b"/> to <paramref name="a"/>.</summary>
    public static Point2 operator -(Point2 a, Point2 b) => new(a.X - b.X, a.Y - b.Y);

    /// <summary>A vector times a number.</summary>
    public static Point2 operator *(Point2 a, double factor) => new(a.X * factor, a.Y * factor);

    /// <summary>Distance from the origin.</summary>
    public double Length => Math.Sqrt(X * X + Y * Y);

    /// <summary>The vector turned a quarter anticlockwise.</summary>
    public Point2 Left => new(-Y, X);

    /// <summary>Distance to another point.</summary>
    public double DistanceTo(Point2 other) => (this - other).Length;

    /// <summary>Scalar product.</summary>
    public double Dot(Point2 other) => X * other.X + Y * other.Y;

    /// <summary>Area of the parallelogram of two vectors; positive when <paramref name="other"/> lies to the left.</summary>
    public double Cross(Point2 other) => X * other.Y - Y * other.X;

    /// <summary>As <c>(x, y)</c>.</summary>
    public override string ToString() => FormattableString.Invariant($"({X}, {Y})");
}
