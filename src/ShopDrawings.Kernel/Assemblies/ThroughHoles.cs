using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>The holes through the faces of placed panels, by the points where they open, so that a drill can be followed from panel to panel.</summary>
internal sealed class ThroughHoles
{
    private readonly ImmutableArray<Mouth> mouths;

    /// <summary>Every hole through a face of these panels.</summary>
    public ThroughHoles(IEnumerable<Panel> panels)
    {
        var all = ImmutableArray.CreateBuilder<Mouth>();
        foreach (var panel in panels.Where(p => p.Placement is not null))
            foreach (var bore in panel.Features.OfType<Bore>().Where(b => b.Depth is null))
                foreach (var face in (ReadOnlySpan<Surface>)[Surface.Inside, Surface.Outside])
                    all.Add(new Mouth(panel, Entry(panel, face, bore), Entry(panel, face.Opposite(), bore), bore.Diameter.Value));
        mouths = all.ToImmutable();
    }

    /// <summary>
    /// The panels a drill passes before it enters a bore: each has a hole on the bore's axis, wide enough for the drill, that opens where the
    /// bore or the hole after it begins. From the bore outwards; none for a loose panel.
    /// </summary>
    public ImmutableArray<Panel> Before(Panel panel, Bore bore)
    {
        if (panel.Placement is null) return [];
        var passed = ImmutableArray.CreateBuilder<Panel>();
        var outwards = panel.Facing(bore.Surface).Vector();
        var at = Entry(panel, bore.Surface, bore);
        while (mouths.FirstOrDefault(m => m.IsPassed(at, outwards, bore.Diameter.Value)) is { } mouth)
        {
            passed.Add(mouth.Panel);
            at = mouth.FarEnd;
        }

        return passed.ToImmutable();
    }

    private static Point3 Entry(Panel panel, Surface surface, Bore bore) => panel.Placement!.ToAssembly(panel.OnSurface(surface, bore.At.Point));

    private sealed record Mouth(Panel Panel, Point3 At, Point3 FarEnd, double Diameter)
    {
        public bool IsPassed(Point3 at, Point3 outwards, double diameter) =>
            (At - at).Length <= 2 * Tolerance.Length && (FarEnd - At).Dot(outwards) > Panel.Thickness.Value - Tolerance.Length && !Tolerance.Exceeds(diameter, Diameter);
    }
}
