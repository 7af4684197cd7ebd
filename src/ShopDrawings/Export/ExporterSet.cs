using System.Collections.Immutable;
using ShopDrawings.Drafting;
using ShopDrawings.Dxf;
using ShopDrawings.Print;
using ShopDrawings.Svg;

namespace ShopDrawings;

/// <summary>The exporters a job is written with, each found by its format's name. Immutable.</summary>
public sealed class ExporterSet
{
    private ExporterSet(ImmutableArray<IDrawingExporter> drawings, ImmutableArray<IJobExporter> jobs) => (Drawings, Jobs) = (drawings, jobs);

    /// <summary>DXF, SVG, PDF and PNG drawings, CSV lists, JSON, all sheets in one book, programs for the machines that ask for them, labels, templates.</summary>
    public static ExporterSet Standard { get; } = new([new DxfExporter(), new SvgExporter(), new PdfExporter(), new PngExporter()], [new CsvExporter(), new JsonExporter(), new SheetBookExporter(), new CounterSlipExporter(), new ProgramExporter(), new LabelExporter(), new TemplateExporter()]);

    /// <summary>Writers of drawings.</summary>
    public ImmutableArray<IDrawingExporter> Drawings { get; }

    /// <summary>Writers of whole jobs.</summary>
    public ImmutableArray<IJobExporter> Jobs { get; }

    /// <summary>Whether a text can name a format: small letters a–z, digits and dashes.</summary>
    public static bool IsFormat(string? text) => !string.IsNullOrEmpty(text) && text.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c == '-');

    /// <summary>The writer of drawings of a format, or nothing.</summary>
    public IDrawingExporter? Find(string format) => Drawings.FirstOrDefault(d => d.Format == format);

    /// <summary>The same set with another writer of drawings; it takes the place of one of the same format.</summary>
    /// <exception cref="ArgumentException">Its format is no name of one (<see cref="IsFormat"/>).</exception>
    public ExporterSet With(IDrawingExporter exporter)
    {
        ArgumentNullException.ThrowIfNull(exporter);
        Demand(exporter.Format);
        return new([.. Drawings.Where(d => d.Format != exporter.Format), exporter], Jobs);
    }

    /// <summary>The same set with another writer of jobs; it takes the place of one of the same format.</summary>
    /// <exception cref="ArgumentException">Its format is no name of one (<see cref="IsFormat"/>).</exception>
    public ExporterSet With(IJobExporter exporter)
    {
        ArgumentNullException.ThrowIfNull(exporter);
        Demand(exporter.Format);
        return new(Drawings, [.. Jobs.Where(j => j.Format != exporter.Format), exporter]);
    }

    private static void Demand(string? format)
    {
        if (!IsFormat(format)) throw new ArgumentException($"“{format}” names no format; use small letters a–z, digits and dashes");
    }
}
