using CsCheck;
using ShopDrawings.Kernel;
using UnitsNet;
using Size = ShopDrawings.Kernel.Size;

namespace ShopDrawings.Tests.Panels;

public class SolidTests
{
    private static readonly (Direction Outside, Direction Along)[] Orientations =
        [.. from o in Enum.GetValues<Direction>() from a in Enum.GetValues<Direction>() where o.Axis() != a.Axis() select (o, a)];

    private static Size Mm(double value) => Size.Constant(value);

    private static Position At(double x, double y) => new(Mm(x), Mm(y));

    // Small panels on a grid of millimetres, close enough to meet often.
    private static Gen<Panel> Panels(bool round) =>
        Gen.Select(Gen.Int[0, Orientations.Length - 1], Gen.Int[-8, 8].Array[3], Gen.Int[6, 20].Array[2], Gen.Int[3, 8], Feature(round).Array[0, 3])
        .Select((turn, origin, size, thickness, features) =>
        {
            var (outside, along) = Orientations[turn];
            var board = Board.Create("b", BoardKind.Mdf, Length.FromMillimeters(thickness));
            var placement = Placement.Facing(Mm(origin[0]), Mm(origin[1]), Mm(origin[2]), outside, along);
            return Panel.Rectangular("p", board, Mm(size[0]), Mm(size[1]), placement).WithFeatures(features);
        });

    private static Gen<Feature> Feature(bool round) =>
        Gen.Select(Gen.Int[0, 16], Gen.Int[0, 16], Gen.Int[1, 8], Gen.Int[1, 8], Gen.Int[1, 5], Gen.Int[0, round ? 5 : 3], Gen.Bool)
        .Select((x, y, a, b, depth, kind, inside) =>
        {
            var face = inside ? Surface.Inside : Surface.Outside;
            return kind switch
            {
                0 => (Feature)Groove.Along("p", face, At(-1, y), At(40, y), Mm(2 * a), Mm(depth)),
                1 => Groove.Along("p", face, At(x, y), At(x, y + b), Mm(2 * a), Mm(depth)),
                2 or 3 => new CutOut("p", Contour.Rectangle(x, y, x + a, y + b), []),
                4 => Bore.Through("p", face, At(x, y), Mm(a)),
                _ => Bore.Blind("p", face, At(x, y), Mm(a), Mm(depth)),
            };
        });

    // The slow twin: is a point of the assembly in the material, by plain comparisons in the panel's frame?
    private static bool IsIn(Panel panel, Point3 assemblyPoint, double margin = 0)
    {
        var placement = panel.Placement!;
        var from = assemblyPoint - placement.Origin;
        double On(Direction d) => (d.IsPositive() ? 1 : -1) * (d.Axis() switch { 0 => from.X, 1 => from.Y, _ => from.Z });
        var (x, y, z) = (On(placement.AlongLength), On(placement.AlongWidth), On(placement.Inwards));
        var t = panel.Thickness.Value;
        if (x <= margin || x >= panel.Length.Value - margin || y <= margin || y >= panel.Width.Value - margin || z <= margin || z >= t - margin) return false;
        return !panel.Features.Any(f => f switch
        {
            CutOut c => InBox(c.Outline.Bounds),
            Groove g => InBox(g.Outline.Bounds) && Under(g.Face, g.Depth.Value),
            Bore b => new Point2(x, y).DistanceTo(b.At.Point) < b.Diameter.Value / 2 + margin && (b.Depth is null || Under(b.Surface, b.Depth.Value)),
            _ => throw new InvalidOperationException(),
        });
        bool InBox(Box2 box) => x > box.Min.X - margin && x < box.Max.X + margin && y > box.Min.Y - margin && y < box.Max.Y + margin;
        bool Under(Surface face, double depth) => face == Surface.Inside ? z > t - depth - margin : z < depth + margin;
    }

    private static IEnumerable<Point3> Grid(Box3 box, double step) =>
        from x in Steps(box.Min.X, box.Max.X, step) from y in Steps(box.Min.Y, box.Max.Y, step) from z in Steps(box.Min.Z, box.Max.Z, step) select new Point3(x, y, z);

    private static IEnumerable<double> Steps(double from, double to, double step) =>
        Enumerable.Range(0, (int)Math.Ceiling((to - from) / step - 1e-9)).Select(i => from + (i + 0.5) * step);

    private static Box3? Boxes(Panel a, Panel b) => a.Placement!.ToAssembly(a.Box).Intersection(b.Placement!.ToAssembly(b.Box));

    [Fact]
    public void Overlap_of_square_panels_is_found_exactly_when_they_share_a_cubic_millimetre()
    {
        var (found, free) = (0, 0);
        Gen.Select(Panels(round: false), Panels(round: false)).Sample((a, b) =>
        {
            // Every face lies on a whole millimetre, so that the middles of cubes tell all.
            var shared = Boxes(a, b) is { } box && Grid(box, 1).Any(p => IsIn(a, p) && IsIn(b, p));

            var overlap = Solid.Of(a).Overlap(Solid.Of(b));

            Assert.Equal(shared, overlap is not null);
            Assert.Equal(shared, Solid.Of(b).Overlap(Solid.Of(a)) is not null);
            if (overlap is not { } where)
            {
                if (Boxes(a, b) is not null) Interlocked.Increment(ref free);
                return;
            }

            Interlocked.Increment(ref found);
            Assert.Contains(Grid(where, 1), p => IsIn(a, p) && IsIn(b, p));
        }, iter: 2500);

        Assert.True(found > 200 && free > 5, $"{found} overlaps, {free} panels that only seem to");
    }

