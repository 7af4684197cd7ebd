using System.Collections.Immutable;
using ShopDrawings.Kernel;
using ShopDrawings.Yaml;

namespace ShopDrawings;

/// <summary>A cell of a table, and where it begins.</summary>
internal sealed record CsvCell(string Text, SourceSpan At);

/// <summary>
/// A table with headings as CSV (RFC 4180, from memory), read to be corrected by hand: every mistake has its line and column. A quote within a cell that
/// does not begin with one is an inch mark. Empty lines are passed over.
/// </summary>
internal sealed class CsvTable
{
    private const int MostLines = 20_000;

    private readonly Dictionary<string, int> columns = new(StringComparer.Ordinal);

    private CsvTable(SourceSpan at) => At = at;

    /// <summary>Where the headings begin.</summary>
    public SourceSpan At { get; }

    /// <summary>The rows below the headings.</summary>
    public ImmutableArray<ImmutableArray<CsvCell>> Rows { get; private set; } = [];

    /// <summary>Reads a table; nothing where a mistake was added to the diagnostics.</summary>
    /// <param name="text">Its text.</param>
    /// <param name="file">Its name, for messages.</param>
    /// <param name="what">What a row is, such as <c>a panel</c>.</param>
    /// <param name="known">Headings there may be.</param>
    /// <param name="required">Headings there must be; a length may carry its unit, as in <c>length_mm</c>.</param>
    /// <param name="diagnostics">Where mistakes go.</param>
    public static CsvTable? Read(string text, string file, string what, ImmutableArray<string> known, ImmutableArray<string> required, List<Diagnostic> diagnostics)
    {
        var lines = Split(text.TrimStart('\uFEFF'), file, diagnostics);
        if (diagnostics.Count > 0) return null;
        if (lines.Count == 0)
        {
            diagnostics.Add(new(new SourceSpan(file, 1, 1), $"the file is empty; begin with a line of headings like {string.Join(',', required)}"));
            return null;
        }

        var head = lines[0];
        var table = new CsvTable(head[0].At);
        foreach (var (cell, k) in head.Select((c, k) => (c, k)))
        {
            var name = cell.Text.ToLowerInvariant().Replace(' ', '_');
            if (name.Length == 0 && lines.TrueForAll(l => l.Length <= k || l[k].Text.Length == 0)) continue;
            if (head.Length == 1 && name.Contains(';', StringComparison.Ordinal)) diagnostics.Add(new(cell.At, "columns are separated by semicolons; separate them by commas"));
            else if (!known.Contains(name)) diagnostics.Add(new(cell.At, $"“{cell.Text}” is no heading of {what}{(Spelling.Nearest(name, known) is { } near ? $"; did you mean “{near}”?" : $"; known are {string.Join(", ", known)}")}"));
            else if (!table.columns.TryAdd(name, k)) diagnostics.Add(new(cell.At, $"two columns are headed “{name}”; leave one out"));
        }

        foreach (var must in required)
            if (diagnostics.Count == 0 && !table.columns.Keys.Any(c => c == must || c.StartsWith(must + "_", StringComparison.Ordinal))) diagnostics.Add(new(table.At, $"there is no column “{must}”, which {what} needs"));
        foreach (var row in lines.Skip(1).Where(r => r.Length > head.Length && r.Skip(head.Length).Any(c => c.Text.Length > 0)))
            diagnostics.Add(new(row[head.Length].At, $"this row has {row.Length} cells below {head.Length} headings; put a cell with a comma in quotes"));
        table.Rows = [.. lines.Skip(1)];
        return diagnostics.Count == 0 ? table : null;
    }

    /// <summary>Whether it has a column.</summary>
    public bool Has(string heading) => columns.ContainsKey(heading);

    /// <summary>The cell below a heading; nothing where it is empty or there is no such column.</summary>
    public CsvCell? Cell(ImmutableArray<CsvCell> row, string heading) =>
        columns.TryGetValue(heading, out var k) && k < row.Length && row[k].Text.Length > 0 ? row[k] : null;

    private static List<ImmutableArray<CsvCell>> Split(string text, string file, List<Diagnostic> diagnostics)
    {
        var rows = new List<ImmutableArray<CsvCell>>();
        var lines = text.ReplaceLineEndings("\n").Split('\n');
        for (var i = 0; i < lines.Length; i++)
        {
            if (lines[i].Trim().Length == 0) continue;
            if (rows.Count == MostLines)
            {
                diagnostics.Add(new(new SourceSpan(file, i + 1, 1), FormattableString.Invariant($"more than {MostLines} lines; make several lists of it")));
                return rows;
            }

            rows.Add(Cells(lines[i], file, i + 1, diagnostics));
        }

        return rows;
    }

    private static ImmutableArray<CsvCell> Cells(string line, string file, int number, List<Diagnostic> diagnostics)
    {
        var cells = ImmutableArray.CreateBuilder<CsvCell>();
        for (var at = 0; ;)
        {
            var start = at;
            while (start < line.Length && line[start] is ' ' or '\t') start++;
            var place = new SourceSpan(file, number, start + 1);
            var text = new System.Text.StringBuilder();
            if (start < line.Length && line[start] == '"')
            {
                at = start + 1;
                while (at < line.Length && (line[at] != '"' || (at + 1 < line.Length && line[at + 1] == '"')))
                {
                    text.Append(line[at]);
                    at += line[at] == '"' ? 2 : 1;
                }

                if (at >= line.Length) diagnostics.Add(new(place, "a quote is not closed in this line; close it, or leave the quotes out"));
                at++;
                while (at < line.Length && line[at] is ' ' or '\t') at++;
                if (at < line.Length && line[at] != ',') diagnostics.Add(new(new SourceSpan(file, number, at + 1), "something stands behind a closed quote; a quote within quotes is written twice"));
            }
            else
            {
                at = line.IndexOf(',', start);
                if (at < 0) at = line.Length;
                text.Append(line.AsSpan(start, at - start));
            }

            if (text.ToString().Any(char.IsControl)) diagnostics.Add(new(place, "a control character stands in this cell; save the table as plain UTF-8 text"));
            cells.Add(new CsvCell(text.ToString().Trim(), place));
            if (at >= line.Length || diagnostics.Count > 0) return cells.ToImmutable();
            at++;
        }
    }
}
