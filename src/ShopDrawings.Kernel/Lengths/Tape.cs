using System.Globalization;
using UnitsNet;
using UnitsNet.Units;

namespace ShopDrawings.Kernel;

/// <summary>Reads and prints lengths the way a tape measure shows them. Thread-safe; independent of the machine's culture.</summary>
public static class Tape
{
    /// <summary>Put before a printed length that is not exact.</summary>
    public const char RoundedMark = '~';

    /// <summary>
    /// Reads a length: <c>22-3/8</c>, <c>22 3/8 in</c>, <c>22.375"</c>, <c>1' 10-3/8"</c>, <c>568.3 mm</c>, <c>56.83 cm</c>. Fractions are
    /// read exactly; the result lies within ±100 m.
    /// </summary>
    /// <param name="text">What was written.</param>
    /// <param name="bareUnit">The unit of a number that has none: millimetre, centimetre, metre, inch or foot.</param>
    /// <param name="length">The length; zero where it cannot be read.</param>
    /// <param name="error">What was read and what would be understood, where it cannot be read.</param>
    /// <exception cref="ArgumentException"><paramref name="bareUnit"/> is none of those.</exception>
    public static bool TryParse(string text, LengthUnit bareUnit, out Length length, out string? error)
    {
        ArgumentNullException.ThrowIfNull(text);
        (var expression, error) = ExpressionReader.Read(text, Measure.Length, UnitOf(bareUnit));
        length = Length.FromMillimeters(expression is Literal literal ? literal.Value : 0);
        return error is null;
    }

    /// <summary>As <see cref="TryParse"/>, for lengths a program writes.</summary>
    /// <exception cref="FormatException">The text is not a length.</exception>
    public static Length Parse(string text, LengthUnit bareUnit = LengthUnit.Millimeter) =>
        TryParse(text, bareUnit, out var length, out var error) ? length : throw new FormatException(error);

    /// <summary>A length in inches with a fraction, such as <c>22 3/8"</c>, halves away from zero; <c>~</c> before one that is rounded.</summary>
    /// <exception cref="ArgumentException">The denominator is not 1, 2, 4, 8, 16, 32 or 64.</exception>
    public static string PrintInches(Length length, int denominator) => PrintInches(length.Millimeters, denominator);

    /// <summary>A length in mm such as <c>568.3 mm</c>, halves away from zero, trailing zeros left out; <c>~</c> before one that is rounded.</summary>
    /// <exception cref="ArgumentException">The number of decimals is not 0 to 4.</exception>
    public static string PrintMillimetres(Length length, int decimals) => PrintMillimetres(length.Millimeters, decimals) + " mm";

    internal static string PrintInches(double millimetres, int denominator)
    {
        if (denominator is not (1 or 2 or 4 or 8 or 16 or 32 or 64))
            throw new ArgumentException("A tape is divided into 1, 2, 4, 8, 16, 32 or 64 parts of an inch.", nameof(denominator));
        var count = (long)Math.Round(AsWritten(Math.Abs(millimetres)) * denominator / 25.4m, MidpointRounding.AwayFromZero);
        var mark = Mark(count * 25.4 / denominator, Math.Abs(millimetres));
        var sign = millimetres < 0 && count > 0 ? "-" : "";
        var (whole, rest) = (count / denominator, count % denominator);
        if (rest == 0) return string.Create(CultureInfo.InvariantCulture, $"{mark}{sign}{whole}\"");
        var common = (long)System.Numerics.BigInteger.GreatestCommonDivisor(rest, denominator);
        var fraction = string.Create(CultureInfo.InvariantCulture, $"{rest / common}/{denominator / common}\"");
        return whole == 0 ? $"{mark}{sign}{fraction}" : string.Create(CultureInfo.InvariantCulture, $"{mark}{sign}{whole} {fraction}");
    }

    // Without a zero before the point (ASME Y14.5, from memory).
    internal static string PrintDecimalInches(double millimetres, int decimals)
    {
        var inches = Math.Round(AsWritten(millimetres) / 25.4m, decimals, MidpointRounding.AwayFromZero);
        return Mark((double)(inches * 25.4m), millimetres) + (inches == 0 ? "0" : inches.ToString("#.####", CultureInfo.InvariantCulture)) + "\"";
    }

    internal static string PrintMillimetres(double millimetres, int decimals)
    {
        if (decimals is < 0 or > 4) throw new ArgumentException("Millimetres are printed with 0 to 4 decimals.", nameof(decimals));
        var rounded = Math.Round(AsWritten(millimetres), decimals, MidpointRounding.AwayFromZero);
        var mark = Mark((double)rounded, millimetres);
        return mark + (rounded == 0 ? "0" : rounded.ToString("0.####", CultureInfo.InvariantCulture));
    }

    // Through decimal, so that 0.05 mm and half a step of the tape round as they are written and not as they are stored.
    private static decimal AsWritten(double millimetres) => (decimal)Math.Round(millimetres, 9);

    private static string Mark(double printed, double exact) => Tolerance.Same(printed, exact) ? "" : RoundedMark.ToString();

    private static Unit UnitOf(LengthUnit unit) => unit switch
    {
        LengthUnit.Millimeter => Measure.Millimetre,
        LengthUnit.Centimeter => Measure.Length.UnitOf("cm")!,
        LengthUnit.Meter => Measure.Length.UnitOf("m")!,
        LengthUnit.Inch => Measure.Inch,
        LengthUnit.Foot => Measure.Foot,
        _ => throw new ArgumentException("Lengths are read in millimetres, centimetres, metres, inches or feet.", nameof(unit)),
    };
}
