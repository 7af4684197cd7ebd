using System.Diagnostics;
using System.Runtime.Loader;
using System.Text.Json;
using ShopDrawings.Cli;
using ShopDrawings.Kernel;
using ShopDrawings.SampleExporter;

namespace ShopDrawings.Tests.Cli;

public class PlugInTests
{
    private static readonly string Fixture = Path.Combine(Fixtures.Folder, "wall-cupboard.yaml");

    [Fact]
    public void Sample_writes_its_list_beside_our_files()
    {
        using var folder = new TemporaryFolder();
        Call.Of("make", Fixture, "--out", folder["plain"]);

        var call = Call.Of("make", Fixture, "--out", folder["out"], "--exporters", PlugInFile.Sample);

        Assert.Equal((ExitCode.Done, ""), (call.ExitCode, call.Errors));
        var files = TemporaryFolder.Contents(folder["out"]);
        Assert.Equal(TemporaryFolder.Contents(folder["plain"]).Keys.Append("lists/cut-list.md").Order(StringComparer.Ordinal), files.Keys);
        var list = File.ReadAllText(folder["out/lists/cut-list.md"]);
        Assert.StartsWith("# Seed jar cupboard\n", list, StringComparison.Ordinal);
        Assert.Equal(8, Fixtures.Design("wall-cupboard").Assembly.Panels.Count(p => list.Contains(p.Id, StringComparison.Ordinal)));
    }

    [Fact]
    public void Sample_works_in_a_process_of_its_own_and_is_in_the_report()
    {
        using var folder = new TemporaryFolder();
        var start = new ProcessStartInfo("dotnet", [typeof(Program).Assembly.Location, "make", Fixture, "--out", "made", "--exporters", PlugInFile.Sample, "--json"]) { WorkingDirectory = folder.Path, RedirectStandardOutput = true };

        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();

        Assert.Equal(0, process.ExitCode);
        using var report = JsonDocument.Parse(output);
        Assert.Contains("lists/cut-list.md", report.RootElement.GetProperty("files").EnumerateArray().Select(f => f.GetString()));
        Assert.True(File.Exists(folder["made/lists/cut-list.md"]));
    }

    [Fact]
    public void Sample_registered_in_code_writes_drawings_whose_format_asks_for_it()
    {
        var design = Fixtures.Design("single-panel");
        var job = Shop.Draw(design, Shop.Check(design));
        job = job with { Drawings = [.. job.Drawings.Select(d => d.Format == "dxf" ? d with { Format = "outline-text" } : d)] };
        var exporters = ExporterSet.Standard.With(new CutListExporter()).With(new OutlineTextExporter());

        var files = Shop.Export(job, exporters);

        Assert.Equal(typeof(OutlineTextExporter), exporters.Find("outline-text")!.GetType());
        Assert.Null(exporters.Find("no-such-format"));
        Assert.Contains(files, f => f.Path == "lists/cut-list.md");
        using var content = new MemoryStream();
        files.Single(f => f.Path == "machines/router/panels/cover-plate-mm.outline-text").Write(content);
        var lines = System.Text.Encoding.UTF8.GetString(content.ToArray()).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(job.Drawings.Single(d => d.Format == "outline-text").Drawing.Entities.Length, lines.Length);
        Assert.Contains(lines, l => l.Contains(" circle ", StringComparison.Ordinal));
    }

    [Fact]
    public void Exporter_of_one_of_our_formats_takes_its_place_and_says_so()
    {
        using var folder = new TemporaryFolder();
        var acme = PlugInFile.Write(folder["acme.dll"], ("Acme.Lists", typeof(FormatExporter), "csv"), ("Acme.Machine", typeof(FormatDrawingExporter), "dxf"));

        var call = Call.Of("make", Fixture, "--out", folder["out"], "--exporters", acme);

        Assert.Equal(ExitCode.Done, call.ExitCode);
        Assert.Equal("exporter \"csv\" of acme.dll takes the place of our own\nexporter \"dxf\" of acme.dll takes the place of our own\n", call.Errors);
        Assert.DoesNotContain(TemporaryFolder.Contents(folder["out"]).Keys, f => f.EndsWith(".csv", StringComparison.Ordinal));
        Assert.Equal("x", File.ReadAllText(folder["out/theirs.txt"]));
        Assert.Equal("theirs: left-side", File.ReadAllText(folder["out/machines/router/panels/left-side-mm.dxf"]));
    }

    [Fact]
    public void Assembly_named_twice_counts_once_and_several_may_be_named()
    {
        using var folder = new TemporaryFolder();
        var acme = PlugInFile.Write(folder["acme.dll"], ("Acme.Lists", typeof(FormatExporter), "acme"));

        var call = Call.Of("make", Fixture, "--out", folder["out"], "--exporters", acme, "--exporters", PlugInFile.Sample, "--exporters", Path.Combine(folder.Path, ".", "acme.dll"));

        Assert.Equal((ExitCode.Done, ""), (call.ExitCode, call.Errors));
        Assert.True(File.Exists(folder["out/theirs.txt"]) && File.Exists(folder["out/lists/cut-list.md"]));
    }

