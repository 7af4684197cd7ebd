using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>A plane that cuts the assembly; what lies between it and the viewer is taken away.</summary>
/// <param name="Axis">The axis it lies across: 0 x, 1 y, 2 z.</param>
/// <param name="Level">Where, in mm.</param>
internal sealed record CuttingPlane(int Axis, double Level);

/// <summary>
/// One view of an assembly, before the scale: what shows of panels and bought parts, the cut faces of a section with the bores in its plane,
/// extreme positions and centre lines. A bought part is shown as the blocks of room it takes, without what moves it.
/// </summary>
internal sealed class AssemblyView
{
    private static readonly Layer OutlineLayer = new("OUTLINE", Role.Outline, "Edges of panels");
    private static readonly Layer EdgeLayer = new("EDGE", Role.VisibleEdge, "Edges of panels behind the cut, or of a pictorial view");
    private static readonly Layer HardwareLayer = new("HARDWARE", Role.Hardware, "Room bought parts take");
    private static readonly Layer BoreLayer = new("BORE", Role.Bore, "Bores");
    private static readonly Layer HatchLayer = new("HATCH", Role.Hatching, "Cut faces");
    private static readonly Layer PhantomLayer = new("PHANTOM", Role.Phantom, "Open doors, extended shelves and drawers");
    private static readonly Layer FrameLayer = new("DETAIL", Role.Lettering, "Frames of details");
    private static readonly Layer CentreLayer = new("CENTRE", Role.Centre, "Centre lines of screws, dowels and fittings");

    // Bores smaller than this on paper are left out, in mm.
    private const double LeastBore = 1;

    private readonly List<(Panel? Panel, Body Body)> items = [];
    private readonly List<(Panel Panel, Body Body)> cut = [];
    private readonly List<Segment> phantoms = [];
    private readonly List<Segment> centres = [];
    private readonly List<Contour> cutBores = [];
    private readonly Bodies bodies;
    private readonly Func<Panel, bool> isShown;
    private readonly CuttingPlane? plane;
    private readonly Box2? window;
    private readonly HiddenLines hidden;

    /// <summary>A view.</summary>
    /// <param name="bodies">What is looked at.</param>
    /// <param name="projection">From where.</param>
    /// <param name="isShown">Which panels are there; a bought part is there with the panel it is fixed to first.</param>
    /// <param name="plane">Where it is cut, or nothing.</param>
    /// <param name="moved">How far a panel is moved, or nothing where all stand in place; then bought parts are left out.</param>
    public AssemblyView(Bodies bodies, Projection projection, Func<Panel, bool> isShown, CuttingPlane? plane = null, Func<Panel, Point3>? moved = null)
        : this(bodies, projection, isShown, plane, moved, null)
    {
    }

    private AssemblyView(Bodies bodies, Projection projection, Func<Panel, bool> isShown, CuttingPlane? plane, Func<Panel, Point3>? moved, Box2? window)
    {
        (this.bodies, Projection, this.isShown, this.plane, this.window) = (bodies, projection, isShown, plane, window);
        foreach (var (panel, body) in bodies.Panels.Where(b => isShown(b.Panel)))
        {
            if (Windowed(moved is null ? body : body.Moved(moved(panel))) is not { } whole) continue;
            if (Behind(whole) is { } left) items.Add((panel, left));
            if (plane is not null && whole.Bounds.Min.Along(plane.Axis) < plane.Level && whole.Bounds.Max.Along(plane.Axis) > plane.Level) cut.Add((panel, whole));
        }

        if (moved is null)
        {
            foreach (var (_, block) in bodies.Hardware.Where(b => isShown(b.FixedTo)))
                if (Windowed(block) is { } whole && Behind(whole) is { } left) items.Add((null, left));
        }

        if (plane is not null) CutBores(bodies.Panels.Select(b => b.Panel).Where(isShown));
        hidden = new HiddenLines(items.Select(i => i.Body), projection);

        Body? Behind(Body whole) => plane is null ? whole : whole.Beyond(plane.Axis, plane.Level, projection.ToViewer.Along(plane.Axis) < 0);

        Body? Windowed(Body whole)
        {
            if (window is not { } box) return whole;
            var ((left, right), (low, high)) = (projection.Across(box.Min.X, box.Max.X), projection.Upwards(box.Min.Y, box.Max.Y));
            return whole.Beyond(left.Axis, left.Level, true)?.Beyond(right.Axis, right.Level, false)?.Beyond(low.Axis, low.Level, true)?.Beyond(high.Axis, high.Level, false);
        }
    }

