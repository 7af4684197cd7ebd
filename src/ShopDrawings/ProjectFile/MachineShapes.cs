using System.Collections.Immutable;
using ShopDrawings.Drafting;
using ShopDrawings.Dxf;
using ShopDrawings.Kernel;
using ShopDrawings.Yaml;
using Range = ShopDrawings.Yaml.Range;

namespace ShopDrawings.ProjectFile;

/// <summary>Every key of a machine and of a sheet, once: for the shipped machines and for a user's own alike.</summary>
internal static class MachineShapes
{
    private const double SquareMillimetres = 1e6;

    private static readonly NameShape Name = new();

    private static readonly ChoiceShape<bool?> YesNo = new(("true", true), ("false", false));

    private static readonly ChoiceShape<MachineKind?> Kind = new(("router", MachineKind.Router), ("laser", MachineKind.Laser), ("drawing", MachineKind.Drawing));

    private static readonly RecordShape<Given<LocatingPins>> Pins = new("the pins", f =>
    {
        var diameter = f.Required("diameter", Length("pin-diameter"), "Diameter of the pins and their bores in the table.");
        var distance = f.Required("distance", Length("pin-distance"), "From the sawn edge of the panel to their centres.");
        return new Given<LocatingPins>(new LocatingPins(diameter?.Value ?? 0, distance?.Value ?? 0));
    });

    private static readonly RecordShape<Given<SmallParts>> SmallParts = new("the small parts", f => new Given<SmallParts>(new SmallParts(
        (f.Optional("area", new NumberShape(Measure.Number, Range.NotNegative, "small-area"), "Parts of a smaller area in square metres are held; 0.1 where it is left out.")?.Value ?? 0.1) * SquareMillimetres,
        f.Optional("width", NotNegative("small-width"), "Narrower parts are held; 100 mm where it is left out.")?.Value ?? 100,
        f.Optional("tabs", Length("tab-width"), "Width of the tabs left in the outline; left out, a skin stays under the whole cut.")?.Value ?? 0,
        f.Required("thickness", Length("tab-thickness"), "Thickness of the tabs, or of the skin.")?.Value ?? 0)));

    private static readonly MappedShape<ImmutableArray<Size>, Given<WorkingArea>> Bed = new(
        new ListShape<Size>(Length("bed"), 9), (bed, _) => bed is [var x, var y]
            ? (new Given<WorkingArea>(new WorkingArea(x.Value, y.Value)), null)
            : (new Given<WorkingArea>(null), "a bed has two lengths, written [along x, along y]"));

    // ISO 216 and ASME Y14.1 (from memory), lying.
    private static readonly ChoiceShape<Given<PaperSize>> Paper = new(
        ("none", new(null)), ("A4", new(new PaperSize(297, 210))), ("A3", new(new PaperSize(420, 297))), ("A2", new(new PaperSize(594, 420))),
        ("letter", new(new PaperSize(279.4, 215.9))), ("tabloid", new(new PaperSize(431.8, 279.4))));

    private static readonly RecordShape<LayerEntry> Layer = new("a layer", f => new LayerEntry(
        default,
        f.Optional("name", new TextShape(), "Its name, of A to Z, 0 to 9 and _; {face}, {edge}, {tool} (a diameter in hundredths of a mm) and {depth} are filled in."),
        f.Optional("colour", new MappedShape<int, int?>(new CountShape(1, 255), (n, _) => (n, null)), "Colour number of the DXF format.", null, "its usual one"),
        f.Optional("weight", NotNegative("layer-weight"), "Width of its lines; 0 is the thinnest there is."),
        f.At));

    private static readonly RecordShape<ImmutableArray<LayerEntry>> Layers = new("the layers", f =>
    {
        var all = ImmutableArray.CreateBuilder<LayerEntry>();
        foreach (var role in MachineLayers.Roles)
            if (f.Optional(Word(role), Layer, $"Layers of the kind “{Word(role)}”.") is { } layer) all.Add(layer with { Role = role });
        return all.ToImmutable();
    });

