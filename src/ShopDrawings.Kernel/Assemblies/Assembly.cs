using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>
/// The resolved model: every panel with all its features, every joint and every piece of hardware. No default, formula, unit or reference
/// is left in it. Immutable. Invariants: ids of panels, of joints and of hardware are unique each; joints and hardware name panels that are
/// there, misfits at least one; joined panels are placed; every feature a joint or a piece of hardware needs is in its panel, with its id.
/// </summary>
public sealed class Assembly
{
    internal Assembly(
        string name, ImmutableArray<Panel> panels, ImmutableArray<Joint> joints, ImmutableArray<PlacedHardware> hardware, ImmutableArray<Motion> motions,
        ImmutableArray<Misfit> misfits) =>
        (Name, Panels, Joints, Hardware, Motions, Misfits, byId) = (name, panels, joints, hardware, motions, misfits, panels.ToDictionary(p => p.Id, StringComparer.Ordinal));

    private readonly Dictionary<string, Panel> byId;

    /// <summary>What is built.</summary>
    public string Name { get; }

    /// <summary>Every panel, in building order.</summary>
    public ImmutableArray<Panel> Panels { get; }

    /// <summary>Every joint, in building order.</summary>
    public ImmutableArray<Joint> Joints { get; }

    /// <summary>Every piece of hardware but the screws of joints.</summary>
    public ImmutableArray<PlacedHardware> Hardware { get; }

    /// <summary>What slides and what swings, in building order.</summary>
    public ImmutableArray<Motion> Motions { get; }

    /// <summary>Hardware that found no room, as it came to light while it was placed.</summary>
    internal ImmutableArray<Misfit> Misfits { get; }

    /// <summary>A panel by its id.</summary>
    /// <exception cref="ArgumentException">There is none.</exception>
    public Panel Panel(string id) =>
        byId.GetValueOrDefault(id) ?? throw new ArgumentException($"There is no panel “{id}”.", nameof(id));
}
