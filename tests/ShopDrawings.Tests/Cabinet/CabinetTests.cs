using CsCheck;
using ShopDrawings.Kernel;
using Size = ShopDrawings.Kernel.Size;

namespace ShopDrawings.Tests.Cabinet;

public class CabinetTests(ITestOutputHelper output)
{
    private static readonly RandomCabinet Plain = new(600, 700, 300, 18, false, false, 0, "none", 6.35, 9.5, "none", false, 0, [], false, 0);

    // Worked by hand from the fixture's numbers: 600 × 720 × 300 outside, 18.1 mm carcass, 6.3 mm back in an 8 mm groove.
    [Theory]
    [InlineData("left-side", 720, 300)]
    [InlineData("right-side", 720, 300)]
    [InlineData("bottom", 563.8, 300)]          // 600 - 2 × 18.1
    [InlineData("top", 563.8, 300)]
    [InlineData("shelf-1", 563.8, 203.4)]       // 300 - 10 - (6.3 + 0.3) - 80
    [InlineData("back", 697.8, 577.8)]          // 683.8 + 2 × (8 - 1), 563.8 + 2 × (8 - 1)
    public void Wall_cupboard_has_the_sizes_worked_by_hand(string id, double length, double width)
    {
        var panel = Fixtures.Design("wall-cupboard").Assembly.Panel(id);

        Assert.Equal(length, panel.Length.Value, 1e-9);
        Assert.Equal(width, panel.Width.Value, 1e-9);
    }

    // Rows on the side, from its lower and front edge: bottom at t/2, shelf at 380 - t/2, top at 720 - t/2 (common practice, no source).
    [Theory]
    [InlineData("left-side/bottom", 9.05, new[] { 50.0, 150, 250 })]
    [InlineData("left-side/shelf-1", 370.95, new[] { 130, 233.4 })]        // 80 + 50, 80 + 203.4 - 50
    [InlineData("right-side/top", 710.95, new[] { 50.0, 150, 250 })]
    public void Wall_cupboard_has_the_rows_worked_by_hand(string joint, double height, double[] fromFront)
    {
        var assembly = Fixtures.Design("wall-cupboard").Assembly;

        var heads = assembly.Joints.Single(j => j.Id == joint).Fasteners.Select(f => f.Head).OrderBy(h => h.Y).ToList();

        Assert.All(heads, h => Assert.Equal(height, h.Z, 1e-9));
        Assert.Equal(fromFront, heads.Select(h => Math.Round(h.Y, 9)));
    }

    [Fact]
    public void Clearance_and_pilot_of_every_screw_lie_on_one_axis()
    {
        RandomCabinet.Any.Sample(cabinet =>
        {
            var assembly = Fixtures.DesignOf(cabinet.Text).Assembly;
            foreach (var joint in assembly.Joints)
            {
                var clearances = Axes(assembly.Panel(joint.Through), joint.Id);
                var pilots = Axes(assembly.Panel(joint.Receiving), joint.Id);
                Assert.Equal(joint.Fasteners.Length, clearances.Count);
                Assert.Equal(joint.Fasteners.Length, pilots.Count);
                foreach (var ((entry, into), fastener) in clearances.Zip(joint.Fasteners))
                {
                    var (mouth, deeper) = pilots.MinBy(p => Off(entry, into, p.Entry));
                    Assert.True(Off(entry, into, mouth) <= 1e-6, $"{joint.Id}: {entry} and {mouth} are apart");
                    Assert.True((into - deeper).Length <= 1e-12, $"{joint.Id}: the holes run different ways");
                    Assert.True(Off(entry, into, fastener.Head) <= 1e-6 && (fastener.Head - entry).Length <= 1e-6);
                    Assert.True(((fastener.Tip - fastener.Head) * (1 / ((Screw)fastener.Fastener).Length.Value) - into).Length <= 1e-9);
                }
            }
        }, iter: 400);
    }

    [Fact]
    public void No_panel_overlaps_and_no_bore_leaves_its_panel() => RandomCabinet.Any.Sample(cabinet =>
    {
        var findings = Shop.Check(Fixtures.DesignOf(cabinet.Text));

        Assert.Empty(findings.Where(NotAHinge).Select(f => f.Message));
    }, iter: 300);

