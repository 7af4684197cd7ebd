using System.Collections.Immutable;
using ShopDrawings.Kernel;
using ShopDrawings.Yaml;

namespace ShopDrawings.ProjectFile;

/// <summary>A project file as it was written: sound in itself, references not yet followed, defaults not yet filled in.</summary>
internal sealed record ProjectModel(
    string Name,
    ImmutableArray<(Word Name, BoardEntry Value)> Boards,
    ImmutableArray<Word> CatalogueNames,
    CatalogueEntries Catalogue,
    CabinetEntry? Cabinet,
    ImmutableArray<(Word Name, PanelEntry Value)> Panels,
    ImmutableArray<JointEntry> Joints,
    ImmutableArray<(Word Name, FittingEntry Value)> Fittings,
    ImmutableArray<HoleEntry> Holes,
    ImmutableArray<LineEntry> Lines,
    DrillingHabit Methods,
    EdgeBanding Banding,
    ChecksEntry Checks,
    DrawingEntry Drawings,
    LabelEntry Labels,
    TemplatesEntry Templates,
    GuidesEntry? Guides,
    ImmutableArray<Word> MachineFiles,
    ImmutableArray<(Word Name, SheetEntry Value)> Sheets,
    ImmutableArray<(Word Name, ImmutableArray<StockEntry> Value)> Stock,
    CuttingEntry? Cutting,
    SourceSpan At)
{
    /// <summary>What stands in the catalogues it names, in their order.</summary>
    public ImmutableArray<CatalogueEntries> Catalogues { get; init; } = [];
}

/// <summary>A board by its dimensions.</summary>
internal sealed record BoardEntry(BoardKind Kind, Size Thickness, string Label, bool? Grain, Size? Density);

/// <summary>Bought parts and machines by name, in the form of the shipped catalogue; each is made with its name when it is looked up.</summary>
internal sealed record CatalogueEntries(
    ImmutableArray<(Word Name, Fastener Value)> Fasteners, ImmutableArray<(Word Name, Hinge Value)> Hinges,
    ImmutableArray<(Word Name, Slide Value)> Slides, ImmutableArray<(Word Name, Castor Value)> Castors, ImmutableArray<(Word Name, Foot Value)> Feet,
    ImmutableArray<(Word Name, ShelfPin Value)> Pins, ImmutableArray<(Word Name, HardwareEntry Value)> Hardware, ImmutableArray<(Word Name, MachineEntry Value)> Machines);

/// <summary>A bought part by its block and what is drilled, cut and marked for it.</summary>
internal sealed record HardwareEntry(
    Size Length, Size Width, Size Height,
    ImmutableArray<PatternBoreEntry> Bores, ImmutableArray<SlotEntry> Slots, ImmutableArray<CutOutEntry> CutOuts, ImmutableArray<MarkEntry> Marks);

/// <summary>A bore a bought part needs.</summary>
internal sealed record PatternBoreEntry(Position At, Size Diameter, Size? Depth);

/// <summary>The cabinet.</summary>
internal sealed record CabinetEntry(
    Size? Width, Size? Height, Size? Depth, InsideEntry? Inside, Size? Step, Word Board, bool IsTopOver, bool IsBottomUnder, Size Recess, BackEntry? Back,
    BayEntry Bay, CastorsEntry? Castors, FeetEntry? Feet, PlinthEntry? Plinth, AppliedTopEntry? AppliedTop, ImmutableArray<(Direction Edge, Size Thickness)> Bands,
    JointRuleEntry? Joint, CornersEntry? Corners, SourceSpan At);

/// <summary>Inside sizes.</summary>
internal sealed record InsideEntry(Size? Width, Size? Height, Size? Depth);

/// <summary>The back of the carcass.</summary>
internal sealed record BackEntry(Word Board, BackFit Fit, Size? Inset, Size? GrooveDepth, Size? GroovePlay, Size? EndPlay, Word? Screw, SourceSpan At);

/// <summary>A bay, or the whole inside.</summary>
internal sealed record BayEntry(
    Word? Name, Size? Height, Size? Width, ImmutableArray<BayEntry> Stacked, ImmutableArray<BayEntry> SideBySide, ShelvesEntry Shelves,
    LooseShelvesEntry? Loose, SlidingShelfEntry? Sliding, DrawersEntry? Drawers, LiningEntry? Lining, DoorsEntry? Doors, SourceSpan At);

