using global::Svg;
using global::Svg.Pathing;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;

namespace ShopDrawings.Svg;

/// <summary>The SVG elements that draw an entity.</summary>
internal static class SvgShapes
{
    /// <summary>One element for most entities, several for a dimension or a leader, none for a blank text or a hatch without lines.</summary>
    public static IEnumerable<SvgElement> Of(Entity entity, Pen pen, SvgPlane plane) => entity switch
    {
        ContourEntity { Contour.AsCircle: { } circle } => [Circle(circle.Centre, circle.Radius, plane)],
        ContourEntity contour => [Outline(contour.Contour, plane)],
        PathEntity path => [Way(path.Path, plane)],
        CircleEntity circle => [Circle(circle.Centre, circle.Radius, plane)],
        SegmentEntity { Segment.IsLine: true } line => [Line(line.Segment, plane)],
        SegmentEntity arc => [Arc(arc.Segment, plane)],
        PointEntity point => [Plus(point.Position, plane)],
        ArrowEntity arrow => [Arrow(arrow, pen, plane)],
        TextEntity text => string.IsNullOrWhiteSpace(text.Text) ? [] : [SvgLettering.Of(text, pen, plane)],
        EllipseEntity ellipse => [Ellipse(ellipse, plane)],
        HatchEntity { Pattern: { } pattern } hatch => Lines(hatch.Lines(pattern), plane),
        HatchEntity hatch => [Filled(hatch, pen, plane)],
        LeaderEntity leader => DimensionGraphics.Of(leader).SelectMany(part => Of(part, pen, plane)),
        Dimension dimension => DimensionGraphics.Of(dimension).SelectMany(part => Of(part, pen, plane)),
        _ => throw new ArgumentException($"SVG cannot draw a {entity.GetType().Name}.", nameof(entity)),
    };

    /// <summary>Fills an element with the pen's colour instead of drawing round it.</summary>
    public static void Fill(SvgElement element, Pen pen)
    {
        element.CustomAttributes["fill"] = pen.Colour;
        element.CustomAttributes["stroke"] = "none";
    }

    private static SvgCircle Circle(Point2 centre, double radius, SvgPlane plane)
    {
        var at = plane.Map(centre);
        return new SvgCircle { CenterX = at.X, CenterY = at.Y, Radius = SvgPlane.Number(radius) };
    }

    private static SvgLine Line(Segment line, SvgPlane plane)
    {
        var (start, end) = (plane.Map(line.Start), plane.Map(line.End));
        return new SvgLine { StartX = start.X, StartY = start.Y, EndX = end.X, EndY = end.Y };
    }

    // One element for all: the package takes its time over each.
    private static SvgElement[] Lines(IEnumerable<Segment> lines, SvgPlane plane)
    {
        var path = new SvgPathSegmentList();
        foreach (var line in lines)
        {
            path.Add(new SvgMoveToSegment(false, plane.Map(line.Start)));
            path.Add(new SvgLineSegment(false, plane.Map(line.End)));
        }

        return path.Count == 0 ? [] : [new SvgPath { PathData = path }];
    }

    private static SvgPath Outline(Contour contour, SvgPlane plane)
    {
        var path = new SvgPathSegmentList();
        Append(path, contour, plane);
        return new SvgPath { PathData = path };
    }

    private static SvgPath Filled(HatchEntity hatch, Pen pen, SvgPlane plane)
    {
        var path = new SvgPathSegmentList();
        foreach (var contour in hatch.Islands.Prepend(hatch.Outline)) Append(path, contour, plane);
        var filled = new SvgPath { PathData = path };
        filled.CustomAttributes["fill-rule"] = "evenodd";
        Fill(filled, pen);
        return filled;
    }

    private static void Append(SvgPathSegmentList path, Contour contour, SvgPlane plane)
    {
        var segments = contour.Segments;
        path.Add(new SvgMoveToSegment(false, plane.Map(segments[0].Start)));
        // A straight last side is what closing the path draws.
        foreach (var segment in segments[^1].IsLine ? segments[..^1] : segments) Append(path, segment, plane);
        path.Add(new SvgClosePathSegment(false));
    }

