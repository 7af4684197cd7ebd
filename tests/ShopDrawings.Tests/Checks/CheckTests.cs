using ShopDrawings.Kernel;

namespace ShopDrawings.Tests.Checks;

public class CheckTests
{
    private const string Boards = "project: p\nboards:\n  ply: {kind: plywood, thickness: 18}\n  thin: {kind: hardboard, thickness: 6}\n";

    private static Finding[] Find(string text) => [.. Shop.Check(Fixtures.DesignOf(Boards + text))];

    private static Finding[] InPanel(string features) => Find("panels:\n  a: {board: ply, length: 400, width: 200, " + features + "}\n");

    [Theory]
    [InlineData("bores: [{at: [10, 100], diameter: 20}]")]                                        // touches the edge from within
    [InlineData("bores: [{at: [100, 100], diameter: 20, depth: 16}]")]                            // leaves just 2 mm
    [InlineData("bores: [{edge: left, at: 100, diameter: 18, depth: 400}]", false)]
    [InlineData("cut-outs: [{circle: {at: [200, 100], diameter: 50}}], bores: [{at: [165, 100], diameter: 20}]")]
    [InlineData("bores: [{edge: back, at: [200, 4], diameter: 8, depth: 30}]")]
    public void Bore_inside_its_panel_is_no_finding(string features, bool isSound = true) => Assert.Equal(isSound, InPanel(features).Length == 0);

    [Theory]
    [InlineData("bores: [{at: [9.9, 100], diameter: 20}]", "a: the 20 mm bore in the inside face at 9.9 mm, 100 mm leaves the panel: its centre is 9.9 mm from the nearest edge of the material, its radius 10 mm")]
    [InlineData("bores: [{at: [-30, 100], diameter: 20, face: outside}]", "a: the 20 mm bore in the outside face at -30 mm, 100 mm leaves the panel: its centre is 30 mm outside the material, its radius 10 mm")]
    [InlineData("cut-outs: [{circle: {at: [200, 100], diameter: 50}}], bores: [{at: [200, 110], diameter: 5}]", "a: the 5 mm bore in the inside face at 200 mm, 110 mm leaves the panel: its centre is 15 mm outside the material, its radius 2.5 mm")]
    [InlineData("bores: [{at: [100, 100], diameter: 20, depth: 16.5}]", "a: the 20 mm bore in the inside face at 100 mm, 100 mm leaves only 1.5 mm of 18 mm under it; at least 2 mm must stay")]
    [InlineData("bores: [{at: [100, 100], diameter: 20, depth: 18}]", "a: the 20 mm bore in the inside face at 100 mm, 100 mm comes through the far face: it is 18 mm deep in 18 mm")]
    [InlineData("bores: [{edge: left, at: 100, diameter: 8, depth: 401}]", "a: the 8 mm bore in the left edge at 100 mm, 9 mm comes through the far edge: it is 401 mm deep in 400 mm")]
    [InlineData("bores: [{edge: left, at: [100, 3], diameter: 8, depth: 30}]", "a: the 8 mm bore in the left edge at 100 mm, 3 mm leaves the panel: its centre is 3 mm from the nearest edge of the material, its radius 4 mm")]
    [InlineData("bores: [{edge: front, at: 399, diameter: 8, depth: 30}]", "a: the 8 mm bore in the front edge at 399 mm, 9 mm leaves the panel: its centre is 1 mm from the nearest edge of the material, its radius 4 mm")]
    [InlineData("outline: [[0, 0], [400, 0], [400, 200], [100, 200], [0, 100]], bores: [{edge: back, at: 60, diameter: 8, depth: 30}]", "a: the 8 mm bore in the back edge at 60 mm, 9 mm leaves the panel: its centre is 28.28 mm outside the material, its radius 4 mm")]
    public void Bore_that_leaves_its_panel_is_an_error(string features, string message)
    {
        var finding = Assert.Single(InPanel(features));

        Assert.Equal(("bore-in-panel", Severity.Error, message), (finding.Rule, finding.Severity, finding.Message));
        Assert.Equal(["a"], finding.Panels);
        Assert.NotEmpty(finding.Cure);
        Assert.NotNull(finding.Where);
    }

