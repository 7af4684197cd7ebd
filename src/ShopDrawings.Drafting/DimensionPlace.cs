using System.Collections.Immutable;
using static ShopDrawings.Drafting.DimensionProportions;

namespace ShopDrawings.Drafting;

/// <summary>
/// Where the parts of a straight dimension lie along its line, in mm from its first end: what is drawn, and what a layout must keep free, come from here.
/// </summary>
/// <param name="Lines">The pieces of the dimension line, tails of arrows outside included.</param>
/// <param name="HasArrowsInside">Whether the arrows stand between the extension lines; else outside.</param>
/// <param name="IsWide">Whether the text finds no room between the extension lines.</param>
/// <param name="Text">The middle of the text.</param>
/// <param name="HalfText">Half of what the text takes along the line.</param>
internal readonly record struct DimensionPlace(ImmutableArray<(double From, double To)> Lines, bool HasArrowsInside, bool IsWide, double Text, double HalfText)
{
    /// <summary>The place of a dimension's parts.</summary>
    /// <param name="dimension">The dimension; what it measures is the length of the line.</param>
    /// <param name="level">How much a step along the line goes to the right, 0 to 1.</param>
    /// <param name="up">How much it goes up.</param>
    public static DimensionPlace Of(Dimension dimension, double level, double up) =>
        Of(dimension.Measured, Lettering.Width(dimension.Text, dimension.Height), dimension.Height, dimension.Standard, level, up);

    /// <summary>The place of the parts of a dimension with a line and a text of given lengths.</summary>
    public static DimensionPlace Of(double length, double width, double height, DrawingStandard standard, double level, double up)
    {
        var (tail, gap, arrows) = (2 * ArrowLength * height, TextGap * height, 3 * ArrowLength * height);
        if (!standard.IsTextInLine)
        {
            // Arrows go outside where there is no room for both between the extension lines.
            var inside = length >= arrows;
            return new(inside ? [(0, length)] : [(-tail, length + tail)], inside, width + 2 * gap > length, length / 2, width / 2);
        }

        // A level text takes of a slanting line what its box covers at most.
        var half = Math.Min(level > 1e-9 ? width / 2 / level : double.PositiveInfinity, up > 1e-9 ? height / 2 / up : double.PositiveInfinity);
        var (before, after) = (length / 2 - half - gap, length / 2 + half + gap);
        if (2 * before >= arrows) return new([(0, before), (after, length)], true, false, length / 2, half);
        if (before >= 0) return new([(-tail, 0), (length, length + tail)], false, false, length / 2, half);
        return new([(-tail, 0), (length, length + tail)], false, true, length + tail + gap + half, half);
    }

    /// <summary>What the line and the text take along the line.</summary>
    public (double From, double To) Reach => (Math.Min(Lines[0].From, Text - HalfText), Math.Max(Lines[^1].To, Text + HalfText));
}
