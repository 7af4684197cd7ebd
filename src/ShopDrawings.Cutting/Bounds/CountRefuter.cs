namespace ShopDrawings.Cutting;

/// <summary>
/// Proves of numbers of sheets that they cannot hold everything: a linear program mixes relaxed patterns so that as little as possible is missing, and its
/// prices of the pieces, in whole numbers, give an inequality that every plan keeps and these numbers do not, if there is one (J. Benders' way of cutting off;
/// the bound by one set of prices is A. Farley's as in <see cref="ColumnGeneration"/>). Between two mixtures prices go half the way only (P. Wentges, Weighted
/// Dantzig–Wolfe decomposition for linear mixed-integer programming, International Transactions in Operational Research 4 (1997) 151–162, from memory).
/// </summary>
internal sealed class CountRefuter
{
    private const int MostKinds = 150;
    private const int MostSizes = 12;

    // The longest side of a sheet in units.
    private const int Finest = 15_000, Coarsest = 800;

    // Work of one round of pricing, at the finest and where coarser is no use.
    private const long MostPricing = 25_000_000, LeastPricing = 300_000;

    // Work of telling contents apart in one valuation of a sheet.
    private const long MostTelling = 6_000_000;

    // Contents of a rectangle that are told apart, where that is a proof and where it is a search.
    private const int ManyLabels = 24, FewLabels = 6;

    // Patterns that are learned from lanes.
    private const int MostLearned = 3_000;

    // A step towards a mixture's prices so small that it is given up.
    private const double LeastStep = 0.01;

    // Patterns that enter a mixture before all are looked at again.
    private const int AtOnce = 20;

    // Patterns taken from one valuation of a sheet.
    private const int Found = 12;
    private const double Tiny = 1e-9;

    private readonly Workload work;
    private readonly int[] first, demand;
    private readonly double[] share;
    private readonly Fineness[] levels;
    private readonly List<(Pattern Pattern, int Level)> pool = [];
    private readonly SeenPatterns learned = new(MostLearned);
    private bool bounded, tooMuch;

    // Pricing with sides rounded down to a unit: coarse units make the bound weaker and faster, never wrong.
    private sealed class Fineness(RasterPricing[] pricing, double most, long unit)
    {
        public readonly RasterPricing[] Pricing = pricing;
        public readonly BoundedPricing?[] Bounded = new BoundedPricing?[pricing.Length];
        public readonly double Most = most;
        public readonly long Unit = unit;
        public readonly long Work = pricing.Sum(p => p.IsTooFine ? long.MaxValue / pricing.Length / 2 : p.Work);
    }

    /// <summary>Effort so far.</summary>
    public long Effort { get; private set; }

    /// <summary>Whether a problem is of a kind and size to try it.</summary>
    public static bool Pays(Workload work) => work.Kinds <= MostKinds && work.Stock.Length <= MostSizes && !work.Anywhere;

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
            Effort += (long)fineness * work.Kinds * work.Stock.Length / 16;
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

    /// <summary>Lets what lanes saw take part in the mixtures.</summary>
    public void Learn(SeenPatterns seen)
    {
        foreach (var pattern in seen.News())
            if (learned.Note(pattern)) pool.Add((pattern, int.MaxValue));
    }

    /// <summary>
    /// An inequality that every plan keeps and these numbers of sheets do not; null where none is found until an effort is spent. First by relaxed patterns,
    /// which is fast; <paramref name="thoroughly"/> by patterns with no kind more often than there are pieces.
    /// </summary>
    public SheetCounts.Cut? Refute(int[] counts, bool thoroughly, long until, CancellationToken stop)
    {
        var at = share;
        bounded = false;
        for (var level = 0; level < Math.Max(1, thoroughly ? levels.Length - 1 : levels.Length); level++)
            if (Mix(counts, level, ref at, until, stop) is { } cut) return cut;
        if (!thoroughly) return null;
        bounded = true;
        Clip(levels.Length - 1);
        return Mix(counts, levels.Length - 1, ref at, until, stop);
    }

    // What is left of relaxed patterns where a kind is dropped as often as it is too often there.
    private void Clip(int level)
    {
        for (var p = pool.Count - 1; p >= 0; p--)
        {
            if (pool[p].Level < level || Allowed(pool[p].Pattern)) continue;
            pool.Add((pool[p].Pattern with { Counts = [.. pool[p].Pattern.Counts.Select((c, k) => Math.Min(c, demand[k]))] }, level));
        }
    }

    // Mixes until these sheets are refuted, nothing is missing or no pattern helps.
    private SheetCounts.Cut? Mix(int[] counts, int level, ref double[] at, long until, CancellationToken stop)
    {
        var master = new MasterProgram(demand, [.. work.Stock.Select((s, t) => s with { Count = counts[t] })], share);
        var (best, step) = (double.MinValue, 0.5);
        // What nearly refuted them with coarser pricing is tried first.
        if (level > 0 || bounded)
        {
            var (cut, slack, made) = Try(at, counts, level);
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
            var center = at;
            double[] tried = [.. prices.Select((p, k) => step * p + (1 - step) * center[k])];
            var (cut, slack, made) = Try(tried, counts, level);
            if (cut is not null) return cut;
            var gained = slack > best + 1e-6;
            if (slack > best) (best, at) = (slack, tried);
            foreach (var pattern in made)
            {
                if (Worth(pattern, duals, master) <= Tiny) continue;
                gained = true;
                pool.Add((pattern, level));
            }
            if (gained) step = Math.Min(0.5, 1.5 * step);
            else if (tooMuch) step /= 2;
            else if (step < 1) step = Math.Min(1, 2 * step);
            else return null;
            if (step < LeastStep) return null;
        }
        return null;
    }

