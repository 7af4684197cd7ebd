using System.Numerics;

namespace ShopDrawings.Cutting;

/// <summary>
/// The most valuable patterns that hold no kind more often than there are pieces. What rectangles hold is told apart only by those kinds that came out too often
/// before, and of two contents one that is worth no more and holds no less of them is dropped (decremental state space relaxation: G. Righini, M. Salani, New
/// dynamic programming algorithms for the resource constrained elementary shortest path problem, Networks 51 (2008) 155–170, from memory). What a rectangle may
/// hold at most, by <see cref="RasterPricing"/> at first and by what came out with less told apart later, and what the sheet around it may, leave few rectangles.
/// </summary>
internal sealed class BoundedPricing
{
    private const int Unreached = int.MinValue / 2;

    // Contents a rectangle may have before they are sifted, and of all rectangles before it is too much.
    private const int Unsifted = 1 << 13, MostContents = 3_000_000;

    // The first step below what the sheet is worth at most, as a share of it.
    private const int FirstStep = 1_000;

    // A pass that takes no more work lets the next step be twice as large.
    private const long CheapPass = 100_000;

    // Contents of a rectangle that are kept where all are too many.
    private const int FewContents = 4;

    private readonly RasterPricing relaxed;
    private readonly int[] demand;
    private readonly int stock, width;
    private readonly int[] outside, bound, around;
    private readonly (int Start, int Count)[] at;
    private readonly bool[] critical;
    private Content[] contents = new Content[1 << 14];
    private Content[] found = new Content[Unsifted];
    private PieceFields? fields;
    private int total, met, floor, keep = int.MaxValue;

    // Whether all kinds are told apart, so that nothing is dropped.
    private bool all;

    /// <summary>What a rectangle holds: its value, and the number of pieces of each kind that is told apart.</summary>
    internal readonly record struct Content(int Value, UInt128 Counts);

    private readonly struct Order : IComparer<Content>
    {
        public int Compare(Content x, Content y) => x.Value != y.Value ? (x.Value > y.Value ? -1 : 1) : x.Counts.CompareTo(y.Counts);
    }

    /// <summary>For sheets of a size, priced by <paramref name="relaxed"/>, and so many pieces of each kind.</summary>
    public BoundedPricing(RasterPricing relaxed, int[] demand, int stock)
    {
        (this.relaxed, this.demand, this.stock, width) = (relaxed, demand, stock, relaxed.Width);
        (outside, bound, at) = (new int[relaxed.Rows * width], new int[relaxed.Rows * width], new (int, int)[relaxed.Rows * width]);
        (critical, around) = (new bool[demand.Length], new int[width]);
    }

    /// <summary>No pattern is worth more.</summary>
    public int Top { get; private set; }

    /// <summary>Whether the last run was given up.</summary>
    public bool IsTooMuch { get; private set; }

    /// <summary>The kinds told apart in the last run.</summary>
    public PieceFields? Division => fields;

    /// <summary>Steps since the beginning.</summary>
    public long Work { get; private set; }

