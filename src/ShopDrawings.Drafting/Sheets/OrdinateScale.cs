using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>A scale of numbers beside a view: where each feature lies along one axis, counted from corner 0, none twice. Numbers that would stand on each other are moved apart.</summary>
internal static class OrdinateScale
{
    private const double Gap = 1.5, Straight = 2.5, Bent = 7, TextGap = 0.8;

    /// <summary>Room it takes beside the panel, with numbers of a width in mm.</summary>
    public static double Depth(double textWidth) => Gap + Bent + TextGap + textWidth;

    /// <summary>Least distance of two numbers of a height in mm.</summary>
    public static double Pitch(double height) => 1.45 * height;

    /// <summary>Whether numbers find no room, or stand far from where they belong.</summary>
    /// <param name="at">Places on paper along the axis, in order.</param>
    /// <param name="from">Where the room for numbers begins.</param>
    /// <param name="to">Where it ends.</param>
    /// <param name="height">Height of the numbers in mm.</param>
    public static bool IsCrowded(ImmutableArray<double> at, double from, double to, double height)
    {
        const double Far = 4;
        var pitch = Pitch(height);
        return at.Length * pitch > to - from || Apart(at, pitch, from + pitch / 2, to - pitch / 2).Zip(at).Any(p => Math.Abs(p.First - p.Second) > Far);
    }

    /// <summary>Lines and numbers of a scale; nothing where there are more numbers than room.</summary>
    /// <param name="marks">Places on paper along the axis and what is printed at each, in order.</param>
    /// <param name="from">Where the room for numbers begins along the axis, on paper.</param>
    /// <param name="to">Where it ends.</param>
    /// <param name="edge">The panel's edge across the axis, on paper.</param>
    /// <param name="isUpright">Whether the axis runs upright, and the scale stands left of the panel; else it stands below.</param>
    /// <param name="lines">The layer of lines.</param>
    /// <param name="numbers">The layer of numbers.</param>
    /// <param name="height">Height of the numbers in mm.</param>
    public static ImmutableArray<Entity> Of(
        IReadOnlyList<(double At, string Text)> marks, double from, double to, double edge, bool isUpright, Layer lines, Layer numbers, double height)
    {
        var pitch = Pitch(height);
        if (marks.Count == 0 || marks.Count * pitch > to - from) return [];
        var at = Apart([.. marks.Select(m => m.At)], pitch, from + pitch / 2, to - pitch / 2);
        var entities = ImmutableArray.CreateBuilder<Entity>();
        for (var i = 0; i < marks.Count; i++)
        {
            Point2 P(double along, double away) => isUpright ? new(edge - away, along) : new(along, edge - away);
            var (a, b, c, d) = (P(marks[i].At, Gap), P(marks[i].At, Gap + Straight), P(at[i], Gap + Bent - 1.5), P(at[i], Gap + Bent));
            foreach (var (p, q) in new[] { (a, b), (b, c), (c, d) }) entities.Add(new SegmentEntity(lines, new Segment(p, q)));
            var text = P(at[i], Gap + Bent + TextGap);
            entities.Add(isUpright
                ? new TextEntity(numbers, text - new Point2(0, height / 2), height, marks[i].Text, Anchor.BaseRight)
                : new TextEntity(numbers, text + new Point2(height / 2, 0), height, marks[i].Text, Anchor.BaseRight, 90));
        }

        return entities.ToImmutable();
    }

    /// <summary>Places at least a pitch apart and within bounds, as near to where they should be as can be: neighbours that are too near share the move.</summary>
    internal static ImmutableArray<double> Apart(ImmutableArray<double> wanted, double pitch, double least, double most)
    {
        // Pools of neighbours that stand a pitch apart; each pool's middle is where its members want to be on average.
        var pools = new List<(double Start, int Count)>();
        double Start(double mean, int count) => Math.Clamp(mean - (count - 1) * pitch / 2, least, Math.Max(least, most - (count - 1) * pitch));
        var sums = new List<double>();
        foreach (var w in wanted)
        {
            pools.Add((Start(w, 1), 1));
            sums.Add(w);
            while (pools.Count > 1 && pools[^2].Start + pools[^2].Count * pitch > pools[^1].Start)
            {
                var count = pools[^2].Count + pools[^1].Count;
                var sum = sums[^2] + sums[^1];
                pools.RemoveRange(pools.Count - 2, 2);
                sums.RemoveRange(sums.Count - 2, 2);
                pools.Add((Start(sum / count, count), count));
                sums.Add(sum);
            }
        }

        return [.. pools.SelectMany(p => Enumerable.Range(0, p.Count).Select(i => p.Start + i * pitch))];
    }
}
