using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>The ways of a tool's middle that leave a wanted edge standing: half the tool's diameter in the waste, once. Lengths in mm.</summary>
internal static class ToolWays
{
    // Ways through a pocket lie this share of the diameter apart: under half, so that nothing stays between them, also in the corners.
    private const double StepOver = 0.45;

    // A way keeps a sharp corner where it would not swing out further than this; a laser's do, a router's go round.
    private const double Tip = 0.1;

    // How much of an edge may stay uncut where nobody would see it.
    private const double Unseen = 0.02;

    /// <summary>The ways along an edge. Nothing where the tool is too wide for it.</summary>
    /// <param name="edge">The wanted edge.</param>
    /// <param name="isOutside">Whether the waste is outside it.</param>
    /// <param name="diameter">Of the tool.</param>
    /// <param name="bays">The corners to go out into.</param>
    /// <param name="tolerance">How far a general outline may be off.</param>
    public static ImmutableArray<ToolPath> Along(Contour edge, bool isOutside, double diameter, ImmutableArray<CornerRelief.Bay> bays, double tolerance)
    {
        var radius = diameter / 2;
        if (!isOutside && MiddleOf(edge, radius) is { } middle) return [middle];
        return
        [
            .. edge.Offset(isOutside ? radius : -radius, tolerance, Tip)
                .Select(way => ToolPath.Along(way, isOutside))
                .Select(way => bays.IsEmpty ? way : new ToolPath(CornerRelief.WithSpikes(way.Segments, bays), isClosed: true)),
        ];
    }

    /// <summary>Whether a tool on these ways cuts all of an edge but the inner corners it is too round for.</summary>
    public static bool Follow(ImmutableArray<ToolPath> ways, Contour edge, bool isOutside, double diameter)
    {
        const int Samples = 8;
        if (ways.IsEmpty) return false;
        var (radius, segments) = (diameter / 2, edge.Segments);
        for (var i = 0; i < segments.Length; i++)
        {
            var s = segments[i];
            var (start, end) = (Untouched(segments[(i + segments.Length - 1) % segments.Length], s), Untouched(s, segments[(i + 1) % segments.Length]));
            for (var k = 0; k <= Samples; k++)
            {
                // More of them near the ends, where a way is lost first.
                var along = s.Length * (1 - Math.Cos(Math.PI * k / Samples)) / 2;
                if (along < start - Unseen || along > s.Length - end + Unseen) continue;
                var point = s.At(along / s.Length);
                if (!ways.Any(w => w.Segments.Any(p => p.DistanceTo(point) <= radius + Unseen))) return false;
            }
        }

        return true;

        // How far from an inner corner, seen from the tool's side, a round tool stays off its walls.
        double Untouched(Segment a, Segment b)
        {
            var (u, v) = (a.DirectionAt(1), b.DirectionAt(0));
            var turn = Math.Atan2(u.Cross(v), u.Dot(v)) * (isOutside ? -1 : 1);
            return turn <= 1e-6 ? 0 : turn > Math.PI - 1e-6 ? double.PositiveInfinity : radius * Math.Tan(turn / 2);
        }
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

    // A slot, or a strip, as wide as the tool: along its middle.
    private static ToolPath? MiddleOf(Contour edge, double radius)
    {
        if (edge.Segments is not [var a, var b, var c, var d]) return null;
        if (a.IsLine && c.IsLine && b.Length > 0 && Tolerance.Same(a.End.DistanceTo(c.Start), 2 * radius) && Tolerance.Same(a.Start.DistanceTo(c.End), 2 * radius) && Tolerance.Same(a.Length, c.Length))
            return Middle((a.Start + c.End) * 0.5, (a.End + c.Start) * 0.5, !d.IsLine, !b.IsLine);
        if (b.IsLine && d.IsLine && Tolerance.Same(b.End.DistanceTo(d.Start), 2 * radius) && Tolerance.Same(b.Start.DistanceTo(d.End), 2 * radius) && Tolerance.Same(b.Length, d.Length))
            return Middle((b.Start + d.End) * 0.5, (b.End + d.Start) * 0.5, !a.IsLine, !c.IsLine);
        return null;

        // A round end is about the end of the middle line, a square one a radius beyond the way's.
        ToolPath? Middle(Point2 from, Point2 to, bool isFromRound, bool isToRound)
        {
            var along = (to - from) * (1 / from.DistanceTo(to));
            var (start, end) = (isFromRound ? from : from + along * radius, isToRound ? to : to - along * radius);
            return (end - start).Dot(along) > Tolerance.Length ? ToolPath.Through([start, end]) : null;
        }
    }
}
