using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>A line that shows, before the scale.</summary>
/// <param name="Body">The number of the body it belongs to.</param>
/// <param name="Line">Where it lies on paper.</param>
internal sealed record VisibleLine(int Body, Segment Line);

/// <summary>A part of a circle that shows.</summary>
/// <param name="Body">The number of the body it belongs to.</param>
/// <param name="Axis">The axis its plane lies across.</param>
/// <param name="Level">Where its plane lies on the axis, in mm.</param>
/// <param name="Edge">The circle in the plane's coordinates.</param>
/// <param name="IsMouth">Whether it is the mouth of a bore.</param>
/// <param name="FromDegrees">Where it starts, anticlockwise from the plane's first coordinate.</param>
/// <param name="ToDegrees">Where it ends, at most 360 beyond the start.</param>
internal sealed record VisibleArc(int Body, int Axis, double Level, RoundEdge Edge, bool IsMouth, double FromDegrees, double ToDegrees);

/// <summary>
/// Removes hidden lines. A point of a plane across an axis is hidden where the line of sight meets material beyond that plane: inside the
/// outline of the part of some body on the viewer's side of the plane. Bodies are convex prisms, so that part is one too, and its outline the
/// hull of its corners. No order of bodies is needed, and bodies may touch, reach into each other or be hollow. Exact for flat surfaces that look
/// along axes; the foot of a wall that slants or is round is judged at its point nearest the viewer. A line on the outline of what hides is
/// not hidden unless there is material on both its sides. Where a flat wall runs on into a round one, the edge between them is drawn.
/// </summary>
internal sealed class HiddenLines
{
    // Half the width of the line that must be hidden for a line to be hidden, in mm: wider than rounding, narrower than any gap of a cabinet.
    private const double Aside = 1e-3;

    private const double Shortest = 1e-4;

    private const int MouthChords = 32;

    private readonly ImmutableArray<Body> bodies;
    private readonly Projection view;
    private readonly ImmutableArray<(Prism Prism, Hull Hull)> prisms;
    private readonly Dictionary<(int Axis, double Level), Hull[]> covers = [];

    // Used again from line to line.
    private readonly List<Hull> near = [];
    private readonly List<double> cuts = [];
    private readonly List<(double From, double To)> shares = [];

    private (ImmutableArray<VisibleLine> Lines, ImmutableArray<VisibleArc> Arcs)? edges;

    /// <summary>A view of bodies.</summary>
    public HiddenLines(IEnumerable<Body> bodies, Projection view)
    {
        (this.bodies, this.view) = ([.. bodies], view);
        prisms = [.. this.bodies.SelectMany(b => b.Prisms).Select(p => (p, p.Seen(view)))];
    }

    /// <summary>Every line and arc that shows. Of lines that lie on each other one is left.</summary>
    /// <param name="leastMouth">Bores smaller than this are left out, in mm.</param>
    public (ImmutableArray<VisibleLine> Lines, ImmutableArray<VisibleArc> Arcs) Draw(double leastMouth)
    {
        var (lines, arcs) = edges ??= Edges();
        return (lines, [.. arcs, .. Mouths(leastMouth)]);
    }

    private (ImmutableArray<VisibleLine> Lines, ImmutableArray<VisibleArc> Arcs) Edges()
    {
        var lines = new List<VisibleLine>();
        var arcs = new Arcs();
        for (var i = 0; i < bodies.Length; i++)
        {
            var body = bodies[i];
            void Line(Point3 from, Point3 to, int axis, double level)
            {
                foreach (var (a, b) in Showing(from, to, axis, level)) lines.Add(new VisibleLine(i, new Segment(view.Map(from + (to - from) * a), view.Map(from + (to - from) * b))));
            }

            void Edge(int axis, double level, Segment edge, RoundEdge? round)
            {
                var (from, to) = (Body.InSpace(axis, level, edge.Start), Body.InSpace(axis, level, edge.End));
                if (round is null) Line(from, to, axis, level);
                else foreach (var (a, b) in Showing(from, to, axis, level)) arcs.Add((i, axis, level, round), edge.At(a), edge.At(b));
            }

            foreach (var (axis, isPositive, level, pieces) in body.Surfaces)
            {
                if (!Faces(axis, isPositive)) continue;
                foreach (var piece in pieces)
                {
                    foreach (var edge in piece.Outline.Segments) Edge(axis, level, edge, axis == body.Axis ? body.RoundOf(edge) : null);
                    foreach (var hole in piece.Holes)
                        foreach (var edge in hole.Segments) Edge(axis, level, edge, axis == body.Axis ? body.RoundOf(edge) : null);
                }
            }

            foreach (var (from, to, axis, level, round) in Slanting(body))
            {
                if (round is not null) Edge(axis, level, new Segment(Body.OnPlane(axis, from), Body.OnPlane(axis, to)), round);
                else Line(from, to, axis, level);
            }
        }

        return (Joined(lines), arcs.Joined(isMouth: false));
    }

