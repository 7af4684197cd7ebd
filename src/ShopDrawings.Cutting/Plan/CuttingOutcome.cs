using System.Collections.Immutable;

namespace ShopDrawings.Cutting;

/// <summary>A plan, or why there is none.</summary>
/// <param name="Plan">The best plan found; null where the problem is refused.</param>
/// <param name="Refusals">Every reason found; empty where there is a plan.</param>
public sealed record CuttingOutcome(CuttingPlan? Plan, ImmutableArray<Refusal> Refusals);
