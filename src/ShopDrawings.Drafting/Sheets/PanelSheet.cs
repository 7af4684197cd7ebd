using System.Collections.Immutable;
using System.Globalization;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>
/// The sheet of one panel, on the smallest paper that holds it well: the panel to scale as it lies inside face up, its overall sizes, scales along and
/// across that say where each feature lies from corner 0, rows of bores by their pitch, and a list of all by kind; what the list does not hold goes on
/// on more sheets. A long panel may be drawn in two pieces. What is dashed lies on the outside face or in an edge.
/// </summary>
public sealed class PanelSheet
{
    private const double Rim = 3;

    private static readonly Layer HeadingLayer = new("HEADING", Role.Lettering, "Name of the panel and the face that is up");
    private static readonly Layer ListLayer = new("LIST", Role.Lettering, "Every feature in words and numbers");
    private static readonly Layer RuleLayer = new("RULES", Role.Lettering, "Lines between the view and the list");
    private static readonly Layer WarningLayer = new("WARNING", Role.Warning, "What the checks found");

    private readonly Panel panel;
    private readonly string project;
    private readonly SheetSettings settings;
    private readonly PanelNotes notes;
    private readonly ImmutableArray<FeatureGroup> groups;
    private readonly PanelList list;
    private readonly ImmutableArray<PitchRow> rows;
    private readonly ImmutableArray<Finding> findings;
    private readonly ImmutableArray<string> withheldBy;

    private PanelSheet(Panel panel, string project, SheetSettings settings, ImmutableArray<Finding> findings, PanelTwin? twin, StackedPanels? stack)
    {
        (this.panel, this.project, this.settings, this.findings) = (panel, project, settings, findings);
        notes = new(panel, settings.Lengths, twin, stack);
        groups = new FeatureList(panel, settings.Lengths).Groups();
        list = new(panel, settings, groups);
        rows = PitchRow.Find(groups, settings.Lengths);
        withheldBy = [.. findings.Where(f => f.Withholds).Select(f => f.Rule).Distinct()];
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
        return new PanelSheet(panel, project, settings, [.. findings.Where(f => f.Panels.Contains(panel.Id))], twin, stack).Drawn();
    }

    private LengthStyle Lengths => settings.Lengths;

    private double Small => settings.Small;

    private double Normal => settings.Normal;

    private double Large => settings.Standard.Large;

    private ImmutableArray<Drawing> Drawn()
    {
        var layouts = PanelLayout.Of(panel, settings, list, rows, size => SheetFrame.Wrapped(size, notes.Lines(), settings).Length, !withheldBy.IsEmpty);
        // The best that shows every place on its scale; a list holds them all anyway.
        var layout = layouts.FirstOrDefault(l => View(l).HasScales) ?? layouts[0];
        var view = View(layout);

        var lines = list.Lines(layout.ColumnWidth);
        var first = PanelList.Columns(lines, layout.PerColumn, layout.Columns);
        if (first.Sum(c => c.Length) < lines.Length) first = PanelList.Columns(lines, layout.PerColumn - 1, layout.Columns);
        var rest = lines.Skip(first.Sum(c => c.Length)).ToImmutableArray();
        var more = new List<ImmutableArray<ImmutableArray<ListLine>>>();
        var listOnly = PanelLayout.ListOnly(settings);
        while (!rest.IsEmpty)
        {
            more.Add(PanelList.Columns(rest, listOnly.PerColumn, listOnly.Columns));
            rest = [.. rest.Skip(more[^1].Sum(c => c.Length))];
        }

        var count = 1 + more.Count;
        return
        [
            Sheet(layout, 1, count, [.. view.Entities, .. Rules(layout), .. Set(layout, first), .. count > 1 ? GoesOn(layout) : [], .. Stamp(layout)]),
            .. more.Select((columns, i) => Sheet(listOnly, i + 2, count, Set(listOnly, columns))),
        ];
    }

    private (ImmutableArray<Entity> Entities, bool HasScales) View(PanelLayout layout)
    {
        var entities = ImmutableArray.CreateBuilder<Entity>();
        var (hasScales, hasGrain) = (true, false);
        foreach (var piece in layout.Pieces)
        {
            var (view, dimensions) = (new PanelView(piece, groups, Small), new PanelDimensions(piece, settings, rows));
            var start = entities.Count;
            entities.AddRange(view.Shape());
            entities.AddRange(dimensions.Overall());
            var space = new FreeSpace(entities.Skip(start));
            entities.AddRange(dimensions.Pitches(space, out var drawn));
            entities.AddRange(dimensions.Scales(drawn));
            entities.AddRange(view.Tags(space));
            if (!hasGrain) entities.AddRange(view.Grain(space));
            hasGrain |= entities.Skip(start).Any(e => e is ArrowEntity);
            hasScales &= dimensions.HasScales;
            foreach (var finding in findings)
                if (finding.Where is { } where && where.Panel == panel.Id && Pointed(piece, where.Box) is { } box) entities.Add(box);
        }

        if (panel.Board.HasGrain && !hasGrain) entities.AddRange(PanelView.GrainArrow(new(layout.Top.Max.X - Rim - 12, layout.Top.Max.Y - Rim - Large), 24, Small));
        return (entities.ToImmutable(), hasScales);
    }

