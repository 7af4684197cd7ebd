using System.Collections.Immutable;
using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Overlay;
using NetTopologySuite.Operation.OverlayNG;

namespace ShopDrawings.Kernel;

/// <summary>
/// Every call of the polygon library, and nothing else, so that another library can take its place.
/// Arcs are flattened here, each time with a named tolerance in mm: no chord lies further from its arc.
/// </summary>
internal static class PolygonOperations
{
    // An arc that would need more is kilometres wide.
    private const int MostChords = 100_000;

    private static readonly GeometryFactory Factory = new();

    /// <summary>Whether an outline crosses or touches itself; arcs are judged to 0.001 mm.</summary>
    public static bool CrossesItself(ImmutableArray<Segment> segments)
    {
        var ring = Ring(segments, 0.001);
        // Without a ring it is two parts with nothing between their ends once flattened, which meet there alone.
        return ring is { IsSimple: false };
    }

    /// <summary>How often an outline runs round a point anticlockwise; exact for arcs. Points on the outline may count either way.</summary>
    public static int Winding(ImmutableArray<Segment> segments, Point2 point)
    {
        // The polygon of the chords by the crossing rule, then the piece between each chord and its arc.
        // A point on a chord counts as a little above and to the right of it, in both steps.
        var winding = 0;
        foreach (var s in segments)
        {
            var chord = s.End - s.Start;
            var side = chord.Cross(point - s.Start);
            if (side == 0) side = chord.Y != 0 ? -chord.Y : chord.X;
            if (s.Start.Y <= point.Y && s.End.Y > point.Y && side > 0) winding++;
            if (s.Start.Y > point.Y && s.End.Y <= point.Y && side < 0) winding--;
            if (s.IsLine || point.DistanceTo(s.Centre) >= s.Radius) continue;
            if (s.Bulge > 0 && side < 0) winding++;
            if (s.Bulge < 0 && side > 0) winding--;
        }

        return winding;
    }

    /// <summary>The set of points inside some outlines and outside others.</summary>
    public static Region RegionOf(Contour outline, double tolerance) => new(Factory.CreatePolygon(Ring(outline.Segments, tolerance)));

    /// <summary>All outlines at a distance outside (positive) or inside (negative) a contour; round at convex corners.</summary>
    public static ImmutableArray<Contour> Buffer(Contour contour, double distance, double tolerance)
    {
        // Half of the tolerance for the chords of the outline's arcs, half for those of the round corners. Not the library's own buffer: it
        // leaves out round corners of up to 0.05 radians, which costs an eighth of a percent of the distance whatever the tolerance.
        var half = tolerance / 2;
        var outline = Factory.CreatePolygon(Ring(contour.Segments, half));
        var corners = outline.ExteriorRing.Coordinates.Select(c => new Point2(c.X, c.Y)).ToList();
        var rim = corners.Zip(corners.Skip(1)).Where(e => e.First.DistanceTo(e.Second) > Tolerance.Length)
            .Select(e => (Geometry)Factory.CreatePolygon(Ring(Contour.Slot(e.First, e.Second, 2 * Math.Abs(distance)).Segments, half)));
        var swept = OverlayNGRobust.Union([.. rim]);
        var result = OverlayNGRobust.Overlay(outline, swept, distance > 0 ? SpatialFunction.Union : SpatialFunction.Difference);
        return [.. Polygons(result).Select(p => ToContour(p.ExteriorRing)).OfType<Contour>()];
    }

    // Nothing where a piece is too small to be an outline.
    private static Contour? ToContour(LineString ring)
    {
        var points = new List<Point2>();
        foreach (var c in ring.Coordinates.Skip(1))
        {
            var point = new Point2(c.X, c.Y);
            if (points.Count == 0 || point.DistanceTo(points[^1]) > Tolerance.Length) points.Add(point);
        }

        if (points.Count > 1 && points[0].DistanceTo(points[^1]) <= Tolerance.Length) points.RemoveAt(points.Count - 1);
        Contour.TryCreate(points.Select((p, i) => new Segment(p, points[(i + 1) % points.Count])), out var contour);
        return contour;
    }

