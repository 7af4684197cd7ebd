using System.Text;
using System.Text.RegularExpressions;
using CsCheck;
using ShopDrawings.Cutting;
using ShopDrawings.Kernel;
using ShopDrawings.Tests.Print;

namespace ShopDrawings.Tests.CutPlans;

/// <summary>How a project's panels are cut from its stock, judged by the files alone.</summary>
public partial class CuttingPlanTests
{
    private static readonly string Samples = Path.Combine(OutsideProgram.RepositoryRoot, "output-samples");

    /// <summary>Fixtures that give stock.</summary>
    public static TheoryData<string> WithStock => [.. Fixtures.Names.Select(n => n.Data).Where(n => File.Exists(Path.Combine(Samples, n, "lists", "sheets.csv")))];

    [Fact]
    public void Fixtures_show_a_saw_at_home_a_store_and_a_router() =>
        Assert.Equal([true, false, true], new[] { "seedling-cabinet", "home-lab", "tool-cart" }.Select(n => File.Exists(Path.Combine(Samples, n, "lists", "cuts.csv"))));

    [Theory]
    [MemberData(nameof(WithStock))]
    public void Every_panel_of_a_board_with_stock_is_on_exactly_one_sheet(string name)
    {
        var panels = CutsList.Read(File.ReadAllText(Path.Combine(Samples, name, "lists", "panels.csv")));
        var boards = CutsList.Read(File.ReadAllText(Path.Combine(Samples, name, "lists", "sheets.csv"))).Where(r => r["verdict"] != "no stock is given").Select(r => r["board"]).ToHashSet();
        var wanted = panels.Where(p => boards.Contains(p["board"])).Select(p => $"{p["panel"]} {p["cut_length_mm"]} {p["cut_width_mm"]}").Order(StringComparer.Ordinal);

        Assert.Equal(wanted, Directory.GetFiles(Path.Combine(Samples, name, "sheets"), "*.svg").SelectMany(f => Drawn(File.ReadAllText(f), panels)).Order(StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(WithStock))]
    public void List_of_cuts_alone_gives_the_panels(string name)
    {
        var file = Path.Combine(Samples, name, "lists", "cuts.csv");
        if (!File.Exists(file)) return;

        AssertCuts(File.ReadAllText(file), File.ReadAllText(Path.Combine(Samples, name, "lists", "panels.csv")));
    }

    [Fact]
    public void Settings_of_the_fence_are_not_split()
    {
        foreach (var name in new[] { "seedling-cabinet", "tool-cart" })
            foreach (var board in CutsList.Read(File.ReadAllText(Path.Combine(Samples, name, "lists", "cuts.csv"))).GroupBy(r => r["board"]))
            {
                var settings = board.Select(r => (Number: int.Parse(r["setting"], System.Globalization.CultureInfo.InvariantCulture), Fence: r["fence_mm"])).ToList();
                Assert.Equal(settings.Select(s => s.Number).Order(), settings.Select(s => s.Number));
                Assert.All(settings.GroupBy(s => s.Number), same => Assert.Single(same.Select(s => s.Fence).Distinct()));
            }
    }

    [Fact]
    public void Slip_of_the_store_keeps_to_its_number_of_cuts_and_holds_none_done_at_home()
    {
        var lists = Path.Combine(Samples, "tool-cart", "lists");
        var slip = CutsList.Read(File.ReadAllText(Path.Combine(lists, "store-cuts.csv")));
        var atStore = CutsList.Read(File.ReadAllText(Path.Combine(lists, "cuts.csv"))).Count(r => r["at"] == "store");

        Assert.InRange(slip.GroupBy(r => r["sheets"]).Max(s => s.Count()), 1, 8);
        Assert.Equal(atStore, slip.Where(r => r["cut_number"] != "0").Sum(r => int.Parse(r["count"], System.Globalization.CultureInfo.InvariantCulture)));
    }

    [Fact]
    public void Printed_slip_says_on_a_small_page_for_each_sheet_what_the_list_says()
    {
        var lists = Path.Combine(Samples, "tool-cart", "lists");
        var slips = CutsList.Read(File.ReadAllText(Path.Combine(lists, "store-cuts.csv"))).GroupBy(r => r["sheets"]).ToList();
        var pdf = File.ReadAllBytes(Path.Combine(lists, "store-cuts.pdf"));

        // A form feed ends a page.
        var pages = PrintFiles.Ask("pdftotext", pdf, "-layout", "-enc", "UTF-8", "{file}", "-").Split('\f', StringSplitOptions.RemoveEmptyEntries);

        Assert.Equal(slips.Count, pages.Length);
        Assert.All(slips.Zip(pages), slip => Assert.All(slip.First.Where(r => r["cut_number"] != "0"), row =>
        {
            var line = $"{row["cut_number"]}: {row["cut"]}, {row["fence_mm"]} from the {row["measured_from"]}";
            Assert.Contains(row["piece"] == row["gives"] ? $"{line}, a trim" : $"{line}: {row["gives"]}", slip.Second, StringComparison.Ordinal);
        }));
        Assert.Contains("595.276 x 841.89 pts (A4)", PrintFiles.Ask("pdfinfo", pdf, "{file}"), StringComparison.Ordinal);
    }

    [Fact]
    public void Random_panels_are_cut_from_their_stock() => Gen.Select(Gen.Select(Gen.Int[80, 900], Gen.Int[60, 500], Gen.Int[0, 15], Gen.Int[1, 3]).Array[1, 7], Gen.Int[0, 12], Gen.Bool, Gen.Int[0, 3]).Sample((panels, trim, hasGrain, first) =>
    {
        var text = new StringBuilder($"project: Any\nboards:\n  white: {{kind: melamine, thickness: 18, grain: {(hasGrain ? "yes" : "no")}}}\npanels:\n");
        foreach (var ((length, width, bands, copies), k) in panels.Select((p, k) => (p, k)))
            for (var c = 0; c < copies; c++)
            {
                var edges = new[] { "left", "right", "front", "back" }.Where((_, e) => (bands >> e & 1) == 1).Select(e => $"{e}: 1.3");
                text.Append($"  p{k}-n{c}: {{board: white, length: {length}.7, width: {width}, bands: {{{string.Join(", ", edges)}}}}}\n");
            }

        text.Append($"stock:\n  white:\n    - {{length: 2800, width: 2070, trim: {trim}, price: 70}}\n    - {{length: 1000, width: 600, own: yes{(hasGrain ? ", grain: width" : "")}}}\n");
        if (first > 0) text.Append($"cutting: {{saw: {{kerf: 3.3, first-cut: {(first == 1 ? "along" : "across")}}}}}\n");
        var job = Shop.Draw(Fixtures.DesignOf(text.ToString()), []);

        var files = Shop.Export(job, ExporterSet.Standard).Where(f => f.Path.EndsWith(".csv", StringComparison.Ordinal)).ToDictionary(f => f.Path, Text);
        AssertCuts(files["lists/cuts.csv"], files["lists/panels.csv"]);
        var plan = Assert.Single(job.Design.Cutting).Plan!;
        Assert.Equal(job.Design.Assembly.Panels.Length, plan.Sheets.Sum(s => s.Placements.Length));
        foreach (var p in plan.Sheets.SelectMany(s => s.Placements.Select(p => (Sheet: s, Place: p))).Where(_ => hasGrain))
            Assert.Equal(p.Sheet.Stock.Grain == GrainDirection.AlongWidth, p.Place.IsTurned);
    }, iter: 25);

    [Fact]
    public void Router_gets_every_bore_where_its_panel_lies()
    {
        var design = Fixtures.Design("home-lab");
        var programs = design.Machining[0].Plan.Programs.Where(p => p.Sheet is not null && !p.IsSecond).ToList();

        Assert.Equal(design.Assembly.Panels.Select(p => p.Id).Order(), programs.SelectMany(p => p.Panels).Select(p => p.Panel.Id).Order());
        foreach (var board in design.Cutting)
            foreach (var sheet in board.Plan!.Sheets)
            {
                var lying = programs.Single(p => p.Name == board.NameOf(sheet)).Panels;
                foreach (var place in sheet.Placements)
                {
                    var box = lying.Single(l => l.Panel.Id == board.NameOf(place)).Outline.Bounds;
                    Assert.Equal((place.X / 1e6, place.Y / 1e6), (box.Min.X, box.Min.Y), (a, b) => Math.Abs(a.Item1 - b.Item1) < 1e-6 && Math.Abs(a.Item2 - b.Item2) < 1e-6);
                }
            }
    }

    [Theory]
    [InlineData("{length: 1500, width: 600, price: 20}", "white: plate, 1600 × 500 mm, fits no sheet; the nearest, 1500 × 600, is 100 mm too short", "take a sheet 100 mm longer, or make the panel smaller")]
    [InlineData("{length: 1700, width: 480}", "white: plate, 1600 × 500 mm, fits no sheet; the nearest, 1700 × 480, is 20 mm too narrow", "take a sheet 20 mm wider, or make the panel smaller")]
    [InlineData("{length: 1605, width: 600, trim: 10}", "white: plate, 1600 × 500 mm, fits no sheet; the nearest, 1605 × 600, is 15 mm too short", "take a sheet 15 mm longer, or make the panel smaller")]
    [InlineData("{length: 550, width: 1700}", "white: plate, 1600 × 500 mm, would fit turned, but its grain forbids it; as it must lie, sheet 550 × 1700 is 1050 mm too short", "take a sheet 1050 mm longer, or one whose grain runs the other way")]
    [InlineData("{length: 1700, width: 600, count: 0, own: yes}", "white: there is none of any of its sheets: every count is 0", "add sheets to “stock”, or raise a “count”")]
    public void Plan_that_cannot_be_is_a_finding_that_withholds_the_sheets(string sheet, string message, string cure)
    {
        var design = Fixtures.DesignOf($"project: x\nboards:\n  white: {{kind: melamine, thickness: 18, grain: yes}}\npanels:\n  plate: {{board: white, length: 1600, width: 500}}\nstock:\n  white: [{sheet}]\n");
        var findings = Shop.Check(design);

        var finding = Assert.Single(findings, f => f.Rule == "cutting-plan");
        Assert.True(finding.Withholds);
        Assert.Equal(message, finding.Message);
        Assert.Equal(cure, finding.Cure);
        var files = Shop.Export(Shop.Draw(design, findings), ExporterSet.Standard).Select(f => f.Path).ToList();
        Assert.DoesNotContain(files, f => f.StartsWith("sheets/", StringComparison.Ordinal));
        // The panel itself is sound.
        Assert.Contains("machines/router/panels/plate-mm.dxf", files);
    }

    [Fact]
    public void Panels_placed_by_hand_are_left_where_they_are()
    {
        var design = Fixtures.DesignOf("project: x\nboards:\n  white: {kind: melamine, thickness: 18}\npanels:\n  plate: {board: white, length: 400, width: 300}\n  cover: {board: white, length: 400, width: 300}\n" +
            "sheets:\n  rest: {board: white, length: 500, width: 400, panels: [{panel: plate, at: [10, 10]}]}\nstock:\n  white: [{length: 2440, width: 1220}]\n");

        var board = Assert.Single(design.Cutting);
        Assert.Equal(["cover"], board.Plan!.Sheets.SelectMany(s => s.Placements).Select(board.NameOf));
        Assert.Equal("proved least area", board.Verdict);
    }

    [Fact]
    public void Equal_panels_are_one_part_and_those_of_one_size_ask_for_one_setting()
    {
        var parts = Fixtures.Design("seedling-cabinet").Cutting.Single(b => b.Board == "white-34").Problem.Parts;

        // Only the left side has a hole for the thermometer.
        Assert.All(parts.Where(p => p.Id is "left-side" or "right-side"), p => Assert.Equal((1, "left-side"), (p.Quantity, p.Matching)));
        Assert.Null(parts.Single(p => p.Id == "chamber/sliding-shelf").Matching);
        var back = Fixtures.DesignOf("project: x\nboards:\n  b: {kind: mdf, thickness: 18}\npanels:\n  one: {board: b, length: 400, width: 300}\n  two: {board: b, length: 400, width: 300}\nstock:\n  b: [{length: 2440, width: 1220}]\n").Cutting[0];
        Assert.Equal(2, Assert.Single(back.Problem.Parts).Quantity);
        Assert.Equal(["one", "two"], back.Plan!.Sheets[0].Placements.Select(back.NameOf).Order());
    }

    private static void AssertCuts(string cuts, string panels)
    {
        var list = new CutsList(cuts);
        foreach (var panel in CutsList.Read(panels).Where(p => list.Rows.Any(r => r["board"] == p["board"]) && list.Panels.ContainsKey(p["panel"])))
        {
            var (made, wanted) = (list.Panels[panel["panel"]], new[] { panel["cut_length_mm"], panel["cut_width_mm"] }.Select(s => double.Parse(s, System.Globalization.CultureInfo.InvariantCulture)).ToArray());
            Assert.Equal(wanted.Order().Select(w => Math.Round(w, 3)), new[] { made.Length, made.Width }.Order().Select(w => Math.Round(w, 3)));
        }

        var sawn = CutsList.Read(panels).Where(p => list.Rows.Any(r => r["board"] == p["board"])).Select(p => p["panel"]).Order(StringComparer.Ordinal);
        Assert.Equal(sawn, list.Panels.Keys.Order(StringComparer.Ordinal));
    }

    // Panels as a sheet's drawing names them, on themselves or in its list, with the sizes of the list of panels whose print stands there.
    private static IEnumerable<string> Drawn(string svg, List<Dictionary<string, string>> panels)
    {
        var isInches = svg.Contains("inches; ~ is rounded", StringComparison.Ordinal);
        var style = isInches ? LengthStyle.Inches with { Fractions = FractionForm.Stacked } : LengthStyle.Millimetres;
        var texts = TextElement().Matches(svg).Select(m => System.Net.WebUtility.HtmlDecode(m.Groups[1].Value)).ToList();
        for (var i = 0; i < texts.Count; i++)
            foreach (var panel in panels)
            {
                string Print(string heading) => style.Print(double.Parse(panel[heading], System.Globalization.CultureInfo.InvariantCulture));
                var (name, size) = (panel["panel"], $"{Print("cut_length_mm")} × {Print("cut_width_mm")}");
                var isTwoLines = texts[i] == name && i + 1 < texts.Count && texts[i + 1] == size;
                if (isTwoLines || texts[i] == $"{name}  {size}" || Regex.IsMatch(texts[i], $"^[A-Z]+: {Regex.Escape(name)}, {Regex.Escape(size)}$")) yield return $"{name} {panel["cut_length_mm"]} {panel["cut_width_mm"]}";
            }
    }

    private static string Text(Output output)
    {
        using var stream = new MemoryStream();
        output.Write(stream);
        return Encoding.UTF8.GetString(stream.ToArray());
    }

    [GeneratedRegex("<text[^>]*>([^<]*)</text>")]
    private static partial Regex TextElement();
}
