namespace ShopDrawings.Cutting;

/// <summary>
/// Proves of numbers of sheets that they cannot hold everything: a linear program mixes relaxed patterns so that as little as possible is missing, and its
/// prices of the pieces, in whole numbers, give an inequality that every plan keeps and these numbers do not, if there is one (J. Benders' way of cutting off;
/// the bound by one set of prices is A. Farley's as in <see cref="ColumnGeneration"/>). Between two mixtures prices go half the way only (P. Wentges, Weighted
/// Dantzig–Wolfe decomposition for linear mixed-integer programming, International Transactions in Operational Research 4 (1997) 151–162, from memory).
/// </summary>
internal sealed class CountRefuter
{
    private const int MostKinds = 300;
    private const int MostSizes = 12;
    private const int Finest = 15_000, Coarsest = 1_000;
    // Kinds that are counted, and work of one run while they are.
    private const int MostCounted = 8;
    private const double MostCounting = 25_000_000;
    private const double Tiny = 1e-9;

    private readonly Workload work;
    private readonly int[] first, demand;
    private readonly RasterPricing[] pricing;
    private readonly double[] share, dense;
    private readonly List<Pattern> pool = [];
    private CountedKinds counted = CountedKinds.None;

    /// <summary>Effort so far.</summary>
    public long Effort { get; private set; }

    /// <summary>Whether a problem is of a kind and size to try it.</summary>
    public static bool Pays(Workload work) => work.Kinds <= MostKinds && work.Stock.Length <= MostSizes && !work.Anywhere;

    public long PricingWork => pricing.Sum(p => p.Work);

    /// <summary>Whether it can run.</summary>
    public bool IsReady => Array.TrueForAll(pricing, p => !p.IsTooFine);

    /// <summary>For a problem, with rounds of pricing that cost no more than <paramref name="mostWork"/> where it can be had.</summary>
    public CountRefuter(Workload work, long mostWork)
    {
        this.work = work;
        (first, demand) = (new int[work.Kinds], new int[work.Kinds]);
        for (var i = work.Count - 1; i >= 0; i--)
        {
            first[work.KindOf[i]] = i;
            demand[work.KindOf[i]]++;
        }
        var longest = work.Stock.Max(s => Math.Max(s.W, s.H));
        var unit = 1L;
        // Sides rounded down fit wherever the sides fit, so coarse units make the bound weaker, never wrong.
        for (var fineness = Finest; ; fineness = fineness * 2 / 3)
        {
            unit = (longest + fineness - 1) / fineness;
            pricing = [.. Enumerable.Range(0, work.Stock.Length).Select(t => new RasterPricing(Ways(t, unit), demand, (int)(work.Stock[t].W / unit), (int)(work.Stock[t].H / unit)))];
            if (IsReady && pricing.Sum(p => p.Work) <= mostWork || fineness <= Coarsest) break;
        }
        var most = work.Stock.Max(s => (double)(s.W / unit) * (s.H / unit));
        // A side of less than a unit takes some room, but not in these units: such pieces are not counted.
        var areas = first.Select(i => work.X[i] < unit || work.Y[i] < unit ? 0 : (double)work.X[i] * work.Y[i]).ToArray();
        var sum = Math.Max(1, areas.Select((a, k) => a * demand[k]).Sum());
        share = [.. areas.Select(a => a / sum)];
        // Share of a sheet that a kind takes at least, in the units of the pricing.
        dense = [.. first.Select(i => Math.Max(1, (double)(work.X[i] / unit) * (work.Y[i] / unit)) / most)];
    }

    private IEnumerable<RasterPricing.Lying> Ways(int stock, long unit)
    {
        for (var k = 0; k < first.Length; k++)
        {
            var (lies, x, y) = (work.LiesOn(first[k], stock), (int)Math.Min(int.MaxValue, work.X[first[k]] / unit), (int)Math.Min(int.MaxValue, work.Y[first[k]] / unit));
            if (x == 0 || y == 0) continue;
            if ((lies & Workload.AsIs) != 0) yield return new RasterPricing.Lying(k, x, y);
            if ((lies & Workload.Turned) != 0) yield return new RasterPricing.Lying(k, y, x);
        }
    }

    /// <summary>Lets sheets of a plan take part in the mixtures.</summary>
    public void Learn(SheetTree[] plan)
    {
        foreach (var tree in plan)
        {
            var counts = new int[demand.Length];
            for (var n = 0; n < tree.Used; n++)
                if (tree[n].Kind == SheetTree.Leaf) counts[work.KindOf[tree[n].Item >> 1]]++;
            pool.Add(new Pattern(tree.Stock, counts, [], 0));
        }
    }

