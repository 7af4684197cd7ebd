using System.Globalization;

namespace ShopDrawings.Cutting;

/// <summary>Looks a problem over and turns it into the search's terms, or says why not.</summary>
internal sealed class Preparation
{
    private readonly CuttingProblem problem;
    private readonly List<Refusal> refusals = [];

    // Room taken beside every piece: kerf, and what a cut may be off.
    private readonly long kerf;
    private readonly long margin;

    private Preparation(CuttingProblem problem)
    {
        this.problem = problem;
        var store = problem.Machine as StoreSaw;
        kerf = store is { Home: { } home } ? home.Kerf : problem.Machine.Kerf + (store?.Error ?? 0);
        margin = (problem.Machine as Router)?.ClampMargin ?? 0;
    }

    /// <summary>
    /// The kerf that pieces keep between them, and the unit of the search's lengths, in nanometres; and what every plan pays for cuts beyond what its sheets
    /// cost in the search.
    /// </summary>
    internal sealed record Prepared(CuttingProblem Problem, Workload Work, long Kerf, long Unit, int[] PartOf, int[] StockOf, long CutsOfAll);

    /// <summary>The search's terms; for a store's blanks one set for each direction of the first cuts, else one.</summary>
    public static (Prepared[] Ways, List<Refusal> Refusals) Of(CuttingProblem problem)
    {
        var p = new Preparation(problem);
        p.LookOver();
        if (p.refusals.Count > 0) return ([], p.refusals);
        p.FitEach();
        if (p.refusals.Count > 0) return ([], p.refusals);
        if (problem.Machine is not StoreSaw { Home: not null })
        {
            var only = p.Build(0);
            p.KeepRules(only);
            return (p.refusals.Count > 0 ? [] : [only], p.refusals);
        }
        var ways = new[] { p.Build(SheetTree.Beside), p.Build(SheetTree.Stacked) }.Where(HoldsAll).ToArray();
        if (ways.Length == 0)
            p.refusals.Add(new Refusal(RefusalReason.Rule, "", "no blank that holds every part can be cut with cuts in one direction and carried home; allow larger or heavier pieces"));
        return (ways, p.refusals);
    }

    private void Nonsense(string subject, string message) => refusals.Add(new Refusal(RefusalReason.Nonsense, subject, message));

