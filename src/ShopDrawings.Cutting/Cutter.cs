using System.Collections.Immutable;

namespace ShopDrawings.Cutting;

/// <summary>How much work goes into a plan.</summary>
public sealed record CuttingOptions
{
    /// <summary>Work until the search ends without proof, in the solver's own units; some 100 million are done in a second on one core of a machine of 2025.</summary>
    public long Effort { get; init; } = 250_000_000;

    /// <summary>Threads that share the work; the plan is the same with any number.</summary>
    public int Threads { get; init; } = 2;
}

/// <summary>How far the search is.</summary>
/// <param name="Share">Effort spent of all, from 0 to 1.</param>
/// <param name="Cost">What the best plan so far costs for sheets and the cuts that they surely need; null before there is one.</param>
/// <param name="Bound">No plan is cheaper.</param>
public readonly record struct CuttingProgress(double Share, long? Cost, long Bound);

/// <summary>The way in: a problem goes in, a plan or refusals come out.</summary>
/// <example><code>
/// var problem = new CuttingProblem([new Part("side", 720_000_000, 560_000_000) { Quantity = 2 }], [new StockSize("board", 2_440_000_000, 1_220_000_000) { Price = 6500 }], new PanelSaw(3_200_000));
/// var outcome = Cutter.Solve(problem);
/// var steps = CutSequence.Of(outcome.Plan!);
/// </code></example>
public static class Cutter
{
    // Lines of search; fixed, since their number shapes the plan.
    private const int Lanes = 2;

    // Most effort for tidying a plan that is found.
    private const long MostTidying = 8_000_000;

    /// <summary>
    /// The cheapest plan found within the effort, or why there is none. The same problem and effort give the same plan, with any number of threads and on
    /// any machine, unless <paramref name="stop"/> ends the work before: then it is the best plan so far, and which one depends on the time.
    /// </summary>
    /// <exception cref="ArgumentNullException">There is no problem.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The effort or number of threads is not positive.</exception>
    public static CuttingOutcome Solve(CuttingProblem problem, CuttingOptions? options = null, IProgress<CuttingProgress>? progress = null, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(problem);
        options ??= new CuttingOptions();
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(options.Effort);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(options.Threads);
        var (ways, refusals) = Preparation.Of(problem);
        if (refusals.Count > 0) return new CuttingOutcome(null, [.. refusals]);

        CuttingPlan? best = null;
        Refusal? none = null;
        var bound = long.MaxValue;
        foreach (var way in ways)
        {
            var effort = Math.Max(1, options.Effort / ways.Length);
            var solver = new Solver(way.Work, Lanes, options.Threads, stop) { Report = (done, cost, b) => progress?.Report(new CuttingProgress(Math.Min(1, (double)done / effort), cost + way.CutsOfAll, b + way.CutsOfAll)) };
            var found = solver.Run(effort);
            bound = Math.Min(bound, solver.Bound + way.CutsOfAll ?? long.MaxValue);
            if (found is not { } plan)
            {
                none = TooLittle(problem, solver.Bound is null);
                continue;
            }
            var made = problem.Machine is Router && Routed(way, solver.Bound!.Value, ref plan, effort, stop) is { } free ? PlanBuilder.Build(way, free) : PlanBuilder.Build(way, plan.Plan);
            var candidate = PlanOf(made);
            if (problem.Machine is not Router && !stop.IsCancellationRequested)
            {
                var lane = new Lane(way.Work, 1);
                lane.Tidy(plan.Plan, plan.Price, Math.Min(effort / 10, MostTidying), stop);
                var tidied = PlanOf(PlanBuilder.Build(way, lane.Best!));
                if (Rank(tidied).CompareTo(Rank(candidate)) < 0) candidate = tidied;
            }
            if (best is null || candidate.Cost < best.Cost) best = candidate;

            CuttingPlan PlanOf((ImmutableArray<SheetPlan> Sheets, PlanStatistics Statistics) made) =>
                new(problem, made.Sheets, made.Sheets.Sum(s => s.Stock.Price), problem.Machine is StoreSaw store ? store.PricePerCut * CutSequence.Of(made.Sheets).Count(s => !s.AtHome) : 0,
                    bound, made.Statistics, solver.Effort);
        }
        return best is null ? new CuttingOutcome(null, [none!]) : new CuttingOutcome(best.WithBound(Math.Min(bound, best.Bound)), []);
    }

    // A router need not cut through: while the bound allows, the same sheets are tried with the dearest one less, anywhere on them.
    private static (List<FreePlacement.Spot> Spots, int[] Sheets)? Routed(Preparation.Prepared way, long bound, ref (SheetTree[] Plan, long Price) plan, long effort, CancellationToken stop)
    {
        (List<FreePlacement.Spot>, int[])? best = null;
        var placing = new FreePlacement(way.Work, stop);
        var sizes = plan.Plan.Select(t => t.Stock).OrderByDescending(t => way.Work.Stock[t].Price).ThenBy(t => t).ToList();
        while (plan.Price > bound && sizes.Count > 1)
        {
            var dearest = sizes[0];
            sizes.RemoveAt(0);
            if (placing.Fit(sizes, effort, (ulong)sizes.Count) is not { } spots) break;
            plan.Price -= way.Work.Stock[dearest].Price;
            best = (spots, [.. sizes]);
        }
        return best;
    }

    // The cheapest; among those of one price matching parts off one setting, then least handling, then the largest rectangle left.
    private static (long, int, int, double) Rank(CuttingPlan plan) =>
        (plan.Cost, plan.Statistics.UnmatchedGroups, plan.Statistics.FenceSettings + plan.Statistics.Cuts, -(plan.Statistics.LargestOffcut is { } o ? (double)o.AlongX * o.AlongY : 0));

    private static Refusal TooLittle(CuttingProblem problem, bool proved)
    {
        if (problem.Stock.Any(s => s.Count is null))
            return new Refusal(RefusalReason.TooLittleStock, "", "of some sizes there are as many sheets as needed, but no way was found to lay what fits only on the others on those there are");
        var have = problem.Stock.Aggregate((Int128)0, (sum, s) => sum + (Int128)s.UsableLength * s.UsableWidth * (s.Count ?? 0));
        var need = problem.Parts.Aggregate((Int128)0, (sum, p) => sum + (Int128)p.CutLength * p.CutWidth * p.Quantity);
        static string M2(Int128 area) => ((decimal)(long)(area / 1_000_000_000_000) / 1_000_000).ToString("0.###", System.Globalization.CultureInfo.InvariantCulture);
        return new Refusal(RefusalReason.TooLittleStock, "", need > have ? $"the parts take {M2(need)} m², all the stock has {M2(have)} m² within its trim; {M2(need - have)} m² are missing"
            : proved ? $"the parts take {M2(need)} m² of the stock's {M2(have)} m², but with their kerfs they cannot all lie on it"
            : $"the parts take {M2(need)} m² of the stock's {M2(have)} m², and no way was found to lay them all");
    }
}
