using System.Collections.Immutable;
using System.Globalization;
using ShopDrawings.Cutting;
using ShopDrawings.Kernel;
using ShopDrawings.ProjectFile;
using ShopDrawings.Yaml;

namespace ShopDrawings;

/// <summary>Reads the two tables of a cut list. Every mistake is noted where it is written.</summary>
internal sealed class CutListReader(CutListSettings settings, List<Diagnostic> diagnostics)
{
    private const string OnlyBoard = "sheet";
    private const int Most = 100_000;

    private static readonly ImmutableArray<string> PanelHeadings = ["panel", .. Lengths("length"), .. Lengths("width"), "count", "board", "grain", "matching", "note"];
    private static readonly ImmutableArray<string> StockHeadings = ["board", "name", .. Lengths("length"), .. Lengths("width"), "price", "count", .. Lengths("trim"), "grain", "own", "note"];

    private readonly Unit unit = Measure.Length.UnitOf(settings.Unit) ?? Measure.Millimetre;

    /// <summary>The list; what it returns does not count where there are mistakes.</summary>
    public CutList? Read(string panels, string panelsName, string stock, string stockName)
    {
        if (Measure.Length.UnitOf(settings.Unit) is null) diagnostics.Add(new(default, $"“{settings.Unit}” is no unit; mm, cm, m, in or ft"));
        var (parts, sizes) = (CsvTable.Read(panels, panelsName, "a panel", PanelHeadings, ["panel", "length", "width"], diagnostics), CsvTable.Read(stock, stockName, "a stock sheet", StockHeadings, ["length", "width"], diagnostics));
        if (parts is null || sizes is null) return null;
        if (parts.Has("board") != sizes.Has("board")) diagnostics.Add(new((parts.Has("board") ? sizes : parts).At, "the other table says the “board” of each row, and this one does not; add the column, or leave it out of both"));
        if (parts.Rows.IsEmpty) diagnostics.Add(new(parts.At, "no panel stands below the headings"));
        if (sizes.Rows.IsEmpty) diagnostics.Add(new(sizes.At, "no stock sheet stands below the headings"));
        var rules = settings.Rules.Length > 0 ? Rules() : null;
        var machine = rules is null ? Machine() : CuttingMachineReader.Read(rules, Fail);
        if (diagnostics.Count > 0) return null;
        var byBoard = ByBoard(sizes, stockName);
        var wanted = ByBoard(parts, panelsName);
        if (diagnostics.Count > 0) return null;
        foreach (var (board, rows) in wanted.Where(w => byBoard.All(b => b.Board != w.Board)))
            diagnostics.Add(new(parts.Cell(rows[0], "board")!.At, $"no stock is given of board “{board}”; known are {string.Join(", ", byBoard.Select(b => b.Board))}"));
        if (diagnostics.Count > 0) return null;
        var boards = wanted.Select(w => (Stock(w.Board, byBoard.First(b => b.Board == w.Board).Rows, sizes, machine), Parts(w.Rows, parts))).ToList();
        var lengths = unit == Measure.Inch || unit == Measure.Foot ? LengthStyle.Inches : LengthStyle.Millimetres;
        CuttingMachineReader.ComparePrices(rules, boards.Select(b => b.Item1), Fail);
        var least = rules?.LeastOffcut is { } kept ? CuttingSetup.Nanometres(kept.Value) : CuttingSetup.UsualLeastOffcut;
        var setup = new CuttingSetup([], machine, least, rules?.Currency ?? settings.Currency, rules?.Effort ?? settings.Effort);
        return new CutList([.. boards.Select(b => (b.Item1, b.Item2.Parts, b.Item2.Names))], setup, settings, lengths);
    }

    private CuttingEntry? Rules()
    {
        if (settings with { Title = "", Unit = "", Rules = "", RulesName = "" } != new CutListSettings { Title = "", Unit = "", RulesName = "" })
            diagnostics.Add(new(default, $"{settings.RulesName} says how the stock is cut; leave all other options but title and unit out, and write what they say into it"));
        if (YamlReader.Read(settings.Rules, settings.RulesName, "saw: {kerf: 3.2 mm}", diagnostics) is not { } root) return null;
        CuttingShapes.Rules.TryRead(root, new Reading(Reading.UnitOf(root), diagnostics), out var rules);
        if (rules?.Store?.Heaviest is { } heaviest) diagnostics.Add(new(heaviest.Source, "tables do not say what a board weighs; leave “heaviest” out, or say the “longest” side"));
        return rules;
    }

