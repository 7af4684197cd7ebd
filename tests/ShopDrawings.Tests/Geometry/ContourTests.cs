using CsCheck;
using ShopDrawings.Kernel;

namespace ShopDrawings.Tests.Geometry;

public class ContourTests
{
    private static readonly Gen<Point2> Point = Gen.Select(Gen.Double[-120, 120], Gen.Double[-120, 120]).Select((x, y) => new Point2(x, y));

    [Fact]
    public void Area_is_that_of_the_points_along_it() =>
        Samples.Contours.Sample(contour =>
            Math.Abs(contour.Area - Samples.Area(Samples.Flattened(contour.Segments, 12))) < 1e-2 && contour.Area > 0, iter: 200);

    [Fact]
    public void Bounds_are_those_of_the_points_along_it() =>
        Samples.Contours.Sample(contour =>
        {
            var slow = Box2.Around(Samples.Flattened(contour.Segments, 12));
            return slow.Min.DistanceTo(contour.Bounds.Min) < 1e-4 && slow.Max.DistanceTo(contour.Bounds.Max) < 1e-4;
        }, iter: 200);

    [Fact]
    public void Winding_and_containing_agree_with_the_slow_twin_anywhere() =>
        Gen.Select(Samples.Contours, Point).Sample((contour, p) =>
        {
            if (contour.DistanceTo(p) < 0.01) return true;
            var slow = Samples.Winding(Samples.Flattened(contour.Segments, 10), p);
            return PolygonOperations.Winding(contour.Segments, p) == slow
                && PolygonOperations.Winding([.. contour.Segments.Reverse().Select(s => s.Reversed)], p) == -slow
                && contour.Contains(p) == (slow != 0);
        }, iter: 2000);

    [Fact]
    public void Winding_agrees_with_the_slow_twin_on_chords_and_at_the_heights_of_corners() =>
        Gen.Select(Samples.Contours, Gen.Int[0, 8], Gen.Double[-120, 120], Gen.Double[0, 1]).Sample((contour, index, free, share) =>
        {
            var s = contour.Segments[index % contour.Segments.Length];
            Point2[] points = [new(free, s.Start.Y), new(s.Start.X, free), (s.Start + s.End) * 0.5, s.Start + (s.End - s.Start) * share];
            var slow = Samples.Flattened(contour.Segments, 10);

            return points.Where(p => contour.DistanceTo(p) >= 0.01).All(p => PolygonOperations.Winding(contour.Segments, p) == Samples.Winding(slow, p));
        }, iter: 1000);

    [Fact]
    public void Winding_on_a_grid_agrees_with_the_slow_twin()
    {
        foreach (var contour in Samples.OnGrid)
        {
            var slow = Samples.Flattened(contour.Segments, 9);
            for (var x = -14; x <= 14; x++)
                for (var y = -14; y <= 14; y++)
                {
                    var p = new Point2(x / 2.0, y / 2.0);
                    if (contour.DistanceTo(p) < Tolerance.Length) Assert.True(contour.Contains(p), $"{p} on {contour.Segments[0]}");
                    else Assert.Equal((p, Samples.Winding(slow, p)), (p, PolygonOperations.Winding(contour.Segments, p)));
                }
        }
    }

    [Fact]
    public void Points_of_the_outline_are_contained() =>
        Samples.Contours.Sample(contour => Samples.Flattened(contour.Segments, 4).All(contour.Contains), iter: 300);

    public static TheoryData<string, Segment[]> Unsound => new()
    {
        { "an outline needs at least three corners, or two and an arc", [] },
        { "an outline needs at least three corners, or two and an arc", [new(new(0, 0), new(0, 0), 1)] },
        { "part 2 of the outline has no length", [new(new(0, 0), new(10, 0)), new(new(10, 0), new(10, 1e-7)), new(new(10, 0), new(0, 0), 1)] },
        { "the outline is open after part 2", [new(new(0, 0), new(10, 0)), new(new(10, 0), new(10, 10)), new(new(10, 11), new(0, 0))] },
        { "the outline is open after part 3", [new(new(0, 0), new(10, 0)), new(new(10, 0), new(10, 10)), new(new(10, 10), new(0, 1e-5))] },
        { "an outline needs at least three corners, or two and an arc", [new(new(0, 0), new(10, 0)), new(new(10, 0), new(0, 0))] },
        { "the outline encloses nothing", [new(new(0, 0), new(1, 0), 1e-6), new(new(1, 0), new(0, 0))] },
        { "the outline crosses or touches itself", [new(new(0, 0), new(10, 0), 1), new(new(10, 0), new(0, 0), -1)] },
        { "the outline crosses or touches itself", [new(new(0, 0), new(10, 10)), new(new(10, 10), new(10, 0)), new(new(10, 0), new(0, 10)), new(new(0, 10), new(0, 0))] },
        { "the outline crosses or touches itself", [new(new(0, 0), new(20, 10)), new(new(20, 10), new(20, 0)), new(new(20, 0), new(0, 30)), new(new(0, 30), new(0, 0))] },
        { "the outline crosses or touches itself", [new(new(0, 0), new(10, 0), -1), new(new(10, 0), new(10, 4)), new(new(10, 4), new(0, 4)), new(new(0, 4), new(0, 0))] },
        { "the outline crosses or touches itself", [new(new(0, 0), new(10, 0)), new(new(10, 0), new(5, 5)), new(new(5, 5), new(10, 10)), new(new(10, 10), new(0, 10)), new(new(0, 10), new(5, 5)), new(new(5, 5), new(0, 0))] },
    };

