using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>
/// A plain carcass by its outside sizes, in mm: two sides that run past top and bottom, a back, fixed shelves, all screwed together.
/// Everything a user may leave out has its default here.
/// </summary>
/// <param name="Width">Outside, left to right.</param>
/// <param name="Height">Outside, bottom to top.</param>
/// <param name="Depth">Outside, front to back.</param>
/// <param name="Board">What it is made of.</param>
/// <param name="Back">The back, or nothing for an open one.</param>
/// <param name="Shelves">Fixed shelves in the user's order.</param>
/// <param name="Screw">Holds every joint.</param>
/// <param name="Row">How the screws spread.</param>
internal sealed record Carcass(
    Size Width, Size Height, Size Depth, Board Board, CarcassBack? Back, ImmutableArray<CarcassShelf> Shelves, Screw Screw, RowRule Row);

/// <summary>How a back sits in the carcass.</summary>
internal enum BackFit
{
    /// <summary>Held in a groove of sides, top and bottom.</summary>
    Groove,

    /// <summary>Between sides, top and bottom, screwed all round.</summary>
    Between,
}

/// <summary>The back of a carcass. Lengths in mm.</summary>
/// <param name="Board">What it is made of.</param>
/// <param name="Fit">How it sits.</param>
/// <param name="Inset">From the rear edge of the carcass to the groove, or to the back itself.</param>
/// <param name="GrooveDepth">Depth of the groove.</param>
/// <param name="GroovePlay">How much wider the groove is than the back is thick.</param>
/// <param name="EndPlay">Left free between the back and the bottom of the groove, on each side.</param>
internal sealed record CarcassBack(Board Board, BackFit Fit, Size Inset, Size GrooveDepth, Size GroovePlay, Size EndPlay);

/// <summary>A fixed shelf. Lengths in mm.</summary>
/// <param name="Id">Its panel's id.</param>
/// <param name="Board">What it is made of.</param>
/// <param name="Top">Height of its upper face above the lower edge of the carcass; nothing spaces all such shelves evenly.</param>
/// <param name="FrontInset">How far its front edge stands behind the front of the carcass.</param>
/// <param name="Source">Where the user asked for it.</param>
internal sealed record CarcassShelf(string Id, Board Board, Size? Top, Size FrontInset, SourceSpan Source);
