using System.Text.Json.Nodes;
using ShopDrawings.Kernel;

namespace ShopDrawings.Yaml;

/// <summary>A group of known keys. One function names every key once; reading and the schema both come from it.</summary>
internal sealed class RecordShape<T>(string what, Func<Fields, T> build) : Shape<T>
{
    /// <inheritdoc/>
    public override string Expected => what;

    /// <inheritdoc/>
    public override bool TryRead(YamlNode node, Reading reading, out T value)
    {
        if (node is not YamlMapping mapping) return Misfit(node, reading, out value);
        var fields = new Fields(mapping, reading, what);
        value = build(fields);
        return fields.Finish();
    }

    /// <inheritdoc/>
    public override JsonObject Schema()
    {
        var fields = new Fields(null, null, what);
        build(fields);
        return fields.Schema();
    }
}

/// <summary>
/// The keys of one group while it is read, or while its schema is made: then every value is its type's default, so a function that
/// names keys must only store what it gets.
/// </summary>
internal sealed class Fields(YamlMapping? mapping, Reading? reading, string what)
{
    private readonly JsonObject properties = [];
    private readonly JsonArray required = [];
    private readonly List<string> known = [];
    private readonly List<string> given = [];
    private string? onlyOneOf;
    private bool sound = true;

    /// <summary>Where the group begins.</summary>
    public SourceSpan At => mapping?.At ?? default;

    /// <summary>A key that must be there.</summary>
    public T Required<T>(string key, Shape<T> shape, string help)
    {
        required.Add(key);
        if (TryField(key, shape, help, null, out var value)) return value;
        if (mapping is not null && !given.Contains(key)) sound = reading!.Fail(mapping.At, $"the key “{key}” is missing from {what}; it is {Lowered(help)}");
        return value;
    }

    /// <summary>A key that may be left out; then it is the default, or nothing.</summary>
    /// <param name="key">The key.</param>
    /// <param name="shape">What it holds.</param>
    /// <param name="help">What it means.</param>
    /// <param name="fallback">Its value where it is left out.</param>
    /// <param name="usual">The default in words for the schema.</param>
    public T Optional<T>(string key, Shape<T> shape, string help, T fallback, string usual) =>
        TryField(key, shape, help, usual, out var value) || given.Contains(key) ? value : fallback;

    /// <summary>A key that may be left out, without a default.</summary>
    public T? Optional<T>(string key, Shape<T> shape, string help) where T : class =>
        TryField(key, shape, help, null, out var value) || given.Contains(key) ? value : null;

    /// <summary>Exactly one of the keys named so far must be there.</summary>
    public void ExactlyOneKey() => onlyOneOf = string.Join(" or ", known.Select(k => $"“{k}”"));

    /// <summary>Looks for keys nobody asked for.</summary>
    /// <returns>Whether every key was sound.</returns>
    public bool Finish()
    {
        foreach (var (key, _) in mapping!.Entries)
            if (!known.Contains(key.Text))
                sound = reading!.Fail(key.At, $"{what} has no key “{key.Text}”{Spelling.DidYouMean(key.Text, known)}{(known.Count > 0 ? $" Known keys: {string.Join(", ", known)}." : "")}".Replace("” Known", "”. Known"));
        if (onlyOneOf is not null && given.Count != 1)
            sound = reading!.Fail(mapping.At, $"{what} needs exactly one of {onlyOneOf}");
        return sound;
    }

    /// <summary>The group as a JSON Schema.</summary>
    public JsonObject Schema()
    {
        var schema = new JsonObject { ["type"] = "object", ["additionalProperties"] = false, ["properties"] = properties };
        if (required.Count > 0) schema["required"] = required;
        if (onlyOneOf is not null) (schema["minProperties"], schema["maxProperties"]) = (1, 1);
        return schema;
    }

    private bool TryField<T>(string key, Shape<T> shape, string help, string? usual, out T value)
    {
        value = default!;
        known.Add(key);
        if (mapping is null)
        {
            var schema = shape.Schema();
            schema["description"] = usual is null ? help : $"{help} Default: {usual}.";
            properties[key] = schema;
            return false;
        }

        foreach (var (name, node) in mapping.Entries)
        {
            if (name.Text != key) continue;
            given.Add(key);
            if (shape.TryRead(node, reading!, out value)) return true;
            return sound = false;
        }

        return false;
    }

    private static string Lowered(string help) => help.TrimEnd('.') is { Length: > 0 } h ? char.ToLowerInvariant(h[0]) + h[1..] : help;
}
