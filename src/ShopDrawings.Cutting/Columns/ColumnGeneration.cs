namespace ShopDrawings.Cutting;

/// <summary>
/// For lists with many equal pieces: mixes patterns by a linear program, makes new ones where they would pay (P. Gilmore, R. Gomory, as in
/// <see cref="PatternPricing"/>), and takes from the mixture the whole sheets; what remains is a small problem for the lanes. The bound is A. Farley's
/// (A note on bounding a class of linear programming problems, Operations Research 38 (1990) 922–923, from memory), counted in whole numbers.
/// </summary>
internal sealed class ColumnGeneration
{
    private const int MostKinds = 300;
    private const long Scale = 1_000_000_000_000;
    private const int MostRounds = 2_000;

    // Ends where so many rounds have gained less than this share.
    private const int Patience = 20;
    private const double LeastGain = 1e-4;

    // Mixtures for what is left, until so few pieces are.
    private const int MostDives = 60;
    private const int LeastLeft = 60;
    private const int OftenFromPool = 30;
    private const int MostFromPool = 400;

    private readonly Workload work;
    private readonly int[] first, demand, used;
    private readonly Queue<int>[] pieces;
    private readonly List<Pattern> pool = [];
    private readonly List<SheetTree> sheets = [];
    private long spent, bound;

    private ColumnGeneration(Workload work)
    {
        this.work = work;
        (first, demand, used) = (new int[work.Kinds], new int[work.Kinds], new int[work.Stock.Length]);
        pieces = [.. Enumerable.Range(0, work.Kinds).Select(_ => new Queue<int>())];
        for (var i = 0; i < work.Count; i++) pieces[work.KindOf[i]].Enqueue(i);
        for (var i = work.Count - 1; i >= 0; i--)
        {
            first[work.KindOf[i]] = i;
            demand[work.KindOf[i]]++;
        }
    }

    /// <summary>Whether pieces repeat so often that patterns pay.</summary>
    public static bool Pays(Workload work) => work.Kinds <= MostKinds && work.Count >= 3 * work.Kinds && work.Count >= 100 && !work.Rules.Any
        && Array.TrueForAll(work.Stock, s => s.First == 0 && s.GrainDirection == work.Stock[0].GrainDirection && s.Price > 0);

    /// <summary>A bound, whole sheets of good patterns, and the pieces they leave.</summary>
    public static (long Bound, List<SheetTree> Sheets, int[] Left, long Effort) Run(Workload work, long effort, CancellationToken stop) => new ColumnGeneration(work).Run(effort, stop);

    private (long Bound, List<SheetTree> Sheets, int[] Left, long Effort) Run(long effort, CancellationToken stop)
    {
        var pricing = new PatternPricing(work, first, Math.Max(1_000_000, effort / 30));
        var master = Mix(pricing, demand, effort / 2, false, stop);
        // Whole sheets of the mixture, then a mixture for what they leave, and so on; one sheet is rounded up where none is whole.
        for (var dive = 0; dive < MostDives; dive++)
        {
            var before = sheets.Count;
            TakeWhole(master, 1 - 1e-6);
            if (sheets.Count == before) TakeWhole(master, 0.5);
            if (sheets.Count == before || spent >= effort || stop.IsCancellationRequested) break;
            var left = pieces.Select(q => q.Count).ToArray();
            if (left.Sum() < LeastLeft) break;
            master = Mix(pricing, left, Math.Min(effort, spent + effort / 20), true, stop);
        }
        return (bound, sheets, [.. pieces.SelectMany(q => q).Order()], spent);
    }

