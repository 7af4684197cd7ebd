using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>How a place is turned to lie as its template is printed: first mirrored left to right where it is, then turned by quarters anticlockwise.</summary>
/// <param name="Quarters">Quarter turns, 0 to 3.</param>
/// <param name="IsMirrored">Whether the mirrored version is the one to use.</param>
internal readonly record struct TemplateTurn(int Quarters, bool IsMirrored)
{
    /// <summary>All eight, those that need no mirrored version first.</summary>
    public static ImmutableArray<TemplateTurn> All { get; } =
        [.. from isMirrored in new[] { false, true } from quarters in Enumerable.Range(0, 4) select new TemplateTurn(quarters, isMirrored)];

    /// <summary>Where a point, or a direction, comes to lie.</summary>
    public Point2 Of(Point2 p)
    {
        if (IsMirrored) p = p with { X = -p.X };
        for (var i = 0; i < Quarters; i++) p = p.Left;
        return p;
    }
}

/// <summary>A hole of a template: its centre in the template's frame, diameter and depth in mm, no depth where it goes through.</summary>
/// <param name="At">The centre.</param>
/// <param name="Diameter">The bit.</param>
/// <param name="Depth">Depth, or nothing.</param>
/// <param name="IsSunk">Whether it is the cone for a screw's head.</param>
internal sealed record TemplateHole(Point2 At, double Diameter, double? Depth, bool IsSunk);

/// <summary>
/// What is marked through a template, seen by someone who looks at the face. The origin is where its lines A (upright) and B (level) cross:
/// the leftmost and the lowest centre lie on them.
/// </summary>
/// <param name="Holes">Holes to prick and drill, at least one.</param>
/// <param name="Openings">Edges of openings.</param>
/// <param name="Lines">Lines to scribe; a centre is a line without length.</param>
internal sealed record TemplatePattern(ImmutableArray<TemplateHole> Holes, ImmutableArray<Contour> Openings, ImmutableArray<(Point2 From, Point2 To)> Lines)
{
    /// <summary>The box around all centres, openings and lines.</summary>
    public Box2 Bounds => Box2.Around([.. Holes.Select(h => h.At), .. Openings.SelectMany(o => new[] { o.Bounds.Min, o.Bounds.Max }), .. Lines.SelectMany(l => new[] { l.From, l.To })]);

    /// <summary>The leftmost and the lowest centre of its holes.</summary>
    public Point2 Corner => Box2.Around(Holes.Select(h => h.At)).Min;

    /// <summary>The same pattern elsewhere.</summary>
    public TemplatePattern Mapped(Func<Point2, Point2> map, bool mirrors) => new(
        [.. Holes.Select(h => h with { At = map(h.At) })], [.. Openings.Select(o => o.Mapped(map, mirrors))], [.. Lines.Select(l => (map(l.From), map(l.To)))]);

    /// <summary>All of it as a text by which equal patterns are found, whatever the order of their parts.</summary>
    public string Key()
    {
        static string Ends(Point2 a, Point2 b) => string.Join(" ", new[] { PanelTurn.Key(a), PanelTurn.Key(b) }.Order(StringComparer.Ordinal));
        static string N(double? v) => v is { } value ? PanelTurn.Key(value) : "through";
        return string.Join('\n', Holes.Select(h => $"hole {PanelTurn.Key(h.At)} {N(h.Diameter)} {N(h.Depth)} {h.IsSunk}")
            .Concat(Lines.Select(l => $"line {Ends(l.From, l.To)}"))
            .Concat(Openings.Select(o => "opening " + string.Join(" ", o.Segments.Select(s => $"{Ends(s.Start, s.End)}~{PanelTurn.Key(s.Middle)}").Order(StringComparer.Ordinal))))
            .Order(StringComparer.Ordinal));
    }
}

/// <summary>An edge of the panel as it lies at a template: it runs square to a direction, this far along it from the crossing of lines A and B.</summary>
/// <param name="Towards">Direction to the edge, of length 1, along an axis.</param>
/// <param name="Distance">In mm.</param>
internal readonly record struct TemplateEdge(Point2 Towards, double Distance)
{
    /// <summary>As a text by which equal ones are found.</summary>
    public string Key => $"{PanelTurn.Key(Towards)} {PanelTurn.Key(Distance)}";
}

