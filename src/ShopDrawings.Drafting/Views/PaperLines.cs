using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>What of a view's lines can be told apart on paper: a file for other programs should hold no line of no length, and none twice.</summary>
internal static class PaperLines
{
    // Less than a third of the finest pen; and a thousandth of an inch, which no printer tells apart, in mm.
    private const double LeastLength = 0.04;
    private const double Step = 0.0254;

    /// <summary>The entities of a view without lines that are dots, and without repetitions on one layer.</summary>
    public static IEnumerable<Entity> Of(IEnumerable<Entity> drawn) => drawn.Where(e => e is not SegmentEntity { Segment: var s } || s.Length >= LeastLength).DistinctBy(Key);

    // Either direction of a line is the same line.
    private static object Key(Entity entity) => entity switch
    {
        SegmentEntity { Segment: var s } when IsBefore(s.Start, s.End) => (entity.Layer, Rounded(s.Start), Rounded(s.End), Rounded(s.Middle)),
        SegmentEntity { Segment: var s } => (entity.Layer, Rounded(s.End), Rounded(s.Start), Rounded(s.Middle)),
        CircleEntity c => (entity.Layer, Rounded(c.Centre), Rounded(c.Radius)),
        EllipseEntity e => (entity.Layer, Rounded(e.Centre), Rounded(e.Major), Rounded(e.Ratio), Rounded(e.StartDegrees), Rounded(e.EndDegrees)),
        _ => entity,
    };

    private static bool IsBefore(Point2 a, Point2 b) => Rounded(a).CompareTo(Rounded(b)) <= 0;

    private static (long X, long Y) Rounded(Point2 p) => (Rounded(p.X), Rounded(p.Y));

    private static long Rounded(double value) => (long)Math.Round(value / Step);
}
