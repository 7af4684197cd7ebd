using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>Room in mm beside the view of a panel for its dimensions and the names of its edges.</summary>
internal readonly record struct ViewMargins(double Left, double Below, double Right, double Above);

/// <summary>
/// The dimensions beside and in the view of a panel: overall sizes, scales along and across that say where each feature lies from corner 0, rows of
/// bores at one pitch, and the names of the edges. A place from the corner adds up no error, so it gives way to a pitch only where a scale is crowded.
/// </summary>
internal sealed class PanelDimensions(PanelPiece piece, SheetSettings settings, ImmutableArray<PitchRow> rows)
{
    private const double Gap = 1.6;
    private const double OverallDistance = 11;
    private const double BesideEnds = 10;

    private static readonly Layer DimensionLayer = new("DIMENSION", Role.Dimension, "Sizes and places");
    private static readonly Layer TextLayer = new("TEXT", Role.Lettering, "Letters, places and names of edges");

    private readonly Panel panel = piece.Panel;

    private double Small => settings.Small;

    private double Normal => settings.Normal;

    private LengthStyle Lengths => settings.Lengths;

    // Millimetres of the panel for one on paper, without what dividing twice adds.
    private double Factor => Math.Round(1 / piece.Factor, 6);

    /// <summary>Whether every place found room on its scale.</summary>
    public bool HasScales { get; private set; } = true;

    /// <summary>The room the dimensions of a panel need, whichever of its pieces is drawn.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="settings">What all sheets share.</param>
    /// <param name="factor">Millimetres on paper for one of the panel.</param>
    public static ViewMargins Margins(Panel panel, SheetSettings settings, double factor)
    {
        var whole = new PanelDimensions(new(panel, 0, panel.Length.Value, default, factor), settings, []);
        double Beside(bool isAlong)
        {
            var marks = whole.Marks(isAlong, []);
            return marks.IsEmpty ? Gap : OrdinateScale.Depth(whole.Widest(marks)) + Gap;
        }

        var height = panel.Width.Value * factor;
        double Side(Surface surface) => whole.IsUpright(panel.NameOf(surface)) ? settings.Small + 1 : Lettering.Width(panel.NameOf(surface), settings.Small) + 1;
        return new(Math.Max(Beside(false) + Side(Surface.Start), 6), Beside(true) + settings.Small + 1.5, whole.WidthDistance + Math.Max(height < 12 ? 8 : 3.5, whole.HalfText + 1), OverallDistance + settings.Normal + 3);
    }

    /// <summary>All but what is in the scales and rows: overall sizes and names of edges.</summary>
    public IEnumerable<Entity> Overall()
    {
        var (low, far) = (piece.Origin, piece.Far);
        var middle = piece.Box.Centre;
        if (piece is { IsFirst: true, IsLast: true })
            yield return new LinearDimension(DimensionLayer, new(low.X, far.Y), far, far + new Point2(0, OverallDistance), false, Lengths.Print(panel.Length.Value), Normal) { Factor = Factor, Standard = settings.Standard };
        if (piece.IsLast)
        {
            yield return new LinearDimension(DimensionLayer, new(far.X, low.Y), far, far + new Point2(WidthDistance, 0), true, Lengths.Print(panel.Width.Value), Normal) { Factor = Factor, Standard = settings.Standard };
            yield return Side(new(far.X + Gap, middle.Y), panel.NameOf(Surface.End), Anchor.BaseLeft);
        }

        yield return new TextEntity(TextLayer, new(middle.X, far.Y + Gap), Small, panel.NameOf(Surface.Far), Anchor.BaseCentre);
        if (piece.IsFirst) yield return new TextEntity(TextLayer, low - new Point2(1.5, 1.5 + Small), Small, "0", Anchor.BaseRight);
    }

