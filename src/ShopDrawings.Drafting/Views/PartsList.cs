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
    // Width of the table, and of what is empty beside a text.
    private const double Width = 176, Beside = 2.2;

    private static readonly Layer TableLayer = new("PARTS_LIST", Role.Lettering, "List of panels");
    private static readonly string[] Heads = ["No.", "Panel", "Length × width × thickness", "Board", "Count"];

    private readonly LengthStyle lengths;
    private readonly double height;
    private readonly double[] columns;

    /// <summary>The list of an assembly.</summary>
    public PartsList(Assembly assembly, SheetSettings settings)
    {
        (lengths, height) = (settings.Lengths.InOneUnit, settings.Small);
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
        double Widest(string head, IEnumerable<string> texts) => texts.Append(head).Max(t => Lettering.Width(t, height)) + Beside + 0.1;
        var sizes = Widest(Heads[2], Rows.Select(Sizes));
        var boards = Math.Min(40, Widest(Heads[3], Rows.Select(r => r.Panels[0].Board.Name)));
        var (places, counts) = (Widest(Heads[0], Rows.Select(r => Number(r.Number))), Widest(Heads[4], Rows.Select(r => Number(r.Panels.Length))));
        columns = [places, Width - places - sizes - boards - counts, sizes, boards, counts];
    }

    /// <summary>The rows by number.</summary>
    public ImmutableArray<PartsRow> Rows { get; }

    /// <summary>Width and height of the table in mm.</summary>
    public Point2 Size => new(Width, (Rows.Length + 1) * RowHeight + 1);

    private double RowHeight => 1.84 * height;

    /// <summary>The table with its upper left corner at a point.</summary>
    public IEnumerable<Entity> Draw(Point2 corner)
    {
        var lines = Rows.Select(Cells).Prepend(Heads).ToList();
        var bottom = corner.Y - Size.Y;
        yield return new ContourEntity(TableLayer, Contour.Rectangle(corner.X, bottom, corner.X + Size.X, corner.Y));
        yield return Line(new(corner.X, corner.Y - RowHeight - 0.5), new(corner.X + Size.X, corner.Y - RowHeight - 0.5));
        for (var (i, x) = (1, corner.X + columns[0]); i < columns.Length; x += columns[i], i++) yield return Line(new(x, bottom), new(x, corner.Y));
        for (var i = 0; i < lines.Count; i++)
        {
            var x = corner.X;
            for (var k = 0; k < columns.Length; k++)
            {
                if (lines[i][k].Length > 0) yield return new TextEntity(TableLayer, new(x + 1.2, corner.Y - (i + 1) * RowHeight + (i == 0 ? 1.1 : 0.8)), height, SheetFrame.Fitted(lines[i][k], height, columns[k] - Beside));
                x += columns[k];
            }
        }
    }

    /// <summary>Length × width × thickness of a row's panels.</summary>
    public string Sizes(PartsRow row) => string.Join(" × ", lengths.Print(row.Panels[0].Length.Value), lengths.Print(row.Panels[0].Width.Value), lengths.PrintFine(row.Panels[0].Thickness.Value));

    private string[] Cells(PartsRow row)
    {
        var mirror = row.MirrorOf is { } of ? string.Create(CultureInfo.InvariantCulture, $", mirrors {of}") : "";
        var names = SheetFrame.Fitted(string.Join(", ", row.Panels.Select(p => p.Id)), height, columns[1] - Beside - Lettering.Width(mirror, height)) + mirror;
        return [Number(row.Number), names, Sizes(row), row.Panels[0].Board.Name, Number(row.Panels.Length)];
    }

    private static string Number(int value) => value.ToString(CultureInfo.InvariantCulture);

    private static SegmentEntity Line(Point2 from, Point2 to) => new(TableLayer, new Segment(from, to));
}
