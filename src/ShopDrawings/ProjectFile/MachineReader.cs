using System.Collections.Immutable;
using System.Globalization;
using ShopDrawings.Drafting;
using ShopDrawings.Dxf;
using ShopDrawings.Kernel;
using ShopDrawings.Yaml;

namespace ShopDrawings.ProjectFile;

/// <summary>Makes machines of what is written about them, with what they leave out as in the machine they are like.</summary>
internal sealed class MachineReader(References references)
{
    private const string Usual = "router";

    /// <summary>The machines files are made for; the usual one where none is named. A fault is noted where it is written.</summary>
    public ImmutableArray<MachineProfile> Read(ImmutableArray<Word> names)
    {
        if (names.IsEmpty) names = [new Word(Usual, default)];
        var profiles = ImmutableArray.CreateBuilder<MachineProfile>();
        foreach (var name in names)
        {
            if (profiles.Any(p => p.Machine.Name == name.Text)) references.Fail(name.At, $"files for “{name.Text}” are asked for twice; leave one out");
            else if (references.Machine(name) is { } entry && Lineage(name, entry) is { } lineage && Profile(name.Text, lineage) is { } profile) profiles.Add(profile);
        }

        return profiles.ToImmutable();
    }

    // The machine, then the one it is like, then the one that is like.
    private ImmutableArray<MachineEntry>? Lineage(Word name, MachineEntry entry)
    {
        var lineage = ImmutableArray.CreateBuilder<MachineEntry>();
        HashSet<string> met = [name.Text];
        for (lineage.Add(entry); entry.Like is { } like; lineage.Add(entry))
        {
            if (!met.Add(like.Text))
            {
                references.Fail(like.At, like.Text == name.Text && lineage.Count == 1 ? $"a machine cannot be like itself; give yours a name of its own" : $"“{like.Text}” is like itself in the end; leave “like” out somewhere");
                return null;
            }

            if (references.Machine(like) is not { } next) return null;
            entry = next;
        }

        return lineage.ToImmutable();
    }

    private MachineProfile? Profile(string name, ImmutableArray<MachineEntry> lineage)
    {
        T Of<T>(Func<MachineEntry, T?> value, T usual) where T : struct => lineage.Select(value).FirstOrDefault(v => v is not null) ?? usual;
        T? Given<T>(Func<MachineEntry, Given<T>?> value) where T : class => lineage.Select(value).FirstOrDefault(v => v is not null)?.Value;
        ImmutableArray<Tool> Tools(Func<MachineEntry, ImmutableArray<Tool>?> value) => lineage.Select(value).FirstOrDefault(v => v is not null) ?? [];

        var kind = Of(e => e.Kind, MachineKind.Router);
        var kerf = lineage.Select(e => e.Kerf).FirstOrDefault(k => k is not null);
        var machine = new Machine
        {
            Name = name,
            Kind = kind,
            Tools = [.. Tools(e => e.Drills), .. Tools(e => e.Countersinks), .. Tools(e => e.Cutters), .. Tools(e => e.Engravers), .. kerf is null ? Array.Empty<Tool>() : [new Tool(ToolKind.Beam, kerf.Value)]],
            Paths = Of(e => e.Paths, CutLines.Finished),
            Corners = Of(e => e.Corners, InnerCorners.Joinery),
            FaceUp = Of(e => e.FaceUp, FaceUp.Inside),
            SecondFace = Of(e => e.SecondFace, SecondFace.TurnedOver),
            Flip = Of(e => e.Flip, FlipAxis.Length),
            Pins = Given(e => e.Pins),
            Origin = Of(e => e.Origin, Corner.LowerLeft),
            IsOriginSawn = Of(e => e.IsOriginSawn, false),
            SmallParts = Given(e => e.SmallParts),
            EngravingDepth = lineage.Select(e => e.EngravingDepth).FirstOrDefault(d => d is not null)?.Value ?? 0.3,
            NameHeight = Given(e => e.Names)?.Value,
            Thickest = Given(e => e.Thickest)?.Value,
            Bed = Given(e => e.Bed),
        };
        var unit = Of(e => e.Unit, DrawingUnit.Millimetre);
        if (!Fits(machine, lineage) || Layers(lineage) is not { } layers) return null;
        var drawing = new MachineDrawingSettings
        {
            Layers = layers, ScaleSquare = Given(e => e.ScaleSquare)?.Value, HasEdgeViews = Of(e => e.HasEdgeViews, false), IsAnnotated = Of(e => e.IsAnnotated, false), IsInches = unit == DrawingUnit.Inch,
        };
        var dxf = new DxfExporter
        {
            Release = lineage.Select(e => e.Release).FirstOrDefault(r => r is not null), Unit = unit, Style = Looks(lineage),
            Outlines = Of(e => e.InPieces, false) ? DxfOutlines.Pieces : DxfOutlines.Polylines, ChordTolerance = Given(e => e.Chords)?.Value,
        };
        var format = lineage.Select(e => e.Format).FirstOrDefault(w => w is not null);
        return new MachineProfile(machine, drawing, dxf, format?.Text ?? "dxf") { FormatAt = format?.At ?? default, Paper = Given(e => e.Paper), Programs = Given(e => e.Programs) };
    }

