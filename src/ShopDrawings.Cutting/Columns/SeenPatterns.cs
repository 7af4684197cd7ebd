namespace ShopDrawings.Cutting;

/// <summary>Different patterns, in the order they were met, up to so many.</summary>
internal sealed class SeenPatterns(int most)
{
    private readonly HashSet<Pattern> met = new(new SameCounts());
    private readonly List<Pattern> all = [];
    private int told;

    /// <summary>Takes note of one; false where it is known or there are too many.</summary>
    public bool Note(Pattern pattern)
    {
        if (all.Count >= most || !met.Add(pattern)) return false;
        all.Add(pattern);
        return true;
    }

    /// <summary>Takes note of what lies on a sheet, without its cuts.</summary>
    public void Note(SheetTree sheet, Workload work)
    {
        if (all.Count >= most) return;
        var counts = new int[work.Kinds];
        for (var n = 0; n < sheet.Used; n++)
            if (sheet[n].Kind == SheetTree.Leaf) counts[work.KindOf[sheet[n].Item >> 1]]++;
        Note(new Pattern(sheet.Stock, counts));
    }

    /// <summary>Those met since this was last asked.</summary>
    public List<Pattern> News()
    {
        var news = all[told..];
        told = all.Count;
        return news;
    }

    private sealed class SameCounts : IEqualityComparer<Pattern>
    {
        public bool Equals(Pattern? a, Pattern? b) => a!.Stock == b!.Stock && a.Counts.AsSpan().SequenceEqual(b.Counts);

        public int GetHashCode(Pattern p) => p.Counts.Aggregate(p.Stock, (hash, c) => unchecked(31 * hash + c));
    }
}
