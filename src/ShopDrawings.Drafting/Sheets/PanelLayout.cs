using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>
/// A way to lay out the sheet of a panel: paper, scale, where the view stands and where the list. A heading stands above, the title block below; the
/// list stands in columns at the right or below the view, whichever leaves less of the paper empty.
/// </summary>
internal sealed record PanelLayout
{
    private const double AroundHeading = 6;
    private const double StampHeight = 13;
    private const double Rim = 3;
    private const double Narrow = 64;
    private const double Wide = 85;

    // How much more of its room a larger sheet must use, and how much less may be used for a drawing twice as large.
    private const double CostOfLarger = 0.2;
    private const double WorthOfScale = 0.15;

    // From this reduction on holes shrink to dots, and what is gained by a larger scale counts fourfold.
    private const double Dots = 1 / 5.0;

    // What a break costs: a panel in one piece is read more easily.
    private const double CostOfBreak = 0.1;
    private const double CostOfBrokenLine = 0.01;

    // A list of fewer lines leaves a column beside the view empty.
    private const int FewLines = 4;
    private const double CostOfEmptyColumn = 0.15;

    /// <summary>The sheet.</summary>
    public required SheetSize Size { get; init; }

    /// <summary>Millimetres on paper for one of the panel.</summary>
    public required double Factor { get; init; }

    /// <summary>The room of heading and stamp.</summary>
    public required Box2 Top { get; init; }

    /// <summary>The room of the list.</summary>
    public required Box2 List { get; init; }

    /// <summary>Columns of the list.</summary>
    public required int Columns { get; init; }

    /// <summary>Distance from line to line of the list in mm.</summary>
    public required double Pitch { get; init; }

    /// <summary>The panel, in one piece or in two.</summary>
    public ImmutableArray<PanelPiece> Pieces { get; init; } = [];

    /// <summary>Whether the list stands below the view.</summary>
    public bool IsBelow { get; init; }

    /// <summary>How well it uses the paper, the more the better.</summary>
    public double Score { get; init; }

    /// <summary>The room of the view.</summary>
    public Box2 View => IsBelow
        ? new Box2(new(Size.Frame.Min.X, List.Max.Y), new(Size.Frame.Max.X, Top.Min.Y))
        : new Box2(new(Size.Frame.Min.X, List.Min.Y), new(List.Min.X, Top.Min.Y));

    /// <summary>Width of a column.</summary>
    public double ColumnWidth => List.Width / Columns;

    /// <summary>Lines of a column.</summary>
    public int PerColumn => LinesIn(List.Height);

    /// <summary>The layouts in which panel and list find room, the best first; where there is none, one on the largest sheet whose list goes on elsewhere.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="settings">What all sheets share.</param>
    /// <param name="list">Its list.</param>
    /// <param name="rows">Its rows of bores at one pitch.</param>
    /// <param name="notes">How many lines of notes a sheet has.</param>
    /// <param name="isWithheld">Whether there is a stamp.</param>
    public static ImmutableArray<PanelLayout> Of(Panel panel, SheetSettings settings, PanelList list, ImmutableArray<PitchRow> rows, Func<SheetSize, int> notes, bool isWithheld)
    {
        ImmutableArray<SheetSize> sizes = [.. Sizes(settings).Where(s => s.Holds(notes(s)) || s == Sizes(settings)[^1])];
        var breaks = PanelBreak.Of(panel, settings.Lengths, rows) is { } at ? new double?[] { null, at } : [null];
        var found = new List<PanelLayout>();
        var margins = new Dictionary<double, ViewMargins>();
        foreach (var size in sizes)
            foreach (var empty in Empty(size, settings, notes(size), isWithheld, list))
                foreach (var cut in breaks)
                    if (Largest(empty, panel, settings, list, cut, MarginsAt) is { } layout) found.Add(layout);
        if (found.Count > 0) return [.. found.OrderByDescending(l => l.Score)];

        // The list goes on on other sheets: a strip of it below the view.
        const int Strip = 8;
        var last = sizes[^1];
        var (top, body) = Rooms(last, settings, notes(last), isWithheld);
        var columns = (int)(body.Width / Wide);
        var rest = new PanelLayout { Size = last, Factor = 0, Top = top, Columns = columns, Pitch = ListLine.Pitch(settings.Small), IsBelow = true, List = body };
        rest = rest with { List = body with { Max = new(body.Max.X, body.Min.Y + rest.HeightOf(Strip)) } };
        return [Factors(settings).Select(f => rest.With(panel, f, null, MarginsAt)).OfType<PanelLayout>().First()];

        // Nearly all work, and the same for every paper.
        ViewMargins MarginsAt(double factor) => margins.TryGetValue(factor, out var at) ? at : margins[factor] = PanelDimensions.Margins(panel, settings, factor);
    }

