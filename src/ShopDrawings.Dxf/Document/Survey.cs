using System.Text;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;

namespace ShopDrawings.Dxf;

/// <summary>
/// What the head of a file must know of all entities before the first of them is written. Taking it also refuses a drawing that the
/// format cannot hold, before anything is written.
/// </summary>
internal sealed class Survey
{
    // Readers letter in their own font, up to a fifth wider than the one the drawing was measured with.
    private const double WiderLettering = 0.2;
    private const double SmallestSize = 1e-6;

    private Survey(DxfRelease release, DrawingUnit unit) => (Release, Unit) = (release, unit);

    /// <summary>The release to write.</summary>
    public DxfRelease Release { get; private set; }

    /// <summary>The unit of the file.</summary>
    public DrawingUnit Unit { get; }

    /// <summary>The box of what is drawn, in mm, lettering with room to spare; nothing for an empty drawing.</summary>
    public Box2? Extents { get; private set; }

    /// <summary>At least as many handles as the entities take.</summary>
    public long Handles { get; private set; }

    /// <summary>Goes through a drawing once.</summary>
    /// <exception cref="ArgumentException">An entity has a number the format cannot hold.</exception>
    public static Survey Of(Drawing drawing, DxfRelease release, DrawingUnit unit)
    {
        var survey = new Survey(release, unit);
        for (var i = 0; i < drawing.Entities.Length; i++)
        {
            var entity = drawing.Entities[i];
            if (!survey.Take(entity))
                throw new ArgumentException($"{entity.GetType().Name} {i + 1} of the drawing, on layer {entity.Layer.Name}, has a number that is not finite, reaches 1e9, or is too small for a radius or a lettering height.", nameof(drawing));
        }

        return survey;
    }

    private bool Take(Entity entity)
    {
        if (entity is LinearDimension d)
            return IsNumber(d.Height) && Fits(d.From) && Fits(d.To) && Fits(d.Line) && DimensionGraphics.Of(d).All(Take);
        Handles++;
        if (entity is TextEntity text) return Take(text);

        // The centre of an all but straight arc is too far off to compute a box from.
        var box = entity is SegmentEntity { Segment: var s } && ModelSpace.IsFlat(s) ? Box2.Around([s.Start, s.End]) : entity.Bounds;
        Add(box);
        return Fits(box) && entity switch
        {
            ContourEntity contour => !(contour.Contour.AsCircle?.Radius < SmallestIn(Unit)) && contour.Contour.Segments.All(s => IsNumber(s.Bulge)),
            SegmentEntity { Segment.Bulge: var bulge } => IsNumber(bulge),
            CircleEntity circle => circle.Radius >= SmallestIn(Unit),
            _ => true,
        };
    }

    private bool Take(TextEntity text)
    {
        if (!(text.Height >= SmallestIn(Unit)) || !IsNumber(text.AngleDegrees)) return false;
        var line = TextFit.Fit(text.Text, Release == DxfRelease.R12);
        if (line.Length == 0) return true;
        if (Release == DxfRelease.R2000 && !Ascii.IsValid(line)) Release = DxfRelease.R2010;
        var box = Wider(text with { Text = line });
        Add(box);
        return Fits(box);
    }

    private static Box2 Wider(TextEntity text)
    {
        var (sin, cos) = Math.SinCos(text.AngleDegrees * Math.PI / 180);
        var extra = new Point2(cos, sin) * (WiderLettering * Lettering.Width(text.Text, text.Height));
        var (left, right) = text.Anchor switch
        {
            Anchor.BaseLeft => (0.0, 1.0),
            Anchor.BaseRight => (-1.0, 0.0),
            _ => (-0.5, 0.5),
        };
        var box = Lettering.Box(text);
        return Moved(extra * left).Union(Moved(extra * right));

        Box2 Moved(Point2 by) => new(box.Min + by, box.Max + by);
    }

    private void Add(Box2 box) => Extents = Extents?.Union(box) ?? box;

    private static bool Fits(Box2 box) => Fits(box.Min) && Fits(box.Max);

    private static bool Fits(Point2 point) => IsNumber(point.X) && IsNumber(point.Y);

    private static bool IsNumber(double value) => Math.Abs(value) < FixedPoint.Limit;

    private static double SmallestIn(DrawingUnit unit) => SmallestSize * unit.Millimetres();
}
