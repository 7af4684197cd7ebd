using System.Collections.Immutable;
using System.Globalization;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>
/// The sheet of a drill guide: its plate seen from above, in true size where that fits, with fences, joints, numbered holes and the edges of the panel; a section through a
/// fence; how it is put together, what is drilled with which stop, and every place it is laid on.
/// </summary>
internal sealed class GuideSheet
{
    private const double Column = 88, Rim = 3, Heading = 10, Away = 11;
    private const int MostColumns = 3;

    // The n of the smallest scale 1:n at which holes are more than dots.
    private const int SmallestClear = 5;

    private static readonly Layer HeadingLayer = new("HEADING", Role.Lettering, "Name of the guide");
    private static readonly Layer PlateLayer = new("PLATE", Role.Outline, "Edges of the plate, its slots and its joints");
    private static readonly Layer HoleLayer = new("HOLES", Role.Bore, "Holes for bits and bushes");
    private static readonly Layer NumberLayer = new("NUMBERS", Role.Lettering, "Numbers of holes, fences and pieces");
    private static readonly Layer FenceLayer = new("FENCES", Role.Hidden, "Fences below the plate");
    private static readonly Layer EdgeLayer = new("PANEL_EDGES", Role.Phantom, "Edges of the panel it is laid on");
    private static readonly Layer LineLayer = new("LINES_A_B", Role.Centre, "Lines A and B");
    private static readonly Layer SizeLayer = new("DIMENSIONS", Role.Dimension, "Sizes of the plate, and lines A and B from the panel's edges");
    private static readonly Layer ListLayer = new("LIST", Role.Lettering, "What to do, what to drill, and where");
    private static readonly Layer HatchLayer = new("CUT_FACES", Role.Hatching, "Cut faces of the section");

    private readonly Guide guide;
    private readonly string project;
    private readonly SheetSettings settings;
    private readonly GuideText text;

    private GuideSheet(Guide guide, ImmutableArray<TemplatePlace> places, string project, GuideSettings guides, SheetSettings settings) =>
        (this.guide, this.project, this.settings, text) = (guide, project, settings, new GuideText(guide, places, guides, settings.Lengths));

    /// <summary>Draws the sheet.</summary>
    /// <param name="guide">The guide.</param>
    /// <param name="places">The places it is used at.</param>
    /// <param name="project">What is built.</param>
    /// <param name="guides">What guides are made of.</param>
    /// <param name="settings">What all sheets share.</param>
    public static Drawing Of(Guide guide, ImmutableArray<TemplatePlace> places, string project, GuideSettings guides, SheetSettings settings) =>
        new GuideSheet(guide, places, project, guides, settings).Drawn();

    private Point2 Plate => new(guide.Plate.Length.Value, guide.Plate.Width.Value);

    private double Pitch => ListLine.Pitch(settings.Small);

    private double SectionHeight => guide.Fences.IsEmpty ? 0 : GuideSection.Height(guide) + settings.Small + 6;

    private Drawing Drawn()
    {
        var choice = Choice(SmallestClear) is { Scale: <= SmallestClear } clear ? clear : Choice(int.MaxValue);
        var (size, scale) = (choice.Size, choice.Scale);
        var layout = Layout(scale, size) ?? new(default, false, 1);
        var room = size.Room(0);
        var body = room with { Max = room.Max - new Point2(0, Heading) };
        var view = layout.IsBelow ? body with { Min = new(body.Min.X, body.Min.Y + HeightIn(layout.Columns)) } : body with { Max = new(body.Max.X - layout.Columns * Column, body.Max.Y) };
        var list = layout.IsBelow ? body with { Max = new(body.Max.X, view.Min.Y) } : body with { Min = new(view.Max.X, body.Min.Y) };

        var entities = new List<Entity> { new TextEntity(HeadingLayer, new(room.Min.X + Rim, room.Max.Y - Rim - settings.Standard.Large), settings.Standard.Large, SheetFrame.Fitted(guide.Name, settings.Standard.Large, room.Width - 2 * Rim)) };
        entities.AddRange(View(view, scale));
        entities.AddRange(Listed(list, layout.Columns));
        var fields = new TitleFields(guide.Name, "Drill guide", project, 1, 1, scale, $"{guide.Plate.Board.Name}, {settings.Lengths.PrintFine(guide.Plate.Thickness.Value)}") { NoteLabel = "Material" };
        return new Drawing(
            $"Drill guide {guide.Name} of {project}",
            string.Create(CultureInfo.InvariantCulture, $"Drill guide {guide.Name}: a plate {settings.Lengths.Print(Plate.X)} by {settings.Lengths.Print(Plate.Y)} ({settings.Lengths.Statement}) with {guide.Holes.Length} holes and {guide.Fences.Length} fences, drawn 1:{scale}, and what is drilled where."),
            size.Page, [.. SheetFrame.Of(size, fields, settings, []), .. PaperLines.Of(entities)]);
    }

