namespace ShopDrawings;

/// <summary>Every sheet of paper of a job in one PDF, a page and a bookmark each: <c>drawings/sheets.pdf</c>; nothing where the design's drawings ask for none.</summary>
public sealed class SheetBookExporter : IJobExporter
{
    /// <inheritdoc/>
    public string Format => "sheet-book";

    /// <inheritdoc/>
    public IEnumerable<Output> Export(Job job)
    {
        ArgumentNullException.ThrowIfNull(job);
        return job.Sheets.IsEmpty || !job.Design.Drawings.Formats.Contains(DrawingSettings.Book) ? []
            : [new Output("drawings/sheets.pdf", stream => job.Design.Drawings.BookExporter.Write(job.Sheets, stream, job.Design.Assembly.Name))];
    }
}
