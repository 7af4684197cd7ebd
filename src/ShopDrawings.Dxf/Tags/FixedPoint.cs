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

    private const int Decimals = 6;

    private static ReadOnlySpan<byte> Pairs =>
        "0001020304050607080910111213141516171819202122232425262728293031323334353637383940414243444546474849"u8
        + "5051525354555657585960616263646566676869707172737475767778798081828384858687888990919293949596979899"u8;

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

        var whole = (uint)((ulong)millionths / 1_000_000);
        var fraction = (uint)((ulong)millionths - whole * 1_000_000UL);
        at += Digits(whole, target[at..]);
        target[at++] = (byte)'.';
        if (fraction == 0)
        {
            target[at] = (byte)'0';
            return at + 1;
        }

        var (first, rest) = (fraction / 10_000, fraction % 10_000);
        var decimals = target.Slice(at, Decimals);
        Pair(first, decimals);
        Pair(rest / 100, decimals[2..]);
        Pair(rest % 100, decimals[4..]);
        return at + decimals.LastIndexOfAnyExcept((byte)'0') + 1;
    }

    private static int Digits(uint number, Span<byte> target)
    {
        var length = number < 10 ? 1 : number < 100 ? 2 : number < 1_000 ? 3 : number < 10_000 ? 4 : number < 100_000 ? 5
            : number < 1_000_000 ? 6 : number < 10_000_000 ? 7 : number < 100_000_000 ? 8 : number < 1_000_000_000 ? 9 : 10;
        var at = length;
        while (number >= 100)
        {
            var rest = number / 100;
            Pair(number - 100 * rest, target[(at -= 2)..]);
            number = rest;
        }

        if (number >= 10) Pair(number, target);
        else target[0] = (byte)('0' + number);
        return length;
    }

    private static void Pair(uint number, Span<byte> target) => Pairs.Slice(2 * (int)number, 2).CopyTo(target);
}
