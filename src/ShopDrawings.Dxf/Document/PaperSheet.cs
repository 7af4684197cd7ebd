using ShopDrawings.Drafting;
using ShopDrawings.Kernel;

namespace ShopDrawings.Dxf;

/// <summary>What stands on the sheet of a layout, in mm from its lower left corner.</summary>
internal sealed class PaperSheet(SheetLayout layout)
{
    private const double Margin = 10;       // ISO 5457, from memory
    private const double LineHeight = 7;
    private const double Lettering = 3.5;

    /// <summary>The layer of frame, windows and title.</summary>
    public static Layer Layer { get; } = new("SHEET", Role.Frame, "Frame and title of the sheet");

    /// <summary>Layers beside the drawing's.</summary>
    public static IEnumerable<Layer> LayersOf(SheetLayout? layout) => layout is null ? [] : [Layer];

    /// <summary>How many handles the sheet takes: paper, window, frame and title strip, texts.</summary>
    public static int HandlesOf(SheetLayout? layout) => layout is null ? 0 : 4 + layout.Title.Length;

    private Box2 Frame => new Box2(default, new Point2(layout.Width, layout.Height)).Grown(-Margin);

    private double StripHeight => LineHeight * layout.Title.Length;

    /// <summary>What the layout must be.</summary>
    /// <exception cref="ArgumentException">A size or the scale is out of range, or there are too many lines.</exception>
    public static void Check(SheetLayout layout)
    {
        const double Smallest = 50, Largest = 1e5, MostLines = 8;
        if (!(layout.Width is >= Smallest and < Largest && layout.Height >= Smallest + LineHeight * layout.Title.Length && layout.Height < Largest))
            throw new ArgumentException("The sheet of a layout must be at least 50 mm wide, and 50 mm and 7 mm for each line high.", nameof(layout));
        if (!(layout.Scale is > 1e-3 and < 1e6)) throw new ArgumentException("The scale of a layout must lie between 0.001 and 1000000.", nameof(layout));
        if (layout.Title.Length > MostLines) throw new ArgumentException("The title of a layout has at most eight lines.", nameof(layout));
    }

    /// <summary>Writes the sheet.</summary>
    /// <param name="space">Writes into paper space.</param>
    /// <param name="view">The middle of what the window shows.</param>
    public void Write(SpaceWriter space, Point2 view)
    {
        space.Enter(SkeletonHandle.PaperSpaceRecord, paper: true);
        var paper = new Box2(default, new Point2(layout.Width, layout.Height));
        var window = Frame with { Min = Frame.Min + new Point2(0, StripHeight) };
        space.Viewport(Layer, paper, paper.Centre, 1, id: 1);
        space.Viewport(Layer, window, view, layout.Scale, id: 2);
        space.Write(new ContourEntity(Layer, Contour.Rectangle(Frame.Min.X, Frame.Min.Y, Frame.Max.X, Frame.Max.Y)));
        if (layout.Title.IsEmpty) return;
        space.Write(new SegmentEntity(Layer, new Segment(window.Min, new Point2(window.Max.X, window.Min.Y))));
        for (var i = 0; i < layout.Title.Length; i++)
        {
            var baseLine = window.Min.Y - (i + 1) * LineHeight + (LineHeight - Lettering) / 2;
            space.Write(new TextEntity(Layer, new Point2(Frame.Min.X + Lettering, baseLine), Lettering, layout.Title[i]));
        }
    }
}