    /// <summary>A sheet with nothing but a list.</summary>
    public static PanelLayout ListOnly(SheetSettings settings)
    {
        var size = Sizes(settings)[1];
        var (top, body) = Rooms(size, settings, 0, false);
        return new() { Size = size, Factor = 1, Top = top, List = body, Columns = (int)(body.Width / Wide), Pitch = ListLine.Pitch(settings.Small) };
    }

    // The smaller first; the largest are no sheets for a wall.
    private static ImmutableArray<SheetSize> Sizes(SheetSettings settings) => settings.Standard.Sheets[..3];

    // Small panels may be drawn at twice their size.
    private static IEnumerable<double> Factors(SheetSettings settings) => settings.Standard.Scales.Select(n => 1.0 / n).Prepend(2);

    private double HeightOf(int lines) => lines * Pitch + 4;

    private int LinesIn(double height) => (int)((height - 4 + 1e-6) / Pitch);

    private static (Box2 Top, Box2 Body) Rooms(SheetSize size, SheetSettings settings, int notes, bool isWithheld)
    {
        var room = size.Room(notes);
        var height = settings.Standard.Large + AroundHeading + (isWithheld ? StampHeight : 0);
        return (room with { Min = new(room.Min.X, room.Max.Y - height) }, room with { Max = new(room.Max.X, room.Max.Y - height) });
    }

    // With the list in columns at the right, or below: as low as it can be.
    private static IEnumerable<PanelLayout> Empty(SheetSize size, SheetSettings settings, int notes, bool isWithheld, PanelList list)
    {
        var (top, body) = Rooms(size, settings, notes, isWithheld);
        var empty = new PanelLayout { Size = size, Factor = 1, Top = top, List = body, Columns = 1, Pitch = ListLine.Pitch(settings.Small) };
        foreach (var (columns, width) in new[] { (1, Narrow), (1, Wide), (2, 2 * Narrow), (2, 2 * Wide) })
        {
            var beside = empty with { Columns = columns, List = body with { Min = new(body.Max.X - width, body.Min.Y) } };
            if (PanelList.LeastPerColumn(list.Lines(beside.ColumnWidth), columns) > beside.PerColumn) continue;
            yield return beside;
            if (width >= Wide) break;
        }

        for (var columns = (int)(body.Width / Wide); columns <= (int)(body.Width / Narrow); columns++)
        {
            var least = PanelList.LeastPerColumn(list.Lines(body.Width / columns), columns);
            if (empty.HeightOf(least) <= body.Height / 2) yield return empty with { Columns = columns, IsBelow = true, List = body with { Max = new(body.Max.X, body.Min.Y + empty.HeightOf(least)) } };
        }
    }

    private static PanelLayout? Largest(PanelLayout empty, Panel panel, SheetSettings settings, PanelList list, double? cut, Func<double, ViewMargins> marginsAt)
    {
        if (Factors(settings).Select(f => empty.With(panel, f, cut, marginsAt)).FirstOrDefault(l => l is not null) is not { } layout) return null;
        var (room, view) = (layout.Size.Room(0), layout.View);
        var lines = list.Lines(layout.ColumnWidth).Length;
        var listed = lines * layout.Pitch * Narrow;
        var broken = lines - list.Lines(double.PositiveInfinity).Length;
        var margins = marginsAt(layout.Factor);
        var viewed = layout.Pieces.Sum(p => (p.Box.Width + margins.Left + margins.Right) * (p.Box.Height + margins.Below + margins.Above));
        // Both the whole and the room of the view by itself, so that white space is not all on one side.
        var used = ((viewed + listed) / (room.Width * room.Height) + viewed / (view.Width * view.Height)) / 2;
        var isEmpty = !layout.IsBelow && lines < FewLines;
        var scale = Math.Log2(layout.Factor) + Math.Min(0, 3 * Math.Log2(layout.Factor / Dots));
        var isLarger = layout.Size.Page.X > 400;
        return layout with { Score = used - (isLarger ? CostOfLarger : 0) + WorthOfScale * scale - (cut is null ? 0 : CostOfBreak) - CostOfBrokenLine * broken - (isEmpty ? CostOfEmptyColumn : 0) };
    }

    // With the panel in the middle of the room the list leaves, if it fits.
    private PanelLayout? With(Panel panel, double factor, double? cut, Func<double, ViewMargins> marginsAt)
    {
        var view = View;
        var margins = marginsAt(factor);
        (double From, double To)[] parts = cut is { } at ? [(0, at), (at, panel.Length.Value)] : [(0, panel.Length.Value)];
        var height = panel.Width.Value * factor + margins.Below + margins.Above;
        var width = parts.Max(p => p.To - p.From) * factor + margins.Left + margins.Right;
        if (width > view.Width || height * parts.Length > view.Height) return null;
        var spare = (view.Height - height * parts.Length) / (parts.Length + 1);
        var left = view.Centre.X - width / 2 + margins.Left;
        return this with
        {
            Factor = factor,
            Pieces = [.. parts.Select((p, i) => new PanelPiece(panel, p.From, p.To, new(left, view.Max.Y - (i + 1) * (height + spare) + margins.Below), factor))],
        };
    }
}
