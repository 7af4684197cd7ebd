using System.Collections.Immutable;
using System.Globalization;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>
/// The sheet of one panel, A4 or A3 lying: the panel to scale as it lies inside face up, its overall sizes, scales along and across that say where
/// each feature lies from corner 0, and a list of all by kind; what the list does not hold goes on on more sheets. What is dashed lies on the outside
/// face or in an edge.
/// </summary>
public sealed class PanelSheet
{
    private static readonly Layer FrameLayer = new("FRAME", Role.Frame, "Frame and title strip");
    private static readonly Layer TextLayer = new("TEXT", Role.Lettering, "Title strip, list and notes");
    private static readonly Layer DimensionLayer = new("DIMENSION", Role.Dimension, "Sizes and places");
    private static readonly Layer OutlineLayer = new("OUTLINE", Role.Outline, "Edge of the finished panel");
    private static readonly Layer CutOutLayer = new("CUTOUT", Role.CutOut, "Openings through the panel");
    private static readonly Layer BoreLayer = new("BORE", Role.Bore, "Bores seen from the inside face");
    private static readonly Layer GrooveLayer = new("GROOVE", Role.Groove, "Grooves in the inside face");
    private static readonly Layer MarkLayer = new("MARK", Role.Mark, "Scribed lines and centres");
    private static readonly Layer HiddenLayer = new("HIDDEN", Role.Hidden, "On the outside face or in an edge");
    private static readonly Layer WarningLayer = new("WARNING", Role.Warning, "What the checks found");

    private readonly Panel panel;
    private readonly SheetSettings settings;
    private readonly PanelTwin? twin;
    private readonly StackedPanels? stack;
    private readonly ImmutableArray<FeatureGroup> groups;
    private readonly SheetPaper paper;
    private readonly int scale;
    private readonly Point2 origin;
    private readonly List<Entity> entities = [];

    private PanelSheet(Panel panel, SheetSettings settings, PanelTwin? twin, StackedPanels? stack, ImmutableArray<FeatureGroup> groups, SheetPaper paper)
    {
        (this.panel, this.settings, this.twin, this.stack, this.groups, this.paper) = (panel, settings, twin, stack, groups, paper);
        var room = PanelArea;
        scale = SheetChoice.Scales.First(n => n == SheetChoice.Scales[^1] || (panel.Length.Value / n <= room.Width && panel.Width.Value / n <= room.Height));
        origin = room.Centre - new Point2(panel.Length.Value, panel.Width.Value) * (0.5 / scale);
    }

    /// <summary>Draws the sheets of a panel: one, or as many as its list needs.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="project">What is built.</param>
    /// <param name="settings">What all sheets share.</param>
    /// <param name="findings">What the checks say; only those about this panel are shown.</param>
    /// <param name="twin">The earlier panel it repeats, or nothing.</param>
    /// <param name="stack">The stack it is drilled in, or nothing.</param>
    public static ImmutableArray<Drawing> Of(Panel panel, string project, SheetSettings settings, IEnumerable<Finding> findings, PanelTwin? twin = null, StackedPanels? stack = null)
    {
        ArgumentNullException.ThrowIfNull(panel);
        ArgumentNullException.ThrowIfNull(settings);
        var own = findings.Where(f => f.Panels.Contains(panel.Id)).ToList();
        ImmutableArray<string> withheldBy = [.. own.Where(f => f.Withholds).Select(f => f.Rule).Distinct()];
        var groups = new FeatureList(panel, settings.Lengths).Groups();
        // The smallest sheet that holds all; else the one that holds the list, or most of it.
        var papers = SheetPaper.Of(settings.Standard);
        var all = papers.Select(p => new PanelSheet(panel, settings, twin, stack, groups, p)).ToList();
        var first = all.Find(s => s.HasRoom(withheldBy) && s.HasScales) ?? all.Find(s => s.HasRoom(withheldBy) && s.paper != papers[0]) ?? all[^1];
        var lists = SheetPaper.ListsOf(settings.Standard);
        var drawings = ImmutableArray.CreateBuilder<Drawing>();
        var rest = first.First(project, own, withheldBy);
        var count = 1 + (rest.Count + lists.Lines - 1) / lists.Lines;
        drawings.Add(first.Drawn(project, 1, count));
        for (var n = 2; n <= count; n++)
        {
            var more = new PanelSheet(panel, settings, twin, stack, groups, lists);
            more.Strip(project, n, count);
            more.Set(rest.Take(lists.Lines), lists.ListTop);
            rest = [.. rest.Skip(lists.Lines)];
            drawings.Add(more.Drawn(project, n, count));
        }

        return drawings.ToImmutable();
    }

