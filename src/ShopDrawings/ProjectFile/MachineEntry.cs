using System.Collections.Immutable;
using ShopDrawings.Drafting;
using ShopDrawings.Dxf;
using ShopDrawings.Kernel;
using ShopDrawings.Yaml;

namespace ShopDrawings.ProjectFile;

/// <summary>A machine as it is written; what is left out is as in the machine it is like.</summary>
internal sealed record MachineEntry(SourceSpan At)
{
    /// <summary>The machine it is like.</summary>
    public Word? Like { get; init; }

    /// <summary>What it does.</summary>
    public MachineKind? Kind { get; init; }

    /// <summary>Its drills.</summary>
    public ImmutableArray<Tool>? Drills { get; init; }

    /// <summary>Its countersinks.</summary>
    public ImmutableArray<Tool>? Countersinks { get; init; }

    /// <summary>Its cutters, the preferred one first.</summary>
    public ImmutableArray<Tool>? Cutters { get; init; }

    /// <summary>What it scribes with, at most one.</summary>
    public ImmutableArray<Tool>? Engravers { get; init; }

    /// <summary>How deep it scribes.</summary>
    public Size? EngravingDepth { get; init; }

    /// <summary>Width of a laser’s cut.</summary>
    public Size? Kerf { get; init; }

    /// <summary>What the lines of cuts are.</summary>
    public CutLines? Paths { get; init; }

    /// <summary>What becomes of inner corners.</summary>
    public InnerCorners? Corners { get; init; }

    /// <summary>Which face lies up first.</summary>
    public FaceUp? FaceUp { get; init; }

    /// <summary>What becomes of the other face.</summary>
    public SecondFace? SecondFace { get; init; }

    /// <summary>The axis panels are turned over about.</summary>
    public FlipAxis? Flip { get; init; }

    /// <summary>The pins that bring a turned panel back.</summary>
    public Given<LocatingPins>? Pins { get; init; }

    /// <summary>The corner that is the origin.</summary>
    public Corner? Origin { get; init; }

    /// <summary>Whether that is the sawn panel’s corner.</summary>
    public bool? IsOriginSawn { get; init; }

    /// <summary>What holds small parts.</summary>
    public Given<SmallParts>? SmallParts { get; init; }

    /// <summary>Height of engraved names.</summary>
    public Given<Size>? Names { get; init; }

    /// <summary>The thickest board.</summary>
    public Given<Size>? Thickest { get; init; }

    /// <summary>What its tools reach.</summary>
    public Given<WorkingArea>? Bed { get; init; }

    /// <summary>The format of its files.</summary>
    public Word? Format { get; init; }

    /// <summary>The release of a DXF.</summary>
    public DxfRelease? Release { get; init; }

    /// <summary>The unit of its files.</summary>
    public DrawingUnit? Unit { get; init; }

    /// <summary>Whether outlines are single lines and arcs.</summary>
    public bool? InPieces { get; init; }

    /// <summary>How far chords may miss their arcs, where arcs are not kept.</summary>
    public Given<Size>? Chords { get; init; }

    /// <summary>Side of the scale square.</summary>
    public Given<Size>? ScaleSquare { get; init; }

    /// <summary>Whether drilled edges are unfolded beside the face.</summary>
    public bool? HasEdgeViews { get; init; }

    /// <summary>Whether sizes and a table of bores stand beside the panel.</summary>
    public bool? IsAnnotated { get; init; }

    /// <summary>The sheet of a layout beside the model.</summary>
    public Given<PaperSize>? Paper { get; init; }

    /// <summary>How its programs are written.</summary>
    public Given<ProgramSettings>? Programs { get; init; }

    /// <summary>Names and looks of layers.</summary>
    public ImmutableArray<LayerEntry> Layers { get; init; } = [];
}

/// <summary>Something a machine has, or expressly has not.</summary>
/// <param name="Value">What it has, or nothing.</param>
internal sealed record Given<T>(T? Value) where T : class;

/// <summary>How the layers of one kind of machining are called and look.</summary>
internal sealed record LayerEntry(Role Role, string? Name, int? Colour, Size? Weight, SourceSpan At);

/// <summary>A sheet with the panels placed on it by hand.</summary>
internal sealed record SheetEntry(Word Board, Size Length, Size Width, ImmutableArray<LyingEntry> Panels, SourceSpan At);

/// <summary>A panel on a sheet.</summary>
internal sealed record LyingEntry(Word Panel, Position Corner, int QuarterTurns, Surface Up, SourceSpan At);
