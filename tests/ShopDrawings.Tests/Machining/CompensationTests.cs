using CsCheck;
using ShopDrawings.Drafting;
using ShopDrawings.Dxf;
using ShopDrawings.Kernel;
using static ShopDrawings.Tests.Machining.MachineFiles;
using static ShopDrawings.Tests.Machining.RandomPanels;

namespace ShopDrawings.Tests.Machining;

/// <summary>Whether the tool is taken off once, on the right side, measured on files that an outside reader read.</summary>
public class CompensationTests
{
    private const double Agreement = 1e-4;

    private static Machine Laser(double kerf) =>
        new() { Name = "laser", Kind = MachineKind.Laser, Paths = CutLines.ToolCentre, Tools = [new Tool(ToolKind.Beam, kerf), new Tool(ToolKind.Engraver, 0.1)] };

    [Fact]
    public void Laser_runs_half_its_kerf_outside_parts_and_inside_holes()
    {
        var part = Plain(100, 60, Through(50, 30, 35), Opening(Contour.Rectangle(5, 5, 25, 15)));

        var lines = Read(Machines.PlanOf(part, Laser(0.2)).Programs)[0];

        Assert.Equal((100.2, 60.2), SizeOf(lines.Single(l => l.Layer == "OUTLINE_PATH_20")));
        var inner = lines.Where(l => l.Layer == "CUTOUT_PATH_20").Select(SizeOf).Order().ToList();
        Assert.Equal([(19.8, 9.8), (34.8, 34.8)], inner);
    }

    // Into a corner that is freed the cutter goes until it touches it: 3.175 ÷ √2 = 2.24506 from either wall.
    [Theory]
    [InlineData(DrawingUnit.Millimetre, InnerCorners.Round, 193.65, 73.65)]
    [InlineData(DrawingUnit.Inch, InnerCorners.Round, 193.65, 73.65)]
    [InlineData(DrawingUnit.Millimetre, InnerCorners.Joinery, 195.5099, 75.5099)]
    [InlineData(DrawingUnit.Inch, InnerCorners.Joinery, 195.5099, 75.5099)]
    public void Router_runs_half_its_cutter_outside_parts_and_inside_pockets(DrawingUnit unit, InnerCorners corners, double length, double width)
    {
        var part = Plain(568, 400, Through(100, 100, 80), Groove(300, 200, 500, 200, 80, 6), Opening(Contour.Rectangle(200, 20, 280, 120)));

        var lines = Read(Machines.PlanOf(part, Machines.Milling(6.35) with { Corners = corners }).Programs, unit)[0];

        Assert.Equal((574.35, 406.35), SizeOf(lines.Single(l => l.Layer == "OUTLINE_PATH_635")));
        Assert.Equal((73.65, 93.65), SizeOf(lines.Single(l => l.Layer == "CUTOUT_PATH_635")));
        Assert.Equal((73.65, 73.65), lines.Where(l => l.Layer == "INSIDE_PATH_635_THRU").Select(SizeOf).Max());
        Assert.Equal((length, width), lines.Where(l => l.Layer == "INSIDE_PATH_635_DEEP_600").Select(SizeOf).Max());
    }

    [Fact]
    public void Finished_file_holds_the_edges_and_no_tool() => AnyBatch(panels =>
    {
        // A cutter wider than a groove makes nothing of it, and its edge stays as it is.
        const double Cutter = 3;
        var machine = Machines.Milling(Cutter) with { Paths = CutLines.Finished, SecondFace = SecondFace.None, Corners = InnerCorners.Round };
        foreach (var (panel, lines) in panels.Zip(Read(panels.Select(p => Machines.ProgramOf(p, machine)))))
        {
            Assert.DoesNotContain(lines, l => l.Layer.Contains("PATH", StringComparison.Ordinal));
            Assert.All(Edges(panel), edge => Assert.Contains(lines, l => edge.All(p => Distance([l], p) < 0.01) && l.Points(3).All(p => ToPolygon(edge, p) < 0.01)));
            Assert.All(panel.Features.OfType<Groove>().Where(g => g.Face == Surface.Inside), g => Assert.Contains(lines, l => l.IsClosed && IsGroove(panel, g.Outline, l, Cutter)));
        }
    });

    [Fact]
    public void Way_along_an_edge_keeps_the_radius_and_touches() => AnyBatch(panels =>
    {
        const double Radius = 3;
        var machine = Machines.Milling(2 * Radius) with { SecondFace = SecondFace.None };
        foreach (var (panel, lines) in panels.Zip(Read(panels.Select(p => Machines.ProgramOf(p, machine)))))
        {
            var outline = lines.Where(l => l.Layer == "OUTLINE_PATH_600").ToList();
            Touches(panel.CutOutline, outline);
            var openings = lines.Where(l => l.Layer == "CUTOUT_PATH_600").ToList();
            foreach (var opening in panel.Features.OfType<CutOut>()) Touches(opening.Outline, openings);
        }

        void Touches(Contour edge, List<Line> ways)
        {
            var own = ways.Where(w => w.Points(2).All(p => Math.Abs(Nearest(edge, p) - Radius) < 1.5 * Radius)).ToList();
            Assert.NotEmpty(own);
            Assert.All(own.SelectMany(w => w.Points(4)), p => Assert.True(Nearest(edge, p) >= Radius - Agreement, $"{p}"));
            // Where the edge is straight or round, not in its corners.
            Assert.All(edge.Segments.Select(s => s.Middle), p => Assert.InRange(Distance(own, p), Radius - 0.01, Radius + 0.01));
        }
    });

