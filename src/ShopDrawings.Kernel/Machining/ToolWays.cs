using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>The ways of a tool's middle that leave a wanted edge standing: half the tool's diameter in the waste, once.</summary>
internal static class ToolWays
{
    // Ways through a pocket lie this share of the diameter apart: under half, so that nothing stays between them, also in the corners.
    private const double StepOver = 0.45;

    /// <summary>The ways along an edge. Nothing where the tool is too large for it.</summary>
    /// <param name="edge">The wanted edge.</param>
    /// <param name="isOutside">Whether the waste is outside it.</param>
    /// <param name="diameter">Of the tool, in mm.</param>
    /// <param name="bays">The corners to go out into.</param>
    /// <param name="tolerance">How far a general outline may be off, in mm.</param>
    public static ImmutableArray<ToolPath> Along(Contour edge, bool isOutside, double diameter, ImmutableArray<CornerRelief.Bay> bays, double tolerance)
    {
        var radius = diameter / 2;
        return
        [
            .. edge.Offset(isOutside ? radius : -radius, tolerance)
                .Select(way => ToolPath.Along(way, isOutside))
                .Select(way => bays.IsEmpty ? way : new ToolPath(CornerRelief.WithSpikes(way.Segments, bays, radius), isClosed: true)),
        ];
    }

    /// <summary>The ways that mill away all within an edge, from the inside out; the last runs along the edge.</summary>
    public static ImmutableArray<ToolPath> Within(Contour edge, double diameter, ImmutableArray<CornerRelief.Bay> bays, double tolerance)
    {
        var last = Along(edge, isOutside: false, diameter, bays, tolerance);
        var ways = new List<ToolPath>();
        for (var distance = diameter / 2 + StepOver * diameter; last.Length > 0; distance += StepOver * diameter)
        {
            var rings = edge.Offset(-distance, tolerance);
            if (rings.IsEmpty) break;
            ways.AddRange(rings.Select(ring => ToolPath.Along(ring, isOutside: false)));
        }

        ways.Reverse();
        return [.. ways, .. last];
    }

    /// <summary>The ways that mill a groove: along its middle where the cutter is as wide, else within its edge.</summary>
    /// <param name="from">One end of the groove's middle line.</param>
    /// <param name="to">The other end.</param>
    /// <param name="width">Its width, in mm, not less than the cutter's.</param>
    /// <param name="diameter">The cutter's, in mm.</param>
    /// <param name="corners">What becomes of the corners at closed ends.</param>
    /// <param name="isOpen">Whether the groove runs out of the panel there, and the cutter with it.</param>
    /// <param name="tolerance">How far a general outline may be off, in mm.</param>
    public static ImmutableArray<ToolPath> Groove(Point2 from, Point2 to, double width, double diameter, InnerCorners corners, (bool From, bool To) isOpen, double tolerance)
    {
        var along = to - from;
        along *= 1 / along.Length;
        var (start, end) = (isOpen.From ? from - along * diameter : from, isOpen.To ? to + along * diameter : to);
        var radius = diameter / 2;
        if (width - diameter > 2 * Tolerance.Length)
        {
            var edge = Contour.Strip(start, end, width);
            var bays = corners == InnerCorners.Relieved ? ClosedEnds(edge) : [];
            return Within(edge, diameter, bays, tolerance);
        }

        // A closed end stays as round as the cutter, or is cut on by its radius so that its corners are free.
        var back = along * (corners == InnerCorners.Relieved ? 0 : radius);
        var (first, last) = (isOpen.From ? start : start + back, isOpen.To ? end : end - back);
        return (last - first).Dot(along) < Tolerance.Length ? [] : [ToolPath.Through([first, last])];

        ImmutableArray<CornerRelief.Bay> ClosedEnds(Contour edge) =>
            [.. CornerRelief.Of(edge, isOutside: false, radius).Where(b => (b.Corner - start).Dot(along) < width / 2 ? !isOpen.From : !isOpen.To)];
    }
}
