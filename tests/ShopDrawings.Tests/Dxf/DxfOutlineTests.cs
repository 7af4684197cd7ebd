using CsCheck;
using ShopDrawings.Drafting;
using ShopDrawings.Dxf;
using ShopDrawings.Kernel;
using Xunit;
using static ShopDrawings.Tests.Dxf.DxfFiles;

namespace ShopDrawings.Tests.Dxf;

/// <summary>Outlines as polylines, in pieces and by chords, as outside readers see them.</summary>
public class DxfOutlineTests
{
    private static readonly Gen<(Contour Contour, DxfRelease Release, DrawingUnit Unit)[]> Cases =
        Gen.Select(DxfReadBackTests.SomeContour.Where(c => c.AsCircle is null), Gen.Enum<DxfRelease>(), Gen.Enum<DrawingUnit>()).Array[25];

    private static byte[] Written(Drawing drawing, DxfExporter exporter)
    {
        using var stream = new MemoryStream();
        exporter.Write(drawing, stream);
        return stream.ToArray();
    }

    private static Drawing Of(params Entity[] entities) => new("Any", "Any", null, entities);

    private static List<Segment> Read(ReadFile file)
    {
        var mm = file.Units == 1 ? 25.4 : 1;
        return [.. file.Entities.SelectMany(DxfReadBackTests.Path).Select(s => new Segment(s.Start * mm, s.End * mm, s.Bulge))];
    }

    [Fact]
    public void Outline_in_pieces_is_lines_and_arcs_in_joined_order()
    {
        OutsideProgram.DemandPython("ezdxf");
        Cases.Sample(cases =>
        {
            var files = cases.Select(c => Written(Of(new ContourEntity(Outline, c.Contour)), new DxfExporter { Release = c.Release, Unit = c.Unit, Outlines = DxfOutlines.Pieces })).ToList();

            foreach (var ((contour, release, _), (file, read)) in cases.Zip(files.Zip(DxfFiles.Read(files))))
            {
                DxfStructureTests.AssertSound(Tags(file), release);
                Assert.All(read.Entities, e => Assert.Contains(e.Type, (string[])["LINE", "ARC"]));
                var found = Read(read);
                DxfReadBackTests.AssertSamePath(contour.Segments, found);

                // An ARC always runs anticlockwise: it may join by its other end.
                foreach (var (a, b) in found.Zip(found.Skip(1).Append(found[0])))
                    Assert.InRange(new[] { a.Start, a.End }.Min(p => Math.Min(p.DistanceTo(b.Start), p.DistanceTo(b.End))), 0, 2e-4);
            }
        }, iter: Fuzz.Iterations(1), threads: 1);
    }

    [Fact]
    public void Chords_stay_within_the_tolerance()
    {
        OutsideProgram.DemandPython("ezdxf");
        Gen.Select(Cases, RandomDrawings.One(0.005, 0.05, 1.0), RandomDrawings.One(DxfOutlines.Polylines, DxfOutlines.Pieces)).Sample((cases, tolerance, outlines) =>
        {
            var files = cases.Select(c => Written(Of(new ContourEntity(Outline, c.Contour)),
                new DxfExporter { Release = c.Release, Unit = c.Unit, Outlines = outlines, ChordTolerance = tolerance })).ToList();

            foreach (var ((contour, release, _), (file, read)) in cases.Zip(files.Zip(DxfFiles.Read(files))))
            {
                DxfStructureTests.AssertSound(Tags(file), release);
                Assert.All(read.Entities, e => Assert.Equal(outlines == DxfOutlines.Pieces ? "LINE" : "POLYLINE", e.Type));
                var found = Read(read);
                Assert.All(found, s => Assert.Equal(0, s.Bulge));
                Assert.All(found, s => Assert.InRange(contour.DistanceTo(s.Start), 0, 1e-4));
                Assert.All(found, s => Assert.InRange(contour.DistanceTo(s.Middle), 0, tolerance + 1e-4));
                foreach (var (a, b) in found.Zip(found.Skip(1).Append(found[0]))) Assert.Equal(a.End, b.Start);

                // No more of them than the tolerance demands.
                var needed = contour.Segments.Sum(s => s.IsLine ? 1 : Math.Ceiling(Math.Abs(s.SweepRadians) / (2 * Math.Acos(1 - Math.Min(tolerance / s.Radius, 0.29)))));
                Assert.InRange(found.Count, 0, needed + 1);
            }
        }, iter: Fuzz.Iterations(2), threads: 1);
    }

