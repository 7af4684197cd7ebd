using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>A sheet of paper, with the frame of ISO 5457:1999 (20 mm at the left for filing, 10 mm elsewhere; from memory), also on US sheets.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Page">Width and height in mm.</param>
public sealed record SheetSize(string Name, Point2 Page)
{
    /// <summary>A4, A3 and A2 (ISO 216), the smallest first; A4 upright and lying, the others lying.</summary>
    public static ImmutableArray<SheetSize> Metric { get; } =
        [new("A4", new(210, 297)), new("A4", new(297, 210)), new("A3", new(420, 297)), new("A2", new(594, 420))];

    /// <summary>US sheets A, B and C (ASME Y14.1, from memory), the smallest first; A upright and lying, the others lying.</summary>
    public static ImmutableArray<SheetSize> Inch { get; } =
        [new("A", new(215.9, 279.4)), new("A", new(279.4, 215.9)), new("B", new(431.8, 279.4)), new("C", new(558.8, 431.8))];

    /// <summary>The frame.</summary>
    public Box2 Frame => new(new(20, 10), Page - new Point2(10, 10));

    /// <summary>The title block, in the lower right corner of the frame (ISO 7200).</summary>
    public Box2 TitleBlock => new(new(Frame.Max.X - TitleWidth, Frame.Min.Y), new(Frame.Max.X, Frame.Min.Y + SheetFrame.TitleHeight));

    /// <summary>Whether there is room for notes beside the title block; else they stand above it.</summary>
    public bool HasRoomBesideTitle => Frame.Width - TitleWidth >= LeastNotes;

    /// <summary>Whether it has room for a number of lines of notes beside the title block, where they stand there.</summary>
    public bool Holds(int notes) => !HasRoomBesideTitle || notes <= MostNotes;

    /// <summary>The room for views when a number of lines of notes is written.</summary>
    public Box2 Room(int notes) => Frame with { Min = new(Frame.Min.X, TitleBlock.Max.Y + (HasRoomBesideTitle || notes == 0 ? 0 : notes * SheetFrame.NotePitch + 3)) };

    private double TitleWidth => Math.Min(180, Frame.Width);

    private const double LeastNotes = 60;

    // In the height of the title block, at the pitch of notes.
    private const int MostNotes = 8;
}
