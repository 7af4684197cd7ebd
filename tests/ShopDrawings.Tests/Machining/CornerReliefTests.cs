using CsCheck;
using ShopDrawings.Kernel;
using static ShopDrawings.Tests.Machining.RandomPanels;

namespace ShopDrawings.Tests.Machining;

/// <summary>Corners freed so that a sharp one fits, grooves that run out, and what holds small parts.</summary>
public class CornerReliefTests
{
    // How much wider in radius than the tool a bay is drawn.
    private const double Hair = 0.05;

    private static readonly Machine Relieving = Machines.Milling(6) with { Corners = InnerCorners.Relieved };

    [Fact]
    public void Right_corner_is_freed_by_a_bay_that_touches_it()
    {
        const double Radius = 3.175;
        var bays = CornerRelief.Of(Contour.Rectangle(0, 0, 80, 60), isOutside: false, Radius);

        Assert.Equal(4, bays.Length);
        var bay = bays.Single(b => b.Corner == new Point2(80, 60));
        Assert.Equal(80 - 2.245064, bay.Centre.X, 1e-6);
        Assert.Equal(60 - 2.245064, bay.Centre.Y, 1e-6);
        var arc = new Segment(bay.Start, bay.End, bay.Bulge);
        // A hair wider than the tool, and through the corner all the same: its middle lies a hair further in.
        Assert.Equal(Radius + Hair, arc.Radius, 1e-9);
        Assert.True(arc.Centre.DistanceTo(new(80 - 2.280420, 60 - 2.280420)) < 1e-6, $"{arc.Centre}");
        Assert.Equal(80 + 0.944580, arc.Bounds.Max.X, 1e-6);
        Assert.Equal((1.3151281, 2.245064, 0.929936), (CornerRelief.Residue(Radius), CornerRelief.FromWall(Radius), CornerRelief.IntoWall(Radius)), (a, b) => Math.Abs(a.Item1 - b.Item1) + Math.Abs(a.Item2 - b.Item2) + Math.Abs(a.Item3 - b.Item3) < 1e-6);
    }

    [Fact]
    public void Corner_of_any_angle_that_is_not_sharp_is_reached_and_nothing_beyond_its_bay() => Gen.Select(Gen.OneOf(Gen.Double[90, 155], Gen.Double[25, 89.9]), Gen.Double[1, 6], Gen.Bool).Sample((degrees, radius, isOutside) =>
    {
        // An opening with one corner of that angle, or an outline with a notch of it.
        var angle = degrees * Math.PI / 180;
        var (u, v) = (new Point2(Math.Cos(angle / 2), Math.Sin(angle / 2)), new Point2(Math.Cos(angle / 2), -Math.Sin(angle / 2)));
        var (a, b) = (u * 100, v * 100);
        var edge = isOutside
            ? Polygon((0, 0), (a.X, a.Y), (a.X, 200), (-100, 200), (-100, -200), (b.X, -200), (b.X, b.Y))
            : Polygon((0, 0), (b.X, b.Y), (a.X + 50, b.Y), (a.X + 50, a.Y), (a.X, a.Y));

        var found = CornerRelief.Of(edge, isOutside, radius).Where(y => y.Corner.Length < 1e-9).ToList();
        if (degrees < 90)
        {
            Assert.Empty(found);
            return;
        }

        var bay = Assert.Single(found);
        Assert.Equal(radius, bay.Centre.Length, 1e-9);
        Assert.Equal(0, bay.Centre.Y, 1e-9);
        var freed = CornerRelief.Freed(edge, [bay]);
        // Through the corner, which a square part fills; on the tool's side of the wanted edge all stays as it was.
        Assert.True(freed.DistanceTo(default) < 1e-6);
        var arc = freed.Segments.Single(s => !s.IsLine);
        Assert.Equal(radius + Hair, arc.Radius, 1e-6);
        Assert.True(arc.Centre.DistanceTo(bay.Centre * ((radius + Hair) / radius)) < 1e-6);
        Assert.Equal(isOutside, freed.Area < edge.Area);
    }, iter: Fuzz.Iterations(300));

