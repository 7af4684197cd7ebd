using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>A sheet of paper and what stands where on it: the view at the left, a list in columns at the right, a title strip below. In mm.</summary>
/// <param name="Page">Width and height.</param>
/// <param name="ListWidth">Width of the list.</param>
/// <param name="Columns">Columns of the list.</param>
internal sealed record SheetPaper(Point2 Page, double ListWidth, int Columns)
{
    /// <summary>Distance of lines in lists.</summary>
    public const double Line = 5;

    private const double Strip = 22;

    /// <summary>The two smallest sheets lying, with one column or two, the smaller first.</summary>
    public static ImmutableArray<SheetPaper> Of(DrawingStandard standard)
    {
        var lying = Lying(standard);
        return [new(lying[0], 86, 1), new(lying[1], 92, 1), new(lying[1], 172, 2)];
    }

    /// <summary>The smallest sheet lying with nothing but a list.</summary>
    public static SheetPaper ListsOf(DrawingStandard standard)
    {
        const double Margins = 30;
        var page = Lying(standard)[0];
        return new(page, page.X - Margins, 3);
    }

    private static ImmutableArray<Point2> Lying(DrawingStandard standard) => [.. standard.Sheets.Select(s => s.Page).Where(p => p.X > p.Y)];

    /// <summary>The frame: 20 mm left, 10 elsewhere (ISO 5457, from memory).</summary>
    public Box2 Frame => new(new(20, 10), Page - new Point2(10, 10));

    /// <summary>Where the list stands.</summary>
    public Box2 List => new(new(Frame.Max.X - ListWidth, Frame.Min.Y + Strip), Frame.Max);

    /// <summary>Where the view stands.</summary>
    public Box2 View => new(new(Frame.Min.X, Frame.Min.Y + Strip), new(List.Min.X, Frame.Max.Y));

    /// <summary>Width of a column of the list.</summary>
    public double ColumnWidth => (ListWidth - 6) / Columns;

    /// <summary>The base line of the list's first line.</summary>
    public double ListTop => List.Max.Y - 6.5;

    /// <summary>Lines the list holds.</summary>
    public int Lines => ((int)((ListTop - List.Min.Y - 3) / Line) + 1) * Columns;
}
