using ShopDrawings.Cli;

namespace ShopDrawings.Tests.Project;

/// <summary>Every file in fixtures/broken is refused with exactly the message beside it, and nothing is written.</summary>
public class BrokenFilesTests
{
    private static readonly string Broken = Path.Combine(Fixtures.Folder, "broken");

    public static TheoryData<string> Names => [.. Directory.GetFiles(Broken, "*.yaml").Select(f => Path.GetFileNameWithoutExtension(f)!).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Broken_file_is_refused_with_its_message(string name)
    {
        using var folder = new TemporaryFolder();
        var file = Path.Combine(Broken, name + ".yaml");

        var call = Call.Of("make", file, "--out", folder["out"]);

        Assert.Equal(ExitCode.WrongInput, call.ExitCode);
        Assert.Empty(call.Output);
        var lines = call.Errors.TrimEnd('\n').Split('\n');
        Assert.EndsWith("nothing was written", lines[^1], StringComparison.Ordinal);
        Assert.Equal(File.ReadAllText(Path.Combine(Broken, name + ".expected")), string.Concat(lines[..^1].Select(l => l.Replace(file, name + ".yaml", StringComparison.Ordinal) + "\n")));
        Assert.Empty(Directory.GetFileSystemEntries(folder.Path));
    }

    [Fact]
    public void There_are_many_of_them_and_none_is_left_over()
    {
        Assert.True(Names.Count >= 40);
        Assert.Equal(Names.Select(n => n.Data), Directory.GetFiles(Broken, "*.expected").Select(f => Path.GetFileNameWithoutExtension(f)!).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void All_mistakes_come_in_one_run_in_the_order_of_the_file()
    {
        var mistakes = Fixtures.Mistakes("project: x\nboard: {}\npanels:\n  a: {board: b, length: 1.5.5, width: -2}\n  B: {bored: c}\n");

        Assert.Equal([2, 4, 4, 5, 5, 5, 5, 5], mistakes.Select(m => m.At.Line));
    }
}