    /// <summary>The same view of no more than what lies in a window, before the scale. Only for views along an axis.</summary>
    public AssemblyView Within(Box2 box) => new(bodies, Projection, isShown, plane, null, box);

    /// <summary>The panels it cuts and what they fill of the view, before the scale.</summary>
    public IEnumerable<(Panel Panel, Box2 Box)> Cut => cut.Select(c => (c.Panel, Projection.Map(c.Body.Bounds)));

    /// <summary>From where it is seen.</summary>
    public Projection Projection { get; }

    /// <summary>Where it is cut, or nothing.</summary>
    public CuttingPlane? Plane => plane;

    /// <summary>What is shown, panels moved and cut as they are drawn; nothing as a panel for a bought part.</summary>
    public IReadOnlyList<(Panel? Panel, Body Body)> Items => items;

    /// <summary>The box around all it shows.</summary>
    public Box2 Bounds => window ?? items.Select(i => Projection.Map(i.Body.Bounds)).Concat(phantoms.Select(p => p.Bounds)).Aggregate((a, b) => a.Union(b));

    /// <summary>Whether bores lie in the plane of the section.</summary>
    public bool CutsBores => cutBores.Count > 0;

    /// <summary>Adds an extreme position, before the scale.</summary>
    public void AddPhantom(Segment line) => phantoms.Add(line);

    /// <summary>Adds a centre line, before the scale.</summary>
    public void AddCentre(Segment line) => centres.Add(line);

    /// <summary>The point of a panel that shows and is furthest from any line, before the scale; nothing where none shows.</summary>
    public Point2? Showing(Panel panel, IReadOnlyList<Segment> lines)
    {
        const int Steps = 9;
        (Point2 At, double Clear)? best = null;
        foreach (var (_, body) in items.Where(i => i.Panel == panel))
            foreach (var (axis, isPositive, level, pieces) in body.Surfaces)
            {
                if (!hidden.Faces(axis, isPositive)) continue;
                foreach (var piece in pieces)
                    for (var i = 1; i < Steps; i++)
                        for (var k = 1; k < Steps; k++)
                        {
                            var box = piece.Outline.Bounds;
                            var at = new Point2(box.Min.X + box.Width * i / Steps, box.Min.Y + box.Height * k / Steps);
                            if (!piece.Outline.Contains(at) || piece.Holes.Any(h => h.Contains(at))) continue;
                            var point = Body.InSpace(axis, level, at);
                            var shown = Projection.Map(point);
                            if (Clear(shown, best?.Clear + 1e-6 ?? -1) is { } clear && hidden.Shows(axis, level, point)) best = (shown, clear);
                        }
            }

        return best?.At;

        // The distance to the nearest line, or nothing where that is no further than some distance.
        double? Clear(Point2 at, double least)
        {
            var nearest = double.PositiveInfinity;
            foreach (var line in lines)
            {
                nearest = Math.Min(nearest, line.DistanceTo(at));
                if (nearest <= least) return null;
            }

            return nearest;
        }
    }

