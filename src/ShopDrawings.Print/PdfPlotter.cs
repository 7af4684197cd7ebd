using System.Globalization;
using System.Text;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;

namespace ShopDrawings.Print;

/// <summary>
/// Writes the content of a PDF page as operators (ISO 32000-1, annex A, from memory). The page is scaled first, so that the numbers that
/// follow are mm from the lower left corner of the paper.
/// </summary>
internal sealed class PdfPlotter : IPlotter
{
    /// <summary>The name the page gives to the font.</summary>
    public const string FontName = "/F";

    /// <summary>PDF's unit, 1/72 in, in a millimetre.</summary>
    public const double PointsPerMm = 72 / 25.4;

    private readonly StringBuilder content = new();
    private readonly Point2 corner;
    private readonly PdfFont font;

    /// <summary>Begins a page.</summary>
    /// <param name="corner">The point of the drawing that lies in the lower left corner of the paper.</param>
    /// <param name="font">The font of the file, which learns what characters it needs.</param>
    public PdfPlotter(Point2 corner, PdfFont font)
    {
        (this.corner, this.font) = (corner, font);
        Write($"{PointsPerMm:0.##########} 0 0 {PointsPerMm:0.##########} 0 0 cm 4 M\n");
    }

    /// <summary>The content so far.</summary>
    public byte[] Content => Encoding.ASCII.GetBytes(content.ToString());

    /// <inheritdoc/>
    public void Use(Pen pen)
    {
        var (red, green, blue) = pen.Rgb;
        var colour = string.Create(CultureInfo.InvariantCulture, $"{red / 255.0:0.####} {green / 255.0:0.####} {blue / 255.0:0.####}");
        var dashes = string.Join(' ', pen.Dashes.Select(d => d.ToString("0.####", CultureInfo.InvariantCulture)));
        var cap = pen.Dashes.Length == 0 ? 1 : 0;
        Write($"{pen.WidthMm:0.####} w {cap} J [{dashes}] 0 d {colour} RG {colour} rg\n");
    }

    /// <inheritdoc/>
    public void MoveTo(Point2 start) => Write($"{X(start):0.####} {Y(start):0.####} m\n");

    /// <inheritdoc/>
    public void LineTo(Point2 end) => Write($"{X(end):0.####} {Y(end):0.####} l\n");

    /// <inheritdoc/>
    public void CurveTo(Point2 first, Point2 second, Point2 end) =>
        Write($"{X(first):0.####} {Y(first):0.####} {X(second):0.####} {Y(second):0.####} {X(end):0.####} {Y(end):0.####} c\n");

    /// <inheritdoc/>
    public void Close() => Write($"h\n");

    /// <inheritdoc/>
    public void Stroke() => Write($"S\n");

    /// <inheritdoc/>
    public void Fill() => Write($"f*\n");

    /// <inheritdoc/>
    public void Letter(TextLine line)
    {
        var (sin, cos) = Math.SinCos(line.AngleDegrees * (Math.PI / 180));
        Write($"BT {FontName} {line.FontSize:0.######} Tf {Rounded(cos, 9):0.#########} {Rounded(sin, 9):0.#########} {Rounded(-sin, 9):0.#########} {Rounded(cos, 9):0.#########} {X(line.Start):0.####} {Y(line.Start):0.####} Tm <");
        foreach (var character in line.Characters) Write($"{font.Code(character):X4}");
        Write($"> Tj ET\n");
    }

    // Rounded first: a custom format writes what is nearly nothing below zero as -0.
    private static double Rounded(double value, int digits) => Math.Round(value, digits) + 0.0;

    private double X(Point2 point) => Rounded(point.X - corner.X, 4);

    private double Y(Point2 point) => Rounded(point.Y - corner.Y, 4);

    private void Write(FormattableString text) => content.Append(text.ToString(CultureInfo.InvariantCulture));
}
