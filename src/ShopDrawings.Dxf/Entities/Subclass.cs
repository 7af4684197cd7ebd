using System.Collections.Immutable;

namespace ShopDrawings.Dxf;

/// <summary>The groups of an entity that stand behind one subclass marker (group code 100; R12 has the groups without the marker).</summary>
/// <param name="Marker">The marker.</param>
/// <param name="Groups">The groups in the order of the DXF Reference.</param>
internal sealed record Subclass(string Marker, params ImmutableArray<Group> Groups)
{
    /// <summary>The tag with the marker.</summary>
    public ReadOnlyMemory<byte> Start { get; } = TagWriter.Line(100, Marker);

    /// <summary>The groups that come after these any number of times, once for each vertex.</summary>
    public ImmutableArray<Group> Repeated { get; init; } = [];
}
