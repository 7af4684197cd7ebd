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

    private readonly Workload work;
    private readonly int[] first, demand;

    private ColumnGeneration(Workload work)
    {
        this.work = work;
        (first, demand) = (new int[work.Kinds], new int[work.Kinds]);
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
        var master = new MasterProgram(demand, work.Stock);
        var pricing = new PatternPricing(work, first, Math.Max(1_000_000, effort / 40));
        var pool = new List<Pattern>();
        var (spent, bound, before) = (0L, 0L, double.MaxValue);
        var top = (double)work.Stock.Max(s => s.Price);
        for (var round = 0; round < MostRounds && spent < effort; round++)
        {
            spent += pricing.Work / 4;
            var duals = master.Duals();
            for (var k = 0; k < demand.Length; k++)
                if (duals[k] < -1e-7 * top && master.Enter(null, 0, k)) duals = master.Duals();
            var values = new long[demand.Length];
            for (var k = 0; k < values.Length; k++) values[k] = Math.Max(0, (long)(Math.Min(duals[k] / top, 1000) * Scale));
            if (!pricing.Run(values, stop)) break;
            if (pricing.IsExact) bound = Math.Max(bound, Farley(pricing, values));
            var entered = false;
            for (var t = 0; t < work.Stock.Length; t++)
            {
                if (pricing.ValueOf(t) / (double)Scale * top <= work.Stock[t].Price + master.Scarcity(t, duals) + 1e-7 * top) continue;
                var pattern = pricing.PatternOf(t, demand.Length);
                pool.Add(pattern);
                entered |= master.Enter(pattern, work.Stock[t].Price, 0);
            }
            entered |= FromPool(master, pool);
            if (!entered) break;
            if (round % Patience != Patience - 1) continue;
            var price = master.Price;
            if (price > before * (1 - LeastGain)) break;
            before = price;
        }
        var (sheets, left) = WholeSheets(master);
        return (bound, sheets, left, spent);
    }

    // Known patterns that pay again, a few times over.
    private bool FromPool(MasterProgram master, List<Pattern> pool)
    {
        var entered = false;
        for (var turn = 0; turn < 30; turn++)
        {
            var duals = master.Duals();
            var (best, gain) = (-1, 1e-7 * work.Stock.Max(s => s.Price));
            for (var p = 0; p < pool.Count; p++)
            {
                var worth = -work.Stock[pool[p].Stock].Price - master.Scarcity(pool[p].Stock, duals);
                for (var k = 0; k < demand.Length; k++) worth += duals[k] * pool[p].Counts[k];
                if (worth > gain) (best, gain) = (p, worth);
            }
            for (var k = 0; k < demand.Length; k++)
                if (-duals[k] > gain) (best, gain) = (-1 - k - 1, -duals[k]);
            if (best == -1) break;
            entered |= best >= 0 ? master.Enter(pool[best], work.Stock[pool[best].Stock].Price, 0) : master.Enter(null, 0, -best - 2);
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

    private (List<SheetTree> Sheets, int[] Left) WholeSheets(MasterProgram master)
    {
        var pieces = new Queue<int>[demand.Length];
        for (var k = 0; k < pieces.Length; k++) pieces[k] = new Queue<int>();
        for (var i = 0; i < work.Count; i++) pieces[work.KindOf[i]].Enqueue(i);
        var used = new int[work.Stock.Length];
        var sheets = new List<SheetTree>();
        foreach (var (pattern, times) in master.Mixture().OrderByDescending(m => m.Times))
            for (var n = 0; n < (int)(times + 1e-6) && used[pattern.Stock] < work.Stock[pattern.Stock].Count; n++)
            {
                // Only whole patterns: a sheet with gaps is better filled by the search.
                if (Enumerable.Range(0, demand.Length).Any(k => pattern.Counts[k] > pieces[k].Count)) break;
                var size = work.Stock[pattern.Stock];
                var tree = new SheetTree();
                tree.Open(pattern.Stock, size, work.Rough(size.W, size.H));
                tree.Build(pattern, work, k => pieces[k].Dequeue());
                used[pattern.Stock]++;
                sheets.Add(tree);
            }
        return (sheets, [.. pieces.SelectMany(q => q).Order()]);
    }
}