/// <summary>Loose shelves on pins.</summary>
internal sealed record LooseShelvesEntry(int Count, Word? Board, Word? Pin, Size? SetBack, Size? FromEnds, Size? Play, Size? FrontInset, SourceSpan At);

/// <summary>A pair of slides, as part of what slides on it.</summary>
internal sealed record SlidesEntry(Word Slide, Size? SetBack, Size? RearClearance, Word? Packer, Size? Load);

/// <summary>A shelf on slides.</summary>
internal sealed record SlidingShelfEntry(
    SlidesEntry Slides, Word? Board, Size? RunnerHeight, Size? AboveFloor, BeyondEntry? Beyond, TwoPartEntry? Latch, SourceSpan At);

/// <summary>How far shelf and runners reach beyond the slides.</summary>
internal sealed record BeyondEntry(Size ShelfFront, Size ShelfBack, Size RunnerFront, Size RunnerBack);

/// <summary>Drawers that share the height of a bay: a number of equal ones, or the height of each front.</summary>
internal sealed record DrawersEntry(
    int? Count, ImmutableArray<Size?> Heights, SlidesEntry Slides, Word? Board, Word Bottom, bool IsBottomUnder, JointRuleEntry? Joint, Word? Front, DoorMount Mount,
    Size? Reveal, Size? Gap, Size? Bands, HandleEntry? Handle, SourceSpan At);

/// <summary>A handle and its place.</summary>
internal sealed record HandleEntry(Word Hardware, Size? FromEdge, Size? FromTop, Size? FromBottom, SourceSpan At);

/// <summary>A body and its keeper.</summary>
internal sealed record TwoPartEntry(Word Body, Word Keeper);

/// <summary>Sheets on the inside faces of a bay.</summary>
internal sealed record LiningEntry(Word Board, ImmutableArray<Direction> Faces, Word? Screw);

/// <summary>Doors before the cabinet or a bay.</summary>
internal sealed record DoorsEntry(
    Word Board, Hanging Hanging, DoorMount Mount, Size? Width, Size? Height, DoorModuleEntry? Module, Size? Reveal, Size? Gap, Size? Recess, Word? Hinge,
    int? Hinges, ImmutableArray<Size> Cups, Size? Bands, HandleEntry? Handle, TwoPartEntry? Catch, StripEntry? Strip, Size? Gasket, Word? Lining, SourceSpan At);

/// <summary>A strip behind the gap between two doors.</summary>
internal sealed record StripEntry(Word Board, Size Width);

/// <summary>The grid a bought door is made for.</summary>
internal sealed record DoorModuleEntry(Size? Width, Size? Height);

/// <summary>Castors under the bottom.</summary>
internal sealed record CastorsEntry(Word Castor, Size? Clearance, ImmutableArray<Direction> Braked);

/// <summary>Levelling feet under the bottom.</summary>
internal sealed record FeetEntry(Word Foot, Size? Inset, Size? MoreAt, SourceSpan At);

/// <summary>Boards below the bottom.</summary>
internal sealed record PlinthEntry(Word Board, Size? SetBack, bool HasRear, SourceSpan At);

/// <summary>A panel over the top.</summary>
internal sealed record AppliedTopEntry(Word Board, OverhangEntry? Overhang, PieceEntry? Piece, int Pieces, Size? JointLine, Word? Screw, SourceSpan At);

/// <summary>Sizes a piece of an applied top is bought in.</summary>
internal sealed record PieceEntry(Size? Width, Size? Depth);

/// <summary>How far an applied top stands over.</summary>
internal sealed record OverhangEntry(Size Front, Size? Sides, Size? Back);

/// <summary>Either a number of even shelves or each by itself.</summary>
internal sealed record ShelvesEntry(int Even, ImmutableArray<ShelfEntry> Each, SourceSpan At);

/// <summary>One fixed shelf.</summary>
internal sealed record ShelfEntry(Word? Name, Word? Board, Size? Top, Size FrontInset, SourceSpan At);

