using System.Collections.Immutable;

namespace ShopDrawings.Cutting;

/// <summary>One sheet of a plan.</summary>
/// <param name="Number">Its number in the plan, from 1.</param>
/// <param name="Stock">The size it is.</param>
/// <param name="Placements">Every part on it.</param>
/// <param name="Tree">How it is cut; null for a router, which cuts each part out where it lies.</param>
/// <param name="Offcuts">What is left of it and large enough to keep, largest first. Of a router's sheet only what no part's row reaches.</param>
public sealed record SheetPlan(int Number, StockSize Stock, ImmutableArray<Placement> Placements, CutPiece? Tree, ImmutableArray<Offcut> Offcuts)
{
    /// <summary>The share of the whole sheet that becomes parts, from 0 to 1.</summary>
    public double Yield => Placements.Sum(p => (double)p.AlongX * p.AlongY) / ((double)Stock.Length * Stock.Width);
}
