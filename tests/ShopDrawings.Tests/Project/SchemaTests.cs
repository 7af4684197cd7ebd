using System.Text.Json.Nodes;
using Json.Schema;
using ShopDrawings.Yaml;

namespace ShopDrawings.Tests.Project;

public class SchemaTests
{
    private static readonly JsonSchema ProjectSchema = JsonSchema.FromText(Schemas.Project);

    public static TheoryData<string> Names => Fixtures.Names;

    public static TheoryData<string> BrokenKeys =>
        [.. Directory.GetFiles(Path.Combine(Fixtures.Folder, "broken"), "key-*.yaml").Select(f => Path.GetFileNameWithoutExtension(f)!).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Fixture_is_valid(string name)
    {
        var result = ProjectSchema.Evaluate(Json(Fixtures.Text(name)), new EvaluationOptions { OutputFormat = OutputFormat.List });

        Assert.True(result.IsValid, string.Join('\n', (result.Details ?? []).Where(d => d.Errors is not null).Select(d => $"{d.InstanceLocation}: {string.Join(", ", d.Errors!.Values)}")));
    }

    [Fact]
    public void Starter_is_valid() => Assert.True(ProjectSchema.Evaluate(Json(ShopDrawings.Cli.NewCommand.Starter())).IsValid);

    // An editor that knows the schema marks a missing or unknown key as the program does.
    [Theory]
    [MemberData(nameof(BrokenKeys))]
    public void Broken_key_is_invalid(string name) =>
        Assert.False(ProjectSchema.Evaluate(Json(File.ReadAllText(Path.Combine(Fixtures.Folder, "broken", name + ".yaml")))).IsValid);

    [Theory]
    [MemberData(nameof(Names))]
    public void Outputs_are_valid(string name)
    {
        var samples = Path.Combine(OutsideProgram.RepositoryRoot, "output-samples", name);
        foreach (var (file, schema) in new[] { ("assembly.json", Schemas.Assembly), ("findings.json", Schemas.Findings) })
        {
            using var document = System.Text.Json.JsonDocument.Parse(File.ReadAllText(Path.Combine(samples, file)));
            var result = JsonSchema.FromText(schema).Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
            Assert.True(result.IsValid, string.Join('\n', (result.Details ?? []).Where(d => d.Errors is not null).Select(d => $"{file} {d.InstanceLocation}: {string.Join(", ", d.Errors!.Values)}")));
        }
    }

    // The shop's methods, a bore of each method, and what is written of them.
    [Fact]
    public void Methods_are_valid_in_the_file_and_in_what_is_made_of_it()
    {
        const string Text = "project: p\nboards: {ply: {kind: plywood, thickness: 18}}\nmethods: {faces: marked, edges: machined}\ncabinet: {width: 600, height: 700, depth: 300, board: ply, applied-top: {board: ply}}\n"
            + "holes: [{panel: left-side, from: {front: 50, top: 200}, diameter: 8, method: given}, {panel: left-side, from: {front: 90, top: 200}, diameter: 8, depth: 9, method: machined}]\n"
            + "panels:\n  loose: {board: ply, length: 400, width: 200, bores: [{at: [50, 50], diameter: 5, depth: 9, method: transferred}, {edge: left, at: 50, diameter: 5, depth: 9, method: marked}]}\n"
            + "  batten: {board: ply, length: 100, width: 100, bores: [{at: [9, 50], diameter: 5}], place: {corner: [900, 0, 0], outside: left, along: top}}\n"
            + "  rail: {board: ply, length: 300, width: 100, bores: [{edge: left, at: 50, diameter: 5, depth: 30, method: in-place}], place: {corner: [918, 0, 0], outside: bottom}}\n";
        var design = Fixtures.DesignOf(Text);
        using var written = new MemoryStream();
        Shop.Export(Shop.Draw(design, Shop.Check(design)), ExporterSet.Standard).Single(o => o.Path == "assembly.json").Write(written);
        using var assembly = System.Text.Json.JsonDocument.Parse(written.ToArray());

        Assert.True(ProjectSchema.Evaluate(Json(Text)).IsValid);
        Assert.True(JsonSchema.FromText(Schemas.Assembly).Evaluate(assembly.RootElement).IsValid);
        var methods = assembly.RootElement.GetProperty("panels").EnumerateArray().SelectMany(p => p.GetProperty("features").EnumerateArray()).Select(f => f.GetProperty("method").GetString()).Distinct().Order(StringComparer.Ordinal);
        Assert.Equal(["given", "in-place", "machined", "marked", "transferred"], methods);
    }

    [Fact]
    public void Catalogues_are_valid()
    {
        var schema = JsonSchema.FromText(Schemas.Catalogue);
        var shipped = Path.Combine(OutsideProgram.RepositoryRoot, "src", "ShopDrawings", "Catalogue", "catalogue.yaml");

        foreach (var file in Directory.GetFiles(Path.Combine(Fixtures.Folder, "catalogues"), "*.yaml").Append(shipped))
            Assert.True(schema.Evaluate(Json(File.ReadAllText(file))).IsValid, file);
        foreach (var broken in new[] { "project", "mistaken", "in-inches" })
            Assert.False(schema.Evaluate(Json(File.ReadAllText(Path.Combine(Fixtures.Folder, "broken", "catalogues", broken + ".yaml")))).IsValid, broken);
    }

    [Theory]
    [InlineData("my-parts.yaml", true)]
    [InlineData("shop/my parts.yaml", true)]
    [InlineData("..parts/.hidden/a..b", true)]
    [InlineData("../parts.yaml", false)]
    [InlineData("shop/../../parts.yaml", false)]
    [InlineData("shop/..", false)]
    [InlineData("./parts.yaml", false)]
    [InlineData("/parts.yaml", false)]
    [InlineData("shop//parts.yaml", false)]
    [InlineData("shop/", false)]
    [InlineData("c:parts.yaml", false)]
    [InlineData("shop\\parts.yaml", false)]
    public void Name_of_a_file_is_valid_where_the_program_reads_it(string name, bool isValid)
    {
        var text = $"project: x\nboards: {{b: {{kind: mdf, thickness: 18}}}}\npanels: {{p: {{board: b, length: 100, width: 100}}}}\ncatalogues: ['{name}']\n";
        var asked = false;
        var sources = new Sources(_ =>
        {
            asked = true;
            return SourceFile.Of("screws: {}"u8.ToArray());
        });

        Assert.Equal(isValid, Fixtures.Mistakes(text, sources).Count == 0);
        Assert.Equal(isValid, asked);
        Assert.Equal(isValid, ProjectSchema.Evaluate(Json(text)).IsValid);
    }

    [Theory]
    [InlineData("project")]
    [InlineData("catalogue")]
    public void Every_key_says_what_it_means(string which)
    {
        var root = JsonNode.Parse(which == "project" ? Schemas.Project : Schemas.Catalogue)!;

        foreach (var (path, node) in Properties(root, ""))
            Assert.True(node["description"]?.GetValue<string>().Length > 5, $"{path} has no description");
    }

    private static IEnumerable<(string Path, JsonNode Node)> Properties(JsonNode node, string path)
    {
        if (node is JsonArray array) return array.SelectMany((n, i) => Properties(n!, $"{path}/{i}"));
        if (node is not JsonObject group) return [];
        var own = group["properties"] is JsonObject properties ? properties.Select(p => ($"{path}/{p.Key}", p.Value!)) : [];
        return own.Concat(group.Where(p => p.Value is not null).SelectMany(p => Properties(p.Value!, $"{path}/{p.Key}")));
    }

    // The file as an editor's YAML reader sees it: plain numbers are numbers.
    private static System.Text.Json.JsonElement Json(string yaml)
    {
        var root = YamlReader.Read(yaml, "x", "project: x", []) ?? throw new InvalidOperationException("The file is not even YAML.");
        return System.Text.Json.JsonSerializer.SerializeToElement(Convert(root));
    }

    private static JsonNode? Convert(YamlNode node) => node switch
    {
        YamlScalar { IsEmpty: true } => null,
        YamlScalar { IsQuoted: false, Text: "true" or "false" } s => s.Text == "true",
        YamlScalar { IsQuoted: false } s when double.TryParse(s.Text, System.Globalization.NumberStyles.Float, System.Globalization.CultureInfo.InvariantCulture, out var number) => number,
        YamlScalar s => s.Text,
        YamlSequence s => new JsonArray([.. s.Items.Select(Convert)]),
        YamlMapping m => new JsonObject(m.Entries.Select(e => KeyValuePair.Create(e.Key.Text, Convert(e.Value)))),
        _ => throw new InvalidOperationException(),
    };
}
