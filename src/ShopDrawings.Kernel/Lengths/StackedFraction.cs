using System.Text;

namespace ShopDrawings.Kernel;

/// <summary>
/// Fractions in the digits that Unicode has above and below the line, with the fraction slash U+2044 between: still text, to be measured, selected and
/// searched as such, and compatible with 7/16 (Unicode normalization form KC).
/// </summary>
internal static class StackedFraction
{
    /// <summary>The stroke between the digits.</summary>
    public const char Slash = '⁄';

    private const string Above = "⁰¹²³⁴⁵⁶⁷⁸⁹";
    private const string Below = "₀₁₂₃₄₅₆₇₈₉";

    /// <summary>The text with every fraction such as 7/16 in it stacked.</summary>
    public static string Stack(string text)
    {
        var slash = text.IndexOf('/', StringComparison.Ordinal);
        if (slash < 0) return text;
        var stacked = new StringBuilder(text);
        for (; slash >= 0; slash = text.IndexOf('/', slash + 1))
        {
            var (first, last) = (slash, slash);
            while (first > 0 && char.IsAsciiDigit(text[first - 1])) first--;
            while (last + 1 < text.Length && char.IsAsciiDigit(text[last + 1])) last++;
            if (first == slash || last == slash) continue;
            stacked[slash] = Slash;
            for (var i = first; i < slash; i++) stacked[i] = Above[text[i] - '0'];
            for (var i = slash + 1; i <= last; i++) stacked[i] = Below[text[i] - '0'];
        }

        return stacked.ToString();
    }

    /// <summary>The ordinary digit of one above or below the line; nothing for other characters.</summary>
    public static char? Digit(Rune character) =>
        !character.IsBmp ? null
        : Above.IndexOf((char)character.Value, StringComparison.Ordinal) is >= 0 and var above ? (char)('0' + above)
        : Below.IndexOf((char)character.Value, StringComparison.Ordinal) is >= 0 and var below ? (char)('0' + below)
        : null;

    /// <summary>Whether a text begins with the upper digits of a fraction and its stroke.</summary>
    public static bool Begins(ReadOnlySpan<char> text)
    {
        var digits = 0;
        while (digits < text.Length && Above.Contains(text[digits], StringComparison.Ordinal)) digits++;
        return digits > 0 && digits < text.Length && text[digits] == Slash;
    }
}
