using System.Collections.Immutable;
using System.Globalization;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>
/// Labels to stick on parts, a page of them each: name, finished size, bands, board, sawn size, and a sketch of the part with its inside face up, its banded
/// edges and an arrow to the front (or up, where no edge looks to the front). At the foot the project, the face that lies up, and which of its like it is.
/// </summary>
public static class PanelLabels
{
    // A line of text takes 1.6 of its capitals' height: descender and ascender (Lettering.Box).
    private const double Pitch = 1.6;

    private const double Small = 2.5;

    // What stands under a sketch is as wide.
    private const double LeastSketch = 12;

    private static readonly Layer Text = new("LABELS", Role.Lettering, "What labels say");
    private static readonly Layer Part = new("PARTS", Role.Reference, "Sketches of the parts");
    private static readonly Layer Bands = new("BANDS", Role.Outline, "Banded edges");
    private static readonly Layer Cuts = new("CUT_LINES", Role.Hidden, "Lines to cut along");

    /// <summary>The pages; none where there are no panels.</summary>
    /// <param name="panels">The panels, a label each.</param>
    /// <param name="project">What is built.</param>
    /// <param name="settings">How lengths are printed.</param>
    /// <param name="sheet">The page of labels.</param>
    public static ImmutableArray<Drawing> Of(ImmutableArray<Panel> panels, string project, SheetSettings settings, LabelSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentNullException.ThrowIfNull(sheet);
        if (panels.IsEmpty) return [];
        var twins = PanelTwins.Find(panels);
        string First(Panel p) => twins.GetValueOrDefault(p.Id) is { Twinship: Twinship.Same } twin ? twin.Of : p.Id;
        var alike = panels.GroupBy(First).ToDictionary(g => g.Key, g => g.ToList());
        var skip = Math.Min(sheet.Skip, sheet.Count - 1);
        var pages = ImmutableArray.CreateBuilder<Drawing>();
        for (var from = -skip; from < panels.Length; from += sheet.Count)
        {
            var entities = new List<Entity>();
            if (sheet.HasCutLines) entities.AddRange(CutLines(sheet));
            for (var i = Math.Max(from, 0); i < Math.Min(from + sheet.Count, panels.Length); i++)
            {
                var like = alike[First(panels[i])];
                var which = like.Count > 1 ? string.Create(CultureInfo.InvariantCulture, $", {like.IndexOf(panels[i]) + 1} of {like.Count}") : "";
                entities.AddRange(Label(panels[i], project, which, settings, sheet.Room(i - from)));
            }

            var number = (pages.Count + 1).ToString(CultureInfo.InvariantCulture);
            pages.Add(new Drawing($"Labels {number}", $"Labels for the parts of {project}, page {number}. Print at 100 %.", sheet.Page, entities));
        }

        return pages.ToImmutable();
    }

    private static IEnumerable<Entity> Label(Panel panel, string project, string which, SheetSettings settings, Box2 room)
    {
        // The name at the top, as large as it fits and leaves room for the size; the foot at the bottom; between them lines at the left and the sketch
        // at the right.
        var least = FinishedSize(panel, settings, room.Width).Sum(l => Pitch * l.Height);
        var height = new[] { 5, 3.5, Small }.First(h => h == Small || (Lettering.Width(panel.Id, h) <= room.Width && Pitch * h <= Math.Min(room.Height / 4, room.Height - Pitch * Small - least)));
        yield return Line(new(room.Min.X, room.Max.Y - Pitch * height), height, Ending(panel.Id, height, room.Width));
        var foot = $"{panel.NameOf(Surface.Inside)} up{which}";
        var footWidth = Lettering.Width(foot, Small);
        yield return new TextEntity(Text, new(room.Max.X, room.Min.Y + 0.33 * Small), Small, foot, Anchor.BaseRight);
        if (SheetFrame.Fitted(project, Small, Math.Max(room.Width - footWidth - 3, 0)) is { Length: > 1 } fitted) yield return Line(room.Min, Small, fitted);

        var sketch = new Box2(new(room.Max.X - Math.Max(LeastSketch, 0.26 * room.Width), room.Min.Y + Pitch * Small), new(room.Max.X, room.Max.Y - Pitch * height));
        // On a small label the size comes before the sketch.
        var (beside, top) = (sketch.Min.X - room.Min.X - 2, sketch.Max.Y);
        var hasSketch = FinishedSize(panel, settings, beside).Sum(l => Pitch * l.Height) <= sketch.Height + Tolerance.Length;
        foreach (var (said, size) in Said(panel, settings, hasSketch ? beside : room.Width))
        {
            if (top - Pitch * size < sketch.Min.Y - Tolerance.Length) break;
            top -= Pitch * size;
            yield return Line(new(room.Min.X, top), size, said);
        }

        if (!hasSketch) yield break;
        foreach (var entity in Sketch(panel, sketch)) yield return entity;
    }

    // What stands between name and foot, the most needed first. Numbers are never cut short: a size goes on on the next line.
    private static IEnumerable<(string Text, double Height)> Said(Panel panel, SheetSettings settings, double width)
    {
        foreach (var line in FinishedSize(panel, settings, width)) yield return line;
        if (!panel.Bands.IsEmpty)
        {
            var lengths = Plain(settings.Lengths);
            var bands = panel.Bands.GroupBy(b => lengths.PrintFine(b.Thickness.Value)).Select(g => $"{g.Key} {string.Join(" ", g.Select(b => panel.NameOf(b.Edge)))}");
            foreach (var line in Lettering.Lines($"bands {string.Join(", ", bands)}".Split(' '), Small, width)) yield return (line, Small);
        }

        yield return (SheetFrame.Fitted(panel.Board.Label.Length > 0 ? panel.Board.Label : panel.Board.Name, Small, width), Small);
        if (panel.Bands.IsEmpty) yield break;
        foreach (var line in Sizes([panel.CutLength.Value, panel.CutWidth.Value], settings, width, "saw ")) yield return line;
    }

