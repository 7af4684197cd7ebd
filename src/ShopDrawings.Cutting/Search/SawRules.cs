namespace ShopDrawings.Cutting;

/// <summary>What a saw allows, in the search's own lengths; whatever is not limited is at its largest.</summary>
internal sealed record SawRules
{
    /// <summary>No rule but that every cut goes through.</summary>
    public static SawRules None { get; } = new();

    /// <summary>Changes of direction from the sheet to a part, the cut that frees a part not counted.</summary>
    public int Stages { get; init; } = int.MaxValue;

    /// <summary>Most cuts in a sheet, trims included; with <see cref="FirstOnly"/> only those of the first stage are counted.</summary>
    public int MaxCuts { get; init; } = int.MaxValue;

    /// <summary>Whether <see cref="MaxCuts"/> is about the cuts into blanks alone.</summary>
    public bool FirstOnly { get; init; }

    /// <summary>Whether every cut leaves something, since room for an error is kept.</summary>
    public bool AlwaysSpare { get; init; }

    /// <summary>Narrowest piece that may be cut off, kerf added.</summary>
    public long LeastStrip { get; init; }

    /// <summary>Longest cut, kerf added.</summary>
    public long LongestCut { get; init; } = long.MaxValue;

    /// <summary>Whether a placement must be asked about at all.</summary>
    public bool Any => Stages != int.MaxValue || MaxCuts != int.MaxValue || LeastStrip > 0 || LongestCut != long.MaxValue;

    /// <summary>Whether the cuts of a tree keep the rules, where waste lies as <see cref="TreeLayout"/> lays it.</summary>
    public bool Hold(SheetTree tree, int trims)
    {
        if (tree.Root < 0) return true;
        var cuts = trims;
        return Holds(tree, tree.Root, tree.Width, tree.Height, 0, ref cuts) && cuts <= MaxCuts;
    }

    /// <summary>Whether a piece alone can be cut out of a sheet; <paramref name="trial"/> is a tree to try it on.</summary>
    public bool HoldAlone(SheetTree trial, Workload work, int stock, int item, bool isTurned)
    {
        trial.Open(stock, work.Stock[stock], 1);
        trial.Join(trial.Slots[0], 2 * item + (isTurned ? 1 : 0), isTurned ? work.Y[item] : work.X[item], isTurned ? work.X[item] : work.Y[item], work.Area[item]);
        return Hold(trial, work.Stock[stock].Trims);
    }

    // w and h: what the piece that holds node n measures.
    private bool Holds(SheetTree tree, int n, long w, long h, int depth, ref int cuts)
    {
        ref var node = ref tree[n];
        var counted = !FirstOnly || depth == 0;
        if (node.Kind == SheetTree.Leaf)
        {
            var (byX, byY) = (w > node.W, h > node.H);
            if (byX && byY)
            {
                // Only a single piece in a sheet: either way round.
                if (counted) cuts += 2;
                return Strip(node.W) && Strip(node.H) && (h <= LongestCut && node.W <= LongestCut || w <= LongestCut && node.H <= LongestCut);
            }
            if (counted && (byX || byY)) cuts++;
            return (!byX || (h <= LongestCut && Strip(node.W))) && (!byY || (w <= LongestCut && Strip(node.H)));
        }
        if (depth >= Stages) return false;
        var beside = node.Kind == SheetTree.Beside;
        if ((beside ? h : w) > LongestCut) return false;
        var rest = beside ? w - node.W : h - node.H;
        if (rest == 0 && !AlwaysSpare && counted) cuts--;
        for (var c = node.First; c >= 0; c = tree[c].Next)
        {
            if (counted) cuts++;
            if (!Strip(beside ? tree[c].W : tree[c].H)) return false;
            if (!Holds(tree, c, beside ? tree[c].W : w, beside ? h : tree[c].H, depth + 1, ref cuts)) return false;
        }
        return true;
    }

    private bool Strip(long size) => size >= LeastStrip;
}
