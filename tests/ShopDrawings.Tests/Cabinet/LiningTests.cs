using System.Globalization;
using CsCheck;
using ShopDrawings.Kernel;

namespace ShopDrawings.Tests.Cabinet;

/// <summary>Linings cut to clear what is fixed in their bay: worked by hand, and sampled point by point on random cabinets.</summary>
public class LiningTests
{
    private const string Boards = "project: p\nboards:\n  main: {kind: melamine, thickness: 16}\n  sheet: {kind: hardboard, thickness: 6}\n";

    private static Assembly Build(string cabinet, string more = "") => Fixtures.DesignOf(Boards + more + "cabinet: {board: main, " + cabinet + "}\n").Assembly;

    private static (double, double, double, double) Plan(Assembly assembly, string id) =>
        Placed(assembly.Panel(id)) is var box ? (box.Min.Y, box.Max.Y, box.Min.Z, box.Max.Z) : default;

    private static Box3 Placed(Panel panel) => panel.Placement!.ToAssembly(panel.Box);

    // Inside from 16 to 684. The shelf stands from 334 to 350, with 1 mm free on either side of it.
    [Fact]
    public void Lining_is_cut_in_two_at_a_fixed_shelf()
    {
        var assembly = Build("width: 600, height: 700, depth: 300, shelves: [{top: 350}], lining: {board: sheet, faces: [left, right]}");

        foreach (var side in new[] { "left", "right" })
        {
            Assert.Equal((0, 300, 16, 333), Plan(assembly, $"{side}-lining-1"));
            Assert.Equal((0, 300, 351, 684), Plan(assembly, $"{side}-lining-2"));
            Assert.True(assembly.Panel($"{side}-lining-1").IsRectangular);
        }

        Assert.Equal(8, assembly.Panels.Length - 1);
    }

    // The slide lies from 3 to 453 behind the front, its middle 16 + 10 + 35 = 61 high: 36.5 to 85.5 with 2 mm on all sides. The 1 mm before it goes.
    [Fact]
    public void Slide_stands_in_a_slot_open_to_the_front()
    {
        var lining = Build("width: 600, height: 700, depth: 520, sliding-shelf: {slide: side-450}, lining: {board: sheet, faces: [left, right]}").Panel("left-lining");

        Assert.Equal((0, 520, 16, 684), Placed(lining) is var box ? (box.Min.Y, box.Max.Y, box.Min.Z, box.Max.Z) : default);
        Assert.Equal(520 * 668 - 455 * 49, lining.Outline.Area, 1e-6);
        Assert.Equal(
            ["0,16", "0,36.5", "0,684", "0,85.5", "455,36.5", "455,85.5", "520,16", "520,684"],
            lining.Outline.Segments.Select(s => lining.Placement!.ToAssembly(new Point3(s.Start.X, s.Start.Y, 0)))
                .Select(p => string.Create(CultureInfo.InvariantCulture, $"{Math.Round(p.Y, 6)},{Math.Round(p.Z, 6)}")).Order(StringComparer.Ordinal));
    }

    // Set back 20 mm, 18 mm stay before the slot: 18 to 472 behind the front. That far behind it is a hole.
    [Fact]
    public void Slide_far_enough_behind_the_front_stands_in_a_hole()
    {
        var lining = Build("width: 600, height: 700, depth: 560, sliding-shelf: {slide: side-450, set-back: 20}, lining: {board: sheet, faces: [left, right]}").Panel("right-lining");

        var hole = Assert.Single(lining.Features.OfType<CutOut>());
        Assert.True(lining.IsRectangular);
        Assert.Equal("right-slide", hole.Origin);
        Assert.Equal(454 * 49, hole.Outline.Area, 1e-6);
        var corners = hole.Outline.Segments.Select(s => lining.Placement!.ToAssembly(new Point3(s.Start.X, s.Start.Y, 0))).ToList();
        Assert.Equal((18, 472), (corners.Min(c => c.Y), corners.Max(c => c.Y)));
        Assert.Equal([454, 49], new[] { Math.Abs(hole.Given[1].Value - hole.Given[0].Value), Math.Abs(hole.Given[3].Value - hole.Given[2].Value) }.OrderDescending());
    }

    // The shelf begins 13 or 12 mm behind the front: with 1 mm before it 12 or 11 mm of the lining are left there.
    [Theory]
    [InlineData(13, 1)]
    [InlineData(12, 2)]
    public void Strip_narrower_than_12_mm_is_cut_through_to_the_edge(double inset, int pieces)
    {
        var assembly = Build($"width: 600, height: 700, depth: 300, shelves: [{{top: 350, front-inset: {inset}}}], lining: {{board: sheet, faces: [left]}}");

        Assert.Equal(pieces, assembly.Panels.Count(p => p.Id.StartsWith("left-lining", StringComparison.Ordinal)));
    }

