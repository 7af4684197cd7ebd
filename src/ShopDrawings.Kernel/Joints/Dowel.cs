using System.Globalization;

namespace ShopDrawings.Kernel;

/// <summary>A dowel by its dimensions, in mm: a blind bore in the face and one in the edge, together longer than the dowel.</summary>
/// <param name="Name">What panels and lists call it.</param>
/// <param name="Diameter">Diameter of the dowel and of its bores.</param>
/// <param name="Length">Length.</param>
/// <param name="FaceDepth">Depth of the bore in a face; 3 mm of the board stay under it (common practice, no source).</param>
/// <param name="EndClearance">How much longer both bores together are than the dowel.</param>
public sealed record Dowel(string Name, Size Diameter, Size Length, Size FaceDepth, Size EndClearance) : Fastener(Name)
{
    /// <inheritdoc/>
    public override string Kind => "dowel";

    /// <inheritdoc/>
    public override string Dimensions => string.Create(CultureInfo.InvariantCulture, $"{Diameter.Value:0.####} x {Length.Value:0.####}");

    internal override Size Mouth => Diameter;

    internal override IEnumerable<FastenerBore> Bores(Size through, Size receiving)
    {
        var face = InFace(through);
        yield return new(Site.Contact, Diameter, face, BoreUse.Seat);
        yield return new(Site.Held, Diameter, BoreDepths.DowelInEdge(Length, face, EndClearance), BoreUse.Seat);
    }

    internal override (Size IntoFace, Size IntoHeld) Reach(Size through, Size receiving) => (InFace(through), Length - InFace(through));

    private Size InFace(Size through) => Size.Smallest(FaceDepth, through - Size.Default(3, "least-under-a-dowel")).As("dowel-face-depth");
}
