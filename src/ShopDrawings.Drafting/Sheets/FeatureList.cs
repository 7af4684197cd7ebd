using System.Collections.Immutable;
using System.Globalization;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>Features of one kind: what they are, and every place, in the lines of a list.</summary>
/// <param name="Tag">The letter that marks them in the view; nothing for features in edges.</param>
/// <param name="Heading">How many, and what: <c>4 × ⌀5, 12 deep, inside</c>.</param>
/// <param name="Places">Every place from corner 0, a line each; long lines are broken when they are set.</param>
/// <param name="Features">The features.</param>
internal sealed record FeatureGroup(string Tag, string Heading, ImmutableArray<string> Places, ImmutableArray<Feature> Features);

/// <summary>
/// Every feature of a panel in words and numbers that leave nothing out: x along and y across from corner 0, z above the outside face. Bores in a
/// row stand in one line, those of one pitch by their ends: <c>y 37; x 96 to 352 by 32 (9)</c>.
/// </summary>
internal sealed class FeatureList(Panel panel, LengthStyle lengths)
{
    private const string Letters = "ABCDEFGHJKLMNPQRSTUVWXYZ";

    /// <summary>The groups, those in the faces first.</summary>
    public ImmutableArray<FeatureGroup> Groups()
    {
        var groups = ImmutableArray.CreateBuilder<FeatureGroup>();
        var tags = 0;
        var kinds = panel.Features.GroupBy(Kind).OrderBy(g => g.First() is Bore { Surface: var s } && !s.IsFace());
        foreach (var kind in kinds)
        {
            ImmutableArray<Feature> features = [.. kind];
            var isInEdge = features[0] is Bore { Surface: var surface } && !surface.IsFace();
            var tag = isInEdge ? "" : tags < Letters.Length ? Letters[tags].ToString() : string.Create(CultureInfo.InvariantCulture, $"{Letters[tags % Letters.Length]}{tags / Letters.Length}");
            if (!isInEdge) tags++;
            var places = features[0] switch
            {
                Bore => Bores([.. features.Cast<Bore>()]),
                Groove => features.Cast<Groove>().Select(g => $"{Pair(g.From.Point)} to {Pair(g.To.Point)}"),
                CutOut => features.Cast<CutOut>().SelectMany(c => Opening(c.Outline)),
                _ => features.Cast<Mark>().Select(m => m.To is { } to ? $"{Pair(m.From.Point)} to {Pair(to.Point)}" : Pair(m.From.Point)),
            };
            groups.Add(new(tag, string.Create(CultureInfo.InvariantCulture, $"{features.Length} × {kind.Key}"), [.. places], features));
        }

        return groups.ToImmutable();
    }

    /// <summary>The corners of an outline in order, with the arcs between them.</summary>
    public IEnumerable<string> Corners(Contour outline)
    {
        var first = outline.Segments[0].Start;
        yield return $"from {Pair(first)}";
        foreach (var s in outline.Segments) yield return s.IsLine ? $"to {Pair(s.End)}" : $"by {Pair(s.Middle)} round{ListLine.Hard}to{ListLine.Hard}{Pair(s.End)}";
    }

    // A number stays with the word it belongs to where a line is broken.
    private string Kind(Feature feature) => feature switch
    {
        Bore bore => $"⌀{Fine(bore.Diameter.Value)}{ListLine.Hard}{(bore.Use == BoreUse.Countersink ? "cone" : "bore")}, {(bore.Depth is { } d ? $"{Fine(d.Value)}{ListLine.Hard}deep, " : $"through, from{ListLine.Hard}")}{Where(bore.Surface)}{Method(bore)}",
        Groove groove => $"groove {Fine(groove.Width.Value)}{ListLine.Hard}wide, {Fine(groove.Depth.Value)}{ListLine.Hard}deep, {Where(groove.Face)}",
        CutOut { Outline.AsCircle: var (_, radius) } => $"⌀{Fine(2 * radius)}{ListLine.Hard}opening",
        CutOut cutOut when SlotOf(cutOut.Outline) is var (_, _, width) => $"slot {Fine(width)}{ListLine.Hard}wide, round{ListLine.Hard}ends, through",
        CutOut cutOut => $"opening {Fine(cutOut.Outline.Bounds.Width)}{ListLine.Hard}×{ListLine.Hard}{Fine(cutOut.Outline.Bounds.Height)}{(CornerOf(cutOut.Outline) is { } radius ? $", corners{ListLine.Hard}R{Fine(radius)}" : "")}",
        Mark mark => $"{(mark.To is null ? "centre" : "line")} to mark, {Where(mark.Face)}",
        _ => throw new InvalidOperationException($"{feature.GetType().Name} cannot be listed."),
    };

    private string Fine(double mm) => lengths.PrintFine(mm).Replace(' ', ListLine.Hard);

