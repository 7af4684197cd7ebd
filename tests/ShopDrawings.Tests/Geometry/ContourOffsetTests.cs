using System.Collections.Immutable;
using CsCheck;
using ShopDrawings.Kernel;

namespace ShopDrawings.Tests.Geometry;

public class ContourOffsetTests
{
    private const double Fine = 0.01;

    private static Contour Only(ImmutableArray<Contour> contours) => Assert.Single(contours);

    private static void Is(double left, double bottom, double right, double top, Box2 box)
    {
        Assert.Equal([left, bottom, right, top], new[] { box.Min.X, box.Min.Y, box.Max.X, box.Max.Y }.Select(v => Math.Round(v, 9) + 0));
    }

    // Half the kerf, or the radius of the tool, to the waste side.
    [Theory]
    [InlineData(100, 0.1, 100.2)]       // a laser round a part
    [InlineData(568, 3.175, 574.35)]    // a router round a part
    [InlineData(80, -3.175, 73.65)]     // a router in a pocket
    [InlineData(100, -0.1, 99.8)]       // what a laser leaves of a part drawn without kerf
    public void Square_path_is_exact(double size, double distance, double path)
    {
        var offset = Only(Contour.Rectangle(0, 0, size, size).Offset(distance, Fine));

        Assert.Equal(4, offset.Segments.Length);
        Assert.All(offset.Segments, s => Assert.Equal(0, s.Bulge));
        Assert.Equal(path, offset.Bounds.Width, 1e-9);
        Assert.Equal(path, offset.Bounds.Height, 1e-9);
        Is(-distance, -distance, size + distance, size + distance, offset.Bounds);
    }

    [Theory]
    [InlineData(35, -0.1, 34.8)]    // a laser in a hole
    [InlineData(5, 0.1, 5.2)]       // what a laser makes of a hole drawn without kerf
    public void Round_path_is_exact_and_a_circle(double diameter, double distance, double path)
    {
        var circle = Only(Contour.Circle(new(7, 8), diameter / 2).Offset(distance, Fine)).AsCircle;

        Assert.NotNull(circle);
        Assert.Equal(path, 2 * circle.Value.Radius, 1e-9);
        Assert.Equal(0, circle.Value.Centre.DistanceTo(new(7, 8)), 1e-9);
    }

    [Theory]
    [InlineData(3)]
    [InlineData(-3)]
    public void Slot_stays_a_slot(double distance)
    {
        var offset = Only(Contour.Slot(new(10, 10), new(50, 40), 20).Offset(distance, Fine));

        var expected = Contour.Slot(new(10, 10), new(50, 40), 20 + 2 * distance);
        Assert.Equal(expected.Segments.Length, offset.Segments.Length);
        Assert.All(expected.Segments.Zip(offset.Segments), pair =>
        {
            Assert.Equal(0, pair.First.Start.DistanceTo(pair.Second.Start), 1e-9);
            Assert.Equal(pair.First.Bulge, pair.Second.Bulge, 1e-9);
        });
    }

    [Theory]
    [InlineData(3)]
    [InlineData(-3)]
    [InlineData(-4.999)]
    public void Rounded_rectangle_keeps_its_arcs(double distance)
    {
        var offset = Only(Contour.RoundedRectangle(0, 0, 60, 40, 5).Offset(distance, Fine));

        var expected = Contour.RoundedRectangle(-distance, -distance, 60 + distance, 40 + distance, 5 + distance);
        Assert.Equal(expected.Segments.Length, offset.Segments.Length);
        Assert.Equal(4, offset.Segments.Count(s => !s.IsLine && Tolerance.Same(s.Radius, 5 + distance)));
        Assert.Equal(expected.Area, offset.Area, 1e-6);
    }

    [Theory]
    [InlineData(2)]
    [InlineData(-2)]
    public void Inner_and_outer_corners_stay_sharp(double distance)
    {
        Point2[] corners = [new(0, 0), new(60, 0), new(60, 20), new(20, 20), new(20, 50), new(0, 50)];
        var angle = Contour.FromSegments(corners.Select((c, i) => new Segment(c, corners[(i + 1) % 6])));

        var offset = Only(angle.Offset(distance, Fine));

        var d = distance;
        Point2[] expected = [new(-d, -d), new(60 + d, -d), new(60 + d, 20 + d), new(20 + d, 20 + d), new(20 + d, 50 + d), new(-d, 50 + d)];
        Assert.Equal(6, offset.Segments.Length);
        Assert.All(expected.Zip(offset.Segments), pair => Assert.Equal(0, pair.First.DistanceTo(pair.Second.Start), 1e-9));
    }