    [Fact]
    public void Changed_limit_is_used_and_leads_back_to_its_line()
    {
        const string Panel = "panels: {a: {board: ply, length: 400, width: 200, bores: [{at: [100, 100], diameter: 20, depth: 16.5}]}}\n";

        var design = Fixtures.DesignOf(Boards + Panel + "checks:\n  bore-in-panel: {floor: 1.5}\n");

        Assert.Empty(Shop.Check(design));
        Assert.Equal(7, design.Checks.Limit(BoreInPanel.Floor).Source.Line);
    }

    [Theory]
    [InlineData("corner: [0, 18, 0], outside: back", null)]                                       // face to face
    [InlineData("corner: [0, 17.9, 0], outside: back", "400 mm × 0.1 mm × 200 mm")]
    [InlineData("corner: [191, -50, 30], outside: left, along: back", "18 mm × 18 mm × 170 mm")]  // crosses it
    [InlineData("corner: [191, -399.9, 30], outside: left, along: back", "18 mm × 0.1 mm × 170 mm")] // reaches a little into it
    [InlineData("corner: [-18, 0, 0], outside: left", null)]
    public void Panels_in_one_place_are_an_error(string place, string? shared)
    {
        var findings = Find("panels:\n  a: {board: ply, length: 400, width: 200, place: {corner: [0, 0, 0], outside: front}}\n  b: {board: ply, length: 400, width: 200, place: {" + place + "}}\n");

        if (shared is null) Assert.Empty(findings);
        else Assert.StartsWith($"a and b take the same space, {shared} at", Assert.Single(findings).Message, StringComparison.Ordinal);
    }

    // A 6 mm tongue 7 mm deep in an 8 mm deep groove of a board whose inside face looks up.
    [Theory]
    [InlineData("grooves: [{from: [0, 53], to: [400, 53], width: 6.2, depth: 8}]", true)]
    [InlineData("grooves: [{from: [0, 53], to: [400, 53], width: 5.8, depth: 8}]", false)]
    [InlineData("grooves: [{from: [0, 53], to: [400, 53], width: 6.2, depth: 6.9}]", false)]
    [InlineData("grooves: [{from: [0, 53], to: [399, 53], width: 6.2, depth: 8}]", false)]
    [InlineData("grooves: [{from: [0, 53], to: [400, 53], width: 6.2, depth: 8, face: outside}]", false)]
    [InlineData("cut-outs: [{rectangle: {at: [-1, 50], length: 402, width: 6}}]", true)]
    public void Tongue_fits_its_groove_only(string feature, bool fits)
    {
        var findings = Find("panels:\n  base: {board: ply, length: 400, width: 200, place: {corner: [0, 0, 0], outside: bottom}, " + feature + "}\n"
            + "  tongue: {board: thin, length: 400, width: 100, place: {corner: [0, 50, 11], outside: back}}\n");

        Assert.Equal(fits, !findings.Any(f => f.Rule == "panels-overlap"));
    }

    // Behind the shelf's end the side is not housed, and the edges of housing and shelf differ by less than 1e-12 mm.
    [Fact]
    public void Shelf_without_play_fits_its_housing()
    {
        var design = Fixtures.DesignOf("""
            project: p
            boards: {main: {kind: plywood, thickness: 19.05}}
            cabinet: {width: 583.6, height: 700.8, depth: 432.3, board: main, bottom: under, back: {board: main, fit: between}, joint: {fastener: wood-4x50, housing: 5}, shelves: 2}
            """);

        Assert.DoesNotContain(Shop.Check(design), f => f.Rule == "panels-overlap");
    }