    /// <summary>Everything it shows on paper at a scale 1:n, its lower left corner at a point.</summary>
    public IEnumerable<Entity> Draw(int scale, Point2 corner)
    {
        var origin = Bounds.Min;
        Point2 Place(Point2 p) => corner + (p - origin) * (1.0 / scale);
        Segment OnPaper(Segment s) => new(Place(s.Start), Place(s.End), s.Bulge);

        var faces = CutFaces().ToList();
        foreach (var (panel, angle, outline, holes) in faces)
            yield return new HatchEntity(HatchLayer, outline.Mapped(Place, false), [.. holes.Select(h => h.Mapped(Place, false))], new HatchPattern(angle, Spacing(panel.Board.Kind)));
        var edges = faces.SelectMany(f => f.Holes.Prepend(f.Outline)).ToList();
        if (window is null) foreach (var outline in edges) yield return new ContourEntity(OutlineLayer, outline.Mapped(Place, false));
        else foreach (var edge in edges.SelectMany(e => e.Segments).Where(e => !IsOnFrame(e))) yield return new SegmentEntity(OutlineLayer, OnPaper(edge));
        bool IsCutEdge(Segment line) => edges.Exists(e => e.DistanceTo(line.Start) < 1e-3 && e.DistanceTo(line.Middle) < 1e-3 && e.DistanceTo(line.End) < 1e-3);

        var layer = plane is null && Projection != Projection.Isometric ? OutlineLayer : EdgeLayer;
        var (lines, arcs) = hidden.Draw(LeastBore * scale);
        foreach (var (body, line) in lines.Where(l => !IsCutEdge(l.Line) && !IsOnFrame(l.Line))) yield return new SegmentEntity(items[body].Panel is null ? HardwareLayer : layer, OnPaper(line));
        foreach (var arc in arcs.Where(a => !a.IsMouth || IsWithin(a))) yield return Arc(arc, arc.IsMouth ? BoreLayer : layer, scale, Place);
        foreach (var bore in cutBores) yield return new ContourEntity(BoreLayer, bore.Mapped(Place, false));
        foreach (var line in centres) yield return new SegmentEntity(CentreLayer, OnPaper(line));
        foreach (var line in phantoms) yield return new SegmentEntity(PhantomLayer, OnPaper(line));
        if (window is { } frame) yield return new ContourEntity(FrameLayer, Contour.Rectangle(corner.X, corner.Y, corner.X + frame.Width / scale, corner.Y + frame.Height / scale));

        // What a window cuts off has an edge there, which is none.
        bool IsOnFrame(Segment s) => window is { } w && s.IsLine && (Lies(s.Start.X, s.End.X, w.Min.X) || Lies(s.Start.X, s.End.X, w.Max.X) || Lies(s.Start.Y, s.End.Y, w.Min.Y) || Lies(s.Start.Y, s.End.Y, w.Max.Y));
        static bool Lies(double a, double b, double at) => Math.Abs(a - at) < 1e-3 && Math.Abs(b - at) < 1e-3;
        bool IsWithin(VisibleArc arc) => window is not { } w || Projection.Map(Body.InSpace(arc.Axis, arc.Level, arc.Edge.Centre)) is var c && Holds(w.Grown(-arc.Edge.Radius), c);
    }

    private static bool Holds(Box2 box, Point2 p) => p.X >= box.Min.X && p.X <= box.Max.X && p.Y >= box.Min.Y && p.Y <= box.Max.Y;

    /// <summary>The lines that show, before the scale.</summary>
    public ImmutableArray<VisibleLine> Lines() => hidden.Draw(double.PositiveInfinity).Lines;

    // Neighbours are told apart by the direction of the lines, kinds of board by their distance (ISO 128-3, from memory).
    private IEnumerable<(Panel Panel, double Angle, Contour Outline, ImmutableArray<Contour> Holes)> CutFaces()
    {
        if (plane is null) yield break;
        var directions = new List<(Box2 Box, double Angle)>();
        foreach (var (panel, body) in cut)
        {
            var contours = body.CutBy(plane.Axis, plane.Level).Select(p => (Outline: OnView(p.Outline), Holes: p.Holes.Select(OnView).ToImmutableArray())).ToList();
            if (contours.Count == 0) continue;
            var box = contours.Select(c => c.Outline.Bounds).Aggregate((a, b) => a.Union(b)).Grown(0.5);
            var near = directions.Where(d => d.Box.Min.X < box.Max.X && d.Box.Max.X > box.Min.X && d.Box.Min.Y < box.Max.Y && d.Box.Max.Y > box.Min.Y).ToList();
            var angle = new[] { 45.0, 135, 60, 120 }.FirstOrDefault(a => near.TrueForAll(d => d.Angle != a), 45);
            directions.Add((box, angle));
            foreach (var (outline, holes) in contours) yield return (panel, angle, outline, holes);
        }

        Contour OnView(Contour c) => c.Mapped(p => Projection.Map(Body.InSpace(plane.Axis, plane.Level, p)), Mirrors(plane.Axis));
    }

    // Whether the plane's coordinates come out as a mirror image on paper.
    private bool Mirrors(int axis)
    {
        Point2 Direction(Point2 p) => Projection.Map(Body.InSpace(axis, 0, p));
        return Direction(new(1, 0)).Cross(Direction(new(0, 1))) < 0;
    }

    private static double Spacing(BoardKind kind) => kind switch
    {
        BoardKind.Melamine or BoardKind.Particleboard => 1.5,
        BoardKind.Plywood => 1,
        BoardKind.Mdf => 2,
        _ => 0.7,
    };

