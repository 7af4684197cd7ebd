using System.Globalization;
using System.Text.Json;
using ShopDrawings.Cutting;

namespace ShopDrawings.CuttingBench;

/// <summary>One published instance with its best known figures.</summary>
/// <param name="Lower">No plan is below it; null where none is known.</param>
/// <param name="Upper">Best known; null where none is known.</param>
public sealed record Instance(string Set, string Name, string Group, bool ByArea, (long W, long H, int? Count)[] Sheets, (long W, long H, int Quantity)[] Items, long? Lower, long? Upper)
{
    /// <summary>The items' area.</summary>
    public double ItemArea => Items.Sum(i => (double)i.W * i.H * i.Quantity);

    /// <summary>The problem; with <paramref name="scale"/> over 1 its exact copy with kerf.</summary>
    public CuttingProblem Problem(bool turned, long scale = 1, long kerf = 0)
    {
        long Side(long s) => s * scale - kerf;
        return new CuttingProblem(
            [.. Items.Select((i, k) => new Part($"i{k}", Side(i.W), Side(i.H)) { Quantity = i.Quantity, Grain = turned ? Grain.Any : Grain.Along })],
            [.. Sheets.Select((s, k) => new StockSize($"s{k}", Side(s.W), Side(s.H)) { Count = s.Count, Price = ByArea ? s.W * s.H : 1, Grain = turned ? GrainDirection.None : GrainDirection.AlongLength })],
            new PanelSaw(kerf)) { LeastOffcut = 0 };
    }

    /// <summary>Reads a set from a folder; <paramref name="variant"/> is OG or RG.</summary>
    public static IReadOnlyList<Instance> Read(string folder, string set, string variant)
    {
        using var document = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, set + ".json")));
        var byArea = document.RootElement.GetProperty("objective").GetString()!.StartsWith("area", StringComparison.Ordinal);
        var known = File.ReadLines(Path.Combine(folder, "best-known.csv")).Skip(1).Select(l => l.Split(',')).Where(f => f[0] == set && f[2] == variant).ToLookup(f => f[1] + "/" + f[3]);
        return [.. document.RootElement.GetProperty("instances").EnumerateArray().Select(i =>
        {
            var name = i.GetProperty("name").GetString()!;
            var area = byArea || known[name + "/sheets"].FirstOrDefault() is null;
            var row = known[name + (area ? "/area" : "/sheets")].FirstOrDefault();
            return new Instance(set, name, i.GetProperty("group").GetString()!, area,
                [.. i.GetProperty("sheets").EnumerateArray().Select(s => (s[0].GetInt64(), s[1].GetInt64(), s[2].ValueKind == JsonValueKind.Null ? (int?)null : s[2].GetInt32()))],
                [.. i.GetProperty("items").EnumerateArray().Select(s => (s[0].GetInt64(), s[1].GetInt64(), s[2].GetInt32()))],
                Number(row?[4]), Number(row?[6]));
        })];
    }

    private static long? Number(string? text) => string.IsNullOrEmpty(text) ? null : (long)Math.Ceiling(double.Parse(text, CultureInfo.InvariantCulture) - 1e-6);
}
