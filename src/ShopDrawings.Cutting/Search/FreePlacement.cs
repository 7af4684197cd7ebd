namespace ShopDrawings.Cutting;

/// <summary>
/// Places rectangles anywhere, as a router may: every largest free rectangle of a sheet is kept, and pieces go where they fit best. Orders of the pieces
/// are tried by swapping, aiming at one sheet fewer. A plan of through cuts is where it starts from.
/// </summary>
internal sealed class FreePlacement(Workload work, CancellationToken stop)
{
    /// <summary>One piece on one of the sheets; sides one kerf longer than it is.</summary>
    internal readonly record struct Spot(int Item, int Sheet, long X, long Y, bool IsTurned);

    // One place in so many is overlooked, so that equal fits get their turn.
    private const int Blink = 12;

    private Lot lot;
    private readonly List<(long X, long Y, long W, long H)>[] free = [.. Enumerable.Range(0, work.Count).Select(_ => new List<(long, long, long, long)>())];

    /// <summary>Effort spent.</summary>
    public long Effort { get; private set; }

    /// <summary>All pieces on the given sheets, by index of their size; null where no order within the effort leaves none over.</summary>
    public List<Spot>? Fit(IReadOnlyList<int> sheets, long effort, ulong seed)
    {
        if (sheets.Count == 0 || sheets.Count > work.Count) return null;
        lot = new Lot(seed);
        var order = Enumerable.Range(0, work.Count).OrderByDescending(i => work.Area[i]).ThenBy(i => i).ToArray();
        var best = Pack(sheets, order, false, out var left);
        while (left > 0 && Effort < effort && !stop.IsCancellationRequested)
        {
            // A late change of a few places in the order; kept where no more is left over.
            var trial = (int[])order.Clone();
            for (var n = 1 + lot.Below(3); n > 0; n--)
            {
                var (a, b) = (lot.Below(trial.Length), lot.Below(trial.Length));
                (trial[a], trial[b]) = (trial[b], trial[a]);
            }
            var spots = Pack(sheets, trial, true, out var over);
            if (over <= left) (order, best, left) = (trial, spots, over);
        }
        return left == 0 ? best : null;
    }

    private List<Spot> Pack(IReadOnlyList<int> sheets, int[] order, bool blinks, out long left)
    {
        for (var s = 0; s < sheets.Count; s++)
        {
            free[s].Clear();
            free[s].Add((0, 0, work.Stock[sheets[s]].W, work.Stock[sheets[s]].H));
        }
        left = 0;
        var spots = new List<Spot>(order.Length);
        foreach (var i in order)
        {
            var (at, best, bestX, bestY, turned) = (-1, (Short: long.MaxValue, Long: long.MaxValue), 0L, 0L, false);
            for (var s = 0; s < sheets.Count; s++)
            {
                var lies = work.LiesOn(i, sheets[s]);
                Effort += free[s].Count;
                foreach (var (x, y, w, h) in free[s])
                    for (var turn = 0; turn < 2; turn++)
                    {
                        if ((lies & (turn == 0 ? Workload.AsIs : Workload.Turned)) == 0) continue;
                        var (rw, rh) = turn == 0 ? (w - work.X[i], h - work.Y[i]) : (w - work.Y[i], h - work.X[i]);
                        if (rw < 0 || rh < 0 || (blinks && lot.Below(Blink) == 0)) continue;
                        var fit = (Math.Min(rw, rh), Math.Max(rw, rh));
                        if (fit.CompareTo(best) < 0) (at, best, bestX, bestY, turned) = (s, fit, x, y, turn == 1);
                    }
            }
            if (at < 0)
            {
                left += work.Area[i];
                continue;
            }
            spots.Add(new Spot(i, at, bestX, bestY, turned));
            Take(free[at], bestX, bestY, turned ? work.Y[i] : work.X[i], turned ? work.X[i] : work.Y[i]);
        }
        return spots;
    }

    // Cuts a placed rectangle out of every free one and drops what lies within another.
    private void Take(List<(long X, long Y, long W, long H)> rooms, long x, long y, long w, long h)
    {
        var old = rooms.Count;
        for (var k = 0; k < old; k++)
        {
            var r = rooms[k];
            if (x >= r.X + r.W || x + w <= r.X || y >= r.Y + r.H || y + h <= r.Y) continue;
            if (x > r.X) rooms.Add((r.X, r.Y, x - r.X, r.H));
            if (x + w < r.X + r.W) rooms.Add((x + w, r.Y, r.X + r.W - x - w, r.H));
            if (y > r.Y) rooms.Add((r.X, r.Y, r.W, y - r.Y));
            if (y + h < r.Y + r.H) rooms.Add((r.X, y + h, r.W, r.Y + r.H - y - h));
            rooms.RemoveAt(k--);
            old--;
        }
        Effort += rooms.Count;
        for (var a = 0; a < rooms.Count; a++)
            for (var b = rooms.Count - 1; b >= 0; b--)
            {
                if (a == b) continue;
                var (p, q) = (rooms[a], rooms[b]);
                if (q.X < p.X || q.Y < p.Y || q.X + q.W > p.X + p.W || q.Y + q.H > p.Y + p.H) continue;
                rooms.RemoveAt(b);
                if (b < a) a--;
            }
    }
}
