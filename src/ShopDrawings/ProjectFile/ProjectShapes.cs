using System.Collections.Immutable;
using ShopDrawings.Kernel;
using ShopDrawings.Yaml;
using static ShopDrawings.ProjectFile.FeatureShapes;
using Range = ShopDrawings.Yaml.Range;

namespace ShopDrawings.ProjectFile;

/// <summary>Every key of a project file, once.</summary>
internal static class ProjectShapes
{
    private const double ThickestBoard = 80;
    private const string MethodHelp = "How it is made: by the machine; marked and drilled; drilled in place through the hole of the panel before it; transferred from a part that lies fitted on it; or given, as in a part bought bored. As the project's “methods” say where it is left out.";
    private static readonly TextShape Text = new();
    private static readonly NameShape Name = new();
    private static readonly NameShape PanelName = new(isPlace: true);
    private static readonly ChoiceShape<bool> YesNo = new(("yes", true), ("no", false));
    private static readonly ChoiceShape<int> Turn = new(("0", 0), ("90", 1), ("180", 2), ("270", 3));
    private static readonly ChoiceShape<Direction> Towards = new([.. Enum.GetValues<Direction>().Select(d => (d.Word(), d))]);

    private static readonly MappedShape<BoreMethod, MethodEntry> OwnMethod = new(Methods(Enum.GetValues<BoreMethod>()), (method, node) => (new MethodEntry(method, node.At), null));

    private static readonly RecordShape<DrillingHabit> Drilling = new("the methods", "a group like “faces: marked”", f => new DrillingHabit(
        f.Optional("faces", Methods(BoreMethod.Machined, BoreMethod.Marked), "Bores in faces: machined, or marked and drilled by hand; marked ones are not in machine files.", DrillingHabit.Standard.Faces, DrillingHabit.Standard.Faces.Word()),
        f.Optional("edges", Methods(BoreMethod.Machined, BoreMethod.Marked, BoreMethod.InPlace),
            "Bores in edges: machined, marked and drilled by hand, or drilled in place through the hole that lies before them; in-place marks those with no hole before them.", DrillingHabit.Standard.Edges, DrillingHabit.Standard.Edges.Word())));

    private static readonly Shape<BoardEntry> Board = new MappedShape<BoardEntry, BoardEntry>(new RecordShape<BoardEntry>("a board", f => new BoardEntry(
        f.Required("kind", new ChoiceShape<BoardKind>([.. Enum.GetValues<BoardKind>().Select(k => (k.ToString().ToLowerInvariant(), k))]), "What it is made of."),
        f.Required("thickness", Positive("board-thickness"), "Actual, measured thickness. The label is not enough: 3/4 in board may measure 18 mm."),
        f.Optional("label", Text, "What the shop calls it, such as 3/4 in.", "", "nothing"),
        f.Optional("grain", new MappedShape<bool, bool?>(YesNo, (v, _) => (v, null)), "Whether its faces have a direction that panels follow.", null, "yes for plywood, else no"),
        f.Optional("density", new NumberShape(Measure.Density, Range.Positive, "density"), "Density; left out, the usual one of its kind."))),
        (board, _) => (board, board.Thickness.Value <= ThickestBoard ? null : $"a board {Tape.PrintMillimetres(board.Thickness.Value, 1)} mm thick is thicker than any; is the unit of its thickness right?"));

    private static readonly Shape<JointRuleEntry> JointRule = new EitherShape<JointRuleEntry>(
        node => node is YamlScalar,
        new MappedShape<Word, JointRuleEntry>(Name, (name, node) => (new JointRuleEntry(name, null, null, null, null, null, null, null, node.At), null)),
        new RecordShape<JointRuleEntry>("a joint", f => new JointRuleEntry(
            f.Optional("fastener", Name, "Name of the screw, connector, dowel, cam or bracket; none where glue or a housing alone holds."),
            f.Optional("beside", Name, "Name of a second fastener 32 mm beside each towards the middle, such as the dowels of cams."),
            f.Optional("housing", Positive("housing"), "Depth of a groove, or a rabbet at the end of a panel, that the held panel sits in; its size grows by it."),
            f.Optional("housing-play", NotNegative("housing-play"), "How much wider the housing is than the board is thick; 0 where it is left out."),
            f.Optional("sunk", NotNegative("sunk"), "Screws get a countersunk seat, so that the head lies this far below the face; 0 is flush."),
            f.Optional("face", new MappedShape<Surface, Surface?>(Face, (v, _) => (v, null)), "The face of the held panel that cams and brackets sit on.", null, "the lower one of what lies, the inside of what stands"),
            f.Optional("end-distance", Positive("end-distance"), "From each end of the held panel to the first and last fastener; 50 mm where it is left out."),
            f.Optional("pitch", new NumberShape(Measure.Length, Range.Positive, "largest-pitch", 10), "Largest distance between two fasteners, at least 10 mm; 150 mm where it is left out."),
            f.At)));

