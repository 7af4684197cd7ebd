using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>Where a long panel is broken to be drawn in two pieces, one below the other: near its middle, at a whole place no feature is near and no row of bores passes.</summary>
internal static class PanelBreak
{
    private const double LeastLength = 1500;
    private const double LeastRatio = 4;
    private const double Clear = 15;

    /// <summary>The place along the panel in mm, or nothing where it is not long, has no straight sides there, or features leave no gap.</summary>
    public static double? Of(Panel panel, LengthStyle lengths, ImmutableArray<PitchRow> rows)
    {
        var (length, width) = (panel.Length.Value, panel.Width.Value);
        if (length < Math.Max(LeastLength, LeastRatio * width) || !panel.IsRectangular) return null;
        var step = lengths.IsInches ? 25.4 : 10;
        var taken = panel.Features.Select(Taken).OfType<(double From, double To)>().Concat(rows.Where(r => r.IsAlong).Select(r => (r.From, r.To))).ToList();
        for (var away = 0.0; away <= length / 10; away += step)
            foreach (var at in new[] { Whole(length / 2 - away, step), Whole(length / 2 + away, step) })
                if (!taken.Exists(t => at > t.From - Clear && at < t.To + Clear)) return at;
        return null;
    }

    private static double Whole(double mm, double step) => Math.Round(mm / step) * step;

    // Grooves and lines along the panel may run on from piece to piece.
    private static (double From, double To)? Taken(Feature feature) => feature switch
    {
        Bore { Surface: Surface.Start or Surface.End } => null,
        Bore bore => (bore.At.X.Value - bore.Diameter.Value / 2, bore.At.X.Value + bore.Diameter.Value / 2),
        CutOut cutOut => (cutOut.Outline.Bounds.Min.X, cutOut.Outline.Bounds.Max.X),
        Groove groove when groove.Outline.Segments.All(s => s.IsLine) && Tolerance.Same(groove.From.Point.Y, groove.To.Point.Y) => null,
        Groove groove => (groove.Outline.Bounds.Min.X, groove.Outline.Bounds.Max.X),
        Mark { To: { } to } mark when !Tolerance.Same(mark.From.Point.X, to.Point.X) => null,
        Mark mark => (mark.From.Point.X, mark.From.Point.X),
        _ => null,
    };
}
