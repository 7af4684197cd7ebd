namespace ShopDrawings.Cutting;

/// <summary>
/// Works on the numbers of sheets that would be cheaper than the best plan: refutes those it can, and has lanes that try to lay everything on those that
/// are left. When none is left, the best plan is proved.
/// </summary>
internal sealed class CountSearch
{
    // Effort for refuting one set of numbers, fast and thoroughly.
    private const long FastEffort = 100_000_000, ThoroughEffort = 900_000_000;

    // Numbers are tried again where there is so many times the effort left that did not do.
    private const int MoreEffort = 8;

    // Patterns that a lane takes note of.
    private const int MostSeen = 500;

    private readonly Workload work;
    private readonly SheetCounts counts;
    private readonly CountRefuter[] refuters;
    private List<Target>? open;
    private int next = 1;

    /// <summary>Numbers of sheets that are not refuted.</summary>
    internal sealed class Target(int[] counts, long price, Workload work)
    {
        private Lane? lane;

        public int[] Counts { get; } = counts;

        public long Price { get; } = price;

        /// <summary>Whether it was tried to refute them fast.</summary>
        public bool WasTried { get; set; }

        /// <summary>Effort that did not do to refute them thoroughly; the largest number where more would not either.</summary>
        public long Tried { get; set; }

        /// <summary>Tries to lay everything on them.</summary>
        public Lane Lane => lane ??= new Lane(work.Within(Counts), 0x7A_0000) { Seen = new SeenPatterns(MostSeen) };

        /// <summary>Effort of the lane.</summary>
        public long Effort => lane?.Effort ?? 0;
    }

    /// <summary>With so many refuters side by side.</summary>
    public CountSearch(Workload work, SheetCounts counts, int refuterCount)
    {
        (this.work, this.counts) = (work, counts);
        refuters = [.. Enumerable.Range(0, refuterCount).Select(_ => new CountRefuter(work))];
        IsListed = !refuters[0].IsReady;
    }

    /// <summary>Effort of refuting so far.</summary>
    public long Effort => refuters.Sum(r => r.Effort);

    /// <summary>No plan is cheaper.</summary>
    public long Bound { get; private set; }

    /// <summary>A plan met while refuting, and its price.</summary>
    public (SheetTree[] Plan, long Price)? Plan { get; private set; }

    /// <summary>Whether all numbers of sheets were tried to refute fast.</summary>
    public bool IsListed { get; private set; }

    /// <summary>
    /// Refutes what would be cheaper than a plan until an effort is spent; what is begun then is finished, but not beyond <paramref name="end"/>.
    /// <paramref name="each"/> runs the refuters, side by side or one after the other.
    /// </summary>
    public void Refute(long price, long until, long end, Action<CountRefuter[], Action<CountRefuter>> each, CancellationToken stop)
    {
        if (open is null)
        {
            if (IsListed) return;
            if (counts.Below(price) is not { } all)
            {
                IsListed = true;
                return;
            }
            open = [.. all.Select(n => new Target(n.Counts, n.Price, work))];
        }
        open.RemoveAll(n => n.Price >= price);
        while (Effort < Math.Min(until, end) && !stop.IsCancellationRequested && (Plan is null || Plan.Value.Price >= price))
        {
            var targets = open.Where(n => !n.WasTried).Take(refuters.Length).ToArray();
            IsListed = targets.Length == 0;
            // The more sheets, the smaller they are and the sooner it is known what they hold.
            if (IsListed) targets = [.. open.Where(n => n.Tried < (end - Effort) / MoreEffort).OrderBy(n => n.Tried).ThenByDescending(n => n.Counts.Sum()).Take(refuters.Length)];
            if (targets.Length == 0) break;
            var most = Math.Min((end - Effort) / targets.Length, IsListed ? ThoroughEffort : FastEffort);
            var verdicts = new CountRefuter.Verdict[targets.Length];
            each(refuters[..targets.Length], r =>
            {
                var (k, limit) = (Array.IndexOf(refuters, r), r.Effort + most);
                verdicts[k] = r.Refute(targets[k].Counts, targets[k].WasTried, limit, stop);
                if (targets[k].WasTried) targets[k].Tried = r.Effort < limit ? long.MaxValue : most;
            });
            for (var k = 0; k < targets.Length; k++) Note(targets[k], verdicts[k]);
        }
        Bound = open.Count == 0 ? price : open[0].Price;
    }

    private void Note(Target target, CountRefuter.Verdict verdict)
    {
        if (verdict.Cut is { } cut)
        {
            counts.Add(cut);
            open!.RemoveAll(n => !cut.Keeps(n.Counts));
        }
        else if (verdict.IsImpossible) open!.Remove(target);
        else target.WasTried = true;
        if (verdict.Plan is { } plan && plan.Sum(s => work.Stock[s.Stock].Price) is var price && (Plan is null || price < Plan.Value.Price)) Plan = (plan, price);
    }

    /// <summary>
    /// The next numbers of sheets not refuted that cost less than a price, so many at most. By turns from both ends: the cheapest would end it, the dearest
    /// are the easiest; those next to the ends have their turn half as often, and so on.
    /// </summary>
    public Target[] Next(long price, int most)
    {
        if (open is null || !IsListed) return [];
        open.RemoveAll(n => n.Price >= price);
        return open.Count == 0 ? [] : [.. Enumerable.Range(0, most).Select(_ => Turn(++next)).Distinct()];
    }

    private Target Turn(int number)
    {
        var step = int.TrailingZeroCount(number / 2) % open!.Count;
        return open[number % 2 == 0 ? step : open.Count - 1 - step];
    }

    /// <summary>Takes note of what a lane saw.</summary>
    public void Learn(Lane lane)
    {
        if (lane.Seen?.News() is not { Count: > 0 } seen) return;
        foreach (var refuter in refuters) refuter.Learn(seen);
    }
}
