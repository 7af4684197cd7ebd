using ShopDrawings.Kernel;

namespace ShopDrawings.Yaml;

/// <summary>A piece of the file with its place.</summary>
internal abstract record YamlNode(SourceSpan At)
{
    /// <summary>What it is, in words for a message.</summary>
    public abstract string Described { get; }
}

/// <summary>A single text; <paramref name="IsQuoted"/> tells <c>"2"</c> from <c>2</c>.</summary>
internal sealed record YamlScalar(SourceSpan At, string Text, bool IsQuoted) : YamlNode(At)
{
    /// <summary>Whether nothing was written.</summary>
    public bool IsEmpty => !IsQuoted && Text is "" or "~" or "null";

    /// <inheritdoc/>
    public override string Described => IsEmpty ? "nothing" : $"“{(Text.Length > 40 ? Text[..40] + "…" : Text)}”";
}

/// <summary>Keys with values, in the file's order; no key twice.</summary>
internal sealed record YamlMapping(SourceSpan At, IReadOnlyList<(YamlScalar Key, YamlNode Value)> Entries) : YamlNode(At)
{
    /// <inheritdoc/>
    public override string Described => "a group of keys";
}

/// <summary>A list.</summary>
internal sealed record YamlSequence(SourceSpan At, IReadOnlyList<YamlNode> Items) : YamlNode(At)
{
    /// <inheritdoc/>
    public override string Described => "a list";
}
