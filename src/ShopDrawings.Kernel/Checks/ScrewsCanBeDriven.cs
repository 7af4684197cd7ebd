namespace ShopDrawings.Kernel;

/// <summary>
/// Finds two joints of which each covers the other's screw heads, so that whichever is made first, the other cannot be: two shelves that
/// meet a divider at one height. And bolts of castors that come up under another panel.
/// </summary>
internal sealed class ScrewsCanBeDriven() : Check("screws-can-be-driven", "No two joints cover each other's screw heads, and no bolt of a castor comes up under a panel.")
{
    // How far before a head something may not stand.
    private const double Before = 1;

    /// <inheritdoc/>
    public override IEnumerable<Finding> Run(Assembly assembly, CheckSettings settings, LengthStyle lengths) =>
        Joints(assembly, lengths).Concat(Bolts(assembly));

    private IEnumerable<Finding> Joints(Assembly assembly, LengthStyle lengths)
    {
        var joints = assembly.Joints.Where(j => j.Fasteners.Any(f => f.Fastener.IsDriven)).ToList();
        for (var i = 0; i < joints.Count; i++)
            for (var j = i + 1; j < joints.Count; j++)
            {
                var (a, b) = (joints[i], joints[j]);
                if (a.Through != b.Through || a.Entry == b.Entry || !Covers(assembly, a.Receiving, b) || !Covers(assembly, b.Receiving, a)) continue;
                var divider = assembly.Panel(a.Through);
                var points = a.Fasteners.Concat(b.Fasteners).Select(f => divider.Placement!.ToPanel(f.Head)).ToList();
                yield return new Finding(
                    Rule, Severity.Error, [a.Through, a.Receiving, b.Receiving],
                    $"{a.Receiving} and {b.Receiving} meet {a.Through} at one place: each covers the heads of the other's screws, so one of them cannot be screwed",
                    [], "derived (geometry)",
                    $"set them apart by at least {lengths.Describe(assembly.Panel(a.Receiving).Thickness.Value)}, or hold them in another way, such as “corners: {{shelves: dowel-8x30}}”",
                    new Indicator(divider.Id, new Box3(points.Aggregate(Point3.Min), points.Aggregate(Point3.Max))));
            }
    }

    private IEnumerable<Finding> Bolts(Assembly assembly)
    {
        foreach (var castor in assembly.Hardware.Where(h => h.Kind == HardwareKind.Castor))
        {
            var bottom = assembly.Panel(castor.Mounts[0].Panel);
            foreach (var bore in bottom.Features.OfType<Bore>().Where(b => b.Origin == castor.Id))
            {
                var exit = bottom.Placement!.ToAssembly(bottom.OnSurface(bore.Surface.Opposite(), bore.At.Point)) + bottom.Facing(bore.Surface.Opposite()).Vector() * Before;
                var head = new Point3(1, 1, 1) * (bore.Diameter.Value / 2);
                var above = assembly.Panels.FirstOrDefault(p => p != bottom && p.Placement is not null && new Box3(exit - head, exit + head).Intersection(p.Placement.ToAssembly(p.Box)) is not null);
                if (above is null) continue;
                yield return new Finding(
                    Rule, Severity.Error, [bottom.Id, above.Id], $"{castor.Id}: a bolt through {bottom.Id} comes up under {above.Id}", [], "derived (geometry)",
                    $"move {above.Id}, or take castors with another plate", new Indicator(bottom.Id, bottom.Box));
                break;
            }
        }
    }

    // Whether a panel stands right before a head of the joint.
    private static bool Covers(Assembly assembly, string panelId, Joint joint)
    {
        var panel = assembly.Panel(panelId);
        var box = panel.Placement!.ToAssembly(panel.Box);
        return joint.Fasteners.Where(f => f.Fastener.IsDriven).Any(f =>
        {
            var along = f.Tip - f.Head;
            var before = f.Head - along * (Before / along.Length);
            var head = new Point3(1, 1, 1) * (f.Fastener.Mouth.Value / 2);
            return new Box3(before - head, before + head).Intersection(box) is not null;
        });
    }
}
