using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.ProjectFile;

/// <summary>Makes the features a user asks for in one panel.</summary>
internal sealed class FeatureReader(Panel panel, ProjectResolver resolver)
{
    /// <summary>Every feature in the order bores, slots, cut-outs, grooves, marks; faults are noted with the resolver.</summary>
    public IEnumerable<Feature> Read(PanelEntry entry) =>
        entry.Bores.Select(Bore)
            .Concat<Feature?>(entry.Slots.Select(Slot))
            .Concat(entry.CutOuts.Select(CutOut))
            .Concat(entry.Grooves.Select(Groove))
            .Concat(entry.Marks.Select(Mark))
            .OfType<Feature>()
            .ToImmutableArray();

    private Bore? Bore(BoreEntry entry)
    {
        if (entry.Edge is { } direction)
        {
            if (entry.Face is not null) return Fail<Bore>(entry.At, "a bore is drilled into a face or an edge, not both; leave one of the keys out");
            if (entry.Depth is null) return Fail<Bore>(entry.At, "a bore in an edge needs a “depth”");
            if (resolver.EdgeOf(panel, direction, entry.At) is not { } edge) return null;
            var height = entry.Centre.Length == 2 ? entry.Centre[1] : (panel.Thickness / 2).As("middle-of-thickness");
            return resolver.Made(panel, Kernel.Bore.Blind(panel.Id, edge, new Position(entry.Centre[0], height), entry.Diameter, entry.Depth), entry.Method);
        }

        if (entry.Centre.Length != 2) return Fail<Bore>(entry.At, "a bore in a face needs its place as [x, y]; one length is enough only on an edge");
        var at = new Position(entry.Centre[0], entry.Centre[1]);
        var face = entry.Face ?? Surface.Inside;
        var bore = entry.Depth is { } depth
            ? Kernel.Bore.Blind(panel.Id, face, at, entry.Diameter, depth)
            : Kernel.Bore.Through(panel.Id, face, at, entry.Diameter);
        return resolver.Made(panel, bore, entry.Method);
    }

    private CutOut? Slot(SlotEntry entry) =>
        entry.From.Point.DistanceTo(entry.To.Point) <= Tolerance.Length
            ? Fail<CutOut>(entry.At, "both ends of the slot are one place; write a bore, or two different ends")
            : new CutOut(panel.Id, Contour.Slot(entry.From.Point, entry.To.Point, entry.Width.Value), [entry.From.X, entry.From.Y, entry.To.X, entry.To.Y, entry.Width]);

    private CutOut? CutOut(CutOutEntry entry)
    {
        if (entry.Circle is { } circle)
            return new CutOut(panel.Id, Contour.Circle(circle.Centre.Point, circle.Diameter.Value / 2), [circle.Centre.X, circle.Centre.Y, circle.Diameter]);
        if (entry.Rectangle is { } r)
        {
            var (x, y) = (r.Corner.X.Value, r.Corner.Y.Value);
            return Tolerance.Exceeds(2 * r.CornerRadius.Value, Math.Min(r.Length.Value, r.Width.Value))
                ? Fail<CutOut>(r.At, "the corner radius is more than half the shorter side of the rectangle")
                : new CutOut(panel.Id, Contour.RoundedRectangle(x, y, x + r.Length.Value, y + r.Width.Value, r.CornerRadius.Value), [r.Corner.X, r.Corner.Y, r.Length, r.Width, r.CornerRadius]);
        }

        if (entry.Outline.IsEmpty) return Fail<CutOut>(entry.At, "an outline needs at least three corners");
        var given = entry.Outline.SelectMany(s => s.Through is { } t ? new[] { t.X, t.Y, s.To.X, s.To.Y } : [s.To.X, s.To.Y]);
        return resolver.Outline(entry.Outline) is { } outline ? new CutOut(panel.Id, outline, [.. given]) : null;
    }

    private Groove? Groove(GrooveEntry entry)
    {
        if (entry.From.Point.DistanceTo(entry.To.Point) <= Tolerance.Length) return Fail<Groove>(entry.At, "both ends of the groove are one place; write two different ends");
        return Tolerance.Exceeds(panel.Thickness.Value, entry.Depth.Value)
            ? Kernel.Groove.Along(panel.Id, entry.Face, entry.From, entry.To, entry.Width, entry.Depth)
            : Fail<Groove>(entry.Depth.Source, $"a groove {Print(entry.Depth)} deep cuts a board of {Print(panel.Thickness)} in two; make it shallower, or write a cut-out");
    }

    private Mark? Mark(MarkEntry entry) => (entry.Centre, entry.From, entry.To) switch
    {
        ({ } centre, null, null) => new Mark(panel.Id, entry.Face, centre, null),
        (null, { } from, { } to) when from.Point.DistanceTo(to.Point) > Tolerance.Length => new Mark(panel.Id, entry.Face, from, to),
        (null, { }, { }) => Fail<Mark>(entry.At, "both ends of the mark are one place; write a centre, “at”, or two different ends"),
        (null, null, null) => Fail<Mark>(entry.At, "a mark needs a centre, “at”, or a line, “from” and “to”"),
        (null, _, _) => Fail<Mark>(entry.At, $"a line to mark needs both ends; “{(entry.From is null ? "from" : "to")}” is missing"),
        _ => Fail<Mark>(entry.At, "a mark is a centre, “at”, or a line, “from” and “to”, not both; leave one out"),
    };

    private T? Fail<T>(SourceSpan at, string message) where T : class
    {
        resolver.Fail(at, message);
        return null;
    }

    private string Print(Size size) => resolver.Print(size.Value);
}
