using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using ShopDrawings.Drafting;
using ShopDrawings.Dxf;
using ShopDrawings.Kernel;

namespace ShopDrawings;

/// <summary>
/// Programs (ISO 6983-1; G and M words from memory) of the machines that ask for them, one for each face that is worked on:
/// <c>machines/&lt;machine&gt;/programs/panels/&lt;panel&gt;-mm.nc</c>, with <c>_outside</c> or <c>_inside</c> for a panel turned over, and
/// <c>programs/sheets/</c> for whole sheets, <c>programs/guides/</c> for drill guides. Nothing for panels that must not be cut, nor for edges.
/// </summary>
public sealed class ProgramExporter : IJobExporter
{
    /// <inheritdoc/>
    public string Format => "gcode";

    /// <inheritdoc/>
    public IEnumerable<Output> Export(Job job)
    {
        ArgumentNullException.ThrowIfNull(job);
        var withheld = job.Withheld;
        var guides = job.Design.Guides;
        ImmutableArray<Guide> serving = guides is null ? [] : [.. guides.Serving(withheld).Select(s => s.Guide)];
        foreach (var profile in job.Design.Profiles)
        {
            if (profile.Programs is not { } settings) continue;
            var programs = job.Design.Machining.Where(m => m.Profile.Machine.Name == profile.Machine.Name).SelectMany(m => m.Plan.Programs)
                .Select(p => (Program: p, Folder: p.Sheet is null ? "panels" : "sheets", IsWritten: !p.Panels.Any(l => withheld.Contains(l.Panel.Id))))
                .Concat(guides?.Profile.Machine.Name == profile.Machine.Name ? guides.Programs.Select(p => (p.Program, "guides", serving.Contains(p.Guide))) : []);
            foreach (var ((program, folder, isWritten), i) in programs.Select((p, i) => (p, i)))
            {
                if (!isWritten) continue;
                var (name, number) = ($"{program.Name}-{UnitOf(profile)}.{settings.Ending}", settings.FirstNumber + i);
                yield return new Output(
                    $"machines/{profile.Machine.Name}/programs/{folder}/{name}",
                    stream => stream.Write(Encoding.ASCII.GetBytes(Text(job.Design.Assembly.Name, program, profile.Dxf.Unit == DrawingUnit.Inch, settings, number))));
            }
        }
    }

    // Also where its drawings are in a format of somebody else's.
    private static string UnitOf(MachineProfile profile) => profile.Dxf.Unit == DrawingUnit.Inch ? "in" : "mm";

    private static string Text(string project, FaceProgram program, bool isInches, ProgramSettings settings, int? number)
    {
        var thickness = program.Panels[0].Panel.Thickness.Value;
        var text = new ProgramText(isInches, settings.HasLineNumbers);
        var made = ToolByTool(program).Where(o => ProgramMoves.IsMade(o, settings, thickness)).ToList();
        var numbers = ToolNumbers.Of(program.Machine);

        text.Bare("%");
        if (number is { } own) text.Bare(string.Create(CultureInfo.InvariantCulture, $"O{own:0000}"));
        ProgramHeader.Write(text, project, program, made, settings, numbers);
        // Plain everything: unit, absolute places, plane, feed a minute, no radius or length compensation, no cycle.
        text.Block($"{(isInches ? "G20" : "G21")} G90 G17 G94 G40 G49 G80 G54");
        var moves = new ProgramMoves(text, settings, thickness);
        for (var i = 0; i < made.Count;)
        {
            var tool = made[i].Tool;
            var run = made.Skip(i).TakeWhile(o => o.Tool == tool).ToList();
            Change(text, moves, tool, numbers[tool], settings, isFirst: i == 0);
            moves.Write(run);
            i += run.Count;
        }

        text.Block("M5");
        text.Block("M30");
        text.Bare("%");
        return text.ToString();
    }

    /// <summary>The operations of a program in its order, but for pins and bores, which come first of all: a drill that makes some of both is fitted once.</summary>
    internal static IEnumerable<MachineOperation> ToolByTool(FaceProgram program)
    {
        var bores = program.Operations.TakeWhile(o => o is DrillOperation).ToList();
        return [.. bores.GroupBy(o => o.Tool).SelectMany(g => g), .. program.Operations.Skip(bores.Count)];
    }

    private static void Change(ProgramText text, ProgramMoves moves, Tool tool, int number, ProgramSettings settings, bool isFirst)
    {
        if (!isFirst) text.Block("M5");
        text.Comment(ProgramHeader.Describe(text, tool, number));
        if (settings.HasChanger)
        {
            text.Block(string.Create(CultureInfo.InvariantCulture, $"T{number} M6"));
            text.Block(string.Create(CultureInfo.InvariantCulture, $"G43 H{number}"));
        }
        else
        {
            text.Comment("FIT THIS TOOL, SET ITS ZERO IN Z, THEN START AGAIN");
            text.Block("M0");
        }

        text.Forget();
        text.Block(string.Create(CultureInfo.InvariantCulture, $"S{CuttingData.Of(tool).Speed} M3"));
        moves.ToSafety();
    }
}