    [Fact]
    public void File_that_is_none_is_refused() => Refused("no-such.dll", "there is no file “no-such.dll” with exporters");

    [Fact]
    public void Name_that_is_empty_is_refused() => Refused("", "there is no file “” with exporters");

    [Fact]
    public void Folder_is_refused() => Refused(Fixtures.Folder, "is a folder; name the exporters' .dll file in it");

    [Fact]
    public void File_that_is_no_assembly_is_refused() => Refused(Fixture, "wall-cupboard.yaml is not a .NET assembly; name the .dll that the exporters' project builds");

    [Fact]
    public void Empty_file_is_refused()
    {
        using var folder = new TemporaryFolder();
        File.WriteAllBytes(folder["acme.dll"], []);

        Refused(folder["acme.dll"], "acme.dll is not a .NET assembly");
    }

    [Fact]
    public void Native_library_is_refused() =>
        Refused(Directory.GetFiles(Path.GetDirectoryName(typeof(object).Assembly.Location)!, "*System.Native.*").First(f => !f.EndsWith(".a", StringComparison.Ordinal)), "is not a .NET assembly");

    [Theory]
    [InlineData("ShopDrawings")]
    [InlineData("ShopDrawings.Drafting")]
    [InlineData("System.Runtime")]
    public void Assembly_built_against_something_newer_is_refused(string referenced)
    {
        using var folder = new TemporaryFolder();

        Refused(PlugInFile.BuiltAgainst(referenced, folder["acme.dll"]), $"acme.dll does not fit this program, which is ShopDrawings 0.1.0 on .NET 10; build it against them: ", $"'{referenced}, Version=99.");
    }

    [Fact]
    public void Assembly_finds_what_it_needs_in_its_own_folder()
    {
        using var folder = new TemporaryFolder();
        var helper = PlugInFile.Write(folder["helper.dll"], ("Helper.Lists", typeof(FormatExporter), "helped"));
        var context = new AssemblyLoadContext("building", isCollectible: true);
        var acme = PlugInFile.Write(folder["acme.dll"], ("Acme.Lists", context.LoadFromAssemblyPath(helper).GetType("Helper.Lists")!, null));
        context.Unload();

        var call = Call.Of("make", Fixture, "--out", folder["out"], "--exporters", acme);

        Assert.Equal((ExitCode.Done, ""), (call.ExitCode, call.Errors));
        Assert.True(File.Exists(folder["out/theirs.txt"]));
        File.Move(helper, folder["elsewhere"]);
        Refused(acme, "acme.dll needs helper, which is not beside it; copy all that its project builds");
    }

    [Fact]
    public void Assembly_without_an_exporter_is_refused() => Refused(typeof(Tape).Assembly.Location, "there is no exporter in ShopDrawings.Kernel.dll; one is a public class");

    [Fact]
    public void Formats_that_are_none_are_refused() => Assert.All(new[] { null, "", "Csv", "a b", "ü", "../x", "a.b" }, format =>
    {
        using var folder = new TemporaryFolder();

        Refused(PlugInFile.Write(folder["acme.dll"], ("Acme.Lists", typeof(FormatExporter), format)), $"Acme.Lists of acme.dll has {(format is null or "" ? "no format" : $"the format “{format}”")}; a format is named with small letters a–z, digits and dashes");
    });

    [Theory]
    [InlineData("constructor")]
    [InlineData("format")]
    public void Exporter_that_cannot_be_made_is_refused(string where)
    {
        using var folder = new TemporaryFolder();

        Refused(PlugInFile.Write(folder["acme.dll"], ("Acme.Lists", typeof(ThrowingExporter), where)), $"Acme.Lists of acme.dll cannot be made: no template in {where}");
    }

    [Fact]
    public void Two_exporters_of_one_format_are_refused()
    {
        using var folder = new TemporaryFolder();
        var one = PlugInFile.Write(folder["one.dll"], ("One.Lists", typeof(FormatExporter), "acme"));
        var two = PlugInFile.Write(folder["two.dll"], ("Two.Lists", typeof(FormatDrawingExporter), "acme"));
        var both = PlugInFile.Write(folder["both.dll"], ("B", typeof(FormatExporter), "acme"), ("A", typeof(FormatExporter), "acme"));

        Refused([one, two], "Two.Lists of two.dll and One.Lists of one.dll both have the format “acme”; name one of them only");
        Refused(both, "B of both.dll and A of both.dll both have the format “acme”");
    }

    [Theory]
    [InlineData("export", "no template in export")]
    [InlineData("list", "no template in list")]
    [InlineData("write", "no template in write")]
    [InlineData("null", "it gave nothing")]
    [InlineData("null in the list", "it gave null in place of a file")]
    public void Exporter_that_fails_is_named_and_nothing_is_written(string where, string reason) => Fails(("Acme.Lists", typeof(ThrowingExporter), where), $"exporter \"thrower\" failed: {reason}");

