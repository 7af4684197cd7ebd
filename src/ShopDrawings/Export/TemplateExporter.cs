using System.Collections.Immutable;
using System.Globalization;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;
using ShopDrawings.Print;
using ShopDrawings.Svg;

namespace ShopDrawings;

/// <summary>
/// Templates in true size, for holes that are marked by hand: <c>templates/*.pdf</c> with all pages of one, <c>templates/pages/*.svg</c> with each page, and
/// <c>lists/templates.csv</c> with every place; story sticks beside them, <c>templates/sticks</c>, and <c>lists/tape.csv</c>, what to mark with a tape. Nothing where no hole is marked. Panels that must not be cut get none.
/// </summary>
public sealed class TemplateExporter : IJobExporter
{
    /// <inheritdoc/>
    public string Format => "templates";

    /// <inheritdoc/>
    public IEnumerable<Output> Export(Job job)
    {
        ArgumentNullException.ThrowIfNull(job);
        var (design, sheets) = (job.Design, job.Design.Drawings.Sheets);
        var set = TemplateSet.Of(design.Assembly, design.Templates.Choice, job.Withheld);
        var (pdf, svg) = (new PdfExporter { Style = sheets.Standard.Style }, new SvgExporter { Style = sheets.Standard.Style });
        IEnumerable<Output> Pages(string name, ImmutableArray<Drawing> pages) =>
        [
            new($"templates/{name}.pdf", s => pdf.Write(pages, s, $"{design.Assembly.Name}: {name}")),
            .. pages.Select((page, i) => new Output(string.Create(CultureInfo.InvariantCulture, $"templates/pages/{name}_{i + 1}.svg"), s => svg.Write(page, s))),
        ];
        foreach (var template in set.All)
            foreach (var file in Pages(template.Name, TemplatePages.Of(template, design.Assembly.Name, design.Templates, sheets))) yield return file;
        if (!set.All.IsEmpty) yield return new("lists/templates.csv", s => CsvExporter.Write(s, Places(set)));
        var sticks = StoryStick.Of(design.Assembly, set, sheets.Lengths);
        foreach (var stick in sticks)
            foreach (var file in Pages("sticks/" + stick.Name, StickPages.Of(stick, design.Assembly.Name, design.Templates, sheets))) yield return file;
        if (!sticks.IsEmpty) yield return new("lists/tape.csv", s => CsvExporter.Write(s, Tape(sticks, sheets.Lengths)));
    }

    private static IEnumerable<string[]> Tape(ImmutableArray<StoryStick> sticks, LengthStyle lengths)
    {
        yield return ["stick", "hook_at", "mark", "mm", "tape", "what"];
        foreach (var stick in sticks)
            foreach (var (mark, index) in stick.Marks.Select((m, i) => (m, i + 1)))
                yield return [stick.Name, stick.From, CsvExporter.Count(index), CsvExporter.Number(mark.At, 4), (lengths with { Fractions = FractionForm.Plain }).PrintPlace(mark.At), string.Join("; ", mark.What)];
    }

    private static IEnumerable<string[]> Places(TemplateSet set)
    {
        yield return ["template", "version", "panel", "face", "arrow_to", "line_a_from", "line_a_mm", "line_b_from", "line_b_mm", "holes", "for"];
        foreach (var template in set.All)
            foreach (var place in template.Places)
                yield return
                [
                    template.Name, place.Turn.IsMirrored ? "mirrored" : "as it is", place.Panel.Id, place.Panel.NameOf(place.Face), place.Panel.NameOf(place.ArrowTo),
                    place.Panel.NameOf(place.LineA.Edge), CsvExporter.Number(place.LineA.Distance, 4), place.Panel.NameOf(place.LineB.Edge), CsvExporter.Number(place.LineB.Distance, 4),
                    CsvExporter.Count(place.Bores.Length), place.Origin == place.Panel.Id ? "" : place.Origin,
                ];
    }
}
