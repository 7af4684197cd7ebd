using CsCheck;
using ShopDrawings.Cutting;
using ShopDrawings.CuttingBench;

namespace ShopDrawings.Tests.Cutting;

/// <summary>Real jobs first, then random ones, each checked by a checker and a saw that know nothing of the solver.</summary>
public class CuttingTests
{
    internal const long Mm = 1_000_000;

    internal static readonly CuttingOptions Quick = new() { Effort = 1_000_000, Threads = 1 };

    private static StockSize Board(int? count = null) => new("board", 2440 * Mm, 1220 * Mm) { Price = 6500, Count = count };

    private static CuttingProblem Carcass(CuttingMachine machine, Trim trim = default) => new(
        [
            new("left side", 720 * Mm, 560 * Mm) { Grain = Grain.Along, Matching = "sides" }, new("right side", 720 * Mm, 560 * Mm) { Grain = Grain.Along, Matching = "sides" },
            new("bottom", 564 * Mm, 560 * Mm), new("top", 564 * Mm, 560 * Mm), new("shelf", 564 * Mm, 540 * Mm) { Quantity = 2 },
            new("door", 716 * Mm, 297 * Mm) { Quantity = 2, Grain = Grain.Along },
        ], [Board() with { Trim = trim }], machine);

    [Fact]
    public void Carcass_comes_out_of_one_board_and_is_proved()
    {
        var problem = Carcass(new PanelSaw(3_200_000), Trim.Around(10 * Mm));
        var plan = Sound(problem);

        Assert.Equal("proved cheapest", plan.Verdict);
        Assert.Equal(6500, plan.Cost);
        Assert.Equal(1, plan.Statistics.Sheets);
        Assert.Equal(1, plan.Statistics.MatchedGroups);
        Assert.NotNull(plan.Statistics.LargestOffcut);
    }

    [Fact]
    public void Pieces_across_a_sheet_are_as_worked_by_hand()
    {
        // Rows SW-01, SW-03, SW-04 and SW-09 of check-values.csv: pieces = floor((L + k) / (p + k)).
        foreach (var row in CheckValues.Rows.Where(r => r.Function == "parts_across"))
        {
            var (usable, part, kerf) = (Nm(row["usable_mm"]), Nm(row["part_mm"]), Nm(row["kerf_mm"]));
            CuttingOutcome Ask(int quantity) => Solve(new CuttingProblem([new Part("p", part, 100 * Mm) { Quantity = quantity, Grain = Grain.Along }],
                [new StockSize("s", usable, 100 * Mm) { Count = 1 }], new PanelSaw(kerf)), Quick);

            var fits = Ask((int)row.Expected);
            Assert.NotNull(fits.Plan);
            Assert.Equal(RefusalReason.TooLittleStock, Assert.Single(Ask((int)row.Expected + 1).Refusals).Reason);
        }
    }

    [Fact]
    public void Offcut_is_as_worked_by_hand()
    {
        var row = CheckValues.Rows.Single(r => r.Id == "SW-02");
        var plan = Sound(new CuttingProblem([new Part("p", Nm(row["part_mm"]), 600 * Mm) { Quantity = 4, Grain = Grain.Along }], [new StockSize("s", Nm(row["usable_mm"]), 600 * Mm)], new PanelSaw(Nm(row["kerf_mm"]))));

        Assert.Equal(Nm(row.Expected), plan.Statistics.LargestOffcut!.Value.AlongX);
    }

    [Fact]
    public void Yield_is_as_worked_by_hand()
    {
        var row = CheckValues.Rows.Single(r => r.Id == "SW-05");
        var plan = Sound(new CuttingProblem([new Part("p", 568 * Mm, 560 * Mm) { Quantity = 8 }], [new StockSize("s", Nm(2438.4), Nm(1219.2))], new PanelSaw(Nm(3.2))));

        Assert.Equal(row.Expected, plan.Statistics.Yield, row.Tolerance);
    }

