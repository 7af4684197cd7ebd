using System.Globalization;
using System.Text.Json;
using System.Xml.Linq;

namespace ShopDrawings.Tests.Templates;

/// <summary>Templates as they were written, read from the outside: the sample of the hand-drilled cupboard, its list of places and its assembly.json.</summary>
public class TemplateFileTests
{
    private static readonly string Sample = Path.Combine(OutsideProgram.RepositoryRoot, "output-samples", "hand-drilled-cupboard");

    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    [Fact]
    public void Holes_laid_at_the_places_of_the_list_are_those_of_the_assembly()
    {
        using var assembly = JsonDocument.Parse(File.ReadAllText(Path.Combine(Sample, "assembly.json")));
        var panels = assembly.RootElement.GetProperty("panels").EnumerateArray().ToDictionary(p => p.GetProperty("id").GetString()!);
        var rows = File.ReadAllLines(Path.Combine(Sample, "lists", "templates.csv")).Skip(1).Select(r => r.Split(',')).ToList();
        Assert.True(rows.Count > 10);

        foreach (var row in rows)
        {
            var panel = panels[row[2]];
            var edges = new[] { "start", "end", "near", "far" }.ToDictionary(e => panel.GetProperty("edges").GetProperty(e).GetString()!, e => e);
            var (length, width) = (panel.GetProperty("length_mm").GetProperty("value").GetDouble(), panel.GetProperty("width_mm").GetProperty("value").GetDouble());
            // Up on the paper is towards the arrow's edge; right of it follows from the face that is looked at.
            var up = Outwards(edges[row[4]]);
            var right = row[3] == "inside" ? (X: up.Y, Y: -up.X) : (X: -up.Y, Y: up.X);
            var (a, b) = (LineAt(edges[row[5]], Number(row[6]), length, width), LineAt(edges[row[7]], Number(row[8]), length, width));
            var origin = (X: a.X ?? b.X!.Value, Y: a.Y ?? b.Y!.Value);
            // On the paper lines A and B cross at the leftmost and lowest centre; mirrored, at the rightmost.
            var isMirrored = row[1] == "mirrored";
            var holes = Pages(row[0], isMirrored);
            var (left, low) = ((isMirrored ? holes.Max(h => h.X) : holes.Min(h => h.X)), holes.Min(h => h.Y));
            var laid = holes.Select(h => (X: h.X - left, Y: h.Y - low, h.Radius)).Select(h => Key(origin.X + right.X * h.X + up.X * h.Y, origin.Y + right.Y * h.X + up.Y * h.Y, 2 * h.Radius)).Order(StringComparer.Ordinal).ToList();

            var bores = panel.GetProperty("features").EnumerateArray()
                .Where(f => f.GetProperty("type").GetString() == "bore" && f.GetProperty("method").GetString() == "marked" && f.GetProperty("surface").GetString() == row[3] && (f.GetProperty("origin").GetString() is var o && o == (row[10].Length > 0 ? row[10] : row[2])))
                .Select(f => Key(f.GetProperty("at_mm")[0].GetDouble(), f.GetProperty("at_mm")[1].GetDouble(), f.GetProperty("diameter_mm").GetDouble())).Order(StringComparer.Ordinal);
            Assert.Equal(bores, laid);
        }
    }

