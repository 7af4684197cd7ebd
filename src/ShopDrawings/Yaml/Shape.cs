using System.Text.Json.Nodes;
using ShopDrawings.Kernel;

namespace ShopDrawings.Yaml;

/// <summary>What a value of the project file may look like: reads it, and describes itself for the published schema.</summary>
internal abstract class Shape<T>
{
    /// <summary>What is expected, in words for a message: <c>a length like 568.3 mm</c>.</summary>
    public abstract string Expected { get; }

    /// <summary>Reads a node. Where it does not fit, adds what was found and expected to the diagnostics.</summary>
    public abstract bool TryRead(YamlNode node, Reading reading, out T value);

    /// <summary>Its JSON Schema (draft 2020-12).</summary>
    public abstract JsonObject Schema();

    /// <summary>Notes that a node does not fit.</summary>
    protected bool Misfit(YamlNode node, Reading reading, out T value)
    {
        value = default!;
        return reading.Fail(node.At, $"{node.Described} stands where {Expected} is expected");
    }
}

/// <summary>What reading needs: the unit of bare numbers, and the place for faults.</summary>
/// <param name="Unit">Unit of a length without one.</param>
/// <param name="Diagnostics">Where faults go.</param>
internal sealed record Reading(Unit Unit, List<Diagnostic> Diagnostics)
{
    /// <summary>
    /// The unit a file counts in, wherever it says so; mm where it does not. A misspelt one is a mistake of its own, not of every length too.
    /// </summary>
    public static Unit UnitOf(YamlNode root)
    {
        var written = (root as YamlMapping)?.Entries.FirstOrDefault(e => e.Key.Text == "unit").Value;
        return written is YamlScalar scalar && Measure.Length.UnitOf(scalar.Text) is { } unit ? unit : Measure.Millimetre;
    }

    /// <summary>Notes a fault; always false.</summary>
    public bool Fail(SourceSpan at, string message)
    {
        Diagnostics.Add(new(at, message));
        return false;
    }
}