    [Fact]
    public void Kerf_decides()
    {
        CuttingProblem With(long kerf) => new([new Part("half", 500 * Mm, 500 * Mm) { Quantity = 4 }], [new StockSize("s", 1000 * Mm, 1000 * Mm) { Price = 1 }], new PanelSaw(kerf));

        Assert.Equal(1, Sound(With(0)).Cost);
        Assert.Equal(4, Sound(With(3_200_000)).Cost);
    }

    [Fact]
    public void Trim_decides()
    {
        CuttingProblem With(long trim) => new([new Part("p", 1215 * Mm, 600 * Mm) { Quantity = 4, Grain = Grain.Along }], [Board() with { Trim = new Trim(trim, trim, 0, 0) }], new PanelSaw(4 * Mm));

        Assert.Equal(6500, Sound(With(0)).Cost);
        Assert.Equal(13000, Sound(With(5 * Mm)).Cost);
    }

    [Fact]
    public void A_cut_may_run_off_the_end()
    {
        // 997 and a blade of 3.2 leave nothing of 1000: the part is cut free all the same.
        var plan = Sound(new CuttingProblem([new Part("p", 997 * Mm, 500 * Mm) { Grain = Grain.Along }], [new StockSize("s", 1000 * Mm, 500 * Mm)], new PanelSaw(3_200_000)));

        Assert.Equal("", Assert.Single(CutSequence.Of(plan)).Stays);
    }

    [Fact]
    public void Part_that_is_what_trimming_leaves_comes_off_with_the_last_trim()
    {
        var plan = Sound(new CuttingProblem([new Part("p", 980 * Mm, 480 * Mm)], [new StockSize("s", 1000 * Mm, 500 * Mm) { Trim = Trim.Around(10 * Mm) }], new PanelSaw(3_200_000)));

        Assert.Equal(4, CutSequence.Of(plan).Length);
    }

    [Fact]
    public void Tidying_takes_cuts_away_and_costs_nothing()
    {
        // Six equal strips: one setting for the strips, however the search first laid them.
        var plan = Sound(new CuttingProblem([new Part("p", 1000 * Mm, 190 * Mm) { Quantity = 6, Grain = Grain.Along }], [new StockSize("s", 2440 * Mm, 1220 * Mm) { Price = 1 }], new PanelSaw(3_200_000)));

        Assert.Equal(1, plan.Cost);
        Assert.Equal((2, 7), (plan.Statistics.FenceSettings, plan.Statistics.Cuts));
    }

    [Fact]
    public void Own_offcuts_are_used_before_a_sheet_is_bought()
    {
        var problem = new CuttingProblem([new Part("p", 500 * Mm, 300 * Mm) { Quantity = 2 }], [Board(), StockSize.Offcut("left over", 1010 * Mm, 310 * Mm)], new PanelSaw(3_200_000));

        Assert.Equal("left over", Assert.Single(Sound(problem).Sheets).Stock.Id);
    }

    [Fact]
    public void Exact_copy_with_kerf_needs_the_same_sheets()
    {
        foreach (var instance in Instance.Read(Path.Combine(AppContext.BaseDirectory, "Data", "cutting"), "beng", "OG").Take(4))
            foreach (var turned in new[] { false, true })
            {
                var plain = Sound(instance.Problem(turned));
                Assert.Equal(plain.Cost, Sound(instance.Problem(turned, 10, 3)).Cost);
                if (!turned) Assert.True(plain.Cost >= instance.Lower && plain.Bound <= plain.Cost);
            }
    }

    [Fact]
    public void Random_problems_are_cut_soundly() => Problems.Sample(problem =>
    {
        var outcome = Solve(problem, Quick with { Effort = 200_000 });
        if (outcome.Plan is not { } plan)
        {
            Assert.NotEmpty(outcome.Refusals);
            return;
        }
        Check(problem, plan);
    }, iter: 120);

