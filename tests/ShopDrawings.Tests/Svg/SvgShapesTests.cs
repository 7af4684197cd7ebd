using CsCheck;
using ShopDrawings.Kernel;
using Xunit;

namespace ShopDrawings.Tests.Svg;

public class SvgShapesTests
{
    private static readonly Gen<Point2> Points = Gen.Select(Gen.Double[-2500, 2500], Gen.Double[-2500, 2500], (x, y) => new Point2(x, y));

    // Up to 350 degrees, either way round.
    private static readonly Gen<double> Bulges = Gen.Double[0.01, 22].Select(Gen.Bool, (bulge, back) => back ? -bulge : bulge);

    private static readonly Gen<(Point2 From, Point2 To)> Apart = Gen.Select(Points, Points).Where((from, to) => from.DistanceTo(to) > 1);

    private static readonly Gen<Contour> Contours = Gen.OneOf(
        Gen.Select(Points, Gen.Double[20, 2400], Gen.Double[20, 1200], Gen.OneOf(Gen.Const(0.0), Gen.Double[0.01, 10]), (at, length, width, radius) =>
            Contour.RoundedRectangle(at.X, at.Y, at.X + length, at.Y + width, radius)),
        Gen.Select(Apart, Gen.Double[1, 60], (ends, width) => Contour.Slot(ends.From, ends.To, width)),
        // A keyhole: most of a circle closed by its chord, given either way round.
        Gen.Select(Apart, Bulges, (ends, bulge) => Contour.FromSegments([new(ends.From, ends.To), new(ends.To, ends.From, bulge)])));

    [Fact]
    public void Contour_is_read_back_within_a_thousandth() => Contours.Where(c => c.Bounds.Width < 2400 && c.Bounds.Height < 2400).Sample(contour =>
        AssertSame(contour.Segments, SvgPathReader.Read(Path(SvgSample.Read(SvgSample.OfContour(contour))))));

    [Fact]
    public void Arc_is_read_back_within_a_thousandth() => Gen.Select(Apart, Bulges, (ends, bulge) => new Segment(ends.From, ends.To, bulge))
        .Where(s => s.Radius < 1000).Sample(arc =>
        AssertSame([arc], SvgPathReader.Read(Path(SvgSample.Read(SvgSample.OfSegment(arc))))));

    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    [InlineData(0.999)]
    [InlineData(1.001)]
    [InlineData(-400)]
    public void Arc_near_a_half_or_a_full_turn_is_read_back_within_a_thousandth(double bulge)
    {
        var arc = new Segment(new(0, 0), new(1.2345678, 0), bulge);
        AssertSame([arc], SvgPathReader.Read(Path(SvgSample.Read(SvgSample.OfSegment(arc)))));
    }

    [Fact]
    public void Arc_of_no_visible_curvature_is_a_line()
    {
        var arc = new Segment(new(0, 0), new(2440, 0), 1e-9);
        Assert.Equal([new Segment(arc.Start, arc.End)], SvgPathReader.Read(Path(SvgSample.Read(SvgSample.OfSegment(arc)))));
    }

    [Fact]
    public void Contour_of_a_full_circle_is_a_circle()
    {
        var circle = SvgSample.Read(SvgSample.OfContour(Contour.Circle(new(37, 100.5), 2.5))).Only("circle");
        Assert.Equal((37, -100.5, 2.5), (circle.Number("cx"), circle.Number("cy"), circle.Number("r")));
    }

    private static string Path(System.Xml.Linq.XElement root) => root.Only("path").Attribute("d")!.Value;

    /// <summary>Whether the path runs through the same lines and arcs in the same order; one arc may come in several pieces.</summary>
    private static void AssertSame(IEnumerable<Segment> expected, List<Segment> actual)
    {
        var next = 0;
        foreach (var segment in expected)
        {
            AssertNear(segment.Start, actual[next].Start);
            double turned = 0, length = 0;
            do
            {
                var piece = actual[next++];
                Assert.InRange(segment.DistanceTo(piece.Start), 0, 0.001);
                Assert.InRange(segment.DistanceTo(piece.Middle), 0, 0.002);
                turned += piece.SweepRadians;
                length += piece.Length;
            }
            while (length < 0.9 * segment.Length);
            AssertNear(segment.End, actual[next - 1].End);
            Assert.Equal(Math.Sign(segment.Bulge), Math.Sign(turned));
            Assert.Equal(segment.Length, length, 0.02);
        }

        Assert.Equal(actual.Count, next);
    }

    private static void AssertNear(Point2 expected, Point2 actual) => Assert.InRange(expected.DistanceTo(actual), 0, 0.001);
}
