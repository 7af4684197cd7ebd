namespace ShopDrawings.Cutting;

/// <summary>
/// Proves of numbers of sheets that they cannot hold everything. A linear program mixes patterns so that as little as possible of these sheets is used, and its
/// prices of the pieces, in whole numbers, give an inequality that every plan keeps and these numbers do not, if there is one (J. Benders' way of cutting off;
/// the bound by one set of prices is A. Farley's as in <see cref="ColumnGeneration"/>). Between two mixtures prices go half the way at first (P. Wentges, Weighted
/// Dantzig–Wolfe decomposition for linear mixed-integer programming, International Transactions in Operational Research 4 (1997) 151–162, from memory).
/// Where a mixture of these sheets just does, all that sheets may hold at such prices is listed and every choice of it looked at (as routes are in R. Baldacci,
/// N. Christofides, A. Mingozzi, An exact algorithm for the vehicle routing problem based on the set partitioning formulation with additional cuts,
/// Mathematical Programming 115 (2008) 351–385, from memory): that is a proof, or a plan.
/// </summary>
internal sealed partial class CountRefuter
{
    private const int MostKinds = 150;
    private const int MostSizes = 12;

    // The longest side of a sheet in units.
    private const int Finest = 15_000, Coarsest = 800;

    // Work of one round of pricing, at the finest and where coarser is no use.
    private const long MostPricing = 25_000_000, LeastPricing = 300_000;

    // Work of telling contents apart in one valuation of a sheet, at first and where nothing is gained by it.
    private const long LeastTelling = 3_000_000, MostTelling = 30_000_000;

    // The mixture is as good as it can be where the bound is so near.
    private const double Near = 3e-4;

    // Effort of filling a sheet by search, patterns noted then, and how often it may be of no help.
    private const long Filling = 1_000_000;
    private const int MostSeen = 100, MostFailures = 2;

    // Patterns that are learned from lanes, and taken from one valuation of a sheet.
    private const int MostLearned = 10_000, Found = 40;

    // The least step from the best prices towards a mixture's.
    private const double LeastStep = 0.5;

    // Patterns that enter a mixture before all are looked at again.
    private const int Entering = 20;

    // What a missing piece costs: so many multiples of the sheets by its area, but no less than by this share of all.
    private const double Missing = 10, LeastShare = 1e-4;
    private const double Tiny = 1e-9;

    private readonly Workload work;
    private readonly int[] first, demand;
    private readonly double[] share;
    private readonly Fineness[] levels;
    private readonly List<(Pattern Pattern, int Level)> pool = [];
    private readonly SeenPatterns learned = new(MostLearned);
    private bool bounded, tooMuch;
    private long telling;

