using ShopDrawings.Cutting;

namespace ShopDrawings.CuttingBench;

/// <summary>
/// Says what is wrong with a plan. It looks at the placed rectangles alone, shares no code with the solver, and finds the cuts that go through by itself.
/// </summary>
public static class PlanChecker
{
    /// <summary>Every fault; none where the plan is sound.</summary>
    public static IReadOnlyList<string> Faults(CuttingProblem problem, CuttingPlan plan)
    {
        var faults = new List<string>();
        var wanted = problem.Parts.ToDictionary(p => p.Id, p => p.Quantity);
        foreach (var group in plan.Sheets.SelectMany(s => s.Placements).GroupBy(p => p.Part.Id))
        {
            if (!wanted.TryGetValue(group.Key, out var quantity)) faults.Add($"{group.Key} is not wanted");
            else if (!group.Select(p => p.Copy).Order().SequenceEqual(Enumerable.Range(1, quantity))) faults.Add($"{group.Key} is there {group.Count()} times of {quantity}, or counted wrongly");
        }
        foreach (var part in problem.Parts)
            if (!plan.Sheets.Any(s => s.Placements.Any(p => p.Part.Id == part.Id))) faults.Add($"{part.Id} is missing");
        foreach (var stock in problem.Stock)
            if (plan.Sheets.Count(s => s.Stock == stock) > (stock.Count ?? int.MaxValue)) faults.Add($"more sheets {stock.Id} than there are");
        if (plan.SheetCost != plan.Sheets.Sum(s => s.Stock.Price)) faults.Add("the sheets cost something else");
        if (plan.Cost < plan.Bound) faults.Add($"cheaper ({plan.Cost}) than its bound ({plan.Bound})");
        foreach (var sheet in plan.Sheets) Sheet(problem, sheet, faults);
        return faults;
    }

    private static void Sheet(CuttingProblem problem, SheetPlan sheet, List<string> faults)
    {
        var stock = sheet.Stock;
        var margin = problem.Machine is Router r ? r.ClampMargin : 0;
        var kerf = problem.Machine.Kerf;
        if (problem.Machine is StoreSaw { Home: { } home }) kerf = Math.Min(kerf, home.Kerf);
        foreach (var p in sheet.Placements)
        {
            var (length, width) = p.IsTurned ? (p.AlongY, p.AlongX) : (p.AlongX, p.AlongY);
            if (length != p.Part.Length + p.Part.Allowance.Start + p.Part.Allowance.End || width != p.Part.Width + p.Part.Allowance.Near + p.Part.Allowance.Far) faults.Add($"{p.Label} has another size");
            if (p.X < stock.Trim.Start + margin || p.Y < stock.Trim.Near + margin || p.X + p.AlongX > stock.Length - stock.Trim.End - margin || p.Y + p.AlongY > stock.Width - stock.Trim.Far - margin)
                faults.Add($"{p.Label} leaves what is usable of sheet {sheet.Number}");
            var alongGrain = p.IsTurned == (stock.Grain == GrainDirection.AlongWidth);
            if (stock.Grain != GrainDirection.None && (p.Part.Grain == Grain.Along && !alongGrain || p.Part.Grain == Grain.Across && alongGrain)) faults.Add($"{p.Label} lies against its grain");
        }
        var all = sheet.Placements.ToArray();
        for (var i = 0; i < all.Length; i++)
            for (var k = i + 1; k < all.Length; k++)
            {
                var (a, b) = (all[i], all[k]);
                var apart = a.X + a.AlongX + kerf <= b.X || b.X + b.AlongX + kerf <= a.X || a.Y + a.AlongY + kerf <= b.Y || b.Y + b.AlongY + kerf <= a.Y;
                if (!apart) faults.Add($"{a.Label} and {b.Label} are nearer than a kerf on sheet {sheet.Number}");
            }
        if (problem.Machine is not Router && !Separable(all, kerf, null)) faults.Add($"sheet {sheet.Number} cannot be cut by cuts that go through");
    }

    // Whether cuts that go through set all free: gaps of a kerf in the shadows on one axis, then the other, and so on.
    private static bool Separable(Placement[] parts, long kerf, bool? byX)
    {
        if (parts.Length <= 1) return true;
        foreach (var x in new[] { true, false })
        {
            if (byX == x) continue;
            var groups = Groups(parts, kerf, x);
            if (groups.Count > 1) return groups.TrueForAll(g => Separable(g, kerf, x));
        }
        return false;
    }

    private static List<Placement[]> Groups(Placement[] parts, long kerf, bool byX)
    {
        var sorted = parts.OrderBy(p => byX ? p.X : p.Y).ToArray();
        var (groups, group, end) = (new List<Placement[]>(), new List<Placement>(), long.MinValue / 2);
        foreach (var p in sorted)
        {
            if (group.Count > 0 && (byX ? p.X : p.Y) >= end + kerf)
            {
                groups.Add([.. group]);
                group.Clear();
            }
            group.Add(p);
            end = Math.Max(end, byX ? p.X + p.AlongX : p.Y + p.AlongY);
        }
        groups.Add([.. group]);
        return groups;
    }
}
