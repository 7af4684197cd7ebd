using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>A round edge in a plane across an axis: what chords of a body's outlines stand for. In the plane's coordinates, in mm.</summary>
/// <param name="Centre">Its centre.</param>
/// <param name="Radius">Its radius.</param>
internal sealed record RoundEdge(Point2 Centre, double Radius);

/// <summary>The mouth of a round hole in a plane that looks along an axis, in mm.</summary>
/// <param name="Axis">0 x, 1 y, 2 z.</param>
/// <param name="IsPositive">Whether the surface looks along the axis.</param>
/// <param name="Level">Where the surface lies on the axis.</param>
/// <param name="Edge">The circle in the plane's coordinates.</param>
internal sealed record Mouth(int Axis, bool IsPositive, double Level, RoundEdge Edge);

/// <summary>
/// What is looked at: the material of a panel or the block of a bought part, as slabs across one axis with their outlines in the plane of the
/// two axes that follow it in turn. Cut-outs, grooves and bores of 20 mm and more are taken away; smaller bores only have mouths. Arcs are
/// flattened to 0.05 mm and remembered, so that they are drawn as arcs. Coordinates are rounded to 1e-6 mm, so that what touches meets. In mm.
/// </summary>
internal sealed class Body
{
    /// <summary>Bores from this diameter on are openings one can look through, in mm.</summary>
    public const double LeastOpening = 20;

    private const double ArcTolerance = 0.05;

    // Pieces of a region thinner than this are left by rounding.
    private const double Sliver = 1e-4;

    private Body(int axis, ImmutableArray<Slab> slabs, ImmutableArray<RoundEdge> rounds, ImmutableArray<Mouth> mouths) =>
        (Axis, Slabs, Rounds, Mouths) = (axis, slabs, rounds, mouths);

    // Found when first asked for, then kept: a body is drawn in every view.
    private ImmutableArray<FlatSurface> surfaces;
    private ImmutableArray<Wall> walls;
    private ImmutableArray<Prism> prisms;
    private Box3? bounds;

    /// <summary>The axis the slabs lie across: 0 x, 1 y, 2 z.</summary>
    public int Axis { get; }

    /// <summary>From low to high; neighbours touch.</summary>
    public ImmutableArray<Slab> Slabs { get; }

    /// <summary>The round edges of the outlines.</summary>
    public ImmutableArray<RoundEdge> Rounds { get; }

    /// <summary>Bores smaller than <see cref="LeastOpening"/>, where they open.</summary>
    public ImmutableArray<Mouth> Mouths { get; }

    /// <summary>A layer of material.</summary>
    /// <param name="Low">Where it begins on the axis.</param>
    /// <param name="High">Where it ends.</param>
    /// <param name="Pieces">Its outlines with their holes.</param>
    public sealed record Slab(double Low, double High, ImmutableArray<PolygonOperations.Piece> Pieces)
    {
        /// <summary>The set of points its pieces cover.</summary>
        public PolygonOperations.Region Region => RegionOf(Pieces);
    }

    /// <summary>A flat surface that looks along an axis.</summary>
    /// <param name="Axis">The axis it lies across: 0 x, 1 y, 2 z.</param>
    /// <param name="IsPositive">Whether it looks along the axis.</param>
    /// <param name="Level">Where it lies on the axis.</param>
    /// <param name="Pieces">Its outlines with their holes, in the plane's coordinates.</param>
    public sealed record FlatSurface(int Axis, bool IsPositive, double Level, ImmutableArray<PolygonOperations.Piece> Pieces)
    {
        /// <summary>The same surface moved.</summary>
        public FlatSurface Moved(Point3 by) => this with { Level = Level + by.Along(Axis), Pieces = Body.Moved(Pieces, OnPlane(Axis, by)) };
    }

