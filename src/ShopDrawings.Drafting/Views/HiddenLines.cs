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
    private readonly ImmutableArray<(int Axis, ImmutableArray<Point2> Corners, double Low, double High)> prisms;
    private readonly Dictionary<(int Axis, double Level), Hull[]> covers = [];

    /// <summary>A view of bodies.</summary>
    public HiddenLines(IEnumerable<Body> bodies, Projection view)
    {
        (this.bodies, this.view) = ([.. bodies], view);
        prisms = [.. this.bodies.SelectMany(b => b.Prisms().Select(p => (b.Axis, p.Corners, p.Low, p.High)))];
    }

    /// <summary>Every line and arc that shows. Of lines that lie on each other one is left.</summary>
    /// <param name="leastMouth">Bores smaller than this are left out, in mm.</param>
    public (ImmutableArray<VisibleLine> Lines, ImmutableArray<VisibleArc> Arcs) Draw(double leastMouth)
    {
        var lines = new List<VisibleLine>();
        var arcs = new Dictionary<(int Body, int Axis, double Level, RoundEdge Edge, bool IsMouth), List<(double From, double To)>>();
        for (var i = 0; i < bodies.Length; i++)
        {
            var body = bodies[i];
            void Edge(int axis, double level, Segment edge, RoundEdge? round, bool isMouth)
            {
                var (from, to) = (Body.InSpace(axis, level, edge.Start), Body.InSpace(axis, level, edge.End));
                foreach (var (a, b) in Showing(from, to, axis, level))
                {
                    if (round is null)
                    {
                        lines.Add(new VisibleLine(i, new Segment(view.Map(from + (to - from) * a), view.Map(from + (to - from) * b))));
                        continue;
                    }

                    var (start, end) = (Angle(round, edge.At(a)), Angle(round, edge.At(b)));
                    if (end < start - 180) end += 360;
                    else if (end > start + 180) start += 360;
                    var key = (i, axis, level, round, isMouth);
                    if (!arcs.TryGetValue(key, out var spans)) arcs.Add(key, spans = []);
                    spans.Add((Math.Min(start, end), Math.Max(start, end)));
                }
            }

            foreach (var (axis, isPositive, level, pieces) in body.Surfaces())
            {
                if (!Faces(axis, isPositive)) continue;
                foreach (var edge in pieces.SelectMany(p => p.Holes.Prepend(p.Outline)).SelectMany(c => c.Segments))
                    Edge(axis, level, edge, axis == body.Axis ? body.RoundOf(edge) : null, false);
            }

            foreach (var mouth in body.Mouths.Where(m => Faces(m.Axis, m.IsPositive) && 2 * m.Edge.Radius >= leastMouth))
                for (var k = 0; k < MouthChords; k++)
                    Edge(mouth.Axis, mouth.Level, new Segment(At(mouth.Edge, 360.0 * k / MouthChords), At(mouth.Edge, 360.0 * (k + 1) / MouthChords)), mouth.Edge, true);

            foreach (var (from, to, axis, level, round) in Slanting(body))
            {
                if (round is not null) Edge(axis, level, new Segment(Body.OnPlane(axis, from), Body.OnPlane(axis, to)), round, false);
                else
                    foreach (var (a, b) in Showing(from, to, axis, level))
                        lines.Add(new VisibleLine(i, new Segment(view.Map(from + (to - from) * a), view.Map(from + (to - from) * b))));
            }
        }

        return (Joined(lines), [.. arcs.SelectMany(a => Joined(a.Value).Select(s => new VisibleArc(a.Key.Body, a.Key.Axis, a.Key.Level, a.Key.Edge, a.Key.IsMouth, s.From, s.To)))]);
    }

    /// <summary>Whether a surface that looks along an axis is seen from the front.</summary>
    public bool Faces(int axis, bool isPositive) => view.ToViewer.Along(axis) is var w && (isPositive ? w > 0 : w < 0);

    /// <summary>Whether nothing hides a point of a surface that faces the viewer.</summary>
    public bool Shows(int axis, double level, Point3 point)
    {
        var at = view.Map(point);
        return !Covers(axis, level).Any(h => h.Contains(at));
    }

    /// <summary>A circle's point at an angle in degrees.</summary>
    public static Point2 At(RoundEdge edge, double degrees)
    {
        var (sin, cos) = Math.SinCos(degrees * (Math.PI / 180));
        return edge.Centre + new Point2(cos, sin) * edge.Radius;
    }

    private static double Angle(RoundEdge edge, Point2 at) => Math.Atan2(at.Y - edge.Centre.Y, at.X - edge.Centre.X) * (180 / Math.PI);

    // The feet of walls that slant or are round, and the edges between walls where one of them does: end to end, with a plane they lie in.
    private IEnumerable<(Point3 From, Point3 To, int Axis, double Level, RoundEdge? Round)> Slanting(Body body)
    {
        var walls = body.Walls().ToList();
        if (walls.TrueForAll(w => w.Looks is not null)) yield break;
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

    // The shares of a line in a plane across an axis that show.
    private List<(double From, double To)> Showing(Point3 from, Point3 to, int axis, double level)
    {
        var (p, q) = (view.Map(from), view.Map(to));
        var length = p.DistanceTo(q);
        var shares = new List<(double, double)>();
        if (length <= Shortest) return shares;
        var box = Box2.Around([p, q]).Grown(2 * Aside);
        var near = Covers(axis, level).Where(h => h.Bounds.Min.X <= box.Max.X && h.Bounds.Max.X >= box.Min.X && h.Bounds.Min.Y <= box.Max.Y && h.Bounds.Max.Y >= box.Min.Y).ToList();
        var aside = (q - p).Left * (Aside / length);
        var cuts = new List<double> { 0, 1 };
        foreach (var hull in near)
            foreach (var shift in new[] { aside, aside * -1 })
                if (hull.Inside(p + shift, q + shift) is { } inside) cuts.AddRange([inside.From, inside.To]);
        cuts.Sort();
        for (var i = 0; i + 1 < cuts.Count; i++)
        {
            var (a, b) = (cuts[i], cuts[i + 1]);
            if ((b - a) * length <= Shortest) continue;
            var middle = p + (q - p) * ((a + b) / 2);
            bool Covered(Point2 at) => near.Exists(h => h.Contains(at));
            if (Covered(middle + aside) && Covered(middle - aside)) continue;
            if (shares.Count > 0 && (a - shares[^1].Item2) * length <= 2 * Shortest) shares[^1] = (shares[^1].Item1, b);
            else shares.Add((a, b));
        }

        return shares;
    }

    // The outlines on paper of all material on the viewer's side of a plane across an axis.
    private Hull[] Covers(int axis, double level)
    {
        if (covers.TryGetValue((axis, level), out var known)) return known;
        var isAbove = view.ToViewer.Along(axis) > 0;
        var hulls = new List<Hull>();
        foreach (var prism in prisms)
        {
            var (corners, low, high) = (prism.Corners, prism.Low, prism.High);
            if (axis == prism.Axis) (low, high) = isAbove ? (Math.Max(low, level), high) : (low, Math.Min(high, level));
            else corners = Clipped(corners, (prism.Axis + 1) % 3 == axis, level, isAbove);
            if (corners.Length < 3 || !Tolerance.Exceeds(high, low)) continue;
            hulls.Add(Hull.Around([.. corners.SelectMany(c => new[] { view.Map(Body.InSpace(prism.Axis, low, c)), view.Map(Body.InSpace(prism.Axis, high, c)) })]));
        }

        return covers[(axis, level)] = [.. hulls];
    }

    // What of a convex polygon lies beyond a line across its first or second coordinate; nothing where that is no area.
    private static ImmutableArray<Point2> Clipped(ImmutableArray<Point2> corners, bool isFirst, double level, bool isAbove)
    {
        double Beyond(Point2 p) => ((isFirst ? p.X : p.Y) - level) * (isAbove ? 1 : -1);
        if (!corners.Any(c => Beyond(c) > Tolerance.Length)) return [];
        if (corners.All(c => Beyond(c) >= 0)) return corners;
        var left = ImmutableArray.CreateBuilder<Point2>();
        for (var i = 0; i < corners.Length; i++)
        {
            var (a, b) = (corners[i], corners[(i + 1) % corners.Length]);
            var (da, db) = (Beyond(a), Beyond(b));
            if (da >= 0) left.Add(a);
            if ((da > 0 && db < 0) || (da < 0 && db > 0)) left.Add(a + (b - a) * (da / (da - db)));
        }

        return left.ToImmutable();
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

    // Stretches of a circle that meet become one; one that goes all round is whole.
    private static IEnumerable<(double From, double To)> Joined(List<(double From, double To)> spans)
    {
        const double Apart = 0.2;
        var joined = new List<(double From, double To)>();
        foreach (var span in spans.Select(s => s.From < -180 + Apart ? (From: s.From + 360, To: s.To + 360) : s).OrderBy(s => s.From))
        {
            if (joined.Count > 0 && span.From <= joined[^1].To + Apart) joined[^1] = (joined[^1].From, Math.Max(joined[^1].To, span.To));
            else joined.Add(span);
        }

        if (joined.Count > 1 && joined[0].From + 360 <= joined[^1].To + Apart)
        {
            joined[^1] = (joined[^1].From, Math.Max(joined[^1].To, joined[0].To + 360));
            joined.RemoveAt(0);
        }

        return joined.Select(s => s.To - s.From >= 360 - Apart ? (0, 360) : s);
    }

    /// <summary>A convex outline on paper, anticlockwise.</summary>
    private sealed class Hull
    {
        private readonly Point2[] corners;

        private Hull(Point2[] corners) => (this.corners, Bounds) = (corners, Box2.Around(corners));

        public Box2 Bounds { get; }

        /// <summary>The convex hull of points, by the two chains from the leftmost to the rightmost.</summary>
        public static Hull Around(Point2[] points)
        {
            var sorted = points.OrderBy(p => p.X).ThenBy(p => p.Y).ToArray();
            var hull = new List<Point2>();
            for (var pass = 0; pass < 2; pass++)
            {
                var start = hull.Count;
                foreach (var p in sorted)
                {
                    while (hull.Count >= start + 2 && (hull[^1] - hull[^2]).Cross(p - hull[^1]) <= 1e-9) hull.RemoveAt(hull.Count - 1);
                    hull.Add(p);
                }

                hull.RemoveAt(hull.Count - 1);
                Array.Reverse(sorted);
            }

            return new Hull([.. hull]);
        }

        /// <summary>Whether a point lies inside or on it.</summary>
        public bool Contains(Point2 p)
        {
            if (corners.Length < 3 || p.X < Bounds.Min.X || p.X > Bounds.Max.X || p.Y < Bounds.Min.Y || p.Y > Bounds.Max.Y) return false;
            for (var i = 0; i < corners.Length; i++)
                if ((corners[(i + 1) % corners.Length] - corners[i]).Cross(p - corners[i]) < -1e-7) return false;
            return true;
        }

        /// <summary>The shares of a line that lie inside, or nothing.</summary>
        public (double From, double To)? Inside(Point2 p, Point2 q)
        {
            var (from, to) = (0.0, 1.0);
            for (var i = 0; i < corners.Length; i++)
            {
                var edge = corners[(i + 1) % corners.Length] - corners[i];
                var (a, b) = (edge.Cross(p - corners[i]), edge.Cross(q - corners[i]));
                if (a < 0 && b < 0) return null;
                if (a < 0) from = Math.Max(from, a / (a - b));
                else if (b < 0) to = Math.Min(to, a / (a - b));
            }

            return from < to ? (from, to) : null;
        }
    }
}
