using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>
/// Makes a drill guide of a template: a plate over the pattern that runs beyond the panel's edges which lie alike at every place, fences for these, and
/// pieces where it is larger than the machine's bed. Lengths in mm.
/// </summary>
internal sealed class GuideBuilder(GuideSettings settings, LengthStyle lengths)
{
    // Room for clamps round the holes, the least side of a plate, wood between two holes, how much less fences stand down than the thinnest panel is thick, ticks of lines A and B, and what
    // engraved lines keep clear of slots and joints: common practice, no source.
    private const double Margin = 30, LeastSide = 100, Web = 2, Above = 1, Tick = 10, Clear = 1;

    /// <summary>The guide of a template, or why there is none, in words.</summary>
    public (Guide? Guide, string? Fault) Of(Template template)
    {
        var drilled = Holes(template);
        if (drilled.IsEmpty) return (null, null);
        var edges = Fenced(template);
        var box = PlateBox(drilled, edges);
        var lie = LieOf(box);
        Point2 size = lie.Quarters == 1 ? new(box.Height, box.Width) : new(box.Width, box.Height);
        ImmutableArray<GuideHole> holes = [.. drilled.Select(h => h with { At = lie.Of(h.At) })];
        if (TooNear(holes) is var (one, other, left))
            return (null, $"holes {one.Number} and {other.Number} of guide {template.Name} {(left > 0 ? $"leave {lengths.Describe(left)} between them" : "run into each other")}");
        ImmutableArray<GuideEdge> fenced = [.. edges.Select(e => Edge(lie, e))];
        ImmutableArray<GuideEdge> shown = [.. template.Edges.Select(e => Edge(lie, e)).Where(e => e.At >= 0 && e.At <= (e.IsUpright ? size.X : size.Y))];

        ImmutableArray<(Point2 At, double Radius)> round = [.. holes.Select(h => (h.At, h.Diameter / 2))];
        if (PlateJoints.Of(size, settings.Machine, settings.CutterRadius(), round, [.. fenced.Select(e => FenceLayout.Strip(e, size, settings))]) is not { } joints)
            return (null, $"guide {template.Name}, {lengths.Describe(size.X)} × {lengths.Describe(size.Y)}, is larger than the bed of {settings.Machine.Name}, and no joint finds room between its holes");
        var thinnest = template.Places.Min(p => p.Panel.Thickness.Value);
        var stand = Math.Max(thinnest / 2, thinnest - Above);
        var fences = new FenceLayout(settings, template.Name, stand).Of(size, fenced, round, joints.Taken);

        var plate = Panel.Rectangular($"{template.Name}/plate", settings.Board, Size.Constant(size.X), Size.Constant(size.Y))
            .WithFeatures(Features(template, lie, size, holes, shown, fences, joints));
        var words = new GuideWords(template, lie, plate, holes, fences, joints, lengths).All();
        ImmutableArray<GuidePart> parts = [.. Pieces(plate, joints, words), .. fences.Select((f, i) => new GuidePart(f.Panel, null, GuideWords.OnFence(f, template.Name, i + 1, stand)))];
        return (new Guide(template, lie, plate, holes, shown, fences, parts, fences.IsEmpty ? 0 : stand), null);
    }

    // The smallest bit on a centre is led; wider ones and countersinks follow it.
    private ImmutableArray<GuideHole> Holes(Template template) =>
    [
        .. template.Pattern.Holes.GroupBy(h => PanelTurn.Key(h.At))
            .Select(g => g.OrderBy(h => h.IsSunk).ThenBy(h => h.Diameter).ToImmutableArray()).Where(g => !g[0].IsSunk)
            .OrderBy(g => Math.Round(g[0].At.Y, 3)).ThenBy(g => g[0].At.X)
            .Select((g, i) => settings.BushOf(g[0].Diameter) is { } bush ? new GuideHole(i + 1, g[0].At, bush, bush.Outside, g) : new GuideHole(i + 1, g[0].At, null, g[0].Diameter + settings.Clearance, g)),
    ];

    // Of two edges that look away from each other the nearer one: between two fences no panel would fit that is a little wider.
    private static ImmutableArray<TemplateEdge> Fenced(Template template)
    {
        var bounds = template.Pattern.Bounds;
        double Off(TemplateEdge e) => e.Distance - (e.Towards.X + e.Towards.Y > 0 ? bounds.Max : bounds.Min).Dot(e.Towards);
        return [.. template.Edges.GroupBy(e => Math.Abs(e.Towards.X) > 0.5).Select(g => g.OrderBy(e => Math.Round(Off(e), 4)).First())];
    }

