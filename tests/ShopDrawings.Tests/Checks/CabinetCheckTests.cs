using ShopDrawings.Kernel;

namespace ShopDrawings.Tests.Checks;

/// <summary>Cabinets that can be resolved but not built, each with what must be said of it, and their nearest sound neighbours.</summary>
public class CabinetCheckTests
{
    private const string Boards = "project: p\nboards:\n  main: {kind: melamine, thickness: 18}\n  b16: {kind: melamine, thickness: 16}\n  thin: {kind: hardboard, thickness: 6}\n  thick: {kind: melamine, thickness: 30}\n";

    private static Finding[] Find(string cabinet) => [.. Shop.Check(Fixtures.DesignOf(Boards + "cabinet: {" + cabinet + "}\n"))];

    // The back has 7 mm in each groove; a coarse step must not pull it out of one of them.
    [Theory]
    [InlineData("1 mm")]
    [InlineData("10")]
    [InlineData("1/16 in")]
    public void Back_in_a_groove_stays_in_all_four_grooves(string step)
    {
        var assembly = Fixtures.DesignOf(Boards + $"cabinet: {{width: 600, height: 720, depth: 300, board: main, step: {step}, back: {{board: thin}}}}\n").Assembly;
        Box3 Box(string id) => assembly.Panel(id).Placement!.ToAssembly(assembly.Panel(id).Box);

        var back = Box("back");
        var tongues = new[] { Box("left-side").Max.X - back.Min.X, back.Max.X - Box("right-side").Min.X, Box("bottom").Max.Z - back.Min.Z, back.Max.Z - Box("top").Min.Z };

        Assert.All(tongues, t => Assert.InRange(t, 3.5 - 1e-9, 7 + 1e-9));
        Assert.Equal(tongues[0], tongues[1], 1e-9);
        Assert.Equal(tongues[2], tongues[3], 1e-9);
    }

    [Fact]
    public void Hinges_keep_clear_of_a_sliding_shelf_and_of_its_way_out()
    {
        var design = Fixtures.DesignOf(Boards + "cabinet: {width: 600, height: 700, depth: 600, board: main, doors: {board: main}, sliding-shelf: {slide: side-450, set-back: 80, above-floor: 20}}\n");

        Assert.Empty(Shop.Check(design));
        var shelf = design.Assembly.Panel("sliding-shelf").Extent(2).To.Value;
        Assert.All(design.Assembly.Hardware.Where(h => h.Kind == HardwareKind.Hinge), h =>
            Assert.True(h.Volumes.All(v => design.Assembly.Panel(h.Mounts[0].Panel).Placement!.ToAssembly(v).Min.Z > shelf)));
    }

