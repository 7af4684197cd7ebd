using CsCheck;
using ShopDrawings.Drafting;
using ShopDrawings.Dxf;
using ShopDrawings.Kernel;
using Xunit;
using static ShopDrawings.Tests.Dxf.DxfFiles;

namespace ShopDrawings.Tests.Dxf;

public class DxfReadBackTests
{
    private const double Agreement = 1e-4;      // mm

    // Python takes long to start: many files a call.
    private const int Batch = 30;

    private static readonly Gen<double> Coordinate = Gen.OneOf(Gen.Double[-3000, 3000], Gen.Int[-2000, 2000].Select(n => n * 25.4 / 16));
    private static readonly Gen<double> Size = Gen.Double[0.5, 2500];
    private static readonly Gen<Point2> Place = Gen.Select(Coordinate, Coordinate, (x, y) => new Point2(x, y));
    private static readonly Gen<Layer> SomeLayer = Gen.Int[0, 4].Select(i => new[] { Outline, Bores, Hidden, Centres, Notes }[i]);
    private static readonly Gen<string> PlainText = Gen.String[Gen.Char["ABCxyz 0123456789/\"'.,-+()"], 1, 40].Select(s => "a" + s + "z");

    internal static readonly Gen<Contour> SomeContour = Gen.OneOf(
        Gen.Select(Place, Size, Size, Gen.Double[0.01, 0.5], (p, w, h, share) => Contour.RoundedRectangle(p.X, p.Y, p.X + w, p.Y + h, share * Math.Min(w, h))),
        Gen.Select(Place, Size, Contour.Circle),
        Gen.Select(Place, Size, Size, Gen.Double[0, 360], (p, length, width, angle) => Contour.Slot(p, p + Direction(angle) * length, width)),
        Gen.Select(Place, Size, Size, Gen.Double[0.01, 2], (p, w, h, bulge) => Contour.FromSegments(     // an arched head
        [
            new(p, p + new Point2(w, 0)), new(p + new Point2(w, 0), p + new Point2(w, h)),
            new(p + new Point2(w, h), p + new Point2(0, h), bulge), new(p + new Point2(0, h), p),
        ])));

    // Those that become several entities are tested apart.
    private static readonly Gen<Segment> SomeSegment = Gen.Select(Place, Place,
        Gen.OneOf(Gen.Const(0.0), Gen.Double[-5, 5], Gen.Double[-0.01, 0.01], Gen.OneOf(Gen.Const(1.0), Gen.Const(-1.0))), (a, b, bulge) => new Segment(a, b, Math.Abs(bulge) < 1e-4 ? 0 : bulge))
        .Where(s => Math.Abs(s.Bulge) <= 1 || s.Radius <= ArcGroups.GreatestPlain);

    private static readonly Gen<Entity> SomeEntity = Gen.OneOf<Entity>(
        Gen.Select(SomeLayer, SomeContour, (l, c) => (Entity)new ContourEntity(l, c)),
        Gen.Select(SomeLayer, SomeSegment, (l, s) => (Entity)new SegmentEntity(l, s)),
        Gen.Select(SomeLayer, Place, Size, (l, p, r) => (Entity)new CircleEntity(l, p, r)),
        Gen.Select(SomeLayer, Place, (l, p) => (Entity)new PointEntity(l, p)),
        Gen.Select(SomeLayer, Place, Gen.Double[1, 50], PlainText, Gen.Enum<Anchor>(), Gen.Double[-720, 720],
            (l, p, h, t, a, angle) => (Entity)new TextEntity(l, p, h, t, a, angle)),
        Gen.Select(SomeLayer, Place, Place, Place, (l, a, b, c) => (Entity)new ArrowEntity(l, a, b, c)),
        Gen.Select(Place, Place, Place, Gen.Bool, PlainText, (a, b, c, upright, t) => (Entity)new LinearDimension(Dimensions, a, b, c, upright, t, 5)));

    internal static readonly Gen<Drawing> SomeDrawing = SomeEntity.Array[1, 40].Select(entities => new Drawing("Any", "Any", null, entities));

