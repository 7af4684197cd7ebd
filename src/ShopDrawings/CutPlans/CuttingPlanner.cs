using System.Collections.Immutable;
using System.Globalization;
using ShopDrawings.Cutting;
using ShopDrawings.Kernel;
using Placement = ShopDrawings.Cutting.Placement;

namespace ShopDrawings;

/// <summary>Plans how the panels of an assembly are cut from the stock.</summary>
internal static class CuttingPlanner
{
    /// <summary>The plan of every board that has stock and panels, boards in the order of the stock.</summary>
    /// <param name="assembly">What is built.</param>
    /// <param name="setup">The stock, and what cuts it.</param>
    /// <param name="placed">Ids of the panels that lie on sheets by hand and are left out.</param>
    /// <param name="progress">Told how far the work is.</param>
    /// <param name="stop">Ends the work with the best plans so far.</param>
    public static ImmutableArray<BoardCutting> Plan(Assembly assembly, CuttingSetup setup, IEnumerable<string> placed, IProgress<CuttingProgress>? progress, CancellationToken stop)
    {
        var byHand = placed.ToHashSet(StringComparer.Ordinal);
        var twins = PanelTwins.Find(assembly.Panels);
        var left = setup.Effort * CuttingSetup.UsualEffort;
        var tasks = setup.Boards.Select(b => (Stock: b, Panels: assembly.Panels.Where(p => p.Board.Name == b.Board && !byHand.Contains(p.Id)).ToList())).Where(t => t.Panels.Count > 0).ToList();
        var plans = ImmutableArray.CreateBuilder<BoardCutting>();
        foreach (var ((stock, panels), k) in tasks.Select((t, k) => (t, k)))
        {
            var board = panels[0].Board;
            var (parts, names) = Parts(panels, twins);
            var problem = new CuttingProblem(parts, stock.Sizes, setup.MachineFor(SheetGoods.ArealMass(board.Thickness.Value, board.DensityKgPerM3) * 1000)) { LeastOffcut = setup.LeastOffcut };
            // What a board leaves of its share goes to those after it.
            var outcome = Solve(problem, left / (tasks.Count - k), progress, stop);
            left -= Math.Min(left, outcome.Plan?.Effort ?? 0);
            plans.Add(new BoardCutting(board.Name, Material(board), problem, outcome, stock.HasPrices, setup.Currency, names));
        }

        return plans.ToImmutable();
    }

    /// <summary>The plan of one board within an effort.</summary>
    public static CuttingOutcome Solve(CuttingProblem problem, long effort, IProgress<CuttingProgress>? progress, CancellationToken stop) => problem.Stock.All(s => s.Count == 0)
        ? new CuttingOutcome(null, [new Refusal(RefusalReason.TooLittleStock, "", "there is none of any of its sheets: every count is 0")])
        : Cutter.Solve(problem, new CuttingOptions { Effort = Math.Max(1, effort) }, progress, stop);

    /// <summary>Why boards have no plan, as findings: the file is sound, and the numbers say what to change.</summary>
    public static IEnumerable<Finding> Findings(IEnumerable<BoardCutting> boards, LengthStyle lengths) =>
        from board in boards
        from refusal in board.Refusals
        select new Finding("cutting-plan", Severity.Error, [], $"{board.Board}: {refusal.Message}", Numbers(refusal), "derived (geometry)", Cure(refusal, lengths), null);

    /// <summary>The sheets of a router's plan with the panels where they lie; none where a saw cuts them.</summary>
    public static IEnumerable<CutSheet> Sheets(Assembly assembly, IEnumerable<BoardCutting> boards)
    {
        foreach (var board in boards)
        {
            if (board.Plan is not { Problem.Machine: Router } plan) continue;
            foreach (var sheet in plan.Sheets)
            {
                ImmutableArray<LyingPanel> lying = [.. sheet.Placements.Select(p => Lying(assembly.Panels.First(q => q.Id == board.NameOf(p)), p))];
                yield return new CutSheet(board.NameOf(sheet), lying[0].Panel.Board, Side(sheet.Stock.Length), Side(sheet.Stock.Width), lying) { HasGrainAcross = sheet.Stock.Grain == GrainDirection.AlongWidth };
            }
        }
    }

