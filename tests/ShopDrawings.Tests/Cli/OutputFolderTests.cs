using System.Text;
using ShopDrawings.Cli;

namespace ShopDrawings.Tests.Cli;

public class OutputFolderTests
{
    private static Output Text(string path, string text) => new(path, s => s.Write(Encoding.UTF8.GetBytes(text)));

    private static void Publish(string folder, params Output[] files)
    {
        using var target = OutputFolder.At(folder);
        target.Publish(files, CancellationToken.None);
    }

    private static Dictionary<string, string> Read(string folder) => TemporaryFolder.Contents(folder)
        .Where(f => f.Key != OutputFolder.Manifest).ToDictionary(f => f.Key, f => Encoding.UTF8.GetString(f.Value));

    [Fact]
    public void New_folder_and_its_parents_are_made()
    {
        using var folder = new TemporaryFolder();

        Publish(folder["a/b/out"], Text("x/y.txt", "1"));

        Assert.Equal(new() { ["x/y.txt"] = "1" }, Read(folder["a/b/out"]));
        Assert.Equal(["out"], Directory.GetFileSystemEntries(folder["a/b"]).Select(Path.GetFileName));
    }

    [Fact]
    public void Second_run_replaces_ours_removes_what_is_gone_and_keeps_what_is_not_ours()
    {
        using var folder = new TemporaryFolder();
        Publish(folder["out"], Text("kept.txt", "1"), Text("gone.txt", "1"), Text("d/gone.txt", "1"));
        File.WriteAllText(folder["out/d/notes.md"], "mine");
        Directory.CreateDirectory(folder["out/empty"]);
        File.CreateSymbolicLink(folder["out/link"], "d/notes.md");

        Publish(folder["out"], Text("kept.txt", "2"), Text("new.txt", "2"));

        Assert.Equal(new() { ["kept.txt"] = "2", ["new.txt"] = "2", ["d/notes.md"] = "mine", ["link"] = "mine" }, Read(folder["out"]));
        Assert.True(Directory.Exists(folder["out/empty"]));
        Assert.Equal("d/notes.md", new FileInfo(folder["out/link"]).LinkTarget);
        Assert.Equal(["out"], Directory.GetFileSystemEntries(folder.Path).Select(Path.GetFileName));
    }

    [Fact]
    public void Folder_of_someone_else_is_refused_untouched()
    {
        using var folder = new TemporaryFolder();
        Directory.CreateDirectory(folder["theirs"]);
        File.WriteAllText(folder["theirs/photo.jpg"], "x");

        Assert.Throws<WrongCallException>(() => Publish(folder["theirs"], Text("a", "1")));

        Assert.Equal(new() { ["photo.jpg"] = "x" }, Read(folder["theirs"]));
    }

    [Theory]
    [InlineData(".")]
    [InlineData("..")]
    [InlineData("/")]
    [InlineData(" ")]
    public void Working_folder_and_those_above_it_are_refused(string path) => Assert.Throws<WrongCallException>(() => OutputFolder.At(path));

    [Fact]
    public void File_of_that_name_is_refused()
    {
        using var folder = new TemporaryFolder();
        File.WriteAllText(folder["out"], "x");

        Assert.Throws<WrongCallException>(() => OutputFolder.At(folder["out"]));
    }

    [Fact]
    public void Foreign_file_in_the_place_of_a_result_is_refused_untouched()
    {
        using var folder = new TemporaryFolder();
        Publish(folder["out"], Text("a.txt", "1"));
        File.WriteAllText(folder["out/b.txt"], "mine");

        Assert.Throws<WrongCallException>(() => Publish(folder["out"], Text("a.txt", "2"), Text("b.txt", "2")));

        Assert.Equal(new() { ["a.txt"] = "1", ["b.txt"] = "mine" }, Read(folder["out"]));
    }

