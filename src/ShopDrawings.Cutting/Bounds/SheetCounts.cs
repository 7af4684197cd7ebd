namespace ShopDrawings.Cutting;

/// <summary>
/// What is known of the numbers of sheets that hold everything: linear inequalities that every plan keeps, and numbers that keep them all, the cheapest first.
/// </summary>
internal sealed class SheetCounts(Workload work)
{
    private const int MostNodes = 200_000;
    private const int MostKept = 400;

    private readonly List<Cut> cuts = [];

    /// <summary>Sheets by size whose capacities add up to at least the need; every plan keeps it.</summary>
    internal readonly record struct Cut(Int128[] Capacity, Int128 Need)
    {
        /// <summary>Whether so many sheets keep it.</summary>
        public bool Keeps(int[] counts)
        {
            Int128 sum = 0;
            for (var t = 0; t < counts.Length; t++) sum += counts[t] * Capacity[t];
            return sum >= Need;
        }
    }

    /// <summary>Adds what every plan keeps.</summary>
    public void Add(in Cut cut) => cuts.Add(cut);

    /// <summary>Whether these sheets keep all that is known.</summary>
    public bool Keep(int[] counts) => cuts.TrueForAll(c => c.Keeps(counts));

    /// <summary>
    /// All numbers of sheets that keep all inequalities and cost less than <paramref name="below"/>, by price; null where there are too many to list.
    /// What costs nothing is all taken.
    /// </summary>
    public List<(int[] Counts, long Price)>? Below(long below)
    {
        var list = new List<(int[] Counts, long Price)>();
        var (counts, nodes) = (new int[work.Stock.Length], 0);
        if (work.Stock.Any(s => s.Price == 0 && s.Count == int.MaxValue)) return null;
        for (var t = 0; t < counts.Length; t++)
            if (work.Stock[t].Price == 0) counts[t] = Math.Min(work.Stock[t].Count, work.Count);
        // What is missing of the first inequality costs at least so much from each size on.
        var rest = cuts.Count == 0 ? null : new double[counts.Length + 1];
        if (rest is not null)
        {
            rest[counts.Length] = double.MaxValue;
            for (var t = counts.Length - 1; t >= 0; t--)
                rest[t] = cuts[0].Capacity[t] <= 0 || work.Stock[t].Price == 0 ? rest[t + 1] : Math.Min(rest[t + 1], work.Stock[t].Price / (double)cuts[0].Capacity[t]);
        }
        if (!Search(0, 0)) return null;
        list.Sort((a, b) => a.Price != b.Price ? a.Price.CompareTo(b.Price) : a.Counts.AsSpan().SequenceCompareTo(b.Counts));
        return list;

        bool Search(int t, long paid)
        {
            if (++nodes > MostNodes) return false;
            if (t == counts.Length)
            {
                if (Keep(counts)) list.Add(((int[])counts.Clone(), paid));
                return list.Count <= MostKept;
            }
            var size = work.Stock[t];
            if (size.Price == 0) return Search(t + 1, paid);
            if (rest is not null)
            {
                // Rounding must not cut off anything: a little is given away.
                var need = cuts[0].Need;
                for (var s = 0; s < counts.Length; s++)
                    if (s < t || work.Stock[s].Price == 0) need -= counts[s] * cuts[0].Capacity[s];
                if (need > 0 && (rest[t] == double.MaxValue || paid + rest[t] * (double)need * (1 - 1e-9) >= below)) return true;
            }
            for (var n = 0; n <= Math.Min(size.Count, work.Count) && paid + n * size.Price < below; n++)
            {
                counts[t] = n;
                if (!Search(t + 1, paid + n * size.Price)) return false;
            }
            counts[t] = 0;
            return true;
        }
    }
}
