using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>One question asked of an assembly before anything is cut.</summary>
public abstract class Check
{
    private protected Check(string rule, string summary, params ImmutableArray<CheckLimit> limits) =>
        (Rule, Summary, Limits) = (rule, summary, limits);

    /// <summary>Every check, in the order findings are listed.</summary>
    public static ImmutableArray<Check> All { get; } = [new HardwareFits(), new PanelsOverlap(), new BoreInPanel(), new BoresMeet(), new BoresMeetGrooves(), new FeatureInPanel(), new ScrewsCanBeDriven()];

    /// <summary>Stable id of the rule, in words.</summary>
    public string Rule { get; }

    /// <summary>What it asks, in one sentence.</summary>
    public string Summary { get; }

    /// <summary>The numbers it compares with.</summary>
    public ImmutableArray<CheckLimit> Limits { get; }

    /// <summary>What every check says about an assembly.</summary>
    /// <param name="assembly">The assembly.</param>
    /// <param name="settings">What the user says about the checks.</param>
    /// <param name="lengths">How messages print lengths.</param>
    public static ImmutableArray<Finding> RunAll(Assembly assembly, CheckSettings settings, LengthStyle lengths) =>
    [
        .. All.SelectMany(c => c.Run(assembly, settings, lengths)).Select(f => settings.Waiver(f.Rule) is { } reason ? f with { Waiver = reason } : f),
    ];

    /// <summary>What it finds; nothing where all is well.</summary>
    public abstract IEnumerable<Finding> Run(Assembly assembly, CheckSettings settings, LengthStyle lengths);
}
