using System.Text.RegularExpressions;
using CsCheck;
using ShopDrawings.Dxf;
using Xunit;

namespace ShopDrawings.Tests.Dxf;

public partial class LayerNamesTests
{
    [GeneratedRegex("^[A-Z][A-Z0-9_]{0,30}$")]
    private static partial Regex Legal { get; }

    [Fact]
    public void Name_that_is_legal_stays() =>
        Assert.Equal(["OUTLINE", "INSIDE_BORE_500_DEEP_1200"], LayerNames.Fit(["OUTLINE", "INSIDE_BORE_500_DEEP_1200"]));

    [Fact]
    public void Names_that_become_alike_are_numbered_and_legal_ones_win() =>
        Assert.Equal(["COTE_2", "COTE", "COTE_3"], LayerNames.Fit(["Côté", "COTE", "cote"]));

    [Theory]
    [InlineData("5mm bore", "L_5MM_BORE")]
    [InlineData("", "L_")]
    [InlineData("0", "L_0")]
    [InlineData("DEFPOINTS", "DEFPOINTS_2")]
    [InlineData("A_NAME_OF_MORE_THAN_THIRTY_ONE_LETTERS", "A_NAME_OF_MORE_THAN_THIRTY_ONE_")]
    public void Name_that_is_not_legal_is_made_to_fit(string name, string expected) =>
        Assert.Equal([expected], LayerNames.Fit([name]));

    [Fact]
    public void Names_of_any_kind_become_legal_and_unlike() => TextFitTests.Wicked.Array[0, 40].Sample(names =>
    {
        var fitted = LayerNames.Fit(names);

        Assert.Equal(names.Length, fitted.Distinct().Count());
        Assert.All(fitted, name => Assert.Matches(Legal, name));
    }, iter: 300);
}
