using CsCheck;
using ShopDrawings.Kernel;

namespace ShopDrawings.Tests.Geometry;

public class AxisTests
{
    private static readonly Gen<double> Coordinate = Gen.OneOf(Gen.Double[-100, 100], Gen.Int[-3, 3].Select(i => i * 10.0));
    private static readonly Gen<Point3> Place = Gen.Select(Coordinate, Coordinate, Coordinate, (x, y, z) => new Point3(x, y, z));
    private static readonly Gen<Kernel.Axis> Any = Gen.Select(Place, Place, (a, b) => new Kernel.Axis(a, b));

    // Rows SJ-21 and SJ-22 of the check values (derived, geometry): two screws that cross, and two that pass.
    [Theory]
    [InlineData(0, 50, 50, 50, 50, 0, 50, 50, -4.1656)]
    [InlineData(0, 30, 50, 30, 60, 0, 60, 50, 5.8344)]
    public void Gap_between_two_screws_is_that_of_the_check_values(double x1, double y1, double x2, double y2, double x3, double y3, double x4, double y4, double gap)
    {
        var (a, b) = (new Kernel.Axis(new(x1, y1, 8), new(x2, y2, 8)), new Kernel.Axis(new(x3, y3, 8), new(x4, y4, 8)));

        Assert.Equal(gap, a.Gap(b, 4.1656, 4.1656), 0.001);
    }

    [Fact]
    public void Distance_is_the_least_that_sampling_finds() => Gen.Select(Any, Any).Sample((a, b) =>
    {
        const int Steps = 60;
        var sampled = Enumerable.Range(0, Steps + 1).Min(i =>
        {
            var p = a.From + (a.To - a.From) * ((double)i / Steps);
            return Enumerable.Range(0, Steps + 1).Min(j => (p - (b.From + (b.To - b.From) * ((double)j / Steps))).Length);
        });
        var reach = ((a.To - a.From).Length + (b.To - b.From).Length) / Steps;

        Assert.InRange(a.DistanceTo(b), sampled - reach, sampled + 1e-9);
        Assert.Equal(a.DistanceTo(b), b.DistanceTo(a), 1e-9);
    }, iter: 500);

    // A slow twin: points of the cylinder's rim and axis against points of the stretch.
    [Fact]
    public void Distance_to_a_cylinder_is_the_least_that_sampling_finds() => Gen.Select(Any.Where(a => (a.To - a.From).Length > 1), Gen.Double[1, 40], Any).Sample((axis, diameter, stretch) =>
    {
        const int Steps = 40;
        var cylinder = new Cylinder(axis, diameter);
        var unit = (axis.To - axis.From) * (1 / (axis.To - axis.From).Length);
        var side = unit.Cross(Math.Abs(unit.X) < 0.9 ? new Point3(1, 0, 0) : new Point3(0, 1, 0));
        side = side * (1 / side.Length);
        var up = unit.Cross(side);
        var points = from i in Enumerable.Range(0, Steps + 1)
                     from j in Enumerable.Range(0, Steps)
                     from r in new[] { 0, 0.25, 0.5, 0.75, 1.0 }
                     let angle = 2 * Math.PI * j / Steps
                     select axis.From + (axis.To - axis.From) * ((double)i / Steps) + (side * Math.Cos(angle) + up * Math.Sin(angle)) * (r * diameter / 2);
        var cloud = points.ToList();
        var sampled = Enumerable.Range(0, Steps + 1).Min(k => cloud.Min(p => (p - (stretch.From + (stretch.To - stretch.From) * ((double)k / Steps))).Length));
        var reach = ((axis.To - axis.From).Length + (stretch.To - stretch.From).Length) / Steps + diameter * Math.PI / Steps + diameter / 4;

        Assert.InRange(cylinder.DistanceTo(stretch), sampled - reach, sampled + 1e-9);
    }, iter: 20);
}