    private SheetChoice Choice(int smallest) => SheetChoice.Of(settings, [], (scale, size) => scale <= smallest && Layout(scale, size) is { } fitting
        ? (fitting.Need, Plate.X * Plate.Y / (scale * scale) + text.Lines(Column - 2 * Rim, settings.Small).Length * Pitch * Column)
        : (new(double.PositiveInfinity, 0), 0));

    private Point2 ViewSize(int scale) => Plate * (1.0 / scale) + new Point2(2 * Dimensioned, 2 * Dimensioned);

    // Beside the plate: the dimension's line and its text, upright beside it or level across it.
    private double Dimensioned => Away + 2 + Math.Max(3.2 * settings.Small, new[] { Plate.X, Plate.Y }.Max(s => Lettering.Width(settings.Lengths.Print(s), settings.Small)) / 2);

    // A line more than needed, since no heading stands last in a column.
    private double HeightIn(int columns) => Math.Ceiling((text.Lines(Column - 2 * Rim, settings.Small).Length + SectionHeight / Pitch) / columns + 1) * Pitch + 2 * Rim;

    // Beside the view in as few columns as there can be, or below it.
    private SheetLayout? Layout(int scale, SheetSize size)
    {
        var (room, view) = (size.Room(0), ViewSize(scale));
        for (var columns = 1; columns <= MostColumns; columns++)
        {
            var beside = new Point2(view.X + columns * Column, Math.Max(view.Y, HeightIn(columns)) + Heading);
            if (beside.X <= room.Width && beside.Y <= room.Height) return new(beside, false, columns);
        }

        var across = (int)(room.Width / Column);
        var below = new Point2(Math.Max(view.X, across * Column), view.Y + HeightIn(across) + Heading);
        return below.X <= room.Width && below.Y <= room.Height ? new(below, true, across) : null;
    }

