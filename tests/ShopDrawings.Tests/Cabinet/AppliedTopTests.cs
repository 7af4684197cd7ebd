using System.Globalization;
using CsCheck;
using ShopDrawings.Kernel;

namespace ShopDrawings.Tests.Cabinet;

/// <summary>Bought pieces over the top, in one and in two. Numbers worked by hand in mm.</summary>
public class AppliedTopTests
{
    private const string Boards = "project: p\nboards: {main: {kind: melamine, thickness: 18}, solid: {kind: plywood, thickness: 38}}\n";

    private static Design DesignOf(double depth, string top) => Fixtures.DesignOf(FormattableString.Invariant($"{Boards}cabinet: {{width: 900, height: 720, depth: {depth}, board: main, applied-top: {{board: solid, {top}}}}}\n"));

    private static string Numbers(IEnumerable<double> numbers) => string.Join(' ', numbers.Select(n => Math.Round(n, 3) + 0.0).Select(n => n.ToString(CultureInfo.InvariantCulture)));

    private static Box3 Box(Assembly assembly, string id) => assembly.Panel(id).Placement!.ToAssembly(assembly.Panel(id).Box);

    // Left, right, front and rear of each piece.
    [Theory]
    [InlineData("overhang: {front: 20, sides: 10, back: 5}", "-10 910 -20 605")]
    [InlineData("size: {width: 960, depth: 640}, overhang: {front: 20}", "-30 930 -20 620")]
    [InlineData("pieces: 2, overhang: {front: 20, sides: 10}", "-10 450 -20 600", "450 910 -20 600")]
    [InlineData("pieces: 2, joint-line: 400", "0 400 0 600", "400 900 0 600")]
    [InlineData("pieces: 2, size: {width: 480, depth: 640}, overhang: {front: 20}", "-30 450 -20 620", "450 930 -20 620")]
    [InlineData("pieces: 2, size: {width: 480}, joint-line: 440", "-40 440 0 600", "440 920 0 600")]
    public void Pieces_lie_where_a_hand_calculation_puts_them(string top, params string[] pieces)
    {
        var design = DesignOf(600, top);

        var laid = design.Assembly.Panels.Where(p => p.Id.StartsWith("applied-top", StringComparison.Ordinal)).Select(p => Box(design.Assembly, p.Id)).ToList();
        Assert.Equal(pieces, laid.Select(b => Numbers([b.Min.X, b.Max.X, b.Min.Y, b.Max.Y])));
        Assert.All(laid, b => Assert.Equal((720, 758), (b.Min.Z, b.Max.Z)));
        Assert.Empty(Shop.Check(design).Select(f => f.Message));
    }

    // The top reaches from 18 to 882. The left piece shares 382 mm of it and the right one 482. On 600 mm depth the rows run to the back, 50 mm
    // from both ends and in 500 ÷ 150 = 4 gaps; on 300 mm they run across, in 282 ÷ 150 = 2 and 382 ÷ 150 = 3 gaps.
    [Theory]
    [InlineData(600, "applied-top-1", "68 350", "50 175 300 425 550")]
    [InlineData(600, "applied-top-2", "450 832", "50 175 300 425 550")]
    [InlineData(300, "applied-top-1", "68 209 350", "50 250")]
    [InlineData(300, "applied-top-2", "450 577.333 704.667 832", "50 250")]
    public void Each_piece_has_screws_on_its_own_part_of_the_top(double depth, string piece, string across, string along)
    {
        var design = DesignOf(depth, "pieces: 2, joint-line: 400");

        var tips = design.Assembly.Joints.Single(j => j.Receiving == piece).Fasteners.Select(f => f.Tip).ToList();
        Assert.Equal(across, Numbers(tips.Select(t => Math.Round(t.X, 6)).Distinct().Order()));
        Assert.Equal(along, Numbers(tips.Select(t => Math.Round(t.Y, 6)).Distinct().Order()));
        Assert.Equal(across.Split(' ').Length * along.Split(' ').Length, tips.Count);
    }

    [Theory]
    [InlineData("size: {width: 860}", "applied-top, 860 mm × 600 mm, leaves 20 mm at the left and 20 mm at the right of a carcass 900 mm × 600 mm open")]
    [InlineData("size: {depth: 590}, overhang: {front: 10}", "applied-top, 900 mm × 590 mm, leaves 20 mm at the back of a carcass 900 mm × 600 mm open")]
    [InlineData("size: {depth: 15}, overhang: {front: 20}", "applied-top, 900 mm × 15 mm, leaves 605 mm at the back of a carcass 900 mm × 600 mm open")]
    [InlineData("pieces: 2, joint-line: 500, size: {width: 480}", "applied-top-1 and applied-top-2, 960 mm × 600 mm, leave 20 mm at the left of a carcass 900 mm × 600 mm open")]
    public void Pieces_too_small_are_a_finding(string top, string message)
    {
        var finding = Assert.Single(Shop.Check(DesignOf(600, top)), f => f.Message.Contains("open", StringComparison.Ordinal));

        Assert.Equal(("hardware-fits", Severity.Error, message), (finding.Rule, finding.Severity, finding.Message));
        Assert.Contains("top", finding.Panels);
    }

    [Fact]
    public void Screws_hold_in_the_piece_above_them_and_come_through_none_unsaid()
    {
        Gen.Select(RandomCabinet.Any, Gen.Double[0.25, 0.75], Gen.Bool).Sample((cabinet, part, isInTwo) =>
        {
            var top = FormattableString.Invariant($"  applied-top: {{board: main, overhang: {{front: 15, sides: 10}}{(isInTwo ? $", pieces: 2, joint-line: {cabinet.Width * part}" : "")}}}\n");
            var design = Fixtures.DesignOf(cabinet.Text + top);
            var assembly = design.Assembly;
            var isWarned = Shop.Check(design).Any(f => f.Message.Contains("comes through applied-top", StringComparison.Ordinal));

            var joints = assembly.Joints.Where(j => j.Through == "top" && j.Receiving.StartsWith("applied-top", StringComparison.Ordinal)).ToList();
            Assert.Equal(isInTwo ? 2 : 1, joints.Count);
            foreach (var joint in joints)
                foreach (var fastener in joint.Fasteners)
                    foreach (var (point, panel) in new[] { (fastener.Tip, joint.Receiving), (fastener.Head, "top") })
                    {
                        var box = Box(assembly, panel);
                        Assert.InRange(point.X, box.Min.X + 10, box.Max.X - 10);
                        Assert.InRange(point.Y, box.Min.Y + 10, box.Max.Y - 10);
                        Assert.InRange(point.Z, box.Min.Z - 1e-9, box.Max.Z - (panel == "top" || isWarned ? 0 : 2));
                    }
        }, iter: 200);
    }
}
