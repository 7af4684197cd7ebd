using System.Collections.Immutable;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;
using ShopDrawings.Yaml;
using CuttingProgress = ShopDrawings.Cutting.CuttingProgress;

namespace ShopDrawings.ProjectFile;

/// <summary>Follows every reference, fills in every default and builds the assembly. Collects every fault before it gives up.</summary>
internal sealed class ProjectResolver
{
    private readonly ProjectModel model;
    private readonly LengthStyle lengths;
    private readonly List<Diagnostic> diagnostics;
    private readonly AssemblyBuilder assembly;
    private readonly References references;
    private readonly List<(Panel Panel, Bore Bore, SourceSpan At)> drilledInPlace = [];

    private ProjectResolver(ProjectModel model, LengthStyle lengths, List<Diagnostic> diagnostics)
    {
        (this.model, this.lengths, this.diagnostics) = (model, lengths, diagnostics);
        assembly = new AssemblyBuilder(model.Name) { PreMill = model.Banding.PreMill };
        references = new References(model, lengths, diagnostics);
    }

    /// <summary>The design; nothing where a fault was added to the diagnostics.</summary>
    public static Design? Resolve(ProjectModel model, LengthStyle lengths, List<Diagnostic> diagnostics, IProgress<CuttingProgress>? progress, CancellationToken stop)
    {
        var resolver = new ProjectResolver(model, lengths, diagnostics);
        resolver.Build();
        var machines = new MachineReader(resolver.references).Read(model.MachineFiles);
        var stock = new CuttingReader(resolver.references, lengths).Read(model.Stock, model.Cutting);
        var guides = model.Guides is { } entry ? resolver.Guides(entry) : null;
        if (diagnostics.Count > 0) return null;
        // How bores are made is the shop's habit, which only the finished assembly knows.
        var assembly = resolver.assembly.Build(model.Methods);
        var sheets = new SheetReader(resolver.references, assembly).Read(model.Sheets);
        if (diagnostics.Count > 0) return null;
        var cutting = CuttingPlanner.Plan(assembly, stock, sheets.SelectMany(s => s.Panels).Select(p => p.Panel.Id), progress, stop);
        foreach (var name in model.Sheets.Select(s => s.Name).Where(n => cutting.Any(c => c.Plan?.Sheets.Any(s => c.NameOf(s) == n.Text) == true)))
            resolver.Fail(name.At, $"a sheet of the stock is called “{name.Text}” too; choose another name");
        if (diagnostics.Count > 0) return null;
        var limits = model.Checks.Limits.ToImmutableDictionary(l => l.Limit, l => l.Value);
        var checks = new CheckSettings(limits, model.Checks.Waivers.ToImmutableDictionary(w => w.Rule, w => w.Reason));
        var drawings = model.Drawings.Of(lengths.IsInches);
        return new Design(assembly, checks, lengths)
        {
            Banding = model.Banding,
            Drawings = drawings,
            Labels = model.Labels.Of(drawings.Sheets.Standard == DrawingStandard.Asme),
            Templates = model.Templates.Of(drawings.Sheets.Standard),
            Guides = guides is var (settings, profile) ? GuideJob.Of(assembly, settings, profile, lengths) : null,
            Cutting = cutting,
            Machining = [.. machines.Select(m => new MachineJob(m, MachiningPlanner.Plan(assembly.Panels, [.. sheets, .. CuttingPlanner.Sheets(assembly, cutting)], m.Machine, lengths)))],
        };
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
        if (diagnostics.Count == 0) assembly.Fasten();
        DrilledInPlace();
    }