    [Fact]
    public void Freed_edges_are_sound_and_square_parts_fit_in_them() => Any.Sample(panel =>
    {
        foreach (var program in Machines.PlanOf(panel, Relieving).Programs)
            foreach (var operation in program.Operations)
            {
                var (finished, paths, wanted) = operation switch
                {
                    ProfileOperation p => (p.Finished, p.Paths, p.IsOutside ? panel.CutOutline : null),
                    PocketOperation p => (p.Finished, p.Paths, null),
                    _ => (null, [], null),
                };
                if (finished is null) continue;
                Assert.Null(Contour.TryCreate(finished.Segments, out _));
                if (wanted is not null) Assert.Equal(wanted.Area, finished.Area, 1e-6);
                // No way of the tool leaves the freed edge, and each bay is visited.
                var radius = operation.Tool.Diameter / 2;
                if (operation is ProfileOperation { IsOutside: false, Tool.IsKnown: true })
                {
                    Assert.All(paths.SelectMany(p => p.Segments), s => Assert.True(finished.DistanceTo(s.End) >= radius - 1e-6));
                    Assert.All(finished.Segments.Where(s => !s.IsLine), arc => Assert.True(paths.SelectMany(p => p.Segments).Min(s => s.DistanceTo(arc.Middle)) <= radius + 1e-6));
                }
            }
    }, iter: Fuzz.Iterations(60));

    [Fact]
    public void Notch_in_an_outline_is_freed_and_its_outer_corners_are_not()
    {
        var outline = Polygon((0, 0), (300, 0), (300, 200), (200, 200), (200, 150), (100, 150), (100, 200), (0, 200));
        var profile = Machines.ProgramOf(Plain(300, 200).WithOutline(outline), Relieving).Operations.OfType<ProfileOperation>().Single();

        var arcs = profile.Finished.Segments.Where(s => !s.IsLine).ToList();
        Assert.Equal(2, arcs.Count);
        Assert.All(new Point2[] { new(100, 150), new(200, 150) }, corner => Assert.Contains(arcs, s => s.DistanceTo(corner) < 1e-6));
        Assert.Equal(outline.Area - 2 * BayArea(3 + Hair), profile.Finished.Area, 1e-6);
        // The tool goes out until it touches the corner, and back.
        Point2 Middle(Segment bay) => bay.Middle + (bay.Centre - bay.Middle) * (3 / (3 + Hair));
        var way = Assert.Single(profile.Paths);
        Assert.All(arcs, arc => Assert.Equal(2, way.Segments.Count(s => s.End.DistanceTo(Middle(arc)) < 1e-6 || s.Start.DistanceTo(Middle(arc)) < 1e-6)));
    }

    // Beyond a right corner a bay takes the two pieces of its circle that the walls cut off; what of them lies within is the corner itself.
    private static double BayArea(double radius) => 2 * radius * radius * (Math.PI / 2 - 1) / 2;

    [Fact]
    public void Bays_that_would_break_through_are_left_out_of_edge_and_way_alike()
    {
        // Between opening and notch only half a millimetre stays: less than a bay takes.
        var edge = Polygon((0, 0), (100, 0), (100, 60), (60.5, 60), (60.5, 20.5), (60, 20.5), (60, 60), (0, 60));
        Assert.Empty(CornerRelief.Of(edge, isOutside: false, 3));
        var program = Machines.ProgramOf(Plain(300, 200, Opening(edge.Moved(new(50, 50)))), Machines.Milling(3) with { Corners = InnerCorners.Relieved });

        var opening = program.Operations.OfType<ProfileOperation>().Single(p => !p.IsOutside);
        Assert.All(opening.Finished.Segments, s => Assert.True(s.IsLine));
        Assert.All(opening.Paths.SelectMany(p => p.Segments), s => Assert.True(opening.Finished.DistanceTo(s.End) >= 1.5 - 1e-6));
    }