    private static readonly RecordShape<CornersEntry> Corners = new("the corners", f => new CornersEntry(
        f.Optional("top", JointRule, "Both sides and the top."),
        f.Optional("bottom", JointRule, "Both sides and the bottom."),
        f.Optional("top-left", JointRule, "The left side and the top."),
        f.Optional("top-right", JointRule, "The right side and the top."),
        f.Optional("bottom-left", JointRule, "The left side and the bottom."),
        f.Optional("bottom-right", JointRule, "The right side and the bottom."),
        f.Optional("shelves", JointRule, "Fixed shelves and what they stand between."),
        f.Optional("dividers", JointRule, "Dividers and what they stand between.")));

    private static readonly RecordShape<BackEntry> Back = new("the back", f => new BackEntry(
        f.Required("board", Name, "Name of its board."),
        f.Optional("fit", new ChoiceShape<BackFit>(("groove", BackFit.Groove), ("between", BackFit.Between), ("within-sides", BackFit.WithinSides), ("behind", BackFit.Behind)),
            "How it sits: in a groove all round; between sides, top and bottom; within the sides and running past top and bottom; behind all four.", BackFit.Groove, "groove"),
        f.Optional("inset", NotNegative("back-inset"), "From the rear edge of the sides to the groove, or to the back; 10 mm to a groove, else 0, where it is left out."),
        f.Optional("groove-depth", Positive("groove-depth"), "Depth of the groove; 8 mm, at most half the board, where it is left out."),
        f.Optional("groove-play", NotNegative("groove-play"), "How much wider the groove is than the back is thick; 0.3 mm where it is left out."),
        f.Optional("end-play", NotNegative("end-play"), "Left free between the back and the bottom of the groove on each side; 1 mm where it is left out."),
        f.Optional("screw", Name, "Name of the screw that goes through the back; the longest of the cabinet screw's diameter that reaches at most 30 mm further where it is left out."),
        f.At));

    private static readonly RecordShape<ShelfEntry> Shelf = new("a shelf", f => new ShelfEntry(
        f.Optional("name", Name, "Its name; shelf-1, shelf-2 … in the order of the list where it is left out."),
        f.Optional("board", Name, "Name of its board; the cabinet's where it is left out."),
        f.Optional("top", Positive("shelf-height"), "Height of its upper face above the lower edge of the cabinet; shelves without one are spaced evenly."),
        f.Optional("front-inset", NotNegative("front-inset"), "How far its front edge stands behind the front.", Size.Zero, "0"),
        f.At));

    private static readonly Shape<ShelvesEntry> Shelves = new EitherShape<ShelvesEntry>(
        node => node is YamlScalar,
        new MappedShape<int, ShelvesEntry>(new CountShape(0, 50), (count, node) => (new ShelvesEntry(count, [], node.At), null)),
        new MappedShape<ImmutableArray<ShelfEntry>, ShelvesEntry>(new ListShape<ShelfEntry>(Shelf, 50), (each, node) => (new ShelvesEntry(0, each, node.At), null)));

    /// <summary>The schema's name for a bay, which may hold bays.</summary>
    public const string BayReference = "bay";

    private static readonly RecordShape<LooseShelvesEntry> Loose = new("the loose shelves", f => new LooseShelvesEntry(
        f.Required("count", new CountShape(0, 50), "How many shelves are cut; the rows are drilled from end to end."),
        f.Optional("board", Name, "Name of their board; the cabinet's where it is left out."),
        f.Optional("pin", Name, "Name of the pin; pin-5 where it is left out."),
        f.Optional("set-back", Positive("pin-set-back"), "From the front of the bay to the first row; 37 mm where it is left out."),
        f.Optional("from-ends", Positive("pin-end-distance"), "From floor and ceiling of the bay to the first and last hole; 96 mm where it is left out."),
        f.Optional("play", NotNegative("shelf-play"), "Left free at each end of a shelf; 1 mm where it is left out."),
        f.Optional("front-inset", NotNegative("front-inset"), "How far a shelf stands behind the front; 5 mm where it is left out."),
        f.At));

    private static readonly RecordShape<TwoPartEntry> TwoPart = new("a catch or latch", f => new TwoPartEntry(
        f.Required("body", Name, "Name of the hardware of the body."),
        f.Required("keeper", Name, "Name of the hardware of the keeper.")));

