using CsCheck;
using ShopDrawings.Kernel;

namespace ShopDrawings.Tests.Machining;

public class StrokeLetteringTests
{
    private const double Height = 18;

    private static readonly string Printable = string.Concat(Enumerable.Range(' ', '~' - ' ' + 1).Select(c => (char)c));

    [Fact]
    public void Every_printable_character_gives_strokes_in_its_box() => Assert.All(Printable, c =>
    {
        var points = Of(c.ToString()).SelectMany(s => s).ToList();

        Assert.Equal(c == ' ', points.Count == 0);
        Assert.All(points, p => Assert.InRange(p.X, 0, StrokeLettering.Width(c.ToString(), Height) - 4));
        Assert.All(points, p => Assert.InRange(p.Y, -Height / 5, Height));
    });

    [Fact]
    public void Capitals_and_digits_reach_from_the_base_line_to_their_height() => Assert.All("ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789", c =>
    {
        var box = Box2.Around(Of(c.ToString()).SelectMany(s => s));

        Assert.Equal((0, Height), (box.Min.Y, box.Max.Y));
    });

    [Fact]
    public void Strokes_are_polylines_that_stop_nowhere_and_run_nowhere_twice() => Assert.All(Printable, c =>
    {
        var strokes = Of(c.ToString());

        Assert.All(strokes, s => Assert.True(s.Length >= 2));
        var lines = strokes.SelectMany(s => s.Zip(s.Skip(1))).ToList();
        Assert.All(lines, l => Assert.True(l.First.DistanceTo(l.Second) > 0.1, $"{c} repeats {l.First}"));
        for (var i = 0; i < lines.Count; i++)
            for (var j = 0; j < i; j++)
                Assert.False(ShareLength(lines[i], lines[j]), $"{c} draws {lines[i]} and {lines[j]}");
    });

    // Whichever way they are laid over each other, left, middle, right or one stretched to the other, there is a place of one that lies a tenth
    // of the height from the other: 0.8 mm of letters 8 mm high, beside a line of 0.5 mm.
    [Fact]
    public void No_two_letters_or_digits_look_alike()
    {
        const string Signs = "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789";

        foreach (var a in Signs)
            foreach (var b in Signs.Where(b => b < a))
                Assert.True(Unlikeness(a, b) >= Height / 10, FormattableString.Invariant($"{a} and {b} differ by {Unlikeness(a, b) / Height:0.000} of their height"));
    }

    [Fact]
    public void Width_is_the_sum_of_the_letters_and_each_stands_after_those_before_it() => Gen.Select(Gen.String[Gen.Char[Printable], 0, 12], Gen.Char[Printable], Gen.Double[1, 60]).Sample((text, last, height) =>
    {
        var (before, whole) = (StrokeLettering.Strokes(text, new(3, 4), height), StrokeLettering.Strokes(text + last, new(3, 4), height));
        var width = StrokeLettering.Width(text, height);

        Assert.Equal(text.Sum(c => StrokeLettering.Width(c.ToString(), height)), width, 1e-6);
        var after = StrokeLettering.Strokes(last.ToString(), new(3 + width, 4), height);
        var expected = before.Concat(after).SelectMany(s => s).ToList();
        var actual = whole.SelectMany(s => s).ToList();
        Assert.Equal(expected.Count, actual.Count);
        Assert.All(expected.Zip(actual), p => Assert.True(p.First.DistanceTo(p.Second) < 1e-6));
    });

    [Theory]
    [InlineData("left-side", "LEFT-SIDE")]
    [InlineData("Größe, côté", "GROSSE, COTE")]
    [InlineData("23½ × ⌀5", "23 1/2 X D5")]
    [InlineData("a\r\nb", "A  B")]
    [InlineData("板#", "__")]
    public void Text_is_engraved_as(string text, string expected) => Assert.Equal(Of(expected), Of(text));

    [Theory]
    [InlineData(0)]
    [InlineData(-8)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Height_that_is_none_is_refused(double height)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => StrokeLettering.Strokes("A", default, height));
        Assert.Throws<ArgumentOutOfRangeException>(() => StrokeLettering.Width("A", height));
    }

    private static Point2[][] Of(string text) => [.. StrokeLettering.Strokes(text, default, Height).Select(s => s.ToArray())];

    private static bool ShareLength((Point2 From, Point2 To) a, (Point2 From, Point2 To) b)
    {
        var length = a.From.DistanceTo(a.To);
        var along = (a.To - a.From) * (1 / length);
        if (Math.Abs(along.Cross(b.From - a.From)) > 1e-6 || Math.Abs(along.Cross(b.To - a.From)) > 1e-6) return false;
        var (from, to) = (along.Dot(b.From - a.From), along.Dot(b.To - a.From));
        return Math.Min(length, Math.Max(from, to)) - Math.Max(0, Math.Min(from, to)) > 1e-6;
    }

    private static double Unlikeness(char a, char b)
    {
        var (p, q) = (Dots(a), Dots(b));
        var (wide, narrow) = (Box2.Around(p).Width, Box2.Around(q).Width);
        var laidOver = new[] { 0, 0.5, 1 }.Select(share => q.Select(d => d + new Point2((wide - narrow) * share, 0)).ToList()).ToList();
        if (wide > 0 && narrow > 0) laidOver.Add([.. q.Select(d => new Point2(d.X * wide / narrow, d.Y))]);
        return laidOver.Min(other => Math.Max(Farthest(p, other), Farthest(other, p)));
    }

    private static double Farthest(List<Point2> from, List<Point2> to) => from.Max(p => to.Min(p.DistanceTo));

    // Points along the strokes, half a grid unit apart at most.
    private static List<Point2> Dots(char c) =>
    [
        .. from stroke in Of(c.ToString())
           from line in stroke.Zip(stroke.Skip(1))
           let parts = (int)Math.Ceiling(2 * line.First.DistanceTo(line.Second))
           from i in Enumerable.Range(0, parts + 1)
           select line.First + (line.Second - line.First) * (i / (double)parts)
    ];
}
