using System.Collections.Immutable;

namespace ShopDrawings.Cutting;

/// <summary>Which parts are wanted, of which sheets they may be cut, and on what.</summary>
/// <param name="Parts">What is wanted. Their order has no meaning but to break ties.</param>
/// <param name="Stock">What can be had.</param>
/// <param name="Machine">What cuts.</param>
public sealed record CuttingProblem(ImmutableArray<Part> Parts, ImmutableArray<StockSize> Stock, CuttingMachine Machine)
{
    /// <summary>An offcut is worth keeping where both its sides are at least this, in nanometres; 100 mm (common practice, no source).</summary>
    public long LeastOffcut { get; init; } = 100_000_000;
}
