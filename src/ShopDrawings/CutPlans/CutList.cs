using System.Collections.Immutable;
using ShopDrawings.Cutting;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;
using ShopDrawings.Svg;

namespace ShopDrawings;

/// <summary>What cuts a list, and how it is written. Lengths as a tape is read: <c>1/8 in</c>, <c>3.2 mm</c>.</summary>
public sealed record CutListSettings
{
    /// <summary>What is built, for title blocks.</summary>
    public string Title { get; init; } = "Cut list";

    /// <summary>The unit of lengths without one: <c>mm</c>, <c>cm</c>, <c>m</c>, <c>in</c>, <c>ft</c>; with inches or feet drawings print inches.</summary>
    public string Unit { get; init; } = "mm";

    /// <summary>Width of the blade's cut; 3.2 mm where it is empty.</summary>
    public string Kerf { get; init; } = "";

    /// <summary>The narrowest piece that may lie between fence and blade; any where it is empty.</summary>
    public string LeastStrip { get; init; } = "";

    /// <summary>How often the direction of cutting may change; any number where it is nothing.</summary>
    public int? Stages { get; init; }

    /// <summary>The direction of the first cuts in a sheet; either where it is nothing.</summary>
    public CutDirection? FirstCut { get; init; }

    /// <summary>For a router in place of a saw: the least gap between panels, kept along the edges too; empty for a saw.</summary>
    public string RouterGap { get; init; } = "";

    /// <summary>What prices are in; may be empty.</summary>
    public string Currency { get; init; } = "";

    /// <summary>How many times the usual work, some two seconds, may go into the plan; from 1 to 1000.</summary>
    public int Effort { get; init; } = 1;

    /// <summary>
    /// All rules of a saw, a store or a router in the words of the key <c>cutting</c> of a project file, with a <c>unit</c> of their own; then none of the
    /// above but title and unit. Empty for none.
    /// </summary>
    public string Rules { get; init; } = "";

    /// <summary>The name of the rules, for messages.</summary>
    public string RulesName { get; init; } = "rules";
}

/// <summary>Panels to cut and stock to cut them from, read from two tables. Immutable.</summary>
public sealed class CutList
{
    private readonly ImmutableArray<(BoardStock Stock, ImmutableArray<Part> Parts, ImmutableDictionary<string, string> Names)> boards;
    private readonly CuttingSetup setup;
    private readonly CutListSettings settings;

    internal CutList(ImmutableArray<(BoardStock, ImmutableArray<Part>, ImmutableDictionary<string, string>)> boards, CuttingSetup setup, CutListSettings settings, LengthStyle lengths) =>
        (this.boards, this.setup, this.settings, Lengths) = (boards, setup, settings, lengths);

    /// <summary>How drawings print lengths.</summary>
    public LengthStyle Lengths { get; }

    /// <summary>
    /// Reads both tables. Headings of panels: <c>panel</c>, <c>length</c>, <c>width</c>, and as wanted <c>count</c>, <c>board</c>, <c>grain</c> (along, across,
    /// any), <c>matching</c> (a word that panels of one fence setting share); of stock: <c>length</c>, <c>width</c>, and as wanted <c>board</c>, <c>name</c>,
    /// <c>price</c>, <c>count</c>, <c>trim</c>, <c>grain</c> (length, width, none), <c>own</c> (yes, no), <c>note</c>. A heading may say the unit of its lengths:
    /// <c>length_mm</c>, <c>length_in</c>.
    /// </summary>
    /// <returns>The list, or every mistake with file, line, column and cure.</returns>
    public static Outcome<CutList> Read(string panels, string panelsName, string stock, string stockName, CutListSettings? settings = null)
    {
        ArgumentNullException.ThrowIfNull(panels);
        ArgumentNullException.ThrowIfNull(stock);
        var diagnostics = new List<Diagnostic>();
        return Outcome<CutList>.Of(new CutListReader(settings ?? new CutListSettings(), diagnostics).Read(panels, panelsName, stock, stockName), diagnostics);
    }

    /// <summary>Looks for the cheapest sheets, board by board.</summary>
    /// <param name="progress">Told how far the search is.</param>
    /// <param name="stop">Ends the search with the best plans so far, which then depend on the time.</param>
    public ImmutableArray<BoardCutting> Plan(IProgress<CuttingProgress>? progress = null, CancellationToken stop = default)
    {
        var left = setup.Effort * CuttingSetup.UsualEffort;
        var plans = ImmutableArray.CreateBuilder<BoardCutting>();
        foreach (var ((stock, parts, names), k) in boards.Select((b, k) => (b, k)))
        {
            var problem = new CuttingProblem(parts, stock.Sizes, setup.Machine) { LeastOffcut = setup.LeastOffcut };
            var outcome = CuttingPlanner.Solve(problem, left / (boards.Length - k), progress, stop);
            left -= Math.Min(left, outcome.Plan?.Effort ?? 0);
            plans.Add(new BoardCutting(stock.Board, stock.Board, problem, outcome, stock.HasPrices, setup.Currency, names));
        }

        return plans.ToImmutable();
    }

    /// <summary>Why boards have no plan; none where all have one.</summary>
    public ImmutableArray<Finding> Findings(ImmutableArray<BoardCutting> plans) => [.. CuttingPlanner.Findings(plans, Lengths)];

    /// <summary>The files of some plans: a drawing of each sheet, all of them in one PDF, the lists, and the slips for a store.</summary>
    public ImmutableArray<Output> Files(ImmutableArray<BoardCutting> plans)
    {
        var drawings = new DrawingSettings(new(Lengths.IsInches ? DrawingStandard.Asme : DrawingStandard.Iso, Lengths with { Fractions = FractionForm.Stacked }));
        var sheets = CuttingDrawings.Of(plans, settings.Title, drawings.Sheets, _ => null, []).ToList();
        var svg = new SvgExporter { Style = drawings.Sheets.Standard.Style };
        return
        [
            .. sheets.Select(d => new Output($"{d.Path}.{svg.Format}", s => svg.Write(d.Sheet, s))),
            .. CuttingLists.Of(plans, []).Select(l => new Output(l.Path, s => CsvExporter.Write(s, l.Rows))),
            .. CounterSlipExporter.Of(plans, settings.Title, drawings, []),
            .. sheets.Count == 0 ? Array.Empty<Output>() : [new Output("drawings/sheets.pdf", s => drawings.BookExporter.Write([.. sheets.Select(d => d.Sheet)], s, settings.Title))],
        ];
    }
}
