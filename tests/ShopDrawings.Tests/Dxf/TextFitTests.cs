using System.Text;
using CsCheck;
using ShopDrawings.Dxf;
using Xunit;

namespace ShopDrawings.Tests.Dxf;

public class TextFitTests
{
    internal static readonly Gen<string> Wicked = Gen.OneOf(
        Gen.String,
        Gen.String[Gen.Char["\r\n\t\0\u0085\u2028\u2029\ufeff\u202e\\PU+{}^J%cdp<>;~ aØ½°5\ud800\udc00\u0301é×−"], 0, 300],
        Gen.Int[0, 10_000].Select(n => new string('\\', n)),
        Gen.Const(string.Concat(Enumerable.Repeat("🪚", 5_000))));

    [Theory]
    [InlineData("23 5/8", "23 5/8")]
    [InlineData("23½", "23 1/2")]
    [InlineData("½ × 2⅜\"", "1/2 x 2 3/8\"")]
    [InlineData("½5", "1/2 5")]
    [InlineData("22 ⁷⁄₁₆\"", "22 7/16\"")]
    [InlineData("22⁷⁄₁₆ × ¹⁵⁄₃₂", "22 7/16 x 15/32")]
    [InlineData("600 [~23 ⁵⁄₈\"]", "600 [~23 5/8\"]")]
    [InlineData("2 m²", "2 m2")]
    [InlineData("H₂O, 10⁹", "H2O, 109")]
    [InlineData("45°", "45 deg")]
    [InlineData("Ø5", "D5")]
    [InlineData("4×Ø 5", "4xD 5")]
    [InlineData("⌀35", "D35")]
    [InlineData("Øyvind på Malmø", "Oyvind pa Malmo")]
    [InlineData("−3 ≈ ±2", "-3 ~ +/-2")]
    [InlineData("Côté façade, Rückwand, Größe", "Cote facade, Ruckwand, Grosse")]
    [InlineData("cafe\u0301", "cafe")]
    [InlineData("Žluťoučký kůň, ŁÓDŹ", "Zlutoucky kun, LODZ")]
    [InlineData("“door”…", "\"door\"...")]
    [InlineData("12 mm²", "12 mm2")]
    [InlineData("板", "_")]
    [InlineData("🪚", "_")]
    public void Text_where_only_ascii_arrives_is_what_a_workshop_writes(string text, string expected) =>
        Assert.Equal(expected, TextFit.Fit(text, ascii: true));

    [Theory]
    [InlineData("  two\r\nlines\t", "two  lines")]
    [InlineData("a\\Pb{\\fArial;c}", "a/Pb(/fArial;c)")]
    [InlineData("100%", "100%")]
    [InlineData("%%c %%%", "% %c % % %")]
    [InlineData("mm^2 ^J", "mm_2 _J")]
    [InlineData("\u202eabc\u00ad", "abc")]
    [InlineData(" \n ", "")]
    [InlineData("Größe ½", "Größe ½")]
    public void Text_of_any_kind_is_one_line_without_codes(string text, string expected) =>
        Assert.Equal(expected, TextFit.Fit(text, ascii: false));

    [Fact]
    public void Half_a_surrogate_pair_becomes_a_place_holder() =>
        Assert.Equal("a_b_", TextFit.Fit("a" + "🪚"[0] + "b" + "🪚"[1], ascii: false));

    [Fact]
    public void Text_too_long_is_cut_and_says_so()
    {
        var fit = TextFit.Fit(new string('a', 10_000), ascii: false);

        Assert.Equal(TextFit.MaxLength, fit.Length);
        Assert.EndsWith("a...", fit, StringComparison.Ordinal);
        Assert.Equal("a", TextFit.Fit(new string(' ', 1_000) + "a" + new string('\n', 1_000), ascii: true));
        Assert.EndsWith("...", TextFit.Fit("a" + new string(' ', 1_000) + "b", ascii: true), StringComparison.Ordinal);
        Assert.Equal(new string('a', TextFit.MaxLength), TextFit.Fit(new string('a', TextFit.MaxLength), ascii: true));
    }

    [Fact]
    public void Text_however_wicked_fits() => Gen.Select(Wicked, Gen.Bool).Sample((text, ascii) =>
    {
        var fit = TextFit.Fit(text, ascii);

        Assert.InRange(fit.Length, 0, TextFit.MaxLength);
        Assert.False(fit.StartsWith(' ') || fit.EndsWith(' '));
        Assert.DoesNotContain("%%", fit, StringComparison.Ordinal);
        Assert.Equal(-1, fit.IndexOfAny(['\\', '{', '}', '^', '\u0085', '\u2028', '\u2029', '\ufeff']));
        Assert.DoesNotContain(fit, char.IsControl);
        Assert.Equal(fit, Encoding.UTF8.GetString(Encoding.UTF8.GetBytes(fit)));
        Assert.True(!ascii || Ascii.IsValid(fit));
        Assert.Equal(fit, TextFit.Fit(fit, ascii));
    }, iter: 20_000);
}
