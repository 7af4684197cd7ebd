namespace ShopDrawings.Kernel;

/// <summary>An upright rectangle, ends included, in mm.</summary>
public readonly record struct Box2(Point2 Min, Point2 Max)
{
    /// <summary>Extent along x.</summary>
    public double Width => Max.X - Min.X;

    /// <summary>Extent along y.</summary>
    public double Height => Max.Y - Min.Y;

    /// <summary>The middle.</summary>
    public Point2 Centre => (Min + Max) * 0.5;

    /// <summary>The smallest box around both.</summary>
    public Box2 Union(Box2 other) => new(
        new Point2(Math.Min(Min.X, other.Min.X), Math.Min(Min.Y, other.Min.Y)),
        new Point2(Math.Max(Max.X, other.Max.X), Math.Max(Max.Y, other.Max.Y)));

    /// <summary>The box with every side moved outwards by <paramref name="margin"/> mm.</summary>
    public Box2 Grown(double margin) => new(Min - new Point2(margin, margin), Max + new Point2(margin, margin));

    /// <summary>The smallest box around points; at least one.</summary>
    public static Box2 Around(IEnumerable<Point2> points) => Around([.. points]);

    /// <summary>The smallest box around points; at least one.</summary>
    public static Box2 Around(ReadOnlySpan<Point2> points)
    {
        double minX = double.PositiveInfinity, minY = minX, maxX = double.NegativeInfinity, maxY = maxX;
        foreach (var p in points)
        {
            minX = Math.Min(minX, p.X);
            minY = Math.Min(minY, p.Y);
            maxX = Math.Max(maxX, p.X);
            maxY = Math.Max(maxY, p.Y);
        }

        if (minX > maxX) throw new ArgumentException("A box needs at least one point.", nameof(points));
        return new Box2(new Point2(minX, minY), new Point2(maxX, maxY));
    }
}
