using System.Globalization;
using System.Numerics;
using System.Text;
using CsCheck;
using ShopDrawings.Dxf;
using Xunit;

namespace ShopDrawings.Tests.Dxf;

public class FixedPointTests
{
    // The slow twin, in whole numbers without end. The platform's own F6 is none: it gives 0.0078125 the decimals 0.007812.
    private static string Slow(double value)
    {
        var bits = BitConverter.DoubleToInt64Bits(Math.Abs(value));
        var exponent = Math.Max((int)(bits >> 52), 1) - 1075;
        var mantissa = bits & 0xFFFFFFFFFFFFF | (bits >> 52 == 0 ? 0 : 1L << 52);
        var doubled = new BigInteger(mantissa) * 2_000_000;
        doubled = exponent >= 0 ? doubled << exponent : doubled >> -exponent;       // rounds down, which keeps "at least a half"
        var digits = ((doubled + 1) / 2).ToString("D7", CultureInfo.InvariantCulture);
        var text = digits[..^6] + "." + digits[^6..].TrimEnd('0');
        if (text.EndsWith('.')) text += "0";
        return value < 0 && text != "0.0" ? "-" + text : text;
    }

    private static string Fast(double value)
    {
        Span<byte> bytes = stackalloc byte[FixedPoint.MaxLength];
        return Encoding.ASCII.GetString(bytes[..FixedPoint.Write(value, bytes)]);
    }

    [Theory]
    [InlineData(0.0, "0.0")]
    [InlineData(-4e-7, "0.0")]
    [InlineData(37.0, "37.0")]
    [InlineData(-37.5, "-37.5")]
    [InlineData(0.1 + 0.2, "0.3")]
    [InlineData(1e-6, "0.000001")]
    [InlineData(-0.0000005, "0.0")]         // the double is a little smaller than a half
    [InlineData(0.0000015, "0.000002")]     // the double is a little larger
    [InlineData(0.0000035, "0.000003")]     // the double is a little smaller, though its product with a million is not
    [InlineData(0.015625, "0.015625")]
    [InlineData(0.0078125, "0.007813")]     // a true half goes away from zero
    [InlineData(-0.0078125, "-0.007813")]
    [InlineData(568.325, "568.325")]
    [InlineData(999999999.9999995, "1000000000.0")]
    [InlineData(-999999999.9999995, "-1000000000.0")]
    [InlineData(123456.789012345, "123456.789012")]
    public void Number_as_written_has_at_most_six_decimals(double value, string expected)
    {
        Assert.Equal(expected, Fast(value));
        Assert.Equal(expected, Slow(value));
    }

    [Fact]
    public void Number_of_any_size_has_the_digits_of_the_slow_twin() =>
        Gen.OneOf(
            Gen.Double[-1e9, 1e9], Gen.Double[-3000, 3000], Gen.Double[-1, 1], Gen.Double[-1e-5, 1e-5],
            Gen.Int[-96 * 64, 96 * 64].Select(n => n * 25.4 / 64), Gen.Long[-999_999_999_999_999, 999_999_999_999_999].Select(n => n / 1e6))
        .Where(v => Math.Abs(v) < FixedPoint.Limit)
        .Sample(v => Fast(v) == Slow(v), iter: 200_000);

    [Fact]
    public void Number_next_to_a_half_has_the_digits_of_the_slow_twin() =>
        Gen.Select(Gen.Long[-2_000_000_000, 2_000_000_000], Gen.Int[-2, 2]).Sample((n, steps) =>
        {
            var value = (n + 0.5) / 1e6;
            for (var i = 0; i < Math.Abs(steps); i++) value = steps < 0 ? Math.BitDecrement(value) : Math.BitIncrement(value);
            return Fast(value) == Slow(value);
        }, iter: 200_000);

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    [InlineData(1e9)]
    [InlineData(-1e9)]
    public void Number_out_of_range_is_refused(double value) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Fast(value));
}
