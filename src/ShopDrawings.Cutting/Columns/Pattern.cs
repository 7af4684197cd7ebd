namespace ShopDrawings.Cutting;

/// <summary>
/// What one sheet holds, and a way to cut it: a leaf names its kind times two, one more where turned; an inner node its two children. Without a known way there
/// are no nodes, and the root is -1.
/// </summary>
internal sealed record Pattern(int Stock, int[] Counts, (int Kind, int A, int B)[] Nodes, int Root)
{
    /// <summary>Contents alone.</summary>
    public Pattern(int stock, int[] counts) : this(stock, counts, [], -1)
    {
    }

    /// <summary>Whether it holds no kind more often than so.</summary>
    public bool IsWithin(int[] demand)
    {
        for (var k = 0; k < demand.Length; k++)
            if (Counts[k] > demand[k]) return false;
        return true;
    }

    /// <summary>The pattern without what is too often there, which is a pattern as well.</summary>
    public Pattern Within(int[] demand) => IsWithin(demand) ? this : new Pattern(Stock, [.. Counts.Select((c, k) => Math.Min(c, demand[k]))]);

    /// <summary>What its pieces are worth.</summary>
    public int Worth(int[] values)
    {
        var worth = 0;
        for (var k = 0; k < values.Length; k++) worth += values[k] * Counts[k];
        return worth;
    }
}
