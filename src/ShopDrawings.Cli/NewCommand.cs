using System.CommandLine;
using System.Text;

namespace ShopDrawings.Cli;

/// <summary><c>new</c>: writes a commented starter file and never overwrites one.</summary>
internal static class NewCommand
{
    /// <summary>The verb.</summary>
    public static Command Create(TextWriter output)
    {
        var file = new Argument<string>("FILE") { Description = "Where to write it.", DefaultValueFactory = _ => "cabinet.yaml" };
        var command = new Command("new", "Write a commented starter project file.") { file };
        command.SetAction(call => Write(call.GetValue(file)!, output));
        return command;
    }

    private static int Write(string path, TextWriter output)
    {
        if (Path.Exists(path)) throw new WrongCallException($"“{path}” is there already; choose another name, or move it away");
        if (Path.GetDirectoryName(Path.GetFullPath(path)) is { } folder && !Directory.Exists(folder)) throw new WrongCallException($"there is no folder “{folder}”");
        using (var stream = new FileStream(path, FileMode.CreateNew, FileAccess.Write)) stream.Write(Encoding.UTF8.GetBytes(Starter().Replace("cabinet.yaml", path, StringComparison.Ordinal)));
        output.WriteLine($"wrote {path}; next: shopdrawings make {path} --out out");
        return ExitCode.Done;
    }

    /// <summary>The starter file.</summary>
    internal static string Starter()
    {
        using var reader = new StreamReader(typeof(NewCommand).Assembly.GetManifestResourceStream("starter.yaml")!);
        return reader.ReadToEnd();
    }
}
