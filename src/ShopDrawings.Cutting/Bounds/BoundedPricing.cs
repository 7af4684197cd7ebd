namespace ShopDrawings.Cutting;

/// <summary>
/// The most valuable patterns that hold no kind more often than there are pieces, among those worth more than a given value. What a rectangle may hold at
/// most by <see cref="RasterPricing"/>, and what the sheet around it may, leave few contents of few rectangles to be told apart; of too many contents of one
/// rectangle only the best are, and for the others a value without contents stands, so that a bound stays a bound.
/// </summary>
internal sealed class BoundedPricing(RasterPricing relaxed, int[] demand)
{
    private const int Unreached = int.MinValue / 2;

    /// <summary>What a rectangle holds: its value, the number of pieces of each kind in fields of bits, and whether those are all it holds.</summary>
    private readonly record struct Label(int Value, UInt128 Counts, bool IsWhole);

    private readonly int[] outside = new int[relaxed.Rows * relaxed.Width];
    private readonly Label[]?[] labels = new Label[relaxed.Rows * relaxed.Width][];
    private readonly List<Label> found = [];
    private readonly (int Shift, int Mask)[] field = new (int, int)[demand.Length];
    private UInt128 slack, guards;

    // What is worth no more need not be told apart, and whether something was not for being too much.
    private int floor, most;
    private bool dropped;

    private static readonly Comparison<Label> Order = (x, y) => x.Value != y.Value ? y.Value.CompareTo(x.Value) : x.Counts != y.Counts ? x.Counts.CompareTo(y.Counts) : y.IsWhole.CompareTo(x.IsWhole);

    /// <summary>Whether the last run was given up.</summary>
    public bool IsTooMuch { get; private set; }

    /// <summary>Steps since the beginning.</summary>
    public long Work { get; private set; }

    /// <summary>
    /// A value that no pattern exceeds, after <see cref="RasterPricing.Run"/> for the same values, and patterns worth more than <paramref name="least"/>, not negative, the
    /// best first. Where nothing is worth more it is that value; where the work is too much it is what it was.
    /// </summary>
    public (int Value, List<int[]> Patterns) Run(ReadOnlySpan<int> values, int least, long mostWork, int mostLabels, int mostPatterns)
    {
        (most, IsTooMuch) = (mostLabels, false);
        var top = relaxed.Value(relaxed.Rows - 1, relaxed.Width - 1);
        if (top <= least) return (top, []);
        Fields(values);
        var until = Work + mostWork;
        Array.Clear(labels);
        Surround(least);
        Work += outside.Length / 4;
        for (var i = 0; i < relaxed.Rows; i++)
            for (var j = 0; j < relaxed.Width; j++)
            {
                if (relaxed.Value(i, j) + outside[i * relaxed.Width + j] <= least) continue;
                Fill(i, j, least - outside[i * relaxed.Width + j], values);
                IsTooMuch = Work > until;
                if (IsTooMuch) return (top, []);
            }
        if (labels[^1] is not { Length: > 0 } best) return (least, []);
        return (best[0].Value, [.. best.Where(l => l.IsWhole).Take(mostPatterns).Select(l => field.Select(f => (int)((l.Counts >> f.Shift) & (UInt128)f.Mask)).ToArray())]);
    }

    // A field for every kind of value as long as there is room: one bit more than its number needs, which says when it is exceeded.
    private void Fields(ReadOnlySpan<int> values)
    {
        (slack, guards) = (0, 0);
        var shift = 0;
        for (var k = 0; k < demand.Length; k++)
        {
            field[k] = (0, 0);
            if (values[k] == 0) continue;
            var bits = 32 - int.LeadingZeroCount(demand[k]);
            if (shift + bits + 1 > 128) continue;
            field[k] = (shift, (1 << bits) - 1);
            slack |= (UInt128)((1 << bits) - 1 - demand[k]) << shift;
            guards |= UInt128.One << (shift + bits);
            shift += bits + 1;
        }
    }

