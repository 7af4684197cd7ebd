using System.Collections.Immutable;

namespace ShopDrawings.Cutting;

/// <summary>
/// The cuts of a plan in the order a person takes them: trims, then stage by stage over all sheets, and within a stage wide settings before narrow ones,
/// so that the fence is set once for all that share a setting. A piece is marked by its sheet and the letters of the cuts that made it (<c>2</c>, <c>2.a</c>,
/// <c>2.a.c</c>), a part by its label.
/// </summary>
public static class CutSequence
{
    /// <summary>The steps of a plan; none for a router.</summary>
    public static ImmutableArray<CutStep> Of(CuttingPlan plan) => Of(plan.Sheets);

    internal static ImmutableArray<CutStep> Of(IEnumerable<SheetPlan> sheets)
    {
        var raw = new List<Raw>();
        foreach (var sheet in sheets)
            if (sheet.Tree is { } tree) Walk(sheet.Number, tree, Mark(sheet.Number), 0, null, raw);
        var steps = ImmutableArray.CreateBuilder<CutStep>();
        var fence = 0;
        (bool, int, bool, CutDirection, long)? last = null;
        // Stable: within one setting sheets and pieces keep their order, and a piece's own cuts follow each other from wide to narrow.
        foreach (var r in raw.OrderBy(r => r.Home).ThenBy(r => r.Stage).ThenBy(r => r.Trims).ThenBy(r => r.Direction).ThenByDescending(r => r.Setting))
        {
            var group = (r.Home, r.Stage, r.Trims > 0, r.Direction, r.Setting);
            if (last != group) fence++;
            last = group;
            steps.Add(new CutStep(steps.Count + 1, r.Sheet, r.Stage, r.Piece, r.Direction, r.Against, r.Setting, fence, r.Comes, r.ComesAs, r.Stays, r.StaysAs, r.Home));
        }
        return steps.ToImmutable();
    }

    // A cut before it has its place. Trims: 0 for dividing cuts after, 1 to 4 the order of a piece's trims before them.
    private sealed record Raw(int Sheet, int Stage, int Trims, string Piece, CutDirection Direction, PieceEdge Against, long Setting, string Comes, OutcomeKind ComesAs, string Stays, OutcomeKind StaysAs, bool Home);

    private static void Walk(int sheet, CutPiece piece, string mark, int stage, CutDirection? before, List<Raw> raw)
    {
        if (piece.Kind != PieceKind.Divided) return;
        var (length, width, t) = (piece.AlongX, piece.AlongY, piece.Trim);
        var trims = 0;
        // What needs no cut but the trims is the part itself once the last of them is done.
        var (whole, edges) = (piece.CutsHere == 0 ? piece.Children[0].Placement : null, new[] { t.Near, t.Far, t.Start, t.End }.Count(off => off > 0));
        foreach (var (edge, off) in new[] { (PieceEdge.Near, t.Near), (PieceEdge.Far, t.Far), (PieceEdge.Start, t.Start), (PieceEdge.End, t.End) })
        {
            if (off == 0) continue;
            trims++;
            var across = edge is PieceEdge.Start or PieceEdge.End;
            if (across) length -= off;
            else width -= off;
            // The fence holds the edge opposite the one that goes.
            var against = edge switch { PieceEdge.Near => PieceEdge.Far, PieceEdge.Far => PieceEdge.Near, PieceEdge.Start => PieceEdge.End, _ => PieceEdge.Start };
            raw.Add(new Raw(sheet, stage, trims, mark, across ? CutDirection.Across : CutDirection.Along, against, across ? length : width,
                whole is not null && trims == edges ? whole.Label : mark, whole is not null && trims == edges ? OutcomeKind.Part : OutcomeKind.Piece, "", OutcomeKind.Waste, piece.AtHome));
        }
        if (piece.Cuts is not { } cuts) return;
        var next = piece.CutsHere == 0 ? stage : stage + 1;
        var across1 = cuts == CutDirection.Across;
        var offcuts = 0;
        var marks = piece.Children.Select((c, k) => c.Placement?.Label ?? (piece.CutsHere == 0 ? mark : $"{mark}.{(c.Kind == PieceKind.Offcut ? "rest" + (offcuts++ > 0 ? $"{offcuts}" : "") : Letters(k))}")).ToArray();
        for (var k = 0; k < piece.CutsHere; k++)
        {
            var child = piece.Children[k];
            var lastCut = k + 1 == piece.Children.Length;
            var nextIsLast = k + 2 == piece.Children.Length && !piece.LastIsCutFree;
            raw.Add(new Raw(sheet, next, 0, mark, cuts, across1 ? PieceEdge.Start : PieceEdge.Near, across1 ? child.AlongX : child.AlongY, marks[k], KindOf(child),
                lastCut ? "" : nextIsLast ? marks[k + 1] : mark, lastCut ? OutcomeKind.Waste : nextIsLast ? KindOf(piece.Children[k + 1]) : OutcomeKind.Piece, piece.AtHome));
        }
        for (var k = 0; k < marks.Length; k++) Walk(sheet, piece.Children[k], marks[k], next, cuts, raw);
    }

    private static OutcomeKind KindOf(CutPiece piece) => piece.Kind switch { PieceKind.Part => OutcomeKind.Part, PieceKind.Offcut => OutcomeKind.Offcut, _ => OutcomeKind.Piece };

    internal static string Mark(int sheet) => sheet.ToString(System.Globalization.CultureInfo.InvariantCulture);

    internal static string Letters(int k) => (k >= 26 ? Letters(k / 26 - 1) : "") + (char)('a' + k % 26);
}
