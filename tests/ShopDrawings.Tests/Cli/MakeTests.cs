using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.Json;
using ShopDrawings.Cli;

namespace ShopDrawings.Tests.Cli;

public class MakeTests
{
    private const string OverlappingPanels =
        """
        project: Two panels in one place
        boards: {ply: {kind: plywood, thickness: 18}}
        panels:
          one: {board: ply, length: 300, width: 200, place: {corner: [0, 0, 0], outside: back}}
          two: {board: ply, length: 300, width: 200, place: {corner: [100, 10, 0], outside: back}}
          three: {board: ply, length: 300, width: 200, place: {corner: [0, 100, 0], outside: back}}
        """;

    private static string Fixture(string name) => Path.Combine(Fixtures.Folder, name + ".yaml");

    [Fact]
    public void Sound_file_is_done()
    {
        using var folder = new TemporaryFolder();

        var call = Call.Of("make", Fixture("wall-cupboard"), "--out", folder["out"]);

        Assert.Equal(ExitCode.Done, call.ExitCode);
        Assert.StartsWith("Seed jar cupboard: 8 panels, 63 bores, 9 joints; ", call.Output, StringComparison.Ordinal);
        Assert.Empty(call.Errors);
    }

    [Fact]
    public void Error_of_a_check_withholds_machine_files_stamps_sheets_and_ends_with_one()
    {
        using var folder = new TemporaryFolder();
        File.WriteAllText(folder["p.yaml"], OverlappingPanels);

        var call = Call.Of("make", folder["p.yaml"], "--out", folder["out"]);

        Assert.Equal(ExitCode.DoneWithErrors, call.ExitCode);
        Assert.Contains("error: panels-overlap: one and two take the same space, 200 mm × 8 mm × 200 mm", call.Errors, StringComparison.Ordinal);
        var files = TemporaryFolder.Contents(folder["out"]).Keys;
        Assert.Equal(["machines/router/panels/three-mm.dxf"], files.Where(f => f.EndsWith(".dxf", StringComparison.Ordinal)));
        Assert.Contains("DO NOT CUT", File.ReadAllText(folder["out/panels/one.svg"]), StringComparison.Ordinal);
        Assert.DoesNotContain("DO NOT CUT", File.ReadAllText(folder["out/panels/three.svg"]), StringComparison.Ordinal);
        using var findings = JsonDocument.Parse(File.ReadAllText(folder["out/findings.json"]));
        Assert.Equal(["one", "two"], findings.RootElement.GetProperty("withheld").EnumerateArray().Select(e => e.GetString()));
    }

    [Fact]
    public void Waived_rule_holds_nothing_back_and_says_why()
    {
        using var folder = new TemporaryFolder();
        File.WriteAllText(folder["p.yaml"], OverlappingPanels + "\nchecks: {panels-overlap: {waive: they are alternatives}}\n");

        var call = Call.Of("make", folder["p.yaml"], "--out", folder["out"]);

        Assert.Equal(ExitCode.Done, call.ExitCode);
        Assert.Contains("waived because: they are alternatives", call.Errors, StringComparison.Ordinal);
        Assert.Equal(3, TemporaryFolder.Contents(folder["out"]).Keys.Count(f => f.EndsWith(".dxf", StringComparison.Ordinal)));
        Assert.Contains("they are alternatives", File.ReadAllText(folder["out/findings.json"]), StringComparison.Ordinal);
    }

    [Fact]
    public void Json_says_what_happened()
    {
        using var folder = new TemporaryFolder();

        var call = Call.Of("make", Fixture("single-panel"), "--out", folder["out"], "--json");

        using var report = JsonDocument.Parse(call.Output);
        Assert.Equal(0, report.RootElement.GetProperty("exit_code").GetInt32());
        var files = report.RootElement.GetProperty("files").EnumerateArray().Select(f => f.GetString()!).Order(StringComparer.Ordinal);
        Assert.Equal(TemporaryFolder.Contents(folder["out"]).Keys.Where(f => f != OutputFolder.Manifest), files);
    }