    [Theory]
    [InlineData(6.3, InnerCorners.Round)]
    [InlineData(6, InnerCorners.Round)]
    [InlineData(6.3, InnerCorners.Relieved)]
    [InlineData(6, InnerCorners.Relieved)]
    [InlineData(20, InnerCorners.Relieved)]
    public void Groove_runs_out_at_the_edge_and_stops_square_or_round_within(double width, InnerCorners corners)
    {
        var pocket = Machines.ProgramOf(Plain(300, 200, Groove(0, 50, 150, 50, width, 6)), Machines.Milling(6) with { Corners = corners }).Operations.OfType<PocketOperation>().Single();

        var box = pocket.Paths.Select(p => p.Bounds).Aggregate((a, b) => a.Union(b));
        Assert.True(box.Min.X <= -3, $"{box}");
        if (corners == InnerCorners.Round) Assert.Equal(147, box.Max.X, 1e-6);
        else
        {
            // Both corners of the closed end are reached.
            Assert.All(new Point2[] { new(150, 50 + width / 2), new(150, 50 - width / 2) }, c => Assert.True(pocket.Paths.SelectMany(p => p.Segments).Min(s => s.DistanceTo(c)) <= 3.0001, $"{c}"));
            Assert.All(pocket.Paths.SelectMany(p => p.Segments).Where(s => s.End.X > 6), s => Assert.True(pocket.Finished.DistanceTo(s.End) >= 2.9999, $"{s}"));
        }
    }

    [Theory]
    [InlineData(InnerCorners.Round, 20, true)]
    [InlineData(InnerCorners.Round, 0, false)]       // out at both ends
    [InlineData(InnerCorners.Joinery, 20, false)]
    [InlineData(InnerCorners.Relieved, 20, false)]
    public void Grooves_that_end_round_are_noted(InnerCorners corners, double from, bool isNoted)
    {
        var plan = Machines.PlanOf(Plain(300, 200, Groove(from, 50, 300, 50, 6.3, 6), Groove(from, 150, 300, 150, 8, 6)), Machines.Milling(6) with { Corners = corners });

        Assert.Equal(
            isNoted ? [(Severity.Note, "router: grooves that stop inside their panel end as round as the cutter of 6 mm: 2 grooves in panel")] : [],
            plan.Findings.Select(f => (f.Severity, f.Message)));
    }

    [Fact]
    public void Groove_that_reaches_a_banded_edge_runs_out_whatever_is_milled_off() => Gen.Select(Gen.Double[0.3, 2], Gen.Double[0, 1.5], Gen.Double[3, 9]).Sample((band, milled, width) =>
    {
        var panel = Plain(300, 200, Groove(0, 50, 300, 50, width, 6)).WithBands([new EdgeBand(Surface.Start, Mm(band)) { PreMilled = Mm(milled) }, new EdgeBand(Surface.End, Mm(band)) { PreMilled = Mm(milled) }]);
        var pocket = Machines.ProgramOf(panel, Machines.Milling(6, 3)).Operations.OfType<PocketOperation>().Single();

        var box = pocket.Paths.Select(p => p.Bounds).Aggregate((a, b) => a.Union(b));
        // The tool's middle leaves panel and sawn edge, so that no corner stays round.
        Assert.True(box.Min.X <= Math.Min(0, panel.CutOutline.Bounds.Min.X) && box.Max.X >= Math.Max(300, panel.CutOutline.Bounds.Max.X), $"{box}");
    });

    [Theory]
    [InlineData(400, 260, true)]        // 0.104 m²
    [InlineData(380, 260, false)]
    [InlineData(1200, 99, false)]
    [InlineData(1200, 100, true)]
    public void Small_parts_are_held_and_others_are_not(double length, double width, bool isFree)
    {
        var profile = Machines.ProgramOf(Plain(length, width), Machines.Milling(6) with { SmallParts = new SmallParts(1e5, 100, 5, 2) }).Operations.OfType<ProfileOperation>().Single();

        Assert.Equal(isFree ? 0 : 4, profile.Tabs.Length);
        // Along the tool's way a tab is longer by the cutter.
        Assert.All(Machines.TabsOf(profile, CutLines.ToolCentre), t => Assert.Equal(11, t.Length, 1e-6));
        Assert.All(Machines.TabsOf(profile, CutLines.ToolCentre), t => Assert.Equal(3, profile.Finished.DistanceTo(t.Part(0, t.Length / 2).Segments[^1].End), 1e-6));
        Assert.Equal(isFree ? 0 : 16, profile.TabDepth);
    }

