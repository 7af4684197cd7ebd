using System.Collections.Immutable;
using ShopDrawings.Cutting;

namespace ShopDrawings;

/// <summary>How stock is cut, and what there is of each board. Immutable.</summary>
internal sealed record CuttingSetup(ImmutableArray<BoardStock> Boards, CuttingMachine Machine, long LeastOffcut, string Currency, int Effort)
{
    /// <summary>No stock at all.</summary>
    public static CuttingSetup None { get; } = new([], new PanelSaw(UsualKerf), UsualLeastOffcut, "", 1);

    /// <summary>A blade of 3.2 mm, in nanometres (common practice, no source).</summary>
    public const long UsualKerf = 3_200_000;

    /// <summary>100 mm, in nanometres (common practice, no source).</summary>
    public const long UsualLeastOffcut = 100_000_000;

    /// <summary>Work that goes into all boards together at an effort of 1: near two seconds on two cores of a machine of 2025.</summary>
    public static long UsualEffort { get; } = new CuttingOptions().Effort;

    /// <summary>Millimetres in nanometres.</summary>
    public static long Nanometres(double millimetres) => (long)Math.Round(millimetres * 1e6);

    /// <summary>The machine for a board of some mass: a store weighs what is carried home.</summary>
    public CuttingMachine MachineFor(double gramsPerSquareMetre) =>
        Machine is StoreSaw { HeaviestPieceGrams: not null } store ? store with { MassPerSquareMetre = Math.Max(1, (long)Math.Ceiling(gramsPerSquareMetre)) } : Machine;
}

/// <summary>The stock of one board.</summary>
/// <param name="Board">Its name.</param>
/// <param name="Sizes">What can be had.</param>
/// <param name="HasPrices">Whether prices are given; else each sheet's is its area in square centimetres.</param>
internal sealed record BoardStock(string Board, ImmutableArray<StockSize> Sizes, bool HasPrices);
