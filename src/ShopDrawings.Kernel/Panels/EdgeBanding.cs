namespace ShopDrawings.Kernel;

/// <summary>How edges are banded, and how much band to buy. Lengths in mm.</summary>
/// <param name="PreMill">Milled off an edge before it is banded.</param>
/// <param name="Allowance">Bought for each edge beyond its length, since a band is trimmed once it is on.</param>
/// <param name="WastePercent">Bought beyond that, in percent.</param>
public sealed record EdgeBanding(Size PreMill, Size Allowance, Size WastePercent)
{
    // A tape stands over each face by at least this much, to be trimmed flush: common practice, no source.
    private const double LeastOverhang = 2;

    // Widths tape is sold in: common practice, no source.
    private static readonly double[] TapeWidths = [22, 28, 44, 54, 64, 84, 104];

    /// <summary>Put on by hand: nothing milled, 25 mm for each edge and 10 percent of waste (common practice, no source).</summary>
    public static EdgeBanding ByHand { get; } = new(Size.Zero, Size.Default(25, "usual-band-allowance"), Size.Default(10, "usual-band-waste"));

    /// <summary>Length to buy for edges of these lengths: (sum + allowance for each) and the waste on top.</summary>
    public double ToBuy(IEnumerable<double> edges) => edges.Sum(e => e + Allowance.Value) * (1 + WastePercent.Value / 100);

    /// <summary>How far a tape stands over each face of a panel: half the difference of its width and the panel's thickness.</summary>
    public static double OverhangEach(double tapeWidth, double thickness) => (tapeWidth - thickness) / 2;

    /// <summary>
    /// The narrowest tape sold that stands over each face by 2 mm; for a panel too thick for all of them, one of just that width, to be cut
    /// from a wider sheet (common practice, no source).
    /// </summary>
    public static double TapeWidth(double thickness) =>
        TapeWidths.Where(w => OverhangEach(w, thickness) >= LeastOverhang - Tolerance.Length).Append(thickness + 2 * LeastOverhang).First();
}
