namespace ShopDrawings.Dxf;

/// <summary>The unit one drawing unit of a file stands for (<c>$INSUNITS</c>, and <c>$MEASUREMENT</c> in agreement with it).</summary>
public enum DrawingUnit
{
    /// <summary>Millimetres, the default: <c>$INSUNITS</c> 4, <c>$MEASUREMENT</c> 1.</summary>
    Millimetre,

    /// <summary>Inches of 25.4 mm: <c>$INSUNITS</c> 1, <c>$MEASUREMENT</c> 0.</summary>
    Inch,
}
