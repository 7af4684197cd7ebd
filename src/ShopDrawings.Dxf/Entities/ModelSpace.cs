using System.Diagnostics;
using System.Runtime.InteropServices;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;

namespace ShopDrawings.Dxf;

/// <summary>Says which DXF entities stand for the entities of a drawing, and writes them one after the other.</summary>
internal sealed class ModelSpace(RecordWriter records, LayerTable layers)
{
    // Half a unit of an angle's sixth decimal moves the end of a larger arc, in mm, by more than 5e-5: there a bulge is the better number.
    private const double GreatestArc = 5000;
    private const double SmallestArc = 1e-4;

    private const double Absent = double.NaN;

    private readonly EntityWriter entities = new(records);
    private readonly List<double> vertices = [];

    /// <summary>Writes one entity of the drawing as none (a text with nothing to read), one or several.</summary>
    public void Write(Entity entity)
    {
        var layer = layers.NameOf(entity.Layer);
        switch (entity)
        {
            case ContourEntity { Contour.AsCircle: { } circle }:
                entities.Write(EntityTypes.Circle, layer, [circle.Centre.X, circle.Centre.Y, circle.Radius]);
                break;
            case ContourEntity { Contour.Segments: var segments }:
                Path(layer, segments.AsSpan(), closed: true);
                break;
            case SegmentEntity { Segment: var segment }:
                LineOrArc(layer, segment);
                break;
            case CircleEntity { Centre: var centre, Radius: var radius }:
                entities.Write(EntityTypes.Circle, layer, [centre.X, centre.Y, radius]);
                break;
            case PointEntity { Position: var position }:
                entities.Write(EntityTypes.Place, layer, [position.X, position.Y]);
                break;
            case TextEntity text:
                LineOfText(layer, text);
                break;
            case ArrowEntity { Tip: var tip, Left: var left, Right: var right }:
                entities.Write(EntityTypes.Solid, layer, [tip.X, tip.Y, left.X, left.Y, right.X, right.Y, right.X, right.Y]);
                break;
            case LinearDimension dimension:
                foreach (var part in DimensionGraphics.Of(dimension)) Write(part);
                break;
            default:
                throw new UnreachableException($"{entity.GetType().Name} has no DXF entity.");
        }
    }

    private void LineOrArc(string layer, Segment s)
    {
        if (IsFlat(s) || s.Radius < SmallestArc)
        {
            Line(layer, s);
            return;
        }

        var (centre, radius) = (s.Centre, s.Radius);
        var (from, to) = s.Bulge > 0 ? (s.Start - centre, s.End - centre) : (s.End - centre, s.Start - centre);
        var (start, end) = (Angle.Of(from), Angle.Of(to));

        if (radius > GreatestArc) Path(layer, [s], closed: false);
        else if (!FixedPoint.Same(start, end)) entities.Write(EntityTypes.Arc, layer, [centre.X, centre.Y, radius, start, end]);
        else if (Math.Abs(s.Bulge) > 1) entities.Write(EntityTypes.Circle, layer, [centre.X, centre.Y, radius]);
        else Line(layer, s);        // an arc whose angles are alike would be read as a full circle
    }

    private void Line(string layer, Segment s) => entities.Write(EntityTypes.Line, layer, [s.Start.X, s.Start.Y, s.End.X, s.End.Y]);

    /// <summary>Whether a line says the same: the middle is off the chord by less than two equal lengths may differ.</summary>
    public static bool IsFlat(Segment s) => s.IsLine || Math.Abs(s.Bulge) * s.Start.DistanceTo(s.End) / 2 <= Tolerance.Length;

    private void Path(string layer, ReadOnlySpan<Segment> segments, bool closed)
    {
        var flag = closed ? 1.0 : 0.0;
        PolylineVertices.Collect(segments, closed, records.InUnits, vertices);
        if (!records.IsR12)
        {
            vertices.InsertRange(0, [vertices.Count / PolylineVertices.Numbers, flag]);
            entities.Write(EntityTypes.LwPolyline, layer, CollectionsMarshal.AsSpan(vertices));
            return;
        }

        entities.Write(EntityTypes.Polyline, layer, [1, 0, 0, flag]);
        for (var rest = CollectionsMarshal.AsSpan(vertices); !rest.IsEmpty; rest = rest[PolylineVertices.Numbers..])
            entities.Write(EntityTypes.Vertex, layer, rest[..PolylineVertices.Numbers]);
        entities.Write(EntityTypes.SequenceEnd, layer, []);
    }

    private void LineOfText(string layer, TextEntity text)
    {
        var line = TextFit.Fit(text.Text, records.IsR12);
        if (line.Length == 0) return;

        // 72: 0 left, 1 centre, 2 right; 73: 0 base line, 2 middle of the capitals. Both points, since readers differ in which they take.
        var (x, y) = text.Position;
        var (horizontal, vertical) = text.Anchor switch
        {
            Anchor.BaseLeft => (0, 0),
            Anchor.BaseCentre => (1, 0),
            Anchor.BaseRight => (2, 0),
            Anchor.Middle => (1, 2),
            _ => throw new UnreachableException($"Anchor {text.Anchor}."),
        };
        var (alignX, alignY) = text.Anchor == Anchor.BaseLeft ? (Absent, Absent) : (x, y);
        entities.Write(EntityTypes.LineOfText, layer,
            [x, y, text.Height, Angle.Normal(text.AngleDegrees), horizontal, alignX, alignY, vertical], line, RecordWriter.StandardName);
    }
}
