using System.Collections.Immutable;

namespace ShopDrawings.Cutting;

/// <summary>Turns the search's tree of one sheet into pieces with places, in nanometres: what is to spare is cut off where it leaves the fewest cuts,
/// and among equals the largest rectangle.</summary>
internal sealed class TreeLayout(Preparation.Prepared prepared, SheetTree tree, int[] copies)
{
    // Trying where to spare doubles with every level.
    private const int DeepestTrial = 6;

    private readonly long kerf = prepared.Kerf;
    private readonly CuttingProblem problem = prepared.Problem;

    /// <summary>The sheet, trimmed and cut.</summary>
    public CutPiece Lay(StockSize stock)
    {
        var margin = (problem.Machine as Router)?.ClampMargin ?? 0;
        var trim = stock.Trim;
        var (x, y, w, h) = (trim.Start + margin, trim.Near + margin, stock.UsableLength - 2 * margin, stock.UsableWidth - 2 * margin);
        var inner = problem.Machine is StoreSaw { Home: { } } store ? LayBlanks(store, x, y, w, h) : Lay(tree.Root, x, y, w, h, 0);
        if (inner.Kind == PieceKind.Divided) return inner with { X = 0, Y = 0, AlongX = stock.Length, AlongY = stock.Width, Trim = trim };
        return trim == default ? inner : new CutPiece(PieceKind.Divided, 0, 0, stock.Length, stock.Width) { Trim = trim, Children = [inner], Kerf = problem.Machine.Kerf, Cuts = CutDirection.Across };
    }

    // Actual size of a node, in nanometres.
    private (long W, long H) Size(int n) => (tree[n].W * prepared.Unit - kerf, tree[n].H * prepared.Unit - kerf);

    private CutPiece LayBlanks(StoreSaw store, long x, long y, long w, long h)
    {
        var (a, beside) = (store.BlankAllowance, tree[tree.Root].Kind == SheetTree.Beside);
        var children = new List<CutPiece>();
        var (at, end) = beside ? (x, x + w) : (y, y + h);
        var blanks = Sorted(tree.Root, beside);
        foreach (var c in blanks)
        {
            var size = beside ? Size(c).W : Size(c).H;
            var long1 = size + 2 * a + store.Error;
            // A cut that is paid for is saved where the last blank can be carried with what is left.
            var spare = c == blanks[^1] && store is { PricePerCut: > 0, Home.MaxStages: null } && end - at <= store.LongestBlank(beside ? h : w) ? Math.Max(0, end - at - long1) : 0;
            long1 += spare;
            var (bx, by, bw, bh) = beside ? (at, y, long1, h) : (x, at, w, long1);
            var (iw, ih) = beside ? (size, h - 2 * a) : (w - 2 * a, size);
            var inner = Lay(c, bx + a, by + a, iw, ih, 1);
            if (spare > 0) inner = Split(inner, beside, bx + a, by + a, beside ? iw + spare : iw, beside ? ih : ih + spare);
            var trim = beside ? new Trim(a, a + store.Error, a, a) : new Trim(a, a, a, a + store.Error);
            children.Add(AtHome(inner.Kind == PieceKind.Divided ? inner with { X = bx, Y = by, AlongX = bw, AlongY = bh, Trim = trim }
                : new CutPiece(PieceKind.Divided, bx, by, bw, bh) { Trim = trim, Children = [inner], Kerf = kerf, Cuts = CutDirection.Across }));
            at += long1 + store.Kerf;
        }
        var piece = new CutPiece(PieceKind.Divided, x, y, w, h) { Cuts = beside ? CutDirection.Across : CutDirection.Along, Kerf = store.Kerf };
        return Rest(piece, children, beside, at, end, x, y, w, h, store.Kerf);
    }

    private static CutPiece AtHome(CutPiece piece) => piece with { AtHome = true, Children = [.. piece.Children.Select(AtHome)] };

    private CutPiece Lay(int n, long x, long y, long w, long h, int depth)
    {
        var (nw, nh) = Size(n);
        var plain = LayPlain(n, x, y, w, h, depth);
        // A strip cut off first, so that nothing inside has to be freed from it.
        if (depth > DeepestTrial || prepared.Work.Rules.Any || prepared.Work.Stock.Any(s => s.First != 0) || tree[n].Kind == SheetTree.Leaf) return plain;
        var beside = tree[n].Kind == SheetTree.Beside;
        if (beside ? h - nh <= 0 : w - nw <= 0) return plain;
        var inner = LayPlain(n, x, y, beside ? w : nw, beside ? nh : h, depth + 1);
        var first = beside ? Split(inner, false, x, y, w, h) : Split(inner, true, x, y, w, h);
        return Better(first, plain) ? first : plain;
    }

