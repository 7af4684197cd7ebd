using System.Collections.Immutable;
using ShopDrawings.Cutting;

namespace ShopDrawings.Drafting;

/// <summary>A stock sheet with what is cut from it, as it is to be drawn.</summary>
/// <param name="Name">The sheet's name.</param>
/// <param name="Material">What it is a sheet of, for the title block.</param>
/// <param name="Project">What is built.</param>
/// <param name="Plan">Which part lies where, and the offcuts.</param>
/// <param name="Panels">The parts by name, as they lie.</param>
/// <param name="Cuts">The cuts in order; none where a router cuts.</param>
/// <param name="Notes">What is said beside the title block.</param>
public sealed record StockSheet(string Name, string Material, string Project, SheetPlan Plan, ImmutableArray<StockPanel> Panels, ImmutableArray<PlacedCut> Cuts, ImmutableArray<string> Notes)
{
    /// <summary>Names of panels that must not be cut: the sheet is stamped.</summary>
    public ImmutableArray<string> Withheld { get; init; } = [];
}

/// <summary>A panel on a stock sheet.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Place">Where it lies.</param>
/// <param name="Bands">The sides, as they lie on the sheet, that are banded.</param>
public sealed record StockPanel(string Name, ShopDrawings.Cutting.Placement Place, ImmutableArray<PieceEdge> Bands);
