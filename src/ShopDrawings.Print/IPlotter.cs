using ShopDrawings.Drafting;
using ShopDrawings.Kernel;

namespace ShopDrawings.Print;

/// <summary>
/// What a page is drawn with. A path is begun by <see cref="MoveTo"/>, may have several parts, and ends with <see cref="Stroke"/> or
/// <see cref="Fill"/>. Coordinates are the drawing's: mm, x to the right, y up, all of them finite.
/// </summary>
internal interface IPlotter
{
    /// <summary>The pen of all that follows.</summary>
    void Use(Pen pen);

    /// <summary>Starts a part of the path.</summary>
    void MoveTo(Point2 start);

    /// <summary>A line to a point.</summary>
    void LineTo(Point2 end);

    /// <summary>A cubic Bézier curve to a point, with its two control points.</summary>
    void CurveTo(Point2 first, Point2 second, Point2 end);

    /// <summary>Closes the part of the path.</summary>
    void Close();

    /// <summary>Draws along the path. Its corners are mitred up to four line widths; unbroken lines end round, dashes square.</summary>
    void Stroke();

    /// <summary>Fills the path with the pen's colour; what lies within two parts is left out.</summary>
    void Fill();

    /// <summary>Letters a line of text in the pen's colour.</summary>
    void Letter(TextLine line);
}
