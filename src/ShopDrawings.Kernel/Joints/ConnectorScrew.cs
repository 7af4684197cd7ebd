using System.Globalization;

namespace ShopDrawings.Kernel;

/// <summary>A one-piece connector screw by its dimensions, in mm: a stepped bore through the face, a bore in the edge longer than the screw reaches.</summary>
/// <param name="Name">What panels and lists call it.</param>
/// <param name="Diameter">Outer diameter of the thread.</param>
/// <param name="Length">Length under the head.</param>
/// <param name="HeadDiameter">Diameter of the seat for its head.</param>
/// <param name="HeadDepth">Depth of that seat: the head lies flush in it.</param>
/// <param name="Clearance">Diameter of the bore through the face.</param>
/// <param name="EdgePilot">Diameter of the bore in the edge.</param>
/// <param name="Extra">How much deeper the bore in the edge is than the screw reaches.</param>
public sealed record ConnectorScrew(
    string Name, Size Diameter, Size Length, Size HeadDiameter, Size HeadDepth, Size Clearance, Size EdgePilot, Size Extra) : Fastener(Name)
{
    /// <inheritdoc/>
    public override string Kind => "connector-screw";

    /// <inheritdoc/>
    public override string Dimensions => string.Create(CultureInfo.InvariantCulture, $"{Diameter.Value:0.####} x {Length.Value:0.####}, head {HeadDiameter.Value:0.####}");

    /// <inheritdoc/>
    public override bool IsDriven => true;

    internal override Size Mouth => HeadDiameter;

    // Screw length − thickness + extra (common practice, no source).
    internal override IEnumerable<FastenerBore> Bores(Size through, Size receiving)
    {
        yield return new(Site.Entry, Clearance, null, BoreUse.Clearance);
        yield return new(Site.Entry, HeadDiameter, HeadDepth, BoreUse.Seat);
        if (Length.Value - through.Value > Tolerance.Length) yield return new(Site.Held, EdgePilot, BoreDepths.ConnectorInEdge(Length, through, Extra), BoreUse.Pilot);
    }

    internal override (Size IntoFace, Size IntoHeld) Reach(Size through, Size receiving) => (through, Length - through);
}
