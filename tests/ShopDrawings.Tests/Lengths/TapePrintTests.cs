using CsCheck;
using ShopDrawings.Kernel;
using UnitsNet;
using UnitsNet.Units;

namespace ShopDrawings.Tests.Lengths;

public class TapePrintTests
{
    private static readonly Gen<int> Denominator = Gen.OneOf(Gen.Const(1), Gen.Const(2), Gen.Const(4), Gen.Const(8), Gen.Const(16), Gen.Const(32), Gen.Const(64));

    [Theory]
    [InlineData(22.375, 16, "22 3/8\"")]
    [InlineData(22.375, 32, "22 3/8\"")]
    [InlineData(22.375, 64, "22 3/8\"")]
    [InlineData(24, 16, "24\"")]
    [InlineData(10, 64, "10\"")]
    [InlineData(0.5, 16, "1/2\"")]
    [InlineData(0.0625, 16, "1/16\"")]
    [InlineData(0.03125, 32, "1/32\"")]
    [InlineData(0.015625, 64, "1/64\"")]
    [InlineData(0.984375, 64, "63/64\"")]
    [InlineData(95.984375, 64, "95 63/64\"")]
    // Carry.
    [InlineData(23.999, 16, "~24\"")]
    [InlineData(23.999, 32, "~24\"")]
    [InlineData(23.999, 64, "~24\"")]
    [InlineData(0.999, 16, "~1\"")]
    [InlineData(11.97, 16, "~12\"")]
    [InlineData(11.96, 16, "~11 15/16\"")]
    [InlineData(-23.999, 16, "~-24\"")]
    // Negative, zero, minus zero.
    [InlineData(-0.5, 16, "-1/2\"")]
    [InlineData(-22.5, 16, "-22 1/2\"")]
    [InlineData(0, 16, "0\"")]
    [InlineData(-0.001, 16, "~0\"")]
    [InlineData(0.001, 64, "~0\"")]
    // Halves go away from zero.
    [InlineData(0.03125, 16, "~1/16\"")]
    [InlineData(-0.03125, 16, "~-1/16\"")]
    [InlineData(0.09375, 16, "~1/8\"")]
    [InlineData(0.0078125, 64, "~1/64\"")]
    [InlineData(-0.0078125, 64, "~-1/64\"")]
    [InlineData(0.5, 1, "~1\"")]
    [InlineData(1.5, 1, "~2\"")]
    [InlineData(0.25, 2, "~1/2\"")]
    [InlineData(-2.5, 1, "~-3\"")]
    public void Inches_are_printed_as_a_tape_shows_them(double inches, int denominator, string expected) =>
        Assert.Equal(expected, Tape.PrintInches(Length.FromMillimeters(inches * 25.4), denominator));

    [Theory]
    [InlineData(568.3, 1, "568.3 mm")]
    [InlineData(568.325, 3, "568.325 mm")]
    [InlineData(568.325, 2, "~568.33 mm")]
    [InlineData(568.325, 1, "~568.3 mm")]
    [InlineData(568, 0, "568 mm")]
    [InlineData(568, 4, "568 mm")]
    [InlineData(100, 2, "100 mm")]
    [InlineData(23.999, 1, "~24 mm")]
    [InlineData(-23.999, 1, "~-24 mm")]
    [InlineData(0, 1, "0 mm")]
    [InlineData(-0.01, 1, "~0 mm")]
    [InlineData(0.05, 1, "~0.1 mm")]
    [InlineData(0.15, 1, "~0.2 mm")]
    [InlineData(0.25, 1, "~0.3 mm")]
    [InlineData(0.35, 1, "~0.4 mm")]
    [InlineData(-0.25, 1, "~-0.3 mm")]
    [InlineData(1.005, 2, "~1.01 mm")]
    [InlineData(0.5, 0, "~1 mm")]
    [InlineData(2.5, 0, "~3 mm")]
    [InlineData(7.9375, 4, "7.9375 mm")]
    public void Millimetres_are_printed_with_at_most_the_decimals_asked_for(double millimetres, int decimals, string expected) =>
        Assert.Equal(expected, Tape.PrintMillimetres(Length.FromMillimeters(millimetres), decimals));

