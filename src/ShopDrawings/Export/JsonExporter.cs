using System.Text.Encodings.Web;
using System.Text.Json;
using ShopDrawings.Kernel;

namespace ShopDrawings;

/// <summary>
/// The resolved model and the findings for other programs: <c>assembly.json</c> and <c>findings.json</c>. Their schemas are
/// <see cref="Schemas.Assembly"/> and <see cref="Schemas.Findings"/>. Lengths in mm to six decimals.
/// </summary>
public sealed class JsonExporter : IJobExporter
{
    private static readonly JsonWriterOptions Options = new()
    {
        Indented = true,
        NewLine = "\n",
        // Readable inch marks and signs; these files never stand inside HTML.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <inheritdoc/>
    public string Format => "json";

    /// <inheritdoc/>
    public IEnumerable<Output> Export(Job job) =>
    [
        new("assembly.json", s => Write(s, json => AssemblyJson.Write(json, job.Design.Assembly))),
        new("findings.json", s => Write(s, json => FindingsJson.Write(json, job))),
    ];

    private static void Write(Stream stream, Action<Utf8JsonWriter> write)
    {
        using (var json = new Utf8JsonWriter(stream, Options)) write(json);
        stream.WriteByte((byte)'\n');
    }
}