    /// <summary>A wall of a slab.</summary>
    /// <param name="Slab">The slab.</param>
    /// <param name="Edge">Where it stands in the plane, the material on its left.</param>
    /// <param name="Next">The edge that follows.</param>
    /// <param name="Looks">The axis it looks along and whether in its direction, or nothing where it slants.</param>
    public sealed record Wall(Slab Slab, Segment Edge, Segment Next, (int Axis, bool IsPositive)? Looks);

    /// <summary>The material of a placed panel.</summary>
    public static Body Of(Panel panel)
    {
        var (t, placement) = (panel.Thickness.Value, panel.Placement!);
        var axis = placement.Inwards.Axis();
        Point2 Map(Point2 p) => OnPlane(axis, placement.ToAssembly(new Point3(p.X, p.Y, 0)));
        double Height(double z) => Rounded(placement.ToAssembly(new Point3(0, 0, z)).Along(axis));

        var cuts = panel.Features.Where(f => f is CutOut or Groove || (f is Bore b && b.Surface.IsFace() && b.Diameter.Value >= LeastOpening))
            .Select(f => Cut.Of(panel, f)!).ToList();
        var contours = cuts.Select(c => c.Outline).Prepend(panel.Outline).ToList();
        var rounds = contours.SelectMany(c => c.Segments).Where(s => !s.IsLine).Select(s => new RoundEdge(Map(s.Centre), s.Radius)).Distinct().ToImmutableArray();

        PolygonOperations.Region Flat(Contour c) => PolygonOperations.RegionOf(c.Mapped(p => Map(p), !placement.Inwards.IsPositive()), ArcTolerance);
        var outline = Flat(panel.Outline);
        var regions = cuts.Select(c => Flat(c.Outline)).ToList();
        var levels = cuts.SelectMany(c => new[] { c.Low, c.High }).Append(0).Append(t).Select(z => Rounded(Math.Clamp(z, 0, t))).Distinct().Order().ToList();
        var slabs = new List<Slab>();
        for (var i = 0; i + 1 < levels.Count; i++)
        {
            var middle = (levels[i] + levels[i + 1]) / 2;
            var left = cuts.Zip(regions).Where(c => c.First.Low < middle && c.First.High > middle).Aggregate(outline, (r, c) => r.Minus(c.Second));
            var (a, b) = (Height(levels[i]), Height(levels[i + 1]));
            slabs.Add(new Slab(Math.Min(a, b), Math.Max(a, b), Pieces(left)));
        }

        return new Body(axis, [.. slabs.OrderBy(s => s.Low)], rounds, [.. panel.Features.OfType<Bore>().Where(b => !b.Surface.IsFace() || b.Diameter.Value < LeastOpening).SelectMany(b => MouthsOf(panel, b))]);
    }

    /// <summary>A block of the assembly.</summary>
    public static Body Block(Box3 box) => new(2,
        [new Slab(Rounded(box.Min.Z), Rounded(box.Max.Z), [new(Contour.Rectangle(Rounded(box.Min.X), Rounded(box.Min.Y), Rounded(box.Max.X), Rounded(box.Max.Y)), [])])], [], []);

    /// <summary>The block around it.</summary>
    public Box3 Bounds => bounds ??= Slabs.SelectMany(s => s.Pieces.Select(p => Box3.Between(InSpace(Axis, s.Low, p.Outline.Bounds.Min), InSpace(Axis, s.High, p.Outline.Bounds.Max))))
        .Aggregate((a, b) => a.Union(b));

    /// <summary>The same body moved; nothing else changes.</summary>
    public Body Moved(Point3 by)
    {
        var (across, along) = (OnPlane(Axis, by), by.Along(Axis));
        return new Body(Axis,
            [.. Slabs.Select(s => new Slab(s.Low + along, s.High + along, Moved(s.Pieces, across)))],
            [.. Rounds.Select(r => r with { Centre = r.Centre + across })],
            [.. Mouths.Select(m => m with { Level = m.Level + by.Along(m.Axis), Edge = m.Edge with { Centre = m.Edge.Centre + OnPlane(m.Axis, by) } })])
        {
            surfaces = [.. Surfaces.Select(s => s.Moved(by))],
            prisms = [.. Prisms.Select(p => p.Moved(by))],
        };
    }

