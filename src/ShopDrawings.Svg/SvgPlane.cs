using System.Drawing;
using ShopDrawings.Kernel;

namespace ShopDrawings.Svg;

/// <summary>The plane of an SVG: x to the right, y down from a given height of the drawing, in mm, rounded for printing.</summary>
/// <param name="Top">The drawing's y that becomes 0.</param>
internal readonly record struct SvgPlane(double Top)
{
    /// <summary>Numbers from here on cannot be printed without an exponent.</summary>
    public const double Limit = 1e7;

    /// <summary>The number the file shows: thousandths, never minus zero.</summary>
    /// <remarks>
    /// The package stores 32-bit numbers and prints the shortest decimal that reads back as the same one. A number rounded
    /// first therefore comes out as rounded; not rounded, 12.3 + 1e-7 would print as 12.300001 and 1e-5 with an exponent.
    /// </remarks>
    /// <exception cref="ArgumentException">Not a number, infinite, or not below the limit.</exception>
    public static float Number(double value) => Math.Abs(value) < Limit
        ? (float)(Math.Round(value, 3) + 0.0)
        : throw new ArgumentException($"The drawing holds a number that cannot be drawn: {value}.", nameof(value));

    /// <summary>A point of the drawing as the file shows it.</summary>
    public PointF Map(Point2 point) => new(Number(point.X), Number(Top - point.Y));
}
