using System.Globalization;
using System.Text;

namespace ShopDrawings.Kernel;

/// <summary>Makes any text fit where only one line, or only ASCII, arrives.</summary>
internal static class PlainText
{
    /// <summary>The text with line breaks, control characters and blanks of all kinds as blanks, and without invisible marks; half a surrogate pair becomes U+FFFD.</summary>
    public static string OneLine(string text)
    {
        var line = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            switch (Rune.GetUnicodeCategory(rune))
            {
                case UnicodeCategory.Control or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator or UnicodeCategory.SpaceSeparator:
                    line.Append(' ');
                    break;
                case UnicodeCategory.Format:    // soft hyphens, joiners, marks that turn the direction of reading
                    break;
                default:
                    line.Append(rune.ToString());
                    break;
            }
        }

        return line.ToString();
    }

    /// <summary>The text as one line of printable ASCII: what a workshop writes for other characters (<see cref="AsciiLetters"/>), <c>_</c> for what has no likeness.</summary>
    public static string Ascii(string text)
    {
        var source = OneLine(text);
        var line = new StringBuilder(source.Length);
        var afterFraction = false;
        var position = 0;
        foreach (var rune in source.EnumerateRunes())
        {
            // 22⁷⁄₁₆ is 22 7/16, not 227/16; within ¹⁵⁄₁₆ digits stay together.
            if (StackedFraction.Begins(source.AsSpan(position)) && EndsInDigit(line) && char.IsAsciiDigit(source[position - 1])) line.Append(' ');
            position += rune.Utf16SequenceLength;
            if (AsciiLetters.Fraction(rune) is { } fraction)
            {
                // 23½ is 23 1/2, not 231/2.
                line.Append(EndsInDigit(line) ? " " : "").Append(fraction);
                afterFraction = true;
                continue;
            }

            if (afterFraction && Rune.IsDigit(rune)) line.Append(' ');
            afterFraction = false;
            if (rune.Value is 'Ø' or 'ø') line.Append(IsDiameter(line, source.AsSpan(position)) ? "D" : rune.Value == 'Ø' ? "O" : "o");
            else line.Append(rune.IsAscii ? rune.ToString() : AsciiLetters.For(rune));
        }

        return line.ToString();
    }

    // Letter or diameter sign: Øyvind and Malmø, but Ø5, 4xØ5 and 4xØ 5.
    private static bool IsDiameter(StringBuilder line, ReadOnlySpan<char> rest)
    {
        var next = rest.IsEmpty ? ' ' : rest[0];
        return !char.IsLetter(next) && (char.IsDigit(next) || line.Length == 0 || line[^1] == 'x' || !char.IsLetter(line[^1]));
    }

    private static bool EndsInDigit(StringBuilder line) => line.Length > 0 && char.IsAsciiDigit(line[^1]);
}
