namespace ShopDrawings.Kernel;

/// <summary>How closely lengths agree inside the program. Lengths in mm.</summary>
public static class Tolerance
{
    /// <summary>Two lengths, or two coordinates, nearer than this are the same: 1e-6 mm.</summary>
    public const double Length = 1e-6;

    /// <summary>Whether two lengths in mm are the same.</summary>
    public static bool Same(double a, double b) => Math.Abs(a - b) <= Length;

    /// <summary>Whether <paramref name="a"/> exceeds <paramref name="b"/> by more than the tolerance.</summary>
    public static bool Exceeds(double a, double b) => a > b + Length;
}