    private Drawing Drawn(string project, int sheet, int sheets)
    {
        var bores = panel.Features.OfType<Bore>().Count();
        var of = sheets > 1 ? string.Create(CultureInfo.InvariantCulture, $", sheet {sheet} of {sheets}") : "";
        return new Drawing(
            $"{panel.Id} of {project}{of}",
            string.Create(CultureInfo.InvariantCulture, $"Panel {panel.Id}, {Lengths.Print(panel.Length.Value)} by {Lengths.Print(panel.Width.Value)}, {Lengths.PrintFine(panel.Thickness.Value)} thick ({Lengths.Statement}), of {panel.Board.Name}, with {bores} bores, drawn 1:{scale}, inside face up{of}."),
            paper.Page, entities);
    }

    // Everything on the first sheet; the lines of the list that found no room are given back.
    private List<ListLine> First(string project, List<Finding> findings, ImmutableArray<string> withheldBy)
    {
        View();
        Tags();
        Dimensions();
        var lists = SheetPaper.ListsOf(settings.Standard);
        var count = 1 + (Math.Max(0, Lines().Count - Room(withheldBy)) + lists.Lines - 1) / lists.Lines;
        Strip(project, 1, count);
        var rest = List(withheldBy);
        foreach (var finding in findings)
            if (finding.Where is { } where && where.Panel == panel.Id) Point(where.Box);
        return rest;
    }

    private LengthStyle Lengths => settings.Lengths;

    private double Small => settings.Small;

    private double Normal => settings.Normal;

    private double NumberWidth => Marks().SelectMany(m => m).Select(m => Lettering.Width(m.Text, Small)).DefaultIfEmpty(0).Max();

    // Room for scales at the left and below, with the name of the edge beyond; overall sizes at the right and above.
    private Box2 PanelArea
    {
        get
        {
            const double Name = 6, Overall = 22, Rim = 4;
            var beside = OrdinateScale.Depth(NumberWidth) + Name + Rim;
            return new(paper.View.Min + new Point2(beside, beside), paper.View.Max - new Point2(Math.Max(Overall, LineDistance + 2 * HalfText + Rim), Overall));
        }
    }

    private const double LineDistance = 12;

    // Half of what a level text takes beside an upright dimension line.
    private double HalfText => settings.Standard.IsTextInLine ? Lettering.Width(Lengths.Print(panel.Width.Value), Normal) / 2 : 0;

    private Point2 OnPaper(Point2 p) => origin + p * (1.0 / scale);

    private void View()
    {
        Add(OutlineLayer, panel.Outline);
        foreach (var feature in panel.Features)
        {
            switch (feature)
            {
                case CutOut cutOut:
                    Add(CutOutLayer, cutOut.Outline);
                    break;
                case Groove groove:
                    Add(groove.Face == Surface.Inside ? GrooveLayer : HiddenLayer, groove.Outline);
                    break;
                case Bore { Surface: Surface.Inside or Surface.Outside } bore:
                    FaceBore(bore);
                    break;
                case Bore bore:
                    EdgeBore(bore);
                    break;
                case Mark mark:
                    Mark(mark);
                    break;
            }
        }
    }

    // A blind bore in the other face is hidden: four arcs, which still read as dashes where the circle is small.
    private void FaceBore(Bore bore)
    {
        var (centre, radius) = (OnPaper(bore.At.Point), bore.Diameter.Value / 2 / scale);
        if (bore.Surface == Surface.Inside || bore.Depth is null)
        {
            entities.Add(new CircleEntity(BoreLayer, centre, radius));
            return;
        }

        Point2 At(double degrees) => centre + new Point2(Math.Cos(degrees * Math.PI / 180), Math.Sin(degrees * Math.PI / 180)) * radius;
        foreach (var start in new[] { 20, 110, 200, 290 })
            entities.Add(new SegmentEntity(HiddenLayer, new Segment(At(start), At(start + 50), Math.Tan(50 * Math.PI / 180 / 4))));
    }

