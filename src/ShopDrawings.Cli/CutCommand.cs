using System.CommandLine;
using System.Globalization;
using ShopDrawings.Cutting;

namespace ShopDrawings.Cli;

/// <summary><c>cut</c>: from a table of panels and one of stock to drawings of the sheets, the order of cuts and the costs.</summary>
internal sealed class CutCommand(TextWriter output, TextWriter error, CancellationToken stop)
{
    /// <summary>The verb.</summary>
    public static Command Create(TextWriter output, TextWriter error, CancellationToken stop)
    {
        var panels = new Argument<string>("PANELS.csv") { Description = "The panels: columns panel, length, width, and as wanted count, board, grain (along, across, any), matching." };
        var stock = new Option<string>("--stock") { Description = "The sheets: columns length, width, and as wanted board, name, price, count, trim, grain (length, width, none), own (yes, no).", HelpName = "STOCK.csv", Required = true };
        var folder = new Option<string>("--out") { Description = "The folder to write; it is replaced as a whole, and only if this program wrote it.", DefaultValueFactory = _ => "out", HelpName = "DIR" };
        var unit = new Option<string>("--unit") { Description = "The unit of lengths without one: mm, cm, m, in, ft.", DefaultValueFactory = _ => "mm" };
        var kerf = new Option<string>("--kerf") { Description = "Width of the blade's cut; 3.2 mm where it is left out.", DefaultValueFactory = _ => "", HelpName = "LENGTH" };
        var strip = new Option<string>("--least-strip") { Description = "The narrowest piece that may lie between fence and blade.", DefaultValueFactory = _ => "", HelpName = "LENGTH" };
        var stages = new Option<int?>("--stages") { Description = "How often the direction of cutting may change, the first counted." };
        var first = new Option<string>("--first-cut") { Description = "Whether the first cuts run along the sheet's length or across it: along, across." };
        first.AcceptOnlyFromAmong("along", "across");
        var gap = new Option<string>("--router") { Description = "A router cuts, with this gap between panels, in place of a saw.", DefaultValueFactory = _ => "", HelpName = "GAP" };
        var currency = new Option<string>("--currency") { Description = "What prices are in.", DefaultValueFactory = _ => "", HelpName = "WORD" };
        var effort = new Option<int>("--effort") { Description = "How many times the usual work, some two seconds, may go into the plan.", DefaultValueFactory = _ => 1 };
        var rules = new Option<string?>("--rules") { Description = "All rules of a saw, a store or a router in a file, written as under “cutting” in a project; in place of the options above from --kerf on.", HelpName = "RULES.yaml" };
        var title = new Option<string>("--title") { Description = "What is built, for the drawings.", DefaultValueFactory = _ => "Cut list", HelpName = "TEXT" };
        var command = new Command("cut", "Lay panels on the cheapest sheets: a drawing of each sheet, the order of cuts, costs and offcuts.") { panels, stock, folder, unit, kerf, strip, stages, first, gap, currency, effort, rules, title };
        command.SetAction(call => new CutCommand(output, error, stop).Run(call.GetValue(panels)!, call.GetValue(stock)!, call.GetValue(folder)!, call.GetValue(rules), new CutListSettings
        {
            Title = call.GetValue(title)!,
            Unit = call.GetValue(unit)!,
            Kerf = call.GetValue(kerf)!,
            LeastStrip = call.GetValue(strip)!,
            Stages = call.GetValue(stages),
            FirstCut = call.GetValue(first) switch { "along" => CutDirection.Along, "across" => CutDirection.Across, _ => null },
            RouterGap = call.GetValue(gap)!,
            Currency = call.GetValue(currency)!,
            Effort = call.GetValue(effort),
        }));
        return command;
    }

    private int Run(string panels, string stock, string folder, string? rules, CutListSettings settings)
    {
        using var target = OutputFolder.At(folder);
        var (panelText, panelFault) = InputText.Read(panels, "a table of panels");
        var (stockText, stockFault) = InputText.Read(stock, "a table of stock");
        if (panelText is null || stockText is null) return Mistakes([.. new[] { panelFault, stockFault }.OfType<Diagnostic>()]);
        if (rules is not null)
        {
            var (rulesText, rulesFault) = InputText.Read(rules, "rules of cutting");
            if (rulesText is null) return Mistakes([rulesFault!]);
            settings = settings with { Rules = rulesText, RulesName = rules };
        }

        var read = CutList.Read(panelText, panels, stockText, stock, settings);
        if (read.Value is not { } list) return Mistakes(read.Diagnostics);
        var plans = list.Plan(new SearchProgress(error), stop);
        // Stopped before there was any plan there is nothing to write.
        if (plans.Any(p => p.Plan is null)) stop.ThrowIfCancellationRequested();
        var isStopped = stop.IsCancellationRequested;
        var findings = list.Findings(plans);
        foreach (var finding in findings) error.WriteLine($"error: {finding.Rule}: {finding.Message}; {finding.Cure}");
        var files = list.Files(plans);
        target.Publish(files, isStopped ? CancellationToken.None : stop);
        foreach (var plan in plans.Where(p => p.Plan is not null)) output.WriteLine(Summary(plan));
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{files.Length} files in {folder}"));
        if (isStopped) error.WriteLine("interrupted; the best plan so far was written");
        return isStopped ? ExitCode.Interrupted : findings.IsEmpty ? ExitCode.Done : ExitCode.DoneWithErrors;
    }

    private static string Summary(BoardCutting board)
    {
        var plan = board.Plan!;
        var sheets = string.Join(" + ", plan.Sheets.GroupBy(s => s.Stock.Id).Select(g => string.Create(CultureInfo.InvariantCulture, $"{g.Count()} of {g.Key}")));
        var cost = board.HasPrices ? $", {board.Money(plan.Cost)}{(board.Currency.Length > 0 ? " " + board.Currency : "")}" : "";
        return string.Create(CultureInfo.InvariantCulture, $"{board.Board}: {sheets}{cost}, {100 * plan.Statistics.Yield:0.0} % used, {board.Verdict}");
    }

    private int Mistakes(IReadOnlyList<Diagnostic> mistakes)
    {
        var complaints = new Complaints(error);
        complaints.Say(mistakes);
        complaints.SayNothingWritten(mistakes.Count);
        return ExitCode.WrongInput;
    }
}
