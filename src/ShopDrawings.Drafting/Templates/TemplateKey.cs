using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>The page before a template: lengths to measure, what to do, how its pages lie, what to drill, and every place it serves.</summary>
internal static class TemplateKey
{
    /// <summary>The page, and more of them where there are many places.</summary>
    public static ImmutableArray<Drawing> Of(Template template, string project, TilePlan plan, TemplateSettings settings, SheetSettings sheets)
    {
        var page = new Point2(settings.Paper.Width, settings.Paper.Height ?? 297);
        var flow = new PageFlow(page, settings.Printer, sheets, $"{template.Name}: where it goes", "What a template is for, and a square to check the printer by.");
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
            : "Fold the tabs along the thick lines (where two meet, cut the short thin line first) and lay them over the panel's edges. Where that leaves a direction open, draw line A or B on the panel and lay the template's on it.";
        yield return "Edges are finished ones, with their bands. Tape the paper down, prick every cross with an awl, and do not punch: a punch chips melamine. Take the paper away, check one distance with the tape, then drill with a depth stop.";
        if (template.HasMirror) yield return "Two versions are printed, one the mirror image of the other; each place says which it needs.";
        yield return "Paper grows and shrinks with the air by some 0.25 %. Patterns over 300 mm are therefore not printed but on the story sticks.";
    }

    private static string Count(int count, string what) => FormattableString.Invariant($"{count} {what}{(count == 1 ? "" : "s")}");
}