    private static readonly RecordShape<HandleEntry> Handle = new("a handle", f => new HandleEntry(
        f.Required("hardware", Name, "Name of the hardware."),
        f.Optional("from-edge", Positive("handle-edge-distance"), "From the edge that opens to the middle of a door's handle; 40 mm where it is left out. A drawer's is in the middle."),
        f.Optional("from-top", Positive("handle-top-distance"), "From the upper edge of the front to the middle of the handle."),
        f.Optional("from-bottom", Positive("handle-bottom-distance"), "From the lower edge of the front to it; left out both, it is in the middle."),
        f.At));

    private static readonly ChoiceShape<DoorMount> Mount = new(("overlay", DoorMount.Overlay), ("half-overlay", DoorMount.HalfOverlay), ("inset", DoorMount.Inset));

    private const string MountHelp = "Over the front edges, half of those shared with the neighbour; over half of all upright edges; or between the panels.";

    private static readonly RecordShape<SlidingShelfEntry> Sliding = new("a sliding shelf", f => new SlidingShelfEntry(
        Slides(f, "slides, runners and shelf"),
        f.Optional("board", Name, "Name of the board of shelf and runners; the cabinet's where it is left out."),
        f.Optional("runner-height", Positive("runner-height"), "Height of the two runners that stand on the slides; 70 mm where it is left out."),
        f.Optional("above-floor", NotNegative("above-floor"), "From the floor of the bay to the runners; 10 mm where it is left out."),
        f.Optional("beyond", new RecordShape<BeyondEntry>("what reaches beyond the slides", b => new BeyondEntry(
            b.Optional("shelf-front", NotNegative("shelf-overhang"), "The shelf at the front.", Size.Zero, "0"),
            b.Optional("shelf-back", NotNegative("shelf-overhang"), "The shelf behind.", Size.Zero, "0"),
            b.Optional("runner-front", NotNegative("runner-overhang"), "The runners at the front.", Size.Zero, "0"),
            b.Optional("runner-back", NotNegative("runner-overhang"), "The runners behind.", Size.Zero, "0"))), "How far shelf and runners reach beyond the slides; left out, all are as long as the slides."),
        f.Optional("latch", TwoPart, "Holds it closed against vibration: the body on the shelf beside its right edge, the keeper on the panel there."),
        f.At));

    private static readonly RecordShape<DrawersEntry> Drawers = new("the drawers", f => new DrawersEntry(
        f.Optional("count", new MappedShape<int, int?>(new CountShape(1, 20), (n, _) => (n, null)), "How many, all equally high.", null, "as many as heights"),
        f.Optional("heights", new ListShape<Size?>(new EitherShape<Size?>(
            node => node is YamlScalar { Text: "rest" },
            new ChoiceShape<Size?>(("rest", null)),
            new MappedShape<Size, Size?>(Positive("front-height"), (height, _) => (height, null))), 20), "Height of each front from the lowest up; rest shares what is left.", [], "all equal"),
        Slides(f, "slides and boxes"),
        f.Optional("board", Name, "Name of the board of the boxes; the cabinet's where it is left out."),
        f.Required("bottom", Name, "Name of the board of their bottoms."),
        f.Optional("bottom-fit", new ChoiceShape<bool>(("groove", false), ("under", true)), "The bottom sits in a groove of all four sides, or lies under them.", false, "groove"),
        f.Optional("joint", JointRule, "How the boxes are joined; screws where it is left out."),
        f.Optional("front", Name, "Name of the board of the fronts; that of the boxes where it is left out."),
        f.Optional("mount", Mount, MountHelp, DoorMount.Overlay, "overlay"),
        f.Optional("reveal", NotNegative("reveal"), "From the outside of the carcass to the fronts; 1.5 mm where it is left out."),
        f.Optional("gap", NotNegative("gap"), "Between two fronts, and around fronts between the panels; 3 mm, or 2 mm between the panels, where it is left out."),
        f.Optional("bands", Positive("band-thickness"), "Thickness of the band on all four edges of the fronts."),
        f.Optional("handle", Handle, "On each front."),
        f.At));

