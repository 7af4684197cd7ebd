using ShopDrawings.Drafting;
using ShopDrawings.Kernel;
using ShopDrawings.Yaml;
using Range = ShopDrawings.Yaml.Range;

namespace ShopDrawings.ProjectFile;

/// <summary>The labels as the file wants them: none, or a page of them; one that is left out is plain paper of the drawings' practice.</summary>
/// <param name="Sheet">The page, or nothing for none.</param>
/// <param name="IsPlain">Whether it is plain paper, of the size that is usual where the file comes from.</param>
/// <param name="Skip">Labels of the first page that are used up.</param>
internal sealed record LabelEntry(LabelSheet? Sheet, bool IsPlain, int Skip)
{
    /// <summary>What it is where the file says nothing.</summary>
    public static LabelEntry Usual { get; } = new(null, true, 0);

    /// <summary>The page, on US paper or on that of ISO 216.</summary>
    public LabelSheet? Of(bool isUs) => (IsPlain ? isUs ? LabelSheet.PlainLetter : LabelSheet.PlainA4 : Sheet) is { } sheet ? sheet with { Skip = Skip } : null;
}

/// <summary>Every key of the labels, once.</summary>
internal static class LabelShapes
{
    private const int MostAcross = 10, MostDown = 30;

    private static readonly Point2 A4 = new(210, 297), Letter = new(215.9, 279.4);

    private static readonly ChoiceShape<LabelEntry> Sheets = new(
        ("plain", LabelEntry.Usual), ("a4-3x8", new(LabelSheet.A4By3X8, false, 0)), ("letter-3x10", new(LabelSheet.LetterBy3X10, false, 0)), ("none", new(null, false, 0)));

    private static readonly MappedShape<Own, Own> Read = new(
        new RecordShape<Own>("the labels", "a group like “sheet: a4-3x8”", f => new Own(
            f.Optional("sheet", Sheets, "The page by its name: plain paper to be cut, a4-3x8 (labels of 70 × 37 mm that touch), letter-3x10 (2 5/8 × 1 in, 1/8 in apart), or none for no labels; or give columns and rows of your own.", null!, "plain, on A4, or on US letter where drawings follow asme"),
            f.Optional("paper", new ChoiceShape<Point2?>(("A4", A4), ("letter", Letter)), "The paper of a page of your own.", null, "A4"),
            f.Optional("columns", new MappedShape<int, int?>(new CountShape(1, MostAcross), (n, _) => (n, null)), "Labels side by side, on a page of your own.", null, "none"),
            f.Optional("rows", new MappedShape<int, int?>(new CountShape(1, MostDown), (n, _) => (n, null)), "Labels above each other.", null, "none"),
            f.Optional("width", Length("label-width"), "Width of a label."),
            f.Optional("height", Length("label-height"), "Height of a label."),
            f.Optional("left", NotNegative("label-left"), "From the left edge of the paper to the first label; left out, as much as on the right."),
            f.Optional("top", NotNegative("label-top"), "From the upper edge of the paper to the first label; left out, as much as at the bottom."),
            f.Optional("gap", new ListShape<Size>(NotNegative("label-gap"), 2), "Between labels, as [across, down].", [], "[0, 0]"),
            f.Optional("cut-lines", new ChoiceShape<bool>(("true", true), ("false", false)), "Whether lines to cut along stand between labels of your own.", false, "false"),
            f.Optional("skip", new CountShape(0, MostAcross * MostDown), "How many labels of the first page are used up already.", 0, "0"))),
        (own, _) => (own, own.Fault));

    /// <summary>The labels.</summary>
    public static MappedShape<Own, LabelEntry> Labels { get; } = new(Read, (own, _) => (own.Entry, null));

    private static NumberShape Length(string rule) => new(Measure.Length, Range.Positive, rule);

    private static NumberShape NotNegative(string rule) => new(Measure.Length, Range.NotNegative, rule);

    /// <summary>The labels as they are written.</summary>
    internal sealed record Own(
        LabelEntry? Named, Point2? Paper, int? Columns, int? Rows, Size? Width, Size? Height, Size? Left, Size? Top, System.Collections.Immutable.ImmutableArray<Size> Gap, bool HasCutLines, int Skip)
    {
        private bool HasAny => Paper is not null || Columns is not null || Rows is not null || Width is not null || Height is not null || Left is not null || Top is not null || !Gap.IsDefaultOrEmpty || HasCutLines;

        /// <summary>What is wanted; only where there is no fault.</summary>
        public LabelEntry Entry => HasAny ? new(Sheet, false, Skip) : (Named ?? LabelEntry.Usual) with { Skip = Skip };

        /// <summary>What cannot be meant, or nothing.</summary>
        public string? Fault
        {
            get
            {
                if (!HasAny) return Entry.Of(isUs: true) is { } named ? SkipFault(named) : null;
                if (Named is not null) return "a page of labels is named by “sheet” or described by columns and rows; leave one out";
                if (Columns is null || Rows is null || Width is null || Height is null) return "a page of labels of your own needs “columns”, “rows”, “width” and “height”; measure a label";
                if (!Gap.IsDefaultOrEmpty && Gap.Length != 2) return "the gap between labels is written [across, down]";
                var (least, sheet) = (LabelSheet.Least, Sheet);
                if (Width.Value < least.X || Height.Value < least.Y) return FormattableString.Invariant($"labels of {Width.Value:0.#} × {Height.Value:0.#} mm hold no part’s name and size; take some of at least {least.X} × {least.Y} mm");
                var all = sheet.Bounds;
                return all.Min.X < -Tolerance.Length || all.Min.Y < -Tolerance.Length || all.Max.X > sheet.Page.X + Tolerance.Length || all.Max.Y > sheet.Page.Y + Tolerance.Length
                    ? FormattableString.Invariant($"the labels take {all.Width:0.#} × {all.Height:0.#} mm and do not fit the paper of {sheet.Page.X:0.#} × {sheet.Page.Y:0.#} mm where they are; is the unit right?")
                    : SkipFault(sheet);
            }
        }

        private string? SkipFault(LabelSheet sheet) => Skip < sheet.Count ? null : FormattableString.Invariant($"a page has {sheet.Count} labels, and {Skip} of them cannot be used up; begin with a new page");

        private LabelSheet Sheet
        {
            get
            {
                var (page, label) = (Paper ?? A4, new Point2(Width!.Value, Height!.Value));
                var gap = Gap.IsDefaultOrEmpty ? default : new Point2(Gap[0].Value, Gap[1].Value);
                var (columns, rows) = (Columns!.Value, Rows!.Value);
                double Centred(double paper, int count, double size, double apart) => (paper - count * size - (count - 1) * apart) / 2;
                var corner = new Point2(Left?.Value ?? Centred(page.X, columns, label.X, gap.X), Top?.Value ?? Centred(page.Y, rows, label.Y, gap.Y));
                return new(page, columns, rows, label, corner, gap) { HasCutLines = HasCutLines };
            }
        }
    }
}
