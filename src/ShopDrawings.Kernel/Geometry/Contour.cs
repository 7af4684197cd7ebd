using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>
/// A closed outline of straight lines and arcs that does not cross itself, run anticlockwise, in mm. Arcs stay arcs.
/// Invariants: at least two segments; no segment shorter than <see cref="Tolerance.Length"/>; each starts where the one before ends.
/// </summary>
public sealed class Contour : IEquatable<Contour>
{
    // Trusts its caller: closed, anticlockwise, not crossing itself.
    private Contour(ImmutableArray<Segment> segments)
    {
        Segments = segments;
        var bounds = segments[0].Bounds;
        foreach (var s in segments) bounds = bounds.Union(s.Bounds);
        Bounds = bounds;
    }

    /// <summary>The lines and arcs in order, anticlockwise.</summary>
    public ImmutableArray<Segment> Segments { get; }

    /// <summary>The smallest upright box around the outline, exact for arcs.</summary>
    public Box2 Bounds { get; }

    /// <summary>The centre and radius where the outline is one full circle.</summary>
    public (Point2 Centre, double Radius)? AsCircle =>
        Segments is [{ IsLine: false } a, { IsLine: false } b]
        && a.Centre.DistanceTo(b.Centre) <= Tolerance.Length && Tolerance.Same(a.Radius, b.Radius)
            ? (a.Centre, a.Radius)
            : null;

    /// <summary>Enclosed area in mm², exact for arcs.</summary>
    public double Area => SignedArea(Segments);

    /// <summary>An upright rectangle with its sides at the given coordinates.</summary>
    /// <exception cref="ArgumentException">The rectangle has no area.</exception>
    public static Contour Rectangle(double left, double bottom, double right, double top)
    {
        if (!(right > left + Tolerance.Length && top > bottom + Tolerance.Length)) throw new ArgumentException("A rectangle needs an area.", nameof(right));
        return new Contour(Loop([new(left, bottom), new(right, bottom), new(right, top), new(left, top)]));
    }

    /// <summary>A full circle, as two half circles.</summary>
    /// <exception cref="ArgumentException">The radius is not positive.</exception>
    public static Contour Circle(Point2 centre, double radius)
    {
        if (!(radius > Tolerance.Length)) throw new ArgumentException("A circle needs a positive radius.", nameof(radius));
        var right = centre + new Point2(radius, 0);
        var left = centre - new Point2(radius, 0);
        return new Contour([new(right, left, 1), new(left, right, 1)]);
    }

    /// <summary>A slot with round ends: all points within half of <paramref name="width"/> of the line between two centres.</summary>
    /// <exception cref="ArgumentException">The width is not positive or the centres are one point.</exception>
    public static Contour Slot(Point2 from, Point2 to, double width)
    {
        var along = to - from;
        if (!(along.Length > Tolerance.Length)) throw new ArgumentException("A slot needs two different centres.", nameof(to));
        if (!(width > Tolerance.Length)) throw new ArgumentException("A slot needs a positive width.", nameof(width));
        var side = along.Left * (width / 2 / along.Length);
        return new Contour(
        [
            new(from - side, to - side), new(to - side, to + side, 1),
            new(to + side, from + side), new(from + side, from - side, 1),
        ]);
    }

    /// <summary>A rectangle with square ends along the line between two points, <paramref name="width"/> wide: a groove's plan.</summary>
    /// <exception cref="ArgumentException">The width is not positive or the points are one.</exception>
    public static Contour Strip(Point2 from, Point2 to, double width)
    {
        var along = to - from;
        if (!(along.Length > Tolerance.Length)) throw new ArgumentException("A strip needs two different points.", nameof(to));
        if (!(width > Tolerance.Length)) throw new ArgumentException("A strip needs a positive width.", nameof(width));
        var side = along.Left * (width / 2 / along.Length);
        return new Contour(Loop([from - side, to - side, to + side, from + side]));
    }

    /// <summary>An upright rectangle with round corners of one radius; radius 0 gives square corners.</summary>
    /// <exception cref="ArgumentException">The radius is negative or exceeds half a side.</exception>
    public static Contour RoundedRectangle(double left, double bottom, double right, double top, double radius)
    {
        if (radius == 0) return Rectangle(left, bottom, right, top);
        if (radius < 0 || Tolerance.Exceeds(2 * radius, Math.Min(right - left, top - bottom)))
            throw new ArgumentException("The corner radius must lie between 0 and half the shorter side.", nameof(radius));
        var bulge = Math.Tan(Math.PI / 8);
        ReadOnlySpan<Segment> segments =
        [
            new(new(left + radius, bottom), new(right - radius, bottom)), new(new(right - radius, bottom), new(right, bottom + radius), bulge),
            new(new(right, bottom + radius), new(right, top - radius)), new(new(right, top - radius), new(right - radius, top), bulge),
            new(new(right - radius, top), new(left + radius, top)), new(new(left + radius, top), new(left, top - radius), bulge),
            new(new(left, top - radius), new(left, bottom + radius)), new(new(left, bottom + radius), new(left + radius, bottom), bulge),
        ];
        var all = ImmutableArray.CreateBuilder<Segment>(segments.Length);
        foreach (var s in segments)
        {
            if (s.Start.DistanceTo(s.End) > Tolerance.Length) all.Add(s);
        }

        return new Contour(all.DrainToImmutable());
    }

