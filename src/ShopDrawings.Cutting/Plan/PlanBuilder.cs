using System.Collections.Immutable;

namespace ShopDrawings.Cutting;

/// <summary>Makes of the search's trees a plan in the user's terms.</summary>
internal static class PlanBuilder
{
    /// <summary>The sheets in the order of the stock sizes, fullest first, and counts over them.</summary>
    public static (ImmutableArray<SheetPlan> Sheets, PlanStatistics Statistics) Build(Preparation.Prepared prepared, SheetTree[] trees)
    {
        var problem = prepared.Problem;
        var work = prepared.Work;
        var ordered = trees.OrderBy(t => prepared.StockOf[t.Stock]).ThenByDescending(t => t.Filled).ThenBy(LeastItem).ToArray();
        // Copies of a part are numbered in the order they are met.
        var copies = new int[work.Count];
        var next = new int[problem.Parts.Length];
        var sheets = ImmutableArray.CreateBuilder<SheetPlan>(ordered.Length);
        foreach (var tree in ordered)
        {
            foreach (var item in Items(tree).Order()) copies[item] = ++next[prepared.PartOf[item]];
            var stock = problem.Stock[prepared.StockOf[tree.Stock]];
            var root = new TreeLayout(prepared, tree, copies).Lay(stock);
            var all = root.All().ToArray();
            var offcuts = all.Where(p => p.Kind == PieceKind.Offcut && Math.Min(p.AlongX, p.AlongY) >= problem.LeastOffcut)
                .Select(p => new Offcut(p.X, p.Y, p.AlongX, p.AlongY)).OrderByDescending(o => (Int128)o.AlongX * o.AlongY).ToImmutableArray();
            sheets.Add(new SheetPlan(sheets.Count + 1, stock, [.. all.Where(p => p.Placement is not null).Select(p => p.Placement!)], problem.Machine is Router ? null : root, offcuts));
        }
        return (sheets.ToImmutable(), Count(sheets.ToImmutable()));
    }

    /// <summary>The sheets of a router, pieces lying anywhere.</summary>
    public static (ImmutableArray<SheetPlan> Sheets, PlanStatistics Statistics) Build(Preparation.Prepared prepared, (List<FreePlacement.Spot> Spots, int[] Sheets) free)
    {
        var problem = prepared.Problem;
        var margin = ((Router)problem.Machine).ClampMargin;
        var next = new int[problem.Parts.Length];
        var sheets = ImmutableArray.CreateBuilder<SheetPlan>();
        foreach (var (size, at) in free.Sheets.Select((t, k) => (t, k)).OrderBy(s => prepared.StockOf[s.t]).ThenBy(s => s.k))
        {
            var stock = problem.Stock[prepared.StockOf[size]];
            var (x, y) = (stock.Trim.Start + margin, stock.Trim.Near + margin);
            var placements = free.Spots.Where(s => s.Sheet == at).OrderBy(s => s.Item).Select(s =>
            {
                var part = problem.Parts[prepared.PartOf[s.Item]];
                var (ax, ay) = s.IsTurned ? (part.CutWidth, part.CutLength) : (part.CutLength, part.CutWidth);
                return new Placement(part, ++next[prepared.PartOf[s.Item]], x + s.X * prepared.Unit, y + s.Y * prepared.Unit, ax, ay, s.IsTurned);
            }).ToImmutableArray();
            if (placements.IsEmpty) continue;
            // What is surely left: beyond the furthest part, the full width of the sheet.
            var rest = placements.Max(p => p.X + p.AlongX) + problem.Machine.Kerf;
            var offcut = new Offcut(rest, stock.Trim.Near, stock.Length - stock.Trim.End - rest, stock.UsableWidth);
            sheets.Add(new SheetPlan(sheets.Count + 1, stock, placements, null, Math.Min(offcut.AlongX, offcut.AlongY) >= Math.Max(1, problem.LeastOffcut) ? [offcut] : []));
        }
        return (sheets.ToImmutable(), Count(sheets.ToImmutable()));
    }

    /// <summary>Counts over sheets.</summary>
    public static PlanStatistics Count(ImmutableArray<SheetPlan> sheets)
    {
        var steps = CutSequence.Of(sheets);
        var (matched, unmatched) = Matching.Count(sheets, steps);
        var largest = sheets.SelectMany(s => s.Offcuts).OrderByDescending(o => (Int128)o.AlongX * o.AlongY).Select(o => (Offcut?)o).FirstOrDefault();
        var area = sheets.Sum(s => (double)s.Stock.Length * s.Stock.Width);
        var parts = sheets.Sum(s => s.Placements.Sum(p => (double)p.AlongX * p.AlongY));
        return new PlanStatistics(sheets.Length, steps.Length, steps.Length == 0 ? 0 : steps[^1].Fence, matched, unmatched, largest, area > 0 ? parts / area : 0);
    }

    private static IEnumerable<int> Items(SheetTree tree)
    {
        for (var n = 0; n < tree.Used; n++)
            if (tree[n].Kind == SheetTree.Leaf) yield return tree[n].Item >> 1;
    }

    private static int LeastItem(SheetTree tree) => Items(tree).Min();
}
