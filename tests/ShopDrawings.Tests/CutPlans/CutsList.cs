using System.Globalization;
using System.Text;

namespace ShopDrawings.Tests.CutPlans;

/// <summary>
/// Saws what <c>lists/cuts.csv</c> says and knows nothing else: a sheet is as large as the first row that lays it on the saw says; every later row must
/// find its piece on the rack, as large as the row says.
/// </summary>
internal sealed class CutsList
{
    private readonly Dictionary<string, (double Length, double Width)> rack = new(StringComparer.Ordinal);

    /// <summary>Sizes of the panels that come off the saw, along the sheet's length and across, in mm.</summary>
    public Dictionary<string, (double Length, double Width)> Panels { get; } = new(StringComparer.Ordinal);

    /// <summary>Every row by its headings.</summary>
    public List<Dictionary<string, string>> Rows { get; }

    /// <summary>Carries out a list.</summary>
    public CutsList(string text)
    {
        Rows = Read(text);
        foreach (var row in Rows) Cut(row);
    }

    /// <summary>A table's rows by their headings.</summary>
    public static List<Dictionary<string, string>> Read(string text)
    {
        var lines = text.TrimEnd('\n').Split('\n').Select(Cells).ToList();
        return [.. lines.Skip(1).Select(l => lines[0].Zip(l).ToDictionary(p => p.First, p => p.Second, StringComparer.Ordinal))];
    }

    private void Cut(Dictionary<string, string> row)
    {
        double Number(string heading) => double.Parse(row[heading], CultureInfo.InvariantCulture);
        var (piece, said) = (row["piece"], (Number("piece_length_mm"), Number("piece_width_mm")));
        if (piece == row["sheet"]) rack.TryAdd(piece, said);
        Assert.True(rack.Remove(piece, out var size), $"step {row["step"]}: there is no piece {piece}");
        Assert.Equal(said.Item1, size.Length, 3);
        Assert.Equal(said.Item2, size.Width, 3);
        var isAcross = row["cut"] == "across";
        Assert.Contains(row["against"], isAcross ? new[] { "left", "right" } : ["front", "back"]);
        var (side, fence) = (isAcross ? size.Length : size.Width, Number("fence_mm"));
        Assert.InRange(fence, 0.01, side);
        Put(row["gives"], row["gives_as"], isAcross ? size with { Length = fence } : size with { Width = fence });
        if (row["leaves"].Length == 0) return;
        var left = side - fence - Number("kerf_mm");
        Assert.True(left > 0, $"step {row["step"]} leaves nothing for {row["leaves"]}");
        Put(row["leaves"], row["leaves_as"], isAcross ? size with { Length = left } : size with { Width = left });
    }

    private void Put(string name, string kind, (double, double) size)
    {
        if (kind == "panel") Assert.True(Panels.TryAdd(name, size), $"{name} is cut twice");
        else Assert.True(rack.TryAdd(name, size), $"there are two pieces {name}");
    }

    private static List<string> Cells(string line)
    {
        var (cells, cell, quoted) = (new List<string>(), new StringBuilder(), false);
        for (var i = 0; i < line.Length; i++)
        {
            if (line[i] == '"' && quoted && i + 1 < line.Length && line[i + 1] == '"') cell.Append(line[++i]);
            else if (line[i] == '"') quoted = !quoted;
            else if (line[i] == ',' && !quoted)
            {
                cells.Add(cell.ToString());
                cell.Clear();
            }
            else cell.Append(line[i]);
        }

        cells.Add(cell.ToString());
        return cells;
    }
}
