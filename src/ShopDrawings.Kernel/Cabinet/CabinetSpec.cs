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

    /// <summary>Overlay doors, or none.</summary>
    public DoorsSpec? Doors { get; init; }

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
/// <param name="Screwed">Screws, for what is always screwed: the edges of a back, runners, drawers.</param>
internal sealed record CarcassJoints(
    JointRule TopLeft, JointRule TopRight, JointRule BottomLeft, JointRule BottomRight, JointRule Shelves, JointRule Dividers, JointRule Screwed)
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
/// <param name="Shelves">Fixed shelves in it.</param>
/// <param name="Sliding">An equipment shelf in it, or none.</param>
/// <param name="Lining">Sheets on its inside faces, or none.</param>
/// <param name="Source">Where the user asked for it.</param>
internal sealed record BaySpec(
    string Name, Size? Clear, Split Split, ImmutableArray<BaySpec> Bays, ImmutableArray<ShelfSpec> Shelves, SlidingShelfSpec? Sliding, LiningSpec? Lining, SourceSpan Source);

/// <summary>A fixed shelf. Lengths in mm.</summary>
/// <param name="Name">The last part of its panel's id.</param>
/// <param name="Board">What it is made of.</param>
/// <param name="Top">Height of its upper face above the lower edge of the carcass; nothing spaces all such shelves of a bay evenly.</param>
/// <param name="FrontInset">How far its front edge stands behind the front of the carcass.</param>
/// <param name="Source">Where the user asked for it.</param>
internal sealed record ShelfSpec(string Name, Board Board, Size? Top, Size FrontInset, SourceSpan Source);

/// <summary>A shelf on two runners that slide. Lengths in mm.</summary>
/// <param name="Slide">The pair of slides.</param>
/// <param name="Board">What shelf and runners are made of.</param>
/// <param name="RunnerHeight">Height of the runners.</param>
/// <param name="AboveFloor">From the floor of the bay to the runners.</param>
/// <param name="SetBack">From the front edge of the carcass to the slides.</param>
/// <param name="RearClearance">Kept free behind the slides for cables.</param>
/// <param name="LoadKg">What stands on it.</param>
/// <param name="Source">Where the user asked for it.</param>
internal sealed record SlidingShelfSpec(
    Slide Slide, Board Board, Size RunnerHeight, Size AboveFloor, Size SetBack, Size RearClearance, Size? LoadKg, SourceSpan Source);

/// <summary>Sheets fixed to inside faces of a bay.</summary>
/// <param name="Board">What they are cut from.</param>
/// <param name="Faces">Which sides of the bay: left, right, back, bottom, top.</param>
internal sealed record LiningSpec(Board Board, ImmutableArray<Direction> Faces);

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

/// <summary>Doors that lie over the front edges of the carcass. Lengths in mm.</summary>
/// <param name="Board">What they are; a bought door's thickness is its board's.</param>
/// <param name="Hanging">How they hang.</param>
/// <param name="Actual">Width and height of one door, each where the user gave it.</param>
/// <param name="Module">Width and height of the grid a bought door is made for, gaps included, each where the user gave it.</param>
/// <param name="Reveal">From the outside of the carcass to the doors.</param>
/// <param name="Gap">Between two doors.</param>
/// <param name="Hinge">The hinge.</param>
/// <param name="Bands">Thickness of the band on all four edges, or nothing.</param>
/// <param name="Source">Where the user asked for it.</param>
internal sealed record DoorsSpec(
    Board Board, Hanging Hanging, (Size? Width, Size? Height) Actual, (Size? Width, Size? Height) Module, Size Reveal, Size Gap, Hinge Hinge, Size? Bands, SourceSpan Source)
{
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
