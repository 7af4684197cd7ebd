using ShopDrawings.Kernel;

namespace ShopDrawings.Tests.Lengths;

public class LengthStyleTests
{
    // Sizes to 1/16 in or 0.1 mm, places to 1/32 in or 0.01 mm, diameters and depths to 1/64 in or 0.01 mm.
    [Theory]
    [InlineData(568.325, "22 3/8\"", "22 3/8\"", "22 3/8\"", "~568.3", "~568.33", "~568.33")]
    [InlineData(0.79375, "1/32\"", "1/32\"", "1/32\"", "~0.8", "~0.79", "~0.79")]
    [InlineData(0.396875, "1/64\"", "1/64\"", "1/64\"", "~0.4", "~0.4", "~0.4")]
    [InlineData(600, "~23 5/8\"", "~23 5/8\"", "600 mm", "600", "600", "600")]
    [InlineData(35, "~1 3/8\"", "~1 3/8\"", "35 mm", "35", "35", "35")]
    [InlineData(2.85, "~1/8\"", "~1/8\"", "2.85 mm", "~2.9", "2.85", "2.85")]
    [InlineData(12.7, "1/2\"", "1/2\"", "1/2\"", "12.7", "12.7", "12.7")]
    [InlineData(4.1656, "~5/32\"", "~5/32\"", "~5/32\"", "~4.2", "~4.17", "~4.17")]
    [InlineData(0, "0\"", "0\"", "0\"", "0", "0", "0")]
    [InlineData(-12.7, "-1/2\"", "-1/2\"", "-1/2\"", "-12.7", "-12.7", "-12.7")]
    public void Length_is_printed_as_closely_as_its_kind_needs(
        double millimetres, string size, string place, string fine, string metricSize, string metricPlace, string metricFine)
    {
        Assert.Equal(size, LengthStyle.Inches.Print(millimetres));
        Assert.Equal(place, LengthStyle.Inches.PrintPlace(millimetres));
        Assert.Equal(fine, LengthStyle.Inches.PrintFine(millimetres));
        Assert.Equal(metricSize, LengthStyle.Millimetres.Print(millimetres));
        Assert.Equal(metricPlace, LengthStyle.Millimetres.PrintPlace(millimetres));
        Assert.Equal(metricFine, LengthStyle.Millimetres.PrintFine(millimetres));
    }

    [Theory]
    [InlineData(38.1, "1 1/2\" (38.1 mm)", "38.1 mm")]
    [InlineData(568.325, "22 3/8\" (568.33 mm)", "568.33 mm")]
    [InlineData(600, "~23 5/8\" (600 mm)", "600 mm")]
    [InlineData(0, "0\" (0 mm)", "0 mm")]
    public void Length_in_a_sentence_carries_its_unit(double millimetres, string inches, string metric)
    {
        Assert.Equal(inches, LengthStyle.Inches.Describe(millimetres));
        Assert.Equal(metric, LengthStyle.Millimetres.Describe(millimetres));
    }

    [Fact]
    public void Statement_names_the_unit_and_the_mark()
    {
        Assert.True(LengthStyle.Inches.IsInches);
        Assert.False(LengthStyle.Millimetres.IsInches);
        Assert.StartsWith("inches", LengthStyle.Inches.Statement, StringComparison.Ordinal);
        Assert.StartsWith("mm", LengthStyle.Millimetres.Statement, StringComparison.Ordinal);
        Assert.All([LengthStyle.Inches, LengthStyle.Millimetres], s => Assert.Contains(Tape.RoundedMark, s.Statement));
    }

    // Each fraction by hand: 568.325 is 22 3/8, 600 is 23.622 or 23 5/8 less 0.003, 12.7 is 1/2, 0.396875 is 1/64.
    [Theory]
    [InlineData(568.325, "22 ³⁄₈\"", "22.375\"", "~568.3 [22 ³⁄₈\"]", "22 ³⁄₈\" [~568.3 mm]")]
    [InlineData(600, "~23 ⁵⁄₈\"", "~23.622\"", "600 [~23 ⁵⁄₈\"]", "~23 ⁵⁄₈\" [600 mm]")]
    [InlineData(12.7, "¹⁄₂\"", ".5\"", "12.7 [¹⁄₂\"]", "¹⁄₂\" [12.7 mm]")]
    [InlineData(0.396875, "¹⁄₆₄\"", "~.016\"", "~0.4 [¹⁄₆₄\"]", "¹⁄₆₄\" [~0.4 mm]")]
    [InlineData(-12.7, "-¹⁄₂\"", "-.5\"", "-12.7 [-¹⁄₂\"]", "-¹⁄₂\" [-12.7 mm]")]
    [InlineData(0, "0\"", "0\"", "0 [0\"]", "0\" [0 mm]")]
    public void Size_is_stacked_decimal_or_in_both_units(double millimetres, string stacked, string decimals, string metricFirst, string inchesFirst)
    {
        var inches = LengthStyle.Inches with { Fractions = FractionForm.Stacked };
        var metric = LengthStyle.Millimetres with { Fractions = FractionForm.Stacked, HasBoth = true };

        Assert.Equal(stacked, inches.Print(millimetres));
        Assert.Equal(decimals, (inches with { Fractions = FractionForm.Decimals }).Print(millimetres));
        Assert.Equal(metricFirst, metric.Print(millimetres));
        Assert.Equal(inchesFirst, (inches with { HasBoth = true }).Print(millimetres));
        // Places have one unit.
        Assert.DoesNotContain("[", metric.PrintPlace(millimetres), StringComparison.Ordinal);
        Assert.Equal(stacked, (inches with { HasBoth = true }).PrintPlace(millimetres));
    }

    [Theory]
    // 333 mm are 13.1102 in, 450 mm 17.7165.
    [InlineData(16, "~13 ¹⁄₈\"", "~17 ¹¹⁄₁₆\"")]
    [InlineData(32, "~13 ¹⁄₈\"", "~17 ²³⁄₃₂\"")]
    [InlineData(64, "~13 ⁷⁄₆₄\"", "~17 ²³⁄₃₂\"")]
    public void Denominator_is_the_finest_part(int denominator, string of333, string of450)
    {
        var style = LengthStyle.Inches with { Fractions = FractionForm.Stacked, Denominator = denominator };

        Assert.Equal((of333, of450), (style.Print(333), style.Print(450)));
        Assert.Throws<ArgumentOutOfRangeException>(() => LengthStyle.Inches with { Denominator = 12 });
    }

    // Unicode says what a stacked fraction is; it reads as the plain one, to within half a part.
    [Fact]
    public void Stacked_fraction_is_the_plain_one() => CsCheck.Check.Sample(CsCheck.Gen.Select(CsCheck.Gen.Double[0.5, 5000], CsCheck.Gen.Int[4, 6]), (mm, power) =>
    {
        var denominator = 1 << power;
        var (plain, stacked) = (LengthStyle.Inches with { Denominator = denominator }, LengthStyle.Inches with { Denominator = denominator, Fractions = FractionForm.Stacked });
        var flat = StackedDigits.Flat(stacked.Print(mm));

        Assert.Equal(plain.Print(mm), flat);
        Assert.InRange(Tape.Parse(flat.TrimStart('~')).Millimeters - mm, -12.7 / denominator - 1e-9, 12.7 / denominator + 1e-9);
    }, iter: Fuzz.Iterations(1_000));
}
