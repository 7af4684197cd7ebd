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

    /// <summary>A4 and A3 lying, with one column or two, the smaller first.</summary>
    public static ImmutableArray<SheetPaper> All { get; } = [new(new(297, 210), 86, 1), new(new(420, 297), 92, 1), new(new(420, 297), 172, 2)];

    /// <summary>A4 lying with nothing but a list.</summary>
    public static SheetPaper Lists { get; } = new(new(297, 210), 267, 3);

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
