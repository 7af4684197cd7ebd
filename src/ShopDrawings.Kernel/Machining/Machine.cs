using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>What a machine does with a panel.</summary>
public enum MachineKind
{
    /// <summary>Drills and mills to any depth.</summary>
    Router,

    /// <summary>Cuts through and scores; makes nothing of a given depth.</summary>
    Laser,

    /// <summary>No machine: a drawing for other programs, in which every tool is at hand.</summary>
    Drawing,
}

/// <summary>What the lines of cuts are.</summary>
public enum CutLines
{
    /// <summary>The wanted edge: whoever reads it compensates for the tool.</summary>
    Finished,

    /// <summary>The middle of the tool, half its diameter in the waste: it must not be compensated again.</summary>
    ToolCentre,
}

/// <summary>What becomes of inner corners, which a round tool cannot reach.</summary>
public enum InnerCorners
{
    /// <summary>They stay round, with the tool's radius.</summary>
    Round,

    /// <summary>Those of grooves and housings, in which parts sit, are cut free; those of openings and outlines stay round.</summary>
    Joinery,

    /// <summary>All are cut free by a bay of the tool's radius that touches the corner.</summary>
    Relieved,
}

/// <summary>Which face of a panel lies up first.</summary>
public enum FaceUp
{
    /// <summary>The inside.</summary>
    Inside,

    /// <summary>The outside.</summary>
    Outside,

    /// <summary>The one with more to make in it; the inside where both are alike.</summary>
    Busier,
}

/// <summary>What becomes of the features of the other face.</summary>
public enum SecondFace
{
    /// <summary>They are not made on this machine.</summary>
    None,

    /// <summary>They are made with the panel turned over, from a program of its own.</summary>
    TurnedOver,

    /// <summary>They are in the same drawing, as seen through the panel.</summary>
    SeenThrough,
}

/// <summary>The axis a panel is turned over about; it runs through the middle of the panel.</summary>
public enum FlipAxis
{
    /// <summary>Along the length: near and far edge change places.</summary>
    Length,

    /// <summary>Along the width: start and end change places.</summary>
    Width,
}

/// <summary>A corner of what lies on the machine, seen from above, x to the right.</summary>
public enum Corner
{
    /// <summary>Least x, least y.</summary>
    LowerLeft,

    /// <summary>Greatest x, least y.</summary>
    LowerRight,

    /// <summary>Least x, greatest y.</summary>
    UpperLeft,

    /// <summary>Greatest x, greatest y.</summary>
    UpperRight,
}

/// <summary>Pins in the machine's table on the flip axis beyond both ends of a panel, so that it returns to its place when it is turned over. The origin stays where it was.</summary>
/// <param name="Diameter">Diameter of the pins and their bores, in mm.</param>
/// <param name="Distance">From the sawn edge to their centres, in mm.</param>
public sealed record LocatingPins(double Diameter, double Distance);

/// <summary>The room of a machine's table that its tools reach. Lengths in mm.</summary>
/// <param name="X">Along x of its files.</param>
/// <param name="Y">Along y of its files.</param>
public sealed record WorkingArea(double X, double Y);

/// <summary>What holds small parts, and the waste of openings, until they are cut free by hand.</summary>
/// <param name="Area">Parts of a smaller area are held, in mm².</param>
/// <param name="Width">Parts that are narrower are held, in mm.</param>
/// <param name="TabWidth">Width of the tabs left along the outline in mm, or 0 for none.</param>
/// <param name="Thickness">Thickness of the tabs, or without tabs of the skin left everywhere under the cut, in mm.</param>
public sealed record SmallParts(double Area, double Width, double TabWidth, double Thickness)
{
    /// <summary>Whether a part is held.</summary>
    public bool Hold(Contour outline) =>
        outline.Area < Area - Tolerance.Length || Math.Min(outline.Bounds.Width, outline.Bounds.Height) < Width - Tolerance.Length;
}

/// <summary>A machine as far as it decides what is cut: its tools, and how panels lie on it. Lengths in mm. Immutable.</summary>
public sealed record Machine
{
    /// <summary>Its name.</summary>
    public required string Name { get; init; }

    /// <summary>What it does.</summary>
    public required MachineKind Kind { get; init; }

    /// <summary>Its tools; the first cutter is the one it prefers. Empty for a drawing.</summary>
    public ImmutableArray<Tool> Tools { get; init; } = [];

    /// <summary>What the lines of cuts are.</summary>
    public CutLines Paths { get; init; } = CutLines.Finished;

    /// <summary>What becomes of inner corners.</summary>
    public InnerCorners Corners { get; init; } = InnerCorners.Joinery;

    /// <summary>Which face lies up first.</summary>
    public FaceUp FaceUp { get; init; } = FaceUp.Inside;

    /// <summary>What becomes of the other face's features.</summary>
    public SecondFace SecondFace { get; init; } = SecondFace.TurnedOver;

    /// <summary>The axis panels are turned over about.</summary>
    public FlipAxis Flip { get; init; } = FlipAxis.Length;

    /// <summary>The pins that bring a turned panel back to its place, or nothing where stops do.</summary>
    public LocatingPins? Pins { get; init; }

    /// <summary>The corner that is the origin of every file.</summary>
    public Corner Origin { get; init; } = Corner.LowerLeft;

    /// <summary>Whether the origin is the corner of the sawn panel; else of the finished one, which has its bands.</summary>
    public bool IsOriginSawn { get; init; }

    /// <summary>What holds small parts, or nothing.</summary>
    public SmallParts? SmallParts { get; init; }

    /// <summary>How deep the engraver scribes.</summary>
    public double EngravingDepth { get; init; } = 0.3;

    /// <summary>Height of the panels' names, engraved in the face that lies up first, or nothing.</summary>
    public double? NameHeight { get; init; }

    /// <summary>The thickest board it cuts, or nothing.</summary>
    public double? Thickest { get; init; }

    /// <summary>What its tools reach, or nothing where that is more than every panel.</summary>
    public WorkingArea? Bed { get; init; }

    /// <summary>Whether a part of a size along x and y can be cut out as it lies: the tool that goes round it needs its own width on every side.</summary>
    public bool Holds(double x, double y) => Bed is not { } bed || (!Tolerance.Exceeds(x + 2 * OutlineTool, bed.X) && !Tolerance.Exceeds(y + 2 * OutlineTool, bed.Y));

    /// <summary>Diameter of the tool it prefers for outlines, or its kerf; 0 for a drawing.</summary>
    internal double OutlineTool => Tools.FirstOrDefault(t => t.Kind is ToolKind.Cutter or ToolKind.Beam)?.Diameter ?? 0;

    /// <summary>How far general outlines may miss their offset where arcs cannot be kept, in mm.</summary>
    public double ChordTolerance { get; init; } = 0.01;
}
