using System.Collections.Immutable;
using ShopDrawings.Kernel;
using ShopDrawings.Yaml;

namespace ShopDrawings.ProjectFile;

/// <summary>Follows every reference, fills in every default and builds the assembly. Collects every fault before it gives up.</summary>
internal sealed class ProjectResolver
{
    private readonly ProjectModel model;
    private readonly LengthStyle lengths;
    private readonly List<Diagnostic> diagnostics;
    private readonly AssemblyBuilder assembly;
    private readonly References references;

    private ProjectResolver(ProjectModel model, LengthStyle lengths, List<Diagnostic> diagnostics)
    {
        (this.model, this.lengths, this.diagnostics) = (model, lengths, diagnostics);
        assembly = new AssemblyBuilder(model.Name) { PreMill = model.Banding.PreMill };
        references = new References(model, diagnostics);
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
        if (!panelsAreSound) return;
        foreach (var hole in model.Holes) Hole(hole);
        foreach (var line in model.Lines) Line(line);
    }

    private void Cabinet(CabinetEntry entry)
    {
        if (new CabinetReader(references).Read(entry) is not { } spec || diagnostics.Count > 0) return;
        foreach (var (source, message) in CabinetResolver.Resolve(spec, assembly, lengths)) Fail(source, message);
    }

    private void Panel(Word name, PanelEntry entry)
    {
        if (assembly.Find(name.Text) is not null)
        {
            Fail(name.At, $"the cabinet has a panel called “{name.Text}” already; choose another name");
            return;
        }

        if (references.Board(entry.Board) is not { } board) return;
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
        var screw = references.Screw(entry.Screw);
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
        else if (!assembly.Screw(through.Id, into.Id, screw, References.Rows(entry.Rows)))
            Fail(entry.At, assembly.CanScrew(into.Id, through.Id)
                ? $"“{into.Id}” has the face and “{through.Id}” the edge; write through: {into.Id}, into: {through.Id}"
                : $"no face of “{through.Id}” lies on a straight edge of “{into.Id}”; check the places and sizes of both");
    }

    private void Fit(Word name, FittingEntry entry, bool panelsAreSound)
    {
        var pattern = references.Hardware(entry.Hardware);
        if (!panelsAreSound || PanelOf(entry.Panel) is not { } panel || pattern is null) return;
        if (assembly.HasHardware(name.Text) || assembly.Find(name.Text) is not null)
        {
            Fail(name.At, $"a panel or another piece of hardware is called “{name.Text}” already; choose another name");
            return;
        }

        var fitting = new Fitting(name.Text, pattern, panel, entry.Face, entry.Centre, entry.QuarterTurns);
        assembly.Add(fitting.Placed);
        assembly.Write(panel.Id, fitting.Bores());
        if (panel.Placement is null) return;
        foreach (var bore in fitting.Bores().Where(b => b.Depth is null)) ThroughLinings(fitting.Id, panel, bore.At, bore.Diameter);
    }

    private void Hole(HoleEntry entry)
    {
        if (PanelOf(entry.Panel) is not { } panel || At(panel, entry.From, entry.At) is not { } at) return;
        assembly.Write(panel.Id, entry.Depth is { } depth
            ? Bore.Blind(panel.Id, entry.Face, at, entry.Diameter, depth)
            : Bore.Through(panel.Id, entry.Face, at, entry.Diameter));
        if (entry.Depth is null && panel.Placement is not null) ThroughLinings(panel.Id, panel, at, entry.Diameter);
    }

    // A hole through a panel goes on through a lining that lies against either of its faces, or as near as a back stands in its groove.
    private void ThroughLinings(string origin, Panel panel, Position at, Size diameter)
    {
        const double Reach = 1;
        foreach (var lining in assembly.Linings.Select(id => assembly.Find(id)!).Where(l => l.Placement!.Inwards.Axis() == panel.Placement!.Inwards.Axis()))
            foreach (var beyond in new[] { -Reach, panel.Thickness.Value + Reach })
            {
                var (box, p) = (lining.Box, lining.Placement!.ToPanel(panel.Placement!.ToAssembly(new Point3(at.X.Value, at.Y.Value, beyond))));
                if (p.X <= 0 || p.Y <= 0 || p.X >= box.Max.X || p.Y >= box.Max.Y || p.Z <= -Tolerance.Length || p.Z >= box.Max.Z + Tolerance.Length) continue;
                assembly.Write(lining.Id, Bore.Through(origin, Surface.Inside, lining.OnFace(panel.ToAssembly(at)), diameter));
            }
    }

    private void Line(LineEntry entry)
    {
        if (PanelOf(entry.Panel) is not { } panel || At(panel, entry.From, entry.At) is not { } from || At(panel, entry.To, entry.At) is not { } to) return;
        if (from.Point.DistanceTo(to.Point) <= Tolerance.Length) Fail(entry.At, "both ends of the line are one place; write two different ends");
        else assembly.Write(panel.Id, new Mark(panel.Id, entry.Face, from, to));
    }

    // A place by its distances from two edges, wherever these are in the panel's frame.
    private Position? At(Panel panel, ImmutableArray<(Direction Edge, Size Distance)> from, SourceSpan source)
    {
        Size? x = null, y = null;
        foreach (var (direction, distance) in from)
        {
            if (EdgeOf(panel, direction, source) is not { } edge) return null;
            if (edge is Surface.Start or Surface.End) x = edge == Surface.Start ? distance : panel.Length - distance;
            else y = edge == Surface.Near ? distance : panel.Width - distance;
        }

        return new Position(x!, y!);
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
        Fail(word.At, $"there is no panel called “{word.Text}”{References.Hint(word.Text, assembly.PanelIds, "there are none")}");
        return null;
    }

    /// <summary>A length in mm, printed in the file's way.</summary>
    internal string Print(double millimetres) => lengths.Describe(millimetres);
}