    // A piece beside or below what is left.
    private CutPiece Split(CutPiece inner, bool beside, long x, long y, long w, long h)
    {
        var (at, end) = beside ? (inner.X + inner.AlongX + Blade, x + w) : (inner.Y + inner.AlongY + Blade, y + h);
        var piece = new CutPiece(PieceKind.Divided, x, y, w, h) { Cuts = beside ? CutDirection.Across : CutDirection.Along, Kerf = Blade };
        return Rest(piece, [inner], beside, at, end, x, y, w, h, Blade);
    }

    private static CutPiece Rest(CutPiece piece, List<CutPiece> children, bool beside, long at, long end, long x, long y, long w, long h, long blade)
    {
        // `at` is one blade beyond the last child: at the end exactly, the last child needs no cut; a sliver thinner than the blade leaves nothing.
        if (at - blade == end) return children.Count == 1 && !children[0].AtHome ? children[0] : piece with { Children = [.. children] };
        if (at >= end) return piece with { Children = [.. children], LastIsCutFree = true };
        children.Add(beside ? new CutPiece(PieceKind.Offcut, at, y, end - at, h) : new CutPiece(PieceKind.Offcut, x, at, w, end - at));
        return piece with { Children = [.. children] };
    }

    // The blade itself, without the room a store keeps for its error.
    private long Blade => problem.Machine is StoreSaw { Home: null } store ? store.Kerf : kerf;

    private CutPiece LayPlain(int n, long x, long y, long w, long h, int depth)
    {
        var (nw, nh) = Size(n);
        if (tree[n].Kind == SheetTree.Leaf)
        {
            var item = tree[n].Item >> 1;
            var part = problem.Parts[prepared.PartOf[item]];
            var placed = new Placement(part, copies[item], x, y, nw, nh, (tree[n].Item & 1) == 1);
            var leaf = new CutPiece(PieceKind.Part, x, y, nw, nh) { Placement = placed };
            if (w == nw && h == nh) return leaf;
            if (h == nh) return Split(leaf, true, x, y, w, h);
            if (w == nw) return Split(leaf, false, x, y, w, h);
            var acrossFirst = Split(Split(leaf, false, x, y, nw, h), true, x, y, w, h);
            var alongFirst = Split(Split(leaf, true, x, y, w, nh), false, x, y, w, h);
            var longest = (problem.Machine as PanelSaw)?.LongestCut ?? long.MaxValue;
            if (h > longest || nw > longest) return alongFirst;
            if (w > longest || nh > longest) return acrossFirst;
            return Better(alongFirst, acrossFirst) ? alongFirst : acrossFirst;
        }
        var beside = tree[n].Kind == SheetTree.Beside;
        var children = new List<CutPiece>();
        var at = beside ? x : y;
        foreach (var c in Sorted(n, beside))
        {
            var (cw, ch) = Size(c);
            children.Add(beside ? Lay(c, at, y, cw, h, depth + 1) : Lay(c, x, at, w, ch, depth + 1));
            at += (beside ? cw : ch) + Blade;
        }
        var piece = new CutPiece(PieceKind.Divided, x, y, w, h) { Cuts = beside ? CutDirection.Across : CutDirection.Along, Kerf = Blade };
        return Rest(piece, children, beside, at, beside ? x + w : y + h, x, y, w, h, Blade);
    }

    // Wide before narrow, so that equal settings follow each other; then by what is in them.
    private List<int> Sorted(int n, bool beside)
    {
        var list = new List<int>();
        for (var c = tree[n].First; c >= 0; c = tree[c].Next) list.Add(c);
        list.Sort((a, b) =>
        {
            var by = beside ? tree[b].W.CompareTo(tree[a].W) : tree[b].H.CompareTo(tree[a].H);
            if (by == 0) by = beside ? tree[b].H.CompareTo(tree[a].H) : tree[b].W.CompareTo(tree[a].W);
            return by != 0 ? by : LeastItem(a).CompareTo(LeastItem(b));
        });
        return list;
    }

    private int LeastItem(int n)
    {
        if (tree[n].Kind == SheetTree.Leaf) return tree[n].Item;
        var least = int.MaxValue;
        for (var c = tree[n].First; c >= 0; c = tree[c].Next) least = Math.Min(least, LeastItem(c));
        return least;
    }

    private static bool Better(CutPiece a, CutPiece b)
    {
        var (ca, cb) = (a.All().Sum(p => p.CutsHere), b.All().Sum(p => p.CutsHere));
        return ca != cb ? ca < cb : Largest(a) > Largest(b);
    }

    internal static Int128 Largest(CutPiece piece) => piece.All().Where(p => p.Kind == PieceKind.Offcut).Select(p => (Int128)p.AlongX * p.AlongY).DefaultIfEmpty().Max();
}
