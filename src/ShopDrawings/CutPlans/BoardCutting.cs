using System.Collections.Immutable;
using System.Globalization;
using ShopDrawings.Cutting;
using Placement = ShopDrawings.Cutting.Placement;

namespace ShopDrawings;

/// <summary>What is wanted of one board, the sheets it is cut from, and how. Immutable.</summary>
public sealed class BoardCutting
{
    private readonly ImmutableDictionary<string, string> names;

    internal BoardCutting(string board, string material, CuttingProblem problem, CuttingOutcome outcome, bool hasPrices, string currency, ImmutableDictionary<string, string> names)
    {
        (Board, Material, Problem, HasPrices, Currency, this.names) = (board, material, problem, hasPrices, currency, names);
        (Plan, Refusals) = (outcome.Plan, outcome.Refusals);
        Steps = Plan is null ? [] : CutSequence.Of(Plan);
    }

    /// <summary>The board's name.</summary>
    public string Board { get; }

    /// <summary>What it is sold as, and its thickness, for drawings; may be empty.</summary>
    public string Material { get; }

    /// <summary>What the solver was asked.</summary>
    public CuttingProblem Problem { get; }

    /// <summary>The plan, or nothing where there can be none.</summary>
    public CuttingPlan? Plan { get; }

    /// <summary>Why there is no plan; empty where there is one.</summary>
    public ImmutableArray<Refusal> Refusals { get; }

    /// <summary>Whether sheets have prices; else each is reckoned by its area.</summary>
    public bool HasPrices { get; }

    /// <summary>What prices are in, as the user writes it; may be empty.</summary>
    public string Currency { get; }

    /// <summary>The cuts in order; none for a router.</summary>
    public ImmutableArray<CutStep> Steps { get; }

    /// <summary>How good the plan is, in words.</summary>
    public string Verdict => Plan switch
    {
        null => "no plan",
        { IsProvedCheapest: true } when !HasPrices => "proved least area",
        { } plan => plan.Verdict,
    };

    /// <summary>How far the plan is off the bound in percent, or nothing where that is not known.</summary>
    public double? PercentAboveBound => Plan is { PercentAboveBound: var percent } && double.IsFinite(percent) ? percent : null;

    /// <summary>The name of a sheet, of its drawing and its files.</summary>
    public string NameOf(SheetPlan sheet) => NameOf(sheet.Number);

    /// <summary>The panel's own name of a part where it lies.</summary>
    public string NameOf(Placement placement) => names[placement.Label];

    /// <summary>What is written on a piece that the sequence of cuts marks so.</summary>
    public string NameOf(string mark)
    {
        if (names.TryGetValue(mark, out var name)) return name;
        var point = mark.IndexOf('.', StringComparison.Ordinal);
        return point < 0 ? $"{Board}-{mark}" : $"{Board}-{mark[..point]}{mark[point..]}";
    }

    /// <summary>An amount in the smallest coin as it is printed, without the currency; empty where there are no prices.</summary>
    public string Money(long coins) => HasPrices ? (coins / 100m).ToString("0.00", CultureInfo.InvariantCulture) : "";

    /// <summary>A length of the plan in mm.</summary>
    internal static double Mm(long nanometres) => nanometres / 1e6;

    internal string NameOf(int sheet) => string.Create(CultureInfo.InvariantCulture, $"{Board}-{sheet}");
}
