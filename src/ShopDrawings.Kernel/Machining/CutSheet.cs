using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>A panel that lies on a sheet or on a machine.</summary>
/// <param name="Panel">The panel.</param>
/// <param name="Lie">How it lies. It is turned over or turned round, never mirrored: a faced board has its good faces where they belong.</param>
public sealed record LyingPanel(Panel Panel, Lie Lie)
{
    /// <summary>The sawn outline where it lies.</summary>
    public Contour Outline => Lie.Of(Panel.CutOutline);

    /// <summary>A panel turned by quarters with one face up, the lower left corner of its sawn outline at a point, in mm.</summary>
    public static LyingPanel At(Panel panel, Point2 corner, int quarterTurns, Surface up)
    {
        var lie = new Lie(up == Surface.Outside, quarterTurns, default);
        return new(panel, lie.Moved(corner - lie.Of(panel.CutOutline).Bounds.Min));
    }
}

/// <summary>A sheet of board with the panels that are cut from it. Frame: x along its length, y along its width, origin in its lower left corner; mm.</summary>
/// <param name="Id">Its name, unique in the job.</param>
/// <param name="Board">What it is a sheet of.</param>
/// <param name="Length">Along the grain where the board has one, unless <see cref="HasGrainAcross"/> says otherwise.</param>
/// <param name="Width">Across the length.</param>
/// <param name="Panels">What is cut from it.</param>
public sealed record CutSheet(string Id, Board Board, Size Length, Size Width, ImmutableArray<LyingPanel> Panels)
{
    /// <summary>Whether the grain of a board that has one runs across the length.</summary>
    public bool HasGrainAcross { get; init; }

    /// <summary>The whole sheet.</summary>
    public Box2 Bounds => new(default, new(Length.Value, Width.Value));
}
