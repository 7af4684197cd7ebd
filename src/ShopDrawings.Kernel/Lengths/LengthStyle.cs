namespace ShopDrawings.Kernel;

/// <summary>How lengths are printed on drawings: in mm, in inches, or sizes in both; rounded ones are marked.</summary>
public sealed record LengthStyle
{
    private readonly int denominator = 32;

    private LengthStyle(bool isInches) => IsInches = isInches;

    /// <summary>Millimetres: sizes to 0.1, everything else to 0.01.</summary>
    public static LengthStyle Millimetres { get; } = new(false);

    /// <summary>Inches: sizes and places to 1/32, or to 1/64 where that is exact; diameters and depths to 1/64.</summary>
    public static LengthStyle Inches { get; } = new(true);

    /// <summary>Whether inches are printed, or printed first.</summary>
    public bool IsInches { get; }

    /// <summary>Whether sizes are followed by the other unit in brackets: <c>600 [~23 5/8"]</c>. Places, diameters and depths have one unit.</summary>
    public bool HasBoth { get; init; }

    /// <summary>How fractions of an inch are written.</summary>
    public FractionForm Fractions { get; init; } = FractionForm.Plain;

    /// <summary>The finest part of an inch that sizes and places are rounded to: 2, 4, 8, 16, 32 or 64. One that is exact in 64ths is printed so.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is none of those.</exception>
    public int Denominator
    {
        get => denominator;
        init => denominator = value is 2 or 4 or 8 or 16 or 32 or 64 ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "A tape is divided into 2, 4, 8, 16, 32 or 64 parts of an inch.");
    }

    /// <summary>The same without the other unit.</summary>
    public LengthStyle InOneUnit => this with { HasBoth = false };

    /// <summary>What bare numbers are and what the mark means, in words for a drawing.</summary>
    public string Statement => (IsInches, HasBoth) switch
    {
        (true, false) => "inches; ~ is rounded",
        (true, true) => "inches [mm]; ~ is rounded",
        (false, false) => "mm; ~ is rounded",
        (false, true) => "mm [inches]; ~ is rounded",
    };

    /// <summary>A size, given in mm.</summary>
    public string Print(double millimetres)
    {
        var metric = Tape.PrintMillimetres(millimetres, 1);
        return (IsInches, HasBoth) switch
        {
            (true, false) => InInches(millimetres),
            (true, true) => $"{InInches(millimetres)} [{metric} mm]",
            (false, false) => metric,
            (false, true) => $"{metric} [{InInches(millimetres)}]",
        };
    }

    /// <summary>A length in a sentence, with its unit: <c>38.1 mm</c>, or <c>1 1/2" (38.1 mm)</c>. Given in mm.</summary>
    public string Describe(double millimetres)
    {
        var metric = Tape.PrintMillimetres(millimetres, 2).TrimStart(Tape.RoundedMark) + " mm";
        return IsInches ? $"{InInches(millimetres)} ({metric})" : metric;
    }

    /// <summary>A length in inches as a list prints it: to 1/32, or to 1/64 where that is exact.</summary>
    public static string Fraction(double millimetres) => Inches.InInches(millimetres);

    /// <summary>A coordinate of a hole or a groove, given in mm.</summary>
    public string PrintPlace(double millimetres) => IsInches ? InInches(millimetres) : Tape.PrintMillimetres(millimetres, 2);

    /// <summary>A diameter or a depth, given in mm; in inches one that is a whole number of hundredths of a mm but no 1/64 stays metric, as its bit is.</summary>
    public string PrintFine(double millimetres)
    {
        var metric = Tape.PrintMillimetres(millimetres, 2);
        if (!IsInches) return metric;
        var inches = Tape.PrintInches(millimetres, 64);
        return inches[0] == Tape.RoundedMark && metric[0] != Tape.RoundedMark ? metric + " mm" : Written(millimetres, inches);
    }

    private string InInches(double millimetres)
    {
        var fine = Tape.PrintInches(millimetres, 64);
        return Written(millimetres, fine[0] == Tape.RoundedMark ? Tape.PrintInches(millimetres, Denominator) : fine);
    }

    private string Written(double millimetres, string fraction) => Fractions switch
    {
        FractionForm.Decimals => Tape.PrintDecimalInches(millimetres, 3),
        FractionForm.Stacked => StackedFraction.Stack(fraction),
        _ => fraction,
    };
}
