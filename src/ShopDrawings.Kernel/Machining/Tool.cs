namespace ShopDrawings.Kernel;

/// <summary>What a tool is.</summary>
public enum ToolKind
{
    /// <summary>Makes bores of its own diameter.</summary>
    Drill,

    /// <summary>Makes the cones of screw heads up to its diameter.</summary>
    Countersink,

    /// <summary>A cylindrical cutter that mills along a path.</summary>
    Cutter,

    /// <summary>A pointed cutter, or a weak beam, that scribes along a path.</summary>
    Engraver,

    /// <summary>A beam that cuts through along a path; its diameter is the kerf.</summary>
    Beam,
}

/// <summary>A tool of a machine. Lengths in mm.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Diameter">What it cuts: its diameter, or the kerf.</param>
public sealed record Tool(ToolKind Kind, double Diameter)
{
    /// <summary>Its number in the machine's magazine, or nothing.</summary>
    public int? Number { get; init; }

    /// <summary>The greatest depth it cuts, or nothing where it reaches through every board.</summary>
    public double? Reach { get; init; }

    /// <summary>Whether the machine has it; else it stands for the one that is missing.</summary>
    public bool IsKnown { get; init; } = true;
}
