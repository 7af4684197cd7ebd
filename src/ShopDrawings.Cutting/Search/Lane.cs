namespace ShopDrawings.Cutting;

/// <summary>
/// One line of search: takes pieces out of a few sheets and puts them back, within a budget of money that is always one step below the best whole
/// plan. What counts is how little is left over; a change is kept by late acceptance (E. Burke, Y. Bykov, The late acceptance hill-climbing heuristic,
/// European J. Operational Research 258 (2017) 70–78). Working towards a budget on a tree of cuts follows J. Gardeyn, T. Wauters, A goal-driven ruin and
/// recreate heuristic for the 2D variable-sized bin packing problem with guillotine constraints, European J. Operational Research (2022); joining a node
/// at its least size follows K. Fleszar, Three insertion heuristics and a justification improvement heuristic for two-dimensional bin packing with
/// guillotine cuts, Computers and Operations Research 40 (2013) 463–474 (the last from memory).
/// </summary>
internal sealed partial class Lane
{
    // What counts as late: so many steps ago at first. Where none of so many turns of that brings less left over than ever, twice as many, and more may be left
    // over again, by so many pieces of mean size.
    private const int LeastHistory = 50, MostHistory = 3_200, Patience = 500, Warmth = 2;

    // A step takes out up to so many pieces; putting them back overlooks one place in so many.
    private const int MostTaken = 12;
    private const int Blink = 64;

    // A way of weighing places: see Score.
    private const int AnyPlace = 2;

    // Plans built from nothing before the search proper.
    private const int Starts = 16;

    // So many sheets are all looked at in a step; of more than that, some; while building from nothing, the last.
    private const int AllNear = 24;
    private const int SomeNear = 12;
    private const int LastNear = 256;

    private readonly Workload work;
    private readonly int[] stockUsed;
    private readonly long[] late = new long[MostHistory];
    private readonly long warmth;
    private readonly int[] order;
    private readonly long[] keys;
    private readonly int[] failedKind;
    private Lot lot;
    private SheetTree[] sheets = new SheetTree[8];
    private SheetTree[] saved = new SheetTree[8];
    private int[] touchedAt = new int[8];
    private readonly List<int> touched = [];
    private int sheetCount;
    private int[] loose;
    private int[] looseSaved;
    private int looseCount, looseSavedCount;
    private long openPrice, budget = long.MaxValue, spare;

    // The least that was left over since it aimed anew, of which sheets are noted, and steps since then.
    private long leastLeft = long.MaxValue;
    private int history = LeastHistory, idle;
    private int step, lateAt, failMark, started, beat, nearCount, scoring;
    private int[] near = new int[8];
    private readonly SheetTree trial = new();

    public Lane(Workload work, ulong seed)
    {
        this.work = work;
        lot = new Lot(seed);
        stockUsed = new int[work.Stock.Length];
        order = new int[work.Count];
        keys = new long[work.Count];
        loose = new int[work.Count];
        looseSaved = new int[work.Count];
        failedKind = new int[work.Kinds];
        warmth = Warmth * work.Area.Sum() / Math.Max(1, work.Count);
    }

    /// <summary>Effort so far: places looked at and nodes rebuilt.</summary>
    public long Effort { get; private set; }

    /// <summary>The cheapest whole plan found; null before there is one.</summary>
    public SheetTree[]? Best { get; private set; }

    public long Price => openPrice;

    /// <summary>Where what lies on the sheets now and then is noted; null where it is not.</summary>
    public SeenPatterns? Seen { get; init; }

    /// <summary>Its price.</summary>
    public long BestPrice { get; private set; } = long.MaxValue;

    /// <summary>Starts from nothing with everything loose.</summary>
    public void Clear()
    {
        for (var s = 0; s < sheetCount; s++) sheets[s].Stock = -1;
        Array.Clear(stockUsed);
        (sheetCount, openPrice, looseCount) = (0, 0, work.Count);
        for (var i = 0; i < work.Count; i++) loose[i] = i;
        touched.Clear();
        step++;
        Weigh();
    }

