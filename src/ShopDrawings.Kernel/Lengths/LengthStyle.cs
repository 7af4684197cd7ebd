namespace ShopDrawings.Kernel;

/// <summary>How lengths are printed on drawings: in mm, or in inches with fractions; rounded ones are marked.</summary>
public sealed class LengthStyle
{
    private LengthStyle(bool isInches) => IsInches = isInches;

    /// <summary>Millimetres: sizes to 0.1, everything else to 0.01.</summary>
    public static LengthStyle Millimetres { get; } = new(false);

    /// <summary>Inches: sizes and places to 1/32, or to 1/64 where that is exact; diameters and depths to 1/64.</summary>
    public static LengthStyle Inches { get; } = new(true);

    /// <summary>Whether inches are printed.</summary>
    public bool IsInches { get; }

    /// <summary>What bare numbers are and what the mark means, in words for a drawing.</summary>
    public string Statement => IsInches ? "inches; ~ is rounded" : "mm; ~ is rounded";

    /// <summary>A size, given in mm.</summary>
    public string Print(double millimetres) => IsInches ? Fraction(millimetres) : Tape.PrintMillimetres(millimetres, 1);

    /// <summary>A length in a sentence, with its unit: <c>38.1 mm</c>, or <c>1 1/2" (38.1 mm)</c>. Given in mm.</summary>
    public string Describe(double millimetres)
    {
        var metric = Tape.PrintMillimetres(millimetres, 2).TrimStart(Tape.RoundedMark) + " mm";
        return IsInches ? $"{Fraction(millimetres)} ({metric})" : metric;
    }

    /// <summary>A length in inches as a list prints it: to 1/32, or to 1/64 where that is exact.</summary>
    public static string Fraction(double millimetres)
    {
        var fine = Tape.PrintInches(millimetres, 64);
        return fine[0] == Tape.RoundedMark ? Tape.PrintInches(millimetres, 32) : fine;
    }

    /// <summary>A coordinate of a hole or a groove, given in mm.</summary>
    public string PrintPlace(double millimetres) => IsInches ? Fraction(millimetres) : Tape.PrintMillimetres(millimetres, 2);

    /// <summary>A diameter or a depth, given in mm; in inches one that is a whole number of hundredths of a mm but no 1/64 stays metric, as its bit is.</summary>
    public string PrintFine(double millimetres)
    {
        var metric = Tape.PrintMillimetres(millimetres, 2);
        if (!IsInches) return metric;
        var inches = Tape.PrintInches(millimetres, 64);
        return inches[0] == Tape.RoundedMark && metric[0] != Tape.RoundedMark ? metric + " mm" : inches;
    }
}