    /// <summary>
    /// An inequality that every plan keeps and these numbers of sheets do not; null where there is none of this kind, or, not <paramref name="settled"/>, none
    /// was found until an effort was spent.
    /// </summary>
    public SheetCounts.Cut? Refute(int[] counts, long until, out bool settled, CancellationToken stop)
    {
        settled = false;
        counted = CountedKinds.None;
        var kinds = new List<int>();
        var at = share;
        while (true)
        {
            var master = new MasterProgram(demand, [.. work.Stock.Select((s, t) => s with { Count = counts[t] })], share);
            if (Mix(master, counts, ref at, until, stop) is { } cut) return cut;
            if (Effort >= until || stop.IsCancellationRequested) return null;
            // Patterns of the mixture hold some kinds more often than there are pieces: the worst of them is counted from now on.
            var over = new double[demand.Length];
            foreach (var (pattern, times) in master.Mixture())
                for (var k = 0; k < demand.Length; k++) over[k] += times * Math.Max(0, pattern.Counts[k] - demand[k]) * share[k];
            var worst = Enumerable.Range(0, demand.Length).MaxBy(k => over[k]);
            if (over[worst] <= Tiny || CountedKinds.WorkOf(kinds.Append(worst), demand) * pricing.Sum(p => p.Work) > MostCounting || kinds.Count >= MostCounted)
            {
                settled = true;
                return null;
            }
            kinds.Add(worst);
            counted = new CountedKinds([.. kinds], demand);
        }
    }

    // Mixes until these sheets are refuted, nothing is missing or no pattern helps.
    private SheetCounts.Cut? Mix(MasterProgram master, int[] counts, ref double[] at, long until, CancellationToken stop)
    {
        var best = double.MinValue;
        while (Effort < until && !stop.IsCancellationRequested)
        {
            FromPool(master, counts);
            if (master.Price < 1e-7) return null;
            var duals = master.Duals();
            var prices = duals.Take(demand.Length).Select(d => Math.Max(0, d)).ToArray();
            var entered = false;
            for (var half = 1; half >= 0 && !entered; half--)
            {
                var center = at;
                double[] tried = [.. prices.Select((p, k) => half == 0 ? p : (p + center[k]) / 2)];
                var (cut, slack, made) = Try(tried, counts);
                if (cut is not null) return cut;
                if (slack > best) (best, at) = (slack, tried);
                foreach (var pattern in made)
                {
                    entered |= Worth(pattern, duals, master) > Tiny;
                    pool.Add(pattern);
                }
            }
            if (!entered) return null;
        }
        return null;
    }

    // The inequality by a set of prices, where these sheets break it; else how far they are from it, and the patterns that say so.
    private (SheetCounts.Cut? Cut, double Slack, List<Pattern> Patterns) Try(double[] prices, int[] counts)
    {
        // So large that no pattern is worth 2^30, with room for rounding.
        var scale = (1 << 29) / Math.Max(Tiny, prices.Select((p, k) => p / dense[k]).Max());
        var values = prices.Select((p, k) => share[k] == 0 ? 0 : (int)(p * scale)).ToArray();
        Int128 need = 0, have = 0;
        for (var k = 0; k < values.Length; k++) need += (Int128)values[k] * demand[k];
        var capacity = new Int128[counts.Length];
        var patterns = new List<Pattern>();
        for (var t = 0; t < counts.Length; t++)
        {
            if (counts[t] == 0) continue;
            Price(t);
            have += capacity[t] * counts[t];
            patterns.Add(new Pattern(t, pricing[t].Counts(values), [], 0));
        }
        if (have >= need) return (null, need == 0 ? double.MinValue : (double)(need - have) / (double)need, patterns);
        for (var t = 0; t < counts.Length; t++)
            if (counts[t] == 0) Price(t);
        return (new SheetCounts.Cut(capacity, need), 0, patterns);

        void Price(int t)
        {
            capacity[t] = pricing[t].Run(values, counted);
            Effort += pricing[t].Work * counted.Work / 2 + 1_000;
        }
    }

    private double Worth(Pattern pattern, double[] duals, MasterProgram master)
    {
        var worth = -master.Scarcity(pattern.Stock, duals);
        for (var k = 0; k < demand.Length; k++)
            if (pattern.Counts[k] != 0) worth += duals[k] * pattern.Counts[k];
        return worth;
    }

    private bool Allowed(Pattern pattern) => counted.Kinds.All(k => pattern.Counts[k] <= demand[k]);

    private void FromPool(MasterProgram master, int[] counts)
    {
        for (var turn = 0; turn < 4 * demand.Length + 40; turn++)
        {
            var duals = master.Duals();
            var (best, surplus, gain) = ((Pattern?)null, -1, Tiny);
            foreach (var pattern in pool)
                if (counts[pattern.Stock] > 0 && Allowed(pattern) && Worth(pattern, duals, master) is var worth && worth > gain) (best, gain) = (pattern, worth);
            for (var k = 0; k < demand.Length; k++)
                if (-duals[k] > gain) (best, surplus, gain) = (null, k, -duals[k]);
            Effort += (long)pool.Count * demand.Length / 4 + (long)demand.Length * demand.Length / 2;
            if (best is null && surplus < 0) return;
            if (!master.Enter(best, 0, surplus)) return;
        }
    }
}
