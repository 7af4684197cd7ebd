using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>A scribed line on a face, or a centre to punch where it has no end. Nothing is removed.</summary>
/// <param name="Origin">Who wrote it.</param>
/// <param name="Face">The face it is scribed on.</param>
/// <param name="From">The centre, or one end of the line.</param>
/// <param name="To">The other end of the line, or nothing for a centre.</param>
public sealed record Mark(string Origin, Surface Face, Position From, Position? To) : Feature(Origin)
{
    /// <inheritdoc/>
    public override ImmutableArray<Size> Sizes => To is { } to ? [From.X, From.Y, to.X, to.Y] : [From.X, From.Y];
}