    private CuttingMachine Machine()
    {
        long Given(string text, string option, long usual)
        {
            if (text.Length == 0) return usual;
            var (expression, error) = ExpressionReader.Read(text, Measure.Length, unit);
            if (expression?.Evaluate("option", default).Value is { } value and >= 0 and <= 1000) return CuttingSetup.Nanometres(value);
            diagnostics.Add(new(default, $"{option}: {error ?? $"“{text}” stands where a length from 0 to 1000 mm is expected"}"));
            return usual;
        }

        if (settings.Effort is < 1 or > CuttingShapes.MostEffort) diagnostics.Add(new(default, $"effort: a whole number from 1 to {CuttingShapes.MostEffort} is expected"));
        if (settings.Stages is < 1 or > 20) diagnostics.Add(new(default, "stages: a whole number from 1 to 20 is expected"));
        if (settings.RouterGap.Length > 0 && Given(settings.RouterGap, "router gap", 0) is var gap) return new Router(gap) { ClampMargin = gap };
        return new PanelSaw(Given(settings.Kerf, "kerf", CuttingSetup.UsualKerf)) { LeastStrip = Given(settings.LeastStrip, "least strip", 0), MaxStages = settings.Stages, FirstCut = settings.FirstCut };
    }

    private List<(string Board, List<ImmutableArray<CsvCell>> Rows)> ByBoard(CsvTable table, string file)
    {
        var boards = new List<(string Board, List<ImmutableArray<CsvCell>> Rows)>();
        foreach (var row in table.Rows)
        {
            var cell = table.Cell(row, "board");
            if (cell is null && table.Has("board")) Fail(row, file, "this row has no board");
            var name = cell?.Text ?? OnlyBoard;
            if (cell is not null && !FileNames.IsPath(name.Replace('/', ' '))) diagnostics.Add(new(cell.At, $"“{name}” names files; a board's name has letters A–Z, digits, dashes and underscores, like white-18"));
            if (boards.FindIndex(b => b.Board == name) is var k and >= 0) boards[k].Rows.Add(row);
            else boards.Add((name, [row]));
        }

        return boards;
    }

    private BoardStock Stock(string board, List<ImmutableArray<CsvCell>> rows, CsvTable table, CuttingMachine machine)
    {
        var sizes = ImmutableArray.CreateBuilder<StockSize>();
        var isOwn = rows.Select(r => Choice(table, r, "own", ("no", false), ("yes", true))).ToList();
        var hasPrices = rows.Where((r, k) => !isOwn[k] && table.Cell(r, "price") is not null).Any();
        var names = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (row, own) in rows.Zip(isOwn))
        {
            var (length, width, trim) = (Length(table, row, "length"), Length(table, row, "width"), Length(table, row, "trim"));
            var price = table.Cell(row, "price");
            if (own && price is not null) diagnostics.Add(new(price.At, "an offcut of your own costs nothing; leave its price empty, or “own”"));
            if (!own && hasPrices && price is null) Fail(row, "other sheets of this board have a price and this one has none; give each one, or none; what is there already is own");
            var (coins, fault) = price is null ? (0L, null) : PriceShape.Read(price.Text);
            if (fault is not null) diagnostics.Add(new(price!.At, fault));
            var name = table.Cell(row, "name")?.Text ?? $"{table.Cell(row, Heading(table, "length"))?.Text} × {table.Cell(row, Heading(table, "width"))?.Text}";
            for (var n = 2; !names.Add(name); n++) name = string.Create(CultureInfo.InvariantCulture, $"{name} ({n})");
            var margin = machine is Router router ? 2 * router.ClampMargin : 0;
            if (length > 0 && width > 0 && Math.Min(length, width) - 2 * trim - margin <= 0) Fail(row, "what is cut or kept off its edges leaves nothing of this sheet; is the unit right?");
            sizes.Add(new StockSize(name, length, width)
            {
                Count = table.Cell(row, "count") is null ? own ? 1 : null : Count(table, row, 0),
                Trim = CuttingMachineReader.TrimFor(machine, Trim.Around(trim)),
                Price = own ? 0 : hasPrices ? coins : Math.Max(1, (long)((decimal)length * width / 1e14m)),
                Grain = Choice(table, row, "grain", ("length", GrainDirection.AlongLength), ("width", GrainDirection.AlongWidth), ("none", GrainDirection.None)),
            });
        }

