using System.Collections.Immutable;
using System.Globalization;

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
            var (own, turned) = (Signature(panel, false, false), Signature(panel, true, true));
            string[] mirrored = [Signature(panel, false, true), Signature(panel, true, false)];
            if (known.TryGetValue(own, out var same) || known.TryGetValue(turned, out same)) twins.Add(panel.Id, new(Twinship.Same, same));
            else if (mirrored.Select(m => known.GetValueOrDefault(m)).FirstOrDefault(m => m is not null) is { } other) twins.Add(panel.Id, new(Twinship.Mirrored, other));
            known.TryAdd(own, twins.TryGetValue(panel.Id, out var twin) && twin.Twinship == Twinship.Same ? twin.Of : panel.Id);
        }

        return twins.ToImmutable();
    }

    // Everything about a panel as a text, after turning over along one axis, or both, which is a half turn.
    private static string Signature(Panel panel, bool flipX, bool flipY)
    {
        var (length, width) = (panel.Length.Value, panel.Width.Value);
        Point2 Map(Point2 p) => new(flipX ? length - p.X : p.X, flipY ? width - p.Y : p.Y);
        Surface Edge(Surface edge) => (edge is Surface.Start or Surface.End && flipX) || (edge is Surface.Near or Surface.Far && flipY) ? edge.Opposite() : edge;
        string At(Point2 p) => $"{N(p.X)},{N(p.Y)}";
        string Line(Point2 a, Point2 b) => string.Join(" ", new[] { At(Map(a)), At(Map(b)) }.Order(StringComparer.Ordinal));
        // Arcs by their three points, so that neither direction nor start matters.
        string Outline(Contour contour) => string.Join(" ", contour.Segments.Select(s => $"{Line(s.Start, s.End)}~{At(Map(s.Middle))}").Order(StringComparer.Ordinal));

        var parts = new List<string> { $"{panel.Board.Name} {N(length)} {N(width)} {Outline(panel.Outline)}" };
        parts.AddRange(panel.Bands.Select(b => $"band {Edge(b.Edge)} {N(b.Thickness.Value)} {N(b.PreMilled.Value)}").Order(StringComparer.Ordinal));
        parts.AddRange(panel.Features.Select(feature => feature switch
        {
            Bore bore when bore.Surface.IsFace() => $"bore {(bore.Depth is null ? "through" : bore.Surface)} {At(Map(bore.At.Point))} {N(bore.Diameter.Value)} {N(bore.Depth?.Value ?? 0)}",
            Bore bore => $"bore {Edge(bore.Surface)} {At(Along(bore))} {N(bore.Diameter.Value)} {N(bore.Depth!.Value)}",
            Groove groove => $"groove {groove.Face} {Line(groove.From.Point, groove.To.Point)} {N(groove.Width.Value)} {N(groove.Depth.Value)}",
            CutOut cutOut => $"cut-out {Outline(cutOut.Outline)}",
            Mark mark => $"mark {mark.Face} {Line(mark.From.Point, (mark.To ?? mark.From).Point)}",
            _ => throw new InvalidOperationException($"{feature.GetType().Name} cannot be compared."),
        }).Order(StringComparer.Ordinal));
        return string.Join('\n', parts);

        Point2 Along(Bore bore)
        {
            var at = bore.At.Point;
            var flips = bore.Surface is Surface.Start or Surface.End ? flipY : flipX;
            return flips ? at with { X = (bore.Surface is Surface.Start or Surface.End ? width : length) - at.X } : at;
        }
    }

    // Steps of 1e-4 mm that begin where no sixteenth of an inch, half millimetre or middle of one lies: two numbers that differ in their last
    // bits alone fall into one step.
    private static string N(double value) => Math.Floor(value * 1e4 + 0.317).ToString("0", CultureInfo.InvariantCulture);
}
