using CsCheck;
using ShopDrawings.Cutting;

namespace ShopDrawings.Tests.Cutting;

/// <summary>What a saw, a store and a router allow is kept.</summary>
public class SawRuleTests
{
    private const long Mm = CuttingTests.Mm;

    private static readonly Gen<Part[]> Parts =
        from parts in Gen.Select(Gen.Long[80, 900], Gen.Long[80, 600], Gen.Int[1, 3], Gen.Bool).Array[1, 8]
        select parts.Select((p, k) => new Part($"p{k}", p.Item1 * Mm, p.Item2 * Mm) { Quantity = p.Item3, Grain = p.Item4 ? Grain.Along : Grain.Any }).ToArray();

    private static void Each(CuttingMachine machine, Action<CuttingPlan> check, Trim trim = default) => Parts.Sample(parts =>
    {
        var problem = new CuttingProblem([.. parts], [new StockSize("board", 2440 * Mm, 1220 * Mm) { Price = 6500, Trim = trim }], machine);
        var plan = CuttingTests.Sound(problem, CuttingTests.Quick with { Effort = 100_000 });
        check(plan);
    }, iter: 30);

    private static int Stages(CutPiece piece) => piece.Kind == PieceKind.Divided ? (piece.CutsHere > 0 ? 1 : 0) + piece.Children.Max(Stages) : 0;

    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    public void Stages_are_no_more_than_the_saw_allows(int most) =>
        Each(new PanelSaw(3_200_000) { MaxStages = most, FreeingCutCounts = true }, plan => Assert.All(plan.Sheets, s => Assert.InRange(Stages(s.Tree!), 0, most)));

    [Theory]
    [InlineData(CutDirection.Along)]
    [InlineData(CutDirection.Across)]
    public void First_cut_goes_the_way_it_must(CutDirection first) =>
        Each(new PanelSaw(3_200_000) { FirstCut = first }, plan => Assert.All(plan.Sheets, s => Assert.Equal(first, s.Tree!.Cuts)));

    [Fact]
    public void Cuts_are_no_longer_and_strips_no_narrower_than_the_saw_allows() =>
        Each(new PanelSaw(3_200_000) { LongestCut = 1300 * Mm, LeastStrip = 70 * Mm }, plan => Assert.All(plan.Sheets.SelectMany(s => s.Tree!.All()).Where(p => p.CutsHere > 0), p =>
        {
            Assert.InRange(p.Cuts == CutDirection.Across ? p.AlongY : p.AlongX, 1, 1300 * Mm);
            Assert.All(p.Children.Take(p.CutsHere), c => Assert.True((p.Cuts == CutDirection.Across ? c.AlongX : c.AlongY) >= 70 * Mm));
        }));

    [Fact]
    public void Store_makes_no_more_cuts_than_it_offers_and_they_are_paid()
    {
        var saw = new StoreSaw(4 * Mm, 6) { Error = 2 * Mm, PricePerCut = 50 };
        Each(saw, plan =>
        {
            var steps = CutSequence.Of(plan);
            Assert.All(plan.Sheets, s => Assert.InRange(steps.Count(c => c.Sheet == s.Number), 0, 6));
            Assert.Equal(50 * steps.Length, plan.CutCost);
            Assert.Equal(plan.CutCost, CounterSlip.Of(plan).Sum(s => s.CutCost));
        });
    }

