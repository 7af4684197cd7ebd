namespace ShopDrawings.Kernel;

/// <summary>
/// Finds two joints of which each covers the other's screw heads, so that whichever is made first, the other cannot be: two shelves that
/// meet a divider at one height.
/// </summary>
internal sealed class ScrewsCanBeDriven() : Check("screws-can-be-driven", "No two joints cover each other's screw heads.")
{
    // How far before a head something may not stand.
    private const double Before = 1;

    /// <inheritdoc/>
    public override IEnumerable<Finding> Run(Assembly assembly, CheckSettings settings, LengthStyle lengths)
    {
        var joints = assembly.Joints.Where(j => j.Fasteners.Length > 0).ToList();
        for (var i = 0; i < joints.Count; i++)
            for (var j = i + 1; j < joints.Count; j++)
            {
                var (a, b) = (joints[i], joints[j]);
                if (a.Through != b.Through || a.Entry == b.Entry || !Covers(assembly, a.Receiving, b) || !Covers(assembly, b.Receiving, a)) continue;
                var divider = assembly.Panel(a.Through);
                var points = a.Fasteners.Concat(b.Fasteners).Select(f => divider.Placement!.ToPanel(f.Head)).ToList();
                yield return new Finding(
                    Rule, Severity.Error, [a.Through, a.Receiving, b.Receiving],
                    $"{a.Receiving} and {b.Receiving} meet {a.Through} at one height: each covers the heads of the other's screws, so one of them cannot be screwed",
                    [], "derived (geometry)",
                    $"set them apart by at least {lengths.Describe(assembly.Panel(a.Receiving).Thickness.Value)}, or hold one of them in another way",
                    new Indicator(divider.Id, new Box3(points.Aggregate(Point3.Min), points.Aggregate(Point3.Max))));
            }
    }

    // Whether a panel stands right before a head of the joint.
    private static bool Covers(Assembly assembly, string panelId, Joint joint)
    {
        var panel = assembly.Panel(panelId);
        var box = panel.Placement!.ToAssembly(panel.Box);
        return joint.Fasteners.Any(f =>
        {
            var along = f.Tip - f.Head;
            var before = f.Head - along * (Before / along.Length);
            var head = new Point3(1, 1, 1) * (joint.Screw.HeadDiameter.Value / 2);
            return new Box3(before - head, before + head).Intersection(box) is not null;
        });
    }
}