    [Fact]
    public void Marks_on_paper_are_true_across_joined_pages()
    {
        var pdf = Path.Combine(Sample, "templates", "wood-4x50.pdf");
        var pages = Files("wood-4x50").Skip(1).Select(Read).ToList();
        Assert.Equal(2, pages.Count);
        var measured = new List<(List<(double X, double Y)> Holes, List<(double X, double Y)> Crosses)>();
        foreach (var (page, number) in pages.Select((p, i) => (p, i + 2)))
        {
            var marks = page.Holes.Select(h => (h.X, h.Y)).Concat(page.Crosses).ToList();
            var result = OutsideProgram.RunOracle("pdf_scale.py", "json", [pdf, "--page", Text(number), "--origin", "bottom", "--expect-page", "210x297", "--no-scaling", .. marks.SelectMany(m => new[] { "--mark", $"{Text(m.X)},{Text(m.Y)}" })]);
            if (result.ExitCode == 2) Assert.Skip("poppler-utils or qpdf is not installed");
            Assert.True(result.ExitCode == 0, result.Output + result.Errors);
            using var report = JsonDocument.Parse(result.Output);
            var found = report.RootElement.GetProperty("marks").EnumerateArray().Select(m => (m.GetProperty("measured")[0].GetDouble(), m.GetProperty("measured")[1].GetDouble())).ToList();
            measured.Add(([.. found.Take(page.Holes.Count)], [.. found.Skip(page.Holes.Count)]));
        }

        // Cross on cross, the three screws stand (320 − 6 − 2 × 50) ÷ 2 = 107 mm apart: the back covers the sides.
        var shift = (X: measured[0].Crosses[0].X - measured[1].Crosses[0].X, Y: measured[0].Crosses[0].Y - measured[1].Crosses[0].Y);
        Assert.All(measured[0].Crosses.Zip(measured[1].Crosses), pair => Assert.InRange(Math.Max(Math.Abs(pair.First.X - pair.Second.X - shift.X), Math.Abs(pair.First.Y - pair.Second.Y - shift.Y)), 0, 0.1));
        double[] along = [.. measured[0].Holes.Select(h => h.Y).Concat(measured[1].Holes.Select(h => h.Y + shift.Y)).Order()];
        double[] apart = [.. along.Zip(along.Skip(1), (a, b) => b - a).Where(d => d > 1)];
        Assert.Equal(2, apart.Length);
        Assert.All(apart, d => Assert.InRange(d, 106.9, 107.1));
    }

    [Theory]
    [InlineData("A4", 210, 297)]
    [InlineData("letter", 215.9, 279.4)]
    [InlineData("A3", 297, 420)]
    [InlineData("tabloid", 279.4, 431.8)]
    public void Pages_are_as_large_as_their_paper(string paper, double width, double height)
    {
        using var folder = Made($"templates: {{paper: {paper}}}\n", []);

        foreach (var file in Directory.GetFiles(folder["out/templates/pages"], "*.svg", SearchOption.AllDirectories))
        {
            var root = XDocument.Load(file).Root!;
            double[] sides = [.. new[] { "width", "height" }.Select(s => Number(root.Attribute(s)!.Value.Replace("mm", "", StringComparison.Ordinal))).Order()];
            Assert.Equal([width, height], sides);
        }
    }

    [Fact]
    public void Roll_holds_every_template_on_one_page()
    {
        using var folder = Made("templates: {paper: {roll: 420}}\n", []);

        Assert.False(File.Exists(folder["out/templates/pages/wood-4x50_3.svg"]));
        Assert.Equal("420mm", XDocument.Load(folder["out/templates/pages/wood-4x50_2.svg"]).Root!.Attribute("width")!.Value);
    }

    [Fact]
    public void Printer_that_is_off_prints_true_lengths()
    {
        using var folder = Made("", ["--printer-scale", "0.98,1.03"]);
        var holes = Read(folder["out/templates/pages/fan-120_2.svg"]).Crosses0;
        var plain = Read(Path.Combine(Sample, "templates", "pages", "fan-120_2.svg")).Crosses0;

        Assert.Equal(plain.Max(h => h.X) - plain.Min(h => h.X), (holes.Max(h => h.X) - holes.Min(h => h.X)) * 0.98, 2);
        Assert.Equal(plain.Max(h => h.Y) - plain.Min(h => h.Y), (holes.Max(h => h.Y) - holes.Min(h => h.Y)) * 1.03, 2);
    }

