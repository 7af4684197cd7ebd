using UnitsNet;

namespace ShopDrawings.Kernel;

/// <summary>A sheet good. Only the actual thickness enters geometry; the label is what the shop calls it.</summary>
public sealed class Board
{
    private Board(string name, BoardKind kind, Size thickness, string label, bool hasGrain, double densityKgPerM3)
    {
        (Name, Kind, Thickness, Label) = (name, kind, thickness, label);
        (HasGrain, DensityKgPerM3) = (hasGrain, densityKgPerM3);
    }

    /// <summary>The name panels refer to it by.</summary>
    public string Name { get; }

    /// <summary>What it is made of.</summary>
    public BoardKind Kind { get; }

    /// <summary>Actual thickness in mm.</summary>
    public Size Thickness { get; }

    /// <summary>What it is sold as, such as <c>3/4 in</c>; may be empty.</summary>
    public string Label { get; }

    /// <summary>Whether its faces have a direction that panels must follow.</summary>
    public bool HasGrain { get; }

    /// <summary>Density in kg/m³.</summary>
    public double DensityKgPerM3 { get; }

    /// <summary>A board; the density is its kind's usual one unless given.</summary>
    /// <exception cref="ArgumentException">The thickness or the density is not positive.</exception>
    public static Board Create(string name, BoardKind kind, Length thickness, string label = "", bool? hasGrain = null, Density? density = null) =>
        Create(name, kind, Size.Given(thickness.Millimeters, "thickness", default), label, hasGrain, density?.KilogramsPerCubicMeter);

    internal static Board Create(string name, BoardKind kind, Size thickness, string label, bool? hasGrain, double? densityKgPerM3)
    {
        if (!(thickness.Value > Tolerance.Length)) throw new ArgumentException("A board's thickness must be positive.", nameof(thickness));
        var density = densityKgPerM3 ?? SheetGoods.UsualDensityKgPerM3(kind);
        if (!(density > 0)) throw new ArgumentException("A board's density must be positive.", nameof(densityKgPerM3));
        return new Board(name, kind, thickness, label, hasGrain ?? kind == BoardKind.Plywood, density);
    }
}

/// <summary>What a board is made of.</summary>
public enum BoardKind
{
    /// <summary>Raw particleboard.</summary>
    Particleboard,

    /// <summary>Particleboard faced with melamine on both sides.</summary>
    Melamine,

    /// <summary>Medium density fibreboard.</summary>
    Mdf,

    /// <summary>Plywood.</summary>
    Plywood,

    /// <summary>Hardboard or high density fibreboard, for thin backs.</summary>
    Hardboard,
}
