using System.Collections.Immutable;
using System.Globalization;
using ShopDrawings.Cutting;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;
using Placement = ShopDrawings.Cutting.Placement;

namespace ShopDrawings;

/// <summary>The drawings of stock sheets.</summary>
internal static class CuttingDrawings
{
    /// <summary>A drawing of every sheet of every board, with its path without an extension.</summary>
    /// <param name="boards">The plans.</param>
    /// <param name="project">What is built.</param>
    /// <param name="settings">What all sheets share.</param>
    /// <param name="panelOf">The panel of a name, or nothing where only sizes are known.</param>
    /// <param name="withheld">Names of the panels that must not be cut.</param>
    public static IEnumerable<(string Path, Drawing Sheet)> Of(ImmutableArray<BoardCutting> boards, string project, SheetSettings settings, Func<string, Panel?> panelOf, ImmutableArray<string> withheld)
    {
        var count = boards.Sum(b => b.Plan?.Sheets.Length ?? 0);
        var number = 0;
        foreach (var board in boards)
            foreach (var sheet in board.Plan?.Sheets ?? [])
            {
                number++;
                var isRouter = board.Problem.Machine is Router;
                ImmutableArray<StockPiece> panels = [.. sheet.Placements.Select(p => new StockPiece(board.NameOf(p), AreaOf(p), p.IsTurned, panelOf(board.NameOf(p)) is { } panel ? Bands(panel, p, isRouter) : []))];
                ImmutableArray<SheetArea> offcuts = sheet.Tree is { } tree ? [.. tree.All().Where(p => p.Kind == PieceKind.Offcut).Select(AreaOf)] : [.. sheet.Offcuts.Select(o => new SheetArea(o.X, o.Y, o.AlongX, o.AlongY))];
                var drawn = new StockSheet(board.NameOf(sheet), board.Material, project, sheet.Stock, panels, offcuts, PlacedCut.Of(sheet, board.Steps))
                {
                    Summary = $"{SizeOf(sheet.Stock, settings.Lengths)}, {Count(panels.Length, "panel")}, {(100 * sheet.Yield).ToString("0.0", CultureInfo.InvariantCulture)} % used",
                    Notes = [.. Notes(board, sheet, settings.Lengths)],
                    Blanks = sheet.Tree is { AtHome: false } whole ? [.. whole.Children.Where(c => c.AtHome).Select(AreaOf)] : [],
                    Withheld = [.. panels.Select(p => p.Name).Where(withheld.Contains)],
                };
                yield return ($"sheets/{board.NameOf(sheet)}", StockSheetDrawing.Of(drawn, settings, number, count));
            }
    }

    /// <summary>A page for each slip that goes over a store's counter; none where no store cuts.</summary>
    /// <param name="boards">The plans.</param>
    /// <param name="project">What is built.</param>
    /// <param name="settings">What all sheets share.</param>
    /// <param name="withheld">Names of the panels that must not be cut.</param>
    public static ImmutableArray<Drawing> Slips(ImmutableArray<BoardCutting> boards, string project, SheetSettings settings, ImmutableArray<string> withheld)
    {
        var slips = boards.Where(b => b is { Plan: not null, Problem.Machine: StoreSaw }).SelectMany(b => CounterSlip.Of(b.Plan!).Select(slip => (Board: b, Slip: slip))).ToList();
        return [.. slips.Select((s, i) => StockSheetDrawing.Of(Slip(s.Board, s.Slip, project, settings.Lengths, withheld), settings, i + 1, slips.Count))];
    }

