using System.Diagnostics;
using System.Globalization;
using ShopDrawings.Cutting;

namespace ShopDrawings.Cli;

/// <summary>Says on standard error how far a long search for the cheapest sheets is; short ones pass in silence.</summary>
internal sealed class SearchProgress(TextWriter error) : IProgress<CuttingProgress>
{
    private static readonly TimeSpan Quiet = TimeSpan.FromSeconds(5), Pause = TimeSpan.FromSeconds(2);

    private readonly Stopwatch clock = Stopwatch.StartNew();
    private TimeSpan next = Quiet;

    /// <inheritdoc/>
    public void Report(CuttingProgress value)
    {
        if (clock.Elapsed < next) return;
        next = clock.Elapsed + Pause;
        // How far the best is off says more than a sum, which counts in coins or, without prices, in area.
        var best = value.Cost is not { } cost ? "no plan yet" : cost <= value.Bound ? "proved cheapest" : value.Bound == 0 ? "not proved" : string.Create(CultureInfo.InvariantCulture, $"at most {100.0 * (cost - value.Bound) / value.Bound:0.0} % above the bound");
        error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"searching, {100 * value.Share:0} % of the work: {best}; Ctrl-C ends it"));
    }
}
