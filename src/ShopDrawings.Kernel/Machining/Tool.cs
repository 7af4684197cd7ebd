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

    /// <summary>How fast it is fed along its way, and a drill into the board, in mm a minute, or nothing where the usual counts.</summary>
    public double? Feed { get; init; }

    /// <summary>How fast a cutter or engraver is plunged, in mm a minute, or nothing where the usual counts.</summary>
    public double? Plunge { get; init; }

    /// <summary>Turns a minute, or nothing where the usual counts.</summary>
    public int? Speed { get; init; }

    /// <summary>The most a cutter takes in one pass, in mm of depth, or nothing where the usual counts.</summary>
    public double? Pass { get; init; }

    /// <summary>Angle of a countersink's cone in degrees: 90, or 82 for the heads of inch screws (ISO and ASME B18.6.1, both from memory).</summary>
    public double ConeDegrees { get; init; } = 90;

    /// <summary>Whether the machine has it; else it stands for the one that is missing.</summary>
    public bool IsKnown { get; init; } = true;
}
