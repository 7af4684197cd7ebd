using System.Globalization;

namespace ShopDrawings.Kernel;

/// <summary>
/// Reads every number a user writes: <c>22-3/8</c>, <c>22 3/8 in</c>, <c>22.375"</c>, <c>1' 10-3/8"</c>, <c>568.3 mm</c>, <c>56.83 cm</c>.
/// Fractions are kept exact until the last step. A number without a unit takes the unit it is read with; a fraction without one is read
/// only where that unit is the inch or the foot.
/// </summary>
internal sealed class ExpressionReader
{
    // Nothing in a workshop is longer than 100 m, and nothing else counted here is larger than its number.
    private const decimal Largest = 100_000m;
    private const int LongestText = 60;
    private const string Vulgar = "½¼¾⅛⅜⅝⅞⅓⅔";
    private static readonly (int Numerator, int Denominator)[] VulgarValues = [(1, 2), (1, 4), (3, 4), (1, 8), (3, 8), (5, 8), (7, 8), (1, 3), (2, 3)];

    private readonly string text;
    private readonly Measure measure;
    private readonly Unit? bare;
    private int at;

    private ExpressionReader(string text, Measure measure, Unit? bare) => (this.text, this.measure, this.bare) = (text, measure, bare);

    /// <summary>Reads a number.</summary>
    /// <param name="text">What the user wrote.</param>
    /// <param name="measure">What it should be.</param>
    /// <param name="bare">The unit of a number that has none; nothing for measures without units.</param>
    /// <returns>The expression, or what was read and what would be understood.</returns>
    public static (Expression? Expression, string? Error) Read(string text, Measure measure, Unit? bare)
    {
        var trimmed = text.Trim();
        if (trimmed.Length == 0) return (null, $"an empty text is not a {measure.Name}; write it like {measure.Examples}");
        if (trimmed.Length > LongestText) return (null, $"{Shown(Beginning(trimmed) + "…")} is too long for a {measure.Name}; write it like {measure.Examples}");
        try
        {
            var value = new ExpressionReader(trimmed, measure, bare).Whole();
            return Math.Abs(value) > Largest ? (null, Beyond()) : (new Literal(trimmed, Nearest(value)), null);
        }
        catch (Misread misread)
        {
            return (null, misread.Message);
        }
        catch (OverflowException)
        {
            return (null, Beyond());
        }

        string Beyond() => $"{Shown(trimmed)} is beyond {$"{Largest.ToString("0", CultureInfo.InvariantCulture)} {(measure.Units.IsEmpty ? "" : measure.Units[0].Symbol)}".TrimEnd()}; is the unit right?";
    }

    // [sign] feet inches | [sign] number [unit]
    private decimal Whole()
    {
        if (text.Contains(',')) throw Comma();
        var negative = Skip('-') || Skip('−');
        if (!negative) Skip('+');
        SkipBlanks();
        var (number, isFraction) = Mixed();
        var unit = ReadUnit();
        if (isFraction && (unit ?? bare) is { } counted && counted != Measure.Inch && counted != Measure.Foot)
        {
            if (at < text.Length) throw Unreadable();
            throw new Misread(unit is null && measure == Measure.Length
                ? text.Any(c => c is '/') && number.Numerator >= number.Denominator && number.Numerator % number.Denominator == 0 ? Arithmetic().Message
                    : $"{Shown(text)} is a fraction without a unit in a file that counts in {counted.Symbol}; write {text} in"
                : $"{Shown(text)} has a fraction, and a {measure.Name} in {counted.Symbol} is counted in decimals; write it like {measure.Examples}");
        }

        var factor = (unit ?? bare)?.Factor ?? 1m;
        var value = number.Times(factor);

        if (unit == Measure.Foot && at < text.Length)
        {
            SkipBlanks();
            if (Skip('-')) SkipBlanks();
            var (inches, _) = Mixed();
            var second = ReadUnit();
            if (second is not null && second != Measure.Inch) throw Unreadable();
            if (inches.Times(1m) >= 12m) throw new Misread($"{Shown(text)} has 12 or more inches behind its feet; write feet and inches below 12, or inches alone");
            value += inches.Times(Measure.Inch.Factor);
        }

        SkipBlanks();
        if (at < text.Length) throw IsArithmetic() ? Arithmetic() : Unreadable();
        return negative ? -value : value;
    }

    // A whole or decimal number, a fraction, or a whole number with a fraction behind a blank or a dash.
    private (Rational Value, bool IsFraction) Mixed()
    {
        if (VulgarFraction() is { } alone) return (alone, true);
        var whole = Number(out var isDecimal);
        if (isDecimal) return (new Rational(whole, 1m), false);
        if (Skip('/')) return (new Rational(whole, Denominator()), true);
        var mark = at;
        if (VulgarFraction() is { } glued) return (glued.Plus(whole), true);
        if (Skip('-') || (SkipBlanks() && at < text.Length))
        {
            if (VulgarFraction() is { } behind) return (behind.Plus(whole), true);
            if (at < text.Length && char.IsAsciiDigit(text[at]))
            {
                var numerator = Number(out isDecimal);
                if (!isDecimal && Skip('/'))
                {
                    var denominator = Denominator();
                    if (numerator >= denominator) throw new Misread($"{Shown(text)} has a fraction of one or more behind a whole number; write it like {measure.Examples}");
                    return (new Rational(numerator, denominator).Plus(whole), true);
                }
            }
        }

        at = mark;
        return (new Rational(whole, 1m), false);
    }