    /// <summary>A machine.</summary>
    public static readonly RecordShape<MachineEntry> Machine = new("a machine", f => new MachineEntry(f.At)
    {
        Like = f.Optional("like", Name, "Name of another machine; what is left out here is as it is there."),
        Kind = f.Optional("kind", Kind, "What it does: a router drills and mills, a laser cuts through and scores, a drawing is for other programs.", null, "router"),
        Drills = f.Optional("drills", Tools(ToolKind.Drill, "a drill"), "Its drills, each a diameter, or a diameter with number and reach. A bore of any other diameter is milled with a narrower cutter.", null, "none"),
        Countersinks = f.Optional("countersinks", Tools(ToolKind.Countersink, "a countersink"), "Its countersinks, by their greatest diameters.", null, "none"),
        Cutters = f.Optional("cutters", Tools(ToolKind.Cutter, "a cutter"), "Its cutters, the one it prefers for outlines first.", null, "none"),
        Engravers = f.Optional("engraver", new MappedShape<Tool, ImmutableArray<Tool>?>(Tool(ToolKind.Engraver, "an engraver"), (t, _) => ([t], null)), "What it scribes with; without one, marks and names are left out.", null, "none"),
        EngravingDepth = f.Optional("engraving-depth", Length("engraving-depth"), "How deep it scribes; 0.3 mm where it is left out."),
        Kerf = f.Optional("kerf", NotNegative("kerf"), "Width of a laser’s cut: cut ten slots across a strip, measure the pieces, and share what is missing."),
        Paths = f.Optional("paths", new ChoiceShape<CutLines?>(("finished", CutLines.Finished), ("tool-centre", CutLines.ToolCentre)), "Lines of cuts are the finished edge, which the machine compensates for the tool, or the way of the tool’s middle, which it must not.", null, "finished"),
        Corners = f.Optional("corners", new ChoiceShape<InnerCorners?>(("round", InnerCorners.Round), ("joinery", InnerCorners.Joinery), ("relieved", InnerCorners.Relieved)), "Inner corners stay as round as the cutter; those of grooves and housings, or all of them, are cut free so that a square part fits.", null, "joinery"),
        FaceUp = f.Optional("face-up", new ChoiceShape<FaceUp?>(("inside", FaceUp.Inside), ("outside", FaceUp.Outside), ("busier", FaceUp.Busier)), "The face that lies up first; the busier has more blind bores, grooves and marks.", null, "inside"),
        SecondFace = f.Optional("second-face", new ChoiceShape<SecondFace?>(("none", SecondFace.None), ("turned-over", SecondFace.TurnedOver), ("seen-through", SecondFace.SeenThrough)), "What is blind in the other face is not made, is in a second file with the panel turned over, or is in the same file as seen through.", null, "turned-over"),
        Flip = f.Optional("flip", new ChoiceShape<FlipAxis?>(("length", FlipAxis.Length), ("width", FlipAxis.Width)), "The axis through the middle of a panel about which it is turned over.", null, "length"),
        Pins = f.Optional("pins", OrNone(Pins), "Pins in the table on that axis, beyond both ends of the panel; a panel on pins is cut out last."),
        Origin = f.Optional("origin", new ChoiceShape<Corner?>(("lower-left", Corner.LowerLeft), ("lower-right", Corner.LowerRight), ("upper-left", Corner.UpperLeft), ("upper-right", Corner.UpperRight)), "The corner of what lies on the machine from which every file counts, seen from above.", null, "lower-left"),
        IsOriginSawn = f.Optional("origin-of", new ChoiceShape<bool?>(("finished", false), ("sawn", true)), "Whether that is the corner of the finished panel, with its bands, or of the sawn one.", null, "finished"),
        SmallParts = f.Optional("small-parts", OrNone(SmallParts), "What holds small parts until they are freed by hand."),
        Names = f.Optional("names", OrNone(Length("name-height")), "Height of the panels’ names, engraved where there is room."),
        Thickest = f.Optional("thickest", OrNone(Length("thickest-board")), "The thickest board it cuts."),
        Bed = f.Optional("bed", OrNone(Bed), "What its tools reach, [along x, along y] of its files; larger parts are warned of, and drill guides are cut in pieces that fit."),
        Format = f.Optional("format", Name, "The format of its files: dxf, or one that an exporter of your own writes."),
        Release = f.Optional("release", new ChoiceShape<DxfRelease?>(("R12", DxfRelease.R12), ("R2000", DxfRelease.R2000), ("R2010", DxfRelease.R2010)), "The release of a DXF; left out, R2000, or R2010 where a text is not ASCII.", null, "R2000 or R2010"),
        Unit = f.Optional("unit", new ChoiceShape<DrawingUnit?>(("mm", DrawingUnit.Millimetre), ("in", DrawingUnit.Inch)), "The unit of its files, which also stands in their names.", null, "mm"),
        InPieces = f.Optional("outlines", new ChoiceShape<bool?>(("polylines", false), ("pieces", true)), "Outlines are closed polylines, or single lines and arcs in joined order.", null, "polylines"),
        Chords = f.Optional("chords", OrNone(ChordTolerance), "Arcs in outlines become chords that miss them by no more than this; none keeps arcs."),
        ScaleSquare = f.Optional("scale-square", OrNone(Length("scale-square")), "Side of a square beside the panel, on a layer of its own, to check the scale by."),
        HasEdgeViews = f.Optional("edge-views", YesNo, "Whether every edge that is drilled is unfolded beside the face, on layers of its own.", null, "false"),
        IsAnnotated = f.Optional("notes", YesNo, "Whether overall sizes and a table of bores stand beside the panel.", null, "false"),
        Paper = f.Optional("paper", Paper, "A sheet with frame, window and title beside the model, as a layout of the DXF; many free readers draw it over the model."),
        Programs = f.Optional("programs", OrNone(ProgramShapes.Programs), "Programs of G and M words (ISO 6983) for its control, one for each face; left out, or none, there are none."),
        Layers = f.Optional("layers", Layers, "Names, colours and line widths of layers, by the kind of machining.", [], "names of our own"),
    });