    [Fact]
    public void Drawing_read_by_another_program_is_the_drawing()
    {
        OutsideProgram.DemandPython("ezdxf");
        Gen.Select(SomeDrawing, Gen.Enum<DxfRelease>(), Gen.Enum<DrawingUnit>()).Array[Batch].Sample(cases =>
        {
            var read = Read([.. cases.Select(c => Write(c.Item1, c.Item2, c.Item3))]);

            foreach (var ((drawing, _, unit), file) in cases.Zip(read))
            {
                Assert.Equal(unit == DrawingUnit.Inch ? 1 : 4, file.Units);
                Assert.Equal(drawing.Entities.Length, file.Entities.Count);
                foreach (var (entity, found) in drawing.Entities.Zip(file.Entities)) Agree(entity, found, file.Units);
            }
        }, iter: Fuzz.Iterations(8), threads: 1);
    }

    [Fact]
    public void Drawing_in_inches_is_the_drawing_in_millimetres()
    {
        OutsideProgram.DemandPython("ezdxf");
        SomeDrawing.Array[Batch / 2].Sample(drawings =>
        {
            var read = Read([.. drawings.SelectMany(d => new[] { Write(d), Write(d, unit: DrawingUnit.Inch) })]);

            for (var i = 0; i < read.Count; i += 2)
            {
                Assert.Equal((4, 1), (read[i].Units, read[i + 1].Units));
                Assert.Equal(read[i].Entities.Count, read[i + 1].Entities.Count);
                foreach (var (a, b) in read[i].Entities.Zip(read[i + 1].Entities))
                {
                    Assert.Equal((a.Type, a.Layer, a.Text), (b.Type, b.Layer, b.Text));
                    AssertNear(InMillimetres(a, 4).Numbers, InMillimetres(b, 1).Numbers);
                }
            }
        }, iter: Fuzz.Iterations(4), threads: 1);
    }

    private static void Agree(Entity entity, ReadEntity found, int units)
    {
        if (entity is LinearDimension dimension)
        {
            var mm = units == 1 ? 25.4 : 1;
            Assert.Equal(("DIMENSION", dimension.Text), (found.Type, found.Text));
            AssertNear([0, dimension.Measured, dimension.Measured, dimension.Height], [found.Numbers[0], found.Numbers[1] * mm, found.Numbers[2] * mm, found.Numbers[3] * mm]);
            var parts = DimensionGraphics.Of(dimension).ToList();
            Assert.Equal(parts.Count, found.Block!.Count);
            foreach (var (part, drawn) in parts.Zip(found.Block)) Agree(part, drawn, units);
            return;
        }

        found = InMillimetres(found, units);
        Assert.Equal(entity.Layer.Name, found.Layer);
        switch (entity)
        {
            case ContourEntity { Contour.AsCircle: { } c }:
                AssertNear([c.Centre.X, c.Centre.Y, c.Radius], found.Numbers);
                break;
            case ContourEntity { Contour: var c }:
                AssertSamePath(c.Segments, Path(found));
                Assert.Equal(1, found.Numbers[0]);
                break;
            case SegmentEntity { Segment: var s }:
                if (Math.Abs(s.Bulge) * s.Start.DistanceTo(s.End) < 1e-6) s = s with { Bulge = 0 };
                AssertSamePath([s], Path(found));
                if (s.IsLine) Assert.Equal("LINE", found.Type);
                else if (s.Radius is > 1 and < 5000) Assert.Equal("ARC", found.Type);
                break;
            case CircleEntity c:
                AssertNear([c.Centre.X, c.Centre.Y, c.Radius], found.Numbers);
                break;
            case PointEntity p:
                AssertNear([p.Position.X, p.Position.Y], found.Numbers);
                break;
            case ArrowEntity a:
                AssertNear([a.Tip.X, a.Tip.Y, a.Left.X, a.Left.Y, a.Right.X, a.Right.Y], found.Numbers);
                break;
            case TextEntity t:
                var (horizontal, vertical) = t.Anchor switch { Anchor.BaseLeft => (0, 0), Anchor.BaseCentre => (1, 0), Anchor.BaseRight => (2, 0), _ => (1, 2) };
                var turns = Math.Round((found.Numbers[3] - t.AngleDegrees) / 360);
                AssertNear([t.Position.X, t.Position.Y, t.Height, t.AngleDegrees + 360 * turns, horizontal, vertical], found.Numbers);
                Assert.InRange(found.Numbers[3], 0, 360 - 1e-6);
                Assert.Equal(t.Text, found.Text);
                break;
            default:
                Assert.Fail(entity.ToString());
                break;
        }
    }

