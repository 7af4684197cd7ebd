using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>
/// How a plate that is larger than the machine's bed is cut in pieces: along lines from edge to edge, clear of holes and of the strips where fences go,
/// each piece held to the next by knobs. The pieces together are the plate. Frame and lengths as of the plate, in mm.
/// </summary>
/// <param name="Pieces">The pieces, row by row from below, each row from the left; the plate itself where it fits the bed.</param>
/// <param name="Lines">The lines of the joints with their knobs.</param>
/// <param name="Taken">Boxes round the knobs, and narrow ones along the lines: nothing else may be there.</param>
internal sealed record PlateJoints(ImmutableArray<Contour> Pieces, ImmutableArray<ImmutableArray<Segment>> Lines, ImmutableArray<Box2> Taken)
{
    // Wood left between a joint and a hole or a slot beside the cutter's width; a knob for this much of a joint; the least side of a piece; and the most pieces one way.
    private const double Web = 4, KnobEvery = 100, LeastSide = 40;
    private const int Most = 8;

    /// <summary>The joints of a plate, or nothing where no line finds room.</summary>
    /// <param name="plate">Its size along x and y.</param>
    /// <param name="machine">What cuts it.</param>
    /// <param name="cutterRadius">Radius of the cutter.</param>
    /// <param name="holes">Its holes, by centre and radius.</param>
    /// <param name="strips">Where slots may be.</param>
    public static PlateJoints? Of(Point2 plate, Machine machine, double cutterRadius, ImmutableArray<(Point2 At, double Radius)> holes, ImmutableArray<Box2> strips)
    {
        if (machine.Holds(plate.X, plate.Y)) return new([Contour.Rectangle(0, 0, plate.X, plate.Y)], [], []);
        var room = new Point2(machine.Bed!.X - 2 * machine.OutlineTool, machine.Bed.Y - 2 * machine.OutlineTool);
        var search = new Search(plate, new JointLine(cutterRadius), Web + machine.OutlineTool, holes, strips);
        return (
            from columns in Enumerable.Range(1, Most)
            from rows in Enumerable.Range(1, Most)
            where search.MayHold(plate.X, room.X, columns) && search.MayHold(plate.Y, room.Y, rows)
            orderby columns * rows, columns
            select search.Cut(room, columns, rows)).FirstOrDefault(found => found is not null);
    }

    private sealed class Search(Point2 plate, JointLine joint, double web, ImmutableArray<(Point2 At, double Radius)> holes, ImmutableArray<Box2> strips)
    {
        public bool MayHold(double size, double room, int count) => size + (count - 1) * joint.Reach <= count * room + Tolerance.Length && (count == 1 || size >= count * LeastSide);

        public PlateJoints? Cut(Point2 room, int columns, int rows)
        {
            // Knobs go to the right of upright lines and below level ones, so that rows are counted from above.
            var levels = Lines(plate.Y, room.Y, rows, d => IsClear(plate.Y - d, isUpright: false) && Knobs(plate.Y - d, 0, plate.X, false, false, false).Length > 0);
            if (levels is null) return null;
            double[] ys = [0, .. levels.Select(d => plate.Y - d).Reverse(), plate.Y];
            var uprights = Lines(plate.X, room.X, columns, c => IsClear(c, isUpright: true) && Enumerable.Range(0, rows).All(row => Upright(c, row).Length > 0));
            if (uprights is null) return null;
            double[] xs = [0, .. uprights, plate.X];
            if (Enumerable.Range(1, rows - 1).Any(row => Enumerable.Range(0, columns).Any(column => Level(row, column).Length == 0))) return null;

            var pieces =
                from row in Enumerable.Range(0, rows)
                from column in Enumerable.Range(0, columns)
                select Contour.FromSegments(
                [
                    .. LevelPath(row, column), .. UprightPath(column + 1, row),
                    .. LevelPath(row + 1, column).Reverse().Select(s => s.Reversed), .. UprightPath(column, row).Reverse().Select(s => s.Reversed),
                ]);
            var lines = Enumerable.Range(1, columns - 1).Select(column => Enumerable.Range(0, rows).SelectMany(row => UprightPath(column, row)).ToImmutableArray())
                .Concat(Enumerable.Range(1, rows - 1).Select(row => Enumerable.Range(0, columns).SelectMany(column => LevelPath(row, column)).ToImmutableArray()));
            var taken = Enumerable.Range(1, columns - 1).SelectMany(column => Enumerable.Range(0, rows).SelectMany(row => Upright(xs[column], row).Select(k => Knob(xs[column], k, true))).Append(new Box2(new(xs[column], 0), new(xs[column], plate.Y))))
                .Concat(Enumerable.Range(1, rows - 1).SelectMany(row => Enumerable.Range(0, columns).SelectMany(column => Level(row, column).Select(k => Knob(ys[row], k, false))).Append(new Box2(new(0, ys[row]), new(plate.X, ys[row])))));
            return new([.. pieces], [.. lines], [.. taken]);

            ImmutableArray<double> Upright(double at, int row) => Knobs(at, ys[row], ys[row + 1], true, row > 0, row + 1 < rows);
            ImmutableArray<double> Level(int row, int column) => Knobs(ys[row], xs[column], xs[column + 1], false, column > 0, column + 1 < columns);
            ImmutableArray<Segment> UprightPath(int column, int row) =>
                joint.Path(new(xs[column], ys[row]), new(xs[column], ys[row + 1]), column == 0 || column == columns ? [] : Upright(xs[column], row).Select(k => k - ys[row]));
            ImmutableArray<Segment> LevelPath(int row, int column) =>
                joint.Path(new(xs[column], ys[row]), new(xs[column + 1], ys[row]), row == 0 || row == rows ? [] : Level(row, column).Select(k => k - xs[column]));
        }

