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
    /// <summary>Where that format is asked for.</summary>
    public SourceSpan FormatAt { get; init; }

    /// <summary>The unit of its files as their names say it: that of a DXF, else mm, which drawings are in.</summary>
    public string UnitSuffix => Format == Dxf.Format && Dxf.Unit == DrawingUnit.Inch ? "in" : "mm";
}

/// <summary>What one machine does for a job.</summary>
/// <param name="Profile">The machine and its files.</param>
/// <param name="Plan">Its programs, and what it cannot do.</param>
public sealed record MachineJob(MachineProfile Profile, MachinePlan Plan);