    private static readonly RecordShape<DoorsEntry> Doors = new("the doors", f => new DoorsEntry(
        f.Required("board", Name, "Name of what they are made of; a bought door is a board of its own thickness."),
        f.Optional("hang", new ChoiceShape<Hanging>(("left", Hanging.Left), ("right", Hanging.Right), ("pair", Hanging.Pair)), "One hinged on the left or right, or a pair.", Hanging.Pair, "pair"),
        f.Optional("mount", Mount, MountHelp, DoorMount.Overlay, "overlay"),
        f.Optional("width", Positive("door-width"), "Actual width of one door; left out, it follows from the cabinet."),
        f.Optional("height", Positive("door-height"), "Actual height of one door; left out, it follows from the cabinet."),
        f.Optional("module", new RecordShape<DoorModuleEntry>("a module", m => new DoorModuleEntry(
            m.Optional("width", Positive("module-width"), "Width of the grid, gaps included."),
            m.Optional("height", Positive("module-height"), "Height of the grid, gaps included."))), "The grid a bought door is made for; a cabinet without a width or height of its own takes it from here."),
        f.Optional("reveal", NotNegative("reveal"), "From the outside of the carcass to the doors; 1.5 mm where it is left out."),
        f.Optional("gap", NotNegative("gap"), "Between two doors, and around doors between the panels; 3 mm, or 2 mm between the panels, where it is left out."),
        f.Optional("recess", NotNegative("door-recess"), "How far doors between the panels stand behind the front; 0 where it is left out."),
        f.Optional("hinge", Name, "Name of the hinge; cup-35 where it is left out."),
        f.Optional("hinges", new MappedShape<int, int?>(new CountShape(2, 9), (n, _) => (n, null)), "Number of hinges of each door.", null, "by its mass"),
        f.Optional("cups", new ListShape<Size>(Positive("cup-height"), 9), "Of doors that come bored: each cup's centre from the lower edge. Plates follow, and shelves without a height, rows and slides give way.", [], "bored here"),
        f.Optional("bands", Positive("band-thickness"), "Thickness of the band on all four edges."),
        f.Optional("handle", Handle, "On each door, upright."),
        f.Optional("catch", TwoPart, "Holds each door closed: the body under the panel above the opening, the keeper on the back of the door."),
        f.Optional("centre-strip", new RecordShape<StripEntry>("a centre strip", m => new StripEntry(
            m.Required("board", Name, "Name of its board."),
            m.Optional("width", Positive("strip-width"), "Its width.", Size.Default(40, "strip-width"), "40 mm"))), "A strip on the back of the right-hand door that covers the gap of a pair."),
        f.Optional("gasket", Positive("gasket-thickness"), "Thickness, when closed, of a soft strip all round the opening; the doors stand that far off the carcass."),
        f.Optional("lining", Name, "Name of a sheet on the back of each door, inside the opening and clear of the hinges."),
        f.At));

    private static readonly RecordShape<LiningEntry> Lining = new("a lining", f => new LiningEntry(
        f.Required("board", Name, "Name of the sheet it is cut from."),
        f.Required("faces", new ListShape<Direction>(new ChoiceShape<Direction>(
            ("left", Direction.Left), ("right", Direction.Right), ("back", Direction.Back), ("bottom", Direction.Bottom), ("top", Direction.Top)), 5), "The sides of the bay it covers."),
        f.Optional("screw", Name, "Name of the screw that holds each rectangular piece to the panel it touches, in two rows; none before a back in a groove, which stands a little away. Left out, no holes are drilled.")));

    /// <summary>A bay.</summary>
    public static readonly RecordShape<BayEntry> Bay = new("a bay", f => BayFields(f,
        f.Optional("name", Name, "Its name, part of the ids of the panels in it; bay-1, bay-2 … where it is left out."),
        f.Optional("height", Positive("bay-height"), "Clear height of a stacked bay; left out, it shares what is left."),
        f.Optional("width", Positive("bay-width"), "Clear width of a bay side by side; left out, it shares what is left.")));

    private static readonly ChoiceShape<ImmutableArray<Direction>> Brakes = new(
        ("front", [Direction.Front]), ("rear", [Direction.Back]), ("left", [Direction.Left]), ("right", [Direction.Right]), ("all", [Direction.Front, Direction.Back]), ("none", []));

    private static readonly RecordShape<CastorsEntry> Castors = new("the castors", f => new CastorsEntry(
        f.Required("castor", Name, "Name of the castor."),
        f.Optional("clearance", NotNegative("castor-clearance"), "Kept free around the swivelling wheel; 5 mm where it is left out."),
        f.Optional("brakes", Brakes, "The two castors that have brakes, all or none; at least two on the side one works at are usual.", [Direction.Front], "front")));

    private static readonly RecordShape<FeetEntry> Feet = new("the feet", f => new FeetEntry(
        f.Required("foot", Name, "Name of the foot."),
        f.Optional("inset", NotNegative("foot-inset"), "From the bottom's edges, or from sides that hang down, to their plates; 40 mm where it is left out."),
        f.Optional("more-at", new NumberShape(Measure.Length, Range.Positive, "foot-distance", 100), "Largest distance between two feet, at least 100 mm; 800 mm where it is left out."),
        f.At));

    private static readonly RecordShape<PlinthEntry> Plinth = new("the plinth", f => new PlinthEntry(
        f.Required("board", Name, "Name of its board."),
        f.Optional("set-back", NotNegative("plinth-set-back"), "From the front edge of the carcass to it; 40 mm where it is left out."),
        f.Optional("rear", YesNo, "Whether there is one at the rear as well.", false, "no"),
        f.At));

