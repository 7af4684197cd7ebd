using System.Globalization;
using CsCheck;
using ShopDrawings.Kernel;
using ShopDrawings.Tests.Cabinet;

namespace ShopDrawings.Tests.Drilling;

public class DrillingListsTests
{
    private static readonly string[] Methods = ["machined", "marked", "in-place", "transferred"];

    [Fact]
    public void Setups_hold_every_bore_that_is_not_given_once() => RandomCabinet.Any.Sample(cabinet =>
    {
        var assembly = Fixtures.DesignOf(cabinet.Text + "holes: [{panel: left-side, from: {front: 9, bottom: 111}, diameter: 7, method: given}]\n").Assembly;

        var setups = Setups(assembly);

        Assert.Equal(assembly.Panels.Sum(p => p.Features.OfType<Bore>().Count(b => b.Method != BoreMethod.Given)), setups.Sum(s => int.Parse(s["count"], CultureInfo.InvariantCulture)));
        Assert.DoesNotContain(setups, s => s["diameter_mm"] == "7");
        Assert.All(setups, s => Assert.Equal(s["stop_mm"].Length == 0 ? "yes" : "no", s["backing"]));
        Assert.All(setups, s => Assert.Equal(s["method"] == "in-place", s["through"].Length > 0));
    }, iter: 60);

    // Through ones after the deepest of the same tool; what lies in the other face is counted anew, from the corner that lies lower left then.
    [Fact]
    public void Drilling_follows_the_machine_face_by_face_tool_by_tool()
    {
        var design = Fixtures.DesignOf("""
            project: p
            boards: {ply: {kind: plywood, thickness: 18}}
            panels:
              a:
                board: ply
                length: 400
                width: 200
                bands: {left: 1}
                bores:
                  - {at: [300, 50], diameter: 8}
                  - {at: [50, 50], diameter: 5, depth: 12}
                  - {at: [350, 150], diameter: 5, depth: 12}
                  - {at: [60, 50], diameter: 5, depth: 12}
                  - {at: [100, 100], diameter: 40, depth: 12}
                  - {at: [100, 30], diameter: 5, depth: 3, face: outside}
                  - {edge: left, at: 50, diameter: 5, depth: 20}
            """);

        var rows = DrillingLists.OnMachines(new Job(design, [], [])).Skip(1).Select(r => string.Join(' ', r)).ToArray();

        Assert.Equal(
            [
                "router a inside 1 drill 11 5 5 12 50 50", "router a inside 2 drill 11 5 5 12 60 50", "router a inside 3 drill 11 5 5 12 350 150", "router a inside 4 drill 14 8 8 through 300 50",
                "router a inside 5 cutter 37 6 40 12 100 100", "router a outside 1 drill 11 5 5 3 99 170",
            ],
            rows);
    }

    [Theory]
    [InlineData("machined")]
    [InlineData("marked")]
    public void Setups_are_sorted_by_method_bit_and_stop(string faces)
    {
        var assembly = Fixtures.DesignOf(Fixtures.Text("seedling-cabinet") + $"methods: {{faces: {faces}}}\n").Assembly;

        var keys = Setups(assembly).Select(s => (Array.IndexOf(Methods, s["method"]), Number(s["diameter_mm"]), Number(s["stop_mm"]))).ToList();

        Assert.DoesNotContain(keys, k => k.Item1 < 0);
        Assert.Equal(keys.Order(), keys);
    }

    [Theory]
    [InlineData("14.9", "")]
    [InlineData("15", "")]                                      // 3 mm left
    [InlineData("15.5", "mind the depth stop: 2.5 mm left")]
    [InlineData("18", "comes through the far face")]
    public void Deep_bore_in_a_face_gets_a_remark(string depth, string remark)
    {
        var assembly = Fixtures.DesignOf("project: p\nboards: {ply: {kind: plywood, thickness: 18}}\npanels: {a: {board: ply, length: 400, width: 200, bores: [{at: [50, 50], diameter: 5, depth: " + depth + "}, {edge: left, at: 50, diameter: 5, depth: 399}]}}\n").Assembly;

        Assert.Equal(remark, Setups(assembly).Single(s => s["surface"] == "inside")["remark"]);
        Assert.Equal("", Setups(assembly).Single(s => s["surface"] == "left")["remark"]);
    }

    [Fact]
    public void Setup_in_place_names_the_mate_and_the_joint()
    {
        var row = Setups(Fixtures.Design("wall-cupboard").Assembly).Single(s => s["panel"] == "shelf-1" && s["surface"] == "left");

        Assert.Equal(("in-place", "50", "2", "left-side", "left-side/shelf-1"), (row["method"], row["stop_mm"], row["count"], row["through"], row["for"]));
    }

    // Ten screws go through either side of the wall cupboard; the hinge plates need four blind bores in the left one.
    [Fact]
    public void Stacks_say_what_is_drilled_together_and_what_apart()
    {
        var row = Assert.Single(Rows(DrillingLists.Stacks(Fixtures.Design("wall-cupboard").Assembly)));

        Assert.Equal(("left-side; right-side", "outside faces together", "right-side: bottom on bottom, back on back"), (row["panels"], row["lay"], row["edges"]));
        Assert.Equal(("4.5", "10", "left-side: 4; right-side: 0"), (row["diameter_mm"], row["count"], row["apart"]));
        Assert.Equal(10, row["places_mm"].Split("; ").Length);
    }

    // Printed columns of one list, found by the heading.
    private static List<Dictionary<string, string>> Rows(IEnumerable<string[]> list)
    {
        var rows = list.ToList();
        return [.. rows.Skip(1).Select(r => rows[0].Zip(r).ToDictionary(c => c.First, c => c.Second))];
    }

    private static List<Dictionary<string, string>> Setups(Assembly assembly) => Rows(DrillingLists.Setups(assembly));

    private static double Number(string text) => text.Length == 0 ? double.PositiveInfinity : double.Parse(text, CultureInfo.InvariantCulture);
}