    /// <summary>An outline from lines and arcs in order, either way round; a clockwise one is turned round.</summary>
    /// <exception cref="ArgumentException">
    /// Fewer than two segments, one without length, one that does not start where the one before ends, no area, or an outline that crosses itself.
    /// </exception>
    public static Contour FromSegments(IEnumerable<Segment> segments)
    {
        var fault = TryCreate(segments, out var contour);
        return contour ?? throw new ArgumentException(fault, nameof(segments));
    }

    /// <summary>As <see cref="FromSegments"/>, but says what is wrong instead of throwing.</summary>
    /// <returns>Nothing where the outline is sound, else the fault in words.</returns>
    public static string? TryCreate(IEnumerable<Segment> segments, out Contour? contour)
    {
        contour = null;
        var list = segments.ToImmutableArray();
        if (list.Length < 2 || (list.Length == 2 && list.All(s => s.IsLine))) return "an outline needs at least three corners, or two and an arc";
        for (var i = 0; i < list.Length; i++)
        {
            if (list[i].Start.DistanceTo(list[i].End) <= Tolerance.Length) return $"part {i + 1} of the outline has no length";
            if (list[i].End.DistanceTo(list[(i + 1) % list.Length].Start) > Tolerance.Length) return $"the outline is open after part {i + 1}";
        }

        var area = SignedArea(list);
        if (PolygonOperations.CrossesItself(list)) return "the outline crosses or touches itself";
        if (Math.Abs(area) <= Tolerance.Length) return "the outline encloses nothing";
        contour = new Contour(area > 0 ? list : [.. list.Reverse().Select(s => s.Reversed)]);
        return null;
    }

    /// <summary>The outline moved by a vector.</summary>
    public Contour Moved(Point2 by) => new([.. Segments.Select(s => new Segment(s.Start + by, s.End + by, s.Bulge))]);

    /// <summary>The outline with every point mapped by <paramref name="map"/>, a rigid motion or a reflection.</summary>
    internal Contour Mapped(Func<Point2, Point2> map, bool mirrors) => new(mirrors
        ? [.. Segments.Reverse().Select(s => new Segment(map(s.End), map(s.Start), s.Bulge))]
        : [.. Segments.Select(s => new Segment(map(s.Start), map(s.End), s.Bulge))]);

    /// <summary>Whether a point lies inside or on the outline.</summary>
    public bool Contains(Point2 point) => DistanceTo(point) <= Tolerance.Length || PolygonOperations.Winding(Segments, point) != 0;

    /// <summary>Distance from a point to the nearest point of the outline, in mm, never negative.</summary>
    public double DistanceTo(Point2 point) => Segments.Min(s => s.DistanceTo(point));

    /// <inheritdoc/>
    public bool Equals(Contour? other) => other is not null && Segments.AsSpan().SequenceEqual(other.Segments.AsSpan());

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Contour);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Segments.Length, Bounds);

    private static ImmutableArray<Segment> Loop(ReadOnlySpan<Point2> corners)
    {
        var segments = ImmutableArray.CreateBuilder<Segment>(corners.Length);
        for (var i = 0; i < corners.Length; i++) segments.Add(new Segment(corners[i], corners[(i + 1) % corners.Length]));
        return segments.ToImmutable();
    }

    // Green's theorem: the polygon of the chords, plus the piece between each chord and its arc.
    private static double SignedArea(ImmutableArray<Segment> segments)
    {
        var area = 0.0;
        foreach (var s in segments)
        {
            area += s.Start.Cross(s.End) / 2;
            if (s.IsLine) continue;
            area += s.Radius * s.Radius * LessItsSine(s.SweepRadians) / 2;
        }

        return area;
    }

    // Small angles by the first terms of the series: of the plain difference few digits are left.
    private static double LessItsSine(double angle) =>
        Math.Abs(angle) < 0.01 ? angle * angle * angle / 6 * (1 - angle * angle / 20) : angle - Math.Sin(angle);
}
