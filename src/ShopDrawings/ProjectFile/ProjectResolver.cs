using System.Collections.Immutable;
using ShopDrawings.Kernel;
using ShopDrawings.Yaml;

namespace ShopDrawings.ProjectFile;

/// <summary>Follows every reference, fills in every default and builds the assembly. Collects every fault before it gives up.</summary>
internal sealed class ProjectResolver
{
    private const string UsualScrew = "wood-4x50";

    private readonly ProjectModel model;
    private readonly List<Diagnostic> diagnostics;
    private readonly AssemblyBuilder assembly;
    private readonly Dictionary<string, Board> boards = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Screw> screws = new(StringComparer.Ordinal);
    private readonly Dictionary<string, HardwarePattern> hardware = new(StringComparer.Ordinal);

    private ProjectResolver(ProjectModel model, List<Diagnostic> diagnostics)
    {
        (this.model, this.diagnostics) = (model, diagnostics);
        assembly = new AssemblyBuilder(model.Name);
        foreach (var (name, screw) in Catalogue.Screws) screws[name.Text] = Made(name.Text, screw, bought: true);
        foreach (var (name, screw) in model.Screws) screws[name.Text] = Made(name.Text, screw, bought: false);
        foreach (var (name, board) in model.Boards)
            boards[name.Text] = Board.Create(name.Text, board.Kind, board.Thickness.As($"{name.Text}-thickness"), board.Label, board.Grain, board.Density?.Value);
        foreach (var (name, part) in model.Hardware)
            hardware[name.Text] = new HardwarePattern(name.Text, part.Length, part.Width, part.Height, part.Bores);
    }

    /// <summary>The assembly and what the user says about the checks; nothing where a fault was added to the diagnostics.</summary>
    public static (Assembly Assembly, CheckSettings Checks)? Resolve(ProjectModel model, List<Diagnostic> diagnostics)
    {
        var resolver = new ProjectResolver(model, diagnostics);
        resolver.Build();
        if (diagnostics.Count > 0) return null;
        var limits = model.Checks.Limits.ToImmutableDictionary(l => l.Limit, l => l.Value);
        return (resolver.assembly.Build(), new CheckSettings(limits, model.Checks.Waivers.ToImmutableDictionary(w => w.Rule, w => w.Reason)));
    }

    private void Build()
    {
        if (model.Cabinet is null && model.Panels.IsEmpty)
            Fail(model.At, "there is nothing to build: give a “cabinet” or some “panels”");
        if (model.Cabinet is { } cabinet) Cabinet(cabinet);
        foreach (var (name, panel) in model.Panels) Panel(name, panel);
        var panelsAreSound = diagnostics.Count == 0;
        foreach (var joint in model.Joints) Joint(joint, panelsAreSound);
        foreach (var (name, fitting) in model.Fittings) Fit(name, fitting, panelsAreSound);
    }

    private void Cabinet(CabinetEntry entry)
    {
        var board = Find(boards, entry.Board, "board");
        var screw = ScrewOf(entry.Screw);
        var back = entry.Back is { } b ? Back(b, board) : null;
        var shelves = Shelves(entry, board);
        if (diagnostics.Count > 0) return;
        var carcass = new Carcass(entry.Width, entry.Height, entry.Depth, board!, back, shelves, screw!, Rows(entry.Rows));
        foreach (var (source, message) in CarcassResolver.Resolve(carcass, assembly)) Fail(source == default ? entry.At : source, message);
    }

    private CarcassBack? Back(BackEntry entry, Board? around)
    {
        if (Find(boards, entry.Board, "board") is not { } board || around is null) return null;
        var inset = entry.Inset ?? (entry.Fit == BackFit.Groove ? Size.Default(10, "usual-back-inset") : Size.Zero);
        var depth = entry.GrooveDepth ?? Size.Smallest(Size.Default(8, "usual-groove-depth"), around.Thickness / 2).As("groove-depth");
        return new CarcassBack(board, entry.Fit, inset, depth, entry.GroovePlay ?? Size.Default(0.3, "usual-groove-play"), entry.EndPlay ?? Size.Default(1, "usual-end-play"));
    }

