using System.Collections.Immutable;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;

namespace ShopDrawings;

/// <summary>The lists of drill guides.</summary>
internal static class GuideLists
{
    /// <summary>Both lists; none where no guide is made.</summary>
    public static IEnumerable<(string Path, IEnumerable<string[]> Rows)> Of(Job job) =>
        job.Design.Guides is { } guides && guides.Serving(job.Withheld).ToImmutableArray() is { IsEmpty: false } serving ? [("lists/guides.csv", Holes(serving.Select(s => s.Guide))), ("lists/guide-places.csv", Places(serving))] : [];

    // One line a bit: what the guide leads, then what follows by hand on the same centre, whose stop counts from the panel again.
    private static IEnumerable<string[]> Holes(IEnumerable<Guide> guides)
    {
        yield return ["guide", "hole", "bit_mm", "bush_mm", "guide_hole_mm", "depth_mm", "plate_mm", "stop_mm", "how"];
        foreach (var guide in guides)
            foreach (var hole in guide.Holes)
                foreach (var (bit, isLed) in hole.Drilled.Select((b, i) => (b, i == 0)))
                    yield return
                    [
                        guide.Name, CsvExporter.Count(hole.Number), Mm(bit.Diameter), isLed && hole.Bush is { } bush ? Mm(bush.Outside) : "", isLed ? Mm(hole.Diameter) : "", bit.Depth is { } depth ? Mm(depth) : "through",
                        isLed ? Mm(guide.Plate.Thickness.Value) : "", isLed ? guide.Stop(bit) is { } stop ? Mm(stop) : "through" : bit.Depth is { } own ? Mm(own) : "through",
                        isLed ? "through the guide" : bit.IsSunk ? "countersunk by hand, after the guide is off" : "by hand on the same centre, after the guide is off",
                    ];
    }

    private static IEnumerable<string[]> Places(ImmutableArray<(Guide Guide, ImmutableArray<TemplatePlace> Places)> serving)
    {
        yield return ["guide", "lies", "panel", "face", "arrow_to", "fences_at", "line_a_from", "line_a_mm", "line_b_from", "line_b_mm", "for"];
        foreach (var (guide, places) in serving)
            foreach (var place in places)
                yield return
                [
                    guide.Name, place.Turn.IsMirrored ? "turned over" : "as it is", place.Panel.Id, place.Panel.NameOf(place.Face), place.Panel.NameOf(place.ArrowTo),
                    string.Join("; ", guide.FencedEdges(place).Select(place.Panel.NameOf)),
                    place.Panel.NameOf(place.LineA.Edge), Mm(place.LineA.Distance), place.Panel.NameOf(place.LineB.Edge), Mm(place.LineB.Distance), place.Origin == place.Panel.Id ? "" : place.Origin,
                ];
    }

    private static string Mm(double value) => CsvExporter.Number(value, 4);
}
