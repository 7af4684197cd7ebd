using System.Text.Json;
using ShopDrawings.Drafting;
using ShopDrawings.Dxf;
using ShopDrawings.Kernel;
using Xunit;

namespace ShopDrawings.Tests.Dxf;

/// <summary>What the tests of the DXF files share: drawings, and what outside readers say of their files.</summary>
internal static class DxfFiles
{
    public static readonly Layer Outline = new("OUTLINE", Role.Outline, "Outer edge of the panel");
    public static readonly Layer Bores = new("INSIDE_BORE_500_DEEP_1200", Role.Bore, "Holes of 5 mm, 12 mm deep");
    public static readonly Layer Hidden = new("HIDDEN", Role.Hidden, "Hidden edges");
    public static readonly Layer Centres = new("CENTRES", Role.Centre, "Centre lines");
    public static readonly Layer Notes = new("NOTES", Role.Lettering, "Notes");
    public static readonly Layer Dimensions = new("DIMENSIONS", Role.Dimension, "Dimensions");

    /// <summary>A block of a hinge's cup and its screws.</summary>
    public static readonly Block Cup = new("CUP",
    [
        new CircleEntity(Bores, new(0, 0), 17.5), new CircleEntity(Bores, new(-22.5, 5.5), 1.25), new CircleEntity(Bores, new(22.5, 5.5), 1.25),
        new SegmentEntity(Centres, new(new(-30, 0), new(30, 0))), new TextEntity(Notes, new(0, 8), 3, "cup"),
    ]);

    /// <summary>A drawing that holds every entity.</summary>
    public static Drawing Everything(string note = "Side, 2 off, grain up") => new("Side", "A panel", null,
    [
        new ContourEntity(Outline, Contour.RoundedRectangle(0, 0, 600, 400, 20)),
        new ContourEntity(Outline, Contour.Circle(new(300, 200), 30)),
        new ContourEntity(Hidden, Contour.Slot(new(80, 80), new(200, 120), 12)),
        new CircleEntity(Bores, new(37, 37), 2.5),
        new CircleEntity(Bores, new(37, 69), 2.5),
        new SegmentEntity(Centres, new Segment(new(-10, 200), new(610, 200))),
        new SegmentEntity(Hidden, new Segment(new(400, 100), new(450, 150), Math.Tan(Math.PI / 8))),
        new SegmentEntity(Hidden, new Segment(new(450, 150), new(500, 100), -1)),
        new SegmentEntity(Hidden, new Segment(new(0, 300), new(600, 300), 0.002)),
        new PointEntity(Centres, new(300, 200)),
        new TextEntity(Notes, new(20, 340), 5, note),
        new TextEntity(Notes, new(20, 320), 5, note, Anchor.BaseCentre, 30),
        new TextEntity(Notes, new(500, 320), 5, note, Anchor.BaseRight, -90),
        new TextEntity(Notes, new(500, 250), 5, note, Anchor.Middle),
        new LinearDimension(Dimensions, new(0, 0), new(600, 0), new(0, -30), false, "600 mm", 5),
        new LinearDimension(Dimensions, new(0, 400), new(0, 0), new(-30, 0), true, "400 mm", 5),
        new LinearDimension(Dimensions, new(37, 37), new(37, 39.5), new(50, 0), true, "2.5 mm", 5),
        new ArrowEntity(Notes, new(100, 200), new(110, 203), new(110, 197)),
        new EllipseEntity(Hidden, new(300, 100), new(40, 10), 0.4),
        new EllipseEntity(Hidden, new(300, 100), new(60, 0), 0.5, 300, 400),
        new LeaderEntity(Notes, [new(300, 200), new(340, 260), new(360, 260)], 5),
        new HatchEntity(Centres, Contour.RoundedRectangle(420, 20, 580, 90, 20), [Contour.Circle(new(460, 55), 20), Contour.Slot(new(510, 50), new(540, 60), 15)], new HatchPattern(45, 6)),
        new HatchEntity(Notes, Contour.Rectangle(20, 200, 40, 220), [Contour.Circle(new(30, 210), 5)], null),
        new InsertEntity(Notes, Cup, new(100, 300)),
        new InsertEntity(Notes, Cup, new(200, 300), 90, 1.5),
        new AlignedDimension(Dimensions, new(100, 300), new(400, 700), new(80, 320), "500 mm", 5),
        new RadiusDimension(Dimensions, new(580, 380), new(594.142136, 394.142136), "R20 mm", 3.5),
        new DiameterDimension(Dimensions, new(300, 200), new(321.213203, 221.213203), "Dia 60 mm", 5),
        new AngularDimension(Dimensions, new(0, 0), new(100, 0), new(0, 80), 60, "90 deg", 5),
        new OrdinateDimension(Dimensions, new(0, 0), new(37, 69), new(50, -60), false, "37 mm", 5),
        new OrdinateDimension(Dimensions, new(0, 0), new(37, 69), new(-60, 75), true, "69 mm", 5),
    ]);

