namespace ShopDrawings.Cutting;

/// <summary>
/// Runs lanes of search side by side. Each has its own seed and its own share of the effort; after every round they meet, and those behind take over the
/// cheapest plan, the lowest lane's among equals. Threads only run lanes, so their number changes nothing.
/// </summary>
internal sealed class Solver(Workload work, int laneCount, int threads, CancellationToken stop, bool patterns = true)
{
    private const long FirstRound = 200_000;

    // Most effort for what whole patterns leave.
    private const long RestEffort = 400_000_000;

    // Effort of the lanes before numbers of sheets are looked at, and of a round aimed at such numbers.
    private const long ProofAfter = 40_000_000;
    private const long Slice = 4_000_000;

    // Patterns that a lane takes note of.
    private const int MostSeen = 1_000;

    // Effort for refuting where there is one size of sheet: an eighth of the lanes' at first, later a sixteenth.
    private const long FirstForOne = 12_000_000;

    /// <summary>Called after each round with effort, best price so far (null before there is one) and bound.</summary>
    public Action<long, long?, long>? Report { get; init; }

    /// <summary>Effort spent.</summary>
    public long Effort { get; private set; }

    /// <summary>No plan is cheaper; known after <see cref="Run"/>. Null where all stock is surely too little.</summary>
    public long? Bound { get; private set; }

    /// <summary>The cheapest plan within the effort; null where no whole plan was found.</summary>
    public (SheetTree[] Plan, long Price)? Run(long effort)
    {
        var counts = new SheetCounts(work);
        Bound = DualFeasible.Bound(work, counts);
        if (Bound is not { } bound) return null;
        (SheetTree[] Plan, long Price)? start = null;
        if (patterns && ColumnGeneration.Pays(work))
        {
            var (linear, sheets, left, mixed) = ColumnGeneration.Run(work, effort / 3, stop);
            Bound = bound = Math.Max(bound, linear);
            Effort = mixed;
            start = Complete(sheets, left, (effort - mixed) / 2);
        }
        var lanes = Enumerable.Range(0, laneCount).Select(k => new Lane(work, 0x5D_0000 + (ulong)k) { Seen = CountRefuter.Pays(work) ? new SeenPatterns(MostSeen) : null }).ToArray();
        if (start is { } from)
            foreach (var lane in lanes) lane.TakeOver(from.Plan, from.Price);
        (SheetTree[] Plan, long Price)? best = start;
        effort = Math.Max(1, effort - Effort);
        var (before, own, aimed) = (Effort, 0L, 0L);
        var share = FirstRound;
        CountSearch? exact = null;
        for (var round = 0; ; round++)
        {
            var until = share;
            // Once it is known which numbers of sheets are left to try, every other round goes to them.
            if (round % 2 != 0 && best is { } present && exact?.Next(present.Price, laneCount) is { Length: > 0 } targets && work.Stock.Length > 1)
            {
                var spent = targets.Sum(t => t.Effort);
                Each(targets, t => t.Lane.Run(t.Lane.Effort + Slice, t.Price, stop));
                aimed += targets.Sum(t => t.Effort) - spent;
                foreach (var target in targets)
                {
                    exact.Learn(target.Lane);
                    if (target.Lane.Best is { } plan && target.Lane.BestPrice < best.Value.Price) best = (plan, target.Lane.BestPrice);
                }
            }
            else
            {
                Each(lanes, lane => lane.Run(until, bound, stop));
                own = lanes.Sum(l => l.Effort);
                share = Math.Min(effort / laneCount, share + Math.Max(FirstRound, share / 4));
            }
            foreach (var lane in lanes)
                if (lane.Best is { } plan && (best is null || lane.BestPrice < best.Value.Price)) best = (plan, lane.BestPrice);
            if (best is { } known && known.Price > bound && own >= ProofAfter && CountRefuter.Pays(work))
            {
                exact ??= new CountSearch(work, counts, work.Stock.Length > 1 ? laneCount : 1);
                foreach (var lane in lanes) exact.Learn(lane);
                var left = effort - own - aimed;
                if (work.Stock.Length > 1) exact.Refute(known.Price, 3 * (own + aimed) / 2, left, Each, stop);
                else exact.Refute(known.Price, own / 8, Math.Min(Math.Max(FirstForOne, own / 16), left), Each, stop);
                Bound = bound = Math.Max(bound, exact.Bound);
                if (exact.Plan is { } met && met.Price < known.Price) best = met;
            }
            Effort = before + own + aimed + (exact?.Effort ?? 0);
            Report?.Invoke(Effort, best?.Price, bound);
            if (best?.Price <= bound || stop.IsCancellationRequested || Effort - before >= effort) break;
            if (best is { } found)
                foreach (var lane in lanes.Where(l => l.BestPrice > found.Price)) lane.TakeOver(found.Plan, found.Price);
        }
        return best;
    }

    // What whole patterns leave is a problem of its own, solved like any other.
    private (SheetTree[] Plan, long Price)? Complete(List<SheetTree> sheets, int[] left, long effort)
    {
        var price = sheets.Sum(s => work.Stock[s.Stock].Price);
        if (left.Length == 0) return ([.. sheets], price);
        var used = new int[work.Stock.Length];
        foreach (var sheet in sheets) used[sheet.Stock]++;
        var rest = new Solver(work.Only(left, used), laneCount, threads, stop, false);
        var found = rest.Run(Math.Min(effort, RestEffort));
        Effort += rest.Effort;
        if (found is not { } plan) return null;
        foreach (var tree in plan.Plan) tree.Rename(left);
        return ([.. sheets, .. plan.Plan], price + plan.Price);
    }

    private void Each<T>(T[] lanes, Action<T> run)
    {
        if (threads <= 1) Array.ForEach(lanes, run.Invoke);
        else Parallel.ForEach(lanes, new ParallelOptions { MaxDegreeOfParallelism = threads }, run);
    }
}
