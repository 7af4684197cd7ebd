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
    /// <summary>White space around a drawing without paper, in mm.</summary>
    private const double Margin = 10;

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
        var box = drawing.Page is { } page
            ? new Box2(default, page)
            : (drawing.Extents ?? default).Grown(Margin);
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

        // A block's entities may lie on layers of their own, so they are drawn where they lie.
        var byLayer = drawing.Entities.SelectMany(e => e is InsertEntity insert ? insert.Parts : [e]).ToLookup(e => e.Layer);
        foreach (var layer in drawing.Layers) document.Children.Add(Group(layer, byLayer[layer], plane));
        return document;
    }

    private SvgGroup Group(Layer layer, IEnumerable<Entity> entities, SvgPlane plane)
    {
        var pen = Style.For(layer.Role);
        var group = new SvgGroup { ID = layer.Name, StrokeWidth = SvgPlane.Number(pen.WidthMm) };
        // Its paint properties come out as a style attribute, which no style sheet around the drawing could override.
        group.CustomAttributes["fill"] = "none";
        group.CustomAttributes["stroke"] = pen.Colour;
        if (Dashes(pen) is [_, ..] dashes) group.StrokeDashArray = [.. dashes.Select(d => (SvgUnit)SvgPlane.Number(d))];
        else group.StrokeLineCap = SvgStrokeLineCap.Round; // lines that meet in a corner leave no notch there
        group.Children.Add(new SvgTitle { Content = SvgLettering.Legal(layer.Title) });
        foreach (var element in entities.SelectMany(e => SvgShapes.Of(e, pen, plane))) group.Children.Add(element);
        return group;
    }

    // Dashes and gaps in mm. ISO 128-2 gives them in line widths (from memory): dash 12, long dash 24, gap 3, dot up to 0.5.
    private static double[] Dashes(Pen pen) => pen.Pattern switch
    {
        LinePattern.Dashed => [12 * pen.WidthMm, 3 * pen.WidthMm],
        LinePattern.Chain => [24 * pen.WidthMm, 3 * pen.WidthMm, 0.5 * pen.WidthMm, 3 * pen.WidthMm],
        LinePattern.DoubleDotChain => [24 * pen.WidthMm, 3 * pen.WidthMm, 0.5 * pen.WidthMm, 3 * pen.WidthMm, 0.5 * pen.WidthMm, 3 * pen.WidthMm],
        _ => [],
    };
}
