using System.Globalization;
using CsCheck;
using ShopDrawings.Cli;
using ShopDrawings.Kernel;
using ShopDrawings.Tests.Cli;

namespace ShopDrawings.Tests.Cabinet;

/// <summary>What a cabinet stands on and what hides it. Numbers worked by hand in mm.</summary>
public class UndersideTests
{
    private const string Boards = "project: p\nboards: {main: {kind: melamine, thickness: 18}, thin: {kind: hardboard, thickness: 6}, solid: {kind: plywood, thickness: 38}}\n";

    private static Design DesignOf(string cabinet) => Fixtures.DesignOf($"{Boards}cabinet: {{board: main, {cabinet}}}\n");

    private static Point3 At(Assembly assembly, PlacedHardware piece) => assembly.Panel(piece.Mounts[0].Panel) is var panel
        ? panel.Placement!.ToAssembly(panel.OnSurface(piece.Mounts[0].Surface, piece.Mounts[0].At.Point)) : default;

    private static Box3 Box(Assembly assembly, string id) => assembly.Panel(id).Placement!.ToAssembly(assembly.Panel(id).Box);

    private static Gen<string> OneOf(params string[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);

    private static string List(string cabinet, string name)
    {
        using var folder = new TemporaryFolder();
        File.WriteAllText(folder["p.yaml"], $"{Boards}cabinet: {{board: main, {cabinet}}}\n");
        Call.Of("make", folder["p.yaml"], "--out", folder["out"]);
        return File.ReadAllText(folder[$"out/{name}"]);
    }

    // Two on the side one works at: common practice, no source.
    [Theory]
    [InlineData("", "front-left front-right")]
    [InlineData(", brakes: rear", "rear-left rear-right")]
    [InlineData(", brakes: left", "front-left rear-left")]
    [InlineData(", brakes: right", "front-right rear-right")]
    [InlineData(", brakes: all", "front-left front-right rear-left rear-right")]
    [InlineData(", brakes: none", "")]
    public void Brakes_are_on_the_side_that_is_asked_for(string brakes, string braked)
    {
        var design = DesignOf($"width: 600, height: 800, depth: 520, recess: 85, castors: {{castor: swivel-75{brakes}}}");

        Assert.Equal(braked.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(b => b + "-castor"),
            design.Assembly.Hardware.Where(h => h.Name == "swivel-75 with brake").Select(h => h.Id).Order(StringComparer.Ordinal));
        Assert.Single(design.Assembly.Hardware.Select(h => h.Size("swivel-radius")!.Value).Distinct());
        Assert.Empty(Shop.Check(design));
    }

    [Fact]
    public void Braked_castors_are_counted_apart()
    {
        var rows = List("width: 600, height: 800, depth: 520, recess: 85, castors: {castor: swivel-75}", "lists/hardware.csv").Split('\n').Where(l => l.StartsWith("castor", StringComparison.Ordinal));

        Assert.Equal(["castor,swivel-75 with brake,2,swivel radius 70.62", "castor,swivel-75,2,swivel radius 70.62"], rows);
    }

    // 214 between the sides less twice 70.62 + 5 leaves 62.8 between the axes, 250 deep less 75.6 behind nothing and 47.6 + 5 at both ends
    // 144.8; two circles need 2 × 75.62 = 151.2.
    [Theory]
    [InlineData("width: 250, height: 720, depth: 250, recess: 80, castors: {castor: swivel-75}",
        "four castors that sweep 70.62 mm around their axes do not fit under a bottom that is free on 214 mm × 250 mm: their axes would stand 62.77 mm and 144.75 mm apart, and need 151.23 mm; they are left out", 0)]
    [InlineData("width: 600, height: 720, depth: 500, recess: 120, castors: {castor: swivel-75}", "castors 97 mm high do not reach below sides that hang down 120 mm", 4)]
    public void Castors_that_do_not_fit_are_a_finding_and_withhold_the_bottom(string cabinet, string message, int placed)
    {
        using var folder = new TemporaryFolder();
        File.WriteAllText(folder["p.yaml"], $"{Boards}cabinet: {{board: main, {cabinet}}}\n");

        var call = Call.Of("make", folder["p.yaml"], "--out", folder["out"]);

        Assert.Equal(ExitCode.DoneWithErrors, call.ExitCode);
        Assert.Contains($"error: hardware-fits: {message}", call.Errors, StringComparison.Ordinal);
        Assert.False(File.Exists(folder["out/machines/router/panels/bottom-mm.dxf"]));
        var design = DesignOf(cabinet);
        Assert.Equal(placed, design.Assembly.Hardware.Count(h => h.Kind == HardwareKind.Castor));
        Assert.All(Assert.Single(Shop.Check(design)).Numbers, n => Assert.Equal("mm", n.Unit));
    }

    // A plate of 80 mm 40 mm inside an edge has its axis 80 mm inside; the bottom begins 18 mm inside where it stands between the sides. 1004 mm
    // apart is more than 800. The glide is 30 mm across. A plinth 40 mm back and 18 mm thick pushes plates back to 58 mm.
    [Theory]
    [InlineData("width: 600, height: 720, depth: 500, feet: {foot: foot-100}", "98 502", "80 420", 4)]
    [InlineData("width: 600, height: 720, depth: 500, bottom: under, feet: {foot: foot-100}", "80 520", "80 420", 4)]
    [InlineData("width: 1200, height: 720, depth: 500, feet: {foot: foot-100}", "98 600 1102", "80 420", 4)]
    [InlineData("width: 1200, height: 720, depth: 500, feet: {foot: foot-100, inset: 0, more-at: 365}", "58 419.3333 780.6667 1142", "40 460", 4)]
    [InlineData("width: 600, height: 720, depth: 500, feet: {foot: glide-m8}", "73 527", "55 445", 1)]
    [InlineData("width: 600, height: 720, depth: 500, recess: 80, feet: {foot: foot-100}", "98 502", "80 420", 4)]
    [InlineData("width: 600, height: 720, depth: 500, feet: {foot: foot-100}, plinth: {board: main}", "98 502", "98 420", 4)]
    [InlineData("width: 600, height: 720, depth: 500, feet: {foot: foot-100, inset: 10}, plinth: {board: main, rear: yes}", "68 532", "98 442", 4)]
    [InlineData("width: 600, height: 720, depth: 500, recess: 80, back: {board: thin, fit: within-sides}, feet: {foot: foot-100}, plinth: {board: main}", "98 502", "98 414", 4)]
    public void Feet_stand_where_a_hand_calculation_puts_them(string cabinet, string across, string along, int holes)
    {
        var design = DesignOf(cabinet);

        var feet = design.Assembly.Hardware.Where(h => h.Kind == HardwareKind.Foot).ToList();
        static string Distinct(IEnumerable<double> places) => string.Join(' ', places.Select(p => Math.Round(p, 4)).Distinct().Order().Select(p => p.ToString(CultureInfo.InvariantCulture)));
        Assert.Equal(across, Distinct(feet.Select(f => At(design.Assembly, f).X)));
        Assert.Equal(along, Distinct(feet.Select(f => At(design.Assembly, f).Y)));
        Assert.Equal(across.Split(' ').Length * 2, feet.Count);
        Assert.All(feet, f => Assert.Equal(holes, design.Assembly.Panel("bottom").Features.OfType<Bore>().Count(b => b.Origin == f.Id)));
        Assert.Empty(Shop.Check(design).Select(f => f.Message));
    }

    [Fact]
    public void Feet_and_clips_are_listed_with_what_one_buys_them_by()
    {
        var rows = List("width: 600, height: 720, depth: 500, feet: {foot: foot-100}, plinth: {board: main}", "lists/hardware.csv");

        Assert.Contains("\nfoot,foot-100,4,\"foot height 100, least foot height 85, greatest foot height 120\"\n", rows, StringComparison.Ordinal);
        Assert.Contains("\nclip,clip for foot-100,2,foot diameter 40\n", rows, StringComparison.Ordinal);
    }

    // Free 214 × 250 mm less an inset of 40 and a plate of 80 at both ends: 54 mm and 90 mm apart.
    [Theory]
    [InlineData("width: 250, height: 720, depth: 250, feet: {foot: foot-100}",
        "four feet with plates of 80 mm × 80 mm do not fit under a bottom that is free on 214 mm × 250 mm, 40 mm inside its edges; they are left out", 0)]
    [InlineData("width: 600, height: 720, depth: 500, recess: 100, feet: {foot: foot-100}", "feet 100 mm high do not reach below sides that hang down 100 mm", 4)]
    public void Feet_that_do_not_fit_are_a_finding(string cabinet, string message, int placed)
    {
        var design = DesignOf(cabinet);

        var finding = Assert.Single(Shop.Check(design));
        Assert.Equal(("hardware-fits", Severity.Error, message), (finding.Rule, finding.Severity, finding.Message));
        Assert.Contains("bottom", finding.Panels);
        Assert.Equal(placed, design.Assembly.Hardware.Length);
    }

    // Under a raised bottom from side to side and up to it; before feet 2 mm less than they are high, standing on the floor.
    [Theory]
    [InlineData("recess: 80, plinth: {board: main}", "plinth", 18, 40, 0, 582, 58, 80)]
    [InlineData("recess: 80, plinth: {board: main, set-back: 0, rear: yes}", "plinth", 18, 0, 0, 582, 18, 80)]
    [InlineData("recess: 80, plinth: {board: main, set-back: 0, rear: yes}", "rear-plinth", 18, 482, 0, 582, 500, 80)]
    [InlineData("recess: 80, plinth: {board: main}, castors: {castor: swivel-75}", "plinth", 18, 40, 0, 582, 58, 80)]
    [InlineData("feet: {foot: foot-100}, plinth: {board: main, set-back: 50}", "plinth", 0, 50, -100, 600, 68, -2)]
    [InlineData("feet: {foot: foot-100}, plinth: {board: main, rear: yes}", "rear-plinth", 0, 482, -100, 600, 500, -2)]
    [InlineData("back: {board: main, fit: within-sides}, feet: {foot: foot-100}, plinth: {board: main, rear: yes}", "rear-plinth", 0, 464, -100, 600, 482, -2)]
    public void Plinth_fills_the_block_worked_out_by_hand(string more, string id, double x0, double y0, double z0, double x1, double y1, double z1)
    {
        var design = DesignOf($"width: 600, height: 720, depth: 500, {more}");

        var box = Box(design.Assembly, id);
        Assert.Equal(0, (box.Min - new Point3(x0, y0, z0)).Length, 1e-9);
        Assert.Equal(0, (box.Max - new Point3(x1, y1, z1)).Length, 1e-9);
        var isRaised = z0 == 0;
        Assert.Equal(isRaised ? "left-side right-side" : "", string.Join(' ', design.Assembly.Joints.Where(j => j.Receiving == id).Select(j => j.Through)));
        Assert.Equal(isRaised ? [] : ["front-left", "front-right"], design.Assembly.Panel("plinth").Features.OfType<Mark>().Select(m => m.Origin.Replace("-clip", "", StringComparison.Ordinal)));
        Assert.Equal(isRaised ? 0 : 2, design.Assembly.Hardware.Count(h => h.Kind == HardwareKind.Clip && h.Mounts[0].Panel == id));
        Assert.Empty(Shop.Check(design).Select(f => f.Message));
    }

    // 40 + 18 and 70.62 + 5 behind a plinth; 400 mm deep leaves 400 − 133.6 − 52.6 = 213.8, 330 mm leaves 143.8 of the 151.2 that are needed.
    [Theory]
    [InlineData(400, true)]
    [InlineData(330, false)]
    public void Castors_swivel_clear_of_a_plinth_or_are_a_finding(double depth, bool fits)
    {
        var design = DesignOf(FormattableString.Invariant($"width: 600, height: 720, depth: {depth}, recess: 80, plinth: {{board: main}}, castors: {{castor: swivel-75}}"));

        if (fits)
        {
            Assert.Empty(Shop.Check(design));
            Assert.Equal(58 + 70.6152 + 5, design.Assembly.Hardware.Min(h => At(design.Assembly, h).Y), 1e-4);
            return;
        }

        Assert.Empty(design.Assembly.Hardware);
        Assert.Contains("leave the plinth out", Assert.Single(Shop.Check(design)).Cure, StringComparison.Ordinal);
    }

    // Points on the circle a wheel sweeps, or on the rim of a foot's plate, at heights between the floor and the bottom: none is in a panel.
    [Fact]
    public void What_a_cabinet_stands_on_is_under_it_and_clear_of_every_panel()
    {
        var counts = new SortedDictionary<string, int>(StringComparer.Ordinal);
        Gen.Select(RandomCabinet.Any, OneOf("castors: {castor: swivel-50}", "castors: {castor: swivel-75, clearance: 0}", "feet: {foot: foot-100}", "feet: {foot: glide-m8, inset: 0, more-at: 200}"), OneOf("", "{board: main}", "{board: main, set-back: 0, rear: yes}")).Sample((cabinet, stands, plinth) =>
        {
            var hasPlinth = plinth.Length > 0 && (cabinet.Recess > 0 || stands.StartsWith("feet", StringComparison.Ordinal));
            var design = Fixtures.DesignOf($"{cabinet.Text}  {stands}\n{(hasPlinth ? $"  plinth: {plinth}\n" : "")}");
            var assembly = design.Assembly;
            var bottom = Box(assembly, "bottom");
            var panels = assembly.Panels.Select(p => p.Placement!.ToAssembly(p.Box)).ToList();
            foreach (var piece in assembly.Hardware.Where(h => h.Kind is HardwareKind.Castor or HardwareKind.Foot))
            {
                var at = At(assembly, piece);
                Assert.Equal(bottom.Min.Z, at.Z, 1e-9);
                Assert.InRange(at.X, bottom.Min.X, bottom.Max.X);
                Assert.InRange(at.Y, bottom.Min.Y, bottom.Max.Y);
                var radius = piece.Size("swivel-radius")?.Value ?? (piece.Name == "foot-100" ? 40 : 15);
                var isRound = piece.Kind == HardwareKind.Castor || piece.Name == "glide-m8";
                for (var angle = 0; angle < 360; angle += 3)
                {
                    var (x, y) = (Math.Cos(angle * Math.PI / 180), Math.Sin(angle * Math.PI / 180));
                    var scale = isRound ? radius : radius / Math.Max(Math.Abs(x), Math.Abs(y));
                    foreach (var below in new[] { 1.0, 20, 60, 90 })
                    {
                        var point = new Point3(at.X + x * scale, at.Y + y * scale, at.Z - below);
                        Assert.DoesNotContain(panels, b =>
                            point.X > b.Min.X + 1e-6 && point.X < b.Max.X - 1e-6 && point.Y > b.Min.Y + 1e-6 && point.Y < b.Max.Y - 1e-6 && point.Z > b.Min.Z + 1e-6 && point.Z < b.Max.Z - 1e-6);
                    }
                }

                lock (counts) counts[piece.Name] = counts.GetValueOrDefault(piece.Name) + 1;
            }

            Assert.DoesNotContain(Shop.Check(design), f => f.Rule == "panels-overlap");
        }, iter: 120);
        Assert.True(counts.Count >= 4, string.Join(", ", counts.Keys));
    }
}