    // A low bay may truly have no room for a hinge.
    private static bool NotAHinge(Finding finding) => !finding.Message.Contains("hinge", StringComparison.Ordinal);

    [Fact]
    public void Hinges_stand_clear_wherever_bays_are_high_enough() => RandomCabinet.Any.Where(c => c.Doors != "none" && c.Height > 700 && c.Even == 0 && c.Tops.Length == 0).Sample(cabinet =>
        Assert.Empty(Shop.Check(Fixtures.DesignOf(cabinet.Text)).Where(f => f.Severity == Severity.Error).Select(f => f.Message)), iter: 100);

    [Fact]
    public void Every_size_recomputes_from_its_derivation() => RandomCabinet.Any.Sample(cabinet =>
    {
        foreach (var panel in Fixtures.DesignOf(cabinet.Text).Assembly.Panels)
            foreach (var size in panel.Sizes)
            {
                Assert.Equal(size.Value, size.Recomputed(), 1e-9);
                Assert.All(Leaves(size), leaf => Assert.True(leaf.Operation is Operation.Given or Operation.Default or Operation.Constant));
            }
    }, iter: 100);

    [Fact]
    public void Sizes_given_by_the_user_lead_back_to_their_line()
    {
        var side = Fixtures.DesignOf(Plain.Text).Assembly.Panel("left-side");

        var given = Leaves(side.Length).Single();

        Assert.Equal((Operation.Given, "test.yaml(8,11)"), (given.Operation, given.Source.ToString()));
    }

    [Fact]
    public void Left_and_right_are_mirror_images() => RandomCabinet.Any.Where(c => !c.Divider && c.Doors is "none" or "pair").Sample(cabinet =>
    {
        var assembly = Fixtures.DesignOf(cabinet.Text).Assembly;
        Point3 Mirror(Point3 p) => p with { X = cabinet.Width - p.X };

        var left = Ends(assembly.Panel("left-side")).Select(Mirror);
        var right = Ends(assembly.Panel("right-side"));

        Assert.Equal(Keys(right), Keys(left));
    }, iter: 200);

    [Fact]
    public void Inch_and_millimetre_files_of_one_cabinet_agree() => RandomCabinet.Any.Sample(cabinet =>
    {
        var (metric, inch) = (Fixtures.DesignOf(cabinet.Text).Assembly, Fixtures.DesignOf(cabinet.TextInInches).Assembly);

        Assert.Equal(metric.Panels.Select(p => p.Id), inch.Panels.Select(p => p.Id));
        foreach (var (a, b) in metric.Panels.Zip(inch.Panels))
            foreach (var (x, y) in a.Sizes.Zip(b.Sizes)) Assert.Equal(x.Value, y.Value, 1e-6);
    }, iter: 200);

    [Fact]
    public void Another_shelf_renames_and_moves_nothing_else()
    {
        var one = Plain with { Height = 900, Back = "groove", Tops = [400] };

        var before = Fixtures.DesignOf(one.Text).Assembly;
        var after = Fixtures.DesignOf((one with { Tops = [400, 650] }).Text).Assembly;

        Assert.Equal(before.Panels.Select(p => p.Id), after.Panels.Select(p => p.Id).Where(id => id != "shelf-2"));
        foreach (var id in new[] { "bottom", "top", "shelf-1", "back" })
            Assert.Equal(Keys(Ends(before.Panel(id))), Keys(Ends(after.Panel(id))));
    }

    [Fact]
    public void Even_shelves_leave_equal_clear_heights() => RandomCabinet.Any.Where(c => c.Even > 0).Sample(cabinet =>
    {
        var assembly = Fixtures.DesignOf(cabinet.Text).Assembly;
        var levels = assembly.Panels.Where(p => p.Placement!.Inwards.Axis() == 2).Select(p => p.Placement!.ToAssembly(p.Box)).OrderBy(b => b.Min.Z).ToList();

        var gaps = levels.Zip(levels.Skip(1), (a, b) => b.Min.Z - a.Max.Z).ToList();

        Assert.All(gaps, g => Assert.Equal(gaps[0], g, 1e-9));
    }, iter: 100);