    // 19.05 − 3.1 and 15.95 differ by less than 1e-14.
    [Fact]
    public void Grooves_of_both_faces_that_end_at_one_level_leave_no_layer_between_them()
    {
        var finding = Assert.Single(Shop.Check(Fixtures.DesignOf("""
            project: p
            boards: {main: {kind: plywood, thickness: 19.05}}
            panels:
              a:
                {board: main, length: 400, width: 200, place: {corner: [0, 0, 0], outside: bottom},
                grooves: [{from: [0, 50], to: [400, 50], width: 20, depth: 3.1}, {from: [0, 150], to: [400, 150], width: 20, depth: 15.95, face: outside}]}
              b: {board: main, length: 400, width: 200, place: {corner: [0, 100, 16.5], outside: back}}
            """)), f => f.Rule == "panels-overlap");

        Assert.StartsWith("a and b take the same space", finding.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("cut-outs: [{rectangle: {at: [-50, -50], length: 60, width: 60}}]", null)]       // a corner cut off
    [InlineData("cut-outs: [{rectangle: {at: [-50, -50], length: 50, width: 500}}]", "a: an opening from -50 mm, -50 mm to 0 mm, 450 mm misses the panel, which is 400 mm × 200 mm")]
    [InlineData("cut-outs: [{rectangle: {at: [0, 0], length: 400, width: 200}}]", "a: its openings leave nothing of the panel")]
    [InlineData("cut-outs: [{rectangle: {at: [100, -1], length: 5, width: 202}}]", "a: its openings cut the panel into 2 pieces")]
    [InlineData("slots: [{from: [500, 50], to: [600, 50], width: 10}]", "a: an opening from 495 mm, 45 mm to 605 mm, 55 mm misses the panel, which is 400 mm × 200 mm")]
    [InlineData("grooves: [{from: [-50, 50], to: [450, 50], width: 6, depth: 6}]", null)]        // runs out at both ends
    [InlineData("grooves: [{from: [0, 250], to: [400, 250], width: 6, depth: 6}]", "a: a groove from 0 mm, 247 mm to 400 mm, 253 mm misses the panel, which is 400 mm × 200 mm")]
    [InlineData("marks: [{from: [0, 0], to: [400, 200]}]", null)]
    [InlineData("marks: [{at: [401, 100]}]", "a: a mark from 401 mm, 100 mm to 401 mm, 100 mm leaves the panel, which is 400 mm × 200 mm")]
    public void Feature_that_misses_its_panel_is_an_error(string features, string? message)
    {
        var findings = InPanel(features);

        if (message is null) Assert.Empty(findings);
        else Assert.Equal(("feature-in-panel", message), (findings[0].Rule, findings[0].Message));
    }

    [Theory]
    [InlineData("bores: [{at: [100, 100], diameter: 10}, {at: [110, 100], diameter: 10}]", null)]                     // they touch
    [InlineData("bores: [{at: [100, 100], diameter: 10}, {at: [109.9, 100], diameter: 10}]", "run into each other")]
    [InlineData("bores: [{at: [20, 100], diameter: 10, depth: 4}, {edge: left, at: 100, diameter: 8, depth: 30}]", null)]     // 1 mm of wood below
    [InlineData("bores: [{at: [20, 100], diameter: 10, depth: 6}, {edge: left, at: 100, diameter: 8, depth: 30}]", "run into each other")]
    public void Bores_that_meet_are_an_error(string features, string? message)
    {
        var findings = InPanel(features);

        if (message is null) Assert.Empty(findings);
        else Assert.Contains(message, Assert.Single(findings).Message, StringComparison.Ordinal);
    }

    // Two rows meet in the corner of a shelf: 50 mm screws through 18 mm, 32 mm deep. Where both stood 20 mm from the corner the pilots would
    // meet; 32 + (2.8 + 2.8) ÷ 2 + 3 mm is the least distance of the second (rule for rows in one plane, trade-facts 2.3), 38 in whole steps.
    [Theory]
    [InlineData(50, 50)]
    [InlineData(20, 38)]
    public void Screws_of_two_joints_that_meet_in_a_corner_are_staggered(int endDistance, double expected)
    {
        var design = Fixtures.DesignOf(Boards + """
            panels:
              shelf: {board: ply, length: 400, width: 200, place: {corner: [0, 0, 0], outside: bottom}}
              side: {board: ply, length: 300, width: 200, place: {corner: [-18, 0, 0], outside: left}}
              behind: {board: ply, length: 400, width: 300, place: {corner: [0, 200, 0], outside: back}}
            joints:
              - {through: side, into: shelf, joint: {end-distance: {{endDistance}}}}
              - {through: behind, into: shelf, joint: {end-distance: {{endDistance}}}}
            """.Replace("{{endDistance}}", $"{endDistance}", StringComparison.Ordinal));

        Assert.Empty(Shop.Check(design));
        var row = design.Assembly.Joints.Single(j => j.Id == "behind/shelf").Fasteners;
        Assert.Equal(expected, row[0].Along.Value, 1e-9);
        if (expected > endDistance) Assert.Equal("moved-clear-of-side/shelf", row[0].Along.Rule);
    }

    // Shelves on both sides of a divider: at one height neither order of assembly works; a board's thickness apart both do.
    [Theory]
    [InlineData(200, 200, false)]
    [InlineData(200, 210, false)]
    [InlineData(200, 240, true)]
    public void Shelves_that_meet_a_divider_at_one_height_are_an_error(int left, int right, bool isSound)
    {
        var findings = Find("cabinet: {width: 900, height: 700, depth: 300, board: ply, side-by-side: [{name: west, shelves: [{top: " + left + "}]}, {name: east, shelves: [{top: " + right + "}]}]}\n");

        if (isSound) Assert.Empty(findings);
        else Assert.Equal("west/shelf-1 and east/shelf-1 meet east-divider at one place: each covers the heads of the other's screws, so one of them cannot be screwed", Assert.Single(findings).Message);
    }

    [Fact]
    public void Screw_that_comes_through_an_applied_top_is_an_error_in_its_own_words()
    {
        var finding = Assert.Single(Find("cabinet: {width: 600, height: 700, depth: 300, board: ply, applied-top: {board: ply, screw: wood-4x50}}\n"));

        Assert.Equal("top/applied-top: a screw 50 mm long comes through applied-top, or nearly: the two boards are 36 mm", finding.Message);
        Assert.Equal("take screws of 30 mm to 34 mm", finding.Cure);
    }

    [Fact]
    public void Usual_screws_hold_an_applied_top_on_boards_of_23_32_inch() => Assert.Empty(Shop.Check(Fixtures.DesignOf(
        "project: p\nunit: in\nboards: {us: {kind: plywood, thickness: 23/32}}\ncabinet: {width: 24, height: 30, depth: 12, board: us, applied-top: {board: us}}\n")));

    [Fact]
    public void Finding_of_an_inch_file_speaks_in_inches()
    {
        var finding = Assert.Single(Shop.Check(Fixtures.DesignOf(
            "project: p\nunit: in\nboards: {ply: {kind: plywood, thickness: 3/4}}\npanels: {a: {board: ply, length: 16, width: 8, bores: [{at: [1/4, 4], diameter: 1}]}}\n")));

        Assert.StartsWith("a: the 1\" (25.4 mm) bore in the inside face at 1/4\" (6.35 mm), 4\" (101.6 mm) leaves the panel", finding.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("wood-4x40", "side/rail: screws 40 mm long reach 22 mm into rail; they need 25 mm")]
    [InlineData("wood-4x45", null)]
    public void Screw_too_short_is_an_error(string screw, string? message)
    {
        var findings = Find(
            $$$"""
            panels:
              side: {board: ply, length: 400, width: 200, place: {corner: [0, 0, 0], outside: left}}
              rail: {board: ply, length: 400, width: 200, place: {corner: [18, 0, 0], outside: bottom}}
            joints: [{through: side, into: rail, joint: {{{screw}}}}]
            """);

        if (message is null) Assert.Empty(findings);
        else Assert.Equal(message, Assert.Single(findings).Message);
    }

    [Fact]
    public void Screw_into_a_thin_edge_is_an_error_for_both_panels()
    {
        var finding = Assert.Single(Find(
            """
            panels:
              side: {board: ply, length: 400, width: 200, place: {corner: [0, 0, 0], outside: left}}
              rail: {board: thin, length: 400, width: 200, place: {corner: [18, 0, 0], outside: bottom}}
            joints: [{through: side, into: rail}]
            """));

        Assert.Equal(("hardware-fits", "side", "rail"), (finding.Rule, finding.Panels[0], finding.Panels[1]));
        Assert.Equal("side/rail: a 2.8 mm pilot in the edge of rail leaves 1.6 mm on either side; 4 mm must stay", finding.Message);
    }

    [Theory]
    [InlineData("a", "at: [200, 100]", null)]
    [InlineData("a", "at: [15, 100]", "plate is 40 mm × 20 mm × 10 mm")]
    [InlineData("a", "at: [15, 100], turn: 90", null)]
    [InlineData("a", "at: [200, 100], face: outside", "plate on a stands")]
    public void Hardware_without_room_is_an_error(string panel, string at, string? message)
    {
        var findings = Find(
            $$$"""
            hardware: {plate: {length: 40, width: 20, height: 10}}
            panels:
              a: {board: ply, length: 400, width: 200, place: {corner: [0, 0, 0], outside: back}}
              behind: {board: ply, length: 400, width: 200, place: {corner: [0, 23, 0], outside: back}}
            fittings: {plate: {hardware: plate, panel: {{{panel}}}, {{{at}}}}}
            """);

        if (message is null) Assert.Empty(findings);
        else Assert.StartsWith(message.Split(" × 10")[0], Assert.Single(findings).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_pieces_of_hardware_in_one_place_are_an_error()
    {
        var findings = Find(
            """
            hardware: {plate: {length: 40, width: 20, height: 10}}
            panels: {a: {board: ply, length: 400, width: 200, place: {corner: [0, 0, 0], outside: back}}}
            fittings: {one: {hardware: plate, panel: a, at: [100, 100]}, two: {hardware: plate, panel: a, at: [130, 110]}}
            """);

        Assert.Equal("one on a and two on a take the same space", Assert.Single(findings).Message);
    }

    // A plate of 40 × 20 with a hole 15 right of and 5 above its middle, seen looking at the face.
    [Theory]
    [InlineData("inside", 0, 115, 105)]
    [InlineData("inside", 90, 95, 115)]
    [InlineData("inside", 180, 85, 95)]
    [InlineData("inside", 270, 105, 85)]
    [InlineData("outside", 0, 85, 105)]      // from outside, right is the other way
    [InlineData("outside", 90, 105, 115)]
    public void Hardware_writes_its_holes_where_they_belong(string face, int turn, double x, double y)
    {
        var design = Fixtures.DesignOf(Boards +
            $$$"""
            hardware: {plate: {length: 40, width: 20, height: 10, bores: [{at: [15, 5], diameter: 3, depth: 12}]}}
            panels: {a: {board: ply, length: 400, width: 200}}
            fittings: {plate: {hardware: plate, panel: a, at: [100, 100], face: {{{face}}}, turn: {{{turn}}}}}
            """);

        var bore = Assert.IsType<Bore>(Assert.Single(design.Assembly.Panel("a").Features));

        Assert.Equal((face, "plate"), (design.Assembly.Panel("a").NameOf(bore.Surface), bore.Origin));
        Assert.Equal(new Point2(x, y), bore.At.Point);
    }
}
