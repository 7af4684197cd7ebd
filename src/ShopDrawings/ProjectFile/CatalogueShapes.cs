using System.Collections.Immutable;
using ShopDrawings.Kernel;
using ShopDrawings.Yaml;
using Range = ShopDrawings.Yaml.Range;

namespace ShopDrawings.ProjectFile;

/// <summary>Every key of a bought part, once: for the shipped catalogue and for a user's own parts alike. Lengths of any unit.</summary>
internal static class CatalogueShapes
{
    private static readonly Shape<Fastener> Screw = new MappedShape<Screw, Fastener>(new RecordShape<Screw>("a screw", f => new Screw(
        "",
        f.Required("diameter", Length("screw-diameter"), "Outer diameter of the thread."),
        f.Required("length", Length("screw-length"), "Length under a flush head."),
        f.Required("head", Length("head-diameter"), "Diameter of the head."),
        f.Required("clearance", Length("clearance-diameter"), "Diameter of the hole it passes through."),
        f.Required("edge-pilot", Length("edge-pilot-diameter"), "Diameter of the pilot hole in the edge of a board."))
    {
        HeadAngle = f.Optional("head-angle", new NumberShape(Measure.Number, Range.Positive, "head-angle", 30), "Angle of the head's cone in degrees; 90 where it is left out.")?.Value ?? 90,
    }), (s, _) => (s, Unfit(s)));

    private static readonly Shape<Fastener> Connector = new MappedShape<ConnectorScrew, Fastener>(new RecordShape<ConnectorScrew>("a connector", f => new ConnectorScrew(
        "",
        f.Required("diameter", Length("connector-diameter"), "Outer diameter of the thread."),
        f.Required("length", Length("connector-length"), "Length under the head."),
        f.Required("head", Length("head-diameter"), "Diameter of the seat for its head."),
        f.Required("head-depth", Length("head-depth"), "Depth of that seat."),
        f.Required("clearance", Length("clearance-diameter"), "Diameter of the bore through the face."),
        f.Required("edge-pilot", Length("edge-pilot-diameter"), "Diameter of the bore in the edge."),
        f.Required("extra", NotNegative("extra-depth"), "How much deeper the bore in the edge is than the screw reaches."))), (c, _) => (c, Unfit(c)));

    private static readonly Shape<Fastener> Dowel = new MappedShape<Dowel, Fastener>(new RecordShape<Dowel>("a dowel", f => new Dowel(
        "",
        f.Required("diameter", Length("dowel-diameter"), "Diameter of the dowel and of its bores."),
        f.Required("length", Length("dowel-length"), "Length."),
        f.Required("face-depth", Length("dowel-face-depth"), "Depth of the bore in a face; 3 mm of the board stay under it."),
        f.Required("end-clearance", NotNegative("dowel-end-clearance"), "How much longer both bores together are than the dowel."))),
        (d, _) => (d, d.FaceDepth.Value < d.Length.Value ? null : "the bore in the face takes the whole dowel; nothing is left for the edge"));

    private static readonly Shape<Fastener> Cam = new MappedShape<CamConnector, Fastener>(new RecordShape<CamConnector>("a cam", f => new CamConnector(
        "",
        f.Required("cam-diameter", Length("cam-diameter"), "Diameter of the cam's bore."),
        f.Required("cam-distance", Length("cam-distance"), "From the edge of the held panel to the cam's centre."),
        f.Required("below-middle", NotNegative("below-middle"), "How much deeper the cam's bore is than half the board."),
        f.Required("edge-diameter", Length("edge-bore-diameter"), "Diameter of the bore in the edge, as deep as the cam's centre."),
        f.Required("bolt-diameter", Length("bolt-diameter"), "Diameter of the bolt's bore in the face."),
        f.Required("bolt-depth", Length("bolt-depth"), "Depth of the bolt's bore."))),
        (c, _) => (c, c.CamDistance.Value > c.CamDiameter.Value / 2 ? null : "the cam reaches over the edge: its distance is not more than half its diameter"));

    private static readonly Shape<Fastener> Bracket = new MappedShape<CornerBracket, Fastener>(new RecordShape<CornerBracket>("a bracket", f => new CornerBracket(
        "",
        f.Required("leg", Length("bracket-leg"), "Length of each leg."),
        f.Required("hole-distance", Length("bracket-hole-distance"), "From the corner to the hole of each leg."),
        f.Required("hole-diameter", Length("bracket-hole-diameter"), "Diameter of the pilots."),
        f.Required("hole-depth", Length("bracket-hole-depth"), "Depth of the pilots."))),
        (b, _) => (b, b.HoleDistance.Value < b.Leg.Value ? null : "the hole lies outside the leg"));

