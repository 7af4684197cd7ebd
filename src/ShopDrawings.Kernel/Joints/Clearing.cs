namespace ShopDrawings.Kernel;

/// <summary>What is drilled and cut in a panel, for whoever looks for a place beside it.</summary>
internal sealed class Clearing
{
    private readonly Panel panel;
    private readonly List<(Bore Bore, Axis Axis)> bores;
    private readonly List<Cut> cuts;

    /// <summary>All a panel has so far.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="counts">Which bores count; all where it is left out.</param>
    public Clearing(Panel panel, Func<Bore, bool>? counts = null)
    {
        this.panel = panel;
        bores = [.. panel.Features.OfType<Bore>().Where(b => counts?.Invoke(b) ?? true).Select(b => (b, b.AxisIn(panel)))];
        cuts = [.. panel.Features.Where(f => f is Groove or CutOut).Select(f => Cut.Of(panel, f)!)];
    }

    /// <summary>Takes one more bore into account.</summary>
    public void Add(Bore bore) => bores.Add((bore, bore.AxisIn(panel)));

    /// <summary>What a bore would run into or leave too little wood beside (see <see cref="BoresMeet.Clearance"/>): who wrote it, or nothing.</summary>
    public string? Obstacle(Bore bore)
    {
        var axis = bore.AxisIn(panel);
        foreach (var (other, otherAxis) in bores)
            if (axis.Gap(otherAxis, bore.Diameter.Value, other.Diameter.Value) < BoresMeet.Clearance.Default - Tolerance.Length) return other.Origin;
        if (cuts.Count == 0) return null;
        var cut = Cut.Of(panel, bore)!;
        return cuts.Find(cut.Meets)?.Feature.Origin;
    }
}
