using System.Collections.Immutable;
using System.Globalization;

namespace ShopDrawings.Kernel;

/// <summary>Collects what a machine cannot or should not do, so that each thing is said once with every panel it concerns.</summary>
internal sealed class MachiningRemarks(Machine machine)
{
    /// <summary>The rule of what its tools cannot make.</summary>
    public const string Tools = "machine-tools";

    /// <summary>Where facts of the trade come from that nobody published.</summary>
    public const string Practice = "common practice, no source";

    private readonly Dictionary<string, (Remark Remark, List<string> Panels, int Count)> all = new(StringComparer.Ordinal);
    private readonly List<string> order = [];

    /// <summary>Notes a remark about a panel.</summary>
    public void Add(string panel, Remark remark)
    {
        if (!all.TryGetValue(remark.Message, out var known))
        {
            known = (remark, [], 0);
            order.Add(remark.Message);
        }

        if (panel.Length > 0 && !known.Panels.Contains(panel)) known.Panels.Add(panel);
        all[remark.Message] = known with { Count = known.Count + 1 };
    }

    /// <summary>All remarks as findings, in the order they were first met.</summary>
    public ImmutableArray<Finding> Findings =>
    [
        .. order.Select(key => all[key]).Select(r => new Finding(
            r.Remark.Rule, r.Remark.Severity, [.. r.Panels], $"{machine.Name}: {r.Remark.Message}{Where(r.Panels, r.Count, r.Remark.Counted)}", r.Remark.Numbers, r.Remark.Source, r.Remark.Cure, null)),
    ];

    private static string Where(List<string> panels, int count, string? counted)
    {
        const int Most = 3;
        if (panels.Count == 0) return "";
        var named = panels.Count <= Most ? string.Join(", ", panels) : string.Create(CultureInfo.InvariantCulture, $"{string.Join(", ", panels.Take(Most))} and {panels.Count - Most} more");
        return counted is null ? $": {named}" : string.Create(CultureInfo.InvariantCulture, $": {count} {(count == 1 ? counted : counted + "s")} in {named}");
    }

    /// <summary>Something to say.</summary>
    /// <param name="Rule">The rule's id.</param>
    /// <param name="Severity">How bad it is.</param>
    /// <param name="Message">What, without the machine and the panels.</param>
    /// <param name="Numbers">The numbers it rests on.</param>
    /// <param name="Source">Where the rule comes from.</param>
    /// <param name="Cure">What would put it right.</param>
    /// <param name="Counted">What is counted, in the singular, or nothing where only the panels count.</param>
    internal sealed record Remark(string Rule, Severity Severity, string Message, ImmutableArray<NamedNumber> Numbers, string Source, string Cure, string? Counted = null);
}
