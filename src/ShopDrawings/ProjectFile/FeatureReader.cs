using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.ProjectFile;

/// <summary>Makes the features a user asks for in one panel.</summary>
internal sealed class FeatureReader(Panel panel, ProjectResolver resolver)
{
    private readonly OpeningReader openings = new(panel.Id, resolver.Fail);

    /// <summary>Every feature in the order bores, slots, cut-outs, grooves, marks; faults are noted with the resolver.</summary>
    public IEnumerable<Feature> Read(PanelEntry entry) =>
        entry.Bores.Select(Bore)
            .Concat<Feature?>(entry.Slots.Select(openings.Slot))
            .Concat(entry.CutOuts.Select(openings.CutOut))
            .Concat(entry.Grooves.Select(Groove))
            .Concat(entry.Marks.Select(openings.Mark))
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

    private Groove? Groove(GrooveEntry entry)
    {
        if (entry.From.Point.DistanceTo(entry.To.Point) <= Tolerance.Length) return Fail<Groove>(entry.At, "both ends of the groove are one place; write two different ends");
        return Tolerance.Exceeds(panel.Thickness.Value, entry.Depth.Value)
            ? Kernel.Groove.Along(panel.Id, entry.Face, entry.From, entry.To, entry.Width, entry.Depth)
            : Fail<Groove>(entry.Depth.Source, $"a groove {Print(entry.Depth)} deep cuts a board of {Print(panel.Thickness)} in two; make it shallower, or write a cut-out");
    }

    private T? Fail<T>(SourceSpan at, string message) where T : class
    {
        resolver.Fail(at, message);
        return null;
    }

    private string Print(Size size) => resolver.Print(size.Value);
}
