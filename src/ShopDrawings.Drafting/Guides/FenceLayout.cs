using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>Lays fences along the edges of a plate, and their tabs clear of holes and joints. Lengths in mm, in the plate's frame.</summary>
/// <param name="settings">What guides are made of.</param>
/// <param name="name">The guide's name.</param>
/// <param name="stand">How far fences stand down below the plate.</param>
internal sealed class FenceLayout(GuideSettings settings, string name, double stand)
{
    /// <summary>What the plate reaches beyond the slots, so that they stay closed: common practice, no source.</summary>
    public const double Lip = 15;

    // From a fence to the plate's end; from a fence to the other at a corner, room for chips; wood between a slot and a hole or a joint; the widest and the narrowest tab; a tab for this much of a fence; and a fence with one alone.
    private const double End = 5, Corner = 8, Web = 4, Widest = 40, Narrowest = 12, TabEvery = 150, Short = 80;

    private const int Most = 20;

    // A hair more than the cutter, so that it can go into the hollow.
    private const double Hair = 0.05;

    /// <summary>Where slots of an edge may be.</summary>
    public static Box2 Strip(GuideEdge edge, Point2 plate, GuideSettings settings) => edge.Box(0, edge.IsUpright ? plate.Y : plate.X, Width(settings));

    /// <summary>What fence and lip take beyond the edge.</summary>
    public static double Beyond(GuideSettings settings) => Width(settings) + Lip;

    private static double Width(GuideSettings settings) => settings.Board.Thickness.Value + settings.Fit;

    /// <summary>The stretch of a plate along an edge, up to the panel's other fenced edge where there is one.</summary>
    public static (double From, double To) Along(GuideEdge edge, Point2 plate, IEnumerable<GuideEdge> edges)
    {
        var (from, to) = (0.0, edge.IsUpright ? plate.Y : plate.X);
        foreach (var other in edges.Where(e => e.IsUpright != edge.IsUpright))
            if (other.Towards.X + other.Towards.Y > 0) to = Math.Min(to, other.At);
            else from = Math.Max(from, other.At);
        return (from, to);
    }

    /// <summary>The fences of a plate. An edge where no tab finds room has none.</summary>
    /// <param name="plate">The plate's size.</param>
    /// <param name="edges">The edges that get fences, at most one upright and one level.</param>
    /// <param name="holes">The plate's holes, by centre and radius.</param>
    /// <param name="joints">Boxes round its joints.</param>
    public ImmutableArray<GuideFence> Of(Point2 plate, ImmutableArray<GuideEdge> edges, ImmutableArray<(Point2 At, double Radius)> holes, ImmutableArray<Box2> joints)
    {
        var fences = ImmutableArray.CreateBuilder<GuideFence>();
        foreach (var edge in edges)
        {
            var (from, to) = Along(edge, plate, edges);
            var length = edge.IsUpright ? plate.Y : plate.X;
            (from, to) = (from + (from > 0 ? Corner : End), to - (to < length ? Corner : End));
            var height = stand + settings.Board.Thickness.Value;
            var count = Enumerable.Range(1, Most).FirstOrDefault(n => settings.Machine.Holds((to - from) / n, height), Most);
            // As long as they can be, so that one lies across the joint of two pieces of the plate, unless the last would be a stub.
            var longest = settings.Machine.Bed is { } bed ? bed.X - 2 * settings.Machine.OutlineTool : to - from;
            var each = count > 1 && to - from - (count - 1) * longest >= Short ? longest : (to - from) / count;
            for (var i = 0; i < count; i++)
            {
                var (start, end) = (from + each * i + (i > 0 ? 1 : 0), i + 1 < count ? from + each * (i + 1) - 1 : to);
                if (Fence(edge, start, end, fences.Count + 1, holes, joints) is { } fence) fences.Add(fence);
            }
        }

        return fences.ToImmutable();
    }

