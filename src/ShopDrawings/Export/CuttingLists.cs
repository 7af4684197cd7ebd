using System.Collections.Immutable;
using ShopDrawings.Cutting;
using ShopDrawings.Kernel;

namespace ShopDrawings;

/// <summary>Rows of the lists for who buys and saws the sheets. Left, right, front and back are those of a sheet that lies with its length from left to right.</summary>
internal static class CuttingLists
{
    /// <summary>The files of some plans; none where there are no plans.</summary>
    public static IEnumerable<(string Path, IEnumerable<string[]> Rows)> Of(ImmutableArray<BoardCutting> boards, ImmutableArray<string> without)
    {
        if (boards.IsEmpty && without.IsEmpty) yield break;
        yield return ("lists/sheets.csv", Sheets(boards, without));
        if (boards.Any(b => !b.Steps.IsEmpty)) yield return ("lists/cuts.csv", Cuts(boards));
        if (boards.Any(b => b.Plan is not null)) yield return ("lists/offcuts.csv", Offcuts(boards));
        if (boards.Any(b => b.Problem.Machine is StoreSaw && b.Plan is not null)) yield return ("lists/store-cuts.csv", Store(boards));
    }

    /// <summary>What to buy: a row for each size of sheet, one for a store's cuts, and one for the board with the verdict.</summary>
    private static IEnumerable<string[]> Sheets(ImmutableArray<BoardCutting> boards, ImmutableArray<string> without)
    {
        yield return ["board", "sheet", "length_mm", "width_mm", "length_in", "width_in", "count", "price", "total", "currency", "used_percent", "verdict"];
        foreach (var board in boards)
        {
            if (board.Plan is not { } plan)
            {
                yield return [board.Board, "all", "", "", "", "", "", "", "", "", "", $"no plan: {board.Refusals[0].Message}"];
                continue;
            }

            foreach (var size in plan.Sheets.GroupBy(s => s.Stock))
                yield return
                [
                    board.Board, size.Key.Id, .. Both(size.Key.Length, size.Key.Width), CsvExporter.Count(size.Count()), board.Money(size.Key.Price), board.Money(size.Key.Price * size.Count()), Currency(board),
                    Percent(size.Average(s => s.Yield)), "",
                ];
            if (board.Problem.Machine is StoreSaw { PricePerCut: > 0 } store)
                yield return [board.Board, "cuts at the store", "", "", "", "", CsvExporter.Count(board.Steps.Count(s => !s.AtHome)), board.Money(store.PricePerCut), board.Money(plan.CutCost), Currency(board), "", ""];
            yield return [board.Board, "all", "", "", "", "", CsvExporter.Count(plan.Sheets.Length), "", board.Money(plan.Cost), Currency(board), Percent(plan.Statistics.Yield), board.Verdict];
        }

        foreach (var board in without) yield return [board, "all", "", "", "", "", "", "", "", "", "", "no stock is given"];
    }

    /// <summary>
    /// One row a cut, in order; rows with one number of setting follow each other and need the fence set once. A piece goes by the sheet and the letters of
    /// the cuts that made it. A trim's setting is what remains; of another cut's it is what comes off, and what stays is smaller by it and the kerf.
    /// </summary>
    private static IEnumerable<string[]> Cuts(ImmutableArray<BoardCutting> boards)
    {
        yield return ["step", "board", "sheet", "at", "piece", "piece_length_mm", "piece_width_mm", "setting", "fence_mm", "fence_in", "against", "cut", "kerf_mm", "gives", "gives_as", "leaves", "leaves_as"];
        foreach (var board in boards)
        {
            if (board.Plan is not { } plan) continue;
            var placed = plan.Sheets.SelectMany(s => PlacedCut.Of(s, board.Steps)).ToDictionary(p => p.Step.Number);
            foreach (var step in board.Steps)
            {
                var cut = placed[step.Number];
                yield return
                [
                    CsvExporter.Count(step.Number), board.Board, board.NameOf(step.Sheet), step.AtHome ? "home" : board.Problem.Machine is StoreSaw ? "store" : "saw", board.NameOf(step.Piece), Mm(cut.Piece.AlongX), Mm(cut.Piece.AlongY),
                    CsvExporter.Count(step.Fence), Mm(step.Setting), Inches(step.Setting), Word(step.Against), Word(step.Direction), Mm(cut.Kerf),
                    cut.Part is { } part ? board.NameOf(part) : board.NameOf(step.Comes), cut.Part is null ? Word(step.ComesAs) : "panel", step.Stays.Length == 0 ? "" : board.NameOf(step.Stays), Word(step.StaysAs),
                ];
            }
        }
    }