    /// <summary>Rows at one pitch: each beside its bores where there is room, else outside the panel, else not at all.</summary>
    /// <param name="space">What is drawn; the rows are noted there.</param>
    /// <param name="drawn">The rows that are drawn.</param>
    public ImmutableArray<Entity> Pitches(FreeSpace space, out ImmutableArray<PitchRow> drawn)
    {
        var entities = ImmutableArray.CreateBuilder<Entity>();
        var shown = ImmutableArray.CreateBuilder<PitchRow>();
        foreach (var row in rows.Where(r => r.IsAlong ? piece.Holds(r.From) && piece.Holds(r.To) : r.Lines.Any(piece.Holds)))
        {
            if (Pitch(row, space) is not { } dimension) continue;
            space.Take(dimension);
            entities.Add(dimension);
            shown.Add(row);
        }

        drawn = shown.ToImmutable();
        return entities.ToImmutable();
    }

    /// <summary>The scales along and across, with the names of the edges beyond them.</summary>
    /// <param name="drawn">Rows whose pitch is shown.</param>
    public IEnumerable<Entity> Scales(ImmutableArray<PitchRow> drawn)
    {
        var (low, far) = (piece.Origin, piece.Far);
        foreach (var isAlong in new[] { true, false })
        {
            double At((double At, string Text) m) => isAlong ? piece.OnPaper(new(m.At, 0)).X : piece.OnPaper(new(0, m.At)).Y;
            var (from, to) = isAlong ? (low.X - 1, far.X + BesideEnds) : (low.Y - 1, far.Y + BesideEnds);
            var marks = Marks(isAlong, []);
            if (OrdinateScale.IsCrowded([.. marks.Select(At)], from, to, Small)) marks = Marks(isAlong, drawn);
            var scale = OrdinateScale.Of([.. marks.Select(m => (At(m), m.Text))], from, to, isAlong ? low.Y : low.X, !isAlong, DimensionLayer, TextLayer, Small);
            HasScales &= marks.IsEmpty || !scale.IsEmpty;
            foreach (var entity in scale) yield return entity;
            var beyond = scale.IsEmpty ? Gap : OrdinateScale.Depth(Widest(marks)) + Gap;
            if (isAlong) yield return new TextEntity(TextLayer, new(piece.Box.Centre.X, low.Y - beyond - Small), Small, panel.NameOf(Surface.Near), Anchor.BaseCentre);
            else if (piece.IsFirst) yield return Side(new(low.X - beyond, piece.Box.Centre.Y), panel.NameOf(Surface.Start), Anchor.BaseRight);
        }
    }

    // Clear of an edge's name that does not stand upright.
    private double WidthDistance
    {
        get
        {
            var name = panel.NameOf(Surface.End);
            var clear = IsUpright(name) ? Gap + 1.2 * Small + (settings.Standard.IsTextInLine ? 1.25 + HalfText : 0.4 + 1.65 * Normal) : Gap + Lettering.Width(name, Small) + 2 + (settings.Standard.IsTextInLine ? HalfText : 1.5 * Normal);
            return Math.Max(OverallDistance, clear);
        }
    }

    // Half of what a level text takes beside an upright dimension line.
    private double HalfText => settings.Standard.IsTextInLine ? Lettering.Width(Lengths.Print(panel.Width.Value), Normal) / 2 : 0;

    private double Widest(ImmutableArray<(double At, string Text)> marks) => marks.Select(m => Lettering.Width(m.Text, Small)).DefaultIfEmpty(0).Max();

    private bool IsUpright(string word) => Lettering.Width(word, Small) + 4 <= panel.Width.Value * piece.Factor;

    private TextEntity Side(Point2 at, string word, Anchor anchor) => IsUpright(word)
        ? new(TextLayer, anchor == Anchor.BaseRight ? at : at + new Point2(Small, 0), Small, word, Anchor.BaseCentre, 90)
        : new(TextLayer, at - new Point2(0, Small / 2), Small, word, anchor);

