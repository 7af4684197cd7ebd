using System.Collections.Immutable;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;

namespace ShopDrawings.Tests;

/// <summary>Machines for tests.</summary>
internal static class Machines
{
    /// <summary>A drawing with every tool at hand that shows both faces.</summary>
    public static Machine Drawing { get; } = new() { Name = "drawing", Kind = MachineKind.Drawing, SecondFace = SecondFace.SeenThrough };

    /// <summary>The machines every project can name.</summary>
    public static ImmutableArray<MachineProfile> Shipped { get; } =
    [
        .. Fixtures.DesignOf("""
            project: Any
            machine-files: [router, old-controller, laser, drawing]
            boards: {thin: {kind: plywood, thickness: 4 mm}}
            panels: {any: {board: thin, length: 100 mm, width: 80 mm}}
            """).Machining.Select(m => m.Profile),
    ];

    /// <summary>A router that has nothing but these cutters, in mm, and writes the way of their middles.</summary>
    public static Machine Milling(params double[] cutters) =>
        new() { Name = "router", Kind = MachineKind.Router, Paths = CutLines.ToolCentre, Tools = [.. cutters.Select(d => new Tool(ToolKind.Cutter, d))] };

    /// <summary>The one program of a panel.</summary>
    public static FaceProgram ProgramOf(Panel panel, Machine machine) => PlanOf(panel, machine).Programs.Single();

    /// <summary>What a machine does with a panel.</summary>
    public static MachinePlan PlanOf(Panel panel, Machine machine) => MachiningPlanner.Plan([panel], [], machine, LengthStyle.Millimetres);

    /// <summary>A router whose one cutter mills every bore.</summary>
    public static Machine Router { get; } = new() { Name = "router", Kind = MachineKind.Router, Tools = [new Tool(ToolKind.Cutter, 2)] };

    /// <summary>All that its files show of a panel, face by face; a bore is a circle.</summary>
    public static IEnumerable<Entity> RoutedOf(Panel panel) => PlanOf(panel, Router).Programs.SelectMany(p => MachineDrawing.Of(p, new MachineDrawingSettings()).Entities);

    /// <summary>The stretches of a cut's line where tabs stay.</summary>
    public static IEnumerable<ToolPath> TabsOf(ProfileOperation profile, CutLines form)
    {
        if (profile.Tabs.IsEmpty) return [];
        var line = form == CutLines.ToolCentre ? profile.Paths.Single() : ToolPath.Along(profile.Finished, profile.IsOutside);
        return profile.Tabs.Select(t => line.Part(t.From, t.To));
    }
}
