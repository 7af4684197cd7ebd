using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>
/// A page of labels of one size in columns and rows. Lengths in mm. The sizes of label sheets that are sold alike everywhere are common practice, no source:
/// measure yours, and print a page on plain paper first.
/// </summary>
/// <param name="Page">Width and height of the paper.</param>
/// <param name="Columns">Labels side by side.</param>
/// <param name="Rows">Labels above each other.</param>
/// <param name="Label">Width and height of a label.</param>
/// <param name="Corner">From the upper left corner of the paper to that of the first label: to the right, and down.</param>
/// <param name="Gap">Between labels, across and down.</param>
public sealed record LabelSheet(Point2 Page, int Columns, int Rows, Point2 Label, Point2 Corner, Point2 Gap)
{
    /// <summary>The smallest label that holds a part's name and size in mm.</summary>
    public static Point2 Least { get; } = new(40, 24);

    // What printers leave white at the edge of the paper, with room for letters that lean out.
    private const double White = 5.5;

    // What is left white at the edge of a label, and of one that is lower than this.
    private const double Padding = 2.5, LowPadding = 1.5, Low = 30;

    private const double PlainMargin = 10;

    private static readonly Point2 A4 = new(210, 297), Letter = new(215.9, 279.4);

    /// <summary>A4 plain paper, 2 × 6, to be cut.</summary>
    public static LabelSheet PlainA4 { get; } = Plain(A4, 2, 6);

    /// <summary>US letter plain paper, 2 × 6, to be cut.</summary>
    public static LabelSheet PlainLetter { get; } = Plain(Letter, 2, 6);

    /// <summary>A4, 3 × 8 labels of 70 × 37 mm that touch.</summary>
    public static LabelSheet A4By3X8 { get; } = new(A4, 3, 8, new(70, 37), new(0, 0.5), default);

    /// <summary>US letter, 3 × 10 labels of 2 5/8 × 1 in, 1/8 in apart.</summary>
    public static LabelSheet LetterBy3X10 { get; } = new(Letter, 3, 10, new(66.675, 25.4), new(4.7625, 12.7), new(3.175, 0));

    /// <summary>Whether lines to cut along stand between the labels.</summary>
    public bool HasCutLines { get; init; }

    /// <summary>How many labels of the first page are used up already.</summary>
    public int Skip { get; init; }

    /// <summary>Labels on a page.</summary>
    public int Count => Columns * Rows;

    /// <summary>The box around all labels, in the page's frame, whose origin is its lower left corner.</summary>
    public Box2 Bounds => Place(0).Union(Place(Count - 1));

    /// <summary>The box of a label, row by row from the top; in the page's frame.</summary>
    public Box2 Place(int index)
    {
        var corner = new Point2(Corner.X + index % Columns * (Label.X + Gap.X), Page.Y - Corner.Y - index / Columns * (Label.Y + Gap.Y) - Label.Y);
        return new(corner, corner + Label);
    }

    /// <summary>What may be printed of a label: alike for all, away from its edge and for the outer ones from that of the paper.</summary>
    internal Box2 Room(int index)
    {
        var (all, own) = (Bounds, Place(index));
        var padding = Label.Y < Low ? LowPadding : Padding;
        var across = Math.Max(padding, White - Math.Min(all.Min.X, Page.X - all.Max.X));
        var down = Math.Max(padding, White - Math.Min(all.Min.Y, Page.Y - all.Max.Y));
        return new(own.Min + new Point2(across, down), own.Max - new Point2(across, down));
    }

    /// <summary>Plain paper shared out to labels that are cut apart.</summary>
    internal static LabelSheet Plain(Point2 page, int columns, int rows) =>
        new(page, columns, rows, new((page.X - 2 * PlainMargin) / columns, (page.Y - 2 * PlainMargin) / rows), new(PlainMargin, PlainMargin), default) { HasCutLines = true };
}
