using System.Globalization;

namespace ShopDrawings.Kernel;

/// <summary>
/// An eccentric cam connector by its dimensions, in mm: a bolt screwed into the face, an edge bore it passes, and a cam in a face of the held
/// panel that draws it tight.
/// </summary>
/// <param name="Name">What panels and lists call it.</param>
/// <param name="CamDiameter">Diameter of the cam's bore.</param>
/// <param name="CamDistance">From the edge of the held panel to the cam's centre.</param>
/// <param name="BelowMiddle">How much deeper the cam's bore is than half the board: its depth is half the thickness and this.</param>
/// <param name="EdgeDiameter">Diameter of the bore in the edge, as deep as the cam's centre.</param>
/// <param name="BoltDiameter">Diameter of the bolt's bore in the face.</param>
/// <param name="BoltDepth">Depth of the bolt's bore.</param>
public sealed record CamConnector(
    string Name, Size CamDiameter, Size CamDistance, Size BelowMiddle, Size EdgeDiameter, Size BoltDiameter, Size BoltDepth) : Fastener(Name)
{
    /// <inheritdoc/>
    public override string Kind => "cam-connector";

    /// <inheritdoc/>
    public override string Dimensions => string.Create(CultureInfo.InvariantCulture, $"cam {CamDiameter.Value:0.####} at {CamDistance.Value:0.####}, bolt {BoltDiameter.Value:0.####}");

    internal override Size Mouth => CamDiameter;

    internal override IEnumerable<FastenerBore> Bores(Size through, Size receiving)
    {
        yield return new(Site.Contact, BoltDiameter, BoltDepth, BoreUse.Pilot);
        yield return new(Site.Held, EdgeDiameter, CamDistance, BoreUse.Seat);
        yield return new(Site.Beside, CamDiameter, (receiving / 2 + BelowMiddle).As("cam-depth"), BoreUse.Seat, CamDistance);
    }

    internal override (Size IntoFace, Size IntoHeld) Reach(Size through, Size receiving) => (BoltDepth, CamDistance);
}
