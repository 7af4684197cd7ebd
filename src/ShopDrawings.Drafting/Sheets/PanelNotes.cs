using System.Collections.Immutable;
using System.Globalization;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>What is said about a panel in sentences: its board, which face is up, its twin, the stack it is drilled in, and how places are given.</summary>
internal sealed class PanelNotes(Panel panel, LengthStyle lengths, PanelTwin? twin, StackedPanels? stack)
{
    /// <summary>Board, thickness and grain; without the board's label where that is wider than a room in mm.</summary>
    public string Material(double room, double height)
    {
        var rest = $"{lengths.PrintFine(panel.Thickness.Value)}{(lengths.IsInches ? "" : " mm")}, {(panel.Board.HasGrain ? "grain along x" : "no grain")}";
        var all = panel.Board.Label.Length > 0 ? $"{panel.Board.Name} ({panel.Board.Label}), {rest}" : $"{panel.Board.Name}, {rest}";
        return Lettering.Width(all, height) <= room ? all : $"{panel.Board.Name}, {rest}";
    }

    /// <summary>Which face is up.</summary>
    public const string FaceUp = "inside face up";

    /// <summary>Which face is up, and where it looks in the whole.</summary>
    public string Face => panel.Placement is null ? FaceUp : $"{FaceUp}; in place it faces {Towards(panel.Facing(Surface.Inside))}";

    /// <summary>The notes, those that name other panels first.</summary>
    public IEnumerable<string> Lines()
    {
        if (twin is not null) yield return $"{(twin.Twinship == Twinship.Same ? "Same part as" : "Mirror image of")} {twin.Of}.";
        foreach (var line in Stack()) yield return line;
        var edgeBores = panel.Features.OfType<Bore>().Any(b => !b.Surface.IsFace());
        var hidden = (panel.Features.Any(IsOnOutside), edgeBores) switch
        {
            (true, true) => " Dashed: on the outside or in an edge.",
            (true, false) => " Dashed: on the outside.",
            (false, true) => " Dashed: in an edge.",
            _ => "",
        };
        yield return $"x along, y across from corner 0, finished{(edgeBores ? "; z from the outside up." : ".")}{hidden}";
    }

    private static string Towards(Direction direction) => direction switch
    {
        Direction.Top => "up",
        Direction.Bottom => "down",
        _ => $"the {direction.Word()}",
    };

    private static bool IsOnOutside(Feature feature) => feature switch
    {
        Bore bore => bore.Surface == Surface.Outside && bore.Depth is not null,
        Groove groove => groove.Face == Surface.Outside,
        Mark mark => mark.Face == Surface.Outside,
        _ => false,
    };

    // With which panels it is drilled, how they lie, and what is drilled apart.
    private IEnumerable<string> Stack()
    {
        if (stack is null) yield break;
        var others = stack.Panels.Where(p => p.Id != panel.Id).ToList();
        var own = stack.Panels.Single(p => p.Id == panel.Id);
        const int MostNames = 3;
        var names = string.Join(", ", others.Take(MostNames).Select(o => o.Id));
        yield return others.Count > MostNames ? string.Create(CultureInfo.InvariantCulture, $"Stack with {names} and {others.Count - MostNames} more in lists/stacks.csv,") : $"Stack with {names},";
        if (stack.Panels.All(p => p.Edges.All(e => e.First == e.Own)))
        {
            yield return stack.Twinship == Twinship.Mirrored ? "outside faces and same edges together:" : "all inside face up, same edges together:";
        }
        else
        {
            yield return $"{stack.Lay},";
            yield return others.Count > 1 ? "edges as lists/stacks.csv says:"
                : own == stack.Panels[0] ? $"{string.Join(", ", others[0].Edges.Select(e => $"{e.First} on its {e.Own}"))}:"
                : $"{string.Join(", ", own.Edges.Select(e => $"{e.Own} on its {e.First}"))}:";
        }

        yield return string.Create(CultureInfo.InvariantCulture, $"{stack.Through.Length} bores through {(others.Count == 1 ? "both" : "all")}, {own.Apart.Length} here apart.");
    }
}
