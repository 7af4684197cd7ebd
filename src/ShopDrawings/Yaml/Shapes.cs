using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Nodes;
using ShopDrawings.Kernel;

namespace ShopDrawings.Yaml;

/// <summary>A word the user wrote, with its place.</summary>
internal sealed record Word(string Text, SourceSpan At);

/// <summary>Any text of one line.</summary>
internal sealed class TextShape : Shape<string>
{
    /// <inheritdoc/>
    public override string Expected => "a text";

    /// <inheritdoc/>
    public override bool TryRead(YamlNode node, Reading reading, out string value)
    {
        if (node is not YamlScalar { IsEmpty: false } scalar) return Misfit(node, reading, out value);
        value = scalar.Text.Trim();
        if (value.Length is 0 or > 200) return reading.Fail(node.At, $"a text of {value.Length} characters stands where one of 1 to 200 is expected");
        return !value.Any(char.IsControl) || reading.Fail(node.At, "a text must be one line without control characters");
    }

    /// <inheritdoc/>
    public override JsonObject Schema() => new() { ["type"] = new JsonArray("string", "number"), ["maxLength"] = 200 };
}

/// <summary>A name: lower-case words of letters and digits joined by dashes. Names become file names.</summary>
/// <param name="isPlace">Whether it may be a panel's place, words joined by slashes: <c>chamber/shelf-1</c>.</param>
internal sealed class NameShape(bool isPlace = false) : Shape<Word>
{
    private const int Longest = 40;

    /// <inheritdoc/>
    public override string Expected => isPlace ? "the name of a panel like left-side" : "a name like left-panel";

    /// <inheritdoc/>
    public override bool TryRead(YamlNode node, Reading reading, out Word value)
    {
        if (node is not YamlScalar { IsEmpty: false } scalar) return Misfit(node, reading, out value);
        value = new Word(scalar.Text, node.At);
        if (isPlace && value.Text.Contains('/')) return value.Text.Split('/').All(IsName) || reading.Fail(node.At, $"{node.Described} is not the name of a panel; panels in a bay are called like chamber/shelf-1");
        if (!IsName(value.Text) || value.Text.Length > Longest)
            return reading.Fail(node.At, $"{node.Described} is not a name{(value.Text.Length > Longest ? $", it has {value.Text.Length} characters" : "")}; names are up to {Longest} small letters, digits and dashes and start with a letter, like left-panel");
        return !FileNames.IsDevice(value.Text) || reading.Fail(node.At, $"“{value.Text}” cannot be a file name on every system; choose another name");
    }

    /// <inheritdoc/>
    public override JsonObject Schema() => isPlace
        ? new() { ["type"] = "string", ["pattern"] = "^[a-z][a-z0-9]*(-[a-z0-9]+)*(/[a-z][a-z0-9]*(-[a-z0-9]+)*)*$" }
        : new() { ["type"] = "string", ["pattern"] = "^[a-z][a-z0-9]*(-[a-z0-9]+)*$", ["maxLength"] = Longest };

    private static bool IsName(string text) =>
        text.Length > 0 && char.IsAsciiLetter(text[0]) && text.Split('-').All(w => w.Length > 0 && w.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c)));
}

/// <summary>The name of a file beside the one that is read or in a folder below it.</summary>
internal sealed class FileNameShape : Shape<Word>
{
    private const int Longest = 200;

    /// <inheritdoc/>
    public override string Expected => "the name of a file like my-parts.yaml";

    /// <inheritdoc/>
    public override bool TryRead(YamlNode node, Reading reading, out Word value)
    {
        if (node is not YamlScalar { IsEmpty: false } scalar) return Misfit(node, reading, out value);
        value = new Word(scalar.Text, node.At);
        if (value.Text.Length is 0 or > Longest || value.Text.Any(char.IsControl)) return reading.Fail(node.At, $"{node.Described} is not the name of a file; it has 1 to {Longest} characters");
        return value.Text.Split('/').All(IsPart) || reading.Fail(node.At, $"{node.Described} may lead out of the folder of this file; name a file in it or in a folder below it, with “/” between folders");
    }

    /// <inheritdoc/>
    public override JsonObject Schema() => new() { ["type"] = "string", ["maxLength"] = Longest, ["pattern"] = @"^(?!\.{0,2}(/|$))[^/\\:]+(/(?!\.{0,2}(/|$))[^/\\:]+)*$" };

    private static bool IsPart(string part) => part is not ("" or "." or "..") && !part.Contains('\\') && !part.Contains(':');
}

