using System.Collections.Immutable;
using ShopDrawings.Kernel;
using ShopDrawings.Yaml;
using Range = ShopDrawings.Yaml.Range;

namespace ShopDrawings.ProjectFile;

/// <summary>The keys of openings and marks, once: in a panel, and in a piece of hardware, whose places count from the middle of its foot.</summary>
internal static class FeatureShapes
{
    /// <summary>A face of a panel.</summary>
    public static readonly ChoiceShape<Surface> Face = new(("inside", Surface.Inside), ("outside", Surface.Outside));

    private static readonly Shape<OutlineStep> Step = new EitherShape<OutlineStep>(
        node => node is not YamlMapping,
        new MappedShape<Position, OutlineStep>(Pair("corner", Range.Any), (to, node) => (new OutlineStep(to, null, node.At), null)),
        new RecordShape<OutlineStep>("an arc", f =>
        {
            var through = f.Required("through", Pair("arc-point", Range.Any), "Any point on the arc as [x, y].");
            return new OutlineStep(f.Required("to", Pair("corner", Range.Any), "The end of the arc as [x, y]."), through, f.At);
        }));

    /// <summary>An outline.</summary>
    public static readonly ListShape<OutlineStep> Outline = new(Step, 500);

    /// <summary>A slot.</summary>
    public static readonly RecordShape<SlotEntry> Slot = new("a slot", f => new SlotEntry(
        f.Required("from", Pair("slot-end", Range.Any), "Centre of one round end as [x, y]."),
        f.Required("to", Pair("slot-end", Range.Any), "Centre of the other round end."),
        f.Required("width", Positive("slot-width"), "Width of the slot."),
        f.At));

    /// <summary>An opening.</summary>
    public static readonly RecordShape<CutOutEntry> CutOut = new("a cut-out", f => f.ExactlyOneOf(["circle", "rectangle", "outline"], new CutOutEntry(
        f.Optional("circle", new RecordShape<CircleEntry>("a circle", c => new CircleEntry(
            c.Required("at", Pair("centre", Range.Any), "Centre as [x, y]."),
            c.Required("diameter", Positive("cut-out-diameter"), "Diameter."))), "A round opening."),
        f.Optional("rectangle", new RecordShape<RectangleEntry>("a rectangle", r => new RectangleEntry(
            r.Required("at", Pair("corner", Range.Any), "Its corner with the least x and y, as [x, y]."),
            r.Required("length", Positive("cut-out-length"), "Its size along x."),
            r.Required("width", Positive("cut-out-width"), "Its size along y."),
            r.Optional("corner-radius", NotNegative("corner-radius"), "Radius of the corners.", Size.Zero, "0"),
            r.At)), "A rectangular opening."),
        f.Optional("outline", Outline, "Any outline: a list of corners [x, y], and of arcs {through: [x, y], to: [x, y]}; it closes itself.", [], "none"),
        f.At)));

    /// <summary>A mark on either face of a panel.</summary>
    public static readonly RecordShape<MarkEntry> MarkOnFace = new("a mark", f => MarkFields(f, f.Optional("face", Face, "The face it is scribed on.", Surface.Inside, "inside")));

    /// <summary>A mark of a piece of hardware.</summary>
    public static readonly RecordShape<MarkEntry> Mark = new("a mark", f => MarkFields(f, Surface.Inside));

    /// <summary>A length of at least a hundredth of a millimetre.</summary>
    public static NumberShape Positive(string rule) => new(Measure.Length, Range.Positive, rule);

    /// <summary>A length of zero or more.</summary>
    public static NumberShape NotNegative(string rule) => new(Measure.Length, Range.NotNegative, rule);

    /// <summary>A place in a plane.</summary>
    public static MappedShape<ImmutableArray<Size>, Position> Pair(string rule, Range range) =>
        new(new ListShape<Size>(new NumberShape(Measure.Length, range, rule), 9), (pair, _) => pair.Length == 2
            ? (new Position(pair[0], pair[1]), null)
            : (default, "a place has two lengths, written [x, y]"));

    /// <summary>A place in a plane that may be left out.</summary>
    public static MappedShape<Position, Position?> OptionalPair(string rule) => new(Pair(rule, Range.Any), (pair, _) => (pair, null));

    private static MarkEntry MarkFields(Fields f, Surface face) => new(
        face,
        f.Optional("at", OptionalPair("mark"), "A centre to punch as [x, y].", null, "none"),
        f.Optional("from", OptionalPair("mark"), "One end of a line as [x, y].", null, "none"),
        f.Optional("to", OptionalPair("mark"), "The other end of the line.", null, "none"),
        f.At);
}
