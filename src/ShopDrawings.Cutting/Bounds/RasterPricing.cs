using System.Numerics;

namespace ShopDrawings.Cutting;

/// <summary>
/// An upper bound, in whole numbers, on what the most valuable pattern of a sheet is worth where cuts go through and every kind may be cut as often as it
/// fits: dynamic programming as in <see cref="PatternPricing"/>, but only over those sides of rectangles that matter on this sheet (reduced raster points:
/// G. Scheithauer, J. Terno, The G4-heuristic for the pallet loading problem, J. Operational Research Society 47 (1996) 511–522, from memory). That the
/// bound is sound does not rest on them: a length that lies between two of them is taken for the larger.
/// </summary>
internal sealed class RasterPricing
{
    /// <summary>One way a kind may lie.</summary>
    internal readonly record struct Lying(int Kind, int X, int Y, bool IsTurned = false);

    /// <summary>Values from here on are not to be trusted: sums may have run over.</summary>
    public const int Limit = 1 << 30;

    private readonly RasterAxis across, along;
    private readonly Lying[] lyings;
    private readonly (int I, int J)[] at;
    private readonly Dictionary<(int I, int J), Lying[]> lyingAt = [];
    private readonly int kinds, width;
    private readonly int[] value = [];

    /// <summary>Whether there is too much to do for it to run.</summary>
    public bool IsTooFine => across.IsTooFine || along.IsTooFine;

    /// <summary>Steps of one run.</summary>
    public long Work { get; }

    /// <summary>Lengths across and along.</summary>
    public int Rows => across.States.Length;

    /// <inheritdoc cref="Rows"/>
    public int Width => width;

    /// <summary>How each length may be cut in two.</summary>
    public (int A, int B)[][] Across => across.Pairs;

    /// <inheritdoc cref="Across"/>
    public (int A, int B)[][] Along => along.Pairs;

    /// <summary>What a rectangle is worth at most, after a run.</summary>
    public int Value(int i, int j) => value[i * width + j];

    /// <summary>What is taken for this rectangle.</summary>
    public ReadOnlySpan<Lying> LyingAt(int i, int j) => lyingAt.TryGetValue((i, j), out var there) ? there : [];

    /// <summary>For a sheet of w by h and pieces, <paramref name="count"/> of each kind.</summary>
    public RasterPricing(IEnumerable<Lying> ways, int[] count, int w, int h)
    {
        kinds = count.Length;
        lyings = [.. ways.Where(i => i.X <= w && i.Y <= h)];
        across = new RasterAxis(lyings.Select(i => (i.X, count[i.Kind])), w);
        along = new RasterAxis(lyings.Select(i => (i.Y, count[i.Kind])), h);
        at = [.. lyings.Select(i => (across.Up(i.X), along.Up(i.Y)))];
        lyingAt = lyings.Select((l, k) => (Lying: l, At: at[k])).GroupBy(l => l.At).ToDictionary(g => g.Key, g => g.Select(l => l.Lying).DistinctBy(l => l.Kind).ToArray());
        width = along.States.Length;
        if (IsTooFine) return;
        value = new int[across.States.Length * width];
        Work = across.Pairs.Sum(p => (long)p.Length) * width / 8 + along.Pairs.Sum(p => (long)p.Length) * across.States.Length;
    }

    /// <summary>The best pattern's value for values of the kinds, none negative; none is worth more, unless it reaches <see cref="Limit"/>.</summary>
    public int Run(ReadOnlySpan<int> values)
    {
        Array.Clear(value);
        for (var k = 0; k < lyings.Length; k++)
        {
            ref var v = ref value[at[k].I * width + at[k].J];
            v = Math.Max(v, values[lyings[k].Kind]);
        }
        for (var i = 1; i < Rows; i++)
        {
            var row = Row(i);
            Raise(row, Row(i - 1), Row(0));
            foreach (var (a, b) in across.Pairs[i]) Raise(row, Row(a), Row(b));
            for (var j = 1; j < width; j++)
            {
                var best = Math.Max(row[j], row[j - 1]);
                foreach (var (a, b) in along.Pairs[j]) best = Math.Max(best, row[a] + row[b]);
                row[j] = best;
            }
        }
        return value[^1];
    }

    private Span<int> Row(int i) => value.AsSpan(i * width, width);

    // Each of a row at least the sum of two others.
    private static void Raise(Span<int> row, ReadOnlySpan<int> a, ReadOnlySpan<int> b)
    {
        var j = 0;
        for (; j <= row.Length - Vector<int>.Count; j += Vector<int>.Count)
            Vector.Max(new Vector<int>(row[j..]), new Vector<int>(a[j..]) + new Vector<int>(b[j..])).CopyTo(row[j..]);
        for (; j < row.Length; j++) row[j] = Math.Max(row[j], a[j] + b[j]);
    }

    /// <summary>How often each kind is in the patterns last found: the best, and what other first cuts make of the sheet, down to a value.</summary>
    public List<int[]> Counts(ReadOnlySpan<int> values, int least, int most)
    {
        var (i, j) = (Rows - 1, width - 1);
        var cuts = new List<(int Worth, bool Across, int A, int B)>();
        foreach (var (a, b) in across.Pairs[i])
            if (Value(a, j) + Value(b, j) is var worth && worth >= least) cuts.Add((worth, true, a, b));
        foreach (var (a, b) in along.Pairs[j])
            if (Value(i, a) + Value(i, b) is var worth && worth >= least) cuts.Add((worth, false, a, b));
        cuts.Sort((x, y) => y.CompareTo(x));
        var found = new List<int[]> { new int[kinds] };
        Trace(i, j, found[0], values);
        foreach (var (_, byAcross, a, b) in cuts)
        {
            if (found.Count >= most) break;
            var counts = new int[kinds];
            Trace(byAcross ? a : i, byAcross ? j : a, counts, values);
            Trace(byAcross ? b : i, byAcross ? j : b, counts, values);
            if (!found.Exists(f => f.AsSpan().SequenceEqual(counts))) found.Add(counts);
        }
        return found;
    }

    private void Trace(int i, int j, int[] counts, ReadOnlySpan<int> values)
    {
        var v = Value(i, j);
        if (v == 0) return;
        while (true)
            if (Value(i - 1, j) == v) i--;
            else if (Value(i, j - 1) == v) j--;
            else break;
        foreach (var (kind, _, _, _) in LyingAt(i, j))
            if (values[kind] == v)
            {
                counts[kind]++;
                return;
            }
        foreach (var (a, b) in across.Pairs[i])
            if (Value(a, j) + Value(b, j) == v)
            {
                Trace(a, j, counts, values);
                Trace(b, j, counts, values);
                return;
            }
        foreach (var (a, b) in along.Pairs[j])
            if (Value(i, a) + Value(i, b) == v)
            {
                Trace(i, a, counts, values);
                Trace(i, b, counts, values);
                return;
            }
    }
}
