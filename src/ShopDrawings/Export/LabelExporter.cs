using System.Globalization;
using ShopDrawings.Drafting;
using ShopDrawings.Svg;

namespace ShopDrawings;

/// <summary>
/// Labels to print and stick on parts: <c>labels/labels.pdf</c>, and a page each as <c>labels/labels.svg</c>, <c>labels/labels_2.svg</c> and so on. Nothing
/// where the design has none, and none for panels that must not be cut.
/// </summary>
public sealed class LabelExporter : IJobExporter
{
    /// <inheritdoc/>
    public string Format => "labels";

    /// <inheritdoc/>
    public IEnumerable<Output> Export(Job job)
    {
        ArgumentNullException.ThrowIfNull(job);
        if (job.Design.Labels is not { } sheet) yield break;
        var (withheld, drawings) = (job.Withheld, job.Design.Drawings);
        var pages = PanelLabels.Of([.. job.Design.Assembly.Panels.Where(p => !withheld.Contains(p.Id))], job.Design.Assembly.Name, drawings.Sheets, sheet);
        if (pages.IsEmpty) yield break;
        yield return new Output("labels/labels.pdf", stream => drawings.BookExporter.Write(pages, stream, $"{job.Design.Assembly.Name}: labels"));
        var exporter = new SvgExporter { Style = drawings.Sheets.Standard.Style };
        for (var i = 0; i < pages.Length; i++)
        {
            var page = pages[i];
            yield return new Output(i == 0 ? "labels/labels.svg" : string.Create(CultureInfo.InvariantCulture, $"labels/labels_{i + 1}.svg"), stream => exporter.Write(page, stream));
        }
    }
}
