using System.Globalization;
using System.Numerics;
using CsCheck;
using ShopDrawings.Kernel;
using UnitsNet.Units;

namespace ShopDrawings.Tests.Lengths;

public class TapeTests
{
    private const LengthUnit Mm = LengthUnit.Millimeter, Cm = LengthUnit.Centimeter, M = LengthUnit.Meter, In = LengthUnit.Inch, Ft = LengthUnit.Foot;

    // Value as a fraction of the unit it is counted in.
    [Theory]
    [InlineData("22-3/8", In, 179, 8, "in")]
    [InlineData("22 3/8", In, 179, 8, "in")]
    [InlineData("22 3/8 in", Mm, 179, 8, "in")]
    [InlineData("22-3/8in", Mm, 179, 8, "in")]
    [InlineData("22 3/8 inches", Cm, 179, 8, "in")]
    [InlineData("1 inch", M, 1, 1, "in")]
    [InlineData("22.375\"", Mm, 22375, 1000, "in")]
    [InlineData("22.375 \"", Mm, 22375, 1000, "in")]
    [InlineData("22 3/8\"", Mm, 179, 8, "in")]
    [InlineData("22 3/8”", Mm, 179, 8, "in")]
    [InlineData("22 3/8“", Mm, 179, 8, "in")]
    [InlineData("22 3/8″", Mm, 179, 8, "in")]
    [InlineData("22 3/8''", Mm, 179, 8, "in")]
    [InlineData("22 3/8′′", Mm, 179, 8, "in")]
    [InlineData("22 3/8’’", Mm, 179, 8, "in")]
    [InlineData("1' 10-3/8\"", Mm, 179, 8, "in")]
    [InlineData("1' 10 3/8\"", Mm, 179, 8, "in")]
    [InlineData("1'10-3/8\"", Mm, 179, 8, "in")]
    [InlineData("1'-10-3/8\"", Mm, 179, 8, "in")]
    [InlineData("1' - 10 3/8\"", Mm, 179, 8, "in")]
    [InlineData("1' 10-3/8", Mm, 179, 8, "in")]
    [InlineData("1 ft 10 3/8 in", Mm, 179, 8, "in")]
    [InlineData("1 foot 10.375 inches", Mm, 179, 8, "in")]
    [InlineData("1’ 10-3/8”", Mm, 179, 8, "in")]
    [InlineData("1‘ 10-3/8“", Mm, 179, 8, "in")]
    [InlineData("1′ 10⅜″", Mm, 179, 8, "in")]
    [InlineData("1' 0\"", Mm, 12, 1, "in")]
    [InlineData("1' 1/2\"", Mm, 25, 2, "in")]
    [InlineData("1' ½\"", Mm, 25, 2, "in")]
    [InlineData("0' 11-63/64\"", Mm, 767, 64, "in")]
    [InlineData("8'", Mm, 8, 1, "ft")]
    [InlineData("8 ft", In, 8, 1, "ft")]
    [InlineData("8 feet", In, 8, 1, "ft")]
    [InlineData("2-1/2 ft", In, 5, 2, "ft")]
    [InlineData("568.3 mm", In, 5683, 10, "mm")]
    [InlineData("568.3mm", In, 5683, 10, "mm")]
    [InlineData("568.3 MM", In, 5683, 10, "mm")]
    [InlineData("568.3 millimetres", In, 5683, 10, "mm")]
    [InlineData("1 millimeter", In, 1, 1, "mm")]
    [InlineData("56.83 cm", In, 5683, 100, "cm")]
    [InlineData("56.83 centimeters", In, 5683, 100, "cm")]
    [InlineData("0.5683 m", In, 5683, 10000, "m")]
    [InlineData("2 metres", In, 2, 1, "m")]
    [InlineData("½", In, 1, 2, "in")]
    [InlineData("¼ in", Mm, 1, 4, "in")]
    [InlineData("¾", In, 3, 4, "in")]
    [InlineData("⅛", In, 1, 8, "in")]
    [InlineData("⅜", In, 3, 8, "in")]
    [InlineData("⅝", In, 5, 8, "in")]
    [InlineData("⅞", In, 7, 8, "in")]
    [InlineData("⅓", In, 1, 3, "in")]
    [InlineData("⅔", In, 2, 3, "in")]
    [InlineData("22⅜", In, 179, 8, "in")]
    [InlineData("22 ⅜ in", Mm, 179, 8, "in")]
    [InlineData("22-⅜", In, 179, 8, "in")]
    [InlineData("19/16", In, 19, 16, "in")]
    [InlineData("23/32 in", Mm, 23, 32, "in")]
    [InlineData("1/3", In, 1, 3, "in")]
    [InlineData("5/7 in", Mm, 5, 7, "in")]
    [InlineData("2/3 ft", Mm, 2, 3, "ft")]
    [InlineData("100 22/47", In, 4722, 47, "in")]
    [InlineData("3/8", Ft, 3, 8, "ft")]
    [InlineData("600", Mm, 600, 1, "mm")]
    [InlineData("60", Cm, 60, 1, "cm")]
    [InlineData("0.6", M, 6, 10, "m")]
    [InlineData("24", In, 24, 1, "in")]
    [InlineData("2", Ft, 2, 1, "ft")]
    [InlineData("1' 3", Ft, 15, 1, "in")]
    [InlineData(".5", In, 1, 2, "in")]
    [InlineData("5.", In, 5, 1, "in")]
    [InlineData("007", Mm, 7, 1, "mm")]
    [InlineData("0", Mm, 0, 1, "mm")]
    [InlineData("-3/8", In, -3, 8, "in")]
    [InlineData("−3/8", In, -3, 8, "in")]
    [InlineData("- 22 3/8", In, -179, 8, "in")]
    [InlineData("-1' 10-3/8\"", Mm, -179, 8, "in")]
    [InlineData("+5 mm", In, 5, 1, "mm")]
    [InlineData("  22 3/8  ", In, 179, 8, "in")]
    [InlineData("\t22\t3/8\tin\r\n", Mm, 179, 8, "in")]
    [InlineData("22\u00a03/8\u00a0in", Mm, 179, 8, "in")]
    [InlineData("568.3\u202fmm", In, 5683, 10, "mm")]
    [InlineData("568.3\u2009mm", In, 5683, 10, "mm")]
    [InlineData("100000 mm", In, 100000, 1, "mm")]
    [InlineData("-100 m", In, -100, 1, "m")]
    [InlineData("0.0001 mm", In, 1, 10000, "mm")]
    public void Length_as_written_is_read_to_the_last_bit(string text, LengthUnit bare, long numerator, long denominator, string unit)
    {
        var expected = (new Rational(numerator, denominator) * Rational.Unit(unit)).Nearest();

        var read = Tape.TryParse(text, bare, out var length, out var error);

        Assert.Null(error);
        Assert.True(read);
        Assert.Equal(BitConverter.DoubleToInt64Bits(expected), BitConverter.DoubleToInt64Bits(length.Millimeters));
    }

