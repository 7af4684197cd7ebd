using ShopDrawings.Kernel;

namespace ShopDrawings.Tests.Geometry;

public class BoxTests
{
    [Fact]
    public void Flat_box_goes_round_its_points()
    {
        var box = Box2.Around([new(3, -1), new(-2, 4), new(0, 0)]);

        Assert.Equal(new Box2(new(-2, -1), new(3, 4)), box);
        Assert.Equal((5, 5, new Point2(0.5, 1.5)), (box.Width, box.Height, box.Centre));
        Assert.Throws<ArgumentException>(() => Box2.Around([]));
    }

    [Fact]
    public void Flat_box_grows_and_joins_on_every_side()
    {
        var box = new Box2(new(0, 0), new(2, 1));

        Assert.Equal(new Box2(new(-3, -3), new(5, 4)), box.Grown(3));
        Assert.Equal(new Box2(new(-1, 0), new(2, 9)), box.Union(new(new(-1, 5), new(1, 9))));
    }

    [Fact]
    public void Block_lies_between_corners_in_any_order() =>
        Assert.Equal(new Box3(new(-1, 2, -3), new(4, 5, 6)), Box3.Between(new(4, 2, -3), new(-1, 5, 6)));

    [Fact]
    public void Block_has_size_and_content()
    {
        var block = new Box3(new(1, 1, 1), new(3, 4, 5));

        Assert.Equal(new Point3(2, 3, 4), block.Size);
        Assert.Equal(24, block.Volume);
    }

    [Theory]
    [InlineData(9, 0, 0, true)]
    [InlineData(10, 0, 0, false)]           // side by side
    [InlineData(10 - 5e-7, 0, 0, false)]    // within the tolerance
    [InlineData(10 - 1e-5, 0, 0, true)]
    [InlineData(0, 10, 0, false)]
    [InlineData(0, 0, -10, false)]
    [InlineData(-9, 9, -9, true)]
    public void Blocks_intersect_where_they_share_volume(double x, double y, double z, bool shares)
    {
        var block = new Box3(default, new(10, 10, 10));
        var other = new Box3(new(x, y, z), new(x + 10, y + 10, z + 10));

        var shared = block.Intersection(other);

        Assert.Equal(shares, shared is not null);
        Assert.Equal(shared, other.Intersection(block));
        if (shared is { } s) Assert.Equal((10 - Math.Abs(x)) * (10 - Math.Abs(y)) * (10 - Math.Abs(z)), s.Volume, 1e-9);
        Assert.Equal(new Box3(Point3.Min(default, new(x, y, z)), Point3.Max(new(10, 10, 10), new(x + 10, y + 10, z + 10))), block.Union(other));
    }
}