    private static IEnumerable<(string Text, double Height)> FinishedSize(Panel panel, SheetSettings settings, double width) =>
        Sizes([panel.Length.Value, panel.Width.Value, panel.Thickness.Value], settings, width, "");

    // In one line where it fits: as drawings print it, then with plain fractions, which need no larger lettering, then in one unit; else in several.
    private static IEnumerable<(string Text, double Height)> Sizes(double[] sizes, SheetSettings settings, double width, string before)
    {
        var plain = Plain(settings.Lengths);
        var stacked = Math.Max(settings.Small, Small);
        (LengthStyle Style, double Height)[] ways = [(settings.Lengths, stacked), (plain, Small), (plain.InOneUnit, Small)];
        foreach (var (style, height) in ways)
        {
            var line = before + string.Join(" × ", sizes.Select(style.Print));
            if (Lettering.Width(line, height) > width) continue;
            yield return (line, height);
            yield break;
        }

        // A size and its fraction stay together.
        foreach (var line in Lettering.Lines(sizes.Select((s, i) => (i == 0 ? before : "× ") + plain.InOneUnit.Print(s)), Small, width)) yield return (line, Small);
    }

    private static LengthStyle Plain(LengthStyle lengths) => lengths.Fractions == FractionForm.Stacked ? lengths with { Fractions = FractionForm.Plain } : lengths;

    // Not to scale: the part as it lies in its drawing, so slender that one still sees where its edges are.
    private static IEnumerable<Entity> Sketch(Panel panel, Box2 box)
    {
        const double Around = 1.5, Least = 0.45, BandOff = 0.9, Head = 1.2;
        var (edge, word) = panel.EdgeFacing(Direction.Front) is { } front ? (front, "to front") : (panel.EdgeFacing(Direction.Top)!.Value, "to top");
        var caption = Pitch * Small;
        yield return new TextEntity(Text, new(box.Centre.X, box.Min.Y + 0.33 * Small), Small, word, Anchor.BaseCentre);

        var room = new Point2(box.Width - 2 * Around, box.Height - caption - 2 * Around);
        if (room.X < 4 || room.Y < 3) yield break;
        var shape = new Point2(Math.Max(panel.Length.Value, Least * panel.Width.Value), Math.Max(panel.Width.Value, Least * panel.Length.Value));
        var half = shape * (Math.Min(room.X / shape.X, room.Y / shape.Y) / 2);
        var middle = new Point2(box.Centre.X, box.Max.Y - Around - room.Y / 2);
        var (min, max) = (middle - half, middle + half);
        yield return new ContourEntity(Part, Contour.Rectangle(min.X, min.Y, max.X, max.Y));
        foreach (var band in panel.Bands)
            yield return new SegmentEntity(Bands, band.Edge switch
            {
                Surface.Start => new(new(min.X - BandOff, min.Y), new(min.X - BandOff, max.Y)),
                Surface.End => new(new(max.X + BandOff, min.Y), new(max.X + BandOff, max.Y)),
                Surface.Near => new(new(min.X, min.Y - BandOff), new(max.X, min.Y - BandOff)),
                _ => new(new(min.X, max.Y + BandOff), new(max.X, max.Y + BandOff)),
            });

        var way = edge switch { Surface.Start => new Point2(-1, 0), Surface.End => new(1, 0), Surface.Near => new(0, -1), _ => new Point2(0, 1) };
        var reach = Math.Abs(way.X) * half.X + Math.Abs(way.Y) * half.Y;
        var (tip, tail) = (middle + way * (reach * 0.8), middle - way * (reach * 0.6));
        var neck = tip - way * Math.Min(2 * Head, reach);
        yield return new SegmentEntity(Part, new(tail, neck));
        yield return new ArrowEntity(Part, tip, neck + way.Left * (Head / 1.5), neck - way.Left * (Head / 1.5));
    }

    private static IEnumerable<Entity> CutLines(LabelSheet sheet)
    {
        var all = sheet.Bounds;
        IEnumerable<double> Cuts(int count, double from, double size, double gap) => Enumerable.Range(0, count).SelectMany(i => new[] { from + i * (size + gap), from + i * (size + gap) + size }).Select(v => Math.Round(v, 6)).Distinct();
        foreach (var x in Cuts(sheet.Columns, all.Min.X, sheet.Label.X, sheet.Gap.X)) yield return new SegmentEntity(PanelLabels.Cuts, new(new(x, all.Min.Y), new(x, all.Max.Y)));
        foreach (var y in Cuts(sheet.Rows, all.Min.Y, sheet.Label.Y, sheet.Gap.Y)) yield return new SegmentEntity(PanelLabels.Cuts, new(new(all.Min.X, y), new(all.Max.X, y)));
    }

    // From the lower left corner of the line's box.
    private static TextEntity Line(Point2 corner, double height, string text) => new(Text, corner + new Point2(0, 0.33 * height), height, text);

    // The end of a name tells more than the bays it begins with.
    private static string Ending(string name, double height, double width)
    {
        var shown = name;
        while (shown.Length > 1 && Lettering.Width(shown == name ? shown : "…" + shown, height) > width) shown = shown[1..];
        return shown == name ? name : "…" + shown;
    }
}
