using System.Collections.Immutable;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;
using ShopDrawings.Yaml;

namespace ShopDrawings.ProjectFile;

/// <summary>Templates as the file asks for them; the paper follows the drawing practice where it says nothing.</summary>
internal sealed record TemplatesEntry(TemplateChoice Choice, TemplatePaper? Paper, PrinterScale Printer)
{
    /// <summary>The settings of a project that draws after a practice.</summary>
    public TemplateSettings Of(DrawingStandard standard) => new(Choice, Paper ?? (ReferenceEquals(standard, DrawingStandard.Asme) ? TemplatePaper.Letter : TemplatePaper.A4), Printer);
}

/// <summary>Every key of the templates, once.</summary>
internal static class TemplateShapes
{
    // Narrower than a page no roll is, and wider ones than 1.6 m are not for paper.
    private const double NarrowestRoll = 200, WidestRoll = 1600;

    private static readonly ChoiceShape<TemplateChoice> Choice = new(("marked", TemplateChoice.Marked), ("all", TemplateChoice.All), ("none", TemplateChoice.None));

    private static readonly ChoiceShape<TemplatePaper?> Sheets =
        new(("A4", TemplatePaper.A4), ("A3", TemplatePaper.A3), ("letter", TemplatePaper.Letter), ("tabloid", TemplatePaper.Tabloid));

    private static readonly RecordShape<TemplatePaper> Roll = new("a roll", "a group like “roll: 610”", f => TemplatePaper.Roll(
        f.Required("roll", new MappedShape<Size, double>(new NumberShape(Measure.Length, Yaml.Range.Positive, "roll-width"), (width, node) =>
            (width.Value, width.Value is >= NarrowestRoll and <= WidestRoll ? null : $"{node.Described} stands where the width of a roll from {NarrowestRoll} to {WidestRoll} mm is expected; is the unit right?")), "Width of the roll.")));

    private static readonly MappedShape<ImmutableArray<Size>, PrinterScale> Printer = new(
        new ListShape<Size>(new NumberShape(Measure.Number, Yaml.Range.Positive, "printer-scale"), 9), (pair, _) =>
            pair is [var x, var y] && new PrinterScale(x.Value, y.Value) is { IsSound: true } scale
                ? (scale, null)
                : (PrinterScale.True, FormattableString.Invariant($"a printer scale is two numbers from {PrinterScale.Least} to {PrinterScale.Greatest}, written [across, up]: what is measured divided by what it should be, such as [0.996, 1.002]")));

    /// <summary>The templates.</summary>
    public static RecordShape<TemplatesEntry> Templates { get; } = new("the templates", "a group like “for: all”", f => new TemplatesEntry(
        f.Optional("for", Choice, "Holes that are marked and drilled by hand; all, those of machines too; or none.", TemplateChoice.Marked, "marked"),
        f.Optional("paper", new EitherShape<TemplatePaper?>(node => node is YamlScalar, Sheets, new MappedShape<TemplatePaper, TemplatePaper?>(Roll, (roll, _) => (roll, null))),
            "What they are printed on: A4, A3, letter, tabloid, or a roll of a width.", null, "letter where drawings follow asme, else A4"),
        f.Optional("printer-scale", Printer, "How the printer is off, [across, up]: what 100 mm of the printed square measure, divided by 100. The command's own --printer-scale comes before it.", PrinterScale.True, "[1, 1]")));

    /// <summary>What they are where the file says nothing.</summary>
    public static TemplatesEntry Usual { get; } = new(TemplateChoice.Marked, null, PrinterScale.True);
}
