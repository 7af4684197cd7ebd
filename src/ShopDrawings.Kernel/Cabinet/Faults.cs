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

    /// <summary>A length in a message.</summary>
    public string Print(Size size) => lengths.Describe(size.Value);
}
