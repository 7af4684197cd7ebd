using System.Collections.Immutable;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;
using ShopDrawings.Yaml;
using static ShopDrawings.ProjectFile.FeatureShapes;

namespace ShopDrawings.ProjectFile;

/// <summary>Drill guides as the file asks for them.</summary>
internal sealed record GuidesEntry(Word Board, Word Machine, TemplateChoice Choice, ImmutableArray<(Size Bit, Size Outside)> Bushes, Size? Clearance, Size? Fit);

/// <summary>Every key of the drill guides, once.</summary>
internal static class GuideShapes
{
    private static readonly NameShape Name = new();

    private static readonly MappedShape<(Size Bit, Size Outside), (Size Bit, Size Outside)> Bush = new(
        new RecordShape<(Size Bit, Size Outside)>("a bush", f => (
            f.Required("bit", Positive("bush-bit"), "Diameter of the bit that runs in it."),
            f.Required("outside", Positive("bush-outside"), "Its outside diameter, that of its hole."))),
        (bush, _) => (bush, bush.Outside.Value > bush.Bit.Value ? null : "a bush is wider outside than its bit; write bit first, then outside, such as {bit: 5, outside: 10}"));

    /// <summary>The drill guides.</summary>
    public static RecordShape<GuidesEntry> Guides { get; } = new("the guides", "a group with board and machine", f => new GuidesEntry(
        f.Required("board", Name, "Name of the board that plates and fences are cut from."),
        f.Required("machine", Name, "Name of the machine that cuts them, such as laser; it compensates for its kerf or cutter, and plates larger than its bed are cut in pieces."),
        f.Optional("for", new ChoiceShape<TemplateChoice>(("marked", TemplateChoice.Marked), ("all", TemplateChoice.All)), "Holes in faces that are marked and drilled by hand; or all, those of machines too.", TemplateChoice.Marked, "marked"),
        f.Optional("bushes", new MappedShape<ImmutableArray<(Size Bit, Size Outside)>, ImmutableArray<(Size Bit, Size Outside)>>(new ListShape<(Size Bit, Size Outside)>(Bush, 50), (bushes, _) =>
            (bushes, bushes.GroupBy(b => Math.Round(b.Bit.Value, 4)).FirstOrDefault(g => g.Count() > 1) is { } twice ? $"two bushes are for a bit of {Tape.PrintMillimetres(twice.Key, 2)} mm; leave one out" : null)),
            "Bushes by the bit that runs in them, such as {bit: 5, outside: 10}; flush with both faces of the plate. A bit without one gets a hole of its own.", [], "none"),
        f.Optional("clearance", AtMost("bit-clearance", 1), "How much wider than its bit a hole without a bush is; 0.1 mm where it is left out."),
        f.Optional("fit", AtMost("fence-fit", 2), "How much wider than the board is thick the slots for fences are; 0.2 mm where it is left out.")));

    private static MappedShape<Size, Size> AtMost(string rule, int most) => new(NotNegative(rule),
        (size, _) => (size, size.Value <= most ? null : $"more than {most} mm leads no bit and holds no fence; write at most {most} mm"));
}
