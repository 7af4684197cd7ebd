using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>A view with the dimensions beside it and the marks in it, at any scale 1:n. On paper, from the view's lower left corner.</summary>
/// <param name="view">The view.</param>
/// <param name="spans">What is worth a dimension, in the view before the scale.</param>
/// <param name="settings">What all sheets share.</param>
internal sealed class ViewLayout(AssemblyView view, ImmutableArray<Span> spans, SheetSettings settings)
{
    private const double MarkEnd = 5;

    private static readonly Layer DimensionLayer = new("DIMENSION", Role.Dimension, "Sizes");
    private static readonly Layer PlaneLayer = new("SECTION_PLANE", Role.CuttingPlane, "Where sections are cut");
    private static readonly Layer MarkLayer = new("MARKS", Role.Lettering, "Letters of sections and details");

    private double Letter => settings.Normal;

    private readonly Box2 bounds = view.Bounds;
    private readonly Dictionary<int, DimensionRows> byScale = [];

    /// <summary>The planes marked at its ends.</summary>
    public ImmutableArray<SectionMark> Sections { get; init; } = [];

    /// <summary>The details marked in it.</summary>
    public ImmutableArray<DetailMark> Details { get; init; } = [];

    /// <summary>The room it takes.</summary>
    public Box2 Around(int scale)
    {
        var (rows, size) = (Rows(scale), Size(scale));
        var (left, below, right, above) = rows.Beyond(size);
        double Reach(ViewSide side) => Sections.Where(s => s.IsUpright == side is ViewSide.Below or ViewSide.Above).Select(s => MarkStart(s, side, scale) + MarkEnd).Append(rows.Reach(side)).Max();
        var around = new Box2(
            new(-Math.Max(left + 2, Reach(ViewSide.Left)), -Math.Max(below + 2, Reach(ViewSide.Below))),
            size + new Point2(Math.Max(right + 2, Reach(ViewSide.Right)), Math.Max(above + 2, Reach(ViewSide.Above))));
        // With the letter beside it.
        return Details.Select(d => new Box2((d.Window.Min - bounds.Min) * (1.0 / scale), (d.Window.Max - bounds.Min) * (1.0 / scale)).Grown(Letter + 3)).Aggregate(around, (a, b) => a.Union(b));
    }

    /// <summary>What found no row, in words.</summary>
    public IEnumerable<string> LeftOut(int scale) =>
        Rows(scale).LeftOut.GroupBy(s => s.What).Select(g => $"{char.ToUpperInvariant(g.Key[0])}{g.Key[1..]}: {string.Join(", ", g.Select(s => settings.Lengths.Print(s.To - s.From)).Distinct())}.");

    /// <summary>View, dimensions and marks, the view's lower left corner at a point.</summary>
    public ImmutableArray<Entity> Draw(int scale, Point2 corner)
    {
        var box = new Box2(corner, corner + Size(scale));
        List<Entity> drawn = [.. PaperLines.Of(view.Draw(scale, corner)), .. Rows(scale).Draw(DimensionLayer, box)];
        foreach (var section in Sections) drawn.AddRange(Mark(section, scale, box));
        if (Details.IsEmpty) return [.. drawn];
        var windows = Details.Select(d => (d.Letter, Box: new Box2(OnPaper(d.Window.Min), OnPaper(d.Window.Max)))).ToList();
        drawn.AddRange(windows.Select(w => new ContourEntity(MarkLayer, Contour.Rectangle(w.Box.Min.X, w.Box.Min.Y, w.Box.Max.X, w.Box.Max.Y))));
        var placer = new TagPlacer(new FreeSpace(drawn), new Box2(corner, corner + Size(scale)).Grown(30));
        foreach (var (letter, window) in windows)
            if (placer.Beside(MarkLayer, window, letter, Letter) is { } text) drawn.Add(text);
        return [.. drawn];

        Point2 OnPaper(Point2 p) => corner + (p - bounds.Min) * (1.0 / scale);
    }

    private Point2 Size(int scale) => new Point2(bounds.Width, bounds.Height) * (1.0 / scale);

    private DimensionRows Rows(int scale)
    {
        if (byScale.TryGetValue(scale, out var rows)) return rows;
        var own = spans.Select(s => s.Side is ViewSide.Below or ViewSide.Above ? s with { From = s.From - bounds.Min.X, To = s.To - bounds.Min.X } : s with { From = s.From - bounds.Min.Y, To = s.To - bounds.Min.Y });
        return byScale[scale] = DimensionRows.Of(own, scale, settings);
    }

    // Near the view, or beyond all rows where an extension line would run through the mark.
    private double MarkStart(SectionMark mark, ViewSide side, int scale)
    {
        const double Clear = 1;
        var (low, high) = (mark.Looks > 0 ? Letter + MarkEnd : Clear, mark.Looks > 0 ? Clear : Letter + MarkEnd);
        var at = Along(mark, scale);
        return Rows(scale).Extensions(side).Any(e => e > at - low && e < at + high) ? Rows(scale).Reach(side) + 1 : 0;
    }

    private double Along(SectionMark mark, int scale) => (mark.At - (mark.IsUpright ? bounds.Min.X : bounds.Min.Y)) / scale;

    private IEnumerable<Entity> Mark(SectionMark mark, int scale, Box2 box)
    {
        const double Stroke = 1, Shaft = 6, Arrow = 3, ArrowHalf = 0.6;
        foreach (var isFar in new[] { false, true })
        {
            var side = (mark.IsUpright, isFar) switch { (true, false) => ViewSide.Below, (true, true) => ViewSide.Above, (false, false) => ViewSide.Left, _ => ViewSide.Right };
            var start = MarkStart(mark, side, scale);
            var along = Along(mark, scale);
            // Across the plane's line in the direction of sight, and away from the view along it.
            Point2 At(double across, double away)
            {
                var (a, b) = (along + across * mark.Looks, start + away);
                return mark.IsUpright ? new(box.Min.X + a, isFar ? box.Max.Y + b : box.Min.Y - b) : new(isFar ? box.Max.X + b : box.Min.X - b, box.Min.Y + a);
            }

            var middle = (Stroke + MarkEnd) / 2;
            yield return new SegmentEntity(PlaneLayer, new Segment(At(0, Stroke), At(0, MarkEnd)));
            yield return new SegmentEntity(MarkLayer, new Segment(At(-Shaft, middle), At(-Arrow, middle)));
            yield return new ArrowEntity(MarkLayer, At(-0.3, middle), At(-Arrow, middle - ArrowHalf), At(-Arrow, middle + ArrowHalf));
            yield return new TextEntity(MarkLayer, At(-Shaft - Letter / 2 - 0.7, middle), Letter, mark.Letter, Anchor.Middle);
        }
    }
}
