using System.Diagnostics;
using ShopDrawings.Cutting;

namespace ShopDrawings.CuttingBench;

/// <summary>Made-up work of a cabinet maker, from fixed seeds.</summary>
public static class Jobs
{
    private const long Mm = 1_000_000;

    /// <summary>Random cabinet jobs: 10 to 80 panels, three stock sizes, kerf 3.2 mm, grain on half the panels.</summary>
    public static int Run(int count, Solve solve)
    {
        var (proved, over, faulty, worst, longest, none) = (0, 0, 0, 0.0, 0.0, 0);
        for (var seed = 0; seed < count; seed++)
        {
            var problem = Cabinets(seed);
            var (outcome, seconds) = solve(problem);
            longest = Math.Max(longest, seconds);
            if (outcome.Plan is not { } plan)
            {
                none++;
                Console.WriteLine($"job {seed}: {outcome.Refusals[0].Message}");
                continue;
            }
            if (PlanChecker.Faults(problem, plan) is { Count: > 0 } faults)
            {
                faulty++;
                Console.WriteLine($"job {seed} IS WRONG: {faults[0]}");
            }
            if (plan.IsProvedCheapest) proved++;
            else Console.WriteLine($"job {seed}: {problem.Parts.Sum(p => p.Quantity)} panels, {plan.Cost} over {plan.Bound}, {plan.Verdict}");
            if (plan.Cost - plan.Bound > problem.Stock.Min(s => s.Price)) over++;
            worst = Math.Max(worst, plan.PercentAboveBound);
        }
        Console.WriteLine($"{count} jobs: {proved} proved cheapest ({100.0 * proved / count:0.0} %), {over} above the bound by more than a smallest sheet, worst {worst:0.0} % above, longest {longest:0.00} s, {faulty} faulty, {none} refused");
        return faulty > 0 ? 1 : 0;
    }

    /// <summary>A production list of panels in 60 sizes.</summary>
    public static int Production(int panels, Solve solve)
    {
        var lot = new Random(60);
        var sizes = Enumerable.Range(0, 60).Select(_ => (Length: 200 + lot.Next(0, 1000), Width: 100 + lot.Next(0, 500))).ToArray();
        var quantities = new int[60];
        for (var k = 0; k < panels; k++) quantities[lot.Next(60)]++;
        var problem = new CuttingProblem(
            [.. sizes.Select((z, k) => new Part($"p{k}", z.Length * Mm, z.Width * Mm) { Quantity = quantities[k], Grain = k % 2 == 0 ? Grain.Along : Grain.Any }).Where(p => p.Quantity > 0)],
            [new StockSize("large", 2800 * Mm, 2070 * Mm) { Price = 5796, Trim = Trim.Around(10 * Mm) }, new StockSize("small", 2440 * Mm, 1220 * Mm) { Price = 2977, Trim = Trim.Around(10 * Mm) }],
            new PanelSaw(3_200_000));
        var (outcome, seconds) = solve(problem);
        var plan = outcome.Plan!;
        var faults = PlanChecker.Faults(problem, plan);
        Console.WriteLine($"{panels} panels of 60 sizes: {plan.Statistics.Sheets} sheets, {plan.Cost} over {plan.Bound}, {plan.Verdict}, yield {100 * plan.Statistics.Yield:0.0} %, {seconds:0.0} s, " +
            $"{Process.GetCurrentProcess().PeakWorkingSet64 / 1_000_000} MB{(faults.Count > 0 ? ", IS WRONG: " + faults[0] : "")}");
        return faults.Count > 0 ? 1 : 0;
    }

    private static CuttingProblem Cabinets(int seed)
    {
        // Cabinets of 18 mm board until the panels are enough: sides, top and bottom, shelves, doors; grain on sides and doors, about half of all.
        var lot = new Random(seed);
        var parts = new List<Part>();
        var (left, number) = (10 + lot.Next(71), 0);
        void Add(string name, int length, int width, int quantity, Grain grain)
        {
            quantity = Math.Min(quantity, left);
            if (quantity > 0) parts.Add(new Part($"{name} {number}", length * Mm, width * Mm) { Quantity = quantity, Grain = grain });
            left -= quantity;
        }
        while (left > 0)
        {
            number++;
            var (width, height, depth) = (300 + 50 * lot.Next(15), 400 + 10 * lot.Next(160), new[] { 320, 400, 560, 600 }[lot.Next(4)]);
            var doors = width > 600 ? 2 : 1;
            Add("side", height, depth, 2, Grain.Along);
            Add("top and bottom", width - 36, depth, 2, Grain.Any);
            Add("shelf", width - 37, depth - 20, lot.Next(4), Grain.Any);
            Add("door", height - 4, width / doors - 4, doors, Grain.Along);
        }
        return new CuttingProblem([.. parts],
            [
                new StockSize("2800 x 2070", 2800 * Mm, 2070 * Mm) { Price = 5800, Trim = Trim.Around(10 * Mm) },
                new StockSize("2440 x 1220", 2440 * Mm, 1220 * Mm) { Price = 3100, Trim = Trim.Around(10 * Mm) },
                new StockSize("2070 x 700", 2070 * Mm, 700 * Mm) { Price = 1700, Trim = Trim.Around(10 * Mm) },
            ], new PanelSaw(3_200_000));
    }
}
