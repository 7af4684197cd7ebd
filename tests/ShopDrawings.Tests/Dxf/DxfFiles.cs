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
        new LinearDimension(Dimensions, new(0, 0), new(600, 0), new(0, -30), false, "600", 5),
        new LinearDimension(Dimensions, new(0, 400), new(0, 0), new(-30, 0), true, "400", 5),
        new LinearDimension(Dimensions, new(37, 37), new(37, 39.5), new(50, 0), true, "2.5", 5),
        new ArrowEntity(Notes, new(100, 200), new(110, 203), new(110, 197)),
    ]);

    public static byte[] Write(Drawing drawing, DxfRelease release = DxfRelease.R2000, DrawingUnit unit = DrawingUnit.Millimetre)
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
    public static void Audit(byte[] file, params string[] options) => InFolder([file], paths =>
    {
        var result = OutsideProgram.RunOracle("dxf_audit.py", "ezdxf shapely", [paths[0], "--summary", .. options]);
        Assert.True(result.ExitCode == 0, result.Output + result.Errors);
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

    public sealed record ReadFile(int Units, string Release, List<ReadEntity> Entities);

    public sealed record ReadEntity(string Type, string Layer, double[] Numbers, string? Text);
}
