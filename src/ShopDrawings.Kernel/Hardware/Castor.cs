namespace ShopDrawings.Kernel;

/// <summary>A swivel castor with a plate, by its dimensions in mm.</summary>
public sealed record Castor
{
    /// <summary>What lists call it.</summary>
    public required string Name { get; init; }

    /// <summary>Height from the floor to the top of the plate.</summary>
    public required Size Height { get; init; }

    /// <summary>Diameter of the wheel.</summary>
    public required Size WheelDiameter { get; init; }

    /// <summary>Width of the tread.</summary>
    public required Size TreadWidth { get; init; }

    /// <summary>From the swivel axis to the wheel's axle.</summary>
    public required Size Offset { get; init; }

    /// <summary>Length of the plate.</summary>
    public required Size PlateLength { get; init; }

    /// <summary>Width of the plate.</summary>
    public required Size PlateWidth { get; init; }

    /// <summary>Between the holes along the plate.</summary>
    public required Size HoleLength { get; init; }

    /// <summary>Between the holes across the plate.</summary>
    public required Size HoleWidth { get; init; }

    /// <summary>Diameter of the bolts' clearance holes.</summary>
    public required Size HoleDiameter { get; init; }

    /// <summary>
    /// Radius the wheel sweeps around the swivel axis: √((offset + wheel radius)² + (tread width ÷ 2)²), measured to the outermost point as
    /// castor dealers do.
    /// </summary>
    public Size SwivelRadius
    {
        get
        {
            var reach = Offset + WheelDiameter / 2;
            var half = TreadWidth / 2;
            return (reach * reach + half * half).SquareRoot().As("swivel-radius");
        }
    }
}
