using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>Writes the holes of a screwed butt joint into both panels.</summary>
internal static class ScrewedButt
{
    /// <summary>Material in mm that must stay on either side of a pilot in an edge: 4 mm (5/32 in), common practice, no source.</summary>
    public const double LeastWall = 4;

    /// <summary>
    /// Joins the face of one placed panel to the edge of another that lies against it. The row stands on the centre line of the receiving
    /// panel's thickness; its ends are measured from the ends of the stretch where the two touch, which are the receiving panel's own ends
    /// where the other covers it.
    /// </summary>
    /// <returns>Nothing where no face of the first lies on a straight edge of the second.</returns>
    public static WrittenJoint? Join(Panel through, Panel receiving, Screw screw, RowRule rule) =>
        Meeting(through, receiving) is var (face, edge, contact) ? Write(through, face, receiving, edge, contact, screw, rule) : null;

    /// <summary>Whether a face of the first panel lies on a straight edge of the second.</summary>
    public static bool Touch(Panel through, Panel receiving) => Meeting(through, receiving) is not null;

    private static (Surface Face, Surface Edge, (Size From, Size Length) Contact)? Meeting(Panel through, Panel receiving)
    {
        foreach (var edge in Surfaces.Edges)
            foreach (var face in (ReadOnlySpan<Surface>)[Surface.Inside, Surface.Outside])
                if (Contact(through, face, receiving, edge) is { } contact) return (face, edge, contact);
        return null;
    }

    private static WrittenJoint Write(Panel through, Surface face, Panel receiving, Surface edge, (Size From, Size Length) contact, Screw screw, RowRule rule)
    {
        var id = $"{through.Id}/{receiving.Id}";
        var entry = face.Opposite();
        var row = rule.On(contact.Length);
        var middle = (receiving.Thickness / 2).As("middle-of-thickness");
        var depth = (screw.Length - through.Thickness).As("pilot-depth");
        var alongEdge = EdgeAxis(receiving, edge);
        var acrossEdge = receiving.Placement!.Inwards.Axis();
        var intoEdge = receiving.Placement.DirectionToAssembly(edge.Into());

        var clearances = ImmutableArray.CreateBuilder<Bore>();
        var pilots = ImmutableArray.CreateBuilder<Bore>();
        var fasteners = ImmutableArray.CreateBuilder<Fastener>();
        foreach (var place in row.Places)
        {
            var along = contact.From + place;
            var point = Point(alongEdge, receiving.ToAssembly(alongEdge, along), acrossEdge, receiving.ToAssembly(acrossEdge, middle));
            clearances.Add(Bore.Through(id, entry, through.OnFace(point), screw.Clearance, BoreUse.Clearance));
            if (depth.Value > Tolerance.Length) pilots.Add(Bore.Blind(id, edge, new Position(along, middle), screw.EdgePilot, depth, BoreUse.Pilot));
            var inEdge = receiving.Placement.ToAssembly(receiving.OnSurface(edge, new Point2(along.Value, middle.Value)));
            var head = inEdge - intoEdge * through.Thickness.Value;
            fasteners.Add(new Fastener(head, head + intoEdge * screw.Length.Value));
        }

        var joint = new Joint(id, through.Id, entry, receiving.Id, edge, screw, row, fasteners.ToImmutable());
        return new WrittenJoint(joint, clearances.ToImmutable(), pilots.ToImmutable());
    }

    // The stretch of the edge, in the receiving panel's frame, that lies on the face; nothing where they do not touch.
    private static (Size From, Size Length)? Contact(Panel through, Surface face, Panel receiving, Surface edge)
    {
        if (through.Facing(face) != receiving.Facing(edge).Opposite()) return null;
        var normal = through.Facing(face).Axis();
        if (!Tolerance.Same(PlaneOf(through, face, normal), PlaneOf(receiving, edge, normal))) return null;
        var across = receiving.Placement!.Inwards.Axis();
        var (faceFrom, faceTo) = through.Extent(across);
        var (edgeFrom, edgeTo) = receiving.Extent(across);
        if (Tolerance.Exceeds(faceFrom.Value, edgeFrom.Value) || Tolerance.Exceeds(edgeTo.Value, faceTo.Value)) return null;
        if (StraightPart(receiving, edge) is not { } own) return null;

        var along = EdgeAxis(receiving, edge);
        var (a, b) = through.Extent(along);
        var (first, last) = (receiving.ToPanel(along, a), receiving.ToPanel(along, b));
        if (first.Value > last.Value) (first, last) = (last, first);
        var from = Tolerance.Exceeds(first.Value, own.From.Value) ? first : own.From;
        var to = Tolerance.Exceeds(own.To.Value, last.Value) ? last : own.To;
        return Tolerance.Exceeds(to.Value, from.Value) ? (from, to - from) : null;
    }

    private static double PlaneOf(Panel panel, Surface surface, int axis) =>
        panel.Placement!.ToAssembly(panel.OnSurface(surface, default)).Along(axis);

    private static int EdgeAxis(Panel panel, Surface edge) =>
        (edge is Surface.Near or Surface.Far ? panel.Placement!.AlongLength : panel.Placement!.AlongWidth).Axis();

    private static SizePoint Point(int along, Size alongValue, int across, Size acrossValue)
    {
        Size Pick(int axis) => axis == along ? alongValue : axis == across ? acrossValue : Size.Zero;
        return new SizePoint(Pick(0), Pick(1), Pick(2));
    }

    // The longest straight part of the outline on an edge of the panel's box.
    private static (Size From, Size To)? StraightPart(Panel panel, Surface edge)
    {
        var alongX = edge is Surface.Near or Surface.Far;
        var (level, whole) = edge switch
        {
            Surface.Start => (0.0, panel.Width),
            Surface.End => (panel.Length.Value, panel.Width),
            Surface.Near => (0.0, panel.Length),
            _ => (panel.Width.Value, panel.Length),
        };
        double From(Segment s) => alongX ? Math.Min(s.Start.X, s.End.X) : Math.Min(s.Start.Y, s.End.Y);
        double To(Segment s) => alongX ? Math.Max(s.Start.X, s.End.X) : Math.Max(s.Start.Y, s.End.Y);
        var parts = panel.Outline.Segments
            .Where(s => s.IsLine && Tolerance.Same(alongX ? s.Start.Y : s.Start.X, level) && Tolerance.Same(alongX ? s.End.Y : s.End.X, level))
            .OrderByDescending(s => To(s) - From(s)).ThenBy(From).ToArray();
        if (parts.Length == 0) return null;
        var (from, to) = (From(parts[0]), To(parts[0]));
        return (Tolerance.Same(from, 0) ? Size.Zero : Size.Constant(from), Tolerance.Same(to, whole.Value) ? whole : Size.Constant(to));
    }
}
