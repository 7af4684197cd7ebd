namespace ShopDrawings.Cli;

/// <summary>Reads the files a project file names, from its folder and the folders below it; nothing that lies elsewhere, by name or by link.</summary>
internal static class ProjectFolder
{
    /// <summary>The files beside a project file.</summary>
    public static Sources Of(string projectFile)
    {
        var folder = Path.GetDirectoryName(Path.GetFullPath(projectFile))!;
        return new Sources(name => Read(folder, name));
    }

    private static SourceFile Read(string folder, string name)
    {
        try
        {
            var path = Path.GetFullPath(Path.Combine(folder, name));
            if (!LiesIn(folder, path)) return SourceFile.Missing("it lies outside the folder of the project file");
            if (!File.Exists(path)) return SourceFile.Missing(Directory.Exists(path) ? "it is a folder" : "there is no such file beside the project file");
            var real = WithoutLinks(path);
            if (!LiesIn(WithoutLinks(folder), real)) return SourceFile.Missing("a link leads out of the folder of the project file; copy the file into it");
            return new FileInfo(real).Length > Sources.LargestFile ? SourceFile.Missing("it is too large for a catalogue") : SourceFile.Of(File.ReadAllBytes(real));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return SourceFile.Missing(e.Message);
        }
    }

    private static bool LiesIn(string folder, string path) => path.StartsWith(Path.EndsInDirectorySeparator(folder) ? folder : folder + Path.DirectorySeparatorChar, StringComparison.Ordinal);

    // A link may stand anywhere in a path, and its target may lie behind another; the system refuses links that go round in circles.
    private static string WithoutLinks(string path)
    {
        if (Path.GetDirectoryName(path) is not { } parent) return path;
        var here = Path.Combine(WithoutLinks(parent), Path.GetFileName(path));
        return File.ResolveLinkTarget(here, returnFinalTarget: true) is { } target ? WithoutLinks(target.FullName) : here;
    }
}
