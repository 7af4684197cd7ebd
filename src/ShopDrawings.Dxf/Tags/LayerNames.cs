using System.Collections.Immutable;
using System.Globalization;

namespace ShopDrawings.Dxf;

/// <summary>Makes layer names that every release and reader takes: A–Z, 0–9 and underscores, a letter first, at most 31, no two alike.</summary>
internal static class LayerNames
{
    private const int MaxLength = 31;

    // Readers give these two a meaning: DEFPOINTS is never plotted.
    private static readonly string[] Reserved = ["0", "DEFPOINTS"];

    /// <summary>A name for each name, in the same order. Legal names stay; the others are made to fit and given a number where taken.</summary>
    public static ImmutableArray<string> Fit(IReadOnlyCollection<string> names)
    {
        var taken = names.Where(IsLegal).Concat(Reserved).ToHashSet();
        var kept = new HashSet<string>();
        return [.. names.Select(name => IsLegal(name) && kept.Add(name) ? name : Free(Legal(name), taken))];
    }

    private static bool IsLegal(string name) =>
        name.Length is > 0 and <= MaxLength && char.IsAsciiLetterUpper(name[0]) && name.All(IsLegal) && !Reserved.Contains(name);

    private static bool IsLegal(char c) => char.IsAsciiLetterUpper(c) || char.IsAsciiDigit(c) || c == '_';

    private static string Legal(string name)
    {
        var letters = string.Concat(TextFit.Fit(name, ascii: true).ToUpperInvariant().Select(c => IsLegal(c) ? c : '_'));
        if (letters.Length == 0 || !char.IsAsciiLetterUpper(letters[0])) letters = "L_" + letters;
        return letters[..Math.Min(letters.Length, MaxLength)];
    }

    private static string Free(string name, HashSet<string> taken)
    {
        var free = name;
        for (var n = 2; !taken.Add(free); n++)
        {
            var suffix = "_" + n.ToString(CultureInfo.InvariantCulture);
            free = name[..Math.Min(name.Length, MaxLength - suffix.Length)] + suffix;
        }

        return free;
    }
}
