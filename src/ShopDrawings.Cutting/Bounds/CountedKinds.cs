namespace ShopDrawings.Cutting;

/// <summary>
/// Kinds whose pieces are counted while patterns are valued, and all the numbers of them that a rectangle may hold at most, one a layer. Counting only some
/// kinds, those that would be cut too often, follows G. Righini, M. Salani, New dynamic programming algorithms for the resource constrained elementary
/// shortest path problem, Networks 51 (2008) 155–170 (from memory).
/// </summary>
internal sealed class CountedKinds
{
    /// <summary>Nothing is counted: one layer.</summary>
    public static CountedKinds None { get; } = new([], []);

    private readonly int[] most, step;

    /// <summary>The kinds.</summary>
    public int[] Kinds { get; }

    /// <summary>For each layer all pairs of layers that it may be parted into.</summary>
    public (int P, int Q)[][] Splits { get; }

    /// <summary>Layers; the last allows as many of each as there are pieces.</summary>
    public int Count { get; }

    /// <summary>Pairs in all: so many times as long takes a run as without counting.</summary>
    public long Work { get; }

    public CountedKinds(int[] kinds, int[] demand)
    {
        (Kinds, most, step) = (kinds, [.. kinds.Select(k => demand[k])], new int[kinds.Length]);
        Count = 1;
        for (var c = 0; c < kinds.Length; c++)
        {
            step[c] = Count;
            Count *= most[c] + 1;
        }
        // Numbers are digits, and a layer is parted digit by digit.
        Splits = [.. Enumerable.Range(0, Count).Select(layer => Enumerable.Range(0, layer + 1)
            .Where(p => Enumerable.Range(0, kinds.Length).All(c => Digit(p, c) <= Digit(layer, c))).Select(p => (p, layer - p)).ToArray())];
        Work = Splits.Sum(s => (long)s.Length);
    }

    /// <summary>What a run would take with these kinds counted.</summary>
    public static double WorkOf(IEnumerable<int> kinds, int[] demand) => kinds.Aggregate(1.0, (w, k) => w * (demand[k] + 1) * (demand[k] + 2) / 2);

    private int Digit(int layer, int c) => layer / step[c] % (most[c] + 1);

    /// <summary>Whether a layer allows a piece of a kind.</summary>
    public bool Holds(int layer, int kind)
    {
        var c = Array.IndexOf(Kinds, kind);
        return c < 0 || Digit(layer, c) > 0;
    }
}
