using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>
/// One printed page: what is drawn in true size through a window comes out where the printer makes it true, cut off at the window; text keeps
/// clear of all lines. Page coordinates in mm from the lower left corner.
/// </summary>
/// <param name="window">The part of the true-size drawing it shows.</param>
/// <param name="corner">Where the window's lower left corner lies on the page.</param>
/// <param name="printer">How the printer is off.</param>
internal sealed class PageCanvas(Box2 window, Point2 corner, PrinterScale printer)
{
    // Chords stay this near to arcs, in mm.
    private const double ArcTolerance = 0.01;

    // White kept round every text, in mm.
    private const double White = 0.6;

    // Holes with a larger reach, in mm, are named above or below, where no smaller hole beside them could be meant.
    private const double Wide = 8;

    private static readonly ImmutableArray<(double X, double Y, Anchor Anchor)> BesideFirst =
    [
        (1, 0.25, Anchor.BaseLeft), (-1, 0.25, Anchor.BaseRight), (0.7, 0.7, Anchor.BaseLeft), (0.7, -1, Anchor.BaseLeft),
        (-0.7, 0.7, Anchor.BaseRight), (-0.7, -1, Anchor.BaseRight), (0, 1.2, Anchor.BaseCentre), (0, -1.6, Anchor.BaseCentre),
    ];

    private static readonly ImmutableArray<(double X, double Y, Anchor Anchor)> AboveFirst = [(0, 1.05, Anchor.BaseCentre), (0, -1.15, Anchor.BaseCentre), .. BesideFirst];

    public static readonly Layer Edge = new("EDGES", Role.Outline, "Edges of the panel: fold here.");
    public static readonly Layer Hole = new("HOLES", Role.Bore, "Holes at their true diameters.");
    public static readonly Layer Centre = new("CENTRES", Role.Mark, "Crosses to prick with an awl.");
    public static readonly Layer Opening = new("OPENINGS", Role.CutOut, "Edges of openings.");
    public static readonly Layer Scribed = new("SCRIBED", Role.Mark, "Lines to scribe.");
    public static readonly Layer Reference = new("LINES_A_B", Role.Centre, "Lines A and B, to lay on lines drawn on the panel.");
    public static readonly Layer Cut = new("PAPER_EDGE", Role.Reference, "The edge of the template: cut here.");
    public static readonly Layer Trim = new("TRIM", Role.Hidden, "Lines along which pages are joined.");
    public static readonly Layer Register = new("REGISTRATION", Role.Reference, "Crosses that come to lie on each other.");
    public static readonly Layer Words = new("WORDS", Role.Lettering, "What is to be done.");
    public static readonly Layer Scale = new("SCALE", Role.ScaleSquare, "Lengths to measure after printing.");

    private readonly List<Entity> entities = [];
    private readonly List<(Point2 From, Point2 To)> lines = [];
    private readonly List<(Point2 Centre, double Radius)> circles = [];
    private readonly List<Box2> texts = [];

    /// <summary>What is drawn so far.</summary>
    public IEnumerable<Entity> Entities => entities;

    /// <summary>Where a true-size point comes to lie.</summary>
    public Point2 OnPage(Point2 p) => corner + new Point2((p.X - window.Min.X) / printer.X, (p.Y - window.Min.Y) / printer.Y);

    /// <summary>Whether a true-size point is in the window.</summary>
    public bool Shows(Point2 p) => p.X >= window.Min.X - Tolerance.Length && p.X <= window.Max.X + Tolerance.Length && p.Y >= window.Min.Y - Tolerance.Length && p.Y <= window.Max.Y + Tolerance.Length;

    /// <summary>A line in true size, cut off at the window.</summary>
    public void Line(Layer layer, Point2 from, Point2 to)
    {
        if (Clipped(from, to, window) is not var (a, b) || a.DistanceTo(b) <= Tolerance.Length) return;
        OnPaper(layer, OnPage(a), OnPage(b));
    }

    /// <summary>A line in page coordinates.</summary>
    public void OnPaper(Layer layer, Point2 a, Point2 b)
    {
        entities.Add(new SegmentEntity(layer, new Segment(a, b)));
        lines.Add((a, b));
    }

    /// <summary>An outline in true size, cut off at the window.</summary>
    public void Outline(Layer layer, Contour contour)
    {
        if (contour.AsCircle is var (centre, radius))
        {
            Circle(layer, centre, radius);
            return;
        }

        foreach (var segment in contour.Segments)
        {
            var count = segment.IsLine ? 1 : (int)Math.Ceiling(Math.Abs(segment.SweepRadians) / (2 * Math.Acos(1 - Math.Min(1, ArcTolerance / segment.Radius))));
            for (var i = 0; i < count; i++) Line(layer, segment.At((double)i / count), segment.At((i + 1.0) / count));
        }
    }