    private (GuideSettings Settings, MachineProfile Profile)? Guides(GuidesEntry entry)
    {
        var (board, profiles) = (references.Board(entry.Board), new MachineReader(references).Read([entry.Machine]));
        if (board is null || profiles.IsEmpty) return null;
        if (profiles[0].Machine.Kind == MachineKind.Drawing)
        {
            Fail(entry.Machine.At, $"“{entry.Machine.Text}” only draws: nothing would be made good for a kerf or a cutter; name a laser or a router");
            return null;
        }

        // Parts bear words of their own.
        var machine = profiles[0].Machine with { NameHeight = null };
        return (new GuideSettings(entry.Choice, board, machine, [.. entry.Bushes.Select(b => new GuideBush(b.Bit.Value, b.Outside.Value))], entry.Clearance?.Value ?? GuideSettings.UsualClearance, entry.Fit?.Value ?? GuideSettings.UsualFit), profiles[0]);
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
            if (new OpeningReader(panel.Id, Fail).Outline(entry.Outline) is not { } outline) return;
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
        var rule = references.Joint(entry.Joint, new JointRule(references.UsualScrew, RowRule.Standard));
        if (!panelsAreSound) return;
        var (through, into) = (PanelOf(entry.Through), PanelOf(entry.Into));
        if (through is null || into is null || rule is null) return;
        foreach (var (panel, word) in new[] { (through, entry.Through), (into, entry.Into) })
            if (panel.Placement is null)
            {
                Fail(word.At, $"“{panel.Id}” has no place, so nothing can be joined to it; give it a “place”");
                return;
            }

        if (through == into) Fail(entry.Into.At, "a panel cannot be joined to itself");
        else if (assembly.HasJoint(through.Id, into.Id)) Fail(entry.At, $"“{through.Id}” and “{into.Id}” are joined already, by the cabinet or an earlier joint; leave this one out");
        else if (!assembly.Join(through.Id, into.Id, rule))
            Fail(entry.At, assembly.CanJoin(into.Id, through.Id)
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

        if ((entry.At ?? At(panel, entry.From, entry.Source)) is not { } at) return;
        var fitting = new Fitting(name.Text, pattern, panel, entry.Face, at, entry.QuarterTurns);
        assembly.Add(fitting.Placed);
        foreach (var feature in fitting.Features()) WriteThrough(panel, feature);
    }

    private void Hole(HoleEntry entry)
    {
        if (PanelOf(entry.Panel) is not { } panel || At(panel, entry.From, entry.At) is not { } at) return;
        var bore = entry.Depth is { } depth
            ? Bore.Blind(panel.Id, entry.Face, at, entry.Diameter, depth)
            : Bore.Through(panel.Id, entry.Face, at, entry.Diameter);
        WriteThrough(panel, Made(panel, bore, entry.Method));
    }

    /// <summary>A bore made as its own key says, or as the project's methods do where it has none.</summary>
    internal Bore Made(Panel panel, Bore bore, MethodEntry? entry)
    {
        if (entry is null) return bore;
        var made = bore with { Method = entry.Method };
        if (entry.Method == BoreMethod.InPlace) drilledInPlace.Add((panel, made, entry.At));
        return made;
    }

    // Only when every hole is written is it known what lies before a bore.
    private void DrilledInPlace()
    {
        var holes = new ThroughHoles(assembly.Panels);
        foreach (var (panel, bore, at) in drilledInPlace.Where(b => holes.Before(b.Panel, b.Bore).IsEmpty))
            Fail(at, panel.Placement is null
                ? $"“{panel.Id}” has no place, so no panel lies before this bore and it cannot be drilled in place; write marked"
                : "no panel has a hole this wide on the axis of this bore where it begins, so it cannot be drilled in place; write marked, or drill the panel before it");
    }

    // What goes through a panel goes on through a lining that lies against either of its faces, or as near as a back stands in its groove.
    private void WriteThrough(Panel panel, Feature feature)
    {
        const double Reach = 1;
        assembly.Write(panel.Id, feature);
        if (panel.Placement is not { } placement) return;
        foreach (var lining in assembly.Linings.Select(id => assembly.Find(id)!).Where(l => l.Placement!.Inwards.Axis() == placement.Inwards.Axis()))
            foreach (var beyond in new[] { -Reach, panel.Thickness.Value + Reach })
            {
                Point3 ToLining(Point2 p) => lining.Placement!.ToPanel(placement.ToAssembly(new Point3(p.X, p.Y, beyond)));
                if (ToLining(default).Z is var z && (z <= -Tolerance.Length || z >= lining.Thickness.Value + Tolerance.Length)) continue;
                if (OnLining(panel, feature, lining, p => ToLining(p) is var q ? new Point2(q.X, q.Y) : default) is { } opening) assembly.Write(lining.Id, opening);
            }
    }

    // The bore or the opening that a feature through a panel becomes in a lining, or nothing where it is not through or misses the lining.
    private static Feature? OnLining(Panel panel, Feature feature, Panel lining, Func<Point2, Point2> map)
    {
        const double ArcTolerance = 0.01;
        switch (feature)
        {
            case Bore { Depth: null } bore:
                var at = map(bore.At.Point);
                var isInside = IsInside(lining.Outline, at) && !lining.Features.OfType<CutOut>().Any(c => c.Outline.Contains(at));
                return !isInside ? null : Bore.Through(bore.Origin, Surface.Inside, lining.OnFace(panel.ToAssembly(bore.At)), bore.Diameter);
            case CutOut cutOut:
                var outline = cutOut.Outline.Mapped(map, panel.Placement!.Inwards != lining.Placement!.Inwards);
                var meets = PolygonOperations.RegionOf(lining.Outline, ArcTolerance).And(PolygonOperations.RegionOf(outline, ArcTolerance)).Pieces.Any();
                return meets ? new CutOut(cutOut.Origin, outline, cutOut.Given) : null;
            default:
                return null;
        }
    }

    private static bool IsInside(Contour outline, Point2 point) => outline.Contains(point) && outline.DistanceTo(point) > Tolerance.Length;

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