    [Theory]
    [InlineData(DxfRelease.R12)]
    [InlineData(DxfRelease.R2000)]
    public void Round_outline_becomes_chords_and_a_circle_stays(DxfRelease release)
    {
        OutsideProgram.DemandPython("ezdxf");
        var file = Written(
            Of(new ContourEntity(Outline, Contour.Circle(new(50, 50), 30)), new CircleEntity(Bores, new(50, 50), 2.5), new SegmentEntity(Hidden, new Segment(new(0, 0), new(20, 0), 1)),
                new EllipseEntity(Hidden, new(50, 50), new(20, 0), 0.5)),
            new DxfExporter { Release = release, ChordTolerance = 0.1 });

        var read = DxfFiles.Read([file])[0].Entities;
        Assert.Equal(["POLYLINE", "CIRCLE", "POLYLINE", "POLYLINE"], read.Select(e => e.Type));
        Assert.Equal([1, 0, 1], read.Where(e => e.Type == "POLYLINE").Select(e => e.Numbers[0]));
        Assert.All(DxfReadBackTests.Path(read[3]), s => Assert.InRange(Math.Abs(s.Middle.DistanceTo(new(50 - 17.320508, 50)) + s.Middle.DistanceTo(new(50 + 17.320508, 50)) - 40), 0, 0.3));
        Audit(file, "--cut", "OUTLINE");
        Audit(Written(Of(new ContourEntity(Outline, Contour.Circle(new(50, 50), 30))), new DxfExporter { Release = release, Outlines = DxfOutlines.Pieces, ChordTolerance = 0.1 }), "--machine", "--cut", "OUTLINE");
    }

    [Fact]
    public void Outline_of_r12_is_a_polyline_with_bulges() =>
        Assert.Equal(["POLYLINE", "VERTEX", "VERTEX", "VERTEX", "VERTEX", "SEQEND"],
            Tags(Write(Of(new ContourEntity(Outline, Contour.Slot(new(0, 0), new(100, 0), 10))), DxfRelease.R12)).SkipWhile(t => t != (2, "ENTITIES")).Where(t => t.Code == 0).Select(t => t.Value).SkipLast(2));

    [Fact]
    public void Large_arc_is_an_arc_to_the_last_digit()
    {
        OutsideProgram.DemandPython("ezdxf");
        var points = Gen.Select(Gen.Int[-3000, 3000], Gen.Int[-3000, 3000], (x, y) => new Point2(x, y));
        Gen.Select(points, points, Gen.Double[3.7, 7.9], Gen.Bool, Gen.Enum<DrawingUnit>()).Where((a, b, _, _, _) => a.DistanceTo(b) > 10).Array[100].Sample(cases =>
        {
            // The bulge of a flat arc of that radius is the chord over four radii.
            var arcs = cases.Select(c => new Segment(c.Item1, c.Item2, (c.Item4 ? 1 : -1) * c.Item1.DistanceTo(c.Item2) / 4 / Math.Pow(10, c.Item3))).ToList();
            var read = DxfFiles.Read([.. arcs.Zip(cases, (a, c) => Write(Of(new SegmentEntity(Outline, a)), DxfRelease.R2000, c.Item5))]);

            foreach (var (arc, file) in arcs.Zip(read))
            {
                var found = Assert.Single(file.Entities);
                Assert.Equal(ArcGroups.IsFlat(arc) ? "LINE" : "ARC", found.Type);

                // Both ends, and points between, by the equation of the circle as it was read.
                var mm = file.Units == 1 ? 25.4 : 1;
                if (found.Type == "LINE") continue;
                var (centre, radius) = (new Point2(found.Numbers[0], found.Numbers[1]) * mm, found.Numbers[2] * mm);
                foreach (var p in new[] { arc.Start, arc.Middle, arc.End }) Assert.InRange(Math.Abs(p.DistanceTo(centre) - radius), 0, 1e-4);
                var ends = found.Numbers.Skip(3).Select(angle => centre + RandomDrawings.Direction(angle) * radius).ToArray();
                Assert.InRange(ends.Min(p => p.DistanceTo(arc.Start)), 0, 1e-4);
                Assert.InRange(ends.Min(p => p.DistanceTo(arc.End)), 0, 1e-4);
            }
        }, iter: Fuzz.Iterations(1), threads: 1);
    }

    [Theory]
    [InlineData(1e-5)]
    [InlineData(-3e-6)]
    public void Arc_too_large_for_an_arc_is_drawn_by_chords(double bulge)
    {
        OutsideProgram.DemandPython("ezdxf");
        var arc = new Segment(new(0, 0), new(9000, 100), bulge);

        var read = DxfFiles.Read([Write(Of(new SegmentEntity(Outline, arc)))])[0];

        Assert.All(read.Entities, e => Assert.Equal("LINE", e.Type));
        Assert.True(read.Entities.Count > 1);
        DxfReadBackTests.AssertSamePath([arc], Read(read));
    }

    [Fact]
    public void Arc_of_more_than_half_a_large_circle_is_two_arcs()
    {
        OutsideProgram.DemandPython("ezdxf");
        var arc = new Segment(new(0, 0), new(100, 0), 300);

        var file = Write(Of(new SegmentEntity(Outline, arc)));
        var read = DxfFiles.Read([file])[0];

        DxfStructureTests.AssertSound(Tags(file), DxfRelease.R2000);
        Assert.Equal(["ARC", "ARC"], read.Entities.Select(e => e.Type));
        DxfReadBackTests.AssertSamePath([arc], Read(read));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.0049)]
    [InlineData(-1)]
    [InlineData(101)]
    [InlineData(double.NaN)]
    public void Chord_tolerance_that_is_none_is_refused(double tolerance) =>
        Assert.Throws<ArgumentException>(() => new DxfExporter { ChordTolerance = tolerance }.Write(Everything(), Stream.Null));
}
