using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>The view of a panel, or of a piece of it, as it lies inside face up. What is dashed lies on the outside face or in an edge.</summary>
/// <param name="piece">What is drawn.</param>
/// <param name="groups">The features with their letters.</param>
/// <param name="height">Height of the letters in mm.</param>
internal sealed class PanelView(PanelPiece piece, ImmutableArray<FeatureGroup> groups, double height)
{
    private static readonly Layer TextLayer = new("TEXT", Role.Lettering, "Letters, places and names of edges");
    private static readonly Layer OutlineLayer = new("OUTLINE", Role.Outline, "Edge of the finished panel");
    private static readonly Layer CutOutLayer = new("CUTOUT", Role.CutOut, "Openings through the panel");
    private static readonly Layer BoreLayer = new("BORE", Role.Bore, "Bores seen from the inside face");
    private static readonly Layer GrooveLayer = new("GROOVE", Role.Groove, "Grooves in the inside face");
    private static readonly Layer MarkLayer = new("MARK", Role.Mark, "Scribed lines and centres");
    private static readonly Layer HiddenLayer = new("HIDDEN", Role.Hidden, "On the outside face or in an edge");
    private static readonly Layer MatchLayer = new("MATCH", Role.Centre, "Where the pieces of a long panel meet");
    private static readonly Layer GrainLayer = new("GRAIN", Role.Lettering, "Direction of the grain");

    private readonly Panel panel = piece.Panel;

    /// <summary>Outline and features.</summary>
    public IEnumerable<Entity> Shape()
    {
        foreach (var entity in Lines(OutlineLayer, panel.Outline)) yield return entity;
        foreach (var x in new[] { piece.From, piece.To }.Where(x => x > 0 && x < panel.Length.Value))
        {
            const double Beyond = 4;
            var at = piece.OnPaper(new(x, 0)).X;
            yield return new SegmentEntity(MatchLayer, new Segment(new(at, piece.Origin.Y - Beyond / 4), new(at, piece.Far.Y + Beyond)));
        }

        foreach (var entity in panel.Features.SelectMany(Drawn)) yield return entity;
    }

    /// <summary>Letters beside the features of each kind where there is room.</summary>
    public IEnumerable<Entity> Tags(FreeSpace space)
    {
        var placer = new TagPlacer(space, piece.Box);
        foreach (var group in groups.Where(g => g.Tag.Length > 0))
            foreach (var feature in group.Features)
            {
                var (centre, radius) = feature switch
                {
                    Bore bore => (bore.At.Point, bore.Diameter.Value / 2),
                    Groove groove => ((groove.From.Point + groove.To.Point) * 0.5, groove.Width.Value / 2),
                    CutOut cutOut => (cutOut.Outline.Bounds.Centre, 0),
                    Mark mark => ((mark.From.Point + (mark.To ?? mark.From).Point) * 0.5, 0),
                    _ => throw new InvalidOperationException($"{feature.GetType().Name} has no place."),
                };
                if (!piece.Holds(centre.X)) continue;
                if (feature is CutOut && placer.PlaceIn(TextLayer, piece.OnPaper(centre), group.Tag, height) is { } within) yield return within;
                else if (placer.Place(TextLayer, piece.OnPaper(centre), radius * piece.Factor, group.Tag, height) is { } tag) yield return tag;
            }
    }

    /// <summary>An arrow both ways along the grain, as long as finds room and as near to the middle; nothing where there is none, or no grain.</summary>
    public ImmutableArray<Entity> Grain(FreeSpace space)
    {
        const double Step = 3, Rim = 2;
        if (!panel.Board.HasGrain) return [];
        var (middle, within) = (piece.Box.Centre, piece.Box.Grown(-Rim));
        var (across, along) = ((int)(within.Height / 2 / Step), (int)(within.Width / 2 / Step));
        var steps = Enumerable.Range(-along, 2 * along + 1).SelectMany(i => Enumerable.Range(-across, 2 * across + 1).Select(j => new Point2(i, j) * Step))
            .OrderBy(p => p.Length).ThenBy(p => p.Y).ThenBy(p => p.X).ToList();
        foreach (var length in new[] { 40.0, 24, 16 })
            foreach (var step in steps)
            {
                var box = GrainBox(middle + step, length);
                if (box.Min.X < within.Min.X || box.Max.X > within.Max.X || box.Min.Y < within.Min.Y || box.Max.Y > within.Max.Y || !space.IsFree(box.Grown(1))) continue;
                space.Take(box);
                return GrainArrow(middle + step, length, height);
            }

        return [];
    }