    /// <summary>Takes over a whole plan.</summary>
    public void Adopt(SheetTree[] plan, long price)
    {
        Clear();
        looseCount = 0;
        foreach (var tree in plan)
        {
            var s = NewSheet();
            sheets[s].CopyFrom(tree);
            stockUsed[tree.Stock]++;
            openPrice += work.Stock[tree.Stock].Price;
        }
        (Best, BestPrice) = (plan, price);
        Weigh();
    }

    /// <summary>Lowers the budget below the best plan and gives up sheets until it is kept.</summary>
    public void Aim(long newBudget)
    {
        budget = newBudget;
        touched.Clear();
        step++;
        while (openPrice > budget) Give(WorstSheet());
        Weigh();
        Array.Fill(late, Cost);
        (leastLeft, history, idle, lateAt) = (long.MaxValue, LeastHistory, 0, 0);
    }

    private void Note()
    {
        for (var s = 0; s < sheetCount && Seen is not null; s++)
            if (sheets[s].Stock >= 0) Seen.Note(sheets[s], work);
    }

    private long Cost => spare;

    private void Weigh()
    {
        spare = 0;
        for (var i = 0; i < looseCount; i++) spare += work.Area[loose[i]];
    }

    private int WorstSheet()
    {
        var (worst, least) = (-1, long.MaxValue);
        for (var s = 0; s < sheetCount; s++)
            if (sheets[s].Stock >= 0 && work.Stock[sheets[s].Stock].Price > 0)
            {
                var fill = sheets[s].Filled + (long)(lot.Next() % (ulong)(sheets[s].Whole / 8 + 1));
                if (fill < least) (worst, least) = (s, fill);
            }
        return worst;
    }

    private int NewSheet()
    {
        for (var s = 0; s < sheetCount; s++)
            if (sheets[s].Stock < 0) return s;
        if (sheetCount == sheets.Length)
        {
            Array.Resize(ref sheets, 2 * sheetCount);
            Array.Resize(ref saved, 2 * sheetCount);
            Array.Resize(ref touchedAt, 2 * sheetCount);
        }
        sheets[sheetCount] ??= new SheetTree();
        saved[sheetCount] ??= new SheetTree();
        return sheetCount++;
    }

    // Keeps a copy of a sheet before the first change of this step.
    private void Touch(int s)
    {
        if (touchedAt[s] == step) return;
        touchedAt[s] = step;
        touched.Add(s);
        saved[s].CopyFrom(sheets[s]);
        Effort += sheets[s].Used / 4;
    }

    private void Open(int s, int stock)
    {
        Touch(s);
        var size = work.Stock[stock];
        sheets[s].Open(stock, size, work.WholeOf(size));
        stockUsed[stock]++;
        openPrice += size.Price;
    }

    private void Shut(int s)
    {
        stockUsed[sheets[s].Stock]--;
        openPrice -= work.Stock[sheets[s].Stock].Price;
        sheets[s].Stock = -1;
    }

    // Empties a sheet and closes it.
    private void Give(int s)
    {
        Touch(s);
        if (sheets[s].Root >= 0) looseCount = sheets[s].Remove(sheets[s].Root, loose, looseCount, work.Area);
        Shut(s);
    }

    /// <summary>One change: ruin, recreate, accept or take back. True where everything has found its place.</summary>
    public bool Step()
    {
        // A step that finds nothing to do must count as well, or the search would not end.
        Effort += 4 + looseCount;
        step++;
        touched.Clear();
        Array.Copy(loose, looseSaved, looseCount);
        looseSavedCount = looseCount;
        var (priceBefore, costBefore) = (openPrice, Cost);

        Look();
        scoring = lot.Below(2);
        Ruin();
        Recreate(lot.Below(8), Blink);
        Weigh();

        var cost = Cost;
        var kept = late[lateAt];
        if (cost <= costBefore || cost <= kept)
        {
            if (cost < kept) late[lateAt] = cost;
        }
        else
        {
            TakeBack(priceBefore, costBefore);
            if (costBefore < kept) late[lateAt] = costBefore;
        }
        lateAt = lateAt + 1 >= history ? 0 : lateAt + 1;
        if (Cost < leastLeft)
        {
            (leastLeft, idle) = (Cost, 0);
            Note();
        }
        else if (++idle >= Patience * history)
        {
            (idle, history) = (0, Math.Min(MostHistory, 2 * history));
            Array.Fill(late, Cost + warmth);
        }
        return looseCount == 0;
    }

