namespace ShopDrawings.Kernel;

/// <summary>A strip glued to an edge of a panel. The panel is sawn smaller by its thickness and larger by what is milled off before.</summary>
/// <param name="Edge">The edge it covers.</param>
/// <param name="Thickness">Its thickness in mm.</param>
public sealed record EdgeBand(Surface Edge, Size Thickness)
{
    /// <summary>Milled off the sawn edge in mm before the strip is glued on.</summary>
    public Size PreMilled { get; init; } = Size.Zero;
}
