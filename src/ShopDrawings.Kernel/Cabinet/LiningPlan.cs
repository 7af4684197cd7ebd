using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>
/// A lining seen square to its face, divided into cells by the edges of all that stands in its way. The plane has the two axes of the
/// assembly that follow the one across the sheet, so that it is right-handed with it. Lengths in mm.
/// </summary>
internal sealed class LiningPlan
{
    private readonly LiningSheet sheet;
    private readonly IReadOnlyList<Shadow> shadows;
    private readonly Stretch[] stretches;
    private readonly int normal;
    private readonly (int First, int Second) plane;
    private readonly List<Size> first;
    private readonly List<Size> second;

    /// <summary>Lays the cells out.</summary>
    public LiningPlan(LiningSheet sheet, IReadOnlyList<Shadow> shadows)
    {
        (this.sheet, this.shadows) = (sheet, shadows);
        stretches = [sheet.Block.X, sheet.Block.Y, sheet.Block.Z];
        normal = sheet.Outside.Axis();
        plane = ((normal + 1) % 3, (normal + 2) % 3);
        (first, second) = (Lines(plane.First), Lines(plane.Second));
    }

    /// <summary>What stands in the way, with the room around it.</summary>
    /// <param name="Name">Its id.</param>
    /// <param name="Along">Where it begins and ends along an axis of the assembly.</param>
    internal sealed record Shadow(string Name, Func<int, (Size From, Size To)> Along);

    /// <summary>What is left and large enough, in the plane, in the order of the pieces' numbers: from the bottom up, else from the left.</summary>
    public IEnumerable<PolygonOperations.Piece> Pieces()
    {
        if (first.Count < 2 || second.Count < 2) return [];
        var whole = PolygonOperations.RegionOf(Cell(0, first.Count - 1, 0, second.Count - 1), Tolerance.Length);
        return Gone().Aggregate(whole, (left, gone) => left.Minus(PolygonOperations.RegionOf(gone, Tolerance.Length))).Outlines
            .Where(p => p.Outline.Bounds is var box && Math.Min(box.Width, box.Height) >= LiningCutter.LeastPiece - Tolerance.Length)
            .OrderBy(p => At(p, 2)).ThenBy(p => At(p, 0)).ThenBy(p => At(p, 1));
    }

    /// <summary>The block a piece fills.</summary>
    public (Stretch X, Stretch Y, Stretch Z) Block(PolygonOperations.Piece piece)
    {
        Stretch Of(int axis)
        {
            if (axis == normal) return stretches[axis];
            var lines = axis == plane.First ? first : second;
            var (from, to) = Ends(axis, piece.Outline.Bounds);
            return from == lines[0] && to == lines[^1] ? stretches[axis] : new Stretch(from, to - from);
        }

        return (Of(0), Of(1), Of(2));
    }

    /// <summary>An outline of the plane in the frame of a piece's panel.</summary>
    public Contour InFrame(Panel panel, Contour outline)
    {
        Point2 Map(Point2 p)
        {
            double On(int axis) => axis == plane.First ? p.X : axis == plane.Second ? p.Y : 0;
            var q = panel.Placement!.ToPanel(new Point3(On(0), On(1), On(2)));
            return new Point2(q.X, q.Y);
        }

        return outline.Mapped(Map, !panel.Placement!.Inwards.IsPositive());
    }

    /// <summary>A hole of a piece as an opening in its panel, with the name of what stands in it.</summary>
    public CutOut Opening(Panel panel, Contour hole)
    {
        var (x, y) = (Ends(plane.First, hole.Bounds), Ends(plane.Second, hole.Bounds));
        bool Holds(Shadow shadow) => hole.Contains(new Point2(Middle(shadow, plane.First), Middle(shadow, plane.Second)));
        return new CutOut(shadows.FirstOrDefault(Holds)?.Name ?? sheet.Id, InFrame(panel, hole),
            [panel.ToPanel(plane.First, x.From), panel.ToPanel(plane.First, x.To), panel.ToPanel(plane.Second, y.From), panel.ToPanel(plane.Second, y.To)]);
    }

    private static double Middle(Shadow shadow, int axis) => shadow.Along(axis) is var (from, to) ? (from.Value + to.Value) / 2 : 0;

    // The sheet's own ends, and between them those of what stands in its way; what falls together is one line.
    private List<Size> Lines(int axis)
    {
        var (from, to) = (stretches[axis].From, stretches[axis].From + stretches[axis].Extent);
        var lines = new List<Size> { from };
        foreach (var line in shadows.SelectMany(s => s.Along(axis) is var (low, high) ? new[] { low, high } : []).OrderBy(s => s.Value))
            if (Tolerance.Exceeds(line.Value, lines[^1].Value) && Tolerance.Exceeds(to.Value, line.Value)) lines.Add(line);
        if (Tolerance.Exceeds(to.Value, from.Value)) lines.Add(to);
        return lines;
    }

    // The cells to cut away, those above each other as one: a cell stays where a clear rectangle lies over it that is nowhere too narrow.
    private List<Contour> Gone()
    {
        var stays = new bool[first.Count - 1, second.Count - 1];
        for (var from = 0; from < first.Count - 1; from++)
            for (var to = from + 1; to < first.Count; to++)
            {
                if (!IsWide(first, from, to)) continue;
                foreach (var (low, high) in Runs(j => Enumerable.Range(from, to - from).All(i => !IsTaken(i, j))))
                    if (IsWide(second, low, high))
                        for (var i = from; i < to; i++)
                            for (var j = low; j < high; j++) stays[i, j] = true;
            }

        return [.. Enumerable.Range(0, first.Count - 1).SelectMany(i => Runs(j => !stays[i, j]).Select(run => Cell(i, i + 1, run.Low, run.High)))];
    }

    private static bool IsWide(List<Size> lines, int from, int to) => lines[to].Value - lines[from].Value >= LiningCutter.LeastStrip - Tolerance.Length;

    // The longest runs of cells along the second axis of which something holds.
    private IEnumerable<(int Low, int High)> Runs(Func<int, bool> holds)
    {
        for (var j = 0; j < second.Count - 1; j++)
        {
            if (!holds(j)) continue;
            var low = j;
            while (j < second.Count - 1 && holds(j)) j++;
            yield return (low, j);
        }
    }

    private bool IsTaken(int i, int j)
    {
        var (x, y) = ((first[i].Value + first[i + 1].Value) / 2, (second[j].Value + second[j + 1].Value) / 2);
        return shadows.Any(s => Covers(s.Along(plane.First), x) && Covers(s.Along(plane.Second), y));
    }

    private static bool Covers((Size From, Size To) stretch, double place) => stretch.From.Value < place && stretch.To.Value > place;

    private Contour Cell(int i, int iTo, int j, int jTo) => Contour.Rectangle(first[i].Value, second[j].Value, first[iTo].Value, second[jTo].Value);

    private double At(PolygonOperations.Piece piece, int axis) =>
        axis == plane.First ? piece.Outline.Bounds.Min.X : axis == plane.Second ? piece.Outline.Bounds.Min.Y : 0;

    // The lines a box ends at.
    private (Size From, Size To) Ends(int axis, Box2 box) => axis == plane.First
        ? (Nearest(first, box.Min.X), Nearest(first, box.Max.X))
        : (Nearest(second, box.Min.Y), Nearest(second, box.Max.Y));

    private static Size Nearest(List<Size> lines, double place) => lines.MinBy(l => Math.Abs(l.Value - place))!;
}
