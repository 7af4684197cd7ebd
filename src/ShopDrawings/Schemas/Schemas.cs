using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using ShopDrawings.ProjectFile;

namespace ShopDrawings;

/// <summary>The published JSON Schemas (draft 2020-12), for editors and for other programs. Lines end with LF.</summary>
public static class Schemas
{
    private static readonly JsonSerializerOptions Options = new() { WriteIndented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Of the project file; made from the very table that reads it.</summary>
    public static string Project
    {
        get
        {
            var schema = Titled("ShopDrawings project file", ProjectShapes.Project.Schema());
            schema["$defs"] = new JsonObject { [ProjectShapes.BayReference] = ProjectShapes.Bay.Schema() };
            return schema.ToJsonString(Options) + "\n";
        }
    }

    /// <summary>Of a catalogue of bought parts; made from the very table that reads it.</summary>
    public static string Catalogue => Titled("ShopDrawings catalogue", CatalogueShapes.Catalogue.Schema()).ToJsonString(Options) + "\n";

    /// <summary>Of <c>assembly.json</c>.</summary>
    public static string Assembly => Resource("assembly.schema.json");

    /// <summary>Of <c>findings.json</c>.</summary>
    public static string Findings => Resource("findings.schema.json");

    private static JsonObject Titled(string title, JsonObject shape)
    {
        var schema = new JsonObject { ["$schema"] = "https://json-schema.org/draft/2020-12/schema", ["title"] = title };
        foreach (var (key, value) in shape) schema[key] = value!.DeepClone();
        return schema;
    }

    private static string Resource(string name)
    {
        using var reader = new StreamReader(typeof(Schemas).Assembly.GetManifestResourceStream(name)!);
        return reader.ReadToEnd();
    }
}