    /// <summary>A circle in true size; where the window cuts it or the printer would make it oval, it is drawn by chords.</summary>
    public void Circle(Layer layer, Point2 centre, double radius)
    {
        var reach = new Point2(radius, radius);
        if (Shows(centre - reach) && Shows(centre + reach) && printer.X == printer.Y)
        {
            entities.Add(new CircleEntity(layer, OnPage(centre), radius / printer.X));
            circles.Add((OnPage(centre), radius / printer.X));
            return;
        }

        var count = (int)Math.Ceiling(Math.PI / Math.Acos(1 - Math.Min(0.5, ArcTolerance / radius)));
        Point2 At(int i) => centre + new Point2(Math.Cos(2 * Math.PI * i / count), Math.Sin(2 * Math.PI * i / count)) * radius;
        for (var i = 0; i < count; i++) Line(layer, At(i), At(i + 1));
    }

    /// <summary>A cross in true size.</summary>
    public void Cross(Layer layer, Point2 at, double reach)
    {
        Line(layer, at - new Point2(reach, 0), at + new Point2(reach, 0));
        Line(layer, at - new Point2(0, reach), at + new Point2(0, reach));
    }

    /// <summary>A text in page coordinates where its place is free by construction.</summary>
    public void Text(Point2 at, double height, string text, Anchor anchor = Anchor.BaseLeft, double angle = 0) => Add(new TextEntity(Words, at, height, text, anchor, angle));

    /// <summary>A text beside a true-size point, at the nearest place where it touches nothing.</summary>
    /// <returns>Whether there was a place.</returns>
    public bool Label(Point2 at, double clear, double height, string text)
    {
        var page = OnPage(at);
        foreach (var away in (ReadOnlySpan<double>)[clear + 1.2, clear + 4, clear + 8, clear + 13, clear + 20])
            foreach (var (x, y, anchor) in clear > Wide ? AboveFirst : BesideFirst)
            {
                var entity = new TextEntity(Words, page + new Point2(x * away, y * away), height, text, anchor);
                if (!IsFree(entity.Bounds)) continue;
                Add(entity);
                return true;
            }

        return false;
    }

    /// <summary>Whether nothing is drawn in a box of the page, and the box is in the window.</summary>
    public bool IsFree(Box2 box)
    {
        var grown = box.Grown(White);
        var (low, high) = (OnPage(window.Min), OnPage(window.Max));
        if (box.Min.X < low.X || box.Min.Y < low.Y || box.Max.X > high.X || box.Max.Y > high.Y) return false;
        return !lines.Exists(l => Clipped(l.From, l.To, grown) is not null) && !circles.Exists(c => MeetsRing(grown, c.Centre, c.Radius))
            && !texts.Exists(t => t.Min.X < grown.Max.X && t.Max.X > grown.Min.X && t.Min.Y < grown.Max.Y && t.Max.Y > grown.Min.Y);
    }

    private void Add(TextEntity text)
    {
        entities.Add(text);
        texts.Add(text.Bounds);
    }

    private static bool MeetsRing(Box2 box, Point2 centre, double radius)
    {
        var near = new Point2(Math.Clamp(centre.X, box.Min.X, box.Max.X), Math.Clamp(centre.Y, box.Min.Y, box.Max.Y)).DistanceTo(centre);
        var far = new[] { box.Min, box.Max, new(box.Min.X, box.Max.Y), new(box.Max.X, box.Min.Y) }.Max(p => p.DistanceTo(centre));
        return near <= radius && far >= radius;
    }

    // The part of a line in a box (Liang and Barsky 1984, from memory); nothing where it misses it.
    private static (Point2 From, Point2 To)? Clipped(Point2 from, Point2 to, Box2 box)
    {
        var by = to - from;
        var (first, last) = (0.0, 1.0);
        foreach (var (rise, room) in (ReadOnlySpan<(double, double)>)[(-by.X, from.X - box.Min.X), (by.X, box.Max.X - from.X), (-by.Y, from.Y - box.Min.Y), (by.Y, box.Max.Y - from.Y)])
        {
            if (rise == 0)
            {
                if (room < 0) return null;
                continue;
            }

            if (rise < 0) first = Math.Max(first, room / rise);
            else last = Math.Min(last, room / rise);
        }

        return first <= last ? (from + by * first, from + by * last) : null;
    }
}
