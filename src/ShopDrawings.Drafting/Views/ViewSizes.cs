using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>
/// What is worth a dimension in an assembly, read from its panels, bought parts and motions: coordinates along the axes in mm. Panels
/// thinner than 8 mm, backs and linings, bound no opening.
/// </summary>
internal sealed class ViewSizes
{
    private const double Thinnest = 8;

    // A gap beside a front that is wider is no reveal, in mm.
    private const double WidestReveal = 25;

    private readonly Assembly assembly;

    /// <summary>The sizes of an assembly with at least one placed panel.</summary>
    public ViewSizes(Assembly assembly)
    {
        this.assembly = assembly;
        Bodies = new Bodies(assembly);
        Panels = [.. Bodies.Panels.Select(b => b.Panel)];
        var moving = assembly.Motions.SelectMany(m => m.Panels).ToHashSet(StringComparer.Ordinal);
        Fixed = [.. Panels.Where(p => !moving.Contains(p.Id))];
        Doors = [.. assembly.Motions.OfType<Swing>().SelectMany(s => s.Panels).Distinct(StringComparer.Ordinal).Select(assembly.Panel).Where(p => p.Placement is not null)];
        // Of what moves the foremost panel that stands upright across the front.
        Fronts = [.. assembly.Motions.Select(m => m.Panels.Select(assembly.Panel).Where(p => p.Placement is not null && Normal(p) == 1).MinBy(p => Box(p).Min.Y)).OfType<Panel>().Distinct()];
        Whole = Panels.Select(Box).Aggregate((a, b) => a.Union(b));
        Standing = Bodies.Hardware.Aggregate(Whole.Min.Z, (low, b) => Math.Min(low, b.Body.Bounds.Min.Z));
        var uprights = Fixed.Where(p => Normal(p) == 0 && p.Thickness.Value >= Thinnest).ToList();
        Carcass = uprights.Count == 0 ? Whole : uprights.Select(Box).Aggregate((a, b) => a.Union(b));
    }

    /// <summary>What is looked at.</summary>
    public Bodies Bodies { get; }

    /// <summary>All placed panels.</summary>
    public ImmutableArray<Panel> Panels { get; }

    /// <summary>Those that do not move.</summary>
    public ImmutableArray<Panel> Fixed { get; }

    /// <summary>Those that swing.</summary>
    public ImmutableArray<Panel> Doors { get; }

    /// <summary>Doors and fronts of drawers.</summary>
    public ImmutableArray<Panel> Fronts { get; }

    /// <summary>The block around all panels.</summary>
    public Box3 Whole { get; }

    /// <summary>The block around the uprights that do not move.</summary>
    public Box3 Carcass { get; }

    /// <summary>The height it stands at: of the lowest panel, castor or foot.</summary>
    public double Standing { get; }

    /// <summary>The block a panel fills.</summary>
    public static Box3 Box(Panel panel) => panel.Placement!.ToAssembly(panel.Box);

    /// <summary>The axis across a panel's faces: 0 x, 1 y, 2 z.</summary>
    public static int Normal(Panel panel) => panel.Placement!.Inwards.Axis();

    /// <summary>Clear stretches along an axis between panels that lie across it (0 between uprights, 2 between levels), seen from the front; each once.</summary>
    /// <param name="axis">0 or 2.</param>
    /// <param name="at">A place on the other of these axes, or nothing for all places.</param>
    public IEnumerable<(double From, double To)> Openings(int axis, double? at = null)
    {
        var other = 2 - axis;
        var bounding = Fixed.Where(p => Normal(p) == axis && p.Thickness.Value >= Thinnest).Select(Box).ToList();
        var crossing = Fixed.Where(p => Normal(p) == other && p.Thickness.Value >= Thinnest).Select(Box).SelectMany(b => new[] { b.Min.Along(other), b.Max.Along(other) }).Distinct().Order().ToList();
        var places = at is { } one ? [one] : crossing.Zip(crossing.Skip(1)).Where(c => c.Second - c.First >= 2 * Thinnest).Select(c => (c.First + c.Second) / 2).ToList();
        return places.SelectMany(place =>
        {
            var stretches = bounding.Where(b => b.Min.Along(other) < place && b.Max.Along(other) > place).Select(b => (From: b.Min.Along(axis), To: b.Max.Along(axis))).OrderBy(s => s.From).ToList();
            return stretches.Zip(stretches.Skip(1)).Select(s => (From: s.First.To, To: s.Second.From)).Where(s => s.To - s.From > Tolerance.Length).ToList();
        }).Select(s => (From: Math.Round(s.From, 6), To: Math.Round(s.To, 6))).Distinct();
    }

