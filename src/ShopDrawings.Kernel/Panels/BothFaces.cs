namespace ShopDrawings.Kernel;

/// <summary>Blind bores that face each other from both faces of a panel, such as the pins of two bays on their divider.</summary>
internal static class BothFaces
{
    /// <summary>
    /// The panel with those of its bores made shallower that would run into one from the other face: half of what the thickness leaves each.
    /// Bores of one part, and those a user asked for, stay as they are.
    /// </summary>
    public static Panel Shared(Panel panel)
    {
        var bores = panel.Features.OfType<Bore>().Where(b => b is { Surface: Surface.Inside or Surface.Outside, Depth: not null } && b.Origin != panel.Id).ToList();
        var inside = bores.Where(b => b.Surface == Surface.Inside).ToList();
        var half = new Dictionary<Bore, Size>(ReferenceEqualityComparer.Instance);
        foreach (var a in bores.Where(b => b.Surface == Surface.Outside))
            foreach (var b in inside)
            {
                var least = a.Use == BoreUse.Pilot || b.Use == BoreUse.Pilot ? BoresMeet.Clearance : BoreInPanel.Floor;
                if (a.Origin == b.Origin || a.At.Point.DistanceTo(b.At.Point) >= (a.Diameter.Value + b.Diameter.Value) / 2 + least.Default
                    || a.Depth!.Value + b.Depth!.Value <= panel.Thickness.Value - least.Default + Tolerance.Length) continue;
                var share = ((panel.Thickness - Size.Default(least.Default, "least-between")) / 2).As("half-depth");
                foreach (var bore in new[] { a, b })
                    if (bore.Depth!.Value > share.Value) half[bore] = share;
            }

        return half.Count == 0 ? panel : panel.WithBores(bore => half.TryGetValue(bore, out var depth)
            ? bore.AsDeepAs(depth)
            : bore);
    }
}
