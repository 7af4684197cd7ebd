using System.Diagnostics;
using System.Globalization;
using ShopDrawings.Drafting;
using ShopDrawings.Dxf;

namespace ShopDrawings.Benchmarks;

/// <summary>Writes a large drawing as a whole on one core, then in turn with an outside library a tenth of it; then numbers by themselves.</summary>
internal sealed class DxfBenchmark : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("dxf-benchmark");

    /// <summary>Measures drawings of a number of entities.</summary>
    public void Run(int count)
    {
        Whole(count);
        InTurn(count / 10);
        Numbers();
    }

    /// <inheritdoc/>
    public void Dispose() => folder.Delete(recursive: true);

    private void Whole(int entities)
    {
        const int Runs = 9;
        var drawing = MixedDrawing.Of(entities);
        Console.WriteLine($"{entities} entities built: peak {PeakMiB()} MiB");
        var before = GC.GetAllocatedBytesForCurrentThread();
        ToNothing(new DxfExporter { Release = DxfRelease.R2000 }, drawing);
        Console.WriteLine($"allocated by writing it: {(GC.GetAllocatedBytesForCurrentThread() - before) / 1024} KiB");
        foreach (var (release, unit) in new[] { (DxfRelease.R2000, DrawingUnit.Millimetre), (DxfRelease.R12, DrawingUnit.Millimetre), (DxfRelease.R2000, DrawingUnit.Inch) })
        {
            var exporter = new DxfExporter { Release = release, Unit = unit };
            Console.WriteLine($"{release} {unit} to nothing: {Rate(Runs, () => Measured(() => ToNothing(exporter, drawing)))}, peak {PeakMiB()} MiB");
        }

        Console.WriteLine($"R2000 Millimetre to a file: {Rate(Runs, () => Measured(() => ToFile(new DxfExporter { Release = DxfRelease.R2000 }, drawing)))}, peak {PeakMiB()} MiB");
    }

    private void InTurn(int entities)
    {
        const int Pairs = 3;
        var drawing = MixedDrawing.Of(entities);
        var ratios = new List<double>();
        for (var i = 0; i < Pairs; i++)
        {
            var ours = Measured(() => ToFile(new DxfExporter { Release = DxfRelease.R2000 }, drawing));
            if (Twin(entities) is not { } theirs)
            {
                Console.WriteLine("the outside library is not installed (apt-get install python3-ezdxf)");
                return;
            }

            ratios.Add(theirs.Seconds / ours.Seconds);
            Console.WriteLine($"{entities} entities: {ours.Bytes / 1e6 / ours.Seconds:0} MB/s in {ours.Seconds:0.000} s, the outside library {theirs.Bytes / 1e6 / theirs.Seconds:0.0} MB/s in {theirs.Seconds:0.0} s: {ratios[^1]:0} times as fast");
        }

        Console.WriteLine($"median {ratios.Order().ElementAt(Pairs / 2):0} times as fast");
    }

    // The same numbers by the exporter's digits and by the platform's, in turn.
    private static void Numbers()
    {
        const int Count = 1_000_000, Runs = 9;
        var numbers = Enumerable.Range(0, Count).Select(i => (i * 7919L % 2_440_000_000) * (i % 4 == 0 ? 1e-3 : 1e-6)).ToArray();
        var target = new byte[64];
        var (own, platform) = (new List<double>(), new List<double>());
        for (var run = 0; run < Runs; run++)
        {
            own.Add(Measured(() => numbers.Sum(n => (long)FixedPoint.Write(n, target))).Seconds);
            platform.Add(Measured(() => numbers.Sum(n => n.TryFormat(target, out var length, "0.0#####", CultureInfo.InvariantCulture) ? (long)length : 0)).Seconds);
        }

        Console.WriteLine($"a number: {Median(own) / Count * 1e9:0.0} ns, by the platform {Median(platform) / Count * 1e9:0.0} ns");
    }

    private static long ToNothing(DxfExporter exporter, Drawing drawing)
    {
        using var stream = new CountingStream();
        exporter.Write(drawing, stream);
        return stream.Length;
    }

    private long ToFile(DxfExporter exporter, Drawing drawing)
    {
        using var stream = new FileStream(Path.Combine(folder.FullName, "ours.dxf"), FileMode.Create, FileAccess.Write, FileShare.None, bufferSize: 0);
        exporter.Write(drawing, stream);
        return stream.Length;
    }

    private (double Seconds, long Bytes)? Twin(int entities)
    {
        try
        {
            using var process = Process.Start(new ProcessStartInfo("/usr/bin/python3",
                [Path.Combine(AppContext.BaseDirectory, "dxf_twin.py"), entities.ToString(CultureInfo.InvariantCulture), Path.Combine(folder.FullName, "theirs.dxf")]) { RedirectStandardOutput = true })!;
            var words = process.StandardOutput.ReadToEnd().Split();
            process.WaitForExit();
            return process.ExitCode == 0 ? (double.Parse(words[0], CultureInfo.InvariantCulture), long.Parse(words[1], CultureInfo.InvariantCulture)) : null;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return null;
        }
    }

    private static (double Seconds, long Bytes) Measured(Func<long> work)
    {
        var start = Stopwatch.GetTimestamp();
        var bytes = work();
        return (Stopwatch.GetElapsedTime(start).TotalSeconds, bytes);
    }

    // The first run warms up.
    private static string Rate(int runs, Func<(double Seconds, long Bytes)> run)
    {
        run();
        var all = Enumerable.Range(0, runs).Select(_ => run()).ToList();
        var rates = all.Select(r => r.Bytes / 1e6 / r.Seconds).Order().ToList();
        return $"{all[0].Bytes / 1e6:0} MB at {rates[runs / 2]:0} MB/s (median of {runs}; {rates[0]:0} to {rates[^1]:0})";
    }

    private static double Median(List<double> values) => values.Order().ElementAt(values.Count / 2);

    private static long PeakMiB()
    {
        using var process = Process.GetCurrentProcess();
        return process.PeakWorkingSet64 >> 20;
    }
}
