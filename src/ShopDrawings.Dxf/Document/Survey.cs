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
    private const double MostScale = 1000;

    private readonly bool isReleaseFixed;

    private Survey(DxfRelease? release, DrawingUnit unit, PathForm form) => (Release, Unit, Form, isReleaseFixed) = (release ?? DxfRelease.R2000, unit, form, release is not null);

    /// <summary>The release to write.</summary>
    public DxfRelease Release { get; private set; }

    /// <summary>The unit of the file.</summary>
    public DrawingUnit Unit { get; }

    /// <summary>How lines and arcs are written.</summary>
    public PathForm Form { get; }

    /// <summary>The box of what is drawn, in mm, lettering with room to spare; nothing for an empty drawing.</summary>
    public Box2? Extents { get; private set; }

    /// <summary>At least as many handles as the entities take, those in blocks too.</summary>
    public long Handles { get; private set; }

    /// <summary>How many dimensions there are.</summary>
    public long Dimensions { get; private set; }

    /// <summary>The dimension styles the entities use.</summary>
    public DimensionStyleTable Styles { get; } = new();

    /// <summary>Goes through a drawing once.</summary>
    /// <param name="drawing">The drawing.</param>
    /// <param name="release">The release the user fixed, or nothing: then texts outside ASCII ask for a newer one.</param>
    /// <param name="unit">The unit of the file.</param>
    /// <param name="form">How lines and arcs are written.</param>
    /// <param name="titles">Texts that stand beside the drawing.</param>
    /// <exception cref="ArgumentException">An entity has a number the format cannot hold.</exception>
    public static Survey Of(Drawing drawing, DxfRelease? release, DrawingUnit unit, PathForm form, IEnumerable<string> titles)
    {
        var survey = new Survey(release, unit, form);
        foreach (var title in titles) survey.Fitted(title);
        foreach (var block in drawing.Blocks)
        {
            // Where it is defined nothing is seen of it.
            var extents = survey.Extents;
            if (!block.Entities.All(survey.Take)) throw new ArgumentException($"Block {block.Name} has a number that is not finite, reaches 1e9, or is too small.", nameof(drawing));
            survey.Extents = extents;
        }

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
        Handles++;
        switch (entity)
        {
            case TextEntity text:
                return Take(text);
            case Dimension d:
                Dimensions++;
                Fitted(d.Text);
                return Uses(DimensionStyleTable.Of(d)) && d is not AngularDimension { Measured: 0 } && DimensionGroups.Of(d, isR12: false).Numbers.All(IsNumber) && DimensionGraphics.Of(d).All(Take);
            case LeaderEntity leader:
                return leader.Points.Length >= 2 && Uses(DimensionStyleTable.Of(leader)) && leader.Points.All(Fits) && DimensionGraphics.Of(leader).All(Take);
            case InsertEntity insert:
                // Its parts are written in the block alone.
                var handles = Handles;
                var taken = insert.Scale is > 0 and < MostScale && IsNumber(insert.AngleDegrees) && Fits(insert.Position) && insert.Parts.All(Take);
                Handles = handles;
                return taken;
        }

        // The centre of an all but straight arc is too far off to compute a box from.
        var box = entity is SegmentEntity { Segment: var s } && ArcGroups.IsFlat(s) ? Box2.Around([s.Start, s.End]) : entity.Bounds;
        Add(box);
        if (!Fits(box) || !IsSound(entity)) return false;
        Handles += MostParts(entity) - 1;
        return true;
    }

    private bool IsSound(Entity entity) => entity switch
    {
        ContourEntity contour => !(contour.Contour.AsCircle?.Radius < SmallestIn(Unit)) && contour.Contour.Segments.All(s => IsNumber(s.Bulge)),
        SegmentEntity { Segment.Bulge: var bulge } => IsNumber(bulge),
        PathEntity path => path.Path.Segments.All(s => IsNumber(s.Bulge)),
        CircleEntity circle => circle.Radius >= SmallestIn(Unit),
        EllipseEntity e => e.Ratio is > 0 and <= 1 && Fits(e.Major) && e.Major.Length * e.Ratio >= SmallestIn(Unit) && IsNumber(e.StartDegrees)
            && e.StartDegrees >= 0 && e.EndDegrees > e.StartDegrees && e.EndDegrees <= e.StartDegrees + 360,
        HatchEntity { Pattern: { } p } => p.Spacing >= SmallestIn(Unit) && p.Spacing < FixedPoint.Limit && IsNumber(p.AngleDegrees) && Fits(p.Origin),
        _ => true,
    };

    private long MostParts(Entity entity) => entity switch
    {
        ContourEntity contour => Form.MostParts(contour.Contour.Segments.AsSpan()),
        SegmentEntity segment => Form.MostParts(segment.Segment),
        PathEntity path => Form.MostParts(path.Path.Segments.AsSpan()),
        EllipseEntity ellipse when Form != PathForm.Usual => Form.OfEllipses.MostParts([.. ellipse.Arcs(PathForm.EllipseTolerance)]),
        _ => 1,
    };

    private bool Take(TextEntity text)
    {
        if (!(text.Height >= SmallestIn(Unit)) || !IsNumber(text.AngleDegrees)) return false;
        var line = Fitted(text.Text);
        if (line.Length == 0) return true;
        var box = Wider(line == text.Text ? text : text with { Text = line });
        Add(box);
        return Fits(box);
    }

    // The text as it will be written, and the release that asks for.
    private string Fitted(string text)
    {
        var line = TextFit.Fit(text, isReleaseFixed && Release != DxfRelease.R2010);
        if (!isReleaseFixed && !Ascii.IsValid(line)) Release = DxfRelease.R2010;
        return line;
    }

    private bool Uses(DimensionLook look)
    {
        var isSound = look.Height >= SmallestIn(Unit) && IsNumber(look.Height) && look.Factor is > 1e-3 and < 1e6;
        if (isSound) Styles.Use(look);
        return isSound;
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
