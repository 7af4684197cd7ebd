using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>
/// A cabinet in few numbers, in mm: what its carcass is made from, how its corners and back are built, how its inside is divided, and what is
/// hung in it, slid into it and put under and over it. References are followed, defaults filled in; sizes are still to be worked out.
/// </summary>
internal sealed record CabinetSpec
{
    /// <summary>Left to right.</summary>
    public required AxisSpec Width { get; init; }

    /// <summary>From the lower edge of the carcass to its upper face; castors and an applied top come on top of it.</summary>
    public required AxisSpec Height { get; init; }

    /// <summary>From the front edge of the carcass to the rear; doors come on top of it, a back behind the sides does not.</summary>
    public required AxisSpec Depth { get; init; }

    /// <summary>Board of sides, top, bottom, dividers and shelves.</summary>
    public required Board Board { get; init; }

    /// <summary>Whether the top runs over the sides; else the sides run past it.</summary>
    public bool IsTopOver { get; init; }

    /// <summary>Whether the bottom runs under the sides; else the sides run past it.</summary>
    public bool IsBottomUnder { get; init; }

    /// <summary>How far a bottom between the sides is raised above their lower edge.</summary>
    public required Size Recess { get; init; }

    /// <summary>The back, or nothing.</summary>
    public BackSpec? Back { get; init; }

    /// <summary>How the inside is divided.</summary>
    public required BaySpec Inside { get; init; }

    /// <summary>Doors before the whole front, or none.</summary>
    public DoorsSpec? Doors => Inside.Doors;

    /// <summary>Castors under the bottom, or none.</summary>
    public CastorsSpec? Castors { get; init; }

    /// <summary>Levelling feet under the bottom, or none; never with castors.</summary>
    public FeetSpec? Feet { get; init; }

    /// <summary>Boards below the bottom that hide what it stands on, or none.</summary>
    public PlinthSpec? Plinth { get; init; }

    /// <summary>A finished panel laid over the top, or none.</summary>
    public AppliedTopSpec? AppliedTop { get; init; }

    /// <summary>Edge bands of all carcass panels and shelves, by where the edge looks once built.</summary>
    public ImmutableArray<(Direction Edge, Size Thickness)> Bands { get; init; } = [];

    /// <summary>How panels are joined.</summary>
    public required CarcassJoints Joints { get; init; }

    /// <summary>Inner width, side height and depth, shelf depth, doors and a back in its grooves are whole multiples of it, or nothing.</summary>
    public Size? Step { get; init; }

    /// <summary>Where the user asked for it.</summary>
    public required SourceSpan Source { get; init; }
}

/// <summary>How the panels of a carcass are joined.</summary>
/// <param name="TopLeft">The left side and the top.</param>
/// <param name="TopRight">The right side and the top.</param>
/// <param name="BottomLeft">The left side and the bottom.</param>
/// <param name="BottomRight">The right side and the bottom.</param>
/// <param name="Shelves">Fixed shelves and what they stand between.</param>
/// <param name="Dividers">Dividers and what they stand between.</param>
/// <param name="Screwed">Screws, for what is always screwed: the edges of a back, runners.</param>
/// <param name="FaceToFace">Screws through the first board into the face of the second: the longest that stay inside both, sunk where they would not hold.</param>
/// <param name="ThroughThin">Screws through a thin board into an edge behind it.</param>
internal sealed record CarcassJoints(
    JointRule TopLeft, JointRule TopRight, JointRule BottomLeft, JointRule BottomRight, JointRule Shelves, JointRule Dividers, JointRule Screwed,
    Func<Board, Board, JointRule> FaceToFace, Func<Board, JointRule> ThroughThin)
{
    /// <summary>The joint of a side and the bottom.</summary>
    public JointRule Bottom(bool isLeft) => isLeft ? BottomLeft : BottomRight;

    /// <summary>The joint of a side and the top.</summary>
    public JointRule Top(bool isLeft) => isLeft ? TopLeft : TopRight;
}

/// <summary>A size given outside or inside, or left to the doors.</summary>
internal sealed record AxisSpec(Size? Outside, Size? Inside);

/// <summary>How a back sits in the carcass.</summary>
internal enum BackFit
{
    /// <summary>Held in a groove of sides, top and bottom.</summary>
    Groove,

    /// <summary>Between sides, top and bottom, screwed all round.</summary>
    Between,

    /// <summary>Between the sides and running past top and bottom, which end before it.</summary>
    WithinSides,

