using System.Globalization;
using System.Text.Json;
using ShopDrawings.Kernel;
using ShopDrawings.Tests.Dxf;
using ShopDrawings.Tests.Machining;

namespace ShopDrawings.Tests.Guides;

/// <summary>Drill guides as they were written: the machine's files by an outside reader, against the lists and assembly.json of the sample.</summary>
public class GuideFileTests
{
    private const double Kerf = 0.18, Agreement = 1e-4;

    private static readonly string Sample = Path.Combine(OutsideProgram.RepositoryRoot, "output-samples", "guided-cupboard");

    private static string Parts => Path.Combine(Sample, "machines", "small-laser", "guides");

    // What the reader finds is the wanted size and the kerf, or less it.
    [Fact]
    public void Laser_files_are_larger_by_the_kerf_outside_and_smaller_inside()
    {
        var design = Fixtures.Design("guided-cupboard");
        var parts = design.Guides!.All.SelectMany(g => g.Parts).ToList();
        Assert.True(parts.Count > 10);

        foreach (var (part, lines) in parts.Zip(Read([.. parts.Select(p => p.Panel.Id)])))
        {
            var outline = Assert.Single(lines, l => l.Layer == "CUT_OUTSIDE");
            Assert.Equal(part.Panel.Length.Value + Kerf, outline.Box.Width, 4);
            Assert.Equal(part.Panel.Width.Value + Kerf, outline.Box.Height, 4);
            // Also round knobs and in sockets half of it is in the waste.
            var way = Contour.FromSegments(outline.Segments);
            Assert.All(part.Panel.Outline.Segments.Select(s => s.Middle), p => Assert.True(way.Contains(p) && Math.Abs(MachineFiles.Distance([outline], p) - Kerf / 2) < Agreement, $"{part.Panel.Id} at {p}"));

            var inside = lines.Where(l => l.Layer == "CUT_INSIDE").Select(l => (l.Box.Width, l.Box.Height)).ToList();
            var wanted = part.Panel.Features.Select(f => f switch { Bore b => (Width: b.Diameter.Value, Height: b.Diameter.Value), CutOut c => (c.Outline.Bounds.Width, c.Outline.Bounds.Height), _ => default }).Where(f => f.Width > 0).ToList();
            Assert.Equal(wanted.Count, inside.Count);
            Assert.All(wanted, w => Assert.Contains(inside, i => Math.Abs(i.Width - (w.Width - Kerf)) < Agreement && Math.Abs(i.Height - (w.Height - Kerf)) < Agreement));
        }
    }

    // Laid on each place of the list by its fences and lines alone: where the beam cuts holes the panel has its bores.
    [Fact]
    public void Holes_of_the_files_laid_by_the_list_are_bores_of_the_assembly()
    {
        using var assembly = JsonDocument.Parse(File.ReadAllText(Path.Combine(Sample, "assembly.json")));
        var panels = assembly.RootElement.GetProperty("panels").EnumerateArray().ToDictionary(p => p.GetProperty("id").GetString()!);
        var bits = Rows("guides.csv").Where(r => r[8] == "through the guide").GroupBy(r => r[0]).ToDictionary(g => g.Key, g => g.ToList());
        var places = Rows("guide-places.csv");
        Assert.Contains(places, p => p[1] == "turned over");
        Assert.Contains(bits.Values.SelectMany(b => b), b => b[3] == "10");
        // Plates in pieces are put together in GuideTests.
        foreach (var place in places.Where(p => File.Exists(Path.Combine(Parts, p[0], "plate-mm.dxf"))))
        {
            var lines = Read([place[0] + "/plate"])[0];
            var holes = lines.Where(l => l is { Layer: "CUT_INSIDE", Type: "CIRCLE" }).Select(l => (At: l.Box.Centre, Diameter: l.Box.Width + Kerf)).ToList();
            // What the guide leads: each line of the list is one hole, by the diameter of bush or bit.
            Assert.Equal(bits[place[0]].Select(b => Math.Round(Number(b[4]), 3)).Order(), holes.Select(h => Math.Round(h.Diameter, 3)).Order());

            var panel = panels[place[2]];
            var edges = new[] { "start", "end", "near", "far" }.ToDictionary(e => panel.GetProperty("edges").GetProperty(e).GetString()!, e => e);
            var (length, width) = (panel.GetProperty("length_mm").GetProperty("value").GetDouble(), panel.GetProperty("width_mm").GetProperty("value").GetDouble());
            var bores = panel.GetProperty("features").EnumerateArray()
                .Where(f => f.GetProperty("type").GetString() == "bore" && f.GetProperty("surface").GetString() == place[3] && f.GetProperty("origin").GetString() == place[10])
                .Select(f => new Point2(f.GetProperty("at_mm")[0].GetDouble(), f.GetProperty("at_mm")[1].GetDouble())).ToList();
            var crossing = new Point2(At(edges[place[6]], Number(place[7])).X ?? At(edges[place[8]], Number(place[9])).X!.Value, At(edges[place[6]], Number(place[7])).Y ?? At(edges[place[8]], Number(place[9])).Y!.Value);

            // Up on the template is towards the arrow's edge; right of it follows from the face that is looked at, and is left where the plate is turned over.
            var up = Outwards(edges[place[4]]);
            var right = place[3] == "inside" ? up.Left * -1 : up.Left;
            if (place[1] == "turned over") right *= -1;
            Assert.Contains(Turns(holes.ConvertAll(h => h.At)), turned =>
            {
                var (left, low) = (turned.Min(h => h.X), turned.Min(h => h.Y));
                var laid = turned.Select(h => crossing + right * (h.X - left) + up * (h.Y - low)).ToList();
                return laid.Count == bores.Count && laid.All(l => bores.Exists(b => b.DistanceTo(l) < 0.001));
            });

            (double? X, double? Y) At(string edge, double distance) => edge switch { "start" => (distance, null), "end" => (length - distance, null), "near" => (null, distance), _ => (null, width - distance) };
        }
    }