    private Drawing Sheet(PanelLayout layout, int sheet, int sheets, IEnumerable<Entity> entities)
    {
        var (enlarged, reduced) = layout.Factor > 1 ? ((int)layout.Factor, 1) : (1, (int)Math.Round(1 / layout.Factor));
        var fields = new TitleFields(panel.Id, "Panel drawing", project, sheet, sheets, reduced, notes.Material(SheetFrame.NoteWidth(layout.Size), settings.Standard.Small)) { Enlarged = enlarged, NoteLabel = "Material" };
        var frame = SheetFrame.Of(layout.Size, fields, settings, sheet == 1 ? SheetFrame.Wrapped(layout.Size, notes.Lines(), settings) : []);
        var bores = panel.Features.OfType<Bore>().Count();
        var of = sheets > 1 ? string.Create(CultureInfo.InvariantCulture, $", sheet {sheet} of {sheets}") : "";
        return new Drawing(
            $"{panel.Id} of {project}{of}",
            string.Create(CultureInfo.InvariantCulture, $"Panel {panel.Id}, {Lengths.Print(panel.Length.Value)} by {Lengths.Print(panel.Width.Value)}, {Lengths.PrintFine(panel.Thickness.Value)} thick ({Lengths.Statement}), of {panel.Board.Name}, with {bores} bores, drawn {enlarged}:{reduced}, inside face up{of}."),
            layout.Size.Page, [.. frame, .. Heading(layout), .. PaperLines.Of(entities)]);
    }

    private IEnumerable<Entity> Heading(PanelLayout layout)
    {
        const double Between = 5;
        var at = new Point2(layout.Top.Min.X + Rim, layout.Top.Max.Y - Rim - 1 - Large);
        var room = layout.Top.Width - 2 * Rim;
        var name = SheetFrame.Fitted(panel.Id, Large, room);
        yield return new TextEntity(HeadingLayer, at, Large, name);
        var (width, pieces) = (Lettering.Width(name, Large) + Between, layout.Pieces.Length > 1 ? ", in two pieces" : "");
        foreach (var (face, height) in new[] { (notes.Face, Normal), (notes.Face, Small), (PanelNotes.FaceUp, Normal), (PanelNotes.FaceUp, Small) })
        {
            // What is left is for a grain arrow that finds no room in the view.
            if (width + Lettering.Width(face + pieces, height) > room - 30) continue;
            yield return new TextEntity(HeadingLayer, at + new Point2(width, 0), height, face + pieces);
            yield break;
        }
    }

    private static IEnumerable<Entity> Rules(PanelLayout layout)
    {
        var (list, frame) = (layout.List, layout.Size.Frame);
        yield return new SegmentEntity(RuleLayer, layout.IsBelow ? new Segment(new(frame.Min.X, list.Max.Y), new(frame.Max.X, list.Max.Y)) : new Segment(list.Min, new(list.Min.X, layout.Top.Min.Y)));
        if (!layout.IsBelow) yield return new SegmentEntity(RuleLayer, new Segment(new(list.Min.X, layout.Top.Min.Y), new(frame.Max.X, layout.Top.Min.Y)));
    }

    private IEnumerable<Entity> Set(PanelLayout layout, ImmutableArray<ImmutableArray<ListLine>> columns) => columns.SelectMany((column, c) => column.Select((line, i) =>
        new TextEntity(ListLayer, new(layout.List.Min.X + Rim + c * layout.ColumnWidth + line.Indent * ListLine.Step, layout.List.Max.Y - 5 - i * layout.Pitch), Small, line.Text)));

    private IEnumerable<Entity> GoesOn(PanelLayout layout) =>
        [new TextEntity(HeadingLayer, new(layout.List.Min.X + Rim + (layout.Columns - 1) * layout.ColumnWidth, layout.List.Max.Y - 5 - (layout.PerColumn - 1) * layout.Pitch), Small, "more on the next sheet")];

    private IEnumerable<Entity> Stamp(PanelLayout layout)
    {
        if (withheldBy.IsEmpty) yield break;
        const double Most = 150, Height = 12;
        var (middle, width) = (layout.Top.Centre.X, Math.Min(Most, layout.Top.Width - 2 * Rim));
        var (low, high) = (new Point2(middle - width / 2, layout.Top.Min.Y + 1), new Point2(middle + width / 2, layout.Top.Min.Y + 1 + Height));
        yield return new ContourEntity(WarningLayer, Contour.Rectangle(low.X, low.Y, high.X, high.Y));
        yield return new TextEntity(WarningLayer, new(middle, high.Y - 1.8 - Normal), Normal, "DO NOT CUT", Anchor.BaseCentre);
        yield return new TextEntity(WarningLayer, new(middle, low.Y + 1.6), Small, SheetFrame.Fitted($"{string.Join(", ", withheldBy)}: see findings.json", Small, width - 4), Anchor.BaseCentre);
    }

    // Round what a finding is about, within the frame.
    private static ContourEntity? Pointed(PanelPiece piece, Box3 box)
    {
        const double Margin = 1.5;
        var within = piece.Box.Grown(2 * Margin);
        var shown = new Box2(piece.OnPaper(new(box.Min.X, box.Min.Y)), piece.OnPaper(new(box.Max.X, box.Max.Y))).Grown(Margin);
        Point2 Inside(Point2 p) => new(Math.Clamp(p.X, within.Min.X, within.Max.X), Math.Clamp(p.Y, within.Min.Y, within.Max.Y));
        var (from, to) = (Inside(shown.Min), Inside(shown.Max));
        return to.X > from.X && to.Y > from.Y ? new(WarningLayer, Contour.Rectangle(from.X, from.Y, to.X, to.Y)) : null;
    }
}
