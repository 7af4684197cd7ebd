namespace ShopDrawings;

/// <summary>
/// How the programs of a machine are written (ISO 6983-1; G and M words as commonly understood, from memory). Lengths in mm. The usual values are
/// common practice, no source. Immutable.
/// </summary>
public sealed record ProgramSettings
{
    /// <summary>The greatest spoil allowance a file may ask for: beyond it a cut would reach through most tables' spoil boards.</summary>
    public const double MostSpoil = 5;

    /// <summary>Whether bores are drilling cycles, G81 and G83, or plain moves.</summary>
    public bool HasCycles { get; init; } = true;

    /// <summary>Deeper bores are made in steps of this depth, or nothing for one stroke.</summary>
    public double? Peck { get; init; }

    /// <summary>Above the face that lies up, where the tool moves across: higher than every clamp, stop and pin.</summary>
    public double SafeHeight { get; init; } = 20;

    /// <summary>Above the face, where a rapid move down ends and the feed begins.</summary>
    public double Clearance { get; init; } = 3;

    /// <summary>Whether z is zero on the table, under the panel; else on the face that lies up.</summary>
    public bool IsZeroOnTable { get; init; }

    /// <summary>How far what goes through goes on into the table.</summary>
    public double Spoil { get; init; } = 0.2;

    /// <summary>How deep bores for pins go into the table; as deep as the spoil allowance where it is left out.</summary>
    public double? PinDepth { get; init; }

    /// <summary>Whether the machine changes its tools by itself (T, M6 and G43); else the program stops (M0) for a tool to be fitted and zeroed.</summary>
    public bool HasChanger { get; init; }

    /// <summary>The number of the first program (an O word), or nothing for none.</summary>
    public int? FirstNumber { get; init; }

    /// <summary>The ending of the files' names.</summary>
    public string Ending { get; init; } = "nc";

    /// <summary>Whether lines have numbers.</summary>
    public bool HasLineNumbers { get; init; }
}
