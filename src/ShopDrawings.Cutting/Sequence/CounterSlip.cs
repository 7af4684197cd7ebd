using System.Collections.Immutable;

namespace ShopDrawings.Cutting;

/// <summary>A piece that is taken home from a store.</summary>
/// <param name="Mark">What is written on it, as <see cref="CutSequence"/> marks pieces.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Area">Where it lay on its sheet; lengths in nanometres.</param>
/// <param name="Part">The part it is; null for others.</param>
public sealed record TakenPiece(string Mark, OutcomeKind Kind, SheetArea Area, Placement? Part);

/// <summary>What is handed over a store's counter for sheets of one stock size that are cut alike.</summary>
/// <param name="Stock">The size to buy.</param>
/// <param name="Sheets">The numbers of the sheets in the plan that are cut so.</param>
/// <param name="Cuts">The store's cuts in the first of these sheets, in order; they are numbered as in the whole plan.</param>
/// <param name="Pieces">What the customer takes home of that sheet, with offcuts, without waste, from the sheet's start on.</param>
/// <param name="SheetCost">What these sheets cost.</param>
/// <param name="CutCost">What the cuts in these sheets cost.</param>
public sealed record CounterSlip(StockSize Stock, ImmutableArray<int> Sheets, ImmutableArray<PlacedCut> Cuts, ImmutableArray<TakenPiece> Pieces, long SheetCost, long CutCost)
{
    /// <summary>The slips of a plan; sheets of one size with the same cuts share one.</summary>
    public static ImmutableArray<CounterSlip> Of(CuttingPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var price = (plan.Problem.Machine as StoreSaw)?.PricePerCut ?? 0;
        var steps = CutSequence.Of(plan);
        var store = steps.Where(s => !s.AtHome).ToLookup(s => s.Sheet);
        return [.. plan.Sheets
            .GroupBy(s => s.Stock.Id + string.Concat(store[s.Number].Select(c => $"|{c.Direction} {c.Against} {c.Setting}")), StringComparer.Ordinal)
            .Select(alike =>
            {
                var sheet = alike.First();
                ImmutableArray<PlacedCut> cuts = [.. PlacedCut.Of(sheet, steps).Where(c => !c.Step.AtHome)];
                return new CounterSlip(sheet.Stock, [.. alike.Select(s => s.Number)], cuts, [.. TakenHome(sheet, cuts)], alike.Sum(s => s.Stock.Price), alike.Sum(s => price * store[s.Number].Count()));
            })];
    }

    private static IEnumerable<TakenPiece> TakenHome(SheetPlan sheet, ImmutableArray<PlacedCut> cuts)
    {
        var whole = sheet.Tree?.Placement;
        var left = new List<TakenPiece> { new(CutSequence.Mark(sheet.Number), whole is null ? OutcomeKind.Piece : OutcomeKind.Part, new(0, 0, sheet.Stock.Length, sheet.Stock.Width), whole) };
        foreach (var cut in cuts)
        {
            left.RemoveAll(p => p.Mark == cut.Step.Piece);
            left.Add(new(cut.Step.Comes, cut.Step.ComesAs, cut.Comes, cut.Part));
            if (cut.Stays is { } stays) left.Add(new(cut.Step.Stays, cut.Step.StaysAs, stays, cut.StaysPart));
        }

        return left.Where(p => p.Kind != OutcomeKind.Waste).OrderBy(p => p.Area.X).ThenBy(p => p.Area.Y);
    }
}