/// <summary>A hole at a named place.</summary>
internal sealed record HoleEntry(Word Panel, Surface Face, ImmutableArray<(Direction Edge, Size Distance)> From, Size Diameter, Size? Depth, MethodEntry? Method, SourceSpan At);

/// <summary>How a bore is made, by its own key.</summary>
internal sealed record MethodEntry(BoreMethod Method, SourceSpan At);

/// <summary>A line to mark between two named places.</summary>
internal sealed record LineEntry(
    Word Panel, Surface Face, ImmutableArray<(Direction Edge, Size Distance)> From, ImmutableArray<(Direction Edge, Size Distance)> To, SourceSpan At);

/// <summary>How two panels are joined: a fastener alone, or with all that goes with it.</summary>
internal sealed record JointRuleEntry(
    Word? Fastener, Word? Beside, Size? Housing, Size? HousingPlay, Size? Sunk, Surface? Face, Size? EndDistance, Size? Pitch, SourceSpan At);

/// <summary>Joints of the carcass that differ from the usual one.</summary>
internal sealed record CornersEntry(
    JointRuleEntry? Top, JointRuleEntry? Bottom, JointRuleEntry? TopLeft, JointRuleEntry? TopRight, JointRuleEntry? BottomLeft, JointRuleEntry? BottomRight,
    JointRuleEntry? Shelves, JointRuleEntry? Dividers);

/// <summary>A panel given by itself.</summary>
internal sealed record PanelEntry(
    Word Board, Size Length, Size Width, ImmutableArray<OutlineStep> Outline, ImmutableArray<(Direction Edge, Size Thickness)> Bands,
    ImmutableArray<BoreEntry> Bores, ImmutableArray<SlotEntry> Slots, ImmutableArray<CutOutEntry> CutOuts, ImmutableArray<GrooveEntry> Grooves,
    ImmutableArray<MarkEntry> Marks, PlaceEntry? Place, SourceSpan At);

/// <summary>Where a panel stands: the lowest corner of its block, and which way it is turned.</summary>
internal sealed record PlaceEntry(ImmutableArray<Size> Corner, Direction Outside, Direction? Along, SourceSpan At);

/// <summary>The next corner of an outline, straight or through a point on an arc.</summary>
internal sealed record OutlineStep(Position To, Position? Through, SourceSpan At);

/// <summary>A bore in a face or an edge.</summary>
internal sealed record BoreEntry(Surface? Face, Direction? Edge, ImmutableArray<Size> Centre, Size Diameter, Size? Depth, MethodEntry? Method, SourceSpan At);

/// <summary>A through slot.</summary>
internal sealed record SlotEntry(Position From, Position To, Size Width, SourceSpan At);

/// <summary>An opening of one of three forms.</summary>
internal sealed record CutOutEntry(CircleEntry? Circle, RectangleEntry? Rectangle, ImmutableArray<OutlineStep> Outline, SourceSpan At);

/// <summary>A round opening.</summary>
internal sealed record CircleEntry(Position Centre, Size Diameter);

/// <summary>A rectangular opening by its lowest corner.</summary>
internal sealed record RectangleEntry(Position Corner, Size Length, Size Width, Size CornerRadius, SourceSpan At);

/// <summary>A groove by its centre line.</summary>
internal sealed record GrooveEntry(Surface Face, Position From, Position To, Size Width, Size Depth, SourceSpan At);

/// <summary>A scribed line or centre.</summary>
internal sealed record MarkEntry(Surface Face, Position? Centre, Position? From, Position? To, SourceSpan At);

/// <summary>A joint between two panels.</summary>
internal sealed record JointEntry(Word Through, Word Into, JointRuleEntry? Joint, SourceSpan At);

/// <summary>A piece of hardware on a panel, by its place or by distances from two edges.</summary>
internal sealed record FittingEntry(
    Word Hardware, Word Panel, Surface Face, Position? At, ImmutableArray<(Direction Edge, Size Distance)> From, int QuarterTurns, SourceSpan Source);

/// <summary>Changed limits and waived rules.</summary>
internal sealed record ChecksEntry(ImmutableArray<(CheckLimit Limit, Size Value)> Limits, ImmutableArray<(string Rule, string Reason)> Waivers)
{
    /// <summary>Nothing changed.</summary>
    public static ChecksEntry None { get; } = new([], []);
}
