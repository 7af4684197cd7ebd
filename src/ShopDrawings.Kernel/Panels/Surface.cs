namespace ShopDrawings.Kernel;

/// <summary>
/// A face or an edge of a panel, by its place in the panel's frame. Positions on a face are (x, y) of the panel, on both faces alike, so an
/// outside feature appears as seen through. Positions on an edge are the distance along it (y on <see cref="Start"/> and <see cref="End"/>,
/// x on <see cref="Near"/> and <see cref="Far"/>) and the height z above the outside face.
/// </summary>
public enum Surface
{
    /// <summary>The face that looks into the cabinet, z = thickness.</summary>
    Inside,

    /// <summary>The face that looks out, z = 0.</summary>
    Outside,

    /// <summary>The edge at x = 0.</summary>
    Start,

    /// <summary>The edge at x = length.</summary>
    End,

    /// <summary>The edge at y = 0.</summary>
    Near,

    /// <summary>The edge at y = width.</summary>
    Far,
}

/// <summary>Arithmetic of surfaces.</summary>
public static class Surfaces
{
    /// <summary>All four edges.</summary>
    public static IReadOnlyList<Surface> Edges { get; } = [Surface.Start, Surface.End, Surface.Near, Surface.Far];

    /// <summary>Whether it is one of the two faces.</summary>
    public static bool IsFace(this Surface surface) => surface is Surface.Inside or Surface.Outside;

    /// <summary>The direction into the material, in the panel's frame.</summary>
    public static Point3 Into(this Surface surface) => surface switch
    {
        Surface.Inside => new(0, 0, -1),
        Surface.Outside => new(0, 0, 1),
        Surface.Start => new(1, 0, 0),
        Surface.End => new(-1, 0, 0),
        Surface.Near => new(0, 1, 0),
        Surface.Far => new(0, -1, 0),
        _ => throw new ArgumentOutOfRangeException(nameof(surface)),
    };

    /// <summary>The face opposite a face, the edge opposite an edge.</summary>
    public static Surface Opposite(this Surface surface) => (Surface)((int)surface ^ 1);
}
