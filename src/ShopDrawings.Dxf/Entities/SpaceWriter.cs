using System.Diagnostics;
using System.Runtime.InteropServices;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;

namespace ShopDrawings.Dxf;

/// <summary>Says which DXF entities stand for the entities of a drawing, and writes them one after the other into model space, paper space or a block.</summary>
internal sealed class SpaceWriter(RecordWriter records, LayerTable layers, BlockTable blocks, DimensionStyleTable styles, PathForm form)
{
    // R12 has no filled areas: lines a pen's width apart, in mm, and no more than a plotter would draw.
    private const double FillSpacing = 0.25;
    private const double MostFillLines = 2000;

    private const double Absent = double.NaN;

    private readonly EntityWriter entities = new(records);
    private readonly List<double> vertices = [];
    private readonly List<Segment> chords = [];
    private bool isInBlock;

    /// <summary>Says where the following entities go; before the first call, into model space.</summary>
    public void Enter(long blockRecord, bool paper = false)
    {
        isInBlock = blockRecord is not (SkeletonHandle.ModelSpaceRecord or SkeletonHandle.PaperSpaceRecord);
        entities.Enter(blockRecord, paper);
    }

    /// <summary>Writes one entity of the drawing as none (a text with nothing to read), one or several.</summary>
    public void Write(Entity entity)
    {
        var layer = layers.NameOf(entity.Layer);
        switch (entity)
        {
            case ContourEntity { Contour.AsCircle: { } circle } when form.ChordTolerance is null:
                entities.Write(EntityTypes.Circle, layer, [circle.Centre.X, circle.Centre.Y, circle.Radius]);
                break;
            case ContourEntity { Contour.Segments: var segments }:
                Path(layer, segments.AsSpan(), closed: true, form.ChordTolerance);
                break;
            case SegmentEntity { Segment: var segment }:
                if (form.ChordTolerance is not null && !ArcGroups.IsFlat(segment)) Path(layer, [segment], closed: false, form.ChordTolerance);
                else LineOrArc(layer, segment);
                break;
            case PathEntity { Path: var way }:
                Path(layer, way.Segments.AsSpan(), way.IsClosed, form.ChordTolerance);
                break;
            case CircleEntity { Centre: var centre, Radius: var radius }:
                entities.Write(EntityTypes.Circle, layer, [centre.X, centre.Y, radius]);
                break;
            case PointEntity { Position: var position }:
                entities.Write(EntityTypes.Place, layer, [position.X, position.Y]);
                break;
            case TextEntity lettering:
                LineOfText(layer, lettering);
                break;
            case ArrowEntity { Tip: var tip, Left: var left, Right: var right }:
                entities.Write(EntityTypes.Solid, layer, [tip.X, tip.Y, left.X, left.Y, right.X, right.Y, right.X, right.Y]);
                break;
            case EllipseEntity ellipse:
                Ellipse(layer, ellipse);
                break;
            case LeaderEntity leader:
                Leader(layer, leader);
                break;
            case HatchEntity hatch:
                Hatch(layer, hatch);
                break;
            case InsertEntity insert:
                Insert(layer, insert);
                break;
            case Dimension dimension:
                var (type, numbers) = DimensionGroups.Of(dimension, records.IsR12);
                var text = TextFit.Fit(dimension.Text, records.IsAscii);
                entities.Write(type, layer, numbers, blocks.NextDimension(), text.Length > 0 ? text : DimensionGroups.NoText, styles.NameOf(DimensionStyleTable.Of(dimension)));
                break;
            default:
                throw new UnreachableException($"{entity.GetType().Name} has no DXF entity.");
        }
    }

    private void LineOrArc(string layer, Segment s)
    {
        if (ArcGroups.IsFlat(s)) Line(layer, s);
        else if (ArcGroups.Of(s) is var (centre, radius, start, end)) entities.Write(EntityTypes.Arc, layer, [centre.X, centre.Y, radius, start, end]);
        else if (Math.Abs(s.Bulge) <= 1)
        {
            chords.Clear();
            ArcChords.Add(s, ArcGroups.Tolerance, chords);
            foreach (var chord in chords) Line(layer, chord);
        }
        else if (s.Radius <= ArcGroups.GreatestPlain)
        {
            // Its angles are alike.
            entities.Write(EntityTypes.Circle, layer, [s.Centre.X, s.Centre.Y, s.Radius]);
        }
        else
        {
            var half = ArcChords.Part(s, 0.5);
            LineOrArc(layer, half);
            LineOrArc(layer, half with { Start = half.End, End = s.End });
        }
    }

    private void Line(string layer, Segment s) => entities.Write(EntityTypes.Line, layer, [s.Start.X, s.Start.Y, s.End.X, s.End.Y]);

