using System.Collections.Immutable;

namespace ShopDrawings.Cutting;

/// <summary>Whether matching parts come off one fence setting.</summary>
internal static class Matching
{
    /// <summary>Groups of which all lengths come off one setting and all widths off one, and groups of which not.</summary>
    public static (int Matched, int Unmatched) Count(ImmutableArray<SheetPlan> sheets, ImmutableArray<CutStep> steps)
    {
        var wished = sheets.SelectMany(s => s.Placements).Where(p => p.Part.Matching is not null).ToArray();
        if (wished.Length == 0) return (0, 0);
        // A side is set by the cut that made the piece, or the strip it lies in, exactly that wide.
        var fences = new Dictionary<string, (int X, int Y)>(StringComparer.Ordinal);
        foreach (var sheet in sheets)
            if (sheet.Tree is { } tree) Walk(tree, sheet.Number.ToString(System.Globalization.CultureInfo.InvariantCulture), (0, 0), steps.Where(s => s.Sheet == sheet.Number).ToLookup(s => s.Comes, StringComparer.Ordinal), fences);
        var groups = wished.GroupBy(p => p.Part.Matching!, StringComparer.Ordinal).ToArray();
        var matched = groups.Count(g => OneSetting(g, p => p.Part.CutLength, p => p.IsTurned, fences) && OneSetting(g, p => p.Part.CutWidth, p => !p.IsTurned, fences));
        return (matched, groups.Length - matched);
    }

    private static bool OneSetting(IEnumerable<Placement> group, Func<Placement, long> side, Func<Placement, bool> isY, Dictionary<string, (int X, int Y)> fences) =>
        group.GroupBy(side).All(equal => !equal.Skip(1).Any() || equal.Select(p => fences.TryGetValue(p.Label, out var f) ? isY(p) ? f.Y : f.X : 0).Distinct().ToArray() is [not 0]);

    private static void Walk(CutPiece piece, string mark, (int X, int Y) set, ILookup<string, CutStep> made, Dictionary<string, (int X, int Y)> fences)
    {
        if (piece.Kind == PieceKind.Part) fences[piece.Placement!.Label] = set;
        foreach (var (child, k) in piece.Children.Select((c, k) => (c, k)))
        {
            var name = child.Placement?.Label ?? (piece.CutsHere == 0 ? mark : $"{mark}.{CutSequence.Letters(k)}");
            var step = k < piece.CutsHere ? made[name].FirstOrDefault(s => s.Direction == piece.Cuts && s.ComesAs != OutcomeKind.Offcut) : null;
            var fence = step?.Fence ?? 0;
            Walk(child, name, k >= piece.CutsHere && piece.Children.Length == 1 ? set : piece.Cuts == CutDirection.Across ? (fence, set.Y) : (set.X, fence), made, fences);
        }
    }
}
