namespace ShopDrawings.Kernel;

/// <summary>What cannot be built, each with the place to change.</summary>
/// <param name="lengths">How messages print lengths.</param>
/// <param name="whole">Where a fault without a place of its own is shown.</param>
internal sealed class Faults(LengthStyle lengths, SourceSpan whole)
{
    private readonly List<(SourceSpan Source, string Message)> all = [];

    /// <summary>Every fault so far.</summary>
    public IReadOnlyList<(SourceSpan Source, string Message)> All => all;

    /// <summary>Notes a fault at the first place that is one.</summary>
    public void Add(string message, params ReadOnlySpan<SourceSpan> places)
    {
        foreach (var place in places)
        {
            if (place == default) continue;
            all.Add((place, message));
            return;
        }

        all.Add((whole, message));
    }

    /// <summary>
    /// Adds a panel that fills a block, with bands on those edges that look in the given directions. Notes a fault where its id is taken, it
    /// has no extent, or the bands leave nothing of it.
    /// </summary>
    /// <returns>Whether it was added.</returns>
    public bool Fill(
        AssemblyBuilder assembly, string id, Board board, (Stretch X, Stretch Y, Stretch Z) block, Direction outside, Direction grain,
        IReadOnlyCollection<(Direction Edge, Size Thickness)> bands, SourceSpan source)
    {
        if (assembly.Find(id) is not null)
        {
            Add($"two panels would be called “{id}”; give bays and shelves different names", source);
            return false;
        }

        Stretch[] stretches = [block.X, block.Y, block.Z];
        if (stretches.Where((_, axis) => axis != outside.Axis()).Any(s => s.Extent.Value <= Tolerance.Length))
        {
            Add($"no room is left for {id}; make the cabinet or its bay larger", source);
            return false;
        }

        var panel = PanelPlacing.Fill(id, board, block.X, block.Y, block.Z, outside, grain);
        var own = bands.Where(b => panel.EdgeFacing(b.Edge) is not null).ToList();
        double Taken(int axis) => own.Where(b => b.Edge.Axis() == axis).Sum(b => b.Thickness.Value);
        if (Enumerable.Range(0, 3).Any(axis => axis != outside.Axis() && Taken(axis) >= stretches[axis].Extent.Value - Tolerance.Length))
        {
            Add($"the bands leave nothing of {id} to saw; is the unit right?", own[0].Thickness.Source, source);
            return false;
        }

        assembly.Add(panel.WithBands(own.Select(b => new EdgeBand(panel.EdgeFacing(b.Edge)!.Value, b.Thickness))));
        return true;
    }

    /// <summary>A length in a message.</summary>
    public string Print(Size size) => lengths.Describe(size.Value);
}