    private void LookOver()
    {
        if (problem.Parts.IsDefaultOrEmpty) Nonsense("", "no parts are wanted");
        if (problem.Stock.IsDefaultOrEmpty) Nonsense("", "there is no stock");
        if (refusals.Count > 0) return;
        if (problem.Parts.Length > Limits.MostParts) TooMany("different parts", problem.Parts.Length, Limits.MostParts);
        if (problem.Stock.Length > Limits.MostStockSizes) TooMany("stock sizes", problem.Stock.Length, Limits.MostStockSizes);
        var pieces = problem.Parts.Sum(p => (long)Math.Max(0, p.Quantity));
        if (pieces > Limits.MostPieces) TooMany("pieces", pieces, Limits.MostPieces);
        if (refusals.Count > 0) return;

        foreach (var twice in problem.Parts.GroupBy(p => p.Id, StringComparer.Ordinal).Where(g => g.Skip(1).Any())) Nonsense(twice.Key, $"two parts are called {twice.Key}");
        foreach (var twice in problem.Stock.GroupBy(s => s.Id, StringComparer.Ordinal).Where(g => g.Skip(1).Any())) Nonsense(twice.Key, $"two stock sizes are called {twice.Key}");
        foreach (var part in problem.Parts)
        {
            if (part.Quantity < 1) Nonsense(part.Id, $"{part.Id} is wanted {part.Quantity} times");
            if (!IsSide(part.Length) || !IsSide(part.Width)) Nonsense(part.Id, $"{part.Id} measures {Size(part.Length, part.Width)}");
            else if (!IsTrim(part.Allowance)) Nonsense(part.Id, $"the allowance of {part.Id} is negative or too large");
        }
        foreach (var stock in problem.Stock)
        {
            if (!IsSide(stock.Length) || !IsSide(stock.Width)) Nonsense(stock.Id, $"sheet {stock.Id} measures {Size(stock.Length, stock.Width)}");
            else if (!IsTrim(stock.Trim) || stock.UsableLength - 2 * margin <= 0 || stock.UsableWidth - 2 * margin <= 0)
                Nonsense(stock.Id, $"what is cut or kept off the edges of sheet {stock.Id} leaves nothing of it");
            if (stock.Price is < 0 or > Limits.HighestPrice) Nonsense(stock.Id, $"sheet {stock.Id} costs {stock.Price}");
            if (stock.Count < 0) Nonsense(stock.Id, $"there are {stock.Count} of sheet {stock.Id}");
        }
        if (problem.Machine.Kerf is < 0 or > Limits.LongestSide) Nonsense("", $"a kerf of {Millimetres(problem.Machine.Kerf)} mm");
        if (problem.LeastOffcut < 0) Nonsense("", "the least offcut is negative");
        switch (problem.Machine)
        {
            case PanelSaw saw: LookOver(saw); break;
            case StoreSaw store:
                if (store.MaxCuts < 1) Nonsense("", $"a store that makes {store.MaxCuts} cuts a sheet");
                if (store.Error is < 0 or > Limits.LongestSide || store.BlankAllowance is < 0 or > Limits.LongestSide) Nonsense("", "the store's error or the blanks' allowance is negative or too large");
                if (store.PricePerCut is < 0 or > Limits.HighestPrice) Nonsense("", $"a cut that costs {store.PricePerCut}");
                if (store.LongestPiece <= 0 || store.HeaviestPieceGrams <= 0 || store.MassPerSquareMetre < 0) Nonsense("", "a largest piece or mass that is not positive");
                if (store.HeaviestPieceGrams is not null && store.MassPerSquareMetre == 0) Nonsense("", "the heaviest piece is limited, but the mass per square metre is not given");
                if (store.Home is { } home)
                {
                    LookOver(home);
                    if (store.BlankAllowance < home.Kerf) Nonsense("", "blanks that carry less at their edges than the kerf at home cannot be trimmed");
                }
                if (store.Home is { MaxCuts: not null }) Nonsense("", "cuts in a sheet are counted at the store alone; leave the number of cuts at home out");
                break;
            case Router router when router.ClampMargin is < 0 or > Limits.LongestSide: Nonsense("", $"a clamping margin of {Millimetres(router.ClampMargin)} mm"); break;
        }
    }

    private void LookOver(PanelSaw saw)
    {
        if (!ReferenceEquals(saw, problem.Machine) && saw.Kerf is < 0 or > Limits.LongestSide) Nonsense("", $"a kerf of {Millimetres(saw.Kerf)} mm");
        if (saw.MaxStages < 1) Nonsense("", $"{saw.MaxStages} stages");
        if (saw.MaxStages == 1 && saw.FreeingCutCounts) Nonsense("", "one stage with the freeing cut counted frees no part");
        if (saw.LeastStrip < 0) Nonsense("", "the least strip is negative");
        if (saw.LongestCut <= 0) Nonsense("", "the longest cut is not positive");
        if (saw.MaxCuts < 1) Nonsense("", $"{saw.MaxCuts} cuts a sheet");
    }

    // Each part on its own: is there a sheet that can hold it?
    private void FitEach()
    {
        var store = problem.Machine as StoreSaw;
        var saw = problem.Machine as PanelSaw ?? store?.Home;
        foreach (var part in problem.Parts)
        {
            if (saw is { LeastStrip: > 0 } && Math.Min(part.CutLength, part.CutWidth) < saw.LeastStrip)
            {
                refusals.Add(new Refusal(RefusalReason.Rule, part.Id,
                    $"{part.Id} is {Millimetres(Math.Min(part.CutLength, part.CutWidth))} mm wide; the saw holds no piece under {Millimetres(saw.LeastStrip)} mm"));
                continue;
            }
            if (store is { Home: null } && (Math.Max(part.CutLength, part.CutWidth) > store.LongestPiece || Mass(part.CutLength, part.CutWidth, store) > store.HeaviestPieceGrams))
            {
                refusals.Add(new Refusal(RefusalReason.Rule, part.Id, $"{part.Id} is larger or heavier than what can be carried home"));
                continue;
            }
            FitOne(part);
        }
        foreach (var stock in problem.Stock.Where(s => s.Trim != default && saw is { LeastStrip: > 0 } && Math.Min(s.UsableLength, s.UsableWidth) < saw.LeastStrip))
            refusals.Add(new Refusal(RefusalReason.Rule, stock.Id, $"what trimming leaves of sheet {stock.Id} is narrower than the saw's least strip"));
        if (problem.Machine is PanelSaw { LongestCut: { } longest })
            foreach (var stock in problem.Stock.Where(s => s.Trim.OffWidth > 0 && s.Length > longest || s.Trim.OffLength > 0 && s.Width > longest))
                refusals.Add(new Refusal(RefusalReason.Rule, stock.Id, $"an edge of sheet {stock.Id} that is to be trimmed is longer than the {Millimetres(longest)} mm the saw cuts"));
    }

