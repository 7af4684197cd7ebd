using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.ProjectFile;

/// <summary>Makes openings and marks of what the user wrote, for a panel or for a piece of hardware; each is nothing where a fault was noted.</summary>
/// <param name="origin">Who asks for them.</param>
/// <param name="fail">Notes a fault.</param>
internal sealed class OpeningReader(string origin, Action<SourceSpan, string> fail)
{
    /// <summary>A piece of hardware with everything it needs.</summary>
    public HardwarePattern Pattern(HardwareEntry entry)
    {
        var bores = entry.Bores.Select(b => b.Depth is { } depth ? Bore.Blind(origin, Surface.Inside, b.At, b.Diameter, depth) : Bore.Through(origin, Surface.Inside, b.At, b.Diameter));
        var features = bores.Concat<Feature?>(entry.Slots.Select(Slot)).Concat(entry.CutOuts.Select(CutOut)).Concat(entry.Marks.Select(Mark));
        return new HardwarePattern(origin, entry.Length, entry.Width, entry.Height, [.. features.OfType<Feature>()]);
    }

    /// <summary>A slot as an opening.</summary>
    public CutOut? Slot(SlotEntry entry) =>
        entry.From.Point.DistanceTo(entry.To.Point) <= Tolerance.Length
            ? Fail<CutOut>(entry.At, "both ends of the slot are one place; write a bore, or two different ends")
            : new CutOut(origin, Contour.Slot(entry.From.Point, entry.To.Point, entry.Width.Value), [entry.From.X, entry.From.Y, entry.To.X, entry.To.Y, entry.Width]);

    /// <summary>An opening of any form.</summary>
    public CutOut? CutOut(CutOutEntry entry)
    {
        if (entry.Circle is { } circle)
            return new CutOut(origin, Contour.Circle(circle.Centre.Point, circle.Diameter.Value / 2), [circle.Centre.X, circle.Centre.Y, circle.Diameter]);
        if (entry.Rectangle is { } r)
        {
            var (x, y) = (r.Corner.X.Value, r.Corner.Y.Value);
            return Tolerance.Exceeds(2 * r.CornerRadius.Value, Math.Min(r.Length.Value, r.Width.Value))
                ? Fail<CutOut>(r.At, "the corner radius is more than half the shorter side of the rectangle")
                : new CutOut(origin, Contour.RoundedRectangle(x, y, x + r.Length.Value, y + r.Width.Value, r.CornerRadius.Value), [r.Corner.X, r.Corner.Y, r.Length, r.Width, r.CornerRadius]);
        }

        if (entry.Outline.IsEmpty) return Fail<CutOut>(entry.At, "an outline needs at least three corners");
        var given = entry.Outline.SelectMany(s => s.Through is { } t ? new[] { t.X, t.Y, s.To.X, s.To.Y } : [s.To.X, s.To.Y]);
        return Outline(entry.Outline) is { } outline ? new CutOut(origin, outline, [.. given]) : null;
    }

    /// <summary>A scribed line or centre.</summary>
    public Mark? Mark(MarkEntry entry) => (entry.Centre, entry.From, entry.To) switch
    {
        ({ } centre, null, null) => new Mark(origin, entry.Face, centre, null),
        (null, { } from, { } to) when from.Point.DistanceTo(to.Point) > Tolerance.Length => new Mark(origin, entry.Face, from, to),
        (null, { }, { }) => Fail<Mark>(entry.At, "both ends of the mark are one place; write a centre, “at”, or two different ends"),
        (null, null, null) => Fail<Mark>(entry.At, "a mark needs a centre, “at”, or a line, “from” and “to”"),
        (null, _, _) => Fail<Mark>(entry.At, $"a line to mark needs both ends; “{(entry.From is null ? "from" : "to")}” is missing"),
        _ => Fail<Mark>(entry.At, "a mark is a centre, “at”, or a line, “from” and “to”, not both; leave one out"),
    };

    /// <summary>The outline of some steps, or nothing where it is not sound.</summary>
    public Contour? Outline(ImmutableArray<OutlineStep> steps)
    {
        if (steps[0].Through is not null)
        {
            fail(steps[0].At, "an outline starts with a corner [x, y]; an arc to the start goes last");
            return null;
        }

        var at = steps[0].To.Point;
        var segments = new List<Segment>();
        foreach (var step in steps.Skip(1))
        {
            var to = step.To.Point;
            if (at.DistanceTo(to) <= Tolerance.Length)
            {
                fail(step.At, "this corner is the same place as the one before it; leave one out");
                return null;
            }

            if (step.Through is { } middle && (middle.Point.DistanceTo(at) <= Tolerance.Length || middle.Point.DistanceTo(to) <= Tolerance.Length || IsBeyond(at, middle.Point, to)))
            {
                fail(step.At, "the point an arc goes through must lie between its ends, and not in line with them beyond one; write another point, or the corner alone");
                return null;
            }

            segments.Add(step.Through is { } through ? Segment.Through(at, through.Point, to) : new Segment(at, to));
            at = to;
        }

        if (at.DistanceTo(steps[0].To.Point) > Tolerance.Length) segments.Add(new Segment(at, steps[0].To.Point));
        if (Contour.TryCreate(segments, out var contour) is { } fault) fail(steps[0].At, $"this is no sound outline: {fault}");
        return contour;
    }

    // An arc through a point in line with its ends but not between them would be endless.
    private static bool IsBeyond(Point2 start, Point2 middle, Point2 end)
    {
        var (a, b) = (middle - start, end - middle);
        return a.Dot(b) < 0 && Math.Abs(a.Cross(b)) < 1e-4 * a.Length * b.Length;
    }

    private T? Fail<T>(SourceSpan at, string message) where T : class
    {
        fail(at, message);
        return null;
    }
}
