using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>The words of a guide's sheet: how it is put together, what is drilled, where, and the care to take.</summary>
internal sealed class GuideText(Guide guide, ImmutableArray<TemplatePlace> places, GuideSettings settings, LengthStyle lengths)
{
    private const int MostPlaces = 24;

    /// <summary>All lines, no wider than a room in mm, and whether each is a heading.</summary>
    public ImmutableArray<(string Line, bool IsHead)> Lines(double width, double height)
    {
        var lines = ImmutableArray.CreateBuilder<(string, bool)>();
        foreach (var (head, texts) in new[] { ("Put together", PutTogether()), ("Drill", Drilled()), ("Lay on", Where()), ("Care", Care()) })
        {
            lines.Add((head, true));
            foreach (var text in texts) lines.AddRange(Lettering.Lines(text.Split(' '), height, width - 3).Select(l => (SheetFrame.Fitted(l, height, width - 3), false)));
        }

        return lines.ToImmutable();
    }

    private IEnumerable<string> PutTogether()
    {
        var pieces = guide.Pieces.Count();
        if (pieces > 1) yield return $"The plate is cut in {Count(pieces, "piece")}: lay them on a flat table and press the knobs home; ease a tight one with sandpaper.";
        if (!guide.Fences.IsEmpty)
        {
            yield return FormattableString.Invariant($"Push the tabs of {(guide.Fences.Length == 1 ? "fence F1" : $"fences F1 {(guide.Fences.Length == 2 ? "and" : "to")} F{guide.Fences.Length}")} through their slots from the face that lies on the work, and press each towards the panel: its inner face is the panel's edge.");
            yield return guide.Template.HasMirror
                ? "Do not glue them: for places that say “turned over”, take the fences out, turn the plate over and put them in from its other face."
                : "Glue them so.";
        }

        if (guide.Template.HasMirror && guide.Fences.IsEmpty) yield return "For places that say “turned over”, turn the plate over.";
        foreach (var bush in guide.Holes.Select(h => h.Bush).OfType<GuideBush>().Distinct().OrderBy(b => b.Bit))
            yield return $"Press bushes ⌀{lengths.PrintFine(bush.Outside)} for ⌀{lengths.PrintFine(bush.Bit)} into their holes, flush with both faces.";
        if (guide.Fences.Select(f => f.Edge.IsUpright).Distinct().Count() < 2)
            yield return $"Where there is no fence, draw line {string.Join(" and ", Open())} on the panel and lay the ticks of the plate on it.";
    }

    // Line A says where the guide lies along its own x, line B along y.
    private IEnumerable<string> Open()
    {
        bool IsFenced(bool isUpright) => guide.Fences.Any(f => f.Edge.IsUpright == isUpright != (guide.Lie.Quarters == 1));
        if (!IsFenced(true)) yield return "A";
        if (!IsFenced(false)) yield return "B";
    }

    private IEnumerable<string> Drilled()
    {
        foreach (var equal in guide.Holes.GroupBy(h => (h.Bush, Text: string.Join("; ", h.Drilled.Select((d, i) => Bit(d, i == 0))))))
            yield return $"{Numbers(equal.Select(h => h.Number))}: {equal.Key.Text}{(equal.Key.Bush is { } bush ? $" (bush ⌀{lengths.PrintFine(bush.Outside)})" : "")}";
        if (guide.Holes.SelectMany(h => h.Drilled).Any(d => d.Depth is not null))
            yield return $"The stop counts from the plate's upper face: depth and {lengths.PrintFine(guide.Plate.Thickness.Value)} of plate.";
    }

    private string Bit(TemplateHole hole, bool isLed) => (isLed, hole) switch
    {
        (true, { Depth: { } depth }) => $"⌀{lengths.PrintFine(hole.Diameter)}, {lengths.PrintFine(depth)} deep, stop at {lengths.PrintFine(guide.Stop(hole)!.Value)}",
        (true, _) => $"⌀{lengths.PrintFine(hole.Diameter)} through",
        (_, { IsSunk: true }) => $"then off the guide sink to ⌀{lengths.PrintFine(hole.Diameter)}",
        (_, { Depth: { } depth }) => $"then off the guide ⌀{lengths.PrintFine(hole.Diameter)}, {lengths.PrintFine(depth)} deep",
        _ => $"then off the guide ⌀{lengths.PrintFine(hole.Diameter)} through",
    };

    private IEnumerable<string> Where()
    {
        foreach (var (place, i) in places.Take(MostPlaces).Select((p, i) => (p, i + 1)))
        {
            var panel = place.Panel;
            string From((Surface Edge, double Distance) line) => $"{lengths.PrintPlace(line.Distance)} from the {panel.NameOf(line.Edge)}";
            var fences = string.Join(" and ", guide.FencedEdges(place).Select(panel.NameOf));
            yield return FormattableString.Invariant($"{i}. {panel.Id}, {panel.NameOf(place.Face)} face{(guide.Template.HasMirror ? place.Turn.IsMirrored ? ", turned over" : ", as it is" : "")}, arrow towards the {panel.NameOf(place.ArrowTo)} edge{(fences.Length > 0 ? $", {(fences.Contains(" and ", StringComparison.Ordinal) ? "fences" : "fence")} at the {fences}" : "")}; A {From(place.LineA)}, B {From(place.LineB)}{(place.Origin == panel.Id ? "" : $" ({place.Origin})")}");
        }

        if (places.Length > MostPlaces) yield return $"and {places.Length - MostPlaces} more in lists/guide-places.csv";
    }

    private IEnumerable<string> Care()
    {
        yield return "Clamp guide and panel to the bench, a backing board below. Drill the first holes in scrap and measure them. Mind hands, sleeves and eyes where bits run; stop when a bush turns or a hole grows wide. Common practice; makers' instructions and local rules come first.";
        yield return settings.Machine.Kind == MachineKind.Laser
            ? "The edges are compensated for the kerf: measure yours on this board first."
            : "Check the plate with calipers before its first use.";
    }

    private static string Count(int count, string what) => FormattableString.Invariant($"{count} {what}{(count == 1 ? "" : "s")}");

    // 1 to 4, 7
    private static string Numbers(IEnumerable<int> numbers)
    {
        var runs = new List<(int From, int To)>();
        foreach (var n in numbers)
            if (runs.Count > 0 && runs[^1].To == n - 1) runs[^1] = (runs[^1].From, n);
            else runs.Add((n, n));
        return string.Join(", ", runs.Select(r => r.From == r.To ? FormattableString.Invariant($"{r.From}") : FormattableString.Invariant($"{r.From}{(r.To == r.From + 1 ? "," : " to")} {r.To}")));
    }
}
