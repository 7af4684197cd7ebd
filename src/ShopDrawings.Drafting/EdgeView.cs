using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>
/// The edges of a panel that are drilled, each unfolded beside the face: as if the edge were turned up about the arris it shares with the face
/// that lies up, and moved away.
/// </summary>
internal static class EdgeView
{
    /// <summary>The views of a lying panel.</summary>
    /// <param name="lying">The panel where it lies.</param>
    /// <param name="layers">Names of the layers.</param>
    /// <param name="all">Whether bores that no machine makes are shown too.</param>
    public static IEnumerable<Entity> Of(LyingPanel lying, MachineLayers layers, bool all)
    {
        var panel = lying.Panel;
        foreach (var edge in Surfaces.Edges)
        {
            var bores = panel.Features.OfType<Bore>().Where(b => b.Surface == edge && (all || b.Method == BoreMethod.Machined)).ToList();
            if (bores.Count == 0) continue;
            var name = panel.NameOf(edge);
            var length = (edge is Surface.Start or Surface.End ? panel.Width : panel.Length).Value;
            var (a, b) = (Unfolded(lying, edge, new(0, 0)), Unfolded(lying, edge, new(length, panel.Thickness.Value)));
            var box = Box2.Around([a, b]);
            yield return new ContourEntity(layers.OfEdge(name), Contour.Rectangle(box.Min.X, box.Min.Y, box.Max.X, box.Max.Y));
            foreach (var bore in bores) yield return new CircleEntity(layers.OfEdgeBore(name, bore), Unfolded(lying, edge, bore.At.Point), bore.Diameter.Value / 2);
        }
    }

    /// <summary>Where a place on an edge, given along it and above the outside face, is drawn.</summary>
    private static Point2 Unfolded(LyingPanel lying, Surface edge, Point2 at)
    {
        var below = lying.Lie.Up == Surface.Inside ? lying.Panel.Thickness.Value - at.Y : at.Y;
        var away = MachineDrawing.Beside + below;
        Point2 beside = edge switch
        {
            Surface.Near => new Point2(at.X, -away),
            Surface.Far => new(at.X, lying.Panel.Width.Value + away),
            Surface.Start => new(-away, at.X),
            _ => new(lying.Panel.Length.Value + away, at.X),
        };
        return lying.Lie.Of(beside);
    }
}
