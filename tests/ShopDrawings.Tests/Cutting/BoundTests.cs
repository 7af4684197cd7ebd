using CsCheck;
using ShopDrawings.Cutting;

namespace ShopDrawings.Tests.Cutting;

/// <summary>Bounds against problems whose answer is known: sheets cut to pieces from the whole, and sheets small enough to try everything.</summary>
public class BoundTests
{
    /// <summary>Sheets parted by random cuts, so that the pieces surely fit on them again; every piece may lie on any sheet, some turned.</summary>
    private sealed record Parted(CuttingProblem Problem, int[] Counts);

    private static readonly Gen<Parted> PartedSheets =
        from seed in Gen.Int[0, int.MaxValue]
        from counts in Gen.Int[0, 2].Array[1, 3]
        from kerf in Gen.OneOf(Gen.Const(0L), Gen.Const(3L))
        from turned in Gen.Bool
        where counts.Sum() > 0
        select Part(new Random(seed), counts, kerf, turned);

    private static Parted Part(Random lot, int[] counts, long kerf, bool turned)
    {
        var stock = counts.Select((_, t) => new StockSize($"s{t}", lot.Next(60, 160), lot.Next(40, 120)) { Price = lot.Next(50, 150) }).ToArray();
        var pieces = new List<(long W, long H)>();
        for (var t = 0; t < counts.Length; t++)
            for (var n = 0; n < counts[t]; n++) Split(stock[t].Length, stock[t].Width, 0);
        var parts = pieces.Select((p, k) => turned && lot.Next(2) == 0 ? (p.H, p.W, Any: true) : (p.W, p.H, Any: turned && lot.Next(2) == 0))
            .GroupBy(p => p).Select((g, k) => new Part($"p{k}", g.Key.Item1, g.Key.Item2) { Quantity = g.Count(), Grain = g.Key.Any ? Grain.Any : Grain.Along });
        return new Parted(new CuttingProblem([.. parts], [.. stock.Select(s => s with { Grain = GrainDirection.AlongLength })], new PanelSaw(kerf)), counts);

        void Split(long w, long h, int depth)
        {
            var (byX, least) = (lot.Next((int)(w + h)) < w, 12);
            var side = byX ? w : h;
            if (depth >= 4 || side < 2 * least + kerf || (depth > 1 && lot.Next(3) == 0))
            {
                pieces.Add((w, h));
                return;
            }
            var at = lot.NextInt64(least, side - least - kerf + 1);
            Split(byX ? at : w, byX ? h : at, depth + 1);
            Split(byX ? w - at - kerf : w, byX ? h : h - at - kerf, depth + 1);
        }
    }

    [Fact]
    public void Sheets_that_hold_all_are_never_refuted() => PartedSheets.Sample(parted =>
    {
        var work = Preparation.Of(parted.Problem).Ways[0].Work;
        var known = new SheetCounts(work);
        DualFeasible.Bound(work, known);
        Assert.True(known.Keep(parted.Counts));
        var refuter = new CountRefuter(work);
        Assert.True(refuter.IsReady);
        // Cuts made of other numbers must let the true ones pass.
        foreach (var thoroughly in new[] { false, true })
            foreach (var less in parted.Counts.Select((n, t) => parted.Counts.Select((m, s) => s == t ? Math.Max(0, n - 1) : m).ToArray()).Append(parted.Counts))
                if (refuter.Refute(less, thoroughly, refuter.Effort + 3_000_000, TestContext.Current.CancellationToken) is { } cut)
                {
                    Assert.False(cut.Keeps(less));
                    Assert.True(cut.Keeps(parted.Counts));
                }
    }, iter: 60);

    [Fact]
    public void Bound_is_not_above_what_sheets_cost_that_hold_all() => PartedSheets.Sample(parted =>
    {
        var plan = Cutter.Solve(parted.Problem, new CuttingOptions { Effort = 40_000_000, Threads = 1 }, null, TestContext.Current.CancellationToken).Plan!;
        Assert.True(plan.Bound <= parted.Counts.Select((n, t) => n * parted.Problem.Stock[t].Price).Sum());
        Assert.True(plan.Bound <= plan.Cost);
    }, iter: 12);

    [Fact]
    public void Most_valuable_pattern_is_found_as_by_trying_everything() =>
        Gen.Select(Gen.Int[4, 14], Gen.Int[4, 12], Gen.Select(Gen.Int[1, 8], Gen.Int[1, 8], Gen.Int[1, 2], Gen.Int[1, 60], Gen.Bool).Array[1, 4]).Sample((w, h, kinds) =>
        {
            var demand = kinds.Select(k => k.Item3).ToArray();
            var values = kinds.Select(k => k.Item4).ToArray();
            var ways = kinds.SelectMany((k, n) => k.Item5 ? new[] { new RasterPricing.Lying(n, k.Item1, k.Item2), new RasterPricing.Lying(n, k.Item2, k.Item1) } : [new RasterPricing.Lying(n, k.Item1, k.Item2)]).ToArray();
            var relaxed = new RasterPricing(ways, demand, w, h);
            var top = relaxed.Run(values);
            var (value, patterns) = new BoundedPricing(relaxed, demand).Run(values, 0, long.MaxValue / 2, 10_000, 1);
            var (few, _) = new BoundedPricing(relaxed, demand).Run(values, 0, long.MaxValue / 2, 2, 1);
            var best = Tried(w, h, demand, values, ways);

            Assert.Equal(best, value);
            Assert.InRange(few, best, top);
            if (best == 0) return;
            Assert.Equal(best, patterns[0].Select((n, k) => n * values[k]).Sum());
            Assert.All(patterns[0], (n, k) => Assert.InRange(n, 0, demand[k]));
        }, iter: 200);

