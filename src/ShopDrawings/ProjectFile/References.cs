using ShopDrawings.Kernel;
using ShopDrawings.Yaml;

namespace ShopDrawings.ProjectFile;

/// <summary>What names in a project stand for. A name nobody knows is noted as a fault.</summary>
internal sealed class References
{
    private const string UsualScrew = "wood-4x50";

    // A number 8 screw, 4.17 mm, takes the place of one of 4 mm.
    private const double AboutTheSame = 0.3;
    private readonly List<Diagnostic> diagnostics;
    private readonly Catalogue catalogue;
    private readonly Dictionary<string, Board> boards = new(StringComparer.Ordinal);

    /// <summary>The boards and parts of a project.</summary>
    public References(ProjectModel model, List<Diagnostic> diagnostics)
    {
        this.diagnostics = diagnostics;
        catalogue = new Catalogue([.. model.Catalogues, model.Catalogue], Fail);
        foreach (var (name, board) in model.Boards)
            boards[name.Text] = Kernel.Board.Create(name.Text, board.Kind, board.Thickness.As($"{name.Text}-thickness"), board.Label, board.Grain, board.Density?.Value);
    }

    /// <summary>A board.</summary>
    public Board? Board(Word word) => Find(boards, word, "board");

    /// <summary>A piece of hardware.</summary>
    public HardwarePattern? Hardware(Word word) => Find(catalogue.Hardware, word, "hardware");

    /// <summary>A screw; the usual one where none is named.</summary>
    public Screw? Screw(Word? word) => word is null ? catalogue.Screws[UsualScrew] : Find(catalogue.Screws, word, "screw");

    /// <summary>The longest screw of about a diameter that is no longer than a length in mm; the shortest where all are longer.</summary>
    public Screw LongestScrew(Size diameter, double length)
    {
        var fitting = catalogue.Screws.Values.Where(s => Math.Abs(s.Diameter.Value - diameter.Value) <= AboutTheSame).OrderBy(s => s.Length.Value).ThenBy(s => s.Name, StringComparer.Ordinal).ToList();
        return fitting.LastOrDefault(s => s.Length.Value <= length + Tolerance.Length) ?? fitting[0];
    }

    /// <summary>A hinge; the usual one where none is named.</summary>
    public Hinge? Hinge(Word? word) => word is null ? catalogue.Hinges["cup-35"] : Find(catalogue.Hinges, word, "hinge");

    /// <summary>A pair of slides.</summary>
    public Slide? Slide(Word word) => Find(catalogue.Slides, word, "slide");

    /// <summary>A castor.</summary>
    public Castor? Castor(Word word) => Find(catalogue.Castors, word, "castor");

    /// <summary>How screws spread.</summary>
    public static RowRule Rows(RowsEntry? entry) =>
        new(entry?.EndDistance ?? RowRule.Standard.EndDistance, entry?.Pitch ?? RowRule.Standard.Pitch);

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
