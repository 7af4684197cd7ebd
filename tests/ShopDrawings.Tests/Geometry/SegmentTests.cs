using CsCheck;
using ShopDrawings.Kernel;

namespace ShopDrawings.Tests.Geometry;

public class SegmentTests
{
    private static readonly Gen<double> Sweep = Gen.OneOf(Gen.Double[0.05, 2 * Math.PI - 0.05], Gen.Double[0.05 - 2 * Math.PI, -0.05]);
    private static readonly Gen<Point2> Point = Gen.Select(Gen.Double[-100, 100], Gen.Double[-100, 100]).Select((x, y) => new Point2(x, y));
    private static readonly Gen<(Point2 Centre, double Radius, double From, double Sweep)> Arc =
        Gen.Select(Point, Gen.Double[1, 200], Gen.Double[-Math.PI, Math.PI], Sweep);

    private static readonly Gen<Segment> Any = Gen.OneOf(
        Arc.Select(a => Samples.Arc(a.Centre, a.Radius, a.From, a.Sweep)),
        Gen.Select(Point, Point).Select((a, b) => new Segment(a, b)));

    [Fact]
    public void Arc_made_from_its_centre_finds_it_again() =>
        Arc.Sample(a =>
        {
            var arc = Samples.Arc(a.Centre, a.Radius, a.From, a.Sweep);

            return !arc.IsLine
                && arc.Centre.DistanceTo(a.Centre) < Tolerance.Length
                && Tolerance.Same(arc.Radius, a.Radius)
                && Math.Abs(arc.SweepRadians - a.Sweep) < 1e-9
                && Tolerance.Same(arc.Length, a.Radius * Math.Abs(a.Sweep))
                && arc.Middle.DistanceTo(Samples.OnCircle(a.Centre, a.Radius, a.From + a.Sweep / 2)) < Tolerance.Length;
        }, iter: 2000);

    [Theory]
    [InlineData(1.0, 5, -5)]       // anticlockwise from left to right runs below
    [InlineData(-1.0, 5, 5)]
    [InlineData(0.0, 5, 0)]
    public void Bulge_is_positive_anticlockwise(double bulge, double x, double y) =>
        Assert.Equal(new Point2(x, y), new Segment(new(0, 0), new(10, 0), bulge).Middle);

    [Fact]
    public void Bounds_are_those_of_the_points_along_it() =>
        Any.Sample(s =>
        {
            var slow = Box2.Around(Samples.Along(s, 12));
            var box = s.Bounds;
            // A step of the slow twin misses the highest point by at most its rise.
            var rise = s.IsLine ? 0 : s.Radius * (1 - Math.Cos(Math.Abs(s.SweepRadians) / 8192));

            return Math.Abs(box.Min.X - slow.Min.X) <= rise + 1e-9 && Math.Abs(box.Min.Y - slow.Min.Y) <= rise + 1e-9
                && Math.Abs(box.Max.X - slow.Max.X) <= rise + 1e-9 && Math.Abs(box.Max.Y - slow.Max.Y) <= rise + 1e-9;
        }, iter: 500);

    [Theory]
    [InlineData(0, 0, 10, 0, 1.0, 0, -5, 10, 0)]
    [InlineData(0, 0, 10, 0, -1.0, 0, 0, 10, 5)]
    [InlineData(5, 0, 0, 5, 0.41421356237309503, 0, 0, 5, 5)]
    [InlineData(5, 0, 0, 5, -2.414213562373095, -5, -5, 5, 5)]
    public void Bounds_reach_the_quarters_of_the_circle_the_arc_meets(
        double x0, double y0, double x1, double y1, double bulge, double left, double bottom, double right, double top)
    {
        var box = new Segment(new(x0, y0), new(x1, y1), bulge).Bounds;

        Assert.Equal([left, bottom, right, top], new[] { box.Min.X, box.Min.Y, box.Max.X, box.Max.Y }.Select(v => Math.Round(v, 9) + 0));
    }

    [Fact]
    public void Distance_is_that_of_the_nearest_point_along_it() =>
        Gen.Select(Any, Point).Sample((s, p) =>
        {
            var slow = Samples.Along(s, 12).Min(q => q.DistanceTo(p));
            // The nearest of the slow twin's points lies at most half a step along from the nearest point.
            var step = s.Length / 4096;
            var fast = s.DistanceTo(p);

            return fast <= slow + 1e-9 && slow <= Math.Sqrt(fast * fast + step * step) + step * step + (fast < step ? step : step * step / fast) + 1e-9;
        }, iter: 500);

    [Fact]
    public void Distance_of_points_along_it_is_nothing() =>
        Any.Sample(s => Samples.Along(s, 6).All(p => s.DistanceTo(p) < Tolerance.Length), iter: 500);

    [Fact]
    public void Distance_from_the_centre_of_an_arc_is_its_radius() =>
        Assert.Equal(5, new Segment(new(0, 0), new(10, 0), 1).DistanceTo(new(5, 0)), 1e-12);

    [Fact]
    public void Arc_through_three_of_its_points_is_that_arc() =>
        Gen.Select(Arc, Gen.Double[0.05, 0.95]).Sample((a, share) =>
        {
            var arc = Samples.Arc(a.Centre, a.Radius, a.From, a.Sweep);

            var through = Segment.Through(arc.Start, Samples.OnCircle(a.Centre, a.Radius, a.From + a.Sweep * share), arc.End);

            return Math.Abs(through.Bulge - arc.Bulge) <= 1e-6 * (1 + arc.Bulge * arc.Bulge);
        }, iter: 2000);

    [Theory]
    [InlineData(2, 0)]      // between the ends
    [InlineData(15, 0)]     // beyond one
    [InlineData(-15, 0)]    // beyond the other
    public void Arc_through_three_points_of_a_line_is_the_line(double x, double y) =>
        Assert.Equal(new Segment(new(0, 0), new(10, 0)), Segment.Through(new(0, 0), new(x, y), new(10, 0)));

    [Theory]
    [InlineData(1e-9, true)]
    [InlineData(1e-6, false)]
    public void Arc_that_hardly_rises_is_a_line(double rise, bool isLine) =>
        Assert.Equal(isLine, new Segment(new(0, 0), new(1000, 0), rise / 500).IsLine);

    [Fact]
    public void Reversed_runs_the_same_path_backwards() =>
        Any.Sample(s =>
        {
            var back = s.Reversed;
            return back.Reversed == s && back.Middle.DistanceTo(s.Middle) < 1e-9 && back.Start == s.End && back.End == s.Start;
        });
}
