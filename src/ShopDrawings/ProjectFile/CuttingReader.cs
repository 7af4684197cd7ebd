using System.Collections.Immutable;
using ShopDrawings.Cutting;
using ShopDrawings.Kernel;
using ShopDrawings.Yaml;

namespace ShopDrawings.ProjectFile;

/// <summary>Makes of the stock and the saw as written what the solver takes. A fault is noted where it is written.</summary>
internal sealed class CuttingReader(References references, LengthStyle lengths)
{
    /// <summary>The setup; that of no stock where there is none.</summary>
    public CuttingSetup Read(ImmutableArray<(Word Name, ImmutableArray<StockEntry> Value)> stock, CuttingEntry? cutting)
    {
        if (cutting is not null && stock.IsEmpty) references.Fail(cutting.At, "“cutting” says how stock is cut, and there is no “stock”; list the sheets of a board, like “stock: {white: [{length: 2440, width: 1220}]}”");
        if (stock.IsEmpty) return CuttingSetup.None;
        var machine = CuttingMachineReader.Read(cutting, references.Fail);
        var boards = stock.Select(s => Board(s.Name, s.Value, machine)).ToImmutableArray();
        CuttingMachineReader.ComparePrices(cutting, boards, references.Fail);
        return new CuttingSetup(boards, machine, cutting?.LeastOffcut is { } least ? Nm(least) : CuttingSetup.UsualLeastOffcut, cutting?.Currency ?? "", cutting?.Effort ?? 1);
    }

    private BoardStock Board(Word name, ImmutableArray<StockEntry> entries, CuttingMachine machine)
    {
        var board = references.Board(name);
        if (entries.IsEmpty) references.Fail(name.At, $"the stock of “{name.Text}” is empty; list a sheet, like “- {{length: 2440, width: 1220}}”, or leave “{name.Text}” out");
        // What is only one's own costs nothing, which is a price.
        var hasPrices = entries.Any(e => e is { Price: not null, IsOwn: false }) || entries.All(e => e.IsOwn);
        var sizes = ImmutableArray.CreateBuilder<StockSize>();
        var names = new HashSet<string>(StringComparer.Ordinal);
        foreach (var entry in entries)
        {
            if (entry is { IsOwn: true, Price: { } paid }) references.Fail(paid.At, "an offcut of your own costs nothing; leave “price” out, or “own”");
            if (hasPrices && entry is { IsOwn: false, Price: null }) references.Fail(entry.At, $"other sheets of “{name.Text}” have a price and this one has none; give each a price, or none; what is there already is “own: yes”");
            if (board is { HasGrain: false } && entry.Grain is not null) references.Fail(entry.At, $"“{name.Text}” has no grain; leave “grain” out here, or give the board “grain: yes”");
            var trim = entry.Trim is { } t ? new Trim(Nm(t.Left), Nm(t.Right), Nm(t.Front), Nm(t.Back)) : default;
            var margin = machine is Router router ? 2 * router.ClampMargin : 0;
            var title = entry.Name?.Text ?? Title(entry, names);
            if (!names.Add(title)) references.Fail(entry.At, $"two sheets of “{name.Text}” are called “{title}”; give them different names");
            var size = new StockSize(title, Nm(entry.Length), Nm(entry.Width))
            {
                Trim = CuttingMachineReader.TrimFor(machine, trim),
                Count = entry.Count ?? (entry.IsOwn ? 1 : null),
                Price = entry.IsOwn ? 0 : hasPrices ? entry.Price?.Coins ?? 0 : Area(entry),
                Grain = board is not { HasGrain: true } ? GrainDirection.None : entry.Grain ?? GrainDirection.AlongLength,
            };
            if (Math.Max(size.Length, size.Width) > Limits.LongestSide) references.Fail(entry.At, $"a sheet of {lengths.Describe(entry.Length.Value)} × {lengths.Describe(entry.Width.Value)} is larger than any; is the unit right?");
            else if (size.UsableLength <= margin || size.UsableWidth <= margin) references.Fail(entry.At, $"what is cut or kept off its edges leaves nothing of {lengths.Describe(entry.Length.Value)} × {lengths.Describe(entry.Width.Value)}; is the unit right?");
            sizes.Add(size);
        }

        return new BoardStock(name.Text, sizes.ToImmutable(), hasPrices);
    }

    private string Title(StockEntry entry, HashSet<string> taken)
    {
        var size = $"{lengths.Print(entry.Length.Value)} × {lengths.Print(entry.Width.Value)}";
        if (entry.IsOwn) size = $"own {size}";
        var title = size;
        for (var n = 2; taken.Contains(title); n++) title = $"{size} ({n})";
        return title;
    }

    // In square centimetres, at least one: without prices the least area is the cheapest.
    private static long Area(StockEntry entry) => Math.Max(1, (long)Math.Round(entry.Length.Value * entry.Width.Value / 100));

    private static long Nm(Size size) => CuttingSetup.Nanometres(size.Value);
}
