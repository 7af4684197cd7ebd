namespace ShopDrawings.Cutting;

/// <summary>How large a problem may be; beyond it a problem is refused, so that time, memory and arithmetic stay bounded.</summary>
public static class Limits
{
    /// <summary>The longest side of a sheet or part: 100 m, in nanometres.</summary>
    public const long LongestSide = 100_000_000_000;

    /// <summary>The most parts, each counted as often as it is wanted.</summary>
    public const int MostPieces = 200_000;

    /// <summary>The most different parts.</summary>
    public const int MostParts = 10_000;

    /// <summary>The most sizes of stock.</summary>
    public const int MostStockSizes = 1_000;

    /// <summary>The highest price of a sheet or cut, in the smallest coin.</summary>
    public const long HighestPrice = 1_000_000_000_000;
}
