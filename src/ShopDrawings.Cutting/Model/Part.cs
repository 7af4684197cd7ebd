namespace ShopDrawings.Cutting;

/// <summary>A rectangle that is wanted, some number of times. Lengths in nanometres.</summary>
public sealed record Part
{
    /// <summary>A part by name, wanted once.</summary>
    public Part(string id, long length, long width) => (Id, Length, Width) = (id, length, width);

    /// <summary>What the user calls it; no two parts of a problem share it.</summary>
    public string Id { get; }

    /// <summary>The wanted length.</summary>
    public long Length { get; }

    /// <summary>The wanted width.</summary>
    public long Width { get; }

    /// <summary>How many are wanted; at least 1.</summary>
    public int Quantity { get; init; } = 1;

    /// <summary>How it wants the grain.</summary>
    public Grain Grain { get; init; }

    /// <summary>What is cut on over the wanted size at each edge, to be taken off after banding or at the bench; none where the size already holds it.</summary>
    public Trim Allowance { get; init; }

    /// <summary>What is written on the piece; the id where null.</summary>
    public string? Label { get; init; }

    /// <summary>Parts that share this word want to come off the saw at one fence setting, as a left and a right side do; null: no such wish.</summary>
    public string? Matching { get; init; }

    /// <summary>The length that is cut: wanted length and allowance.</summary>
    public long CutLength => Length + Allowance.OffLength;

    /// <summary>The width that is cut: wanted width and allowance.</summary>
    public long CutWidth => Width + Allowance.OffWidth;
}
