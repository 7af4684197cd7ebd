using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>The page before a template: lengths to measure, what to do, how its pages lie, what to drill, and every place it serves.</summary>
internal static class TemplateKey
{
    // Side of the square to measure and the bars in inches, in mm.
    private const double Square = 100, FourInches = 101.6;

    /// <summary>The page, and more of them where there are many places.</summary>
    public static ImmutableArray<Drawing> Of(Template template, string project, TilePlan plan, TemplateSettings settings, SheetSettings sheets)
    {
        var page = new Point2(settings.Paper.Width, settings.Paper.Height ?? 297);
        var flow = new Flow(page, settings.Printer, sheets, $"{template.Name}: where it goes");
        flow.Line(template.Name, sheets.Standard.Small * 2);
        flow.Line($"{project}: a template in true size for {Count(template.Pattern.Holes.Length, "hole")}{(template.Pattern.Openings.Length > 0 ? $" and {Count(template.Pattern.Openings.Length, "opening")}" : "")}, {Count(template.Places.Length, "place")}", sheets.Small);
        flow.Gap(3);
        flow.Scale(plan, settings);
        foreach (var words in Instructions(template, settings)) flow.Line(words, sheets.Small);
        flow.Gap(3);
        flow.Line("To drill", sheets.Normal);
        foreach (var equal in template.Pattern.Holes.GroupBy(h => TemplatePages.Drill(h, sheets.Lengths)).OrderBy(g => g.Key, StringComparer.Ordinal))
            flow.Line(FormattableString.Invariant($"{equal.Count()} × {equal.Key}"), sheets.Small);
        flow.Gap(3);
        flow.Line("Where", sheets.Normal);
        foreach (var (place, index) in template.Places.Select((p, i) => (p, i + 1))) flow.Line(FormattableString.Invariant($"{index}. {Where(template, place, sheets.Lengths)}"), sheets.Small);
        return flow.Pages();
    }

    /// <summary>A text in lines that are no wider than a room, in mm.</summary>
    public static IEnumerable<string> Wrapped(string text, double height, double width)
    {
        var line = "";
        foreach (var word in text.Split(' '))
        {
            var longer = line.Length == 0 ? word : $"{line} {word}";
            if (line.Length > 0 && Lettering.Width(longer, height) > width)
            {
                yield return line;
                line = word;
            }
            else
            {
                line = longer;
            }
        }

        yield return line;
    }

    private static string Where(Template template, TemplatePlace place, LengthStyle lengths)
    {
        var panel = place.Panel;
        string From((Surface Edge, double Distance) line) => $"{lengths.PrintPlace(line.Distance)} from the {panel.NameOf(line.Edge)} edge";
        var version = !template.HasMirror ? "" : place.Turn.IsMirrored ? ", MIRRORED version" : ", version as it is";
        return $"{panel.Id}, {panel.NameOf(place.Face)} face{version}, arrow to the {panel.NameOf(place.ArrowTo)} edge: line A {From(place.LineA)}, line B {From(place.LineB)}{(place.Origin == panel.Id ? "" : $" ({place.Origin})")}";
    }

    private static IEnumerable<string> Instructions(Template template, TemplateSettings settings)
    {
        yield return "Print at 100 % (“actual size”). Measure square and bars both ways before you trust a page. Where 100 mm measure 99.6 across and 100.2 up, make it again with --printer-scale 0.996,1.002.";
        if (settings.Printer != PrinterScale.True) yield return FormattableString.Invariant($"Drawn for a printer that makes {settings.Printer.X} of a length across and {settings.Printer.Y} up; after printing the bars must be right.");
        yield return template.Edges.IsEmpty
            ? "Draw lines A and B on the panel by the distances below, and lay the template's lines on them."
            : "Fold the tabs along the thick lines and lay them over the panel's edges. Where that leaves a direction open, draw line A or B on the panel and lay the template's on it.";
        yield return "Edges are finished ones, with their bands. Tape the paper down, prick every cross with an awl, and do not punch: a punch chips melamine. Take the paper away, check one distance with the tape, then drill with a depth stop.";
        if (template.HasMirror) yield return "Two versions are printed, one the mirror image of the other; each place says which it needs.";
        yield return "Paper grows and shrinks with the air by some 0.25 %. Patterns over 300 mm are therefore not printed but on the story sticks.";
    }

    private static string Count(int count, string what) => FormattableString.Invariant($"{count} {what}{(count == 1 ? "" : "s")}");

    /// <summary>Lines of words from the top of a page down, over as many pages as they need.</summary>
    private sealed class Flow(Point2 page, PrinterScale printer, SheetSettings sheets, string title)
    {
        private readonly List<PageCanvas> canvases = [];
        private double y = double.NegativeInfinity;

        private PageCanvas Canvas => canvases[^1];

        public void Line(string text, double height)
        {
            foreach (var line in Wrapped(text, height, page.X - 2 * TilePlan.Side))
            {
                Need(1.75 * height);
                y -= 1.75 * height;
                Canvas.Text(new(TilePlan.Side, y), height, line);
            }
        }

        public void Gap(double mm) => y -= mm;

        // The square of 100 mm with the map of pages in it, and bars of 4 in beside it.
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

        public ImmutableArray<Drawing> Pages() => [.. canvases.Select((c, i) => new Drawing(i == 0 ? title : FormattableString.Invariant($"{title}, {i + 1}"), "What a template is for, and a square to check the printer by.", page, c.Entities))];

        private void Need(double height)
        {
            if (y - height >= TilePlan.Side) return;
            canvases.Add(new PageCanvas(new Box2(default, page), default, PrinterScale.True));
            y = page.Y - TilePlan.Side;
        }
    }
}
