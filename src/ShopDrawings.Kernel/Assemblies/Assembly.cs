using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>
/// The resolved model: every panel with all its features, every joint and every piece of hardware. No default, formula, unit or reference
/// is left in it. Immutable. Invariants: ids of panels, of joints and of fittings are unique each; every joint and fitting names panels
/// that are there; joined panels are placed; every feature a joint or fitting needs is in its panel, with the joint's or fitting's id.
/// </summary>
public sealed class Assembly
{
    internal Assembly(string name, ImmutableArray<Panel> panels, ImmutableArray<Joint> joints, ImmutableArray<Fitting> fittings) =>
        (Name, Panels, Joints, Fittings) = (name, panels, joints, fittings);

    /// <summary>What is built.</summary>
    public string Name { get; }

    /// <summary>Every panel, in building order.</summary>
    public ImmutableArray<Panel> Panels { get; }

    /// <summary>Every joint, in building order.</summary>
    public ImmutableArray<Joint> Joints { get; }

    /// <summary>Every piece of hardware fixed to a panel.</summary>
    public ImmutableArray<Fitting> Fittings { get; }

    /// <summary>A panel by its id.</summary>
    /// <exception cref="ArgumentException">There is none.</exception>
    public Panel Panel(string id) =>
        Panels.FirstOrDefault(p => p.Id == id) ?? throw new ArgumentException($"There is no panel “{id}”.", nameof(id));
}