    [Theory]
    [InlineData("1")]
    [InlineData("99.6,100.2")]
    [InlineData("0.99,1,1")]
    [InlineData("NaN,1")]
    public void Printer_scale_that_is_none_is_refused(string scale)
    {
        using var folder = new TemporaryFolder();

        var call = Call.Of("make", Path.Combine(Fixtures.Folder, "hand-drilled-cupboard.yaml"), "--out", folder["out"], "--printer-scale", scale);

        Assert.Equal(2, call.ExitCode);
        Assert.Contains($"“{scale}” is no printer scale", call.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void Svg_opens_at_true_size_in_a_browser()
    {
        using var folder = new TemporaryFolder();
        foreach (var file in Files("cup-35-cup"))
        {
            File.WriteAllText(folder["page.html"], $"<body><img id=i src='file://{file}'><script>onload=()=>document.title=i.naturalWidth+'x'+i.naturalHeight</script></body>");

            var result = OutsideProgram.Run("chromium", "--headless", "--no-sandbox", "--disable-gpu", "--allow-file-access-from-files", $"--user-data-dir={folder["profile"]}", "--dump-dom", "file://" + folder["page.html"]);

            // 96 CSS pixels to an inch; the browser gives whole ones.
            Assert.Contains("<title>794x1123</title>", result.Output, StringComparison.Ordinal);
        }
    }

    private static TemporaryFolder Made(string more, string[] arguments)
    {
        var folder = new TemporaryFolder();
        File.WriteAllText(folder["p.yaml"], Fixtures.Text("hand-drilled-cupboard") + more);
        var call = Call.Of(["make", folder["p.yaml"], "--out", folder["out"], .. arguments]);
        Assert.Equal(0, call.ExitCode);
        return folder;
    }

    private static IEnumerable<string> Files(string name) =>
        Enumerable.Range(1, 99).Select(i => Path.Combine(Sample, "templates", "pages", $"{name}_{i.ToString(CultureInfo.InvariantCulture)}.svg")).TakeWhile(File.Exists);

    // The holes of all pages of one version, laid together by their registration crosses, each once.
    private static List<(double X, double Y, double Radius)> Pages(string name, bool isMirrored)
    {
        var pages = Files(name).Where(f => Title(f) is var t && t.Contains("page", StringComparison.Ordinal) && t.Contains("mirrored", StringComparison.Ordinal) == isMirrored).Select(Read).ToList();
        var all = new List<(double X, double Y, double Radius)>(pages[0].Holes);
        var (shift, last) = ((X: 0.0, Y: 0.0), pages[0]);
        foreach (var page in pages.Skip(1))
        {
            shift = (shift.X + last.Crosses[0].X - page.Crosses[0].X, shift.Y + last.Crosses[0].Y - page.Crosses[0].Y);
            all.AddRange(page.Holes.Select(h => (h.X + shift.X, h.Y + shift.Y, h.Radius)));
            last = page;
        }

        return [.. all.DistinctBy(h => Key(h.X, h.Y, h.Radius))];
    }

    private static string Title(string file) => XDocument.Load(file).Root!.Element(Svg + "title")!.Value;

    private static (List<(double X, double Y, double Radius)> Holes, List<(double X, double Y)> Crosses, List<(double X, double Y)> Crosses0) Read(string file)
    {
        var root = XDocument.Load(file).Root!;
        var height = Number(root.Attribute("height")!.Value.Replace("mm", "", StringComparison.Ordinal));
        IEnumerable<XElement> In(string layer, string kind) => root.Elements(Svg + "g").Where(g => g.Attribute("id")!.Value == layer).Elements(Svg + kind);
        List<(double, double)> Middles(string layer) =>
            [.. In(layer, "line").Where(l => Of(l, "y1") == Of(l, "y2")).Select(l => ((Of(l, "x1") + Of(l, "x2")) / 2, height - Of(l, "y1")))];
        return ([.. In("HOLES", "circle").Select(c => (Of(c, "cx"), height - Of(c, "cy"), Of(c, "r")))], Middles("REGISTRATION"), Middles("CENTRES"));
    }

    private static double Of(XElement element, string name) => element.Attribute(name) is { } attribute ? Number(attribute.Value) : 0;

    private static (double X, double Y) Outwards(string edge) => edge switch { "start" => (-1, 0), "end" => (1, 0), "near" => (0, -1), _ => (0, 1) };

    private static (double? X, double? Y) LineAt(string edge, double distance, double length, double width) =>
        edge switch { "start" => (distance, null), "end" => (length - distance, null), "near" => (null, distance), _ => (null, width - distance) };

    private static string Key(double x, double y, double diameter) => FormattableString.Invariant($"{Math.Round(x, 2) + 0.0:0.00} {Math.Round(y, 2) + 0.0:0.00} {diameter:0.0}");

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static string Text(double value) => value.ToString(CultureInfo.InvariantCulture);
}
