using CsCheck;
using ShopDrawings.Drafting;
using ShopDrawings.Dxf;
using ShopDrawings.Kernel;
using Xunit;
using static ShopDrawings.Tests.Dxf.DxfFiles;

namespace ShopDrawings.Tests.Dxf;

/// <summary>What outside readers make of ellipses, leaders, hatches, blocks and dimensions.</summary>
public class DxfPictureTests
{
    private const double Agreement = 1e-4;      // mm

    // Both pictures are chords within 0.0005 mm, and R12 has arcs for ellipses within 0.001 mm, in blocks five times as large as defined. Six decimals
    // of an edge's bulge move the ends of a hatch line that grazes it by more.
    private const double PictureAgreement = 0.006, GrazingAgreement = 0.1;

    // Readers draw the arrow of a leader themselves, a third as wide as long: within 0.02 of the lettering height of ours, in a block up to 5 × 3.5 mm.
    private const double ArrowAgreement = 0.02 * 17.5;

    [Fact]
    public void Picture_of_r12_is_that_of_r2000()
    {
        OutsideProgram.DemandPython("ezdxf");
        RandomDrawings.Drawing.Array[10].Sample(drawings =>
        {
            var pictures = Pictures([.. drawings.SelectMany(d => new[] { Write(d, DxfRelease.R12), Write(d, DxfRelease.R2000) })]);

            for (var i = 0; i < pictures.Count; i += 2) AssertSame(pictures[i].Entities, pictures[i + 1].Entities);
        }, iter: Fuzz.Iterations(2), threads: 1);
    }

    [Fact]
    public void Entities_read_by_another_program_are_the_entities()
    {
        OutsideProgram.DemandPython("ezdxf");
        Gen.Select(RandomDrawings.Drawing, RandomDrawings.One(DxfRelease.R2000, DxfRelease.R2010), Gen.Enum<DrawingUnit>()).Array[25].Sample(cases =>
        {
            var read = Read([.. cases.Select(c => Write(c.Item1, c.Item2, c.Item3))]);

            foreach (var ((drawing, _, unit), file) in cases.Zip(read))
            {
                Assert.Equal(drawing.Entities.Length, file.Entities.Count);
                foreach (var (entity, found) in drawing.Entities.Zip(file.Entities)) Agree(entity, found, unit == DrawingUnit.Inch ? 25.4 : 1);
                foreach (var block in drawing.Blocks) Assert.Equal(block.Entities.Length, file.Blocks[block.Name]);
            }
        }, iter: Fuzz.Iterations(4), threads: 1);
    }

    [Theory]
    [InlineData(DxfRelease.R12)]
    [InlineData(DxfRelease.R2000)]
    [InlineData(DxfRelease.R2010)]
    public void Measurement_is_what_another_program_computes_from_the_points(DxfRelease release)
    {
        OutsideProgram.DemandPython("ezdxf");
        RandomDrawings.Dimension.Array[40].Sample(dimensions =>
        {
            var drawing = new Drawing("Any", "Any", null, dimensions);
            var file = Read([Write(drawing, release)])[0];

            foreach (var (dimension, found) in dimensions.Zip(file.Entities))
            {
                Assert.Equal("DIMENSION", found.Type);
                Assert.InRange(Math.Abs(found.Numbers[1] - dimension.Measured), 0, Agreement);
                Assert.InRange(Math.Abs(found.Numbers[2] - dimension.Measured), 0, Agreement);
                Assert.Equal(dimension.Height, found.Numbers[3], 1e-6);
                Assert.Equal(dimension.Text, found.Text);
                Assert.Equal(dimension.Text, found.Block!.Single(e => e.Type == "TEXT").Text);
            }
        }, iter: Fuzz.Iterations(2), threads: 1);
    }

