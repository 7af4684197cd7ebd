namespace ShopDrawings.Drafting;

/// <summary>A line of a list.</summary>
/// <param name="Text">Its text, short enough for a column.</param>
/// <param name="Indent">How often it is indented.</param>
/// <param name="StaysWithNext">Whether no column ends with it.</param>
internal sealed record ListLine(string Text, int Indent, bool StaysWithNext = false)
{
    /// <summary>A blank at which no line is broken.</summary>
    public const char Hard = '\u00a0';

    /// <summary>An indent in mm.</summary>
    public const double Step = 3;

    /// <summary>Distance in mm from line to line of lettering of a height.</summary>
    public static double Pitch(double height) => height + 2.5;
}
