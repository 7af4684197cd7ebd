using System.Text.RegularExpressions;
using ShopDrawings.Cli;
using ShopDrawings.Cutting;

namespace ShopDrawings.Tests;

/// <summary>Every code block of README.md is run.</summary>
public class ReadmeTests
{
    private const string HostCall = "dotnet run --project src/ShopDrawings.Cli -- ";
    private static readonly string Readme = File.ReadAllText(Path.Combine(OutsideProgram.RepositoryRoot, "README.md"));

    [Fact]
    public void Shell_calls_work()
    {
        using var folder = new TemporaryFolder();
        var calls = Blocks("sh").SelectMany(b => b.Split('\n')).Where(l => l.Length > 0).ToList();
        Assert.Contains("dotnet test", calls);

        foreach (var call in calls.Where(c => c is not ("dotnet test" or "dotnet build")))
        {
            Assert.StartsWith(HostCall, call, StringComparison.Ordinal);
            var arguments = call[HostCall.Length..].Split(' ').Select(a =>
                a.EndsWith(".dll", StringComparison.Ordinal) ? Path.Combine(OutsideProgram.RepositoryRoot, a.Replace("/Debug/", $"/{Configuration}/", StringComparison.Ordinal))
                : a.StartsWith("fixtures/", StringComparison.Ordinal) ? Path.Combine(OutsideProgram.RepositoryRoot, a)
                : a.StartsWith("out", StringComparison.Ordinal) ? folder[a] : a);

            var result = Call.Of([.. arguments]);

            Assert.True(result.ExitCode == ExitCode.Done, call + "\n" + result.Errors);
        }
    }

    [Fact]
    public void Projects_can_be_made_without_a_finding()
    {
        Assert.NotEmpty(Blocks("yaml"));
        Assert.All(Blocks("yaml"), text => Assert.Empty(Shop.Check(Fixtures.DesignOf(text))));
    }

    // The same lines as in the README, so that they compile.
    [Fact]
    public void Library_calls_compile_and_list_the_files()
    {
        var code = string.Concat(Blocks("csharp"));
        var here = File.ReadAllText(Path.Combine(OutsideProgram.RepositoryRoot, "tests", "ShopDrawings.Tests", "ReadmeTests.cs"));
        var shown = code.Split('\n').Where(l => l.Length > 0 && !l.StartsWith("using", StringComparison.Ordinal)).ToList();
        Assert.All(shown, line => Assert.Contains(Rooted(line), here, StringComparison.Ordinal));

        using var console = new StringWriter();
        CutByHand(console);
        Assert.Contains("1: fence at ", console.ToString(), StringComparison.Ordinal);
        var project = Shop.Load(File.ReadAllText(Root + "fixtures/wall-cupboard.yaml"), "wall-cupboard.yaml").Value!;
        var design = Shop.Resolve(project).Value!;
        var job = Shop.Draw(design, Shop.Check(design));
        foreach (var output in Shop.Export(job, ExporterSet.Standard)) console.WriteLine(output.Path);

        Assert.Contains("machines/router/panels/left-side-mm.dxf", console.ToString(), StringComparison.Ordinal);
    }

    private static void CutByHand(StringWriter console)
    {
        var problem = new CuttingProblem([new Part("side", 720_000_000, 560_000_000) { Quantity = 2 }], [new StockSize("board", 2_440_000_000, 1_220_000_000) { Price = 6500 }], new PanelSaw(3_200_000));
        var plan = Cutter.Solve(problem).Plan!;
        foreach (var cut in CutSequence.Of(plan)) console.WriteLine($"{cut.Piece}: fence at {cut.Setting / 1e6} mm gives {cut.Comes}");
    }

    [Fact]
    public void Links_lead_somewhere() => Assert.All(
        Regex.Matches(Readme, @"\]\((?!https?:)([^)#]+)\)").Select(m => m.Groups[1].Value),
        link => Assert.True(Path.Exists(Path.Combine(OutsideProgram.RepositoryRoot, link)), link));

    private static string Root => OutsideProgram.RepositoryRoot + "/";

    // Debug or Release, as the tests were built.
    private static string Configuration => new DirectoryInfo(AppContext.BaseDirectory).Parent!.Name;

    private static string Rooted(string line) => line
        .Replace("\"fixtures/", "Root + \"fixtures/", StringComparison.Ordinal).Replace("Console.WriteLine", "console.WriteLine", StringComparison.Ordinal);

    private static List<string> Blocks(string language) =>
        [.. Regex.Matches(Readme, $"```{language}\n(.*?)```", RegexOptions.Singleline).Select(m => m.Groups[1].Value)];
}
