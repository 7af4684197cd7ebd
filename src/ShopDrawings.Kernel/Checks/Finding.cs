using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>How bad a finding is.</summary>
public enum Severity
{
    /// <summary>Worth knowing.</summary>
    Note,

    /// <summary>Works, but not well.</summary>
    Warning,

    /// <summary>Must not be cut like this: the panels concerned get no machine files.</summary>
    Error,
}

/// <summary>A number a finding rests on.</summary>
/// <param name="Name">What it is, in words.</param>
/// <param name="Value">The number.</param>
/// <param name="Unit">Its unit, such as <c>mm</c>; empty for a bare number.</param>
public sealed record NamedNumber(string Name, double Value, string Unit);

/// <summary>Where a finding shows: a block in the frame of a panel, in mm.</summary>
/// <param name="Panel">The panel's id.</param>
/// <param name="Box">The block.</param>
public sealed record Indicator(string Panel, Box3 Box);

/// <summary>What a check says about the assembly.</summary>
/// <param name="Rule">Stable id of the rule, in words: <c>panels-overlap</c>.</param>
/// <param name="Severity">How bad it is.</param>
/// <param name="Panels">The panels concerned, in assembly order.</param>
/// <param name="Message">What is wrong, with its numbers.</param>
/// <param name="Numbers">The numbers it rests on.</param>
/// <param name="Source">Where the rule comes from.</param>
/// <param name="Cure">What would put it right.</param>
/// <param name="Where">Where it shows, or nothing.</param>
/// <param name="Waiver">The user's reason to go on all the same, or nothing.</param>
public sealed record Finding(
    string Rule, Severity Severity, ImmutableArray<string> Panels, string Message, ImmutableArray<NamedNumber> Numbers, string Source, string Cure,
    Indicator? Where, string? Waiver = null)
{
    /// <summary>Whether the panels concerned must not be cut: an error nobody waived.</summary>
    public bool Withholds => Severity == Severity.Error && Waiver is null;
}
