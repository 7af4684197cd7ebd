namespace ShopDrawings.Cutting;

/// <summary>The lengths that matter in one direction of a sheet, and how each may be cut in two.</summary>
internal sealed class RasterAxis
{
    private const int MostStates = 1_600;

    private readonly int[] down;

    /// <summary>The lengths, the first is 0, the last the largest sum of sides in the sheet.</summary>
    public int[] States { get; private set; } = [];

    /// <summary>For each of them the pairs of them it may be cut into, none below another.</summary>
    public (int A, int B)[][] Pairs { get; private set; } = [];

    /// <summary>Whether there were too many lengths to find the pairs.</summary>
    public bool IsTooFine { get; }

    /// <summary>For sides of pieces, each with the number of pieces that have it, along a sheet's side.</summary>
    public RasterAxis(IEnumerable<(int Side, int Count)> sides, int sheet)
    {
        // Sums of sides, each at most as often as there are pieces.
        var met = new bool[sheet + 1];
        met[0] = true;
        foreach (var group in sides.Where(s => s.Side <= sheet).GroupBy(s => s.Side))
        {
            var (s, n, taken) = (group.Key, group.Sum(g => g.Count), new int[sheet + 1]);
            for (var v = s; v <= sheet; v++)
                if (!met[v] && met[v - s] && taken[v - s] < n) (met[v], taken[v]) = (true, taken[v - s] + 1);
        }
        down = new int[sheet + 1];
        for (int v = 0, last = 0; v <= sheet; v++) down[v] = last = met[v] ? v : last;
        var states = new SortedSet<int>(Enumerable.Range(0, sheet + 1).Where(v => met[v]).Select(v => down[sheet - v])) { 0 };
        IsTooFine = states.Count > MostStates;
        States = [.. states];
        if (IsTooFine) return;
        while (Missing([.. states], met) is { } length) states.Add(length);
    }

    // Finds the pairs; a length without which one of them would be taken for the whole it comes from.
    private int? Missing(int[] lengths, bool[] met)
    {
        States = lengths;
        // The least sum that is taken for each length.
        var least = new int[lengths.Length];
        for (var k = 1; k < lengths.Length; k++)
        {
            least[k] = lengths[k - 1] + 1;
            while (!met[least[k]]) least[k]++;
        }
        Pairs = new (int, int)[lengths.Length][];
        var list = new List<(int A, int B)>();
        for (var k = 0; k < lengths.Length; k++)
        {
            list.Clear();
            for (var a = 1; a <= k && 2 * least[a] <= lengths[k]; a++)
            {
                if (a == k) return least[a];
                var rest = down[lengths[k] - least[a]];
                var b = Up(rest);
                if (b == k) return rest;
                if (b == 0) continue;
                if (list.Count > 0 && list[^1].B == b) list[^1] = (a, b);
                else list.Add((a, b));
            }
            Pairs[k] = [.. list];
        }
        return null;
    }

    /// <summary>The length, by number, that another one is taken for: the least not below it.</summary>
    public int Up(int length)
    {
        var k = Array.BinarySearch(States, length);
        return k >= 0 ? k : ~k;
    }
}
