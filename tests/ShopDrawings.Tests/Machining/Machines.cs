using ShopDrawings.Drafting;
using ShopDrawings.Kernel;

namespace ShopDrawings.Tests;

/// <summary>Machines for tests.</summary>
internal static class Machines
{
    /// <summary>A drawing with every tool at hand that shows both faces.</summary>
    public static Machine Drawing { get; } = new() { Name = "drawing", Kind = MachineKind.Drawing, SecondFace = SecondFace.SeenThrough };

    /// <summary>The one program of a panel.</summary>
    public static FaceProgram ProgramOf(Panel panel, Machine machine) => PlanOf(panel, machine).Programs.Single();

    /// <summary>What a machine does with a panel.</summary>
    public static MachinePlan PlanOf(Panel panel, Machine machine) => MachiningPlanner.Plan([panel], [], machine, LengthStyle.Millimetres);

    /// <summary>A router whose one cutter mills every bore.</summary>
    public static Machine Router { get; } = new() { Name = "router", Kind = MachineKind.Router, Tools = [new Tool(ToolKind.Cutter, 0.5)] };

    /// <summary>All that its files show of a panel, face by face; a bore is a circle.</summary>
    public static IEnumerable<Entity> RoutedOf(Panel panel) => PlanOf(panel, Router).Programs.SelectMany(p => MachineDrawing.Of(p, new MachineDrawingSettings()).Entities);
}