    private static readonly RecordShape<AppliedTopEntry> AppliedTop = new("the applied top", f => new AppliedTopEntry(
        f.Required("board", Name, "Name of its board."),
        f.Optional("overhang", new RecordShape<OverhangEntry>("the overhang", o => new OverhangEntry(
            o.Optional("front", NotNegative("front-overhang"), "At the front.", Size.Zero, "0"),
            o.Optional("sides", NotNegative("side-overhang"), "At both sides; 0 where it is left out."),
            o.Optional("back", NotNegative("back-overhang"), "Behind; 0 where it is left out."))), "How far it stands over the carcass."),
        f.Optional("size", new RecordShape<PieceEntry>("the size", s => new PieceEntry(
            s.Optional("width", Positive("piece-width"), "Left to right; the overhang at the sides follows."),
            s.Optional("depth", Positive("piece-depth"), "Front to back; the overhang behind follows."))), "What one piece is bought as."),
        f.Optional("pieces", new CountShape(1, 2), "One panel, or two side by side.", 1, "1"),
        f.Optional("joint-line", Positive("joint-line"), "Where two pieces meet, from the left of the carcass; the middle where it is left out."),
        f.Optional("screw", Name, "Name of the screw that holds it from beneath; the longest of the cabinet screw's diameter that cannot come through where it is left out."),
        f.At));

    private static readonly RecordShape<CabinetEntry> Cabinet = new("the cabinet", f => new CabinetEntry(
        f.Optional("width", Positive("outside-width"), "Outside width, left to right; or give it under inside, or by the doors."),
        f.Optional("height", Positive("outside-height"), "Outside height of the carcass; or give it under inside, or by the doors."),
        f.Optional("depth", Positive("outside-depth"), "Outside depth of the carcass, front to back, without doors; or give it under inside."),
        f.Optional("inside", new RecordShape<InsideEntry>("the inside", i => new InsideEntry(
            i.Optional("width", Positive("inner-width"), "Between the sides."),
            i.Optional("height", Positive("inner-height"), "Between bottom and top."),
            i.Optional("depth", Positive("clear-depth"), "From the front to the back."))), "Sizes given inside; the outside follows."),
        f.Optional("step", Positive("step"), "Inner width, side height and depth, shelf depth, doors and a back in its grooves are whole multiples of it, such as 1/16 in; the outside or a gap takes the difference."),
        f.Required("board", Name, "Name of the board of sides, top, bottom, dividers and shelves."),
        f.Optional("top", new ChoiceShape<bool>(("between", false), ("over", true)), "The top stands between the sides, or runs over them.", false, "between"),
        f.Optional("bottom", new ChoiceShape<bool>(("between", false), ("under", true)), "The bottom stands between the sides, or runs under them.", false, "between"),
        f.Optional("recess", NotNegative("recess"), "How far a bottom between the sides is raised above their lower edge.", Size.Zero, "0"),
        f.Optional("back", Back, "The back; left out, the cabinet is open behind."),
        BayFields(f, null, null, null),
        f.Optional("castors", Castors, "Four castors under the bottom; left out, there are none."),
        f.Optional("feet", Feet, "Levelling feet under the bottom, at least four; left out, there are none."),
        f.Optional("plinth", Plinth, "A board below the bottom: between the sides and screwed to them where the bottom is raised, else clipped to the feet; left out, there is none."),
        f.Optional("applied-top", AppliedTop, "A finished panel laid over the top; left out, there is none."),
        f.Optional("bands", Bands(), "Edge bands of all carcass panels, dividers and shelves, by where the edge looks.", [], "none"),
        f.Optional("joint", JointRule, "How panels are joined: the name of a fastener, or a group; the screw wood-4x50 where it is left out."),
        f.Optional("corners", Corners, "Joints that differ from it; what a group leaves out is as in joint."),
        f.At));

    // How a bay, or the whole inside, is divided and filled.
    private static BayEntry BayFields(Fields f, Word? name, Size? height, Size? width) => new(
        name, height, width,
        f.Optional("stacked", new ListShape<BayEntry>(new ReferenceShape<BayEntry>(BayReference, () => Bay), 20), "Bays above each other, from the bottom up, a fixed shelf between each two.", [], "none"),
        f.Optional("side-by-side", new ListShape<BayEntry>(new ReferenceShape<BayEntry>(BayReference, () => Bay), 20), "Bays beside each other, from left to right, a divider between each two.", [], "none"),
        f.Optional("shelves", Shelves, "A number of evenly spaced fixed shelves, or a list of shelves.", new ShelvesEntry(0, [], default), "none"),
        f.Optional("loose-shelves", Loose, "Shelves on pins in rows of holes 32 mm apart."),
        f.Optional("sliding-shelf", Sliding, "A shelf for equipment on side-mounted slides."),
        f.Optional("drawers", Drawers, "Drawers above each other."),
        f.Optional("lining", Lining, "Sheets against inside faces, cut to clear what is fixed there."),
        f.Optional("doors", Doors, "Doors before it; left out, there are none."),
        f.At);

