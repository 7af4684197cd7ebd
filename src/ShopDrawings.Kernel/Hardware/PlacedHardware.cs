using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>What a piece of hardware is.</summary>
public enum HardwareKind
{
    /// <summary>A part of the user's own: a block with holes.</summary>
    Fitting,

    /// <summary>A concealed cup hinge.</summary>
    Hinge,

    /// <summary>A side-mounted slide.</summary>
    Slide,

    /// <summary>A castor.</summary>
    Castor,

    /// <summary>A pin a shelf lies on.</summary>
    Pin,

    /// <summary>A strip that closes the gap between doors and carcass.</summary>
    Gasket,

    /// <summary>A levelling foot or a glide.</summary>
    Foot,

    /// <summary>A clip that holds a plinth on a foot; its place is marked.</summary>
    Clip,
}

/// <summary>Where a piece of hardware is fixed.</summary>
/// <param name="Panel">The panel's id.</param>
/// <param name="Surface">The face.</param>
/// <param name="At">The place on it.</param>
public sealed record Mount(string Panel, Surface Surface, Position At);

/// <summary>A piece of hardware in its place. It has written its holes into its panels and owns the room it takes.</summary>
/// <param name="Id">Unique.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Name">What lists call it.</param>
/// <param name="Mounts">Where it is fixed; the first is the one it is shown on.</param>
/// <param name="Volumes">Blocks of room it takes, in the frame of the first mount's panel, in mm.</param>
/// <param name="Sizes">Sizes worked out for it, such as the height of a hinge's plate.</param>
public sealed record PlacedHardware(
    string Id, HardwareKind Kind, string Name, ImmutableArray<Mount> Mounts, ImmutableArray<Box3> Volumes, ImmutableArray<Size> Sizes)
{
    /// <summary>How many of it there are: the pins of one row.</summary>
    public int Count { get; init; } = 1;

    /// <summary>A size by its rule id, or nothing.</summary>
    public Size? Size(string rule) => Sizes.FirstOrDefault(s => s.Rule == rule);
}
