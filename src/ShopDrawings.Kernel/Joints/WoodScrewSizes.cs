namespace ShopDrawings.Kernel;

/// <summary>Sizes of wood screws and of the holes for them. Lengths in mm, angles in degrees.</summary>
internal static class WoodScrewSizes
{
    private static readonly double MmPerInch = (double)Measure.Inch.Factor;

    /// <summary>Outer diameter of the thread of a gauge: 0.060 + 0.013 × gauge in inches (ASME B18.6.1, from memory).</summary>
    public static double Diameter(int gauge) => (0.060 + 0.013 * gauge) * MmPerInch;

    /// <summary>Diameter of the drill a gauge passes through freely: (gauge + 3)/64 in (workshop rule of a furniture-making text).</summary>
    public static double ClearanceDrill(int gauge) => (gauge + 3) / 64.0 * MmPerInch;

    /// <summary>
    /// How deep a countersunk head sits flush: (head − shank) ÷ (2 tan(angle ÷ 2)) (derived, geometry); the angle between the flanks is 82°
    /// for inch screws and 90° for metric ones (ASME B18.6.1 and ISO, from memory).
    /// </summary>
    public static double CountersinkDepth(double headDiameter, double shankDiameter, double includedAngle) =>
        (headDiameter - shankDiameter) / (2 * Math.Tan(includedAngle / 2 * Math.PI / 180));
}