    /// <summary>What of it lies beyond a plane across an axis: above the level or below it. Nothing where it lies all on the other side.</summary>
    public Body? Beyond(int axis, double level, bool isAbove)
    {
        var (least, most) = (Bounds.Min.Along(axis), Bounds.Max.Along(axis));
        if (isAbove ? most <= level + Tolerance.Length : least >= level - Tolerance.Length) return null;
        if (isAbove ? least >= level - Tolerance.Length : most <= level + Tolerance.Length) return this;
        bool Stays(double at) => isAbove ? at >= level - Tolerance.Length : at <= level + Tolerance.Length;
        var slabs = new List<Slab>();
        foreach (var slab in Slabs)
        {
            if (axis == Axis)
            {
                var (low, high) = isAbove ? (Math.Max(slab.Low, level), slab.High) : (slab.Low, Math.Min(slab.High, level));
                if (high > low + Tolerance.Length) slabs.Add(slab with { Low = low, High = high });
                continue;
            }

            var pieces = Pieces(slab.Region.And(HalfPlane(axis, level, isAbove)));
            if (!pieces.IsEmpty) slabs.Add(slab with { Pieces = pieces });
        }

        return slabs.Count == 0 ? null : new Body(Axis, [.. slabs], Rounds, [.. Mouths.Where(m => Stays(InSpace(m.Axis, m.Level, m.Edge.Centre).Along(axis)))]);
    }

    /// <summary>Where a plane across an axis cuts it, in the plane's coordinates.</summary>
    public ImmutableArray<PolygonOperations.Piece> CutBy(int axis, double level)
    {
        if (axis == Axis) return Slabs.Where(s => s.Low < level && s.High > level).SelectMany(s => s.Pieces).ToImmutableArray();
        var strips = Slabs.SelectMany(s => Crossings(s, axis, level).Select(c => Rectangle(axis, (Axis, s.Low, s.High), (3 - axis - Axis, c.From, c.To)))).ToList();
        return strips switch
        {
            [] => [],
            [var one] => [new(one, [])],
            _ => Pieces(strips.Select(Exact).Aggregate((a, b) => a.Or(b))),
        };
    }

    /// <summary>
    /// Its flat surfaces that look along axes, each whole. Surfaces that slant or are round are not among them.
    /// </summary>
    public ImmutableArray<FlatSurface> Surfaces => surfaces.IsDefault ? surfaces = [.. FindSurfaces()] : surfaces;

    private IEnumerable<FlatSurface> FindSurfaces()
    {
        // Across the slabs: what is bare of the slab beside it.
        for (var i = 0; i < Slabs.Length; i++)
        {
            foreach (var isPositive in new[] { false, true })
            {
                var (slab, beside) = (Slabs[i], isPositive ? i + 1 : i - 1);
                var touches = beside >= 0 && beside < Slabs.Length && Tolerance.Same(isPositive ? Slabs[beside].Low : Slabs[beside].High, isPositive ? slab.High : slab.Low);
                var bare = touches ? Pieces(slab.Region.Minus(Slabs[beside].Region)) : slab.Pieces;
                if (!bare.IsEmpty) yield return new(Axis, isPositive, isPositive ? slab.High : slab.Low, bare);
            }
        }

        // Around the slabs: what lies in one plane is one surface, whichever slab it belongs to.
        var walls = Walls.Where(w => w.Looks is not null).GroupBy(w => (w.Looks!.Value.Axis, w.Looks.Value.IsPositive, Level: InSpace(Axis, 0, w.Edge.Start).Along(w.Looks.Value.Axis)));
        foreach (var wall in walls)
        {
            var (axis, isPositive, level) = wall.Key;
            var third = 3 - axis - Axis;
            var strips = wall.Select(w =>
            {
                var (a, b) = (InSpace(Axis, 0, w.Edge.Start).Along(third), InSpace(Axis, 0, w.Edge.End).Along(third));
                return (Across: (Axis, w.Slab.Low, w.Slab.High), Along: (third, Math.Min(a, b), Math.Max(a, b)));
            }).ToList();
            yield return new(axis, isPositive, level, strips is [var one] ? [new(Rectangle(axis, one.Across, one.Along), [])] : Pieces(strips.Select(s => Exact(Rectangle(axis, s.Across, s.Along))).Aggregate((a, b) => a.Or(b))));
        }
    }

