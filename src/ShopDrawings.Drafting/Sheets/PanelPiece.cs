using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>A panel on paper, or the part of a long one between two places along it.</summary>
/// <param name="Panel">The panel.</param>
/// <param name="From">Where it begins along the panel, in mm from corner 0.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Origin">Its lower left corner on paper.</param>
/// <param name="Factor">Millimetres on paper for one of the panel.</param>
internal sealed record PanelPiece(Panel Panel, double From, double To, Point2 Origin, double Factor)
{
    /// <summary>Whether the panel's start is in it.</summary>
    public bool IsFirst => From <= 0;

    /// <summary>Whether the panel's end is in it.</summary>
    public bool IsLast => To >= Panel.Length.Value;

    /// <summary>The upper right corner on paper.</summary>
    public Point2 Far => OnPaper(new(To, Panel.Width.Value));

    /// <summary>Where it lies on paper.</summary>
    public Box2 Box => new(Origin, Far);

    /// <summary>Where a point of the panel lies on paper.</summary>
    public Point2 OnPaper(Point2 p) => Origin + new Point2(p.X - From, p.Y) * Factor;

    /// <summary>Whether a place along the panel is in it.</summary>
    public bool Holds(double x) => x >= From - Tolerance.Length && x <= To + Tolerance.Length;

    /// <summary>A line or an arc of the panel as far as it is in the piece, on paper. Pieces meet where no arc is.</summary>
    public Segment? Clipped(Segment segment)
    {
        if (segment is { IsLine: true } && segment.Start.X != segment.End.X)
        {
            var run = segment.End.X - segment.Start.X;
            var (a, b) = ((From - segment.Start.X) / run, (To - segment.Start.X) / run);
            var (first, last) = (Math.Clamp(Math.Min(a, b), 0, 1), Math.Clamp(Math.Max(a, b), 0, 1));
            if ((last - first) * segment.Length <= Tolerance.Length) return null;
            if (first > 0 || last < 1) segment = segment.Part(first, last);
        }
        else if (!Holds(segment.Middle.X)) return null;

        return new Segment(OnPaper(segment.Start), OnPaper(segment.End), segment.Bulge);
    }
}
