namespace ShopDrawings.Kernel;

/// <summary>How the fraction of an inch is written.</summary>
public enum FractionForm
{
    /// <summary>In a line, which any font can write: <c>22 7/16"</c>.</summary>
    Plain,

    /// <summary>Small digits above and below a fraction stroke, as on a tape: <c>22 ⁷⁄₁₆"</c>.</summary>
    Stacked,

    /// <summary>As decimals to a thousandth, without a zero before the point (ASME Y14.5, from memory): <c>22.438"</c>, <c>.5"</c>.</summary>
    Decimals,
}