    private decimal Number(out bool isDecimal)
    {
        var start = at;
        while (at < text.Length && char.IsAsciiDigit(text[at])) at++;
        isDecimal = at < text.Length && text[at] == '.';
        if (isDecimal)
        {
            at++;
            while (at < text.Length && char.IsAsciiDigit(text[at])) at++;
        }

        var digits = text.AsSpan(start, at - start);
        if (digits.Length == 0 || digits is ".") throw IsArithmetic() ? Arithmetic() : Unreadable();
        if (digits.Length > 20 || !decimal.TryParse(digits, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value))
            throw new Misread($"{Shown(text)} has more digits than a {measure.Name} can need; write it like {measure.Examples}");
        return value;
    }

    private decimal Denominator()
    {
        var denominator = Number(out var isDecimal);
        if (isDecimal) throw Unreadable();
        if (denominator == 0) throw new Misread($"{Shown(text)} divides by zero; write it like {measure.Examples}");
        return denominator;
    }

    private Rational? VulgarFraction()
    {
        var mark = at;
        SkipBlanks();
        var index = at < text.Length ? Vulgar.IndexOf(text[at]) : -1;
        if (index < 0)
        {
            at = mark;
            return null;
        }

        at++;
        return new Rational(VulgarValues[index].Numerator, VulgarValues[index].Denominator);
    }

    private Unit? ReadUnit()
    {
        if (measure.Units.IsEmpty) return null;
        var mark = at;
        SkipBlanks();
        // The longest spelling that fits and does not end inside a word.
        for (var length = Math.Min(text.Length - at, 12); length > 0; length--)
        {
            var end = at + length;
            var cutsWord = char.IsLetter(text[end - 1]) && end < text.Length && char.IsLetterOrDigit(text[end]);
            if (cutsWord || measure.UnitOf(text.Substring(at, length)) is not { } unit) continue;
            at = end;
            return unit;
        }

        if (at < text.Length && char.IsLetter(text[at]))
        {
            var word = new string([.. text.Skip(at).TakeWhile(c => !char.IsWhiteSpace(c))]);
            if (at > 0 && char.IsAsciiDigit(text[at - 1]) && decimal.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var plain))
                throw new Misread($"{Shown(text)} is not a plain number; write {plain.ToString("0.############", CultureInfo.InvariantCulture)}");
            throw new Misread($"{Shown(text)} has the unit {Shown(word)}, which is not one of {string.Join(", ", measure.Units.Select(u => u.Symbol))}");
        }

        at = mark;
        return null;
    }

    private bool Skip(char c)
    {
        if (at >= text.Length || text[at] != c) return false;
        at++;
        return true;
    }

    private bool SkipBlanks()
    {
        var start = at;
        while (at < text.Length && (text[at] is ' ' or '\t' or '\u00a0' or '\u2009' or '\u202f')) at++;
        return at > start;
    }

    private bool IsArithmetic() => text.Any(char.IsAsciiDigit) && text.Skip(1).Any(c => "+*×÷=()-".Contains(c)) && !text.Any(char.IsControl);

    private Misread Arithmetic() => new($"{Shown(text)} looks like a calculation, which is not understood here; write the result, like {measure.Examples}");

    private Misread Unreadable() => new($"{Shown(text)} is not a {measure.Name}; write it like {measure.Examples}");

    // Only what would itself be understood is offered.
    private Misread Comma()
    {
        var without = text.Replace(",", "", StringComparison.Ordinal);
        var isThousands = Array.TrueForAll(text.Split(',')[1..], p => p.Length >= 3 && p.Take(3).All(char.IsAsciiDigit) && (p.Length == 3 || !char.IsAsciiDigit(p[3])));
        var candidates = text.LastIndexOf('.') is var point && point > text.IndexOf(',') && isThousands ? [without]
            : point >= 0 ? new[] { text.Replace(".", "", StringComparison.Ordinal).Replace(',', '.') }
            : isThousands ? [without, text.Replace(',', '.')]
            : [text.Replace(',', '.'), without];
        var cures = candidates.Where(c => Read(c, measure, bare).Expression is not null).Take(isThousands ? 2 : 1).ToList();
        return new Misread(cures.Count == 0
            ? $"{Shown(text)} has a comma where none belongs; write it like {measure.Examples}"
            : cures.Count == 2
                ? $"{Shown(text)} has a comma, which may mean thousands or a decimal; write {cures[0]} or {cures[1]}"
                : $"{Shown(text)} has a {(cures[0].Contains('.') && !cures[0].Equals(without, StringComparison.Ordinal) ? "decimal comma" : "comma where none belongs")}; write {cures[0]}");
    }

    private static string Beginning(string text) => text[..(char.IsHighSurrogate(text[19]) ? 19 : 20)];

    // The platform's own conversion is a few last bits off where a decimal has more digits than a double.
    private static double Nearest(decimal value) => double.Parse(value.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    // Quotes that cannot be mistaken for an inch mark.
    private static string Shown(string text) => $"“{text}”";

    private readonly record struct Rational(decimal Numerator, decimal Denominator)
    {
        public Rational Plus(decimal whole) => this with { Numerator = Numerator + whole * Denominator };

        // Multiply first: 3/8 of 25.4 is then exact.
        public decimal Times(decimal factor) => Numerator * factor / Denominator;
    }

    private sealed class Misread(string message) : Exception(message);
}
