using System.Collections.Immutable;
using ShopDrawings.Drafting;

namespace ShopDrawings.Dxf;

/// <summary>
/// The variables of dimensions, written from this one list into the HEADER and into DIMSTYLE: some readers look only at the one, some
/// only at the other (DXF Reference, HEADER and DIMSTYLE).
/// </summary>
internal static class DimensionVariables
{
    /// <summary>Lengths in mm for a lettering height: name, group code in DIMSTYLE, value. The same shares the drawing's own dimensions have.</summary>
    public static ImmutableArray<(string Name, int Code, double Value)> Lengths(double height) =>
    [
        ("$DIMASZ", 41, DimensionProportions.ArrowLength * height), ("$DIMEXO", 42, DimensionProportions.ObjectGap * height), ("$DIMDLI", 43, 2 * height),
        ("$DIMEXE", 44, DimensionProportions.Overrun * height), ("$DIMTXT", 140, height), ("$DIMCEN", 141, 0), ("$DIMTSZ", 142, 0),
        ("$DIMGAP", 147, DimensionProportions.TextGap * height),
    ];

    /// <summary>Factors: name, group code in DIMSTYLE, value. What CAD measures anew is in the units of what is drawn, whatever the scale of the view.</summary>
    public static ImmutableArray<(string Name, int Code, double Value)> Factors(DimensionLook look) => [("$DIMSCALE", 40, 1), ("$DIMLFAC", 144, look.Factor)];

    /// <summary>
    /// Switches: name, group code in DIMSTYLE, value. The text is level and in the line, or along the line and above it; trailing zeros are off, and in
    /// inches the zero before the point.
    /// </summary>
    public static ImmutableArray<(string Name, int Code, int Value)> Switches(DimensionLook look, DrawingUnit unit)
    {
        var (level, above, zeros) = (look.Standard.IsTextInLine ? 1 : 0, look.Standard.IsTextInLine ? 0 : 1, unit == DrawingUnit.Inch ? 12 : 8);
        return [("$DIMTOL", 71, 0), ("$DIMLIM", 72, 0), ("$DIMTIH", 73, level), ("$DIMTOH", 74, level), ("$DIMTAD", 77, above), ("$DIMZIN", 78, zeros)];
    }

    /// <summary>Switches that came after R12: decimal numbers, two decimals, a point.</summary>
    public static ImmutableArray<(string Name, int Code, int Value)> LaterSwitches { get; } =
        [("$DIMDEC", 271, 2), ("$DIMLUNIT", 277, 2), ("$DIMDSEP", 278, '.')];
}