    private void FitOne(Part part)
    {
        var blank = problem.Machine is StoreSaw { Home: not null } store ? 2 * store.BlankAllowance : 0;
        var (best, missL, missW, at, turnHelps) = (long.MaxValue, 0L, 0L, "", false);
        foreach (var stock in problem.Stock)
        {
            var lies = Lies(part, stock.Grain);
            for (var turn = 0; turn < 2; turn++)
            {
                var (x, y) = turn == 0 ? (part.CutLength, part.CutWidth) : (part.CutWidth, part.CutLength);
                var (dx, dy) = (Math.Max(0, x + blank - (stock.UsableLength - 2 * margin)), Math.Max(0, y + blank - (stock.UsableWidth - 2 * margin)));
                if ((lies & (turn == 0 ? Workload.AsIs : Workload.Turned)) == 0) turnHelps |= dx == 0 && dy == 0;
                else if (dx + dy < best) (best, missL, missW, at) = (dx + dy, dx, dy, stock.Id);
            }
        }
        if (best == 0) return;
        var by = (missL > 0 ? $"{Millimetres(missL)} mm too short" : "") + (missL > 0 && missW > 0 ? " and " : "") + (missW > 0 ? $"{Millimetres(missW)} mm too narrow" : "");
        refusals.Add(turnHelps
            ? new Refusal(RefusalReason.Grain, part.Id, $"{part.Id}, {Size(part.CutLength, part.CutWidth)}, would fit turned, but its grain forbids it; as it must lie, sheet {at} is {by}", missL, missW)
            : new Refusal(RefusalReason.TooLarge, part.Id, $"{part.Id}, {Size(part.CutLength, part.CutWidth)}, fits no sheet; the nearest, {at}, is {by}", missL, missW));
    }