    private static readonly Shape<Hinge> Hinge = new MappedShape<Hinge, Hinge>(new RecordShape<Hinge>("a hinge", f => new Hinge
    {
        Name = "",
        CupDiameter = f.Required("cup-diameter", Length("cup-diameter"), "Diameter of the cup's bore in the door."),
        CupDepth = f.Required("cup-depth", Length("cup-depth"), "Depth of the cup's bore."),
        BoringDistance = f.Required("boring-distance", Length("boring-distance"), "From the edge of the door to the edge of the cup's bore."),
        FixingSpan = f.Required("fixing-span", Length("fixing-span"), "Between the two fixing holes beside the cup."),
        FixingOffset = f.Required("fixing-offset", Length("fixing-offset"), "From the line through the cup's centre to the fixing holes, away from the edge."),
        FixingDiameter = f.Required("fixing-diameter", Length("fixing-diameter"), "Diameter of the fixing holes."),
        FixingDepth = f.Required("fixing-depth", Length("fixing-depth"), "Depth of the fixing holes."),
        PlateSetBack = f.Required("plate-set-back", Length("plate-set-back"), "From the front edge of the side to the plate's holes."),
        PlateSpacing = f.Optional("plate-spacing", Length("plate-spacing"), "Between the plate's two holes where one stands above the other."),
        PlateSecondSetBack = f.Optional("plate-second-set-back", Length("plate-set-back"), "From the front edge of the side to the plate's second hole where both lie in line."),
        PlateDiameter = f.Required("plate-diameter", Length("plate-diameter"), "Diameter of the plate's holes."),
        PlateDepth = f.Required("plate-depth", Length("plate-depth"), "Depth of the plate's holes."),
        FixedDistance = f.Required("fixed-distance", NotNegative("fixed-distance"), "Overlay of the straight arm with a plate of height 0 and a boring distance of 0: plate height = fixed distance + boring distance - overlay."),
        HalfFixedDistance = f.Optional("half-fixed-distance", NotNegative("fixed-distance"), "The same of the cranked arm for doors that share a panel; left out, there is none."),
        InsetConstant = f.Optional("inset-constant", new NumberShape(Measure.Length, Range.Any, "inset-constant"), "Of the arm for doors between the sides: plate height = constant + boring distance + gap; left out, there is none."),
        OpeningAngle = f.Optional("opening-angle", new NumberShape(Measure.Number, Range.Positive, "opening-angle", 60), "How far it opens, in degrees; 110 where it is left out.")?.Value ?? 110,
        BodyDepth = f.Required("body-depth", Length("body-depth"), "Room it takes behind the front edge."),
        BodyReach = f.Required("body-reach", Length("body-reach"), "Room it takes inwards from the side."),
        BodyHeight = f.Required("body-height", Length("body-height"), "Room it takes up and down together."),
        Intrusion = f.Required("intrusion", NotNegative("intrusion"), "How far the open door stands into the opening."),
    }), (hinge, _) => (hinge, hinge.PlateSpacing is null == hinge.PlateSecondSetBack is null
        ? "a plate has two holes: above each other, “plate-spacing”, or in line, “plate-second-set-back”; give one of the two" : null));

    private static readonly Shape<Slide> Slide = new MappedShape<Slide, Slide>(new RecordShape<Slide>("a slide", f => new Slide
    {
        Name = "",
        Length = f.Required("length", Length("slide-length"), "Length when closed."),
        Thickness = f.Required("thickness", Length("slide-thickness"), "Between the cabinet and what slides."),
        Height = f.Required("height", Length("slide-height"), "Height."),
        Play = f.Required("play", NotNegative("slide-play"), "Room it needs on each side beyond its thickness."),
        Travel = f.Required("travel", Length("slide-travel"), "How far it travels."),
        RatingKg = f.Required("rating", new NumberShape(Measure.Mass, Range.Positive, "slide-rating"), "What a pair carries."),
        CabinetHoles = f.Required("cabinet-holes", new ListShape<Size>(NotNegative("cabinet-hole"), 40), "Holes on the cabinet's side, each from the front end."),
        RunnerHoles = f.Required("runner-holes", new ListShape<Size>(NotNegative("runner-hole"), 40), "Holes on the side of what slides, each from the front end."),
        HoleDiameter = f.Required("hole-diameter", Length("slide-hole-diameter"), "Diameter of the pilot holes."),
        HoleDepth = f.Required("hole-depth", Length("slide-hole-depth"), "Depth of the pilot holes."),
    }), (slide, _) => (slide, Unfit(slide)));

