using System.Collections.Immutable;
using ShopDrawings.Kernel;
using ShopDrawings.Yaml;

namespace ShopDrawings.ProjectFile;

/// <summary>Follows every reference, fills in every default and builds the assembly. Collects every fault before it gives up.</summary>
internal sealed class ProjectResolver
{
    private const string UsualScrew = "wood-4x50";
    private static readonly string[] CabinetPanels = ["left-side", "right-side", "bottom", "top", "back"];

    private readonly ProjectModel model;
    private readonly LengthStyle lengths;
    private readonly List<Diagnostic> diagnostics;
    private readonly AssemblyBuilder assembly;
    private readonly Dictionary<string, Board> boards = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Screw> screws = new(StringComparer.Ordinal);
    private readonly Dictionary<string, HardwarePattern> hardware = new(StringComparer.Ordinal);

    private ProjectResolver(ProjectModel model, LengthStyle lengths, List<Diagnostic> diagnostics)
    {
        (this.model, this.lengths, this.diagnostics) = (model, lengths, diagnostics);
        assembly = new AssemblyBuilder(model.Name);
        foreach (var (name, screw) in Catalogue.Screws) screws[name.Text] = Made(name.Text, screw, bought: true);
        foreach (var (name, screw) in model.Screws) screws[name.Text] = Made(name.Text, screw, bought: false);
        foreach (var (name, board) in model.Boards)
            boards[name.Text] = Board.Create(name.Text, board.Kind, board.Thickness.As($"{name.Text}-thickness"), board.Label, board.Grain, board.Density?.Value);
        foreach (var (name, part) in model.Hardware)
            hardware[name.Text] = new HardwarePattern(name.Text, part.Length, part.Width, part.Height, part.Bores);
    }

    /// <summary>The assembly and what the user says about the checks; nothing where a fault was added to the diagnostics.</summary>
    public static (Assembly Assembly, CheckSettings Checks)? Resolve(ProjectModel model, LengthStyle lengths, List<Diagnostic> diagnostics)
    {
        var resolver = new ProjectResolver(model, lengths, diagnostics);
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
        foreach (var (source, message) in CarcassResolver.Resolve(carcass, assembly, lengths)) Fail(source == default ? entry.At : source, message);
    }

    private CarcassBack? Back(BackEntry entry, Board? around)
    {
        if (Find(boards, entry.Board, "board") is not { } board || around is null) return null;
        foreach (var (key, given) in new[] { ("groove-depth", entry.GrooveDepth), ("groove-play", entry.GroovePlay), ("end-play", entry.EndPlay) })
            if (given is not null && entry.Fit == BackFit.Between) Fail(given.Source, $"“{key}” belongs to a back in a groove, and this one sits between the panels; leave it out, or write fit: groove");
        var inset = entry.Inset ?? (entry.Fit == BackFit.Groove ? Size.Default(10, "usual-back-inset") : Size.Zero);
        var depth = entry.GrooveDepth ?? Size.Smallest(Size.Default(8, "usual-groove-depth"), around.Thickness / 2).As("groove-depth");
        return new CarcassBack(board, entry.Fit, inset, depth, entry.GroovePlay ?? Size.Default(0.3, "usual-groove-play"), entry.EndPlay ?? Size.Default(1, "usual-end-play"));
    }

