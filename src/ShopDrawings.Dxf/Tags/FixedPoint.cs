namespace ShopDrawings.Dxf;

/// <summary>
/// Numbers as every reader takes them: fixed point, at most six decimals, always a point, trailing zeros off, never an exponent, a plus
/// sign or <c>-0.0</c>. Its own digits, since this is where an export spends its time.
/// </summary>
internal static class FixedPoint
{
    /// <summary>Numbers from here on, either sign, are refused: no drawing in mm or inches holds them.</summary>
    public const double Limit = 1e9;

    /// <summary>Most bytes a number takes: sign, ten digits (after rounding up), point, six decimals.</summary>
    public const int MaxLength = 18;

    /// <summary>The number rounded to whole millionths, a half away from zero; exact, as if computed without end.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is not finite or reaches <see cref="Limit"/>.</exception>
    public static long Millionths(double value)
    {
        var size = Math.Abs(value);
        if (!(size < Limit)) throw new ArgumentOutOfRangeException(nameof(value), value, "A number in a DXF file must be finite and below 1e9.");
        var product = size * 1e6;
        var whole = Math.Floor(product);
        var rest = product - whole;

        // The product is rounded itself: where it shows exactly a half, what was lost decides.
        if (rest > 0.5 || (rest == 0.5 && Math.FusedMultiplyAdd(size, 1e6, -product) >= 0)) whole++;
        return value < 0 ? -(long)whole : (long)whole;
    }

    /// <summary>Whether two numbers have the same digits.</summary>
    public static bool Same(double a, double b) => Millionths(a) == Millionths(b);

    /// <summary>Writes the number and returns how many bytes it took, at most <see cref="MaxLength"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is not finite or reaches <see cref="Limit"/>.</exception>
    public static int Write(double value, Span<byte> target)
    {
        var millionths = Millionths(value);
        var at = 0;
        if (millionths < 0)
        {
            target[at++] = (byte)'-';
            millionths = -millionths;
        }

        var whole = (uint)(millionths / 1_000_000);
        var fraction = (uint)(millionths - whole * 1_000_000L);
        at += Digits(whole, target[at..]);
        target[at++] = (byte)'.';
        var decimals = fraction == 0 ? 1 : 6;
        while (decimals > 1 && fraction % 10 == 0)
        {
            fraction /= 10;
            decimals--;
        }

        for (var i = at + decimals - 1; i >= at; i--)
        {
            target[i] = (byte)('0' + fraction % 10);
            fraction /= 10;
        }

        return at + decimals;
    }

    private static int Digits(uint number, Span<byte> target)
    {
        var length = 1;
        for (var n = number; n >= 10; n /= 10) length++;
        for (var i = length - 1; i >= 0; i--)
        {
            target[i] = (byte)('0' + number % 10);
            number /= 10;
        }

        return length;
    }
}