    private Box2 PlateBox(ImmutableArray<GuideHole> holes, ImmutableArray<TemplateEdge> edges)
    {
        var box = holes.Select(h => new Box2(h.At, h.At).Grown(h.Diameter / 2)).Aggregate((a, b) => a.Union(b)).Grown(Margin);
        var (low, high) = (box.Min, box.Max);
        foreach (var edge in edges)
        {
            var at = edge.Distance + FenceLayout.Beyond(settings);
            if (edge.Towards.X > 0.5) high = high with { X = at };
            else if (edge.Towards.X < -0.5) low = low with { X = -at };
            else if (edge.Towards.Y > 0.5) high = high with { Y = at };
            else low = low with { Y = -at };
        }

        bool IsFenced(double x, double y) => edges.Any(e => e.Towards.X * x + e.Towards.Y * y > 0.5);
        var (left, right) = Widened(low.X, high.X, IsFenced(-1, 0), IsFenced(1, 0));
        var (below, above) = Widened(low.Y, high.Y, IsFenced(0, -1), IsFenced(0, 1));
        return new Box2(new(left, below), new(right, above));
    }

    private static (double Low, double High) Widened(double low, double high, bool isLowFixed, bool isHighFixed)
    {
        var missing = Math.Max(0, LeastSide - (high - low));
        return isLowFixed == isHighFixed ? (low - missing / 2, high + missing / 2) : isLowFixed ? (low, high + missing) : (low - missing, high);
    }

    // With its longer side along the longer side of the bed, or along x.
    private GuideLie LieOf(Box2 box)
    {
        var isBedUpright = settings.Machine.Bed is { } bed && bed.Y > bed.X;
        var turn = new GuideLie(Tolerance.Exceeds(isBedUpright ? box.Width : box.Height, isBedUpright ? box.Height : box.Width) ? 1 : 0, default);
        var corner = Box2.Around([turn.Turned(box.Min), turn.Turned(box.Max)]).Min;
        return turn with { Shift = corner * -1 };
    }

    private static GuideEdge Edge(GuideLie lie, TemplateEdge edge)
    {
        var (towards, point) = (lie.Turned(edge.Towards), lie.Of(edge.Towards * edge.Distance));
        return new(towards, Math.Abs(towards.X) > 0.5 ? point.X : point.Y);
    }

    private static (GuideHole One, GuideHole Other, double Left)? TooNear(ImmutableArray<GuideHole> holes)
    {
        for (var i = 0; i < holes.Length; i++)
            for (var j = i + 1; j < holes.Length; j++)
                if (holes[i].At.DistanceTo(holes[j].At) - (holes[i].Diameter + holes[j].Diameter) / 2 is var left && left < Web - Tolerance.Length) return (holes[i], holes[j], left);
        return null;
    }

    private static IEnumerable<Feature> Features(Template template, GuideLie lie, Point2 size, ImmutableArray<GuideHole> holes, ImmutableArray<GuideEdge> edges, ImmutableArray<GuideFence> fences, PlateJoints joints)
    {
        var id = $"{template.Name}/plate";
        foreach (var hole in holes) yield return Bore.Through(id, Surface.Inside, At(hole.At), Size.Constant(hole.Diameter));
        foreach (var slot in fences.SelectMany(f => f.Slots)) yield return new CutOut(id, Contour.Rectangle(slot.Min.X, slot.Min.Y, slot.Max.X, slot.Max.Y), []);
        var lines = EdgeLines(size, edges, fences).Concat(Ticks(lie, size, fences));
        foreach (var (from, to) in lines.SelectMany(l => Without(l.From, l.To, [.. fences.SelectMany(f => f.Slots), .. joints.Taken])))
            foreach (var face in template.HasMirror ? new[] { Surface.Inside, Surface.Outside } : [Surface.Inside]) yield return new Mark(id, face, At(from), At(to));
    }

    private static Position At(Point2 p) => new(Size.Constant(p.X), Size.Constant(p.Y));

    private static IEnumerable<(Point2 From, Point2 To)> EdgeLines(Point2 size, ImmutableArray<GuideEdge> edges, ImmutableArray<GuideFence> fences)
    {
        foreach (var edge in edges)
        {
            var (from, to) = FenceLayout.Along(edge, size, edges.Where(e => fences.Any(f => f.Edge == e)));
            yield return (edge.Point(from, 0), edge.Point(to, 0));
        }
    }

