using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>Puts letters beside features where nothing else is drawn. Paper mm.</summary>
internal sealed class TagPlacer(FreeSpace space, Box2 within)
{
    private const double Clear = 0.5;
    private const int Directions = 8;

    /// <summary>A text in the middle of an opening, or nothing where something is drawn there.</summary>
    public TextEntity? PlaceIn(Layer layer, Point2 middle, string text, double height)
    {
        var half = new Point2(Lettering.Width(text, height) / 2, height / 2);
        var box = new Box2(middle - half, middle + half).Grown(Clear);
        if (!space.IsFree(box)) return null;
        space.Take(box);
        return new TextEntity(layer, middle, height, text, Anchor.Middle);
    }

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
                if (box.Min.X < within.Min.X || box.Min.Y < within.Min.Y || box.Max.X > within.Max.X || box.Max.Y > within.Max.Y || !space.IsFree(box)) continue;
                space.Take(box);
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
            if (!space.IsFree(room)) continue;
            space.Take(room);
            return new TextEntity(layer, middle, height, text, Anchor.Middle);
        }

        return null;
    }
}