    public static byte[] Write(Drawing drawing, DxfRelease? release = null, DrawingUnit unit = DrawingUnit.Millimetre)
    {
        using var stream = new MemoryStream();
        new DxfExporter { Release = release, Unit = unit }.Write(drawing, stream);
        return stream.ToArray();
    }

    /// <summary>The tags of a file: every second line a group code, the others values.</summary>
    public static List<(int Code, string Value)> Tags(byte[] file)
    {
        var lines = System.Text.Encoding.UTF8.GetString(file).Split('\n');
        Assert.Equal("", lines[^1]);
        Assert.Equal(1, lines.Length % 2);
        return [.. Enumerable.Range(0, lines.Length / 2).Select(i => (int.Parse(lines[2 * i], System.Globalization.CultureInfo.InvariantCulture), lines[2 * i + 1]))];
    }

    /// <summary>Fails unless the audit finds nothing wrong with a file.</summary>
    public static void Audit(byte[] file, params string[] options) => Audit([file], options);

    /// <summary>Fails unless the audit finds nothing wrong with any of the files.</summary>
    public static void Audit(IReadOnlyList<byte[]> files, params string[] options) => InFolder(files, paths =>
    {
        var result = OutsideProgram.RunOracle("dxf_audit.py", "ezdxf shapely", [.. paths, "--summary", .. options]);
        if (result.ExitCode == 0) return;
        using var report = JsonDocument.Parse(result.Output);
        var first = report.RootElement.ValueKind == JsonValueKind.Array ? report.RootElement.EnumerateArray().First(r => !r.GetProperty("ok").GetBoolean()) : report.RootElement;
        Assert.Fail(first + result.Errors);
    });

    /// <summary>What the outside reader finds in each file.</summary>
    public static List<ReadFile> Read(IReadOnlyList<byte[]> files)
    {
        List<ReadFile> read = [];
        InFolder(files, paths =>
        {
            var result = OutsideProgram.RunOracle("dxf_entities.py", "ezdxf", paths);
            Assert.True(result.ExitCode == 0, result.Output + result.Errors);
            read = JsonSerializer.Deserialize<List<ReadFile>>(result.Output, JsonSerializerOptions.Web)!;
        });
        return read;
    }

    /// <summary>What a person sees of each file, as the outside reader takes it apart.</summary>
    public static List<PictureFile> Pictures(IReadOnlyList<byte[]> files)
    {
        List<PictureFile> read = [];
        InFolder(files, paths =>
        {
            var result = OutsideProgram.RunOracle("dxf_entities.py", "ezdxf", ["--picture", .. paths]);
            Assert.True(result.ExitCode == 0, result.Output + result.Errors);
            read = JsonSerializer.Deserialize<List<PictureFile>>(result.Output, JsonSerializerOptions.Web)!;
        });
        return read;
    }

    private static void InFolder(IReadOnlyList<byte[]> files, Action<string[]> use)
    {
        var folder = Directory.CreateTempSubdirectory("dxf");
        try
        {
            var paths = files.Select((file, i) =>
            {
                var path = Path.Combine(folder.FullName, $"{i}.dxf");
                File.WriteAllBytes(path, file);
                return path;
            }).ToArray();
            use(paths);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    public sealed record ReadFile(int Units, string Release, List<ReadEntity> Entities, List<ReadEntity> Paper, Dictionary<string, int> Blocks);

    public sealed record ReadEntity(string Type, string Layer, double[] Numbers, string? Text, List<ReadEntity>? Block = null);

    public sealed record PictureFile(List<PictureLine> Entities);

    public sealed record PictureLine(string Layer, double[] Points, string? Text);
}
