using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>Gathers the stretches of circles that show, circle by circle.</summary>
internal sealed class Arcs
{
    // Stretches nearer than this meet, in degrees.
    private const double Apart = 0.2;

    private readonly Dictionary<(int Body, int Axis, double Level, RoundEdge Edge), List<(double From, double To)>> stretches = [];

    /// <summary>Adds a stretch of less than half a circle between two points near it, in either direction.</summary>
    public void Add((int Body, int Axis, double Level, RoundEdge Edge) circle, Point2 from, Point2 to)
    {
        var (start, end) = (Angle(circle.Edge, from), Angle(circle.Edge, to));
        if (end < start - 180) end += 360;
        else if (end > start + 180) start += 360;
        if (!stretches.TryGetValue(circle, out var spans)) stretches.Add(circle, spans = []);
        spans.Add((Math.Min(start, end), Math.Max(start, end)));
    }

    /// <summary>The arcs: stretches that meet are one, one that goes all round is whole.</summary>
    public ImmutableArray<VisibleArc> Joined(bool isMouth) =>
        [.. stretches.SelectMany(s => Joined(s.Value).Select(a => new VisibleArc(s.Key.Body, s.Key.Axis, s.Key.Level, s.Key.Edge, isMouth, a.From, a.To)))];

    private static double Angle(RoundEdge edge, Point2 at) => Math.Atan2(at.Y - edge.Centre.Y, at.X - edge.Centre.X) * (180 / Math.PI);

    private static IEnumerable<(double From, double To)> Joined(List<(double From, double To)> spans)
    {
        var joined = new List<(double From, double To)>();
        foreach (var span in spans.Select(s => s.From < -180 + Apart ? (From: s.From + 360, To: s.To + 360) : s).OrderBy(s => s.From))
        {
            if (joined.Count > 0 && span.From <= joined[^1].To + Apart) joined[^1] = (joined[^1].From, Math.Max(joined[^1].To, span.To));
            else joined.Add(span);
        }

        if (joined.Count > 1 && joined[0].From + 360 <= joined[^1].To + Apart)
        {
            joined[^1] = (joined[^1].From, Math.Max(joined[^1].To, joined[0].To + 360));
            joined.RemoveAt(0);
        }

        return joined.Select(s => s.To - s.From >= 360 - Apart ? (0, 360) : s);
    }
}
