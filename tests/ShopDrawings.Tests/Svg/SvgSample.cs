using System.Globalization;
using System.Text;
using System.Xml;
using System.Xml.Linq;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;
using ShopDrawings.Svg;

namespace ShopDrawings.Tests.Svg;

/// <summary>Drawings the SVG tests share, and the way to write and read one.</summary>
internal static class SvgSample
{
    public static readonly XNamespace Ns = "http://www.w3.org/2000/svg";

    private static readonly Layer Outline = new("OUTLINE", Role.Outline, "Outer edge");
    private static readonly Layer CutOut = new("CUTOUT", Role.CutOut, "Openings");
    private static readonly Layer Bores = new("BORE_500_DEEP_1200", Role.Bore, "Bores 5 mm, 12 mm deep");
    private static readonly Layer Groove = new("GROOVE", Role.Groove, "Groove for the back");
    private static readonly Layer Marks = new("MARK", Role.Mark, "Scribed lines and centres");
    private static readonly Layer Hidden = new("HIDDEN", Role.Hidden, "Edges behind");
    private static readonly Layer Centre = new("CENTRE", Role.Centre, "Centre lines");
    private static readonly Layer Dimensions = new("DIMENSION", Role.Dimension, "Dimensions");
    private static readonly Layer Notes = new("NOTES", Role.Lettering, "Notes");
    private static readonly Layer Frame = new("FRAME", Role.Frame, "Sheet frame and title block");
    private static readonly Layer Warnings = new("WARNING", Role.Warning, "Findings");

    /// <summary>An A4 sheet with every entity, and a panel as one would be drawn: lower left corner at 50, 80.</summary>
    public static Drawing Sheet() => new("Left side", "A side panel with bores, a groove and a cut-out, seen from the inside.", new Point2(210, 297),
    [
        new ContourEntity(Frame, Contour.Rectangle(10, 10, 200, 287)),
        new SegmentEntity(Frame, new(new(10, 30), new(200, 30))),
        new SegmentEntity(Frame, new(new(120, 10), new(120, 30))),
        new TextEntity(Notes, new(14, 20), 5, "Left side, 110 × 150 mm", Anchor.BaseLeft),
        new TextEntity(Notes, new(14, 13), 2.5, "Birch plywood 18 mm; grain upright"),
        new TextEntity(Notes, new(196, 22), 3.5, "Scale 1:1", Anchor.BaseRight),
        new TextEntity(Notes, new(160, 15), 2.5, "Sheet 1 of 1", Anchor.Middle),
        new ContourEntity(Outline, Contour.RoundedRectangle(50, 80, 160, 230, 12)),
        new ContourEntity(CutOut, Contour.Slot(new(90, 205), new(130, 205), 15)),
        new ContourEntity(Groove, Contour.Strip(new(62, 90), new(62, 220), 4)),
        new SegmentEntity(Hidden, new(new(80, 80), new(80, 190))),
        new SegmentEntity(Hidden, new(new(80, 190), new(140, 190), -0.3)),
        new SegmentEntity(Centre, new(new(75, 130), new(155, 130))),
        new CircleEntity(Bores, new(100, 130), 2.5),
        new CircleEntity(Bores, new(132, 130), 2.5),
        new ContourEntity(Bores, Contour.Circle(new(116, 160), 17.5)),
        new PathEntity(Marks, new ToolPath([new(new(60, 120), new(70, 120)), new(new(70, 120), new(70, 130), 0.5)], isClosed: false)),
        new PointEntity(Marks, new(116, 160)),
        new SegmentEntity(Marks, new(new(90, 100), new(110, 100), 3)),
        new LinearDimension(Dimensions, new(50, 80), new(160, 80), new(0, 60), false, "110", 3.5),
        new LinearDimension(Dimensions, new(50, 230), new(50, 80), new(30, 0), true, "150 (5 29/32)", 3.5),
        new LinearDimension(Dimensions, new(100, 130), new(132, 130), new(0, 145), false, "32", 2.5),
        new LinearDimension(Dimensions, new(160, 92), new(160, 97), new(175, 0), true, "5", 2.5),
        new LinearDimension(Dimensions, new(60, 230), new(64, 230), new(0, 245), false, "4", 2.5),
        new AlignedDimension(Dimensions, new(62, 90), new(90, 120), new(70, 110), "41", 2.5),
        new RadiusDimension(Dimensions, new(148, 218), new(156.485, 226.485), "R12", 2.5),
        new DiameterDimension(Dimensions, new(116, 160), new(128.374, 147.626), "Ø 35", 2.5),
        new AngularDimension(Dimensions, new(50, 80), new(90, 80), new(80, 110), 25, "45°", 2.5),
        new OrdinateDimension(Dimensions, new(50, 80), new(132, 130), new(140, 70), false, "82", 2.5),
        new OrdinateDimension(Dimensions, new(50, 80), new(132, 130), new(175, 135), true, "50", 2.5),
        new LeaderEntity(Notes, [new(60, 100), new(40, 115), new(34, 115)], 2.5),
        new EllipseEntity(Hidden, new(130, 105), new(12, 4), 0.5),
        new EllipseEntity(Hidden, new(130, 105), new(16, 0), 0.5, 100, 200),
        new HatchEntity(Centre, Contour.Rectangle(140, 180, 158, 200), [Contour.Circle(new(149, 190), 5)], new HatchPattern(45, 2)),
        new HatchEntity(Marks, Contour.Rectangle(140, 160, 158, 170), [Contour.Circle(new(149, 165), 3)], null),
        new InsertEntity(Notes, new Block("CUP", [new CircleEntity(Bores, default, 4), new PointEntity(Marks, new(0, 8))]), new(75, 200), 30, 1.5),
        new ArrowEntity(Dimensions, new(116, 160), new(121, 164), new(120.2, 164.8)),
        new TextEntity(Notes, new(122, 166), 2.5, "Ø 35", Anchor.BaseLeft, 45),
        new TextEntity(Warnings, new(105, 260), 7, "not for cutting", Anchor.Middle, 5),
    ]);

    public static Drawing Of(params Entity[] entities) => new("Test", "", null, entities);

    public static Drawing OfText(string text) => Of(new TextEntity(Notes, default, 3.5, text));

    public static Drawing OfSegment(Segment segment) => Of(new SegmentEntity(Outline, segment));

    public static Drawing OfContour(Contour contour) => Of(new ContourEntity(Outline, contour));

    public static byte[] Bytes(Drawing drawing)
    {
        using var stream = new MemoryStream();
        new SvgExporter().Write(drawing, stream);
        return stream.ToArray();
    }

    public static string Text(Drawing drawing) => Encoding.UTF8.GetString(Bytes(drawing));

    /// <summary>The root as a strict reader sees it: no document type, no byte order mark.</summary>
    public static XElement Read(Drawing drawing)
    {
        using var reader = XmlReader.Create(new StringReader(Text(drawing)), new() { DtdProcessing = DtdProcessing.Prohibit });
        return XDocument.Load(reader, LoadOptions.PreserveWhitespace).Root!;
    }

    public static double Number(this XElement element, string attribute) =>
        double.Parse(element.Attribute(attribute)?.Value ?? "0", NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);

    public static XElement Only(this XElement root, string element) => root.Descendants(Ns + element).Single();
}
