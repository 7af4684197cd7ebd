namespace ShopDrawings.Kernel;

/// <summary>How fasteners spread along a joint. Lengths in mm.</summary>
/// <param name="EndDistance">From each end of the receiving panel to the first and the last fastener.</param>
/// <param name="Pitch">Largest distance between two neighbours.</param>
public sealed record RowRule(Size EndDistance, Size Pitch)
{
    /// <summary>50 mm end distance and at most 150 mm pitch: common practice, no source.</summary>
    public static RowRule Standard { get; } = new(Size.Default(50, "usual-end-distance"), Size.Default(150, "usual-pitch"));

    /// <summary>
    /// The row on a length: gaps = (length − 2 × end distance) ÷ largest pitch, rounded up; at least 2 fasteners, 3 on more than 300 mm
    /// (common practice, no source). The usual end distance is at most a quarter of the length; one a user gave is kept as long as it leaves
    /// 10 mm between the first and the last, else it is a quarter too.
    /// </summary>
    public FastenerRow On(Size length)
    {
        var quarter = length / 4;
        var isKept = EndDistance.Operation == Operation.Given ? 2 * EndDistance.Value + 10 <= length.Value : EndDistance.Value <= quarter.Value;
        var end = (isKept ? EndDistance : quarter).As("end-distance");
        var span = length - 2 * end;
        var least = Size.Default(length.Value > 300 + Tolerance.Length ? 2 : 1, "least-gaps");
        var gaps = Size.Largest((span / Pitch).RoundedUp(), least).As("gaps");
        return new FastenerRow(end, (span / gaps).As("pitch"), gaps);
    }
}

/// <summary>A row of fasteners at equal distances. Lengths in mm.</summary>
/// <param name="EndDistance">From the end of the joint to the first fastener.</param>
/// <param name="Pitch">From one fastener to the next.</param>
/// <param name="Gaps">One less than the number of fasteners.</param>
public sealed record FastenerRow(Size EndDistance, Size Pitch, Size Gaps)
{
    /// <summary>Number of fasteners.</summary>
    public int Count => (int)Math.Round(Gaps.Value) + 1;

    /// <summary>Distance of each fastener from the beginning of the joint.</summary>
    public IEnumerable<Size> Places =>
        Enumerable.Range(0, Count).Select(i => i == 0 ? EndDistance : i == 1 ? EndDistance + Pitch : EndDistance + (double)i * Pitch);
}