    /// <summary>
    /// Brings <see cref="Top"/> down to what the best pattern is worth, or to <paramref name="known"/>, what a pattern known is worth. Gives patterns met, the best
    /// first; those that held too much have no cuts. Nothing is found where <see cref="Top"/> is
    /// <see cref="RasterPricing.Limit"/> or more: sums may have run over.
    /// </summary>
    public List<Pattern> Best(int[] values, int known, long mostWork, int mostPatterns, CancellationToken stop)
    {
        var (patterns, until) = (new List<Pattern>(), Work + mostWork);
        (all, IsTooMuch) = (false, false);
        Array.Clear(critical);
        Work += relaxed.Work / 4;
        Top = relaxed.Run(values);
        if (Top >= RasterPricing.Limit) return patterns;
        for (var i = 0; i < relaxed.Rows; i++)
            for (var j = 0; j < width; j++) bound[i * width + j] = relaxed.Value(i, j);
        var step = Top / FirstStep + 1L;
        while (Top > known)
        {
            var least = (int)Math.Max(known, Math.Max(0, Top - step));
            var before = Work;
            IsTooMuch = !Pass(values, least, until, stop);
            if (IsTooMuch)
            {
                Few(values, known, step, mostWork / 2, mostPatterns, patterns, stop);
                break;
            }
            var (start, count) = at[^1];
            if (count == 0)
            {
                Top = least;
                // The work grows much faster than the step.
                if (Work - before < CheapPass) step *= 2;
                continue;
            }
            Top = contents[start].Value;
            var pattern = Trace(contents[start], values);
            if (pattern.IsWithin(demand))
            {
                patterns.Add(pattern);
                for (var n = start + 1; n < start + count && patterns.Count < mostPatterns; n++) patterns.Add(Trace(contents[n], values).Within(demand));
                break;
            }
            for (var k = 0; k < demand.Length; k++) critical[k] |= pattern.Counts[k] > demand[k];
            pattern = pattern.Within(demand);
            patterns.Add(pattern);
            known = Math.Max(known, pattern.Worth(values));
        }
        return [.. patterns.OrderByDescending(p => p.Worth(values))];
    }

    // Where all contents are too many, the best few of every rectangle lead to good patterns.
    private void Few(int[] values, int known, long step, long mostWork, int mostPatterns, List<Pattern> patterns, CancellationToken stop)
    {
        (all, keep) = (true, FewContents);
        var until = Work + mostWork;
        for (var least = (int)Math.Max(known, Math.Max(0, Top - step)); Pass(values, least, until, stop); least = (int)Math.Max(known, Math.Max(0, Top - step)))
        {
            for (var n = at[^1].Start; n < at[^1].Start + at[^1].Count && patterns.Count < mostPatterns; n++) patterns.Add(Trace(contents[n], values).Within(demand));
            if (at[^1].Count > 0 || least <= known) break;
            step *= 2;
        }
        (all, keep) = (false, int.MaxValue);
    }

    /// <summary>Everything a sheet may hold that is worth more than <paramref name="least"/>, the best first, after <see cref="Best"/> for the same values; null where that is too much.</summary>
    public Content[]? All(int[] values, int least, long mostWork, CancellationToken stop)
    {
        all = true;
        IsTooMuch = !Pass(values, least, Work + mostWork, stop);
        return IsTooMuch ? null : contents[at[^1].Start..(at[^1].Start + at[^1].Count)];
    }

    /// <summary>How a sheet is cut into what <see cref="All"/> gave.</summary>
    public Pattern Trace(Content content, int[] values)
    {
        var (nodes, counts) = (new List<(int Kind, int A, int B)>(), new int[demand.Length]);
        var root = Trace(relaxed.Rows - 1, width - 1, content, nodes, counts, values);
        return new Pattern(stock, counts, [.. nodes], root);
    }

    // Fills all rectangles that may be part of a sheet worth more than so much; false where that is too much.
    private bool Pass(int[] values, int least, long until, CancellationToken stop)
    {
        if (!Divide(values)) return false;
        Surround(least);
        Work += outside.Length / 4;
        total = 0;
        Array.Clear(at);
        for (var i = 0; i < relaxed.Rows; i++)
        {
            if (stop.IsCancellationRequested) return false;
            for (var j = 0; j < width; j++)
            {
                var r = i * width + j;
                if (bound[r] + outside[r] <= least) continue;
                floor = least - outside[r];
                Fill(i, j, values);
                if (Work > until || total > MostContents) return false;
                if (!all && keep == int.MaxValue) bound[r] = Math.Min(bound[r], at[r].Count > 0 ? contents[at[r].Start].Value : floor);
            }
        }
        return true;
    }