    private List<Entity> View(Box2 room, int scale)
    {
        var corner = room.Centre - Plate * (0.5 / scale);
        Point2 OnPaper(Point2 p) => corner + p * (1.0 / scale);
        ContourEntity Shape(Layer layer, Contour contour) => new(layer, Contour.FromSegments(contour.Segments.Select(s => new Segment(OnPaper(s.Start), OnPaper(s.End), s.Bulge))));
        ContourEntity Box(Layer layer, Box2 box) => Shape(layer, Contour.Rectangle(box.Min.X, box.Min.Y, box.Max.X, box.Max.Y));
        var entities = new List<Entity>();
        entities.AddRange(guide.Pieces.Select(p => Shape(PlateLayer, p.Panel.Outline.Moved(p.Corner!.Value))));
        entities.AddRange(guide.Holes.Select(h => new CircleEntity(HoleLayer, OnPaper(h.At), h.Diameter / 2 / scale)));
        foreach (var fence in guide.Fences)
        {
            entities.Add(Box(FenceLayer, fence.Edge.Box(fence.From, fence.To, guide.Plate.Thickness.Value)));
            entities.AddRange(fence.Slots.Select(s => Box(PlateLayer, s)));
        }

        const double Beyond = 4;
        foreach (var edge in guide.Edges) entities.Add(new SegmentEntity(EdgeLayer, new(OnPaper(edge.Point(0, 0)), OnPaper(edge.Point(edge.IsUpright ? Plate.Y : Plate.X, 0)))));
        var origin = OnPaper(guide.Lie.Shift);
        var (low, high) = (OnPaper(default), OnPaper(Plate));
        entities.Add(new SegmentEntity(LineLayer, new(new(origin.X, low.Y - Beyond), new(origin.X, high.Y + Beyond))));
        entities.Add(new SegmentEntity(LineLayer, new(new(low.X - Beyond, origin.Y), new(high.X + Beyond, origin.Y))));
        var (upright, level) = guide.Lie.Quarters == 1 ? ("B", "A") : ("A", "B");
        entities.AddRange(Dimensions(low, high, origin, OnPaper, scale));

        var space = new FreeSpace(entities);
        // Beyond an end of the line, or beside it there, or where it comes into the plate.
        var (below, above, left, right) = (low.Y - Beyond - 1 - settings.Small, high.Y + Beyond + 1, low.X - Beyond - 1, high.X + Beyond + 1);
        Add(upright, [new(origin.X, below), new(origin.X - 2.5, below), new(origin.X + 2.5, below), new(origin.X, above), new(origin.X - 2.5, above), new(origin.X + 2.5, above), new(origin.X + 3, low.Y + 1.5), new(origin.X + 3, high.Y - 1.5 - settings.Small)], Anchor.BaseCentre);
        var (on, over, under) = (origin.Y - settings.Small / 2, origin.Y + 2, origin.Y - 2 - settings.Small);
        Add(level, [new(left - 1.5, on), new(left - 1.5, over), new(left - 1.5, under), new(right + 1.5, on), new(right + 1.5, over), new(right + 1.5, under), new(low.X + 3, over), new(low.X + 3, under), new(high.X - 3, over), new(high.X - 3, under)], Anchor.BaseCentre);
        foreach (var (what, at, clear) in guide.Holes.Select(h => (h.Number.ToString(CultureInfo.InvariantCulture), OnPaper(h.At), h.Diameter / 2 / scale))
            .Concat(guide.Fences.Select((f, i) => (FormattableString.Invariant($"F{i + 1}"), OnPaper(f.Edge.Point((f.From + f.To) / 2, guide.Plate.Thickness.Value / 2)), guide.Plate.Thickness.Value / 2 / scale)))
            .Concat(guide.Pieces.Count() > 1 ? guide.Pieces.Select((p, i) => (FormattableString.Invariant($"P{i + 1}"), OnPaper(p.Corner!.Value + p.Panel.Outline.Bounds.Centre), 2.0)) : []))
            if (Tag(space, what, at, clear, new Box2(low, high).Grown(9)) is { } tag)
            {
                entities.Add(tag);
                space.Take(tag);
            }

        entities.AddRange(Up(space, new Box2(low, high)));
        return entities;

        void Add(string letter, ReadOnlySpan<Point2> places, Anchor anchor)
        {
            foreach (var place in places)
            {
                var text = new TextEntity(NumberLayer, place, settings.Small, letter, anchor);
                if (!space.IsFree(text.Bounds.Grown(0.2))) continue;
                entities.Add(text);
                space.Take(text);
                return;
            }
        }
    }