        // Each line as near as can be to where pieces would be equal; nothing where one finds no place. All pieces but the last carry knobs.
        private List<double>? Lines(double size, double room, int count, Func<double, bool> isClear)
        {
            var lines = new List<double>();
            for (var (i, last) = (1, 0.0); i < count; i++)
            {
                var (low, high) = (Math.Max(last + LeastSide, size - (count - i) * room + (count - i - 1) * joint.Reach), Math.Min(last + room - joint.Reach, size - LeastSide));
                var ideal = Math.Clamp(i * ((size + (count - 1) * joint.Reach) / count - joint.Reach), Math.Min(low, high), high);
                if (Nearest(ideal, low, high, isClear) is not { } line) return null;
                lines.Add(last = line);
            }

            return lines;
        }

        private bool IsClear(double at, bool isUpright) =>
            holes.All(h => Math.Abs((isUpright ? h.At.X : h.At.Y) - at) >= h.Radius + web)
            && strips.Where(s => s.Height > s.Width == isUpright).All(s => isUpright ? at <= s.Min.X - web || at >= s.Max.X + web : at <= s.Min.Y - web || at >= s.Max.Y + web);

        // Evenly along a stretch of a line, each moved to where it is clear; those that find no place are left out. From a line it crosses a knob keeps clear of that line's knobs.
        private ImmutableArray<double> Knobs(double at, double from, double to, bool isUpright, bool isCrossedFirst, bool isCrossedLast)
        {
            double Ends(bool isCrossed) => joint.Half + web + (isCrossed ? joint.Reach : 0);
            var (first, last) = (from + Ends(isCrossedFirst), to - Ends(isCrossedLast));
            if (last < first) return [];
            var count = Math.Max(1, (int)Math.Round((to - from) / KnobEvery));
            var share = (to - from) / count;
            var slack = Math.Max(0, share / 2 - joint.Half - web / 2);
            return
            [
                .. Enumerable.Range(0, count).Select(i => from + (i + 0.5) * share)
                    .Select(ideal => count == 1 ? Nearest(Math.Clamp(ideal, first, last), first, last, IsFree) : Nearest(ideal, Math.Max(first, ideal - slack), Math.Min(last, ideal + slack), IsFree))
                    .OfType<double>(),
            ];

            bool IsFree(double knob)
            {
                var box = Knob(at, knob, isUpright).Grown(web);
                return box.Min.X >= 0 && box.Min.Y >= 0 && box.Max.X <= plate.X && box.Max.Y <= plate.Y
                    && holes.All(h => new Point2(Math.Clamp(h.At.X, box.Min.X, box.Max.X), Math.Clamp(h.At.Y, box.Min.Y, box.Max.Y)).DistanceTo(h.At) >= h.Radius)
                    && strips.All(s => s.Min.X >= box.Max.X || s.Max.X <= box.Min.X || s.Min.Y >= box.Max.Y || s.Max.Y <= box.Min.Y);
            }
        }

        private Box2 Knob(double at, double knob, bool isUpright) => isUpright
            ? new(new(at, knob - joint.Half), new(at + joint.Reach, knob + joint.Half))
            : new(new(knob - joint.Half, at - joint.Reach), new(knob + joint.Half, at));
    }

    /// <summary>The place that suits nearest to an ideal one between two bounds, by whole millimetres from it; nothing where none does.</summary>
    internal static double? Nearest(double ideal, double low, double high, Func<double, bool> suits)
    {
        for (var step = 0; ideal - step >= low - Tolerance.Length || ideal + step <= high + Tolerance.Length; step++)
            foreach (var place in step == 0 ? (ReadOnlySpan<double>)[ideal] : [ideal - step, ideal + step])
                if (!Tolerance.Exceeds(low, place) && !Tolerance.Exceeds(place, high) && suits(place)) return place;
        return null;
    }
}