    [Fact]
    public void Skin_stays_under_the_whole_cut_of_small_parts()
    {
        double? Depth(double thickness, double skin) => Machines.ProgramOf(
            Panel.Rectangular("panel", BoardOf(thickness), Mm(90), Mm(90)), Machines.Milling(6) with { SmallParts = new SmallParts(1e5, 100, 0, skin) }).Operations.OfType<ProfileOperation>().Single().Depth;

        Assert.Equal(17.6, Depth(18, 0.4)!.Value, 1e-9);
        Assert.Null(Depth(3, 3));
    }

    [Fact]
    public void Finished_tabs_lie_on_the_edge_and_hold_the_waste_of_openings_too()
    {
        var machine = Machines.Milling(6) with { Paths = CutLines.Finished, SmallParts = new SmallParts(1e5, 100, 5, 2) };
        var profiles = Machines.ProgramOf(Plain(90, 90, Opening(Contour.Rectangle(20, 20, 70, 70))), machine).Operations.OfType<ProfileOperation>().ToList();

        Assert.Equal(2, profiles.Count);
        Assert.All(profiles, profile =>
        {
            Assert.Equal(4, profile.Tabs.Length);
            Assert.All(Machines.TabsOf(profile, CutLines.Finished), t => Assert.True(t.Length is > 4.999 and < 5.001 && profile.Finished.DistanceTo(t.Part(0, t.Length / 2).Segments[^1].End) < 1e-9));
        });
    }

    [Fact]
    public void Names_stay_clear_of_everything_made_in_the_panel()
    {
        var found = 0;
        Gen.Select(Any, Gen.String[Gen.Char["abcdefghijkl-123"], 3, 20], Gen.Double[5, 30]).Sample((panel, id, height) =>
        {
            panel = Panel.Rectangular("a" + id, panel.Board, panel.Length, panel.Width).WithBands(panel.Bands).WithFeatures(panel.Features);
            var machine = Machines.Milling(6, 3) with { NameHeight = height, Tools = [new(ToolKind.Cutter, 6), new(ToolKind.Cutter, 3), new(ToolKind.Engraver, 1)] };
            var program = Machines.PlanOf(panel, machine).Programs[0];
            var lying = program.Panels.Single();
            foreach (var name in program.Operations.OfType<EngraveOperation>().Where(e => e.What == Engraving.Name))
            {
                Interlocked.Increment(ref found);
                var points = name.Strokes.SelectMany(s => s.Segments).SelectMany(s => new[] { s.Start, s.Middle, s.End }).ToList();
                Assert.All(points, p => Assert.True(lying.Outline.Contains(p) && lying.Outline.DistanceTo(p) >= 1));
                foreach (var feature in panel.Features)
                {
                    // In the panel's frame, whichever face it is in: nobody wants to read through a hole, or drill through a letter.
                    var taken = feature switch
                    {
                        Bore { Surface: Surface.Inside or Surface.Outside } b => Contour.Circle(b.At.Point, b.Diameter.Value / 2),
                        Groove g => g.Outline,
                        CutOut c => c.Outline,
                        Mark { To: { } to } m when m.From.Point.DistanceTo(to.Point) > 1 => Contour.Strip(m.From.Point, to.Point, 0.1),
                        Mark m => Contour.Circle(m.From.Point, 0.1),
                        _ => null,
                    };
                    if (taken is null) continue;
                    var there = lying.Lie.Of(taken);
                    Assert.All(points, p => Assert.True(!there.Contains(p) && there.DistanceTo(p) >= 1, $"{p} in {feature}"));
                }
            }
        }, iter: Fuzz.Iterations(100));
        Assert.True(found > 50, $"only {found} names");
    }
}