    /// <summary>A panel where a plan puts it: the face with more blind features up, so that fewest panels are turned over; at a saw the inside.</summary>
    public static LyingPanel Lying(Panel panel, Placement at, bool isOnRouter = true)
    {
        int Blind(Surface face) => panel.Features.Count(f => f switch { Bore { Depth: not null } b => b.Surface == face, Groove g => g.Face == face, Mark m => m.Face == face, _ => false });
        var up = isOnRouter && Blind(Surface.Outside) > Blind(Surface.Inside) ? Surface.Outside : Surface.Inside;
        return LyingPanel.At(panel, new(BoardCutting.Mm(at.X), BoardCutting.Mm(at.Y)), at.IsTurned ? 1 : 0, up);
    }

    /// <summary>What a drawing calls a board.</summary>
    private static string Material(Board board) => board.Label.Length > 0 ? $"{board.Name}, {board.Label}" : board.Name;

    private static Size Side(long nanometres) => Size.Default(BoardCutting.Mm(nanometres), "stock-size");

    // Equal panels are one part; those of one sawn size, such as sides that mirror each other but for a hole, ask for one setting.
    private static (ImmutableArray<Part> Parts, ImmutableDictionary<string, string> Names) Parts(List<Panel> panels, ImmutableDictionary<string, PanelTwin> twins)
    {
        string Root(Panel p) => twins.TryGetValue(p.Id, out var twin) && twin.Twinship == Twinship.Same && panels.Exists(q => q.Id == twin.Of) ? twin.Of : p.Id;
        (long, long) Sawn(Panel p) => (CuttingSetup.Nanometres(p.CutLength.Value), CuttingSetup.Nanometres(p.CutWidth.Value));
        var groups = panels.GroupBy(Root, StringComparer.Ordinal).ToList();
        var families = panels.GroupBy(Sawn).Where(f => f.Skip(1).Any()).ToDictionary(f => f.Key, f => f.First().Id);
        var parts = ImmutableArray.CreateBuilder<Part>();
        var names = ImmutableDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        foreach (var (group, k) in groups.Select((g, k) => (g.ToList(), k)))
        {
            var panel = group[0];
            // Marks of the solver's own, so that no name of the user's can be taken for a piece of a sheet.
            var label = string.Create(CultureInfo.InvariantCulture, $"@{k}");
            var (length, width) = Sawn(panel);
            parts.Add(new Part(panel.Id, length, width)
            {
                Quantity = group.Count,
                Grain = panel.Board.HasGrain ? Grain.Along : Grain.Any,
                Label = label,
                Matching = families.GetValueOrDefault((length, width)),
            });
            for (var copy = 1; copy <= group.Count; copy++) names[group.Count == 1 ? label : string.Create(CultureInfo.InvariantCulture, $"{label} #{copy}")] = group[copy - 1].Id;
        }

        return (parts.ToImmutable(), names.ToImmutable());
    }

    private static ImmutableArray<NamedNumber> Numbers(Refusal refusal)
    {
        var numbers = ImmutableArray.CreateBuilder<NamedNumber>();
        if (refusal.MissingLength > 0) numbers.Add(new("missing length", BoardCutting.Mm(refusal.MissingLength), "mm"));
        if (refusal.MissingWidth > 0) numbers.Add(new("missing width", BoardCutting.Mm(refusal.MissingWidth), "mm"));
        return numbers.ToImmutable();
    }

    private static string Cure(Refusal refusal, LengthStyle lengths) => refusal.Reason switch
    {
        RefusalReason.TooLarge => $"take a sheet {Larger(refusal, lengths)}, or make the panel smaller",
        RefusalReason.Grain => $"take a sheet {Larger(refusal, lengths)}, or one whose grain runs the other way",
        RefusalReason.Rule => "loosen the rule of “cutting”, or change the panel",
        RefusalReason.TooLittleStock => "add sheets to “stock”, or raise a “count”",
        _ => "change “stock” or “cutting”",
    };

    private static string Larger(Refusal refusal, LengthStyle lengths) => string.Join(" and ", new[]
    {
        refusal.MissingLength > 0 ? $"{lengths.Describe(BoardCutting.Mm(refusal.MissingLength))} longer" : "",
        refusal.MissingWidth > 0 ? $"{lengths.Describe(BoardCutting.Mm(refusal.MissingWidth))} wider" : "",
    }.Where(t => t.Length > 0));
}
