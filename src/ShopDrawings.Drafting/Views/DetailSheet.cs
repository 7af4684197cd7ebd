using System.Collections.Immutable;
using System.Globalization;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>
/// Corners of the carcass in section at 1:2 or full size, with the thicknesses, gaps, set-backs and depths in grooves that sections at a smaller scale have no
/// room for.
/// </summary>
internal sealed class DetailSheet
{
    // The n of the smallest scale 1:n.
    private const int Smallest = 2;

    // What of a corner is shown, in mm: within the carcass, before it, and beyond all there is.
    private const double Inwards = 70, Outwards = 30, Rim = 6;

    // A gap or a set-back is no longer than this.
    private const double Longest = 60;

    private const double Caption = 7, Between = 3;

    private static readonly Layer CaptionLayer = new("MARKS", Role.Lettering, "Letters of sections and details");

    private readonly SheetSize size;
    private readonly int scale;
    private readonly ImmutableArray<(DetailMark Mark, string Of, ViewLayout Layout)> details;

    private DetailSheet(SheetSize size, int scale, ImmutableArray<(DetailMark, string, ViewLayout)> details, List<ViewSheet> marked) =>
        (this.size, this.scale, this.details, Marked) = (size, scale, details, marked);

    /// <summary>All sheets, the details marked in the sections they are taken from.</summary>
    public List<ViewSheet> Marked { get; }

    /// <summary>The details of some sheets; nothing where every section is drawn as large as they are, or cuts no corner.</summary>
    public static DetailSheet? Of(IReadOnlyList<ViewSheet> sheets, ViewSizes sizes, SheetSettings settings)
    {
        var details = new List<(string Sheet, DetailMark Mark, string Of, ViewLayout Layout)>();
        foreach (var sheet in sheets.Where(s => s.View.Plane is not null && s.Scale(settings) > Smallest))
            foreach (var (window, below, left) in Corners(sheet.View, sizes))
            {
                var view = sheet.View.Within(window);
                if (view.Cut.Count() < 2) continue;
                var letter = ((char)('C' + details.Count)).ToString();
                var spans = Spans(view, sheet.View.Projection.Map(sizes.Carcass), window, below ? ViewSide.Below : ViewSide.Above, left ? ViewSide.Left : ViewSide.Right);
                details.Add((sheet.Name, new DetailMark(letter, window), sheet.Letter, new ViewLayout(view, spans, settings)));
            }

        if (details.Count == 0) return null;
        foreach (var (size, scale) in settings.Standard.Sheets.SelectMany(size => Enumerable.Range(1, Smallest).Select(scale => (size, scale))))
        {
            var (columns, rows) = Grid(size, Cell(details.Select(d => d.Layout), scale));
            if (columns * rows < details.Count) continue;
            return new DetailSheet(size, scale, [.. details.Select(d => (d.Mark, d.Of, d.Layout))], [.. sheets.Select(s => s with { Details = [.. details.Where(d => d.Sheet == s.Name).Select(d => d.Mark)] })]);
        }

        return null;
    }

    /// <summary>The sheet.</summary>
    public Drawing Draw(string project, SheetSettings settings, string note, int number, int count)
    {
        var (room, cell) = (size.Room(0), Cell(details.Select(d => d.Layout), scale));
        var columns = Math.Min(Grid(size, cell).Columns, details.Length);
        var rows = (details.Length + columns - 1) / columns;
        var pitch = new Point2(room.Width / columns, room.Height / rows);
        var entities = new List<Entity>();
        foreach (var ((mark, of, layout), i) in details.Select((d, i) => (d, i)))
        {
            var around = layout.Around(scale);
            var middle = new Point2(room.Min.X + (i % columns + 0.5) * pitch.X, room.Max.Y - (i / columns + 0.5) * pitch.Y) - new Point2(0, Caption / 2);
            var corner = middle - around.Centre;
            entities.AddRange(layout.Draw(scale, corner));
            entities.Add(new TextEntity(CaptionLayer, new(middle.X, corner.Y + around.Max.Y + 3), settings.Normal, $"{mark.Letter}  (of {of}–{of})", Anchor.BaseCentre));
        }

        const string Title = "Details of the sections";
        var fields = new TitleFields(Title, "Detail", project, number, count, scale, note);
        return new Drawing($"{project}: {Title}", string.Create(CultureInfo.InvariantCulture, $"Corners of {project} in section, scale 1:{scale}."), size.Page,
            [.. SheetFrame.Of(size, fields, settings, []), .. entities]);
    }