    [Fact]
    public void Random_drawing_passes_the_audit()
    {
        OutsideProgram.DemandPython("ezdxf shapely");
        Gen.Select(RandomDrawings.Drawing, Gen.Enum<DxfRelease>(), Gen.Enum<DrawingUnit>()).Array[40].Sample(cases =>
            Audit([.. cases.Select(c => Write(c.Item1, c.Item2, c.Item3))]), iter: Fuzz.Iterations(1), threads: 1);
    }

    [Fact]
    public void Solid_fill_of_r12_is_lines_a_pen_apart_within_the_edges()
    {
        OutsideProgram.DemandPython("ezdxf");
        var hatch = new HatchEntity(Notes, Contour.Circle(new(50, 50), 20), [Contour.Rectangle(45, 45, 55, 55)], null);
        var drawing = new Drawing("Any", "Any", null, [hatch]);
        var read = Read([Write(drawing, DxfRelease.R12), Write(drawing, DxfRelease.R2000)]);

        var lines = read[0].Entities;
        Assert.All(lines, e => Assert.Equal("LINE", e.Type));
        Assert.All(lines, e => Assert.True(OnEdge(e.Numbers[0], e.Numbers[1]) && OnEdge(e.Numbers[2], e.Numbers[3])));
        Assert.Equal(hatch.Outline.Area - 100, lines.Sum(e => e.Numbers[2] - e.Numbers[0]) * 0.25, 2.0);
        Assert.Equal([1, 2, 2], read[1].Entities.Single().Numbers.Take(3));

        bool OnEdge(double x, double y) => hatch.Islands.Prepend(hatch.Outline).Any(c => c.DistanceTo(new(x, y)) < Agreement);
    }

    private static void Agree(Entity entity, ReadEntity found, double mm)
    {
        Assert.Equal(entity.Layer.Name, found.Layer);
        var n = found.Numbers;
        switch (entity)
        {
            case EllipseEntity e:
                AssertNear([e.Centre.X, e.Centre.Y, e.Major.X, e.Major.Y], [.. n.Take(4).Select(v => v * mm)]);
                var degrees = new[] { n[5], n[6] }.Select(t => t * 180 / Math.PI).ToArray();
                var seen = new EllipseEntity(e.Layer, new(n[0] * mm, n[1] * mm), new(n[2] * mm, n[3] * mm), n[4]);
                AssertNear([e.At(e.StartDegrees).X, e.At(e.StartDegrees).Y, e.At(e.EndDegrees).X, e.At(e.EndDegrees).Y],
                    e.IsFull ? [e.At(e.StartDegrees).X, e.At(e.StartDegrees).Y, e.At(e.EndDegrees).X, e.At(e.EndDegrees).Y] : [seen.At(degrees[0]).X, seen.At(degrees[0]).Y, seen.At(degrees[1]).X, seen.At(degrees[1]).Y]);
                Assert.Equal(e.IsFull ? 360 : e.EndDegrees - e.StartDegrees, (degrees[1] - degrees[0] + 720 - 1e-9) % 360 + 1e-9, 1e-6);
                Assert.InRange(Math.Abs(n[4] - e.Ratio) * e.Major.Length, 0, Agreement);
                break;
            case LeaderEntity l:
                AssertNear([.. l.Points.SelectMany(p => new[] { p.X, p.Y })], [.. n.Select(v => v * mm)]);
                break;
            case InsertEntity i:
                AssertNear([i.Position.X, i.Position.Y, i.Scale], [n[0] * mm, n[1] * mm, n[2]]);
                Assert.Equal(0, Math.IEEERemainder(n[3] - i.AngleDegrees, 360), 1e-6);
                Assert.Equal(i.Block.Name, found.Text);
                break;
            case HatchEntity { Pattern: { } pattern } h:
                Assert.Equal([0, 1 + h.Islands.Length], n.Take(2));
                var rest = n.AsSpan(2);
                foreach (var contour in h.Islands.Prepend(h.Outline))
                {
                    var count = (int)rest[0];
                    for (var v = 0; v < count; v++)
                        Assert.InRange(contour.DistanceTo(new(rest[1 + 3 * v] * mm, rest[2 + 3 * v] * mm)), 0, Agreement);
                    rest = rest[(1 + 3 * count)..];
                }

                Assert.Equal(0, Math.IEEERemainder(rest[0] - pattern.AngleDegrees, 360), 1e-5);
                var offset = RandomDrawings.Direction(pattern.AngleDegrees + 90) * pattern.Spacing;
                AssertNear([pattern.Origin.X, pattern.Origin.Y, offset.X, offset.Y], [rest[1] * mm, rest[2] * mm, rest[3] * mm, rest[4] * mm]);
                break;
            case Dimension d:
                Assert.Equal(("DIMENSION", d.Text, DimensionGraphics.Of(d).Count()), (found.Type, found.Text, found.Block!.Count));
                break;
            default:
                Assert.Fail(entity.ToString());
                break;
        }
    }