    [Fact]
    public void Threads_change_nothing()
    {
        foreach (var problem in new[] { Carcass(new PanelSaw(3_200_000)), Instance.Read(Path.Combine(AppContext.BaseDirectory, "Data", "cutting"), "beng", "OG")[2].Problem(false) })
            Assert.Equal(Text(Solve(problem, Quick).Plan!), Text(Solve(problem, Quick with { Threads = 2 }).Plan!));
    }

    [Fact]
    public void Order_of_parts_does_not_move_the_bound() => Problems.Sample(problem =>
    {
        if (Solve(problem, Quick with { Effort = 1 }).Plan is not { } plan) return;
        var shuffled = problem with { Parts = [.. problem.Parts.Reverse()] };
        Assert.Equal(plan.Bound, Solve(shuffled, Quick with { Effort = 1 }).Plan!.Bound);
    }, iter: 30);

    internal static CuttingOutcome Solve(CuttingProblem problem, CuttingOptions options) => Cutter.Solve(problem, options, null, TestContext.Current.CancellationToken);

    internal static CuttingPlan Sound(CuttingProblem problem, CuttingOptions? options = null)
    {
        var outcome = Solve(problem, options ?? Quick);
        Assert.Empty(outcome.Refusals);
        Check(problem, outcome.Plan!);
        return outcome.Plan!;
    }

    internal static void Check(CuttingProblem problem, CuttingPlan plan)
    {
        Assert.Empty(PlanChecker.Faults(problem, plan));
        if (problem.Machine is Router) return;
        var store = (problem.Machine as StoreSaw)?.Home is { } home ? (home.Kerf, problem.Machine.Kerf) : (problem.Machine.Kerf, problem.Machine.Kerf);
        var parts = SawSimulator.Run(plan.Sheets.Select(s => (s.Number, s.Stock.Length, s.Stock.Width)), CutSequence.Of(plan), step => step.AtHome ? store.Item1 : store.Item2);
        // A part that is the whole sheet needs no cut.
        var whole = plan.Sheets.Where(s => s.Tree!.Kind == PieceKind.Part).SelectMany(s => s.Placements).Select(p => p.Label).ToHashSet();
        Assert.Equal(plan.Sheets.SelectMany(s => s.Placements).Where(p => !whole.Contains(p.Label)).Select(p => (p.Label, p.AlongX, p.AlongY)).Order(),
            parts.Select(p => (p.Key, p.Value.X, p.Value.Y)).Order());
    }

    private static string Text(CuttingPlan plan) => string.Join("\n", plan.Sheets.SelectMany(s => s.Placements.Select(p => $"{s.Number} {s.Stock.Id} {p.Label} {p.X} {p.Y} {p.IsTurned}"))
        .Concat(CutSequence.Of(plan).Select(s => s.ToString())));

    private static long Nm(double mm) => (long)Math.Round(mm * 1e6);

    private static readonly Gen<CuttingProblem> Problems =
        from parts in Gen.Select(Gen.Long[50, 1300], Gen.Long[50, 900], Gen.Int[1, 4], Gen.Int[0, 2]).Array[1, 12]
        from stock in Gen.Select(Gen.Long[900, 2800], Gen.Long[600, 2070], Gen.Int[0, 2], Gen.Int[0, 12]).Array[1, 3]
        from kerf in Gen.OneOf(Gen.Const(0L), Gen.Const(3_200_000L), Gen.Const(4_000_000L), Gen.Const(3_175_000L))
        from trim in Gen.OneOf(Gen.Const(0L), Gen.Const(10 * Mm), Gen.Const(2 * Mm))
        select new CuttingProblem(
            [.. parts.Select((p, k) => new Part($"p{k}", p.Item1 * Mm, p.Item2 * Mm) { Quantity = p.Item3, Grain = (Grain)p.Item4 })],
            [.. stock.Select((s, k) => new StockSize($"s{k}", s.Item1 * Mm, s.Item2 * Mm) { Grain = (GrainDirection)s.Item3, Price = s.Item1 * s.Item2 / 1000, Count = s.Item4 > 8 ? s.Item4 : null, Trim = Trim.Around(trim) })],
            new PanelSaw(kerf));
}
