namespace ShopDrawings.Kernel;

/// <summary>
/// The material of a panel, or the block of a piece of hardware, as slabs across one axis of the assembly: what is left of a panel when
/// its cut-outs, grooves and face bores are taken away. Arcs are judged to 0.01 mm; edge bores are not taken away.
/// </summary>
internal sealed class Solid
{
    private const double ArcTolerance = 0.01;

    private readonly int normal;
    private readonly IReadOnlyList<(double Low, double High, PolygonOperations.Region Region)> slabs;

    private Solid(int normal, Box3 bounds, IReadOnlyList<(double, double, PolygonOperations.Region)> slabs) =>
        (this.normal, Bounds, this.slabs) = (normal, bounds, slabs);

    /// <summary>The block around it.</summary>
    public Box3 Bounds { get; }

    /// <summary>The material of a placed panel.</summary>
    public static Solid Of(Panel panel)
    {
        var thickness = panel.Thickness.Value;
        var voids = panel.Features.Select(f => Void(f, thickness)).OfType<(Contour Outline, double Low, double High)>().ToList();
        var levels = voids.SelectMany(v => new[] { v.Low, v.High }).Append(0).Append(thickness)
            .Select(z => Math.Clamp(z, 0, thickness)).Distinct().Order().ToList();
        var slabs = new List<(Box3 Block, Contour Outline, List<Contour> Holes)>();
        for (var i = 0; i + 1 < levels.Count; i++)
        {
            var (low, high) = (levels[i], levels[i + 1]);
            // Two depths that meet from both faces may differ in their last digit.
            if (!Tolerance.Exceeds(high, low)) continue;
            var middle = (low + high) / 2;
            slabs.Add((panel.Box with { Min = new(0, 0, low), Max = panel.Box.Max with { Z = high } }, panel.Outline,
                [.. voids.Where(v => v.Low < middle && v.High > middle).Select(v => v.Outline)]));
        }

        return Placed(panel.Placement!, panel.Placement!.ToAssembly(panel.Box), slabs);
    }

    /// <summary>A block given in the frame of a placed panel.</summary>
    public static Solid Block(Panel panel, Box3 box) => Placed(panel.Placement!, panel.Placement!.ToAssembly(box),
        [(box, Contour.Rectangle(box.Min.X, box.Min.Y, box.Max.X, box.Max.Y), [])]);

    /// <summary>A block around some of the volume two solids share; nothing where they only touch or are apart.</summary>
    public Box3? Overlap(Solid other)
    {
        if (Bounds.Intersection(other.Bounds) is not { } both) return null;
        foreach (var a in slabs)
            foreach (var b in other.slabs)
                if ((normal == other.normal ? Parallel(a, b) : Across(a, other.normal, b)) is { } shared) return shared.Intersection(both) ?? shared;
        return null;
    }

    private Box3? Parallel((double Low, double High, PolygonOperations.Region Region) a, (double Low, double High, PolygonOperations.Region Region) b)
    {
        var (low, high) = (Math.Max(a.Low, b.Low), Math.Min(a.High, b.High));
        if (!Tolerance.Exceeds(high, low)) return null;
        foreach (var piece in a.Region.And(b.Region).Pieces)
            if (piece.Width > Tolerance.Length && piece.Height > Tolerance.Length)
                return Block(normal, low, high, (normal + 1) % 3, piece.Min.X, piece.Max.X, piece.Min.Y, piece.Max.Y);
        return null;
    }

