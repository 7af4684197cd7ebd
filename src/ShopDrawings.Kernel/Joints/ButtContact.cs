namespace ShopDrawings.Kernel;

/// <summary>Where a straight edge of one placed panel lies on a face of another, or in a housing cut into it.</summary>
/// <param name="Face">The face of the one.</param>
/// <param name="Edge">The edge of the other.</param>
/// <param name="From">Where the stretch begins, along the edge.</param>
/// <param name="Length">How long the stretch is where both touch: the held panel's own length where the other covers it.</param>
internal sealed record ButtContact(Surface Face, Surface Edge, Size From, Size Length)
{
    /// <summary>The contact of two panels, or nothing where no edge of the second lies in a face of the first.</summary>
    /// <param name="through">The panel with the face.</param>
    /// <param name="receiving">The panel with the edge.</param>
    /// <param name="housing">How deep below the face the edge lies.</param>
    public static ButtContact? Of(Panel through, Panel receiving, double housing = 0)
    {
        foreach (var edge in Surfaces.Edges)
            foreach (var face in (ReadOnlySpan<Surface>)[Surface.Inside, Surface.Outside])
                if (Stretch(through, face, receiving, edge, housing) is var (from, length)) return new ButtContact(face, edge, from, length);
        return null;
    }

    /// <summary>The assembly axis an edge runs along.</summary>
    public static int AxisOf(Panel panel, Surface edge) =>
        (edge is Surface.Near or Surface.Far ? panel.Placement!.AlongLength : panel.Placement!.AlongWidth).Axis();

    // The stretch of the edge, in the receiving panel's frame, that lies on the face; nothing where they do not touch.
    private static (Size From, Size Length)? Stretch(Panel through, Surface face, Panel receiving, Surface edge, double housing)
    {
        if (through.Facing(face) != receiving.Facing(edge).Opposite()) return null;
        var outwards = through.Facing(face);
        var normal = outwards.Axis();
        if (!Tolerance.Same(PlaneOf(through, face, normal) - (outwards.IsPositive() ? housing : -housing), PlaneOf(receiving, edge, normal))) return null;
        var across = receiving.Placement!.Inwards.Axis();
        var (faceFrom, faceTo) = through.Extent(across);
        var (edgeFrom, edgeTo) = receiving.Extent(across);
        if (Tolerance.Exceeds(faceFrom.Value, edgeFrom.Value) || Tolerance.Exceeds(edgeTo.Value, faceTo.Value)) return null;
        if (StraightPart(receiving, edge) is not { } own) return null;

        var along = AxisOf(receiving, edge);
        var (a, b) = through.Extent(along);
        var (first, last) = (receiving.ToPanel(along, a), receiving.ToPanel(along, b));
        if (first.Value > last.Value) (first, last) = (last, first);
        var from = Tolerance.Exceeds(first.Value, own.From.Value) ? first : own.From;
        var to = Tolerance.Exceeds(own.To.Value, last.Value) ? last : own.To;
        return Tolerance.Exceeds(to.Value, from.Value) ? (from, to - from) : null;
    }

    private static double PlaneOf(Panel panel, Surface surface, int axis) =>
        panel.Placement!.ToAssembly(panel.OnSurface(surface, default)).Along(axis);

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
