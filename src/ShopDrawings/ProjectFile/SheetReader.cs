using System.Collections.Immutable;
using ShopDrawings.Kernel;
using ShopDrawings.Yaml;

namespace ShopDrawings.ProjectFile;

/// <summary>Places panels on sheets as the project says.</summary>
internal sealed class SheetReader(References references, Assembly assembly)
{
    private readonly Dictionary<string, Word> placed = new(StringComparer.Ordinal);

    /// <summary>The sheets; a fault is noted where it is written.</summary>
    public ImmutableArray<CutSheet> Read(ImmutableArray<(Word Name, SheetEntry Value)> entries)
    {
        var sheets = ImmutableArray.CreateBuilder<CutSheet>();
        foreach (var (name, entry) in entries)
            if (references.Board(entry.Board) is { } board)
                sheets.Add(new CutSheet(name.Text, board, entry.Length, entry.Width, [.. entry.Panels.Select(p => Lying(p, board)).OfType<LyingPanel>()]));
        return sheets.ToImmutable();
    }

    private LyingPanel? Lying(LyingEntry entry, Board board)
    {
        var id = entry.Panel.Text;
        if (assembly.Panels.FirstOrDefault(p => p.Id == id) is not { } panel)
            references.Fail(entry.Panel.At, $"there is no panel called “{id}”{References.Hint(id, assembly.Panels.Select(p => p.Id), "there are none")}");
        else if (panel.Board != board)
            references.Fail(entry.Panel.At, $"“{id}” is of {panel.Board.Name}, and this is a sheet of {board.Name}; place it on a sheet of its own board");
        else if (!placed.TryAdd(id, entry.Panel))
            references.Fail(entry.Panel.At, $"“{id}” lies on a sheet already, in line {placed[id].At.Line}; leave one out");
        else
            return LyingPanel.At(panel, entry.Corner.Point, entry.QuarterTurns, entry.Up);
        return null;
    }
}
