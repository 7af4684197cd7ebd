using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>The ways of a tool's middle that leave a wanted edge standing: half the tool's diameter in the waste, once.</summary>
internal static class ToolWays
{
    // Ways through a pocket lie this share of the diameter apart: under half, so that nothing stays between them, also in the corners.
    private const double StepOver = 0.45;

    // What stays of a groove that is hardly wider than its cutter, in mm; files agree no closer.
    private const double SameWidth = 2e-4;

    /// <summary>Whether a tool reaches every straight and round part of an edge by a closed way; its corners stay as round as the tool.</summary>
    public static bool Follow(Contour edge, bool isOutside, double diameter) => edge.ExactOffset(isOutside ? diameter / 2 : -diameter / 2) is not null;

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
            // What lies within a ring this narrow the one around it mills.
            ways.AddRange(rings.Where(ring => Tolerance.Exceeds(Math.Min(ring.Bounds.Width, ring.Bounds.Height), (1 - 2 * StepOver) * diameter)).Select(ring => ToolPath.Along(ring, isOutside: false)));
        }

        ways.Reverse();
        return [.. ways, .. last];
    }

    /// <summary>The ways that mill a groove: along its middle where the cutter is as wide, else within its edge.</summary>
    /// <param name="from">One end of the groove's middle line.</param>
    /// <param name="to">The other end.</param>
    /// <param name="width">Its width, in mm, not less than the cutter's.</param>
    /// <param name="diameter">The cutter's, in mm.</param>
    /// <param name="bays">The corners of closed ends to go out into.</param>
    /// <param name="isOpen">Whether the groove runs out of the panel there, and the cutter with it.</param>
    /// <param name="tolerance">How far a general outline may be off, in mm.</param>
    public static ImmutableArray<ToolPath> Groove(Point2 from, Point2 to, double width, double diameter, ImmutableArray<CornerRelief.Bay> bays, (bool From, bool To) isOpen, double tolerance)
    {
        var along = to - from;
        along *= 1 / along.Length;
        var (start, end) = (isOpen.From ? from - along * diameter : from, isOpen.To ? to + along * diameter : to);
        if (width - diameter > SameWidth) return Within(Contour.Strip(start, end, width), diameter, bays, tolerance);
        var radius = along * (diameter / 2);
        return [ToolPath.Through([start + radius, end - radius])];
    }
}
