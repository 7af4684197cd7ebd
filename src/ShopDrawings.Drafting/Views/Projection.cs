using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>
/// A parallel projection of the assembly. What the viewer sees to the right and upwards are the coordinates on paper; <see cref="ToViewer"/>
/// points from the assembly to the viewer and is square to both. In mm, not yet to scale.
/// </summary>
internal sealed record Projection
{
    private Projection(Point3 right, Point3 up, Point3 toViewer) => (Right, Up, ToViewer) = (right, up, toViewer);

    /// <summary>Seen from the front.</summary>
    public static Projection Front { get; } = new(new(1, 0, 0), new(0, 0, 1), new(0, -1, 0));

    /// <summary>Seen from the left: the front of the cabinet is at the right.</summary>
    public static Projection Left { get; } = new(new(0, -1, 0), new(0, 0, 1), new(-1, 0, 0));

    /// <summary>Seen from above: the front of the cabinet is at the bottom.</summary>
    public static Projection Plan { get; } = new(new(1, 0, 0), new(0, 1, 0), new(0, 0, 1));

    /// <summary>
    /// Isometric (ISO 5456-3, from memory) from the front, the right and above; lengths along the three axes are true, so it is √(3/2) larger
    /// than the projection proper.
    /// </summary>
    public static Projection Isometric { get; } = new(
        new(Math.Sqrt(3) / 2, Math.Sqrt(3) / 2, 0), new(-0.5, 0.5, 1), new(1, -1, 1));

    /// <summary>The vector to the right on paper, as a weight of each coordinate.</summary>
    public Point3 Right { get; }

    /// <summary>The vector upwards on paper, as a weight of each coordinate.</summary>
    public Point3 Up { get; }

    /// <summary>Towards the viewer; its length means nothing.</summary>
    public Point3 ToViewer { get; }

    /// <summary>Where a point of the assembly lies on paper, before the scale.</summary>
    public Point2 Map(Point3 point) => new(point.Dot(Right), point.Dot(Up));

    /// <summary>The planes between which lies what is seen between two places across the paper, the lower on its axis first. Only for views along an axis.</summary>
    public ((int Axis, double Level) Low, (int Axis, double Level) High) Across(double from, double to) => Planes(Right, from, to);

    /// <summary>As <see cref="Across"/>, up the paper.</summary>
    public ((int Axis, double Level) Low, (int Axis, double Level) High) Upwards(double from, double to) => Planes(Up, from, to);

    private static ((int Axis, double Level) Low, (int Axis, double Level) High) Planes(Point3 direction, double from, double to)
    {
        var axis = direction.X != 0 ? 0 : direction.Y != 0 ? 1 : 2;
        return direction.Along(axis) > 0 ? ((axis, from), (axis, to)) : ((axis, -to), (axis, -from));
    }

    /// <summary>The box on paper of a block of the assembly, before the scale.</summary>
    public Box2 Map(Box3 box)
    {
        Span<Point2> corners = stackalloc Point2[8];
        for (var i = 0; i < 8; i++)
            corners[i] = Map(new Point3((i & 1) == 0 ? box.Min.X : box.Max.X, (i & 2) == 0 ? box.Min.Y : box.Max.Y, (i & 4) == 0 ? box.Min.Z : box.Max.Z));
        return Box2.Around(corners);
    }
}
