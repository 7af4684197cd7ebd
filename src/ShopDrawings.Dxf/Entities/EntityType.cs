using System.Collections.Immutable;

namespace ShopDrawings.Dxf;

/// <summary>
/// What an entity consists of, for whoever writes, reads or checks it. Its values are the numbers and the texts of its groups in
/// the order they stand here, points as x and y, repeated groups last.
/// </summary>
/// <param name="Name">The name behind group code 0.</param>
/// <param name="Subclasses">The subclasses after <c>AcDbEntity</c>.</param>
internal sealed record EntityType(string Name, params ImmutableArray<Subclass> Subclasses)
{
    /// <summary>The tag with its name.</summary>
    public ReadOnlyMemory<byte> Start { get; } = TagWriter.Line(0, Name);
}