    // The carcass panels add up to outside less inside, less what lies under a raised bottom or behind a back that is set in. In a groove
    // panels reach into each other, so there it does not hold; nor where panels end before a back that runs past them and is set in.
    [Fact]
    public void Volumes_add_up() => RandomCabinet.Any.Where(c => c.Back != "groove" && (c.Back != "within-sides" || c.Inset == 0)).Sample(cabinet =>
    {
        var assembly = Fixtures.DesignOf(cabinet.Text).Assembly;
        var t = cabinet.Board;
        var inner = cabinet.Width - 2 * t;
        var clear = cabinet.Depth - (cabinet.Back is "none" ? 0 : cabinet.BackBoard + cabinet.Inset);
        var inside = inner * (cabinet.Height - cabinet.Recess - 2 * t) * clear;
        var under = inner * cabinet.Recess * (cabinet.Back is "within-sides" or "behind" ? clear : cabinet.Depth);
        var behind = cabinet.Back == "between" ? inner * (cabinet.Height - cabinet.Recess - 2 * t) * cabinet.Inset : 0;
        var dividing = assembly.Panels.Where(p => p.Id.Contains("shelf", StringComparison.Ordinal) || p.Id.Contains("floor", StringComparison.Ordinal) || p.Id.EndsWith("divider", StringComparison.Ordinal)).Sum(p => p.Box.Volume);
        var doors = assembly.Panels.Where(p => p.Id.EndsWith("door", StringComparison.Ordinal)).Sum(p => p.Box.Volume);

        var expected = cabinet.Width * cabinet.Height * cabinet.Depth - inside - under - behind;

        Assert.Equal(1, (assembly.Panels.Sum(p => p.Box.Volume) - dividing - doors) / expected, 1e-9);
    }, iter: 300);

    // Common practice, no source: with a bottom raised by r and boards t thick, its row sits r + t/2 above the lower edge; rows along an edge sit t/2 from it.
    [Fact]
    public void Rows_sit_on_the_middle_of_the_panel_they_hold() => RandomCabinet.Any.Sample(cabinet =>
    {
        var assembly = Fixtures.DesignOf(cabinet.Text).Assembly;
        foreach (var side in new[] { "left-side", "right-side" })
        {
            if (!cabinet.BottomUnder)
                Assert.All(assembly.Joints.Single(j => j.Id == side + "/bottom").Fasteners, f => Assert.Equal(cabinet.Recess + cabinet.Board / 2, f.Head.Z, 1e-9));
            if (!cabinet.TopOver)
                Assert.All(assembly.Joints.Single(j => j.Id == side + "/top").Fasteners, f => Assert.Equal(cabinet.Height - cabinet.Board / 2, f.Head.Z, 1e-9));
        }
    }, iter: 100);

    [Fact]
    public void Rows_keep_the_end_distance_from_the_ends_of_the_panel_they_hold_and_the_pitch() => RandomCabinet.Any.Sample(cabinet =>
    {
        var assembly = Fixtures.DesignOf(cabinet.Text).Assembly;
        // A row of which one screw moved clear of something says so.
        foreach (var joint in assembly.Joints.Where(j => !j.Fasteners.Any(f => f.Along.Rule.StartsWith("moved-clear-of-", StringComparison.Ordinal))))
        {
            var held = assembly.Panel(joint.Receiving);
            var length = joint.Held is Surface.Near or Surface.Far ? held.Length.Value : held.Width.Value;
            var places = held.Features.OfType<Bore>().Where(b => b.Origin == joint.Id).Select(b => b.At.X.Value).Order().ToList();
            var end = Math.Min(50, length / 4);
            Assert.Equal(end, places[0], 1e-9);
            Assert.Equal(length - end, places[^1], 1e-9);
            Assert.All(places.Zip(places.Skip(1), (a, b) => b - a), gap => Assert.True(gap <= 150 + 1e-9 && Math.Abs(gap - joint.Row!.Pitch.Value) < 1e-9));
        }
    }, iter: 200);

