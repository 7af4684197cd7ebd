using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>One page of a drawing that is printed in pieces.</summary>
/// <param name="Column">From the left, from 0.</param>
/// <param name="Row">From the bottom, from 0.</param>
/// <param name="Window">What of the true-size drawing it shows.</param>
/// <param name="Corner">Where the window's lower left corner lies on the page.</param>
internal sealed record Tile(int Column, int Row, Box2 Window, Point2 Corner)
{
    /// <summary>The page's name: a letter for its row from the bottom, its number from the left.</summary>
    public string Name => FormattableString.Invariant($"{(char)('A' + Row)}{Column + 1}");
}

/// <summary>How a region is printed in true size on pages that overlap.</summary>
/// <param name="Page">Width and height of each page.</param>
/// <param name="Columns">How many pages across.</param>
/// <param name="Rows">How many pages up.</param>
/// <param name="Tiles">The pages, the lower row first.</param>
/// <param name="TrimX">Where pages are joined across, in the drawing.</param>
/// <param name="TrimY">Where pages are joined up.</param>
/// <param name="Printer">How the printer is off on these pages.</param>
internal sealed record TilePlan(Point2 Page, int Columns, int Rows, ImmutableArray<Tile> Tiles, ImmutableArray<double> TrimX, ImmutableArray<double> TrimY, PrinterScale Printer)
{
    /// <summary>White at the edges of a page, which printers do not reach, and at the top the room for words; in mm.</summary>
    public const double Side = 10, Top = 38;

    /// <summary>How far pages overlap, in mm.</summary>
    public const double Overlap = 20;

    /// <summary>The plan with the fewest pages, upright where both ways need as many.</summary>
    public static TilePlan Of(Box2 region, TemplatePaper paper, PrinterScale printer)
    {
        if (paper.Height is not { } height) return On(region, new(paper.Width, Math.Max(100, region.Height / printer.Y + Side + Top)), printer);
        var (upright, lying) = (On(region, new(paper.Width, height), printer), On(region, new(height, paper.Width), printer.Turned));
        return lying.Tiles.Length < upright.Tiles.Length ? lying : upright;
    }

    private static TilePlan On(Box2 region, Point2 page, PrinterScale printer)
    {
        var (roomX, roomY) = ((page.X - 2 * Side) * printer.X, (page.Y - Side - Top) * printer.Y);
        var (columns, rows) = (Count(region.Width, roomX), Count(region.Height, roomY));
        var tiles =
            from row in Enumerable.Range(0, rows)
            from column in Enumerable.Range(0, columns)
            let min = region.Min + new Point2(column * (roomX - Overlap), row * (roomY - Overlap))
            let window = new Box2(min, new(Math.Min(min.X + roomX, region.Max.X), Math.Min(min.Y + roomY, region.Max.Y)))
            select new Tile(column, row, window, new(Side, page.Y - Top - window.Height / printer.Y));
        return new(page, columns, rows, [.. tiles], Trims(region.Min.X, roomX, columns), Trims(region.Min.Y, roomY, rows), printer);
    }

    private static int Count(double size, double room) => Math.Max(1, (int)Math.Ceiling((size - Overlap) / (room - Overlap) - 1e-9));

    private static ImmutableArray<double> Trims(double start, double room, int count) => [.. Enumerable.Range(1, count - 1).Select(i => start + i * (room - Overlap) + Overlap / 2)];
}
