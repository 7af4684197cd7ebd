namespace ShopDrawings.Cutting;

/// <summary>
/// What is cut away from each edge, blade included, in nanometres, not negative: at the start and end of the length, and at the near and far side of
/// the width. <c>default</c> is no trim.
/// </summary>
public readonly record struct Trim(long Start, long End, long Near, long Far)
{
    /// <summary>The same on all four edges.</summary>
    public static Trim Around(long each) => new(each, each, each, each);

    /// <summary>What goes off the length.</summary>
    public long OffLength => Start + End;

    /// <summary>What goes off the width.</summary>
    public long OffWidth => Near + Far;
}