    // 18.6 instead of 19.05 mm: every panel between two others grows by twice the difference, and nothing else moves.
    [Fact]
    public void Another_thickness_moves_everything_consistently() => RandomCabinet.Any.Sample(cabinet =>
    {
        const double Thinner = 19.05 - 18.6;
        var thick = Fixtures.DesignOf((cabinet with { Board = 19.05, BackBoard = cabinet.BackBoard > 10 ? 19.05 : 6.35, Tops = [] }).Text).Assembly;
        var thin = Fixtures.DesignOf((cabinet with { Board = 18.6, BackBoard = cabinet.BackBoard > 10 ? 18.6 : 6.35, Tops = [] }).Text).Assembly;

        Assert.Equal(thick.Panels.Select(p => p.Id), thin.Panels.Select(p => p.Id));
        Assert.Equal(thick.Panel("left-side").Placement!.X.Value, thin.Panel("left-side").Placement!.X.Value, 1e-9);
        var bottom = (Span(thick.Panel("bottom"), 0), Span(thin.Panel("bottom"), 0));
        Assert.Equal(cabinet.BottomUnder ? 0 : 2 * Thinner, bottom.Item2 - bottom.Item1, 1e-9);
        var sides = (Span(thick.Panel("left-side"), 2), Span(thin.Panel("left-side"), 2));
        Assert.Equal(((cabinet.TopOver ? 1 : 0) + (cabinet.BottomUnder ? 1 : 0)) * Thinner, sides.Item2 - sides.Item1, 1e-9);
    }, iter: 100);

    [Fact]
    public void Generator_covers_every_rule()
    {
        const int Cabinets = 2000;
        var counts = new SortedDictionary<string, int>(StringComparer.Ordinal);
        foreach (var kind in RandomCabinet.Any.Array[Cabinets].Single().SelectMany(c => c.Kinds)) counts[kind] = counts.GetValueOrDefault(kind) + 1;

        foreach (var (kind, count) in counts) output.WriteLine(FormattableString.Invariant($"{kind}: {100.0 * count / Cabinets:0.0} %"));
        Assert.Equal(2 + 3 + 5 + 4 + 2, counts.Count);
        Assert.All(counts, c => Assert.True(c.Value >= Cabinets * 0.05, $"{c.Key} is below 5 %"));
    }

    [Theory]
    [InlineData("1/16 in", 25.4 / 16)]
    [InlineData("1 mm", 1)]
    public void Step_makes_hand_cut_sizes_whole_multiples(string step, double mm) => RandomCabinet.Any.Sample(cabinet =>
    {
        var assembly = Fixtures.DesignOf(cabinet.Text.Replace("  board: main", $"  board: main\n  step: {step}", StringComparison.Ordinal)).Assembly;

        void IsMultiple(double size) => Assert.Equal(Math.Round(size / mm) * mm, size, 1e-6);
        IsMultiple(assembly.Panel("left-side").Box.Size.X);
        IsMultiple(assembly.Panel("left-side").Box.Size.Y);
        IsMultiple(Span(assembly.Panel("bottom"), 0) - (cabinet.BottomUnder ? 2 * cabinet.Board : 0));
        Assert.All(assembly.Panels.Where(p => p.Id.StartsWith("shelf", StringComparison.Ordinal)), p => IsMultiple(Span(p, 1)));
        Assert.All(assembly.Panels.Where(p => p.Id.EndsWith("door", StringComparison.Ordinal)), p =>
        {
            IsMultiple(p.Length.Value);
            IsMultiple(p.Width.Value);
        });
        Assert.True(Math.Abs(Span(assembly.Panel("bottom"), 0) + (cabinet.BottomUnder ? 0 : 2 * cabinet.Board) - cabinet.Width) <= mm / 2 + 1e-6);
        Assert.Empty(Shop.Check(new Design(assembly, CheckSettings.Standard, LengthStyle.Millimetres)).Where(NotAHinge).Select(f => f.Message));
    }, iter: 100);

