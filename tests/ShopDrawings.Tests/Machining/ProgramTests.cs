using System.Text;
using CsCheck;

namespace ShopDrawings.Tests.Machining;

/// <summary>Programs as a machinist reads them.</summary>
public class ProgramTests
{
    [Fact]
    public void Machine_that_does_not_ask_gets_no_program() => Assert.Empty(Programs("like: router", "length: 400, width: 250"));

    [Fact]
    public void Withheld_panel_gets_no_program() =>
        Assert.Empty(Programs("like: router\n    programs: {}", "length: 400, width: 250, bores: [{at: [2, 20], diameter: 8, depth: 12}]", withFindings: true));

    [Fact]
    public void Program_is_named_after_panel_face_unit_and_ending() =>
        Assert.Equal(
            ["machines/mine/programs/panels/a-in.tap", "machines/mine/programs/panels/a_outside-in.tap"],
            Programs("like: router\n    unit: in\n    programs: {ending: tap}", "length: 400, width: 250, bores: [{at: [40, 40], diameter: 8, depth: 12, face: outside}]").Keys.Order(StringComparer.Ordinal));

    [Fact]
    public void Bores_are_one_cycle_a_tool_and_depth()
    {
        var text = One("programs: {}", "bores: [{at: [40, 40], diameter: 8, depth: 12}, {at: [90, 40], diameter: 8, depth: 12}, {at: [140, 40], diameter: 8}]");

        Assert.Contains("G0 X40.0 Y40.0\nG98 G81 X40.0 Y40.0 Z-12.0 R3.0 F1000\nX90.0 Y40.0\nG80\nG0 X140.0 Y40.0\nG98 G81 X140.0 Y40.0 Z-18.2 R3.0 F1000\nG80\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Plain_moves_peck_and_are_fed_back_down() =>
        Assert.Contains(
            "G0 X40.0 Y40.0\nG0 Z3.0\nG1 Z-6.0 F1000\nG0 Z3.0\nG1 Z-12.0 F1000\nG0 Z20.0\n",
            One("programs: {holes: moves, peck: 7}", "bores: [{at: [40, 40], diameter: 8, depth: 12}]"), StringComparison.Ordinal);

    [Fact]
    public void Heights_count_from_the_table_where_that_is_zero() =>
        Assert.Contains(
            "G0 Z43.0\nG0 X40.0 Y40.0\nG98 G81 X40.0 Y40.0 Z-0.5 R20.0 F1000\n",
            One("programs: {zero: table, safe-height: 25, clearance: 2, spoil: 0.5}", "bores: [{at: [40, 40], diameter: 8}]"), StringComparison.Ordinal);

    [Fact]
    public void Inches_have_five_places_and_feeds_in_inches() =>
        Assert.Contains(
            "G98 G81 X1.5748 Y1.5748 Z-0.47244 R0.11811 F39.4\n",
            One("unit: in\n    programs: {}", "bores: [{at: [40, 40], diameter: 8, depth: 12}]"), StringComparison.Ordinal);

    [Fact]
    public void Changer_is_told_the_tool_and_its_length() =>
        Assert.Contains(
            "\nT7 M6\nG43 H7\nS4000 M3\nG0 Z20.0\n",
            One("drills: [{diameter: 8, number: 7, speed: 4000, feed: 800}]\n    programs: {tool-change: automatic}", "bores: [{at: [40, 40], diameter: 8, depth: 12}]"), StringComparison.Ordinal);

    [Fact]
    public void Number_and_line_numbers_are_written_where_asked_for()
    {
        var text = One("programs: {number: 100, line-numbers: true}", "bores: [{at: [40, 40], diameter: 8, depth: 12}]");

        Assert.StartsWith("%\nO0100\n(PROJECT X)\n", text, StringComparison.Ordinal);
        Assert.Contains("\nN10 G21 G90 G17 G94 G40 G49 G80 G54\n", text, StringComparison.Ordinal);
        Assert.EndsWith(" M30\n%\n", text, StringComparison.Ordinal);
    }

    // 18 and 0.2 mm in passes of at most 6 are four of 4.55; of at most 10 two of 9.1.
    [Theory]
    [InlineData("", new[] { "-4.55", "-9.1", "-13.65", "-18.2" })]
    [InlineData(", pass: 10", new[] { "-9.1", "-18.2" })]
    public void Outline_goes_down_in_equal_passes(string pass, string[] depths)
    {
        var text = One($"cutters: [{{diameter: 6{pass}}}]\n    programs: {{}}", "bores: []");

        Assert.Equal(depths, text.Split('\n').Where(l => l.StartsWith("G1 Z", StringComparison.Ordinal)).Select(l => l.Split(' ')[1][1..]));
    }

    // A part of 60 × 40 keeps four tabs 2 mm thick and 5 mm wide: their tops lie at 18 − 2, and along the way of a 6 mm cutter they are 11 long.
    [Fact]
    public void Tabs_stay_in_the_passes_below_their_tops()
    {
        var lines = Programs("like: router\n    programs: {}", "length: 60, width: 40").Single().Value.Split('\n');

        Assert.Equal(4, lines.Count(l => l.StartsWith("G1 Z-16.0", StringComparison.Ordinal)));
        var up = Array.FindIndex(lines, l => l.StartsWith("G1 Z-16.0", StringComparison.Ordinal));
        Assert.Equal(("G1 X24.5 Y-3.0 F3000", "G1 X35.5 Y-3.0 F3000", "G1 Z-18.2 F1000"), (lines[up - 1], lines[up + 1], lines[up + 2]));
    }

    // A cone of 90 degrees is 9 mm wide 4.5 above its point.
    [Fact]
    public void Countersink_goes_in_until_it_is_as_wide_as_the_head()
    {
        var program = new Kernel.DrillOperation(Kernel.Surface.Inside, new Kernel.Tool(Kernel.ToolKind.Countersink, 12), 2.2, default, 9);

        Assert.Equal(4.5, ProgramMoves.DepthOf(program, new ProgramSettings(), 18), 1e-9);
        Assert.Equal(4.5 / Math.Tan(41 * Math.PI / 180), ProgramMoves.DepthOf(program with { Tool = program.Tool with { ConeDegrees = 82 } }, new ProgramSettings(), 18), 1e-9);
        Assert.False(ProgramMoves.IsMade(program, new ProgramSettings(), 4));
    }

    [Fact]
    public void What_no_tool_makes_or_reaches_is_named_and_left_out()
    {
        var text = One("drills: [{diameter: 4}, {diameter: 8, reach: 10}]\n    cutters: [{diameter: 6, reach: 11}]\n    programs: {}", "bores: [{at: [40, 40], diameter: 8, depth: 12}, {at: [90, 40], diameter: 5, depth: 5}, {at: [140, 40], diameter: 4, depth: 5}]");

        Assert.Contains("(NOT MADE HERE: 1 BORE OF 8 MM, NO TOOL FITS OR REACHES)\n", text, StringComparison.Ordinal);
        Assert.Contains("(NOT MADE HERE: 1 BORE OF 5 MM, NO TOOL FITS OR REACHES)\n", text, StringComparison.Ordinal);
        Assert.Contains("(NOT MADE HERE: 1 OUTLINE, NO TOOL FITS OR REACHES)\n", text, StringComparison.Ordinal);
        Assert.DoesNotContain("X40.0", text, StringComparison.Ordinal);
        Assert.Contains("G81 X140.0", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Names_of_the_users_cannot_end_a_comment_or_give_orders() =>
        Gen.String.Sample(said =>
        {
            var text = new ProgramText(isInches: false, hasLineNumbers: false);
            text.Comment("PROJECT " + said);
            var lines = text.ToString().TrimEnd('\n').Split('\n');
            Assert.StartsWith("(PROJECT", lines[0], StringComparison.Ordinal);
            Assert.All(lines.Skip(1), l => Assert.StartsWith("(- ", l, StringComparison.Ordinal));
            Assert.All(lines, l => Assert.True(l.Length <= 72 && l[^1] == ')' && l[1..^1].All(c => c is >= ' ' and <= '~' and not ('(' or ')' or '%' or ';') && !char.IsAsciiLetterLower(c)), l));
        });

    private static string One(string machine, string features) =>
        Programs("like: router\n    " + machine, "length: 400, width: 250, " + features).Single().Value;

    private static Dictionary<string, string> Programs(string machine, string panel, bool withFindings = false)
    {
        var design = Fixtures.DesignOf($"project: x\nboards: {{b: {{kind: plywood, thickness: 18}}}}\npanels:\n  a: {{board: b, {panel}}}\nmachine-files: [mine]\nmachines:\n  mine:\n    {machine}\n");
        return new ProgramExporter().Export(new Job(design, withFindings ? Shop.Check(design) : [], [])).ToDictionary(o => o.Path, o =>
        {
            using var stream = new MemoryStream();
            o.Write(stream);
            return Encoding.ASCII.GetString(stream.ToArray());
        });
    }
}
