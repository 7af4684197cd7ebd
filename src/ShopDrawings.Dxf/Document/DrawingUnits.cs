namespace ShopDrawings.Dxf;

/// <summary>What a unit means in a file.</summary>
internal static class DrawingUnits
{
    /// <summary>Millimetres in one drawing unit.</summary>
    public static double Millimetres(this DrawingUnit unit) => unit == DrawingUnit.Inch ? 25.4 : 1;

    /// <summary><c>$INSUNITS</c>: 1 inches, 4 millimetres.</summary>
    public static int InsUnits(this DrawingUnit unit) => unit == DrawingUnit.Inch ? 1 : 4;

    /// <summary><c>$MEASUREMENT</c>: 0 English, 1 metric. Some readers look at this one alone.</summary>
    public static int Measurement(this DrawingUnit unit) => unit == DrawingUnit.Inch ? 0 : 1;
}
