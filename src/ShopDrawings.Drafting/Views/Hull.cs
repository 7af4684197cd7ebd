using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>A convex outline on paper, anticlockwise.</summary>
internal sealed class Hull
{
    private readonly Point2[] corners;

    private Hull(Point2[] corners) => (this.corners, Bounds) = (corners, Box2.Around(corners));

    /// <summary>The smallest upright box around it.</summary>
    public Box2 Bounds { get; }

    /// <summary>The convex hull of points, by the two chains from the leftmost to the rightmost. Sorts the points.</summary>
    public static Hull Around(Span<Point2> points)
    {
        points.Sort(static (a, b) => a.X != b.X ? a.X.CompareTo(b.X) : a.Y.CompareTo(b.Y));
        var hull = new Point2[2 * points.Length];
        var count = 0;
        for (var pass = 0; pass < 2; pass++)
        {
            var start = count;
            for (var i = 0; i < points.Length; i++)
            {
                var p = points[pass == 0 ? i : points.Length - 1 - i];
                while (count >= start + 2 && (hull[count - 1] - hull[count - 2]).Cross(p - hull[count - 1]) <= 1e-9) count--;
                hull[count++] = p;
            }

            count--;
        }

        return new Hull(hull[..count]);
    }

    /// <summary>Whether its box meets another one.</summary>
    public bool IsNear(Box2 box) => Bounds.Min.X <= box.Max.X && Bounds.Max.X >= box.Min.X && Bounds.Min.Y <= box.Max.Y && Bounds.Max.Y >= box.Min.Y;

    /// <summary>Whether a point lies inside or on it.</summary>
    public bool Contains(Point2 p)
    {
        if (corners.Length < 3 || p.X < Bounds.Min.X || p.X > Bounds.Max.X || p.Y < Bounds.Min.Y || p.Y > Bounds.Max.Y) return false;
        var from = corners[^1];
        foreach (var to in corners)
        {
            if ((to - from).Cross(p - from) < -1e-7) return false;
            from = to;
        }

        return true;
    }

    /// <summary>Whether a box lies inside it.</summary>
    public bool Contains(Box2 box) => Contains(box.Min) && Contains(box.Max) && Contains(new Point2(box.Min.X, box.Max.Y)) && Contains(new Point2(box.Max.X, box.Min.Y));

    /// <summary>The shares of a line that lie inside, or nothing.</summary>
    public (double From, double To)? Inside(Point2 p, Point2 q)
    {
        var (from, to) = (0.0, 1.0);
        var start = corners[^1];
        foreach (var end in corners)
        {
            var edge = end - start;
            var (a, b) = (edge.Cross(p - start), edge.Cross(q - start));
            start = end;
            if (a < 0 && b < 0) return null;
            if (a < 0) from = Math.Max(from, a / (a - b));
            else if (b < 0) to = Math.Min(to, a / (a - b));
        }

        return from < to ? (from, to) : null;
    }
}
