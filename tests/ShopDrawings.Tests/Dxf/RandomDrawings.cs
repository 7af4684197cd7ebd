using System.Globalization;
using CsCheck;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;
using static ShopDrawings.Tests.Dxf.DxfFiles;

namespace ShopDrawings.Tests.Dxf;

/// <summary>Random drawings of the entities that are more than lines, arcs and texts; every dimension shows what it measures.</summary>
internal static class RandomDrawings
{
    /// <summary>The layer of hatches.</summary>
    public static readonly Layer Hatched = new("HATCHED", Role.Mark, "Hatched areas");

    /// <summary>The layer of leaders.</summary>
    public static readonly Layer Led = new("LEADERS", Role.Lettering, "Leaders");

    private static readonly Gen<Point2> Place = Gen.Select(Number(-2000, 2000), Number(-2000, 2000), (x, y) => new Point2(x, y));
    private static readonly Gen<double> Height = One(2.5, 3.5, 5, 7.123);
    private static readonly Gen<Layer> SomeLayer = One(Outline, Bores, Hidden, Centres, Notes);

    private static readonly Block Mixed = new("MIXED",
    [
        new ContourEntity(Outline, Contour.RoundedRectangle(-20, -10, 40, 30, 6)), new EllipseEntity(Hidden, new(10, 5), new(20, 7), 0.4, 30, 300),
        new SegmentEntity(Hidden, new Segment(new(0, 0), new(20, 0), 0.7)), new PointEntity(Bores, new(3, 4)), new ArrowEntity(Notes, new(0, 0), new(5, 2), new(5, -2)),
        new LeaderEntity(Led, [new(0, 0), new(30, 30), new(40, 30)], 3.5), new HatchEntity(Hatched, Contour.Circle(new(5, 5), 9), [], new HatchPattern(30, 4, new(1, 2))),
        new SegmentEntity(Hidden, new Segment(new(0, 0), new(400, 0), 0.01)),
    ]);

    public static readonly Gen<EllipseEntity> Ellipse = Gen.Select(SomeLayer, Place, Number(1, 1000), Gen.Double[0.05, 1], Number(0, 720), Gen.OneOf(Number(5, 355), Gen.Const(360.0)),
        (l, c, m, r, start, sweep) => new EllipseEntity(l, c, Direction(7 * start) * m, r, start, start + sweep));

    public static readonly Gen<LeaderEntity> Leader = Gen.Select(Gen.Const(Led), Place.Array[2, 5], Height, (l, p, h) => new LeaderEntity(l, [.. p], h));

    /// <summary>A round or square area with up to two islands, hatched by lines.</summary>
    public static readonly Gen<HatchEntity> Hatch = Gen.Select(Gen.Const(Hatched), Place, Number(20, 500), Gen.Bool, Gen.Int[0, 2], Number(-200, 400), Number(3, 60),
        (l, p, size, isRound, islands, angle, spacing) => new HatchEntity(l,
            isRound ? Contour.Circle(p, size) : Contour.RoundedRectangle(p.X - size, p.Y - size, p.X + size, p.Y + 0.9 * size, size / 5),
            [.. new[] { Contour.Circle(p + new Point2(size / 3, 0), size / 5), Contour.Slot(p - new Point2(size / 3, size / 3), p - new Point2(size / 3, -size / 3), size / 4) }.Take(islands)],
            new HatchPattern(angle, spacing, p * 0.37)));

    public static readonly Gen<InsertEntity> Insert = Gen.Select(SomeLayer, Place, Number(-400, 400), Gen.OneOf(Gen.Const(1.0), Gen.Double[0.2, 5]), Gen.Bool,
        (l, p, angle, scale, isCup) => new InsertEntity(l, isCup ? Cup : Mixed, p, angle, scale));

    private static readonly Gen<Dimension> FullSize = Gen.OneOf<Dimension>(
        Gen.Select(Place, Place, Place, Gen.Bool, Height, (a, b, c, upright, h) => Shown(t => new LinearDimension(Dimensions, a, b, c, upright, t, h))),
        Gen.Select(Place, Place, Place, Height, (a, b, c, h) => Shown(t => new AlignedDimension(Dimensions, a, b, c, t, h))),
        Gen.Select(Place, Number(0, 360), Number(1, 300), Height, (a, angle, r, h) => Shown(t => new RadiusDimension(Dimensions, a, a + Direction(angle) * r, t, h))),
        Gen.Select(Place, Number(0, 360), Number(1, 300), Height, (a, angle, r, h) => Shown(t => new DiameterDimension(Dimensions, a, a + Direction(angle) * r, t, h))),
        Gen.Select(Place, Number(0, 360), Number(1, 359), Number(10, 300), Number(10, 300), Height, (a, angle, sweep, r, line, h) =>
            Shown(t => new AngularDimension(Dimensions, a, a + Direction(angle) * r, a + Direction(angle + sweep) * (1.3 * r), line, t, h))),
        Gen.Select(Place, Place, Place, Gen.Bool, Height, (a, b, c, upright, h) => Shown(t => new OrdinateDimension(Dimensions, a, b, c, upright, t, h))));

    // Of any view and practice.
    public static readonly Gen<Dimension> Dimension = Gen.Select(FullSize, One(1.0, 1, 5, 20, 0.5), One(DrawingStandard.Iso, DrawingStandard.Asme), (d, factor, standard) =>
        d with { Factor = d is AngularDimension ? 1 : factor, Standard = standard, Text = d is AngularDimension ? d.Text : Words(d.Measured * factor, " mm") });

    private static readonly Gen<Entity> Entity = Gen.OneOf<Entity>(
        Ellipse.Select(e => (Entity)e), Leader.Select(e => (Entity)e), Hatch.Select(e => (Entity)e), Insert.Select(e => (Entity)e), Dimension.Select(e => (Entity)e));

    public static readonly Gen<Drawing> Drawing = Entity.Array[1, 25].Select(entities => new Drawing("Any", "Any", null, entities));

    // Even over the range: the library's own doubles are often zero but for 1e-60.
    private static Gen<double> Number(int from, int to) => Gen.Int[1000 * from, 1000 * to].Select(n => n / 1000.0);

    /// <summary>One of a few values.</summary>
    public static Gen<T> One<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);

    public static Point2 Direction(double degrees) => new(Math.Cos(degrees * Math.PI / 180), Math.Sin(degrees * Math.PI / 180));

    private static Dimension Shown(Func<string, Dimension> with)
    {
        var measured = with("").Measured;
        return with(Words(measured, with("") is AngularDimension ? " deg" : " mm"));
    }

    private static string Words(double measured, string unit) => measured.ToString("0.00", CultureInfo.InvariantCulture) + unit;
}
