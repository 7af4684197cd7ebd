using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>What all sheets of a project share: the practice they follow, how lengths are printed, and what their title blocks say of the document.</summary>
/// <param name="Standard">The practice.</param>
/// <param name="Lengths">How lengths are printed.</param>
public sealed record SheetSettings(DrawingStandard Standard, LengthStyle Lengths)
{
    // Raised digits are 0.56 of the capitals in the font drawings are measured with.
    private const double SmallDigits = 0.56, LeastDigits = 1.65;

    /// <summary>What title blocks say of the document.</summary>
    public DocumentFields Document { get; init; } = new();

    /// <summary>Height in mm of the smallest lettering that holds lengths: the digits of a stacked fraction must stay readable, at least about 1.7 mm high.</summary>
    public double Small => Readable(Standard.Small) ? Standard.Small : Standard.Normal;

    /// <summary>Height in mm of lengths that stand out.</summary>
    public double Normal => Standard.Normal;

    private bool Readable(double height) => !(Lengths.Fractions == FractionForm.Stacked && (Lengths.IsInches || Lengths.HasBoth)) || SmallDigits * height >= LeastDigits;
}

/// <summary>
/// What a title block says of the document beside what the sheet shows (ISO 7200:2004; what is empty can be filled in by hand). Each is a line of text as
/// it is to be printed, also the date: there is no clock.
/// </summary>
public sealed record DocumentFields
{
    /// <summary>The legal owner.</summary>
    public string Owner { get; init; } = "";

    /// <summary>The identification number.</summary>
    public string Number { get; init; } = "";

    /// <summary>The revision index.</summary>
    public string Revision { get; init; } = "";

    /// <summary>The date of issue.</summary>
    public string Date { get; init; } = "";

    /// <summary>The creator: who drew it.</summary>
    public string DrawnBy { get; init; } = "";

    /// <summary>The approval person.</summary>
    public string ApprovedBy { get; init; } = "";

    /// <summary>All that is given, in one line; nothing where nothing is.</summary>
    internal string Line
    {
        get
        {
            (string Word, string Text)[] all = [("", Owner), ("No. ", Number), ("revision ", Revision), ("", Date), ("drawn by ", DrawnBy), ("approved by ", ApprovedBy)];
            return string.Join(", ", all.Where(f => f.Text.Length > 0).Select(f => f.Word + f.Text));
        }
    }
}
