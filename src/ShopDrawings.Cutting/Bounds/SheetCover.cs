namespace ShopDrawings.Cutting;

/// <summary>The least price of sheets that together offer at least a given capacity.</summary>
internal static class SheetCover
{
    private const int MostNodes = 20_000;

    /// <summary>The exact least price where the search for it stays small, else a price that is surely not above it; null where all stock is too little.</summary>
    public static long? LeastPrice(Int128 need, ReadOnlySpan<Int128> capacity, ReadOnlySpan<Workload.Sheet> stock)
    {
        var order = new List<int>();
        for (var t = 0; t < stock.Length; t++)
            if (capacity[t] > 0) order.Add(t);
        var (caps, prices, counts) = (new Int128[order.Count], new long[order.Count], new long[order.Count]);
        // Cheapest by capacity first.
        var cap = capacity.ToArray();
        var sizes = stock.ToArray();
        order = [.. order.OrderBy(t => (double)sizes[t].Price / (double)cap[t]).ThenBy(t => t)];
        for (var k = 0; k < order.Count; k++) (caps[k], prices[k], counts[k]) = (cap[order[k]], sizes[order[k]].Price, sizes[order[k]].Count);
        if (need <= 0) return 0;
        var best = long.MaxValue;
        var nodes = 0;
        Search(0, need, 0);
        if (nodes > MostNodes) return Relaxed(0, need);
        return best == long.MaxValue ? null : best;

        void Search(int k, Int128 left, long paid)
        {
            if (left <= 0)
            {
                best = Math.Min(best, paid);
                return;
            }
            if (k == caps.Length || ++nodes > MostNodes || (best != long.MaxValue && Relaxed(k, left) is { } more && paid + more >= best) || Relaxed(k, left) is null) return;
            var most = (long)Int128.Min(counts[k], (left + caps[k] - 1) / caps[k]);
            for (var n = most; n >= 0 && nodes <= MostNodes; n--) Search(k + 1, left - n * caps[k], paid + n * prices[k]);
        }

        // Fractions of the last sheet allowed, price rounded up.
        long? Relaxed(int from, Int128 left)
        {
            Int128 paid = 0;
            for (var k = from; k < caps.Length; k++)
            {
                var whole = Int128.Min(counts[k], left / caps[k]);
                paid += whole * prices[k];
                left -= whole * caps[k];
                if (left <= 0) return (long)paid;
                if (whole < counts[k]) return (long)(paid + (left * prices[k] + caps[k] - 1) / caps[k]);
            }
            return null;
        }
    }
}