    private GuideFence? Fence(GuideEdge edge, double from, double to, int number, ImmutableArray<(Point2 At, double Radius)> holes, ImmutableArray<Box2> joints)
    {
        var length = to - from;
        var hollow = settings.Machine.Kind == MachineKind.Router ? 2 * (settings.CutterRadius() + Hair) : 0;
        var count = length < Short ? 1 : 1 + (int)Math.Ceiling(length / TabEvery);
        // Narrower ones where not all of the wide find room.
        var tabs = new[] { length / (count == 1 ? 2 : 5), length / 5, Narrowest }.Select(w => Tabs(Math.Clamp(w, Narrowest, Widest))).MaxBy(t => t.Length);
        if (tabs.IsDefaultOrEmpty) return null;

        var id = FormattableString.Invariant($"{name}/fence-{number}");
        var board = settings.Board.Thickness;
        var outline = Outline(length, board.Value, [.. tabs.Select(t => (t.From - from, t.To - from))], hollow);
        var panel = Panel.Rectangular(id, settings.Board, Size.Constant(length), Size.Constant(stand) + board).WithOutline(outline);
        return new GuideFence(panel, edge, from, to, tabs, [.. tabs.Select(t => Slot(edge, t))]);

        ImmutableArray<(double From, double To)> Tabs(double tab)
        {
            var inset = tab / 2 + hollow + 4;
            if (length < 2 * inset) return [];
            var share = count == 1 ? 0 : (length - 2 * inset) / (count - 1);
            var slack = count == 1 ? length / 2 - inset : Math.Max(0, share / 2 - tab / 2 - hollow - 2);
            return
            [
                .. Enumerable.Range(0, count).Select(i => count == 1 ? from + length / 2 : from + inset + i * share)
                    .Select(ideal => PlateJoints.Nearest(ideal, Math.Max(from + inset, ideal - slack), Math.Min(to - inset, ideal + slack), m => IsFree(m, tab)))
                    .OfType<double>().Select(m => (m - tab / 2, m + tab / 2)),
            ];
        }

        bool IsFree(double middle, double tab)
        {
            var box = Slot(edge, (middle - tab / 2, middle + tab / 2)).Grown(Web);
            return holes.All(h => new Point2(Math.Clamp(h.At.X, box.Min.X, box.Max.X), Math.Clamp(h.At.Y, box.Min.Y, box.Max.Y)).DistanceTo(h.At) >= h.Radius)
                && joints.All(j => j.Min.X >= box.Max.X || j.Max.X <= box.Min.X || j.Min.Y >= box.Max.Y || j.Max.Y <= box.Min.Y);
        }
    }

    // Its inner wall lies in the plane of the panel's edge; its ends are free by the round corners the cutter leaves.
    private Box2 Slot(GuideEdge edge, (double From, double To) tab)
    {
        var free = settings.Fit / 2 + settings.CutterRadius(Width(settings));
        return edge.Box(tab.From - free, tab.To + free, Width(settings));
    }

    // The shoulder beside a tab is hollowed by the cutter, so that it comes to lie on the plate.
    private Contour Outline(double length, double board, ImmutableArray<(double From, double To)> tabs, double hollow)
    {
        List<Segment> segments = [new(new(0, 0), new(length, 0)), new(new(length, 0), new(length, stand))];
        foreach (var (from, to) in tabs.Reverse())
        {
            Go(new(to + hollow, stand));
            if (hollow > 0) segments.Add(new(new(to + hollow, stand), new(to, stand), -1));
            Go(new(to, stand + board));
            Go(new(from, stand + board));
            Go(new(from, stand));
            if (hollow > 0) segments.Add(new(new(from, stand), new(from - hollow, stand), -1));
        }

        Go(new(0, stand));
        Go(new(0, 0));
        return Contour.FromSegments(segments);

        void Go(Point2 next)
        {
            if (segments[^1].End.DistanceTo(next) > Tolerance.Length) segments.Add(new(segments[^1].End, next));
        }
    }
}
