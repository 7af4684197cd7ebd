namespace ShopDrawings.Kernel;

/// <summary>
/// How a panel lies on a machine: turned over or not (then x runs backwards), turned by quarters anticlockwise, then moved. A rigid motion:
/// what is turned over shows its outside, and nothing else is ever mirrored.
/// </summary>
/// <param name="IsTurnedOver">Whether the outside lies up.</param>
/// <param name="QuarterTurns">Quarter turns anticlockwise, 0 to 3.</param>
/// <param name="Shift">Where the panel's origin comes to lie, in mm.</param>
public readonly record struct Lie(bool IsTurnedOver, int QuarterTurns, Point2 Shift)
{
    /// <summary>The face that lies up.</summary>
    public Surface Up => IsTurnedOver ? Surface.Outside : Surface.Inside;

    /// <summary>Where a point of the panel's frame lies, in mm.</summary>
    public Point2 Of(Point2 p)
    {
        if (IsTurnedOver) p = p with { X = -p.X };
        for (var i = 0; i < QuarterTurns; i++) p = p.Left;
        return p + Shift;
    }

    /// <summary>Where an outline of the panel's frame lies.</summary>
    public Contour Of(Contour contour)
    {
        var lie = this;
        return contour.Mapped(p => lie.Of(p), IsTurnedOver);
    }

    /// <summary>The same lie, moved by a vector.</summary>
    public Lie Moved(Point2 by) => this with { Shift = Shift + by };

    /// <summary>A panel on its own, with one face up, turned over about an axis where that is the outside; its frame's corner is at the origin.</summary>
    internal static Lie On(Panel panel, Surface up, FlipAxis flip) => (up, flip) switch
    {
        (Surface.Inside, _) => new(false, 0, default),
        (_, FlipAxis.Length) => new(true, 2, new(0, panel.Width.Value)),
        _ => new(true, 0, new(panel.Length.Value, 0)),
    };
}
