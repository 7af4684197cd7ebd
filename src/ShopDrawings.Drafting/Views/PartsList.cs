using System.Collections.Immutable;
using System.Globalization;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>Panels that are equal, under one number.</summary>
/// <param name="Number">From 1, in building order.</param>
/// <param name="Panels">The panels, the first in building order first.</param>
/// <param name="MirrorOf">The number of the row whose panels are its mirror images, or nothing.</param>
internal sealed record PartsRow(int Number, ImmutableArray<Panel> Panels, int? MirrorOf);

/// <summary>The list of the panels of an assembly, equal ones in one row, and its table on a sheet.</summary>
internal sealed class PartsList
{
    private const double Height = 2.5;
    private const double RowHeight = 4.6;

    private static readonly Layer TableLayer = new("PARTS_LIST", Role.Lettering, "List of panels");
    private static readonly double[] Columns = [10, 58, 62, 32, 14];

    private readonly LengthStyle lengths;

    /// <summary>The list of an assembly.</summary>
    public PartsList(Assembly assembly, LengthStyle lengths)
    {
        this.lengths = lengths;
        var twins = PanelTwins.Find(assembly.Panels);
        var numbers = new Dictionary<string, int>(StringComparer.Ordinal);
        var rows = new List<PartsRow>();
        foreach (var panel in assembly.Panels)
        {
            var twin = twins.GetValueOrDefault(panel.Id);
            if (twin is { Twinship: Twinship.Same })
            {
                var number = numbers[panel.Id] = numbers[twin.Of];
                rows[number - 1] = rows[number - 1] with { Panels = rows[number - 1].Panels.Add(panel) };
                continue;
            }

            numbers[panel.Id] = rows.Count + 1;
            rows.Add(new PartsRow(rows.Count + 1, [panel], twin is null ? null : numbers[twin.Of]));
        }

        Rows = [.. rows];
    }

    /// <summary>The rows by number.</summary>
    public ImmutableArray<PartsRow> Rows { get; }

    /// <summary>Width and height of the table in mm.</summary>
    public Point2 Size => new(Columns.Sum(), (Rows.Length + 1) * RowHeight + 1);

    /// <summary>The table with its upper left corner at a point.</summary>
    public IEnumerable<Entity> Draw(Point2 corner)
    {
        string[] heads = ["No.", "Panel", "Length × width × thickness", "Board", "Count"];
        var lines = Rows.Select(Cells).Prepend(heads).ToList();
        var bottom = corner.Y - Size.Y;
        yield return new ContourEntity(TableLayer, Contour.Rectangle(corner.X, bottom, corner.X + Size.X, corner.Y));
        yield return Line(new(corner.X, corner.Y - RowHeight - 0.5), new(corner.X + Size.X, corner.Y - RowHeight - 0.5));
        for (var (i, x) = (1, corner.X + Columns[0]); i < Columns.Length; x += Columns[i], i++) yield return Line(new(x, bottom), new(x, corner.Y));
        for (var i = 0; i < lines.Count; i++)
        {
            var x = corner.X;
            for (var k = 0; k < Columns.Length; k++)
            {
                if (lines[i][k].Length > 0) yield return new TextEntity(TableLayer, new(x + 1.2, corner.Y - (i + 1) * RowHeight + (i == 0 ? 1.1 : 0.8)), Height, SheetFrame.Fitted(lines[i][k], Height, Columns[k] - 2.2));
                x += Columns[k];
            }
        }
    }

    /// <summary>Length × width × thickness of a row's panels.</summary>
    public string Sizes(PartsRow row) => string.Join(" × ", lengths.Print(row.Panels[0].Length.Value), lengths.Print(row.Panels[0].Width.Value), lengths.PrintFine(row.Panels[0].Thickness.Value));

    private string[] Cells(PartsRow row)
    {
        var mirror = row.MirrorOf is { } of ? string.Create(CultureInfo.InvariantCulture, $", mirrors {of}") : "";
        var names = SheetFrame.Fitted(string.Join(", ", row.Panels.Select(p => p.Id)), Height, Columns[1] - 2.2 - Lettering.Width(mirror, Height)) + mirror;
        return [Number(row.Number), names, Sizes(row), row.Panels[0].Board.Name, Number(row.Panels.Length)];
    }

    private static string Number(int value) => value.ToString(CultureInfo.InvariantCulture);

    private static SegmentEntity Line(Point2 from, Point2 to) => new(TableLayer, new Segment(from, to));
}
