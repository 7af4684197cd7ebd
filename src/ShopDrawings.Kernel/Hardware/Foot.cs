using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>A levelling foot with a plate, or a glide on a stem, by its dimensions in mm.</summary>
public sealed record Foot
{
    /// <summary>What lists call it.</summary>
    public required string Name { get; init; }

    /// <summary>Nominal height from the floor to the face it is fixed to.</summary>
    public required Size Height { get; init; }

    /// <summary>How far it can be screwed in from the nominal height.</summary>
    public required Size AdjustDown { get; init; }

    /// <summary>How far it can be screwed out from the nominal height.</summary>
    public required Size AdjustUp { get; init; }

    /// <summary>Diameter of the foot below its plate.</summary>
    public required Size Diameter { get; init; }

    /// <summary>Length of the plate, front to back.</summary>
    public required Size PlateLength { get; init; }

    /// <summary>Width of the plate.</summary>
    public required Size PlateWidth { get; init; }

    /// <summary>Between the holes along the plate; 0 where they are one.</summary>
    public required Size HoleLength { get; init; }

    /// <summary>Between the holes across the plate; 0 where they are one.</summary>
    public required Size HoleWidth { get; init; }

    /// <summary>Diameter of the holes.</summary>
    public required Size HoleDiameter { get; init; }

    /// <summary>Depth of the holes.</summary>
    public required Size HoleDepth { get; init; }

    /// <summary>The height as it is listed: nominal, least and greatest.</summary>
    internal ImmutableArray<Size> Heights => [Height.As("foot-height"), (Height - AdjustDown).As("least-foot-height"), (Height + AdjustUp).As("greatest-foot-height")];
}
