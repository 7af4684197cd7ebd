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
        Assert.False(File.Exists(folder["out/panels/bottom-mm.dxf"]));
        var design = DesignOf(cabinet);
        Assert.Equal(placed, design.Assembly.Hardware.Count(h => h.Kind == HardwareKind.Castor));
        Assert.All(Assert.Single(Shop.Check(design)).Numbers, n => Assert.Equal("mm", n.Unit));
    }
}
