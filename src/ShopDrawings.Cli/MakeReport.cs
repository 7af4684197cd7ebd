using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace ShopDrawings.Cli;

/// <summary>Says what came of a call as JSON: exit code, folder, files, mistakes, findings in short.</summary>
internal static class MakeReport
{
    private static readonly JsonWriterOptions Options = new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Writes one JSON object about a call that failed, and a line end.</summary>
    public static void Write(TextWriter output, int exitCode, string message) => Write(output, json =>
    {
        json.WriteNumber("exit_code", exitCode);
        json.WriteString("error", message);
    });

    /// <summary>Writes one JSON object about a call that was carried out, and a line end.</summary>
    public static void Write(TextWriter output, MakeResult result, string folder) => Write(output, json =>
    {
        json.WriteNumber("exit_code", result.ExitCode);
        if (result.Job is not null) json.WriteString("out", folder);
        json.WriteStartArray("files");
        foreach (var file in result.Files) json.WriteStringValue(file);
        json.WriteEndArray();
        json.WriteStartArray("mistakes");
        foreach (var diagnostic in result.Diagnostics)
        {
            json.WriteStartObject();
            json.WriteString("file", diagnostic.At.File);
            json.WriteNumber("line", diagnostic.At.Line);
            json.WriteNumber("column", diagnostic.At.Column);
            json.WriteString("message", diagnostic.Message);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("findings");
        foreach (var finding in result.Job?.Findings ?? [])
        {
            json.WriteStartObject();
            json.WriteString("rule", finding.Rule);
            json.WriteString("severity", finding.Severity.ToString().ToLowerInvariant());
            json.WriteBoolean("waived", finding.Waiver is not null);
            json.WriteString("message", finding.Message);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    });

    private static void Write(TextWriter output, Action<Utf8JsonWriter> write)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, Options))
        {
            json.WriteStartObject();
            write(json);
            json.WriteEndObject();
        }

        output.WriteLine(Encoding.UTF8.GetString(stream.ToArray()));
    }
}