    private IEnumerable<Entity> Dimensions(Point2 low, Point2 high, Point2 origin, Func<Point2, Point2> onPaper, int scale)
    {
        LinearDimension Sized(Point2 from, Point2 to, Point2 line, bool isUpright, double mm) => new(SizeLayer, from, to, line, isUpright, settings.Lengths.Print(mm), settings.Small) { Factor = scale, Standard = settings.Standard };
        yield return Sized(low, new(high.X, low.Y), low - new Point2(0, Away), false, Plate.X);
        yield return Sized(low, new(low.X, high.Y), low - new Point2(Away, 0), true, Plate.Y);
        foreach (var edge in guide.Fences.Select(f => f.Edge).Distinct())
        {
            var on = onPaper(edge.Point(0, 0));
            if (edge.IsUpright && Math.Abs(on.X - origin.X) > Tolerance.Length)
                yield return Sized(new(Math.Min(on.X, origin.X), high.Y), new(Math.Max(on.X, origin.X), high.Y), high + new Point2(0, Away), false, Math.Abs(edge.At - guide.Lie.Shift.X));
            else if (!edge.IsUpright && Math.Abs(on.Y - origin.Y) > Tolerance.Length)
                yield return Sized(new(high.X, Math.Min(on.Y, origin.Y)), new(high.X, Math.Max(on.Y, origin.Y)), high + new Point2(Away, 0), true, Math.Abs(edge.At - guide.Lie.Shift.Y));
        }
    }

    private TextEntity? Tag(FreeSpace space, string what, Point2 at, double clear, Box2 within)
    {
        foreach (var away in (ReadOnlySpan<double>)[clear + 1, clear + 3, clear + 6, clear + 10])
            foreach (var (x, y, anchor) in (ReadOnlySpan<(double, double, Anchor)>)[(1, 0, Anchor.BaseLeft), (-1, 0, Anchor.BaseRight), (0, 1, Anchor.BaseCentre), (0, -1, Anchor.BaseCentre), (0.75, 0.75, Anchor.BaseLeft), (-0.75, 0.75, Anchor.BaseRight), (0.75, -0.75, Anchor.BaseLeft), (-0.75, -0.75, Anchor.BaseRight)])
            {
                var text = new TextEntity(NumberLayer, at + new Point2(x * away, y * away - (y == 0 ? settings.Small / 2 : y < 0 ? settings.Small : 0)), settings.Small, what, anchor);
                if (space.IsFree(text, 0.5, within)) return text;
            }

        return null;
    }

    // An arrow the way the printed and the engraved ones point.
    private IEnumerable<Entity> Up(FreeSpace space, Box2 plate)
    {
        const double Length = 14, Wide = 12, Step = 3;
        var up = guide.Lie.Turned(new(0, 1));
        var size = new Point2(Wide, Length + settings.Small + 3);
        for (var y = plate.Max.Y - size.Y - 1; y >= plate.Min.Y; y -= Step)
            for (var x = plate.Min.X + 1; x + size.X <= plate.Max.X; x += Step)
            {
                var box = new Box2(new(x, y), new Point2(x, y) + size);
                if (!space.IsFree(box)) continue;
                var middle = new Point2(box.Centre.X, box.Max.Y - Length / 2);
                var tip = middle + up * (Length / 2 - 1);
                yield return new SegmentEntity(SizeLayer, new(middle - up * (Length / 2 - 1), tip - up * 4));
                yield return new ArrowEntity(SizeLayer, tip, tip - up * 4 + up.Left * 1.3, tip - up * 4 - up.Left * 1.3);
                yield return new TextEntity(NumberLayer, box.Min + new Point2(Wide / 2, 1), settings.Small, "up", Anchor.BaseCentre);
                yield break;
            }
    }

    private IEnumerable<Entity> Listed(Box2 room, int columns)
    {
        var (width, top) = (room.Width / columns, room.Max.Y - Rim);
        var lines = text.Lines(width - 2 * Rim, settings.Small);
        var first = room.Min.X + Rim;
        var y = top;
        if (!guide.Fences.IsEmpty)
        {
            foreach (var entity in GuideSection.Of(guide, new(first, top), settings, PlateLayer, HatchLayer, EdgeLayer, ListLayer)) yield return entity;
            y -= SectionHeight;
        }

        var column = 0;
        foreach (var (line, isHead) in lines)
        {
            if (y - (isHead ? 2 : 1) * Pitch < room.Min.Y + Rim && column + 1 < columns) (column, y) = (column + 1, top);
            y -= Pitch;
            yield return new TextEntity(ListLayer, new(first + column * width + (isHead ? 0 : 3), y), settings.Small, line);
        }
    }

    private sealed record SheetLayout(Point2 Need, bool IsBelow, int Columns);
}
