using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>A side-mounted slide, by its dimensions in mm. Sold in pairs.</summary>
public sealed record Slide
{
    /// <summary>What lists call it.</summary>
    public required string Name { get; init; }

    /// <summary>Length when closed.</summary>
    public required Size Length { get; init; }

    /// <summary>Thickness between cabinet and runner.</summary>
    public required Size Thickness { get; init; }

    /// <summary>Height.</summary>
    public required Size Height { get; init; }

    /// <summary>How much more room than its thickness it needs on each side.</summary>
    public required Size Play { get; init; }

    /// <summary>How far it travels.</summary>
    public required Size Travel { get; init; }

    /// <summary>What a pair carries, in kg.</summary>
    public required Size RatingKg { get; init; }

    /// <summary>Holes on the cabinet's side, each from the front end of the slide.</summary>
    public required ImmutableArray<Size> CabinetHoles { get; init; }

    /// <summary>Holes on the runner's side, each from the front end of the slide.</summary>
    public required ImmutableArray<Size> RunnerHoles { get; init; }

    /// <summary>Diameter of all holes.</summary>
    public required Size HoleDiameter { get; init; }

    /// <summary>Depth of all holes.</summary>
    public required Size HoleDepth { get; init; }

    /// <summary>Room it needs on each side: thickness and play.</summary>
    public Size SideClearance => (Thickness + Play).As("side-clearance");
}
