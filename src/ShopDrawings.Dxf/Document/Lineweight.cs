namespace ShopDrawings.Dxf;

/// <summary>The line widths the format knows (group code 370).</summary>
internal static class Lineweight
{
    private static readonly int[] Allowed = [0, 5, 9, 13, 15, 18, 20, 25, 30, 35, 40, 50, 53, 60, 70, 80, 90, 100, 106, 120, 140, 158, 200, 211];

    /// <summary>The nearest width the format knows, in hundredths of a mm; of two as near, the thinner.</summary>
    public static int Nearest(double widthMm) => Allowed.MinBy(w => Math.Abs(w - widthMm * 100));
}
