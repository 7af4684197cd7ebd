using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>An opening through a panel of any outline of lines and arcs.</summary>
/// <param name="Origin">Who wrote it.</param>
/// <param name="Outline">Its edge, in the panel's frame.</param>
/// <param name="Given">The numbers it was made from.</param>
public sealed record CutOut(string Origin, Contour Outline, ImmutableArray<Size> Given) : Feature(Origin)
{
    /// <inheritdoc/>
    public override ImmutableArray<Size> Sizes => Given;
}
