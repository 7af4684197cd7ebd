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
    internal readonly record struct Lying(int Kind, int X, int Y);

    private readonly RasterAxis across, along;
    private readonly Lying[] lyings;
    private readonly (int I, int J)[] at;
    private readonly int kinds, width;
    private int[] value = [];
    private CountedKinds layers = CountedKinds.None;

    /// <summary>Whether there is too much to do for it to run.</summary>
    public bool IsTooFine => across.IsTooFine || along.IsTooFine;

    /// <summary>Steps of one run.</summary>
    public long Work { get; }

    /// <summary>For a sheet of w by h and pieces, <paramref name="count"/> of each kind.</summary>
    public RasterPricing(IEnumerable<Lying> ways, int[] count, int w, int h)
    {
        kinds = count.Length;
        lyings = [.. ways.Where(i => i.X <= w && i.Y <= h)];
        across = new RasterAxis(lyings.Select(i => (i.X, count[i.Kind])), w);
        along = new RasterAxis(lyings.Select(i => (i.Y, count[i.Kind])), h);
        at = [.. lyings.Select(i => (across.Up(i.X), along.Up(i.Y)))];
        width = along.States.Length;
        if (IsTooFine) return;
        Work = across.Pairs.Sum(p => (long)p.Length) * width / Vector<int>.Count + along.Pairs.Sum(p => (long)p.Length) * across.States.Length;
    }

    /// <summary>
    /// The best pattern's value for values of the kinds, none negative; none is worth more. No pattern may be worth 2^30 or more. Kinds that
    /// <paramref name="counted"/> names are cut no more often than there are pieces.
    /// </summary>
    public int Run(ReadOnlySpan<int> values, CountedKinds counted)
    {
        layers = counted;
        var size = across.States.Length * width;
        if (value.Length < size * layers.Count) value = new int[size * layers.Count];
        else Array.Clear(value, 0, size * layers.Count);
        for (var layer = 0; layer < layers.Count; layer++)
            for (var k = 0; k < lyings.Length; k++)
            {
                if (!layers.Holds(layer, lyings[k].Kind)) continue;
                ref var v = ref value[layer * size + at[k].I * width + at[k].J];
                v = Math.Max(v, values[lyings[k].Kind]);
            }
        for (var i = 1; i < across.States.Length; i++)
            for (var layer = 0; layer < layers.Count; layer++)
            {
                var row = Row(layer, i);
                var splits = layers.Splits[layer];
                Raise(row, Row(layer, i - 1), Row(0, 0));
                foreach (var (a, b) in across.Pairs[i])
                    foreach (var (p, q) in splits) Raise(row, Row(p, a), Row(q, b));
                if (splits.Length == 1)
                {
                    for (var j = 1; j < width; j++)
                    {
                        var best = Math.Max(row[j], row[j - 1]);
                        foreach (var (a, b) in along.Pairs[j]) best = Math.Max(best, row[a] + row[b]);
                        row[j] = best;
                    }
                    continue;
                }
                for (var j = 1; j < width; j++)
                {
                    row[j] = Math.Max(row[j], row[j - 1]);
                    if (along.Pairs[j].Length == 0) continue;
                    foreach (var (p, q) in splits)
                    {
                        var left = Row(p, i);
                        var right = Row(q, i);
                        var best = row[j];
                        foreach (var (a, b) in along.Pairs[j]) best = Math.Max(best, left[a] + right[b]);
                        row[j] = best;
                    }
                }
            }
        return value[size * layers.Count - 1];
    }

    private Span<int> Row(int layer, int i) => value.AsSpan((layer * across.States.Length + i) * width, width);

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
        var (layer, i, j) = (layers.Count - 1, across.States.Length - 1, width - 1);
        var cuts = new List<(int Worth, int P, int Q, bool Across, int A, int B)>();
        foreach (var (p, q) in layers.Splits[layer])
        {
            foreach (var (a, b) in across.Pairs[i])
                if (Row(p, a)[j] + Row(q, b)[j] is var worth && worth >= least) cuts.Add((worth, p, q, true, a, b));
            foreach (var (a, b) in along.Pairs[j])
                if (Row(p, i)[a] + Row(q, i)[b] is var worth && worth >= least) cuts.Add((worth, p, q, false, a, b));
        }
        cuts.Sort((x, y) => y.CompareTo(x));
        var found = new List<int[]> { new int[kinds] };
        Trace(layer, i, j, found[0], values);
        foreach (var (_, p, q, byAcross, a, b) in cuts)
        {
            if (found.Count >= most) break;
            var counts = new int[kinds];
            Trace(p, byAcross ? a : i, byAcross ? j : a, counts, values);
            Trace(q, byAcross ? b : i, byAcross ? j : b, counts, values);
            if (!found.Exists(f => f.AsSpan().SequenceEqual(counts))) found.Add(counts);
        }
        return found;
    }

    private void Trace(int layer, int i, int j, int[] counts, ReadOnlySpan<int> values)
    {
        var v = Row(layer, i)[j];
        if (v == 0) return;
        while (true)
            if (Row(layer, i - 1)[j] == v) i--;
            else if (Row(layer, i)[j - 1] == v) j--;
            else break;
        for (var k = 0; k < lyings.Length; k++)
            if (at[k] == (i, j) && values[lyings[k].Kind] == v && layers.Holds(layer, lyings[k].Kind))
            {
                counts[lyings[k].Kind]++;
                return;
            }
        foreach (var (p, q) in layers.Splits[layer])
        {
            foreach (var (a, b) in across.Pairs[i])
                if (Row(p, a)[j] + Row(q, b)[j] == v)
                {
                    Trace(p, a, j, counts, values);
                    Trace(q, b, j, counts, values);
                    return;
                }
            foreach (var (a, b) in along.Pairs[j])
                if (Row(p, i)[a] + Row(q, i)[b] == v)
                {
                    Trace(p, i, a, counts, values);
                    Trace(q, i, b, counts, values);
                    return;
                }
        }
    }
}