    /// <summary>An arrow both ways along x, with a word above.</summary>
    public static ImmutableArray<Entity> GrainArrow(Point2 middle, double length, double height)
    {
        const double Head = 3, HalfWidth = 0.8;
        var (left, right) = (middle - new Point2(length / 2, 0), middle + new Point2(length / 2, 0));
        ArrowEntity Arrow(Point2 tip, double back) => new(GrainLayer, tip, tip + new Point2(back, HalfWidth), tip + new Point2(back, -HalfWidth));
        return
        [
            new SegmentEntity(GrainLayer, new Segment(left, right)), Arrow(left, Head), Arrow(right, -Head),
            new TextEntity(GrainLayer, middle + new Point2(0, 1.2), height, "grain", Anchor.BaseCentre),
        ];
    }

    private Box2 GrainBox(Point2 middle, double length) => new(middle - new Point2(length / 2, 1), middle + new Point2(length / 2, 1.2 + 1.3 * height));

    private IEnumerable<Entity> Drawn(Feature feature) => feature switch
    {
        CutOut cutOut => Lines(CutOutLayer, cutOut.Outline),
        Groove groove => Lines(groove.Face == Surface.Inside ? GrooveLayer : HiddenLayer, groove.Outline),
        Bore { Surface: Surface.Inside or Surface.Outside } bore => piece.Holds(bore.At.X.Value) ? FaceBore(bore) : [],
        Bore bore => piece.Holds(panel.OnSurface(bore.Surface, bore.At.Point).X) ? EdgeBore(bore) : [],
        Mark mark => Marked(mark),
        _ => [],
    };

    private IEnumerable<Entity> Lines(Layer layer, Contour contour) => piece is { IsFirst: true, IsLast: true }
        ? [new ContourEntity(layer, contour.Mapped(piece.OnPaper, false))]
        : contour.Segments.Select(piece.Clipped).OfType<Segment>().Select(s => new SegmentEntity(layer, s));

    // A blind bore in the other face is hidden: four arcs, which still read as dashes where the circle is small.
    private IEnumerable<Entity> FaceBore(Bore bore)
    {
        var (centre, radius) = (piece.OnPaper(bore.At.Point), bore.Diameter.Value / 2 * piece.Factor);
        if (bore.Surface == Surface.Inside || bore.Depth is null) return [new CircleEntity(BoreLayer, centre, radius)];
        Point2 At(double degrees) => centre + new Point2(Math.Cos(degrees * Math.PI / 180), Math.Sin(degrees * Math.PI / 180)) * radius;
        return new[] { 20, 110, 200, 290 }.Select(start => new SegmentEntity(HiddenLayer, new Segment(At(start), At(start + 50), Math.Tan(50 * Math.PI / 180 / 4))));
    }

    // Seen from the face, a bore in an edge is a rectangle that starts at the edge.
    private IEnumerable<Entity> EdgeBore(Bore bore)
    {
        var into = bore.Surface.Into();
        var start = panel.OnSurface(bore.Surface, bore.At.Point);
        var (from, along) = (new Point2(start.X, start.Y), new Point2(into.X, into.Y));
        // Side by side, so that every dash begins in a corner.
        var (end, side) = (from + along * bore.Depth!.Value, along.Left * (bore.Diameter.Value / 2));
        return new[] { (from - side, end - side), (from + side, end + side), (end - side, end + side) }
            .Select(line => new SegmentEntity(HiddenLayer, new Segment(piece.OnPaper(line.Item1), piece.OnPaper(line.Item2))));
    }

    private IEnumerable<Entity> Marked(Mark mark)
    {
        const double Arm = 1.5;
        var layer = mark.Face == Surface.Inside ? MarkLayer : HiddenLayer;
        if (mark.To is { } to) return piece.Clipped(new Segment(mark.From.Point, to.Point)) is { } line ? [new SegmentEntity(layer, line)] : [];
        if (!piece.Holds(mark.From.Point.X)) return [];
        var at = piece.OnPaper(mark.From.Point);
        return new[] { new Point2(Arm, 0), new Point2(0, Arm) }.Select(arm => new SegmentEntity(layer, new Segment(at - arm, at + arm)));
    }
}