    private static readonly RecordShape<ShelfPin> Pin = new("a pin", f => new ShelfPin
    {
        Name = "",
        Diameter = f.Required("diameter", Length("pin-diameter"), "Diameter of its bore."),
        Depth = f.Required("depth", Length("pin-depth"), "Depth of its bore."),
        Reach = f.Required("reach", Length("pin-reach"), "How far it reaches out of its bore under the shelf."),
        BelowShelf = f.Required("below-shelf", NotNegative("below-shelf"), "From its bore's centre up to the underside of the shelf."),
    });

    private static readonly RecordShape<Castor> Castor = new("a castor", f => new Castor
    {
        Name = "",
        Height = f.Required("height", Length("castor-height"), "From the floor to the top of the plate."),
        WheelDiameter = f.Required("wheel-diameter", Length("wheel-diameter"), "Diameter of the wheel."),
        TreadWidth = f.Required("tread-width", Length("tread-width"), "Width of the tread."),
        Offset = f.Required("offset", NotNegative("castor-offset"), "From the swivel axis to the wheel's axle."),
        PlateLength = f.Required("plate-length", Length("plate-length"), "Length of the plate, front to back."),
        PlateWidth = f.Required("plate-width", Length("plate-width"), "Width of the plate."),
        HoleLength = f.Required("hole-length", Length("hole-length"), "Between the holes along the plate."),
        HoleWidth = f.Required("hole-width", Length("hole-width"), "Between the holes across the plate."),
        HoleDiameter = f.Required("hole-diameter", Length("hole-diameter"), "Diameter of the bolts' holes."),
    });

    private static readonly Shape<Foot> Foot = new MappedShape<Foot, Foot>(new RecordShape<Foot>("a foot", f => new Foot
    {
        Name = "",
        Height = f.Required("height", Length("foot-height"), "Nominal height, from the floor to the face it is fixed to."),
        AdjustDown = f.Required("adjust-down", NotNegative("adjust-down"), "How far it can be screwed in from there."),
        AdjustUp = f.Required("adjust-up", NotNegative("adjust-up"), "How far it can be screwed out from there."),
        Diameter = f.Required("diameter", Length("foot-diameter"), "Diameter of the foot below its plate."),
        PlateLength = f.Required("plate-length", Length("plate-length"), "Length of the plate, front to back."),
        PlateWidth = f.Required("plate-width", Length("plate-width"), "Width of the plate."),
        HoleLength = f.Required("hole-length", NotNegative("hole-length"), "Between the holes along the plate; 0 for one hole in the middle."),
        HoleWidth = f.Required("hole-width", NotNegative("hole-width"), "Between the holes across the plate; 0 for one hole in the middle."),
        HoleDiameter = f.Required("hole-diameter", Length("hole-diameter"), "Diameter of the holes in the bottom."),
        HoleDepth = f.Required("hole-depth", Length("hole-depth"), "Depth of the holes."),
    }), (foot, _) => (foot,
        foot.AdjustDown.Value >= foot.Height.Value ? "nothing is left of a foot that is screwed in by its whole height"
        : foot.HoleLength.Value >= foot.PlateLength.Value || foot.HoleWidth.Value >= foot.PlateWidth.Value ? "the holes lie outside the plate"
        : null));

    private static readonly RecordShape<PatternBoreEntry> PatternBore = new("a bore of a piece of hardware", f => new PatternBoreEntry(
        f.Required("at", FeatureShapes.Pair("bore-position", Range.Any), "Centre as [x, y]."),
        f.Required("diameter", Length("bore-diameter"), "Diameter of the bore."),
        f.Optional("depth", Length("bore-depth"), "Depth below the face; left out, the bore goes through.")));

    private static readonly RecordShape<HardwareEntry> Hardware = new("a piece of hardware", f => new HardwareEntry(
        f.Required("length", Length("hardware-length"), "Of the block it fills, along its own x."),
        f.Required("width", Length("hardware-width"), "Of the block it fills, along its own y."),
        f.Required("height", NotNegative("hardware-height"), "How far it stands off the face it is fixed to; 0 for what is only cut or marked."),
        f.Optional("bores", new ListShape<PatternBoreEntry>(PatternBore, 200), "Round holes. All places count from the middle of its foot, x to the right and y up, looking at the face it is fixed to.", [], "none"),
        f.Optional("slots", new ListShape<SlotEntry>(FeatureShapes.Slot, 200), "Slots with round ends, through the panel.", [], "none"),
        f.Optional("cut-outs", new ListShape<CutOutEntry>(FeatureShapes.CutOut, 200), "Openings through the panel.", [], "none"),
        f.Optional("marks", new ListShape<MarkEntry>(FeatureShapes.Mark, 200), "Scribed lines and centres on the face it is fixed to.", [], "none")));