    [Fact]
    public void Drawing_exporter_that_fails_is_named_and_nothing_is_written() =>
        Fails(("Acme.Machine", typeof(ThrowingDrawingExporter), "no such layer"), "exporter \"dxf\" failed: no such layer");

    [Theory]
    [InlineData("/elsewhere/x.txt")]
    [InlineData("../x.txt")]
    [InlineData("a/../../x.txt")]
    [InlineData("a/./x.txt")]
    [InlineData("a\\x.txt")]
    [InlineData("c:x.txt")]
    [InlineData("a//x.txt")]
    [InlineData("a/")]
    [InlineData("")]
    [InlineData("nul.txt")]
    [InlineData("x.")]
    [InlineData("x\n")]
    [InlineData(OutputFolder.Manifest)]
    public void Path_that_may_lead_out_of_the_folder_is_refused(string path) => Fails(("Acme.Lists", typeof(PathExporter), "fine.txt|" + path), $"exporter \"paths\" failed: “{path}” is not a path in the output folder; join names");

    [Theory]
    [InlineData("lists/panels.csv", "it writes “lists/panels.csv”, but exporter \"csv\" writes a file “lists/panels.csv”")]
    [InlineData("Lists/PANELS.csv", "it writes “Lists/PANELS.csv”, but exporter \"csv\" writes a file “Lists/PANELS.csv”")]
    [InlineData("panels/cover-plate.svg/x", "it writes “panels/cover-plate.svg/x”, but exporter \"svg\" writes a file “panels/cover-plate.svg”")]
    [InlineData("panels", "it writes “panels”, which is a folder of other files")]
    [InlineData("a|b|A", "it writes “A”, but exporter \"paths\" writes a file “A”")]
    public void Path_that_is_taken_is_refused(string paths, string reason) => Fails(("Acme.Lists", typeof(PathExporter), paths), $"exporter \"paths\" failed: {reason}");

    [Fact]
    public void Exporter_registered_in_code_is_named_and_no_plug_in()
    {
        var job = Shop.Draw(Fixtures.Design("single-panel"), []);
        var faulty = new Taken();

        var fault = Assert.Throws<ExporterException>(() => Shop.Export(job, ExporterSet.Standard.With(faulty)));

        Assert.Same(faulty, fault.Exporter);
        Assert.Equal("exporter \"paths\" failed: it writes “findings.json”, but exporter \"json\" writes a file “findings.json”", fault.Message);
        Assert.Null(PlugInContext.FileOf(fault.Exporter));
        Assert.Null(Program.ExitCodeOf(fault));
    }

    [Fact]
    public void Format_that_is_none_cannot_be_registered_in_code() => Assert.Throws<ArgumentException>(() => ExporterSet.Standard.With(new Unnamed()));

    private sealed class Taken() : PathExporter("findings.json");

    private sealed class Unnamed() : FormatExporter("");

    private static void Refused(string plugIn, params string[] says) => Refused([plugIn], says);

    private static void Refused(string[] plugIns, params string[] says)
    {
        using var folder = new TemporaryFolder();

        var call = Call.Of(["make", Fixture, "--out", folder["out"], "--json", .. plugIns.SelectMany(p => new[] { "--exporters", p })]);

        Assert.Equal(ExitCode.WrongInput, call.ExitCode);
        Assert.All(says, s => Assert.Contains(s, call.Errors, StringComparison.Ordinal));
        Assert.Empty(Directory.GetFileSystemEntries(folder.Path));
        AssertReport(call);
    }

    private static void Fails((string, Type, string?) exporter, string says)
    {
        using var folder = new TemporaryFolder();
        var acme = PlugInFile.Write(folder["acme.dll"], exporter);
        Directory.CreateDirectory(folder["a"]);
        Call.Of("make", Fixture, "--out", folder["a/out"]);
        var before = TemporaryFolder.Contents(folder["a"]);

        var call = Call.Of("make", Path.Combine(Fixtures.Folder, "single-panel.yaml"), "--out", folder["a/out"], "--exporters", acme, "--json");

        Assert.Equal(ExitCode.NotWritten, call.ExitCode);
        Assert.Contains($"error: acme.dll: {says}", call.Errors, StringComparison.Ordinal);
        Assert.Contains("; nothing was written\n", call.Errors, StringComparison.Ordinal);
        Assert.Equal(before, TemporaryFolder.Contents(folder["a"]));
        AssertReport(call);
    }

    private static void AssertReport(Call call)
    {
        using var report = JsonDocument.Parse(call.Output);
        Assert.Equal(call.ExitCode, report.RootElement.GetProperty("exit_code").GetInt32());
        Assert.StartsWith("error: " + report.RootElement.GetProperty("error").GetString(), call.Errors.Replace("takes the place of our own\n", "", StringComparison.Ordinal).Replace("exporter \"dxf\" of acme.dll ", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }
}