    // What any choice of pieces is worth that cuts that go through can free: all choices, all cuts.
    private static int Tried(int w, int h, int[] demand, int[] values, RasterPricing.Lying[] ways)
    {
        var known = new Dictionary<(int, int, string), bool>();
        var best = 0;
        Choose(0, new int[demand.Length], 0);
        return best;

        void Choose(int k, int[] counts, int worth)
        {
            if (k == demand.Length)
            {
                if (worth > best && Fits(w, h, counts)) best = worth;
                return;
            }
            for (var n = 0; n <= demand[k]; n++)
            {
                counts[k] = n;
                Choose(k + 1, counts, worth + n * values[k]);
            }
            counts[k] = 0;
        }

        bool Fits(int x, int y, int[] counts)
        {
            var total = counts.Sum();
            if (total == 0) return true;
            if (total == 1) return ways.Any(l => counts[l.Kind] == 1 && l.X <= x && l.Y <= y);
            var key = (x, y, string.Join(",", counts));
            if (known.TryGetValue(key, out var fits)) return fits;
            return known[key] = Parts(counts).Any(p =>
                Enumerable.Range(1, x - 1).Any(a => Fits(a, y, p.A) && Fits(x - a, y, p.B)) || Enumerable.Range(1, y - 1).Any(b => Fits(x, b, p.A) && Fits(x, y - b, p.B)));
        }

        // All ways to part a choice in two that are not empty.
        static IEnumerable<(int[] A, int[] B)> Parts(int[] counts)
        {
            var all = counts.Aggregate(1, (n, c) => n * (c + 1));
            for (var code = 1; code < all - 1; code++)
            {
                var (a, rest) = (new int[counts.Length], code);
                for (var k = 0; k < counts.Length; k++) (a[k], rest) = (rest % (counts[k] + 1), rest / (counts[k] + 1));
                yield return (a, [.. counts.Select((c, k) => c - a[k])]);
            }
        }
    }

    // Six sorts of cabinet panels, and a large sheet.
    private static CuttingProblem ThirteenPanels(params StockSize[] more)
    {
        var parts = new (int L, int W, int Quantity, bool Any)[] { (1400, 400, 2, false), (764, 400, 2, true), (763, 380, 3, true), (1396, 396, 2, false), (1170, 320, 2, false), (914, 320, 2, true) };
        return new CuttingProblem([.. parts.Select((p, k) => new Part($"p{k}", p.L * CuttingTests.Mm, p.W * CuttingTests.Mm) { Quantity = p.Quantity, Grain = p.Any ? Grain.Any : Grain.Along })],
            [new StockSize("large", 2800 * CuttingTests.Mm, 2070 * CuttingTests.Mm) { Price = 5800, Trim = Trim.Around(10 * CuttingTests.Mm) }, .. more], new PanelSaw(3_200_000));
    }

    [Fact]
    public void Thirteen_panels_do_not_come_out_of_one_large_sheet()
    {
        // They take 89 % of its area: areas do not refute it, cuts that go through do.
        var work = Preparation.Of(ThirteenPanels()).Ways[0].Work;
        var refuter = new CountRefuter(work);

        Assert.Equal(5800, DualFeasible.Bound(work));
        Assert.Null(refuter.Refute([2], true, 20_000_000, TestContext.Current.CancellationToken));
        Assert.NotNull(refuter.Refute([1], true, 100_000_000, TestContext.Current.CancellationToken));
    }

    [Fact]
    public void Two_smaller_sheets_are_proved_cheaper_with_any_number_of_threads()
    {
        var problem = ThirteenPanels(new StockSize("small", 2440 * CuttingTests.Mm, 1220 * CuttingTests.Mm) { Price = 3100, Trim = Trim.Around(10 * CuttingTests.Mm) });
        var plans = new[] { 1, 2 }.Select(n => Cutter.Solve(problem, new CuttingOptions { Effort = 100_000_000, Threads = n }, null, TestContext.Current.CancellationToken).Plan!).ToArray();

        Assert.All(plans, p => Assert.Equal((6200L, 6200L), (p.Cost, p.Bound)));
        Assert.Equal(plans[0].Effort, plans[1].Effort);
        Assert.Equal(plans[0].Sheets.SelectMany(s => s.Placements), plans[1].Sheets.SelectMany(s => s.Placements));
    }

    [Fact]
    public void A_router_is_not_bound_by_cuts_that_go_through()
    {
        // Five pieces in a pinwheel fill the sheet; no cut goes through it.
        var problem = new CuttingProblem([new Part("p", 60, 40) { Quantity = 4 }, new Part("middle", 20, 20)], [new StockSize("s", 100, 100) { Price = 1 }], new Router(0)) { LeastOffcut = 0 };
        Assert.Equal(1, Cutter.Solve(problem, new CuttingOptions { Effort = 60_000_000, Threads = 1 }, null, TestContext.Current.CancellationToken).Plan!.Bound);
        Assert.Equal(2, Cutter.Solve(problem with { Machine = new PanelSaw(0) }, new CuttingOptions { Effort = 60_000_000, Threads = 1 }, null, TestContext.Current.CancellationToken).Plan!.Bound);
    }
}
