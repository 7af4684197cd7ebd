using System.Collections.Immutable;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;

namespace ShopDrawings;

/// <summary>The whole result, ready for exporters. Made by <see cref="Shop.Draw"/>. Immutable.</summary>
/// <param name="Design">The resolved design.</param>
/// <param name="Findings">What the checks say.</param>
/// <param name="Drawings">Every drawing and the format it is meant for.</param>
public sealed record Job(Design Design, ImmutableArray<Finding> Findings, ImmutableArray<JobDrawing> Drawings)
{
    /// <summary>The sheets of paper: the whole first, then each panel. Those that are written one by one are among the drawings too.</summary>
    public ImmutableArray<Drawing> Sheets { get; init; } = [];

    /// <summary>Ids of the panels that must not be cut and so get no machine file, in assembly order.</summary>
    public ImmutableArray<string> Withheld =>
        [.. Design.Assembly.Panels.Select(p => p.Id).Where(id => Findings.Any(f => f.Withholds && f.Panels.Contains(id)))];
}

/// <summary>A drawing of a job.</summary>
/// <param name="Path">Where it goes in the output folder, with <c>/</c> between folders, without an extension.</param>
/// <param name="Format">The format it is meant for: <c>dxf</c>.</param>
/// <param name="Drawing">The drawing.</param>
public sealed record JobDrawing(string Path, string Format, Drawing Drawing)
{
    /// <summary>An exporter with the settings this drawing is meant for; it counts where the set's own is of its type.</summary>
    public IDrawingExporter? Exporter { get; init; }
}