    private Prepared Build(byte first)
    {
        var store = problem.Machine as StoreSaw;
        var saw = problem.Machine as PanelSaw ?? store?.Home;
        var mixed = store is { Home: not null };
        var order = Enumerable.Range(0, problem.Parts.Length).ToArray();
        var stock = new List<(Workload.Sheet Sheet, int Index)>();
        var (cutsOfAll, priceOf) = Priced(first);
        for (var s = 0; s < problem.Stock.Length; s++)
        {
            var size = problem.Stock[s];
            if (size.Count == 0) continue;
            var (w, h) = (size.UsableLength - 2 * margin, size.UsableWidth - 2 * margin);
            var trims = Trims(size);
            var (extra, cap) = (0L, long.MaxValue);
            if (mixed)
            {
                // A blank takes its contents, the allowance at both ends, what the cut may be off, and the store's kerf instead of the home saw's.
                extra = 2 * store!.BlankAllowance + store.Error + store.Kerf - kerf;
                cap = store.LongestBlank(first == SheetTree.Beside ? h : w) - 2 * store.BlankAllowance - store.Error + kerf;
                if (first == SheetTree.Beside) (w, h) = (w + store.Kerf - kerf, h - 2 * store.BlankAllowance);
                else (w, h) = (w - 2 * store.BlankAllowance, h + store.Kerf - kerf);
                if (w <= 0 || h <= 0 || cap <= kerf) continue;
            }
            var kind = saw?.FirstCut is { } cut && !mixed ? (cut == CutDirection.Across ? SheetTree.Beside : SheetTree.Stacked) : first;
            // A strip as long as the sheet would need no first cut and be cut the other way at once: only a part that long may lie so.
            if (kind != 0 && !mixed && !problem.Parts.Any(p => p.CutLength == (kind == SheetTree.Beside ? w : h) || p.CutWidth == (kind == SheetTree.Beside ? w : h)))
                cap = (kind == SheetTree.Beside ? w : h) + kerf - 1;
            stock.Add((new Workload.Sheet(w + kerf, h + kerf, priceOf(size), size.Count ?? int.MaxValue, (int)size.Grain) { First = kind, PieceExtra = extra, PieceCap = cap, Trims = trims }, s));
        }
        var sides = problem.Parts.SelectMany(p => new[] { p.CutLength + kerf, p.CutWidth + kerf })
            .Concat(stock.SelectMany(s => new[] { s.Sheet.W, s.Sheet.H, s.Sheet.PieceExtra }));
        var unit = Math.Max(1, sides.Aggregate(0L, Divisor));
        var pieces = problem.Parts.Sum(p => p.Quantity);
        var (x, y, kinds, lies, partOf) = (new long[pieces], new long[pieces], new int[pieces], new byte[3 * pieces], new int[pieces]);
        var kindOf = new Dictionary<(long, long, Grain), int>();
        var at = 0;
        foreach (var k in order)
        {
            var part = problem.Parts[k];
            var shape = (part.CutLength, part.CutWidth, part.Grain);
            if (!kindOf.TryGetValue(shape, out var kind)) kindOf[shape] = kind = kindOf.Count;
            for (var q = 0; q < part.Quantity; q++, at++)
            {
                (x[at], y[at], kinds[at], partOf[at]) = ((part.CutLength + kerf) / unit, (part.CutWidth + kerf) / unit, kind, k);
                for (var g = 0; g < 3; g++) lies[3 * at + g] = Lies(part, (GrainDirection)g);
            }
        }
        var rules = SawRules.None with
        {
            Stages = saw?.MaxStages is { } n ? n - (saw.FreeingCutCounts ? 1 : 0) + (mixed ? 1 : 0) : int.MaxValue,
            MaxCuts = store?.MaxCuts ?? saw?.MaxCuts ?? int.MaxValue,
            FirstOnly = mixed,
            AlwaysSpare = store is { Error: > 0 },
            LeastStrip = saw is { LeastStrip: > 0 } ? (saw.LeastStrip + kerf + unit - 1) / unit : 0,
            LongestCut = saw?.LongestCut is { } longest && !mixed ? (longest + kerf) / unit : long.MaxValue,
        };
        var work = new Workload
        {
            X = x, Y = y, KindOf = kinds, Lies = lies, Rules = rules, PaidDepth = store is not { PricePerCut: > 0 } ? 0 : mixed ? 1 : int.MaxValue, Anywhere = problem.Machine is Router,
            Stock = [.. stock.Select(s => s.Sheet with { W = s.Sheet.W / unit, H = s.Sheet.H / unit, PieceExtra = s.Sheet.PieceExtra / unit, PieceCap = s.Sheet.PieceCap / unit })],
        };
        return new Prepared(problem, work.Ready(), kerf, unit, partOf, [.. stock.Select(s => s.Index)], cutsOfAll);
    }

    // What a sheet costs with the cuts of a store that every plan pays with it, and the cuts that every plan pays besides. A cut makes one piece of a sheet
    // into two, a trim does not.
    private (long CutsOfAll, Func<StockSize, long> PriceOf) Priced(byte first)
    {
        if (problem.Machine is not StoreSaw { PricePerCut: > 0 and var cut } store) return (0, size => size.Price);
        if (store.Home is not null)
            // A sheet that cannot be carried whole is cut once at least.
            return (0, size => size.Price + cut * (Trims(size) + (IsCut(size) ? 1 : 0)));
        bool IsCut(StockSize size) => first == SheetTree.Beside ? store.LongestBlank(size.UsableWidth) < size.UsableLength : store.LongestBlank(size.UsableLength) < size.UsableWidth;
        // Of so many parts on so many sheets each sheet has one without a cut.
        long Less(StockSize size) => size.Price + cut * (Trims(size) - 1);
        if (problem.Stock.All(size => Less(size) > 0)) return (cut * problem.Parts.Sum(p => (long)p.Quantity), Less);
        return (0, size => size.Price + cut * Trims(size));
    }

    private static int Trims(StockSize size) => new[] { size.Trim.Start, size.Trim.End, size.Trim.Near, size.Trim.Far }.Count(t => t > 0);