    // What whatever slides says of its slides.
    private static SlidesEntry Slides(Fields f, string what) => new(
        f.Required("slide", Name, "Name of the pair of slides."),
        f.Optional("set-back", NotNegative("set-back"), $"From the front edge of the cabinet to {what}; 3 mm where it is left out, and behind doors between the panels in any case."),
        f.Optional("rear-clearance", NotNegative("rear-clearance"), "Kept free behind for cables; 50 mm where it is left out, 5 mm behind drawers."),
        f.Optional("packer", Name, "Name of the board of the packers that bring the slides past open doors, where these stand in the way; the cabinet's where it is left out."),
        f.Optional("load", new NumberShape(Measure.Mass, Range.Positive, "load"), "What stands on it, or in each, to be checked against the slides."));

    private static readonly MappedShape<ImmutableArray<(Direction, Size)>, ImmutableArray<(Direction, Size)>> NamedPlace =
        new(ByEdge("a place", NotNegative("distance"), d => $"Distance from the edge that looks {d.Word()}."), (from, _) =>
            (from, from.Length == 2 && from[0].Item1.Axis() != from[1].Item1.Axis() ? null : "a place has two distances, one from an edge of each direction, written {front: 60, bottom: 900}"));

    private static readonly RecordShape<HoleEntry> Hole = new("a hole", f => new HoleEntry(
        f.Required("panel", PanelName, "The panel it is drilled in."),
        f.Optional("face", Face, "The face it is drilled from.", Surface.Inside, "inside"),
        f.Required("from", NamedPlace, "Its centre, by the distances from two edges as they look once built, such as {front: 60, bottom: 900}."),
        f.Required("diameter", Positive("hole-diameter"), "Diameter."),
        f.Optional("depth", Positive("hole-depth"), "Depth; left out, it goes through."),
        f.Optional("method", OwnMethod, MethodHelp),
        f.At));

    private static readonly RecordShape<LineEntry> Line = new("a line", f => new LineEntry(
        f.Required("panel", PanelName, "The panel it is marked on."),
        f.Optional("face", Face, "The face it is marked on.", Surface.Inside, "inside"),
        f.Required("from", NamedPlace, "One end, by the distances from two edges as they look once built."),
        f.Required("to", NamedPlace, "The other end."),
        f.At));

    private static readonly RecordShape<BoreEntry> Bore = new("a bore", f => new BoreEntry(
        f.Optional("face", new MappedShape<Surface, Surface?>(Face, (v, _) => (v, null)), "The face it is drilled from.", null, "inside, unless an edge is given"),
        f.Optional("edge", new MappedShape<Direction, Direction?>(Towards, (v, _) => (v, null)), "The edge it is drilled into, by where it looks once built; of a panel without a place left, right, front or back as it lies inside face up.", null, "none"),
        f.Required("at", Place("bore-position"), "Centre as [x, y] on a face, from corner 0 of the panel's drawing: x along the length, y along the width, seen on the inside face. On an edge the distance along it from the same side, or [along, above the outside face]."),
        f.Required("diameter", Positive("bore-diameter"), "Diameter of the bore."),
        f.Optional("depth", Positive("bore-depth"), "Depth; left out, a bore in a face goes through."),
        f.Optional("method", OwnMethod, MethodHelp),
        f.At));

    private static readonly RecordShape<GrooveEntry> Groove = new("a groove", f => new GrooveEntry(
        f.Optional("face", Face, "The face it is cut into.", Surface.Inside, "inside"),
        f.Required("from", Pair("groove-end", Range.Any), "One end of its centre line as [x, y]."),
        f.Required("to", Pair("groove-end", Range.Any), "The other end of its centre line."),
        f.Required("width", Positive("groove-width"), "Width across the centre line."),
        f.Required("depth", Positive("groove-depth"), "Depth below the face."),
        f.At));

    private static readonly RecordShape<PlaceEntry> PanelPlace = new("a place", f => new PlaceEntry(
        f.Required("corner", Triple("corner"), "The panel's left, front, lower corner as [right, back, up] from the cabinet's left, front, lower corner."),
        f.Required("outside", Towards, "Where its outside face looks."),
        f.Optional("along", new MappedShape<Direction, Direction?>(Towards, (v, _) => (v, null)), "Where its length runs.", null, "right for a panel that lies or faces front or back, top for one that faces left or right"),
        f.At));