    [Fact]
    public void Hinge_with_no_height_clear_of_what_slides_past_it_is_an_error()
    {
        var findings = Find("width: 600, height: 240, depth: 600, board: main, doors: {board: main}, sliding-shelf: {slide: side-450, set-back: 80, runner-height: 120}");

        Assert.Contains(findings, f => f.Rule == "hardware-fits" && f.Message.StartsWith("sliding-shelf meets left-door/hinge-", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("inset: 47", true)]
    [InlineData("inset: 20", false)]
    public void Screw_that_would_run_into_the_groove_of_the_back_moves(string inset, bool moves)
    {
        var design = Fixtures.DesignOf(Boards + $"cabinet: {{width: 600, height: 700, depth: 400, board: b16, back: {{board: thin, {inset}}}}}\n");

        Assert.Empty(Shop.Check(design));
        Assert.Equal(moves, design.Assembly.Joints.SelectMany(j => j.Fasteners).Any(f => f.Along.Rule == "moved-clear-of-back"));
    }

    [Theory]
    [InlineData("recess: 80, castors: {castor: swivel-75}, side-by-side: [{width: 90}, {}]", "-castor: a bolt through bottom comes up under bay-2-divider")]
    [InlineData("side-by-side: [{shelves: [{top: 300}]}, {shelves: [{top: 306}]}]", "meet bay-2-divider at one place")]
    [InlineData("recess: 80, castors: {castor: swivel-75}, side-by-side: [{width: 300}, {}]", null)]
    public void What_nobody_can_screw_is_an_error(string more, string? message)
    {
        var findings = Find($"width: 1000, height: 700, depth: 400, board: main, {more}").Where(f => f.Rule == "screws-can-be-driven").ToList();

        if (message is null) Assert.Empty(findings);
        else Assert.All(findings, f => Assert.Contains(message, f.Message, StringComparison.Ordinal));
        Assert.Equal(message is null, findings.Count == 0);
    }

    [Theory]
    [InlineData("grooves: [{from: [0, 100], to: [400, 100], width: 8, depth: 10}, {face: outside, from: [0, 100], to: [400, 100], width: 8, depth: 10}]", "leave nothing between them")]
    [InlineData("grooves: [{from: [0, 100], to: [400, 100], width: 8, depth: 8}], bores: [{face: outside, at: [200, 100], diameter: 10, depth: 9}]", "leave only 1 mm between them")]
    [InlineData("grooves: [{from: [0, 100], to: [400, 100], width: 8, depth: 8}], bores: [{face: outside, at: [200, 100], diameter: 10, depth: 8}]", null)]
    [InlineData("grooves: [{from: [0, 100], to: [400, 100], width: 8, depth: 17}]", "leaves only 1 mm of 18 mm under it")]
    public void Cuts_from_both_faces_that_leave_too_little_are_an_error(string features, string? message)
    {
        var findings = Shop.Check(Fixtures.DesignOf(Boards + "panels: {a: {board: main, length: 400, width: 200, " + features + "}}\n"));

        if (message is null) Assert.Empty(findings);
        else Assert.Contains(message, Assert.Single(findings).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Pilot_that_would_end_in_an_opening_moves_beside_it()
    {
        var design = Fixtures.DesignOf(Boards +
            """
            panels:
              side: {board: main, length: 400, width: 200, place: {corner: [0, 0, 0], outside: left}}
              shelf: {board: main, length: 400, width: 200, place: {corner: [18, 0, 100], outside: bottom}, cut-outs: [{circle: {at: [20, 50], diameter: 30}}]}
            joints: [{through: side, into: shelf}]
            """);

        Assert.Empty(Shop.Check(design));
        Assert.Equal("moved-clear-of-shelf", Assert.Single(design.Assembly.Joints).Fasteners[0].Along.Rule);
    }

    [Fact]
    public void Pilot_with_nowhere_to_move_to_is_an_error()
    {
        var findings = Shop.Check(Fixtures.DesignOf(Boards +
            """
            panels:
              side: {board: main, length: 400, width: 200, place: {corner: [0, 0, 0], outside: left}}
              shelf: {board: main, length: 400, width: 200, place: {corner: [18, 0, 100], outside: bottom}, grooves: [{from: [20, 5], to: [20, 195], width: 10, depth: 12}]}
            joints: [{through: side, into: shelf}]
            """));

        Assert.Contains(findings, f => f.Rule == "bores-meet-grooves" && f.Message.EndsWith("runs into the groove in the inside face", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("back: {board: thin}")]
    [InlineData("back: {board: thin}, recess: 80")]
    [InlineData("bottom: under")]
    [InlineData("back: {board: main, fit: between}, bottom: under")]
    public void Castors_of_an_ordinary_cabinet_are_no_finding(string more) =>
        Assert.Empty(Find($"width: 800, height: 800, depth: 500, board: main, castors: {{castor: swivel-75}}, {more}").Select(f => f.Message));

    [Fact]
    public void Rail_before_what_slides_is_an_error()
    {
        var findings = Shop.Check(Fixtures.DesignOf(Boards +
            """
            cabinet: {board: main, width: 600, height: 800, depth: 560, sliding-shelf: {slide: side-450, set-back: 30}}
            panels: {rail: {board: main, length: 564, width: 100, place: {corner: [18, 0, 40], outside: front}}}
            joints: [{through: left-side, into: rail}, {through: right-side, into: rail}]
            """));

        Assert.Contains(findings, f => f.Message.StartsWith("sliding-shelf meets rail on its way out", StringComparison.Ordinal));
    }

    // The shelf's top is 18 + 10 + 70 + 18 = 116 mm high, that of the block on it 166 mm.
    [Theory]
    [InlineData(120, true)]
    [InlineData(170, false)]
    public void Rail_before_hardware_on_what_slides_is_an_error(double height, bool meets)
    {
        var findings = Shop.Check(Fixtures.DesignOf(Boards +
            $$"""
            cabinet: {board: main, width: 600, height: 800, depth: 560, sliding-shelf: {slide: side-450, set-back: 30} }
            hardware: {block: {length: 60, width: 40, height: 50} }
            fittings: {box: {hardware: block, panel: sliding-shelf, at: [250, 200]} }
            panels: {rail: {board: main, length: 564, width: 100, place: {corner: [18, 0, {{height}}], outside: front} } }
            joints: [{through: left-side, into: rail}, {through: right-side, into: rail}]
            """));

        Assert.Equal(meets, findings.Any(f => f.Message.StartsWith("sliding-shelf with box meets rail on its way out", StringComparison.Ordinal) && f.Panels.SequenceEqual(["sliding-shelf", "rail"])));
        Assert.Equal(meets, !findings.IsEmpty);
    }

    [Fact]
    public void Door_hung_by_one_end_is_an_error()
    {
        var findings = Find("board: main, width: 500, height: 800, depth: 350, doors: {board: main, hang: left}, shelves: [{top: 60}, {top: 120}, {top: 180}, {top: 240}, {top: 300}, {top: 360}]");

        Assert.Contains(findings, f => f.Message.StartsWith("door: its outer hinges stand only", StringComparison.Ordinal));
    }

    // The back stands in the middle of its groove, a little before the lining.
    [Fact]
    public void Holes_of_any_kind_go_on_through_linings_on_both_faces()
    {
        var assembly = Fixtures.DesignOf(Boards +
            """
            hardware: {bush: {length: 68, width: 68, height: 3, bores: [{at: [0, 0], diameter: 60}]}}
            cabinet: {board: main, width: 600, height: 800, depth: 400, back: {board: thin}, stacked: [{name: p, lining: {board: thin, faces: [back, top]}}, {name: q, lining: {board: thin, faces: [bottom]}}]}
            holes: [{panel: back, from: {left: 100, bottom: 180}, diameter: 60}, {panel: q-floor, from: {left: 200, front: 100}, diameter: 20}]
            fittings: {bush: {hardware: bush, panel: q-floor, at: [400, 200]}}
            """).Assembly;

        int Holes(string id) => assembly.Panel(id).Features.OfType<Bore>().Count();
        Assert.Equal((1, 2, 2), (Holes("p/back-lining"), Holes("p/top-lining"), Holes("q/bottom-lining")));
    }

    // 30 mm kept for cables behind the shelf, whatever lines the back.
    [Theory]
    [InlineData(520, false)]
    [InlineData(531, true)]
    public void Sliding_shelf_keeps_its_room_before_a_lining(int depth, bool fits)
    {
        var text = Boards + $"cabinet: {{width: 600, height: 700, depth: {depth}, board: main, back: {{board: main, fit: within-sides}}, sliding-shelf: {{slide: side-450, rear-clearance: 30}}, lining: {{board: thick, faces: [back]}}}}\n";

        var misfit = Shop.Check(Fixtures.DesignOf(text)).Where(f => f.Message.StartsWith("slides 450 mm long need 483 mm", StringComparison.Ordinal)).ToList();
        Assert.Equal(fits, misfit.Count == 0);
        Assert.All(misfit, f => Assert.Equal("take slides at most 439 mm long", f.Cure));
    }

    // The slides leave 13.05 mm beside what they carry.
    [Theory]
    [InlineData("thin", false)]
    [InlineData("b16", true)]
    public void Lining_thicker_than_the_room_beside_a_sliding_shelf_is_in_its_way(string board, bool meets)
    {
        var findings = Find($"width: 600, height: 700, depth: 560, board: main, sliding-shelf: {{slide: side-450}}, lining: {{board: {board}, faces: [left, right]}}");

        Assert.Equal(meets, findings.Any(f => f.Message.StartsWith("sliding-shelf meets left-lining on its way out, by 2.95", StringComparison.Ordinal)));
        Assert.Equal(meets, findings.Length > 0);
    }

    // 15 mm of open door and 3 mm beside it are more than the 13.05 mm a slide keeps: one board of 18 mm brings it past.
    [Fact]
    public void Packers_bring_the_slides_past_doors_that_stand_in_the_opening()
    {
        var design = Fixtures.DesignOf(Boards + "cabinet: {width: 600, height: 700, depth: 600, board: main, doors: {board: main, hinge: cup-35-110}, sliding-shelf: {slide: side-450}}\n");

        Assert.Empty(Shop.Check(design));
        Assert.Equal((18.0, 582.0), (design.Assembly.Panel("left-packer").Extent(0).From.Value, design.Assembly.Panel("right-packer").Extent(0).To.Value));
        Assert.Equal(564 - 2 * 13.05 - 2 * 18, design.Assembly.Panel("sliding-shelf").Extent(0) is var (from, to) ? to.Value - from.Value : 0, 1e-9);
        Assert.Equal("left-packer", design.Assembly.Hardware.Single(h => h.Id == "left-slide").Mounts[0].Panel);
    }

    // One door hangs on the left alone: only there is a packer.
    [Fact]
    public void Packer_stands_only_where_a_door_hangs()
    {
        var assembly = Fixtures.DesignOf(Boards + "cabinet: {width: 600, height: 700, depth: 600, board: main, doors: {board: main, hang: left, hinge: cup-35-110}, sliding-shelf: {slide: side-450}}\n").Assembly;

        Assert.Equal(["left-packer"], assembly.Panels.Select(p => p.Id).Where(id => id.EndsWith("packer", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("depth: 600, sliding-shelf: {slide: side-450, runner-height: 40}", "a runner 40 mm high does not hold a slide 45 mm high")]
    [InlineData("depth: 400, sliding-shelf: {slide: side-450}", "slides 450 mm long need 503 mm with the set-back before and the room for cables behind them; the cabinet is 400 mm deep")]
    [InlineData("depth: 600, sliding-shelf: {slide: side-450, runner-height: 700}", "the sliding shelf with its runners needs 728 mm of height; the cabinet has 684 mm")]
    [InlineData("depth: 400, drawers: {slide: side-450, count: 2, bottom: thin}", "slides 450 mm long need 458 mm")]
    [InlineData("depth: 600, drawers: {slide: side-450, count: 9, bottom: thin}", "the box of drawer-1 would be 30.5 mm high and does not hold a slide 45 mm high")]
    [InlineData("depth: 200, doors: {board: thin}", "bore of left-door/hinge-1 in the inside face at")]
    [InlineData("depth: 60, loose-shelves: {count: 1}", "two rows of pins do not fit in the cabinet, which is 60 mm deep")]
    public void Hardware_that_does_not_fit_is_a_finding(string more, string message)
    {
        var findings = Find($"width: 600, height: 720, board: main, {more}");

        Assert.Contains(findings, f => f.Severity == Severity.Error && f.Message.Contains(message, StringComparison.Ordinal) && f.Numbers.Length > 0 && f.Cure.Length > 0);
    }
}