    // Two doors bought for a module of 400 × 900 mm, really 396.5 × 897: the module makes the cabinet, the difference is gap and reveal.
    [Fact]
    public void Module_and_actual_size_of_bought_doors_make_cabinet_gap_and_reveals()
    {
        var assembly = Fixtures.DesignOf(
            """
            project: p
            boards: {ply: {kind: plywood, thickness: 18}}
            cabinet:
              depth: 400
              board: ply
              recess: 80
              doors: {board: ply, width: 396.5, height: 897, module: {width: 400, height: 900}}
            """).Assembly;

        var (left, right) = (Box(assembly, "left-door"), Box(assembly, "right-door"));
        Assert.Equal(800, Box(assembly, "right-side").Max.X, 1e-9);
        Assert.Equal(980, Box(assembly, "left-side").Max.Z, 1e-9);
        Assert.Equal([1.75, 398.25, 401.75, 798.25], new[] { left.Min.X, left.Max.X, right.Min.X, right.Max.X }.Select(x => Math.Round(x, 9)));
        Assert.Equal((81.5, 978.5), (Math.Round(left.Min.Z, 9), Math.Round(left.Max.Z, 9)));
    }

    // Overlay = 18 - 1.5 = 16.5; plate height = 13 + 5 - 16.5 = 1.5 (relation: hinge maker's quick reference; constants of the catalogue).
    [Fact]
    public void Hinge_puts_cup_fixings_and_plate_at_one_height()
    {
        var assembly = Fixtures.DesignOf("project: p\nboards: {ply: {kind: plywood, thickness: 18}}\ncabinet: {width: 600, height: 800, depth: 400, board: ply, doors: {board: ply, hang: left}}\n").Assembly;

        var hinges = assembly.Hardware.Where(h => h.Kind == HardwareKind.Hinge).ToList();
        Assert.Equal(2, hinges.Count);
        foreach (var hinge in hinges)
        {
            Assert.Equal([16.5, 1.5], hinge.Sizes.Select(s => Math.Round(s.Value, 9)));
            var side = Holes(assembly, "left-side", hinge.Id);
            var door = Holes(assembly, "door", hinge.Id);
            var cup = door.Single(h => h.Diameter == 35);
            var height = cup.Entry.Z;
            Assert.Equal(1.5 + 22.5, cup.Entry.X, 1e-9);
            Assert.Equal([height - 22.5, height + 22.5], door.Where(h => h.Diameter != 35).Select(h => h.Entry.Z).Order().Select(z => Math.Round(z, 9)));
            Assert.All(door.Where(h => h.Diameter != 35), h => Assert.Equal(1.5 + 32, h.Entry.X, 1e-9));
            Assert.Equal([height - 16, height + 16], side.Select(h => h.Entry.Z).Order().Select(z => Math.Round(z, 9)));
            Assert.All(side, h => Assert.Equal(37, h.Entry.Y, 1e-9));
        }
    }

    // Bay 564 wide: moving width 564 - 2 × (12.7 + 0.35) = 537.9 (slide maker's help page: thickness + 0.2 to 0.5 mm).
    [Fact]
    public void Sliding_shelf_leaves_the_slides_their_room_and_both_hole_rows_agree()
    {
        var assembly = Fixtures.DesignOf("project: p\nboards: {ply: {kind: plywood, thickness: 18}}\ncabinet: {width: 600, height: 800, depth: 520, board: ply, sliding-shelf: {slide: side-450}}\n").Assembly;

        Assert.Equal((31.05, 568.95), (Math.Round(Box(assembly, "sliding-shelf").Min.X, 9), Math.Round(Box(assembly, "sliding-shelf").Max.X, 9)));
        foreach (var (side, runner, slide) in new[] { ("left-side", "left-runner", "left-slide"), ("right-side", "right-runner", "right-slide") })
        {
            var (outer, inner) = (Holes(assembly, side, slide), Holes(assembly, runner, slide));
            Assert.Equal(new[] { 35.0, 131, 291, 419 }.Select(y => y + 3), outer.Select(h => Math.Round(h.Entry.Y, 9)));
            Assert.Equal(new[] { 35.0, 195, 387 }.Select(y => y + 3), inner.Select(h => Math.Round(h.Entry.Y, 9)));
            Assert.All(outer.Concat(inner), h => Assert.Equal(18 + 10 + 35, h.Entry.Z, 1e-9));
            Assert.Equal(13.05, Math.Abs(outer[0].Entry.X - inner[0].Entry.X), 1e-9);
        }

        Assert.Empty(Shop.Check(new Design(assembly, CheckSettings.Standard, LengthStyle.Millimetres)));
    }

