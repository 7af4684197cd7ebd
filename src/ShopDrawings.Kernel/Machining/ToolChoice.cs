using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>Which of a machine's tools makes what. A drawing has every tool at hand.</summary>
internal sealed class ToolChoice(Machine machine)
{
    // Drills are sold in steps of a tenth of a millimetre and of sixty-fourths of an inch; nearer ones are one.
    internal const double SameDiameter = 0.01;

    private readonly ImmutableArray<Tool> cutters = [.. machine.Tools.Where(t => t.Kind == ToolKind.Cutter)];

    private bool HasAll => machine.Kind == MachineKind.Drawing;

    /// <summary>What scribes, or nothing.</summary>
    public Tool? Engraver => HasAll ? new Tool(ToolKind.Engraver, 0) : machine.Tools.FirstOrDefault(t => t.Kind == ToolKind.Engraver);

    /// <summary>What plunges for a bore, or the cutter narrower than it that mills it; one that is too short where none is longer, an unknown one where none fits.</summary>
    public Tool For(Bore bore, double depth)
    {
        var diameter = bore.Diameter.Value;
        var kind = bore.Use == BoreUse.Countersink ? ToolKind.Countersink : ToolKind.Drill;
        if (HasAll) return new Tool(kind, diameter);
        var fitting = kind == ToolKind.Countersink
            ? machine.Tools.Where(t => t.Kind == kind && t.Diameter >= diameter - SameDiameter).OrderBy(t => t.Diameter)
            : machine.Tools.Where(t => t.Kind == ToolKind.Drill && IsAsWide(t, diameter))
                .Concat(cutters.Where(t => IsAsWide(t, diameter))).Concat(cutters.Where(t => t.Diameter < diameter - SameDiameter).OrderByDescending(t => t.Diameter));
        return Longest(fitting, depth) ?? Missing(kind, diameter);
    }

    /// <summary>The drill or cutter of a diameter; an unknown one where there is none.</summary>
    public Tool ForPin(double diameter) => machine.Tools.FirstOrDefault(t => t.Kind is ToolKind.Drill or ToolKind.Cutter && IsAsWide(t, diameter)) ?? Missing(ToolKind.Drill, diameter);

    /// <summary>The widest cutter for a groove of a width and length; an unknown one where all are too wide.</summary>
    public Tool ForGroove(double width, double length, double depth) =>
        HasAll ? new Tool(ToolKind.Cutter, width)
        : Longest(cutters.Where(t => !Tolerance.Exceeds(t.Diameter, width) && Tolerance.Exceeds(length, t.Diameter)).OrderByDescending(t => t.Diameter), depth) ?? Missing(ToolKind.Cutter, Math.Min(width, length));

    /// <summary>The first cutter, or the beam, that follows an edge into all its hollows; an unknown one where none does.</summary>
    public Tool ForEdge(Contour edge, bool isOutside, double depth)
    {
        if (HasAll) return new Tool(ToolKind.Cutter, 0);
        var beams = machine.Tools.Where(t => t.Kind == ToolKind.Beam);
        bool IsPlunged(Tool t) => !isOutside && t.Kind == ToolKind.Cutter && edge.AsCircle is var (_, radius) && IsAsWide(t, 2 * radius);
        return Longest((machine.Kind == MachineKind.Laser ? beams : cutters).Where(t => IsPlunged(t) || ToolWays.Follow(ToolWays.Along(edge, isOutside, t.Diameter, [], machine.ChordTolerance), edge, isOutside, t.Diameter)), depth)
            ?? Missing(ToolKind.Cutter, Widest(edge, isOutside));
    }

    // What would follow an edge: by halves, to a hundredth of a millimetre.
    private double Widest(Contour edge, bool isOutside)
    {
        var (fits, isTooWide) = (0.0, machine.Tools.Where(t => t.Kind is ToolKind.Cutter or ToolKind.Beam).Select(t => t.Diameter).DefaultIfEmpty(100).Min());
        while (isTooWide - fits > 0.005)
        {
            var middle = (fits + isTooWide) / 2;
            if (ToolWays.Follow(ToolWays.Along(edge, isOutside, middle, [], machine.ChordTolerance), edge, isOutside, middle)) fits = middle;
            else isTooWide = middle;
        }

        return Math.Round(fits, 2);
    }

    /// <summary>Whether a tool is long enough.</summary>
    public static bool Reaches(Tool tool, double depth) => tool.Reach is not { } reach || !Tolerance.Exceeds(depth, reach);

    private static bool IsAsWide(Tool tool, double diameter) => Math.Abs(tool.Diameter - diameter) <= SameDiameter;

    // The first that is long enough, or the first.
    private static Tool? Longest(IEnumerable<Tool> fitting, double depth) => fitting.OrderBy(t => Reaches(t, depth) ? 0 : 1).FirstOrDefault();

    private static Tool Missing(ToolKind kind, double diameter) => new(kind, diameter) { IsKnown = false };
}
