namespace ShopDrawings.Kernel;

/// <summary>How a <see cref="Size"/> came to its value.</summary>
public enum Operation
{
    /// <summary>A user wrote it.</summary>
    Given,

    /// <summary>Nobody wrote it: common practice, or a part's own dimension.</summary>
    Default,

    /// <summary>A plain number of a formula, such as the 2 of two thicknesses.</summary>
    Constant,

    /// <summary>All operands added.</summary>
    Sum,

    /// <summary>The first operand less the second.</summary>
    Difference,

    /// <summary>All operands multiplied.</summary>
    Product,

    /// <summary>The first operand divided by the second.</summary>
    Quotient,

    /// <summary>The smallest operand.</summary>
    Smallest,

    /// <summary>The largest operand.</summary>
    Largest,

    /// <summary>The operand rounded up to a whole number; a value within 1e-9 above a whole number counts as that number.</summary>
    RoundedUp,

    /// <summary>The square root of the operand.</summary>
    SquareRoot,

    /// <summary>The first operand rounded to the nearest whole multiple of the second, halves up.</summary>
    Snapped,

    /// <summary>The first operand rounded down to a whole multiple of the second; one within 1e-9 below a multiple counts as that multiple.</summary>
    SnappedDown,

    /// <summary>The operand under another name.</summary>
    Same,
}
