namespace ShopDrawings.Tests;

public class CheckValueTests
{
    public static IEnumerable<TheoryDataRow<string>> Answered =>
        CheckValues.Rows.Where(r => CheckValues.Product.ContainsKey(r.Function) && !CheckValues.Waiting.ContainsKey(r.Id))
            .Select(r => new TheoryDataRow<string>(r.Id) { TestDisplayName = $"{r.Id} {r.Function} ({r.Source})" });

    [Theory]
    [MemberData(nameof(Answered))]
    public void Product_gives_the_value_worked_out_by_hand(string id)
    {
        var row = CheckValues.Rows.Single(r => r.Id == id);

        var answer = CheckValues.Product[row.Function](row);

        // A tolerance of nothing is for counts; lengths agree no closer than a double can.
        Assert.InRange(answer, row.Expected - Math.Max(row.Tolerance, 1e-9), row.Expected + Math.Max(row.Tolerance, 1e-9));
    }

    [Fact]
    public void Every_row_about_sheet_goods_and_lengths_is_answered()
    {
        string[] lengths = ["in_to_mm", "ft_to_mm", "nearest_16ths", "nearest_32nds", "fraction_error", "max_rounding_error", "letter_width_mm"];
        var answered = Answered.Select(r => r.Data).ToHashSet();
        var asked = CheckValues.Rows.Where(r => r.Topic == "1 sheet goods" || lengths.Contains(r.Function)).ToList();

        Assert.All(lengths, l => Assert.Contains(asked, r => r.Function == l));
        Assert.Equal(18, asked.Count(r => r.Topic == "1 sheet goods"));
        Assert.Empty(asked.Where(r => !answered.Contains(r.Id)).Select(r => r.Id));
    }

    [Theory]
    [InlineData("2 screws and joints", 34)]
    [InlineData("3 hinges and doors", 22)]
    [InlineData("4 drawer slides", 11)]
    [InlineData("5 castors", 7)]
    [InlineData("8 edge banding", 6)]
    public void Every_row_about_joints_and_hardware_is_answered(string topic, int count)
    {
        var answered = Answered.Select(r => r.Data).ToHashSet();
        var asked = CheckValues.Rows.Where(r => r.Topic == topic).Select(r => r.Id).ToList();

        Assert.Equal(count, asked.Count);
        Assert.Empty(asked.Except(answered).Except(CheckValues.Waiting.Keys));
    }

    [Fact]
    public void Every_row_about_kerf_and_tools_is_answered_but_the_measuring_of_a_kerf()
    {
        var answered = Answered.Select(r => r.Data).ToHashSet();
        var asked = CheckValues.Rows.Where(r => r.Topic == "13 kerf and tool radius").Select(r => r.Id).ToList();

        Assert.Equal(10, asked.Count);
        Assert.Equal(["KF-10"], asked.Where(id => !answered.Contains(id)));
    }

    [Fact]
    public void Every_answer_is_asked_for() =>
        Assert.Empty(CheckValues.Product.Keys.Except(Answered.Select(r => CheckValues.Rows.Single(row => row.Id == r.Data).Function)));

    [Fact]
    public void Rows_that_wait_are_rows_the_product_answers_otherwise_or_not_at_all()
    {
        Assert.All(CheckValues.Waiting.Keys, id =>
        {
            var row = CheckValues.Rows.Single(r => r.Id == id);
            Assert.Contains(row.Function, CheckValues.Product.Keys);
            // Once the product can be asked, the row must no longer wait.
            Assert.NotInRange(CheckValues.Product[row.Function](row), row.Expected - row.Tolerance, row.Expected + row.Tolerance);
        });
    }

    [Fact]
    public void Identifiers_of_rows_are_unique() =>
        Assert.Equal(CheckValues.Rows.Count, CheckValues.Rows.Select(r => r.Id).Distinct().Count());
}
