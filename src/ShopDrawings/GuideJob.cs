using System.Collections.Immutable;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;

namespace ShopDrawings;

/// <summary>The drill guides of a design, and what their machine does for them. Made while the design is resolved. Immutable.</summary>
/// <param name="Settings">What they are made of and for.</param>
/// <param name="Profile">The machine and its files.</param>
/// <param name="All">The guides.</param>
/// <param name="Programs">The machine's programs with the guides they are for, part by part.</param>
/// <param name="Findings">What the machine cannot do, and which guides there are none of.</param>
internal sealed record GuideJob(GuideSettings Settings, MachineProfile Profile, ImmutableArray<Guide> All, ImmutableArray<(Guide Guide, FaceProgram Program)> Programs, ImmutableArray<Finding> Findings)
{
    private const string Rule = "guides";

    /// <summary>The guides of an assembly.</summary>
    public static GuideJob Of(Assembly assembly, GuideSettings settings, MachineProfile profile, LengthStyle lengths)
    {
        var builder = new GuideBuilder(settings, lengths);
        // A guide does not shrink as paper does, so that it may be as large as it has to be.
        var built = TemplateSet.Of(assembly, settings.Choice, [], double.PositiveInfinity).All.Select(builder.Of).ToList();
        ImmutableArray<Guide> guides = [.. built.Select(b => b.Guide).OfType<Guide>()];
        var parts = guides.SelectMany(g => g.Parts.Select(p => (Guide: g, Part: p))).ToDictionary(p => p.Part.Panel.Id);
        var plan = MachiningPlanner.Plan(parts.Values.Select(p => p.Part.Panel), [], settings.Machine, lengths);
        return new GuideJob(settings, profile, guides,
            [.. plan.Programs.Select(p => (Of: parts[p.Panels[0].Panel.Id], Program: p)).Select(p => (p.Of.Guide, Engraved(p.Program, p.Of.Part)))],
            [.. built.Select(b => b.Fault).OfType<string>().Select(f => new Finding(Rule, Severity.Warning, [], f, [], "derived (geometry)", "leave bushes out or take slimmer ones, or another machine; drill these holes after their template or drawing", null)), .. plan.Findings]);
    }

    /// <summary>The guides that serve a panel which may be cut, with the places where they do.</summary>
    public IEnumerable<(Guide Guide, ImmutableArray<TemplatePlace> Places)> Serving(ImmutableArray<string> withheld) =>
        from guide in All
        let places = guide.Template.Places.Where(p => !withheld.Contains(p.Panel.Id)).ToImmutableArray()
        where !places.IsEmpty
        select (guide, places);

    private static FaceProgram Engraved(FaceProgram program, GuidePart part)
    {
        var (lie, machine) = (program.Panels[0].Lie, program.Machine);
        ImmutableArray<ToolPath> strokes = [.. part.Words.Where(w => w.Face == lie.Up).SelectMany(w => w.Strokes).Select(s => ToolPath.Through([.. s.Select(lie.Of)]))];
        return strokes.IsEmpty || new ToolChoice(machine).Engraver is not { } engraver ? program
            : program with { Operations = OperationOrder.Of([.. program.Operations, new EngraveOperation(lie.Up, engraver, machine.EngravingDepth, Engraving.Name, strokes)]) };
    }
}
