using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>A convex prism of material: corners in the plane across an axis, and the stretch it fills on that axis. In mm.</summary>
/// <param name="Axis">0 x, 1 y, 2 z.</param>
/// <param name="Corners">In the plane's coordinates, in order.</param>
/// <param name="Low">Where it begins on the axis.</param>
/// <param name="High">Where it ends.</param>
internal sealed record Prism(int Axis, Point2[] Corners, double Low, double High)
{
    private readonly Box2 across = Box2.Around(Corners);

    /// <summary>The stretch it fills on any axis.</summary>
    public (double Low, double High) Stretch(int axis) =>
        axis == Axis ? (Low, High) : axis == (Axis + 1) % 3 ? (across.Min.X, across.Max.X) : (across.Min.Y, across.Max.Y);

    /// <summary>What of it lies beyond a plane across an axis, above the level or below it; nothing where that has no volume.</summary>
    public Prism? Beyond(int axis, double level, bool isAbove)
    {
        var (low, high) = Stretch(axis);
        if (isAbove ? !Tolerance.Exceeds(high, level) : !Tolerance.Exceeds(level, low)) return null;
        if (isAbove ? low >= level : high <= level) return this;
        if (axis == Axis) return isAbove ? new Prism(Axis, Corners, level, High) : new Prism(Axis, Corners, Low, level);
        var isFirst = (Axis + 1) % 3 == axis;
        double Out(Point2 p) => ((isFirst ? p.X : p.Y) - level) * (isAbove ? 1 : -1);
        var left = new List<Point2>(Corners.Length + 1);
        var a = Corners[^1];
        foreach (var b in Corners)
        {
            var (da, db) = (Out(a), Out(b));
            if ((da > 0 && db < 0) || (da < 0 && db > 0)) left.Add(a + (b - a) * (da / (da - db)));
            if (db >= 0) left.Add(b);
            a = b;
        }

        return left.Count < 3 ? null : new Prism(Axis, [.. left], Low, High);
    }

    /// <summary>The same prism moved.</summary>
    public Prism Moved(Point3 by)
    {
        var (across, along) = (Body.OnPlane(Axis, by), by.Along(Axis));
        return new Prism(Axis, [.. Corners.Select(c => c + across)], Low + along, High + along);
    }

    /// <summary>Its outline as it is seen.</summary>
    public Hull Seen(Projection view)
    {
        var points = new Point2[2 * Corners.Length];
        for (var i = 0; i < Corners.Length; i++)
        {
            points[2 * i] = view.Map(Body.InSpace(Axis, Low, Corners[i]));
            points[2 * i + 1] = view.Map(Body.InSpace(Axis, High, Corners[i]));
        }

        return Hull.Around(points);
    }
}
