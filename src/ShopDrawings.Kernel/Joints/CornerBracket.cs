using System.Globalization;

namespace ShopDrawings.Kernel;

/// <summary>An angle in the corner between two panels by its dimensions, in mm; each leg has one screw.</summary>
/// <param name="Name">What panels and lists call it.</param>
/// <param name="Leg">Length of each leg.</param>
/// <param name="HoleDistance">From the corner to the hole of each leg.</param>
/// <param name="HoleDiameter">Diameter of the pilots.</param>
/// <param name="HoleDepth">Depth of the pilots.</param>
public sealed record CornerBracket(string Name, Size Leg, Size HoleDistance, Size HoleDiameter, Size HoleDepth) : Fastener(Name)
{
    /// <inheritdoc/>
    public override string Kind => "corner-bracket";

    /// <inheritdoc/>
    public override string Dimensions => string.Create(CultureInfo.InvariantCulture, $"legs {Leg.Value:0.####}, holes at {HoleDistance.Value:0.####}");

    internal override Size Mouth => Leg;

    internal override IEnumerable<FastenerBore> Bores(Size through, Size receiving) =>
    [
        new(Site.Contact, HoleDiameter, HoleDepth, BoreUse.Pilot, HoleDistance),
        new(Site.Beside, HoleDiameter, HoleDepth, BoreUse.Pilot, HoleDistance),
    ];

    internal override (Size IntoFace, Size IntoHeld) Reach(Size through, Size receiving) => (HoleDepth, HoleDistance);
}
