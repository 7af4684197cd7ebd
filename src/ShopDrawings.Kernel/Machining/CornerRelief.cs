using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>
/// Bays that free the inner corners of an edge: a circle of the tool's radius whose middle lies on the corner's bisector at that radius from
/// the corner, which it just touches. In a right corner the middle is r ÷ √2 from each wall (derived, geometry). Only corners of 90 degrees and
/// more between straight walls long enough for the bay are freed; into a sharper one the tool cannot go, and it stays round. The bay that is
/// drawn is a hair wider than the tool, so that the tool can go in.
/// </summary>
public static class CornerRelief
{
    // A corner blunter than this is left alone: hardly anything stays in it.
    private const double LeastTurn = Math.PI / 9;

    // A right angle, and what rounding adds to it.
    private const double MostTurn = Math.PI / 2 + 1e-6;

    private const double Hair = 0.05;

    /// <summary>What stays in a right corner that is not freed: from the corner to the tool, in mm (derived, geometry).</summary>
    public static double Residue(double radius) => radius * (Math.Sqrt(2) - 1);

    /// <summary>From each wall of a right corner to the tool's middle, in mm (derived, geometry).</summary>
    public static double FromWall(double radius) => radius / Math.Sqrt(2);

    /// <summary>How far the bay reaches into each wall of a right corner, in mm (derived, geometry).</summary>
    public static double IntoWall(double radius) => radius - FromWall(radius);

    /// <summary>How much of each wall the bay of a right corner takes, in mm.</summary>
    internal static double AlongWall(double radius) => 2 * (radius + Hair) * Math.Sin(Math.PI / 4);

    /// <summary>The inner corners of an edge, seen from the side the tool is on, that can be freed; none where their bays would meet the edge elsewhere.</summary>
    internal static ImmutableArray<Bay> Of(Contour contour, bool isOutside, double radius)
    {
        var segments = contour.Segments;
        var bays = ImmutableArray.CreateBuilder<Bay>();
        for (var i = 0; i < segments.Length; i++)
        {
            var (a, b) = (segments[i], segments[(i + 1) % segments.Length]);
            if (!a.IsLine || !b.IsLine) continue;
            var (u, v) = (Unit(a), Unit(b));
            var turn = Math.Atan2(u.Cross(v), u.Dot(v)) * (isOutside ? -1 : 1);
            if (turn < LeastTurn || turn > MostTurn) continue;
            var along = 2 * (radius + Hair) * Math.Sin(turn / 2);
            if (a.Length < 2 * along || b.Length < 2 * along) continue;
            var inwards = v - u;
            bays.Add(new Bay(i, a.End, a.End + inwards * (radius / inwards.Length), a.End - u * along, a.End + v * along, Math.Tan(turn / 2) * (isOutside ? -1 : 1)));
        }

        return bays.Count == 0 || Contour.TryCreate(WithBays(contour, bays), out _) is null ? bays.ToImmutable() : [];
    }

    /// <summary>The edge with its bays, all those found in it or some.</summary>
    internal static Contour Freed(Contour contour, ImmutableArray<Bay> bays) => bays.IsEmpty ? contour : Contour.FromSegments(WithBays(contour, bays));

    private static List<Segment> WithBays(Contour contour, IEnumerable<Bay> bays)
    {
        var after = bays.ToDictionary(b => b.After);
        var segments = new List<Segment>();
        for (var i = 0; i < contour.Segments.Length; i++)
        {
            var s = contour.Segments[i];
            if (after.TryGetValue((i + contour.Segments.Length - 1) % contour.Segments.Length, out var before)) s = s with { Start = before.End };
            if (after.TryGetValue(i, out var bay))
            {
                segments.Add(s with { End = bay.Start });
                segments.Add(new Segment(bay.Start, bay.End, bay.Bulge));
            }
            else segments.Add(s);
        }

        return segments;
    }

    /// <summary>A tool's way that goes out into each bay and back where it turns for its corner.</summary>
    internal static ImmutableArray<Segment> WithSpikes(ImmutableArray<Segment> way, ImmutableArray<Bay> bays)
    {
        var segments = ImmutableArray.CreateBuilder<Segment>();
        foreach (var s in way)
        {
            segments.Add(s);
            foreach (var bay in bays)
            {
                // On the bisector, where the offset walls meet: r ÷ cos(half the turn) from the corner.
                var apart = bay.Centre - bay.Corner;
                var half = Math.Atan(Math.Abs(bay.Bulge));
                var turning = bay.Corner + apart * (1 / Math.Cos(half));
                if (s.End.DistanceTo(turning) > 10 * Tolerance.Length) continue;
                segments.Add(new Segment(s.End, bay.Centre));
                segments.Add(new Segment(bay.Centre, s.End));
            }
        }

        return segments.ToImmutable();
    }

    private static Point2 Unit(Segment line) => (line.End - line.Start) * (1 / line.Start.DistanceTo(line.End));

    /// <summary>A bay.</summary>
    /// <param name="After">Index of the wall before the corner.</param>
    /// <param name="Corner">The corner.</param>
    /// <param name="Centre">The tool's middle in the bay.</param>
    /// <param name="Start">Where the bay leaves the first wall.</param>
    /// <param name="End">Where it meets the second.</param>
    /// <param name="Bulge">Of its arc from one to the other, through the corner.</param>
    internal sealed record Bay(int After, Point2 Corner, Point2 Centre, Point2 Start, Point2 End, double Bulge);
}
