using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>A sheet and a scale for what is to be drawn.</summary>
/// <param name="Size">The sheet.</param>
/// <param name="Scale">The n of the scale 1:n.</param>
/// <param name="Used">The share of the room for views that is used, 0 to 1.</param>
public sealed record SheetChoice(SheetSize Size, int Scale, double Used)
{
    // How much more of its room a larger sheet must use to be taken instead of a smaller one: the largest is no sheet for a wall.
    private static readonly ImmutableArray<double> CostOfLarger = [0, 0, 0.05, 0.5];

    // How much less of its room may be used for a drawing twice as large.
    private const double WorthOfScale = 0.25;

    // From this reduction on lines run together, and what is gained by a larger scale counts double.
    private const double Crowded = 10;

    /// <summary>
    /// The sheet that is used best; a larger one must be used better, or show the drawing larger. Lettering keeps its height at every scale, so what is
    /// needed does not shrink in proportion. Where nothing fits, the largest sheet at the smallest scale.
    /// </summary>
    /// <param name="settings">What all sheets share: which sheets there are, and how notes are set.</param>
    /// <param name="notes">Notes for the sheet.</param>
    /// <param name="needed">Width and height in mm needed on paper at a scale 1:n on a sheet, and the area that is not empty then, in mm².</param>
    /// <param name="papers">How many of the sizes of paper, from the smallest, may be taken; all without it.</param>
    public static SheetChoice Of(SheetSettings settings, IReadOnlyList<string> notes, Func<int, SheetSize, (Point2 Size, double Area)> needed, int? papers = null)
    {
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentNullException.ThrowIfNull(needed);
        var sizes = settings.Standard.Sheets[..(papers ?? settings.Standard.Sheets.Length)];
        SheetChoice? best = null;
        var bestScore = double.NegativeInfinity;
        for (var i = 0; i < sizes.Length; i++)
        {
            var lines = SheetFrame.Wrapped(sizes[i], notes, settings).Length;
            if (!sizes[i].Holds(lines)) continue;
            var room = sizes[i].Room(lines);
            foreach (var scale in settings.Standard.Scales)
            {
                var need = needed(scale, sizes[i]);
                if (need.Size.X > room.Width || need.Size.Y > room.Height) continue;
                var used = need.Area / (room.Width * room.Height);
                var score = used - CostOfLarger[Math.Min(i, CostOfLarger.Length - 1)] - WorthOfScale * (Math.Log2(scale) + Math.Max(0, Math.Log2(scale / Crowded)));
                if (score > bestScore) (best, bestScore) = (new SheetChoice(sizes[i], scale, used), score);
                break;
            }
        }

        return best ?? new SheetChoice(sizes[^1], settings.Standard.Scales[^1], 1);
    }
}