    /// <summary>The walls around its slabs.</summary>
    public ImmutableArray<Wall> Walls => walls.IsDefault ? walls = [.. FindWalls()] : walls;

    private IEnumerable<Wall> FindWalls()
    {
        foreach (var slab in Slabs)
            foreach (var piece in slab.Pieces)
                foreach (var ring in piece.Holes.Select(h => h.Segments.Reverse().Select(s => s.Reversed).ToImmutableArray()).Prepend(piece.Outline.Segments))
                    for (var i = 0; i < ring.Length; i++)
                    {
                        var d = ring[i].End - ring[i].Start;
                        (int, bool)? looks = Math.Abs(d.X) <= Tolerance.Length ? ((Axis + 1) % 3, d.Y > 0) : Math.Abs(d.Y) <= Tolerance.Length ? ((Axis + 2) % 3, d.X < 0) : null;
                        yield return new(slab, ring[i], ring[(i + 1) % ring.Length], looks);
                    }
    }

    /// <summary>The round edge a chord stands for, or nothing.</summary>
    public RoundEdge? RoundOf(Segment chord) => Rounds.FirstOrDefault(r =>
        Math.Abs(r.Centre.DistanceTo(chord.Start) - r.Radius) < 1e-4 && Math.Abs(r.Centre.DistanceTo(chord.End) - r.Radius) < 1e-4
        && Math.Abs(r.Centre.DistanceTo(chord.Middle) - r.Radius) < 2 * ArcTolerance);

    /// <summary>Convex prisms that fill it: corners in the plane and the stretch on the axis. They touch and do not overlap.</summary>
    public ImmutableArray<Prism> Prisms => prisms.IsDefault
        ? prisms = [.. from slab in Slabs from piece in slab.Pieces from part in Trapezoids(piece) select new Prism(Axis, part, slab.Low, slab.High)]
        : prisms;

    /// <summary>The coordinates of a point in the planes across an axis: the two axes that follow it in turn.</summary>
    public static Point2 OnPlane(int axis, Point3 p) => new(Rounded(p.Along((axis + 1) % 3)), Rounded(p.Along((axis + 2) % 3)));

    /// <summary>The point of the assembly at a level on an axis and a place in the plane across it.</summary>
    public static Point3 InSpace(int axis, double level, Point2 p) => axis switch
    {
        0 => new(level, p.X, p.Y),
        1 => new(p.Y, level, p.X),
        _ => new(p.X, p.Y, level),
    };

    private static double Rounded(double value) => Math.Round(value, 6);

    private static IEnumerable<Mouth> MouthsOf(Panel panel, Bore bore)
    {
        var surfaces = bore.Surface.IsFace() && bore.Depth is null ? [bore.Surface, bore.Surface.Opposite()] : new[] { bore.Surface };
        foreach (var surface in surfaces)
        {
            var looks = panel.Facing(surface);
            var at = panel.Placement!.ToAssembly(panel.OnSurface(surface, bore.At.Point));
            yield return new Mouth(looks.Axis(), looks.IsPositive(), Rounded(at.Along(looks.Axis())), new RoundEdge(OnPlane(looks.Axis(), at), bore.Diameter.Value / 2));
        }
    }

