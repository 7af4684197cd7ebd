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
            foreach (var less in parted.Counts.Select((n, t) => parted.Counts.Select((m, s) => s == t ? Math.Max(0, n - 1) : m).ToArray()).Append(parted.Counts).Append([.. parted.Counts.Select(n => n + 1)]))
            {
                var verdict = refuter.Refute(less, thoroughly, refuter.Effort + 10_000_000, TestContext.Current.CancellationToken);
                if (verdict.Cut is { } cut)
                {
                    Assert.False(cut.Keeps(less));
                    Assert.True(cut.Keeps(parted.Counts));
                }
                Assert.False(verdict.IsImpossible && parted.Counts.Zip(less).All(n => n.Second >= n.First));
                if (verdict.Plan is not { } plan) continue;
                Assert.All(less, (n, t) => Assert.True(plan.Count(sheet => sheet.Stock == t) <= n));
                Assert.Equal(work.Count, plan.Sum(sheet => sheet.Items));
                Assert.All(plan, sheet =>
                {
                    Assert.False(sheet.IsTooLarge);
                    foreach (var n in Enumerable.Range(0, sheet.Used).Where(n => sheet[n].Kind == SheetTree.Leaf))
                        Assert.NotEqual(0, work.LiesOn(sheet[n].Item >> 1, sheet.Stock) & (sheet[n].Item % 2 == 0 ? Workload.AsIs : Workload.Turned));
                });
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
            var search = new BoundedPricing(relaxed, demand, 0);
            var patterns = search.Best(values, 0, long.MaxValue / 2, 1, TestContext.Current.CancellationToken);
            var tried = Tried(w, h, demand, values, ways);
            var best = tried.Max(t => t.Worth);

            Assert.Equal(best, search.Top);
            if (best > 0)
            {
                Assert.Equal(best, patterns[0].Counts.Select((n, k) => n * values[k]).Sum());
                Assert.All(patterns[0].Counts, (n, k) => Assert.InRange(n, 0, demand[k]));
            }

            // Everything a sheet may hold that is worth more than a little.
            var all = search.All(values, best / 2, long.MaxValue / 2, TestContext.Current.CancellationToken)!;
            Assert.Equal(tried.Where(t => t.Worth > best / 2).Select(t => string.Join(",", t.Counts)).Order(),
                all.Select(c => string.Join(",", Enumerable.Range(0, demand.Length).Select(k => search.Division!.Of(c.Counts, k)))).Order());
            Assert.All(all, c => Assert.Equal(c.Value, search.Trace(c, values).Counts.Select((n, k) => n * values[k]).Sum()));

            // Given up at once, it still says nothing too small, and gives patterns that are.
            var hasty = new BoundedPricing(relaxed, demand, 0);
            Assert.All(hasty.Best(values, 0, 1, 5, TestContext.Current.CancellationToken), p => Assert.Contains(tried, t => t.Counts.AsSpan().SequenceEqual(p.Counts)));
            Assert.InRange(hasty.Top, best, top);
        }, iter: 200);

    // Any choice of pieces that cuts that go through can free, and what it is worth: all choices, all cuts.
    private static List<(int[] Counts, int Worth)> Tried(int w, int h, int[] demand, int[] values, RasterPricing.Lying[] ways)
    {
        var known = new Dictionary<(int, int, string), bool>();
        var all = new List<(int[] Counts, int Worth)>();
        Choose(0, new int[demand.Length], 0);
        return all;

        void Choose(int k, int[] counts, int worth)
        {
            if (k == demand.Length)
            {
                if (Fits(w, h, counts)) all.Add(((int[])counts.Clone(), worth));
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
    private static CuttingProblem ThirteenPanels(params StockSize[] more) => Panels([(1400, 400, 2, false), (764, 400, 2, true), (763, 380, 3, true), (1396, 396, 2, false), (1170, 320, 2, false), (914, 320, 2, true)], more);

    private static CuttingProblem Panels((int L, int W, int Quantity, bool Any)[] parts, params StockSize[] more) =>
        new([.. parts.Select((p, k) => new Part($"p{k}", p.L * CuttingTests.Mm, p.W * CuttingTests.Mm) { Quantity = p.Quantity, Grain = p.Any ? Grain.Any : Grain.Along })],
            [Sheet("large", 2800, 2070, 5800), .. more], new PanelSaw(3_200_000));

    private static StockSize Sheet(string name, int length, int width, int price) =>
        new(name, length * CuttingTests.Mm, width * CuttingTests.Mm) { Price = price, Trim = Trim.Around(10 * CuttingTests.Mm) };

    [Fact]
    public void Mixtures_that_just_do_are_refuted_by_every_choice()
    {
        // They take 95 % of two large sheets, and of a large and two middle ones; neither holds them.
        var problem = Panels([(630, 400, 2, false), (464, 400, 2, true), (626, 496, 1, false), (1620, 400, 2, false), (814, 400, 2, true), (813, 380, 2, true), (1616, 421, 2, false),
            (1190, 560, 2, false), (514, 560, 2, true), (513, 540, 3, true), (1186, 546, 1, false), (1010, 600, 2, false), (914, 600, 2, true)], Sheet("middle", 2440, 1220, 3100), Sheet("small", 2070, 700, 1700));
        var plan = Cutter.Solve(problem, new CuttingOptions { Effort = 480_000_000 }, null, TestContext.Current.CancellationToken).Plan!;

        Assert.Equal((13_300L, 13_300L), (plan.Cost, plan.Bound));
    }

    [Fact]
    public void Thirteen_panels_do_not_come_out_of_one_large_sheet()
    {
        // They take 89 % of its area: areas do not refute it, cuts that go through do.
        var work = Preparation.Of(ThirteenPanels()).Ways[0].Work;
        var refuter = new CountRefuter(work);

        Assert.Equal(5800, DualFeasible.Bound(work));
        Assert.Null(refuter.Refute([2], true, 20_000_000, TestContext.Current.CancellationToken).Cut);
        Assert.NotNull(refuter.Refute([1], true, 100_000_000, TestContext.Current.CancellationToken).Cut);
    }

    [Fact]
    public void Values_that_run_over_are_not_trusted()
    {
        // Lengths that are rounded up again and again let a sheet of small pieces beside large ones be worth several times its area.
        int[] demand = [2, 8, 3, 3], sides = [4, 3, 5, 73];
        var relaxed = new RasterPricing(sides.Select((s, k) => new RasterPricing.Lying(k, s, s)), demand, 150, 150);
        var search = new BoundedPricing(relaxed, demand, 0);
        var found = search.Best([.. sides.Select(s => s * s * (RasterPricing.Limit / 2 / 22_500))], 0, 1_000_000_000, 5, TestContext.Current.CancellationToken);

        Assert.True(search.Top >= RasterPricing.Limit);
        Assert.Empty(found);
    }

    [Fact]
    public void Contents_are_chosen_for_sheets_as_by_trying_everything() =>
        Gen.Select(Gen.Int[0, 3].Array[3], Gen.Select(Gen.Int[0, 1], Gen.Int[0, 2].Array[3]).Array[1, 12], Gen.Int[0, 2], Gen.Int[0, 2]).Sample((pieces, given, ofFirst, ofSecond) =>
        {
            // Pieces of a kind are worth 3, 5 and 8; two sizes of sheets.
            int[] values = [3, 5, 8], counts = [ofFirst, ofSecond];
            var fields = PieceFields.For([3, 3, 3], [true, true, true])!;
            var lists = new[] { 0, 1 }.Select(t => given.Where(g => g.Item1 == t && g.Item2.Sum() > 0)
                .Select(g => new BoundedPricing.Content(g.Item2.Select((n, k) => n * values[k]).Sum(), fields.Packed(g.Item2))).Distinct().OrderByDescending(c => c.Value).ToArray()).ToArray();
            int[] most = [.. lists.Select(list => list.Select(c => c.Value).DefaultIfEmpty(0).Max())];

            var choice = new PatternCover(lists, most, fields, 1_000_000).Choose(fields.Packed(pieces), pieces.Select((n, k) => n * (long)values[k]).Sum(), counts);

            Assert.Equal(CanBeChosen(fields.Packed(pieces), 0, 0), choice is not null);
            if (choice is null) return;
            Assert.Equal(fields.Packed(pieces), choice.Aggregate(UInt128.Zero, (sum, c) => sum + c.Content.Counts));
            Assert.All(counts, (n, t) => Assert.True(choice.Count(c => c.Stock == t) <= n));
            Assert.All(choice, c => Assert.Contains(c.Content, lists[c.Stock]));

            bool CanBeChosen(UInt128 left, int first, int second) => left == 0
                || (first < counts[0] && lists[0].Any(c => fields.Holds(left, c.Counts) && CanBeChosen(left - c.Counts, first + 1, second)))
                || (second < counts[1] && lists[1].Any(c => fields.Holds(left, c.Counts) && CanBeChosen(left - c.Counts, first, second + 1)));
        }, iter: 2_000);

    [Fact]
    public void Least_multiple_of_sheets_is_that_of_the_mixture()
    {
        // Five pieces, two from one sheet: of two sheets one and a quarter times as many are needed; three from another kind of sheet, of which there is one, help.
        var master = MasterProgram.ForMultiple([5], [2, 0], [10]);
        master.Enter(new Pattern(0, [2]), 0);
        while (master.Settle()) { }
        Assert.Equal(1.25, master.Price, 9);

        master = MasterProgram.ForMultiple([5], [2, 1], [10]);
        Pattern[] patterns = [new(0, [2]), new(1, [3])];
        for (var turn = 0; turn < 10; turn++)
        {
            master.Settle();
            foreach (var pattern in patterns)
                if (master.Gain(pattern, 0, master.Duals()) > 1e-9) master.Enter(pattern, 0);
        }
        Assert.Equal(5 / 7.0, master.Price, 9);
    }

    [Fact]
    public void Sheets_without_waste_are_chosen_from_all_that_they_may_hold()
    {
        // A sheet of 100 by 60 twice, parted so that nothing is left over.
        (int L, int W)[] pieces = [(37, 60), (63, 23), (41, 37), (22, 37), (58, 35), (42, 35), (29, 25), (71, 25)];
        var work = Preparation.Of(new CuttingProblem([.. pieces.Select((p, k) => new Part($"p{k}", p.L, p.W) { Grain = Grain.Along })],
            [new StockSize("s", 100, 60) { Price = 1, Grain = GrainDirection.AlongLength }], new PanelSaw(0))).Ways[0].Work;
        var verdict = new CountRefuter(work).Refute([2], true, 100_000_000, TestContext.Current.CancellationToken);

        Assert.Equal(2, verdict.Plan!.Length);
        Assert.Equal(8, verdict.Plan.Sum(sheet => sheet.Items));
        Assert.DoesNotContain(verdict.Plan, sheet => sheet.IsTooLarge);
    }

    [Fact]
    public void Two_smaller_sheets_are_proved_cheaper_with_any_number_of_threads()
    {
        var problem = ThirteenPanels(Sheet("small", 2440, 1220, 3100));
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
