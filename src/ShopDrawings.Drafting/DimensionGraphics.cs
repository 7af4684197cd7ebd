using System.Diagnostics;
using ShopDrawings.Kernel;
using static ShopDrawings.Drafting.DimensionProportions;

namespace ShopDrawings.Drafting;

/// <summary>Takes dimensions and leaders apart into lines, arcs, arrows and text, the same for every exporter.</summary>
public static class DimensionGraphics
{
    /// <summary>The lines, arcs, arrows and the one text that show a dimension.</summary>
    public static IEnumerable<Entity> Of(Dimension dimension) => dimension switch
    {
        LinearDimension { Upright: true } d => Straight(d, d.From, d.To, d.Line, new Point2(0, 1), 90),
        LinearDimension d => Straight(d, d.From, d.To, d.Line, new Point2(1, 0), 0),
        AlignedDimension d => Aligned(d),
        RadiusDimension d => Across(d, d.Centre, d.OnArc, isDiameter: false),
        DiameterDimension d => Across(d, d.Opposite, d.OnCircle, isDiameter: true),
        AngularDimension d => Angular(d),
        OrdinateDimension d => Ordinate(d),
        _ => throw new UnreachableException(dimension.GetType().Name),
    };

    /// <summary>The lines and the arrow of a leader.</summary>
    public static IEnumerable<Entity> Of(LeaderEntity leader)
    {
        for (var i = 1; i < leader.Points.Length; i++) yield return new SegmentEntity(leader.Layer, new Segment(leader.Points[i - 1], leader.Points[i]));
        yield return Arrow(leader.Layer, leader.Height, leader.Points[0], Unit(leader.Points[0] - leader.Points[1]));
    }

    private static IEnumerable<Entity> Aligned(AlignedDimension dimension)
    {
        var along = Readable(Unit(dimension.To - dimension.From));
        return Straight(dimension, dimension.From, dimension.To, dimension.Line, along, Degrees(along));
    }

    private static IEnumerable<Entity> Straight(Dimension dimension, Point2 measuredFrom, Point2 measuredTo, Point2 line, Point2 along, double angle)
    {
        var height = dimension.Height;
        var across = along.Left;
        Point2 Foot(Point2 measured) => measured + across * (line - measured).Dot(across);
        var (from, to) = (measuredTo - measuredFrom).Dot(along) < 0 ? (measuredTo, measuredFrom) : (measuredFrom, measuredTo);
        var (first, second) = (Foot(from), Foot(to));

        foreach (var (measured, foot) in new[] { (from, first), (to, second) })
        {
            var reach = (foot - measured).Dot(across);
            if (Math.Abs(reach) <= ObjectGap * height) continue;
            var outwards = across * (reach < 0 ? -1 : 1);
            yield return new SegmentEntity(dimension.Layer, new Segment(measured + outwards * (ObjectGap * height), foot + outwards * (Overrun * height)));
        }

        var place = DimensionPlace.Of(dimension, Math.Abs(along.X), Math.Abs(along.Y));
        Point2 At(double distance) => first + along * distance;
        foreach (var (start, end) in place.Lines) yield return new SegmentEntity(dimension.Layer, new Segment(At(start), At(end)));
        yield return Arrow(dimension.Layer, height, first, place.HasArrowsInside ? along * -1 : along);
        yield return Arrow(dimension.Layer, height, second, place.HasArrowsInside ? along : along * -1);

        if (dimension.Standard.IsTextInLine)
        {
            yield return new TextEntity(dimension.Layer, At(place.Text), height, dimension.Text, Anchor.Middle);
            yield break;
        }

        // A text wider than the room between the extension lines stands beyond their ends, whichever side they come from.
        var lift = !place.IsWide ? TextGap : (first - from).Dot(across) >= 0 ? Overrun + TextGap : -(Overrun + TextGap + 1);
        yield return new TextEntity(dimension.Layer, At(place.Text) + across * (lift * height), height, dimension.Text, Anchor.BaseCentre, angle);
    }

    // A line from the centre or the far side to the arc, and beyond it where text and arrows find no room inside.
    private static IEnumerable<Entity> Across(Dimension dimension, Point2 start, Point2 end, bool isDiameter)
    {
        var (layer, height) = (dimension.Layer, dimension.Height);
        var outwards = Unit(end - start);
        var width = Lettering.Width(dimension.Text, height);
        var arrows = (isDiameter ? 2 : 1) * ArrowLength * height;
        var inside = start.DistanceTo(end) >= width + 2 * TextGap * height + arrows;
        var tail = 2 * ArrowLength * height;
        if (dimension.Standard.IsTextInLine)
        {
            foreach (var entity in AcrossInLine(dimension, start, end, isDiameter)) yield return entity;
            yield break;
        }

        var last = inside ? end : end + outwards * (tail + width);
        yield return new SegmentEntity(layer, new Segment(isDiameter && !inside ? start - outwards * tail : start, last));
        yield return Arrow(layer, height, end, inside ? outwards : outwards * -1);
        if (isDiameter) yield return Arrow(layer, height, start, inside ? outwards * -1 : outwards);

        var along = Readable(outwards);
        var middle = inside ? (start + end) * 0.5 : last - outwards * (width / 2);
        yield return new TextEntity(layer, middle + along.Left * (TextGap * height), height, dimension.Text, Anchor.BaseCentre, Degrees(along));
    }