        return new BoardStock(board, sizes.ToImmutable(), hasPrices);
    }

    private (ImmutableArray<Part> Parts, ImmutableDictionary<string, string> Names) Parts(List<ImmutableArray<CsvCell>> rows, CsvTable table)
    {
        var parts = ImmutableArray.CreateBuilder<Part>();
        var names = ImmutableDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        var known = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var (row, k) in rows.Select((r, k) => (r, k)))
        {
            var cell = table.Cell(row, "panel");
            if (cell is null) Fail(row, "this row names no panel");
            var name = cell?.Text ?? "";
            if (cell is not null && !known.TryAdd(name, cell.At.Line)) diagnostics.Add(new(cell.At, FormattableString.Invariant($"“{name}” stands in line {known[name]} already; raise its count, or choose another name")));
            var (label, count) = (string.Create(CultureInfo.InvariantCulture, $"@{k}"), table.Cell(row, "count") is null ? 1 : Count(table, row, 1));
            parts.Add(new Part(name, Length(table, row, "length"), Length(table, row, "width"))
            {
                Quantity = count,
                Grain = Choice(table, row, "grain", ("any", Grain.Any), ("along", Grain.Along), ("across", Grain.Across)),
                Matching = table.Cell(row, "matching")?.Text,
                Label = label,
            });
            for (var copy = 1; copy <= count; copy++)
            {
                var own = string.Create(CultureInfo.InvariantCulture, $" #{copy}");
                names[count == 1 ? label : label + own] = count == 1 ? name : name + own;
            }
        }

        if (parts.Sum(p => (long)p.Quantity) is var pieces and > Limits.MostPieces) diagnostics.Add(new(rows[0][0].At, FormattableString.Invariant($"{pieces} pieces of one board stand here, and at most {Limits.MostPieces} are taken on; make several lists of them")));
        if (parts.Count > Limits.MostParts) diagnostics.Add(new(rows[0][0].At, FormattableString.Invariant($"{parts.Count} different panels of one board stand here, and at most {Limits.MostParts} are taken on; put equal ones in one row with a count")));
        return (parts.ToImmutable(), names.ToImmutable());
    }

    // Nanometres; 0 with a mistake noted where a length is missing or wrong, or where a trim is left out.
    private long Length(CsvTable table, ImmutableArray<CsvCell> row, string name)
    {
        var heading = Heading(table, name);
        if (table.Cell(row, heading) is not { } cell)
        {
            if (name != "trim") Fail(row, $"this row has no {name}");
            return 0;
        }

        var bare = heading == name ? unit : Measure.Length.UnitOf(heading[(name.Length + 1)..])!;
        var (expression, error) = ExpressionReader.Read(cell.Text, Measure.Length, bare);
        if (expression is null) diagnostics.Add(new(cell.At, error!));
        else if (CuttingSetup.Nanometres(Math.Clamp(expression.Evaluate(name, cell.At).Value, -1, 1e6)) is var length && (length > Limits.LongestSide || length < (name == "trim" ? 0 : 10_000)))
            diagnostics.Add(new(cell.At, $"“{cell.Text}” stands where a length from {(name == "trim" ? "0" : "0.01 mm")} to 100 m is expected; is the unit right?"));
        else return length;
        return 0;
    }

    private int Count(CsvTable table, ImmutableArray<CsvCell> row, int least)
    {
        var cell = table.Cell(row, "count")!;
        if (int.TryParse(cell.Text, NumberStyles.None, CultureInfo.InvariantCulture, out var count) && count >= least && count <= Most) return count;
        diagnostics.Add(new(cell.At, FormattableString.Invariant($"“{cell.Text}” stands where a whole number from {least} to {Most} is expected")));
        return least;
    }

    private T Choice<T>(CsvTable table, ImmutableArray<CsvCell> row, string heading, params ReadOnlySpan<(string Word, T Value)> choices)
    {
        if (table.Cell(row, heading) is not { } cell) return choices[0].Value;
        foreach (var (word, value) in choices)
            if (cell.Text == word) return value;
        var words = new List<string>();
        foreach (var (word, _) in choices) words.Add(word);
        diagnostics.Add(new(cell.At, $"“{cell.Text}” stands where {string.Join(", ", words[..^1])} or {words[^1]} is expected"));
        return choices[0].Value;
    }

    private void Fail(SourceSpan at, string message) => diagnostics.Add(new(at, message));

    private void Fail(ImmutableArray<CsvCell> row, string message) => diagnostics.Add(new(row[0].At, message));

    private void Fail(ImmutableArray<CsvCell> row, string file, string message) => diagnostics.Add(new(row.IsEmpty ? new SourceSpan(file, 1, 1) : row[0].At, message));

    private static string Heading(CsvTable table, string name) => Lengths(name).FirstOrDefault(table.Has) ?? name;

    private static ImmutableArray<string> Lengths(string name) => [name, $"{name}_mm", $"{name}_cm", $"{name}_m", $"{name}_in", $"{name}_ft"];
}