/// <summary>Which values a number may take.</summary>
internal enum Range
{
    /// <summary>Any.</summary>
    Any,

    /// <summary>Zero and above.</summary>
    NotNegative,

    /// <summary>From a least size up.</summary>
    Positive,
}

/// <summary>A number with or without a unit.</summary>
internal sealed class NumberShape(Measure measure, Range range, string rule, double least = 0) : Shape<Size>
{
    // Nothing is sawn, drilled or bought thinner than a hundredth of a millimetre.
    private double Least => Math.Max(least, 0.01);

    /// <inheritdoc/>
    public override string Expected => $"a {measure.Name} like {measure.Examples}";

    /// <inheritdoc/>
    public override bool TryRead(YamlNode node, Reading reading, out Size value)
    {
        if (node is not YamlScalar { IsEmpty: false } scalar) return Misfit(node, reading, out value);
        value = Size.Zero;
        var bare = measure == Measure.Length ? reading.Unit : measure.Units.FirstOrDefault();
        var (expression, error) = ExpressionReader.Read(scalar.Text, measure, bare);
        if (expression is null) return reading.Fail(node.At, error!);
        value = expression.Evaluate(rule, node.At);
        if (range == Range.Positive && value.Value < Least) return reading.Fail(node.At, $"{node.Described} stands where a {measure.Name} of at least {Least.ToString(CultureInfo.InvariantCulture)}{(measure.Units.IsEmpty ? "" : " " + measure.Units[0].Symbol)} is expected");
        return range != Range.NotNegative || value.Value >= 0 || reading.Fail(node.At, $"{node.Described} stands where a {measure.Name} of zero or more is expected");
    }

    /// <inheritdoc/>
    public override JsonObject Schema()
    {
        var number = new JsonObject { ["type"] = "number" };
        if (range == Range.Positive) number["exclusiveMinimum"] = 0;      // in the file's own unit, so no more can be said
        if (range == Range.NotNegative) number["minimum"] = 0;
        return measure.Units.IsEmpty ? number : new() { ["anyOf"] = new JsonArray(number, new JsonObject { ["type"] = "string", ["pattern"] = "[0-9½¼¾⅛⅜⅝⅞⅓⅔]" }) };
    }
}

/// <summary>A whole number.</summary>
internal sealed class CountShape(int least, int most) : Shape<int>
{
    /// <inheritdoc/>
    public override string Expected => $"a whole number from {least} to {most}";

    /// <inheritdoc/>
    public override bool TryRead(YamlNode node, Reading reading, out int value)
    {
        value = 0;
        var (expression, _) = node is YamlScalar { IsEmpty: false } scalar ? ExpressionReader.Read(scalar.Text, Measure.Number, null) : default;
        if (expression is not Literal { Value: var number } || number != Math.Floor(number) || number < least || number > most) return Misfit(node, reading, out value);
        value = (int)number;
        return true;
    }

    /// <inheritdoc/>
    public override JsonObject Schema() => new() { ["type"] = "integer", ["minimum"] = least, ["maximum"] = most };
}

/// <summary>One of a few words.</summary>
internal sealed class ChoiceShape<T>(ImmutableArray<(string Word, T Value)> choices, Func<string, string?> meant) : Shape<T>
{
    /// <summary>The words and what each stands for.</summary>
    public ChoiceShape(params ImmutableArray<(string Word, T Value)> choices) : this(choices, _ => null)
    {
    }

    /// <inheritdoc/>
    public override string Expected => choices.Length == 1 ? choices[0].Word : $"{string.Join(", ", choices[..^1].Select(c => c.Word))} or {choices[^1].Word}";

    /// <inheritdoc/>
    public override bool TryRead(YamlNode node, Reading reading, out T value)
    {
        value = default!;
        if (node is not YamlScalar scalar) return Misfit(node, reading, out value);
        foreach (var (word, choice) in choices)
        {
            if (!string.Equals(word, scalar.Text, StringComparison.Ordinal)) continue;
            value = choice;
            return true;
        }

        var hint = meant(scalar.Text) is { } other ? $"; did you mean “{other}”?" : Spelling.DidYouMean(scalar.Text, choices.Select(c => c.Word));
        return reading.Fail(node.At, $"{node.Described} stands where {Expected} is expected{hint}");
    }

    /// <inheritdoc/>
    public override JsonObject Schema()
    {
        var words = new JsonArray();
        foreach (var (word, _) in choices) words.Add(word is "true" or "false" ? word == "true" : int.TryParse(word, CultureInfo.InvariantCulture, out var number) ? number : word);
        return new() { ["enum"] = words };
    }
}

