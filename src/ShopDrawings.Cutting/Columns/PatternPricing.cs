using System.Numerics;

namespace ShopDrawings.Cutting;

/// <summary>
/// The most valuable way to cut one sheet by cuts that go through, where every kind may be cut as often as it fits: dynamic programming over the places where a
/// cut can make sense (P. Gilmore, R. Gomory, Multistage cutting stock problems of two and more dimensions, Operations Research 13 (1965) 94–120;
/// J. Beasley, Algorithms for unconstrained two-dimensional guillotine cutting, J. Operational Research Society 36 (1985) 297–306; both from memory). Where
/// the places are too many, sides are rounded to a coarse grid on the safe side: patterns then fit all the same, but the value is no bound.
/// </summary>
internal sealed class PatternPricing
{
    private const long MostSide = 100_000;
    private const long MostWork = 250_000_000;
    private const int Finest = 480, Coarsest = 100;

    private readonly int[] xs, ys, toX, toY;
    private readonly int[] itemX, itemY;
    private readonly byte[] lies;
    private readonly (int I, int J)[] sheets;
    // Value of every place, row by row along y; and the piece that alone is worth most there, its number times two, -1 for none.
    private readonly long[] value;
    private readonly int[] piece;
    private readonly int width;

    /// <summary>Whether the values found are exact.</summary>
    public bool IsExact { get; }

    /// <summary>Work of one run.</summary>
    public long Work { get; }

    /// <summary>For kinds named by a piece each; no run costs more than <paramref name="mostWork"/> by much.</summary>
    public PatternPricing(Workload work, int[] first, long mostWork)
    {
        mostWork = Math.Min(mostWork, MostWork);
        long w = work.Stock.Max(s => s.W), h = work.Stock.Max(s => s.H);
        lies = [.. first.Select(i => work.LiesOn(i, 0))];
        IsExact = w <= MostSide && h <= MostSide;
        (xs, ys) = ([], []);
        if (IsExact)
        {
            (xs, ys) = (Places(work, first, w, true), Places(work, first, h, false));
            IsExact = Cost(xs, ys) <= mostWork;
        }
        var coarse = Coarsest;
        while (coarse < Finest && (long)coarse * coarse * coarse / 2 < mostWork) coarse += 20;
        var (ux, uy) = IsExact ? (1L, 1L) : ((w + coarse - 1) / coarse, (h + coarse - 1) / coarse);
        if (!IsExact) (xs, ys) = ([.. Enumerable.Range(0, (int)(w / ux) + 1)], [.. Enumerable.Range(0, (int)(h / uy) + 1)]);
        Work = Cost(xs, ys);
        (toX, toY) = (Table(xs, w / ux), Table(ys, h / uy));
        int Up(long side, long unit) => (int)((side + unit - 1) / unit);
        // Each piece as it lies and turned: x and y in grid units.
        (itemX, itemY) = (new int[2 * first.Length], new int[2 * first.Length]);
        for (var k = 0; k < first.Length; k++)
            (itemX[2 * k], itemY[2 * k], itemX[2 * k + 1], itemY[2 * k + 1]) = (Up(work.X[first[k]], ux), Up(work.Y[first[k]], uy), Up(work.Y[first[k]], ux), Up(work.X[first[k]], uy));
        sheets = [.. work.Stock.Select(s => (toX[(int)(s.W / ux)], toY[(int)(s.H / uy)]))];
        width = ys.Length;
        (value, piece) = (new long[xs.Length * width], new int[xs.Length * width]);
    }

    private static long Cost(int[] xs, int[] ys) => (long)xs.Length * ys.Length * (xs.Length + ys.Length) / 4;

    // Sums of sides, 0 included.
    private int[] Places(Workload work, int[] first, long side, bool x)
    {
        var sides = first.SelectMany((i, k) => new[] { (lies[k] & Workload.AsIs) != 0 ? x ? work.X[i] : work.Y[i] : 0, (lies[k] & Workload.Turned) != 0 ? x ? work.Y[i] : work.X[i] : 0 })
            .Where(s => s > 0 && s <= side).Distinct().ToArray();
        var met = new bool[side + 1];
        met[0] = true;
        for (var v = 0L; v <= side; v++)
            if (met[v])
                foreach (var s in sides)
                    if (v + s <= side) met[v + s] = true;
        return [.. Enumerable.Range(0, (int)side + 1).Where(v => met[v])];
    }

