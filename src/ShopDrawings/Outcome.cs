using System.Collections.Immutable;

namespace ShopDrawings;

/// <summary>What came of a user's text: a value, or every mistake in it, file by file, in the order of the file.</summary>
/// <param name="Value">The value, or nothing where there are mistakes.</param>
/// <param name="Diagnostics">The mistakes; none where there is a value.</param>
public sealed record Outcome<T>(T? Value, ImmutableArray<Diagnostic> Diagnostics) where T : class
{
    internal static Outcome<T> Of(T? value, List<Diagnostic> diagnostics) => diagnostics.Count == 0
        ? new(value, [])
        : new(null, [.. diagnostics.Distinct().OrderBy(d => d.At.File, StringComparer.Ordinal).ThenBy(d => d.At.Line).ThenBy(d => d.At.Column)]);
}