    private static readonly RecordShape<PanelEntry> Panel = new("a panel", f => new PanelEntry(
        f.Required("board", Name, "Name of its board."),
        f.Required("length", Positive("panel-length"), "Finished length, along the grain."),
        f.Required("width", Positive("panel-width"), "Finished width, across the grain."),
        f.Optional("outline", Outline, "Its outline where it is not a rectangle; it must fill length and width exactly.", [], "a rectangle"),
        f.Optional("bands", Bands(), "Edge bands by the edge they cover, each with its thickness.", [], "none"),
        f.Optional("bores", new ListShape<BoreEntry>(Bore), "Round holes.", [], "none"),
        f.Optional("slots", new ListShape<SlotEntry>(Slot), "Slots with round ends, through the panel.", [], "none"),
        f.Optional("cut-outs", new ListShape<CutOutEntry>(FeatureShapes.CutOut), "Openings through the panel.", [], "none"),
        f.Optional("grooves", new ListShape<GrooveEntry>(Groove), "Straight channels in a face.", [], "none"),
        f.Optional("marks", new ListShape<MarkEntry>(MarkOnFace), "Scribed lines and centres.", [], "none"),
        f.Optional("place", PanelPlace, "Where it stands; left out, it is a loose panel."),
        f.At));

    private static readonly RecordShape<JointEntry> Joint = new("a joint", f => new JointEntry(
        f.Required("through", PanelName, "The panel with the face, which screws pass through."),
        f.Required("into", PanelName, "The panel whose edge lies against it and is held."),
        f.Optional("joint", JointRule, "The name of a fastener, or a group; the screw wood-4x50 where it is left out."),
        f.At));

    private static readonly RecordShape<FittingEntry> Fitting = new("a fitting", f => f.ExactlyOneOf(["at", "from"], new FittingEntry(
        f.Required("hardware", Name, "Name of the hardware."),
        f.Required("panel", PanelName, "The panel it is fixed to."),
        f.Optional("face", Face, "The face it is fixed to.", Surface.Inside, "inside"),
        f.Optional("at", OptionalPair("fitting-position"), "The middle of its foot as [x, y] of the panel; or give it by “from”.", null, "none"),
        f.Optional("from", NamedPlace, "The middle of its foot, by the distances from two edges as they look once built, such as {front: 60, top: 100}.", [], "none"),
        f.Optional("turn", Turn, "Degrees it is turned anticlockwise, looking at the face.", 0, "0"),
        f.At)));

    private static readonly RecordShape<EdgeBanding> Banding = new("the banding", f => new EdgeBanding(
        f.Optional("pre-mill", PreMill, "Milled off every edge before it is banded, so that panels are sawn larger by it.", EdgeBanding.ByHand.PreMill, "0"),
        f.Optional("allowance", NotNegative("band-allowance"), "Bought for each edge beyond its length.", EdgeBanding.ByHand.Allowance, "25 mm"),
        f.Optional("waste", new NumberShape(Measure.Number, Range.NotNegative, "band-waste"), "Bought beyond that, in percent.", EdgeBanding.ByHand.WastePercent, "10")));

    private static readonly RecordShape<ChecksEntry> Checks = new("the checks", f =>
    {
        var limits = ImmutableArray.CreateBuilder<(CheckLimit, Size)>();
        var waivers = ImmutableArray.CreateBuilder<(string, string)>();
        foreach (var check in Check.All)
        {
            var read = f.Optional(check.Rule, OneCheck(check), check.Summary);
            limits.AddRange(read?.Limits ?? []);
            waivers.AddRange(read?.Waivers ?? []);
        }

        return new ChecksEntry(limits.ToImmutable(), waivers.ToImmutable());
    });