    // Each part alone: can it be cut out of a sheet by the saw's rules?
    private void KeepRules(Prepared way)
    {
        var (work, trial) = (way.Work, new SheetTree());
        if (!work.Rules.Any) return;
        for (var i = 0; i < work.Count; i++)
        {
            if (i > 0 && way.PartOf[i] == way.PartOf[i - 1] || IsKept(i, work.Rules)) continue;
            var id = problem.Parts[way.PartOf[i]].Id;
            refusals.Add(new Refusal(RefusalReason.Rule, id,
                IsKept(i, work.Rules with { MaxCuts = int.MaxValue }) ? $"{id} takes more than {work.Rules.MaxCuts} cut{(work.Rules.MaxCuts == 1 ? "" : "s")} out of every sheet, trims counted"
                : IsKept(i, work.Rules with { Stages = int.MaxValue }) ? $"{id} takes more stages out of every sheet than the saw makes"
                : IsKept(i, work.Rules with { LongestCut = long.MaxValue }) ? $"{id} takes a longer cut out of every sheet than the {Millimetres(work.Rules.LongestCut * way.Unit - kerf)} mm the saw cuts"
                : $"no sheet can be cut by the saw's rules so that it gives {id}"));
        }

        bool IsKept(int item, SawRules rules)
        {
            for (var s = 0; s < work.Stock.Length; s++)
            {
                var (size, lies) = (work.Stock[s], work.LiesOn(item, s));
                var (mx, my) = size.MostPiece;
                if ((lies & Workload.AsIs) != 0 && work.X[item] <= mx && work.Y[item] <= my && rules.HoldAlone(trial, work, s, item, false)) return true;
                if ((lies & Workload.Turned) != 0 && work.Y[item] <= mx && work.X[item] <= my && rules.HoldAlone(trial, work, s, item, true)) return true;
            }

            return false;
        }
    }

    private static bool HoldsAll(Prepared way)
    {
        var w = way.Work;
        for (var i = 0; i < w.Count; i++)
        {
            var fits = false;
            for (var s = 0; s < w.Stock.Length && !fits; s++)
            {
                var (size, lies) = (w.Stock[s], w.LiesOn(i, s));
                var (mx, my) = size.MostPiece;
                fits = ((lies & Workload.AsIs) != 0 && w.X[i] <= mx && w.Y[i] <= my) || ((lies & Workload.Turned) != 0 && w.Y[i] <= mx && w.X[i] <= my);
            }
            if (!fits) return false;
        }
        return true;
    }

    // How a part may lie on a sheet whose grain runs so; a square one needs no turning where it may lie as it is.
    private static byte Lies(Part part, GrainDirection grain)
    {
        var lies = part.Grain == Grain.Any || grain == GrainDirection.None ? Workload.AsIs | Workload.Turned
            : part.Grain == Grain.Along == (grain == GrainDirection.AlongLength) ? Workload.AsIs : Workload.Turned;
        return (byte)(lies == (Workload.AsIs | Workload.Turned) && part.CutLength == part.CutWidth ? Workload.AsIs : lies);
    }

    private void TooMany(string what, long there, long most) => refusals.Add(new Refusal(RefusalReason.TooMany, "", $"{there} {what}; at most {most} are taken on"));

    // Grams, rounded up; lengths in nanometres.
    internal static long Mass(long x, long y, StoreSaw store) => (long)(((Int128)x * y * store.MassPerSquareMetre + 999_999_999_999_999_999) / 1_000_000_000_000_000_000);

    private static bool IsSide(long side) => side is > 0 and <= Limits.LongestSide;

    private static bool IsTrim(Trim t) => Math.Min(Math.Min(t.Start, t.End), Math.Min(t.Near, t.Far)) >= 0 && Math.Max(Math.Max(t.Start, t.End), Math.Max(t.Near, t.Far)) <= Limits.LongestSide;

    private static long Divisor(long a, long b)
    {
        (a, b) = (Math.Abs(a), Math.Abs(b));
        while (b != 0) (a, b) = (b, a % b);
        return a;
    }

    internal static string Millimetres(long nanometres) => (nanometres / 1_000_000m).ToString("0.######", CultureInfo.InvariantCulture);

    private static string Size(long x, long y) => $"{Millimetres(x)} × {Millimetres(y)} mm";
}