    /// <summary>What is left and worth keeping, in the form in which stock is listed, so that it can be stock the next time.</summary>
    private static IEnumerable<string[]> Offcuts(ImmutableArray<BoardCutting> boards)
    {
        yield return ["board", "name", "length_mm", "width_mm", "count", "grain", "own", "note"];
        foreach (var board in boards)
            foreach (var sheet in board.Plan?.Sheets ?? [])
                foreach (var (offcut, k) in sheet.Offcuts.Select((o, k) => (o, k)))
                {
                    // Its length along the grain where there is one, else its longer side.
                    var turned = sheet.Stock.Grain == GrainDirection.AlongWidth || (sheet.Stock.Grain == GrainDirection.None && offcut.AlongY > offcut.AlongX);
                    var (length, width) = turned ? (offcut.AlongY, offcut.AlongX) : (offcut.AlongX, offcut.AlongY);
                    yield return
                    [
                        board.Board, $"{board.NameOf(sheet)}-rest-{CsvExporter.Count(k + 1)}", Mm(length), Mm(width), "1", sheet.Stock.Grain == GrainDirection.None ? "" : "length", "yes",
                        $"left of {board.NameOf(sheet)} from {Mm(offcut.X)}, {Mm(offcut.Y)} mm",
                    ];
                }
    }

    /// <summary>The slip for a store's counter: sheet by sheet what is cut, measured from which edge, and what comes of it; sheets cut alike share their rows, and what is taken home whole has one.</summary>
    private static IEnumerable<string[]> Store(ImmutableArray<BoardCutting> boards)
    {
        yield return ["board", "sheets", "count", "sheet_length_mm", "sheet_width_mm", "cut_number", "piece", "cut", "measured_from", "fence_mm", "fence_in", "gives", "gives_length_mm", "gives_width_mm", "leaves"];
        foreach (var board in boards)
        {
            if (board.Plan is not { Problem.Machine: StoreSaw } plan) continue;
            foreach (var slip in CounterSlip.Of(plan))
            {
                string[] sheets = [board.Board, string.Join("; ", slip.Sheets.Select(board.NameOf)), CsvExporter.Count(slip.Sheets.Length), Mm(slip.Stock.Length), Mm(slip.Stock.Width)];
                if (slip.Cuts.IsEmpty) yield return [.. sheets, "0", "", "", "", "", "", board.NameOf(slip.Sheets[0]), Mm(slip.Stock.Length), Mm(slip.Stock.Width), ""];
                foreach (var (cut, k) in slip.Cuts.Select((c, k) => (c, k)))
                    yield return
                    [
                        .. sheets, CsvExporter.Count(k + 1), board.NameOf(cut.Step.Piece), Word(cut.Step.Direction), Word(cut.Step.Against), Mm(cut.Step.Setting), Inches(cut.Step.Setting),
                        cut.Part is { } part ? board.NameOf(part) : board.NameOf(cut.Step.Comes), Mm(cut.Comes.AlongX), Mm(cut.Comes.AlongY), cut.Step.Stays.Length == 0 ? "" : board.NameOf(cut.Step.Stays),
                    ];
            }
        }
    }

    /// <summary>A way of the blade in words.</summary>
    public static string Word(CutDirection direction) => direction == CutDirection.Along ? "along" : "across";

    /// <summary>An edge in words.</summary>
    public static string Word(PieceEdge edge) => edge switch { PieceEdge.Start => "left", PieceEdge.End => "right", PieceEdge.Near => "front", _ => "back" };

    private static string Word(OutcomeKind kind) => kind == OutcomeKind.Part ? "panel" : kind.ToString().ToLowerInvariant();

    private static string Currency(BoardCutting board) => board.HasPrices ? board.Currency : "";

    private static string Percent(double share) => CsvExporter.Number(100 * share, 1);

    private static string[] Both(long length, long width) => [Mm(length), Mm(width), Inches(length), Inches(width)];

    private static string Mm(long nanometres) => CsvExporter.Number(BoardCutting.Mm(nanometres), 4);

    private static string Inches(long nanometres) => LengthStyle.Fraction(BoardCutting.Mm(nanometres));
}
