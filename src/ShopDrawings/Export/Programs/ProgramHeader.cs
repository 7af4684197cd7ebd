using System.Globalization;
using ShopDrawings.Kernel;

namespace ShopDrawings;

/// <summary>What stands at the head of a program: what it makes, how the panel lies, where it counts from, its tools, and what to mind.</summary>
internal static class ProgramHeader
{
    /// <summary>Writes it as comments.</summary>
    public static void Write(ProgramText text, string project, FaceProgram program, IReadOnlyList<MachineOperation> made, ProgramSettings settings, IReadOnlyDictionary<Tool, int> numbers)
    {
        var (machine, lying) = (program.Machine, program.Panels[0]);
        var (panel, cut) = (lying.Panel, lying.Outline.Bounds);
        var thickness = panel.Thickness.Value;
        var isSheet = program.Sheet is not null && !program.IsSecond;
        text.Comment($"PROJECT {project}");
        text.Comment($"{(isSheet ? "SHEET" : "PANEL")} {program.Name}, MACHINE {machine.Name}");
        if (!isSheet) text.Comment($"UP LIES THE {lying.Lie.Up} FACE{(program.IsSecond ? $", TURNED OVER ABOUT THE {machine.Flip}" : "")}");
        text.Comment(isSheet
            ? $"SHEET {text.Print(program.Sheet!.Length.Value)} X {text.Print(program.Sheet.Width.Value)} X {text.Print(thickness)}, {panel.Board.Name}"
            : $"SAWN {text.Print(cut.Width)} X {text.Print(cut.Height)} X {text.Print(thickness)}, {panel.Board.Name}");
        if (!isSheet && made.Any(o => o is ProfileOperation { IsOutside: true }))
            text.Comment("IT IS CUT OUT HERE: THE STOCK MUST BE LARGER BY MORE THAN THE CUTTER ALL ROUND");
        if (!program.Pins.IsEmpty && !program.IsSecond)
            text.Comment("THE STOCK MUST REACH BEYOND THE PINS: THE PANEL IS CUT OUT WHEN IT IS TURNED OVER");
        text.Comment($"X AND Y COUNT FROM THE {Corner(machine.Origin)} CORNER OF {(isSheet ? "THE SHEET" : program.Pins.IsEmpty && (machine.IsOriginSawn || program.IsSecond) ? "THE SAWN PANEL" : program.IsSecond ? "THE PANEL AS IT LAY FIRST" : "THE FINISHED PANEL")}, X TO THE RIGHT, Y AWAY");
        text.Comment($"Z COUNTS FROM THE {(settings.IsZeroOnTable ? "TABLE UNDER IT" : "FACE THAT LIES UP")}, IN {(text.IsInches ? "INCHES" : "MILLIMETRES")}; I AND J FROM THE START OF AN ARC");
        text.Comment($"WAYS ARE THOSE OF THE MIDDLE OF THE TOOL: DO NOT COMPENSATE AGAIN. WHAT GOES THROUGH GOES {text.Print(settings.Spoil)} INTO THE TABLE");
        text.Comment($"BETWEEN CUTS THE TOOL IS {text.Print(settings.SafeHeight)} ABOVE THE FACE: KEEP CLAMPS AND PINS LOWER, AND AWAY FROM ITS WAYS");
        if (!program.Pins.IsEmpty) text.Comment($"PINS OF {text.Print(program.Pins[0].Diameter)} AT {string.Join(" AND ", program.Pins.Select(p => $"{text.Print(p.At.X)}, {text.Print(p.At.Y)}"))}{(program.IsSecond ? "" : $", BORED {text.Print(settings.PinDepth ?? settings.Spoil)} INTO THE TABLE")}");
        if (made.Any(o => o is DrillOperation { Tool.Kind: ToolKind.Countersink }))
            text.Comment("COUNTERSINKS: Z IS THAT OF THE POINT OF THE CONE, AS DEEP AS IT IS THEN WIDE ENOUGH AT THE FACE");
        if (made.Any(o => o is ProfileOperation { Tabs: [_, ..], WayTabs: [] })) text.Comment("A SKIN IS LEFT WHERE TABS FIND NO ROOM");
        foreach (var tool in made.Select(o => o.Tool).Distinct())
        {
            var data = CuttingData.Of(tool);
            text.Comment(string.Create(CultureInfo.InvariantCulture, $"{Describe(text, tool, numbers[tool])}: S{data.Speed} FEED {text.Rate(data.Feed)} DOWN {text.Rate(tool.Kind == ToolKind.Drill ? data.Feed : data.Plunge)}{(tool.Kind == ToolKind.Cutter ? $" PASS {text.Print(data.Pass)}" : "")}"));
        }

        foreach (var left in program.Operations.Except(made).GroupBy(o => (What: What(o), o.Tool.Diameter)))
            text.Comment(string.Create(CultureInfo.InvariantCulture, $"NOT MADE HERE: {left.Count()} {left.Key.What}, NO TOOL FITS OR REACHES"));
        text.Comment("VERIFY ON THE MACHINE BEFORE YOU CUT: RUN IT WITH THE SPINDLE RAISED, THEN ON SCRAP, AND MEASURE. FEEDS AND SPEEDS ARE YOURS TO JUDGE");
        text.Comment("THE RULES OF YOUR MACHINE AND LOCAL CODES ON MACHINE SAFETY COME FIRST");
    }

    /// <summary>A tool in words: <c>T5 DRILL 5</c>.</summary>
    public static string Describe(ProgramText text, Tool tool, int number) => string.Create(CultureInfo.InvariantCulture, $"T{number} {tool.Kind} {text.Print(tool.Diameter)}");

    private static string What(MachineOperation operation) => operation switch
    {
        DrillOperation drill => string.Create(CultureInfo.InvariantCulture, $"bore of {drill.Diameter:0.###} mm"),
        PocketOperation => "pocket or groove",
        EngraveOperation => "engraving",
        ProfileOperation { IsOutside: true } => "outline",
        _ => "opening",
    };

    private static string Corner(Corner corner) => corner switch
    {
        Kernel.Corner.LowerLeft => "LOWER LEFT",
        Kernel.Corner.LowerRight => "LOWER RIGHT",
        Kernel.Corner.UpperLeft => "UPPER LEFT",
        _ => "UPPER RIGHT",
    };
}
