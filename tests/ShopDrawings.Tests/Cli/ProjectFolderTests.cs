using ShopDrawings.Cli;

namespace ShopDrawings.Tests.Cli;

/// <summary>The console host reads catalogues from the project file's folder and those below it, and nothing else.</summary>
public class ProjectFolderTests
{
    private const string Sound = "hardware: {own: {length: 20, width: 12, height: 10}}\n";

    [Theory]
    [InlineData("parts.yaml")]
    [InlineData("shop/deeper/parts.yaml")]
    public void Catalogue_in_the_folder_or_below_is_read(string name)
    {
        using var folder = new TemporaryFolder();
        Directory.CreateDirectory(Path.GetDirectoryName(folder[name])!);
        File.WriteAllText(folder[name], Sound);

        Assert.Equal((ExitCode.Done, ""), Make(folder, folder["p.yaml"], name));
    }

    [Fact]
    public void Link_within_the_folder_is_followed()
    {
        using var folder = new TemporaryFolder();
        Directory.CreateDirectory(folder["shop"]);
        File.WriteAllText(folder["shop/parts.yaml"], Sound);
        File.CreateSymbolicLink(folder["linked.yaml"], "shop/parts.yaml");
        Directory.CreateSymbolicLink(folder["elsewhere"], folder["shop"]);

        Assert.Equal((ExitCode.Done, ""), Make(folder, folder["p.yaml"], "linked.yaml"));
        Assert.Equal((ExitCode.Done, ""), Make(folder, folder["p.yaml"], "elsewhere/parts.yaml"));
    }

    [Fact]
    public void Project_folder_may_itself_be_reached_by_a_link()
    {
        using var folder = new TemporaryFolder();
        Directory.CreateDirectory(folder["real"]);
        File.WriteAllText(folder["real/parts.yaml"], Sound);
        Directory.CreateSymbolicLink(folder["link"], folder["real"]);

        Assert.Equal((ExitCode.Done, ""), Make(folder, folder["link/p.yaml"], "parts.yaml"));
    }

    [Theory]
    [InlineData("file.yaml")]
    [InlineData("folder/parts.yaml")]
    [InlineData("chain.yaml")]
    [InlineData("twin.yaml")]
    public void Link_that_leads_out_is_refused(string name)
    {
        using var folder = new TemporaryFolder();
        Directory.CreateDirectory(folder["project"]);
        Directory.CreateDirectory(folder["outside"]);
        Directory.CreateDirectory(folder["project-twin"]);
        File.WriteAllText(folder["outside/parts.yaml"], Sound);
        File.WriteAllText(folder["project-twin/parts.yaml"], Sound);
        File.CreateSymbolicLink(folder["project/file.yaml"], "../outside/parts.yaml");
        Directory.CreateSymbolicLink(folder["project/folder"], folder["outside"]);
        File.CreateSymbolicLink(folder["project/chain.yaml"], "folder/parts.yaml");
        File.CreateSymbolicLink(folder["project/twin.yaml"], "../project-twin/parts.yaml");

        var (code, errors) = Make(folder, folder["project/p.yaml"], name);

        Assert.Equal(ExitCode.WrongInput, code);
        Assert.StartsWith($"{folder["project/p.yaml"]}(2,14): error: the catalogue “{name}” cannot be read: a link leads out of the folder of the project file; copy the file into it\n", errors, StringComparison.Ordinal);
    }

    [Fact]
    public void Links_in_a_circle_are_refused()
    {
        using var folder = new TemporaryFolder();
        File.CreateSymbolicLink(folder["a.yaml"], "b.yaml");
        File.CreateSymbolicLink(folder["b.yaml"], "a.yaml");

        Assert.Equal(ExitCode.WrongInput, Make(folder, folder["p.yaml"], "a.yaml").ExitCode);
    }

    [Fact]
    public void Large_file_is_refused_unread()
    {
        using var folder = new TemporaryFolder();
        using (var file = File.Create(folder["parts.yaml"])) file.SetLength(Sources.LargestFile + 1L);

        Assert.Contains("p.yaml(2,14): error: the catalogue “parts.yaml” cannot be read: it is too large for a catalogue\n", Make(folder, folder["p.yaml"], "parts.yaml").Errors, StringComparison.Ordinal);
    }

    // The library refuses such names before anyone is asked; the host does not rely on it.
    [Theory]
    [InlineData("../outside.yaml")]
    [InlineData("shop/../../outside.yaml")]
    [InlineData("..")]
    public void Name_that_leads_out_is_refused_by_the_host_too(string name)
    {
        using var folder = new TemporaryFolder();
        Directory.CreateDirectory(folder["project/shop"]);
        File.WriteAllText(folder["outside.yaml"], Sound);

        var files = ProjectFolder.Of(folder["project/p.yaml"]);

        Assert.Null(files.Read(name).Bytes);
        Assert.Null(files.Read(folder["outside.yaml"]).Bytes);
        Assert.Equal("it lies outside the folder of the project file", files.Read(name).Reason);
    }

    private static (int ExitCode, string Errors) Make(TemporaryFolder folder, string project, string catalogue)
    {
        File.WriteAllText(project, $"project: One panel\ncatalogues: [{catalogue}]\nboards: {{ply: {{kind: plywood, thickness: 18}}}}\npanels: {{board: {{board: ply, length: 300, width: 200}}}}\n");
        var call = Call.Of("make", project, "--out", folder["out"]);
        return (call.ExitCode, call.Errors);
    }
}
