namespace ShopDrawings.Cutting;

/// <summary>
/// A size of sheet that can be had. The sheet's frame is right-handed: x from its start along the length, y from its near edge across the width.
/// </summary>
public sealed record StockSize
{
    /// <summary>A size by name. Lengths in nanometres.</summary>
    public StockSize(string id, long length, long width) => (Id, Length, Width) = (id, length, width);

    /// <summary>What the user calls it; no two sizes of a problem share it.</summary>
    public string Id { get; }

    /// <summary>Along x, in nanometres.</summary>
    public long Length { get; }

    /// <summary>Along y, in nanometres.</summary>
    public long Width { get; }

    /// <summary>What one sheet costs, in the smallest coin; 0 for what the user has already.</summary>
    public long Price { get; init; }

    /// <summary>How many there are; null: as many as needed.</summary>
    public int? Count { get; init; }

    /// <summary>What is cut off each factory edge before anything else.</summary>
    public Trim Trim { get; init; }

    /// <summary>Which way its grain runs.</summary>
    public GrainDirection Grain { get; init; }

    /// <summary>One offcut of the user's own: it costs nothing and there is one of it.</summary>
    public static StockSize Offcut(string id, long length, long width) => new(id, length, width) { Count = 1 };

    /// <summary>What remains of the length within the trim.</summary>
    public long UsableLength => Length - Trim.OffLength;

    /// <summary>What remains of the width within the trim.</summary>
    public long UsableWidth => Width - Trim.OffWidth;
}
