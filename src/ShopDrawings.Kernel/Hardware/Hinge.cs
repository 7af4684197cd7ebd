namespace ShopDrawings.Kernel;

/// <summary>A concealed cup hinge for overlay doors, by its dimensions in mm.</summary>
public sealed record Hinge
{
    /// <summary>What lists call it.</summary>
    public required string Name { get; init; }

    /// <summary>Diameter of the cup's bore in the door.</summary>
    public required Size CupDiameter { get; init; }

    /// <summary>Depth of the cup's bore.</summary>
    public required Size CupDepth { get; init; }

    /// <summary>From the edge of the door to the edge of the cup's bore.</summary>
    public required Size BoringDistance { get; init; }

    /// <summary>Between the two fixing holes beside the cup, along the door's edge.</summary>
    public required Size FixingSpan { get; init; }

    /// <summary>From the line through the cup's centre to the fixing holes, away from the door's edge.</summary>
    public required Size FixingOffset { get; init; }

    /// <summary>Diameter of the fixing holes.</summary>
    public required Size FixingDiameter { get; init; }

    /// <summary>Depth of the fixing holes.</summary>
    public required Size FixingDepth { get; init; }

    /// <summary>From the front edge of the side to the plate's holes.</summary>
    public required Size PlateSetBack { get; init; }

    /// <summary>Between the plate's two holes, one above the other.</summary>
    public required Size PlateSpacing { get; init; }

    /// <summary>Diameter of the plate's holes.</summary>
    public required Size PlateDiameter { get; init; }

    /// <summary>Depth of the plate's holes.</summary>
    public required Size PlateDepth { get; init; }

    /// <summary>The fixed distance: the overlay with a plate of height 0 and a boring distance of 0.</summary>
    public required Size FixedDistance { get; init; }

    /// <summary>Room the hinge takes inside the cabinet: behind the front edge.</summary>
    public required Size BodyDepth { get; init; }

    /// <summary>Room the hinge takes inside the cabinet: inwards from the side.</summary>
    public required Size BodyReach { get; init; }

    /// <summary>Room the hinge takes inside the cabinet: up and down together.</summary>
    public required Size BodyHeight { get; init; }

    /// <summary>How far the open door stands into the opening.</summary>
    public required Size Intrusion { get; init; }
}
