using ShopDrawings.Cli;

namespace ShopDrawings.Tests;

/// <summary>The repository's fixtures, found by listing the folder so that none is forgotten.</summary>
internal static class Fixtures
{
    /// <summary>Folder of the fixtures.</summary>
    public static string Folder => Path.Combine(OutsideProgram.RepositoryRoot, "fixtures");

    /// <summary>Base names of the sound fixtures.</summary>
    public static TheoryData<string> Names => [.. Directory.GetFiles(Folder, "*.yaml").Select(f => Path.GetFileNameWithoutExtension(f)!).Order(StringComparer.Ordinal)];

    /// <summary>The text of a fixture.</summary>
    public static string Text(string name) => File.ReadAllText(Path.Combine(Folder, name + ".yaml"));

    /// <summary>A fixture resolved.</summary>
    public static Design Design(string name) => DesignOf(Text(name), Files);

    /// <summary>The files beside the fixtures.</summary>
    public static Sources Files { get; } = new(name => Path.Combine(Folder, name) is var path && File.Exists(path) ? SourceFile.Of(File.ReadAllBytes(path)) : SourceFile.Missing("there is none"));

    /// <summary>A project file's text resolved; fails the test where it is not sound.</summary>
    public static Design DesignOf(string text, Sources? sources = null)
    {
        var loaded = Shop.Load(text, "test.yaml", sources);
        Assert.True(loaded.Diagnostics.IsEmpty, string.Join('\n', loaded.Diagnostics));
        var resolved = Shop.Resolve(loaded.Value!);
        Assert.True(resolved.Diagnostics.IsEmpty, string.Join('\n', resolved.Diagnostics));
        return resolved.Value!;
    }

    /// <summary>The mistakes of a project file's text, whichever call finds them.</summary>
    public static IReadOnlyList<Diagnostic> Mistakes(string text, Sources? sources = null)
    {
        var loaded = Shop.Load(text, "test.yaml", sources);
        return loaded.Value is { } project ? Shop.Resolve(project).Diagnostics : loaded.Diagnostics;
    }
}

/// <summary>A folder that goes away with the test.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    /// <summary>Its path.</summary>
    public string Path { get; } = Directory.CreateTempSubdirectory("shopdrawings-").FullName;

    /// <summary>A path in it.</summary>
    public string this[string name] => System.IO.Path.Combine(Path, name);

    /// <summary>Every file in a folder of it, by relative path.</summary>
    public static SortedDictionary<string, byte[]> Contents(string folder) => new(
        Directory.GetFiles(folder, "*", SearchOption.AllDirectories).ToDictionary(f => System.IO.Path.GetRelativePath(folder, f).Replace('\\', '/'), File.ReadAllBytes),
        StringComparer.Ordinal);

    /// <inheritdoc/>
    public void Dispose() => Directory.Delete(Path, true);
}

/// <summary>A call of the console host inside the test process.</summary>
internal sealed record Call(int ExitCode, string Output, string Errors)
{
    /// <summary>Runs one call.</summary>
    public static Call Of(params string[] args) => Of(CancellationToken.None, args);

    /// <summary>Runs one call that can be stopped.</summary>
    public static Call Of(CancellationToken stop, params string[] args)
    {
        var (output, errors) = (new StringWriter { NewLine = "\n" }, new StringWriter { NewLine = "\n" });
        var code = Program.Run(args, output, errors, stop);
        return new Call(code, output.ToString(), errors.ToString());
    }
}