    // Without corners at which the outline runs straight on: edges that were noded with others keep them.
    private static Contour? WithoutNeedlessCorners(Contour? outline)
    {
        if (outline is null) return null;
        var corners = outline.Segments.Select(s => s.Start).ToList();
        bool Turns(int i)
        {
            var (before, after) = (corners[i] - corners[(i + corners.Count - 1) % corners.Count], corners[(i + 1) % corners.Count] - corners[i]);
            return Math.Abs(before.Cross(after)) > Tolerance.Length * Math.Max(before.Length, after.Length);
        }

        var kept = corners.Where((_, i) => Turns(i)).ToList();
        return Contour.FromSegments(kept.Select((p, i) => new Segment(p, kept[(i + 1) % kept.Count])));
    }

    private static IEnumerable<Polygon> Polygons(Geometry geometry) =>
        Enumerable.Range(0, geometry.NumGeometries).Select(geometry.GetGeometryN).OfType<Polygon>().Where(p => !p.IsEmpty);

    private static LinearRing? Ring(ImmutableArray<Segment> segments, double tolerance)
    {
        var points = segments.SelectMany(s => Flattened(s, tolerance)).Select(p => new Coordinate(p.X, p.Y)).ToList();
        points.Add(points[0].Copy());
        return points.Count < 4 ? null : Factory.CreateLinearRing([.. points]);
    }

    // The start and the points between; the end belongs to the next segment.
    private static IEnumerable<Point2> Flattened(Segment segment, double tolerance)
    {
        yield return segment.Start;
        if (segment.IsLine) yield break;
        var (centre, radius, sweep) = (segment.Centre, segment.Radius, segment.SweepRadians);
        var count = (int)Math.Clamp(Math.Ceiling(Math.Abs(sweep) / StepRadians(radius, tolerance)), 1, MostChords);
        var from = segment.Start - centre;
        for (var i = 1; i < count; i++)
        {
            var (sin, cos) = Math.SinCos(sweep * i / count);
            yield return centre + new Point2(from.X * cos - from.Y * sin, from.X * sin + from.Y * cos);
        }
    }

    // The angle of a chord that misses its arc by the tolerance: r(1 - cos(step/2)), written so that large radii lose no digits; at most a half circle.
    private static double StepRadians(double radius, double tolerance) => 4 * Math.Asin(Math.Sqrt(Math.Min(tolerance / (2 * radius), 0.5)));

    /// <summary>A connected part of a region.</summary>
    /// <param name="Outline">Its outer edge.</param>
    /// <param name="Holes">The edges of what is cut out of it.</param>
    internal sealed record Piece(Contour Outline, ImmutableArray<Contour> Holes);

    /// <summary>A set of points in the plane, bounded by straight lines.</summary>
    internal sealed class Region
    {
        private readonly Geometry geometry;

        internal Region(Geometry geometry) => this.geometry = geometry;

        /// <summary>Area in mm².</summary>
        public double Area => geometry.Area;

        /// <summary>Least distance between two points of the sets in mm; 0 where they meet.</summary>
        public double DistanceTo(Region other) => geometry.Distance(other.geometry);

        /// <summary>The points of this set that are not in the other.</summary>
        public Region Minus(Region other) => new(OverlayNGRobust.Overlay(geometry, other.geometry, SpatialFunction.Difference));

        /// <summary>The points in both sets.</summary>
        public Region And(Region other) => new(OverlayNGRobust.Overlay(geometry, other.geometry, SpatialFunction.Intersection));

        /// <summary>The points in either set.</summary>
        public Region Or(Region other) => new(OverlayNGRobust.Overlay(geometry, other.geometry, SpatialFunction.Union));

        /// <summary>The pieces the set falls into with what is cut out of them, those without area left out.</summary>
        public IEnumerable<Piece> Outlines =>
            from polygon in Polygons(geometry)
            let outline = WithoutNeedlessCorners(ToContour(polygon.ExteriorRing))
            where outline is not null
            select new Piece(outline, [.. polygon.InteriorRings.Select(ring => WithoutNeedlessCorners(ToContour(ring))).OfType<Contour>()]);

        /// <summary>The boxes around the pieces the set falls into, those without area left out.</summary>
        public IEnumerable<Box2> Pieces => Polygons(geometry)
            .Where(p => p.Area > Tolerance.Length)
            .Select(p => p.EnvelopeInternal)
            .Select(e => new Box2(new Point2(e.MinX, e.MinY), new Point2(e.MaxX, e.MaxY)));
    }
}