    /// <summary>Searches until its effort reaches a mark, the bound is met or a stop is asked for.</summary>
    public void Run(long until, long bound, CancellationToken stop)
    {
        // The first start is made in any case, so that a stop leaves a plan.
        for (; Best is null && started < Starts && (started == 0 || !stop.IsCancellationRequested); started++) Start();
        for (; started < Starts && Effort < until && BestPrice > bound && !stop.IsCancellationRequested; started++) Start();
        if (started == Starts)
        {
            started++;
            if (Best is { } plan) TakeOver(plan, BestPrice);
            else
            {
                // Not all found a place: go on from what the last start left.
                Array.Fill(late, Cost);
            }
        }
        if (started < Starts) return;
        while (Effort < until && BestPrice > bound)
        {
            if ((++beat & 63) == 0)
            {
                if (stop.IsCancellationRequested) return;
                Note();
            }
            if (!Step()) continue;
            Keep();
            if (BestPrice > bound) Aim(BestPrice - 1);
        }
    }

    private void Start()
    {
        budget = long.MaxValue;
        if (Construct(started % 8, started < 8 ? 0 : 24) && openPrice < BestPrice) Keep();
    }

    /// <summary>Goes on from somebody's plan, aiming below its price.</summary>
    public void TakeOver(SheetTree[] plan, long price)
    {
        started = Math.Max(started, Starts + 1);
        Adopt(plan, price);
        Aim(price - 1);
    }

    private void TakeBack(long price, long cost)
    {
        foreach (var s in touched)
        {
            if (sheets[s].Stock >= 0) stockUsed[sheets[s].Stock]--;
            if (saved[s].Stock >= 0) stockUsed[saved[s].Stock]++;
            (sheets[s], saved[s]) = (saved[s], sheets[s]);
        }
        openPrice = price;
        (loose, looseSaved) = (looseSaved, loose);
        (looseCount, spare) = (looseSavedCount, cost);
    }

    /// <summary>Tidies a whole plan without making it dearer: fewer cuts and settings, then larger rectangles left. The outcome is in <see cref="Best"/>.</summary>
    public void Tidy(SheetTree[] plan, long price, long until, CancellationToken stop)
    {
        Adopt(plan, price);
        budget = price;
        Array.Fill(late, 0);
        while (Effort < until && !((++beat & 63) == 0 && stop.IsCancellationRequested))
        {
            Effort += 4;
            step++;
            touched.Clear();
            looseSavedCount = 0;
            var before = openPrice;
            Look();
            scoring = lot.Below(AnyPlace + 1);
            Ruin();
            Recreate(lot.Below(8), Blink);
            long gain = 0;
            if (looseCount == 0)
                foreach (var s in touched) gain += (saved[s].Stock >= 0 ? saved[s].Untidiness(work.PaidDepth) : 0) - (sheets[s].Stock >= 0 ? sheets[s].Untidiness(work.PaidDepth) : 0);
            Effort += touched.Count * 8;
            if (looseCount > 0 || openPrice > before || (openPrice == before && gain < 0)) TakeBack(before, 0);
        }
        Keep();
    }

    /// <summary>Keeps the present plan, which must be whole, as the best.</summary>
    public void Keep()
    {
        var plan = new List<SheetTree>();
        for (var s = 0; s < sheetCount; s++)
            if (sheets[s].Stock >= 0)
            {
                var copy = new SheetTree();
                copy.CopyFrom(sheets[s]);
                plan.Add(copy);
            }
        (Best, BestPrice) = ([.. plan], openPrice);
    }

    /// <summary>Places everything from nothing within the budget; true where nothing is left over.</summary>
    public bool Construct(int sorting, int blink)
    {
        Clear();
        LookAtAll();
        scoring = sorting & 1;
        Recreate(sorting, blink);
        Weigh();
        return looseCount == 0;
    }
}
