using System.Text.RegularExpressions;
using CsCheck;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;
using static ShopDrawings.Tests.Machining.RandomPanels;

namespace ShopDrawings.Tests.Machining;

/// <summary>What the layers of machine drawings are called.</summary>
public class MachineLayersTests
{
    [Theory]
    [InlineData(5, 12.0, "INSIDE_BORE_500_DEEP_1200")]
    [InlineData(3.175, null, "INSIDE_BORE_318_THRU")]
    [InlineData(35, 13.5, "INSIDE_BORE_3500_DEEP_1350")]
    public void Bore_is_called_by_face_diameter_and_depth(double diameter, double? depth, string expected) =>
        Assert.Equal(expected, Names(Machines.Drawing, MachineLayers.Standard, depth is { } d ? Blind(50, 50, diameter, d) : Through(50, 50, diameter)).Single(n => n.Contains("BORE", StringComparison.Ordinal)));

    [Fact]
    public void Every_kind_has_a_name_of_its_own()
    {
        var names = Names(Machines.Drawing, MachineLayers.Standard,
            Blind(50, 50, 9, 4.5, use: BoreUse.Countersink), Groove(10, 90, 200, 90, 6, 8, Surface.Outside), new Mark("test", Surface.Inside, At(5, 5), null), Opening(Contour.Rectangle(100, 20, 150, 60)), Blind(100, 9, 8, 25, Surface.Near));

        Assert.Equal(["CUTOUT", "EDGE_FRONT", "EDGE_FRONT_800_DEEP_2500", "INSIDE_BORE_900_SINK_450", "INSIDE_MARK", "OUTLINE", "OUTSIDE_POCKET_600_DEEP_800", "SCALE_10000"], names.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Names_are_short_enough_for_every_program() => Gen.Select(Gen.Double[0.5, 999], Gen.Double[0.1, 999], Gen.Enum<Surface>(), Gen.Enum<BoreUse>(), Gen.Bool).Sample((diameter, depth, surface, use, own) =>
    {
        var layers = own ? MachineLayers.Standard.With(Role.Outline, "OUTER_EDGE_OF_PANEL").With(Role.Groove, "{face}_MILL_{tool}_{depth}") : MachineLayers.Standard;
        Feature[] features = [Blind(50, 9, diameter, depth, surface, use), Groove(10, 30, 2000, 30, diameter, depth, surface.IsFace() ? surface : Surface.Outside)];
        foreach (var machine in new[] { Machines.Drawing, Machines.Milling(diameter), Machines.Milling(6) with { SmallParts = new SmallParts(1e9, 100, 0, 0.4) } })
            Assert.All(Names(machine, layers, features), n => Assert.Matches("^[A-Z][A-Z0-9_]{0,30}$", n));
    }, iter: Fuzz.Iterations(40));

    [Fact]
    public void Edges_and_ways_never_share_a_name()
    {
        Feature[] features = [Through(50, 50, 60), Blind(150, 150, 60, 6), Groove(10, 90, 200, 90, 6, 8), Opening(Contour.Rectangle(100, 20, 150, 60))];
        string[] Cut(CutLines paths) => [.. Names(Machines.Milling(6) with { Paths = paths }, MachineLayers.Standard, features).Where(n => !n.StartsWith("SCALE", StringComparison.Ordinal))];

        Assert.Equal(5, Cut(CutLines.Finished).Length);
        Assert.Equal(Cut(CutLines.Finished).Length, Cut(CutLines.ToolCentre).Length);
        Assert.Empty(Cut(CutLines.Finished).Intersect(Cut(CutLines.ToolCentre)));
        Assert.All(Cut(CutLines.ToolCentre), n => Assert.Contains("PATH", n, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(Role.Bore, "B{tool}_{depth}", null)]
    [InlineData(Role.Outline, "OUT_{depth}", null)]
    [InlineData(Role.Bore, "B{diameter}", "brace")]
    [InlineData(Role.Bore, "bore", "A to Z")]
    [InlineData(Role.Bore, "5MM", "A to Z")]
    [InlineData(Role.Bore, "{tool}", "A to Z")]
    [InlineData(Role.Bore, "", "A to Z")]
    [InlineData(Role.Bore, "BORES-OF-{tool}", "A to Z")]
    [InlineData(Role.Groove, "{face}_POCKETS_OF_{tool}_{depth}", "every program reads 31")]
    [InlineData(Role.Outline, "OUTER_EDGE_OF_THE_PANEL", "every program reads 31")]        // above a skin it says the depth
    [InlineData(Role.CutOut, "OUTER_EDGE_OF_THE_PANEL", "every program reads 31")]         // so does that of an opening's waste
    [InlineData(Role.CutOut, "OUTER_EDGE_OF_A_PANEL", "every program reads 31")]
    [InlineData(Role.CutOut, "OUTER_EDGE_OF_PANELS", null)]
    [InlineData(Role.Outline, "OUTER_EDGE_OF_PANELS", null)]
    [InlineData(Role.Dimension, "ANY", "no layers")]
    public void Pattern_that_gives_no_name_is_told(Role role, string pattern, string? expected)
    {
        var fault = MachineLayers.Fault(role, pattern);

        if (expected is null) Assert.Null(fault);
        else
        {
            Assert.Contains(expected, fault, StringComparison.Ordinal);
            Assert.Throws<ArgumentException>(() => MachineLayers.Standard.With(role, pattern));
        }
    }

    [Fact]
    public void Patterns_that_can_give_one_name_clash_unless_they_are_the_same()
    {
        MachineLayers Of(params (Role Role, string Pattern)[] patterns) => patterns.Aggregate(MachineLayers.Standard, (l, p) => l.With(p.Role, p.Pattern));

        Assert.Null(MachineLayers.Standard.Clash());
        Assert.Null(Of((Role.Bore, "CUT"), (Role.Groove, "CUT")).Clash());
        Assert.NotNull(Of((Role.Bore, "CUT_{depth}"), (Role.Groove, "CUT_THRU")).Clash());
        Assert.NotNull(Of((Role.Bore, "B{tool}"), (Role.Groove, "B500")).Clash());
        Assert.NotNull(Of((Role.Mark, "INSIDE_NAME")).Clash());
        // The outline of a part on a skin.
        Assert.NotNull(Of((Role.Outline, "CUT"), (Role.Bore, "CUT_{depth}")).Clash());
    }

    public static TheoryData<Role, string> Shared => new() { { Role.CutOut, "OUTLINE" }, { Role.Outline, "CUTOUT" }, { Role.Mark, "{face}_NAME" }, { Role.Groove, "{face}_BORE_{tool}_{depth}" }, { Role.Tab, "OUTLINE" }, { Role.CutOut, "OUTLINE_PATH" } };

    [Theory]
    [MemberData(nameof(Shared))]
    public void Kind_named_like_another_shares_its_layers(Role role, string pattern)
    {
        var layers = MachineLayers.Standard.With(role, pattern);
        Assert.Null(layers.Clash());
        Feature[] features = [Through(50, 50, 60), Blind(150, 150, 6, 8), Groove(10, 90, 200, 90, 6, 8), Opening(Contour.Rectangle(100, 20, 150, 60)), new Mark("test", Surface.Inside, At(5, 5), null)];
        foreach (var paths in new[] { CutLines.Finished, CutLines.ToolCentre })
        {
            var machine = Machines.Milling(6) with { Paths = paths, NameHeight = 8, SmallParts = new SmallParts(1e9, 100, 5, 2), Tools = [new(ToolKind.Cutter, 6), new(ToolKind.Engraver, 1)] };
            Assert.NotEmpty(Names(machine, layers, features));
        }
    }

    [Fact]
    public void Names_of_all_fixtures_say_their_kind()
    {
        foreach (var (profile, plan) in Fixtures.Names.SelectMany(n => Fixtures.Design(n.Data).Machining).Where(m => m.Profile.Drawing.Layers == MachineLayers.Standard))
            foreach (var program in plan.Programs)
                Assert.All(MachineDrawing.Of(program, profile.Drawing).Layers, l => Assert.Matches(
                    new Regex("^((OUTLINE|CUTOUT)(_DEEP_[0-9]+)?|(IN|OUT)SIDE_(BORE|POCKET)_[0-9]+_(THRU|(DEEP|SINK)_[0-9]+)|(IN|OUT)SIDE_(MARK|NAME|SCORE)|TAB_DEEP_[0-9]+|BETWEEN_TABS_[0-9]+_THRU|PIN_[0-9]+_THRU|EDGE_[A-Z]+(_[0-9]+_DEEP_[0-9]+)?|REFERENCE|SCALE_[0-9]+|DIMENSION|NOTES|(OUTLINE|CUTOUT)_PATH_[0-9]+(_DEEP_[0-9]+)?|(IN|OUT)SIDE_PATH_[0-9]+_(THRU|DEEP_[0-9]+))$"), l.Name));
    }

    private static IEnumerable<string> Names(Machine machine, MachineLayers layers, params Feature[] features) =>
        MachineDrawing.Of(Machines.PlanOf(Plain(400, 200, features), machine).Programs[0], new MachineDrawingSettings { Layers = layers, ScaleSquare = 100, HasEdgeViews = true }).Layers.Select(l => l.Name);
}