    [Fact]
    public void Arc_meets_a_line_at_the_corner_of_both_offsets()
    {
        var half = Contour.FromSegments([new(new(-10, 0), new(10, 0)), new(new(10, 0), new(-10, 0), 1)]);

        var offset = Only(half.Offset(-2, Fine));

        // The circle of radius 8 about the origin and the line y = 2.
        var x = Math.Sqrt(60);
        Assert.Equal(2, offset.Segments.Length);
        Assert.Equal(0, offset.Segments[0].Start.DistanceTo(new(-x, 2)), 1e-9);
        Assert.Equal(0, offset.Segments[0].End.DistanceTo(new(x, 2)), 1e-9);
        Assert.Equal(8, offset.Segments[1].Radius, 1e-9);
        Assert.Equal(0, offset.Segments[1].Centre.Length, 1e-9);
    }

    [Fact]
    public void No_distance_is_the_same_outline()
    {
        var contour = Contour.RoundedRectangle(0, 0, 60, 40, 5);

        Assert.Same(contour, Only(contour.Offset(0, Fine)));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    public void Tolerance_that_is_none_is_refused(double tolerance) =>
        Assert.Throws<ArgumentException>(() => Contour.Rectangle(0, 0, 1, 1).Offset(1, tolerance));

    [Theory]
    [InlineData(-20)]
    [InlineData(-20.001)]
    [InlineData(-1000)]
    public void Outline_vanishes_when_nothing_is_left(double distance)
    {
        Assert.Empty(Contour.Rectangle(0, 0, 60, 40).Offset(distance, Fine));
        Assert.Empty(Contour.Circle(default, 20).Offset(distance, Fine));
        Assert.Empty(Contour.RoundedRectangle(0, 0, 60, 40, 5).Offset(distance, Fine));
        Assert.Empty(Contour.Slot(default, new(60, 0), 40).Offset(distance, Fine));
    }

    [Fact]
    public void Outline_almost_vanished_is_still_exact()
    {
        Is(19.99, 19.99, 40.01, 20.01, Only(Contour.Rectangle(0, 0, 60, 40).Offset(-19.99, Fine)).Bounds);
        Assert.Equal(0.01, Only(Contour.Circle(default, 20).Offset(-19.99, Fine)).AsCircle!.Value.Radius, 1e-9);
    }

    [Fact]
    public void Two_squares_with_a_neck_fall_apart()
    {
        Point2[] corners = [new(0, 0), new(40, 0), new(40, 15), new(60, 15), new(60, 0), new(100, 0), new(100, 40), new(60, 40), new(60, 25), new(40, 25), new(40, 40), new(0, 40)];
        var dumbbell = Contour.FromSegments(corners.Select((c, i) => new Segment(c, corners[(i + 1) % corners.Length])));

        var parts = dumbbell.Offset(-6, Fine).OrderBy(c => c.Bounds.Min.X).ToArray();

        Assert.Equal(2, parts.Length);
        Assert.Equal(new Point2(6, 6), parts[0].Bounds.Min);
        Assert.Equal(new Point2(94, 34), parts[1].Bounds.Max);
        Assert.All(parts, p => AtTheDistance(dumbbell, -6, p));
        // A square and a beak into the neck, as far as both of its corners allow.
        var beak = Math.Sqrt(36 - 25);
        Assert.InRange(parts[0].Bounds.Max.X, 40 - beak - 0.02, 40 - beak + 0.02);
        Assert.InRange(parts[1].Bounds.Min.X, 60 + beak - 0.02, 60 + beak + 0.02);
    }

    [Fact]
    public void Corner_that_vanishes_leaves_the_rest_within_the_tolerance()
    {
        var rounded = Contour.RoundedRectangle(0, 0, 60, 40, 5);

        var offset = Only(rounded.Offset(-8, Fine));

        Assert.InRange(offset.Bounds.Min.DistanceTo(new(8, 8)), 0, Fine);
        Assert.InRange(offset.Bounds.Max.DistanceTo(new(52, 32)), 0, Fine);
        Assert.Equal(44 * 24, offset.Area, 2 * (44 + 24) * Fine);
        AtTheDistance(rounded, -8, offset);
    }

    [Fact]
    public void Notch_narrower_than_the_tool_closes()
    {
        Point2[] corners = [new(0, 0), new(60, 0), new(60, 40), new(32, 40), new(32, 20), new(28, 20), new(28, 40), new(0, 40)];
        var notched = Contour.FromSegments(corners.Select((c, i) => new Segment(c, corners[(i + 1) % corners.Length])));

        var offset = Only(notched.Offset(3, Fine));

        Is(-3, -3, 63, 43, offset.Bounds);
        Assert.False(notched.Contains(new(30, 30)));
        Assert.True(offset.Contains(new(30, 30)));
        AtTheDistance(notched, 3, offset);
    }

    [Fact]
    public void Offset_there_and_back_is_the_same_outline() =>
        Gen.Select(Samples.Contours, Gen.Double[0.1, 3]).Sample((contour, distance) =>
        {
            var there = contour.Offset(distance, Fine);
            if (there.Length != 1 || there[0].Segments.Length != contour.Segments.Length) return true;

            var back = Assert.Single(there[0].Offset(-distance, Fine));

            Assert.True(
                back.Segments.Length == contour.Segments.Length && back.Segments.Zip(contour.Segments).All(p => p.First.Start.DistanceTo(p.Second.Start) < 1e-5 && p.First.Middle.DistanceTo(p.Second.Middle) < 1e-5),
                $"{string.Join("; ", contour.Segments)} came back as {string.Join("; ", back.Segments)} from {string.Join("; ", there[0].Segments)}");
            return true;
        }, iter: 300);

    [Fact]
    public void Most_offsets_of_a_millimetre_are_exact()
    {
        var exact = 0;
        Samples.Contours.Sample(contour =>
        {
            if (contour.Offset(1, Fine) is [var only] && only.Segments.Length == contour.Segments.Length) Interlocked.Increment(ref exact);
        }, iter: 300);

        Assert.True(exact > 200, $"{exact} of 300");
    }

    [Fact]
    public void Every_point_of_an_offset_is_at_the_distance() =>
        Gen.Select(Samples.Contours, Gen.OneOf(Gen.Double[0.1, 30], Gen.Double[-30, -0.1])).Sample((contour, distance) =>
        {
            foreach (var offset in contour.Offset(distance, Fine)) AtTheDistance(contour, distance, offset);
        }, iter: 300);

    [Fact]
    public void Area_grows_with_the_distance() =>
        Gen.Select(Samples.Contours, Gen.Double[-15, 15], Gen.Double[0.1, 5]).Sample((contour, distance, more) =>
        {
            // Sharp corners of an exact offset may become round ones; compare outlines of one kind.
            var (smaller, larger) = (contour.Offset(distance, Fine), contour.Offset(distance + more, Fine));
            if (smaller.Sum(c => c.Segments.Length) != larger.Sum(c => c.Segments.Length)) return true;
            return smaller.IsEmpty || larger.Sum(c => c.Area) > smaller.Sum(c => c.Area);
        }, iter: 400);

    // Both parts that meet in some corner of the outline have that corner as their nearest point.
    private static bool LiesBeforeACorner(Contour contour, Point2 p) =>
        contour.Segments.Zip([.. contour.Segments.Skip(1), contour.Segments[0]])
            .Any(pair => Tolerance.Same(pair.First.DistanceTo(p), pair.First.End.DistanceTo(p)) && Tolerance.Same(pair.Second.DistanceTo(p), pair.First.End.DistanceTo(p)));

    // At the distance, or in the sharp corner of two parts, which is further from the outline's corner than the parts are from the outline's.
    private static void AtTheDistance(Contour contour, double distance, Contour offset)
    {
        var points = Samples.Flattened(offset.Segments, 4).Concat(offset.Segments.Select(s => s.Middle));
        foreach (var p in points)
        {
            var apart = contour.DistanceTo(p);
            if (apart > Math.Abs(distance) && LiesBeforeACorner(contour, p)) continue;
            Assert.True(Math.Abs(apart - Math.Abs(distance)) <= Fine, $"{p} is {apart} and not {distance} from {string.Join("; ", contour.Segments)}");
            Assert.True(contour.Contains(p) == distance < 0, $"{p} is on the wrong side");
        }
    }
}