    // Of bores their centres, of everything else its ends and sides; of rows that are drawn only the first and the last bore. Pieces of a long panel
    // show where they meet, and the last one how long the panel is.
    private ImmutableArray<(double At, string Text)> Marks(bool isAlong, ImmutableArray<PitchRow> drawn)
    {
        var size = isAlong ? panel.Length.Value : panel.Width.Value;
        double Along(Point2 p) => isAlong ? p.X : p.Y;
        double Across(Point2 p) => isAlong ? p.Y : p.X;
        bool IsBetween(Bore b) => drawn.Any(r => r.IsAlong == isAlong && r.IsBetween(Along(b.At.Point)) && r.Lines.Any(l => Tolerance.Same(l, Across(b.At.Point))));
        var points = panel.Features.Select(f => f switch
        {
            Bore bore => bore.Surface.IsFace() && !IsBetween(bore) ? [bore.At.Point] : Array.Empty<Point2>(),
            Groove groove => [groove.Outline.Bounds.Min, groove.Outline.Bounds.Max],
            CutOut cutOut => cutOut.Outline.AsCircle is var (centre, _) ? [centre] : [cutOut.Outline.Bounds.Min, cutOut.Outline.Bounds.Max],
            Mark mark => [mark.From.Point, (mark.To ?? mark.From).Point],
            _ => [],
        });
        // What runs on from piece to piece lies across as in both.
        var shown = isAlong ? points.SelectMany(p => p).Where(p => piece.Holds(p.X)) : points.Where(p => p.Length > 0 && p.Min(q => q.X) <= piece.To && p.Max(q => q.X) >= piece.From).SelectMany(p => p);
        var places = shown.Select(Along).Where(v => v > Tolerance.Length && v < size - Tolerance.Length);
        if (isAlong && !(piece.IsFirst && piece.IsLast)) places = places.Concat(new[] { piece.From, piece.To }.Where(v => v > 0));
        return [.. places.GroupBy(v => Math.Round(v, 4)).OrderBy(g => g.Key).Select(g => (g.First(), Lengths.PrintPlace(g.First()).TrimEnd('"')))];
    }

    private LinearDimension? Pitch(PitchRow row, FreeSpace space)
    {
        const double Clear = 0.6;
        var text = row.Text(Lengths);
        var (length, width) = ((row.To - row.From) * piece.Factor, Lettering.Width(text, Small));
        if (settings.Standard.IsTextInLine ? !DimensionPlace.Of(length, width, Small, settings.Standard, row.IsAlong ? 1 : 0, row.IsAlong ? 0 : 1).HasArrowsInside : length < width + 4) return null;
        Point2 P(double along, double across) => piece.OnPaper(row.IsAlong ? new(along, across) : new(across, along));
        var across = row.IsAlong ? panel.Width.Value : panel.Length.Value;
        foreach (var distance in new[] { 5.0, 6.5, 8, 10, 12.5, 15, 20 })
            foreach (var line in row.Lines.Where(l => row.IsAlong || piece.Holds(l)))
                foreach (var side in line < across / 2 ? new[] { 1, -1 } : [-1, 1])
                    if (At(line, side, distance + row.Radius * piece.Factor, row.Radius * piece.Factor) is var dimension && space.IsFree(dimension, Clear, piece.Box)) return dimension;

        // Outside, from the edge, beyond its name and within the overall size.
        if (!row.IsAlong && !piece.IsLast) return null;
        var outside = At(across, 1, 5.8, 0);
        return space.IsFree(outside, Clear, piece.Box.Grown(OverallDistance)) ? outside : null;

        LinearDimension At(double line, int side, double distance, double clear)
        {
            var away = (row.IsAlong ? new Point2(0, 1) : new Point2(1, 0)) * side;
            return new(DimensionLayer, P(row.From, line) + away * clear, P(row.To, line) + away * clear, P(row.From, line) + away * distance, !row.IsAlong, text, Small) { Factor = Factor, Standard = settings.Standard };
        }
    }
}