/// <summary>A list of equal things.</summary>
internal sealed class ListShape<T>(Shape<T> item, int most = 2000) : Shape<ImmutableArray<T>>
{
    /// <inheritdoc/>
    public override string Expected => $"a list of which each item is {item.Expected}";

    /// <inheritdoc/>
    public override bool TryRead(YamlNode node, Reading reading, out ImmutableArray<T> value)
    {
        value = [];
        if (node is not YamlSequence sequence) return reading.Fail(node.At, $"{node.Described} stands where a list is expected; put “- ” before each item, which is {item.Expected}");
        if (sequence.Items.Count > most) return reading.Fail(node.At, $"a list of {sequence.Items.Count} stands where at most {most} are expected");
        var items = ImmutableArray.CreateBuilder<T>();
        var sound = true;
        foreach (var each in sequence.Items)
            if (item.TryRead(each, reading, out var read)) items.Add(read);
            else sound = false;
        value = items.ToImmutable();
        return sound;
    }

    /// <inheritdoc/>
    public override JsonObject Schema() => new() { ["type"] = "array", ["items"] = item.Schema(), ["maxItems"] = most };
}

/// <summary>Names with equal things behind them, in the file's order.</summary>
internal sealed class MapShape<T>(Shape<T> item) : Shape<ImmutableArray<(Word Name, T Value)>>
{
    private const int Most = 500;
    private static readonly NameShape Names = new();

    /// <inheritdoc/>
    public override string Expected => $"names of your own, each with {item.Expected}";

    /// <inheritdoc/>
    public override bool TryRead(YamlNode node, Reading reading, out ImmutableArray<(Word Name, T Value)> value)
    {
        value = [];
        if (node is not YamlMapping mapping) return reading.Fail(node.At, $"{node.Described} stands where names of your own are expected, like “left-panel: …”, each with {item.Expected}");
        if (mapping.Entries.Count > Most) return reading.Fail(node.At, $"{mapping.Entries.Count} names stand where at most {Most} are expected");
        var items = ImmutableArray.CreateBuilder<(Word, T)>();
        var sound = true;
        foreach (var (key, each) in mapping.Entries)
        {
            sound &= Names.TryRead(key, reading, out var name);
            if (item.TryRead(each, reading, out var read)) items.Add((name, read));
            else sound = false;
        }

        value = items.ToImmutable();
        return sound;
    }

    /// <inheritdoc/>
    public override JsonObject Schema() => new() { ["type"] = "object", ["propertyNames"] = Names.Schema(), ["additionalProperties"] = item.Schema(), ["maxProperties"] = Most };
}

/// <summary>One of two shapes, told apart by the kind of node.</summary>
internal sealed class EitherShape<T>(Func<YamlNode, bool> isFirst, Shape<T> first, Shape<T> second) : Shape<T>
{
    /// <inheritdoc/>
    public override string Expected => $"{first.Expected}, or {second.Expected}";

    /// <inheritdoc/>
    public override bool TryRead(YamlNode node, Reading reading, out T value) => (isFirst(node) ? first : second).TryRead(node, reading, out value);

    /// <inheritdoc/>
    public override JsonObject Schema() => new() { ["anyOf"] = new JsonArray(first.Schema(), second.Schema()) };
}

/// <summary>A shape that may hold itself: the schema refers to it by name instead of spelling it out again.</summary>
internal sealed class ReferenceShape<T>(string name, Func<Shape<T>> shape) : Shape<T>
{
    /// <inheritdoc/>
    public override string Expected => shape().Expected;

    /// <inheritdoc/>
    public override bool TryRead(YamlNode node, Reading reading, out T value) => shape().TryRead(node, reading, out value);

    /// <inheritdoc/>
    public override JsonObject Schema() => new() { ["$ref"] = "#/$defs/" + name };
}

/// <summary>A shape whose value is made into another, and may be refused.</summary>
internal sealed class MappedShape<TIn, T>(Shape<TIn> inner, Func<TIn, YamlNode, (T Value, string? Fault)> map) : Shape<T>
{
    /// <inheritdoc/>
    public override string Expected => inner.Expected;

    /// <inheritdoc/>
    public override bool TryRead(YamlNode node, Reading reading, out T value)
    {
        value = default!;
        if (!inner.TryRead(node, reading, out var read)) return false;
        (value, var fault) = map(read, node);
        return fault is null || reading.Fail(node.At, fault);
    }

    /// <inheritdoc/>
    public override JsonObject Schema() => inner.Schema();
}