    [Fact]
    public void Failure_while_writing_leaves_the_old_result_whole()
    {
        using var folder = new TemporaryFolder();
        Publish(folder["out"], Text("a.txt", "1"));

        Assert.Throws<IOException>(() => Publish(folder["out"], Text("a.txt", "2"), new Output("b.txt", _ => throw new IOException("disk full"))));

        Assert.Equal(new() { ["a.txt"] = "1" }, Read(folder["out"]));
        Assert.Equal(["out"], Directory.GetFileSystemEntries(folder.Path).Select(Path.GetFileName));
    }

    [Fact]
    public void Stop_leaves_the_old_result_whole_and_ends_with_130()
    {
        using var folder = new TemporaryFolder();
        var fixture = Path.Combine(Fixtures.Folder, "single-panel.yaml");
        Call.Of("make", fixture, "--out", folder["out"]);
        File.WriteAllText(folder["out/panels/cover-plate.svg"], "old");

        var call = Call.Of(new CancellationToken(true), "make", fixture, "--out", folder["out"]);

        Assert.Equal(ExitCode.Interrupted, call.ExitCode);
        Assert.Equal("old", File.ReadAllText(folder["out/panels/cover-plate.svg"]));
        Assert.Equal(["out"], Directory.GetFileSystemEntries(folder.Path).Select(Path.GetFileName));
    }

    [Fact]
    public void Folder_that_cannot_be_written_ends_with_three()
    {
        using var folder = new TemporaryFolder();
        File.WriteAllText(folder["blocked"], "a file where a folder must go");

        var call = Call.Of("make", Path.Combine(Fixtures.Folder, "single-panel.yaml"), "--out", folder["blocked/out"]);

        Assert.Equal(ExitCode.NotWritten, call.ExitCode);
        Assert.Empty(call.Output);
    }

    [Fact]
    public void Swap_cut_off_between_two_renames_is_finished_by_the_next_run()
    {
        using var folder = new TemporaryFolder();
        Publish(folder["out"], Text("a.txt", "old"));
        Directory.Move(folder["out"], folder[".out.old"]);
        Publish(folder["x"], Text("a.txt", "new"));
        Directory.Move(folder["x"], folder[".out.new"]);

        OutputFolder.At(folder["out"]).Dispose();

        Assert.Equal(new() { ["a.txt"] = "new" }, Read(folder["out"]));
        Assert.Equal(["out"], Directory.GetFileSystemEntries(folder.Path).Select(Path.GetFileName));
    }

    [Fact]
    public void Swap_cut_off_before_the_new_one_was_complete_brings_the_old_one_back()
    {
        using var folder = new TemporaryFolder();
        Publish(folder["out"], Text("a.txt", "old"));
        Directory.Move(folder["out"], folder[".out.old"]);

        OutputFolder.At(folder["out"]).Dispose();

        Assert.Equal(new() { ["a.txt"] = "old" }, Read(folder["out"]));
    }

    [Fact]
    public void Second_run_into_one_folder_at_the_same_time_ends_with_three_and_changes_nothing()
    {
        using var folder = new TemporaryFolder();
        using (var first = OutputFolder.At(folder["out"]))
        {
            var second = Call.Of("make", Path.Combine(Fixtures.Folder, "single-panel.yaml"), "--out", folder["out"], "--json");
            first.Publish([Text("a.txt", "1")], CancellationToken.None);

            Assert.Equal(ExitCode.NotWritten, second.ExitCode);
            Assert.Contains("another run is writing", second.Errors, StringComparison.Ordinal);
            Assert.Contains("\"exit_code\": 3", second.Output, StringComparison.Ordinal);
        }

        Assert.Equal(new() { ["a.txt"] = "1" }, Read(folder["out"]));
        Assert.Equal(["out"], Directory.GetFileSystemEntries(folder.Path).Select(Path.GetFileName));
    }

    [Fact]
    public void Link_to_a_folder_stays_a_link()
    {
        using var folder = new TemporaryFolder();
        Directory.CreateDirectory(folder["real"]);
        Directory.CreateSymbolicLink(folder["link"], folder["real"]);

        Publish(folder["link"], Text("a.txt", "1"));

        Assert.Equal(folder["real"], new DirectoryInfo(folder["link"]).LinkTarget);
        Assert.Equal(new() { ["a.txt"] = "1" }, Read(folder["real"]));
    }
}
