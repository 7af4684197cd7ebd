namespace ShopDrawings.Kernel;

/// <summary>A pin that carries a loose shelf, by its dimensions in mm.</summary>
public sealed record ShelfPin
{
    /// <summary>What lists call it.</summary>
    public required string Name { get; init; }

    /// <summary>Diameter of its bore.</summary>
    public required Size Diameter { get; init; }

    /// <summary>Depth of its bore.</summary>
    public required Size Depth { get; init; }

    /// <summary>How far it reaches out of its bore under the shelf.</summary>
    public required Size Reach { get; init; }

    /// <summary>From its bore's centre up to the underside of the shelf.</summary>
    public required Size BelowShelf { get; init; }
}