    [Theory]
    // Shelf 537.9 × 450 and runners 450 × 140 in all, of 18 mm at 650 kg/m³: 3.569 kg. (25.2 + 3.569) × 1.25 ÷ 45 = 0.799; 25.3 gives 0.802.
    [InlineData("55 lb", true)]
    [InlineData("25.2 kg", true)]
    [InlineData("25.3 kg", false)]
    public void Overloaded_slide_is_an_error(string load, bool isSound)
    {
        var design = Fixtures.DesignOf($"project: p\nboards: {{ply: {{kind: plywood, thickness: 18, density: 650}}}}\ncabinet: {{width: 600, height: 800, depth: 520, board: ply, sliding-shelf: {{slide: side-450, load: {load}}}}}\n");

        Assert.Equal(isSound, Shop.Check(design).IsEmpty);
    }

    // √((32 + 37.5)² + 12.5²) = 70.615 and 5 mm more to the sides that hang down.
    [Fact]
    public void Castors_swivel_clear_of_sides_that_hide_them()
    {
        var assembly = Fixtures.DesignOf("project: p\nboards: {ply: {kind: plywood, thickness: 18}}\ncabinet: {width: 600, height: 800, depth: 520, board: ply, recess: 85, castors: {castor: swivel-75}}\n").Assembly;

        var castors = assembly.Hardware.Where(h => h.Kind == HardwareKind.Castor).ToList();
        Assert.Equal(4, castors.Count);
        Assert.Equal(18 + 70.6152 + 5, castors.Min(c => assembly.Panel("bottom").Placement!.ToAssembly(assembly.Panel("bottom").OnSurface(Surface.Outside, c.Mounts[0].At.Point)).X), 1e-4);
        Assert.All(castors, c => Assert.Equal(4, Holes(assembly, "bottom", c.Id).Count));
        Assert.Empty(Shop.Check(new Design(assembly, CheckSettings.Standard, LengthStyle.Millimetres)));
    }

    [Fact]
    public void Applied_top_is_screwed_from_beneath_with_screws_that_cannot_come_through()
    {
        var assembly = Fixtures.Design("seedling-cabinet").Assembly;

        var joint = assembly.Joints.Single(j => j.Receiving == "applied-top");
        var top = Box(assembly, "applied-top");
        Assert.All(joint.Fasteners, f => Assert.True(f.Head.Z < f.Tip.Z && f.Tip.Z > top.Min.Z + 12 && f.Tip.Z < top.Max.Z - 2));
    }

    // Finished size less the bands on both sides (derived): thick and thin alike.
    [Theory]
    [InlineData(0.5)]
    [InlineData(2)]
    public void Bands_make_the_sawn_size_smaller_and_move_no_hole(double band)
    {
        var plain = Fixtures.DesignOf((Plain with { Back = "groove" }).Text).Assembly.Panel("left-side");
        var banded = Fixtures.DesignOf((Plain with { Back = "groove", Band = band }).Text).Assembly.Panel("left-side");

        Assert.Equal((plain.Length.Value, plain.Width.Value - band), (banded.CutLength.Value, banded.CutWidth.Value));
        Assert.Equal(Keys(Ends(plain)), Keys(Ends(banded)));
    }

