using System.Collections.Immutable;
using ShopDrawings.Drafting;

namespace ShopDrawings;

/// <summary>
/// Gathers files from exporters, which may be anybody's: whatever one throws becomes an <see cref="ExporterException"/> that names it, and no two
/// files share a path, nor is one a folder of another, whatever the case of their letters.
/// </summary>
internal sealed class OutputList
{
    private readonly ImmutableArray<Output>.Builder files = ImmutableArray.CreateBuilder<Output>();
    private readonly Dictionary<string, string> writers = new(StringComparer.OrdinalIgnoreCase);
    private readonly HashSet<string> folders = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>Adds the file of a drawing.</summary>
    public void Add(IDrawingExporter exporter, JobDrawing drawing) =>
        Add(exporter, exporter.Format, new Output($"{drawing.Path}.{exporter.Format}", stream => exporter.Write(drawing.Drawing, stream)));

    /// <summary>Adds the files an exporter writes about a job.</summary>
    /// <exception cref="ExporterException">It failed, or gave a path that is taken.</exception>
    public void Add(IJobExporter exporter, Job job)
    {
        List<Output> outputs = [];
        Call(exporter, exporter.Format, () => outputs.AddRange(exporter.Export(job) ?? throw new InvalidOperationException("it gave nothing")));
        foreach (var output in outputs) Add(exporter, exporter.Format, output);
    }

    /// <summary>The files in the order they were added.</summary>
    public ImmutableArray<Output> ToImmutable() => files.ToImmutable();

    private void Add(object exporter, string format, Output? file)
    {
        if (file is null) throw new ExporterException(exporter, format, "it gave null in place of a file");
        var above = Above(file.Path).ToList();
        if (above.Append(file.Path).FirstOrDefault(writers.ContainsKey) is { } taken) throw new ExporterException(exporter, format, $"it writes “{file.Path}”, but exporter \"{writers[taken]}\" writes a file “{taken}”");
        if (folders.Contains(file.Path)) throw new ExporterException(exporter, format, $"it writes “{file.Path}”, which is a folder of other files");
        writers.Add(file.Path, format);
        folders.UnionWith(above);
        files.Add(new Output(file.Path, stream => Write(exporter, format, file, stream)));
    }

    private static IEnumerable<string> Above(string path) => from i in Enumerable.Range(0, path.Length) where path[i] == '/' select path[..i];

    // By way of the memory: what the stream itself throws is no fault of the exporter's.
    private static void Write(object exporter, string format, Output file, Stream stream)
    {
        using var content = new MemoryStream();
        Call(exporter, format, () => file.Write(content));
        stream.Write(content.ToArray());
    }

    private static void Call(object exporter, string format, Action action)
    {
        try
        {
            action();
        }
#pragma warning disable CA1031 // Whatever it is, it is that exporter's, and says so.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            throw new ExporterException(exporter, format, fault.Message, fault);
        }
    }
}
