namespace ShopDrawings.Kernel;

/// <summary>Formulas of sheet goods. Lengths in mm, masses in kg, densities in kg/m³.</summary>
public static class SheetGoods
{
    /// <summary>
    /// Usual density of a kind of board in kg/m³. Particleboard 650: mill data sheets quoting EN 323 for 18 and 19 mm P2. MDF 750, birch
    /// plywood 680, hardboard 900: common practice, no source.
    /// </summary>
    public static double UsualDensityKgPerM3(BoardKind kind) => kind switch
    {
        BoardKind.Particleboard or BoardKind.Melamine => 650,
        BoardKind.Mdf => 750,
        BoardKind.Plywood => 680,
        BoardKind.Hardboard => 900,
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };

    /// <summary>Mass in kg of a board of an area in mm² and a thickness in mm.</summary>
    public static double Mass(double areaMm2, double thickness, double densityKgPerM3) => areaMm2 * thickness * densityKgPerM3 * 1e-9;

    /// <summary>Mass of a square metre in kg.</summary>
    public static double ArealMass(double thickness, double densityKgPerM3) => Mass(1e6, thickness, densityKgPerM3);

    /// <summary>What remains of a sheet's side when the factory edges are trimmed off both ends.</summary>
    public static double Usable(double sheet, double trimEachEnd) => sheet - 2 * trimEachEnd;

    /// <summary>
    /// How much a panel grows when the relative humidity rises: the linear expansion measured from 50 to 80 % humidity, taken as linear.
    /// Limits of ANSI A208.1 (from memory) and A208.2: 0.35 and 0.33 %.
    /// </summary>
    /// <param name="length">Length in mm.</param>
    /// <param name="expansionPercent">Growth in percent from 50 to 80 % humidity.</param>
    /// <param name="humidityChangePercent">Rise of the relative humidity in percentage points.</param>
    public static double LinearExpansion(double length, double expansionPercent, double humidityChangePercent) =>
        length * expansionPercent / 100 * humidityChangePercent / 30;

    /// <summary>
    /// Thermal conductivity of wood at 24 °C in W/(m·K): G(0.1941 + 0.004064 M) + 0.01864 with specific gravity G and moisture content M
    /// in percent (Wood Handbook, chapter 4, from memory).
    /// </summary>
    public static double WoodConductivity(double specificGravity, double moisturePercent) =>
        specificGravity * (0.1941 + 0.004064 * moisturePercent) + 0.01864;
}
