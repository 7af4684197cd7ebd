using System.Collections.Immutable;

namespace ShopDrawings.Drafting;

/// <summary>
/// A drawing practice: all that follows from the one choice between ISO and ASME. The values are from memory of the standards named beside each.
/// </summary>
public sealed class DrawingStandard
{
    private DrawingStandard(string name, ImmutableArray<SheetSize> sheets, ImmutableArray<int> scales, bool isThirdAngle, Style style, double small, double normal, double large, bool isTextInLine) =>
        (Name, Sheets, Scales, IsThirdAngle, Style, Small, Normal, Large, IsTextInLine) = (name, sheets, scales, isThirdAngle, style, small, normal, large, isTextInLine);

    /// <summary>
    /// ISO: sheets of ISO 216, the reductions of ISO 5455, first angle (ISO 5456-2), lines of 0.25 and 0.5 mm (ISO 128-2), lettering of 2.5, 3.5 and 5 mm (ISO 3098-1), dimensions
    /// above an unbroken line, read from below or from the right (ISO 129-1).
    /// </summary>
    public static DrawingStandard Iso { get; } = new("ISO", SheetSize.Metric, [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000], isThirdAngle: false, Style.Standard, 2.5, 3.5, 5, isTextInLine: false);

    /// <summary>
    /// ASME: US sheets (Y14.1), reductions by whole fractions of an inch to the foot (1:4 is 3 in, 1:8 is 1-1/2 in; common practice, no source), third angle (Y14.3), lines of 0.3 and 0.6 mm and lettering of at least 3 mm, titles of 6 (Y14.2; the 4 mm between are ours),
    /// dimensions in a gap of the line, all read from below (Y14.5).
    /// </summary>
    public static DrawingStandard Asme { get; } = new("ASME", SheetSize.Inch, [1, 2, 4, 8, 12, 16, 24, 32, 48, 96, 192, 384, 768], isThirdAngle: true, Style.Asme, 3, 4, 6, isTextInLine: true);

    /// <summary>What it is called.</summary>
    public string Name { get; }

    /// <summary>The sheets of paper, the smallest first.</summary>
    public ImmutableArray<SheetSize> Sheets { get; }

    /// <summary>The n of each reduction 1:n, the largest drawing first.</summary>
    public ImmutableArray<int> Scales { get; }

    /// <summary>Whether views stand in the third angle, else in the first.</summary>
    public bool IsThirdAngle { get; }

    /// <summary>The widths of lines.</summary>
    public Style Style { get; }

    /// <summary>Height of the smallest lettering in mm: notes, labels.</summary>
    public double Small { get; }

    /// <summary>Height of usual lettering in mm.</summary>
    public double Normal { get; }

    /// <summary>Height of titles in mm.</summary>
    public double Large { get; }

    /// <summary>Whether the text of a dimension stands level in a gap of its line; else above the line and along it.</summary>
    public bool IsTextInLine { get; }

    /// <inheritdoc/>
    public override string ToString() => Name;
}