    // Inside from 16. Between the floor and the room under the shelf 20 or 19.5 mm are left.
    [Theory]
    [InlineData(53, 2)]
    [InlineData(52.5, 1)]
    public void Piece_lower_than_20_mm_is_left_out(double top, int pieces)
    {
        var assembly = Build(string.Create(CultureInfo.InvariantCulture, $"width: 600, height: 700, depth: 300, shelves: [{{top: {top}}}], lining: {{board: sheet, faces: [left]}}"));

        Assert.Equal(pieces, assembly.Panels.Count(p => p.Id.StartsWith("left-lining", StringComparison.Ordinal)));
    }

    [Fact]
    public void Lining_of_which_nothing_is_left_is_a_mistake() => Assert.Contains(
        "leaves nothing of low/left-lining; leave that face out",
        Assert.Single(Fixtures.Mistakes(Boards + "cabinet: {board: main, width: 600, height: 700, depth: 300, stacked: [{name: low, height: 50, shelves: 1, lining: {board: sheet, faces: [left]}}, {}]}\n")).Message,
        StringComparison.Ordinal);

    [Fact]
    public void Screws_hold_rectangular_pieces_where_they_touch_and_no_others()
    {
        const string Short = "screws: {short: {diameter: 3.5, length: 18, head: 7, clearance: 4, edge-pilot: 2.5}}\n";
        var assembly = Build("width: 600, height: 900, depth: 400, back: {board: main, fit: within-sides}, shelves: 1, doors: {board: main, hang: left}, lining: {board: sheet, faces: [left, right, back], screw: short}", Short);
        var grooved = Build("width: 600, height: 900, depth: 400, back: {board: sheet}, lining: {board: sheet, faces: [back], screw: short}", Short);

        Assert.Equal(
            ["back-lining/back", "right-lining-1/right-side", "right-lining-2/right-side"],
            assembly.Joints.Where(j => j.Through.Contains("lining", StringComparison.Ordinal)).Select(j => j.Id).Order(StringComparer.Ordinal));
        Assert.DoesNotContain(grooved.Joints, j => j.Through.Contains("lining", StringComparison.Ordinal));
    }

    [Fact]
    public void Holes_go_on_through_the_piece_they_meet_and_not_through_a_slot()
    {
        var text = Boards +
            """
            cabinet: {board: main, width: 600, height: 700, depth: 520, sliding-shelf: {slide: side-450}, lining: {board: sheet, faces: [left]}}
            holes: [{panel: left-side, from: {front: 220, bottom: 61}, diameter: 10}, {panel: left-side, from: {front: 220, bottom: 400}, diameter: 10}]
            """;

        var bore = Assert.Single(Fixtures.DesignOf(text).Assembly.Panel("left-lining").Features.OfType<Bore>());
        Assert.Equal(10, bore.Diameter.Value);
    }

    [Fact]
    public void Linings_clear_everything_stay_in_their_bay_and_cover_all_else() => Lined.Sample(lined =>
    {
        var design = Fixtures.DesignOf(lined.Text);
        var assembly = design.Assembly;
        var linings = assembly.Panels.Where(p => p.Id.Contains("-lining", StringComparison.Ordinal)).ToList();
        var others = assembly.Panels.Except(linings).Select(p => (Box: Placed(p), Room: 1.0))
            .Concat(assembly.Hardware.SelectMany(h => h.Volumes.Select(v => (Box: assembly.Panel(h.Mounts[0].Panel).Placement!.ToAssembly(v), Room: 2.0)))).ToList();
        var random = new Random(lined.Seed);
        foreach (var (block, prefix) in lined.Sheets())
        {
            var (u, v, n) = block.Size.X <= 6 ? (1, 2, 0) : block.Size.Y <= 6 ? (2, 0, 1) : (0, 1, 2);
            var pieces = linings.Where(p => p.Id == prefix || p.Id.StartsWith(prefix + "-", StringComparison.Ordinal)).ToList();
            Assert.All(pieces, p => Assert.True(block.Contains(Placed(p)), p.Id));
            var shadows = others.Where(o => o.Box.Intersection(block) is not null)
                .Select(o => (Left: Of(o.Box.Min, u) - o.Room, Right: Of(o.Box.Max, u) + o.Room, Low: Of(o.Box.Min, v) - o.Room, High: Of(o.Box.Max, v) + o.Room)).ToList();
            for (var i = 0; i < 300; i++)
            {
                var (a, b) = (Between(random, Of(block.Min, u), Of(block.Max, u)), Between(random, Of(block.Min, v), Of(block.Max, v)));
                var point = Point(u, a, v, b, n, (Of(block.Min, n) + Of(block.Max, n)) / 2);
                var isThere = pieces.Count(p => Holds(p, point));
                Assert.InRange(isThere, 0, 1);
                if (shadows.Exists(s => a > s.Left && a < s.Right && b > s.Low && b < s.High)) Assert.True(isThere == 0, $"{prefix} is in the way at {point}");
                else if (HasRoom(shadows, block, u, v, a, b, 20)) Assert.True(isThere == 1, $"{prefix} is missing at {point}");
                else if (!HasRoom(shadows, block, u, v, a, b, 12)) Assert.True(isThere == 0, $"{prefix} has a sliver at {point}");
            }
        }

        Assert.Empty(Shop.Check(design).Where(f => f.Rule is "panels-overlap" or "hardware-fits" or "feature-in-panel" && f.Panels.Any(p => p.Contains("lining", StringComparison.Ordinal))).Select(f => f.Message));
        Assert.All(linings.SelectMany(p => p.Sizes), s => Assert.Equal(s.Recomputed(), s.Value, 1e-9));
    }, iter: 120);

