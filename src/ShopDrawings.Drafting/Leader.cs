using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>A leader: a line from a note to what it is about, with an arrow there. The note is a text of its own.</summary>
/// <param name="Layer">The layer.</param>
/// <param name="Points">From the tip of the arrow on; at least two, the first two different.</param>
/// <param name="Height">Lettering height of the note in mm, to which the arrow relates.</param>
public sealed record LeaderEntity(Layer Layer, ImmutableArray<Point2> Points, double Height) : Entity(Layer)
{
    /// <inheritdoc/>
    public override Box2 Bounds => DimensionGraphics.Of(this).Select(e => e.Bounds).Aggregate((a, b) => a.Union(b));
}
