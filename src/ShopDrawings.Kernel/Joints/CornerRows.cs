namespace ShopDrawings.Kernel;

/// <summary>Two rows of screws that meet at a corner. Lengths in mm.</summary>
internal static class CornerRows
{
    /// <summary>Usual wood between a screw and the tips of another row: common practice, no source.</summary>
    public const double UsualClearance = 3;

    /// <summary>
    /// Least end distance of a row that lies in one plane with another, square to it: the tips of the other row, half of both diameters and
    /// some wood between (derived, geometry).
    /// </summary>
    /// <param name="otherTips">How deep the other row's screws reach, from the face this row's end distance is counted from.</param>
    /// <param name="diameter">Of this row's screws.</param>
    /// <param name="otherDiameter">Of the other row's screws.</param>
    /// <param name="clearance">Wood between them.</param>
    public static Size LeastEndDistance(Size otherTips, Size diameter, Size otherDiameter, Size clearance) =>
        (otherTips + (diameter + otherDiameter) / 2 + clearance).As("least-end-distance");
}
