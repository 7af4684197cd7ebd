using System.Globalization;

namespace ShopDrawings.Cli;

/// <summary>What is wrong, said on standard error: no more lines than somebody reads.</summary>
internal sealed class Complaints(TextWriter error)
{
    private const int Most = 100;

    /// <summary>Says some lines, and of the rest how many they are.</summary>
    public void Say(IEnumerable<string> lines, string what)
    {
        var all = lines.ToList();
        foreach (var line in all.Take(Most)) error.WriteLine(line);
        if (all.Count > Most) error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"… and {all.Count - Most} more {what}"));
    }

    /// <summary>Says mistakes, each with its place where it has one.</summary>
    public void Say(IEnumerable<Diagnostic> mistakes) => Say(mistakes.Select(m => m.At.File is { Length: > 0 } ? m.ToString() : $"error: {m.Message}"), "mistakes");

    /// <summary>Says that mistakes kept everything from being written.</summary>
    public void SayNothingWritten(int mistakes) => error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{mistakes} {(mistakes == 1 ? "mistake" : "mistakes")}; nothing was written"));
}
