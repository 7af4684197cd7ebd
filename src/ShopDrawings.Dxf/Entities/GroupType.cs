namespace ShopDrawings.Dxf;

/// <summary>What the value of a group is (DXF Reference, Group Code Value Types), and whether the file's unit concerns it.</summary>
internal enum GroupType
{
    /// <summary>A text a person reads.</summary>
    Text,

    /// <summary>The name of a style or block; upper case in R12.</summary>
    Name,

    /// <summary>A whole number.</summary>
    Integer,

    /// <summary>A number without a unit, or an angle in degrees.</summary>
    Real,

    /// <summary>A number without a unit that long axes multiply: with twelve decimals.</summary>
    Fine,

    /// <summary>A length: mm in memory, the file's unit in the file.</summary>
    Length,

    /// <summary>A point as three groups, the code, 10 more and 20 more; z is 0. Lengths.</summary>
    Point,

    /// <summary>A point as two groups, the code and 10 more. Lengths.</summary>
    PlanePoint,
}