    // Bores whose axis lies in the plane, to half their radius, as rectangles with a centre line that reaches past both ends.
    private void CutBores(IEnumerable<Panel> panels)
    {
        foreach (var panel in panels)
            foreach (var bore in panel.Features.OfType<Bore>())
            {
                var axis = bore.AxisIn(panel);
                var (from, to) = (panel.Placement!.ToAssembly(axis.From), panel.Placement.ToAssembly(axis.To));
                var (a, b) = (from.Along(plane!.Axis), to.Along(plane.Axis));
                if (Math.Abs(a - b) > Tolerance.Length || Math.Abs(a - plane.Level) > bore.Diameter.Value / 4) continue;
                var (start, end) = (Projection.Map(from), Projection.Map(to));
                // A detail shows those that lie all in it.
                if (window is { } w && !(Holds(w, start) && Holds(w, end))) continue;
                cutBores.Add(Contour.Strip(start, end, bore.Diameter.Value));
                var past = (end - start) * (8 / start.DistanceTo(end));
                var line = Clipped(new Segment(start - past, end + past));
                // A bore through one panel and the one it goes on in make one centre line.
                var other = centres.FindIndex(c => Math.Abs((c.End - c.Start).Cross(end - start)) < 1e-6 && (c.DistanceTo(line.Start) < 0.01 || c.DistanceTo(line.End) < 0.01));
                if (other < 0) centres.Add(line);
                else centres[other] = Both(centres[other], line);
            }

        // Centre lines stop at the frame of a detail; they run along the axes.
        Segment Clipped(Segment s) => window is { } w ? new Segment(Clamped(w, s.Start), Clamped(w, s.End)) : s;
        static Point2 Clamped(Box2 box, Point2 p) => new(Math.Clamp(p.X, box.Min.X, box.Max.X), Math.Clamp(p.Y, box.Min.Y, box.Max.Y));

        static Segment Both(Segment a, Segment b)
        {
            Point2[] ends = [a.Start, a.End, b.Start, b.End];
            var along = a.End - a.Start;
            return new Segment(ends.MinBy(along.Dot), ends.MaxBy(along.Dot));
        }
    }

    private Entity Arc(VisibleArc arc, Layer layer, int scale, Func<Point2, Point2> place)
    {
        Point2 Vector(Point2 p) => Projection.Map(Body.InSpace(arc.Axis, 0, p)) * (1.0 / scale);
        var centre = place(Projection.Map(Body.InSpace(arc.Axis, arc.Level, arc.Edge.Centre)));
        var (a, b) = (Vector(new(arc.Edge.Radius, 0)), Vector(new(0, arc.Edge.Radius)));
        var isWhole = arc.ToDegrees - arc.FromDegrees >= 360;
        if (Math.Abs(a.Dot(b)) < 1e-9 && Math.Abs(a.Length - b.Length) < 1e-9)
        {
            if (isWhole) return new CircleEntity(layer, centre, a.Length);
            Point2 At(double degrees) => centre + a * Math.Cos(degrees * Math.PI / 180) + b * Math.Sin(degrees * Math.PI / 180);
            return new SegmentEntity(layer, new Segment(At(arc.FromDegrees), At(arc.ToDegrees), Math.Tan((arc.ToDegrees - arc.FromDegrees) * Math.PI / 720) * Math.Sign(a.Cross(b))));
        }

        // The axes of the ellipse of two conjugate half diameters: where |a cos t + b sin t| is largest.
        var turn = Math.Atan2(2 * a.Dot(b), a.Dot(a) - b.Dot(b)) / 2;
        var (sin, cos) = Math.SinCos(turn);
        var (major, minor) = (a * cos + b * sin, b * cos - a * sin);
        var isLeft = major.Cross(minor) > 0;
        double Parameter(double degrees) => isLeft ? degrees - turn * 180 / Math.PI : turn * 180 / Math.PI - degrees;
        var (from, to) = isWhole ? (0.0, 360.0) : isLeft ? (Parameter(arc.FromDegrees), Parameter(arc.ToDegrees)) : (Parameter(arc.ToDegrees), Parameter(arc.FromDegrees));
        var whole = Math.Floor(from / 360) * 360;
        return new EllipseEntity(layer, centre, major, minor.Length / major.Length, from - whole, to - whole);
    }
}
