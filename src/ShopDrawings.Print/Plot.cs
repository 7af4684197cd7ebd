using ShopDrawings.Drafting;
using ShopDrawings.Kernel;

namespace ShopDrawings.Print;

/// <summary>Takes a drawing apart into pens, paths and texts, the one way for every printed format.</summary>
internal static class Plot
{
    /// <summary>Numbers from here on, ten kilometres, are not drawn.</summary>
    private const double Limit = 1e7;

    /// <summary>Draws layer after layer.</summary>
    /// <exception cref="ArgumentException">A number of the drawing is not finite, or a coordinate is ten kilometres or more away.</exception>
    public static void Draw(Drawing drawing, Style style, IPlotter plotter)
    {
        foreach (var (layer, entities) in drawing.ByLayer())
        {
            plotter.Use(style.For(layer.Role));
            foreach (var entity in entities) Draw(entity, plotter);
        }
    }

    /// <summary>A number that can be drawn.</summary>
    /// <exception cref="ArgumentException">Not a number, infinite, or not below the limit.</exception>
    public static double Sound(double value) => Math.Abs(value) < Limit
        ? value
        : throw new ArgumentException($"The drawing holds a number that cannot be drawn: {value}.", nameof(value));

    private static Point2 Sound(Point2 point) => new(Sound(point.X), Sound(point.Y));

    private static void Draw(Entity entity, IPlotter plotter)
    {
        switch (entity)
        {
            case ContourEntity { Contour.AsCircle: { } circle }:
                Circle(circle.Centre, circle.Radius, plotter);
                break;
            case ContourEntity contour:
                Trace(contour.Contour.Segments, isClosed: true, plotter);
                plotter.Stroke();
                break;
            case PathEntity path:
                Trace(path.Path.Segments, path.Path.IsClosed, plotter);
                plotter.Stroke();
                break;
            case CircleEntity circle:
                Circle(circle.Centre, circle.Radius, plotter);
                break;
            case SegmentEntity segment:
                Trace([segment.Segment], isClosed: false, plotter);
                plotter.Stroke();
                break;
            case PointEntity point:
                Cross(point.Position, plotter);
                break;
            case ArrowEntity arrow:
                plotter.MoveTo(Sound(arrow.Tip));
                plotter.LineTo(Sound(arrow.Left));
                plotter.LineTo(Sound(arrow.Right));
                plotter.Close();
                plotter.Fill();
                break;
            case TextEntity text:
                Letter(text, plotter);
                break;
            case EllipseEntity ellipse:
                Ellipse(ellipse, plotter);
                break;
            case HatchEntity { Pattern: { } pattern } hatch:
                foreach (var line in hatch.Lines(pattern)) Draw(new SegmentEntity(hatch.Layer, line), plotter);
                break;
            case HatchEntity hatch:
                foreach (var contour in hatch.Islands.Prepend(hatch.Outline)) Trace(contour.Segments, isClosed: true, plotter);
                plotter.Fill();
                break;
            case LeaderEntity leader:
                foreach (var part in DimensionGraphics.Of(leader)) Draw(part, plotter);
                break;
            case Dimension dimension:
                foreach (var part in DimensionGraphics.Of(dimension)) Draw(part, plotter);
                break;
            default:
                throw new ArgumentException($"A {entity.GetType().Name} cannot be printed.", nameof(entity));
        }
    }

    private static void Circle(Point2 centre, double radius, IPlotter plotter)
    {
        var axis = new Point2(Sound(radius), 0);
        centre = Sound(centre);
        plotter.MoveTo(centre + axis);
        // Clockwise, as other programs run round a circle, so that dashes lie as theirs.
        Curves.Arc(plotter, centre, axis, axis.Left, 0, -2 * Math.PI);
        plotter.Close();
        plotter.Stroke();
    }

    private static void Ellipse(EllipseEntity ellipse, IPlotter plotter)
    {
        var (from, to) = (Sound(ellipse.StartDegrees) * (Math.PI / 180), Sound(ellipse.EndDegrees) * (Math.PI / 180));
        var (centre, major) = (Sound(ellipse.Centre), Sound(ellipse.Major));
        plotter.MoveTo(Sound(ellipse.At(ellipse.StartDegrees)));
        Curves.Arc(plotter, centre, major, Sound(major.Left * ellipse.Ratio), from, to);
        plotter.Stroke();
    }

    // Without its last side where that is straight: it is what closing the path draws.
    private static void Trace(IReadOnlyList<Segment> segments, bool isClosed, IPlotter plotter)
    {
        plotter.MoveTo(Sound(segments[0].Start));
        var count = isClosed && segments[^1].IsLine ? segments.Count - 1 : segments.Count;
        for (var i = 0; i < count; i++) Trace(segments[i], plotter);
        if (isClosed) plotter.Close();
    }

    private static void Trace(Segment segment, IPlotter plotter)
    {
        var end = Sound(segment.End);
        // An arc of ten kilometres and more differs from its chord by less than 0.1 mm over 2.5 m.
        if (segment.IsLine || segment.Radius >= Limit)
        {
            plotter.LineTo(end);
            return;
        }

        Sound(segment.Radius);
        var ray = segment.Start - segment.Centre;
        Curves.Arc(plotter, segment.Centre, ray, ray.Left, 0, segment.SweepRadians);
    }

    private static void Cross(Point2 at, IPlotter plotter)
    {
        at = Sound(at);
        foreach (var arm in (ReadOnlySpan<Point2>)[new(Style.PointReach, 0), new(0, -Style.PointReach)])
        {
            plotter.MoveTo(at - arm);
            plotter.LineTo(at + arm);
        }

        plotter.Stroke();
    }

    private static void Letter(TextEntity text, IPlotter plotter)
    {
        if (string.IsNullOrWhiteSpace(text.Text)) return;
        Sound(text.Position);
        Sound(text.Height);
        Sound(text.AngleDegrees);
        plotter.Letter(TextLine.Of(text));
    }
}
