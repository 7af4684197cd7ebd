using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>Writes the holes of two panels screwed face to face: two rows of screws along the longer side of the one they pass through.</summary>
internal static class ScrewedFaces
{
    /// <summary>
    /// Screws pass through a placed panel into the face of another that lies on it, in rows along the longer side of the first, each as far
    /// from its long edges as a row across would begin. The pilot ends where the screw ends.
    /// </summary>
    /// <exception cref="ArgumentException">No two faces of them lie on each other.</exception>
    public static WrittenJoint Join(Panel through, Panel receiving, Screw screw, RowRule rule)
    {
        var (entry, held) = Meeting(through, receiving);
        var id = $"{through.Id}/{receiving.Id}";
        var alongX = through.Length.Value >= through.Width.Value;
        var row = rule.On(alongX ? through.Length : through.Width);
        var across = alongX ? through.Width : through.Length;
        var depth = (screw.Length - through.Thickness).As("pilot-depth");
        var into = through.Placement!.DirectionToAssembly(entry.Into());

        var clearances = ImmutableArray.CreateBuilder<Bore>();
        var pilots = ImmutableArray.CreateBuilder<Bore>();
        var fasteners = ImmutableArray.CreateBuilder<Fastener>();
        var beside = rule.On(across).EndDistance;
        foreach (var line in new[] { beside, across - beside })
            foreach (var place in row.Places)
            {
                var at = alongX ? new Position(place, line) : new Position(line, place);
                clearances.Add(Bore.Through(id, entry, at, screw.Clearance, BoreUse.Clearance));
                if (depth.Value > Tolerance.Length) pilots.Add(Bore.Blind(id, held, receiving.OnFace(through.ToAssembly(at)), screw.EdgePilot, depth, BoreUse.Pilot));
                var head = through.Placement.ToAssembly(through.OnSurface(entry, at.Point));
                fasteners.Add(new Fastener(head, head + into * screw.Length.Value));
            }

        return new WrittenJoint(new Joint(id, through.Id, entry, receiving.Id, held, screw, row, fasteners.ToImmutable()), clearances.ToImmutable(), pilots.ToImmutable());
    }

    private static (Surface Entry, Surface Held) Meeting(Panel through, Panel receiving)
    {
        Surface[] faces = [Surface.Inside, Surface.Outside];
        foreach (var face in faces)
            foreach (var held in faces)
            {
                var axis = through.Facing(face).Axis();
                double Level(Panel panel, Surface surface) => panel.Placement!.ToAssembly(panel.OnSurface(surface, default)).Along(axis);
                if (through.Facing(face) == receiving.Facing(held).Opposite() && Tolerance.Same(Level(through, face), Level(receiving, held))) return (face.Opposite(), held);
            }

        throw new ArgumentException($"No face of {through.Id} lies on one of {receiving.Id}.", nameof(receiving));
    }
}