    private static StockSheet Slip(BoardCutting board, CounterSlip slip, string project, LengthStyle lengths, ImmutableArray<string> withheld)
    {
        var saw = (StoreSaw)board.Problem.Machine;
        string Print(long nanometres) => lengths.Print(BoardCutting.Mm(nanometres));
        var cuts = slip.Cuts.Select((c, k) => c with { Step = c.Step with { Number = k + 1 } }).ToImmutableArray();
        var (first, each) = (board.NameOf(slip.Sheets[0]), slip.Sheets.Length > 1 ? " each" : "");
        return new StockSheet(first, board.Material, project, slip.Stock, [.. slip.Pieces.Where(p => p.Kind != OutcomeKind.Offcut).Select(p => new StockPiece(Name(p), p.Area, p.Part is { IsTurned: true }, []))],
            [.. slip.Pieces.Where(p => p.Kind == OutcomeKind.Offcut).Select(p => p.Area)], cuts)
        {
            Kind = "Slip for the store",
            IsOnSmallestPaper = true,
            Summary = $"{Count(slip.Sheets.Length, "sheet")} {SizeOf(slip.Stock, lengths)}, {(cuts.IsEmpty ? "not cut" : $"{Count(cuts.Length, "cut")}{each}, {Count(slip.Pieces.Length, "piece")}{each}")}",
            Notes = [.. NotesOfSlip()],
            List = [.. cuts.Select(Line)],
            Withheld = [.. slip.Sheets.SelectMany(n => board.Plan!.Sheets[n - 1].Placements).Select(board.NameOf).Where(withheld.Contains)],
        };

        string Name(TakenPiece piece) => piece.Part is { } part ? board.NameOf(part) : board.NameOf(piece.Mark);

        string Line(PlacedCut cut)
        {
            var line = string.Create(CultureInfo.InvariantCulture, $"{cut.Step.Number}: {CuttingLists.Word(cut.Step.Direction)}, {Print(cut.Step.Setting)} from the {CuttingLists.Word(cut.Step.Against)}");
            return cut.IsTrim ? $"{line}, a trim" : $"{line}: {(cut.Part is { } part ? board.NameOf(part) : board.NameOf(cut.Step.Comes))}";
        }

        IEnumerable<string> NotesOfSlip()
        {
            if (!cuts.IsEmpty) yield return $"Reckoned with a kerf of {lengths.PrintFine(BoardCutting.Mm(saw.Kerf))}{(saw.Error > 0 ? $" and sizes within {lengths.PrintFine(BoardCutting.Mm(saw.Error))} either way" : "")}. Write its name on every piece.";
            if (!cuts.IsEmpty) yield return "Along is with the length of the sheet, across is with its width; measures are from the edge named, the front is below here.";
            if (slip.Sheets.Length > 1) yield return $"Alike: {string.Join(", ", slip.Sheets.Select(board.NameOf))}; the pieces of each are marked by its own name.";
            if (!board.HasPrices || slip.SheetCost + slip.CutCost == 0) yield break;
            var all = $"{board.Money(slip.SheetCost + slip.CutCost)}{(board.Currency.Length > 0 ? " " + board.Currency : "")}";
            yield return slip.CutCost == 0 ? $"To pay: {all}." : $"To pay: {Count(slip.Sheets.Length, "sheet")} {board.Money(slip.SheetCost)}, {Count(cuts.Length * slip.Sheets.Length, "cut")} {board.Money(slip.CutCost)}, together {all}.";
        }
    }

    private static string Count(int n, string what) => string.Create(CultureInfo.InvariantCulture, $"{n} {what}{(n == 1 ? "" : "s")}");

    private static string SizeOf(StockSize stock, LengthStyle lengths) => $"{lengths.Print(BoardCutting.Mm(stock.Length))} × {lengths.Print(BoardCutting.Mm(stock.Width))}";

    private static SheetArea AreaOf(Placement place) => new(place.X, place.Y, place.AlongX, place.AlongY);

    private static SheetArea AreaOf(CutPiece piece) => new(piece.X, piece.Y, piece.AlongX, piece.AlongY);

    // The side on the sheet that each banded edge comes to lie at.
    private static ImmutableArray<PieceEdge> Bands(Panel panel, Placement place, bool isRouter)
    {
        var lie = CuttingPlanner.Lying(panel, place, isRouter).Lie;
        var (l, w) = (panel.Length.Value, panel.Width.Value);
        var middle = lie.Of(new Point2(l / 2, w / 2));
        return [.. panel.Bands.Select(b => Side(lie.Of(Middle(b.Edge)) - middle)).Order()];

        Point2 Middle(Surface edge) => edge switch { Surface.Start => new(0, w / 2), Surface.End => new(l, w / 2), Surface.Near => new(l / 2, 0), _ => new(l / 2, w) };
        static PieceEdge Side(Point2 towards) => Math.Abs(towards.X) > Math.Abs(towards.Y) ? towards.X < 0 ? PieceEdge.Start : PieceEdge.End : towards.Y < 0 ? PieceEdge.Near : PieceEdge.Far;
    }

    private static IEnumerable<string> Notes(BoardCutting board, SheetPlan sheet, LengthStyle lengths)
    {
        string Print(long nanometres) => lengths.PrintFine(BoardCutting.Mm(nanometres));
        var machine = board.Problem.Machine;
        var cut = machine switch
        {
            Router router => $"Gap for the tool {Print(router.Kerf)}, margin for clamps {Print(router.ClampMargin)}.",
            StoreSaw { Home: { } home } store => $"Kerf {Print(store.Kerf)} at the store, {Print(home.Kerf)} at home; blanks (dashed) carry {Print(store.BlankAllowance)} on every edge.",
            _ => $"Kerf {Print(machine.Kerf)}.",
        };
        var t = sheet.Stock.Trim;
        var edges = t == Trim.Around(t.Near) ? $"{Print(t.Near)} all round"
            : string.Join(", ", new[] { (t.Start, "left"), (t.End, "right"), (t.Near, "front"), (t.Far, "back") }.Where(e => e.Item1 > 0).Select(e => $"{Print(e.Item1)} {e.Item2}"));
        yield return t == default ? cut : machine is Router ? $"{cut} Rim {edges}." : $"{cut} Trim {edges}, kerf in it.";
        var price = board.HasPrices && sheet.Stock.Price > 0 ? $" Price {board.Money(sheet.Stock.Price)}{(board.Currency.Length > 0 ? " " + board.Currency : "")}." : "";
        yield return string.Create(CultureInfo.InvariantCulture, $"Sheet {sheet.Number} of {board.Plan!.Sheets.Length} of {board.Board}: {board.Verdict}.{price}");
    }
}