    // The last place not beyond a length.
    private static int[] Table(int[] places, long side)
    {
        var table = new int[side + 1];
        for (int v = 0, k = 0; v <= side; v++)
        {
            if (k + 1 < places.Length && places[k + 1] <= v) k++;
            table[v] = k;
        }
        return table;
    }

    /// <summary>Values every sheet's best pattern for these values of the kinds; false where a stop was asked for.</summary>
    public bool Run(long[] values, CancellationToken stop)
    {
        Array.Clear(value);
        Array.Fill(piece, -1);
        for (var t = 0; t < itemX.Length; t++)
        {
            var k = t >> 1;
            if ((lies[k] & (t % 2 == 0 ? Workload.AsIs : Workload.Turned)) == 0 || values[k] <= 0 || itemX[t] >= toX.Length || itemY[t] >= toY.Length) continue;
            var at = toX[itemX[t]] * width + toY[itemY[t]];
            if (values[k] > value[at]) (value[at], piece[at]) = (values[k], t);
        }
        for (var i = 1; i < xs.Length; i++)
        {
            if (stop.IsCancellationRequested) return false;
            var row = value.AsSpan(i * width, width);
            Raise(row, value.AsSpan((i - 1) * width, width), default);
            for (var a = 1; 2 * xs[a] <= xs[i]; a++) Raise(row, value.AsSpan(a * width, width), value.AsSpan(toX[xs[i] - xs[a]] * width, width));
            for (var j = 1; j < width; j++)
            {
                var (best, y) = (Math.Max(row[j], row[j - 1]), ys[j]);
                for (var b = 1; 2 * ys[b] <= y; b++) best = Math.Max(best, row[b] + row[toY[y - ys[b]]]);
                row[j] = best;
            }
        }
        return true;
    }

    // Each of a row at least the sum of two others.
    private static void Raise(Span<long> row, ReadOnlySpan<long> a, ReadOnlySpan<long> b)
    {
        var j = 0;
        for (; j <= row.Length - Vector<long>.Count; j += Vector<long>.Count)
            Vector.Max(new Vector<long>(row[j..]), b.IsEmpty ? new Vector<long>(a[j..]) : new Vector<long>(a[j..]) + new Vector<long>(b[j..])).CopyTo(row[j..]);
        for (; j < row.Length; j++) row[j] = Math.Max(row[j], a[j] + (b.IsEmpty ? 0 : b[j]));
    }

    /// <summary>What the best pattern of a stock size is worth.</summary>
    public long ValueOf(int stock) => value[sheets[stock].I * width + sheets[stock].J];

    /// <summary>The best pattern of a stock size.</summary>
    public Pattern PatternOf(int stock, int kinds)
    {
        var nodes = new List<(int Kind, int A, int B)>();
        var counts = new int[kinds];
        var root = Trace(sheets[stock].I, sheets[stock].J, nodes, counts);
        return new Pattern(stock, counts, [.. nodes], root);
    }

    // Finds again what made a value.
    private int Trace(int i, int j, List<(int Kind, int A, int B)> nodes, int[] counts)
    {
        var v = value[i * width + j];
        if (v == 0) return -1;
        while (true)
            if (i > 0 && value[(i - 1) * width + j] == v) i--;
            else if (j > 0 && value[i * width + j - 1] == v) j--;
            else break;
        // A piece stands where its own value was not topped; cuts come in the order they were tried.
        for (var a = 1; 2 * xs[a] <= xs[i]; a++)
            if (value[a * width + j] + value[toX[xs[i] - xs[a]] * width + j] == v && value[a * width + j] > 0)
                return Split(SheetTree.Beside, Trace(a, j, nodes, counts), Trace(toX[xs[i] - xs[a]], j, nodes, counts), nodes);
        for (var b = 1; 2 * ys[b] <= ys[j]; b++)
            if (value[i * width + b] + value[i * width + toY[ys[j] - ys[b]]] == v && value[i * width + b] > 0)
                return Split(SheetTree.Stacked, Trace(i, b, nodes, counts), Trace(i, toY[ys[j] - ys[b]], nodes, counts), nodes);
        var t = piece[i * width + j];
        counts[t >> 1]++;
        nodes.Add((SheetTree.Leaf, t, 0));
        return nodes.Count - 1;
    }

    private static int Split(byte kind, int a, int b, List<(int Kind, int A, int B)> nodes)
    {
        if (a < 0 || b < 0) return Math.Max(a, b);
        nodes.Add((kind, a, b));
        return nodes.Count - 1;
    }
}
