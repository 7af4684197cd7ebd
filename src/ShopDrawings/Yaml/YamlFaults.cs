using System.Globalization;
using ShopDrawings.Kernel;

namespace ShopDrawings.Yaml;

/// <summary>
/// Says what is wrong with a text that is no YAML, in words for someone who has never heard of it. The parser's own words and places are the
/// last resort: it often notices a slip lines after it was made.
/// </summary>
internal sealed class YamlFaults
{
    private readonly string file;
    private readonly string[] lines;

    private YamlFaults(string text, string file) => (this.file, lines) = (file, text.ReplaceLineEndings("\n").Split('\n'));

    /// <summary>Characters no text file holds, each with its place; nothing where there are none.</summary>
    public static Diagnostic? Unreadable(string text, string file)
    {
        var faults = new YamlFaults(text, file);
        for (var i = 0; i < faults.lines.Length; i++)
        {
            var line = faults.lines[i];
            for (var j = 0; j < line.Length; j++)
                if (char.IsControl(line[j]) && line[j] is not ('\t' or '\u0085'))
                    return faults.At(i, j, line[j] == '\0' ? "a NUL character stands here; save the file as plain UTF-8 text" : $"the control character U+{(int)line[j]:X4} stands here; take it out");
            if (line.Length > line.TrimStart(' ', '\t').Length && line[..^line.TrimStart(' ', '\t').Length].Contains('\t') && line.Trim().Length > 0)
                return faults.At(i, line.IndexOf('\t'), "a tab stands where blanks must indent; write blanks");
        }

        return null;
    }

    /// <summary>The likeliest slip behind a text the parser refuses.</summary>
    /// <param name="text">The text.</param>
    /// <param name="file">Its name.</param>
    /// <param name="line">Line the parser stopped in, from 1.</param>
    /// <param name="column">Column it stopped in, from 1.</param>
    /// <param name="message">What it says.</param>
    public static Diagnostic Explain(string text, string file, int line, int column, string message)
    {
        var faults = new YamlFaults(text, file);
        return faults.Tag() ?? faults.OpenQuoteOrBracket() ?? faults.NearLine(Math.Clamp(line, 1, faults.lines.Length) - 1)
            ?? new Diagnostic(new SourceSpan(file, Math.Max(line, 1), Math.Max(column, 1)), $"this is not well-formed YAML: {message}");
    }

    // A value that begins with an exclamation mark is a tag, which the parser may stumble over.
    private Diagnostic? Tag()
    {
        for (var i = 0; i < lines.Length; i++)
        {
            var mark = lines[i].IndexOf('!');
            if (mark < 0 || lines[i].TrimStart().StartsWith('#')) continue;
            var before = lines[i][..mark].TrimEnd();
            if (before.Length == 0 || before[^1] is ':' or '-' or '[' or '{' or ',')
                return At(i, mark, "tags (!name) are not allowed; write the value alone, or put a text that begins with “!” in quotes");
        }

        return null;
    }

