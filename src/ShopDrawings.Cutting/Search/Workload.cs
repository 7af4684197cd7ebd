namespace ShopDrawings.Cutting;

/// <summary>
/// A problem as the search sees it: every side longer by one kerf, so that a cut splits a side into two that add up, (a + kerf) + (b + kerf) =
/// (L + kerf); every piece on its own; sides divided by their common divisor.
/// </summary>
internal sealed class Workload
{
    /// <summary>May lie as given.</summary>
    public const byte AsIs = 1;

    /// <summary>May lie turned by 90 degrees.</summary>
    public const byte Turned = 2;

    /// <summary>Sides of piece i along x and y as given.</summary>
    public required long[] X { get; init; }

    /// <inheritdoc cref="X"/>
    public required long[] Y { get; init; }

    /// <summary>Pieces of one kind are interchangeable.</summary>
    public required int[] KindOf { get; init; }

    /// <summary>How a piece may lie on stock of each grain direction: three entries a piece.</summary>
    public required byte[] Lies { get; init; }

    /// <summary>The stock sizes.</summary>
    public required Sheet[] Stock { get; init; }

    /// <summary>What the saw allows.</summary>
    public SawRules Rules { get; init; } = SawRules.None;

    /// <summary>How deep in a sheet's tree cuts are paid for, trims apart: 0 for nowhere.</summary>
    public int PaidDepth { get; init; }

    /// <summary>Whether pieces may lie anywhere, so that bounds for cuts that go through say nothing.</summary>
    public bool Anywhere { get; init; }

    /// <summary>Pieces in all.</summary>
    public int Count => X.Length;

    /// <summary>Different pieces.</summary>
    public int Kinds { get; private set; }

    /// <summary>Bits dropped from a side before areas are weighed against each other; no decision about fitting rests on these.</summary>
    public int Shift { get; private set; }

    /// <summary>Rough area of a piece, or what it weighs instead (<see cref="Filling"/>).</summary>
    public long[] Area { get; private set; } = [];

    private int[] grains = [];

    // So many times finer than areas pieces weigh where they weigh their worth, and what a sheet weighs then.
    private const long FillingUnit = 1 << 12;
    private long? whole;

    /// <summary>One stock size: usable sides and one kerf.</summary>
    internal readonly record struct Sheet(long W, long H, long Price, int Count, int GrainDirection)
    {
        /// <summary>Direction of the first cuts: <see cref="SheetTree.Beside"/>, <see cref="SheetTree.Stacked"/>, or 0 for either.</summary>
        public byte First { get; init; }

        /// <summary>What every piece of the first cuts takes beyond its contents.</summary>
        public long PieceExtra { get; init; }

        /// <summary>The most the contents of a piece of the first cuts may take, in the direction they are counted off.</summary>
        public long PieceCap { get; init; } = long.MaxValue;

        /// <summary>The largest piece it holds.</summary>
        public (long X, long Y) MostPiece => First switch
        {
            SheetTree.Beside => (Math.Min(W - PieceExtra, PieceCap), H),
            SheetTree.Stacked => (W, Math.Min(H - PieceExtra, PieceCap)),
            _ => (W, H),
        };

        /// <summary>Trims, each a cut.</summary>
        public int Trims { get; init; }
    }

    /// <summary>Fills in what follows from the rest.</summary>
    public Workload Ready()
    {
        long longest = 1;
        foreach (var s in Stock) longest = Math.Max(longest, Math.Max(s.W, s.H));
        while (longest >> Shift >= 1 << 15) Shift++;
        Area = new long[Count];
        grains = [.. Stock.Select(s => s.GrainDirection)];
        for (var i = 0; i < Count; i++)
        {
            Area[i] = Rough(X[i], Y[i]);
            Kinds = Math.Max(Kinds, KindOf[i] + 1);
        }
        return this;
    }

    /// <summary>The same with some of the pieces and fewer sheets.</summary>
    public Workload Only(int[] pieces, int[] used)
    {
        var kinds = new Dictionary<int, int>();
        foreach (var i in pieces) kinds.TryAdd(KindOf[i], kinds.Count);
        return new Workload
        {
            X = [.. pieces.Select(i => X[i])], Y = [.. pieces.Select(i => Y[i])], KindOf = [.. pieces.Select(i => kinds[KindOf[i]])], Rules = Rules, PaidDepth = PaidDepth, Anywhere = Anywhere,
            Lies = [.. pieces.SelectMany(i => Lies[(3 * i)..(3 * i + 3)])],
            Stock = [.. Stock.Select((s, t) => s.Count == int.MaxValue ? s : s with { Count = s.Count - used[t] })],
        }.Ready();
    }

    /// <summary>The same with no more than so many sheets of each size.</summary>
    public Workload Within(int[] counts) => new Workload
    {
        X = X, Y = Y, KindOf = KindOf, Lies = Lies, Rules = Rules, PaidDepth = PaidDepth, Anywhere = Anywhere,
        Stock = [.. Stock.Select((s, t) => s with { Count = counts[t] })],
    }.Ready();

    /// <summary>One sheet of a size, and pieces that weigh what they are worth instead of their area: so that a lane fills it with the most valuable ones.</summary>
    public Workload Filling(int stock, ReadOnlySpan<double> worth)
    {
        var counts = new int[Stock.Length];
        counts[stock] = 1;
        var work = Within(counts);
        var (size, most) = (Stock[stock], 0.0);
        for (var i = 0; i < Count; i++) most = Math.Max(most, worth[KindOf[i]] / Area[i]);
        // No room on a sheet is worth more than its area.
        for (var i = 0; i < Count; i++) work.Area[i] = (long)(worth[KindOf[i]] / most * FillingUnit);
        work.whole = (long)(Rough(size.W, size.H) * (double)FillingUnit);
        return work;
    }

    /// <summary>What fills a sheet: its rough area; where pieces weigh their worth what they weigh at most on the one there is.</summary>
    public long WholeOf(in Sheet size) => whole ?? Rough(size.W, size.H);

    /// <summary>An area to weigh by.</summary>
    public long Rough(long x, long y) => Math.Max(1, (x >> Shift) * (y >> Shift));

    /// <summary>How piece i may lie on stock s.</summary>
    public byte LiesOn(int i, int s) => Lies[3 * i + grains[s]];
}
