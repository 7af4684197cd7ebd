using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>What a user says about the checks: changed limits and waived rules.</summary>
public sealed class CheckSettings
{
    /// <summary>No changes, no waivers.</summary>
    public static CheckSettings Standard { get; } = new(ImmutableDictionary<CheckLimit, Size>.Empty, ImmutableDictionary<string, string>.Empty);

    private readonly ImmutableDictionary<CheckLimit, Size> limits;
    private readonly ImmutableDictionary<string, string> waivers;

    internal CheckSettings(ImmutableDictionary<CheckLimit, Size> limits, ImmutableDictionary<string, string> waivers) =>
        (this.limits, this.waivers) = (limits, waivers);

    /// <summary>A limit with its origin: the line of the file, or the default.</summary>
    public Size Limit(CheckLimit limit) => limits.GetValueOrDefault(limit) ?? Size.Default(limit.Default, limit.Name);

    /// <summary>The reason a rule is waived for, or nothing.</summary>
    public string? Waiver(string rule) => waivers.GetValueOrDefault(rule);
}
