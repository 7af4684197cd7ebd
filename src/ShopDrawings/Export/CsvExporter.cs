using System.Globalization;
using System.Text;
using ShopDrawings.Kernel;

namespace ShopDrawings;

/// <summary>
/// Lists as CSV (RFC 4180, from memory; UTF-8, lines end with LF): <c>lists/panels.csv</c>, one line a panel, and <c>lists/bores.csv</c>,
/// one line a bore, sorted by panel, surface, diameter, depth and place; <c>lists/openings.csv</c>, grooves by their centre lines
/// and openings by their boxes; <c>lists/setups.csv</c>, one line a setting of
/// the drill, panel and surface; <c>lists/drilling.csv</c>, one line a bore that a router makes, in its order; <c>lists/stacks.csv</c>, what is drilled
/// through several panels at once; <c>lists/hardware.csv</c>, what to buy beside the boards; and <c>lists/bands.csv</c>, one line a banded edge and one with
/// the length to buy for each tape. Where there are drill guides also <c>lists/guides.csv</c>, one line a bit, and <c>lists/guide-places.csv</c>, one line a place. Where there is stock also
/// <c>lists/sheets.csv</c>, what to buy; <c>lists/cuts.csv</c>, one line a cut; <c>lists/offcuts.csv</c>, and for a store <c>lists/store-cuts.csv</c>. Every heading carries
/// its unit.
/// </summary>
public sealed class CsvExporter : IJobExporter
{
    /// <inheritdoc/>
    public string Format => "csv";

    /// <inheritdoc/>
    public IEnumerable<Output> Export(Job job) =>
    [
        new("lists/panels.csv", s => Write(s, Panels(job))),
        new("lists/bores.csv", s => Write(s, Bores(job))),
        new("lists/setups.csv", s => Write(s, DrillingLists.Setups(job.Design.Assembly))),
        new("lists/drilling.csv", s => Write(s, DrillingLists.OnMachines(job))),
        new("lists/stacks.csv", s => Write(s, DrillingLists.Stacks(job.Design.Assembly))),
        new("lists/openings.csv", s => Write(s, Openings(job.Design.Assembly))),
        new("lists/hardware.csv", s => Write(s, Hardware(job.Design.Assembly))),
        new("lists/bands.csv", s => Write(s, Bands(job.Design))),
        .. GuideLists.Of(job).Select(l => new Output(l.Path, s => Write(s, l.Rows))),
        .. CuttingLists.Of(job.Design.Cutting, job.Design.BoardsWithoutStock).Select(l => new Output(l.Path, s => Write(s, l.Rows))),
    ];

    private static IEnumerable<string[]> Panels(Job job)
    {
        yield return ["panel", "board", "label", "length_mm", "width_mm", "thickness_mm", "length_in", "width_in", "cut_length_mm", "cut_width_mm", "bands_mm", "mass_kg", "repeats", "machine_file"];
        var withheld = job.Withheld;
        var twins = PanelTwins.Find(job.Design.Assembly.Panels);
        foreach (var panel in job.Design.Assembly.Panels)
            yield return
            [
                panel.Id, panel.Board.Name, panel.Board.Label, Mm(panel.Length), Mm(panel.Width), Mm(panel.Thickness),
                LengthStyle.Fraction(panel.Length.Value), LengthStyle.Fraction(panel.Width.Value), Mm(panel.CutLength), Mm(panel.CutWidth),
                string.Join(' ', panel.Bands.Select(b => $"{panel.NameOf(b.Edge)}:{Mm(b.Thickness)}")), Number(panel.MassKg, 3),
                twins.GetValueOrDefault(panel.Id) is { } twin ? $"{(twin.Twinship == Twinship.Same ? "same as" : "mirror of")} {twin.Of}" : "",
                withheld.Contains(panel.Id) ? "withheld" : "yes",
            ];
    }

    private static IEnumerable<string[]> Bores(Job job)
    {
        yield return ["panel", "surface", "x_mm", "y_mm", "x_in", "y_in", "diameter_mm", "depth_mm", "use", "for", "method", "backing", "stop_mm"];
        var holes = new ThroughHoles(job.Design.Assembly.Panels);
        foreach (var panel in job.Design.Assembly.Panels)
        {
            var bores = panel.Features.OfType<Bore>()
                .OrderBy(b => b.Surface).ThenBy(b => b.Diameter.Value).ThenBy(b => b.Depth?.Value ?? double.PositiveInfinity)
                .ThenBy(b => Math.Round(b.At.X.Value, 6)).ThenBy(b => Math.Round(b.At.Y.Value, 6));
            foreach (var bore in bores)
            {
                var drilling = Drilling.Of(panel, bore, holes);
                yield return
                [
                    panel.Id, panel.NameOf(bore.Surface), Mm(bore.At.X), Mm(bore.At.Y), LengthStyle.Fraction(bore.At.X.Value), LengthStyle.Fraction(bore.At.Y.Value), Mm(bore.Diameter), bore.Depth is { } depth ? Mm(depth) : "through",
                    bore.Use.ToString().ToLowerInvariant(), bore.Origin == panel.Id ? "" : bore.Origin,
                    bore.Method.Word(), drilling.Exit is { } exit && bore.Method != BoreMethod.Given ? panel.NameOf(exit) : "", drilling.Stop is { } stop ? Mm(stop) : "",
                ];
            }
        }
    }

