using CsCheck;
using ShopDrawings.Kernel;

namespace ShopDrawings.Tests.Geometry;

public class RegionTests
{
    private static readonly Gen<Contour> Rectangle = Gen.Select(Gen.Int[0, 20], Gen.Int[0, 20], Gen.Int[1, 20], Gen.Int[1, 20])
        .Select((x, y, width, height) => Contour.Rectangle(x, y, x + width, y + height));

    private static PolygonOperations.Region Of(Contour contour) => PolygonOperations.RegionOf(contour, 0.01);

    [Fact]
    public void Areas_of_rectangles_are_counted_in_squares() =>
        Gen.Select(Rectangle, Rectangle, Rectangle).Sample((a, b, c) =>
        {
            int Squares(Func<Point2, bool> isIn) =>
                Enumerable.Range(0, 40).SelectMany(x => Enumerable.Range(0, 40).Select(y => new Point2(x + 0.5, y + 0.5))).Count(isIn);

            return Math.Abs(Of(a).And(Of(b)).Area - Squares(p => a.Contains(p) && b.Contains(p))) < 1e-9
                && Math.Abs(Of(a).Or(Of(b)).Area - Squares(p => a.Contains(p) || b.Contains(p))) < 1e-9
                && Math.Abs(Of(a).Minus(Of(b)).Minus(Of(c)).Area - Squares(p => a.Contains(p) && !b.Contains(p) && !c.Contains(p))) < 1e-9;
        }, iter: 100);

    [Fact]
    public void Sum_of_two_areas_is_that_of_both_and_either() =>
        Gen.Select(Samples.Contours, Samples.Contours).Sample((a, b) =>
            Math.Abs(Of(a).And(Of(b)).Area + Of(a).Or(Of(b)).Area - Of(a).Area - Of(b).Area) < 1e-6
            && Math.Abs(Of(a).Minus(Of(b)).Area + Of(a).And(Of(b)).Area - Of(a).Area) < 1e-6, iter: 200);

    [Theory]
    [InlineData(0.1)]
    [InlineData(0.01)]
    [InlineData(0.001)]
    public void Flattened_circle_misses_at_most_a_rim_of_the_tolerance(double tolerance)
    {
        var circle = Contour.Circle(new(3, 4), 17.5);

        var missing = circle.Area - PolygonOperations.RegionOf(circle, tolerance).Area;

        Assert.InRange(missing, 0, 2 * Math.PI * 17.5 * tolerance);
        Assert.True(missing > 2 * Math.PI * 17.5 * tolerance / 8, "many more chords than the tolerance asks for");
    }

    [Fact]
    public void Pieces_are_the_boxes_of_what_is_left()
    {
        var cut = Of(Contour.Rectangle(0, 0, 30, 10)).Minus(Of(Contour.Rectangle(10, -5, 20, 15)));

        Assert.Equal([new Box2(new(0, 0), new(10, 10)), new Box2(new(20, 0), new(30, 10))], cut.Pieces.OrderBy(b => b.Min.X));
        Assert.Empty(cut.And(Of(Contour.Rectangle(10, 0, 20, 10))).Pieces);
    }
}
