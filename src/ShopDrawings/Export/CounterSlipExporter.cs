using System.Collections.Immutable;

namespace ShopDrawings;

/// <summary>The slips for a store's counter, a page each, to be printed: <c>lists/store-cuts.pdf</c>; nothing where no store cuts.</summary>
public sealed class CounterSlipExporter : IJobExporter
{
    /// <inheritdoc/>
    public string Format => "counter-slip";

    /// <inheritdoc/>
    public IEnumerable<Output> Export(Job job)
    {
        ArgumentNullException.ThrowIfNull(job);
        var design = job.Design;
        return Of(design.Cutting, design.Assembly.Name, design.Drawings, job.Withheld);
    }

    internal static IEnumerable<Output> Of(ImmutableArray<BoardCutting> boards, string project, DrawingSettings drawings, ImmutableArray<string> withheld)
    {
        var slips = CuttingDrawings.Slips(boards, project, drawings.Sheets, withheld);
        if (!slips.IsEmpty) yield return new Output("lists/store-cuts.pdf", stream => drawings.BookExporter.Write(slips, stream, $"{project}: for the store"));
    }
}