    // What the sheet around a rectangle may hold at most, where rectangle and surroundings together are worth enough.
    private void Surround(int least)
    {
        var width = relaxed.Width;
        Array.Fill(outside, Unreached);
        outside[^1] = 0;
        for (var i = relaxed.Rows - 1; i >= 0; i--)
        {
            var row = i * width;
            for (var j = width - 1; j > 0; j--)
            {
                var o = outside[row + j];
                if (relaxed.Value(i, j) + o <= least) continue;
                Reach(row + j - 1, o);
                foreach (var (a, b) in relaxed.Along[j])
                {
                    var (va, vb) = (relaxed.Value(i, a), relaxed.Value(i, b));
                    if (va + vb + o <= least) continue;
                    Reach(row + a, o + vb);
                    Reach(row + b, o + va);
                }
                Work += relaxed.Along[j].Length;
            }
            for (var j = width - 1; j > 0 && i > 0; j--)
            {
                var o = outside[row + j];
                if (relaxed.Value(i, j) + o <= least) continue;
                Reach(row - width + j, o);
                foreach (var (a, b) in relaxed.Across[i])
                {
                    var (va, vb) = (relaxed.Value(a, j), relaxed.Value(b, j));
                    if (va + vb + o <= least) continue;
                    Reach(a * width + j, o + vb);
                    Reach(b * width + j, o + va);
                }
                Work += relaxed.Across[i].Length;
            }
        }
    }

    private void Reach(int at, int value) => outside[at] = Math.Max(outside[at], value);

    // The contents of a rectangle worth more than so much.
    private void Fill(int i, int j, int least, ReadOnlySpan<int> values)
    {
        found.Clear();
        (floor, dropped) = (least, false);
        foreach (var kind in relaxed.KindsAt(i, j))
            if (values[kind] > floor) found.Add(field[kind].Mask == 0 ? new Label(values[kind], 0, false) : new Label(values[kind], UInt128.One << field[kind].Shift, true));
        if (i > 0) Take(labels[(i - 1) * relaxed.Width + j]);
        if (j > 0) Take(labels[i * relaxed.Width + j - 1]);
        foreach (var (a, b) in relaxed.Across[i]) Join(labels[a * relaxed.Width + j], labels[b * relaxed.Width + j]);
        foreach (var (a, b) in relaxed.Along[j]) Join(labels[i * relaxed.Width + a], labels[i * relaxed.Width + b]);
        Work += relaxed.Across[i].Length + relaxed.Along[j].Length;
        if (found.Count == 0 && !dropped) return;
        Sift();
        // What was dropped is worth no more than this and may hold anything.
        if (dropped) found.Add(new Label(floor, 0, false));
        labels[i * relaxed.Width + j] = [.. found];
    }

    // Sorts what was found, without what is there twice and what is too much.
    private void Sift()
    {
        Work += 8 * found.Count;
        found.Sort(Order);
        var kept = 0;
        for (var k = 0; k < found.Count; k++)
        {
            var label = found[k];
            if (label.Value <= floor) break;
            if (kept > 0 && found[kept - 1].Counts == label.Counts && found[kept - 1].Value == label.Value) continue;
            if (kept == most || (label.Counts == 0 && !label.IsWhole))
            {
                (floor, dropped) = (label.Value, true);
                break;
            }
            found[kept++] = label;
        }
        found.RemoveRange(kept, found.Count - kept);
    }

    private void Add(in Label label)
    {
        found.Add(label);
        if (found.Count >= 8 * most) Sift();
    }

    private void Take(Label[]? from)
    {
        if (from is null) return;
        foreach (var label in from)
        {
            if (label.Value <= floor) break;
            Add(label);
        }
    }

    private void Join(Label[]? left, Label[]? right)
    {
        if (left is null || right is null) return;
        foreach (var a in left)
        {
            if (a.Value + right[0].Value <= floor) break;
            foreach (var b in right)
            {
                if (a.Value + b.Value <= floor) break;
                Work++;
                var counts = a.Counts + b.Counts;
                if (((counts + slack) & guards) == 0) Add(new Label(a.Value + b.Value, counts, a.IsWhole && b.IsWhole));
            }
        }
    }
}