    private static Point2 Cell(IEnumerable<ViewLayout> layouts, int scale) =>
        layouts.Select(l => l.Around(scale)).Aggregate(default(Point2), (s, a) => new(Math.Max(s.X, a.Width), Math.Max(s.Y, a.Height))) + new Point2(Between, Between + Caption);

    private static (int Columns, int Rows) Grid(SheetSize size, Point2 cell) => ((int)(size.Room(0).Width / cell.X), (int)(size.Room(0).Height / cell.Y));

    // The corners a section shows: all four of an upright one, the two at the left of a level one, since the others mirror them.
    private static IEnumerable<(Box2 Window, bool IsBelow, bool IsLeft)> Corners(AssemblyView view, ViewSizes sizes)
    {
        var carcass = view.Projection.Map(sizes.Carcass);
        // The bottom may stand higher than the sides reach down.
        if (view.Plane!.Axis != 2) carcass = carcass with { Min = new(carcass.Min.X, view.Cut.Select(c => c.Box).Where(b => b.Width > b.Height).Select(b => b.Min.Y).DefaultIfEmpty(carcass.Min.Y).Min()) };
        foreach (var isBelow in new[] { false, true })
            foreach (var isLeft in view.Plane.Axis == 2 ? [true] : new[] { true, false })
            {
                var (x0, x1) = isLeft ? (carcass.Min.X - Outwards, carcass.Min.X + Inwards) : (carcass.Max.X - Inwards, carcass.Max.X + Outwards);
                var (y0, y1) = isBelow ? (carcass.Min.Y - Outwards, carcass.Min.Y + Inwards) : (carcass.Max.Y - Inwards, carcass.Max.Y + Outwards);
                // Little of what is empty all round.
                var (low, high) = (view.Bounds.Grown(Rim).Min, view.Bounds.Grown(Rim).Max);
                yield return (new Box2(new(Math.Max(x0, low.X), Math.Max(y0, low.Y)), new(Math.Min(x1, high.X), Math.Min(y1, high.Y))), isBelow, isLeft);
            }
    }

    private static ImmutableArray<Span> Spans(AssemblyView view, Box2 carcass, Box2 window, ViewSide level, ViewSide upright)
    {
        var spans = new List<Span>();
        var cut = view.Cut.Select(c => c.Box).ToList();
        foreach (var isUpright in new[] { false, true })
        {
            var side = isUpright ? upright : level;
            double Low(Box2 b, bool up) => up ? b.Min.Y : b.Min.X;
            double High(Box2 b, bool up) => up ? b.Max.Y : b.Max.X;
            bool Shows(double at) => at > Low(window, isUpright) + 0.5 && at < High(window, isUpright) - 0.5;
            void Add(double from, double to, string what)
            {
                if (to - from > 0.2 && to - from <= Longest && Shows(from) && Shows(to)) spans.Add(new Span(Math.Round(from, 6), Math.Round(to, 6), side, what));
            }

            foreach (var box in cut)
            {
                Add(Low(box, isUpright), High(box, isUpright), "thickness");
                foreach (var other in cut.Where(o => o != box))
                {
                    var beside = Math.Min(High(box, !isUpright), High(other, !isUpright)) - Math.Max(Low(box, !isUpright), Low(other, !isUpright));
                    if (beside <= Tolerance.Length) continue;
                    // A gap, or how deep a panel stands in another's groove.
                    Add(High(box, isUpright), Low(other, isUpright), "gap");
                    if (High(box, isUpright) < High(other, isUpright) && Low(box, isUpright) < Low(other, isUpright)) Add(Low(other, isUpright), High(box, isUpright), "depth in the groove");
                }

                foreach (var edge in new[] { Low(box, isUpright), High(box, isUpright) })
                {
                    if (edge > Low(carcass, isUpright)) Add(Low(carcass, isUpright), edge, "set-back");
                    if (edge < High(carcass, isUpright)) Add(edge, High(carcass, isUpright), "set-back");
                }
            }
        }

        return [.. spans];
    }
}
