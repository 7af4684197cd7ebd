using System.Collections.Immutable;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;

namespace ShopDrawings;

/// <summary>The resolved design. Made by <see cref="Shop.Resolve"/>. Immutable.</summary>
/// <param name="Assembly">Every panel, joint and piece of hardware.</param>
/// <param name="Checks">What the user says about the checks.</param>
/// <param name="Lengths">How messages and lists print lengths.</param>
public sealed record Design(Assembly Assembly, CheckSettings Checks, LengthStyle Lengths)
{
    /// <summary>How its sheets are drawn, and the files they become.</summary>
    public DrawingSettings Drawings { get; init; } = new(new(Lengths.IsInches ? DrawingStandard.Asme : DrawingStandard.Iso, Lengths));

    /// <summary>The page of labels for its parts, or nothing for none.</summary>
    public LabelSheet? Labels { get; init; } = LabelSheet.PlainA4;

    /// <summary>Which templates are printed, and on what.</summary>
    public TemplateSettings Templates { get; init; } = new(TemplateChoice.Marked, Lengths.IsInches ? TemplatePaper.Letter : TemplatePaper.A4, PrinterScale.True);

    /// <summary>The drill guides, or nothing where the project asks for none.</summary>
    internal GuideJob? Guides { get; init; }

    /// <summary>How edges are banded, and how much band is bought.</summary>
    public EdgeBanding Banding { get; init; } = EdgeBanding.ByHand;

    /// <summary>How the panels are cut from the stock, board by board; empty where the project gives no stock.</summary>
    public ImmutableArray<BoardCutting> Cutting { get; init; } = [];

    /// <summary>Boards that panels are cut from and no stock is given of, while it is of others.</summary>
    internal ImmutableArray<string> BoardsWithoutStock => Cutting.IsEmpty ? [] : [.. Assembly.Panels.Select(p => p.Board.Name).Distinct().Where(b => Cutting.All(c => c.Board != b))];

    /// <summary>What each machine does that files are made for.</summary>
    public ImmutableArray<MachineJob> Machining { get; init; } = [];

    /// <summary>The machines whose files are written, each once: those of panels, then that of the drill guides.</summary>
    public IEnumerable<MachineProfile> Profiles => Machining.Select(m => m.Profile).Concat(Guides is { } guides ? [guides.Profile] : Array.Empty<MachineProfile>()).DistinctBy(p => p.Machine.Name);
}