    [Fact]
    public void Mixed_number_with_any_denominator_is_read_to_the_last_bit() =>
        Gen.Select(Gen.Int[0, 3000], Gen.Int[1, 1000], Gen.Int[1, 1000], Gen.OneOf(Gen.Const(" "), Gen.Const("-"), Gen.Const("  ")), Gen.Bool).Sample((whole, a, b, between, negative) =>
        {
                var (numerator, denominator) = a == b ? (0, b) : (Math.Min(a, b), Math.Max(a, b));
            var text = string.Create(CultureInfo.InvariantCulture, $"{(negative ? "-" : "")}{whole}{between}{numerator}/{denominator}\"");
            var value = (new Rational(whole, 1) + new Rational(numerator, denominator)) * Rational.Unit("in");

            return Tape.Parse(text).Millimeters == (negative ? -1 : 1) * value.Nearest();
        }, iter: 20_000);

    [Fact]
    public void Decimal_of_many_digits_is_read_to_the_last_bit() =>
        Gen.Select(Gen.Int[0, 300], Gen.Long[0, 99_999_999_999_999_999], Gen.Int[1, 16], Gen.OneOf(Gen.Const("mm"), Gen.Const("cm"), Gen.Const("in"), Gen.Const("ft"))).Sample((whole, digits, count, unit) =>
        {
            var text = string.Create(CultureInfo.InvariantCulture, $"{whole}.{digits.ToString("D17", CultureInfo.InvariantCulture)[..count]}");

            return Tape.Parse($"{text} {unit}").Millimeters == (Rational.Decimal(text) * Rational.Unit(unit)).Nearest();
        }, iter: 20_000);

