using System.Diagnostics;
using System.Globalization;

namespace ShopDrawings.Benchmarks;

/// <summary>Draws all sheets of a project in this process, again and again: views of the whole and panels, then as SVG and as one PDF.</summary>
internal static class SheetBenchmark
{
    private const int Warm = 20, Runs = 20;

    /// <summary>Measures a project that names no other file.</summary>
    public static void Run(string path)
    {
        var design = Shop.Resolve(Shop.Load(File.ReadAllText(path), path).Value!).Value!;
        var findings = Shop.Check(design);
        Time("drawn", () => Shop.Draw(design, findings).Drawings.Length);
        var job = Shop.Draw(design, findings);
        foreach (var (what, end) in new[] { ("written as SVG", ".svg"), ("written as PDF", ".pdf") })
            Time(what, () => Shop.Export(job, ExporterSet.Standard).Where(o => o.Path.EndsWith(end, StringComparison.Ordinal)).Sum(o =>
            {
                using var stream = new CountingStream();
                o.Write(stream);
                return stream.Length > 0 ? 1 : 0;
            }));
    }

    private static void Time(string what, Func<int> work)
    {
        var first = Stopwatch.GetTimestamp();
        var count = work();
        var cold = Stopwatch.GetElapsedTime(first).TotalMilliseconds;
        for (var i = 0; i < Warm; i++) work();
        var times = Enumerable.Range(0, Runs).Select(_ =>
        {
            var start = Stopwatch.GetTimestamp();
            work();
            return Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        }).Order().ToList();
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{count} drawings or files {what}: {times[Runs / 2]:0} ms warm (median of {Runs}; {times[0]:0} to {times[^1]:0}), {cold:0} ms the first time"));
    }
}
