using System.Globalization;
using System.Text.Json;

namespace ShopDrawings.Tests;

/// <summary>What the samples say to readers that are not ours. The samples equal what is made: see <see cref="SamplesTests"/>.</summary>
public class FixtureOracleTests
{
    private static readonly string Samples = Path.Combine(OutsideProgram.RepositoryRoot, "output-samples");

    public static TheoryData<string> Dxf => Files("*.dxf");

    public static TheoryData<string> Svg => Files("*.svg");

    public static TheoryData<string> Names => Fixtures.Names;

    [Theory]
    [MemberData(nameof(Dxf))]
    public void Dxf_sample_is_sound_for_a_machine(string path)
    {
        var full = Path.Combine(Samples, path);
        var hasCutOuts = File.ReadAllText(full).Contains("CUTOUT", StringComparison.Ordinal);

        var result = OutsideProgram.RunOracle("dxf_audit.py", "ezdxf shapely", [full, "--machine", "--summary", "--cut", "OUTLINE", .. hasCutOuts ? new[] { "--cut", "CUTOUT" } : []]);

        Assert.True(result.ExitCode == 0, result.Output + result.Errors);
        using var report = JsonDocument.Parse(result.Output);
        Assert.Empty(report.RootElement.GetProperty("warnings").EnumerateArray());
    }

    [Theory]
    [MemberData(nameof(Svg))]
    public void Svg_sample_is_sound_and_its_texts_are_free(string path)
    {
        foreach (var program in new[] { "inkscape", "rsvg-convert", "pdftoppm" }) OutsideProgram.Run(program, "--version");

        var result = OutsideProgram.RunOracle("svg_check.py", "json", Path.Combine(Samples, path), "--min-text", "2.4", "--gap", "0.3", "--margin", "5");

        Assert.True(result.ExitCode == 0, result.Output + result.Errors);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Bores_read_from_the_machine_files_are_those_of_the_assembly(string name)
    {
        OutsideProgram.DemandPython("ezdxf");
        using var assembly = JsonDocument.Parse(File.ReadAllText(Path.Combine(Samples, name, "assembly.json")));
        var expected = new List<string>();
        var actual = new List<string>();
        foreach (var panel in assembly.RootElement.GetProperty("panels").EnumerateArray())
        {
            var id = panel.GetProperty("id").GetString()!;
            foreach (var bore in panel.GetProperty("features").EnumerateArray().Where(f => f.GetProperty("type").GetString() == "bore"))
            {
                var surface = bore.GetProperty("surface").GetString()!;
                if (surface is not ("inside" or "outside") || bore.GetProperty("method").GetString() != "machined") continue;
                var depth = bore.GetProperty("depth_mm");
                expected.Add(Row(id, surface, bore.GetProperty("at_mm")[0].GetDouble(), bore.GetProperty("at_mm")[1].GetDouble(), bore.GetProperty("diameter_mm").GetDouble(),
                    depth.ValueKind == JsonValueKind.Null ? "THRU" : "DEEP_" + Hundredths(depth.GetDouble())));
            }

            var read = OutsideProgram.RunOracle("dxf_audit.py", "ezdxf shapely", Path.Combine(Samples, name, "panels", id + "-mm.dxf"));
            using var report = JsonDocument.Parse(read.Output);
            foreach (var circle in report.RootElement.GetProperty("circles").EnumerateArray())
            {
                var layer = circle.GetProperty("layer").GetString()!;
                if (!layer.Contains("_BORE_", StringComparison.Ordinal)) continue;
                var parts = layer.Split('_');
                var diameter = 2 * circle.GetProperty("r").GetDouble();
                Assert.Equal(parts[2], Hundredths(diameter));
                actual.Add(Row(id, parts[0].ToLowerInvariant(), circle.GetProperty("x").GetDouble(), circle.GetProperty("y").GetDouble(), diameter, string.Join('_', parts[3..])));
            }
        }

        Assert.NotEmpty(expected);
        Assert.Equal(expected.Order(StringComparer.Ordinal), actual.Order(StringComparer.Ordinal));
    }

    // panel face x y diameter depth
    private static string Row(string panel, string face, double x, double y, double diameter, string depth) =>
        string.Create(CultureInfo.InvariantCulture, $"{panel} {face} {x + 0.0:0.0000} {y + 0.0:0.0000} {diameter:0.0000} {depth}");

    private static string Hundredths(double mm) => Math.Round(mm * 100, MidpointRounding.AwayFromZero).ToString("0", CultureInfo.InvariantCulture);

    private static TheoryData<string> Files(string pattern) =>
        [.. Directory.GetFiles(Samples, pattern, SearchOption.AllDirectories).Select(f => Path.GetRelativePath(Samples, f)).Order(StringComparer.Ordinal)];
}
