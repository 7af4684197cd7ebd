using System.Collections.Immutable;
using System.Globalization;

namespace ShopDrawings.Cutting;

/// <summary>Which sheets to take and how to cut them.</summary>
public sealed record CuttingPlan
{
    internal CuttingPlan(CuttingProblem problem, ImmutableArray<SheetPlan> sheets, long sheetCost, long cutCost, long bound, PlanStatistics statistics, long effort) =>
        (Problem, Sheets, SheetCost, CutCost, Bound, Statistics, Effort) = (problem, sheets, sheetCost, cutCost, bound, statistics, effort);

    internal CuttingPlan WithBound(long bound) => new(Problem, Sheets, SheetCost, CutCost, bound, Statistics, Effort);

    /// <summary>What was asked.</summary>
    public CuttingProblem Problem { get; }

    /// <summary>Sheet by sheet, in the order of the stock sizes.</summary>
    public ImmutableArray<SheetPlan> Sheets { get; }

    /// <summary>What the sheets cost, in the smallest coin.</summary>
    public long SheetCost { get; }

    /// <summary>What the cuts cost, in the smallest coin.</summary>
    public long CutCost { get; }

    /// <summary>What all costs.</summary>
    public long Cost => SheetCost + CutCost;

    /// <summary>No plan whatever costs less, in the smallest coin.</summary>
    public long Bound { get; }

    /// <summary>Counts over the plan.</summary>
    public PlanStatistics Statistics { get; }

    /// <summary>Work done until this plan was settled, in the solver's own units; the same for the same problem on any machine.</summary>
    public long Effort { get; }

    /// <summary>Whether nothing can be cheaper.</summary>
    public bool IsProvedCheapest => Cost <= Bound;

    /// <summary>By how much of the bound a cheaper plan could at most be cheaper, in percent; 0 where this one is proved cheapest.</summary>
    public double PercentAboveBound => Cost <= Bound ? 0 : Bound == 0 ? double.PositiveInfinity : 100.0 * (Cost - Bound) / Bound;

    /// <summary>How good it is, in words.</summary>
    public string Verdict => IsProvedCheapest ? "proved cheapest"
        : Bound == 0 ? "not proved cheapest; the bound is nothing, since own offcuts might hold all"
        : string.Create(CultureInfo.InvariantCulture, $"at most {Math.Ceiling(PercentAboveBound * 10) / 10:0.0} % above the bound");
}
