using System.Globalization;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>
/// The sheet of one panel, A4 lying: the panel to scale as it lies inside face up, its overall sizes, every hole, groove and opening, and a
/// list of them by kind. What is dashed lies on the outside face or in an edge.
/// </summary>
public sealed class PanelSheet
{
    private const double Small = 2.5;
    private const double Normal = 3.5;
    private const double Large = 5;

    // A4, with the frame of ISO 5457 (20 mm left, 10 elsewhere; from memory), a title strip below and the list on the right.
    private static readonly Point2 Page = new(297, 210);
    private static readonly Box2 Frame = new(new(20, 10), new(287, 200));
    private static readonly Box2 ListArea = new(new(204, 32), new(287, 200));
    private static readonly Box2 ViewArea = new(new(20, 32), new(204, 200));
    private static readonly Box2 PanelArea = new(new(43, 54), new(196, 191));

    // ISO 5455 (from memory): reduction scales.
    private static readonly int[] Scales = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];

    private static readonly Layer FrameLayer = new("FRAME", Role.Frame, "Frame and title strip");
    private static readonly Layer TextLayer = new("TEXT", Role.Lettering, "Title strip, list and notes");
    private static readonly Layer DimensionLayer = new("DIMENSION", Role.Dimension, "Overall sizes");
    private static readonly Layer OutlineLayer = new("OUTLINE", Role.Outline, "Edge of the finished panel");
    private static readonly Layer CutOutLayer = new("CUTOUT", Role.CutOut, "Openings through the panel");
    private static readonly Layer BoreLayer = new("BORE", Role.Bore, "Bores seen from the inside face");
    private static readonly Layer GrooveLayer = new("GROOVE", Role.Groove, "Grooves in the inside face");
    private static readonly Layer MarkLayer = new("MARK", Role.Mark, "Scribed lines and centres");
    private static readonly Layer HiddenLayer = new("HIDDEN", Role.Hidden, "On the outside face or in an edge");
    private static readonly Layer WarningLayer = new("WARNING", Role.Warning, "What the checks found");

    private readonly Panel panel;
    private readonly LengthStyle lengths;
    private readonly PanelTwin? twin;
    private readonly StackedPanels? stack;
    private readonly int scale;
    private readonly Point2 origin;
    private readonly List<Entity> entities = [];

    private PanelSheet(Panel panel, LengthStyle lengths, PanelTwin? twin, StackedPanels? stack)
    {
        (this.panel, this.lengths, this.twin, this.stack) = (panel, lengths, twin, stack);
        scale = Scales.First(n => n == Scales[^1] || (panel.Length.Value / n <= PanelArea.Width && panel.Width.Value / n <= PanelArea.Height));
        origin = PanelArea.Centre - new Point2(panel.Length.Value, panel.Width.Value) * (0.5 / scale);
    }

    /// <summary>Draws the sheet.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="project">What is built.</param>
    /// <param name="lengths">How lengths are printed.</param>
    /// <param name="findings">What the checks say; only those about this panel are shown.</param>
    /// <param name="twin">The earlier panel it repeats, or nothing.</param>
    /// <param name="stack">The stack it is drilled in, or nothing.</param>
    public static Drawing Of(Panel panel, string project, LengthStyle lengths, IEnumerable<Finding> findings, PanelTwin? twin = null, StackedPanels? stack = null)
    {
        var sheet = new PanelSheet(panel, lengths, twin, stack);
        var own = findings.Where(f => f.Panels.Contains(panel.Id)).ToList();
        sheet.View();
        sheet.Dimensions();
        sheet.Strip(project);
        sheet.List([.. own.Where(f => f.Withholds).Select(f => f.Rule).Distinct()]);
        foreach (var finding in own)
            if (finding.Where is { } where && where.Panel == panel.Id) sheet.Point(where.Box);
        var bores = panel.Features.OfType<Bore>().Count();
        return new Drawing(
            $"{panel.Id} of {project}",
            string.Create(CultureInfo.InvariantCulture, $"Panel {panel.Id}, {lengths.Print(panel.Length.Value)} by {lengths.Print(panel.Width.Value)}, {lengths.PrintFine(panel.Thickness.Value)} thick ({lengths.Statement}), of {panel.Board.Name}, with {bores} bores, drawn 1:{sheet.scale}, inside face up."),
            Page,
            sheet.entities);
    }

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

    private void Dimensions()
    {
        const double LineDistance = 13;
        var (length, width) = (panel.Length.Value, panel.Width.Value);
        var (low, far) = (OnPaper(default), OnPaper(new Point2(length, width)));
        entities.Add(new LinearDimension(DimensionLayer, low, new(far.X, low.Y), low - new Point2(0, LineDistance), false, lengths.Print(length), Normal));
        entities.Add(new LinearDimension(DimensionLayer, low, new(low.X, far.Y), low - new Point2(LineDistance, 0), true, lengths.Print(width), Normal));

        // Where each edge sits once built; the origin all places are measured from is the corner marked 0.
        const double Gap = 2;
        var middle = (low + far) * 0.5;
        Text(new(middle.X, low.Y - Gap - Small), panel.NameOf(Surface.Near), Small, Anchor.BaseCentre);
        Text(new(middle.X, far.Y + Gap), panel.NameOf(Surface.Far), Small, Anchor.BaseCentre);
        Side(new(low.X - Gap, middle.Y), panel.NameOf(Surface.Start), Anchor.BaseRight, far.Y - low.Y);
        Side(new(far.X + Gap, middle.Y), panel.NameOf(Surface.End), Anchor.BaseLeft, far.Y - low.Y);
        Text(new(low.X - 3.2, low.Y - 4.2), "0", Small, Anchor.BaseRight);
    }

    private void Side(Point2 at, string word, Anchor anchor, double room)
    {
        var isUpright = Lettering.Width(word, Small) + 6 <= room;
        if (!isUpright) Text(at - new Point2(0, Small / 2), word, Small, anchor);
        else Text(anchor == Anchor.BaseRight ? at : at + new Point2(Small, 0), word, Small, Anchor.BaseCentre, 90);
    }

    private void Strip(string project)
    {
        Box(Frame);
        Line(new(Frame.Min.X, ViewArea.Min.Y), new(Frame.Max.X, ViewArea.Min.Y));
        Line(new(ListArea.Min.X, ListArea.Min.Y), new(ListArea.Min.X, ListArea.Max.Y));
        var fields = new (string Label, string Value, double Width, double Height)[]
        {
            ("Panel", panel.Id, 74, Large),
            ("Project", project, 86, Normal),
            ("Board, thickness", Board(), 62, Normal),
            ("Grain", panel.Board.HasGrain ? "along length" : "none", 26, Small),
            ("Scale", string.Create(CultureInfo.InvariantCulture, $"1:{scale}"), 19, Normal),
        };
        var x = Frame.Min.X;
        foreach (var (label, value, width, height) in fields)
        {
            if (x > Frame.Min.X) Line(new(x, Frame.Min.Y), new(x, ViewArea.Min.Y));
            Text(new(x + 2, ViewArea.Min.Y - 2 - Small), label, Small, Anchor.BaseLeft);
            var shown = Lettering.Width(value, height) <= width - 4 ? height : Lettering.Width(value, Normal) <= width - 4 ? Normal : Small;
            Text(new(x + 2, Frame.Min.Y + 5), Fitted(value, Math.Min(shown, height), width - 4), Math.Min(shown, height), Anchor.BaseLeft);
            x += width;
        }
    }

    private string Board()
    {
        var unit = lengths.IsInches ? "" : " mm";
        return $"{(panel.Board.Label.Length > 0 ? $"{panel.Board.Name} ({panel.Board.Label})" : panel.Board.Name)}, {lengths.PrintFine(panel.Thickness.Value)}{unit}";
    }

    private void List(IReadOnlyList<string> withheldBy)
    {
        const double Line = 5;
        var left = ListArea.Min.X + 3;
        var y = ListArea.Max.Y - 3 - Normal;
        if (withheldBy.Count > 0)
        {
            var stamp = new Box2(new(left, y - 8), new(ListArea.Max.X - 3, y + Normal));
            entities.Add(new ContourEntity(WarningLayer, Contour.Rectangle(stamp.Min.X, stamp.Min.Y, stamp.Max.X, stamp.Max.Y)));
            entities.Add(new TextEntity(WarningLayer, new(stamp.Centre.X, stamp.Centre.Y + 1), Normal, "DO NOT CUT", Anchor.BaseCentre));
            entities.Add(new TextEntity(WarningLayer, new(stamp.Centre.X, stamp.Min.Y + 1.8), Small, Fitted($"{string.Join(", ", withheldBy)}: see findings.json", Small, ListArea.Width - 8), Anchor.BaseCentre));
            y = stamp.Min.Y - Line - 2;
        }

        string[] notes =
        [
            .. twin is null ? Array.Empty<string>() : [Fitted($"{(twin.Twinship == Twinship.Same ? "Same part as" : "Mirror image of")} {twin.Of}.", Small, ListArea.Width - 6)],
            .. Stack().Select(line => Fitted(line, Small, ListArea.Width - 6)),
            panel.Placement is null ? "Inside face up; places count from corner 0." : $"Face up: inside, which looks {panel.Facing(Surface.Inside).Word()}.",
            .. panel.Placement is null ? Array.Empty<string>() : ["Places: along, across from corner 0."],
            "Dashed: on the other face or in an edge.",
            "In edges: along, then above the face below.",
            $"Lengths in {lengths.Statement}.",
        ];
        var end = ListArea.Min.Y + 3 + notes.Length * Line;
        foreach (var (note, index) in notes.Reverse().Select((n, i) => (n, i)))
            Text(new(left, ListArea.Min.Y + 3 + index * Line), note, Small, Anchor.BaseLeft);

        Text(new(left, y), "Holes, grooves, openings", Normal, Anchor.BaseLeft);
        y -= 1;
        var rows = Rows().ToList();
        foreach (var (row, index) in rows.Select((r, i) => (r, i)))
        {
            y -= Line;
            if (y - Line < end && index < rows.Count - 1)
            {
                Text(new(left, y), "more in lists/bores.csv", Small, Anchor.BaseLeft);
                break;
            }

            foreach (var (text, x) in row) Text(new(left + x, y), Fitted(text, Small, ListArea.Width - 6 - x), Small, Anchor.BaseLeft);
        }
    }

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

    // A heading a kind, such as "12 × ⌀4.5 through, outside", then the places in as many columns as fit.
    private IEnumerable<(string Text, double X)[]> Rows()
    {
        if (!panel.Bands.IsEmpty) yield return [($"saw to {lengths.Print(panel.CutLength.Value)} × {lengths.Print(panel.CutWidth.Value)}, then", 0)];
        foreach (var band in panel.Bands)
        {
            var (edge, thickness) = (panel.NameOf(band.Edge), lengths.PrintFine(band.Thickness.Value));
            yield return [(band.PreMilled.Value > 0 ? $"{edge}: mill {lengths.PrintFine(band.PreMilled.Value)} off, band {thickness}" : $"band {thickness} on the {edge} edge", 0)];
        }

        foreach (var kind in panel.Features.GroupBy(Kind))
        {
            yield return [(string.Create(CultureInfo.InvariantCulture, $"{kind.Count()} × {kind.Key}"), 0)];
            foreach (var row in Columns([.. kind.OrderBy(f => Corner(f).X).ThenBy(f => Corner(f).Y).Select(Places)])) yield return row;
        }

        if (panel.Features.IsEmpty) yield return [("none", 0)];
        if (panel.IsRectangular || !panel.Outline.Segments.All(s => s.IsLine)) yield break;
        yield return [(string.Create(CultureInfo.InvariantCulture, $"outline by its {panel.Outline.Segments.Length} corners, in order"), 0)];
        foreach (var row in Columns([.. panel.Outline.Segments.Select(s => Place(s.Start))])) yield return row;
    }

    private static IEnumerable<(string Text, double X)[]> Columns(IReadOnlyList<string> places)
    {
        const double Indent = 2;
        const double Gap = 1.2;
        var width = ListArea.Width - 6 - Indent;
        var columns = Math.Max(1, (int)(width / (places.Max(p => Lettering.Width(p, Small)) + Gap)));
        return places.Chunk(columns).Select(row => row.Select((p, i) => (p, Indent + i * width / columns)).ToArray());
    }

    private string Kind(Feature feature) => feature switch
    {
        Bore bore => $"⌀{lengths.PrintFine(bore.Diameter.Value)} {(bore.Depth is { } d ? $"× {lengths.PrintFine(d.Value)} deep," : "through, from")} {Where(bore.Surface)}",
        Groove groove => $"groove {lengths.PrintFine(groove.Width.Value)} wide, {lengths.PrintFine(groove.Depth.Value)} deep, {Where(groove.Face)}",
        CutOut cutOut => $"opening {lengths.Print(cutOut.Outline.Bounds.Width)} × {lengths.Print(cutOut.Outline.Bounds.Height)}, corner",
        Mark mark => $"{(mark.To is null ? "centre" : "line")} to mark, {Where(mark.Face)}",
        _ => throw new InvalidOperationException($"{feature.GetType().Name} cannot be listed."),
    };

    private string Places(Feature feature) => feature switch
    {
        Bore bore => Place(bore.At.Point),
        Groove groove => $"{Place(groove.From.Point)} to {Place(groove.To.Point)}",
        CutOut cutOut => Place(cutOut.Outline.Bounds.Min),
        Mark mark => mark.To is { } to ? $"{Place(mark.From.Point)} to {Place(to.Point)}" : Place(mark.From.Point),
        _ => throw new InvalidOperationException($"{feature.GetType().Name} has no place."),
    };

    private static Point2 Corner(Feature feature)
    {
        var at = feature switch
        {
            Bore bore => bore.At.Point,
            Groove groove => groove.From.Point,
            CutOut cutOut => cutOut.Outline.Bounds.Min,
            Mark mark => mark.From.Point,
            _ => default,
        };
        return new Point2(Math.Round(at.X, 3), Math.Round(at.Y, 3));
    }

    // The unit is said once, below the list.
    private string Place(Point2 at) => $"{lengths.PrintPlace(at.X).TrimEnd('"')}, {lengths.PrintPlace(at.Y).TrimEnd('"')}";

    private string Where(Surface surface) => surface.IsFace() ? panel.NameOf(surface) : $"{panel.NameOf(surface)} edge";

    private void Point(Box3 box)
    {
        var (low, high) = (OnPaper(new(box.Min.X, box.Min.Y)), OnPaper(new(box.Max.X, box.Max.Y)));
        const double Margin = 1.5;
        var shown = new Box2(low, high).Grown(Margin);
        Point2 Inside(Point2 p) => new(Math.Clamp(p.X, ViewArea.Min.X + 1, ViewArea.Max.X - 1), Math.Clamp(p.Y, ViewArea.Min.Y + 1, ViewArea.Max.Y - 1));
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
