using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>Two edges that lie on each other in a stack, each by its panel's name for it.</summary>
/// <param name="First">Of the first panel.</param>
/// <param name="Own">Of the panel that lies on it.</param>
public readonly record struct StackedEdges(string First, string Own);

/// <summary>A panel in a stack.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Edges">Its edges on the start and on the near edge of the first panel, which fix how it is turned; of the first panel its own.</param>
/// <param name="Apart">Bores in its faces that must not be drilled in the stack: those that end in the material, and those the others do not have.</param>
public sealed record StackedPanel(string Id, ImmutableArray<StackedEdges> Edges, ImmutableArray<Bore> Apart);

/// <summary>
/// Panels of one board and outline that are drilled through in one stack. The first lies inside face up; a mirror image lies on it outside
/// face to outside face, equal ones lie as it does.
/// </summary>
/// <param name="Twinship">Whether they are equal or mirror images, apart from the bores not drilled in the stack.</param>
/// <param name="Panels">The panels, in assembly order: two mirror images, or two or more equal ones.</param>
/// <param name="Through">The bores that go through all, as the first panel has them.</param>
public sealed record StackedPanels(Twinship Twinship, ImmutableArray<StackedPanel> Panels, ImmutableArray<Bore> Through)
{
    /// <summary>How the stack lies, in words.</summary>
    public string Lay => Twinship == Twinship.Mirrored ? "outside faces together" : "all inside face up";
}

/// <summary>Finds panels worth stacking: alike in board, outline and bands, with at least two bores through their faces at the same places.</summary>
public static class PanelStacks
{
    private const int LeastBores = 2;

    /// <summary>
    /// The stacks, each panel in one at most. The first panel takes the one it shares most bores with, an equal one before a mirror image; more
    /// equal ones join as long as no bore through all is lost. Only bores the machine or the drill makes in a single panel count.
    /// </summary>
    public static ImmutableArray<StackedPanels> Find(IEnumerable<Panel> panels)
    {
        var free = panels.ToList();
        var stacks = ImmutableArray.CreateBuilder<StackedPanels>();
        while (free.Count > 0)
        {
            var first = free[0];
            free.RemoveAt(0);
            var laid = free.Select(p => Lay(first, p)).OfType<Laid>().OrderByDescending(l => l.Shared.Count).ThenBy(l => l.Twinship).ToList();
            if (laid.Count == 0) continue;
            var best = laid[0];
            var members = laid.Where(l => l == best || (best.Twinship == Twinship.Same && l.Twinship == Twinship.Same && l.Shared.IsSupersetOf(best.Shared)))
                .OrderBy(l => free.IndexOf(l.Panel)).Prepend(new Laid(first, Twinship.Same, PanelTurn.Equal[0], best.Shared)).ToList();
            stacks.Add(new StackedPanels(best.Twinship, [.. members.Select(l => Stacked(first, l, best.Shared))], [.. Holes(first).Where(b => best.Shared.Contains(Key(first, b, PanelTurn.Equal[0])))]));
            free.RemoveAll(p => members.Exists(l => l.Panel == p));
        }

        return stacks.ToImmutable();
    }

    private sealed record Laid(Panel Panel, Twinship Twinship, PanelTurn Turn, HashSet<string> Shared);

    // The turn that makes most bores meet, if enough do.
    private static Laid? Lay(Panel first, Panel panel)
    {
        var blank = PanelTwins.Blank(first, PanelTurn.Equal[0]);
        var own = Holes(first).Select(b => Key(first, b, PanelTurn.Equal[0])).ToHashSet(StringComparer.Ordinal);
        if (own.Count < LeastBores) return null;
        return PanelTurn.Equal.Select(t => (Twinship.Same, Turn: t)).Concat(PanelTurn.Mirrored.Select(t => (Twinship.Mirrored, Turn: t)))
            .Where(t => PanelTwins.Blank(panel, t.Turn) == blank)
            .Select(t => new Laid(panel, t.Item1, t.Turn, [.. Holes(panel).Select(b => Key(panel, b, t.Turn)).Where(own.Contains)]))
            .Where(l => l.Shared.Count >= LeastBores)
            .MaxBy(l => l.Shared.Count);
    }

    private static StackedPanel Stacked(Panel first, Laid laid, HashSet<string> shared)
    {
        var (panel, turn) = (laid.Panel, laid.Turn);
        return new StackedPanel(
            panel.Id,
            [.. new[] { Surface.Start, Surface.Near }.Select(edge => new StackedEdges(first.NameOf(edge), panel.NameOf(turn.Of(edge))))],
            [.. panel.Features.OfType<Bore>().Where(b => b.Surface.IsFace() && b.Method != BoreMethod.Given && !(IsHole(b) && shared.Contains(Key(panel, b, turn))))]);
    }

    private static IEnumerable<Bore> Holes(Panel panel) => panel.Features.OfType<Bore>().Where(IsHole);

    private static bool IsHole(Bore bore) => bore is { Depth: null, Method: BoreMethod.Machined or BoreMethod.Marked };

    private static string Key(Panel panel, Bore bore, PanelTurn turn) => $"{PanelTurn.Key(turn.Of(panel, bore.At.Point))} {PanelTurn.Key(bore.Diameter.Value)}";
}
