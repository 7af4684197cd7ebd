using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>How a template lies in the frame of its guide's plate, seen on the plate's inside face: turned by quarters anticlockwise, then moved.</summary>
/// <param name="Quarters">Quarter turns, 0 or 1.</param>
/// <param name="Shift">Where the crossing of lines A and B comes to lie, in mm.</param>
internal readonly record struct GuideLie(int Quarters, Point2 Shift)
{
    /// <summary>Where a direction of the template points.</summary>
    public Point2 Turned(Point2 direction) => Quarters == 1 ? direction.Left : direction;

    /// <summary>Where a point of the template lies on the plate, in mm.</summary>
    public Point2 Of(Point2 p) => Turned(p) + Shift;
}

/// <summary>A hole of a guide.</summary>
/// <param name="Number">Its number, from 1.</param>
/// <param name="At">The centre in the plate's frame, in mm.</param>
/// <param name="Bush">The bush in it, or nothing.</param>
/// <param name="Diameter">Its own diameter in mm: that of the bush, or of the bit and its clearance.</param>
/// <param name="Drilled">What is drilled through it: first what the guide leads, then what follows by hand on the same centre.</param>
internal sealed record GuideHole(int Number, Point2 At, GuideBush? Bush, double Diameter, ImmutableArray<TemplateHole> Drilled)
{
    /// <summary>The bit it leads.</summary>
    public double Bit => Drilled[0].Diameter;
}

/// <summary>An edge of the panel at a guide, in the plate's frame: x, or y, is this number on it.</summary>
/// <param name="Towards">Direction from the panel to the edge and beyond, of length 1, along an axis.</param>
/// <param name="At">The coordinate of the edge's plane, in mm.</param>
internal readonly record struct GuideEdge(Point2 Towards, double At)
{
    /// <summary>Whether the edge runs along y.</summary>
    public bool IsUpright => Math.Abs(Towards.X) > 0.5;

    /// <summary>The point of the plate at a distance along the edge, and one beyond the edge, in mm.</summary>
    public Point2 Point(double along, double beyond)
    {
        var across = At + (Towards.X + Towards.Y) * beyond;
        return IsUpright ? new(across, along) : new(along, across);
    }

    /// <summary>The box between two distances along the edge, from its plane outwards.</summary>
    public Box2 Box(double from, double to, double beyond) => Box2.Around([Point(from, 0), Point(to, beyond)]);
}

/// <summary>A fence: an upright strip with tabs through slots of the plate; its inner face lies in the plane of the panel's edge. Lengths in mm.</summary>
/// <param name="Panel">The strip: x along the edge, y up to the tabs.</param>
/// <param name="Edge">The edge it lies against.</param>
/// <param name="From">Where it begins along the edge, in the plate's frame.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Tabs">The tabs along the edge, in the plate's frame.</param>
/// <param name="Slots">Their slots in the plate.</param>
internal sealed record GuideFence(Panel Panel, GuideEdge Edge, double From, double To, ImmutableArray<(double From, double To)> Tabs, ImmutableArray<Box2> Slots);

/// <summary>A line of engraved words.</summary>
/// <param name="Face">The face it stands on.</param>
/// <param name="Text">The words.</param>
/// <param name="Strokes">Their strokes in the part's frame, in mm.</param>
internal sealed record GuideWord(Surface Face, string Text, ImmutableArray<ImmutableArray<Point2>> Strokes);

/// <summary>A part of a guide that is cut out by itself: the plate or a piece of it, or a fence.</summary>
/// <param name="Panel">The part.</param>
/// <param name="Corner">Where its origin lies in the plate's frame, in mm; of a fence nowhere.</param>
/// <param name="Words">What is engraved in it beside its marks.</param>
internal sealed record GuidePart(Panel Panel, Point2? Corner, ImmutableArray<GuideWord> Words);

/// <summary>A drill guide: a plate with holes, and fences for the edges of the panels it is laid on.</summary>
/// <param name="Template">What is drilled, and where.</param>
/// <param name="Lie">How the template lies on the plate.</param>
/// <param name="Plate">The whole plate, before it is cut in pieces; the inside face lies away from the work.</param>
/// <param name="Holes">Its holes.</param>
/// <param name="Edges">The panel's edges that lie alike at every place and are on the plate, with fences or without.</param>
/// <param name="Fences">The fences.</param>
/// <param name="Parts">All that is cut out: the plate, or its pieces, then the fences.</param>
/// <param name="Stand">How far fences stand down below the plate, in mm; 0 where there are none.</param>
internal sealed record Guide(
    Template Template, GuideLie Lie, Panel Plate, ImmutableArray<GuideHole> Holes, ImmutableArray<GuideEdge> Edges, ImmutableArray<GuideFence> Fences, ImmutableArray<GuidePart> Parts, double Stand)
{
    /// <summary>What it is called.</summary>
    public string Name => Template.Name;

    /// <summary>The plate, or the pieces it is put together from.</summary>
    public IEnumerable<GuidePart> Pieces => Parts.Where(p => p.Corner is not null);

    /// <summary>Setting of the depth stop from the plate's upper face, in mm, or nothing for a hole that goes through.</summary>
    public double? Stop(TemplateHole hole) => hole.Depth + Plate.Thickness.Value;

    /// <summary>The edges of a place's panel that the fences lie against.</summary>
    public IEnumerable<Surface> FencedEdges(TemplatePlace place)
    {
        var lie = Lie;
        return Fences.Select(f => f.Edge).Distinct().Select(e => place.Edges.First(p => (lie.Turned(p.Line.Towards) - e.Towards).Length < 0.5).Edge);
    }
}
