using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>Finds room for a panel's name on its face, clear of everything made in either face.</summary>
internal static class NameEngraving
{
    private const double Margin = 3, LeastHeight = 4, ArcTolerance = 0.01;
    private const int Steps = 24;

    /// <summary>The strokes of the name in the middle of the panel or as near to it as there is room, smaller where there is none; nothing where it finds no room at all.</summary>
    public static ImmutableArray<ToolPath> Strokes(LyingPanel lying, double height)
    {
        var taken = lying.Panel.Features.Select(f => f is Mark m ? MarkBox(lying, m) : Cut.Of(lying.Panel, f) is { } cut ? lying.Lie.Of(cut.Outline).Bounds : (Box2?)null).OfType<Box2>().ToList();
        for (; height >= LeastHeight; height *= 0.75)
        {
            var width = StrokeLettering.Width(lying.Panel.Id, height);
            if (Room(lying.Outline, taken, width, height) is { } corner)
                return [.. StrokeLettering.Strokes(lying.Panel.Id, corner, height).Select(s => ToolPath.Through(s))];
        }

        return [];
    }

    private static Point2? Room(Contour outline, List<Box2> taken, double width, double height)
    {
        var bounds = outline.Bounds;
        var (x, y) = (bounds.Width - width, bounds.Height - height);
        if (x <= 2 * Margin || y <= 2 * Margin) return null;
        var middle = bounds.Centre - new Point2(width / 2, height / 2);
        return Enumerable.Range(0, (Steps + 1) * (Steps + 1))
            .Select(i => bounds.Min + new Point2(x * (i % (Steps + 1)) / Steps, y * (i / (Steps + 1)) / Steps))
            .OrderBy(p => Math.Round(p.DistanceTo(middle), 3))
            .Where(p => IsFree(outline, taken, new Box2(p, p + new Point2(width, height)).Grown(Margin)))
            .Select(p => (Point2?)p)
            .FirstOrDefault();
    }

    private static bool IsFree(Contour outline, List<Box2> taken, Box2 box) =>
        !taken.Any(t => t.Min.X < box.Max.X && box.Min.X < t.Max.X && t.Min.Y < box.Max.Y && box.Min.Y < t.Max.Y)
        && PolygonOperations.RegionOf(Contour.Rectangle(box.Min.X, box.Min.Y, box.Max.X, box.Max.Y), ArcTolerance).Minus(PolygonOperations.RegionOf(outline, ArcTolerance)).Area < Tolerance.Length;

    private static Box2 MarkBox(LyingPanel lying, Mark mark) => Box2.Around([lying.Lie.Of(mark.From.Point), lying.Lie.Of((mark.To ?? mark.From).Point)]);
}
