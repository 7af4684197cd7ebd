using ShopDrawings.Kernel;

namespace ShopDrawings.Dxf;

/// <summary>Straight pieces for an arc: their ends lie on it, all alike long.</summary>
internal static class ArcChords
{
    /// <summary>How many chords stay within a tolerance in mm; each spans a quarter turn at most.</summary>
    public static int Count(Segment s, double tolerance)
    {
        // A chord that spans an angle a is off its arc by r (1 - cos a/2) = 2 r sin² a/4.
        const double MostShare = 0.14644660940672624;     // sin² of 22.5 degrees
        var step = 4 * Math.Asin(Math.Sqrt(Math.Min(tolerance / (2 * s.Radius), MostShare)));
        return Math.Max(1, (int)Math.Ceiling(Math.Abs(s.SweepRadians) / step - 1e-9));
    }

    /// <summary>Adds the chords within a tolerance in mm to a list; a line as it is.</summary>
    public static void Add(Segment s, double tolerance, List<Segment> chords)
    {
        var count = ArcGroups.IsFlat(s) ? 1 : Count(s, tolerance);
        var from = s.Start;
        for (var i = 1; i <= count; i++)
        {
            var to = i == count ? s.End : Part(s, (double)i / count).End;
            chords.Add(new Segment(from, to));
            from = to;
        }
    }

    /// <summary>The beginning of an arc, as long as a share of it. Found without the centre, so that all but straight arcs lose no digits.</summary>
    public static Segment Part(Segment s, double share)
    {
        // Seen from the start, chords lie half as far round as the arcs they span.
        var quarter = Math.Atan(s.Bulge);       // of the turned angle
        var part = quarter * share;
        var (sin, cos) = Math.SinCos(2 * (part - quarter));
        var along = (s.End - s.Start) * (Math.Sin(2 * part) / Math.Sin(2 * quarter));
        return new Segment(s.Start, s.Start + new Point2(along.X * cos - along.Y * sin, along.X * sin + along.Y * cos), Math.Tan(part));
    }
}
