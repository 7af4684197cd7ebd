using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>A place on a story stick.</summary>
/// <param name="At">From the stick's first end, in mm: never from the mark before, so that no error adds up.</param>
/// <param name="What">What is marked there, each with its place the other way.</param>
internal sealed record StickMark(double At, ImmutableArray<string> What);

/// <summary>A strip as long as a panel, or as the cabinet is high, to mark from.</summary>
/// <param name="Name">Unique: <c>left-side-length</c>.</param>
/// <param name="From">Where its first end is held: the edge's word.</param>
/// <param name="To">Where the other end is held.</param>
/// <param name="Length">In mm.</param>
/// <param name="Marks">From the first end on.</param>
internal sealed record StoryStick(string Name, string From, string To, double Length, ImmutableArray<StickMark> Marks)
{
    /// <summary>The sticks of an assembly: two for each panel that is marked by hand, and one for the heights of the whole where a panel has one.</summary>
    /// <param name="assembly">The assembly.</param>
    /// <param name="set">Its templates, and the bores that are on none.</param>
    /// <param name="lengths">How lengths are printed.</param>
    public static ImmutableArray<StoryStick> Of(Assembly assembly, TemplateSet set, LengthStyle lengths)
    {
        var sticks = ImmutableArray.CreateBuilder<StoryStick>();
        foreach (var panel in assembly.Panels)
            foreach (var isLength in new[] { true, false })
            {
                var marks = OfTemplates(panel, isLength, set).Concat(OfBores(panel, isLength, set, lengths)).ToList();
                var (from, to, length) = isLength ? (Surface.Start, Surface.End, panel.Length) : (Surface.Near, Surface.Far, panel.Width);
                if (marks.Count == 0) continue;
                // From one end on panels that are each other's mirror image, so that no difference of their sizes comes between them.
                if (panel.NameOf(to) is "bottom" or "front" or "left") (from, to, marks) = (to, from, [.. marks.Select(m => (length.Value - m.At, m.What))]);
                sticks.Add(new(panel.Id + (isLength ? "-length" : "-width"), panel.NameOf(from), panel.NameOf(to), length.Value, Sorted(marks)));
            }

        if (sticks.Count > 0 && Heights(assembly) is { } heights) sticks.Add(heights);
        return sticks.ToImmutable();
    }

    // Lines A and B of every template that is laid on the panel.
    private static IEnumerable<(double At, string What)> OfTemplates(Panel panel, bool isLength, TemplateSet set) =>
        from template in set.All
        from place in template.Places
        where place.Panel.Id == panel.Id
        from line in new[] { (Name: "A", Line: place.LineA), (Name: "B", Line: place.LineB) }
        where line.Line.Edge is Surface.Start or Surface.End == isLength
        let at = line.Line.Edge switch { Surface.End => panel.Length.Value - line.Line.Distance, Surface.Far => panel.Width.Value - line.Line.Distance, _ => line.Line.Distance }
        select (at, $"{template.Name} line {line.Name}, {panel.NameOf(place.Face)}{(template.HasMirror && place.Turn.IsMirrored ? ", mirrored" : "")}");

    private static IEnumerable<(double At, string What)> OfBores(Panel panel, bool isLength, TemplateSet set, LengthStyle lengths)
    {
        foreach (var (_, bore) in set.OnSticks.Where(b => b.Panel.Id == panel.Id))
        {
            var drill = TemplatePages.Drill(new(default, bore.Diameter.Value, bore.Depth?.Value, bore.Use == BoreUse.Countersink), lengths);
            var surface = panel.NameOf(bore.Surface);
            if (bore.Surface.IsFace())
            {
                var (at, across, edge) = isLength ? (bore.At.X, bore.At.Y, Surface.Near) : (bore.At.Y, bore.At.X, Surface.Start);
                yield return (at.Value, $"{drill}, {surface}, {lengths.PrintPlace(across.Value)} from {panel.NameOf(edge)}");
            }
            else if (bore.Surface is Surface.Near or Surface.Far == isLength)
            {
                yield return (bore.At.X.Value, $"{drill}, {surface} edge, {lengths.PrintPlace(bore.At.Y.Value)} from the outside face");
            }
        }
    }

    // Upper faces of what lies, middles of hinges and slides, from the lowest panel up.
    private static StoryStick? Heights(Assembly assembly)
    {
        var placed = assembly.Panels.Where(p => p.Placement is not null).ToList();
        if (placed.Count == 0) return null;
        var boxes = placed.Select(p => (Panel: p, Box: p.Placement!.ToAssembly(p.Box))).ToList();
        var (low, high) = (boxes.Min(b => b.Box.Min.Z), boxes.Max(b => b.Box.Max.Z));
        var lying = boxes.Where(b => b.Panel.Placement!.Inwards.Axis() == 2).SelectMany(b => new[] { (b.Box.Min.Z - low, $"{b.Panel.Id} lower face"), (b.Box.Max.Z - low, $"{b.Panel.Id} upper face") });
        var hung =
            from piece in assembly.Hardware
            where piece.Kind is HardwareKind.Hinge or HardwareKind.Slide
            let mount = piece.Mounts[0]
            let panel = assembly.Panel(mount.Panel)
            where panel.Placement is not null
            select (panel.Placement!.ToAssembly(panel.OnSurface(mount.Surface, mount.At.Point)).Z - low, piece.Id);
        return new("cabinet-height", "bottom", "top", high - low, Sorted([.. lying, .. hung]));
    }

    private static ImmutableArray<StickMark> Sorted(IEnumerable<(double At, string What)> marks) =>
        [.. marks.GroupBy(m => PanelTurn.Key(m.At)).Select(g => new StickMark(g.First().At, [.. g.Select(m => m.What).Distinct()])).OrderBy(m => m.At)];
}
