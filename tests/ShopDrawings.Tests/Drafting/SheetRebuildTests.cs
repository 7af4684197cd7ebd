using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using CsCheck;
using ShopDrawings.Tests.Cabinet;

namespace ShopDrawings.Tests.Drafting;

/// <summary>
/// Rebuilds every feature of a panel from the words and numbers printed on its sheets, read from the SVG files alone, and compares with
/// <c>assembly.json</c> to half of the last printed step.
/// </summary>
public partial class SheetRebuildTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";
    private static readonly string Samples = Path.Combine(OutsideProgram.RepositoryRoot, "output-samples");

    public static TheoryData<string> Names => Fixtures.Names;

    [Theory]
    [MemberData(nameof(Names))]
    public void Features_rebuilt_from_the_sheets_are_those_of_the_assembly(string name)
    {
        using var assembly = JsonDocument.Parse(File.ReadAllText(Path.Combine(Samples, name, "assembly.json")));
        foreach (var panel in assembly.RootElement.GetProperty("panels").EnumerateArray())
        {
            var id = panel.GetProperty("id").GetString()!;
            var files = Enumerable.Range(1, 99).Select(n => Path.Combine(Samples, name, "panels", n == 1 ? $"{id}.svg" : $"{id}_{n}.svg")).TakeWhile(File.Exists).Select(File.ReadAllText);
            Compare(id, [.. files], panel);
        }
    }

    [Fact]
    public void Features_of_random_cabinets_are_rebuilt() => RandomCabinet.Any.Sample(cabinet =>
    {
        var design = Fixtures.DesignOf(cabinet.Text);
        var files = Shop.Export(Shop.Draw(design, []), ExporterSet.Standard).Where(f => f.Path == "assembly.json" || f.Path.EndsWith(".svg", StringComparison.Ordinal)).ToDictionary(f => f.Path, Text);
        using var assembly = JsonDocument.Parse(files["assembly.json"]);
        foreach (var panel in assembly.RootElement.GetProperty("panels").EnumerateArray())
        {
            var id = panel.GetProperty("id").GetString()!;
            Compare(id, [.. Enumerable.Range(1, 99).Select(n => n == 1 ? $"panels/{id}.svg" : $"panels/{id}_{n}.svg").TakeWhile(files.ContainsKey).Select(f => files[f])], panel);
        }
    }, iter: Fuzz.Iterations(10));

    private static string Text(Output output)
    {
        using var stream = new MemoryStream();
        output.Write(stream);
        return System.Text.Encoding.UTF8.GetString(stream.ToArray());
    }

    private static void Compare(string id, IReadOnlyList<string> sheets, JsonElement panel)
    {
        var rebuilt = Rebuilt(sheets);
        foreach (var (spaces, pitch, total) in sheets.SelectMany(Pitches)) AssertPitch(id, rebuilt, spaces, pitch, total);
        var edges = panel.GetProperty("edges");
        foreach (var feature in panel.GetProperty("features").EnumerateArray())
        {
            var expected = Expected(feature, edges);
            var match = rebuilt.FindIndex(r => r.Kind == expected.Kind && r.Numbers.Length == expected.Numbers.Length && r.Numbers.Zip(expected.Numbers).All(n => Math.Abs(n.First.Mm - n.Second) <= n.First.Step));
            Assert.True(match >= 0, $"{id}: {expected.Kind} {string.Join(' ', expected.Numbers)} is not on its sheet:\n{string.Join('\n', rebuilt.Select(r => $"{r.Kind} {string.Join(' ', r.Numbers.Select(n => n.Mm))}"))}");
            rebuilt.RemoveAt(match);
        }

        Assert.True(rebuilt.Count == 0, $"{id}: {rebuilt.Count} on the sheet that are not in the panel: {rebuilt.FirstOrDefault()}");
    }

    // What a row's dimension says leads from bore to bore of one kind, along or across, and its total is right.
    private static void AssertPitch(string id, List<(string Kind, Number[] Numbers)> rebuilt, int spaces, Number pitch, Number total)
    {
        Assert.Equal(total.Mm, spaces * pitch.Mm, 1e-3);
        bool HasRow(string kind, int along) => rebuilt.Where(r => r.Kind == kind).Any(first => Enumerable.Range(1, spaces).All(i => rebuilt.Exists(r =>
            r.Kind == kind && Math.Abs(r.Numbers[along].Mm - first.Numbers[along].Mm - i * pitch.Mm) < 0.02
            && r.Numbers.Zip(first.Numbers).Where((_, n) => n != along).All(n => Math.Abs(n.First.Mm - n.Second.Mm) < 0.02))));
        var kinds = rebuilt.Select(r => r.Kind).Where(k => k.StartsWith("bore", StringComparison.Ordinal)).Distinct().ToList();
        Assert.True(kinds.Exists(k => rebuilt.First(r => r.Kind == k).Numbers.Length is var n && (HasRow(k, n - 2) || HasRow(k, n - 1))), $"{id}: no row of {spaces} times {pitch.Mm}");
    }

    private static IEnumerable<(int Spaces, Number Pitch, Number Total)> Pitches(string svg)
    {
        var isInches = svg.Contains("inches; ~ is rounded", StringComparison.Ordinal);
        return XDocument.Parse(svg).Descendants(Svg + "g").Where(g => (string?)g.Attribute("id") == "DIMENSION").Descendants(Svg + "text").Select(t => PitchText().Match(t.Value)).Where(m => m.Success)
            .Select(m => (int.Parse(m.Groups["spaces"].Value, CultureInfo.InvariantCulture), Number.Of(m.Groups["pitch"].Value, isInches), Number.Of(m.Groups["total"].Value, isInches)));
    }

    // Kind with the surface and what a depth says, and the numbers that say where and how large.
    private static (string Kind, double[] Numbers) Expected(JsonElement f, JsonElement edges)
    {
        double N(string name) => f.GetProperty(name).GetDouble();
        double[] P(string name) => [.. f.GetProperty(name).EnumerateArray().Select(e => e.GetDouble())];
        string Face(string name) => f.GetProperty(name).GetString()!;
        switch (f.GetProperty("type").GetString())
        {
            case "bore":
                var surface = Face("surface");
                var depth = f.GetProperty("depth_mm");
                return depth.ValueKind == JsonValueKind.Null
                    ? ($"bore through {surface}", [N("diameter_mm"), .. P("at_mm")])
                    : ($"bore {surface}", [N("diameter_mm"), depth.GetDouble(), .. P("at_mm")]);
            case "groove":
                return ($"groove {Face("surface")}", [N("width_mm"), N("depth_mm"), .. P("from_mm"), .. P("to_mm")]);
            case "mark":
                return f.TryGetProperty("to_mm", out var to) && to.ValueKind == JsonValueKind.Array ? ($"line {Face("surface")}", [.. P("from_mm"), .. P("to_mm")]) : ($"centre {Face("surface")}", P("from_mm"));
            default:
                return ("opening", Corners(f));
        }
    }

    // The box of an opening, which every way of writing it gives.
    private static double[] Corners(JsonElement opening)
    {
        var points = opening.GetProperty("outline").EnumerateArray().SelectMany(s => s.EnumerateObject().Where(p => p.Value.ValueKind == JsonValueKind.Array).Select(p => p.Value.EnumerateArray().Select(e => e.GetDouble()).ToArray())).ToList();
        return [points.Min(p => p[0]), points.Min(p => p[1]), points.Max(p => p[0]), points.Max(p => p[1])];
    }

    private static List<(string Kind, Number[] Numbers)> Rebuilt(IReadOnlyList<string> sheets)
    {
        var isInches = sheets[0].Contains("inches; ~ is rounded", StringComparison.Ordinal);
        Number Read(string text) => Number.Of(text, isInches);
        Number[] Numbers(string text) => [.. Coordinate().Matches(text).Select(m => Read(m.Groups[1].Value))];
        var features = new List<(string, Number[])>();
        foreach (var (heading, places) in Groups(sheets))
        {
            var (count, what) = (int.Parse(heading.Groups["count"].Value, CultureInfo.InvariantCulture), heading.Groups["what"].Value);
            var before = features.Count;
            if (BoreKind().Match(what) is { Success: true } bore)
            {
                var isThrough = bore.Groups["through"].Success;
                var surface = bore.Groups["surface"].Value.Replace(" edge", "", StringComparison.Ordinal);
                foreach (var place in places.Select(p => BorePlace().Match(p)))
                {
                    var first = Read(place.Groups["at"].Value);
                    foreach (var second in Row(place.Groups["row"].Value, Read))
                    {
                        // z is always the second of an edge's two coordinates.
                        var (u, v) = place.Groups["axis"].Value is "y" && place.Groups["other"].Value is "x" or "z" ? (second, first) : (first, second);
                        if (place.Groups["axis"].Value == "z") (u, v) = (second, first);
                        Number[] size = isThrough ? [Read(bore.Groups["diameter"].Value)] : [Read(bore.Groups["diameter"].Value), Read(bore.Groups["depth"].Value)];
                        features.Add(($"bore {(isThrough ? "through " : "")}{surface}", [.. size, u, v]));
                    }
                }
            }
            else if (GrooveKind().Match(what) is { Success: true } groove)
                features.AddRange(places.Select(p => ($"groove {groove.Groups["face"].Value}", (Number[])[Read(groove.Groups["width"].Value), Read(groove.Groups["depth"].Value), .. Numbers(p)])));
            else if (MarkKind().Match(what) is { Success: true } mark)
                features.AddRange(places.Select(p => ($"{mark.Groups["what"].Value} {mark.Groups["face"].Value}", Numbers(p))));
            else if (RoundKind().Match(what) is { Success: true } round)
                features.AddRange(places.Select(Numbers).Select(c => ("opening", (Number[])[c[0].Plus(-Read(round.Groups["diameter"].Value).Mm / 2), c[1], c[0].Plus(Read(round.Groups["diameter"].Value).Mm / 2), c[1]])));
            else if (SlotKind().Match(what) is { Success: true } slot)
                features.AddRange(places.Select(Numbers).Select(c => ("opening", Slot(c, Read(slot.Groups["width"].Value).Mm / 2))));
            else if (what.StartsWith("opening ", StringComparison.Ordinal)) features.AddRange(Openings(places, Numbers).Select(o => ("opening", o)));
            else Assert.Fail($"“{what}” is no heading this test knows");
            Assert.Equal(count, features.Count - before);
        }

        return features;
    }

    // The lines of the list in order, each heading with its places; broken lines are put together again.
    private static IEnumerable<(Match Heading, List<string> Places)> Groups(IEnumerable<string> sheets)
    {
        Match? heading = null;
        var places = new List<string>();
        foreach (var line in sheets.SelectMany(Lines))
        {
            if (Heading().Match(line) is { Success: true } next)
            {
                if (heading is not null) yield return (heading, places);
                (heading, places) = (next, []);
            }
            else if (heading is not null) places.Add(line);
        }

        if (heading is not null) yield return (heading, places);
    }

    private static IEnumerable<string> Lines(string svg)
    {
        var texts = XDocument.Parse(svg).Descendants(Svg + "g").Where(g => (string?)g.Attribute("id") == "LIST").Descendants(Svg + "text").Select(t => Lengths.StackedDigits.Flat(t.Value.Replace('\u00a0', ' '))).ToList();
        var whole = new List<string>();
        foreach (var text in texts)
        {
            // The corners of an outline are lines of their own; nothing whole ends with a comma.
            var isContinued = whole.Count > 0 && ((whole[^1].EndsWith(',') && !Heading().IsMatch(text)) || Continuation().IsMatch(text) || (text.StartsWith("to x", StringComparison.Ordinal) && !Corner().IsMatch(whole[^1])));
            if (isContinued) whole[^1] += " " + text;
            else whole.Add(text);
        }

        return whole;
    }

    // Level or upright: its straight sides, without the round ends.
    private static Number[] Slot(Number[] ends, double half)
    {
        var isUpright = Math.Abs(ends[0].Mm - ends[2].Mm) < Math.Abs(ends[1].Mm - ends[3].Mm);
        var (x, y) = isUpright ? (half, 0.0) : (0.0, half);
        Number Least(Number a, Number b) => a.Mm < b.Mm ? a : b;
        Number Most(Number a, Number b) => a.Mm < b.Mm ? b : a;
        return [Least(ends[0], ends[2]).Plus(-x), Least(ends[1], ends[3]).Plus(-y), Most(ends[0], ends[2]).Plus(x), Most(ends[1], ends[3]).Plus(y)];
    }

    // Rectangles by their sides; anything else by its corners, which begin with “from”.
    private static IEnumerable<Number[]> Openings(List<string> places, Func<string, Number[]> numbers)
    {
        for (var i = 0; i < places.Count; i++)
        {
            if (Sides().Match(places[i]) is { Success: true } sides)
            {
                Number At(string name) => numbers("x " + sides.Groups[name].Value).Single();
                yield return [At("left"), At("low"), At("right"), At("high")];
                continue;
            }

            var corners = new List<Number[]> { numbers(places[i]) };
            for (; i + 1 < places.Count && !places[i + 1].StartsWith("from", StringComparison.Ordinal) && !Sides().IsMatch(places[i + 1]); i++) corners.Add(numbers(places[i + 1])[^2..]);
            yield return [corners.MinBy(c => c[0].Mm)![0], corners.MinBy(c => c[1].Mm)![1], corners.MaxBy(c => c[0].Mm)![0], corners.MaxBy(c => c[1].Mm)![1]];
        }
    }

    // Single places and even runs by their ends, by turns; a run's last place is where its pitch leads.
    private static IEnumerable<Number> Row(string row, Func<string, Number> read)
    {
        foreach (var part in row.Split(", "))
        {
            if (Pitch().Match(part) is not { Success: true } even)
            {
                yield return read(part);
                continue;
            }

            var (first, last, by) = (read(even.Groups["from"].Value), read(even.Groups["to"].Value), read(even.Groups["by"].Value));
            var count = int.Parse(even.Groups["count"].Value, CultureInfo.InvariantCulture);
            Assert.Equal(last.Mm, first.Mm + (count - 1) * by.Mm, 1e-3);
            for (var i = 0; i < count; i++) yield return first with { Mm = first.Mm + i * by.Mm };
        }
    }

    /// <summary>A printed number and half of its last step.</summary>
    private readonly record struct Number(double Mm, double Step)
    {
        public static Number Of(string text, bool isInches)
        {
            var isMetric = !isInches || text.EndsWith(" mm", StringComparison.Ordinal);
            var parts = text.Replace("~", "", StringComparison.Ordinal).Replace("\"", "", StringComparison.Ordinal).Replace(" mm", "", StringComparison.Ordinal).Trim().Split(' ', '/').Select(p => double.Parse(p, CultureInfo.InvariantCulture)).ToArray();
            var value = parts switch
            {
                [var whole, var over, var under] => whole + over / under,
                [var over, var under] => over / under,
                _ => parts.Single(),
            };
            // A rounded one is off by half a thirty-second, or half a hundredth of a millimetre, at most.
            var isRounded = text.Contains('~', StringComparison.Ordinal);
            return isMetric ? new(value, isRounded ? 0.005 + 1e-6 : 1e-4) : new(value * 25.4, isRounded ? 25.4 / 64 + 1e-6 : 1e-4);
        }

        public Number Plus(double mm) => this with { Mm = Mm + mm, Step = Step + 0.01 };
    }

    [GeneratedRegex(@"^((?<tag>[A-Z][0-9]*)  )?(?<count>\d+) × (?<what>.*)$")]
    private static partial Regex Heading();

    [GeneratedRegex(@"^⌀(?<diameter>[^,]*?) (bore|cone), ((?<through>through, from)|(?<depth>.*?) deep,) (?<surface>inside|outside|\w+ edge)(, [a-z-]+)?$")]
    private static partial Regex BoreKind();

    [GeneratedRegex(@"^groove (?<width>.*) wide, (?<depth>.*) deep, (?<face>inside|outside)$")]
    private static partial Regex GrooveKind();

    [GeneratedRegex("^⌀(?<diameter>.*) opening$")]
    private static partial Regex RoundKind();

    [GeneratedRegex("^slot (?<width>.*) wide, round ends, through$")]
    private static partial Regex SlotKind();

    [GeneratedRegex("^x (?<left>.*) to (?<right>.*), y (?<low>.*) to (?<high>.*)$")]
    private static partial Regex Sides();

    [GeneratedRegex(@"^(?<what>centre|line) to mark, (?<face>inside|outside)$")]
    private static partial Regex MarkKind();

    [GeneratedRegex(@"^(?<axis>[xyz]) (?<at>[^;]*); (?<other>[xyz]) (?<row>.*)$")]
    private static partial Regex BorePlace();

    [GeneratedRegex(@"^(?<from>.*) to (?<to>.*) by (?<by>.*) \((?<count>\d+)\)$")]
    private static partial Regex Pitch();

    [GeneratedRegex(@"^(?<spaces>\d+) × (?<pitch>.*) \(= (?<total>.*)\)$")]
    private static partial Regex PitchText();

    [GeneratedRegex(@"[xyz] (~?-?\d[\d./ ]*\d|~?-?\d)")]
    private static partial Regex Coordinate();

    [GeneratedRegex("^(from|to|by) x")]
    private static partial Regex Corner();

    [GeneratedRegex(@"^(~?-?\d[^×]*$|to ~?\d|by ~?\d|deep|outside|inside|marked|in-place|transferred|given|edge|\w+ edge|ends|wide|corners|mark,|through|round|from (inside|outside)|y ~?\d[^;]*$)")]
    private static partial Regex Continuation();
}
