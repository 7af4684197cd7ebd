namespace ShopDrawings.Cutting;

/// <summary>
/// Works on the numbers of sheets that would be cheaper than the best plan: refutes those it can, and has lanes that try to lay everything on those that
/// are left. When none is left, the best plan is proved.
/// </summary>
internal sealed class CountSearch
{
    // Effort for refuting one set of numbers, fast and thoroughly.
    private const long FastEffort = 100_000_000, ThoroughEffort = 300_000_000;

    // Effort of a lane before its numbers are refuted thoroughly, and patterns it takes note of.
    private const long Acquaintance = 8_000_000;
    private const int MostSeen = 500;

    private readonly Workload work;
    private readonly SheetCounts counts;
    private readonly CountRefuter refuter;
    private List<Target>? open;
    private int next = 1;

    /// <summary>Numbers of sheets that are not refuted.</summary>
    internal sealed class Target(int[] counts, long price, Workload work)
    {
        private Lane? lane;

        public int[] Counts { get; } = counts;

        public long Price { get; } = price;

        /// <summary>Whether it was tried to refute them fast, and thoroughly.</summary>
        public bool WasTried { get; set; }

        /// <inheritdoc cref="WasTried"/>
        public bool WasTriedThoroughly { get; set; }

        /// <summary>Tries to lay everything on them.</summary>
        public Lane Lane => lane ??= new Lane(work.Within(Counts), 0x7A_0000) { Seen = new SeenPatterns(MostSeen) };

        /// <summary>Effort of the lane.</summary>
        public long Effort => lane?.Effort ?? 0;
    }

    public CountSearch(Workload work, SheetCounts counts)
    {
        (this.work, this.counts) = (work, counts);
        refuter = new CountRefuter(work);
        IsListed = !refuter.IsReady;
    }

    /// <summary>Effort of refuting so far.</summary>
    public long Effort => refuter.Effort;

    /// <summary>No plan is cheaper.</summary>
    public long Bound { get; private set; }

    /// <summary>Whether all numbers of sheets were tried to refute fast.</summary>
    public bool IsListed { get; private set; }

    /// <summary>
    /// Refutes what would be cheaper than a plan, the cheapest first, until an effort is spent; what is begun then is finished, but not beyond <paramref name="end"/>.
    /// </summary>
    public void Refute(long price, long until, long end, CancellationToken stop)
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
        while (Effort < Math.Min(until, end) && !stop.IsCancellationRequested)
        {
            var target = open.Find(n => !n.WasTried);
            IsListed = target is null;
            target ??= open.Find(n => !n.WasTriedThoroughly && n.Effort >= Acquaintance);
            if (target is null) break;
            if (refuter.Refute(target.Counts, target.WasTried, Math.Min(end, Effort + (target.WasTried ? ThoroughEffort : FastEffort)), stop) is { } cut)
            {
                counts.Add(cut);
                open.RemoveAll(n => !cut.Keeps(n.Counts));
            }
            else if (target.WasTried) target.WasTriedThoroughly = true;
            else target.WasTried = true;
        }
        Bound = open.Count == 0 ? price : open[0].Price;
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
        if (lane.Seen is { } seen) refuter.Learn(seen);
    }
}