    // What cannot be meant together.
    private bool Fits(Machine machine, ImmutableArray<MachineEntry> lineage)
    {
        var fault =
            machine.Kind == MachineKind.Laser && !machine.Tools.Any(t => t.Kind == ToolKind.Beam) ? $"“{machine.Name}” is a laser without a “kerf”; cut ten slots across a strip, measure the pieces, share what is missing, and write that"
            : machine.Kind == MachineKind.Router && !machine.Tools.Any(t => t.Kind == ToolKind.Cutter) ? $"“{machine.Name}” is a router without “cutters”; write their diameters, the one for outlines first"
            : machine.Kind == MachineKind.Drawing && machine.Paths == CutLines.ToolCentre ? $"“{machine.Name}” is a drawing and has no tools whose way it could show; write paths: finished"
            : machine.Kind != MachineKind.Drawing && machine.SecondFace == SecondFace.SeenThrough ? $"“{machine.Name}” would make what is in the other face in this one; write second-face: turned-over or none"
            : machine.Kind != MachineKind.Laser && machine.Tools.Any(t => t.Kind == ToolKind.Beam) ? $"“{machine.Name}” is a {machine.Kind.ToString().ToLowerInvariant()} and has no kerf; a router compensates for its cutters, so leave “kerf” out"
            : machine.Tools.Where(t => t.Number is not null).GroupBy(t => t.Number).FirstOrDefault(g => g.Count() > 1) is { } twice ? string.Create(CultureInfo.InvariantCulture, $"two tools of “{machine.Name}” have number {twice.Key}; give each its own")
            : machine.Kind != MachineKind.Router && lineage.Select(e => e.Programs).FirstOrDefault(p => p is not null)?.Value is not null ? $"“{machine.Name}” is a {machine.Kind.ToString().ToLowerInvariant()}, and programs are written for routers alone; leave “programs” out"
            : machine.Pins is { } pins && pins.Distance < PinClearance(machine, pins) - Tolerance.Length
                ? $"the pins of “{machine.Name}” stand in the way of its cutter; set their middle at least {references.Print(PinClearance(machine, pins))} from the panel: half a pin and the widest cutter"
            : machine.Paths == CutLines.ToolCentre && machine.Corners != InnerCorners.Round && lineage.Select(e => e.InPieces).FirstOrDefault(p => p is not null) == true
                ? $"“{machine.Name}” would write the way into each relieved corner and back as two lines in one place; write outlines: polylines, or corners: round"
            : machine.SecondFace == SecondFace.SeenThrough && Faceless(lineage) is { } layer ? $"the layers “{layer}” of “{machine.Name}” hold both faces, and nobody can tell which; add {{face}} to their name"
            : null;
        if (fault is null) return true;
        references.Fail(lineage[0].At, fault);
        return false;
    }

    private static double PinClearance(Machine machine, LocatingPins pins) => pins.Diameter / 2 + machine.Tools.Where(t => t.Kind == ToolKind.Cutter).Select(t => t.Diameter).DefaultIfEmpty(0).Max();

    // A layer name of the user's own for what is in one face, without saying in which.
    private static string? Faceless(ImmutableArray<MachineEntry> lineage) =>
        lineage.SelectMany(e => e.Layers).FirstOrDefault(l => l.Role is Role.Bore or Role.Countersink or Role.Groove or Role.Mark && l.Name?.Contains("{face}", StringComparison.Ordinal) == false)?.Name;

    private MachineLayers? Layers(ImmutableArray<MachineEntry> lineage)
    {
        var layers = MachineLayers.Standard;
        var isSound = true;
        foreach (var entry in lineage.SelectMany(e => e.Layers).Where(l => l.Name is not null).GroupBy(l => l.Role).Select(g => g.First()))
        {
            if (MachineLayers.Fault(entry.Role, entry.Name!) is { } fault)
            {
                references.Fail(entry.At, fault);
                isSound = false;
            }
            else layers = layers.With(entry.Role, entry.Name!);
        }

        if (isSound && layers.Clash() is var (one, other))
        {
            references.Fail(lineage[0].At, $"the layer names “{one}” and “{other}” can come out alike; change one of them, or write both the same");
            return null;
        }

        return isSound ? layers : null;
    }

    private static Style Looks(ImmutableArray<MachineEntry> lineage)
    {
        var style = Style.Standard;
        foreach (var role in MachineLayers.Roles)
        {
            var looks = lineage.SelectMany(e => e.Layers).Where(l => l.Role == role).ToList();
            var pen = style.For(role);
            style = style.With(role, pen with
            {
                ColourIndex = looks.Select(l => l.Colour).FirstOrDefault(c => c is not null) ?? pen.ColourIndex,
                WidthMm = looks.Select(l => l.Weight).FirstOrDefault(w => w is not null)?.Value ?? pen.WidthMm,
            });
        }

        return style;
    }
}
