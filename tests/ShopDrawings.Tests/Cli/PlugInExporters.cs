using ShopDrawings.Drafting;

namespace ShopDrawings.Tests.Cli;

/// <summary>A job exporter of the format it is told, which writes one file.</summary>
public abstract class FormatExporter(string format) : IJobExporter
{
    public string Format => format;

    public IEnumerable<Output> Export(Job job) => [new("theirs.txt", s => s.WriteByte((byte)'x'))];
}

/// <summary>A drawing exporter of the format it is told; it closes the stream, as it should not.</summary>
public abstract class FormatDrawingExporter(string format) : IDrawingExporter
{
    public string Format => format;

    public void Write(Drawing drawing, Stream output)
    {
        using var writer = new StreamWriter(output);
        writer.Write("theirs: " + drawing.Title);
    }
}

/// <summary>An exporter "paths" that writes the paths it is told, with a bar between them.</summary>
public abstract class PathExporter(string paths) : IJobExporter
{
    public string Format => "paths";

    public IEnumerable<Output> Export(Job job) => paths.Split('|').Select(p => new Output(p, s => s.WriteByte((byte)'x')));
}

/// <summary>An exporter "thrower" that fails where it is told.</summary>
public abstract class ThrowingExporter : IJobExporter
{
    private readonly string where;

    protected ThrowingExporter(string where)
    {
        this.where = where;
        Fail("constructor");
    }

    public string Format
    {
        get
        {
            Fail("format");
            return "thrower";
        }
    }

    public IEnumerable<Output> Export(Job job)
    {
        Fail("export");
        if (where == "null") return null!;
        if (where == "null in the list") return [null!];
        return Files();
    }

    private IEnumerable<Output> Files()
    {
        yield return new("first.txt", s =>
        {
            s.WriteByte((byte)'x');
            Fail("write");
        });
        Fail("list");
    }

    private void Fail(string here)
    {
        if (where == here) throw new IOException($"no template in {here}");
    }
}

/// <summary>A drawing exporter of dxf files that fails.</summary>
public abstract class ThrowingDrawingExporter(string message) : IDrawingExporter
{
    public string Format => "dxf";

    public void Write(Drawing drawing, Stream output) => throw new InvalidOperationException(message);
}