    private static readonly RecordShape<LyingEntry> Lying = new("a panel on a sheet", f => new LyingEntry(
        f.Required("panel", new NameShape(isPlace: true), "The panel."),
        f.Required("at", FeatureShapes.Pair("sheet-position", Range.Any), "The lower left corner of the sawn panel as it lies, as [x, y] from the lower left corner of the sheet."),
        f.Optional("turn", new ChoiceShape<int>(("0", 0), ("90", 1), ("180", 2), ("270", 3)), "Degrees it is turned anticlockwise, seen from above.", 0, "0"),
        f.Optional("up", new ChoiceShape<Surface>(("inside", Surface.Inside), ("outside", Surface.Outside)), "The face that lies up; nothing is ever mirrored.", Surface.Inside, "inside"),
        f.At));

    /// <summary>A sheet with panels placed on it.</summary>
    public static readonly RecordShape<SheetEntry> Sheet = new("a sheet", f => new SheetEntry(
        f.Required("board", Name, "Name of its board."),
        f.Required("length", Length("sheet-length"), "Along the grain where the board has one."),
        f.Required("width", Length("sheet-width"), "Across the length."),
        f.Required("panels", new ListShape<LyingEntry>(Lying, 500), "The panels cut from it, each where it lies."),
        f.At));

    /// <summary>The word for a kind of machining.</summary>
    public static string Word(Role role) => role switch
    {
        Role.CutOut => "cut-outs",
        Role.Bore => "bores",
        Role.Countersink => "countersinks",
        Role.Groove => "pockets",
        Role.Mark => "marks",
        Role.Score => "scores",
        Role.Name => "names",
        Role.Tab => "tabs",
        Role.Pin => "pins",
        Role.EdgeView => "edges",
        Role.EdgeBore => "edge-bores",
        Role.ScaleSquare => "scale-square",
        Role.NoTool => "no-tool",
        _ => role.ToString().ToLowerInvariant(),
    };

    private static MappedShape<Size, Given<Size>> ChordTolerance => new(Length("chord-tolerance"), (size, node) =>
        (new Given<Size>(size), size.Value is >= 0.01 and <= 100 ? null : $"{node.Described} stands where 0.01 to 100 mm are expected; 0.05 mm is finer than any router"));

    private static NumberShape Length(string rule) => new(Measure.Length, Range.Positive, rule);

    private static NumberShape NotNegative(string rule) => new(Measure.Length, Range.NotNegative, rule);

    private static MappedShape<ImmutableArray<Tool>, ImmutableArray<Tool>?> Tools(ToolKind kind, string what) =>
        new(new ListShape<Tool>(Tool(kind, what), 200), (tools, _) => (tools, null));

    // A bare diameter, or more about it.
    private static EitherShape<Tool> Tool(ToolKind kind, string what) => new(
        node => node is YamlScalar,
        new MappedShape<Size, Tool>(Length("tool-diameter"), (d, _) => (new Tool(kind, d.Value), null)),
        new RecordShape<Tool>(what, f =>
        {
            var diameter = f.Required("diameter", Length("tool-diameter"), "Its diameter.");
            var number = f.Optional("number", new MappedShape<int, int?>(new CountShape(0, 9999), (n, _) => (n, null)), "Its number in the magazine.", null, "none");
            var reach = f.Optional("reach", Length("tool-reach"), "The greatest depth it cuts.");
            return ProgramShapes.Driven(f, new Tool(kind, diameter?.Value ?? 0) { Number = number, Reach = reach?.Value });
        }));

    private static EitherShape<Given<Size>> OrNone(NumberShape shape) => OrNone((Shape<Given<Size>>)new MappedShape<Size, Given<Size>>(shape, (size, _) => (new Given<Size>(size), null)));

    private static EitherShape<Given<T>> OrNone<T>(Shape<Given<T>> shape) where T : class =>
        new(node => node is YamlScalar { Text: "none" }, new ChoiceShape<Given<T>>(("none", new Given<T>(null))), shape);
}