    [Fact]
    public void Blanks_can_be_carried_and_hold_their_parts()
    {
        // 18 mm board of 650 kg/m³: 11.7 kg/m²; nothing over 20 kg or 1.5 m.
        var saw = new StoreSaw(4 * Mm, 5) { Error = 2 * Mm, LongestPiece = 1500 * Mm, HeaviestPieceGrams = 20_000, MassPerSquareMetre = 11_700, Home = new PanelSaw(3_200_000), BlankAllowance = 5 * Mm };
        Each(saw, plan =>
        {
            var steps = CutSequence.Of(plan);
            Assert.All(plan.Sheets, s => Assert.InRange(steps.Count(c => c.Sheet == s.Number && !c.AtHome), 0, 5));
            Assert.All(plan.Sheets.SelectMany(s => s.Tree!.Children).Where(p => p.Kind == PieceKind.Divided), blank =>
            {
                Assert.InRange(Math.Max(blank.AlongX, blank.AlongY), 1, 1500 * Mm);
                Assert.InRange(blank.AlongX / 1e9 * (blank.AlongY / 1e9) * 11_700, 0, 20_000);
            });
        });
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void What_is_taken_home_of_a_sheet_lies_side_by_side_and_holds_every_part(bool isCutAtHome)
    {
        var saw = new StoreSaw(4 * Mm, 9) { Error = Mm, Home = isCutAtHome ? new PanelSaw(3_200_000) : null, BlankAllowance = 5 * Mm };
        Each(saw, plan =>
        {
            var slips = CounterSlip.Of(plan);
            Assert.Equal(plan.Sheets.Select(s => s.Number), slips.SelectMany(s => s.Sheets).Order());
            foreach (var slip in slips)
            {
                static bool Apart(SheetArea a, SheetArea b) => a.X + a.AlongX <= b.X || b.X + b.AlongX <= a.X || a.Y + a.AlongY <= b.Y || b.Y + b.AlongY <= a.Y;
                Assert.All(slip.Pieces, a => Assert.All(slip.Pieces, b => Assert.True(a == b || Apart(a.Area, b.Area))));
                Assert.All(plan.Sheets[slip.Sheets[0] - 1].Placements, p => Assert.Single(slip.Pieces, a => p.X >= a.Area.X && p.Y >= a.Area.Y && p.X + p.AlongX <= a.Area.X + a.Area.AlongX && p.Y + p.AlongY <= a.Area.Y + a.Area.AlongY));
                if (!isCutAtHome) Assert.Equal(plan.Sheets[slip.Sheets[0] - 1].Placements.Select(p => p.Label).Order(), slip.Pieces.Where(p => p.Part is not null).Select(p => p.Part!.Label).Order());
            }
        }, isCutAtHome ? default : Trim.Around(6 * Mm));
    }

    // Dearer than the sheets they are saved on: what is cheapest depends on the cuts.
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(3)]
    public void No_plan_costs_less_than_its_bound_where_cuts_are_paid(int trimmed)
    {
        var saw = new StoreSaw(4 * Mm, 9) { PricePerCut = 70, Home = trimmed == 1 ? new PanelSaw(3_200_000) : null, BlankAllowance = 5 * Mm, LongestPiece = 1300 * Mm };
        Parts.Sample(parts =>
        {
            var trim = new Trim(trimmed > 0 ? 7 * Mm : 0, trimmed > 1 ? 7 * Mm : 0, trimmed > 2 ? 7 * Mm : 0, 0);
            StockSize[] sizes = [new("small", 1000 * Mm, 1000 * Mm) { Price = 100, Trim = trim }, new("large", 2440 * Mm, 1220 * Mm) { Price = 290 }, StockSize.Offcut("own", 1100 * Mm, 500 * Mm)];
            var plan = CuttingTests.Sound(new CuttingProblem([.. parts], [.. sizes], saw), CuttingTests.Quick with { Effort = 100_000 });
            Assert.True(plan.Cost >= plan.Bound);
            var cuts = CutSequence.Of(plan).Count(c => !c.AtHome);
            Assert.Equal(plan.Sheets.Sum(s => s.Stock.Price) + 70 * cuts, plan.Cost);
        }, iter: Fuzz.Iterations(40));
    }

    [Fact]
    public void Cut_is_saved_where_the_last_blank_can_be_carried_with_what_is_left()
    {
        var saw = new StoreSaw(4 * Mm, 9) { Home = new PanelSaw(3_200_000), BlankAllowance = 5 * Mm, LongestPiece = 1700 * Mm };
        CuttingPlan Of(long price, long longest) => CuttingTests.Sound(new CuttingProblem([new Part("a", 700 * Mm, 1000 * Mm) { Grain = Grain.Along }, new Part("b", 800 * Mm, 1000 * Mm) { Grain = Grain.Along }],
            [new StockSize("board", 2440 * Mm, 1220 * Mm) { Price = 6500, Grain = GrainDirection.AlongLength }], saw with { PricePerCut = price, LongestPiece = longest * Mm }), CuttingTests.Quick);

        // 2440 − (800 + 2 × 5) − 4 = 1626 for the blank of b and what is left.
        Assert.Equal((50, true), (Of(50, 1700).CutCost, Of(50, 1700).IsProvedCheapest));
        Assert.Equal(100, Of(50, 1600).CutCost);
        Assert.Equal(2, CutSequence.Of(Of(0, 1700)).Count(c => !c.AtHome));
    }