    // Seen from the face, a bore in an edge is a rectangle that starts at the edge.
    private void EdgeBore(Bore bore)
    {
        var into = bore.Surface.Into();
        var start = panel.OnSurface(bore.Surface, bore.At.Point);
        var (from, along) = (new Point2(start.X, start.Y), new Point2(into.X, into.Y));
        // Side by side, so that every dash begins in a corner.
        var (end, side) = (from + along * bore.Depth!.Value, along.Left * (bore.Diameter.Value / 2));
        foreach (var (a, b) in new[] { (from - side, end - side), (from + side, end + side), (end - side, end + side) })
            entities.Add(new SegmentEntity(HiddenLayer, new Segment(OnPaper(a), OnPaper(b))));
    }

    private void Mark(Mark mark)
    {
        const double Arm = 1.5;
        var layer = mark.Face == Surface.Inside ? MarkLayer : HiddenLayer;
        var from = OnPaper(mark.From.Point);
        if (mark.To is { } to)
        {
            entities.Add(new SegmentEntity(layer, new Segment(from, OnPaper(to.Point))));
            return;
        }

        entities.Add(new SegmentEntity(layer, new Segment(from - new Point2(Arm, 0), from + new Point2(Arm, 0))));
        entities.Add(new SegmentEntity(layer, new Segment(from - new Point2(0, Arm), from + new Point2(0, Arm))));
    }

