using System.Collections.Immutable;

namespace ShopDrawings.Cutting;

/// <summary>A rectangle on a sheet. Lengths in nanometres, in the frame of the whole sheet.</summary>
public readonly record struct SheetArea(long X, long Y, long AlongX, long AlongY);

/// <summary>Where a cut of the sequence runs on its sheet.</summary>
/// <param name="Step">The cut.</param>
/// <param name="Piece">The piece that is laid on the saw, as large as it is then.</param>
/// <param name="Comes">What is between fence and blade afterwards.</param>
/// <param name="Kerf">The width of the blade's cut, in nanometres; what a trim takes off holds it already.</param>
/// <param name="Part">The part that <paramref name="Comes"/> is when nothing more is cut from it; null where it is none.</param>
/// <param name="Stays">What is on the blade's other side; null where nothing of use is.</param>
/// <param name="StaysPart">The part that <paramref name="Stays"/> is; null where it is none.</param>
public sealed record PlacedCut(CutStep Step, SheetArea Piece, SheetArea Comes, long Kerf, Placement? Part, SheetArea? Stays, Placement? StaysPart)
{
    /// <summary>Whether it only takes an edge off.</summary>
    public bool IsTrim => Step.Comes == Step.Piece;

    /// <summary>Finds the place of every cut of one sheet.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="steps">The cuts of the whole plan, as <see cref="CutSequence"/> gives them.</param>
    public static ImmutableArray<PlacedCut> Of(SheetPlan sheet, ImmutableArray<CutStep> steps)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        if (sheet.Tree is not { } tree) return [];
        var own = steps.Where(s => s.Sheet == sheet.Number).ToLookup(s => s.Piece, StringComparer.Ordinal);
        var placed = ImmutableArray.CreateBuilder<PlacedCut>();
        Walk(tree, sheet.Number.ToString(System.Globalization.CultureInfo.InvariantCulture), own, placed);
        return [.. placed.OrderBy(p => p.Step.Number)];
    }

    private static void Walk(CutPiece piece, string mark, ILookup<string, CutStep> steps, ImmutableArray<PlacedCut>.Builder placed)
    {
        var (x, y, w, h) = (piece.X, piece.Y, piece.AlongX, piece.AlongY);
        // A sheet that is one blank keeps its mark.
        var mine = steps[mark].Where(s => s.AtHome == piece.AtHome).ToArray();
        foreach (var step in mine.Where(s => s.Comes == s.Piece))
        {
            var before = new SheetArea(x, y, w, h);
            if (step.Direction == CutDirection.Across)
            {
                if (step.Against == PieceEdge.End) x += w - step.Setting;
                w = step.Setting;
            }
            else
            {
                if (step.Against == PieceEdge.Far) y += h - step.Setting;
                h = step.Setting;
            }

            placed.Add(new PlacedCut(step, before, new(x, y, w, h), piece.Kerf, null, null, null));
        }

        // Trimmed on all sides it may be a part already.
        if (piece.Children is [{ Placement: { } whole }] && piece.CutsHere == 0 && placed.Count > 0 && placed[^1].Step.Piece == mark) placed[^1] = placed[^1] with { Part = whole };
        var marks = new string[piece.Children.Length];
        if (piece.CutsHere == 0) Array.Fill(marks, mark);
        var cuts = Array.FindAll(mine, s => s.Comes != s.Piece);
        for (var k = 0; k < cuts.Length; k++)
        {
            var (child, step) = (piece.Children[k], cuts[k]);
            marks[k] = step.Comes;
            var next = k + 1 < piece.Children.Length ? piece.Children[k + 1] : null;
            var across = piece.Cuts == CutDirection.Across;
            var before = across ? new SheetArea(child.X, y, x + w - child.X, h) : new SheetArea(x, child.Y, w, y + h - child.Y);
            SheetArea? stays = next is null ? null : across ? new SheetArea(next.X, y, x + w - next.X, h) : new SheetArea(x, next.Y, w, y + h - next.Y);
            var isLast = k + 2 == piece.Children.Length && !piece.LastIsCutFree;
            if (isLast) marks[k + 1] = step.Stays;
            placed.Add(new PlacedCut(step, before, new(child.X, child.Y, child.AlongX, child.AlongY), piece.Kerf, child.Placement, stays, isLast ? next!.Placement : null));
        }

        for (var k = 0; k < marks.Length; k++)
            if (marks[k] is { Length: > 0 } inner && piece.Children[k].Kind == PieceKind.Divided) Walk(piece.Children[k], inner, steps, placed);
    }
}
