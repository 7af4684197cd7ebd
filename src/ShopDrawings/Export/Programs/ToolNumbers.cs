using ShopDrawings.Kernel;

namespace ShopDrawings;

/// <summary>The numbers of a machine's tools: their own, and for those without one the lowest that are free, in the machine's order.</summary>
internal static class ToolNumbers
{
    /// <summary>The number of every tool of a machine; the same in all its programs and lists.</summary>
    public static Dictionary<Tool, int> Of(Machine machine)
    {
        var taken = machine.Tools.Select(t => t.Number).OfType<int>().ToHashSet();
        var numbers = new Dictionary<Tool, int>();
        var next = 1;
        foreach (var tool in machine.Tools.Distinct())
        {
            while (tool.Number is null && taken.Contains(next)) next++;
            numbers.Add(tool, tool.Number ?? next++);
        }

        return numbers;
    }
}
