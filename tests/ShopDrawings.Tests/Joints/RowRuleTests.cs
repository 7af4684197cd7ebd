using CsCheck;
using ShopDrawings.Kernel;
using Size = ShopDrawings.Kernel.Size;

namespace ShopDrawings.Tests.Joints;

public class RowRuleTests
{
    private static FastenerRow On(double length, double end, double pitch) =>
        new RowRule(Size.Default(end, "end"), Size.Default(pitch, "pitch")).On(Size.Given(length, "length", default));

    [Theory]
    [InlineData(560, 50, 150, 5, 115, 50)]
    [InlineData(400, 50, 150, 3, 150, 50)]          // the pitch goes in exactly
    [InlineData(400.1, 50, 150, 4, 100.0333333333, 50)]
    [InlineData(250, 50, 150, 2, 150, 50)]
    [InlineData(250.1, 50, 150, 3, 75.05, 50)]
    [InlineData(200, 50, 150, 2, 100, 50)]          // a quarter is the end distance
    [InlineData(199, 50, 150, 2, 99.5, 49.75)]
    [InlineData(40, 50, 150, 2, 20, 10)]
    [InlineData(4, 50, 150, 2, 2, 1)]
    [InlineData(300, 50, 300, 2, 200, 50)]          // at 300 mm two are enough
    [InlineData(300.0000005, 50, 300, 2, 200, 50)]
    [InlineData(300.01, 50, 300, 3, 100.005, 50)]   // beyond there are three
    [InlineData(2400, 100, 600, 5, 550, 100)]
    [InlineData(600, 0, 150, 5, 150, 0)]
    public void Row_spreads_evenly(double length, double end, double pitch, int count, double actualPitch, double actualEnd)
    {
        var row = On(length, end, pitch);

        Assert.Equal(count, row.Count);
        Assert.Equal(actualPitch, row.Pitch.Value, 1e-6);
        Assert.Equal(actualEnd, row.EndDistance.Value, 1e-6);
        Assert.Equal(count, row.Places.Count());
        Assert.Equal(actualEnd, row.Places.First().Value, 1e-6);
        Assert.Equal(length - actualEnd, row.Places.Last().Value, 1e-6);
    }

    // An end distance somebody asked for is kept as long as it leaves 10 mm between the first and the last.
    [Theory]
    [InlineData(150, 50, 50, 2)]
    [InlineData(110, 50, 50, 2)]
    [InlineData(109.9, 50, 27.475, 2)]
    [InlineData(560, 100, 100, 4)]
    public void End_distance_a_user_gave_is_kept_where_it_can_be(double length, double end, double actualEnd, int count)
    {
        var row = new RowRule(Size.Given(end, "end-distance", default), Size.Default(150, "pitch")).On(Size.Constant(length));

        Assert.Equal((actualEnd, count), (Math.Round(row.EndDistance.Value, 9), row.Count));
    }

    [Fact]
    public void Standard_row_is_that_of_its_numbers() =>
        Assert.Equal((5, 115.0), (RowRule.Standard.On(Size.Constant(560)).Count, RowRule.Standard.On(Size.Constant(560)).Pitch.Value));

    [Fact]
    public void Row_keeps_its_promises_on_any_length() =>
        Gen.Select(Gen.Double[10, 2500], Gen.Double[0, 120], Gen.Double[40, 400]).Sample((length, end, pitch) =>
        {
            var row = On(length, end, pitch);
            var places = row.Places.ToArray();
            var gaps = places.Zip(places.Skip(1), (a, b) => b.Value - a.Value).ToArray();

            return row.Count >= (length > 300 + Tolerance.Length ? 3 : 2)
                && gaps.All(g => Math.Abs(g - row.Pitch.Value) < 1e-9 && g <= pitch + 1e-6)
                // One fewer would be too far apart or too few.
                && (row.Count <= (length > 300 ? 3 : 2) || (length - 2 * row.EndDistance.Value) / (row.Count - 2) > pitch - 1e-6)
                && Math.Abs(places[0].Value - Math.Min(end, length / 4)) < 1e-9
                && Math.Abs(length - places[^1].Value - places[0].Value) < 1e-9
                && places.All(p => p.Recomputed().Equals(p.Value));
        }, iter: 2000);
}
