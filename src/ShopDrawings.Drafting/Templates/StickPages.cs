using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>Draws a story stick in true size: in pieces one above the other on sheets, in one piece on a roll, then the list of its marks.</summary>
internal static class StickPages
{
    // Width of the strip, from the top of one piece to that of the next, what is white beyond its ends, and the length of a tick, in mm.
    private const double Strip = 34, Pitch = 44, Beyond = 6, Tick = 16;

    /// <summary>All pages of a stick.</summary>
    public static ImmutableArray<Drawing> Of(StoryStick stick, string project, TemplateSettings settings, SheetSettings sheets)
    {
        var total = stick.Length + 2 * Beyond;
        // It lies on its side, and on a roll along it if it is too long to lie across.
        var printer = settings.Paper.Height is null && total + 2 * TilePlan.Side <= settings.Paper.Width ? settings.Printer : settings.Printer.Turned;
        var page = settings.Paper.Height is { } height ? new Point2(height, settings.Paper.Width) : new Point2(Math.Max(200, total / printer.X + 2 * TilePlan.Side), TilePlan.Side + TilePlan.Top + Pitch / printer.Y);
        var room = (page.X - 2 * TilePlan.Side) * printer.X;
        var pieces = Math.Max(1, (int)Math.Ceiling((total - TilePlan.Overlap) / (room - TilePlan.Overlap) - 1e-9));
        var onPage = Math.Max(1, (int)((page.Y - TilePlan.Top - TilePlan.Side) * printer.Y / Pitch));
        var pages = ImmutableArray.CreateBuilder<Drawing>();
        for (var first = 0; first < pieces; first += onPage)
        {
            var entities = new List<Entity>();
            var words = new PageCanvas(new Box2(default, page), default, PrinterScale.True);
            Header(words, stick, project, page, sheets, first / onPage + 1, (pieces + onPage - 1) / onPage);
            entities.AddRange(words.Entities);
            for (var piece = first; piece < Math.Min(pieces, first + onPage); piece++)
            {
                var from = -Beyond + piece * (room - TilePlan.Overlap);
                var window = new Box2(new(from, 0), new(Math.Min(from + room, stick.Length + Beyond), Strip));
                var canvas = new PageCanvas(window, new(TilePlan.Side, page.Y - TilePlan.Top - ((piece - first) * Pitch + Strip) / printer.Y), printer);
                Draw(canvas, stick, sheets, [.. Enumerable.Range(1, pieces - 1).Select(i => -Beyond + i * (room - TilePlan.Overlap) + TilePlan.Overlap / 2)]);
                entities.AddRange(canvas.Entities);
            }

            pages.Add(new Drawing($"{stick.Name}, page {pages.Count + 1}", "A story stick in true size: print at 100 %.", page, entities));
        }

        return [.. pages, .. List(stick, project, settings, sheets)];
    }

    /// <summary>What is held where.</summary>
    public static string Ends(StoryStick stick) => $"from the {stick.From} to the {stick.To}";

    private static void Draw(PageCanvas canvas, StoryStick stick, SheetSettings sheets, ImmutableArray<double> trims)
    {
        canvas.Outline(PageCanvas.Cut, Contour.Rectangle(-Beyond, 0, stick.Length + Beyond, Strip));
        foreach (var end in (ReadOnlySpan<double>)[0, stick.Length]) canvas.Line(PageCanvas.Edge, new(end, 0), new(end, Strip));
        foreach (var mark in stick.Marks) canvas.Line(PageCanvas.Centre, new(mark.At, Strip - Tick), new(mark.At, Strip));
        foreach (var trim in trims)
        {
            canvas.Line(PageCanvas.Trim, new(trim, 0), new(trim, Strip));
            // Crosses stand where no tick reaches.
            canvas.Cross(PageCanvas.Register, new(trim, 5), 4);
        }

        foreach (var (mark, index) in stick.Marks.Select((m, i) => (m, i + 1)))
            if (canvas.Shows(new(mark.At, Strip / 2))) canvas.Label(new(mark.At, Strip - Tick), 0.2, sheets.Small, FormattableString.Invariant($"{index}"));
    }

    private static void Header(PageCanvas canvas, StoryStick stick, string project, Point2 page, SheetSettings sheets, int number, int count)
    {
        var y = page.Y - TilePlan.Side - sheets.Normal;
        canvas.Text(new(TilePlan.Side, y), sheets.Normal, FormattableString.Invariant($"Story stick {stick.Name}{(count > 1 ? $", page {number} of {count}" : "")}"));
        var words = $"{project}: {Ends(stick)}, {sheets.Lengths.PrintPlace(stick.Length)} between the thick lines. Print at 100 %; join the pieces dashed line on dashed line, cross on cross. "
            + "Paper moves by some 0.25 %, 2.5 mm in a metre: over 300 mm mark a lath by the tape list, hooked on one end, and take the print for the order of the marks.";
        foreach (var line in TemplateKey.Wrapped(words, sheets.Small, page.X - 2 * TilePlan.Side)) canvas.Text(new(TilePlan.Side, y -= 1.7 * sheets.Small), sheets.Small, line);
    }

    private static ImmutableArray<Drawing> List(StoryStick stick, string project, TemplateSettings settings, SheetSettings sheets)
    {
        var flow = new PageFlow(new(settings.Paper.Width, settings.Paper.Height ?? 297), settings.Printer, sheets, $"{stick.Name}: tape list", "Places to mark with a tape hooked on one end.");
        flow.Line($"{stick.Name}: tape list", 2 * sheets.Standard.Small);
        flow.Line($"{project}. Hook the tape on the {stick.From} end and leave it there: every length is from that end. {sheets.Lengths.Statement}.", sheets.Small);
        flow.Gap(3);
        foreach (var (mark, index) in stick.Marks.Select((m, i) => (m, i + 1))) flow.Line(FormattableString.Invariant($"{index}.  {sheets.Lengths.PrintPlace(mark.At)}:  {string.Join("; ", mark.What)}"), sheets.Small);
        return flow.Pages();
    }
}