    [Fact]
    public void Overlap_of_bored_panels_is_found_where_they_share_more_than_a_sliver() =>
        Gen.Select(Panels(round: true), Panels(round: true)).Sample((a, b) =>
        {
            var overlap = Solid.Of(a).Overlap(Solid.Of(b));

            if (Boxes(a, b) is not { } box)
            {
                Assert.Null(overlap);
                return;
            }

            // Circles are judged to 0.01 mm: a point deeper than that inside both must be noticed.
            if (overlap is null) Assert.DoesNotContain(Grid(box, 0.5), p => IsIn(a, p, 0.011) && IsIn(b, p, 0.011));
            else if (overlap.Value.Size is { X: > 0.5, Y: > 0.5, Z: > 0.5 })
                Assert.Contains(Grid(overlap.Value, Math.Min(0.2, Math.Min(overlap.Value.Size.X, Math.Min(overlap.Value.Size.Y, overlap.Value.Size.Z)) / 4)), p => IsIn(a, p, -0.011) && IsIn(b, p, -0.011));
        }, iter: 400);

    private static Panel Block(string id, double thickness, Direction outside, Direction along, Point3 min, Point3 max, params Feature[] features)
    {
        var turned = Placement.Facing(Size.Zero, Size.Zero, Size.Zero, outside, along);
        double Origin(int axis)
        {
            var direction = new[] { turned.AlongLength, turned.AlongWidth, turned.Inwards }.Single(d => d.Axis() == axis);
            return direction.IsPositive() ? min.Along(axis) : max.Along(axis);
        }

        var size = max - min;
        var placement = Placement.Facing(Mm(Origin(0)), Mm(Origin(1)), Mm(Origin(2)), outside, along);
        return Panel.Rectangular(id, Board.Create("b", BoardKind.Plywood, Length.FromMillimeters(thickness)),
            Mm(size.Along(turned.AlongLength.Axis())), Mm(size.Along(turned.AlongWidth.Axis())), placement).WithFeatures(features);
    }

    [Fact]
    public void Tongue_in_its_groove_does_not_overlap()
    {
        Panel Side(double width, double depth) => Block("side", 18, Direction.Left, Direction.Top, new(0, 0, 0), new(18, 300, 700),
            Groove.Along("back", Surface.Inside, At(0, 13), At(700, 13), Mm(width), Mm(depth)));
        // The side's y runs to the front from z = back: the groove lies 10 to 16 mm before the rear edge.
        var back = Solid.Of(Block("back", 6, Direction.Back, Direction.Top, new(11, 284, 10), new(500, 290, 690)));

        Assert.Null(Solid.Of(Side(6, 8)).Overlap(back));
        Assert.Null(Solid.Of(Side(6, 7)).Overlap(back));
        Assert.NotNull(Solid.Of(Side(6, 6.9)).Overlap(back));
        Assert.NotNull(Solid.Of(Side(5.9, 8)).Overlap(back));
        Assert.Null(back.Overlap(Solid.Of(Side(6, 7))));
    }

    [Fact]
    public void Touching_panels_do_not_overlap()
    {
        var side = Solid.Of(Block("side", 18, Direction.Left, Direction.Top, new(0, 0, 0), new(18, 300, 700)));

        Assert.Null(side.Overlap(Solid.Of(Block("bottom", 18, Direction.Bottom, Direction.Right, new(18, 0, 0), new(500, 300, 18)))));
        Assert.Null(side.Overlap(Solid.Of(Block("bottom", 18, Direction.Bottom, Direction.Right, new(18 - 5e-7, 0, 0), new(500, 300, 18)))));
        Assert.NotNull(side.Overlap(Solid.Of(Block("bottom", 18, Direction.Bottom, Direction.Right, new(17.99, 0, 0), new(500, 300, 18)))));
    }

    [Fact]
    public void Peg_through_a_round_opening_overlaps_when_its_corners_do_not_fit()
    {
        var plate = Solid.Of(Block("plate", 18, Direction.Bottom, Direction.Right, new(0, 0, 0), new(200, 200, 18), new CutOut("plate", Contour.Circle(new(100, 100), 25), [])));
        Solid Peg(double half) => Solid.Of(Block("peg", 2 * half, Direction.Left, Direction.Top, new(100 - half, 100 - half, -50), new(100 + half, 100 + half, 50)));

        Assert.Null(plate.Overlap(Peg(17.6)));
        Assert.NotNull(plate.Overlap(Peg(17.7)));
    }

    // 18.6 − 5.6 is not quite 13 in binary: between the two bores lies a slab of no thickness.
    [Fact]
    public void Bores_that_meet_from_both_faces_leave_a_sound_solid()
    {
        var findings = Shop.Check(Fixtures.DesignOf(
            """
            project: Two depths
            boards: {ply: {kind: plywood, thickness: 18.6}}
            panels:
              plate:
                board: ply
                length: 300
                width: 200
                bores: [{at: [60, 100], diameter: 8, depth: 5.6}, {at: [120, 100], diameter: 8, depth: 13, face: outside}]
                place: {corner: [0, 0, 0], outside: bottom}
              post: {board: ply, length: 300, width: 200, place: {corner: [200, 0, 10], outside: left}}
            """));

        Assert.Equal("panels-overlap", Assert.Single(findings).Rule);
    }
}