    /// <summary>Behind all four.</summary>
    Behind,
}

/// <summary>The back of a carcass. Lengths in mm.</summary>
/// <param name="Board">What it is made of.</param>
/// <param name="Fit">How it sits.</param>
/// <param name="Inset">From the rear edge of the sides to the groove, or to the back itself.</param>
/// <param name="GrooveDepth">Depth of the groove.</param>
/// <param name="GroovePlay">How much wider the groove is than the back is thick.</param>
/// <param name="EndPlay">Left free between the back and the bottom of the groove, on each side.</param>
/// <param name="Joint">Holds it where the screws go through the back.</param>
internal sealed record BackSpec(Board Board, BackFit Fit, Size Inset, Size GrooveDepth, Size GroovePlay, Size EndPlay, JointRule Joint);

/// <summary>How a bay is divided.</summary>
internal enum Split
{
    /// <summary>Not.</summary>
    None,

    /// <summary>Bays above each other, a fixed shelf between each two.</summary>
    Stacked,

    /// <summary>Bays beside each other, a divider between each two.</summary>
    SideBySide,
}

/// <summary>A space inside the carcass.</summary>
/// <param name="Name">Part of the ids of the panels in it; empty for the whole inside.</param>
/// <param name="Clear">Its clear height when stacked, its clear width side by side; nothing shares what is left.</param>
/// <param name="Split">How it is divided.</param>
/// <param name="Bays">Its bays, from the bottom up or from left to right.</param>
/// <param name="Source">Where the user asked for it.</param>
internal sealed record BaySpec(string Name, Size? Clear, Split Split, ImmutableArray<BaySpec> Bays, SourceSpan Source)
{
    /// <summary>Fixed shelves in it.</summary>
    public ImmutableArray<ShelfSpec> Shelves { get; init; } = [];

    /// <summary>Loose shelves on pins, or none.</summary>
    public LooseShelvesSpec? Loose { get; init; }

    /// <summary>An equipment shelf in it, or none.</summary>
    public SlidingShelfSpec? Sliding { get; init; }

    /// <summary>Drawers in it, or none.</summary>
    public DrawersSpec? Drawers { get; init; }

    /// <summary>Sheets on its inside faces, or none.</summary>
    public LiningSpec? Lining { get; init; }

    /// <summary>Doors before it, or none.</summary>
    public DoorsSpec? Doors { get; init; }
}

/// <summary>A fixed shelf. Lengths in mm.</summary>
/// <param name="Name">The last part of its panel's id.</param>
/// <param name="Board">What it is made of.</param>
/// <param name="Top">Height of its upper face above the lower edge of the carcass; nothing spaces all such shelves of a bay evenly.</param>
/// <param name="FrontInset">How far its front edge stands behind the front of the carcass.</param>
/// <param name="Source">Where the user asked for it.</param>
internal sealed record ShelfSpec(string Name, Board Board, Size? Top, Size FrontInset, SourceSpan Source);

/// <summary>Loose shelves on rows of pins. Lengths in mm.</summary>
/// <param name="Count">How many shelves are cut.</param>
/// <param name="Board">What they are made of.</param>
/// <param name="Pin">What they lie on.</param>
/// <param name="SetBack">From the front of the bay to the first row.</param>
/// <param name="Pitch">Between two holes, and the grid of the distance between the rows.</param>
/// <param name="FromEnds">From the floor and the ceiling of the bay to the first and last hole.</param>
/// <param name="Play">Left free at each end of a shelf.</param>
/// <param name="FrontInset">How far a shelf stands behind the front.</param>
/// <param name="Source">Where the user asked for it.</param>
internal sealed record LooseShelvesSpec(int Count, Board Board, ShelfPin Pin, Size SetBack, Size Pitch, Size FromEnds, Size Play, Size FrontInset, SourceSpan Source)
{
    /// <summary>Edge bands, by where the edge looks.</summary>
    public ImmutableArray<(Direction Edge, Size Thickness)> Bands { get; init; } = [];
}

/// <summary>A pair of slides and how it sits. Lengths in mm.</summary>
/// <param name="Slide">The pair.</param>
/// <param name="SetBack">From the front of the bay to the slides.</param>
/// <param name="RearClearance">Kept free behind them for cables.</param>
/// <param name="Packer">What packers are cut from where open doors stand in the way.</param>
/// <param name="LoadKg">What stands on what slides.</param>
/// <param name="Source">Where the user asked for it.</param>
internal sealed record SlidePairSpec(Slide Slide, Size SetBack, Size RearClearance, Board Packer, Size? LoadKg, SourceSpan Source);

