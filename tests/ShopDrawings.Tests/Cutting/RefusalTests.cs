using ShopDrawings.Cutting;

namespace ShopDrawings.Tests.Cutting;

/// <summary>What cannot be cut is refused with the numbers that say why.</summary>
public class RefusalTests
{
    private const long Mm = 1_000_000;

    private static readonly StockSize Board = new("board", 2440 * Mm, 1220 * Mm) { Price = 6500 };

    private static Refusal Only(CuttingProblem problem) => Assert.Single(CuttingTests.Solve(problem, CuttingTests.Quick).Refusals);

    private static CuttingProblem Of(Part part, StockSize? stock = null, CuttingMachine? machine = null) => new([part], [stock ?? Board], machine ?? new PanelSaw(3_200_000));

    [Fact]
    public void Part_that_is_too_large_says_by_how_much()
    {
        var refusal = Only(Of(new Part("worktop", 2500 * Mm, 1250 * Mm)));

        Assert.Equal(RefusalReason.TooLarge, refusal.Reason);
        Assert.Equal((60 * Mm, 30 * Mm), (refusal.MissingLength, refusal.MissingWidth));
        Assert.Equal("worktop, 2500 × 1250 mm, fits no sheet; the nearest, board, is 60 mm too short and 30 mm too narrow", refusal.Message);
    }

    [Fact]
    public void Grain_that_forbids_turning_is_named()
    {
        var refusal = Only(Of(new Part("door", 700 * Mm, 1500 * Mm) { Grain = Grain.Along }));

        Assert.Equal(RefusalReason.Grain, refusal.Reason);
        Assert.Equal("door, 700 × 1500 mm, would fit turned, but its grain forbids it; as it must lie, sheet board is 280 mm too narrow", refusal.Message);
    }

    public static TheoryData<CuttingMachine, string> TooStrict => new()
    {
        { new StoreSaw(4 * Mm, 1), "side takes more than 1 cut out of every sheet, trims counted" },
        { new PanelSaw(3 * Mm) { MaxCuts = 1 }, "side takes more than 1 cut out of every sheet, trims counted" },
        { new PanelSaw(3 * Mm) { LongestCut = 600 * Mm }, "side takes a longer cut out of every sheet than the 600 mm the saw cuts" },
    };

    [Theory]
    [MemberData(nameof(TooStrict))]
    public void Rule_that_no_way_of_cutting_a_part_keeps_is_named(CuttingMachine machine, string message)
    {
        var refusal = Only(Of(new Part("side", 700 * Mm, 300 * Mm) { Quantity = 3 }, machine: machine));

        Assert.Equal((RefusalReason.Rule, "side", message), (refusal.Reason, refusal.Subject, refusal.Message));
    }

    [Fact]
    public void Endless_sheets_are_not_said_to_be_too_few()
    {
        StockSize[] sizes = [new("small", 500 * Mm, 400 * Mm), new("large", 1500 * Mm, 400 * Mm) { Count = 1 }];

        var refusal = Only(new CuttingProblem([new Part("side", 1400 * Mm, 300 * Mm) { Quantity = 2 }], [.. sizes], new PanelSaw(3 * Mm)));

        Assert.Equal("of some sizes there are as many sheets as needed, but no way was found to lay what fits only on the others on those there are", refusal.Message);
    }

    [Fact]
    public void Too_little_stock_says_how_much_is_missing()
    {
        var refusal = Only(Of(new Part("p", 1000 * Mm, 1000 * Mm) { Quantity = 5 }, Board with { Count = 1 }));

        Assert.Equal(RefusalReason.TooLittleStock, refusal.Reason);
        Assert.Equal("the parts take 5 m², all the stock has 2.977 m² within its trim; 2.023 m² are missing", refusal.Message);
    }

    [Fact]
    public void Stock_of_which_there_is_none_is_too_little() =>
        Assert.Equal(RefusalReason.TooLittleStock, Only(Of(new Part("p", 1000 * Mm, 1000 * Mm), Board with { Count = 0 })).Reason);

    [Fact]
    public void Trim_counts_when_a_part_is_too_large() =>
        Assert.Equal(10 * Mm, Only(Of(new Part("p", 2430 * Mm, 300 * Mm) { Grain = Grain.Along }, Board with { Trim = Trim.Around(10 * Mm) })).MissingLength);

    [Fact]
    public void Nonsense_is_refused()
    {
        Assert.Equal(RefusalReason.Nonsense, Only(Of(new Part("p", -5, 100))).Reason);
        Assert.Equal(RefusalReason.Nonsense, Only(Of(new Part("p", long.MaxValue, 100))).Reason);
        Assert.Equal(RefusalReason.Nonsense, Only(Of(new Part("p", 100, 100) { Quantity = 0 })).Reason);
        Assert.Equal(RefusalReason.Nonsense, Only(Of(new Part("p", 100, 100), machine: new PanelSaw(-1))).Reason);
        Assert.Equal(RefusalReason.Nonsense, Only(Of(new Part("p", 100, 100), Board with { Trim = Trim.Around(2000 * Mm) })).Reason);
        Assert.Equal(RefusalReason.Nonsense, Only(new CuttingProblem([], [Board], new PanelSaw(0))).Reason);
        Assert.Equal(RefusalReason.Nonsense, Only(new CuttingProblem([new Part("p", 1, 1), new Part("p", 2, 2)], [Board], new PanelSaw(0))).Reason);
    }

    [Fact]
    public void Too_many_are_refused_and_ten_thousand_are_not()
    {
        CuttingProblem Many(int count) => new([.. Enumerable.Range(0, count).Select(k => new Part($"p{k}", (100 + k % 400) * Mm + k, (80 + k % 300) * Mm))], [Board], new PanelSaw(3_200_000));

        Assert.Equal(RefusalReason.TooMany, Only(Many(10_001)).Reason);
        Assert.NotNull(CuttingTests.Solve(Many(10_000), new CuttingOptions { Effort = 1 }).Plan);
        Assert.Equal(RefusalReason.TooMany, Only(Of(new Part("p", 100 * Mm, 100 * Mm) { Quantity = 1_000_000 })).Reason);
    }

    [Fact]
    public void Narrow_part_names_the_saws_least_strip() =>
        Assert.Equal("p is 40 mm wide; the saw holds no piece under 60 mm", Only(Of(new Part("p", 500 * Mm, 40 * Mm), machine: new PanelSaw(3_200_000) { LeastStrip = 60 * Mm })).Message);

    [Fact]
    public void Calls_that_make_no_sense_are_exceptions()
    {
        Assert.Throws<ArgumentNullException>(() => CuttingTests.Solve(null!, CuttingTests.Quick));
        Assert.Throws<ArgumentOutOfRangeException>(() => CuttingTests.Solve(Of(new Part("p", 1, 1)), new CuttingOptions { Effort = 0 }));
        Assert.Throws<ArgumentOutOfRangeException>(() => CuttingTests.Solve(Of(new Part("p", 1, 1)), new CuttingOptions { Threads = 0 }));
    }
}
