using System.Collections.Immutable;
using ShopDrawings.Cutting;

namespace ShopDrawings.Drafting;

/// <summary>A stock sheet with what is cut from it, as it is to be drawn.</summary>
/// <param name="Name">The sheet's name.</param>
/// <param name="Material">What it is a sheet of, for the title block.</param>
/// <param name="Project">What is built.</param>
/// <param name="Stock">Its size, trim and grain.</param>
/// <param name="Pieces">What it is cut into, but for offcuts.</param>
/// <param name="Offcuts">What is left over, worth keeping or not.</param>
/// <param name="Cuts">The cuts with their numbers; none where a router cuts.</param>
public sealed record StockSheet(string Name, string Material, string Project, StockSize Stock, ImmutableArray<StockPiece> Pieces, ImmutableArray<SheetArea> Offcuts, ImmutableArray<PlacedCut> Cuts)
{
    /// <summary>What the drawing is called in the title block.</summary>
    public string Kind { get; init; } = "Cutting plan";

    /// <summary>Whether it is printed on the smallest paper, which any printer holds, however small its scale.</summary>
    public bool IsOnSmallestPaper { get; init; }

    /// <summary>What is said beside the name.</summary>
    public string Summary { get; init; } = "";

    /// <summary>What is said beside the title block.</summary>
    public ImmutableArray<string> Notes { get; init; } = [];

    /// <summary>A list on the drawing, a line each.</summary>
    public ImmutableArray<string> List { get; init; } = [];

    /// <summary>Edges of what a store cuts, where the pieces are cut from it at home.</summary>
    public ImmutableArray<SheetArea> Blanks { get; init; } = [];

    /// <summary>Names of panels that must not be cut: the sheet is stamped.</summary>
    public ImmutableArray<string> Withheld { get; init; } = [];
}

/// <summary>A piece on a stock sheet: a panel, or a blank.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Area">Where it lies.</param>
/// <param name="IsTurned">Whether its length lies across the sheet's.</param>
/// <param name="Bands">The sides, as they lie on the sheet, that are banded.</param>
public sealed record StockPiece(string Name, SheetArea Area, bool IsTurned, ImmutableArray<PieceEdge> Bands);