    private ImmutableArray<VisibleArc> Mouths(double least)
    {
        var arcs = new Arcs();
        for (var i = 0; i < bodies.Length; i++)
            foreach (var mouth in bodies[i].Mouths.Where(m => Faces(m.Axis, m.IsPositive) && 2 * m.Edge.Radius >= least))
            {
                var key = (i, mouth.Axis, mouth.Level, mouth.Edge);
                var around = OnPaper(mouth).Grown(2 * Aside);
                Near(around, Covers(mouth.Axis, mouth.Level));
                if (near.Exists(h => h.Contains(around))) continue;
                var isFree = near.Count == 0;
                for (var k = 0; k < MouthChords; k++)
                {
                    var chord = new Segment(At(mouth.Edge, 360.0 * k / MouthChords), At(mouth.Edge, 360.0 * (k + 1) / MouthChords));
                    if (isFree) arcs.Add(key, chord.Start, chord.End);
                    else foreach (var (a, b) in Showing(Body.InSpace(mouth.Axis, mouth.Level, chord.Start), Body.InSpace(mouth.Axis, mouth.Level, chord.End), mouth.Axis, mouth.Level))
                        arcs.Add(key, chord.At(a), chord.At(b));
                }
            }

        return arcs.Joined(isMouth: true);
    }

    private Box2 OnPaper(Mouth mouth)
    {
        var reach = new Point2(mouth.Edge.Radius, mouth.Edge.Radius);
        var (a, b) = (Body.InSpace(mouth.Axis, mouth.Level, mouth.Edge.Centre - reach), Body.InSpace(mouth.Axis, mouth.Level, mouth.Edge.Centre + reach));
        return view.Map(Box3.Between(a, b));
    }

    /// <summary>Whether a surface that looks along an axis is seen from the front.</summary>
    public bool Faces(int axis, bool isPositive) => view.ToViewer.Along(axis) is var w && (isPositive ? w > 0 : w < 0);

    /// <summary>Whether nothing hides a point of a surface that faces the viewer.</summary>
    public bool Shows(int axis, double level, Point3 point)
    {
        var at = view.Map(point);
        return !Array.Exists(Covers(axis, level), h => h.Contains(at));
    }

    /// <summary>A circle's point at an angle in degrees.</summary>
    public static Point2 At(RoundEdge edge, double degrees)
    {
        var (sin, cos) = Math.SinCos(degrees * (Math.PI / 180));
        return edge.Centre + new Point2(cos, sin) * edge.Radius;
    }

    // The feet of walls that slant or are round, and the edges between walls where one of them does: end to end, with a plane they lie in.
    private IEnumerable<(Point3 From, Point3 To, int Axis, double Level, RoundEdge? Round)> Slanting(Body body)
    {
        var walls = body.Walls;
        if (walls.All(w => w.Looks is not null)) yield break;
        var axis = body.Axis;
        var known = walls.Select(w => (w.Slab.Low, w.Edge.Start, w.Edge.End)).ToHashSet();
        var tops = walls.Select(w => (w.Slab.High, w.Edge.Start, w.Edge.End)).ToHashSet();
        var side = Enumerable.Range(1, 2).Select(n => (axis + n) % 3).Where(a => view.ToViewer.Along(a) != 0).Select(a => (int?)a).FirstOrDefault();
        double Nearest(Point3 a, Point3 b) => view.ToViewer.Along(side!.Value) > 0 ? Math.Max(a.Along(side.Value), b.Along(side.Value)) : Math.Min(a.Along(side.Value), b.Along(side.Value));
        foreach (var wall in walls)
        {
            var (slab, edge) = (wall.Slab, wall.Edge);
            if (wall.Looks is null && IsFacing(edge))
            {
                foreach (var (level, goesOn) in new[] { (slab.Low, tops.Contains((slab.Low, edge.Start, edge.End))), (slab.High, known.Contains((slab.High, edge.Start, edge.End))) })
                {
                    if (goesOn) continue;
                    var (from, to) = (Body.InSpace(axis, level, edge.Start), Body.InSpace(axis, level, edge.End));
                    if (view.ToViewer.Along(axis) != 0) yield return (from, to, axis, level, body.RoundOf(edge));
                    else yield return (from, to, side!.Value, Nearest(from, to), null);
                }
            }

            // Between two chords of one arc there is an edge only where the arc turns away from the viewer.
            var (first, second) = (wall.Looks is null && IsFacing(edge), wall.Next is var n && IsSlanting(n) && IsFacing(n));
            var isRound = wall.Looks is null && IsSlanting(wall.Next) && body.RoundOf(edge) is { } r && r == body.RoundOf(wall.Next);
            if (side is null || !(first || second) || (isRound && first && second)) continue;
            var (foot, head) = (Body.InSpace(axis, slab.Low, edge.End), Body.InSpace(axis, slab.High, edge.End));
            yield return (foot, head, side.Value, foot.Along(side.Value), null);
        }

        bool IsSlanting(Segment edge) => Math.Abs(edge.Start.X - edge.End.X) > Tolerance.Length && Math.Abs(edge.Start.Y - edge.End.Y) > Tolerance.Length;
        bool IsFacing(Segment edge)
        {
            var d = edge.End - edge.Start;
            return Body.InSpace(axis, 0, new Point2(d.Y, -d.X)).Dot(view.ToViewer) > 1e-9;
        }
    }