/// <summary>A shelf on two runners that slide. Lengths in mm.</summary>
/// <param name="Slides">The pair of slides.</param>
/// <param name="Board">What shelf and runners are made of.</param>
/// <param name="RunnerHeight">Height of the runners.</param>
/// <param name="AboveFloor">From the floor of the bay to the runners.</param>
/// <param name="Shelf">How far the shelf reaches beyond the slides, at the front and behind.</param>
/// <param name="Runner">How far the runners reach beyond the slides, at the front and behind.</param>
/// <param name="Latch">What holds it closed, or nothing.</param>
/// <param name="Source">Where the user asked for it.</param>
internal sealed record SlidingShelfSpec(
    SlidePairSpec Slides, Board Board, Size RunnerHeight, Size AboveFloor, (Size Front, Size Back) Shelf, (Size Front, Size Back) Runner, TwoPartSpec? Latch, SourceSpan Source)
{
    /// <summary>Edge bands of the shelf, by where the edge looks.</summary>
    public ImmutableArray<(Direction Edge, Size Thickness)> Bands { get; init; } = [];
}

/// <summary>Drawers that share the height of a bay. Lengths in mm.</summary>
/// <param name="Heights">Of each front from the lowest up; nothing shares what is left.</param>
/// <param name="Slides">The pair of slides of each.</param>
/// <param name="Box">What the box is made of.</param>
/// <param name="Bottom">What its bottom is made of.</param>
/// <param name="IsBottomUnder">Whether the bottom lies under the box; else it sits in a groove of its four sides.</param>
/// <param name="Joint">How the box is joined.</param>
/// <param name="Front">What the fronts are made of.</param>
/// <param name="Mount">How the fronts cover the carcass.</param>
/// <param name="Reveal">From the outside of the carcass to the fronts.</param>
/// <param name="Gap">Between two fronts, and around one between the sides.</param>
/// <param name="Bands">Thickness of the band on all four edges of a front, or nothing.</param>
/// <param name="Handle">On each front, or nothing.</param>
/// <param name="Source">Where the user asked for it.</param>
internal sealed record DrawersSpec(
    ImmutableArray<Size?> Heights, SlidePairSpec Slides, Board Box, Board Bottom, bool IsBottomUnder, JointRule Joint, Board Front,
    DoorMount Mount, Size Reveal, Size Gap, Size? Bands, HandleSpec? Handle, SourceSpan Source);

/// <summary>A handle and where it sits: upright at the edge that opens of a door, level in the middle of a drawer. Lengths in mm.</summary>
/// <param name="Pattern">The handle.</param>
/// <param name="FromEdge">From the edge that opens to its middle.</param>
/// <param name="FromTop">From the upper edge to its middle, or nothing.</param>
/// <param name="FromBottom">From the lower edge to its middle, or nothing; nothing at all is the middle.</param>
internal sealed record HandleSpec(HardwarePattern Pattern, Size FromEdge, Size? FromTop, Size? FromBottom);

/// <summary>A catch or a latch: a body on what stands and a keeper on what moves, or the other way.</summary>
/// <param name="Body">The body.</param>
/// <param name="Keeper">The keeper.</param>
internal sealed record TwoPartSpec(HardwarePattern Body, HardwarePattern Keeper);

/// <summary>Sheets fixed to inside faces of a bay.</summary>
/// <param name="Board">What they are cut from.</param>
/// <param name="Faces">Which sides of the bay: left, right, back, bottom, top.</param>
/// <param name="Joint">The screws that hold them, or nothing.</param>
internal sealed record LiningSpec(Board Board, ImmutableArray<Direction> Faces, JointRule? Joint);

/// <summary>How doors hang.</summary>
internal enum Hanging
{
    /// <summary>One, hinged on the left.</summary>
    Left,

    /// <summary>One, hinged on the right.</summary>
    Right,

    /// <summary>Two, hinged on the outside.</summary>
    Pair,
}

/// <summary>How a front covers the panels around its opening.</summary>
internal enum DoorMount
{
    /// <summary>Over the whole edge of an outer panel, over half of one it shares with its neighbour.</summary>
    Overlay,

    /// <summary>Over half the edge of the sides, which a neighbouring cabinet's doors share.</summary>
    HalfOverlay,

    /// <summary>Between the panels.</summary>
    Inset,
}

