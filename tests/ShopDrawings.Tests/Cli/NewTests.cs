using ShopDrawings.Cli;

namespace ShopDrawings.Tests.Cli;

public class NewTests
{
    [Fact]
    public void Starter_can_be_made_without_a_finding()
    {
        using var folder = new TemporaryFolder();

        var written = Call.Of("new", folder["cabinet.yaml"]);
        var made = Call.Of("make", folder["cabinet.yaml"], "--out", folder["out"]);

        Assert.Equal((ExitCode.Done, ExitCode.Done), (written.ExitCode, made.ExitCode));
        Assert.Empty(made.Errors);
    }

    [Fact]
    public void Starter_comments_every_key_it_shows()
    {
        var lines = NewCommand.Starter().Split('\n').Where(l => l.Contains(':', StringComparison.Ordinal) && !l.StartsWith('#') && !l.TrimStart().StartsWith('-')).ToList();

        Assert.True(lines.Count(l => l.Contains('#', StringComparison.Ordinal)) >= lines.Count / 2, "fewer than half of the starter's keys have a comment");
    }

    [Fact]
    public void File_that_is_there_is_never_overwritten()
    {
        using var folder = new TemporaryFolder();
        File.WriteAllText(folder["mine.yaml"], "mine");

        var call = Call.Of("new", folder["mine.yaml"]);

        Assert.Equal(ExitCode.WrongInput, call.ExitCode);
        Assert.Equal("mine", File.ReadAllText(folder["mine.yaml"]));
    }
}
