using ShopDrawings.Print;

namespace ShopDrawings;

/// <summary>Every sheet of paper of a job in one PDF, a page and a bookmark each: <c>drawings/sheets.pdf</c>.</summary>
public sealed class SheetBookExporter : IJobExporter
{
    /// <inheritdoc/>
    public string Format => "sheet-book";

    /// <inheritdoc/>
    public IEnumerable<Output> Export(Job job)
    {
        ArgumentNullException.ThrowIfNull(job);
        var sheets = job.Drawings.Select(d => d.Drawing).Where(d => d.Page is not null).ToList();
        return sheets.Count == 0 ? [] : [new Output("drawings/sheets.pdf", stream => new PdfExporter().Write(sheets, stream, job.Design.Assembly.Name))];
    }
}