/// <summary>Doors before an opening. Lengths in mm.</summary>
/// <param name="Board">What they are; a bought door's thickness is its board's.</param>
/// <param name="Hanging">How they hang.</param>
/// <param name="Mount">How they cover the carcass.</param>
/// <param name="Reveal">From the outside of the carcass to the doors.</param>
/// <param name="Gap">Between two doors, and around doors between the panels.</param>
/// <param name="Hinge">The hinge.</param>
/// <param name="Source">Where the user asked for it.</param>
internal sealed record DoorsSpec(Board Board, Hanging Hanging, DoorMount Mount, Size Reveal, Size Gap, Hinge Hinge, SourceSpan Source)
{
    /// <summary>Width and height of one door, each where the user gave it.</summary>
    public (Size? Width, Size? Height) Actual { get; init; }

    /// <summary>Width and height of the grid a bought door is made for, gaps included, each where the user gave it.</summary>
    public (Size? Width, Size? Height) Module { get; init; }

    /// <summary>How far doors between the panels stand behind the front.</summary>
    public Size Recess { get; init; } = Size.Zero;

    /// <summary>Of doors that come bored, each cup's centre from the lower edge; empty for doors bored here.</summary>
    public ImmutableArray<Size> Cups { get; init; } = [];

    /// <summary>Number of hinges of each, or nothing where their mass decides.</summary>
    public int? Hinges { get; init; }

    /// <summary>Thickness of the band on all four edges, or nothing.</summary>
    public Size? Bands { get; init; }

    /// <summary>On each door, or nothing.</summary>
    public HandleSpec? Handle { get; init; }

    /// <summary>What holds each closed, under the panel above, or nothing.</summary>
    public TwoPartSpec? Catch { get; init; }

    /// <summary>A strip behind the gap between two doors, by board and width, or nothing.</summary>
    public (Board Board, Size Width)? Strip { get; init; }

    /// <summary>Thickness of a soft strip between doors and carcass once the doors are closed, or nothing.</summary>
    public Size? Gasket { get; init; }

    /// <summary>A sheet on the back of each, or nothing.</summary>
    public Board? Lining { get; init; }

    /// <summary>Number of doors.</summary>
    public int Count => Hanging == Hanging.Pair ? 2 : 1;
}

/// <summary>Four castors under the bottom. Lengths in mm.</summary>
/// <param name="Castor">The castor.</param>
/// <param name="Clearance">Kept free around the swivelling wheel.</param>
/// <param name="Braked">The sides of the cabinet on which they have brakes: front, back, left or right.</param>
internal sealed record CastorsSpec(Castor Castor, Size Clearance, ImmutableArray<Direction> Braked);

/// <summary>Levelling feet under the bottom. Lengths in mm.</summary>
/// <param name="Foot">The foot.</param>
/// <param name="Inset">From the bottom's edges, or from sides that hang down, to the plates.</param>
/// <param name="MoreAt">Largest distance between two feet of a row.</param>
internal sealed record FeetSpec(Foot Foot, Size Inset, Size MoreAt);

/// <summary>
/// Boards below the bottom: between the sides where the bottom is raised, else before the feet, as wide as the cabinet. Lengths in mm.
/// </summary>
/// <param name="Board">What they are.</param>
/// <param name="SetBack">From the front edge of the carcass to the front one.</param>
/// <param name="HasRear">Whether there is one at the rear as well.</param>
/// <param name="Source">Where the user asked for it.</param>
internal sealed record PlinthSpec(Board Board, Size SetBack, bool HasRear, SourceSpan Source);

/// <summary>A finished panel over the top, screwed from beneath. Lengths in mm.</summary>
/// <param name="Board">What it is.</param>
/// <param name="Overhang">How far it stands over the carcass at the front, at both sides and behind.</param>
/// <param name="Joint">Holds it.</param>
/// <param name="Source">Where the user asked for it.</param>
internal sealed record AppliedTopSpec(Board Board, (Size Front, Size Sides, Size Back) Overhang, JointRule Joint, SourceSpan Source)
{
    /// <summary>Whether it is two panels side by side.</summary>
    public bool IsInTwo { get; init; }

    /// <summary>Where two panels meet, from the left of the carcass; the middle where it is nothing.</summary>
    public Size? JointLine { get; init; }

    /// <summary>Left to right of a bought piece; the overhang at the sides follows.</summary>
    public Size? Width { get; init; }

    /// <summary>Front to back of a bought piece; the overhang behind follows.</summary>
    public Size? Depth { get; init; }
}
