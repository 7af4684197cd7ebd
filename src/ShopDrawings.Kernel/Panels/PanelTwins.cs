using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>How one panel repeats another.</summary>
public enum Twinship
{
    /// <summary>The same part: one can be turned round in its plane to lie on the other.</summary>
    Same,

    /// <summary>Its mirror image: they match lying with their outside faces together.</summary>
    Mirrored,
}

/// <summary>A panel that repeats an earlier one.</summary>
/// <param name="Twinship">How.</param>
/// <param name="Of">The earlier panel's id.</param>
public sealed record PanelTwin(Twinship Twinship, string Of);

/// <summary>Finds panels that are equal or mirror images of each other: board, outline, bands and every feature, to 1e-4 mm or less.</summary>
public static class PanelTwins
{
    /// <summary>For each panel that repeats an earlier one, which and how; equal ones are preferred to mirrored ones.</summary>
    public static ImmutableDictionary<string, PanelTwin> Find(IEnumerable<Panel> panels)
    {
        var known = new Dictionary<string, string>(StringComparer.Ordinal);
        var twins = ImmutableDictionary.CreateBuilder<string, PanelTwin>(StringComparer.Ordinal);
        foreach (var panel in panels)
        {
            var (own, turned) = (Signature(panel, PanelTurn.Equal[0]), Signature(panel, PanelTurn.Equal[1]));
            var mirrored = PanelTurn.Mirrored.Select(t => Signature(panel, t));
            if (known.TryGetValue(own, out var same) || known.TryGetValue(turned, out same)) twins.Add(panel.Id, new(Twinship.Same, same));
            else if (mirrored.Select(m => known.GetValueOrDefault(m)).FirstOrDefault(m => m is not null) is { } other) twins.Add(panel.Id, new(Twinship.Mirrored, other));
            known.TryAdd(own, twins.TryGetValue(panel.Id, out var twin) && twin.Twinship == Twinship.Same ? twin.Of : panel.Id);
        }

        return twins.ToImmutable();
    }

    /// <summary>Board, outline and bands of a panel that lies turned, as a text.</summary>
    internal static string Blank(Panel panel, PanelTurn turn) => string.Join('\n',
        [$"{panel.Board.Name} {N(panel.Length.Value)} {N(panel.Width.Value)} {Outline(panel, turn, panel.Outline)}", .. panel.Bands.Select(b => $"band {turn.Of(b.Edge)} {N(b.Thickness.Value)} {N(b.PreMilled.Value)}").Order(StringComparer.Ordinal)]);

    // Everything about a panel that lies turned, as a text.
    private static string Signature(Panel panel, PanelTurn turn)
    {
        var parts = new List<string> { Blank(panel, turn) };
        parts.AddRange(panel.Features.Select(feature => feature switch
        {
            Bore bore when bore.Surface.IsFace() => $"bore {(bore.Depth is null ? "through" : bore.Surface)} {PanelTurn.Key(turn.Of(panel, bore.At.Point))} {N(bore.Diameter.Value)} {N(bore.Depth?.Value ?? 0)}",
            Bore bore => $"bore {turn.Of(bore.Surface)} {PanelTurn.Key(Along(bore))} {N(bore.Diameter.Value)} {N(bore.Depth!.Value)}",
            Groove groove => $"groove {groove.Face} {Line(panel, turn, groove.From.Point, groove.To.Point)} {N(groove.Width.Value)} {N(groove.Depth.Value)}",
            CutOut cutOut => $"cut-out {Outline(panel, turn, cutOut.Outline)}",
            Mark mark => $"mark {mark.Face} {Line(panel, turn, mark.From.Point, (mark.To ?? mark.From).Point)}",
            _ => throw new InvalidOperationException($"{feature.GetType().Name} cannot be compared."),
        }).Order(StringComparer.Ordinal));
        return string.Join('\n', parts);

        Point2 Along(Bore bore)
        {
            var (at, isAcross) = (bore.At.Point, bore.Surface is Surface.Start or Surface.End);
            return (isAcross ? turn.FlipY : turn.FlipX) ? at with { X = (isAcross ? panel.Width : panel.Length).Value - at.X } : at;
        }
    }

    private static string Line(Panel panel, PanelTurn turn, Point2 a, Point2 b) =>
        string.Join(" ", new[] { PanelTurn.Key(turn.Of(panel, a)), PanelTurn.Key(turn.Of(panel, b)) }.Order(StringComparer.Ordinal));

    // Arcs by their three points, so that neither direction nor start matters.
    private static string Outline(Panel panel, PanelTurn turn, Contour contour) => string.Join(
        " ", contour.Segments.Select(s => $"{Line(panel, turn, s.Start, s.End)}~{PanelTurn.Key(turn.Of(panel, s.Middle))}").Order(StringComparer.Ordinal));

    private static string N(double value) => PanelTurn.Key(value);
}
