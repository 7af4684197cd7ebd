namespace ShopDrawings.Cutting;

/// <summary>
/// Works on the numbers of sheets that would be cheaper than the best plan: refutes those it can, and has lanes that try to lay everything on those that
/// are left. When none is left, the best plan is proved.
/// </summary>
internal sealed class CountSearch
{
    // Effort for one set of numbers.
    private const long Turn = 150_000_000;

    private readonly Workload work;
    private readonly SheetCounts counts;
    private readonly CountRefuter refuter;
    private List<Target>? open;
    private int next;

    private sealed class Target(int[] counts, long price)
    {
        public readonly int[] Counts = counts;
        public readonly long Price = price;
        public bool IsSettled;
        public Lane? Lane;
    }

    public CountSearch(Workload work, SheetCounts counts)
    {
        (this.work, this.counts) = (work, counts);
        refuter = new CountRefuter(work);
        IsFinished = !refuter.IsReady;
    }

    /// <summary>Effort of refuting so far.</summary>
    public long Effort => refuter.Effort;

    /// <summary>No plan is cheaper.</summary>
    public long Bound { get; private set; }

    /// <summary>Whether refuting has nothing left to try.</summary>
    public bool IsFinished { get; private set; }

    /// <summary>Refutes what would be cheaper than a plan, the cheapest first, until an effort is spent.</summary>
    public void Refute(SheetTree[] plan, long price, long until, CancellationToken stop)
    {
        if (IsFinished) return;
        if (open is null)
        {
            if (counts.Below(price) is not { } all)
            {
                IsFinished = true;
                return;
            }
            open = [.. all.Select(n => new Target(n.Counts, n.Price))];
            refuter.Learn(plan);
        }
        open.RemoveAll(n => n.Price >= price);
        while (Effort < until && !stop.IsCancellationRequested)
        {
            if (open.Find(n => !n.IsSettled) is not { } target)
            {
                IsFinished = true;
                break;
            }
            if (refuter.Refute(target.Counts, Effort + Turn, out _, stop) is { } cut)
            {
                counts.Add(cut);
                open.RemoveAll(n => !cut.Keeps(n.Counts));
            }
            else target.IsSettled = true;
        }
        Bound = open.Count == 0 ? price : open[0].Price;
    }

    /// <summary>The next lane that tries to lay everything on numbers of sheets not refuted, cheaper than a price; null where there are none.</summary>
    public (Lane Lane, long Price)? Next(long price)
    {
        if (open is null) return null;
        open.RemoveAll(n => n.Price >= price);
        if (open.Count == 0) return null;
        var target = open[next++ % open.Count];
        target.Lane ??= new Lane(work.Within(target.Counts), 0x7A_0000 + (ulong)next);
        return (target.Lane, target.Price);
    }
}