/// <summary>One place a template serves.</summary>
/// <param name="Panel">The panel.</param>
/// <param name="Face">The face it is laid on.</param>
/// <param name="Origin">What the holes are for: the id of the joint, the hardware, or the panel itself.</param>
/// <param name="Turn">How the place is turned to lie as printed.</param>
/// <param name="Offset">Where lines A and B cross before they become the origin.</param>
/// <param name="Bores">The bores of the panel that are marked here.</param>
internal sealed record TemplatePlace(Panel Panel, Surface Face, string Origin, TemplateTurn Turn, Point2 Offset, ImmutableArray<Bore> Bores)
{
    /// <summary>The panel's edges as they lie at the template, in the order of <see cref="Surfaces.Edges"/>.</summary>
    public ImmutableArray<(Surface Edge, TemplateEdge Line)> Edges =>
        [.. Surfaces.Edges.Select(e =>
        {
            var outwards = e.Into() * -1;
            var towards = Turn.Of(View(Face, new Point2(outwards.X, outwards.Y)));
            var corner = e is Surface.Start or Surface.Near ? default : new Point2(Panel.Length.Value, Panel.Width.Value);
            return (e, new TemplateEdge(towards, (Turn.Of(View(Face, corner)) - Offset).Dot(towards)));
        })];

    /// <summary>The edge the printed arrow, which points up, points to.</summary>
    public Surface ArrowTo => Edges.First(e => e.Line.Towards.Y > 0.5).Edge;

    /// <summary>The nearer edge beside line A, and how far the line is from it.</summary>
    public (Surface Edge, double Distance) LineA => Nearer(e => Math.Abs(e.Towards.X) > 0.5);

    /// <summary>The nearer edge above or below line B, and how far the line is from it.</summary>
    public (Surface Edge, double Distance) LineB => Nearer(e => Math.Abs(e.Towards.Y) > 0.5);

    /// <summary>A face as someone sees it who looks at it: the outside face shows the panel's x to the left.</summary>
    public static Point2 View(Surface face, Point2 p) => face == Surface.Outside ? p with { X = -p.X } : p;

    private (Surface Edge, double Distance) Nearer(Func<TemplateEdge, bool> isBeside) =>
        Edges.Where(e => isBeside(e.Line)).Select(e => (e.Edge, e.Line.Distance)).OrderBy(e => Math.Round(e.Distance, 4)).First();
}

/// <summary>A template and all places it serves, at least one; the first is the one it is printed for.</summary>
/// <param name="Name">What it is for, unique: <c>cup-35-plate</c>.</param>
/// <param name="Pattern">What is marked through it.</param>
/// <param name="Places">Where.</param>
internal sealed record Template(string Name, TemplatePattern Pattern, ImmutableArray<TemplatePlace> Places)
{
    /// <summary>How far from the pattern an edge of the panel may be to be on the template, in mm.</summary>
    public const double Reach = 100;

    /// <summary>Whether a version that is mirrored left to right is needed too.</summary>
    public bool HasMirror => Places.Any(p => p.Turn.IsMirrored);

    /// <summary>The edges that lie alike at every place and near enough to be on the paper; none where a panel is no rectangle.</summary>
    public ImmutableArray<TemplateEdge> Edges =>
        [.. EdgesNear(Places[0], Pattern).Where(e => Places.All(p => EdgesNear(p, Pattern).Any(o => o.Key == e.Key)))];

    /// <summary>The edges of a place that are near enough to its pattern.</summary>
    public static IEnumerable<TemplateEdge> EdgesNear(TemplatePlace place, TemplatePattern pattern)
    {
        var bounds = pattern.Bounds;
        return !place.Panel.IsRectangular ? [] : place.Edges.Select(e => e.Line).Where(e =>
        {
            var side = e.Towards.X + e.Towards.Y > 0 ? bounds.Max : bounds.Min;
            return e.Distance - side.Dot(e.Towards) is >= 0 and <= Reach;
        });
    }
}
