using ShopDrawings.Drafting;
using Xunit;

namespace ShopDrawings.Tests.Drafting;

public class FontMetricsTests
{
    // Numbers in font units, 2048 to the font size, asked of the same font file by another reader: fontTools 4.38,
    // getBestCmap() and hmtx, summed without kerning, 1229 (.notdef) where it has no character; glyf['H'].yMax is 1493.
    [Theory]
    [InlineData("", 0)]
    [InlineData("H", 1540)]
    [InlineData("i", 569)]
    [InlineData(" ", 651)]
    [InlineData("Ø", 1612)]
    [InlineData("½", 1985)]
    [InlineData("\u2014", 2048)]
    [InlineData("\ufffd", 2100)]
    [InlineData("22 3/8 in", 9071)]
    [InlineData("Left side, 568.3 mm × 1 980", 29459)]
    [InlineData("Tür AV °", 8519)]
    public void Advance_of_known_characters_is_the_font_table_s(string text, int units) =>
        Assert.Equal(units / 2048.0, FontMetrics.Default.Advance(text), 1e-12);

    [Fact]
    public void Advance_beyond_the_first_plane_counts_one_character() =>
        Assert.Equal(2729 / 2048.0, FontMetrics.Default.Advance("\U0001D538x"), 1e-12);

    [Theory]
    [InlineData("\u4e2d")]
    [InlineData("\U0001D400")]
    public void Advance_of_a_character_the_font_lacks_is_that_of_its_sign_for_missing_ones(string text) =>
        Assert.Equal(1229 / 2048.0, FontMetrics.Default.Advance(text), 1e-12);

    [Theory]
    [InlineData('\ud835')]
    [InlineData('\udd38')]
    public void Advance_of_half_a_pair_is_that_of_the_replacement_character(char half) =>
        Assert.Equal((2100 + 1212) / 2048.0, FontMetrics.Default.Advance(half + "x"), 1e-12);

    [Fact]
    public void Capital_height_is_that_of_the_letter_H() =>
        Assert.Equal(1493 / 2048.0, FontMetrics.Default.CapitalHeight, 1e-12);
}
