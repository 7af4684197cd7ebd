using System.Buffers;
using System.Text;
using ShopDrawings.Kernel;

namespace ShopDrawings.Dxf;

/// <summary>Makes any text fit the value of a TEXT: one line, the same to read in every reader, unable to break the file.</summary>
internal static class TextFit
{
    /// <summary>Most UTF-16 units of a TEXT; a longer one is cut and ends with three points.</summary>
    public const int MaxLength = 255;

    private static readonly SearchValues<char> Plain =
        SearchValues.Create([.. Enumerable.Range(' ', '~' - ' ' + 1).Select(c => (char)c).Where(c => c is not ('\\' or '{' or '}' or '^' or '%'))]);

    /// <summary>
    /// The text as one line, without blanks at its ends (some readers trim them), and without what readers take for codes: <c>\</c>,
    /// <c>{ }</c>, <c>^</c> and two per cent signs in a row. With <paramref name="ascii"/>, in ASCII.
    /// </summary>
    public static string Fit(string text, bool ascii)
    {
        if (text.Length <= MaxLength && !text.StartsWith(' ') && !text.EndsWith(' ') && !text.AsSpan().ContainsAnyExcept(Plain)) return text;

        var line = new StringBuilder();
        foreach (var character in ascii ? PlainText.Ascii(text) : PlainText.OneLine(text))
            line.Append(character switch
            {
                '\\' => "/",
                '{' => "(",
                '}' => ")",
                '^' or '\uFFFD' => "_",     // U+FFFD also stands for half a surrogate pair
                '%' when line.Length > 0 && line[^1] == '%' => " %",
                _ => character.ToString(),
            });
        return Cut(line.ToString().Trim(' '));
    }

    private static string Cut(string line)
    {
        const string More = "...";
        if (line.Length <= MaxLength) return line;
        var length = MaxLength - More.Length;
        if (char.IsHighSurrogate(line[length - 1])) length--;
        return line[..length] + More;
    }
}
