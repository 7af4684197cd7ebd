namespace ShopDrawings.Kernel;

/// <summary>
/// What wood screws hold. Diameters and lengths in mm, forces in N, torques in N·m; the thread length is the threaded part inside the panel
/// that receives it, the specific gravity that of oven-dry material (about density ÷ 1000 kg/m³, less 5 to 8 %).
/// </summary>
internal static class ScrewStrength
{
    /// <summary>Constant of withdrawal from a face of particleboard: Wood Handbook FPL-GTR-282 chapter 8 (from memory).</summary>
    public const double ParticleboardFace = 41.1;

    /// <summary>Constant of withdrawal from an edge of particleboard: Wood Handbook FPL-GTR-282 chapter 8 (from memory).</summary>
    public const double ParticleboardEdge = 31.8;

    /// <summary>Divides the ultimate load of particleboard under a load that stays: common practice, no source.</summary>
    public const double SustainedFactor = 5;

    /// <summary>Divides the ultimate load of particleboard under a load that comes and goes: common practice, no source.</summary>
    public const double OccasionalFactor = 4;

    private static readonly double MmPerInch = (double)Measure.Inch.Factor;
    private static readonly double NewtonsPerPound = (double)Measure.Mass.UnitOf("lb")!.Factor * Gravity.Standard;

    /// <summary>Ultimate withdrawal from a face of particleboard: 41.1 √D (L − D/3)^1.25 G² (Wood Handbook FPL-GTR-282 chapter 8, from memory).</summary>
    public static double FromParticleboardFace(double diameter, double threadLength, double specificGravity) =>
        FromParticleboard(ParticleboardFace, diameter, threadLength, specificGravity);

    /// <summary>Ultimate withdrawal from an edge of particleboard: as from a face, with 31.8 (Wood Handbook FPL-GTR-282 chapter 8, from memory).</summary>
    public static double FromParticleboardEdge(double diameter, double threadLength, double specificGravity) =>
        FromParticleboard(ParticleboardEdge, diameter, threadLength, specificGravity);

    /// <summary>
    /// Ultimate withdrawal from the side grain of solid wood: 108.25 G² D L (Wood Handbook FPL-GTR-282 chapter 8, from memory).
    /// </summary>
    public static double FromWood(double diameter, double threadLength, double specificGravity) =>
        108.25 * specificGravity * specificGravity * diameter * threadLength;

    /// <summary>
    /// Allowable withdrawal from solid wood, safety included: 2850 G² D lb for each inch of thread, D in inches (engineering reference page,
    /// in the form of the US design specification for wood construction).
    /// </summary>
    public static double DesignFromWood(double diameter, double threadLength, double specificGravity) =>
        2850 * NewtonsPerPound * specificGravity * specificGravity * (diameter / MmPerInch) * (threadLength / MmPerInch);

    /// <summary>What a group of equal screws may carry: the ultimate load of each, added up, over a safety factor (common practice, no source).</summary>
    /// <param name="ultimate">Of one screw, in N.</param>
    /// <param name="screws">How many share the load.</param>
    /// <param name="safetyFactor"><see cref="SustainedFactor"/> or <see cref="OccasionalFactor"/>.</param>
    public static double GroupDesignLoad(double ultimate, int screws, double safetyFactor) => ultimate * screws / safetyFactor;

    /// <summary>
    /// The torque that strips a thread in particleboard: 3.16 + 0.0096 X with X the density in kg/m³, for a no. 8 screw in a board of 16 mm;
    /// seat screws at 60 to 90 % of it (Wood Handbook FPL-GTR-282 chapter 8, from memory).
    /// </summary>
    public static double TorqueLimit(double densityKgPerM3) => 3.16 + 0.0096 * densityKgPerM3;

    // A thread no longer than its point, D/3, holds nothing.
    private static double FromParticleboard(double constant, double diameter, double threadLength, double specificGravity) =>
        constant * Math.Sqrt(diameter) * Math.Pow(Math.Max(threadLength - diameter / 3, 0), 1.25) * specificGravity * specificGravity;
}