    [Fact]
    public void Cutter_stays_within_its_pocket_and_leaves_nothing_in_it_but_round_corners() => AnyBatch(panels => Clears(panels, InnerCorners.Round), 2);

    [Fact]
    public void Cutter_leaves_nothing_where_corners_are_freed_and_its_middle_stays_within() => AnyBatch(panels => Clears(panels, InnerCorners.Joinery), 2);

    [Theory]
    [InlineData(InnerCorners.Round)]
    [InlineData(InnerCorners.Joinery)]
    public void Wall_thinner_than_paper_beside_a_groove_is_milled_away(InnerCorners corners)
    {
        OutsideProgram.DemandPython("ezdxf");
        // 65 − 55.749 − 18.5 ÷ 2 = 0.001 mm of it would stay.
        var part = Plain(240, 65, Groove(0, 55.749, 240, 55.749, 18.5, 6, Surface.Outside));
        Clears([part, part], corners);
    }

    private static void Clears(Panel[] panels, InnerCorners corners)
    {
        var random = new Random(7);
        foreach (var (diameter, both) in new[] { (6.0, panels[..(panels.Length / 2)]), (3.0, panels[(panels.Length / 2)..]) })
        {
            // The file has the ways on a layer for each depth; here a file for each pocket.
            var pockets = both.SelectMany(p => p.Features.Where(f => IsMilled(f, diameter)).Select(f => (Panel: p, Feature: f))).ToList();
            var files = Read(pockets.Select(p => Machines.ProgramOf(Bare(p.Panel, p.Feature), Machines.Milling(diameter) with { FaceUp = FaceOf(p.Feature), Corners = corners })));
            foreach (var ((panel, feature), lines) in pockets.Zip(files))
            {
                var ways = lines.Where(l => l.Layer.Contains("SIDE_PATH_", StringComparison.Ordinal)).ToList();
                Assert.NotEmpty(ways);
                var isTurned = FaceOf(feature) == FaceUp.Outside;
                var pocket = Pocket.Of(panel, feature, isTurned);
                var least = corners == InnerCorners.Round || pocket.IsRound ? diameter / 2 : 0;
                Assert.All(ways.SelectMany(w => w.Points(5)), p => Assert.True(pocket.Clearance(p) >= least - Agreement, $"{feature}: {p} is {pocket.Clearance(p)} from the edge"));
                Assert.True(ways.SelectMany(w => w.Points(5)).Min(pocket.Clearance) <= diameter / 2 + Agreement, $"{feature}: no way touches the edge");
                for (var i = 0; i < 100; i++)
                {
                    var p = pocket.Within(random);
                    if (corners == InnerCorners.Round && pocket.CornerDistance(p) < diameter / 2 + 0.01) continue;
                    Assert.True(Distance(ways, p) <= diameter / 2 + 0.005, $"{feature}: {p} stays, {Distance(ways, p)} from the nearest way");
                }
            }
        }
    }

    // Within the panel the groove's own edge; where a side or an end of it runs out, that goes on beyond by the cutter at least, between the others.
    private static bool IsGroove(Panel panel, Contour groove, Line line, double cutter)
    {
        bool IsWithin(Point2 p) => new[] { panel.Outline, panel.CutOutline }.All(o => o.Contains(p) && o.DistanceTo(p) > 0.02);
        // An end runs out with its middle, a side as a whole.
        bool RunsOut(Segment s) => !IsWithin(s.Middle) && (s.Length < groove.Segments.Max(g => g.Length) - 1e-6 || !(IsWithin(s.Start) || IsWithin(s.End)));
        var walls = groove.Segments.Where(s => !RunsOut(s)).ToList();
        var open = groove.Segments.Where(RunsOut).ToList();
        double ToCarrier(Segment s, Point2 p) => Math.Abs((s.End - s.Start).Cross(p - s.Start)) / s.Length;
        return walls.All(s => Geometry.Samples.Along(s, 4).Where(IsWithin).All(p => Distance([line], p) < 0.01))
            && line.Points(4).Where(IsWithin).All(p => open.Count == 0 ? walls.Min(s => ToChord(s.Start, s.End, p)) < 0.01 : walls.Any(s => ToCarrier(s, p) < 0.01))
            && open.All(s => Distance([line], s.Middle) > Math.Min(cutter, groove.Segments.Min(w => w.Length) / 2) - 0.01 && Geometry.Samples.Flattened(line.Segments, 4) is var outline && Contour.FromSegments(outline.Select((p, i) => new Segment(p, outline[(i + 1) % outline.Count]))).Contains(s.Middle));
    }