    [Theory]
    [MemberData(nameof(Unsound))]
    public void Unsound_outline_is_refused_in_words(string fault, Segment[] segments)
    {
        var said = Contour.TryCreate(segments, out var contour);

        Assert.Equal(fault, said);
        Assert.Null(contour);
        Assert.StartsWith(fault, Assert.Throws<ArgumentException>(() => Contour.FromSegments(segments)).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(2400, 2e-7)]
    [InlineData(3000, 1.5e-7)]
    [InlineData(10, 0.0005)]
    [InlineData(100000, 1e-3)]
    public void Shallow_arc_is_no_fault(double chord, double rise)
    {
        var bulge = 2 * rise / chord;

        var slab = Contour.TryCreate([new(new(0, 0), new(chord, 0), bulge), new(new(chord, 0), new(chord, 9)), new(new(chord, 9), new(0, 9)), new(new(0, 9), new(0, 0))], out _);
        var sliver = Contour.TryCreate([new(new(0, 0), new(chord, 0), bulge), new(new(chord, 0), new(0, 0))], out _);

        Assert.Null(slab);
        Assert.Null(sliver);
    }

    [Fact]
    public void Clockwise_outline_is_turned_round()
    {
        var contour = Contour.FromSegments([new(new(0, 0), new(0, 10)), new(new(0, 10), new(10, 10), -0.5), new(new(10, 10), new(10, 0)), new(new(10, 0), new(0, 0))]);

        Assert.Equal(new Segment(new(0, 0), new(10, 0)), contour.Segments[0]);
        Assert.Equal(0.5, contour.Segments[2].Bulge);
        Assert.True(contour.Area > 100);
    }

    [Fact]
    public void Moved_outline_keeps_its_shape() =>
        Gen.Select(Samples.Contours, Point).Sample((contour, by) =>
        {
            var moved = contour.Moved(by);
            return Math.Abs(moved.Area - contour.Area) < 1e-6 && moved.Bounds.Min.DistanceTo(contour.Bounds.Min + by) < 1e-9
                && moved.Segments.Zip(contour.Segments).All(p => p.First.Bulge == p.Second.Bulge && p.First.Start == p.Second.Start + by);
        }, iter: 300);

    [Fact]
    public void Mirrored_outline_runs_anticlockwise_round_the_mirrored_points() =>
        Gen.Select(Samples.Contours, Point).Sample((contour, p) =>
        {
            static Point2 Mirror(Point2 q) => new(250 - q.X, q.Y);
            var mirrored = contour.Mapped(Mirror, mirrors: true);
            return Math.Abs(mirrored.Area - contour.Area) < 1e-6
                && (contour.DistanceTo(p) < 1e-3 || mirrored.Contains(Mirror(p)) == contour.Contains(p))
                && Tolerance.Same(mirrored.DistanceTo(Mirror(p)), contour.DistanceTo(p));
        }, iter: 500);

    [Fact]
    public void Outline_mirrored_twice_is_the_same()
    {
        foreach (var contour in Samples.OnGrid)
        {
            static Point2 Mirror(Point2 q) => new(250 - q.X, q.Y);

            Assert.Equal(contour, contour.Mapped(Mirror, mirrors: true).Mapped(Mirror, mirrors: true));
            Assert.Equal(contour.GetHashCode(), contour.Mapped(Mirror, mirrors: true).Mapped(Mirror, mirrors: true).GetHashCode());
        }
    }

    [Fact]
    public void Turned_outline_keeps_its_shape()
    {
        foreach (var contour in Samples.OnGrid)
        {
            var turned = contour.Mapped(p => p.Left, mirrors: false);

            Assert.Equal(contour.Area, turned.Area, 1e-9);
            Assert.Equal(contour.Bounds.Width, turned.Bounds.Height, 1e-9);
            Assert.NotEqual(contour, turned);
        }
    }

    [Fact]
    public void Factories_make_the_areas_and_boxes_of_their_names()
    {
        void Is(Contour contour, double area, double left, double bottom, double right, double top)
        {
            Assert.Equal(area, contour.Area, 1e-9);
            Assert.Equal([left, bottom, right, top], new[] { contour.Bounds.Min.X, contour.Bounds.Min.Y, contour.Bounds.Max.X, contour.Bounds.Max.Y }.Select(v => Math.Round(v, 9) + 0));
            Assert.Null(Contour.TryCreate(contour.Segments, out var same));
            Assert.Equal(contour, same);
        }

        Is(Contour.Rectangle(1, 2, 11, 22), 200, 1, 2, 11, 22);
        Is(Contour.Circle(new(1, 2), 5), 25 * Math.PI, -4, -3, 6, 7);
        Is(Contour.Slot(new(0, 0), new(20, 0), 10), 200 + 25 * Math.PI, -5, -5, 25, 5);
        Is(Contour.Slot(new(20, 0), new(0, 0), 10), 200 + 25 * Math.PI, -5, -5, 25, 5);
        Is(Contour.Slot(new(0, 0), new(3, 4), 2), 10 + Math.PI, -1, -1, 4, 5);
        Is(Contour.Strip(new(0, 0), new(0, 30), 4), 120, -2, 0, 2, 30);
        Is(Contour.RoundedRectangle(0, 0, 30, 20, 5), 600 - 100 + 25 * Math.PI, 0, 0, 30, 20);
        Is(Contour.RoundedRectangle(0, 0, 30, 20, 10), 200 + 100 * Math.PI, 0, 0, 30, 20);
        Is(Contour.RoundedRectangle(0, 0, 20, 20, 10), 100 * Math.PI, 0, 0, 20, 20);
        Is(Contour.RoundedRectangle(0, 0, 30, 20, 0), 600, 0, 0, 30, 20);
    }

    [Fact]
    public void Circle_knows_that_it_is_one_and_nothing_else_does()
    {
        var circle = Contour.Circle(new(3, 4), 5).AsCircle!.Value;

        Assert.Equal(5, circle.Radius, 1e-12);
        Assert.Equal(0, circle.Centre.DistanceTo(new(3, 4)), 1e-12);
        Assert.Null(Contour.Rectangle(0, 0, 1, 1).AsCircle);
        Assert.Null(Contour.Slot(new(0, 0), new(1, 0), 1).AsCircle);
        Assert.Null(Contour.FromSegments([new(new(-4, 0), new(4, 0), 1), new(new(4, 0), new(-4, 0), 0.5)]).AsCircle);
        Assert.Null(Contour.FromSegments([new(new(-4, 0), new(4, 0), 1), new(new(4, 0), new(-4, 0))]).AsCircle);
    }

    [Fact]
    public void Factories_refuse_what_has_no_area()
    {
        Assert.Throws<ArgumentException>(() => Contour.Rectangle(0, 0, 0, 5));
        Assert.Throws<ArgumentException>(() => Contour.Rectangle(0, 5, 5, 0));
        Assert.Throws<ArgumentException>(() => Contour.Rectangle(0, 0, double.NaN, 5));
        Assert.Throws<ArgumentException>(() => Contour.Circle(default, 0));
        Assert.Throws<ArgumentException>(() => Contour.Circle(default, -1));
        Assert.Throws<ArgumentException>(() => Contour.Slot(new(1, 1), new(1, 1), 5));
        Assert.Throws<ArgumentException>(() => Contour.Slot(new(1, 1), new(2, 1), 0));
        Assert.Throws<ArgumentException>(() => Contour.Strip(new(1, 1), new(1, 1), 5));
        Assert.Throws<ArgumentException>(() => Contour.Strip(new(1, 1), new(2, 1), -1));
        Assert.Throws<ArgumentException>(() => Contour.RoundedRectangle(0, 0, 10, 20, 5.1));
        Assert.Throws<ArgumentException>(() => Contour.RoundedRectangle(0, 0, 10, 20, -1));
        Assert.Throws<ArgumentException>(() => Contour.RoundedRectangle(10, 0, 0, 20, 1));
    }
}