    private static PolygonOperations.Region RegionOf(ImmutableArray<PolygonOperations.Piece> pieces) => pieces
        .Select(p => p.Holes.Aggregate(Exact(p.Outline), (r, h) => r.Minus(Exact(h)))).Aggregate((a, b) => a.Or(b));

    private static ImmutableArray<PolygonOperations.Piece> Moved(ImmutableArray<PolygonOperations.Piece> pieces, Point2 by) =>
        [.. pieces.Select(p => new PolygonOperations.Piece(p.Outline.Moved(by), [.. p.Holes.Select(h => h.Moved(by))]))];

    private static PolygonOperations.Region Exact(Contour contour) => PolygonOperations.RegionOf(contour, ArcTolerance);

    private static ImmutableArray<PolygonOperations.Piece> Pieces(PolygonOperations.Region region) =>
        [.. region.Outlines.Where(p => p.Outline.Bounds is var b && b.Width > Sliver && b.Height > Sliver)];

    private PolygonOperations.Region HalfPlane(int axis, double level, bool isAbove)
    {
        const double Far = 1e6;
        var (low, high) = isAbove ? (level, Far) : (-Far, level);
        return Exact((Axis + 1) % 3 == axis ? Contour.Rectangle(low, -Far, high, Far) : Contour.Rectangle(-Far, low, Far, high));
    }

    // A rectangle in the plane across an axis, from its stretches on the two others.
    private static Contour Rectangle(int axis, (int Axis, double From, double To) a, (int Axis, double From, double To) b)
    {
        var (first, second) = (axis + 1) % 3 == a.Axis ? (a, b) : (b, a);
        return Contour.Rectangle(first.From, second.From, first.To, second.To);
    }

    // Where the line at a level on an axis of the plane runs inside the slab's outlines.
    private IEnumerable<(double From, double To)> Crossings(Slab slab, int axis, double level)
    {
        var isFirst = (Axis + 1) % 3 == axis;
        var crossings = new List<double>();
        foreach (var s in slab.Pieces.SelectMany(p => p.Holes.Prepend(p.Outline)).SelectMany(c => c.Segments))
        {
            var (a, b) = isFirst ? (s.Start, s.End) : (new Point2(s.Start.Y, s.Start.X), new Point2(s.End.Y, s.End.X));
            if (Math.Min(a.X, b.X) <= level && level < Math.Max(a.X, b.X)) crossings.Add(a.Y + (b.Y - a.Y) * ((level - a.X) / (b.X - a.X)));
        }

        crossings.Sort();
        for (var i = 0; i + 1 < crossings.Count; i += 2)
            if (crossings[i + 1] > crossings[i] + Sliver) yield return (Rounded(crossings[i]), Rounded(crossings[i + 1]));
    }

    // Between two neighbouring corners no edge begins or ends, so that each pair of edges bounds a trapezoid.
    private static IEnumerable<Point2[]> Trapezoids(PolygonOperations.Piece piece)
    {
        var edges = piece.Holes.Prepend(piece.Outline).SelectMany(c => c.Segments).Select(s => s.Start.X <= s.End.X ? s : s.Reversed).Where(s => s.End.X > s.Start.X).ToList();
        var places = edges.SelectMany(e => new[] { e.Start.X, e.End.X }).Distinct().Order().ToList();
        for (var i = 0; i + 1 < places.Count; i++)
        {
            var (from, to) = (places[i], places[i + 1]);
            if (to - from <= Tolerance.Length) continue;
            double At(Segment e, double x) => e.Start.Y + (e.End.Y - e.Start.Y) * ((x - e.Start.X) / (e.End.X - e.Start.X));
            var across = edges.Where(e => e.Start.X <= from && e.End.X >= to).OrderBy(e => At(e, (from + to) / 2)).ToList();
            for (var k = 0; k + 1 < across.Count; k += 2)
                yield return [new(from, At(across[k], from)), new(to, At(across[k], to)), new(to, At(across[k + 1], to)), new(from, At(across[k + 1], from))];
        }
    }
}
