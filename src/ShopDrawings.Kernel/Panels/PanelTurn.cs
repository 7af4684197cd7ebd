using System.Globalization;

namespace ShopDrawings.Kernel;

/// <summary>
/// How one panel lies on another of its size: as it is, turned over end for end or side for side, or both, which is a half turn in its plane.
/// </summary>
/// <param name="FlipX">Whether its start lies on the other's end.</param>
/// <param name="FlipY">Whether its near edge lies on the other's far edge.</param>
internal readonly record struct PanelTurn(bool FlipX, bool FlipY)
{
    /// <summary>As it is, or turned half round.</summary>
    public static IReadOnlyList<PanelTurn> Equal { get; } = [new(false, false), new(true, true)];

    /// <summary>Turned over: side for side, or end for end.</summary>
    public static IReadOnlyList<PanelTurn> Mirrored { get; } = [new(false, true), new(true, false)];

    /// <summary>Where a point of a panel's face comes to lie.</summary>
    public Point2 Of(Panel panel, Point2 p) => new(FlipX ? panel.Length.Value - p.X : p.X, FlipY ? panel.Width.Value - p.Y : p.Y);

    /// <summary>Where an edge comes to lie.</summary>
    public Surface Of(Surface edge) => (edge is Surface.Start or Surface.End && FlipX) || (edge is Surface.Near or Surface.Far && FlipY) ? edge.Opposite() : edge;

    /// <summary>
    /// A length as a text by which equal ones are found: steps of 1e-4 mm that begin where no sixteenth of an inch, half millimetre or middle
    /// of one lies, so that two numbers that differ in their last bits alone fall into one step.
    /// </summary>
    public static string Key(double value) => Math.Floor(value * 1e4 + 0.317).ToString("0", CultureInfo.InvariantCulture);

    /// <summary>A point as a text by which equal ones are found.</summary>
    public static string Key(Point2 p) => $"{Key(p.X)},{Key(p.Y)}";
}
