using System.Buffers;
using System.Globalization;
using System.Text;

namespace ShopDrawings.Dxf;

/// <summary>Makes any text fit the value of a TEXT: one line, the same to read in every reader, unable to break the file.</summary>
internal static class TextFit
{
    /// <summary>Most UTF-16 units of a TEXT; a longer one is cut and ends with three points.</summary>
    public const int MaxLength = 255;

    private static readonly SearchValues<char> Plain =
        SearchValues.Create([.. Enumerable.Range(' ', '~' - ' ' + 1).Select(c => (char)c).Where(c => c is not ('\\' or '{' or '}' or '^' or '%'))]);

    /// <summary>
    /// The text with line breaks and control characters as blanks, without blanks at its ends (some readers trim them), and without
    /// what readers take for codes: <c>\</c>, <c>{ }</c>, <c>^</c> and two per cent signs in a row. With <paramref name="ascii"/>, characters
    /// outside ASCII become what a workshop writes for them (<see cref="AsciiLetters"/>).
    /// </summary>
    public static string Fit(string text, bool ascii)
    {
        if (text.Length <= MaxLength && !text.StartsWith(' ') && !text.EndsWith(' ') && !text.AsSpan().ContainsAnyExcept(Plain)) return text;

        var line = new StringBuilder();
        var afterFraction = false;
        var position = 0;
        foreach (var rune in text.EnumerateRunes())
        {
            position += rune.Utf16SequenceLength;
            if (ascii && AsciiLetters.Fraction(rune) is { } fraction)
            {
                // 23½ is 23 1/2, not 231/2.
                line.Append(EndsInDigit(line) ? " " : "").Append(fraction);
                afterFraction = true;
                continue;
            }

            if (afterFraction && Rune.IsDigit(rune)) line.Append(' ');
            afterFraction = false;
            Append(line, rune, ascii, text.AsSpan(position));
        }

        return Cut(line.ToString().Trim(' '));
    }

    private static void Append(StringBuilder line, Rune rune, bool ascii, ReadOnlySpan<char> rest)
    {
        switch (rune.Value)
        {
            case '\\':
                line.Append('/');
                return;
            case '{':
                line.Append('(');
                return;
            case '}':
                line.Append(')');
                return;
            case '^' or 0xFFFD:     // U+FFFD also stands for half a surrogate pair
                line.Append('_');
                return;
            case '%':
                line.Append(line.Length > 0 && line[^1] == '%' ? " %" : "%");
                return;
            case 'Ø' or 'ø' when ascii:
                line.Append(IsDiameter(line, rest) ? "D" : rune.Value == 'Ø' ? "O" : "o");
                return;
        }

        switch (Rune.GetUnicodeCategory(rune))
        {
            case UnicodeCategory.Control or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator or UnicodeCategory.SpaceSeparator:
                line.Append(' ');
                break;
            case UnicodeCategory.Format:    // soft hyphens, joiners, marks that turn the direction of reading
                break;
            default:
                line.Append(!ascii || rune.IsAscii ? rune.ToString() : AsciiLetters.For(rune));
                break;
        }
    }

    // Letter or diameter sign: Øyvind and Malmø, but Ø5, 4xØ5 and 4xØ 5.
    private static bool IsDiameter(StringBuilder line, ReadOnlySpan<char> rest)
    {
        var next = rest.IsEmpty ? ' ' : rest[0];
        return !char.IsLetter(next) && (char.IsDigit(next) || line.Length == 0 || line[^1] == 'x' || !char.IsLetter(line[^1]));
    }

    private static bool EndsInDigit(StringBuilder line) => line.Length > 0 && char.IsAsciiDigit(line[^1]);

    private static string Cut(string line)
    {
        const string More = "...";
        if (line.Length <= MaxLength) return line;
        var length = MaxLength - More.Length;
        if (char.IsHighSurrogate(line[length - 1])) length--;
        return line[..length] + More;
    }
}
