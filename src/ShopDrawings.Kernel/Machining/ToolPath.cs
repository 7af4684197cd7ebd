using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>
/// The way of a tool's middle over a face, or a scribed stroke: lines and arcs, each starting where the one before ends, in mm. Where the tool
/// goes out into a corner and back, it runs over itself. Outer edges are followed anticlockwise, inner ones clockwise.
/// </summary>
public sealed record ToolPath
{
    /// <summary>A path.</summary>
    /// <exception cref="ArgumentException">There is none, or a closed one does not end where it starts.</exception>
    public ToolPath(ImmutableArray<Segment> segments, bool isClosed)
    {
        if (segments.IsDefaultOrEmpty || (isClosed && segments[^1].End.DistanceTo(segments[0].Start) > Tolerance.Length))
            throw new ArgumentException("A path needs segments, and a closed one ends where it starts.", nameof(segments));
        (Segments, IsClosed) = (segments, isClosed);
    }

    /// <summary>The lines and arcs in order.</summary>
    public ImmutableArray<Segment> Segments { get; }

    /// <summary>Whether it ends where it starts.</summary>
    public bool IsClosed { get; }

    /// <summary>The smallest upright box around it.</summary>
    public Box2 Bounds => Segments.Select(s => s.Bounds).Aggregate((a, b) => a.Union(b));

    /// <summary>The way along an outline: anticlockwise where the tool is outside, else clockwise.</summary>
    public static ToolPath Along(Contour contour, bool isOutside) =>
        new(isOutside ? contour.Segments : [.. contour.Segments.Reverse().Select(s => s.Reversed)], isClosed: true);

    /// <summary>An open way through points.</summary>
    public static ToolPath Through(ImmutableArray<Point2> points) =>
        new([.. points.Zip(points.Skip(1), (a, b) => new Segment(a, b))], isClosed: false);

    /// <summary>Length of the way in mm.</summary>
    public double Length => Segments.Sum(s => s.Length);

    /// <summary>The part between two distances from the start, in mm; of a closed path it may run on over its start.</summary>
    public ToolPath Part(double from, double to)
    {
        var parts = ImmutableArray.CreateBuilder<Segment>();
        var begin = 0.0;
        for (var i = 0; begin < to && (IsClosed || i < Segments.Length); i++)
        {
            var s = Segments[i % Segments.Length];
            var (a, b) = (Math.Max(from - begin, 0) / s.Length, Math.Min((to - begin) / s.Length, 1));
            if ((b - a) * s.Length > Tolerance.Length) parts.Add(s.Part(a, b));
            begin += s.Length;
        }

        return new ToolPath(parts.ToImmutable(), isClosed: false);
    }

    /// <inheritdoc/>
    public bool Equals(ToolPath? other) => other is not null && IsClosed == other.IsClosed && Segments.AsSpan().SequenceEqual(other.Segments.AsSpan());

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Segments.Length, Segments[0], IsClosed);
}
