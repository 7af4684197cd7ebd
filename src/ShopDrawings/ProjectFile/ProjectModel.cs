using System.Collections.Immutable;
using ShopDrawings.Kernel;
using ShopDrawings.Yaml;

namespace ShopDrawings.ProjectFile;

/// <summary>A project file as it was written: sound in itself, references not yet followed, defaults not yet filled in.</summary>
internal sealed record ProjectModel(
    string Name,
    ImmutableArray<(Word Name, BoardEntry Value)> Boards,
    ImmutableArray<(Word Name, ScrewEntry Value)> Screws,
    ImmutableArray<(Word Name, HardwareEntry Value)> Hardware,
    CabinetEntry? Cabinet,
    ImmutableArray<(Word Name, PanelEntry Value)> Panels,
    ImmutableArray<JointEntry> Joints,
    ImmutableArray<(Word Name, FittingEntry Value)> Fittings,
    ChecksEntry Checks,
    SourceSpan At);

/// <summary>A board by its dimensions.</summary>
internal sealed record BoardEntry(BoardKind Kind, Size Thickness, string Label, bool? Grain, Size? Density);

/// <summary>A screw by its dimensions.</summary>
internal sealed record ScrewEntry(Size Diameter, Size Length, Size HeadDiameter, Size Clearance, Size EdgePilot);

/// <summary>A bought part by its block and its holes.</summary>
internal sealed record HardwareEntry(Size Length, Size Width, Size Height, ImmutableArray<PatternBore> Bores);

/// <summary>The carcass.</summary>
internal sealed record CabinetEntry(
    Size Width, Size Height, Size Depth, Word Board, BackEntry? Back, ShelvesEntry Shelves, Word? Screw, RowsEntry? Rows, SourceSpan At);

/// <summary>The back of the carcass.</summary>
internal sealed record BackEntry(Word Board, BackFit Fit, Size? Inset, Size? GrooveDepth, Size? GroovePlay, Size? EndPlay, SourceSpan At);

/// <summary>Either a number of even shelves or each by itself.</summary>
internal sealed record ShelvesEntry(int Even, ImmutableArray<ShelfEntry> Each, SourceSpan At);

/// <summary>One fixed shelf.</summary>
internal sealed record ShelfEntry(Word? Name, Word? Board, Size? Top, Size FrontInset, SourceSpan At);

/// <summary>How screws spread along a joint.</summary>
internal sealed record RowsEntry(Size? EndDistance, Size? Pitch);

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
internal sealed record BoreEntry(Surface? Face, Direction? Edge, ImmutableArray<Size> Centre, Size Diameter, Size? Depth, SourceSpan At);

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

/// <summary>A screwed joint between two panels.</summary>
internal sealed record JointEntry(Word Through, Word Into, Word? Screw, RowsEntry? Rows, SourceSpan At);

/// <summary>A piece of hardware on a panel.</summary>
internal sealed record FittingEntry(Word Hardware, Word Panel, Surface Face, Position Centre, int QuarterTurns);

/// <summary>Changed limits and waived rules.</summary>
internal sealed record ChecksEntry(ImmutableArray<(CheckLimit Limit, Size Value)> Limits, ImmutableArray<(string Rule, string Reason)> Waivers)
{
    /// <summary>Nothing changed.</summary>
    public static ChecksEntry None { get; } = new([], []);
}