    // The shares of a line in a plane across an axis that show; good until the next call.
    private List<(double From, double To)> Showing(Point3 from, Point3 to, int axis, double level)
    {
        shares.Clear();
        var (p, q) = (view.Map(from), view.Map(to));
        var length = p.DistanceTo(q);
        if (length <= Shortest) return shares;
        Near(new Box2(new(Math.Min(p.X, q.X), Math.Min(p.Y, q.Y)), new(Math.Max(p.X, q.X), Math.Max(p.Y, q.Y))).Grown(2 * Aside), Covers(axis, level));
        if (near.Count == 0)
        {
            shares.Add((0, 1));
            return shares;
        }

        var aside = (q - p).Left * (Aside / length);
        cuts.Clear();
        cuts.Add(0);
        cuts.Add(1);
        foreach (var hull in near)
        {
            var (left, right) = (hull.Inside(p + aside, q + aside), hull.Inside(p - aside, q - aside));
            // Covered from end to end, on both sides: nothing shows, whatever else there is.
            if (left is (0, 1) && right is (0, 1)) return shares;
            foreach (var inside in (ReadOnlySpan<(double From, double To)?>)[left, right])
            {
                if (inside is not var (start, end)) continue;
                cuts.Add(start);
                cuts.Add(end);
            }
        }

        cuts.Sort();
        for (var i = 0; i + 1 < cuts.Count; i++)
        {
            var (a, b) = (cuts[i], cuts[i + 1]);
            if ((b - a) * length <= Shortest) continue;
            var middle = p + (q - p) * ((a + b) / 2);
            if (IsCovered(middle + aside) && IsCovered(middle - aside)) continue;
            if (shares.Count > 0 && (a - shares[^1].To) * length <= 2 * Shortest) shares[^1] = (shares[^1].From, b);
            else shares.Add((a, b));
        }

        return shares;
    }

    private bool IsCovered(Point2 at)
    {
        foreach (var hull in near)
            if (hull.Contains(at)) return true;
        return false;
    }

    // Those of some outlines that are near a box, for what is asked next.
    private void Near(Box2 box, Hull[] hulls)
    {
        near.Clear();
        foreach (var hull in hulls)
            if (hull.IsNear(box)) near.Add(hull);
    }

    // The outlines on paper of all material on the viewer's side of a plane across an axis.
    private Hull[] Covers(int axis, double level)
    {
        if (covers.TryGetValue((axis, level), out var known)) return known;
        var isAbove = view.ToViewer.Along(axis) > 0;
        var hulls = new List<Hull>(prisms.Length);
        foreach (var (prism, hull) in prisms)
            if (prism.Beyond(axis, level, isAbove) is { } left) hulls.Add(ReferenceEquals(left, prism) ? hull : left.Seen(view));
        return covers[(axis, level)] = [.. hulls];
    }

    // Lines that lie on each other become one, of the body that came first.
    private static ImmutableArray<VisibleLine> Joined(List<VisibleLine> lines)
    {
        var carriers = new Dictionary<(long, long, long), List<(double From, double To, int Body, Point2 Origin, Point2 Along)>>();
        foreach (var (body, line) in lines)
        {
            var along = (line.End - line.Start) * (1 / line.Length);
            if (along.X < -1e-7 || (Math.Abs(along.X) <= 1e-7 && along.Y < 0)) along *= -1;
            var key = ((long)Math.Round(along.X * 1e5), (long)Math.Round(along.Y * 1e5), (long)Math.Round(along.Cross(line.Start) * 1e3));
            var (a, b) = (along.Dot(line.Start), along.Dot(line.End));
            if (!carriers.TryGetValue(key, out var spans)) carriers.Add(key, spans = []);
            spans.Add((Math.Min(a, b), Math.Max(a, b), body, line.Start - along * a, along));
        }

        var joined = new List<VisibleLine>();
        foreach (var spans in carriers.Values)
        {
            var (from, to, body, origin, along) = (double.NaN, double.NaN, 0, default(Point2), default(Point2));
            foreach (var span in spans.OrderBy(s => s.From))
            {
                if (span.From <= to + 2 * Shortest)
                {
                    (to, body) = (Math.Max(to, span.To), Math.Min(body, span.Body));
                    continue;
                }

                if (!double.IsNaN(from)) joined.Add(new VisibleLine(body, new Segment(origin + along * from, origin + along * to)));
                (from, to, body, origin, along) = span;
            }

            joined.Add(new VisibleLine(body, new Segment(origin + along * from, origin + along * to)));
        }

        return [.. joined];
    }
}
