namespace ShopDrawings.Kernel;

/// <summary>How far a slide comes out.</summary>
internal enum SlideExtension
{
    /// <summary>Three quarters of its length.</summary>
    ThreeQuarter,

    /// <summary>Its whole length.</summary>
    Full,
}

/// <summary>Side-mounted slides and what stands on them. Lengths in mm, masses in kg, forces in N.</summary>
internal static class SlideGeometry
{
    /// <summary>Multiplies what moves, for its jolts: common practice, no source.</summary>
    public const double DynamicFactor = 1.25;

    /// <summary>The most of its rating a pair is used for: common practice, no source.</summary>
    public const double MostUse = 0.8;

    /// <summary>
    /// Width of what moves between two slides: the opening less, on each side, the slide with its play and what it is packed out with
    /// (derived, geometry; a slide maker's help page asks for 0.2 to 0.5 mm of play).
    /// </summary>
    public static Size MovingWidth(Size opening, Size sideClearance, Size packer) => (opening - 2 * (sideClearance + packer)).As("moving-width");

    /// <summary>The longest slide of a series that fits, set-back before and clearance behind it, or nothing (derived, geometry).</summary>
    public static double? Longest(IEnumerable<double> lengths, double innerDepth, double setBack, double rearClearance)
    {
        var fitting = lengths.Where(l => l <= innerDepth - setBack - rearClearance + Tolerance.Length).ToList();
        return fitting.Count == 0 ? null : fitting.Max();
    }

    /// <summary>Nominal travel: 0.75 of the length, or all of it (slide maker's design page). A slide's own sheet goes first.</summary>
    public static double Travel(double length, SlideExtension extension) => extension == SlideExtension.Full ? length : 0.75 * length;

    /// <summary>How much of its rating a pair is used for: moved mass × <see cref="DynamicFactor"/> ÷ rating (common practice, no source).</summary>
    /// <param name="movedKg">Everything that moves.</param>
    /// <param name="ratingKg">Of the pair.</param>
    public static double Utilisation(double movedKg, double ratingKg) => movedKg * DynamicFactor / ratingKg;

    /// <summary>
    /// What the front fixing of each slide carries downwards while the load is out: half the weight × (lever + span) ÷ span (derived, statics).
    /// </summary>
    /// <param name="loadKg">On the pair.</param>
    /// <param name="lever">From the front fixing forwards to the load's centre of gravity.</param>
    /// <param name="span">Between the front and the rear fixing.</param>
    public static double FrontFixingDown(double loadKg, double lever, double span) => WeightOnEach(loadKg) * (lever + span) / span;

    /// <summary>What the rear fixing of each slide is pulled upwards with: half the weight × lever ÷ span (derived, statics).</summary>
    /// <param name="loadKg">On the pair.</param>
    /// <param name="lever">From the front fixing forwards to the load's centre of gravity.</param>
    /// <param name="span">Between the front and the rear fixing.</param>
    public static double RearFixingUp(double loadKg, double lever, double span) => WeightOnEach(loadKg) * lever / span;

    private static double WeightOnEach(double loadKg) => loadKg * Gravity.Standard / 2;
}