    // In quarters, for the reason given at arcs.
    private static SvgPath Ellipse(EllipseEntity ellipse, SvgPlane plane)
    {
        var path = new SvgPathSegmentList { new SvgMoveToSegment(false, plane.Map(ellipse.At(ellipse.StartDegrees))) };
        var pieces = Math.Max(1, (int)Math.Ceiling((ellipse.EndDegrees - ellipse.StartDegrees) / 90));
        var (major, tilt) = (ellipse.Major.Length, -Math.Atan2(ellipse.Major.Y, ellipse.Major.X) * (180 / Math.PI));
        for (var i = 1; i <= pieces; i++)
        {
            var end = ellipse.At(ellipse.StartDegrees + (ellipse.EndDegrees - ellipse.StartDegrees) * i / pieces);
            path.Add(new SvgArcSegment(SvgPlane.Number(major), SvgPlane.Number(major * ellipse.Ratio), SvgPlane.Number(tilt), SvgArcSize.Small, SvgArcSweep.Negative, false, plane.Map(end)));
        }

        return new SvgPath { PathData = path };
    }

    private static SvgPath Way(ToolPath way, SvgPlane plane)
    {
        var path = new SvgPathSegmentList { new SvgMoveToSegment(false, plane.Map(way.Segments[0].Start)) };
        foreach (var segment in way.Segments) Append(path, segment, plane);
        if (way.IsClosed) path.Add(new SvgClosePathSegment(false));
        return new SvgPath { PathData = path };
    }

    private static SvgPath Arc(Segment arc, SvgPlane plane)
    {
        var path = new SvgPathSegmentList { new SvgMoveToSegment(false, plane.Map(arc.Start)) };
        Append(path, arc, plane);
        return new SvgPath { PathData = path };
    }

    private static void Append(SvgPathSegmentList path, Segment segment, SvgPlane plane)
    {
        // An arc of ten kilometres and more differs from its chord by less than 0.1 mm over 2.5 m.
        if (segment.IsLine || segment.Radius >= SvgPlane.Limit)
        {
            path.Add(new SvgLineSegment(false, plane.Map(segment.End)));
            return;
        }

        // In pieces of at most a quarter turn: SVG knows an arc by its ends and radius, and a half circle of 50 mm so given
        // bulges 0.2 mm less when rounding makes its radius half a thousandth larger.
        var sweep = segment.SweepRadians;
        var pieces = (int)Math.Ceiling(Math.Abs(sweep) / (Math.PI / 2) - 1e-6);
        var radius = SvgPlane.Number(segment.Radius);
        var (centre, ray) = (segment.Centre, segment.Start - segment.Centre);
        // Anticlockwise looks the same with y down, but there it is the negative direction.
        var direction = sweep > 0 ? SvgArcSweep.Negative : SvgArcSweep.Positive;
        for (var i = 1; i <= pieces; i++)
        {
            var (sin, cos) = Math.SinCos(sweep * i / pieces);
            var end = i == pieces ? segment.End : centre + ray * cos + ray.Left * sin;
            path.Add(new SvgArcSegment(radius, radius, 0, SvgArcSize.Small, direction, false, plane.Map(end)));
        }
    }

    private static SvgPath Plus(Point2 at, SvgPlane plane)
    {
        var (across, up) = (new Point2(Style.PointReach, 0), new Point2(0, Style.PointReach));
        return new SvgPath
        {
            PathData =
            [
                new SvgMoveToSegment(false, plane.Map(at - across)), new SvgLineSegment(false, plane.Map(at + across)),
                new SvgMoveToSegment(false, plane.Map(at - up)), new SvgLineSegment(false, plane.Map(at + up)),
            ],
        };
    }

    private static SvgPath Arrow(ArrowEntity arrow, Pen pen, SvgPlane plane)
    {
        var path = new SvgPath
        {
            PathData =
            [
                new SvgMoveToSegment(false, plane.Map(arrow.Tip)), new SvgLineSegment(false, plane.Map(arrow.Left)),
                new SvgLineSegment(false, plane.Map(arrow.Right)), new SvgClosePathSegment(false),
            ],
        };
        Fill(path, pen);
        return path;
    }
}
