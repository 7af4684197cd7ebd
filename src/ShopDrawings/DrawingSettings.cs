using System.Collections.Immutable;
using ShopDrawings.Drafting;
using ShopDrawings.Dxf;
using ShopDrawings.Print;
using ShopDrawings.Svg;

namespace ShopDrawings;

/// <summary>How the sheets of a project are drawn, and the files they become. Immutable.</summary>
/// <param name="Sheets">What all sheets share.</param>
public sealed record DrawingSettings(SheetSettings Sheets)
{
    /// <summary>The word for all sheets in one PDF, a page each.</summary>
    public const string Book = "pdf";

    /// <summary>
    /// The folder of sheets as DXF. They are to scale on paper, not full size: its name keeps them apart from what a machine is fed with.
    /// </summary>
    public const string DxfFolder = "drawings/dxf-to-scale-not-for-machines";

    /// <summary>The formats they are written in, of <c>svg</c>, <c>png</c>, <c>dxf</c>, a file for each sheet, and <see cref="Book"/>.</summary>
    public ImmutableArray<string> Formats { get; init; } = ["svg", Book];

    /// <summary>Pixels to an inch of paper of a PNG.</summary>
    public double DotsPerInch { get; init; } = 150;

    /// <summary>The release of a DXF. By default its texts are ASCII, which every reader shows.</summary>
    public DxfRelease Release { get; init; } = DxfRelease.R2000;

    /// <summary>The writer of all sheets in one file.</summary>
    internal PdfExporter BookExporter => new() { Style = Sheets.Standard.Style };

    /// <summary>A sheet in all formats that have a file for each.</summary>
    /// <param name="path">Its path without an extension: <c>drawings/front</c>, <c>panels/left-side</c>.</param>
    /// <param name="sheet">The sheet.</param>
    internal IEnumerable<JobDrawing> Files(string path, Drawing sheet)
    {
        var style = Sheets.Standard.Style;
        foreach (var format in Formats.Where(f => f != Book))
            yield return format switch
            {
                "svg" => new(path, format, sheet) { Exporter = new SvgExporter { Style = style } },
                "png" => new(path, format, sheet) { Exporter = new PngExporter { Style = style, DotsPerInch = DotsPerInch } },
                // What is measured anew is in the unit that is printed.
                "dxf" => new($"{DxfFolder}/{(path.StartsWith("drawings/", StringComparison.Ordinal) ? path["drawings/".Length..] : path)}-sheet", format, sheet)
                {
                    Exporter = new DxfExporter { Style = style, Release = Release, Unit = Sheets.Lengths.IsInches ? DrawingUnit.Inch : DrawingUnit.Millimetre },
                },
                _ => throw new InvalidOperationException($"“{format}” is no format of sheets."),
            };
    }
}