    // A quote is closed in its line and a bracket before the end, or the parser runs on to some far place.
    private Diagnostic? OpenQuoteOrBracket()
    {
        var open = new Stack<(char Bracket, int Line, int Column)>();
        for (var i = 0; i < lines.Length; i++)
        {
            char? quote = null;
            var quoteColumn = 0;
            for (var j = 0; j < lines[i].Length; j++)
            {
                var c = lines[i][j];
                var startsValue = lines[i][..j].TrimEnd() is var before && (before.Length == 0 || before[^1] is ':' or '[' or '{' or ',' or '-');
                if (quote is null && c == '#' && (j == 0 || lines[i][j - 1] is ' ' or '\t')) break;
                if (quote is null && c is '"' or '\'' && startsValue) (quote, quoteColumn) = (c, j);
                else if (quote == '"' && c == '\\') j++;
                else if (quote == c)
                {
                    quote = null;
                    var rest = lines[i][(j + 1)..].TrimStart();
                    if (rest.Length > 0 && rest[0] is not (',' or ']' or '}' or ':' or '#'))
                        return At(i, quoteColumn, "a quote is closed before the end of this text; leave the quotes out, as in 22-3/8 in");
                }
                else if (quote is null && c is '[' or '{' && (open.Count > 0 || startsValue)) open.Push((c, i, j));
                else if (quote is null && c is ']' or '}' && open.Count > 0)
                {
                    var (bracket, atLine, atColumn) = open.Pop();
                    if (bracket == '[' != (c == ']'))
                        return At(i, j, $"“{c}” stands where “{Closing(bracket)}” must close the “{bracket}” of line {N(atLine + 1)}, column {N(atColumn + 1)}");
                }
            }

            if (quote is not null) return At(i, quoteColumn, "a quote is not closed in this line; close it, or leave the quotes out, as in 22-3/8 in");
        }

        if (open.Count == 0) return null;
        var (last, startLine, startColumn) = open.Peek();
        return At(startLine, startColumn, $"this {(last == '{' ? "brace “{”" : "bracket “[”")} is never closed; put a “{Closing(last)}” behind the last value inside it");
    }

    // The line the parser stopped in, or the one before it, which it noticed too late.
    private Diagnostic? NearLine(int stopped)
    {
        for (var i = stopped; i >= Math.Max(0, stopped - 1); i--)
        {
            var (line, indent) = (lines[i].TrimEnd(), lines[i].Length - lines[i].TrimStart().Length);
            var words = line.Trim();
            if (words.Length == 0 || words[0] == '#') continue;
            if (words[0] == ':') return At(i, indent, "a key is missing before this colon");
            if (words[0] is '@' or '`' or '%') return At(i, indent, $"a line or a text cannot start with {words[0]}; put the text in quotes");
            var value = words.IndexOf(": ", StringComparison.Ordinal) is var colon && colon >= 0 ? words[(colon + 2)..].TrimStart() : "";
            if (value.Length > 0 && value[0] is '@' or '`' or '%') return At(i, line.IndexOf(value, StringComparison.Ordinal), $"a text cannot start with {value[0]}; put it in quotes");
            if (value.Contains(": ", StringComparison.Ordinal) && value[0] is not ('{' or '[' or '"' or '\''))
                return At(i, line.IndexOf(value, StringComparison.Ordinal), "a colon with a blank behind it stands inside this text; put the text in quotes");
            var bare = words.StartsWith("- ", StringComparison.Ordinal) ? words[2..] : words;
            if (colon < 0 && !words.EndsWith(':') && words[0] is not ('-' or '[' or '{' or ']' or '}'))
            {
                if (bare.IndexOf(':') is > 0 and var glued) return At(i, indent, $"“{Clipped(bare)}” has no blank behind its colon; write “{Clipped(bare[..glued] + ": " + bare[(glued + 1)..])}”");
                if (bare.IndexOf(' ') is > 0 and var gap) return At(i, indent, $"“{Clipped(bare)}” has no colon; write “{Clipped(bare[..gap] + ":" + bare[gap..])}”");
                return At(i, indent, $"“{Clipped(bare)}” has no colon; a key is written “{Clipped(bare)}:” with its value behind it");
            }
        }

        return Indented(stopped);
    }

    private Diagnostic? Indented(int stopped)
    {
        int Indent(int i) => lines[i].Length - lines[i].TrimStart(' ').Length;
        bool IsBlank(int i) => lines[i].Trim().Length == 0 || lines[i].TrimStart()[0] == '#';
        var open = new Stack<int>();
        var above = -1;
        for (var i = 0; i < stopped; i++)
        {
            if (IsBlank(i)) continue;
            while (open.Count > 0 && open.Peek() > Indent(i)) open.Pop();
            if (open.Count == 0 || open.Peek() < Indent(i)) open.Push(Indent(i));
            above = i;
        }

        if (above < 0 || IsBlank(stopped) || open.Contains(Indent(stopped))) return null;
        return At(stopped, Indent(stopped), $"this line is indented by {N(Indent(stopped))} blanks and the one above it by {N(Indent(above))}; keys of one group stand exactly below each other");
    }

    private Diagnostic At(int line, int column, string message) => new(new SourceSpan(file, line + 1, column + 1), message);

    private static char Closing(char bracket) => bracket == '[' ? ']' : '}';

    private static string Clipped(string text) => text.Length > 40 ? text[..40] + "…" : text;

    private static string N(int number) => number.ToString(CultureInfo.InvariantCulture);
}