    // As a level text in the line, or beyond the arrow outside.
    private static IEnumerable<Entity> AcrossInLine(Dimension dimension, Point2 start, Point2 end, bool isDiameter)
    {
        var (layer, height, outwards) = (dimension.Layer, dimension.Height, Unit(end - start));
        var place = DimensionPlace.Of(dimension, Math.Abs(outwards.X), Math.Abs(outwards.Y));
        Point2 At(double distance) => start + outwards * distance;
        // A radius has no arrow at its centre, and so no tail before it.
        foreach (var (from, to) in place.Lines)
            if (isDiameter || to > 0) yield return new SegmentEntity(layer, new Segment(At(isDiameter ? from : Math.Max(0, from)), At(to)));
        yield return Arrow(layer, height, end, place.HasArrowsInside ? outwards : outwards * -1);
        if (isDiameter) yield return Arrow(layer, height, start, place.HasArrowsInside ? outwards * -1 : outwards);
        yield return new TextEntity(layer, At(place.Text), height, dimension.Text, Anchor.Middle);
    }

    private static IEnumerable<Entity> Angular(AngularDimension dimension)
    {
        var (layer, height, vertex, radius) = (dimension.Layer, dimension.Height, dimension.Vertex, dimension.Radius);
        var (from, to) = (Unit(dimension.From - vertex), Unit(dimension.To - vertex));
        foreach (var (side, measured) in new[] { (from, dimension.From), (to, dimension.To) })
        {
            var reach = radius - vertex.DistanceTo(measured);
            if (Math.Abs(reach) <= ObjectGap * height) continue;
            var outwards = side * (reach < 0 ? -1 : 1);
            yield return new SegmentEntity(layer, new Segment(measured + outwards * (ObjectGap * height), vertex + side * radius + outwards * (Overrun * height)));
        }

        var sweep = dimension.Measured * (Math.PI / 180);
        var (first, second) = (vertex + from * radius, vertex + to * radius);
        var middle = dimension.Middle;
        // The gap for a text in the line, as an angle either side of the middle; where it leaves nothing of the arc, the text stands beside it.
        var gap = dimension.Standard.IsTextInLine ? (Lettering.Width(dimension.Text, height) / 2 + TextGap * height) / radius : 0;
        var isInLine = gap > 0 && 2 * gap + 3 * ArrowLength * height / radius < sweep;
        if (isInLine)
        {
            Point2 Before(Point2 side, double turn) => vertex + (side * Math.Cos(turn) + side.Left * Math.Sin(turn)) * radius;
            yield return new SegmentEntity(layer, new Segment(first, Before(from, sweep / 2 - gap), Math.Tan((sweep / 2 - gap) / 4)));
            yield return new SegmentEntity(layer, new Segment(Before(from, sweep / 2 + gap), second, Math.Tan((sweep / 2 - gap) / 4)));
        }
        else yield return new SegmentEntity(layer, new Segment(first, second, Math.Tan(sweep / 4)));
        var inside = sweep * radius >= 3 * ArrowLength * height;
        if (!inside)
        {
            yield return new SegmentEntity(layer, new Segment(first - from.Left * (2 * ArrowLength * height), first));
            yield return new SegmentEntity(layer, new Segment(second, second + to.Left * (2 * ArrowLength * height)));
        }

        yield return Arrow(layer, height, first, inside ? from.Left * -1 : from.Left);
        yield return Arrow(layer, height, second, inside ? to.Left : to.Left * -1);

        if (isInLine)
        {
            yield return new TextEntity(layer, middle, height, dimension.Text, Anchor.Middle);
            yield break;
        }

        var along = Readable(Unit(middle - vertex).Left * -1);
        yield return new TextEntity(layer, middle + along.Left * (TextGap * height), height, dimension.Text, Anchor.BaseCentre, Degrees(along));
    }

    // The leader leaves the feature square to the axis and turns to its end, where that stands aside, in the last part.
    private static IEnumerable<Entity> Ordinate(OrdinateDimension dimension)
    {
        const double LastPart = 2;
        var (layer, height, feature, end) = (dimension.Layer, dimension.Height, dimension.Feature, dimension.End);
        var axis = dimension.Upright ? new Point2(1, 0) : new Point2(0, 1);
        var length = (end - feature).Dot(axis);
        var sign = length < 0 ? -1 : 1;
        var knee = feature + axis * (sign * Math.Max(Math.Abs(length) - LastPart * height, ObjectGap * height));
        var start = feature + axis * (sign * ObjectGap * height);
        if (start != knee) yield return new SegmentEntity(layer, new Segment(start, knee));
        if (knee != end) yield return new SegmentEntity(layer, new Segment(knee, end));

        var toBaseLine = dimension.Upright ? new Point2(0, -height / 2) : new Point2(height / 2, 0);
        yield return new TextEntity(layer, end + axis * (sign * TextGap * height) + toBaseLine, height, dimension.Text,
            sign > 0 ? Anchor.BaseLeft : Anchor.BaseRight, dimension.Upright ? 0 : 90);
    }

    private static ArrowEntity Arrow(Layer layer, double height, Point2 tip, Point2 direction)
    {
        var back = tip - direction * (ArrowLength * height);
        var side = direction.Left * (ArrowHalfWidth * height);
        return new ArrowEntity(layer, tip, back + side, back - side);
    }

    private static Point2 Unit(Point2 vector) => vector * (1 / vector.Length);

    // Text is read from below or from the right.
    private static Point2 Readable(Point2 along) => along.X < -1e-9 || (along.X < 1e-9 && along.Y < 0) ? along * -1 : along;

    private static double Degrees(Point2 vector) => Math.Atan2(vector.Y, vector.X) * (180 / Math.PI);
}