    private static IEnumerable<string[]> Openings(Assembly assembly)
    {
        yield return ["panel", "kind", "surface", "x_mm", "y_mm", "to_x_mm", "to_y_mm", "width_mm", "depth_mm", "for"];
        foreach (var panel in assembly.Panels)
            foreach (var feature in panel.Features)
            {
                var whose = feature.Origin == panel.Id ? "" : feature.Origin;
                string Of(double value) => Number(value, 4);
                if (feature is Groove groove)
                    yield return [panel.Id, "groove", panel.NameOf(groove.Face), Mm(groove.From.X), Mm(groove.From.Y), Mm(groove.To.X), Mm(groove.To.Y), Mm(groove.Width), Mm(groove.Depth), whose];
                if (feature is not CutOut cutOut) continue;
                var box = cutOut.Outline.Bounds;
                yield return cutOut.Outline.AsCircle is var (centre, radius)
                    ? [panel.Id, "round opening", "through", Of(centre.X), Of(centre.Y), "", "", Of(2 * radius), "", whose]
                    : [panel.Id, "opening", "through", Of(box.Min.X), Of(box.Min.Y), Of(box.Max.X), Of(box.Max.Y), "", "", whose];
            }
    }

    // Equal pieces on one line; a hinge with another plate is another piece.
    private static IEnumerable<string[]> Hardware(Assembly assembly)
    {
        yield return ["kind", "name", "count", "sizes_mm"];
        foreach (var equal in assembly.Joints.SelectMany(j => j.Fasteners).Select(f => f.Fastener).GroupBy(f => f.Name))
            yield return [equal.First().Kind, equal.Key, Count(equal.Count()), equal.First().Dimensions];

        foreach (var equal in assembly.Hardware.GroupBy(h => (h.Kind, h.Name, Sizes: string.Join(", ", Sizes(h)))))
            yield return [equal.Key.Kind.ToString().ToLowerInvariant(), equal.Key.Name, Count(equal.Sum(h => h.Count)), equal.Key.Sizes];
    }

    private static IEnumerable<string> Sizes(PlacedHardware piece) =>
        piece.Sizes.Where(s => s.Rule is "plate-height" or "side-clearance" or "swivel-radius" or "gasket-thickness" or "gasket-length" or "foot-height" or "least-foot-height" or "greatest-foot-height" or "foot-diameter").Select(s => $"{s.Rule.Replace('-', ' ')} {Number(s.Value, 2)}");

    private static IEnumerable<string[]> Bands(Design design)
    {
        yield return ["thickness_mm", "tape_width_mm", "panel", "edge", "length_mm", "to_buy_mm"];
        var edges =
            from panel in design.Assembly.Panels
            from band in panel.Bands
            let length = band.Edge is Surface.Start or Surface.End ? panel.Width : panel.Length
            select (Tape: (Thickness: Mm(band.Thickness), Width: Number(EdgeBanding.TapeWidth(panel.Thickness.Value), 4)), Panel: panel.Id, Edge: panel.NameOf(band.Edge), Length: length);
        foreach (var equal in edges.GroupBy(e => e.Tape))
        {
            foreach (var (tape, panel, edge, length) in equal) yield return [tape.Thickness, tape.Width, panel, edge, Mm(length), ""];
            yield return [equal.Key.Thickness, equal.Key.Width, "all", "", Number(equal.Sum(e => e.Length.Value), 4), Number(design.Banding.ToBuy(equal.Select(e => e.Length.Value)), 0)];
        }
    }

    /// <summary>A number of pieces as it is written.</summary>
    internal static string Count(int count) => count.ToString(CultureInfo.InvariantCulture);

    private static string Mm(Size size) => Number(size.Value, 4);

    /// <summary>A number as it is written, without zeros at its end and never as minus zero.</summary>
    internal static string Number(double value, int decimals)
    {
        var rounded = Math.Round(value, decimals);
        return (rounded == 0 ? 0 : rounded).ToString("0.####", CultureInfo.InvariantCulture);
    }

    /// <summary>Writes rows of cells as CSV.</summary>
    internal static void Write(Stream stream, IEnumerable<string[]> rows)
    {
        using var writer = new StreamWriter(stream, new UTF8Encoding(false), leaveOpen: true) { NewLine = "\n" };
        foreach (var row in rows) writer.WriteLine(string.Join(',', row.Select(Cell)));
    }

    // A text that a spreadsheet would take for a formula gets an apostrophe.
    private static string Cell(string text)
    {
        if (text.Length > 0 && text[0] is '=' or '+' or '@' || (text.StartsWith('-') && !double.TryParse(text, CultureInfo.InvariantCulture, out _))) text = "'" + text;
        return text.AsSpan().IndexOfAny(",\"\n\r") < 0 ? text : $"\"{text.Replace("\"", "\"\"")}\"";
    }
}
