using PdfSharp.Drawing;
using PdfSharp.Pdf;
using ShopDrawings.Drafting;

namespace ShopDrawings.Print;

/// <summary>
/// Writes drawings as PDF to be printed at true scale: a page is exactly as large as its paper, one millimetre of the drawing is one on paper,
/// and viewers are asked not to scale it. Text is text, in the font it was measured with. Immutable and thread-safe.
/// </summary>
public sealed class PdfExporter : IDrawingExporter
{
    /// <summary>The longest side of a page in mm: 14400 units of 1/72 in (ISO 32000-1, annex C, from memory). Readers cut off larger ones.</summary>
    private const double LongestSide = 200 * 25.4;

    /// <inheritdoc/>
    public string Format => "pdf";

    /// <summary>How the layers look.</summary>
    public Style Style { get; init; } = Style.Standard;

    /// <inheritdoc/>
    /// <remarks>
    /// Coordinates are rounded to 1e-4 mm; circles and arcs become curves within 0.001 mm of them. A drawing without paper gets a page as large
    /// as itself and 10 mm all round. Letters run from left to right, in every script.
    /// </remarks>
    /// <exception cref="ArgumentException">
    /// A number of the drawing is not finite, a coordinate is ten kilometres or more away, or the page would be longer than 5080 mm.
    /// </exception>
    public void Write(Drawing drawing, Stream output)
    {
        ArgumentNullException.ThrowIfNull(drawing);
        Write([drawing], output, drawing.Title, hasBookmarks: false);
    }

    /// <summary>Writes several drawings in one file, a page and a bookmark each. Leaves <paramref name="output"/> open; the same drawings give the same bytes.</summary>
    /// <param name="sheets">The drawings in order; at least one.</param>
    /// <param name="output">Where the file goes.</param>
    /// <param name="title">One line that says what the file holds.</param>
    /// <exception cref="ArgumentException">There is no drawing, or one cannot be written; see the other overload.</exception>
    public void Write(IReadOnlyList<Drawing> sheets, Stream output, string title)
    {
        ArgumentNullException.ThrowIfNull(sheets);
        ArgumentNullException.ThrowIfNull(title);
        if (sheets.Count == 0) throw new ArgumentException("A PDF needs a page.", nameof(sheets));
        Write(sheets, output, title, hasBookmarks: true);
    }

    private void Write(IReadOnlyList<Drawing> sheets, Stream output, string title, bool hasBookmarks)
    {
        ArgumentNullException.ThrowIfNull(output);
        using var document = new PdfDocument();
        document.Options.NoCompression = true;
        document.Options.ColorMode = PdfColorMode.Undefined; // no group for transparency, which there is none of
        document.Language = "en-GB";
        document.ViewerPreferences.Elements.SetName("/PrintScaling", "/None");
        document.ViewerPreferences.DisplayDocTitle = true;
        document.Info.Elements.Remove("/CreationDate");
        document.Info.Title = TextLine.Plain(title);
        if (sheets is [{ Description: { Length: > 0 } description }]) document.Info.Subject = TextLine.Plain(description);
        document.Info.Creator = "ShopDrawings";

        var font = new PdfFont();
        foreach (var sheet in sheets)
        {
            var page = AddPage(document, sheet, font);
            if (hasBookmarks) document.Outlines.Add(TextLine.Plain(sheet.Title), page);
        }

        // Only now is it known which characters the font must hold.
        var fonts = new PdfDictionary(document);
        if (font.AddTo(document) is { } embedded) fonts.Elements.SetReference(PdfPlotter.FontName, embedded);
        foreach (var page in document.Pages) page.Resources.Elements["/Font"] = fonts.Clone();

        using var file = new MemoryStream();
        document.Save(file);
        output.Write(PdfTail.Renewed(file.ToArray()));
    }

    private PdfPage AddPage(PdfDocument document, Drawing sheet, PdfFont font)
    {
        var paper = sheet.Paper;
        var (width, height) = (Plot.Sound(paper.Width), Plot.Sound(paper.Height));
        if (!(Math.Max(width, height) <= LongestSide)) throw new ArgumentException($"A PDF page cannot be {Math.Max(width, height):0.#} mm long, {LongestSide:0.#} mm at most.", nameof(sheet));
        var plotter = new PdfPlotter(paper.Min, font);
        Plot.Draw(sheet, Style, plotter);

        var page = document.AddPage();
        (page.Width, page.Height) = (XUnit.FromMillimeter(width), XUnit.FromMillimeter(height));
        var content = new PdfDictionary(document);
        content.CreateStream(plotter.Content);
        document.Internals.AddObject(content);
        page.Contents.Elements.Add(content.Reference!);
        return page;
    }
}
