using System.Globalization;
using ShopDrawings.Drafting;
using ShopDrawings.Dxf;
using ShopDrawings.Kernel;

namespace ShopDrawings;

/// <summary>A machine, and the files it is fed with. Immutable.</summary>
/// <param name="Machine">What it can do.</param>
/// <param name="Drawing">What stands in its drawings, and how their layers are called.</param>
/// <param name="Dxf">How its drawings are written where they are DXF.</param>
/// <param name="Format">The format they are written in: <c>dxf</c>, or one a plug-in writes.</param>
public sealed record MachineProfile(Machine Machine, MachineDrawingSettings Drawing, DxfExporter Dxf, string Format)
{
    /// <summary>The sheet beside the model, or nothing.</summary>
    public PaperSize? Paper { get; init; }

    /// <summary>How its programs are written, or nothing where none are asked for.</summary>
    public ProgramSettings? Programs { get; init; }

    /// <summary>The exporter of one of its drawings: with a sheet, at the first scale of ISO 5455 (from memory) at which the drawing fits.</summary>
    /// <param name="drawing">The drawing.</param>
    /// <param name="title">What stands in the title, a line each.</param>
    public DxfExporter For(Drawing drawing, params ReadOnlySpan<string> title)
    {
        const double Margins = 30, Lines = 7;
        if (Paper is not { } paper || drawing.Extents is not { } extents) return Dxf;
        var room = new Point2(paper.Width - Margins, paper.Height - Margins - Lines * (title.Length + 1));
        var scales = DrawingStandard.Iso.Scales;
        var scale = scales.FirstOrDefault(n => extents.Width / n <= room.X && extents.Height / n <= room.Y, scales[^1]);
        return Dxf with { Layout = new SheetLayout(paper.Width, paper.Height, scale, [.. title, string.Create(CultureInfo.InvariantCulture, $"1:{scale}")]) };
    }

    /// <summary>Where that format is asked for.</summary>
    public SourceSpan FormatAt { get; init; }

    /// <summary>The unit of its files as their names say it: that of a DXF, else mm, which drawings are in.</summary>
    public string UnitSuffix => Format == Dxf.Format && Dxf.Unit == DrawingUnit.Inch ? "in" : "mm";
}

/// <summary>Width and height of a sheet of paper in mm.</summary>
public sealed record PaperSize(double Width, double Height);

/// <summary>What one machine does for a job.</summary>
/// <param name="Profile">The machine and its files.</param>
/// <param name="Plan">Its programs, and what it cannot do.</param>
public sealed record MachineJob(MachineProfile Profile, MachinePlan Plan);