    [Fact]
    public void Bays_in_bays_carry_their_place_in_their_ids()
    {
        var assembly = Fixtures.DesignOf(
            """
            project: p
            boards: {ply: {kind: plywood, thickness: 18}}
            cabinet:
              width: 900
              height: 1200
              depth: 400
              board: ply
              stacked:
                - {name: store, height: 300}
                - name: work
                  side-by-side: [{name: tools, width: 250, shelves: 2}, {name: bench}]
                - {height: 200}
            """).Assembly;

        Assert.Equal(
            ["left-side", "right-side", "bottom", "top", "work-floor", "bay-3-floor", "work/bench-divider", "work/tools/shelf-1", "work/tools/shelf-2"],
            assembly.Panels.Select(p => p.Id));
        Assert.Equal((18 + 300.0, 18 + 300 + 18.0), (Box(assembly, "work-floor").Min.Z, Box(assembly, "work-floor").Max.Z));
        Assert.Equal((18 + 250.0, 1200 - 18 - 200 - 18.0), (Box(assembly, "work/bench-divider").Min.X, Box(assembly, "work/bench-divider").Max.Z));
        Assert.Empty(Shop.Check(new Design(assembly, CheckSettings.Standard, LengthStyle.Millimetres)));
    }

    [Fact]
    public void Hole_at_a_named_place_is_where_it_says()
    {
        var assembly = Fixtures.Design("seedling-cabinet").Assembly;
        var side = Box(assembly, "left-side");

        var probe = Holes(assembly, "left-side", "left-side").Single().Entry;

        Assert.Equal(3 * 25.4, probe.Y, 1e-9);
        Assert.Equal(10 * 25.4, side.Max.Z - probe.Z, 1e-9);
    }

    [Fact]
    public void Hole_at_a_named_place_goes_on_through_a_lining()
    {
        var assembly = Fixtures.Design("seedling-cabinet").Assembly;

        var back = Holes(assembly, "back", "cable-way").Single();
        var lining = Holes(assembly, "chamber/back-lining", "cable-way").Single();

        Assert.Equal((back.Diameter, back.Entry.X, back.Entry.Z), (lining.Diameter, lining.Entry.X, lining.Entry.Z));
    }

    private static Box3 Box(Assembly assembly, string id) => assembly.Panel(id).Placement!.ToAssembly(assembly.Panel(id).Box);

    private static List<(Point3 Entry, double Diameter)> Holes(Assembly assembly, string id, string origin)
    {
        var panel = assembly.Panel(id);
        return [.. panel.Features.OfType<Bore>().Where(b => b.Origin == origin).Select(b => (panel.Placement!.ToAssembly(panel.OnSurface(b.Surface, b.At.Point)), b.Diameter.Value)).OrderBy(h => h.Item1.Y)];
    }

    private static double Span(Panel panel, int axis) => panel.Placement!.ToAssembly(panel.Box).Size.Along(axis);

    private static List<(Point3 Entry, Point3 Into)> Axes(Panel panel, string origin) =>
        [.. panel.Features.OfType<Bore>().Where(b => b.Origin == origin).Select(b => (
            panel.Placement!.ToAssembly(panel.OnSurface(b.Surface, b.At.Point)),
            panel.Placement!.DirectionToAssembly(b.Surface.Into())))];

    // Distance of a point from the line through another point.
    private static double Off(Point3 on, Point3 along, Point3 point) => (point - on).Cross(along).Length;

    private static IEnumerable<Size> Leaves(Size size) => size.Operands.IsEmpty ? [size] : size.Operands.SelectMany(Leaves);

    // Where each feature begins and ends, in the assembly.
    private static IEnumerable<Point3> Ends(Panel panel)
    {
        Point3 At(Surface face, Point2 p, double depth) => panel.Placement!.ToAssembly(panel.OnSurface(face, p) + face.Into() * depth);
        foreach (var feature in panel.Features)
            switch (feature)
            {
                case Bore bore:
                    yield return At(bore.Surface, bore.At.Point, 0);
                    yield return At(bore.Surface, bore.At.Point, (bore.Depth ?? panel.Behind(bore.Surface)).Value);
                    break;
                case Groove groove:
                    foreach (var segment in groove.Outline.Segments)
                    {
                        yield return At(groove.Face, segment.Start, 0);
                        yield return At(groove.Face, segment.Start, groove.Depth.Value);
                    }

                    break;
            }
    }

    private static IEnumerable<string> Keys(IEnumerable<Point3> points) =>
        points.Select(p => FormattableString.Invariant($"{p.X + 0:0.00000} {p.Y + 0:0.00000} {p.Z + 0:0.00000}")).Order(StringComparer.Ordinal);
}
