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

    /// <summary>The plain drawing of a panel, both faces seen through the inside.</summary>
    public static Drawing DrawingOf(Panel panel) => MachineDrawing.Of(ProgramOf(panel, Drawing), new MachineDrawingSettings());
}
