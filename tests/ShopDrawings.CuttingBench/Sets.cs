using ShopDrawings.Cutting;

namespace ShopDrawings.CuttingBench;

/// <summary>Runs published sets and prints what came of them.</summary>
public static class Sets
{
    /// <summary>The sets in the repository.</summary>
    public static string[] All { get; } = ["beng", "bwmv", "hopper-m", "onv", "glass", "atp", "gcutd", "gcutd-multi", "wood-cases"];

    private sealed class Tally
    {
        public int Instances, Proved, Below, Above;
        public long Got, Upper, Lower, Bound;
        public double Yield, Worst, Seconds;

        public void Add(Instance i, CuttingPlan plan, double seconds)
        {
            Instances++;
            Got += plan.Cost;
            Upper += i.Upper ?? plan.Cost;
            Lower += i.Lower ?? plan.Bound;
            Bound += plan.Bound;
            Seconds += seconds;
            Yield += 100 * plan.Statistics.Yield;
            if (plan.IsProvedCheapest || plan.Cost <= i.Lower) Proved++;
            if (plan.Cost < i.Upper) Below++;
            if (plan.Cost > i.Upper) Above++;
            if (i.Upper is { } upper) Worst = Math.Max(Worst, 100.0 * (plan.Cost - upper) / upper);
        }

        public string Line(string name) =>
            $"{name,-14} {Instances,4} {Got,14} {Upper,14} {Lower,14} {Bound,14} {Proved,7} {Below,6} {Above,6} {Worst,7:0.00} {Yield / Instances,6:0.0} {Seconds / Instances,7:0.00}";
    }

    /// <summary>Prints a table by class and in all; the number of faulty plans.</summary>
    public static int Run(IReadOnlyList<Instance> instances, string variant, bool kerfCopy, bool list, Solve solve)
    {
        if (instances.Count == 0) return 0;
        var (faulty, all, groups) = (0, new Tally(), new SortedDictionary<string, Tally>(StringComparer.Ordinal));
        Console.WriteLine($"{instances[0].Set} {variant}{(kerfCopy ? " with kerf" : "")}, {(instances[0].ByArea ? "area" : "sheets")}");
        Console.WriteLine($"{"class",-14} {"n",4} {"got",14} {"best known",14} {"lower",14} {"own bound",14} {"optimal",7} {"better",6} {"worse",6} {"worst%",7} {"yield%",6} {"s each",7}");
        foreach (var i in instances)
        {
            var problem = kerfCopy ? i.Problem(variant[0] == 'R', 10, 3) : i.Problem(variant[0] == 'R');
            var (outcome, seconds) = solve(problem);
            if (outcome.Plan is not { } plan)
            {
                Console.WriteLine($"{i.Name}: {outcome.Refusals[0].Message}");
                continue;
            }
            var faults = PlanChecker.Faults(problem, plan).ToList();
            if (plan.Cost < i.Lower) faults.Add($"cheaper than the published bound {i.Lower}");
            if (plan.Bound > i.Upper) faults.Add($"the bound {plan.Bound} is above the best known {i.Upper}");
            if (faults.Count > 0)
            {
                faulty++;
                Console.WriteLine($"{i.Name} IS WRONG: {faults[0]}");
            }
            var name = i.Group.Split('/')[0];
            if (!groups.TryGetValue(name, out var group)) groups[name] = group = new Tally();
            group.Add(i, plan, seconds);
            all.Add(i, plan, seconds);
            if (list) Console.WriteLine($"{i.Name,-20} {plan.Cost} best {i.Upper} lower {i.Lower} bound {plan.Bound} {plan.Verdict}, {seconds:0.00} s");
        }
        if (all.Instances == 0) return faulty;
        foreach (var (name, group) in groups) Console.WriteLine(group.Line(name));
        Console.WriteLine(all.Line("all"));
        Console.WriteLine();
        return faulty;
    }
}
