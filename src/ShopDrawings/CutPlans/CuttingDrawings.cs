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
                ImmutableArray<StockPanel> panels = [.. sheet.Placements.Select(p => new StockPanel(board.NameOf(p), p, panelOf(board.NameOf(p)) is { } panel ? Bands(panel, p, isRouter) : []))];
                var drawn = new StockSheet(board.NameOf(sheet), board.Material, project, sheet, panels, PlacedCut.Of(sheet, board.Steps), [.. Notes(board, sheet, settings.Lengths)])
                {
                    Withheld = [.. panels.Select(p => p.Name).Where(withheld.Contains)],
                };
                yield return ($"sheets/{board.NameOf(sheet)}", StockSheetDrawing.Of(drawn, settings, number, count));
            }
    }

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
