using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>One thing a machine does to a face, in the machine's frame: x to the right, y up, seen on the face that lies up. Lengths in mm.</summary>
/// <param name="Face">The face of the panel it enters; of what goes through, the one that lies up.</param>
/// <param name="Tool">What does it.</param>
/// <param name="Depth">Below that face, or nothing where it goes through.</param>
public abstract record MachineOperation(Surface Face, Tool Tool, double? Depth);

/// <summary>A bore made by plunging a tool of its diameter, or a cone by plunging a countersink.</summary>
/// <param name="Face">The face it enters.</param>
/// <param name="Tool">The drill.</param>
/// <param name="Depth">Depth, or nothing where it goes through.</param>
/// <param name="At">The centre.</param>
/// <param name="Diameter">Diameter at the face.</param>
public sealed record DrillOperation(Surface Face, Tool Tool, double? Depth, Point2 At, double Diameter) : MachineOperation(Face, Tool, Depth)
{
    /// <summary>Whether it is for a pin in the table, outside the panel.</summary>
    public bool IsForPin { get; init; }
}

/// <summary>An area milled away: a groove, or a bore wider than every drill.</summary>
/// <param name="Face">The face it is milled into.</param>
/// <param name="Tool">The cutter.</param>
/// <param name="Depth">Depth, or nothing where it goes through.</param>
/// <param name="Finished">Its wanted edge.</param>
/// <param name="Paths">The way of the cutter's middle, from the inside out; it stays inside the wanted edge by its radius.</param>
public sealed record PocketOperation(Surface Face, Tool Tool, double? Depth, Contour Finished, ImmutableArray<ToolPath> Paths) : MachineOperation(Face, Tool, Depth);

/// <summary>A cut along an edge: the outline of a panel, or of an opening in it.</summary>
/// <param name="Face">The face that lies up.</param>
/// <param name="Tool">The cutter or beam.</param>
/// <param name="Depth">Depth, or nothing where it goes through.</param>
/// <param name="Finished">The wanted edge.</param>
/// <param name="IsOutside">Whether the waste, and so the tool, is outside the edge.</param>
/// <param name="Paths">The way of the tool's middle, half its diameter in the waste.</param>
public sealed record ProfileOperation(Surface Face, Tool Tool, double? Depth, Contour Finished, bool IsOutside, ImmutableArray<ToolPath> Paths) : MachineOperation(Face, Tool, Depth)
{
    /// <summary>
    /// Where the cut is lifted to leave tabs: stretches of the line that is written, the finished edge or the tool's way, by their distances from
    /// its start, in order and apart.
    /// </summary>
    public ImmutableArray<(double From, double To)> Tabs { get; init; } = [];

    /// <summary>The same tabs along the tool's way, whatever line is written; nothing where they find no room there.</summary>
    public ImmutableArray<(double From, double To)> WayTabs { get; init; } = [];

    /// <summary>How deep the cut is at the tabs; between them it goes through.</summary>
    public double TabDepth { get; init; }
}

/// <summary>What an engraver scribes.</summary>
public enum Engraving
{
    /// <summary>A mark of the design.</summary>
    Mark,

    /// <summary>The edge of something the machine cannot make deep, to show where it goes.</summary>
    Score,

    /// <summary>The panel's name.</summary>
    Name,
}

/// <summary>Lines scribed into a face.</summary>
/// <param name="Face">The face.</param>
/// <param name="Tool">The engraver.</param>
/// <param name="Depth">Depth.</param>
/// <param name="What">What they are.</param>
/// <param name="Strokes">The lines.</param>
public sealed record EngraveOperation(Surface Face, Tool Tool, double? Depth, Engraving What, ImmutableArray<ToolPath> Strokes) : MachineOperation(Face, Tool, Depth);