    // Letters beside the features of each kind, where there is room; of a kind that has none beside any of its features, on the first.
    private void Tags()
    {
        var panelBox = new Box2(OnPaper(default), OnPaper(new(panel.Length.Value, panel.Width.Value)));
        var placer = new TagPlacer(entities, panelBox);
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
                if (placer.Place(TextLayer, OnPaper(centre), radius / scale, group.Tag, Small) is { } tag) entities.Add(tag);
            }
    }

    // The places along and across that scales show: of bores their centres, of everything else its ends and sides.
    private (double At, string Text)[][] Marks()
    {
        var points = panel.Features.SelectMany(f => f switch
        {
            Bore bore => bore.Surface.IsFace() ? [bore.At.Point] : Array.Empty<Point2>(),
            Groove groove => [groove.Outline.Bounds.Min, groove.Outline.Bounds.Max],
            CutOut cutOut => cutOut.Outline.AsCircle is var (centre, _) ? [centre] : [cutOut.Outline.Bounds.Min, cutOut.Outline.Bounds.Max],
            Mark mark => [mark.From.Point, (mark.To ?? mark.From).Point],
            _ => [],
        }).ToList();
        (double, string)[] Of(Func<Point2, double> along, double size) =>
        [
            .. points.Select(along).Where(v => v > Tolerance.Length && v < size - Tolerance.Length).GroupBy(v => Math.Round(v, 4)).OrderBy(g => g.Key)
                .Select(g => (g.First(), Lengths.PrintPlace(g.First()).TrimEnd('"'))),
        ];
        return [Of(p => p.X, panel.Length.Value), Of(p => p.Y, panel.Width.Value)];
    }

    private void Dimensions()
    {
        const double Gap = 2, Beyond = 3;
        var (low, far) = (OnPaper(default), OnPaper(new Point2(panel.Length.Value, panel.Width.Value)));
        entities.Add(new LinearDimension(DimensionLayer, new(low.X, far.Y), far, far + new Point2(0, LineDistance), false, Lengths.Print(panel.Length.Value), Normal) { Factor = scale, Standard = settings.Standard });
        // Clear of an edge's name that does not stand upright.
        var (name, height) = (panel.NameOf(Surface.End), far.Y - low.Y);
        var clear = IsUpright(name, height) ? Gap + 1.3 * Small + 1 : Gap + Lettering.Width(name, Small) + 2 + (settings.Standard.IsTextInLine ? 0 : 2 * Normal);
        var beside = Math.Max(LineDistance, clear + HalfText);
        entities.Add(new LinearDimension(DimensionLayer, new(far.X, low.Y), far, far + new Point2(beside, 0), true, Lengths.Print(panel.Width.Value), Normal) { Factor = scale, Standard = settings.Standard });

        var marks = Marks();
        var depth = OrdinateScale.Depth(NumberWidth);
        var along = OrdinateScale.Of([.. marks[0].Select(m => (OnPaper(new(m.At, 0)).X, m.Text))], low.X, far.X, low.Y, false, DimensionLayer, TextLayer, Small);
        var across = OrdinateScale.Of([.. marks[1].Select(m => (OnPaper(new(0, m.At)).Y, m.Text))], low.Y, far.Y, low.X, true, DimensionLayer, TextLayer, Small);
        entities.AddRange(along);
        entities.AddRange(across);

        // Where each edge sits once built; the origin all places are measured from is the corner marked 0.
        var middle = (low + far) * 0.5;
        Text(new(middle.X, low.Y - (along.IsEmpty ? Gap : depth + 2) - Small), panel.NameOf(Surface.Near), Small, Anchor.BaseCentre);
        Text(new(middle.X, far.Y + Gap), panel.NameOf(Surface.Far), Small, Anchor.BaseCentre);
        Side(new(low.X - (across.IsEmpty ? Gap : depth + 2), middle.Y), panel.NameOf(Surface.Start), Anchor.BaseRight, far.Y - low.Y);
        Side(new(far.X + Gap, middle.Y), panel.NameOf(Surface.End), Anchor.BaseLeft, far.Y - low.Y);
        Text(low - new Point2(Beyond / 2, Beyond / 2 + Small), "0", Small, Anchor.BaseRight);
    }

    private bool IsUpright(string word, double room) => Lettering.Width(word, Small) + 6 <= room;

    private void Side(Point2 at, string word, Anchor anchor, double room)
    {
        if (!IsUpright(word, room)) Text(at - new Point2(0, Small / 2), word, Small, anchor);
        else Text(anchor == Anchor.BaseRight ? at : at + new Point2(Small, 0), word, Small, Anchor.BaseCentre, 90);
    }

    private void Strip(string project, int sheet, int sheets)
    {
        Box(paper.Frame);
        Line(new(paper.Frame.Min.X, paper.View.Min.Y), new(paper.Frame.Max.X, paper.View.Min.Y));
        if (paper.View.Width > 0) Line(new(paper.View.Max.X, paper.View.Min.Y), new(paper.View.Max.X, paper.Frame.Max.Y));
        var fields = new (string Label, string Value, double Width, double Height)[]
        {
            ("Panel", panel.Id, 66, settings.Standard.Large),
            ("Project", project, 76, Normal),
            ("Board, thickness", Board(), BoardWidth, Normal),
            ("Grain", panel.Board.HasGrain ? "along x" : "none", 22, Small),
            ("Scale", string.Create(CultureInfo.InvariantCulture, $"1:{scale}"), 19, Normal),
            ("Sheet", string.Create(CultureInfo.InvariantCulture, $"{sheet} of {sheets}"), 22, Normal),
        };
        // Narrower on a narrower sheet.
        var share = Math.Min(1, paper.Frame.Width / StripWidth);
        var x = paper.Frame.Max.X - share * StripWidth;
        foreach (var (label, value, fullWidth, height) in fields)
        {
            var width = share * fullWidth;
            if (x > paper.Frame.Min.X + 1e-6) Line(new(x, paper.Frame.Min.Y), new(x, paper.View.Min.Y));
            Text(new(x + 2, paper.View.Min.Y - 2 - Small), label, Small, Anchor.BaseLeft);
            var shown = Lettering.Width(value, height) <= width - 4 ? height : Lettering.Width(value, Normal) <= width - 4 ? Normal : Small;
            Text(new(x + 2, paper.Frame.Min.Y + 5), Fitted(value, Math.Min(shown, height), width - 4), Math.Min(shown, height), Anchor.BaseLeft);
            x += width;
        }
    }

    // Of all fields of the title strip, and of the board's.
    private const double StripWidth = 267, BoardWidth = 62;

    private string Board()
    {
        var unit = Lengths.IsInches ? "" : " mm";
        var thickness = $", {Lengths.PrintFine(panel.Thickness.Value)}{unit}";
        var full = $"{panel.Board.Name} ({panel.Board.Label}){thickness}";
        // What the shop calls it gives way, never the thickness.
        return panel.Board.Label.Length > 0 && Lettering.Width(full, Small) <= Math.Min(1, paper.Frame.Width / StripWidth) * BoardWidth - 4 ? full : panel.Board.Name + thickness;
    }

    private bool HasRoom(ImmutableArray<string> withheldBy) => Lines().Count <= Room(withheldBy);

    // Whether the numbers along and across find room beside the view.
    private bool HasScales => Marks().Zip(new[] { panel.Length.Value, panel.Width.Value }).All(m => m.First.Length * OrdinateScale.Pitch(Small) <= m.Second / scale);

    // Lines of the list that fit on the first sheet beside its notes, and a stamp.
    private int Room(ImmutableArray<string> withheldBy) => paper.Lines - Notes().Length - 1 - (withheldBy.IsEmpty ? 0 : 4);

    // A heading a kind, then its places, broken to the width of a column.
    private List<ListLine> Lines()
    {
        var lines = new List<ListLine>();
        if (!panel.Bands.IsEmpty) lines.AddRange(Broken($"saw to {Lengths.Print(panel.CutLength.Value)} × {Lengths.Print(panel.CutWidth.Value)}, then", 0));
        foreach (var band in panel.Bands)
        {
            var (edge, thickness) = (panel.NameOf(band.Edge), Lengths.PrintFine(band.Thickness.Value));
            lines.AddRange(Broken(band.PreMilled.Value > 0 ? $"{edge}: mill {Lengths.PrintFine(band.PreMilled.Value)} off, band {thickness}" : $"band {thickness} on the {edge} edge", 0));
        }

        if (!panel.IsRectangular)
        {
            lines.Add(new("outline", 0));
            lines.AddRange(new FeatureList(panel, Lengths).Corners(panel.Outline).SelectMany(c => Broken(c, 1)));
        }

        foreach (var group in groups)
        {
            lines.AddRange(Broken(group.Tag.Length > 0 ? $"{group.Tag}  {group.Heading}" : group.Heading, 0));
            lines.AddRange(group.Places.SelectMany(p => Broken(p, 1)));
        }

        if (lines.Count == 0) lines.Add(new("nothing to drill or cut", 0));
        return lines;
    }

    private IEnumerable<ListLine> Broken(string text, int indent)
    {
        var width = paper.ColumnWidth - ListLine.Step;
        var line = "";
        foreach (var word in text.Split(' '))
        {
            var longer = line.Length == 0 ? word : $"{line} {word}";
            if (line.Length > 0 && indent * ListLine.Step + Lettering.Width(longer, Small) > width)
            {
                yield return new(line.Replace(ListLine.Hard, ' '), indent);
                (line, indent) = (word, Math.Max(indent, 1) + (indent < 2 ? 1 : 0));
            }
            else line = longer;
        }

        yield return new(line.Replace(ListLine.Hard, ' '), indent);
    }

    private List<ListLine> List(ImmutableArray<string> withheldBy)
    {
        var left = paper.List.Min.X + 3;
        var top = paper.ListTop;
        if (!withheldBy.IsEmpty)
        {
            var stamp = new Box2(new(left, top - 8), new(paper.List.Max.X - 3, top + Normal));
            entities.Add(new ContourEntity(WarningLayer, Contour.Rectangle(stamp.Min.X, stamp.Min.Y, stamp.Max.X, stamp.Max.Y)));
            entities.Add(new TextEntity(WarningLayer, new(stamp.Centre.X, stamp.Centre.Y + 1), Normal, "DO NOT CUT", Anchor.BaseCentre));
            entities.Add(new TextEntity(WarningLayer, new(stamp.Centre.X, stamp.Min.Y + 1.8), Small, Fitted($"{string.Join(", ", withheldBy)}: see findings.json", Small, paper.List.Width - 8), Anchor.BaseCentre));
            top -= 4 * SheetPaper.Line;
        }

        var notes = Notes();
        foreach (var (note, index) in notes.Reverse().Select((n, i) => (n, i)))
            Text(new(left, paper.List.Min.Y + 3 + index * SheetPaper.Line), Fitted(note, Small, paper.List.Width - 6), Small, Anchor.BaseLeft);
        var lines = Lines();
        var room = Room(withheldBy);
        if (lines.Count <= room)
        {
            Set(lines, top);
            return [];
        }

        Set([.. lines.Take(room - 1), new("more on the next sheet", 0)], top);
        return [.. lines.Skip(room - 1)];
    }

    // Column by column, from the top down.
    private void Set(IEnumerable<ListLine> lines, double top)
    {
        var bottom = paper.List.Min.Y + 3 + (paper.View.Width <= 0 ? 0 : (Notes().Length + 1) * SheetPaper.Line);
        var perColumn = (int)((top - bottom) / SheetPaper.Line) + 1;
        foreach (var (line, i) in lines.Select((l, i) => (l, i)))
            Text(new(paper.List.Min.X + 3 + i / perColumn * paper.ColumnWidth + line.Indent * ListLine.Step, top - i % perColumn * SheetPaper.Line), line.Text, Small, Anchor.BaseLeft);
    }

    private string[] Notes() => [.. NoteTexts().SelectMany(n => Broken(n, 0)).Select(l => l.Text)];

    private string[] NoteTexts() =>
    [
        .. twin is null ? Array.Empty<string>() : [$"{(twin.Twinship == Twinship.Same ? "Same part as" : "Mirror image of")} {twin.Of}."],
        .. Stack(),
        panel.Placement is null ? "Inside face up." : $"Face up: inside, which looks {panel.Facing(Surface.Inside).Word()}.",
        "x along, y across from corner 0, finished; z above the face below. Dashed: on the other face or in an edge.",
        $"Lengths in {Lengths.Statement}.",
        .. settings.Document.Line is { Length: > 0 } document ? [document] : Array.Empty<string>(),
    ];

    // With which panels it is drilled, how they lie, and what is drilled apart.
    private IEnumerable<string> Stack()
    {
        if (stack is null) yield break;
        var others = stack.Panels.Where(p => p.Id != panel.Id).ToList();
        var own = stack.Panels.Single(p => p.Id == panel.Id);
        yield return $"Stack with {string.Join(", ", others.Select(o => o.Id))},";
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

    private void Point(Box3 box)
    {
        var (low, high) = (OnPaper(new(box.Min.X, box.Min.Y)), OnPaper(new(box.Max.X, box.Max.Y)));
        const double Margin = 1.5;
        var shown = new Box2(low, high).Grown(Margin);
        Point2 Inside(Point2 p) => new(Math.Clamp(p.X, paper.View.Min.X + 1, paper.View.Max.X - 1), Math.Clamp(p.Y, paper.View.Min.Y + 1, paper.View.Max.Y - 1));
        var (from, to) = (Inside(shown.Min), Inside(shown.Max));
        if (to.X > from.X && to.Y > from.Y) entities.Add(new ContourEntity(WarningLayer, Contour.Rectangle(from.X, from.Y, to.X, to.Y)));
    }

    private void Add(Layer layer, Contour contour) => entities.Add(new ContourEntity(layer, contour.Mapped(OnPaper, false)));

    private void Box(Box2 box) => entities.Add(new ContourEntity(FrameLayer, Contour.Rectangle(box.Min.X, box.Min.Y, box.Max.X, box.Max.Y)));

    private void Line(Point2 from, Point2 to) => entities.Add(new SegmentEntity(FrameLayer, new Segment(from, to)));

    private void Text(Point2 at, string text, double height, Anchor anchor, double angle = 0) => entities.Add(new TextEntity(TextLayer, at, height, text, anchor, angle));

    // The text, or as much of it as fits with an ellipsis.
    private static string Fitted(string text, double height, double width)
    {
        if (Lettering.Width(text, height) <= width) return text;
        var runes = text.EnumerateRunes().ToList();
        while (runes.Count > 0 && Lettering.Width(string.Concat(runes) + "…", height) > width) runes.RemoveAt(runes.Count - 1);
        return string.Concat(runes) + "…";
    }
}
