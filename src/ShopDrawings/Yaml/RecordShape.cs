using System.Text.Json.Nodes;
using ShopDrawings.Kernel;

namespace ShopDrawings.Yaml;

/// <summary>A group of known keys. One function names every key once; reading and the schema both come from it.</summary>
internal sealed class RecordShape<T>(string what, string? expected, Func<Fields, T> build) : Shape<T>
{
    /// <summary>A group called <paramref name="what"/>, expected with the keys it must have.</summary>
    public RecordShape(string what, Func<Fields, T> build) : this(what, null, build)
    {
    }

    /// <inheritdoc/>
    public override string Expected
    {
        get
        {
            if (expected is not null) return expected;
            var must = Schema()["required"]?.AsArray().Select(k => (string)k!).ToList() ?? [];
            return must.Count == 0 ? what : $"{what} with {(must.Count == 1 ? must[0] : string.Join(", ", must[..^1]) + " and " + must[^1])}";
        }
    }

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
    private readonly List<(string Key, string Help)> missing = [];
    private readonly string has = what is "the checks" or "the programs" or "the labels" or "the drawings" or "the bands" or "the methods" or "the corners" or "the castors" or "the feet" or "the doors" or "the drawers" or "the loose shelves" or "the layers" or "the pins" or "the small parts" or "the guides" ? "have" : "has";
    private string[]? onlyOneOf;
    private bool sound = true;

    /// <summary>Where the group begins.</summary>
    public SourceSpan At => mapping?.At ?? default;

    /// <summary>A key that must be there.</summary>
    public T Required<T>(string key, Shape<T> shape, string help)
    {
        required.Add(key);
        if (TryField(key, shape, help, null, out var value)) return value;
        if (mapping is not null && !given.Contains(key)) missing.Add((key, help));
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

    /// <summary>Exactly one of some keys must be there.</summary>
    /// <returns>What was read.</returns>
    public T ExactlyOneOf<T>(string[] keys, T read)
    {
        onlyOneOf = keys;
        return read;
    }

    /// <summary>Looks for keys nobody asked for.</summary>
    /// <returns>Whether every key was sound.</returns>
    public bool Finish()
    {
        var unknown = mapping!.Entries.Select(e => e.Key).Where(k => !known.Contains(k.Text)).ToList();
        foreach (var key in unknown) sound = reading!.Fail(key.At, Unknown(key.Text));
        foreach (var (key, help) in missing)
            if (!unknown.Exists(u => Spelling.Nearest(u.Text, known) == key))
                sound = reading!.Fail(mapping.At, $"{what} {has} no “{key}”: {FirstSentence(help)}");
        if (onlyOneOf is { } keys && given.Where(keys.Contains).ToList() is { Count: not 1 } some && unknown.Count == 0)
            sound = reading!.Fail(mapping.At, $"{what} needs exactly one of {string.Join(", ", keys[..^1].Select(k => $"“{k}”"))} and “{keys[^1]}”; it has {(some.Count == 0 ? "none" : string.Join(" and ", some.Select(g => $"“{g}”")))}");
        return sound;
    }

    private string Unknown(string key)
    {
        if (key.All(char.IsAsciiDigit)) return $"{what} {has} no key “{key}”; if it is the rest of a number, write decimals with a point, like 18.1";
        var shown = key.Length > 40 ? key[..40] + "…" : key;
        return Spelling.Nearest(key, known) is { } near ? $"{what} {has} no key “{shown}”; did you mean “{near}”?" : $"{what} {has} no key “{shown}”; known keys: {string.Join(", ", known)}";
    }

    /// <summary>The group as a JSON Schema.</summary>
    public JsonObject Schema()
    {
        var schema = new JsonObject { ["type"] = "object", ["additionalProperties"] = false, ["properties"] = properties };
        if (required.Count > 0) schema["required"] = required;
        if (onlyOneOf is not null) schema["oneOf"] = new JsonArray([.. onlyOneOf.Select(k => new JsonObject { ["required"] = new JsonArray(k) })]);
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

    private static string FirstSentence(string help)
    {
        var end = help.IndexOf(". ", StringComparison.Ordinal);
        var sentence = (end < 0 ? help : help[..end]).TrimEnd('.');
        return char.ToLowerInvariant(sentence[0]) + sentence[1..];
    }
}
