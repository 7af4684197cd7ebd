namespace ShopDrawings.Kernel;

/// <summary>How much edge band to buy. Lengths in mm.</summary>
public static class EdgeBanding
{
    /// <summary>Put on by hand, each edge takes this much more than its length: common practice, no source.</summary>
    public const double AllowancePerEdge = 25;

    /// <summary>Bought beyond that, in percent: common practice, no source.</summary>
    public const double WastePercent = 10;

    /// <summary>Length to buy for edges of these lengths: (sum + allowance for each) and the waste on top.</summary>
    public static double ToBuy(IEnumerable<double> edges, double allowancePerEdge = AllowancePerEdge, double wastePercent = WastePercent) =>
        edges.Sum(e => e + allowancePerEdge) * (1 + wastePercent / 100);
}
