using CsCheck;
using ShopDrawings.Kernel;
using UnitsNet;
using Size = ShopDrawings.Kernel.Size;

namespace ShopDrawings.Tests.Machining;

/// <summary>Panels as a cabinet has them, and stranger ones: features in both faces and the edges, bands, openings of every form.</summary>
internal static class RandomPanels
{
    private static readonly double[] Diameters = [2.5, 3, 4.5, 5, 6.35, 8, 10, 12.5, 15, 20, 35, 40, 60, 61.3];

    private static readonly double[] GrooveWidths = [3, 4, 6, 6.3, 6.35, 8.2, 12, 18.5, 25];

    private static readonly Gen<(double X, double Y)> Share = Gen.Select(Gen.Double[0.02, 0.98], Gen.Double[0.02, 0.98]);

    /// <summary>A board as thick as this, in mm.</summary>
    public static Board BoardOf(double thickness, bool hasGrain = false) => Board.Create("board", BoardKind.Plywood, Length.FromMillimeters(thickness), hasGrain: hasGrain);

    /// <summary>A length in mm.</summary>
    public static Size Mm(double value) => Size.Given(value, "given", default);

    /// <summary>A place in mm.</summary>
    public static Position At(double x, double y) => new(Mm(x), Mm(y));

    /// <summary>A plain panel, 18 mm thick where nothing else is said.</summary>
    public static Panel Plain(double length, double width, params IEnumerable<Feature> features) => Panel.Rectangular("panel", BoardOf(18), Mm(length), Mm(width)).WithFeatures(features);

    /// <summary>A bore through a panel from its inside.</summary>
    public static Bore Through(double x, double y, double diameter) => Bore.Through("test", Surface.Inside, At(x, y), Mm(diameter));

    /// <summary>A bore of a depth.</summary>
    public static Bore Blind(double x, double y, double diameter, double depth, Surface surface = Surface.Inside, BoreUse use = BoreUse.Plain) =>
        Bore.Blind("test", surface, At(x, y), Mm(diameter), Mm(depth), use);

    /// <summary>A groove.</summary>
    public static Groove Groove(double x1, double y1, double x2, double y2, double width, double depth, Surface face = Surface.Inside) =>
        Kernel.Groove.Along("test", face, At(x1, y1), At(x2, y2), Mm(width), Mm(depth));

    /// <summary>An opening.</summary>
    public static CutOut Opening(Contour outline) => new("test", outline, []);

    /// <summary>An outline through corners.</summary>
    public static Contour Polygon(params (double X, double Y)[] corners) =>
        Contour.FromSegments(corners.Select((c, i) => new Segment(new(c.X, c.Y), new(corners[(i + 1) % corners.Length].X, corners[(i + 1) % corners.Length].Y))));

    /// <summary>Rectangular panels of 60 to 900 mm with up to 14 features and up to four bands.</summary>
    public static Gen<Panel> Any { get; } =
        from length in Gen.Double[120, 900]
        from width in Gen.Double[60, 500]
        from thickness in Gen.OneOf(Gen.Const(18.0), Gen.Double[12, 25])
        from features in Feature(length, width, thickness).Array[0, 14]
        from bands in Gen.Select(Gen.Bool, Gen.Double[0.4, 2], Gen.Double[0, 2.5]).Array[4]
        select Panel.Rectangular("panel", BoardOf(thickness), Mm(length), Mm(width)).WithFeatures(features)
            .WithBands(Surfaces.Edges.Where((_, i) => bands[i].Item1).Select((edge, _) => new EdgeBand(edge, Mm(bands[(int)edge - (int)Surface.Start].Item2)) { PreMilled = Mm(bands[(int)edge - (int)Surface.Start].Item3) }));

    /// <summary>A panel without a feature in the way of another, for what is told apart by its place: bores 40 mm apart in both faces.</summary>
    public static Gen<Panel> Drilled { get; } =
        from columns in Gen.Int[2, 6]
        from rows in Gen.Int[2, 4]
        from bores in Gen.Select(Gen.Bool, Gen.Bool, Of(3, 5, 8, 15, 35), Gen.Double[4, 12]).Array[columns * rows]
        from bands in Gen.Double[0.4, 2].Array[4]
        select Plain(columns * 41.7, rows * 40.3, bores.Select((b, i) => b.Item1
                ? Blind(20 + i % columns * 40, 20 + i / columns * 40, b.Item3, b.Item4, b.Item2 ? Surface.Inside : Surface.Outside)
                : Bore.Through("test", b.Item2 ? Surface.Inside : Surface.Outside, At(20 + i % columns * 40, 20 + i / columns * 40), Mm(b.Item3))))
            .WithBands(Surfaces.Edges.Select((edge, i) => new EdgeBand(edge, Mm(bands[i]))));

    private static Gen<double> Of(params double[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);

    private static Gen<Feature> Feature(double length, double width, double thickness)
    {
        var face = Gen.Bool.Select(b => b ? Surface.Inside : Surface.Outside);
        var place = Share.Select(s => (X: s.X * length, Y: s.Y * width));
        var depth = Gen.Double[0.1, 0.8].Select(s => s * thickness);
        return Gen.Frequency(
            (4, Gen.Select(face, place, Of(Diameters), depth, Gen.Enum<BoreUse>()).Select(b => (Feature)Blind(b.Item2.X, b.Item2.Y, b.Item3, b.Item4, b.Item1, b.Item5))),
            (3, Gen.Select(face, place, Of(Diameters)).Select(b => (Feature)Bore.Through("test", b.Item1, At(b.Item2.X, b.Item2.Y), Mm(b.Item3)))),
            (1, Gen.Select(Gen.Int[0, 3], Share, Of(5, 8)).Select(b => (Feature)Blind(b.Item2.X * (b.Item1 < 2 ? width : length), thickness / 2, b.Item3, 20, Surfaces.Edges[b.Item1]))),
            (3, Gen.Select(face, place, place, Of(GrooveWidths), depth, Gen.Int[0, 2]).Select(g => (Feature)(g.Item6 switch
            {
                0 => Groove(0, g.Item2.Y, length, g.Item2.Y, g.Item4, g.Item5, g.Item1),
                1 => Groove(g.Item2.X, 0, g.Item2.X, Math.Max(g.Item3.Y, 40), g.Item4, g.Item5, g.Item1),
                _ => Groove(g.Item2.X, g.Item2.Y, g.Item2.X + 45, g.Item3.Y, g.Item4, g.Item5, g.Item1),
            }))),
            (1, Gen.Select(place, Gen.Double[20, 60], Gen.Double[12, 40], Gen.Int[0, 3]).Select(c => (Feature)Opening(c.Item4 switch
            {
                0 => Contour.Rectangle(c.Item1.X, c.Item1.Y, c.Item1.X + c.Item2, c.Item1.Y + c.Item3),
                1 => Contour.RoundedRectangle(c.Item1.X, c.Item1.Y, c.Item1.X + c.Item2, c.Item1.Y + c.Item3, Math.Min(c.Item2, c.Item3) / 2.5),
                2 => Contour.Slot(new(c.Item1.X, c.Item1.Y), new(c.Item1.X + c.Item2, c.Item1.Y + 7), c.Item3),
                _ => Contour.Circle(new(c.Item1.X, c.Item1.Y), c.Item2 / 2),
            }))),
            (1, Gen.Select(face, place, place, Gen.Bool).Select(m => (Feature)new Mark("test", m.Item1, At(m.Item2.X, m.Item2.Y), m.Item4 ? At(m.Item3.X, m.Item3.Y) : null))));
    }
}