    // The inequality by a set of prices, where these sheets break it; else how far they are from it, and the patterns that say so.
    private (SheetCounts.Cut? Cut, double Slack, List<Pattern> Patterns) Try(double[] prices, int[] counts, int fineness)
    {
        var level = levels[fineness];
        tooMuch = false;
        // So large that no pattern is worth the limit, with room for rounding.
        var scale = RasterPricing.Limit / 2 / Math.Max(Tiny, prices.Select((p, k) => p / Math.Max(1, (work.X[first[k]] / level.Unit) * (double)(work.Y[first[k]] / level.Unit)) * level.Most).Max());
        var values = prices.Select((p, k) => share[k] == 0 ? 0 : (int)(p * scale)).ToArray();
        Int128 need = 0, have = 0;
        for (var k = 0; k < values.Length; k++) need += (Int128)values[k] * demand[k];
        var capacity = new Int128[counts.Length];
        var patterns = new List<Pattern>();
        for (var t = 0; t < counts.Length; t++)
        {
            if (counts[t] == 0) continue;
            var (value, found) = Price(t);
            if (value >= RasterPricing.Limit) return (null, double.MinValue, []);
            capacity[t] = value;
            have += capacity[t] * counts[t];
            patterns.AddRange(found.Select(f => new Pattern(t, f, [], 0)));
        }
        if (have >= need) return (null, need == 0 ? double.MinValue : (double)(need - have) / (double)need, patterns);
        for (var t = 0; t < counts.Length; t++)
            if (counts[t] == 0)
            {
                capacity[t] = Price(t).Value;
                if (capacity[t] >= RasterPricing.Limit) return (null, double.MinValue, []);
            }
        return (new SheetCounts.Cut(capacity, need), 0, patterns);

        (int Value, List<int[]> Patterns) Price(int t)
        {
            var pricing = level.Pricing[t];
            var top = pricing.Run(values);
            Effort += pricing.Work / 4 + 1_000;
            if (top >= RasterPricing.Limit) return (top, []);
            if (!bounded) return (top, counts[t] == 0 ? [] : pricing.Counts(values, top - top / 32, Found));
            // No pattern known is worth more than this; only what is matters.
            var known = 0;
            foreach (var (pattern, at) in pool)
                if (at >= fineness && pattern.Stock == t && Allowed(pattern))
                {
                    var worth = 0;
                    for (var k = 0; k < values.Length; k++) worth += values[k] * pattern.Counts[k];
                    known = Math.Max(known, worth);
                }
            var search = level.Bounded[t] ??= new BoundedPricing(pricing, demand);
            var from = search.Work;
            var (value, found) = (top, new List<int[]>());
            // A little below the top at first, where few contents are to be told apart.
            for (long gap = top / 400 + 1; found.Count == 0 && value > known && gap < 2L * top; gap *= 2)
            {
                var least = (int)Math.Max(known, top - gap);
                var (most, patterns) = search.Run(values, least, MostTelling, ManyLabels, Found);
                (value, found) = (Math.Min(value, most), patterns);
                if (!search.IsTooMuch) continue;
                tooMuch = true;
                // Not to be had exactly: a few contents of each rectangle may lead to good patterns all the same.
                (_, found) = search.Run(values, least, MostTelling, FewLabels, Found);
                break;
            }
            // Relaxed patterns without what is too often there are patterns as well.
            if (found.Count == 0 && value > known) found = [.. pricing.Counts(values, top - top / 32, Found).Select(f => f.Select((c, k) => Math.Min(c, demand[k])).ToArray())];
            Effort += search.Work - from;
            return (value, found);
        }
    }

    private double Worth(Pattern pattern, double[] duals, MasterProgram master)
    {
        var worth = -master.Scarcity(pattern.Stock, duals);
        for (var k = 0; k < demand.Length; k++)
            if (pattern.Counts[k] != 0) worth += duals[k] * pattern.Counts[k];
        return worth;
    }

    private bool Allowed(Pattern pattern)
    {
        if (!bounded) return true;
        for (var k = 0; k < demand.Length; k++)
            if (pattern.Counts[k] > demand[k]) return false;
        return true;
    }

    // Lets known patterns in until none helps.
    private void FromPool(MasterProgram master, int[] counts, int level)
    {
        for (var turn = 0; turn < 60; turn++)
        {
            var duals = master.Duals();
            var good = new List<(double Worth, int Index)>();
            for (var p = 0; p < pool.Count; p++)
                if (pool[p].Level >= level && counts[pool[p].Pattern.Stock] > 0 && Worth(pool[p].Pattern, duals, master) is var worth && worth > Tiny && Allowed(pool[p].Pattern)) good.Add((worth, p));
            Effort += (long)pool.Count * demand.Length / 4;
            for (var k = 0; k < demand.Length; k++)
                if (duals[k] < -Tiny && master.Enter(null, 0, k)) duals = master.Duals();
            good.Sort((x, y) => x.Worth != y.Worth ? y.Worth.CompareTo(x.Worth) : x.Index.CompareTo(y.Index));
            foreach (var (_, p) in good.Take(AtOnce))
            {
                duals = master.Duals();
                Effort += (long)demand.Length * demand.Length / 2;
                if (Worth(pool[p].Pattern, duals, master) > Tiny) master.Enter(pool[p].Pattern, 0, 0);
            }
            if (good.Count == 0 && duals.Take(demand.Length).All(d => d >= -Tiny)) return;
        }
    }
}
