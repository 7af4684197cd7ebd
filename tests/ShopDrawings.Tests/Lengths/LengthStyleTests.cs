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
}