    private ImmutableArray<CarcassShelf> Shelves(CabinetEntry entry, Board? usual)
    {
        var even = Enumerable.Range(1, entry.Shelves.Even).Select(i => new ShelfEntry(null, null, null, Size.Zero, entry.Shelves.At));
        var shelves = ImmutableArray.CreateBuilder<CarcassShelf>();
        var taken = new HashSet<string>(["left-side", "right-side", "bottom", "top", "back"], StringComparer.Ordinal);
        foreach (var (shelf, number) in even.Concat(entry.Shelves.Each).Select((s, i) => (s, i + 1)))
        {
            var id = shelf.Name?.Text ?? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"shelf-{number}");
            if (!taken.Add(id)) Fail(shelf.Name?.At ?? shelf.At, $"two panels of the cabinet are called “{id}”; give the shelf another name");
            var board = shelf.Board is { } name ? Find(boards, name, "board") : usual;
            if (board is not null) shelves.Add(new CarcassShelf(id, board, shelf.Top, shelf.FrontInset, shelf.At));
        }

        return shelves.ToImmutable();
    }

    private void Panel(Word name, PanelEntry entry)
    {
        if (assembly.Find(name.Text) is not null)
        {
            Fail(name.At, $"the cabinet has a panel called “{name.Text}” already; choose another name");
            return;
        }

        if (Find(boards, entry.Board, "board") is not { } board) return;
        var placement = entry.Place is { } place ? Placed(place, entry, board) : null;
        if (entry.Place is not null && placement is null) return;
        var panel = Kernel.Panel.Rectangular(name.Text, board, entry.Length, entry.Width, placement);
        if (!entry.Outline.IsEmpty)
        {
            if (Outline(entry.Outline) is not { } outline) return;
            var box = outline.Bounds;
            if (box.Min.Length > Tolerance.Length || !Tolerance.Same(box.Max.X, entry.Length.Value) || !Tolerance.Same(box.Max.Y, entry.Width.Value))
            {
                Fail(entry.Outline[0].At, $"the outline reaches from {Mm(box.Min.X)}, {Mm(box.Min.Y)} to {Mm(box.Max.X)}, {Mm(box.Max.Y)}; it must reach from 0, 0 to the panel's length and width, {Mm(entry.Length.Value)}, {Mm(entry.Width.Value)}");
                return;
            }

            panel = panel.WithOutline(outline);
        }

        var bands = entry.Bands.Select(b => EdgeOf(panel, b.Edge, b.Thickness.Source) is { } edge ? new EdgeBand(edge, b.Thickness) : null).OfType<EdgeBand>().ToList();
        if (Overbanded(panel, bands) is { } fault)
        {
            Fail(entry.Bands[0].Thickness.Source, fault);
            return;
        }

        assembly.Add(panel.WithBands(bands).WithFeatures(new FeatureReader(panel, this).Read(entry)));
    }

    private static string? Overbanded(Panel panel, List<EdgeBand> bands)
    {
        if (bands.Count == 0) return null;
        if (!panel.IsRectangular) return $"“{panel.Id}” is no rectangle, and only rectangular panels can have bands; give the finished outline without them";
        double Both(Surface a, Surface b) => bands.Where(x => x.Edge == a || x.Edge == b).Sum(x => x.Thickness.Value);
        return Both(Surface.Start, Surface.End) < panel.Length.Value - Tolerance.Length && Both(Surface.Near, Surface.Far) < panel.Width.Value - Tolerance.Length
            ? null
            : $"the bands of “{panel.Id}” leave nothing to saw of {Mm(panel.Length.Value)} × {Mm(panel.Width.Value)}; is the unit right?";
    }

    private Placement? Placed(PlaceEntry place, PanelEntry entry, Board board)
    {
        var along = place.Along ?? (place.Outside.Axis() == Direction.Right.Axis() ? Direction.Top : Direction.Right);
        if (along.Axis() == place.Outside.Axis())
        {
            Fail(place.At, $"a panel whose outside face looks {place.Outside.Word()} cannot run {along.Word()}; its length lies in its face");
            return null;
        }

        var width = 3 - along.Axis() - place.Outside.Axis();
        var block = place.Corner.Select((c, axis) => new Stretch(c, axis == along.Axis() ? entry.Length : axis == width ? entry.Width : board.Thickness)).ToArray();
        return PanelPlacing.At(block, place.Outside, along);
    }

    private void Joint(JointEntry entry, bool panelsAreSound)
    {
        var screw = ScrewOf(entry.Screw);
        if (!panelsAreSound) return;
        var (through, into) = (PanelOf(entry.Through), PanelOf(entry.Into));
        if (through is null || into is null || screw is null) return;
        foreach (var (panel, word) in new[] { (through, entry.Through), (into, entry.Into) })
            if (panel.Placement is null)
            {
                Fail(word.At, $"“{panel.Id}” has no place, so nothing can be screwed to it; give it a “place”");
                return;
            }

        if (assembly.HasJoint(through.Id, into.Id)) Fail(entry.At, $"“{through.Id}” and “{into.Id}” are joined already");
        else if (!assembly.Screw(through.Id, into.Id, screw, Rows(entry.Rows)))
            Fail(entry.At, $"no face of “{through.Id}” lies on a straight edge of “{into.Id}”; check the places and sizes of both");
    }

    private void Fit(Word name, FittingEntry entry, bool panelsAreSound)
    {
        var pattern = Find(hardware, entry.Hardware, "hardware");
        if (!panelsAreSound || PanelOf(entry.Panel) is not { } panel || pattern is null) return;
        assembly.Fit(new Fitting(name.Text, pattern, panel.Id, entry.Face, entry.Centre, entry.QuarterTurns));
    }

    /// <summary>The outline of some steps, or nothing where it is not sound.</summary>
    internal Contour? Outline(ImmutableArray<OutlineStep> steps)
    {
        if (steps[0].Through is not null)
        {
            Fail(steps[0].At, "an outline starts with a corner [x, y]; an arc to the start goes last");
            return null;
        }

        var at = steps[0].To.Point;
        var segments = new List<Segment>();
        foreach (var step in steps.Skip(1))
        {
            segments.Add(step.Through is { } through ? Segment.Through(at, through.Point, step.To.Point) : new Segment(at, step.To.Point));
            at = step.To.Point;
        }

        if (at.DistanceTo(steps[0].To.Point) > Tolerance.Length) segments.Add(new Segment(at, steps[0].To.Point));
        if (Contour.TryCreate(segments, out var contour) is { } fault) Fail(steps[0].At, $"this is no sound outline: {fault}");
        return contour;
    }

    /// <summary>The edge of a panel that looks somewhere, or nothing where a face does.</summary>
    internal Surface? EdgeOf(Panel panel, Direction direction, SourceSpan at)
    {
        if (panel.EdgeFacing(direction) is { } edge) return edge;
        Fail(at, $"no edge of “{panel.Id}” looks {direction.Word()}; its edges look {string.Join(", ", Surfaces.Edges.Select(e => panel.Facing(e)).Order().Select(d => d.Word()))}");
        return null;
    }

    /// <summary>Notes a fault.</summary>
    internal void Fail(SourceSpan at, string message) => diagnostics.Add(new(at, message));

    private Panel? PanelOf(Word word)
    {
        if (assembly.Find(word.Text) is { } panel) return panel;
        Fail(word.At, $"there is no panel called “{word.Text}”{Spelling.DidYouMean(word.Text, assembly.PanelIds)} Panels: {string.Join(", ", assembly.PanelIds)}.".Replace("” Panels", "”. Panels"));
        return null;
    }

    private Screw? ScrewOf(Word? word) => word is null ? screws[UsualScrew] : Find(screws, word, "screw");

    private T? Find<T>(Dictionary<string, T> among, Word word, string what) where T : class
    {
        if (among.TryGetValue(word.Text, out var found)) return found;
        var list = among.Count == 0 ? $"; the file describes no {what}" : $"{Spelling.DidYouMean(word.Text, among.Keys)} Known: {string.Join(", ", among.Keys)}.".Replace("” Known", "”. Known");
        Fail(word.At, $"there is no {what} called “{word.Text}”{(list.StartsWith(' ') ? "." : "")}{list}");
        return null;
    }

    private static RowRule Rows(RowsEntry? entry) =>
        new(entry?.EndDistance ?? RowRule.Standard.EndDistance, entry?.Pitch ?? RowRule.Standard.Pitch);

    // The dimensions of a catalogue part are nobody's line in the user's file.
    private static Screw Made(string name, ScrewEntry entry, bool bought)
    {
        Size Dimension(Size size) => bought ? Size.Default(size.Value, size.Rule) : size;
        return new Screw(name, Dimension(entry.Diameter), Dimension(entry.Length), Dimension(entry.HeadDiameter), Dimension(entry.Clearance), Dimension(entry.EdgePilot));
    }

    private static string Mm(double value) => Tape.PrintMillimetres(value, 2) + " mm";
}
