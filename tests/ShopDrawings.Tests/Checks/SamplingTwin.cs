using System.Text.Json;

namespace ShopDrawings.Tests.Checks;

/// <summary>Two things that want one place.</summary>
/// <param name="A">A panel or a piece of hardware; of a motion, what moves.</param>
/// <param name="B">The other panel or piece of hardware.</param>
/// <param name="Kind">How they come to meet.</param>
/// <param name="Motion">What moves, or nothing.</param>
/// <param name="At">How far it has moved, from 0 closed to 1 open.</param>
/// <param name="Where">A point in both, in the assembly.</param>
internal sealed record Meeting(string A, string B, MeetingKind Kind, string? Motion, double At, Spot Where);

/// <summary>How two things come to meet.</summary>
internal enum MeetingKind
{
    /// <summary>Both are where they stand, everything closed.</summary>
    Standing,

    /// <summary>One slides out, the other stands.</summary>
    Sliding,

    /// <summary>One slides out, the other is a door or on one.</summary>
    SlidingIntoDoor,

    /// <summary>One is a door or on one, and swings.</summary>
    Swinging,
}

/// <summary>A point or a vector in mm.</summary>
internal readonly record struct Spot(double X, double Y, double Z)
{
    /// <summary>The coordinate along an axis.</summary>
    public double this[int axis] => axis == 0 ? X : axis == 1 ? Y : Z;

    public static Spot operator +(Spot a, Spot b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    public static Spot operator -(Spot a, Spot b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    public static Spot operator *(Spot a, double by) => new(a.X * by, a.Y * by, a.Z * by);

    /// <summary>The scalar product.</summary>
    public double Dot(Spot other) => X * other.X + Y * other.Y + Z * other.Z;
}

/// <summary>
/// Finds collisions the slow way, by trying points: it reads the facts of an <c>assembly.json</c> and shares no code with the product. A point
/// counts where it is at least <see cref="Margin"/> inside both, so that what touches does not collide. Points stand in every cell between
/// the corners of both outlines, blocks, grooves and openings: one where nothing is round or oblique, which makes the cell all one, else many.
/// </summary>
internal sealed class SamplingTwin
{
    /// <summary>How deep a point lies in both of two things that collide, in mm.</summary>
    public const double Margin = 0.05;

    private const int Steps = 12;

    private readonly List<Body> bodies = [];
    private readonly List<Move> moves = [];
    private readonly Random random;

    /// <summary>Reads the facts.</summary>
    /// <param name="assembly">The root of an <c>assembly.json</c>.</param>
    /// <param name="seed">Decides where the points are.</param>
    public SamplingTwin(JsonElement assembly, int seed)
    {
        random = new Random(seed);
        var frames = new Dictionary<string, Frame>();
        foreach (var panel in assembly.GetProperty("panels").EnumerateArray())
        {
            if (panel.GetProperty("placement") is not { ValueKind: JsonValueKind.Object } placement) continue;
            var id = panel.GetProperty("id").GetString()!;
            frames[id] = Frame.Of(placement);
            bodies.Add(Body.OfPanel(id, panel, frames[id]));
        }

        foreach (var piece in assembly.GetProperty("hardware").EnumerateArray())
        {
            var on = piece.GetProperty("mounts").EnumerateArray().Select(m => m.GetProperty("panel").GetString()!).ToArray();
            if (!frames.TryGetValue(on[0], out var frame)) continue;
            foreach (var volume in piece.GetProperty("volumes").EnumerateArray())
                bodies.Add(Body.OfBlock(piece.GetProperty("id").GetString()!, on, frame, Point(volume, "min_mm"), Point(volume, "max_mm")));
        }

        moves.AddRange(assembly.GetProperty("motions").EnumerateArray().Select(Move.Of));
    }

    /// <summary>The pairs that meet as everything stands closed.</summary>
    public IEnumerable<Meeting> Standing() =>
        from i in Enumerable.Range(0, bodies.Count)
        from j in Enumerable.Range(i + 1, bodies.Count - i - 1)
        where !Belong(bodies[i], bodies[j])
        let point = Shared(bodies[i], bodies[j], default)
        where point is not null
        select new Meeting(bodies[i].Id, bodies[j].Id, MeetingKind.Standing, null, 0, point.Value);

    /// <summary>The pairs that meet while one thing slides out and all others are closed, each once.</summary>
    public IEnumerable<Meeting> Sliding()
    {
        var doors = moves.Where(m => m.Towards is null).ToList();
        foreach (var move in moves.Where(m => m.Towards is not null))
            foreach (var (mover, other) in Pairs(move))
                foreach (var at in Positions())
                {
                    if (Shared(mover, other, move.Towards!.Value * at) is not { } where) continue;
                    var isDoor = doors.Exists(other.MovesWith);
                    yield return new Meeting(mover.Id, other.Id, isDoor ? MeetingKind.SlidingIntoDoor : MeetingKind.Sliding, move.Id, at, where);
                    break;
                }
    }

    /// <summary>The pairs that meet while one door swings about its axis and all else is closed, each once.</summary>
    public IEnumerable<Meeting> Swinging()
    {
        foreach (var move in moves.Where(m => m.Towards is null))
            foreach (var (mover, other) in Pairs(move))
                foreach (var at in Positions())
                {
                    if (Swung(mover, other, move, at) is not { } where) continue;
                    yield return new Meeting(mover.Id, other.Id, MeetingKind.Swinging, move.Id, at, where);
                    break;
                }
    }

    // What moves, with all that stands still while it does; a hinge or a slide holds what it moves.
    private IEnumerable<(Body Mover, Body Other)> Pairs(Move move) =>
        from mover in bodies.Where(b => b.MovesWith(move))
        from other in bodies.Where(b => !b.MovesWith(move))
        where !Belong(mover, other) && !other.On.Any(move.Panels.Contains)
        select (mover, other);

    // One somewhere in each of as many equal stretches, and fully open.
    private IEnumerable<double> Positions() => Enumerable.Range(0, Steps).Select(i => (i + random.NextDouble()) / Steps).Append(1);

    private static bool Belong(Body a, Body b) => a.Id == b.Id || a.On.Contains(b.Id) || b.On.Contains(a.Id);

    // A point in a body that has moved and in another, both square to the axes.
    private Spot? Shared(Body mover, Body other, Spot moved)
    {
        (double Low, double High) Common(int axis) => (Math.Max(mover.Low[axis] + moved[axis], other.Low[axis]), Math.Min(mover.High[axis] + moved[axis], other.High[axis]));
        for (var axis = 0; axis < 3; axis++)
            if (Common(axis) is var (from, to) && to - from <= 2 * Margin) return null;
        var axes = new List<(double From, double To)>[3];
        for (var axis = 0; axis < 3; axis++)
        {
            var ((low, high), by) = (Common(axis), moved[axis]);
            var ends = mover.Ends(axis).Select(e => e + by).Concat(other.Ends(axis)).Where(e => e > low && e < high).Append(low).Append(high).Order().ToList();
            axes[axis] = [.. ends.Zip(ends.Skip(1)).Where(p => p.Second - p.First > 2 * Margin)];
        }

        var points = mover.IsSquare && other.IsSquare ? 1 : 48;
        foreach (var x in axes[0])
            foreach (var y in axes[1])
                foreach (var z in axes[2])
                    for (var n = 0; n < points; n++)
                    {
                        var point = new Spot(Within(x), Within(y), Within(z));
                        if (other.Holds(point) && mover.Holds(point - moved)) return point;
                    }

        return null;
    }

    // Anywhere in a stretch, but more often near its ends: what is round leaves corners.
    private double Within((double From, double To) stretch)
    {
        var (share, length) = (Math.Pow(random.NextDouble(), 3) / 2, stretch.To - stretch.From - 2 * Margin);
        return stretch.From + Margin + (random.Next(2) == 0 ? share : 1 - share) * length;
    }

    // A point of a body that has swung and that lies in another.
    private Spot? Swung(Body mover, Body other, Move door, double at)
    {
        const double Spacing = 25;
        var angle = at * door.Degrees * Math.PI / 180 * (door.HangsLeft ? -1 : 1);
        var (sin, cos) = Math.SinCos(angle);
        Spot Turned(Spot p) => new(
            door.Axis.X + (p.X - door.Axis.X) * cos - (p.Y - door.Axis.Y) * sin, door.Axis.Y + (p.X - door.Axis.X) * sin + (p.Y - door.Axis.Y) * cos, p.Z);
        var corners = new[] { mover.Low, mover.High, new Spot(mover.Low.X, mover.High.Y, mover.Low.Z), new Spot(mover.High.X, mover.Low.Y, mover.High.Z) }.Select(Turned).ToList();
        for (var axis = 0; axis < 3; axis++)
            if (corners.Max(c => c[axis]) <= other.Low[axis] || corners.Min(c => c[axis]) >= other.High[axis]) return null;
        var count = new int[3];
        for (var axis = 0; axis < 3; axis++) count[axis] = 2 + (int)((mover.High[axis] - mover.Low[axis]) / Spacing);
        double On(int axis, int i)
        {
            var step = (mover.High[axis] - mover.Low[axis] - 2 * Margin) / count[axis];
            return mover.Low[axis] + Margin + (i + random.NextDouble()) * step;
        }

        for (var i = 0; i < count[0]; i++)
            for (var j = 0; j < count[1]; j++)
                for (var k = 0; k < count[2]; k++)
                {
                    var point = new Spot(On(0, i), On(1, j), On(2, k));
                    if (other.Holds(Turned(point)) && mover.Holds(point)) return Turned(point);
                }

        return null;
    }

    private static Spot Point(JsonElement owner, string name) =>
        owner.GetProperty(name) is var p ? new(p[0].GetDouble(), p[1].GetDouble(), p.GetArrayLength() > 2 ? p[2].GetDouble() : 0) : default;

    private static double Value(JsonElement owner, string name) => owner.GetProperty(name).GetProperty("value").GetDouble();

    private static Spot Towards(string? word) => word switch
    {
        "left" => new(-1, 0, 0),
        "right" => new(1, 0, 0),
        "front" => new(0, -1, 0),
        "back" => new(0, 1, 0),
        "bottom" => new(0, 0, -1),
        "top" => new(0, 0, 1),
        _ => throw new InvalidDataException($"{word} is no direction"),
    };

    // A frame square to the assembly's.
    private sealed record Frame(Spot Origin, Spot X, Spot Y, Spot Z)
    {
        public static Frame Of(JsonElement placement) => new(
            Point(placement, "origin_mm"), Towards(placement.GetProperty("along_length").GetString()),
            Towards(placement.GetProperty("along_width").GetString()), Towards(placement.GetProperty("inwards").GetString()));

        public Spot Out(Spot p) => Origin + X * p.X + Y * p.Y + Z * p.Z;

        public Spot In(Spot p) => p - Origin is var q ? new(q.Dot(X), q.Dot(Y), q.Dot(Z)) : default;
    }

    // A motion; its travel as a vector, or nothing for a door.
    private sealed record Move(string Id, HashSet<string> Panels, Spot? Towards, Spot Axis, double Degrees, bool HangsLeft)
    {
        public static Move Of(JsonElement motion)
        {
            var (id, panels) = (motion.GetProperty("id").GetString()!, motion.GetProperty("panels").EnumerateArray().Select(p => p.GetString()!).ToHashSet());
            return motion.GetProperty("type").GetString() == "travel"
                ? new(id, panels, SamplingTwin.Towards(motion.GetProperty("towards").GetString()) * Value(motion, "distance_mm"), default, 0, false)
                : new(id, panels, null, new(Value(motion, "axis_x_mm"), Value(motion, "axis_y_mm"), 0), motion.GetProperty("degrees").GetDouble(), motion.GetProperty("hangs").GetString() == "left");
        }
    }

    // A closed outline, its arcs as chords.
    private sealed class Loop(IReadOnlyList<(double X, double Y)> corners)
    {
        // Whether every side runs along x or y.
        public bool IsSquare { get; } = Enumerable.Range(0, corners.Count).All(i => corners[i] is var a && corners[(i + 1) % corners.Count] is var b && (Math.Abs(a.X - b.X) < 1e-9 || Math.Abs(a.Y - b.Y) < 1e-9));

        public static Loop Of(JsonElement outline)
        {
            var given = outline.EnumerateArray().Select(s => (At: Point(s, "at_mm"), Bulge: s.GetProperty("bulge").GetDouble())).ToList();
            var corners = new List<(double, double)>();
            for (var i = 0; i < given.Count; i++)
            {
                var (from, bulge) = given[i];
                var to = given[(i + 1) % given.Count].At;
                corners.Add((from.X, from.Y));
                if (bulge == 0) continue;

                // Turned about the centre, which lies on the chord's left for an arc run anticlockwise.
                var away = (1 - bulge * bulge) / (4 * bulge);
                var (cx, cy) = ((from.X + to.X) / 2 - (to.Y - from.Y) * away, (from.Y + to.Y) / 2 + (to.X - from.X) * away);
                const int Chords = 64;
                for (var n = 1; n < Chords; n++)
                {
                    var (sin, cos) = Math.SinCos(4 * Math.Atan(bulge) * n / Chords);
                    corners.Add((cx + (from.X - cx) * cos - (from.Y - cy) * sin, cy + (from.X - cx) * sin + (from.Y - cy) * cos));
                }
            }

            return new Loop(corners);
        }

        // A rectangle along a centre line.
        public static Loop Strip(Spot from, Spot to, double width)
        {
            var along = (to - from) * (1 / Math.Sqrt((to - from).Dot(to - from)));
            var side = new Spot(-along.Y, along.X, 0) * (width / 2);
            return new Loop([.. new[] { from + side, to + side, to - side, from - side }.Select(p => (p.X, p.Y))]);
        }

        public static Loop Circle(Spot at, double radius) =>
            new([.. Enumerable.Range(0, 64).Select(i => Math.SinCos(2 * Math.PI * i / 64)).Select(a => (at.X + radius * a.Cos, at.Y + radius * a.Sin))]);

        // Where it begins and ends along x and y and, of few corners, each of them.
        public IEnumerable<Spot> Ends()
        {
            if (corners.Count <= 64) return corners.Select(c => new Spot(c.X, c.Y, 0));
            return [new(corners.Min(c => c.X), corners.Min(c => c.Y), 0), new(corners.Max(c => c.X), corners.Max(c => c.Y), 0)];
        }

        // How far inside it a point lies, negative outside: the sign by the crossings of a ray, the amount by the nearest side.
        public double Depth(double x, double y)
        {
            var (isInside, nearest) = (false, double.PositiveInfinity);
            for (var i = 0; i < corners.Count; i++)
            {
                var (a, b) = (corners[i], corners[(i + 1) % corners.Count]);
                if (a.Y > y != b.Y > y && x < a.X + (y - a.Y) / (b.Y - a.Y) * (b.X - a.X)) isInside = !isInside;
                var (dx, dy) = (b.X - a.X, b.Y - a.Y);
                var share = Math.Clamp(((x - a.X) * dx + (y - a.Y) * dy) / (dx * dx + dy * dy), 0, 1);
                nearest = Math.Min(nearest, Math.Pow(x - a.X - share * dx, 2) + Math.Pow(y - a.Y - share * dy, 2));
            }

            return isInside ? Math.Sqrt(nearest) : -Math.Sqrt(nearest);
        }
    }

    // A panel's material or a block of hardware: what lies inside its outline between two levels, and in none of its hollows.
    private sealed class Body
    {
        private readonly Frame frame;
        private readonly Loop outline;
        private readonly double from;
        private readonly double to;
        private readonly List<(Loop Outline, double From, double To, bool IsBore)> hollows;
        private readonly double[][] ends;

        private Body(string id, string[] on, Frame frame, Loop outline, double from, double to, List<(Loop Outline, double From, double To, bool IsBore)> hollows)
        {
            (Id, On, this.frame, this.outline, this.from, this.to, this.hollows) = (id, on, frame, outline, from, to, hollows);
            var corners = outline.Ends().Select(e => e with { Z = from }).Concat(outline.Ends().Select(e => e with { Z = to })).Select(frame.Out).ToList();
            Low = new(corners.Min(c => c.X), corners.Min(c => c.Y), corners.Min(c => c.Z));
            High = new(corners.Max(c => c.X), corners.Max(c => c.Y), corners.Max(c => c.Z));
            var inner = hollows.Where(h => !h.IsBore).SelectMany(h => h.Outline.Ends().SelectMany(e => new[] { e with { Z = h.From }, e with { Z = h.To } })).Select(frame.Out);
            var all = corners.Concat(inner).ToList();
            var levels = hollows.SelectMany(h => new[] { h.From, h.To }).Select(z => frame.Out(new(0, 0, z))).ToList();
            ends = [.. Enumerable.Range(0, 3).Select(axis => (frame.Z[axis] == 0 ? all : all.Concat(levels)).Select(c => Math.Round(c[axis], 6)).Distinct().ToArray())];
            IsSquare = outline.IsSquare && hollows.TrueForAll(h => h.Outline.IsSquare);
        }

        public string Id { get; }

        // The panels that hardware is fixed to; none of a panel.
        public string[] On { get; }

        public Spot Low { get; }

        public Spot High { get; }

        public static Body OfPanel(string id, JsonElement panel, Frame frame)
        {
            var thickness = Value(panel, "thickness_mm");
            var hollows = new List<(Loop, double, double, bool)>();
            foreach (var feature in panel.GetProperty("features").EnumerateArray())
            {
                var surface = feature.TryGetProperty("surface", out var named) ? named.GetString() : null;
                (double, double) Levels(double depth) => surface == "inside" ? (thickness - depth, thickness) : (0, depth);
                switch (feature.GetProperty("type").GetString())
                {
                    case "cut-out":
                        hollows.Add((Loop.Of(feature.GetProperty("outline")), 0, thickness, false));
                        break;
                    case "groove":
                        var (low, high) = Levels(feature.GetProperty("depth_mm").GetDouble());
                        hollows.Add((Loop.Strip(Point(feature, "from_mm"), Point(feature, "to_mm"), feature.GetProperty("width_mm").GetDouble()), low, high, false));
                        break;
                    case "bore" when surface is "inside" or "outside":
                        var (lowest, highest) = Levels(feature.GetProperty("depth_mm") is { ValueKind: JsonValueKind.Number } depth ? depth.GetDouble() : thickness);
                        hollows.Add((Loop.Circle(Point(feature, "at_mm"), feature.GetProperty("diameter_mm").GetDouble() / 2), lowest, highest, true));
                        break;
                }
            }

            return new(id, [], frame, Loop.Of(panel.GetProperty("outline")), 0, thickness, hollows);
        }

        public static Body OfBlock(string id, string[] on, Frame frame, Spot min, Spot max) =>
            new(id, on, frame, new Loop([(min.X, min.Y), (max.X, min.Y), (max.X, max.Y), (min.X, max.Y)]), min.Z, max.Z, []);

        // Whether nothing in it is round or oblique.
        public bool IsSquare { get; }

        // The places of its corners, of those of its grooves and openings, and of the ends of its bores, along an axis of the assembly.
        public double[] Ends(int axis) => ends[axis];

        // Hardware moves with a panel where it is fixed to nothing else.
        public bool MovesWith(Move move) => On.Length == 0 ? move.Panels.Contains(Id) : On.All(move.Panels.Contains);

        // Whether a point of the assembly lies a margin deep in the material.
        public bool Holds(Spot point)
        {
            var p = frame.In(point);
            return p.Z > from + Margin && p.Z < to - Margin && outline.Depth(p.X, p.Y) > Margin
                && !hollows.Exists(h => p.Z > h.From - Margin && p.Z < h.To + Margin && h.Outline.Depth(p.X, p.Y) > -Margin);
        }
    }
}
