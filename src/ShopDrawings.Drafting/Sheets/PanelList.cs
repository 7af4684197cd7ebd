using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>The list of a panel's sheet: how it is sawn and banded, its outline where it is no rectangle, then every feature by kind.</summary>
internal sealed class PanelList
{
    private readonly ImmutableArray<(string Text, int Indent, bool IsHeading)> items;
    private readonly double height;

    // Layouts ask for few widths, many times.
    private readonly Dictionary<double, ImmutableArray<ListLine>> byWidth = [];

    public PanelList(Panel panel, SheetSettings settings, ImmutableArray<FeatureGroup> groups) => (items, height) = ([.. Items(panel, settings.Lengths, groups)], settings.Small);

    /// <summary>Its lines, broken to the width of a column in mm.</summary>
    public ImmutableArray<ListLine> Lines(double columnWidth)
    {
        if (!byWidth.TryGetValue(columnWidth, out var lines)) byWidth[columnWidth] = lines = [.. items.SelectMany(i => Broken(i.Text, i.Indent, i.IsHeading, columnWidth))];
        return lines;
    }

    /// <summary>The lines by columns of a number of lines each, as many as there is room for; no column ends with a heading.</summary>
    public static ImmutableArray<ImmutableArray<ListLine>> Columns(ImmutableArray<ListLine> lines, int perColumn, int columns)
    {
        var set = ImmutableArray.CreateBuilder<ImmutableArray<ListLine>>();
        var next = 0;
        while (set.Count < columns && next < lines.Length)
        {
            var end = Math.Min(lines.Length, next + perColumn);
            if (end < lines.Length)
                while (end > next + 1 && lines[end - 1].StaysWithNext) end--;
            set.Add(lines[next..end]);
            next = end;
        }

        return set.ToImmutable();
    }

    /// <summary>The fewest lines in each of a number of columns that hold all.</summary>
    public static int LeastPerColumn(ImmutableArray<ListLine> lines, int columns)
    {
        var least = (lines.Length + columns - 1) / columns;
        while (Columns(lines, least, columns) is var set && (set.Sum(c => c.Length) < lines.Length || set.Any(c => c[^1].StaysWithNext))) least++;
        return least;
    }

    private static IEnumerable<(string, int, bool)> Items(Panel panel, LengthStyle lengths, ImmutableArray<FeatureGroup> groups)
    {
        var isEmpty = panel.Bands.IsEmpty && panel.IsRectangular && groups.IsEmpty;
        if (!panel.Bands.IsEmpty) yield return ($"saw to {lengths.Print(panel.CutLength.Value)} × {lengths.Print(panel.CutWidth.Value)}, then", 0, true);
        foreach (var band in panel.Bands)
        {
            var (edge, thickness) = (panel.NameOf(band.Edge), lengths.PrintFine(band.Thickness.Value));
            yield return (band.PreMilled.Value > 0 ? $"{edge}: mill {lengths.PrintFine(band.PreMilled.Value)} off, band {thickness}" : $"band {thickness} on the {edge} edge", 0, false);
        }

        if (!panel.IsRectangular)
        {
            yield return ("outline", 0, true);
            foreach (var corner in new FeatureList(panel, lengths).Corners(panel.Outline)) yield return (corner, 1, false);
        }

        foreach (var group in groups)
        {
            yield return (group.Tag.Length > 0 ? $"{group.Tag}  {group.Heading}" : group.Heading, 0, true);
            foreach (var place in group.Places) yield return (place, 1, false);
        }

        if (isEmpty) yield return ("nothing to drill or cut", 0, false);
    }

    private IEnumerable<ListLine> Broken(string text, int indent, bool isHeading, double columnWidth)
    {
        var width = columnWidth - 2 * ListLine.Step;
        var line = "";
        foreach (var word in text.Split(' '))
        {
            var longer = line.Length == 0 ? word : $"{line} {word}";
            if (line.Length > 0 && indent * ListLine.Step + Lettering.Width(longer, height) > width)
            {
                yield return new(line.Replace(ListLine.Hard, ' '), indent, true);
                (line, indent) = (word, Math.Max(indent, 1) + (indent < 2 ? 1 : 0));
            }
            else line = longer;
        }

        yield return new(line.Replace(ListLine.Hard, ' '), indent, isHeading);
    }
}