    private ImmutableArray<CarcassShelf> Shelves(CabinetEntry entry, Board? usual)
    {
        var even = Enumerable.Range(1, entry.Shelves.Even).Select(i => new ShelfEntry(null, null, null, Size.Zero, entry.Shelves.At));
        var shelves = ImmutableArray.CreateBuilder<CarcassShelf>();
        var taken = new HashSet<string>(CabinetPanels, StringComparer.Ordinal);
        foreach (var (shelf, number) in even.Concat(entry.Shelves.Each).Select((s, i) => (s, i + 1)))
        {
            var id = shelf.Name?.Text ?? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"shelf-{number}");
            if (!taken.Add(id))
                Fail(shelf.Name?.At ?? shelf.At, CabinetPanels.Contains(id)
                    ? $"“{id}” is kept for the cabinet's own panel; give the shelf another name"
                    : shelf.Name is null ? $"this shelf would be called “{id}” by its place in the list, as another is; give it a name" : $"two shelves are called “{id}”; give one another name");
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
                Fail(entry.Outline[0].At, $"the outline reaches from {Print(box.Min.X)}, {Print(box.Min.Y)} to {Print(box.Max.X)}, {Print(box.Max.Y)}; it must reach from 0, 0 to the panel's length and width, {Print(entry.Length.Value)}, {Print(entry.Width.Value)}");
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

    private string? Overbanded(Panel panel, List<EdgeBand> bands)
    {
        if (bands.Count == 0) return null;
        if (!panel.IsRectangular) return $"“{panel.Id}” is no rectangle, and only rectangular panels can have bands; give the finished outline without them";
        double Both(Surface a, Surface b) => bands.Where(x => x.Edge == a || x.Edge == b).Sum(x => x.Thickness.Value);
        return Both(Surface.Start, Surface.End) < panel.Length.Value - Tolerance.Length && Both(Surface.Near, Surface.Far) < panel.Width.Value - Tolerance.Length
            ? null
            : $"the bands of “{panel.Id}” leave nothing to saw of {Print(panel.Length.Value)} × {Print(panel.Width.Value)}; is the unit right?";
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

        if (through == into) Fail(entry.Into.At, "a panel cannot be screwed to itself");
        else if (assembly.HasJoint(through.Id, into.Id)) Fail(entry.At, $"screws go from “{through.Id}” into “{into.Id}” already, by the cabinet or an earlier joint; leave this one out");
        else if (!assembly.Screw(through.Id, into.Id, screw, Rows(entry.Rows)))
            Fail(entry.At, assembly.CanScrew(into.Id, through.Id)
                ? $"“{into.Id}” has the face and “{through.Id}” the edge; write through: {into.Id}, into: {through.Id}"
                : $"no face of “{through.Id}” lies on a straight edge of “{into.Id}”; check the places and sizes of both");
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
            var to = step.To.Point;
            if (at.DistanceTo(to) <= Tolerance.Length)
            {
                Fail(step.At, "this corner is the same place as the one before it; leave one out");
                return null;
            }

            if (step.Through is { } middle && (middle.Point.DistanceTo(at) <= Tolerance.Length || middle.Point.DistanceTo(to) <= Tolerance.Length || IsBeyond(at, middle.Point, to)))
            {
                Fail(step.At, "the point an arc goes through must lie between its ends, and not in line with them beyond one; write another point, or the corner alone");
                return null;
            }

            segments.Add(step.Through is { } through ? Segment.Through(at, through.Point, to) : new Segment(at, to));
            at = to;
        }

        if (at.DistanceTo(steps[0].To.Point) > Tolerance.Length) segments.Add(new Segment(at, steps[0].To.Point));
        if (Contour.TryCreate(segments, out var contour) is { } fault) Fail(steps[0].At, $"this is no sound outline: {fault}");
        return contour;
    }

    // An arc through a point in line with its ends but not between them would be endless.
    private static bool IsBeyond(Point2 start, Point2 middle, Point2 end)
    {
        var (a, b) = (middle - start, end - middle);
        return a.Dot(b) < 0 && Math.Abs(a.Cross(b)) < 1e-4 * a.Length * b.Length;
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
        Fail(word.At, $"there is no panel called “{word.Text}”{Hint(word.Text, assembly.PanelIds, "there are none")}");
        return null;
    }

    private static string Hint(string word, IEnumerable<string> known, string none) =>
        !known.Any() ? $"; {none}" : Spelling.Nearest(word, known) is { } near ? $"; did you mean “{near}”?" : $"; known are {string.Join(", ", known)}";

    private Screw? ScrewOf(Word? word) => word is null ? screws[UsualScrew] : Find(screws, word, "screw");

    private T? Find<T>(Dictionary<string, T> among, Word word, string what) where T : class
    {
        if (among.TryGetValue(word.Text, out var found)) return found;
        Fail(word.At, $"there is no {what} called “{word.Text}”{Hint(word.Text, among.Keys, $"the file describes no {what}")}");
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

    /// <summary>A length in mm, printed in the file's way.</summary>
    internal string Print(double millimetres) => lengths.Describe(millimetres);
}
