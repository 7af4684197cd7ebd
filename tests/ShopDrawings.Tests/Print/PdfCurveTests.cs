using CsCheck;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;
using ShopDrawings.Print;

namespace ShopDrawings.Tests.Print;

public class PdfCurveTests
{
    // A thousandth of a millimetre is promised; the file's numbers are read as they stand.
    private const double Tolerance = 0.001;

    private static readonly Gen<Point2> Points = Gen.Select(Gen.Double[0, 2500], Gen.Double[0, 2500], (x, y) => new Point2(x, y));
    private static readonly Gen<double> Bulges = Gen.Double[0.01, 22].Select(Gen.Bool, (bulge, back) => back ? -bulge : bulge);
    private static readonly Gen<(Point2 From, Point2 To)> Apart = Gen.Select(Points, Points).Where((from, to) => from.DistanceTo(to) > 1);

    private static readonly Gen<Contour> Contours = Gen.OneOf(
        Gen.Select(Points, Gen.Double[20, 1400], Gen.Double[20, 1200], Gen.OneOf(Gen.Const(0.0), Gen.Double[0.01, 10]), (at, length, width, radius) =>
            Contour.RoundedRectangle(at.X, at.Y, at.X + length, at.Y + width, radius)),
        Gen.Select(Apart, Gen.Double[1, 60], (ends, width) => Contour.Slot(ends.From, ends.To, width)),
        Gen.Select(Points, Gen.Double[0.1, 1500], Contour.Circle));

    [Fact]
    public void Outline_is_read_back_within_a_thousandth() => Contours.Sample(contour =>
    {
        var path = Assert.Single(PdfContent.Paths(PrintFiles.Pdf(On4000(new ContourEntity(PrintFiles.Outline, contour)))));

        Assert.All(path, point => Assert.InRange(contour.Segments.Min(s => s.DistanceTo(point)), 0, Tolerance));
        Assert.Equal(1, PdfContent.Length(path) / contour.Segments.Sum(s => s.Length), 0.001);
    }, iter: Fuzz.Iterations(100));

    [Fact]
    public void Arc_is_read_back_within_a_thousandth_and_ends_where_it_ends() => Gen.Select(Apart, Bulges, (ends, bulge) => new Segment(ends.From, ends.To, bulge)).Sample(arc =>
    {
        var path = Assert.Single(PdfContent.Paths(PrintFiles.Pdf(On4000(new SegmentEntity(PrintFiles.Outline, arc)))));

        Assert.All(path, point => Assert.InRange(arc.DistanceTo(point), 0, Tolerance));
        Assert.InRange(path[0].DistanceTo(arc.Start), 0, 0.0001);
        Assert.InRange(path[^1].DistanceTo(arc.End), 0, 0.0001);
        Assert.Equal(1, PdfContent.Length(path) / arc.Length, 0.001);
    }, iter: Fuzz.Iterations(100));

    [Fact]
    public void Ellipse_is_read_back_within_a_thousandth() =>
        Gen.Select(Points, Gen.Double[1, 1000], Gen.Double[0, 6], Gen.Double[0.05, 1], Gen.Double[0, 300], Gen.Double[5, 360]).Sample((centre, length, angle, ratio, start, sweep) =>
        {
            var ellipse = new EllipseEntity(PrintFiles.Outline, centre, new Point2(Math.Cos(angle), Math.Sin(angle)) * length, ratio, start, start + sweep);

            var path = Assert.Single(PdfContent.Paths(PrintFiles.Pdf(On4000(ellipse))));

            // In the frame of its axes it is a circle of radius 1; a step off that is at most the longer axis times as far.
            var along = ellipse.Major * (1 / length);
            Assert.All(path, point => Assert.InRange(Math.Abs(new Point2((point - centre).Dot(along), (point - centre).Dot(along.Left) / ratio).Length - length), 0, Tolerance / ratio));
            Assert.InRange(path[0].DistanceTo(ellipse.At(start)), 0, 0.0001);
            Assert.InRange(path[^1].DistanceTo(ellipse.At(start + sweep)), 0, 0.0001);
        }, iter: Fuzz.Iterations(100));

    [Fact]
    public void Number_of_pieces_is_the_least_that_keeps_the_tolerance()
    {
        // Worked by hand: quarters of a circle stand out 2/27 · sin⁶(22.5°) / cos²(22.5°) = 2.73e-4 of the radius, so up to 1.83 mm within 0.0005 mm.
        Assert.Equal(4, Curves.Pieces(1.8, 2 * Math.PI));
        Assert.Equal(5, Curves.Pieces(1.9, 2 * Math.PI));
        Assert.Equal(1, Curves.Pieces(1.8, Math.PI / 2));
    }

    [Fact]
    public void Arc_of_no_visible_curvature_is_a_line() =>
        Assert.Equal(2, Assert.Single(PdfContent.Paths(PrintFiles.Pdf(On4000(new SegmentEntity(PrintFiles.Outline, new(new(0, 0), new(2440, 0), 1e-9)))))).Count);

    private static Drawing On4000(Entity entity) => new("Any", "", new Point2(4000, 4000), [entity]);
}