    // A plate lies in its file as its template does, or turned by a quarter.
    private static IEnumerable<List<Point2>> Turns(List<Point2> holes) => [holes, holes.ConvertAll(h => new Point2(h.Y, -h.X))];

    [Fact]
    public void Depth_stop_is_depth_and_plate()
    {
        var rows = Rows("guides.csv").Where(r => r[8] == "through the guide").ToList();
        Assert.Contains(rows, r => r[5] == "12" && r[6] == "6" && r[7] == "18");
        Assert.All(rows.Where(r => r[5] != "through"), r => Assert.Equal(Number(r[5]) + Number(r[6]), Number(r[7]), 9));
        Assert.All(rows.Where(r => r[5] == "through"), r => Assert.Equal("through", r[7]));
    }

    [Fact]
    public void Holes_that_bushes_would_join_are_said_and_that_guide_is_left_out()
    {
        var text = Fixtures.Text("guided-cupboard").Replace("outside: 10}", "outside: 33}", StringComparison.Ordinal);
        var design = Fixtures.DesignOf(text);

        Assert.Contains(Shop.Check(design), f => f is { Rule: "guides", Severity: Severity.Warning } && f.Message.Contains("holes 1 and 2 of guide pin-5 run into each other", StringComparison.Ordinal));
        Assert.DoesNotContain(design.Guides!.All, g => g.Name == "pin-5");
    }

    [Fact]
    public void Router_gets_programs_and_hollows_beside_tabs()
    {
        var text = Fixtures.Text("guided-cupboard").Replace("    like: laser\n    kerf: 0.18 mm               # measured: ten slots across a strip of 100 mm leave 98.2 mm\n", "    like: router-programs\n", StringComparison.Ordinal).Replace("bed: [400, 300]", "bed: [350, 250]", StringComparison.Ordinal);
        var design = Fixtures.DesignOf(text);
        var job = Shop.Draw(design, Shop.Check(design));
        var paths = Shop.Export(job, ExporterSet.Standard).Select(o => o.Path).ToList();

        Assert.Contains("machines/small-laser/programs/guides/cup-35-plate/plate-mm.nc", paths);
        Assert.Contains("machines/small-laser/programs/guides/cup-35-plate/plate_outside-mm.nc", paths);
        // Two by two.
        Assert.Equal(4, design.Guides!.All.Single(g => g.Name == "pin-5").Pieces.Count());
        Assert.Contains("machines/small-laser/programs/guides/pin-5/plate-4-mm.nc", paths);
        // Beside each tab a half round hollow of the 6 mm cutter and a hair.
        var fence = design.Guides.All.SelectMany(g => g.Fences).First();
        Assert.Equal(2 * fence.Tabs.Length, fence.Panel.Outline.Segments.Count(s => !s.IsLine && Math.Abs(s.Radius - 3.05) < 1e-9));
    }

    [Fact]
    public void Guides_of_panels_that_must_not_be_cut_are_left_out()
    {
        var text = Fixtures.Text("guided-cupboard") + "holes:\n  - {panel: door, from: {left: 2, top: 50}, diameter: 30}\n";
        var call = Fixtures.DesignOf(text);
        var job = Shop.Draw(call, Shop.Check(call));

        Assert.Contains("door", job.Withheld);
        Assert.DoesNotContain(job.Drawings, d => d.Path.Contains("cup-35-cup", StringComparison.Ordinal));
        Assert.Contains(job.Drawings, d => d.Path == "guides/cup-35-plate");
    }

    private static List<List<MachineFiles.Line>> Read(string[] parts) => [.. DxfFiles.Read([.. parts.Select(p => File.ReadAllBytes(Path.Combine(Parts, p + "-mm.dxf")))]).Select(MachineFiles.Lines)];

    private static List<string[]> Rows(string list) => [.. File.ReadAllLines(Path.Combine(Sample, "lists", list)).Skip(1).Select(r => r.Split(','))];

    private static Point2 Outwards(string edge) => edge switch { "start" => new(-1, 0), "end" => new(1, 0), "near" => new(0, -1), _ => new(0, 1) };

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
