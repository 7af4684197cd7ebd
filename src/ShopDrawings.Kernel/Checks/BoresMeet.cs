namespace ShopDrawings.Kernel;

/// <summary>Finds bores that run into each other inside a panel, and screws too close to another bore to hold.</summary>
internal sealed class BoresMeet() : Check("bores-meet", "No two bores run into each other, and screws have wood around them.", Clearance)
{
    /// <summary>Wood between a screw's pilot and another bore.</summary>
    internal static readonly CheckLimit Clearance = new("bores-meet", "clearance", 3, "Least wood between the pilot of a screw and another bore. 3 mm (1/8 in): common practice, no source.");

    /// <inheritdoc/>
    public override IEnumerable<Finding> Run(Assembly assembly, CheckSettings settings, LengthStyle lengths)
    {
        var clearance = settings.Limit(Clearance).Value;
        foreach (var panel in assembly.Panels)
        {
            var bores = panel.Features.OfType<Bore>().Select(b => (Bore: b, Axis: b.AxisIn(panel))).ToList();
            for (var i = 0; i < bores.Count; i++)
                for (var j = i + 1; j < bores.Count; j++)
                {
                    var (a, b) = (bores[i], bores[j]);
                    if (a.Bore.Origin == b.Bore.Origin && a.Bore.Fastener is { } fastener && fastener == b.Bore.Fastener) continue;
                    // Screws of two joints through one panel that meet cover each other's heads: another check says so.
                    if (a.Bore.Use == BoreUse.Clearance && b.Bore.Use == BoreUse.Clearance && a.Bore.Surface != b.Bore.Surface) continue;
                    var isOwn = a.Bore.Origin == panel.Id && b.Bore.Origin == panel.Id;
                    var least = (a.Bore.Use == BoreUse.Pilot || b.Bore.Use == BoreUse.Pilot) && a.Bore.Origin != b.Bore.Origin ? clearance : 0;
                    // As if both had round ends they reach further: far enough apart like that is far enough.
                    if (a.Axis.Gap(b.Axis, a.Bore.Diameter.Value, b.Bore.Diameter.Value) >= least - Tolerance.Length) continue;
                    var gap = new Cylinder(a.Axis, a.Bore.Diameter.Value).Gap(new Cylinder(b.Axis, b.Bore.Diameter.Value));
                    if (gap >= least - Tolerance.Length) continue;
                    yield return Make(panel, a, b, gap, least, lengths, isOwn);
                }
        }
    }

    private Finding Make(Panel panel, (Bore Bore, Axis Axis) a, (Bore Bore, Axis Axis) b, double gap, double least, LengthStyle lengths, bool isOwn)
    {
        string Who(Bore bore) => $"the {lengths.Describe(bore.Diameter.Value)} bore{(bore.Origin == panel.Id ? "" : $" of {bore.Origin}")} at {lengths.Describe(bore.At.X.Value)}, {lengths.Describe(bore.At.Y.Value)} in the {panel.NameOf(bore.Surface)} {(bore.Surface.IsFace() ? "face" : "edge")}";
        var box = Box3.Between(a.Axis.From, a.Axis.To).Union(Box3.Between(b.Axis.From, b.Axis.To));
        var reach = new Point3(1, 1, 1) * (Math.Max(a.Bore.Diameter.Value, b.Bore.Diameter.Value) / 2);
        return new Finding(
            Rule, Severity.Error, [panel.Id],
            gap < 0 ? $"{panel.Id}: {Who(a.Bore)} and {Who(b.Bore)} run into each other"
                : $"{panel.Id}: {Who(a.Bore)} and {Who(b.Bore)} leave {lengths.Describe(gap)} of wood between them; at least {lengths.Describe(least)} must stay",
            [new("wood between them", gap, "mm"), new("least", least, "mm")], gap < 0 ? "derived (geometry)" : "common practice, no source",
            isOwn ? "move one of them" : "move what needs them, change the spread of the screws, or take a shorter screw",
            new Indicator(panel.Id, new Box3(box.Min - reach, box.Max + reach)));
    }
}
