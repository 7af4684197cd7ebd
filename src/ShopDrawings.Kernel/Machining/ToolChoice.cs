using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>Which of a machine's tools makes what. A drawing has every tool at hand.</summary>
internal sealed class ToolChoice(Machine machine)
{
    // Drills are sold in steps of a tenth of a millimetre and of sixty-fourths of an inch; nearer ones are one.
    private const double SameDiameter = 0.01;

    private readonly ImmutableArray<Tool> cutters = [.. machine.Tools.Where(t => t.Kind == ToolKind.Cutter)];

    private bool HasAll => machine.Kind == MachineKind.Drawing;

    /// <summary>What scribes, or nothing.</summary>
    public Tool? Engraver => HasAll ? new Tool(ToolKind.Engraver, 0) : machine.Tools.FirstOrDefault(t => t.Kind == ToolKind.Engraver);

    /// <summary>The beam of a laser.</summary>
    public Tool Beam => machine.Tools.FirstOrDefault(t => t.Kind == ToolKind.Beam) ?? new Tool(ToolKind.Beam, 0) { IsKnown = false };

    /// <summary>What plunges for a bore, or the cutter narrower than it that mills it; an unknown drill where there is neither.</summary>
    public Tool For(Bore bore, double depth)
    {
        var diameter = bore.Diameter.Value;
        var kind = bore.Use == BoreUse.Countersink ? ToolKind.Countersink : ToolKind.Drill;
        if (HasAll) return new Tool(kind, diameter);
        if (kind == ToolKind.Countersink)
            return machine.Tools.Where(t => t.Kind == kind && t.Diameter >= diameter - SameDiameter).MinBy(t => t.Diameter) ?? Missing(kind, diameter);
        var plunging = machine.Tools.Where(t => t.Kind is ToolKind.Drill or ToolKind.Cutter && Math.Abs(t.Diameter - diameter) <= SameDiameter)
            .OrderBy(t => Reaches(t, depth) ? 0 : 1).ThenBy(t => t.Kind).FirstOrDefault();
        return plunging ?? cutters.Where(t => t.Diameter < diameter).OrderBy(t => Reaches(t, depth) ? 0 : 1).ThenByDescending(t => t.Diameter).FirstOrDefault() ?? Missing(kind, diameter);
    }

    /// <summary>What bores for a pin; an unknown drill where nothing does.</summary>
    public Tool ForPin(double diameter) =>
        HasAll ? new Tool(ToolKind.Drill, diameter)
        : machine.Tools.Where(t => t.Kind is ToolKind.Drill or ToolKind.Cutter).FirstOrDefault(t => Math.Abs(t.Diameter - diameter) <= SameDiameter) ?? Missing(ToolKind.Drill, diameter);

    /// <summary>The widest cutter for a groove of a width and of a length, which is infinite where an end is open; an unknown one where all are too wide.</summary>
    public Tool ForGroove(double width, double length, double depth) =>
        HasAll ? new Tool(ToolKind.Cutter, width)
        : cutters.Where(t => !Tolerance.Exceeds(t.Diameter, width) && Tolerance.Exceeds(length, t.Diameter)).OrderBy(t => Reaches(t, depth) ? 0 : 1).ThenByDescending(t => t.Diameter).FirstOrDefault()
            ?? Missing(ToolKind.Cutter, Math.Min(width, length));

    /// <summary>The first cutter that follows an edge into all its hollows; an unknown one, as wide as would, where none does.</summary>
    public Tool ForEdge(Contour edge, bool isOutside)
    {
        if (HasAll) return new Tool(ToolKind.Cutter, 0);
        if (machine.Kind == MachineKind.Laser) return Beam;
        return cutters.FirstOrDefault(t => ToolWays.Follow(edge, isOutside, t.Diameter)) ?? Missing(ToolKind.Cutter, Widest(edge, isOutside));
    }

    // By halves, to a hundredth of a millimetre.
    private double Widest(Contour edge, bool isOutside)
    {
        var (fits, isTooWide) = (0.0, cutters.Select(t => t.Diameter).DefaultIfEmpty(Math.Max(edge.Bounds.Width, edge.Bounds.Height)).Min());
        while (isTooWide - fits > 0.001)
        {
            var middle = (fits + isTooWide) / 2;
            if (ToolWays.Follow(edge, isOutside, middle)) fits = middle;
            else isTooWide = middle;
        }

        return Math.Round(isTooWide, 2);
    }

    /// <summary>Whether a tool is long enough.</summary>
    public static bool Reaches(Tool tool, double depth) => tool.Reach is not { } reach || !Tolerance.Exceeds(depth, reach);

    private static Tool Missing(ToolKind kind, double diameter) => new(kind, diameter) { IsKnown = false };
}