    // Whether the kinds to be told apart have bits enough.
    private bool Divide(int[] values)
    {
        var apart = new bool[demand.Length];
        for (var k = 0; k < demand.Length; k++) apart[k] = values[k] != 0 && (all || critical[k]);
        fields = PieceFields.For(demand, apart)!;
        return fields is not null;
    }

    // What the sheet around a rectangle may hold at most, where rectangle and surroundings together are worth enough.
    private void Surround(int least)
    {
        Array.Fill(outside, Unreached);
        outside[^1] = 0;
        for (var i = relaxed.Rows - 1; i >= 0; i--)
        {
            var row = i * width;
            for (var j = width - 1; j > 0; j--)
            {
                var o = outside[row + j];
                if (bound[row + j] + o <= least) continue;
                Reach(row + j - 1, o);
                foreach (var (a, b) in relaxed.Along[j])
                {
                    var (va, vb) = (bound[row + a], bound[row + b]);
                    if (va + vb + o <= least) continue;
                    Reach(row + a, o + vb);
                    Reach(row + b, o + va);
                }
                Work += relaxed.Along[j].Length / 4;
            }
            if (i == 0) break;
            var any = false;
            for (var j = 0; j < width; j++)
            {
                around[j] = bound[row + j] + outside[row + j] > least ? outside[row + j] : Unreached;
                if (around[j] == Unreached) continue;
                any = true;
                Reach(row - width + j, around[j]);
            }
            if (!any) continue;
            foreach (var (a, b) in relaxed.Across[i]) Surround(a, b, least);
            Work += relaxed.Across[i].Length * (long)width / 32;
        }
    }

    // Two rows whose rectangles together make those of a third, several at a time.
    private void Surround(int a, int b, int least)
    {
        ReadOnlySpan<int> whole = around, boundA = bound.AsSpan(a * width, width), boundB = bound.AsSpan(b * width, width);
        Span<int> outsideA = outside.AsSpan(a * width, width), outsideB = outside.AsSpan(b * width, width);
        var (j, limit, none) = (0, new Vector<int>(least), new Vector<int>(Unreached));
        for (; j <= width - Vector<int>.Count; j += Vector<int>.Count)
        {
            var (o, va, vb) = (new Vector<int>(whole[j..]), new Vector<int>(boundA[j..]), new Vector<int>(boundB[j..]));
            var enough = Vector.GreaterThan(va + vb + o, limit);
            if (enough == Vector<int>.Zero) continue;
            Vector.Max(new Vector<int>(outsideA[j..]), Vector.ConditionalSelect(enough, o + vb, none)).CopyTo(outsideA[j..]);
            Vector.Max(new Vector<int>(outsideB[j..]), Vector.ConditionalSelect(enough, o + va, none)).CopyTo(outsideB[j..]);
        }
        for (; j < width; j++)
        {
            if (boundA[j] + boundB[j] + whole[j] <= least) continue;
            outsideA[j] = Math.Max(outsideA[j], whole[j] + boundB[j]);
            outsideB[j] = Math.Max(outsideB[j], whole[j] + boundA[j]);
        }
    }

    private void Reach(int rectangle, int value) => outside[rectangle] = Math.Max(outside[rectangle], value);

    // What a rectangle may hold that is worth more than the floor.
    private void Fill(int i, int j, int[] values)
    {
        met = 0;
        foreach (var lying in relaxed.LyingAt(i, j))
            if (values[lying.Kind] > Math.Max(0, floor) && demand[lying.Kind] > 0) Add(One(lying.Kind, values));
        if (i > 0) Take((i - 1) * width + j);
        if (j > 0) Take(i * width + j - 1);
        foreach (var (a, b) in relaxed.Across[i]) Join(a * width + j, b * width + j);
        foreach (var (a, b) in relaxed.Along[j]) Join(i * width + a, i * width + b);
        Work += (relaxed.Across[i].Length + relaxed.Along[j].Length) / 2;
        if (met == 0) return;
        Sift();
        if (total + met > contents.Length) Array.Resize(ref contents, Math.Max(2 * contents.Length, total + met));
        Array.Copy(found, 0, contents, total, met);
        at[i * width + j] = (total, met);
        total += met;
    }

