namespace ShopDrawings.Kernel;

/// <summary>A stretch along an assembly axis: where it begins and how far it reaches, in mm.</summary>
internal readonly record struct Stretch(Size From, Size Extent);

/// <summary>Makes panels from the block of space they fill.</summary>
internal static class PanelPlacing
{
    /// <summary>
    /// A rectangular panel that fills a block of the assembly. Its thickness is the board's, whatever the block says; its length runs
    /// <paramref name="grain"/>, or along the longer side where the board has no grain.
    /// </summary>
    public static Panel Fill(string id, Board board, Stretch x, Stretch y, Stretch z, Direction outside, Direction grain)
    {
        var stretches = new[] { x, y, z };
        var other = Enumerable.Range(0, 3).Single(a => a != outside.Axis() && a != grain.Axis());
        var across = (Direction)(other * 2 + 1);
        if (!board.HasGrain && Tolerance.Exceeds(stretches[other].Extent.Value, stretches[grain.Axis()].Extent.Value)) (grain, across) = (across, grain);
        var (length, width) = (stretches[grain.Axis()].Extent.As($"{id}-length"), stretches[across.Axis()].Extent.As($"{id}-width"));
        return Panel.Rectangular(id, board, length, width, At(stretches, outside, grain));
    }

    /// <summary>The placement of a panel by the lowest corner of its block and its sizes along the axes.</summary>
    public static Placement At(ReadOnlySpan<Stretch> block, Direction outside, Direction alongLength)
    {
        var turned = Placement.Facing(Size.Zero, Size.Zero, Size.Zero, outside, alongLength);
        var origin = new Size[3];
        foreach (var axis in (ReadOnlySpan<Direction>)[turned.AlongLength, turned.AlongWidth, turned.Inwards])
        {
            var (from, extent) = block[axis.Axis()];
            origin[axis.Axis()] = axis.IsPositive() ? from : from + extent;
        }

        return Placement.Facing(origin[0], origin[1], origin[2], outside, alongLength);
    }
}
