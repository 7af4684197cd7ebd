using System.Text;
using System.Xml;
using global::Svg;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;

namespace ShopDrawings.Svg;

/// <summary>
/// Writes a drawing as SVG, 1:1 in mm: one unit of the view box is one millimetre on paper, a group for each layer.
/// The file fetches nothing and runs nothing. Immutable and thread-safe.
/// </summary>
public sealed class SvgExporter : IDrawingExporter
{
    private const string FontFamily = "'DejaVu Sans', Arial, sans-serif";

    private static readonly XmlWriterSettings Layout = new()
    {
        Encoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false),
        Indent = true,
        NewLineChars = "\n",
        // A carriage return in a text stays one; written bare, readers would make a line feed of it.
        NewLineHandling = NewLineHandling.Entitize,
    };

    /// <inheritdoc/>
    public string Format => "svg";

    /// <summary>How the layers look.</summary>
    public Style Style { get; init; } = Style.Standard;

    /// <inheritdoc/>
    /// <remarks>Coordinates are rounded to thousandths of a millimetre. An SVG is looked at; machines are given DXF.</remarks>
    /// <exception cref="ArgumentException">A number of the drawing is not finite, or a coordinate is ten kilometres or more away.</exception>
    public void Write(Drawing drawing, Stream output)
    {
        ArgumentNullException.ThrowIfNull(drawing);
        ArgumentNullException.ThrowIfNull(output);
        var document = Document(drawing);
        using (var writer = XmlWriter.Create(output, Layout)) document.Write(writer);
        output.WriteByte((byte)'\n');
    }

    private SvgDocument Document(Drawing drawing)
    {
        // y runs down in SVG: from the top of the paper, or else from the model's own origin, so that x and -y stay readable.
        var box = drawing.Paper;
        var plane = new SvgPlane(drawing.Page?.Y ?? 0);
        var corner = plane.Map(new Point2(box.Min.X, box.Max.Y));
        var (width, height) = (SvgPlane.Number(box.Width), SvgPlane.Number(box.Height));
        var document = new SvgDocument
        {
            Width = new SvgUnit(SvgUnitType.Millimeter, width),
            Height = new SvgUnit(SvgUnitType.Millimeter, height),
            ViewBox = new SvgViewBox(corner.X, corner.Y, width, height),
            FontFamily = FontFamily,
        };
        // The package knows no ARIA. With the role, screen readers read title and description instead of every number.
        document.CustomAttributes["role"] = "img";
        document.Children.Add(new SvgTitle { Content = SvgLettering.Legal(drawing.Title) });
        if (drawing.Description.Length > 0) document.Children.Add(new SvgDescription { Content = SvgLettering.Legal(drawing.Description) });
        foreach (var (layer, entities) in drawing.ByLayer()) document.Children.Add(Group(layer, entities, plane));
        return document;
    }

    private SvgGroup Group(Layer layer, IEnumerable<Entity> entities, SvgPlane plane)
    {
        var pen = Style.For(layer.Role);
        var group = new SvgGroup { ID = layer.Name, StrokeWidth = SvgPlane.Number(pen.WidthMm) };
        // Its paint properties come out as a style attribute, which no style sheet around the drawing could override.
        group.CustomAttributes["fill"] = "none";
        group.CustomAttributes["stroke"] = pen.Colour;
        if (pen.Dashes is [_, ..] dashes) group.StrokeDashArray = [.. dashes.Select(d => (SvgUnit)SvgPlane.Number(d))];
        else group.StrokeLineCap = SvgStrokeLineCap.Round; // lines that meet in a corner leave no notch there
        group.Children.Add(new SvgTitle { Content = SvgLettering.Legal(layer.Title) });
        foreach (var element in entities.SelectMany(e => SvgShapes.Of(e, pen, plane))) group.Children.Add(element);
        return group;
    }
}
