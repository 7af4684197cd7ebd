namespace ShopDrawings.Kernel;

/// <summary>A strip glued to an edge of a panel. The panel is sawn smaller by its thickness.</summary>
/// <param name="Edge">The edge it covers.</param>
/// <param name="Thickness">Its thickness in mm.</param>
public sealed record EdgeBand(Surface Edge, Size Thickness);
