using CsCheck;
using ShopDrawings.Kernel;
using Size = ShopDrawings.Kernel.Size;

namespace ShopDrawings.Tests.Cabinet;

public class CarcassTests
{
    // Worked by hand from the fixture's numbers: 600 × 720 × 300 outside, 18.1 mm carcass, 6.3 mm back in an 8 mm groove.
    [Theory]
    [InlineData("left-side", 720, 300)]
    [InlineData("right-side", 720, 300)]
    [InlineData("bottom", 563.8, 300)]          // 600 - 2 × 18.1
    [InlineData("top", 563.8, 300)]
    [InlineData("shelf-1", 563.8, 263.4)]       // 300 - 10 - (6.3 + 0.3) - 20
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
    [InlineData("left-side/shelf-1", 370.95, new[] { 70, 151.7, 233.4 })]
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
        RandomCarcass.Any.Sample(carcass =>
        {
            var assembly = Fixtures.DesignOf(carcass.Text).Assembly;
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
                    Assert.True(((fastener.Tip - fastener.Head) * (1 / joint.Screw.Length.Value) - into).Length <= 1e-9);
                }
            }
        }, iter: 400);
    }

    [Fact]
    public void No_panel_overlaps_and_no_bore_leaves_its_panel() => RandomCarcass.Any.Sample(carcass =>
    {
        var findings = Shop.Check(Fixtures.DesignOf(carcass.Text));

        Assert.Empty(findings.Select(f => f.Message));
    }, iter: 300);

    [Fact]
    public void Every_size_recomputes_from_its_derivation() => RandomCarcass.Any.Sample(carcass =>
    {
        foreach (var panel in Fixtures.DesignOf(carcass.Text).Assembly.Panels)
            foreach (var size in panel.Sizes)
            {
                Assert.Equal(size.Value, size.Recomputed(), 1e-9);
                Assert.All(Leaves(size), leaf => Assert.True(leaf.Operation is Operation.Given or Operation.Default or Operation.Constant));
            }
    }, iter: 100);

    [Fact]
    public void Sizes_given_by_the_user_lead_back_to_their_line()
    {
        var side = Fixtures.DesignOf(new RandomCarcass(600, 700, 300, 18, "none", 3, 0, 0, [], false).Text).Assembly.Panel("left-side");

        var given = Leaves(side.Length).Single();

        Assert.Equal((Operation.Given, "test.yaml(8,11)"), (given.Operation, given.Source.ToString()));
    }

    [Fact]
    public void Left_and_right_are_mirror_images() => RandomCarcass.Any.Sample(carcass =>
    {
        var assembly = Fixtures.DesignOf(carcass.Text).Assembly;
        Point3 Mirror(Point3 p) => p with { X = carcass.Width - p.X };

        var left = Ends(assembly.Panel("left-side")).Select(Mirror);
        var right = Ends(assembly.Panel("right-side"));

        Assert.Equal(Keys(right), Keys(left));
    }, iter: 200);

    [Fact]
    public void Inch_and_millimetre_files_of_one_cabinet_agree() => RandomCarcass.Any.Sample(carcass =>
    {
        var (metric, inch) = (Fixtures.DesignOf(carcass.Text).Assembly, Fixtures.DesignOf(carcass.TextInInches).Assembly);

        Assert.Equal(metric.Panels.Select(p => p.Id), inch.Panels.Select(p => p.Id));
        foreach (var (a, b) in metric.Panels.Zip(inch.Panels))
            foreach (var (x, y) in a.Sizes.Zip(b.Sizes)) Assert.Equal(x.Value, y.Value, 1e-6);
    }, iter: 200);

    [Fact]
    public void Another_shelf_renames_and_moves_nothing_else()
    {
        var one = new RandomCarcass(600, 900, 300, 18, "groove", 6.35, 9.5, 0, [400], false);

        var before = Fixtures.DesignOf(one.Text).Assembly;
        var after = Fixtures.DesignOf((one with { Tops = [400, 650] }).Text).Assembly;

        Assert.Equal(before.Panels.Select(p => p.Id), after.Panels.Select(p => p.Id).Where(id => id != "shelf-2"));
        foreach (var id in new[] { "bottom", "top", "shelf-1", "back" })
            Assert.Equal(Keys(Ends(before.Panel(id))), Keys(Ends(after.Panel(id))));
    }

    [Fact]
    public void Even_shelves_leave_equal_clear_heights() => RandomCarcass.Any.Where(c => c.Even > 0).Sample(carcass =>
    {
        var assembly = Fixtures.DesignOf(carcass.Text).Assembly;
        var levels = assembly.Panels.Where(p => p.Placement!.Inwards.Axis() == 2).Select(p => p.Placement!.ToAssembly(p.Box)).OrderBy(b => b.Min.Z).ToList();

        var gaps = levels.Zip(levels.Skip(1), (a, b) => b.Min.Z - a.Max.Z).ToList();

        Assert.All(gaps, g => Assert.Equal(gaps[0], g, 1e-9));
    }, iter: 100);

    // The volumes of the panels, with no back, add up to outside less inside.
    [Fact]
    public void Volumes_add_up() => RandomCarcass.Any.Where(c => c.Back == "none").Sample(carcass =>
    {
        var assembly = Fixtures.DesignOf(carcass.Text).Assembly;
        var shelves = assembly.Panels.Count(p => p.Id.StartsWith("shelf", StringComparison.Ordinal));

        var expected = carcass.Depth * (carcass.Width * carcass.Height - (carcass.Width - 2 * carcass.Board) * (carcass.Height - (2 + shelves) * carcass.Board));

        Assert.Equal(1, assembly.Panels.Sum(p => p.Box.Volume) / expected, 1e-9);
    }, iter: 100);

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