    // The best mixture for a demand; where the rest is mixed, patterns hold no more than is still wanted.
    private MasterProgram Mix(PatternPricing pricing, int[] wanted, long until, bool rest, CancellationToken stop)
    {
        var master = MasterProgram.ForPrice(wanted, [.. work.Stock.Select((s, t) => s.Count == int.MaxValue ? s : s with { Count = s.Count - used[t] })]);
        if (rest) FromPool(master, wanted, MostFromPool);
        var top = (double)work.Stock.Max(s => s.Price);
        var before = double.MaxValue;
        for (var round = 0; round < MostRounds && spent < until; round++)
        {
            spent += pricing.Work / 8;
            var duals = master.Duals();
            for (var k = 0; k < wanted.Length; k++)
                if (duals[k] < -1e-7 * top && master.EnterSurplus(k)) duals = master.Duals();
            var values = new long[wanted.Length];
            for (var k = 0; k < values.Length; k++) values[k] = wanted[k] == 0 ? 0 : Math.Max(0, (long)(Math.Min(duals[k] / top, 1000) * Scale));
            if (!pricing.Run(values, stop)) break;
            if (pricing.IsExact && !rest && !work.Anywhere) bound = Math.Max(bound, Farley(pricing, values));
            var entered = false;
            for (var t = 0; t < work.Stock.Length; t++)
            {
                if (pricing.ValueOf(t) / (double)Scale * top <= work.Stock[t].Price + master.Scarcity(t, duals) + 1e-7 * top) continue;
                var pattern = pricing.PatternOf(t, wanted.Length);
                if (rest && !pattern.IsWithin(wanted)) continue;
                pool.Add(pattern);
                entered |= master.Enter(pattern, work.Stock[t].Price);
            }
            entered |= FromPool(master, rest ? wanted : null, OftenFromPool);
            if (!entered) break;
            if (round % Patience != Patience - 1) continue;
            if (master.Price > before * (1 - LeastGain)) break;
            before = master.Price;
        }
        return master;
    }

    // Known patterns that pay again, a few times over.
    private bool FromPool(MasterProgram master, int[]? wanted, int turns)
    {
        var entered = false;
        for (var turn = 0; turn < turns; turn++)
        {
            var duals = master.Duals();
            var (best, gain) = (-1, 1e-7 * work.Stock.Max(s => s.Price));
            for (var p = 0; p < pool.Count; p++)
            {
                if (wanted is not null && !pool[p].IsWithin(wanted)) continue;
                if (master.Gain(pool[p], work.Stock[pool[p].Stock].Price, duals) is var worth && worth > gain) (best, gain) = (p, worth);
            }
            for (var k = 0; k < demand.Length; k++)
                if (-duals[k] > gain) (best, gain) = (-1 - k - 1, -duals[k]);
            if (best == -1) break;
            entered |= best >= 0 ? master.Enter(pool[best], work.Stock[pool[best].Stock].Price) : master.EnterSurplus(-best - 2);
        }
        return entered;
    }

    // If no pattern of any size is worth more than r times its price, values ÷ r are a sound price of every piece.
    private long Farley(PatternPricing pricing, long[] values)
    {
        Int128 sum = 0;
        for (var k = 0; k < values.Length; k++) sum += (Int128)values[k] * demand[k];
        var bound = Int128.MaxValue;
        for (var t = 0; t < work.Stock.Length; t++)
            if (pricing.ValueOf(t) > 0) bound = Int128.Min(bound, (sum * work.Stock[t].Price + pricing.ValueOf(t) - 1) / pricing.ValueOf(t));
        return bound > long.MaxValue ? 0 : (long)bound;
    }

    // Sheets of patterns used so often, as long as pieces last: only whole patterns, since a sheet with gaps is better filled by the search.
    private void TakeWhole(MasterProgram master, double least)
    {
        foreach (var (pattern, times) in master.Mixture().OrderByDescending(m => m.Times))
            for (var n = 0; n < (int)(times + 1 - least) && used[pattern.Stock] < work.Stock[pattern.Stock].Count; n++)
            {
                if (Enumerable.Range(0, demand.Length).Any(k => pattern.Counts[k] > pieces[k].Count)) break;
                var size = work.Stock[pattern.Stock];
                var tree = new SheetTree();
                tree.Open(pattern.Stock, size, work.WholeOf(size));
                tree.Build(pattern, work, k => pieces[k].Dequeue());
                used[pattern.Stock]++;
                sheets.Add(tree);
                if (least < 0.9) return;
            }
    }
}
