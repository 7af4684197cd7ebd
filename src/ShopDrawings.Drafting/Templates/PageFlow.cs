using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>Lines of words from the top of a page down, over as many pages as they need.</summary>
internal sealed class PageFlow(Point2 page, PrinterScale printer, SheetSettings sheets, string title, string description)
{
    // Side of the square to measure and the bars in inches, in mm.
    private const double Square = 100, FourInches = 101.6;

    private readonly List<PageCanvas> canvases = [];
    private double y = double.NegativeInfinity;

    private PageCanvas Canvas => canvases[^1];

    /// <summary>A text, in as many lines as it needs.</summary>
    public void Line(string text, double height)
    {
        foreach (var line in TemplateKey.Wrapped(text, height, page.X - 2 * TilePlan.Side))
        {
            Need(1.75 * height);
            y -= 1.75 * height;
            Canvas.Text(new(TilePlan.Side, y), height, line);
        }
    }

    /// <summary>White before what comes next, in mm.</summary>
    public void Gap(double mm) => y -= mm;

    /// <summary>A square of 100 mm with the map of the pages in it, and bars of 4 in beside it.</summary>
    public void Scale(TilePlan plan, TemplateSettings settings)
    {
        const double Bars = 8;
        var (width, height) = (Square / printer.X, Square / printer.Y);
        Need(FourInches / printer.Y + Bars + 4);
        var low = new Point2(TilePlan.Side + Bars, y - FourInches / printer.Y);
        var canvas = Canvas;
        void Bar(Point2 from, Point2 to, Point2 across)
        {
            canvas.OnPaper(PageCanvas.Scale, from, to);
            foreach (var end in (ReadOnlySpan<Point2>)[from, to]) canvas.OnPaper(PageCanvas.Scale, end - across * 2, end + across * 2);
        }

        foreach (var (a, b) in (ReadOnlySpan<(Point2, Point2)>)[(new(0, 0), new(width, 0)), (new(width, 0), new(width, height)), (new(width, height), new(0, height)), (new(0, height), new(0, 0))])
            canvas.OnPaper(PageCanvas.Scale, low + a, low + b);
        Bar(low - new Point2(0, 5), low + new Point2(FourInches / printer.X, -5), new(0, 1));
        Bar(low - new Point2(5, 0), low + new Point2(-5, FourInches / printer.Y), new(1, 0));
        var words = low + new Point2(width + 6, height - sheets.Small);
        foreach (var line in new[] { "The square is 100 mm", "each way; the bars at its", "left and below are 4 in." })
        {
            canvas.Text(words, sheets.Small, line);
            words -= new Point2(0, 1.75 * sheets.Small);
        }

        Map(canvas, plan, new Box2(low + new Point2(12, 8), low + new Point2(width - 12, height - 22)), low + new Point2(width / 2, height - 12), settings);
        y = low.Y - Bars - 4;
    }

    private void Map(PageCanvas canvas, TilePlan plan, Box2 room, Point2 heading, TemplateSettings settings)
    {
        canvas.Text(heading, sheets.Small, FormattableString.Invariant($"{plan.Tiles.Length} {(plan.Tiles.Length == 1 ? "page" : "pages joined")}, {settings.Paper.Name}"), Anchor.BaseCentre);
        var all = plan.Tiles.Select(t => t.Window).Aggregate((a, b) => a.Union(b));
        var scale = Math.Min(room.Width / all.Width, room.Height / all.Height);
        double[] xs = [all.Min.X, .. plan.TrimX, all.Max.X], ys = [all.Min.Y, .. plan.TrimY, all.Max.Y];
        Point2 At(double x, double y) => room.Centre + (new Point2(x, y) - all.Centre) * scale;
        foreach (var x in xs) canvas.OnPaper(PageCanvas.Cut, At(x, all.Min.Y), At(x, all.Max.Y));
        foreach (var level in ys) canvas.OnPaper(PageCanvas.Cut, At(all.Min.X, level), At(all.Max.X, level));
        foreach (var tile in plan.Tiles) canvas.Text(At((xs[tile.Column] + xs[tile.Column + 1]) / 2, (ys[tile.Row] + ys[tile.Row + 1]) / 2), sheets.Small, tile.Name, Anchor.Middle);
    }

    /// <summary>All pages.</summary>
    public ImmutableArray<Drawing> Pages() => [.. canvases.Select((c, i) => new Drawing(i == 0 ? title : FormattableString.Invariant($"{title}, {i + 1}"), description, page, c.Entities))];

    private void Need(double height)
    {
        if (y - height >= TilePlan.Side) return;
        canvases.Add(new PageCanvas(new Box2(default, page), default, PrinterScale.True));
        y = page.Y - TilePlan.Side;
    }
}
