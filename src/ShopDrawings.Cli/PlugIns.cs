using System.Reflection;
using ShopDrawings.Drafting;

namespace ShopDrawings.Cli;

/// <summary>
/// Exporters from assemblies that the user names. Each public class with a public constructor without parameters that implements
/// <see cref="IDrawingExporter"/> or <see cref="IJobExporter"/> is one; those of an assembly are taken in ordinal order of their full names.
/// </summary>
internal sealed class PlugIns(TextWriter error)
{
    private readonly Dictionary<string, string> formats = new(StringComparer.Ordinal);
    private ExporterSet exporters = ExporterSet.Standard;

    /// <summary>The standard exporters and those of the assemblies, in the order they are named; one named twice counts once.</summary>
    /// <param name="paths">The assemblies' files.</param>
    /// <param name="error">Where is said which standard exporter gives way.</param>
    /// <exception cref="WrongCallException">One cannot be loaded, has no exporter or a faulty one, or two exporters have one format.</exception>
    public static ExporterSet Load(IEnumerable<string> paths, TextWriter error)
    {
        var plugIns = new PlugIns(error);
        foreach (var path in paths.Select(Located).Distinct()) plugIns.Add(path);
        return plugIns.exporters;
    }

    private static string Located(string path)
    {
        if (!File.Exists(path)) throw new WrongCallException(Directory.Exists(path) ? $"“{path}” is a folder; name the exporters' .dll file in it" : $"there is no file “{path}” with exporters");
        return Path.GetFullPath(path);
    }

    private void Add(string path)
    {
        var file = Path.GetFileName(path);
        var found = Classes(path, file);
        if (found.Count == 0)
            throw new WrongCallException($"there is no exporter in {file}; one is a public class with a public constructor without parameters that implements IDrawingExporter or IJobExporter");
        foreach (var type in found) Add(type, file);
    }

    private static List<Type> Classes(string path, string file)
    {
        try
        {
            return
            [
                .. new PlugInContext(path).Load().GetExportedTypes()
                    .Where(t => t is { IsClass: true, IsAbstract: false, ContainsGenericParameters: false } && (t.IsAssignableTo(typeof(IDrawingExporter)) || t.IsAssignableTo(typeof(IJobExporter))))
                    .Where(t => t.GetConstructor(Type.EmptyTypes) is not null)
                    .OrderBy(t => t.FullName, StringComparer.Ordinal),
            ];
        }
        catch (BadImageFormatException)
        {
            throw new WrongCallException($"{file} is not a .NET assembly; name the .dll that the exporters' project builds");
        }
        catch (FileNotFoundException e) when (PlugInContext.IsTheirs(e.FileName))
        {
            throw new WrongCallException($"{file} needs {e.FileName!.Split(',')[0]}, which is not beside it; copy all that its project builds");
        }
        catch (Exception e) when (e is FileNotFoundException or FileLoadException or TypeLoadException)
        {
            var ours = typeof(Shop).Assembly.GetName().Version!.ToString(3);
            throw new WrongCallException($"{file} does not fit this program, which is ShopDrawings {ours} on .NET {Environment.Version.Major}; build it against them: {e.Message}");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new WrongCallException($"{file} cannot be read: {e.Message}");
        }
    }

    private void Add(Type type, string file)
    {
        var (exporter, format) = Made(type, file);
        if (!ExporterSet.IsFormat(format))
            throw new WrongCallException($"{type.FullName} of {file} has {(string.IsNullOrEmpty(format) ? "no format" : $"the format “{format}”")}; a format is named with small letters a–z, digits and dashes");
        if (!formats.TryAdd(format!, $"{type.FullName} of {file}"))
            throw new WrongCallException($"{type.FullName} of {file} and {formats[format!]} both have the format “{format}”; name one of them only");
        if (exporters.Drawings.Any(d => exporter is IDrawingExporter && d.Format == format) || exporters.Jobs.Any(j => exporter is IJobExporter && j.Format == format))
            error.WriteLine($"exporter \"{format}\" of {file} takes the place of our own");
        if (exporter is IDrawingExporter drawings) exporters = exporters.With(drawings);
        if (exporter is IJobExporter jobs) exporters = exporters.With(jobs);
    }

    private static (object Exporter, string? Format) Made(Type type, string file)
    {
        try
        {
            var exporter = Activator.CreateInstance(type)!;
            return (exporter, exporter is IDrawingExporter drawings ? drawings.Format : ((IJobExporter)exporter).Format);
        }
#pragma warning disable CA1031 // Whatever somebody else's code throws, it is said of that code.
        catch (Exception e)
#pragma warning restore CA1031
        {
            var cause = e is TargetInvocationException { InnerException: { } inner } ? inner : e;
            throw new WrongCallException($"{type.FullName} of {file} cannot be made: {cause.Message}");
        }
    }
}

/// <summary>An exporter of a plug-in failed while it wrote; nothing was written.</summary>
internal sealed class PlugInException(string file, ExporterException fault) : Exception($"{file}: {fault.Message}; nothing was written", fault.InnerException);
