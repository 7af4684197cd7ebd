using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>Hardware that does not fit where it was asked for. The cabinet is built all the same, and the check of hardware says so.</summary>
/// <param name="Panels">Ids of the panels concerned, the one it shows on first; at least one.</param>
/// <param name="Message">What does not fit, with its numbers.</param>
/// <param name="Numbers">The numbers it rests on.</param>
/// <param name="Cure">What would put it right.</param>
/// <param name="Source">Where the rule comes from.</param>
internal sealed record Misfit(ImmutableArray<string> Panels, string Message, ImmutableArray<NamedNumber> Numbers, string Cure, string Source);