    [Fact]
    public void Json_of_a_wrong_file_lists_every_mistake()
    {
        using var folder = new TemporaryFolder();
        File.WriteAllText(folder["p.yaml"], "project: x\npanels:\n  a: {board: b, length: 1,5, width: -2}\n");

        var call = Call.Of("make", folder["p.yaml"], "--out", folder["out"], "--json");

        using var report = JsonDocument.Parse(call.Output);
        Assert.Equal(2, report.RootElement.GetProperty("exit_code").GetInt32());
        Assert.NotEmpty(report.RootElement.GetProperty("mistakes").EnumerateArray());
        Assert.False(Directory.Exists(folder["out"]));
    }

    [Fact]
    public void Json_says_what_was_wrong_with_a_call()
    {
        var call = Call.Of("make", "no-such-file.yaml", "--json");

        using var report = JsonDocument.Parse(call.Output);
        Assert.Equal(2, report.RootElement.GetProperty("exit_code").GetInt32());
        Assert.Equal("there is no file “no-such-file.yaml”", report.RootElement.GetProperty("error").GetString());
    }

    [Theory]
    [InlineData("make")]
    [InlineData("make", "no-such-file.yaml")]
    [InlineData("make", "--colour", "x.yaml")]
    [InlineData("mkae", "x.yaml")]
    [InlineData("schema", "cabinet")]
    [InlineData]
    public void Wrong_call_ends_with_two_and_points_to_help(params string[] args)
    {
        var call = Call.Of(args);

        Assert.Equal(ExitCode.WrongInput, call.ExitCode);
        Assert.Contains("error: ", call.Errors, StringComparison.Ordinal);
        Assert.Empty(call.Output);
    }

    [Fact]
    public void Help_teaches()
    {
        var call = Call.Of("--help");

        Assert.Equal(ExitCode.Done, call.ExitCode);
        foreach (var word in new[] { "shopdrawings new cabinet.yaml", "shopdrawings make cabinet.yaml --out out", "Exit codes", "schema" })
            Assert.Contains(word, call.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void File_that_is_not_utf8_is_refused_with_its_line()
    {
        using var folder = new TemporaryFolder();
        File.WriteAllBytes(folder["p.yaml"], [.. Encoding.ASCII.GetBytes("project: x\n# caf"), 0xE9, (byte)'\n']);

        var call = Call.Of("make", folder["p.yaml"], "--out", folder["out"]);

        Assert.Equal(ExitCode.WrongInput, call.ExitCode);
        Assert.Contains("p.yaml(2,1): error: this line is not UTF-8", call.Errors, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Same_input_gives_the_same_bytes_under_another_culture(string name)
    {
        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        culture.NumberFormat.NumberDecimalSeparator = ",";
        culture.NumberFormat.NumberGroupSeparator = ".";
        culture.NumberFormat.NegativeSign = "−";
        culture.DateTimeFormat.DateSeparator = ".";
        using var folder = new TemporaryFolder();
        Call.Of("make", Fixture(name), "--out", folder["plain"]);
        var before = CultureInfo.CurrentCulture;
        try
        {
            (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture) = (culture, culture);
            Call.Of("make", Fixture(name), "--out", folder["foreign"]);
        }
        finally
        {
            (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture) = (before, before);
        }

        Assert.Equal(TemporaryFolder.Contents(folder["plain"]), TemporaryFolder.Contents(folder["foreign"]));
    }

    [Fact]
    public void Same_input_gives_the_same_bytes_in_another_process_place_and_time_zone()
    {
        using var folder = new TemporaryFolder();
        Directory.CreateDirectory(folder["a/b"]);
        var runs = new[] { (Zone: "Pacific/Auckland", Language: "de_DE.UTF-8", Place: folder.Path), (Zone: "America/New_York", Language: "C", Place: folder["a/b"]) };

        foreach (var (zone, language, place) in runs)
        {
            var start = new ProcessStartInfo("dotnet", [typeof(Program).Assembly.Location, "make", Path.GetRelativePath(place, Fixture("wall-cupboard")), "--out", "made"]) { WorkingDirectory = place, RedirectStandardOutput = true };
            (start.Environment["TZ"], start.Environment["LANG"], start.Environment["LC_ALL"]) = (zone, language, language);
            using var process = Process.Start(start)!;
            process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            Assert.Equal(0, process.ExitCode);
        }

        Assert.Equal(TemporaryFolder.Contents(folder["made"]), TemporaryFolder.Contents(folder["a/b/made"]));
    }

    public static TheoryData<string> Names => Fixtures.Names;
}
