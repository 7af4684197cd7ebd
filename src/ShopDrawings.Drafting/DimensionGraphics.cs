using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>Takes a dimension apart into lines, arrows and text, the same for every exporter (ISO 129-1, sizes from memory).</summary>
public static class DimensionGraphics
{
    // Relative to the lettering height: gap at the object, reach past the dimension line, arrow length and half width, gap under the text.
    private const double ObjectGap = 0.4;
    private const double Overrun = 0.7;
    private const double ArrowLength = 0.9;
    private const double ArrowHalfWidth = 0.16;
    private const double TextGap = 0.35;

    /// <summary>The lines, arrows and text that show a dimension.</summary>
    public static IEnumerable<Entity> Of(LinearDimension dimension)
    {
        var height = dimension.Height;
        var (along, across) = dimension.Upright ? (new Point2(0, 1), new Point2(-1, 0)) : (new Point2(1, 0), new Point2(0, 1));
        Point2 Foot(Point2 measured) => measured + across * (dimension.Line - measured).Dot(across);
        var (from, to) = (dimension.To - dimension.From).Dot(along) < 0 ? (dimension.To, dimension.From) : (dimension.From, dimension.To);
        var (first, second) = (Foot(from), Foot(to));

        foreach (var (measured, foot) in new[] { (from, first), (to, second) })
        {
            var reach = (foot - measured).Dot(across);
            if (Math.Abs(reach) <= ObjectGap * height) continue;
            var outwards = across * Math.Sign(reach);
            yield return new SegmentEntity(dimension.Layer, new Segment(measured + outwards * (ObjectGap * height), foot + outwards * (Overrun * height)));
        }

        // Arrows go outside where there is no room for both between the extension lines.
        var inside = dimension.Measured >= 3 * ArrowLength * height;
        var tail = along * (2 * ArrowLength * height);
        yield return new SegmentEntity(dimension.Layer, inside ? new Segment(first, second) : new Segment(first - tail, second + tail));
        yield return Arrow(first, inside ? along * -1 : along);
        yield return Arrow(second, inside ? along : along * -1);

        // A text wider than the room between the extension lines stands above their ends.
        var middle = (first + second) * 0.5;
        var isWide = Lettering.Width(dimension.Text, height) + 2 * TextGap * height > dimension.Measured;
        var lift = isWide && (first - from).Dot(across) >= 0 ? Overrun + TextGap : TextGap;
        yield return new TextEntity(dimension.Layer, middle + across * (lift * height), height, dimension.Text, Anchor.BaseCentre, dimension.Upright ? 90 : 0);

        ArrowEntity Arrow(Point2 tip, Point2 direction)
        {
            var back = tip - direction * (ArrowLength * height);
            var side = direction.Left * (ArrowHalfWidth * height);
            return new ArrowEntity(dimension.Layer, tip, back + side, back - side);
        }
    }
}
