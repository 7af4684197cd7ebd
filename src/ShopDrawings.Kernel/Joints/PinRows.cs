namespace ShopDrawings.Kernel;

/// <summary>
/// Rows of holes on a 32 mm pitch in the side of a cabinet, from front to back: 5 mm holes, the first row 37 mm behind the front edge, more
/// behind doors that stand within the sides (common practice, no source). Lengths in mm.
/// </summary>
internal static class PinRows
{
    /// <summary>From one hole to the next, and between rows a whole multiple of it.</summary>
    public static Size Pitch { get; } = Size.Default(32, "pin-pitch");

    /// <summary>From the front edge to the first row.</summary>
    public static Size SetBack { get; } = Size.Default(37, "pin-set-back");

    /// <summary>
    /// Where the last row stands, from the front edge: the set-back and as many whole pitches as leave one set-back behind (derived, geometry).
    /// </summary>
    public static Size Last(Size depth, Size setBack) => (setBack + (depth - 2 * setBack).SnappedDown(Pitch)).As("rear-pin-row");

    /// <summary>
    /// Depth of a side whose last row stands as far from its rear edge as the first from its front: twice the set-back and a number of
    /// pitches (common practice, no source).
    /// </summary>
    public static Size BalancedDepth(int pitches, Size setBack) => (2 * setBack + (double)pitches * Pitch).As("balanced-depth");
}
