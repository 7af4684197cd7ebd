using CsCheck;
using ShopDrawings.Kernel;
using Size = ShopDrawings.Kernel.Size;

namespace ShopDrawings.Tests.Geometry;

public class PlacementTests
{
    public static TheoryData<Direction, Direction> Orientations
    {
        get
        {
            var all = new TheoryData<Direction, Direction>();
            foreach (var outside in Enum.GetValues<Direction>())
                foreach (var along in Enum.GetValues<Direction>().Where(d => d != outside && d != outside.Opposite()))
                    all.Add(outside, along);
            return all;
        }
    }

    [Fact]
    public void Panel_can_be_turned_in_twenty_four_ways() =>
        Assert.Equal(24, Orientations.Select(o => o.Data)
            .Select(o => Placement.Facing(Size.Zero, Size.Zero, Size.Zero, o.Item1, o.Item2))
            .Select(p => (p.AlongLength, p.AlongWidth, p.Inwards)).Distinct().Count());

    [Theory]
    [MemberData(nameof(Orientations))]
    public void Placement_is_right_handed_and_turns_back(Direction outside, Direction along)
    {
        var placement = Placement.Facing(Size.Constant(10), Size.Constant(-20), Size.Constant(30), outside, along);

        // The determinant of the three axes, written out.
        var (u, v, w) = (placement.AlongLength.Vector(), placement.AlongWidth.Vector(), placement.Inwards.Vector());
        Assert.Equal(1, u.X * (v.Y * w.Z - v.Z * w.Y) - u.Y * (v.X * w.Z - v.Z * w.X) + u.Z * (v.X * w.Y - v.Y * w.X));
        Assert.Equal(outside.Opposite(), placement.Inwards);
        Assert.Equal(along, placement.AlongLength);
        Assert.Equal(new Point3(10, -20, 30), placement.ToAssembly(default(Point3)));
        Assert.Equal(new Point3(10, -20, 30) + u * 3 + v * 5 + w * 7, placement.ToAssembly(new Point3(3, 5, 7)));
        Gen.Select(Gen.Int[-1000, 1000], Gen.Int[-1000, 1000], Gen.Int[-1000, 1000]).Select((x, y, z) => new Point3(x, y, z) * 0.25)
            .Sample(p => placement.ToPanel(placement.ToAssembly(p)) == p && placement.ToAssembly(placement.ToPanel(p)) == p);
    }

    [Theory]
    [MemberData(nameof(Orientations))]
    public void Block_of_a_panel_is_that_of_its_corners(Direction outside, Direction along)
    {
        var placement = Placement.Facing(Size.Constant(1), Size.Constant(2), Size.Constant(3), outside, along);
        var box = new Box3(new(0, 0, 0), new(600, 300, 18));
        var corners = from x in new[] { 0.0, 600 } from y in new[] { 0.0, 300 } from z in new[] { 0.0, 18 } select placement.ToAssembly(new Point3(x, y, z));

        var block = placement.ToAssembly(box);

        Assert.Equal(corners.Aggregate(Point3.Min), block.Min);
        Assert.Equal(corners.Aggregate(Point3.Max), block.Max);
        Assert.Equal(box.Volume, block.Volume);
    }

    [Theory]
    [InlineData(Direction.Left, Direction.Right)]
    [InlineData(Direction.Top, Direction.Top)]
    [InlineData(Direction.Front, Direction.Back)]
    public void Length_across_the_face_is_refused(Direction outside, Direction along) =>
        Assert.Throws<ArgumentException>(() => Placement.Facing(Size.Zero, Size.Zero, Size.Zero, outside, along));
}