    /// <summary>The whole file.</summary>
    public static readonly RecordShape<ProjectModel> Project = new("the project", "a group of keys like “project: Wall cupboard”", f =>
    {
        var name = f.Required("project", Text, "What is built, in a few words.");
        CatalogueShapes.FileUnit(f);
        return new ProjectModel(
            name,
            f.Optional("boards", new MapShape<BoardEntry>(Board), "The sheet goods, each under a name of your own.", [], "none"),
            f.Optional("catalogues", new ListShape<Word>(new FileNameShape(), 20), "Files of bought parts of your own, in the form of the catalogue; where two have a part of one name the later file counts, and this file before all.", [], "none"),
            CatalogueShapes.Sections(f),
            f.Optional("cabinet", Cabinet, "A cabinet in few numbers."),
            f.Optional("panels", new MapShape<PanelEntry>(Panel), "Panels one by one, each under a name of your own.", [], "none"),
            f.Optional("joints", new ListShape<JointEntry>(Joint), "Joints beside those of the cabinet.", [], "none"),
            f.Optional("fittings", new MapShape<FittingEntry>(Fitting), "Hardware on panels, each under a name of your own.", [], "none"),
            f.Optional("holes", new ListShape<HoleEntry>(Hole), "Holes for instruments and cables at named places, in any panel.", [], "none"),
            f.Optional("lines", new ListShape<LineEntry>(Line), "Lines to mark between named places, such as where a light strip goes.", [], "none"),
            f.Optional("methods", Drilling, "How the shop makes bores; a bore's own “method” comes before it.") ?? DrillingHabit.Standard,
            f.Optional("banding", Banding, "How edges are banded, and how much band is bought.") ?? EdgeBanding.ByHand,
            f.Optional("checks", Checks, "Changed limits and waived rules.") ?? ChecksEntry.None,
            f.Optional("drawings", DrawingShapes.Drawings, "How drawings look, and the files they become.") ?? DrawingShapes.Usual,
            f.Optional("labels", LabelShapes.Labels, "Labels to print and stick on parts.") ?? LabelEntry.Usual,
            f.Optional("templates", TemplateShapes.Templates, "Templates and story sticks in true size, for holes that are marked by hand.") ?? TemplateShapes.Usual,
            f.Optional("guides", GuideShapes.Guides, "Drill guides to be cut by a laser or a router: plates with holes for bits or bushes, fences for the edges, engraved names."),
            f.Optional("machine-files", new ListShape<Word>(Name, 10), "The machines that files are made for.", [], "router"),
            f.Optional("sheets", new MapShape<SheetEntry>(MachineShapes.Sheet), "Sheets with the panels that are cut from them, placed by hand, each under a name of your own.", [], "none"),
            f.Optional("stock", CuttingShapes.Stock, "Sheets that can be bought and offcuts that are there, by the name of their board; panels that lie on no sheet by hand are laid on them.", [], "none"),
            f.Optional("cutting", CuttingShapes.Cutting, "What cuts the stock, and its rules."),
            f.At);
    });

    private static ChoiceShape<BoreMethod> Methods(params ReadOnlySpan<BoreMethod> methods)
    {
        var choices = ImmutableArray.CreateBuilder<(string, BoreMethod)>();
        foreach (var method in methods) choices.Add((method.Word(), method));
        return new(choices.ToImmutable());
    }

    // Machines mill 0.5 to 1 mm (common practice, no source); an inch written for a millimetre is far beyond.
    private static MappedShape<Size, Size> PreMill
    {
        get
        {
            const double Most = 5;
            return new(NotNegative("pre-mill"), (mill, node) => (mill, mill.Value <= Most ? null : $"{node.Described} stands where at most {Most} mm are expected; 0.5 to 1 mm is usual: is the unit right?"));
        }
    }

    private static MappedShape<ImmutableArray<Size>, ImmutableArray<Size>> Triple(string rule) =>
        new(new ListShape<Size>(new NumberShape(Measure.Length, Range.Any, rule), 9), (triple, _) =>
            (triple, triple.Length == 3 ? null : "a corner has three lengths, written [right, back, up]"));

    // One length along an edge, or two on a face.
    private static EitherShape<ImmutableArray<Size>> Place(string rule)
    {
        var length = new NumberShape(Measure.Length, Range.Any, rule);
        return new EitherShape<ImmutableArray<Size>>(
            node => node is YamlScalar,
            new MappedShape<Size, ImmutableArray<Size>>(length, (v, _) => ([v], null)),
            new MappedShape<ImmutableArray<Size>, ImmutableArray<Size>>(new ListShape<Size>(length, 9), (pair, _) =>
                (pair, pair.Length == 2 ? null : "a place has two lengths, written [x, y]")));
    }

    private static RecordShape<ImmutableArray<(Direction, Size)>> ByEdge(string what, NumberShape shape, Func<Direction, string> help) => new(what, f =>
    {
        var all = ImmutableArray.CreateBuilder<(Direction, Size)>();
        foreach (var direction in Enum.GetValues<Direction>())
            if (f.Optional(direction.Word(), shape, help(direction)) is { } size) all.Add((direction, size));
        return all.ToImmutable();
    });

    private static RecordShape<ImmutableArray<(Direction, Size)>> Bands() =>
        ByEdge("the bands", Positive("band-thickness"), d => $"Thickness of the band on the edge that looks {d.Word()}.");

    private static RecordShape<ChecksEntry> OneCheck(Check check) => new(check.Rule, f =>
    {
        var limits = ImmutableArray.CreateBuilder<(CheckLimit, Size)>();
        foreach (var limit in check.Limits)
            if (f.Optional(limit.Name, NotNegative(limit.Name), limit.Help) is { } value) limits.Add((limit, value));
        var reason = f.Optional("waive", Text, "Why findings of this rule do not hold back any file; the reason is printed with them.");
        return new ChecksEntry(limits.ToImmutable(), reason is null ? [] : [(check.Rule, reason)]);
    });
}