    // The lengths of what was read, in mm; angles, bulges and flags as they are.
    private static ReadEntity InMillimetres(ReadEntity e, int units)
    {
        Func<int, bool> isLength = e.Type switch
        {
            "ARC" or "TEXT" => i => i < 3,
            "POLYLINE" => i => i > 0 && i % 3 != 0,
            "DIMENSION" => i => i > 0,
            _ => _ => true,
        };
        return e with { Numbers = [.. e.Numbers.Select((n, i) => units == 1 && isLength(i) && !(e.Type == "TEXT" && i == 3) ? n * 25.4 : n)] };
    }

    internal static List<Segment> Path(ReadEntity e)
    {
        var n = e.Numbers;
        switch (e.Type)
        {
            case "LINE":
                return [new(new(n[0], n[1]), new(n[2], n[3]))];
            case "ARC":
                var (centre, sweep) = (new Point2(n[0], n[1]), (n[4] - n[3] + 360) % 360);
                return [new(centre + Direction(n[3]) * n[2], centre + Direction(n[4]) * n[2], Math.Tan(sweep * Math.PI / 720))];
            default:
                Assert.Equal("POLYLINE", e.Type);
                var vertices = n.Skip(1).Chunk(3).ToList();
                return [.. vertices.Zip(n[0] == 1 ? vertices.Skip(1).Append(vertices[0]) : vertices.Skip(1))
                    .Select(v => new Segment(new(v.First[0], v.First[1]), new(v.Second[0], v.Second[1]), v.First[2]))];
        }
    }

    internal static void AssertSamePath(IReadOnlyCollection<Segment> expected, IReadOnlyCollection<Segment> found, double agreement = Agreement)
    {
        foreach (var (a, b) in new[] { (expected, found), (found, expected) })
        {
            foreach (var p in a.SelectMany(s => Points(s, 3)))
            {
                var distance = b.Min(s => Distance(s, p));
                if (!(distance <= agreement)) Assert.Fail($"({p.X}, {p.Y}) is {distance} mm off");
            }
        }
    }

    // From the centre of a very large arc, doubles cannot tell 1e-4 mm: then by its equation in the frame of the chord, without the centre.
    private static double Distance(Segment s, Point2 p)
    {
        if (s.IsLine || s.Radius < 1e6) return s.DistanceTo(p);
        var (half, along) = (s.Start.DistanceTo(s.End) / 2, s.End - s.Start);
        var seen = p - (s.Start + s.End) * 0.5;
        var (u, v) = (seen.Dot(along) / (2 * half), along.Cross(seen) / (2 * half));
        var off = (s.Bulge * s.Bulge - 1) * half / (2 * s.Bulge);
        return Math.Abs(u * u + v * v + 2 * off * v - half * half) / (2 * s.Radius);
    }

    private static IEnumerable<Point2> Points(Segment s, int depth)
    {
        if (depth == 0) return [s.Start, s.Middle, s.End];
        var half = Math.Tan(Math.Atan(s.Bulge) / 2);
        return Points(new Segment(s.Start, s.Middle, half), depth - 1).Concat(Points(new Segment(s.Middle, s.End, half), depth - 1));
    }

    private static Point2 Direction(double degrees) => new(Math.Cos(degrees * Math.PI / 180), Math.Sin(degrees * Math.PI / 180));

    private static void AssertNear(double[] expected, double[] found)
    {
        Assert.Equal(expected.Length, found.Length);
        Assert.All(expected.Zip(found), pair => Assert.InRange(Math.Abs(pair.First - pair.Second), 0, Agreement));
    }
}
