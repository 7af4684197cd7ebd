namespace ShopDrawings.Cutting;

/// <summary>A rectangle that is left. Lengths in nanometres, in the frame of the whole sheet.</summary>
public readonly record struct Offcut(long X, long Y, long AlongX, long AlongY)
{
    /// <summary>Its area in square millimetres, rounded down.</summary>
    public long SquareMillimetres => (long)((Int128)AlongX * AlongY / 1_000_000_000_000);
}
