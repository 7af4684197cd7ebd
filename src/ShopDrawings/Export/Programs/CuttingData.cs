using ShopDrawings.Kernel;

namespace ShopDrawings;

/// <summary>How a tool is driven: turns a minute, feeds in mm a minute, and the depth of one pass in mm.</summary>
internal readonly record struct CuttingData(int Speed, double Feed, double Plunge, double Pass)
{
    /// <summary>What a tool says, and the usual for what it leaves out (common practice for wood-based board, no source).</summary>
    public static CuttingData Of(Tool tool)
    {
        var usual = Usual(tool);
        var feed = tool.Feed ?? usual.Feed;
        // A plunge that is left out keeps its share of the feed.
        return new(tool.Speed ?? usual.Speed, feed, tool.Plunge ?? feed * usual.Plunge / usual.Feed, tool.Pass ?? usual.Pass);
    }

    private static CuttingData Usual(Tool tool) => tool.Kind switch
    {
        ToolKind.Drill when tool.Diameter > 12 => new(3000, 500, 500, tool.Diameter),
        ToolKind.Drill => new(5000, 1000, 1000, tool.Diameter),
        ToolKind.Countersink => new(3000, 300, 300, tool.Diameter),
        ToolKind.Engraver => new(18000, 1500, 500, tool.Diameter),
        _ when tool.Diameter < 6 => new(18000, 1500, 500, tool.Diameter),
        _ => new(18000, 3000, 1000, tool.Diameter),
    };
}
