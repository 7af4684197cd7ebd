namespace ShopDrawings.Cutting;

/// <summary>
/// A stream of numbers that depends on its seed alone (SplitMix64: G. Steele, D. Lea, C. Flood, Fast splittable pseudorandom number generators,
/// OOPSLA 2014; constants from memory).
/// </summary>
internal struct Lot(ulong seed)
{
    private ulong state = seed;

    /// <summary>The next 64 bits.</summary>
    public ulong Next()
    {
        state += 0x9E3779B97F4A7C15;
        var z = state;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }

    /// <summary>A whole number from 0 to below <paramref name="below"/>.</summary>
    public int Below(int below) => (int)(((Next() >> 32) * (ulong)below) >> 32);
}