    [Fact]
    public void Row_that_falls_apart_into_blanks_still_fits_its_sheet()
    {
        // Found at random: a stack of a row and a strip lost the strip, and its row became blanks, each with its own allowance.
        var parts = new (int Length, int Width, int Count, Grain Grain)[] { (619, 401, 1, Grain.Any), (524, 297, 2, Grain.Along), (424, 477, 3, Grain.Any), (514, 495, 3, Grain.Along), (873, 98, 1, Grain.Any), (487, 85, 3, Grain.Any), (634, 355, 3, Grain.Any) };
        var saw = new StoreSaw(4 * Mm, 5) { Error = 2 * Mm, LongestPiece = 1500 * Mm, HeaviestPieceGrams = 20_000, MassPerSquareMetre = 11_700, Home = new PanelSaw(3_200_000), BlankAllowance = 5 * Mm };
        var problem = new CuttingProblem([.. parts.Select((p, k) => new Part($"p{k}", p.Length * Mm, p.Width * Mm) { Quantity = p.Count, Grain = p.Grain })], [new StockSize("board", 2440 * Mm, 1220 * Mm) { Price = 6500 }], saw);

        CuttingTests.Sound(problem, CuttingTests.Quick with { Effort = 100_000 });
    }

    [Fact]
    public void Blanks_are_no_longer_than_the_saw_at_home_cuts()
    {
        var saw = new StoreSaw(4 * Mm, 5) { Error = Mm, Home = new PanelSaw(3_200_000) { LongestCut = 1250 * Mm }, BlankAllowance = 5 * Mm };
        Each(saw, plan =>
        {
            Assert.All(plan.Sheets.SelectMany(s => s.Tree!.All()).Where(p => p.AtHome), p => Assert.InRange(Math.Max(p.AlongX, p.AlongY), 1, 1250 * Mm));
            Assert.NotEmpty(CutSequence.Of(plan).Where(c => c.AtHome));
        });
    }

    [Theory]
    [InlineData(1300, 0, false)]
    [InlineData(1300, 8, true)]
    [InlineData(2440, 8, false)]
    public void Sheet_with_an_edge_too_long_to_trim_is_refused(int longest, int trim, bool isRefused)
    {
        var outcome = Cutter.Solve(new CuttingProblem([new Part("a", 600 * Mm, 400 * Mm)], [new StockSize("board", 2440 * Mm, 1220 * Mm) { Trim = Trim.Around(trim * Mm) }], new PanelSaw(3_200_000) { LongestCut = longest * Mm }));

        Assert.Equal(isRefused, outcome.Refusals.Any(r => r.Message == "an edge of sheet board that is to be trimmed is longer than the 1300 mm the saw cuts"));
        Assert.Equal(isRefused, outcome.Plan is null);
    }

    [Fact]
    public void Router_keeps_its_gap_and_margin() => Each(new Router(8 * Mm) { ClampMargin = 20 * Mm }, plan => Assert.Empty(CutSequence.Of(plan)), Trim.Around(5 * Mm));

    [Fact]
    public void Router_lays_what_no_cut_through_could_part()
    {
        // Five around: four oblongs about a square, which only free placement packs.
        var problem = new CuttingProblem([new Part("oblong", 600 * Mm, 400 * Mm) { Quantity = 4 }, new Part("square", 200 * Mm, 200 * Mm)], [new StockSize("s", 1000 * Mm, 1000 * Mm) { Price = 1 }], new Router(0));

        Assert.Equal(1, CuttingTests.Sound(problem).Cost);
        Assert.Equal(2, CuttingTests.Sound(problem with { Machine = new PanelSaw(0) }).Cost);
    }
}