    // Every point of one picture lies on a line of the other's on the same layer; texts are the same at the same places.
    private static void AssertSame(List<PictureLine> a, List<PictureLine> b)
    {
        foreach (var (from, to) in new[] { (a, b), (b, a) })
        {
            var byLayer = to.SelectMany(Stroke.Of).ToLookup(s => (s.Layer, s.Text));
            foreach (var line in from)
            {
                var agreement = line.Layer == RandomDrawings.Hatched.Name ? GrazingAgreement : line.Layer == RandomDrawings.Led.Name ? ArrowAgreement : PictureAgreement;
                var strokes = byLayer[(line.Layer, line.Text)];
                foreach (var p in Some(line))
                {
                    if (!strokes.Any(s => s.IsNear(p, agreement))) Assert.Fail($"{line.Layer} {line.Text}: ({p.X}, {p.Y}) is not in the other picture");
                }
            }
        }
    }

    // Enough points of a finely divided curve to see it elsewhere; of others all, and those between.
    private static IEnumerable<Point2> Some(PictureLine line)
    {
        var points = Points(line);
        for (var i = 0; i < points.Length; i += 1 + points.Length / 40)
        {
            yield return points[i];
            if (i > 0) yield return (points[i - 1] + points[i]) * 0.5;
        }
    }

    private static Point2[] Points(PictureLine line) => [.. line.Points.Chunk(2).Select(c => new Point2(c[0], c[1]))];

    // A few points of a line, and the box around them: most are too far from most points to look at their parts.
    private sealed class Stroke
    {
        private const int Few = 12;

        private readonly Point2[] points;
        private readonly double left, right, bottom, top;

        private Stroke(PictureLine line, Point2[] points)
        {
            (Layer, Text, this.points) = (line.Layer, line.Text, points);
            var box = Box2.Around(points);
            (left, right, bottom, top) = (box.Min.X, box.Max.X, box.Min.Y, box.Max.Y);
        }

        public string Layer { get; }

        public string? Text { get; }

        // The last point of one is the first of the next.
        public static IEnumerable<Stroke> Of(PictureLine line)
        {
            var all = Points(line);
            for (var i = 0; i == 0 || i < all.Length - 1; i += Few) yield return new Stroke(line, all[i..Math.Min(i + Few + 1, all.Length)]);
        }

        public bool IsNear(Point2 p, double distance)
        {
            var (x, y) = (p.X, p.Y);
            if (x < left - distance || x > right + distance || y < bottom - distance || y > top + distance) return false;
            if (points.Length == 1) return points[0].DistanceTo(p) <= distance;
            for (var i = 1; i < points.Length; i++)
            {
                if (new Segment(points[i - 1], points[i]).DistanceTo(p) <= distance) return true;
            }

            return false;
        }
    }

    private static void AssertNear(double[] expected, double[] found)
    {
        Assert.Equal(expected.Length, found.Length);
        Assert.All(expected.Zip(found), pair => Assert.InRange(Math.Abs(pair.First - pair.Second), 0, Agreement));
    }
}
