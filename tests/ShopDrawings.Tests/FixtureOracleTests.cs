using System.Globalization;
using System.Text.Json;

namespace ShopDrawings.Tests;

/// <summary>What the samples say to readers that are not ours. The samples equal what is made: see <see cref="SamplesTests"/>.</summary>
public class FixtureOracleTests
{
    private static readonly string Samples = Path.Combine(OutsideProgram.RepositoryRoot, "output-samples");

    public static TheoryData<string> Machines =>
        [.. Directory.GetDirectories(Samples).Select(d => Path.Combine(d, "machines")).Where(Directory.Exists).SelectMany(Directory.GetDirectories).Select(d => Path.GetRelativePath(Samples, d)).Order(StringComparer.Ordinal)];

    public static TheoryData<string> Drawn =>
        [.. Directory.GetFiles(Samples, "*.svg", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(Samples, Path.GetDirectoryName(f)!)).Distinct().Order(StringComparer.Ordinal)];

    public static TheoryData<string> Routed =>
        [.. Directory.GetDirectories(Samples).Where(d => Directory.Exists(Path.Combine(d, "machines", "router")) && File.ReadAllText(Path.Combine(d, "assembly.json")).Contains("\"method\": \"machined\"", StringComparison.Ordinal)).Select(d => Path.GetFileName(d)!).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Machines))]
    public void Dxf_samples_are_sound_for_their_machine(string machine)
    {
        var files = Directory.GetFiles(Path.Combine(Samples, machine), "*.dxf", SearchOption.AllDirectories).Order(StringComparer.Ordinal).ToArray();
        // Overall sizes and tables stand in drawings only.
        string[] kind = machine.EndsWith("drawing", StringComparison.Ordinal) ? [] : ["--machine"];

        var result = OutsideProgram.RunOracle("dxf_audit.py", "ezdxf shapely", [.. files, .. kind, "--summary", "--cut-if", "OUT*", "--cut-if", "CUT*"]);

        Assert.True(result.ExitCode == 0, result.Output + result.Errors);
        using var report = JsonDocument.Parse(result.Output);
        var reports = files.Length == 1 ? [report.RootElement] : report.RootElement.EnumerateArray().ToArray();
        Assert.Equal(files.Length, reports.Length);
        Assert.All(reports, r => Assert.Empty(r.GetProperty("warnings").EnumerateArray()));
    }

    [Theory]
    [MemberData(nameof(Drawn))]
    public void Svg_samples_are_sound_and_their_texts_are_free(string folder) =>
        SvgOracle.AssertSound([.. Directory.GetFiles(Path.Combine(Samples, folder), "*.svg").Order(StringComparer.Ordinal)]);

    // Of the router's files: what it bores is a circle on a layer that says the depth, as is what it mills round.
    [Theory]
    [MemberData(nameof(Routed))]
    public void Bores_read_from_the_machine_files_are_those_of_the_assembly(string name)
    {
        OutsideProgram.DemandPython("ezdxf shapely");
        var folder = Path.Combine(Samples, name, "machines", "router", "panels");
        using var assembly = JsonDocument.Parse(File.ReadAllText(Path.Combine(Samples, name, "assembly.json")));
        var turned = new Dictionary<string, (double X, double Y)>();
        var expected = new List<string>();
        foreach (var panel in assembly.RootElement.GetProperty("panels").EnumerateArray())
        {
            var id = panel.GetProperty("id").GetString()!;
            // Turned over about its length it lies with its sawn start and far edges against the stops.
            double Banded(string edge) => panel.GetProperty("bands").EnumerateArray().Where(b => b.GetProperty("edge").GetString() == panel.GetProperty("edges").GetProperty(edge).GetString())
                .Sum(b => b.GetProperty("thickness_mm").GetDouble() - b.GetProperty("pre_milled_mm").GetDouble());
            turned[id] = (Banded("start"), panel.GetProperty("width_mm").GetProperty("value").GetDouble() - Banded("far"));
            foreach (var bore in panel.GetProperty("features").EnumerateArray().Where(f => f.GetProperty("type").GetString() == "bore"))
            {
                var surface = bore.GetProperty("surface").GetString()!;
                if (surface is not ("inside" or "outside") || bore.GetProperty("method").GetString() != "machined") continue;
                var depth = bore.GetProperty("depth_mm");
                // What goes through is made from the face that lies up, the inside.
                var isThrough = depth.ValueKind == JsonValueKind.Null;
                expected.Add(Row(id, isThrough ? "inside" : surface, bore.GetProperty("at_mm")[0].GetDouble(), bore.GetProperty("at_mm")[1].GetDouble(), bore.GetProperty("diameter_mm").GetDouble(), isThrough ? "THRU" : Hundredths(depth.GetDouble())));
            }
        }

        var files = Directory.GetFiles(folder, "*.dxf", SearchOption.AllDirectories).Order(StringComparer.Ordinal).ToArray();
        var read = OutsideProgram.RunOracle("dxf_audit.py", "ezdxf shapely", files);
        using var report = JsonDocument.Parse(read.Output);
        var actual = new List<string>();
        foreach (var (file, root) in files.Zip(files.Length == 1 ? [report.RootElement] : report.RootElement.EnumerateArray().ToArray()))
        {
            var program = Path.GetRelativePath(folder, file)[..^"-mm.dxf".Length].Replace('\\', '/');
            var isOutside = program.EndsWith("_outside", StringComparison.Ordinal);
            var id = isOutside ? program[..^"_outside".Length] : program;
            foreach (var circle in root.GetProperty("circles").EnumerateArray())
            {
                var parts = circle.GetProperty("layer").GetString()!.Split('_');
                if (parts.Length < 4 || parts[1] is not ("BORE" or "POCKET")) continue;
                var (x, y, diameter) = (circle.GetProperty("x").GetDouble(), circle.GetProperty("y").GetDouble(), 2 * circle.GetProperty("r").GetDouble());
                if (parts[1] == "BORE") Assert.Equal(parts[2], Hundredths(diameter));
                actual.Add(Row(id, parts[0].ToLowerInvariant(), isOutside ? x + turned[id].X : x, isOutside ? turned[id].Y - y : y, diameter, parts[^1]));
            }
        }

        Assert.NotEmpty(expected);
        Assert.Equal(expected.Distinct().Order(StringComparer.Ordinal), actual.Order(StringComparer.Ordinal));
    }

    // panel face x y diameter depth
    private static string Row(string panel, string face, double x, double y, double diameter, string depth) =>
        string.Create(CultureInfo.InvariantCulture, $"{panel} {face} {x + 0.0:0.0000} {y + 0.0:0.0000} {diameter:0.0000} {depth}");

    private static string Hundredths(double mm) => Math.Round(mm * 100, MidpointRounding.AwayFromZero).ToString("0", CultureInfo.InvariantCulture);
}