    // Of lines A and B, where the plate ends on the panel.
    private static IEnumerable<(Point2 From, Point2 To)> Ticks(GuideLie lie, Point2 size, ImmutableArray<GuideFence> fences)
    {
        foreach (var towards in new Point2[] { new(1, 0), new(-1, 0), new(0, 1), new(0, -1) })
        {
            if (fences.Any(f => f.Edge.Towards.Dot(towards) > 0.5)) continue;
            var rim = new Point2(towards.X > 0 ? size.X : 0, towards.Y > 0 ? size.Y : 0);
            var end = Math.Abs(towards.X) > 0.5 ? new Point2(rim.X, lie.Shift.Y) : new Point2(lie.Shift.X, rim.Y);
            yield return (end - towards * Tick, end);
        }
    }

    // What is left of an upright or level line clear of boxes.
    private static IEnumerable<(Point2 From, Point2 To)> Without(Point2 from, Point2 to, ImmutableArray<Box2> boxes)
    {
        var along = (to - from) * (1 / from.DistanceTo(to));
        var at = 0.0;
        var length = from.DistanceTo(to);
        foreach (var (start, end) in boxes.Select(b => b.Grown(Clear)).Where(Meets).Select(Stretch).OrderBy(s => s.Start))
        {
            if (start > at + Clear) yield return (from + along * at, from + along * start);
            at = Math.Max(at, end);
        }

        if (length > at + Clear) yield return (from + along * at, to);

        bool Meets(Box2 b) => b.Min.X < Math.Max(from.X, to.X) + Tolerance.Length && b.Max.X > Math.Min(from.X, to.X) - Tolerance.Length && b.Min.Y < Math.Max(from.Y, to.Y) + Tolerance.Length && b.Max.Y > Math.Min(from.Y, to.Y) - Tolerance.Length;
        (double Start, double End) Stretch(Box2 b)
        {
            var (one, other) = ((b.Min - from).Dot(along), (b.Max - from).Dot(along));
            return (Math.Min(one, other), Math.Max(one, other));
        }
    }

    private static IEnumerable<GuidePart> Pieces(Panel plate, PlateJoints joints, ImmutableArray<GuideWord> words)
    {
        if (joints.Lines.IsEmpty) return [new GuidePart(plate, default(Point2), words)];
        return joints.Pieces.Select((outline, i) =>
        {
            var corner = outline.Bounds.Min;
            var id = FormattableString.Invariant($"{plate.Id}-{i + 1}");
            Position Moved(Position p) => At(p.Point - corner);
            bool IsIn(Feature f) => outline.Contains(f switch { Bore b => b.At.Point, CutOut c => c.Outline.Bounds.Centre, Mark m => (m.From.Point + m.To!.Value.Point) * 0.5, _ => throw new InvalidOperationException($"{f.GetType().Name} is in no guide.") });
            var features = plate.Features.Where(IsIn).Select(f => f switch
            {
                Bore b => Bore.Through(id, b.Surface, Moved(b.At), b.Diameter),
                CutOut c => new CutOut(id, c.Outline.Moved(corner * -1), []),
                Mark m => new Mark(id, m.Face, Moved(m.From), Moved(m.To!.Value)),
                _ => f,
            });
            ImmutableArray<GuideWord> own = [.. words.Where(w => outline.Contains(w.Strokes[0][0])).Select(w => w with { Strokes = [.. w.Strokes.Select(s => s.Select(p => p - corner).ToImmutableArray())] })];
            var panel = Panel.Rectangular(id, plate.Board, Size.Constant(outline.Bounds.Width), Size.Constant(outline.Bounds.Height)).WithOutline(outline.Moved(corner * -1)).WithFeatures(features);
            return new GuidePart(panel.WithFeatures(Underlined(panel, own)), corner, own);
        });
    }

    // A part is turned over for marks alone: where words are all there is on that face, the first gets a line below it.
    private static IEnumerable<Mark> Underlined(Panel piece, ImmutableArray<GuideWord> words)
    {
        if (piece.Features.Any(f => f is Mark { Face: Surface.Outside }) || words.FirstOrDefault(w => w.Face == Surface.Outside) is not { } word) yield break;
        var box = Box2.Around([.. word.Strokes.SelectMany(s => s)]);
        var below = new Point2(0, Clear);
        yield return new Mark(piece.Id, Surface.Outside, At(box.Min - below), At(new Point2(box.Max.X, box.Min.Y) - below));
    }
}
