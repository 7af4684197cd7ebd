namespace ShopDrawings.Cutting;

/// <summary>
/// Chooses from what sheets may hold one content for each sheet, so that together they hold every piece once: all choices are looked at, first for the kinds that
/// few contents hold. Left out are contents that no longer fit what is left to lay, or waste more than may still be wasted; and what was found to lead nowhere.
/// </summary>
internal sealed class PatternCover
{
    // States that are remembered at most.
    private const int MostHopeless = 1_000_000;

    private readonly BoundedPricing.Content[][] contents;
    private readonly int[] most;
    private readonly PieceFields fields;
    private readonly long mostWork;
    private readonly Dictionary<UInt128, BoundedPricing.Content>[] known;
    private readonly HashSet<(UInt128 Left, long Counts)> hopeless = [];
    private readonly int[] order;
    private readonly List<(int Stock, BoundedPricing.Content Content)> chosen = [];

    // For each number of sheets left and each size the contents that may still be chosen, and how many.
    private readonly List<(int[][] Numbers, int[] Count)> levels = [];

    // Numbers of sheets are told apart by digits to this base for each size.
    private int radix;

    /// <summary>
    /// For what sheets of each size may hold, the most valuable first, and what it is worth at <paramref name="most"/>, numbers of pieces being in
    /// <paramref name="fields"/>; with so much work it is given up.
    /// </summary>
    public PatternCover(BoundedPricing.Content[][] contents, int[] most, PieceFields fields, long mostWork)
    {
        (this.contents, this.most, this.fields, this.mostWork) = (contents, most, fields, mostWork);
        known = [.. contents.Select(list => list.ToDictionary(c => c.Counts))];
        order = [.. Enumerable.Range(0, fields.Kinds).Where(fields.Has).OrderBy(k => contents.Sum(list => list.Count(c => fields.Of(c.Counts, k) > 0))).ThenBy(k => k)];
    }

    /// <summary>Steps so far.</summary>
    public long Work { get; private set; }

    /// <summary>Whether the search was given up.</summary>
    public bool IsTooMuch => Work > mostWork;

    /// <summary>
    /// A content for each of so many sheets of every size, or of fewer, that hold these pieces, worth so much; null where there is no choice, or it was given up.
    /// </summary>
    public IReadOnlyList<(int Stock, BoundedPricing.Content Content)>? Choose(UInt128 pieces, long worth, int[] counts)
    {
        var (left, sheets) = ((int[])counts.Clone(), counts.Sum());
        radix = counts.Max() + 1;
        Work += contents.Sum(list => (long)list.Length) * (sheets + fields.Kinds) / 4;
        if (IsTooMuch || Math.Pow(radix, counts.Length) > long.MaxValue) return GiveUp();
        while (levels.Count <= sheets) levels.Add(([.. contents.Select(list => new int[list.Length])], new int[contents.Length]));
        var (numbers, count) = levels[sheets];
        for (var t = 0; t < contents.Length; t++)
        {
            count[t] = 0;
            for (var n = 0; n < contents[t].Length && left[t] > 0; n++)
                if (fields.Holds(pieces, contents[t][n].Counts)) numbers[t][count[t]++] = n;
        }
        chosen.Clear();
        hopeless.Clear();
        return Choose(pieces, worth, left, sheets) ? chosen : null;
    }

    private IReadOnlyList<(int Stock, BoundedPricing.Content Content)>? GiveUp()
    {
        Work = Math.Max(Work, mostWork + 1);
        return null;
    }

    private bool Choose(UInt128 left, long worth, int[] counts, int sheets)
    {
        if (left == 0) return true;
        if (sheets == 1)
        {
            Work++;
            var t = Array.FindIndex(counts, c => c > 0);
            if (!known[t].TryGetValue(left, out var last)) return false;
            chosen.Add((t, last));
            return true;
        }
        var key = counts.Aggregate(0L, (sum, c) => radix * sum + c);
        if (hopeless.Contains((left, key))) return false;
        var kind = Array.Find(order, k => fields.Of(left, k) > 0);
        var (numbers, count) = levels[sheets];
        for (var t = 0; t < counts.Length; t++)
        {
            if (counts[t] == 0) continue;
            counts[t]--;
            for (var n = 0; n < count[t]; n++)
            {
                var content = contents[t][numbers[t][n]];
                Work++;
                if (fields.Of(content.Counts, kind) == 0 || !Narrow(left - content.Counts, worth - content.Value, counts, sheets)) continue;
                chosen.Add((t, content));
                if (Choose(left - content.Counts, worth - content.Value, counts, sheets - 1)) return true;
                if (IsTooMuch) return false;
                chosen.RemoveAt(chosen.Count - 1);
            }
            counts[t]++;
        }
        if (hopeless.Count < MostHopeless) hopeless.Add((left, key));
        return false;
    }

    // The contents that may be chosen for one sheet less; false where more is left than those sheets can be worth.
    private bool Narrow(UInt128 left, long worth, int[] counts, int sheets)
    {
        var room = -worth;
        for (var t = 0; t < counts.Length; t++) room += counts[t] * (long)most[t];
        if (room < 0) return false;
        if (sheets == 2) return true;
        var ((numbers, count), (fewer, fewerCount)) = (levels[sheets], levels[sheets - 1]);
        for (var t = 0; t < counts.Length; t++)
        {
            fewerCount[t] = 0;
            if (counts[t] == 0) continue;
            var list = contents[t];
            for (var n = 0; n < count[t] && list[numbers[t][n]].Value >= most[t] - room; n++)
                if (fields.Holds(left, list[numbers[t][n]].Counts)) fewer[t][fewerCount[t]++] = numbers[t][n];
            Work += count[t];
        }
        return true;
    }
}
