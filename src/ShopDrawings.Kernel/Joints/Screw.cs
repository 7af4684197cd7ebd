using System.Globalization;

namespace ShopDrawings.Kernel;

/// <summary>A wood screw by its dimensions, in mm: it passes freely through one panel and cuts its thread into a pilot in the other.</summary>
/// <param name="Name">What panels and lists call it.</param>
/// <param name="Diameter">Outer diameter of the thread.</param>
/// <param name="Length">Length under a flush head.</param>
/// <param name="HeadDiameter">Diameter of the head.</param>
/// <param name="Clearance">Diameter of the hole it passes through freely.</param>
/// <param name="EdgePilot">Diameter of the hole it cuts its thread into.</param>
public sealed record Screw(string Name, Size Diameter, Size Length, Size HeadDiameter, Size Clearance, Size EdgePilot) : Fastener(Name)
{
    /// <summary>Angle of the head's cone in degrees: 90 metric (ISO), 82 inch (ASME B18.6.1), both from memory.</summary>
    public double HeadAngle { get; init; } = 90;

    /// <summary>How far the head lies below the face once its seat is countersunk; nothing where no seat is cut.</summary>
    public Size? Sunk { get; init; }

    /// <inheritdoc/>
    public override string Kind => "screw";

    /// <inheritdoc/>
    public override string Dimensions => string.Create(CultureInfo.InvariantCulture, $"{Diameter.Value:0.####} x {Length.Value:0.####}, head {HeadDiameter.Value:0.####}");

    /// <inheritdoc/>
    public override bool IsDriven => true;

    internal override Size Mouth => HeadDiameter;

    /// <summary>
    /// Depth of the seat: (head diameter − shank diameter) ÷ (2 × tan(angle ÷ 2)) (derived, geometry; the shank is as thick as the thread),
    /// and how far the head lies below the face.
    /// </summary>
    internal Size SeatDepth
    {
        get
        {
            var slope = Size.Constant(2 * Math.Tan(HeadAngle * Math.PI / 360));
            var cone = ((HeadDiameter - Diameter) / slope).As("countersink-depth");
            return Sunk is { Value: > 0 } below ? (cone + below).As("seat-depth") : cone;
        }
    }

    internal override IEnumerable<FastenerBore> Bores(Size through, Size receiving)
    {
        yield return new(Site.Entry, Clearance, null, BoreUse.Clearance);
        if (Sunk is not null) yield return new(Site.Entry, HeadDiameter, SeatDepth, BoreUse.Countersink);
        if (Reach(through, receiving).IntoHeld is { } depth && depth.Value > Tolerance.Length) yield return new(Site.Held, EdgePilot, depth, BoreUse.Pilot);
    }

    // Length + sink − thickness.
    internal override (Size IntoFace, Size IntoHeld) Reach(Size through, Size receiving)
    {
        var below = Sunk ?? Size.Zero;
        return (below.Value > 0 ? through - below : through, ((below.Value > 0 ? Length + below : Length) - through).As("pilot-depth"));
    }
}
