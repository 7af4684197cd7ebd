using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>What of a sheet is drawn on, as boxes on paper, so that what comes later finds a place of its own.</summary>
internal sealed class FreeSpace(IEnumerable<Entity> drawn)
{
    private readonly List<Box2> taken = [.. drawn.SelectMany(Boxes)];

    /// <summary>Whether nothing is drawn in a box.</summary>
    public bool IsFree(Box2 box) => !taken.Exists(t => t.Min.X < box.Max.X && box.Min.X < t.Max.X && t.Min.Y < box.Max.Y && box.Min.Y < t.Max.Y);

    /// <summary>Whether all that an entity draws stays clear of the rest by a distance, and within bounds.</summary>
    public bool IsFree(Entity entity, double clear, Box2 within) => Boxes(entity).All(b =>
        b.Min.X >= within.Min.X && b.Min.Y >= within.Min.Y && b.Max.X <= within.Max.X && b.Max.Y <= within.Max.Y && IsFree(b.Grown(clear)));

    /// <summary>Notes that a box is drawn on.</summary>
    public void Take(Box2 box) => taken.Add(box);

    /// <summary>Notes what an entity draws on.</summary>
    public void Take(Entity entity) => taken.AddRange(Boxes(entity));

    // A line or an outline is in the way along its edge, not within.
    private static IEnumerable<Box2> Boxes(Entity entity) => entity switch
    {
        ContourEntity contour => contour.Contour.Segments.SelectMany(Along),
        SegmentEntity segment => Along(segment.Segment),
        Dimension dimension => DimensionGraphics.Of(dimension).SelectMany(Boxes),
        _ => [entity.Bounds],
    };

    private static IEnumerable<Box2> Along(Segment s)
    {
        const double Step = 2;
        var count = s.IsLine && (s.Start.X == s.End.X || s.Start.Y == s.End.Y) ? 1 : Math.Max(1, (int)Math.Ceiling(s.Length / Step));
        return Enumerable.Range(0, count).Select(i => s.Part((double)i / count, (i + 1.0) / count).Bounds);
    }
}
