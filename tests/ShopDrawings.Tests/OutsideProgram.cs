using System.Collections.Concurrent;
using System.Diagnostics;
using Xunit;

namespace ShopDrawings.Tests;

/// <summary>
/// Runs programs that are not ours and judge what we write. One that is missing skips the test and says so on a developer's
/// machine, and fails it where the environment variable CI is set.
/// </summary>
internal static class OutsideProgram
{
    private const string Python = "/usr/bin/python3";

    private static readonly ConcurrentDictionary<string, string?> Missing = new();

    /// <summary>What a program left: its exit code and both outputs.</summary>
    public sealed record Result(int ExitCode, string Output, string Errors);

    /// <summary>The folder of ShopDrawings.sln, above the tests' own.</summary>
    public static string RepositoryRoot { get; } = FindRoot();

    /// <summary>Runs a program to its end. Skips the test if it is not installed.</summary>
    public static Result Run(string program, params string[] arguments)
    {
        var result = Start(program, arguments);
        Demand(program, () => result is null ? $"{program} is not installed" : null);
        return result!;
    }

    /// <summary>Skips the test if a program is not installed.</summary>
    public static void DemandPrograms(params ReadOnlySpan<string> programs)
    {
        foreach (var program in programs) Demand(program, () => Start(program, ["--version"]) is null ? $"{program} is not installed" : null);
    }

    /// <summary>Runs a script of tests/oracles with Debian's Python. Skips the test if Python or a package is not installed.</summary>
    /// <param name="script">The script's file name.</param>
    /// <param name="packages">The Python packages it imports, one blank between.</param>
    /// <param name="arguments">What it is called with.</param>
    public static Result RunOracle(string script, string packages, params string[] arguments)
    {
        DemandPython(packages);
        return Start(Python, [Path.Combine(RepositoryRoot, "tests", "oracles", script), .. arguments])!;
    }

    /// <summary>Skips the test if Debian's Python or a package is not installed. To be called first where a skip would be caught on its way out.</summary>
    /// <param name="packages">Names of Python packages, one blank between.</param>
    public static void DemandPython(string packages) =>
        Demand(Python + " " + packages, () => Start(Python, ["-c", "import " + packages.Replace(" ", ", ", StringComparison.Ordinal)]) switch
        {
            null => $"{Python} is not installed",
            { ExitCode: 0 } => null,
            var failed => $"{Python} lacks one of: {packages} ({failed.Errors.Trim().Split('\n')[^1]})",
        });

    private static void Demand(string what, Func<string?> fault)
    {
        if (Missing.GetOrAdd(what, _ => fault()) is not { } reason) return;
        if (Environment.GetEnvironmentVariable("CI") is { Length: > 0 }) Assert.Fail(reason);
        Assert.Skip(reason);
    }

    private static Result? Start(string program, IEnumerable<string> arguments)
    {
        var start = new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["PYTHONDONTWRITEBYTECODE"] = "1";
        try
        {
            using var process = Process.Start(start)!;
            var errors = process.StandardError.ReadToEndAsync();
            var output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return new Result(process.ExitCode, output, errors.GetAwaiter().GetResult());
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return null;
        }
    }

    private static string FindRoot()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "ShopDrawings.sln"))) return folder.FullName;
        }

        throw new InvalidOperationException("The tests run outside the repository: no ShopDrawings.sln above them.");
    }
}