    [Fact]
    public void Feet_and_inches_are_read_to_the_last_bit() =>
        Gen.Select(Gen.Int[0, 300], Gen.Int[0, 11], Gen.Int[0, 62], Gen.Int[1, 63]).Sample((feet, inches, numerator, more) =>
        {
            var denominator = numerator + more;
            var value = new Rational(feet, 1) * Rational.Unit("ft") + (new Rational(inches, 1) + new Rational(numerator, denominator)) * Rational.Unit("in");

            return Tape.Parse(string.Create(CultureInfo.InvariantCulture, $"{feet}' {inches} {numerator}/{denominator}\"")).Millimeters == value.Nearest();
        }, iter: 20_000);

    [Theory]
    [InlineData(LengthUnit.Mile)]
    [InlineData(LengthUnit.Yard)]
    [InlineData(LengthUnit.Decimeter)]
    public void Bare_unit_no_tape_has_is_refused(LengthUnit unit) =>
        Assert.Throws<ArgumentException>(() => Tape.Parse("1", unit));

    [Fact]
    public void Text_that_is_missing_is_a_callers_mistake() =>
        Assert.Throws<ArgumentNullException>(() => Tape.Parse(null!));

    [Fact]
    public void Slow_twin_agrees_with_the_platform_on_fractions_it_divides_rightly() =>
        Gen.Select(Gen.Long[-1L << 53, 1L << 53], Gen.Long[1, 1L << 53]).Sample((a, b) => new Rational(a, b).Nearest() == (double)a / b, iter: 20_000);

    [Fact]
    public void Text_of_any_kind_is_read_or_refused_with_words_and_never_throws()
    {
        var characters = "0123456789012345678901234567890123456789    ..//--+−'\"’”“″′,½⅜⅓mcinftMFT\u00a0\u2009\t\n()*×÷=~eE²é中\0\ud835\udd38x#";
        var pieces = new[] { "22", "3/8", "3", "/", "8", " ", "-", "−", "+", "'", "\"", "”", " in", " mm", "cm", "m", "ft", "½", ".5", ",", "0", "99999999999999999999", "\u00a0", "e3", "Ω" };
        Gen.OneOf(
            Gen.Char[characters].Array[0, 70].Select(c => new string(c)),
            Gen.Int[0, pieces.Length - 1].Select(i => pieces[i]).Array[0, 8].Select(string.Concat),
            Gen.String)
        .Sample((text) =>
        {
            foreach (var unit in new[] { Mm, In, Ft })
            {
                var read = Tape.TryParse(text, unit, out var length, out var error);
                if (read != (error is null) || error is "") return false;
                if (read ? Math.Abs(length.Millimeters) > 100_000 : length.Millimeters != 0) return false;
            }

            return true;
        }, iter: 100_000);
    }

    [Fact]
    public void Reading_and_printing_do_not_depend_on_the_culture()
    {
        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        culture.NumberFormat.NumberDecimalSeparator = ",";
        culture.NumberFormat.NumberGroupSeparator = ".";
        culture.NumberFormat.NegativeSign = "minus";
        culture.NumberFormat.PositiveSign = "plus";
        var texts = new[] { "22-3/8", "568.3 mm", "-22.375\"", "1' 10-3/8\"", "568,3 mm", "1,000", "2000 m", "1.234", "1e3" };
        static IEnumerable<string> All(string[] texts) => texts.Select(text =>
        {
            var read = Tape.TryParse(text, In, out var length, out var error);
            return error ?? string.Create(CultureInfo.InvariantCulture, $"{BitConverter.DoubleToInt64Bits(length.Millimeters)} {Tape.PrintInches(length, 64)} {Tape.PrintMillimetres(length, 3)} {LengthStyle.Millimetres.PrintFine(length.Millimeters)}");
        });
        var usual = All(texts).ToList();

        var before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = culture;
        try
        {
            Assert.Equal("minus1,5", (-1.5).ToString(CultureInfo.CurrentCulture));
            Assert.Equal(usual, All(texts));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}
