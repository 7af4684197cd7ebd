using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>How a shop makes the bores of which nobody said how.</summary>
/// <param name="Faces">Bores in faces: machined or marked.</param>
/// <param name="Edges">Bores in edges: machined, marked, or in place where something lies before them to be drilled through.</param>
internal sealed record DrillingHabit(BoreMethod Faces, BoreMethod Edges)
{
    /// <summary>Faces machined; edges in place, as most makers drill the pilots of a screwed butt joint (common practice, no source).</summary>
    public static DrillingHabit Standard { get; } = new(BoreMethod.Machined, BoreMethod.InPlace);

    /// <summary>The same panels with the method of every bore decided; what its writer said stays.</summary>
    public ImmutableArray<Panel> Decide(IReadOnlyList<Panel> panels, IReadOnlyList<Joint> joints)
    {
        var holes = new ThroughHoles(panels);
        var heldInFaces = joints.Where(j => j.Held.IsFace()).Select(j => (j.Id, j.Receiving)).ToHashSet();
        BoreMethod Of(Panel panel, Bore bore)
        {
            if (!bore.Surface.IsFace()) return Edges == BoreMethod.InPlace && holes.Before(panel, bore).IsEmpty ? BoreMethod.Marked : Edges;
            return Faces == BoreMethod.Marked && bore.Use == BoreUse.Pilot && heldInFaces.Contains((bore.Origin, panel.Id)) ? BoreMethod.Transferred : Faces;
        }

        return [.. panels.Select(p => p.WithBores(b => b.HasMethod ? b : b with { Method = Of(p, b) }))];
    }
}
