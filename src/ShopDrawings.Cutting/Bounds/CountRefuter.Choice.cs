namespace ShopDrawings.Cutting;

// Every choice of what sheets may hold, where prices alone do not decide.
internal sealed partial class CountRefuter
{
    // Work of finding all that sheets may hold, and of choosing from it.
    private const long MostListing = 60_000_000, MostChoosing = 40_000_000;

    // The most of one sheet that all may waste for it to be tried.
    private const double MostWaste = 0.08;

    // What is tried first wastes no more than one part of so many of that.
    private const int FirstPart = 4;

    // So much of the prices by area is added where all kinds are told apart, so that none is worth nothing.
    private const double SomeArea = 0.005;

    /// <summary>What was found out about numbers of sheets.</summary>
    /// <param name="Cut">An inequality that every plan keeps and these numbers do not; null where none was found.</param>
    /// <param name="IsImpossible">Whether these sheets cannot hold everything, whatever other numbers do.</param>
    /// <param name="Plan">How they hold everything; null where that was not found.</param>
    internal readonly record struct Verdict(SheetCounts.Cut? Cut, bool IsImpossible = false, SheetTree[]? Plan = null);

    /// <summary>Prices in whole numbers: what all pieces need, and what a sheet of each size is worth at most.</summary>
    private readonly record struct Evaluation(int[] Values, Int128 Need, int[] Most, int[] Counts)
    {
        public Int128 Have
        {
            get
            {
                Int128 sum = 0;
                for (var t = 0; t < Counts.Length; t++) sum += (Int128)Counts[t] * Most[t];
                return sum;
            }
        }

        // The multiple of the sheets that is needed at least.
        public double Multiple => Have == 0 ? 0 : (double)Need / (double)Have;
    }

    // Looks at every choice of contents for these sheets that prices do not rule out.
    private Verdict Choose(int[] counts, Evaluation close, long until, CancellationToken stop)
    {
        if ((1 / close.Multiple - 1) * counts.Sum() > MostWaste) return default;
        double[] blend = [.. nearest.Select((p, k) => (1 - SomeArea) * p + SomeArea * share[k] * close.Multiple)];
        var (cut, found, _) = Try(blend, counts, levels.Length - 1, until, stop);
        if (cut is not null) return new Verdict(cut);
        if (found is not { } value) return default;
        // What one sheet wastes is at most what all may. Most plans waste about as much on each: what wastes little is tried first.
        for (var part = CanBuild ? FirstPart : 1; part >= 1; part /= 2)
        {
            if (stop.IsCancellationRequested || List(value, (value.Have - value.Need) / part, until, stop) is not { } lists) break;
            var fields = levels[^1].Bounded[Array.FindIndex(counts, c => c > 0)]!.Division!;
            var cover = new PatternCover(lists, value.Most, fields, Math.Min(MostChoosing / part / part, until - Effort));
            var choice = cover.Choose(fields.Packed(demand), (long)value.Need, counts);
            Effort += cover.Work;
            if (choice is not null) return new Verdict(null, false, Build(choice.Select(c => levels[^1].Bounded[c.Stock]!.Trace(c.Content, value.Values))));
            if (part == 1) return new Verdict(null, !cover.IsTooMuch);
        }
        return default;
    }

    // Everything sheets may hold that wastes no more than so much; null where that is too much.
    private BoundedPricing.Content[][]? List(Evaluation value, Int128 waste, long until, CancellationToken stop)
    {
        var lists = new BoundedPricing.Content[value.Counts.Length][];
        for (var t = 0; t < lists.Length; t++)
        {
            lists[t] = [];
            if (value.Counts[t] == 0) continue;
            var search = levels[^1].Bounded[t]!;
            var before = search.Work;
            var all = search.All(value.Values, (int)Int128.Max(0, value.Most[t] - waste - 1), Math.Min(MostListing, until - Effort), stop);
            Effort += search.Work - before;
            if (all is null) return null;
            lists[t] = all;
        }
        return lists;
    }

    // Whether first cuts are free, as patterns take them.
    private bool CanBuild => Array.TrueForAll(work.Stock, s => s.First == 0);

    // Sheets cut by these patterns; null where lengths rounded down do not fit after all, or pieces are left.
    private SheetTree[]? Build(IEnumerable<Pattern> patterns)
    {
        if (!CanBuild) return null;
        var pieces = Enumerable.Range(0, work.Kinds).Select(_ => new Queue<int>()).ToArray();
        for (var i = 0; i < work.Count; i++) pieces[work.KindOf[i]].Enqueue(i);
        var sheets = new List<SheetTree>();
        foreach (var pattern in patterns)
        {
            var (size, tree) = (work.Stock[pattern.Stock], new SheetTree());
            tree.Open(pattern.Stock, size, work.WholeOf(size));
            tree.Build(pattern, work, k => pieces[k].Dequeue());
            if (tree.IsTooLarge || work.Rules.Any && !work.Rules.Hold(tree, size.Trims)) return null;
            sheets.Add(tree);
        }
        return Array.TrueForAll(pieces, p => p.Count == 0) ? [.. sheets] : null;
    }
}