    /// <summary>Gaps beside fronts along an axis (0 or 2), to their neighbours and to the edges of panels that do not move.</summary>
    public IEnumerable<(double From, double To)> Reveals(int axis)
    {
        var other = 2 - axis;
        var fronts = Fronts.Select(Box).ToList();
        var edges = Fixed.Where(p => Normal(p) == axis && p.Thickness.Value >= Thinnest).Select(Box).ToList();
        foreach (var front in fronts)
        {
            var beside = fronts.Where(f => f != front).Concat(edges).Where(b => b.Min.Along(other) < front.Max.Along(other) && b.Max.Along(other) > front.Min.Along(other));
            var places = beside.SelectMany(b => new[] { b.Min.Along(axis), b.Max.Along(axis) }).ToList();
            var (low, high) = (front.Min.Along(axis), front.Max.Along(axis));
            foreach (var place in places.Where(p => p < low - 0.05 && low - p <= WidestReveal).OrderDescending().Take(1)) yield return (place, low);
            foreach (var place in places.Where(p => p > high + 0.05 && p - high <= WidestReveal).Order().Take(1)) yield return (high, place);
        }
    }

    /// <summary>Middle heights of bought parts of a kind with the block they take and the panel they are fixed to first.</summary>
    public IEnumerable<(double Height, Box3 Block, PlacedHardware Piece)> Heights(HardwareKind kind)
    {
        foreach (var piece in assembly.Hardware.Where(h => h.Kind == kind && h.Mounts.Length > 0 && !h.Volumes.IsEmpty))
        {
            if (assembly.Panel(piece.Mounts[0].Panel).Placement is not { } placement) continue;
            var block = piece.Volumes.Select(placement.ToAssembly).Aggregate((a, b) => a.Union(b));
            yield return ((block.Min.Z + block.Max.Z) / 2, block, piece);
        }
    }

    /// <summary>The shelves: panels that lie level between others, moving or not.</summary>
    public IEnumerable<Box3> Levels() => Fixed.Where(p => Normal(p) == 2 && p.Thickness.Value >= Thinnest).Select(Box).Where(b => b.Min.Z > Carcass.Min.Z + Tolerance.Length && b.Max.Z < Carcass.Max.Z - Tolerance.Length);

    /// <summary>
    /// Where a section along an axis shows most: in the middle of the widest clear stretch, or through the screw nearest to it that lies in such a
    /// plane and stands in the middle third of that stretch.
    /// </summary>
    public CuttingPlane Cut(int axis)
    {
        var (from, to) = Openings(axis).DefaultIfEmpty((Whole.Min.Along(axis), Whole.Max.Along(axis))).MaxBy(s => s.Item2 - s.Item1);
        // A little aside of the middle, where the edges of a pair of doors would be cut.
        var middle = from + (to - from) * (axis == 0 ? 0.45 : 0.5);
        var axes = Panels.SelectMany(p => p.Features.OfType<Bore>().Where(b => b.Fastener is not null).Select(b => b.AxisIn(p) is var a ? (p.Placement!.ToAssembly(a.From), p.Placement.ToAssembly(a.To)) : default));
        var places = axes.Where(a => Math.Abs(a.Item1.Along(axis) - a.Item2.Along(axis)) < Tolerance.Length).Select(a => a.Item1.Along(axis));
        var near = places.Where(x => Math.Abs(x - middle) < (to - from) / 6).OrderBy(x => Math.Abs(x - middle)).Select(x => (double?)x).FirstOrDefault();
        return new CuttingPlane(axis, near ?? middle);
    }
}
