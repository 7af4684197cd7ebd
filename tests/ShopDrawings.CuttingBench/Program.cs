using System.Diagnostics;
using System.Globalization;
using ShopDrawings.Cutting;
using ShopDrawings.CuttingBench;

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
var options = new Dictionary<string, string>();
for (var k = 0; k < args.Length; k++)
    if (args[k].StartsWith("--", StringComparison.Ordinal)) options[args[k]] = k + 1 < args.Length && !args[k + 1].StartsWith("--", StringComparison.Ordinal) ? args[++k] : "";
if (options.Count == 0 || options.Keys.FirstOrDefault(k => k is not ("--set" or "--variant" or "--every" or "--seconds" or "--effort" or "--threads" or "--folder" or "--kerf-copy" or "--list" or "--jobs" or "--production")) is { })
{
    Console.WriteLine("""
        --set NAME|all    a set of published instances (bwmv, beng, atp, gcutd, gcutd-multi, hopper-m, onv, glass, wood-cases; furniture-a with --folder)
        --variant OG|RG   only not turned, or only turned; both without it
        --every N         one instance in N
        --seconds S       processor time a thread for each instance; without it --effort decides
        --effort N        work for each instance
        --threads N       1 without it
        --folder PATH     where the sets lie
        --kerf-copy       the exact copy of each instance with kerf: ten times as large, kerf 3
        --list            one line for each instance
        --jobs N          random cabinet jobs instead of a set
        --production N    a production list of N panels of 60 sizes instead of a set
        """);
    return 2;
}
var seconds = options.TryGetValue("--seconds", out var s) ? double.Parse(s) : (double?)null;
var settings = new CuttingOptions
{
    Effort = options.TryGetValue("--effort", out var e) ? long.Parse(e) : seconds is null ? new CuttingOptions().Effort : long.MaxValue / 4,
    Threads = options.TryGetValue("--threads", out var t) ? int.Parse(t) : 1,
};
Solve solve = problem =>
{
    // Processor time, so that whatever else runs on the machine takes nothing away.
    using var process = Process.GetCurrentProcess();
    var before = process.TotalProcessorTime;
    double Spent() => (process.TotalProcessorTime - before).TotalSeconds / settings.Threads;
    using var source = new CancellationTokenSource();
    var timer = seconds is { } limit ? new Timer(_ => { process.Refresh(); if (Spent() >= limit) source.Cancel(); }, null, 5, 5) : null;
    var outcome = Cutter.Solve(problem, settings, null, source.Token);
    // What it may just be doing is waited for.
    timer?.DisposeAsync().AsTask().Wait();
    process.Refresh();
    return (outcome, Spent());
};
if (options.TryGetValue("--jobs", out var jobs)) return Jobs.Run(int.Parse(jobs), solve);
if (options.TryGetValue("--production", out var panels)) return Jobs.Production(int.Parse(panels), solve);

var folder = options.GetValueOrDefault("--folder") ?? Path.Combine(AppContext.BaseDirectory, "Data");
var sets = options["--set"] == "all" ? Sets.All : [options["--set"]];
var faulty = 0;
foreach (var set in sets)
    foreach (var variant in options.TryGetValue("--variant", out var only) ? [only] : new[] { "OG", "RG" })
        faulty += Sets.Run(Instance.Read(folder, set, variant).Where((_, k) => k % int.Parse(options.GetValueOrDefault("--every") ?? "1") == 0).ToArray(), variant, options.ContainsKey("--kerf-copy"), options.ContainsKey("--list"), solve);
return faulty > 0 ? 1 : 0;