    [Fact]
    public void Minus_zero_is_printed_without_a_sign()
    {
        Assert.Equal("0\"", Tape.PrintInches(-0.0, 16));
        Assert.Equal("0", Tape.PrintMillimetres(-0.0, 1));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(3)]
    [InlineData(-16)]
    [InlineData(10)]
    [InlineData(128)]
    public void Denominator_no_tape_has_is_refused(int denominator) =>
        Assert.Throws<ArgumentException>(() => Tape.PrintInches(Length.FromMillimeters(1), denominator));

    [Theory]
    [InlineData(-1)]
    [InlineData(5)]
    public void Decimals_beyond_four_are_refused(int decimals) =>
        Assert.Throws<ArgumentException>(() => Tape.PrintMillimetres(Length.FromMillimeters(1), decimals));

    [Fact]
    public void Halves_of_every_denominator_go_away_from_zero_up_to_eight_feet()
    {
        foreach (var denominator in new[] { 1, 2, 4, 8, 16, 32, 64 })
            for (var step = 0; step < 96 * denominator; step++)
            {
                var half = (new Rational(2 * step + 1, 2 * denominator) * Rational.Unit("in")).Nearest();
                var expected = (new Rational(step + 1, denominator) * Rational.Unit("in")).Nearest();

                Assert.Equal(expected, Unmarked(Tape.PrintInches(half, denominator)));
                Assert.Equal(-expected, Unmarked(Tape.PrintInches(-half, denominator)));
            }
    }

    [Fact]
    public void Every_sixty_fourth_up_to_eight_feet_comes_back_exactly()
    {
        for (var n = -96 * 64; n <= 96 * 64; n++)
        {
            var millimetres = (new Rational(n, 64) * Rational.Unit("in")).Nearest();

            var printed = Tape.PrintInches(millimetres, 64);

            Assert.NotEqual(Tape.RoundedMark, printed[0]);
            Assert.Equal(millimetres, Tape.Parse(printed).Millimeters);
        }
    }

    [Fact]
    public void Printed_inches_are_within_half_a_step() =>
        Gen.Select(Gen.Double[-2500, 2500], Denominator).Sample((mm, n) =>
            Math.Abs(Unmarked(Tape.PrintInches(mm, n)) - mm) <= 25.4 / n / 2 + 1e-9, iter: 20_000);

    [Fact]
    public void Printed_millimetres_are_within_half_a_step() =>
        Gen.Select(Gen.Double[-2500, 2500], Gen.Int[0, 4]).Sample((mm, decimals) =>
            Math.Abs(Unmarked(Tape.PrintMillimetres(mm, decimals)) - mm) <= Math.Pow(10, -decimals) / 2 + 1e-9, iter: 20_000);

    [Fact]
    public void Mark_stands_before_a_length_exactly_when_it_is_rounded() =>
        Gen.OneOf(Gen.Double[-2500, 2500], Gen.Int[-6144, 6144].Select(n => n * 25.4 / 64), Gen.Int[-25000, 25000].Select(n => n / 10.0))
        .Select(Denominator, Gen.Int[0, 4]).Sample((mm, n, decimals) =>
        {
            bool Agrees(string printed) => printed[0] == Tape.RoundedMark == Math.Abs(Unmarked(printed) - mm) > Tolerance.Length;
            return Agrees(Tape.PrintInches(mm, n)) && Agrees(Tape.PrintMillimetres(mm, decimals));
        }, iter: 20_000);

    private static double Unmarked(string printed) => Tape.Parse(printed.TrimStart(Tape.RoundedMark), LengthUnit.Millimeter).Millimeters;
}