    private static double Of(Point3 point, int axis) => axis == 0 ? point.X : axis == 1 ? point.Y : point.Z;

    private static double Between(Random random, double from, double to) => from + random.NextDouble() * (to - from);

    private static Point3 Point(int u, double a, int v, double b, int n, double c)
    {
        double On(int axis) => axis == u ? a : axis == v ? b : axis == n ? c : 0;
        return new Point3(On(0), On(1), On(2));
    }

    private static bool Holds(Panel panel, Point3 point)
    {
        var p = panel.Placement!.ToPanel(point);
        return p.X > 0 && p.Y > 0 && p.X < panel.Length.Value && p.Y < panel.Width.Value && panel.Outline.Contains(new Point2(p.X, p.Y))
            && !panel.Features.OfType<CutOut>().Any(c => c.Outline.Contains(new Point2(p.X, p.Y)));
    }

    // Whether a square of a side over a point misses all shadows. If one does, so does one pushed to the left and down as far as it goes.
    private static bool HasRoom(List<(double Left, double Right, double Low, double High)> shadows, Box3 block, int u, int v, double a, double b, double side)
    {
        var lefts = shadows.Select(s => s.Right).Append(Of(block.Min, u)).Append(a - side + 1e-9).Where(x => x <= a && x > a - side && x >= Of(block.Min, u) - 1e-9 && x + side <= Of(block.Max, u) + 1e-7);
        var lows = shadows.Select(s => s.High).Append(Of(block.Min, v)).Append(b - side + 1e-9).Where(y => y <= b && y > b - side && y >= Of(block.Min, v) - 1e-9 && y + side <= Of(block.Max, v) + 1e-7).ToList();
        return lefts.Any(x => lows.Exists(y => !shadows.Exists(s => x + side > s.Left + 1e-7 && x < s.Right - 1e-7 && y + side > s.Low + 1e-7 && y < s.High - 1e-7)));
    }

    // A cabinet of 16 mm board with a back, one bay above another, both lined on all sides with 6 mm.
    private sealed record LinedCabinet(double Width, double Height, double Depth, double Low, string Doors, double[] Tops, double Inset, double SetBack, int Seed)
    {
        public string Text
        {
            get
            {
                const string Faces = "lining: {board: sheet, faces: [left, right, back, bottom, top]}";
                var shelves = string.Join(", ", Tops.Select(t => string.Create(CultureInfo.InvariantCulture, $"{{top: {Low + 32 + t}, front-inset: {Inset}}}")));
                var hung = Doors == "none" ? "" : $"doors: {{board: main, hang: {Doors}}}, ";
                return string.Create(CultureInfo.InvariantCulture,
                    $"{Boards}cabinet: {{board: main, width: {Width}, height: {Height}, depth: {Depth}, back: {{board: main, fit: within-sides}}, {hung}stacked: [{{name: low, height: {Low}, sliding-shelf: {{slide: side-450, set-back: {SetBack}}}, {Faces}}}, {{name: up, shelves: [{shelves}], {Faces}}}]}}\n");
            }
        }

        // The sheets before anything is cut, straight from the sizes above.
        public IEnumerable<(Box3 Block, string Id)> Sheets()
        {
            var deep = Depth - 16 - 6;
            foreach (var (name, from, to) in new[] { ("low", 16, 16 + Low), ("up", 32 + Low, Height - 16) })
            {
                yield return (new(new(16, 0, from + 6), new(22, deep, to - 6)), $"{name}/left-lining");
                yield return (new(new(Width - 22, 0, from + 6), new(Width - 16, deep, to - 6)), $"{name}/right-lining");
                yield return (new(new(16, 0, from), new(Width - 16, deep, from + 6)), $"{name}/bottom-lining");
                yield return (new(new(16, 0, to - 6), new(Width - 16, deep, to)), $"{name}/top-lining");
                yield return (new(new(16, deep, from), new(Width - 16, deep + 6, to)), $"{name}/back-lining");
            }
        }
    }

    private static readonly Gen<LinedCabinet> Lined =
        from width in Gen.Int[4000, 9000]
        from low in Gen.Int[1600, 5000]
        from up in Gen.Int[3000, 7000]
        from depth in Gen.Int[5800, 7000]
        from doors in Gen.Int[0, 3]
        from tops in Gen.Int[30, 250].Array[0, 3]
        from inset in Gen.Int[0, 40]
        from setBack in Gen.Int[0, 30]
        from seed in Gen.Int[0, 1_000_000]
        let heights = tops.Distinct().Order().Select(t => (double)t).ToArray()
        let apart = heights.Where((t, i) => i == 0 || t - heights[i - 1] > 30).ToArray()
        select new LinedCabinet(width / 10.0, low / 10.0 + up / 10.0 + 48, depth / 10.0, low / 10.0, new[] { "none", "left", "right", "pair" }[doors], apart, inset, setBack, seed);
}
