using ShopDrawings.Kernel;
using ShopDrawings.Yaml;

namespace ShopDrawings.ProjectFile;

/// <summary>What names in a project stand for. A name nobody knows is noted as a fault.</summary>
internal sealed class References
{
    private const string UsualScrewName = "wood-4x50";

    private readonly LengthStyle lengths;
    private readonly List<Diagnostic> diagnostics;
    private readonly Catalogue catalogue;
    private readonly Dictionary<string, Board> boards = new(StringComparer.Ordinal);

    /// <summary>The boards and parts of a project.</summary>
    public References(ProjectModel model, LengthStyle lengths, List<Diagnostic> diagnostics)
    {
        (this.lengths, this.diagnostics) = (lengths, diagnostics);
        catalogue = new Catalogue([.. model.Catalogues, model.Catalogue], Fail);
        foreach (var (name, board) in model.Boards)
            boards[name.Text] = Kernel.Board.Create(name.Text, board.Kind, board.Thickness.As($"{name.Text}-thickness"), board.Label, board.Grain, board.Density?.Value);
    }

    /// <summary>A board.</summary>
    public Board? Board(Word word) => Find(boards, word, "board");

    /// <summary>A piece of hardware.</summary>
    public HardwarePattern? Hardware(Word word) => Find(catalogue.Hardware, word, "hardware");

    /// <summary>The usual screw.</summary>
    public Screw UsualScrew => (Screw)catalogue.Fasteners[UsualScrewName];

    /// <summary>A screw.</summary>
    public Screw? Screw(Word word)
    {
        if (Find(catalogue.Fasteners, word, "fastener") is not { } fastener) return null;
        if (fastener is Screw screw) return screw;
        Fail(word.At, $"“{word.Text}” is a {fastener.Kind}; only a wood screw goes here, such as {UsualScrewName}");
        return null;
    }

    /// <summary>A joint as it is written, with what it leaves out as in another.</summary>
    public JointRule? Joint(JointRuleEntry? entry, JointRule usual)
    {
        if (entry is null) return usual;
        var isGlued = entry.Fastener?.Text == "none";
        var fastener = entry.Fastener is null || isGlued ? usual.Fastener : Find(catalogue.Fasteners, entry.Fastener, "fastener");
        var beside = entry.Beside is { } word ? Find(catalogue.Fasteners, word, "fastener") : entry.Fastener is null ? usual.Beside : null;
        if ((fastener is null && !isGlued && usual.Fastener is not null) || (beside is null && entry.Beside is not null)) return null;
        if (entry.Sunk is { } sunk)
        {
            if (fastener is not Screw screw || isGlued) Fail(sunk.Source, "only the heads of wood screws are countersunk; leave “sunk” out");
            else fastener = screw with { Sunk = sunk };
        }

        if (entry.Face is not null && fastener is not (CamConnector or CornerBracket)) Fail(entry.At, "only cams and brackets sit on a face of the held panel; leave “face” out");
        if (entry.HousingPlay is { } play && entry.Housing is null && usual.Housing.Value == 0) Fail(play.Source, "“housing-play” belongs to a housing; give its depth as “housing”, or leave this out");
        return new JointRule(isGlued ? null : fastener, new(entry.EndDistance ?? usual.Row.EndDistance, entry.Pitch ?? usual.Row.Pitch))
        {
            Housing = entry.Housing ?? usual.Housing, HousingPlay = entry.HousingPlay ?? usual.HousingPlay, Beside = beside, Face = entry.Face ?? usual.Face,
        };
    }

    /// <summary>The longest screw that is no longer than a length in mm, of a diameter where there is one, else of the nearest; the shortest where all are longer.</summary>
    public Screw LongestScrew(Size diameter, double length)
    {
        double Off(Screw screw) => Math.Round(Math.Abs(screw.Diameter.Value - diameter.Value), 3);
        var known = catalogue.Fasteners.Values.OfType<Screw>().OrderBy(Off).ThenBy(s => s.Length.Value).ThenBy(s => s.Name, StringComparer.Ordinal).ToList();
        var fitting = known.Where(s => s.Length.Value <= length + Tolerance.Length).ToList();
        return fitting.Count == 0 ? known[0] : fitting.Last(s => Off(s) == Off(fitting[0]));
    }

    /// <summary>A hinge; the usual one where none is named.</summary>
    public Hinge? Hinge(Word? word) => word is null ? catalogue.Hinges["cup-35"] : Find(catalogue.Hinges, word, "hinge");

    /// <summary>A pair of slides.</summary>
    public Slide? Slide(Word word) => Find(catalogue.Slides, word, "slide");

    /// <summary>A shelf pin; the usual one where none is named.</summary>
    public ShelfPin? Pin(Word? word) => word is null ? catalogue.Pins["pin-5"] : Find(catalogue.Pins, word, "pin");

    /// <summary>A castor.</summary>
    public Castor? Castor(Word word) => Find(catalogue.Castors, word, "castor");

    /// <summary>A levelling foot.</summary>
    public Foot? Foot(Word word) => Find(catalogue.Feet, word, "foot");

    /// <summary>A machine as it is written.</summary>
    public MachineEntry? Machine(Word word) => Find(catalogue.Machines, word, "machine");

    /// <summary>A length in a message.</summary>
    public string Print(Size size) => lengths.Describe(size.Value);

    /// <summary>A length in mm in a message.</summary>
    public string Print(double millimetres) => lengths.Describe(millimetres);

    /// <summary>Notes a fault.</summary>
    public void Fail(SourceSpan at, string message) => diagnostics.Add(new(at, message));

    /// <summary>The nearest known name, or all of them.</summary>
    public static string Hint(string word, IEnumerable<string> known, string none) =>
        !known.Any() ? $"; {none}"
        : Spelling.Nearest(word, known) is { } near ? $"; did you mean “{near}”?{(known.Count() <= 6 ? $" Known are {string.Join(", ", known)}" : "")}"
        : $"; known are {string.Join(", ", known)}";

    private T? Find<T>(Dictionary<string, T> among, Word word, string what) where T : class
    {
        if (among.TryGetValue(word.Text, out var found)) return found;
        Fail(word.At, $"there is no {what} called “{word.Text}”{Hint(word.Text, among.Keys, $"the file describes no {what}")}");
        return null;
    }
}
