namespace ShopDrawings.Cutting;

/// <summary>
/// Lower bounds from dual feasible functions: stretch every side so that whatever lay side by side still does, and count areas again. Families:
/// S. Fekete, J. Schepers, New classes of fast lower bounds for bin packing problems, Mathematical Programming 91 (2001) 311–329;
/// J. Carlier, F. Clautiaux, A. Moukrim, New reduction procedures and lower bounds for the two-dimensional bin packing problem with fixed orientation,
/// Computers and Operations Research 34 (2007) 2223–2250 (both from memory). All used here are superadditive, so a smaller sheet's capacity is the function of
/// its own sides. Valid for any packing, so for cuts that go through as well.
/// </summary>
internal sealed class DualFeasible
{
    private const long MostWork = 30_000_000;

    private readonly Workload work;
    private readonly long w, h;
    private readonly int[] first, count;

    private DualFeasible(Workload work)
    {
        this.work = work;
        foreach (var s in work.Stock) (w, h) = (Math.Max(w, s.W), Math.Max(h, s.H));
        (first, count) = (new int[work.Kinds], new int[work.Kinds]);
        for (var i = work.Count - 1; i >= 0; i--)
        {
            first[work.KindOf[i]] = i;
            count[work.KindOf[i]]++;
        }
    }

    /// <summary>The least price any plan has; null where all the stock is surely too little. What it rests on is added to <paramref name="counts"/>.</summary>
    public static long? Bound(Workload work, SheetCounts? counts = null) => new DualFeasible(work).Bound(counts);

    private long? Bound(SheetCounts? counts)
    {
        if (first.Length == 0) return 0;
        if (work.Stock.Length == 0) return null;
        var turns = work.Stock.Any(s => work.Lies.Any(l => (l & Workload.Turned) != 0));
        var along = Functions(w, turns);
        var across = Functions(h, turns);
        var stretchedX = along.Select(f => Stretch(f, w, false)).ToArray();
        var stretchedY = across.Select(f => Stretch(f, h, true)).ToArray();
        // Where a piece lies turned: its y along the sheet's x.
        var turnedX = turns ? along.Select(f => Stretch(f, w, true)).ToArray() : stretchedX;
        var turnedY = turns ? across.Select(f => Stretch(f, h, false)).ToArray() : stretchedY;
        var lies = first.Select(i => Enumerable.Range(0, work.Stock.Length).Aggregate((byte)0, (l, s) => (byte)(l | work.LiesOn(i, s)))).ToArray();

        long? best = 0;
        var bestRatio = 0.0;
        for (var a = 0; a < along.Count; a++)
            for (var b = 0; b < across.Count; b++)
            {
                var (capX, capY) = ((double)Value(along[a], w, w), (double)Value(across[b], h, h));
                var sum = 0.0;
                for (var k = 0; k < first.Length; k++)
                {
                    var area = double.MaxValue;
                    if ((lies[k] & Workload.AsIs) != 0) area = (double)stretchedX[a][k] * stretchedY[b][k];
                    if ((lies[k] & Workload.Turned) != 0) area = Math.Min(area, (double)turnedX[a][k] * turnedY[b][k]);
                    sum += area * count[k];
                }
                var ratio = sum / (capX * capY);
                if (work.Stock.Length == 1 ? Math.Ceiling(ratio - 1e-9) <= Math.Ceiling(bestRatio - 1e-9) : ratio <= bestRatio * (a == 0 && b == 0 ? 1 : 0.9)) continue;
                bestRatio = Math.Max(bestRatio, ratio);
                Int128 need = 0;
                for (var k = 0; k < first.Length; k++)
                {
                    var area = Int128.MaxValue;
                    if ((lies[k] & Workload.AsIs) != 0) area = (Int128)stretchedX[a][k] * stretchedY[b][k];
                    if ((lies[k] & Workload.Turned) != 0) area = Int128.Min(area, (Int128)turnedX[a][k] * turnedY[b][k]);
                    need += area * count[k];
                }
                var capacity = work.Stock.Select(s => (Int128)Value(along[a], s.W, w) * Value(across[b], s.H, h)).ToArray();
                var price = SheetCover.LeastPrice(need, capacity, work.Stock);
                if (price is null) return null;
                if (price > best || a + b == 0) counts?.Add(new SheetCounts.Cut(capacity, need));
                best = Math.Max(best.Value, price.Value);
            }
        return best;
    }

    private List<(int Family, long Parameter)> Functions(long side, bool turns)
    {
        var sides = new SortedSet<long>();
        for (var k = 0; k < first.Length; k++)
        {
            if (turns || side == w) sides.Add(work.X[first[k]]);
            if (turns || side == h) sides.Add(work.Y[first[k]]);
        }
        var most = (int)Math.Max(6, Math.Sqrt((double)MostWork / first.Length / (work.Stock.Length > 1 ? 4 : 1)) / 3);
        var thresholds = sides.Select(s => s <= side / 2 ? s : side - s + 1).Concat(sides.Select(s => s <= side / 2 ? s + 1 : side - s)).Where(t => t > 0 && t <= side / 2).Distinct().Order().ToArray();
        if (thresholds.Length > most) thresholds = [.. Enumerable.Range(0, most).Select(k => thresholds[(int)((long)k * thresholds.Length / most)])];
        var list = new List<(int, long)> { (0, 0) };
        list.AddRange(thresholds.Select(t => (0, t)));
        list.AddRange(thresholds.Select(t => (2, t)));
        for (var k = 1; k <= Math.Min(most, 24); k++) list.Add((1, k));
        return list;
    }

    private long[] Stretch((int Family, long Parameter) f, long side, bool y) => [.. first.Select(i => Value(f, Math.Min(side, y ? work.Y[i] : work.X[i]), side))];

    private static long Value((int Family, long Parameter) f, long x, long side)
    {
        var p = f.Parameter;
        switch (f.Family)
        {
            case 0: return x > side - p ? side : x < p ? 0 : x;
            case 1: return (Int128)(p + 1) * x % side == 0 ? x * p : (long)((Int128)(p + 1) * x / side) * side;
            default: return 2 * x > side ? 2 * (side / p - (side - x) / p) : 2 * x == side ? side / p : 2 * (x / p);
        }
    }
}