    private void Path(string layer, ReadOnlySpan<Segment> segments, bool closed, double? chordTolerance)
    {
        if (chordTolerance is { } tolerance)
        {
            List<Segment> all = [];
            foreach (var s in segments) ArcChords.Add(s, tolerance, all);
            segments = CollectionsMarshal.AsSpan(all);
        }

        // A POLYLINE in a block without handles has an end without an owner: readers mend that, or lose it.
        if (form.Outlines == DxfOutlines.Pieces || (records.IsR12 && isInBlock))
        {
            for (var i = 0; i < segments.Length; i++)
            {
                // Where the next begins, to the digit.
                var end = closed ? segments[(i + 1) % segments.Length].Start : segments[i].End;
                if (!PolylineVertices.AreSame(segments[i].Start, end, records.Unit)) LineOrArc(layer, segments[i] with { End = end });
            }

            return;
        }

        var flag = closed ? 1.0 : 0.0;
        vertices.Clear();
        vertices.AddRange(0, flag);
        var head = vertices.Count;
        PolylineVertices.Collect(segments, closed, records.Unit, vertices);
        if (!records.IsR12)
        {
            vertices[0] = (vertices.Count - head) / PolylineVertices.Numbers;
            entities.Write(EntityTypes.LwPolyline, layer, CollectionsMarshal.AsSpan(vertices));
            return;
        }

        entities.Write(EntityTypes.Polyline, layer, [1, 0, 0, flag]);
        for (var rest = CollectionsMarshal.AsSpan(vertices)[head..]; !rest.IsEmpty; rest = rest[PolylineVertices.Numbers..])
            entities.Write(EntityTypes.Vertex, layer, rest[..PolylineVertices.Numbers]);
        entities.Write(EntityTypes.SequenceEnd, layer, []);
    }

    private void Ellipse(string layer, EllipseEntity ellipse)
    {
        if (records.IsR12 || form.ChordTolerance is not null)
        {
            Path(layer, [.. ellipse.Arcs(PathForm.EllipseTolerance)], ellipse.IsFull, form.OfEllipses.ChordTolerance);
            return;
        }

        var (centre, major) = (ellipse.Centre, ellipse.Major);
        var start = ellipse.IsFull ? 0 : ellipse.StartDegrees % 360;
        var end = ellipse.IsFull ? 360 : start + ellipse.EndDegrees - ellipse.StartDegrees;
        if (end > 360) end -= 360;
        const double Radian = Math.PI / 180;
        entities.Write(EntityTypes.Ellipse, layer, [centre.X, centre.Y, major.X, major.Y, ellipse.Ratio, start * Radian, end * Radian]);
    }

    private void Leader(string layer, LeaderEntity leader)
    {
        if (records.IsR12)
        {
            foreach (var part in DimensionGraphics.Of(leader)) Write(part);
            return;
        }

        const double Arrow = 1, Straight = 0, WithoutNote = 3;
        entities.Write(EntityTypes.Leader, layer, [Arrow, Straight, WithoutNote, leader.Points.Length, .. leader.Points.SelectMany(p => new[] { p.X, p.Y })], styles.NameOf(DimensionStyleTable.Of(leader)));
    }

    private void Hatch(string layer, HatchEntity hatch)
    {
        if (records.IsR12)
        {
            var fill = new HatchPattern(0, Math.Max(FillSpacing, hatch.Bounds.Height / MostFillLines));
            foreach (var line in hatch.Lines(hatch.Pattern ?? fill)) Line(layer, line);
            return;
        }

        const double Outermost = 1 + 2 + 16, Island = 2;
        List<double> paths = [];
        foreach (var contour in hatch.Islands.Prepend(hatch.Outline))
        {
            vertices.Clear();
            PolylineVertices.Collect(contour.Segments.AsSpan(), closed: true, records.Unit, vertices);
            paths.AddRange(contour == hatch.Outline ? Outermost : Island, 1, 1, vertices.Count / PolylineVertices.Numbers);
            paths.AddRange(vertices);
            paths.Add(0);
        }

        List<double> numbers = [0, 0, 0, 0, 1, hatch.Pattern is null ? 1 : 0, 0, 1 + hatch.Islands.Length, .. paths, 0];
        if (hatch.Pattern is { } pattern)
        {
            var (sin, cos) = Math.SinCos(pattern.AngleDegrees * (Math.PI / 180));
            var angle = Angle.Normal(pattern.AngleDegrees);
            numbers.AddRange(0, angle, pattern.Spacing, 0, 1, angle, pattern.Origin.X, pattern.Origin.Y, -sin * pattern.Spacing, cos * pattern.Spacing, 0, 0);
        }
        else numbers.AddRange(1, Absent, Absent, Absent, Absent, 0);

        entities.Write(EntityTypes.Hatch, layer, CollectionsMarshal.AsSpan(numbers), hatch.Pattern is null ? "SOLID" : "_USER");
    }

    private void Insert(string layer, InsertEntity insert)
    {
        var (x, y) = insert.Position;
        var scale = insert.Scale;
        entities.Write(EntityTypes.Insert, layer, [x, y, scale, scale, scale, Angle.Normal(insert.AngleDegrees)], blocks.NameOf(insert.Block));
    }

    /// <summary>Writes a window of a layout.</summary>
    /// <param name="layer">The layer of its edge.</param>
    /// <param name="window">Where it is on the paper, in mm.</param>
    /// <param name="view">The middle of what it shows, in mm.</param>
    /// <param name="scale">How many mm are one mm on the paper.</param>
    /// <param name="id">Its number: 1 is the paper itself.</param>
    public void Viewport(Layer layer, Box2 window, Point2 view, double scale, int id)
    {
        const double UcsIconShown = 0x8000 + 0x40 + 0x20;
        var (centre, height) = (window.Centre, window.Height);
        entities.Write(EntityTypes.Viewport, layers.NameOf(layer),
        [
            centre.X, centre.Y, window.Width, height, id, id, view.X, view.Y, 0, 0, 10, 10, 10, 10, 0, 0, 1, 0, 0,
            50, 0, 0, height * scale, 0, 0, 1000, UcsIconShown, 0, 1,
        ], "");
    }

    private void LineOfText(string layer, TextEntity text)
    {
        var line = TextFit.Fit(text.Text, records.IsAscii);
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