    private static bool IsMilled(Feature feature, double cutter) => feature switch
    {
        Bore { Use: not BoreUse.Countersink } b => b.Surface.IsFace() && b.Diameter.Value > cutter + 0.1,
        Groove g => g.Width.Value >= cutter && g.From.Point.DistanceTo(g.To.Point) > 2 * cutter,
        _ => false,
    };

    private static FaceUp FaceOf(Feature feature) => feature is Bore { Surface: Surface.Outside, Depth: not null } or Groove { Face: Surface.Outside } ? FaceUp.Outside : FaceUp.Inside;

    private static Panel Bare(Panel panel, Feature feature) => Panel.Rectangular(panel.Id, panel.Board, panel.Length, panel.Width).WithBands(panel.Bands).WithFeatures([feature]);

    private static void AnyBatch(Action<Panel[]> check, int iterations = 2)
    {
        OutsideProgram.DemandPython("ezdxf");
        Any.Where(p => p.Features.OfType<CutOut>().All(c => c.Outline.Bounds.Max.X < p.Length.Value && c.Outline.Bounds.Max.Y < p.Width.Value)).Array[12].Sample(check, iter: Fuzz.Iterations(iterations), threads: 1);
    }

    // Every outline but those of grooves a finished file must hold, as points.
    private static IEnumerable<List<Point2>> Edges(Panel panel) =>
        new[] { panel.CutOutline }.Concat(panel.Features.OfType<CutOut>().Select(c => c.Outline))
            .Concat(panel.Features.OfType<Bore>().Where(b => b is { Surface: Surface.Inside } or { Depth: null, Surface: Surface.Outside }).Select(b => Contour.Circle(b.At.Point, b.Diameter.Value / 2)))
            .Select(c => Geometry.Samples.Flattened(c.Segments, 6));

    private static double Nearest(Contour edge, Point2 p) => Distance([new Line("", "", edge.Segments, true)], p);

    private static double ToPolygon(List<Point2> polygon, Point2 p) => polygon.Zip(polygon.Skip(1).Append(polygon[0])).Min(e => ToChord(e.First, e.Second, p));

    private static (double Width, double Height) SizeOf(Line line) => (Math.Round(line.Box.Width, 4), Math.Round(line.Box.Height, 4));

    /// <summary>A round pocket, or a strip whose ends and sides may be open, as plain arithmetic.</summary>
    private sealed record Pocket(Point2 From, Point2 To, double Width, bool IsRound, bool IsOpenFrom, bool IsOpenTo, bool IsOpenLeft, bool IsOpenRight)
    {
        public static Pocket Of(Panel panel, Feature feature, bool isTurned)
        {
            // Turned over about the length.
            Point2 Lie(Point2 p) => isTurned ? p with { Y = panel.Width.Value - p.Y } : p;
            if (feature is Bore bore) return new(Lie(bore.At.Point), Lie(bore.At.Point), bore.Diameter.Value, true, false, false, false, false);
            var groove = (Groove)feature;
            // What is thinner than paper, 0.02 mm, is no wall.
            bool IsOpen(Point2 p) => new[] { panel.Outline, panel.CutOutline }.Any(o => !o.Contains(p) || o.DistanceTo(p) <= 0.02);
            var (from, to) = (groove.From.Point, groove.To.Point);
            var (middle, side) = ((from + to) * 0.5, (to - from).Left * (groove.Width.Value / 2 / from.DistanceTo(to)));
            // Turned over, left and right change places.
            var (left, right) = (IsOpen(middle + side), IsOpen(middle - side));
            return new(Lie(from), Lie(to), groove.Width.Value, false, IsOpen(from), IsOpen(to), isTurned ? right : left, isTurned ? left : right);
        }

        private Point2 Along => (To - From) * (1 / (To - From).Length);

        // From the edge inwards; an open end or side has none.
        public double Clearance(Point2 p)
        {
            if (IsRound) return Width / 2 - p.DistanceTo(From);
            var (u, v) = ((p - From).Dot(Along), Along.Cross(p - From));
            var across = Math.Min(IsOpenLeft ? double.PositiveInfinity : Width / 2 - v, IsOpenRight ? double.PositiveInfinity : Width / 2 + v);
            return Math.Min(across, Math.Min(IsOpenFrom ? double.PositiveInfinity : u, IsOpenTo ? double.PositiveInfinity : (To - From).Length - u));
        }

        public Point2 Within(Random random)
        {
            if (IsRound) return Geometry.Samples.OnCircle(From, Width / 2 * Math.Sqrt(random.NextDouble()), random.NextDouble() * 7);
            return From + (To - From) * random.NextDouble() + Along.Left * (Width * (random.NextDouble() - 0.5));
        }

        // From the nearest corner that stays round.
        public double CornerDistance(Point2 p)
        {
            if (IsRound) return double.PositiveInfinity;
            var side = Along.Left * (Width / 2);
            IEnumerable<Point2> corners = [.. IsOpenFrom ? [] : new[] { From + side, From - side }, .. IsOpenTo ? [] : new[] { To + side, To - side }];
            return corners.Select(p.DistanceTo).DefaultIfEmpty(double.PositiveInfinity).Min();
        }
    }
}
