namespace ShopDrawings.Kernel;

/// <summary>How two panels are joined, before it is known which. Lengths in mm.</summary>
/// <param name="Fastener">What holds them, or nothing where glue or a groove alone does.</param>
/// <param name="Row">How the fasteners spread.</param>
internal sealed record JointRule(Fastener? Fastener, RowRule Row)
{
    /// <summary>Depth of a housing, a groove or a rabbet, for the edge of the held panel; 0 for none.</summary>
    public Size Housing { get; init; } = Size.Zero;

    /// <summary>How much wider the housing is than the held panel is thick.</summary>
    public Size HousingPlay { get; init; } = Size.Zero;

    /// <summary>A second fastener beside each, 32 mm nearer to the middle: the dowels of cam connectors.</summary>
    public Fastener? Beside { get; init; }

    /// <summary>Which face of the held panel cams and brackets sit on; nothing takes the one that is out of sight.</summary>
    public Surface? Face { get; init; }
}
