using System.Collections.Immutable;
using ShopDrawings.Drafting;
using ShopDrawings.Dxf;
using ShopDrawings.Svg;

namespace ShopDrawings;

/// <summary>The exporters a job is written with, each found by its format's name. Immutable.</summary>
public sealed class ExporterSet
{
    private ExporterSet(ImmutableArray<IDrawingExporter> drawings, ImmutableArray<IJobExporter> jobs) => (Drawings, Jobs) = (drawings, jobs);

    /// <summary>DXF and SVG drawings, CSV lists, JSON.</summary>
    public static ExporterSet Standard { get; } = new([new DxfExporter(), new SvgExporter()], [new CsvExporter(), new JsonExporter()]);

    /// <summary>Writers of drawings.</summary>
    public ImmutableArray<IDrawingExporter> Drawings { get; }

    /// <summary>Writers of whole jobs.</summary>
    public ImmutableArray<IJobExporter> Jobs { get; }

    /// <summary>The same set with another writer of drawings; it takes the place of one of the same format.</summary>
    public ExporterSet With(IDrawingExporter exporter) => new([.. Drawings.Where(d => d.Format != exporter.Format), exporter], Jobs);

    /// <summary>The same set with another writer of jobs; it takes the place of one of the same format.</summary>
    public ExporterSet With(IJobExporter exporter) => new(Drawings, [.. Jobs.Where(j => j.Format != exporter.Format), exporter]);
}
