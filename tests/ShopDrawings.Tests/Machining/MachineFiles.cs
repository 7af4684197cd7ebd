using ShopDrawings.Drafting;
using ShopDrawings.Dxf;
using ShopDrawings.Kernel;
using ShopDrawings.Tests.Dxf;
using ShopDrawings.Tests.Geometry;

namespace ShopDrawings.Tests.Machining;

/// <summary>Machine files as bytes, and what an outside reader finds in them.</summary>
internal static class MachineFiles
{
    /// <summary>What a program's file is, written as a machine wants it.</summary>
    public static byte[] Write(FaceProgram program, MachineDrawingSettings settings, DxfExporter exporter)
    {
        using var stream = new MemoryStream();
        exporter.Write(MachineDrawing.Of(program, settings), stream);
        return stream.ToArray();
    }

    /// <summary>What stands in the file of each program, as an outside reader finds it.</summary>
    public static List<List<Line>> Read(IEnumerable<FaceProgram> programs, DrawingUnit unit = DrawingUnit.Millimetre) =>
        [.. DxfFiles.Read([.. programs.Select(p => Write(p, new MachineDrawingSettings(), new DxfExporter { Unit = unit }))]).Select(Lines)];

    /// <summary>The lines, arcs, circles and polylines of a file, in mm, in the order of the file.</summary>
    public static List<Line> Lines(DxfFiles.ReadFile file)
    {
        var mm = file.Units == 1 ? 25.4 : 1;
        return [.. file.Entities.Where(e => e.Type is "LINE" or "ARC" or "CIRCLE" or "POLYLINE").Select(e => new Line(e.Layer, e.Type,
            [.. (e.Type == "CIRCLE" ? Circle(e.Numbers) : DxfReadBackTests.Path(e)).Select(s => new Segment(s.Start * mm, s.End * mm, s.Bulge))],
            e.Type == "CIRCLE" || (e.Type == "POLYLINE" && e.Numbers[0] == 1)))];
    }

    private static IEnumerable<Segment> Circle(double[] n)
    {
        var (right, left) = (new Point2(n[0] + n[2], n[1]), new Point2(n[0] - n[2], n[1]));
        return [new(right, left, 1), new(left, right, 1)];
    }

    /// <summary>Something drawn.</summary>
    internal sealed record Line(string Layer, string Type, IReadOnlyList<Segment> Segments, bool IsClosed)
    {
        /// <summary>The box around it, of a circle exactly.</summary>
        public Box2 Box => Segments.Select(s => s.Bounds).Aggregate((a, b) => a.Union(b));

        /// <summary>Points along it, 2 to the power of the halvings parts an arc.</summary>
        public IEnumerable<Point2> Points(int halvings) => Segments.SelectMany(s => Samples.Along(s, halvings));
    }

    /// <summary>Plain distance from a point to lines and arcs, by centres and angles.</summary>
    public static double Distance(IEnumerable<Line> lines, Point2 p) => lines.SelectMany(l => l.Segments).Min(s => Distance(s, p));

    private static double Distance(Segment s, Point2 p)
    {
        if (Math.Abs(s.Bulge) < 1e-9) return ToChord(s.Start, s.End, p);
        var (chord, half) = (s.End - s.Start, 2 * Math.Atan(s.Bulge));
        var centre = (s.Start + s.End) * 0.5 + chord.Left * (1 / (2 * Math.Tan(half)));
        var radius = centre.DistanceTo(s.Start);
        double Angle(Point2 q) => Math.Atan2(q.Y - centre.Y, q.X - centre.X);
        var (from, turn) = s.Bulge > 0 ? (Angle(s.Start), 2 * half) : (Angle(s.End), -2 * half);
        var at = (Angle(p) - from + 4 * Math.PI) % (2 * Math.PI);
        return at <= turn ? Math.Abs(p.DistanceTo(centre) - radius) : Math.Min(p.DistanceTo(s.Start), p.DistanceTo(s.End));
    }

    /// <summary>Distance from a point to a straight line between two points.</summary>
    public static double ToChord(Point2 a, Point2 b, Point2 p)
    {
        var along = b - a;
        var share = along.Dot(along) == 0 ? 0 : Math.Clamp((p - a).Dot(along) / along.Dot(along), 0, 1);
        return p.DistanceTo(a + along * share);
    }
}