    // Both slabs reach along the third axis. A point is in both where its place on that axis is met by a piece of either slab
    // inside the other's thickness; a connected piece meets a whole interval.
    private Box3? Across((double Low, double High, PolygonOperations.Region Region) a, int otherNormal, (double Low, double High, PolygonOperations.Region Region) b)
    {
        var third = 3 - normal - otherNormal;
        foreach (var (fromA, toA) in Reach(normal, a.Region, otherNormal, b.Low, b.High))
            foreach (var (fromB, toB) in Reach(otherNormal, b.Region, normal, a.Low, a.High))
            {
                var (from, to) = (Math.Max(fromA, fromB), Math.Min(toA, toB));
                if (!Tolerance.Exceeds(to, from)) continue;
                var min = new double[3];
                var max = new double[3];
                (min[normal], max[normal]) = (a.Low, a.High);
                (min[otherNormal], max[otherNormal]) = (b.Low, b.High);
                (min[third], max[third]) = (from, to);
                return new Box3(new(min[0], min[1], min[2]), new(max[0], max[1], max[2]));
            }

        return null;
    }

    // The intervals along the remaining axis that a slab's region covers inside a stretch of another axis. The stretch ends a tolerance short
    // of what it may touch: rounding would else leave a sliver there, which joins pieces that lie apart.
    private static IEnumerable<(double From, double To)> Reach(int normal, PolygonOperations.Region region, int clippedAxis, double low, double high)
    {
        const double Far = 1e7;
        (low, high) = (low + Tolerance.Length, high - Tolerance.Length);
        if (!Tolerance.Exceeds(high, low)) yield break;
        var clipsFirst = (normal + 1) % 3 == clippedAxis;
        var strip = clipsFirst ? Contour.Rectangle(low, -Far, high, Far) : Contour.Rectangle(-Far, low, Far, high);
        foreach (var piece in region.And(PolygonOperations.RegionOf(strip, ArcTolerance)).Pieces)
        {
            if (piece.Width <= Tolerance.Length || piece.Height <= Tolerance.Length) continue;
            yield return clipsFirst ? (piece.Min.Y, piece.Max.Y) : (piece.Min.X, piece.Max.X);
        }
    }

    private static Box3 Block(int normal, double low, double high, int first, double from1, double to1, double from2, double to2)
    {
        var min = new double[3];
        var max = new double[3];
        (min[normal], max[normal]) = (low, high);
        (min[first], max[first]) = (from1, to1);
        (min[3 - normal - first], max[3 - normal - first]) = (from2, to2);
        return new Box3(new(min[0], min[1], min[2]), new(max[0], max[1], max[2]));
    }

    private static (Contour Outline, double Low, double High)? Void(Feature feature, double thickness) => feature switch
    {
        CutOut cutOut => (cutOut.Outline, 0, thickness),
        Groove groove => (groove.Outline, groove.Face == Surface.Inside ? thickness - groove.Depth.Value : 0, groove.Face == Surface.Inside ? thickness : groove.Depth.Value),
        Bore { Surface: Surface.Inside or Surface.Outside } bore => (
            Contour.Circle(bore.At.Point, bore.Diameter.Value / 2),
            bore.Surface == Surface.Inside && bore.Depth is { } d ? thickness - d.Value : 0,
            bore.Surface == Surface.Outside && bore.Depth is { } e ? e.Value : thickness),
        _ => null,
    };

    private static Solid Placed(Placement placement, Box3 bounds, IEnumerable<(Box3 Block, Contour Outline, List<Contour> Holes)> slabs)
    {
        var normal = placement.Inwards.Axis();
        var (first, second) = ((normal + 1) % 3, (normal + 2) % 3);
        Point2 Map(Point2 p)
        {
            var q = placement.ToAssembly(new Point3(p.X, p.Y, 0));
            return new Point2(q.Along(first), q.Along(second));
        }

        PolygonOperations.Region Region(Contour contour) => PolygonOperations.RegionOf(contour.Mapped(Map, !placement.Inwards.IsPositive()), ArcTolerance);
        var placed = new List<(double, double, PolygonOperations.Region)>();
        foreach (var (block, outline, holes) in slabs)
        {
            var box = placement.ToAssembly(block);
            placed.Add((box.Min.Along(normal), box.Max.Along(normal), holes.Aggregate(Region(outline), (region, hole) => region.Minus(Region(hole)))));
        }

        return new Solid(normal, bounds, placed);
    }
}
