namespace ShopDrawings.Kernel;

/// <summary>A concealed cup hinge by its dimensions in mm.</summary>
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

    /// <summary>Between the plate's two holes where they stand one above the other; nothing where they lie in line.</summary>
    public Size? PlateSpacing { get; init; }

    /// <summary>From the front edge of the side to the plate's second hole where they lie in line; nothing where they stand above each other.</summary>
    public Size? PlateSecondSetBack { get; init; }

    /// <summary>Diameter of the plate's holes.</summary>
    public required Size PlateDiameter { get; init; }

    /// <summary>Depth of the plate's holes.</summary>
    public required Size PlateDepth { get; init; }

    /// <summary>The fixed distance of the straight arm: the overlay with a plate of height 0 and a boring distance of 0.</summary>
    public required Size FixedDistance { get; init; }

    /// <summary>That of the cranked arm for doors that share a panel; nothing where there is no such arm.</summary>
    public Size? HalfFixedDistance { get; init; }

    /// <summary>The constant of the arm for doors between the sides, usually negative; nothing where there is no such arm.</summary>
    public Size? InsetConstant { get; init; }

    /// <summary>How far it opens, in degrees.</summary>
    public double OpeningAngle { get; init; } = 110;

    /// <summary>Room the hinge takes inside the cabinet: behind the front edge.</summary>
    public required Size BodyDepth { get; init; }

    /// <summary>Room the hinge takes inside the cabinet: inwards from the side.</summary>
    public required Size BodyReach { get; init; }

    /// <summary>Room the hinge takes inside the cabinet: up and down together.</summary>
    public required Size BodyHeight { get; init; }

    /// <summary>How far the open door stands into the opening.</summary>
    public required Size Intrusion { get; init; }
}
