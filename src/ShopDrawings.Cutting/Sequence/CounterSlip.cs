using System.Collections.Immutable;

namespace ShopDrawings.Cutting;

/// <summary>What is handed over a store's counter for sheets of one stock size that are cut alike.</summary>
/// <param name="Stock">The size to buy.</param>
/// <param name="Sheets">The numbers of the sheets in the plan that are cut so.</param>
/// <param name="Cuts">The store's cuts in one of these sheets, in order; pieces are marked as on the first of <paramref name="Sheets"/>.</param>
/// <param name="Pieces">What the customer takes home of one of them, in nanometres: along the sheet's length and across it, with offcuts.</param>
/// <param name="SheetCost">What these sheets cost.</param>
/// <param name="CutCost">What the cuts in these sheets cost.</param>
public sealed record CounterSlip(StockSize Stock, ImmutableArray<int> Sheets, ImmutableArray<CutStep> Cuts, ImmutableArray<(long AlongX, long AlongY)> Pieces, long SheetCost, long CutCost)
{
    /// <summary>The slips of a plan; sheets of one size with the same cuts share one.</summary>
    public static ImmutableArray<CounterSlip> Of(CuttingPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var price = (plan.Problem.Machine as StoreSaw)?.PricePerCut ?? 0;
        var steps = CutSequence.Of(plan).Where(s => !s.AtHome).ToLookup(s => s.Sheet);
        return [.. plan.Sheets
            .GroupBy(s => s.Stock.Id + string.Concat(steps[s.Number].Select(c => $"|{c.Direction} {c.Against} {c.Setting}")), StringComparer.Ordinal)
            .Select(alike => new CounterSlip(alike.First().Stock, [.. alike.Select(s => s.Number)], [.. steps[alike.First().Number]],
                [.. TakenHome(alike.First().Tree)], alike.Sum(s => s.Stock.Price), alike.Sum(s => price * steps[s.Number].Count())))];
    }

    private static IEnumerable<(long, long)> TakenHome(CutPiece? piece) =>
        piece is null ? [] : piece.Kind != PieceKind.Divided || piece.AtHome ? [(piece.AlongX, piece.AlongY)] : piece.Children.SelectMany(TakenHome);
}
