using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>A unit a user may write behind a number.</summary>
/// <param name="Symbol">How the program writes it.</param>
/// <param name="Factor">One of it in the measure's own unit; exact.</param>
/// <param name="Spellings">Every accepted spelling, lower case.</param>
internal sealed record Unit(string Symbol, decimal Factor, params ImmutableArray<string> Spellings);

/// <summary>
/// A kind of quantity a user may write, with its units; the first is the one used inside. The one table of conversion factors:
/// 1 in = 25.4 mm and 1 lb = 0.45359237 kg are exact (international yard and pound agreement, 1959, from memory).
/// </summary>
internal sealed class Measure
{
    private Measure(string name, string examples, params ImmutableArray<Unit> units) => (Name, Examples, Units) = (name, examples, units);

    /// <summary>Millimetres.</summary>
    public static readonly Unit Millimetre = new("mm", 1m, "mm", "millimetre", "millimetres", "millimeter", "millimeters");

    /// <summary>Inches.</summary>
    public static readonly Unit Inch = new("in", 25.4m, "in", "inch", "inches", "\"", "″", "”", "“", "''", "′′", "’’");

    /// <summary>Feet.</summary>
    public static readonly Unit Foot = new("ft", 12m * 25.4m, "ft", "foot", "feet", "'", "′", "’", "‘");

    /// <summary>Kilograms for each cubic metre.</summary>
    public static readonly Unit KilogramPerCubicMetre = new("kg/m3", 1m, "kg/m3", "kg/m³", "kg/m^3");

    /// <summary>A length, in mm inside.</summary>
    public static readonly Measure Length = new(
        "length", "568.3 mm, 56.83 cm, 22-3/8 in or 1' 10-3/8\"",
        Millimetre,
        new Unit("cm", 10m, "cm", "centimetre", "centimetres", "centimeter", "centimeters"),
        new Unit("m", 1000m, "m", "metre", "metres", "meter", "meters"),
        Inch,
        Foot);

    /// <summary>A density, in kg/m³ inside.</summary>
    public static readonly Measure Density = new(
        "density", "680 kg/m3 or 45 lb/ft3",
        KilogramPerCubicMetre,
        new Unit("lb/ft3", 0.45359237m / (0.3048m * 0.3048m * 0.3048m), "lb/ft3", "lb/ft³", "lb/ft^3", "lb/cu ft"));

    /// <summary>A mass, in kg inside.</summary>
    public static readonly Measure Mass = new(
        "mass", "28 kg or 62 lb",
        new Unit("kg", 1m, "kg"),
        new Unit("lb", 0.45359237m, "lb", "lbs"));

    /// <summary>A bare number.</summary>
    public static readonly Measure Number = new("number", "2 or 1.5");

    /// <summary>What it is called in messages.</summary>
    public string Name { get; }

    /// <summary>What would be understood, for messages.</summary>
    public string Examples { get; }

    /// <summary>The accepted units; none for a bare number.</summary>
    public ImmutableArray<Unit> Units { get; }

    /// <summary>The unit of a spelling, or nothing.</summary>
    public Unit? UnitOf(string spelling) => Units.FirstOrDefault(u => u.Spellings.Contains(spelling.ToLowerInvariant()));
}
