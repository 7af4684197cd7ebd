using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>Puts letters beside features where nothing else is drawn. Paper mm.</summary>
internal sealed class TagPlacer(IEnumerable<Entity> drawn, Box2 within)
{
    private const double Clear = 0.5;
    private const int Directions = 8;

    private readonly List<Box2> taken = [.. drawn.SelectMany(Boxes)];

    /// <summary>The place for a text beside a circle of a radius, or nothing where there is no room.</summary>
    public TextEntity? Place(Layer layer, Point2 centre, double radius, string text, double height)
    {
        foreach (var away in new[] { 1.2, 2.4 })
            for (var i = 0; i < Directions; i++)
            {
                var (sin, cos) = Math.SinCos((2 * i + 1) * Math.PI / Directions);
                var half = new Point2(Lettering.Width(text, height) / 2, height / 2);
                var middle = centre + new Point2((radius + away + half.X) * cos, (radius + away + half.Y) * sin);
                var box = new Box2(middle - half, middle + half).Grown(Clear);
                if (box.Min.X < within.Min.X || box.Min.Y < within.Min.Y || box.Max.X > within.Max.X || box.Max.Y > within.Max.Y || taken.Any(t => Overlap(t, box))) continue;
                taken.Add(box);
                return new TextEntity(layer, middle, height, text, Anchor.Middle);
            }

        return null;
    }

    /// <summary>The place for a text outside or inside a box, near its corners or its sides; nothing where there is no room.</summary>
    public TextEntity? Beside(Layer layer, Box2 box, string text, double height)
    {
        const double Away = 1.5;
        var half = new Point2(Lettering.Width(text, height) / 2, height / 2);
        var (low, high) = (box.Min - half, box.Max + half);
        Point2[] corners = [new(low.X - Away, high.Y + Away), new(high.X + Away, high.Y + Away), new(low.X - Away, low.Y - Away), new(high.X + Away, low.Y - Away)];
        var (inLow, inHigh) = (box.Min + half + new Point2(Away, Away), box.Max - half - new Point2(Away, Away));
        Point2[] inside = [new(inLow.X, inHigh.Y), new(inHigh.X, inHigh.Y), new(inLow.X, inLow.Y), new(inHigh.X, inLow.Y)];
        const int Steps = 8;
        var sides = Enumerable.Range(0, Steps + 1).Select(i => (double)i / Steps).SelectMany(t => new Point2[]
        {
            new(low.X - Away, box.Min.Y + box.Height * t), new(high.X + Away, box.Min.Y + box.Height * t),
            new(box.Min.X + box.Width * t, low.Y - Away), new(box.Min.X + box.Width * t, high.Y + Away),
        });
        foreach (var middle in corners.Concat(inside).Concat(sides))
        {
            var room = new Box2(middle - half, middle + half).Grown(Clear);
            if (taken.Any(t => Overlap(t, room))) continue;
            taken.Add(room);
            return new TextEntity(layer, middle, height, text, Anchor.Middle);
        }

        return null;
    }

    private static bool Overlap(Box2 a, Box2 b) => a.Min.X < b.Max.X && b.Min.X < a.Max.X && a.Min.Y < b.Max.Y && b.Min.Y < a.Max.Y;

    // A line or an outline is in the way along its edge, not within.
    private static IEnumerable<Box2> Boxes(Entity entity) => entity switch
    {
        ContourEntity contour => contour.Contour.Segments.SelectMany(Along),
        SegmentEntity segment => Along(segment.Segment),
        _ => [entity.Bounds],
    };

    private static IEnumerable<Box2> Along(Segment s)
    {
        const double Step = 2;
        var count = Math.Max(1, (int)Math.Ceiling(s.Length / Step));
        return Enumerable.Range(0, count).Select(i => s.Part((double)i / count, (i + 1.0) / count).Bounds);
    }
}