    /// <summary>A file of bought parts: the shipped catalogue, or one of a user's own.</summary>
    public static readonly RecordShape<CatalogueEntries> Catalogue = new("the catalogue", "a group of keys like “screws: …”", f =>
    {
        FileUnit(f);
        return Sections(f);
    });

    /// <summary>The unit a file counts in. It decides how every other line is read, so it is looked for before the rest.</summary>
    public static void FileUnit(Fields f) => f.Optional(
        "unit", new ChoiceShape<Unit>([.. Measure.Length.Units.Select(u => (u.Symbol, u))], word => Measure.Length.UnitOf(word)?.Symbol),
        "The unit of every length without one.", Measure.Millimetre, "mm");

    /// <summary>The sections of bought parts, in a catalogue or a project.</summary>
    public static CatalogueEntries Sections(Fields f) => new(
        [
            .. f.Optional("screws", new MapShape<Fastener>(Screw), "Screws, each under a name of your own; it replaces a part of that name in the catalogue.", [], "none"),
            .. f.Optional("connectors", new MapShape<Fastener>(Connector), "One-piece connector screws, likewise.", [], "none"),
            .. f.Optional("dowels", new MapShape<Fastener>(Dowel), "Dowels, likewise.", [], "none"),
            .. f.Optional("cams", new MapShape<Fastener>(Cam), "Eccentric cam connectors, likewise.", [], "none"),
            .. f.Optional("brackets", new MapShape<Fastener>(Bracket), "Corner brackets, likewise.", [], "none"),
        ],
        f.Optional("hinges", new MapShape<Hinge>(Hinge), "Cup hinges, likewise.", [], "none"),
        f.Optional("slides", new MapShape<Slide>(Slide), "Slides, likewise.", [], "none"),
        f.Optional("castors", new MapShape<Castor>(Castor), "Castors, likewise.", [], "none"),
        f.Optional("feet", new MapShape<Foot>(Foot), "Levelling feet and glides, likewise.", [], "none"),
        f.Optional("pins", new MapShape<ShelfPin>(Pin), "Pins that carry loose shelves, likewise.", [], "none"),
        f.Optional("hardware", new MapShape<HardwareEntry>(Hardware), "Any other bought part by the block it fills and what is drilled, cut and marked for it, likewise.", [], "none"),
        f.Optional("machines", new MapShape<MachineEntry>(MachineShapes.Machine), "Machines that files are made for, likewise.", [], "none"));

    private static NumberShape Length(string rule) => new(Measure.Length, Range.Positive, rule);

    private static NumberShape NotNegative(string rule) => new(Measure.Length, Range.NotNegative, rule);

    private static string? Unfit(Screw screw) =>
        screw.Clearance.Value < screw.Diameter.Value ? "a screw does not pass through a clearance hole smaller than its thread"
        : screw.EdgePilot.Value >= screw.Diameter.Value ? "a screw does not hold in a pilot hole as large as its thread"
        : screw.HeadDiameter.Value <= screw.Clearance.Value ? "a head no larger than the clearance hole passes through it"
        : null;

    // The longest travel of the usual three kinds, in lengths of the slide.
    private const double FurthestTravel = 1.5;

    private static string? Unfit(Slide slide) =>
        slide.CabinetHoles.Concat(slide.RunnerHoles).Any(h => h.Value > slide.Length.Value) ? "a hole lies beyond the end of the slide"
        : slide.CabinetHoles.Length < 2 || slide.RunnerHoles.Length < 2 ? "a slide is held by two screws or more on each side"
        : slide.Travel.Value > FurthestTravel * slide.Length.Value ? "a slide does not travel more than one and a half times its length; is the unit right?"
        : null;

    private static string? Unfit(ConnectorScrew screw) =>
        screw.Clearance.Value < screw.Diameter.Value ? "a connector does not pass through a bore smaller than its thread"
        : screw.EdgePilot.Value >= screw.Diameter.Value ? "a connector does not hold in a bore as large as its thread"
        : screw.HeadDiameter.Value <= screw.Clearance.Value ? "a head no larger than the bore passes through it"
        : null;
}
