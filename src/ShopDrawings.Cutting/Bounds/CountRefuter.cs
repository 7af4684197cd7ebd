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
    private const int Finest = 15_000, Coarsest = 800;

    // Work of one round of pricing, at the finest and where coarser is no use.
    private const long MostPricing = 25_000_000, LeastPricing = 300_000;
    // Kinds that are counted, and work of one run while they are.
    private const int MostCounted = 8;
    private const double MostCounting = 25_000_000;
    // Patterns taken from one valuation of a sheet.
    private const int Found = 12;
    private const double Tiny = 1e-9;

    private readonly Workload work;
    private readonly int[] first, demand;
    private readonly double[] share;
    private readonly Fineness[] levels;
    private readonly List<(Pattern Pattern, int Level)> pool = [];
    private readonly CountedKinds[] counted;

    // Pricing with sides rounded down to a unit: coarse units make the bound weaker and faster, never wrong.
    private sealed class Fineness(RasterPricing[] pricing, double most, long unit)
    {
        public readonly RasterPricing[] Pricing = pricing;
        public readonly double Most = most;
        public readonly long Unit = unit;
        public readonly long Work = pricing.Sum(p => p.IsTooFine ? long.MaxValue / pricing.Length / 2 : p.Work);
    }

    /// <summary>Effort so far.</summary>
    public long Effort { get; private set; }

    /// <summary>Whether a problem is of a kind and size to try it.</summary>
    public static bool Pays(Workload work) => work.Kinds <= MostKinds && work.Stock.Length <= MostSizes && !work.Anywhere;

    public string PricingWork => string.Join(" ", levels.Select(l => $"{l.Unit}:{l.Work}"));

    /// <summary>Whether it can run.</summary>
    public bool IsReady => levels.Length > 0;

    public CountRefuter(Workload work)
    {
        this.work = work;
        (first, demand) = (new int[work.Kinds], new int[work.Kinds]);
        for (var i = work.Count - 1; i >= 0; i--)
        {
            first[work.KindOf[i]] = i;
            demand[work.KindOf[i]]++;
        }
        levels = Levels();
        var coarsest = levels.Length == 0 ? 1 : levels[0].Unit;
        // A side of less than a unit takes some room, but not in these units: such pieces are not counted.
        double[] area = [.. first.Select(i => work.X[i] < coarsest || work.Y[i] < coarsest ? 0 : (double)work.X[i] * work.Y[i])];
        var sum = Math.Max(1, area.Select((a, k) => a * demand[k]).Sum());
        share = [.. area.Select(a => a / sum)];
        counted = new CountedKinds[work.Stock.Length];
    }

    // From coarse to fine, each at most a third of the work of the next.
    private Fineness[] Levels()
    {
        var longest = work.Stock.Max(s => Math.Max(s.W, s.H));
        var list = new List<Fineness>();
        for (var fineness = Finest; fineness >= Coarsest; fineness = fineness * 2 / 3)
        {
            var unit = (longest + fineness - 1) / fineness;
            if (list.Count > 0 && list[^1].Unit == unit) continue;
            var pricing = Enumerable.Range(0, work.Stock.Length).Select(t => new RasterPricing(Ways(t, unit), demand, (int)(work.Stock[t].W / unit), (int)(work.Stock[t].H / unit))).ToArray();
            var level = new Fineness(pricing, work.Stock.Max(s => (double)(s.W / unit) * (s.H / unit)), unit);
            if (level.Work > MostPricing || (list.Count > 0 && level.Work > list[^1].Work / 3)) continue;
            list.Add(level);
            if (level.Work < LeastPricing) break;
        }
        list.Reverse();
        return [.. list];
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
            pool.Add((new Pattern(tree.Stock, counts, [], 0), int.MaxValue));
        }
    }

    /// <summary>
    /// An inequality that every plan keeps and these numbers of sheets do not; null where there is none of this kind, or, not <paramref name="settled"/>, none
    /// was found until an effort was spent.
    /// </summary>
    public SheetCounts.Cut? Refute(int[] counts, long until, out bool settled, CancellationToken stop)
    {
        settled = false;
        Array.Fill(counted, CountedKinds.None);
        var (at, level) = (share, 0);
        while (true)
        {
            var master = new MasterProgram(demand, [.. work.Stock.Select((s, t) => s with { Count = counts[t] })], share);
            if (Mix(master, counts, level, ref at, until, stop) is { } cut) return cut;
            if (Effort >= until || stop.IsCancellationRequested) return null;
            if (level + 1 < levels.Length) level++;
            else if (!CountMore(master, levels[level].Pricing))
            {
                settled = true;
                return null;
            }
        }
    }

    // Patterns of the mixture hold some kinds more often than there are pieces: the worst of them is counted from now on; false where that costs too much.
    private bool CountMore(MasterProgram master, RasterPricing[] pricing)
    {
        var over = new double[work.Stock.Length, demand.Length];
        foreach (var (pattern, times) in master.Mixture())
            for (var k = 0; k < demand.Length; k++) over[pattern.Stock, k] += times * Math.Max(0, pattern.Counts[k] - demand[k]) * share[k];
        var (worst, size, kind) = (Tiny, -1, -1);
        for (var t = 0; t < work.Stock.Length; t++)
            for (var k = 0; k < demand.Length; k++)
                if (over[t, k] > worst && counted[t].Kinds.Length < MostCounted && CountedKinds.WorkOf(counted[t].Kinds.Append(k), demand) * pricing[t].Work <= MostCounting) (worst, size, kind) = (over[t, k], t, k);
        if (size < 0) return false;
        counted[size] = new CountedKinds([.. counted[size].Kinds, kind], demand);
        return true;
    }

    // Mixes until these sheets are refuted, nothing is missing or no pattern helps.
    private SheetCounts.Cut? Mix(MasterProgram master, int[] counts, int level, ref double[] at, long until, CancellationToken stop)
    {
        var best = double.MinValue;
        // What nearly refuted them with coarser pricing is tried first.
        if (level > 0)
        {
            var (cut, slack, made) = Try(at, counts, levels[level]);
            if (cut is not null) return cut;
            best = slack;
            foreach (var pattern in made) pool.Add((pattern, level));
        }
        while (Effort < until && !stop.IsCancellationRequested)
        {
            FromPool(master, counts, level);
            if (master.Price < 1e-7) return null;
            var duals = master.Duals();
            var prices = duals.Take(demand.Length).Select(d => Math.Max(0, d)).ToArray();
            var entered = false;
            for (var half = 1; half >= 0 && !entered; half--)
            {
                var center = at;
                double[] tried = [.. prices.Select((p, k) => half == 0 ? p : (p + center[k]) / 2)];
                var (cut, slack, made) = Try(tried, counts, levels[level]);
                if (cut is not null) return cut;
                if (slack > best) (best, at) = (slack, tried);
                foreach (var pattern in made)
                {
                    if (Worth(pattern, duals, master) <= Tiny) continue;
                    entered = true;
                    pool.Add((pattern, level));
                }
            }
            if (!entered) return null;
        }
        return null;
    }

    // The inequality by a set of prices, where these sheets break it; else how far they are from it, and the patterns that say so.
    private (SheetCounts.Cut? Cut, double Slack, List<Pattern> Patterns) Try(double[] prices, int[] counts, Fineness level)
    {
        // So large that no pattern is worth 2^30, with room for rounding.
        var scale = (1 << 29) / Math.Max(Tiny, prices.Select((p, k) => p / Math.Max(1, (work.X[first[k]] / level.Unit) * (double)(work.Y[first[k]] / level.Unit)) * level.Most).Max());
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
            foreach (var found in level.Pricing[t].Counts(values, (int)(capacity[t] - capacity[t] / 32), Found)) patterns.Add(new Pattern(t, found, [], 0));
        }
        if (have >= need) return (null, need == 0 ? double.MinValue : (double)(need - have) / (double)need, patterns);
        for (var t = 0; t < counts.Length; t++)
            if (counts[t] == 0) Price(t);
        return (new SheetCounts.Cut(capacity, need), 0, patterns);

        void Price(int t)
        {
            capacity[t] = level.Pricing[t].Run(values, counted[t]);
            Effort += level.Pricing[t].Work * counted[t].Work / 4 + 1_000;
        }
    }

    private double Worth(Pattern pattern, double[] duals, MasterProgram master)
    {
        var worth = -master.Scarcity(pattern.Stock, duals);
        for (var k = 0; k < demand.Length; k++)
            if (pattern.Counts[k] != 0) worth += duals[k] * pattern.Counts[k];
        return worth;
    }

    private bool Allowed(Pattern pattern) => counted[pattern.Stock].Kinds.All(k => pattern.Counts[k] <= demand[k]);

    private void FromPool(MasterProgram master, int[] counts, int level)
    {
        for (var turn = 0; turn < 4 * demand.Length + 40; turn++)
        {
            var duals = master.Duals();
            var (best, surplus, gain) = ((Pattern?)null, -1, Tiny);
            foreach (var (pattern, known) in pool)
                if (known >= level && counts[pattern.Stock] > 0 && Allowed(pattern) && Worth(pattern, duals, master) is var worth && worth > gain) (best, gain) = (pattern, worth);
            for (var k = 0; k < demand.Length; k++)
                if (-duals[k] > gain) (best, surplus, gain) = (null, k, -duals[k]);
            Effort += (long)pool.Count * demand.Length / 4 + (long)demand.Length * demand.Length / 2;
            if (best is null && surplus < 0) return;
            if (!master.Enter(best, 0, surplus)) return;
        }
    }
}
