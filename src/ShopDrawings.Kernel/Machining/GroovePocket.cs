using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>
/// A groove as a cutter makes it. Where it runs out of the panel, at an end or along a side, the pocket goes on beyond the edge by the cutter's
/// diameter, so that no round corners stay. Where it stops and its corners are to be free, they get bays, or the pocket goes on by the cutter's
/// radius where it is too narrow for them. Lengths in mm.
/// </summary>
/// <param name="Edge">The edge the cutter follows, without bays.</param>
/// <param name="Bays">The corners to go out into.</param>
/// <param name="StopsRound">Whether an end inside the panel stays as round as the cutter.</param>
internal sealed record GroovePocket(Contour Edge, ImmutableArray<CornerRelief.Bay> Bays, bool StopsRound)
{
    /// <summary>The pocket of a groove of a lying panel.</summary>
    /// <param name="lying">The panel.</param>
    /// <param name="groove">The groove.</param>
    /// <param name="diameter">The cutter's.</param>
    /// <param name="isRelieved">Whether closed ends are to take square corners.</param>
    public static GroovePocket Of(LyingPanel lying, Groove groove, double diameter, bool isRelieved)
    {
        var (from, to, width) = (groove.From.Point, groove.To.Point, groove.Width.Value);
        var along = (to - from) * (1 / from.DistanceTo(to));
        var side = along.Left * (width / 2);
        // A side runs out where all of it does; one that slants out of the panel does not.
        double Along(Point2 off) => new[] { from, (from + to) * 0.5, to }.Min(p => Out(p + off));
        var (start, end, left, right) = (AtEnd(from, along * -1), AtEnd(to, along), Along(side), Along(side * -1));
        var isNarrow = isRelieved && width < 2 * CornerRelief.AlongWall(diameter / 2);
        double Closed(double beyond) => beyond > 0 ? beyond : isNarrow ? diameter / 2 : 0;

        // Corners in order: start right, end right, end left, start left.
        var (a, b) = (from - along * Closed(start), to + along * Closed(end));
        var (l, r) = (side + along.Left * left, side * -1 - along.Left * right);
        Point2[] corners = [a + r, b + r, b + l, a + l];
        var edge = lying.Lie.Of(Contour.FromSegments(corners.Select((c, i) => new Segment(c, corners[(i + 1) % 4]))));
        var stops = start <= 0 || end <= 0;
        if (!isRelieved || isNarrow) return new(edge, [], stops && !isRelieved);
        var freed = CornerRelief.Of(edge, isOutside: false, diameter / 2)
            .Where(bay => new[] { (start, right), (end, right), (end, left), (start, left) }.Zip(corners).Any(c => c.First.Item1 <= 0 && c.First.Item2 <= 0 && lying.Lie.Of(c.Second).DistanceTo(bay.Corner) <= Tolerance.Length));
        return new(edge, [.. freed], false);

        // An end that slants out of the panel goes on until both its corners are out, or as far as it is wide.
        double AtEnd(Point2 at, Point2 onwards) => RunsOut(lying.Panel, at) ? diameter + new[] { at, at + side, at - side }.Max(p => Leaving(p, onwards)) : 0;

        double Leaving(Point2 at, Point2 onwards)
        {
            const double Step = 1e-3;
            var (way, outline) = (0.0, lying.Panel.CutOutline);
            for (var p = at; way < width && outline.Contains(p) && outline.DistanceTo(p) > Tolerance.Length; p = at + onwards * way) way += Math.Max(Step, outline.DistanceTo(p));
            return Math.Min(way, width);
        }

        // How far the pocket goes on where it runs out of the panel; 0 where it does not.
        double Out(Point2 at) => !RunsOut(lying.Panel, at) ? 0 : lying.Panel.CutOutline.Contains(at) ? diameter + lying.Panel.CutOutline.DistanceTo(at) : diameter;
    }

    /// <summary>How much room a cutter has along a groove: its length, or no end where it runs out of the panel.</summary>
    public static double LengthOf(Panel panel, Groove groove) =>
        RunsOut(panel, groove.From.Point) || RunsOut(panel, groove.To.Point) ? double.PositiveInfinity : groove.From.Point.DistanceTo(groove.To.Point);

    // Out of the finished panel, or of the sawn one, which is larger where more is milled off than the band is thick. What is thinner than paper is no wall.
    private static bool RunsOut(Panel panel, Point2 at)
    {
        const double Thinnest = 0.02;
        return new[] { panel.CutOutline, panel.Outline }.Any(o => !o.Contains(at) || o.DistanceTo(at) <= Thinnest);
    }
}