    private Content One(int kind, int[] values) => new(values[kind], fields!.One(kind));

    // Sorts what was found and drops what another one makes needless.
    private void Sift()
    {
        Work += 4 * met;
        found.AsSpan(0, met).Sort(default(Order));
        var kept = 0;
        for (var k = 0; k < met; k++)
        {
            var content = found[k];
            var needless = kept > 0 && found[kept - 1] == content;
            if (!needless && !all)
            {
                for (var d = 0; d < kept && !needless; d++) needless = fields!.Holds(content.Counts, found[d].Counts);
                Work += kept / 4;
            }
            if (!needless) found[kept++] = content;
            if (kept == keep) break;
        }
        met = kept;
    }

    private void Add(in Content content)
    {
        if (met == found.Length)
        {
            Sift();
            if (met > found.Length / 2) Array.Resize(ref found, 2 * found.Length);
        }
        found[met++] = content;
    }

    private void Take(int rectangle)
    {
        foreach (var content in Of(rectangle))
        {
            if (content.Value <= floor) break;
            Add(content);
        }
    }

    private ReadOnlySpan<Content> Of(int rectangle) => contents.AsSpan(at[rectangle].Start, at[rectangle].Count);

    private void Join(int p, int q)
    {
        if (at[p].Count == 0 || at[q].Count == 0) return;
        var right = Of(q);
        foreach (var a in Of(p))
        {
            if (a.Value + right[0].Value <= floor) break;
            foreach (var b in right)
            {
                if (a.Value + b.Value <= floor) break;
                Work++;
                var counts = a.Counts + b.Counts;
                if (fields!.Allow(counts)) Add(new Content(a.Value + b.Value, counts));
            }
        }
    }

    // Finds again what made a content.
    private int Trace(int i, int j, Content content, List<(int Kind, int A, int B)> nodes, int[] counts, int[] values)
    {
        while (true)
            if (i > 0 && Of((i - 1) * width + j).Contains(content)) i--;
            else if (j > 0 && Of(i * width + j - 1).Contains(content)) j--;
            else break;
        foreach (var lying in relaxed.LyingAt(i, j))
            if (values[lying.Kind] > 0 && One(lying.Kind, values) == content)
            {
                counts[lying.Kind]++;
                nodes.Add((SheetTree.Leaf, 2 * lying.Kind + (lying.IsTurned ? 1 : 0), 0));
                return nodes.Count - 1;
            }
        foreach (var (a, b) in relaxed.Across[i])
            if (Parts(a * width + j, b * width + j, content) is var (p, q))
                return Node(SheetTree.Beside, Trace(a, j, p, nodes, counts, values), Trace(b, j, q, nodes, counts, values), nodes);
        foreach (var (a, b) in relaxed.Along[j])
            if (Parts(i * width + a, i * width + b, content) is var (p, q))
                return Node(SheetTree.Stacked, Trace(i, a, p, nodes, counts, values), Trace(i, b, q, nodes, counts, values), nodes);
        throw new InvalidOperationException("A content has no origin.");
    }

    private static int Node(byte kind, int a, int b, List<(int Kind, int A, int B)> nodes)
    {
        nodes.Add((kind, a, b));
        return nodes.Count - 1;
    }

    private (Content A, Content B)? Parts(int p, int q, Content whole)
    {
        if (at[p].Count == 0 || at[q].Count == 0) return null;
        var right = Of(q);
        foreach (var a in Of(p))
        {
            if (a.Value + right[0].Value < whole.Value) break;
            foreach (var b in right)
            {
                if (a.Value + b.Value < whole.Value) break;
                if (a.Value + b.Value == whole.Value && a.Counts + b.Counts == whole.Counts) return (a, b);
            }
        }
        return null;
    }
}
