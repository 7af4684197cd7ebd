using ShopDrawings.Cutting;
using ShopDrawings.Kernel;

namespace ShopDrawings.ProjectFile;

/// <summary>Makes the machine of the solver of what is written about it. A fault is noted where it is written.</summary>
internal static class CuttingMachineReader
{
    // Common practice, no source.
    private const long StoreKerf = 4_000_000, StoreError = 1_000_000, BlankAllowance = 5_000_000;

    /// <summary>The machine; a saw with the usual kerf where nothing is written.</summary>
    public static CuttingMachine Read(CuttingEntry? cutting, Action<SourceSpan, string> fail)
    {
        if (cutting?.Router is { } router && (cutting.Saw is not null || cutting.Store is not null)) fail(router.At, "a router cuts panels out alone; leave “saw” and “store” out, or “router”");
        if (cutting?.Router is { } nesting) return new Router(Nm(nesting.Gap)) { ClampMargin = Nm(nesting.Margin ?? nesting.Gap) };
        var home = cutting?.Saw is { } saw ? Saw(saw) : null;
        if (cutting?.Store is not { } store) return home ?? new PanelSaw(CuttingSetup.UsualKerf);
        if (store.Allowance is { } allowance && home is null) fail(allowance.Source, "only blanks that are cut on at home carry an allowance; add the “saw” at home, or leave “allowance” out");
        if (home is not null && store.Allowance is { } thin && Nm(thin) < home.Kerf) fail(thin.Source, "an allowance narrower than the blade cannot be trimmed; give it at least the kerf of the saw at home");
        if (cutting.Saw?.Cuts is not null) fail(cutting.Saw.At, "beside a “store” its cuts alone are counted; leave “cuts” of the saw at home out");
        return new StoreSaw(store.Kerf is { } kerf ? Nm(kerf) : StoreKerf, store.Cuts)
        {
            Error = store.Error is { } error ? Nm(error) : StoreError,
            PricePerCut = store.Price?.Coins ?? 0,
            LongestPiece = store.Longest is { } longest ? Nm(longest) : null,
            HeaviestPieceGrams = store.Heaviest is { } heaviest ? (long)Math.Floor(heaviest.Value * 1000) : null,
            MassPerSquareMetre = 1,
            Home = home,
            BlankAllowance = home is null ? 0 : store.Allowance is { } left ? Nm(left) : BlankAllowance,
        };
    }

    private static PanelSaw Saw(SawEntry saw) => new(saw.Kerf is { } kerf ? Nm(kerf) : CuttingSetup.UsualKerf)
    {
        MaxStages = saw.Stages,
        FirstCut = saw.FirstCut,
        LeastStrip = Nm(saw.LeastStrip),
        LongestCut = saw.LongestCut is { } longest ? Nm(longest) : null,
        MaxCuts = saw.Cuts,
    };

    private static long Nm(Size size) => CuttingSetup.Nanometres(size.Value);

    /// <summary>Notes a store's cuts that cost something where sheets do not.</summary>
    public static void ComparePrices(CuttingEntry? cutting, IEnumerable<BoardStock> boards, Action<SourceSpan, string> fail)
    {
        if (cutting?.Store?.Price is { Coins: > 0 } price && boards.Any(b => !b.HasPrices && b.Sizes.Any(z => z.Price > 0)))
            fail(price.At, "a cut has a price here, and sheets have none; give both a price, or neither");
    }

    /// <summary>What is cut off a factory edge first: nothing where blanks carry as much to be trimmed at home.</summary>
    public static Trim TrimFor(CuttingMachine machine, Trim trim) =>
        machine is StoreSaw { Home: not null, BlankAllowance: var carried } && Math.Max(Math.Max(trim.Start, trim.End), Math.Max(trim.Near, trim.Far)) <= carried ? default : trim;
}