    private static string Method(Bore bore) => bore.Method == BoreMethod.Machined ? "" : $", {bore.Method.Word()}";

    private IEnumerable<string> Bores(ImmutableArray<Bore> bores)
    {
        var (first, second) = bores[0].Surface switch
        {
            Surface.Start or Surface.End => ("y", "z"),
            Surface.Near or Surface.Far => ("x", "z"),
            _ => ("x", "y"),
        };
        var byFirst = bores.GroupBy(b => Key(b.At.X.Value)).ToList();
        var bySecond = bores.GroupBy(b => Key(b.At.Y.Value)).ToList();
        return bySecond.Count <= byFirst.Count
            ? bySecond.OrderBy(g => g.First().At.Y.Value).Select(g => $"{second} {Print(g.First().At.Y.Value)}; {first} {Row([.. g.Select(b => b.At.X.Value).Order()])}")
            : byFirst.OrderBy(g => g.First().At.X.Value).Select(g => $"{first} {Print(g.First().At.X.Value)}; {second} {Row([.. g.Select(b => b.At.Y.Value).Order()])}");
    }

    // Equal distances by their ends, where the ends and the distance are printed exactly.
    private string Row(ImmutableArray<double> at)
    {
        var parts = new List<string>();
        for (var start = 0; start < at.Length;)
        {
            var count = PitchRow.EvenFrom(at.AsSpan()[start..]);
            var even = count == 0 ? "" : string.Create(CultureInfo.InvariantCulture,
                $"{Print(at[start])} to {Print(at[start + count - 1])} by{ListLine.Hard}{Print((at[start + count - 1] - at[start]) / (count - 1))}{ListLine.Hard}({count})");
            var isEven = count > 0 && !even.Contains(Tape.RoundedMark, StringComparison.Ordinal);
            parts.Add(isEven ? even : Print(at[start]));
            start += isEven ? count : 1;
        }

        return string.Join(", ", parts);
    }

    private IEnumerable<string> Opening(Contour outline)
    {
        if (outline.AsCircle is var (centre, _)) return [Pair(centre)];
        if (SlotOf(outline) is var (from, to, _)) return [$"{Pair(from)} to {Pair(to)}"];
        var box = outline.Bounds;
        return CornerOf(outline) is not null || outline.Equals(Contour.Rectangle(box.Min.X, box.Min.Y, box.Max.X, box.Max.Y))
            ? [$"x {Print(box.Min.X)} to {Print(box.Max.X)}, y {Print(box.Min.Y)} to {Print(box.Max.Y)}"]
            : Corners(outline);
    }

    // The radius of its corners: four lines along the sides of its box and four quarter circles of one radius between them.
    private static double? CornerOf(Contour outline)
    {
        var arcs = outline.Segments.Where(s => !s.IsLine).ToList();
        var lines = outline.Segments.Where(s => s.IsLine).ToList();
        if (arcs.Count != 4 || lines.Count != 4) return null;
        bool IsLevel(Segment s) => Tolerance.Same(s.Start.X, s.End.X) || Tolerance.Same(s.Start.Y, s.End.Y);
        var isRounded = lines.TrueForAll(IsLevel) && arcs.TrueForAll(a => a.Bulge > 0 && Tolerance.Same(Math.Abs(a.SweepRadians), Math.PI / 2) && Tolerance.Same(a.Radius, arcs[0].Radius));
        return isRounded ? arcs[0].Radius : null;
    }

    // The centres of its round ends and its width: two lines of one length and two half circles, whichever comes first.
    private static (Point2 From, Point2 To, double Width)? SlotOf(Contour outline)
    {
        if (outline.Segments is not [var a, var b, var c, var d]) return null;
        var (line, end, other) = a.IsLine ? (a, b, d) : (b, c, a);
        var isSlot = line.IsLine && !end.IsLine && !other.IsLine && (a.IsLine ? c : d).IsLine && Tolerance.Same(end.Bulge, 1) && Tolerance.Same(other.Bulge, 1) && Tolerance.Same(end.Radius, other.Radius);
        return isSlot ? (other.Centre, end.Centre, 2 * end.Radius) : null;
    }

    private string Pair(Point2 at) => $"x{ListLine.Hard}{Print(at.X)}, y{ListLine.Hard}{Print(at.Y)}";

    // The unit is said once, below the list. A fraction stays with its whole number where a line is broken.
    private string Print(double mm) => lengths.PrintPlace(mm).TrimEnd('"').Replace(' ', ListLine.Hard);

    private static long Key(double mm) => (long)Math.Round(mm * 1e4);

    private string Where(Surface surface) => surface.IsFace() ? panel.NameOf(surface) : $"{panel.NameOf(surface)}{ListLine.Hard}edge";
}
