using System.Numerics;

namespace ShopDrawings.Tests.Lengths;

/// <summary>A fraction of whole numbers without end: the slow twin of every length that is read.</summary>
internal readonly record struct Rational(BigInteger Numerator, BigInteger Denominator)
{
    public static Rational operator +(Rational a, Rational b) => new(a.Numerator * b.Denominator + b.Numerator * a.Denominator, a.Denominator * b.Denominator);

    public static Rational operator *(Rational a, Rational b) => new(a.Numerator * b.Numerator, a.Denominator * b.Denominator);

    /// <summary>A decimal as written: <c>22.375</c>.</summary>
    public static Rational Decimal(string digits)
    {
        var point = digits.IndexOf('.');
        if (point < 0) point = digits.Length - 1;
        return new Rational(
            BigInteger.Parse("0" + digits.Replace(".", ""), System.Globalization.CultureInfo.InvariantCulture),
            BigInteger.Pow(10, digits.Length - 1 - point));
    }

    /// <summary>One of a unit in millimetres.</summary>
    public static Rational Unit(string symbol) => symbol switch
    {
        "mm" => new(1, 1),
        "cm" => new(10, 1),
        "m" => new(1000, 1),
        "in" => new(254, 10),
        "ft" => new(3048, 10),
        _ => throw new ArgumentException(symbol, nameof(symbol)),
    };

    /// <summary>The nearest double, ties to even.</summary>
    public double Nearest()
    {
        if (Numerator.IsZero) return 0;
        var magnitude = BigInteger.Abs(Numerator);
        // 56 or 57 bits, the lowest of which says whether anything follows: enough for the conversion to round once and rightly.
        var shift = 56 - (int)(magnitude.GetBitLength() - Denominator.GetBitLength());
        var (above, below) = shift >= 0 ? (magnitude << shift, Denominator) : (magnitude, Denominator << -shift);
        var quotient = BigInteger.DivRem(above, below, out var rest);
        if (!rest.IsZero) quotient |= 1;
        return Math.ScaleB((double)(long)quotient, -shift) * Numerator.Sign;
    }
}
