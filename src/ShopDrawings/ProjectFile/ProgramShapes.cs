using ShopDrawings.Kernel;
using ShopDrawings.Yaml;
using Range = ShopDrawings.Yaml.Range;

namespace ShopDrawings.ProjectFile;

/// <summary>Every key of the programs of a machine, and of how its tools are driven in them, once.</summary>
internal static class ProgramShapes
{
    private const double MostPinDepth = 60;

    private static readonly ChoiceShape<bool> YesNo = new(("true", true), ("false", false));

    // A file's ending, of letters and digits.
    private static readonly MappedShape<Word, string> Ending = new(new NameShape(), (word, node) =>
        (word.Text, word.Text.Length <= 8 && !word.Text.Contains('-') ? null : $"{node.Described} is no ending of a file; up to eight small letters and digits are, like nc"));

    /// <summary>The programs.</summary>
    public static MappedShape<Given<ProgramSettings>, Given<ProgramSettings>> Programs { get; } = new(new RecordShape<Given<ProgramSettings>>("the programs", "a group like “zero: face”", f =>
    {
        var usual = new ProgramSettings();
        var settings = new ProgramSettings
        {
            HasCycles = f.Optional("holes", new ChoiceShape<bool>(("cycles", true), ("moves", false)), "Bores as drilling cycles, G81 and G83, or as plain moves for controls without cycles.", usual.HasCycles, "cycles"),
            Peck = f.Optional("peck", new EitherShape<Given<Size>>(n => n is YamlScalar { Text: "none" }, new ChoiceShape<Given<Size>>(("none", new(null))), new MappedShape<Size, Given<Size>>(Length("peck-depth"), (d, _) => (new(d), null))), "Deeper bores are made in steps of this depth, with chips cleared between them.", new(null), "none")?.Value?.Value,
            SafeHeight = f.Optional("safe-height", Length("safe-height"), "Above the face that lies up, where the tool moves across: higher than every clamp, stop and pin; 20 mm where it is left out.")?.Value ?? usual.SafeHeight,
            Clearance = f.Optional("clearance", Length("clearance-height"), "Above the face, where rapid moves down end and the feed begins; 3 mm where it is left out.")?.Value ?? usual.Clearance,
            IsZeroOnTable = f.Optional("zero", new ChoiceShape<bool>(("face", false), ("table", true)), "Where z is zero: on the face that lies up, or on the table under the panel.", usual.IsZeroOnTable, "face"),
            Spoil = f.Optional("spoil", AtMost("spoil-allowance", ProgramSettings.MostSpoil, "0.2 mm is usual"), "How far what goes through goes on into the table; 0.2 mm where it is left out.")?.Value ?? usual.Spoil,
            PinDepth = f.Optional("pin-depth", AtMost("pin-depth", MostPinDepth, "measure what is under it"), "How deep bores for pins go into the table, where there is wood enough under it; as deep as the spoil allowance where it is left out.")?.Value,
            HasChanger = f.Optional("tool-change", new ChoiceShape<bool>(("automatic", true), ("by-hand", false)), "The machine changes its tools (T, M6 and G43), or the program stops (M0) for each to be fitted and zeroed.", usual.HasChanger, "by-hand"),
            FirstNumber = f.Optional("number", new MappedShape<int, int?>(new CountShape(1, 9000), (n, _) => (n, null)), "Number of the machine’s first program, an O word; the others count on from it.", null, "none"),
            Ending = f.Optional("ending", Ending, "The ending of their files’ names.", usual.Ending, "nc"),
            HasLineNumbers = f.Optional("line-numbers", YesNo, "Whether lines have numbers, N10, N20 and so on.", usual.HasLineNumbers, "false"),
        };
        return new Given<ProgramSettings>(settings);
    }), (given, _) => (given, given.Value is { } s && s.SafeHeight <= s.Clearance ? "the safe height of the programs must be above their clearance, where the feed begins; 20 and 3 mm are usual" : null));

    /// <summary>A tool with what is written about how it is driven; what is left out is as <see cref="CuttingData"/> says.</summary>
    public static Tool Driven(Fields f, Tool tool)
    {
        tool = tool with
        {
            Speed = f.Optional("speed", new MappedShape<int, int?>(new CountShape(100, 60000), (n, _) => (n, null)), "Turns a minute in programs.", null, "5000 for drills, 3000 for those above 12 mm and for countersinks, 18000 for what mills"),
            Feed = f.Optional("feed", Length("feed"), "Feed in programs, a length a minute: 1000 mm for drills, 500 above 12 mm; 300 for countersinks; 3000 for cutters, 1500 under 6 mm and for engravers.")?.Value,
        };
        if (tool.Kind == ToolKind.Countersink)
            return tool with { ConeDegrees = f.Optional("cone", new CountShape(30, 150), "Angle of its cone in degrees.", 90, "90") };
        if (tool.Kind == ToolKind.Drill) return tool;
        tool = tool with { Plunge = f.Optional("plunge", Length("plunge"), "Feed down into the board, a length a minute; a third of the feed where it is left out.")?.Value };
        return tool.Kind == ToolKind.Engraver ? tool : tool with { Pass = f.Optional("pass", Length("pass-depth"), "The most it takes in one pass; its diameter where it is left out.")?.Value };
    }

    private static NumberShape Length(string rule) => new(Measure.Length, Range.Positive, rule);

    private static MappedShape<Size, Size> AtMost(string rule, double most, string advice) => new(new NumberShape(Measure.Length, Range.NotNegative, rule), (size, node) =>
        (size, size.Value <= most ? null : FormattableString.Invariant($"{node.Described} stands where at most {most} mm are expected; {advice}: is the unit right?")));
}