    // Prices that nearly refuted the last numbers.
    private double[] nearest;

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
        nearest = share = [.. area.Select(a => a / sum)];
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
            if ((lies & Workload.Turned) != 0) yield return new RasterPricing.Lying(k, y, x, true);
        }
    }

    /// <summary>Lets what lanes saw take part in the mixtures.</summary>
    public void Learn(List<Pattern> seen)
    {
        foreach (var pattern in seen)
            if (learned.Note(pattern)) pool.Add((pattern, int.MaxValue));
    }

    /// <summary>
    /// Tries to refute numbers of sheets until an effort is spent: by relaxed patterns, which is fast, or <paramref name="thoroughly"/> by patterns with no kind
    /// more often than there are pieces, and where that is close by everything a sheet may hold.
    /// </summary>
    public Verdict Refute(int[] counts, bool thoroughly, long until, CancellationToken stop)
    {
        bounded = thoroughly;
        if (bounded)
        {
            telling = LeastTelling;
            Clip(levels.Length - 1);
            var (cut, close) = Mix(counts, levels.Length - 1, ref nearest, until, stop);
            return cut is not null || close is not { } value ? new Verdict(cut) : Choose(counts, value, until, stop);
        }
        var at = share;
        for (var level = 0; level < levels.Length; level++)
            if (Mix(counts, level, ref at, until, stop).Cut is { } cut) return new Verdict(cut);
        return default;
    }

    // What is left of relaxed patterns where a kind is dropped as often as it is too often there.
    private void Clip(int level)
    {
        for (var p = 0; p < pool.Count; p++)
            if (pool[p].Level >= level) pool[p] = (pool[p].Pattern.Within(demand), pool[p].Level);
    }

    // Mixes until these sheets are refuted, or are enough for the mixture, or no pattern helps; where patterns hold no more than there is, until the best prices are
    // known or the sheets are more than enough.
    private (SheetCounts.Cut? Cut, Evaluation? Best) Mix(int[] counts, int level, ref double[] at, long until, CancellationToken stop)
    {
        var master = MasterProgram.ForMultiple(demand, counts, [.. share.Select(s => Missing * Math.Max(s, LeastShare))]);
        Evaluation? best = null;
        var (low, step, failures) = (0.0, LeastStep, 0);
        // What nearly refuted them with coarser pricing is tried first.
        if (level > 0 || bounded)
        {
            var (cut, first, made) = Try(at, counts, level, until, stop);
            if (cut is not null) return (cut, null);
            if (!tooMuch) (best, low) = (first, first?.Multiple ?? 0);
            foreach (var pattern in made) pool.Add((pattern, level));
        }
        while (Effort < until && !stop.IsCancellationRequested)
        {
            FromPool(master, counts, level);
            var multiple = master.Price;
            if (bounded ? (1 - multiple) * counts.Sum() > MostWaste : multiple < 1 - 1e-7) return (null, null);
            if (multiple - low < Near) return (null, best);
            var duals = master.Duals();
            // At first the search finds most of what helps, for little.
            if (bounded && failures < MostFailures)
            {
                if (Fill(counts, duals, master, stop)) continue;
                failures++;
            }
            var center = at;
            double[] tried = [.. Enumerable.Range(0, demand.Length).Select(k => step * Math.Max(0, duals[k]) + (1 - step) * center[k])];
            var (cut, last, made) = Try(tried, counts, level, until, stop);
            if (cut is not null) return (cut, null);
            var gained = false;
            if (last?.Multiple > low) (best, low, at) = (last, last.Value.Multiple, tried);
            foreach (var pattern in made)
            {
                if (master.Gain(pattern, 0, duals) <= Tiny) continue;
                gained = true;
                pool.Add((pattern, level));
            }
            if (gained) step = LeastStep;
            else if (tooMuch && telling < MostTelling) telling = Math.Min(MostTelling, 4 * telling);
            else if (step < 1) step = Math.Min(1, 2 * step);
            else return (null, best);
        }
        return (null, null);
    }

    // Fills sheets with what is worth most by a search; true where that gives patterns that help.
    private bool Fill(int[] counts, double[] duals, MasterProgram master, CancellationToken stop)
    {
        var helps = false;
        for (var t = 0; t < counts.Length; t++)
        {
            if (counts[t] == 0) continue;
            var lane = new Lane(work.Filling(t, [.. duals.Take(demand.Length).Select(d => Math.Max(0, d))]), 0xF1_0000) { Seen = new SeenPatterns(MostSeen) };
            lane.Run(Filling, 0, stop);
            Effort += lane.Effort;
            foreach (var pattern in lane.Seen.News())
            {
                if (master.Gain(pattern, 0, duals) <= Tiny || !learned.Note(pattern)) continue;
                pool.Add((pattern, int.MaxValue));
                helps = true;
            }
        }
        return helps;
    }

    // The inequality by a set of prices, where these sheets break it; else how far they are from it, and patterns that say so.
    private (SheetCounts.Cut? Cut, Evaluation? Value, List<Pattern> Patterns) Try(double[] prices, int[] counts, int fineness, long until, CancellationToken stop)
    {
        tooMuch = false;
        if (Whole(prices, fineness) is not { } values) return (null, null, []);
        Int128 need = 0;
        for (var k = 0; k < values.Length; k++) need += (Int128)values[k] * demand[k];
        var most = new int[counts.Length];
        var patterns = new List<Pattern>();
        for (var t = 0; t < counts.Length; t++)
            if (counts[t] > 0)
            {
                most[t] = Price(values, t, fineness, patterns, until, stop);
                if (most[t] >= RasterPricing.Limit) return (null, null, []);
            }
        var value = new Evaluation(values, need, most, counts);
        if (value.Have >= need) return (null, value, patterns);
        for (var t = 0; t < counts.Length; t++)
            if (counts[t] == 0)
            {
                most[t] = Price(values, t, fineness, null, until, stop);
                if (most[t] >= RasterPricing.Limit) return (null, null, []);
            }
        return (new SheetCounts.Cut([.. most.Select(m => (Int128)m)], need), null, patterns);
    }

    // Prices in whole numbers, so large that no pattern is worth the limit, with room for rounding.
    private int[]? Whole(double[] prices, int fineness)
    {
        var level = levels[fineness];
        var scale = RasterPricing.Limit / 2 / Math.Max(Tiny, prices.Select((p, k) => p / Math.Max(1, (work.X[first[k]] / level.Unit) * (double)(work.Y[first[k]] / level.Unit)) * level.Most).Max());
        int[] values = [.. prices.Select((p, k) => share[k] == 0 ? 0 : (int)(p * scale))];
        return Array.TrueForAll(values, v => v == 0) ? null : values;
    }

    // What a sheet is worth at most; patterns that are worth much.
    private int Price(int[] values, int t, int fineness, List<Pattern>? patterns, long until, CancellationToken stop)
    {
        var (level, pricing) = (levels[fineness], levels[fineness].Pricing[t]);
        if (!bounded)
        {
            var top = pricing.Run(values);
            Effort += pricing.Work / 4 + 1_000;
            if (top < RasterPricing.Limit) patterns?.AddRange(pricing.Counts(values, top - top / 32, Found).Select(f => new Pattern(t, f)));
            return top;
        }
        // No pattern known is worth more than this; only what is matters.
        var known = 0;
        foreach (var (pattern, from) in pool)
            if (from >= fineness && pattern.Stock == t && Allowed(pattern))
                known = Math.Max(known, pattern.Worth(values));
        var search = level.Bounded[t] ??= new BoundedPricing(pricing, demand, t);
        var before = search.Work;
        var found = search.Best(values, known, Math.Min(telling, until - Effort), Found, stop);
        Effort += search.Work - before;
        tooMuch |= search.IsTooMuch;
        patterns?.AddRange(found);
        return search.Top;
    }

    private bool Allowed(Pattern pattern) => !bounded || pattern.IsWithin(demand);

    // Lets known patterns in until none helps.
    private void FromPool(MasterProgram master, int[] counts, int level)
    {
        for (var turn = 0; turn < 60; turn++)
        {
            var settled = master.Settle();
            var duals = master.Duals();
            var good = new List<(double Worth, int Index)>();
            for (var p = 0; p < pool.Count; p++)
                if (pool[p].Level >= level && counts[pool[p].Pattern.Stock] > 0 && master.Gain(pool[p].Pattern, 0, duals) is var worth && worth > Tiny && Allowed(pool[p].Pattern)) good.Add((worth, p));
            Effort += (long)pool.Count * demand.Length / 4;
            good.Sort((x, y) => x.Worth != y.Worth ? y.Worth.CompareTo(x.Worth) : x.Index.CompareTo(y.Index));
            foreach (var (_, p) in good.Take(Entering))
            {
                duals = master.Duals();
                Effort += (long)demand.Length * demand.Length / 2;
                if (master.Gain(pool[p].Pattern, 0, duals) > Tiny) master.Enter(pool[p].Pattern, 0);
            }
            if (good.Count == 0 && !settled) return;
        }
    }
}
