using System.Globalization;
using System.Text;
using System.Xml.Linq;
using CsCheck;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;
using ShopDrawings.Svg;
using Xunit;

namespace ShopDrawings.Tests.Svg;

public class SvgExporterTests
{
    private static readonly Layer Any = new("ANY", Role.Mark, "Anything");

    [Fact]
    public void Sheet_with_every_entity_is_plain_xml()
    {
        var bytes = SvgSample.Bytes(SvgSample.Sheet());
        var text = Encoding.UTF8.GetString(bytes);

        Assert.StartsWith("<?xml", text, StringComparison.Ordinal);
        Assert.EndsWith("</svg>\n", text, StringComparison.Ordinal);
        Assert.DoesNotContain('\r', text);
        Assert.DoesNotContain("DOCTYPE", text, StringComparison.Ordinal);
        Assert.DoesNotContain("href", text, StringComparison.Ordinal);
        Assert.All(typeof(Entity).Assembly.GetTypes().Where(t => t.IsSubclassOf(typeof(Entity)) && !t.IsAbstract),
            type => Assert.Contains(SvgSample.Sheet().Entities, e => e.GetType() == type));
        Assert.Equal(SvgSample.Ns + "svg", SvgSample.Read(SvgSample.Sheet()).Name);
    }

    [Fact]
    public void Page_sets_the_physical_size_one_to_one()
    {
        var root = SvgSample.Read(SvgSample.Sheet());

        Assert.Equal("210mm", root.Attribute("width")?.Value);
        Assert.Equal("297mm", root.Attribute("height")?.Value);
        Assert.Equal("0, 0, 210, 297", root.Attribute("viewBox")?.Value);
        var bore = root.Descendants(SvgSample.Ns + "circle").First();
        Assert.Equal((100, 297 - 130, 2.5), (bore.Number("cx"), bore.Number("cy"), bore.Number("r")));
    }

    [Fact]
    public void Model_without_paper_is_framed_with_10_mm_around()
    {
        var root = SvgSample.Read(SvgSample.OfContour(Contour.Rectangle(-5, 20, 595, 2000.0625)));

        Assert.Equal("620mm", root.Attribute("width")?.Value);
        Assert.Equal("2000.062mm", root.Attribute("height")?.Value);
        Assert.Equal("-15, -2010.062, 620, 2000.062", root.Attribute("viewBox")?.Value);
        Assert.Equal("M-5 -20 L595 -20 L595 -2000.062 L-5 -2000.062 Z", root.Only("path").Attribute("d")?.Value);
    }

    [Fact]
    public void Empty_drawing_is_a_small_empty_page() =>
        Assert.Equal("-10, -10, 20, 20", SvgSample.Read(SvgSample.Of()).Attribute("viewBox")?.Value);

    [Fact]
    public void Title_and_description_reach_a_screen_reader()
    {
        var root = SvgSample.Read(SvgSample.Sheet());

        Assert.Equal("img", root.Attribute("role")?.Value);
        Assert.Equal(("title", "Left side"), (root.Elements().First().Name.LocalName, root.Elements().First().Value));
        Assert.StartsWith("A side panel", root.Element(SvgSample.Ns + "desc")?.Value, StringComparison.Ordinal);
    }

    [Fact]
    public void Layers_are_groups_with_name_title_and_pen()
    {
        var drawing = SvgSample.Sheet();

        var groups = SvgSample.Read(drawing).Elements(SvgSample.Ns + "g").ToList();

        Assert.Equal(drawing.Layers.Select(l => l.Name), groups.Select(g => g.Attribute("id")?.Value));
        Assert.Equal(drawing.Layers.Select(l => l.Title), groups.Select(g => g.Element(SvgSample.Ns + "title")?.Value));
        foreach (var (layer, group) in drawing.Layers.Zip(groups))
        {
            var pen = Style.Standard.For(layer.Role);
            Assert.Equal(pen.WidthMm, group.Number("stroke-width"));
            Assert.Equal((pen.Colour, "none"), (group.Attribute("stroke")?.Value, group.Attribute("fill")?.Value));
            Assert.Equal(pen.Pattern == LinePattern.Continuous, group.Attribute("stroke-dasharray") is null);
        }
    }

    [Fact]
    public void Style_of_the_caller_decides_width_colour_and_dashes()
    {
        var exporter = new SvgExporter { Style = Style.Standard.With(Role.Mark, new(0.5, LinePattern.Chain, 1, "#123456")) };
        using var stream = new MemoryStream();

        exporter.Write(SvgSample.Of(new PointEntity(Any, default)), stream);

        var text = Encoding.UTF8.GetString(stream.ToArray());
        Assert.Contains("stroke-width=\"0.5\" stroke-dasharray=\"12 1.5 0.25 1.5\"", text, StringComparison.Ordinal);
        Assert.Contains("stroke=\"#123456\"", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Point_is_a_cross_of_2_mm() =>
        Assert.Equal("M2 -5 L4 -5 M3 -4 L3 -6", SvgSample.Read(SvgSample.Of(new PointEntity(Any, new(3, 5)))).Only("path").Attribute("d")?.Value);

    [Fact]
    public void Dimension_is_drawn_by_its_parts()
    {
        var root = SvgSample.Read(SvgSample.Of(new LinearDimension(Any, default, new(100, 0), new(0, 20), false, "100", 3.5)));

        Assert.Equal(3, root.Descendants(SvgSample.Ns + "line").Count());
        Assert.Equal(["#000000", "#000000"], root.Descendants(SvgSample.Ns + "path").Select(p => p.Attribute("fill")!.Value));
        Assert.Equal("100", root.Only("text").Value);
    }

    [Fact]
    public void Ellipse_is_drawn_by_elliptical_quarters() => Assert.Equal(
        "M40 0 A40 20 0 0 0 0 -20 A40 20 0 0 0 -40 0 A40 20 0 0 0 0 20 A40 20 0 0 0 40 0",
        SvgSample.Read(SvgSample.Of(new EllipseEntity(Any, default, new(40, 0), 0.5))).Only("path").Attribute("d")?.Value);

    [Fact]
    public void Solid_hatch_is_filled_but_for_its_islands()
    {
        var path = SvgSample.Read(SvgSample.Of(new HatchEntity(Any, Contour.Rectangle(0, 0, 9, 9), [Contour.Rectangle(3, 3, 6, 6)], null))).Only("path");

        Assert.Equal(("evenodd", "none"), (path.Attribute("fill-rule")?.Value, path.Attribute("stroke")?.Value));
        Assert.Equal("M0 0 L9 0 L9 -9 L0 -9 Z M3 -3 L6 -3 L6 -6 L3 -6 Z", path.Attribute("d")?.Value);
    }

    [Fact]
    public void Hatch_is_drawn_by_its_lines() =>
        Assert.Equal(8, SvgSample.Read(SvgSample.Of(new HatchEntity(Any, Contour.Rectangle(0, 0.5, 9, 8.5), [], new HatchPattern(0, 1)))).Only("path").Attribute("d")!.Value.Count(c => c == 'M'));

    [Fact]
    public void Block_is_drawn_on_the_layers_of_its_entities()
    {
        var other = new Layer("OTHER", Role.Bore, "Bores");
        var block = new Block("CUP", [new CircleEntity(other, new(10, 0), 5)]);

        var root = SvgSample.Read(SvgSample.Of(new InsertEntity(Any, block, new(100, 100), 90, 2)));

        var circle = root.Only("circle");
        Assert.Equal("OTHER", circle.Parent?.Attribute("id")?.Value);
        Assert.Equal((100, -120, 10), (circle.Number("cx"), circle.Number("cy"), circle.Number("r")));
    }

    [Fact]
    public void Output_stays_open_and_is_written_from_where_it_stands()
    {
        using var stream = new MemoryStream();
        stream.WriteByte(1);

        new SvgExporter().Write(SvgSample.Sheet(), stream);

        Assert.True(stream.CanWrite);
        Assert.Equal(SvgSample.Bytes(SvgSample.Sheet()), stream.ToArray()[1..]);
    }

    [Fact]
    public void Bytes_are_the_same_whatever_the_culture_and_the_thread()
    {
        var expected = SvgSample.Bytes(SvgSample.Sheet());
        var before = CultureInfo.CurrentCulture;
        try
        {
            foreach (var culture in DecimalCommaCultures())
            {
                CultureInfo.CurrentCulture = culture;
                Assert.Equal(expected, SvgSample.Bytes(SvgSample.Sheet()));
            }
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }

        var parallel = new byte[64][];
        Parallel.For(0, parallel.Length, i => parallel[i] = SvgSample.Bytes(SvgSample.Sheet()));
        Assert.All(parallel, bytes => Assert.Equal(expected, bytes));
    }

    // The test host may run without culture data; then only the invariant culture with foreign signs is left to try.
    private static IEnumerable<CultureInfo> DecimalCommaCultures()
    {
        var comma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        (comma.NumberFormat.NumberDecimalSeparator, comma.NumberFormat.NumberGroupSeparator, comma.NumberFormat.NegativeSign) = (",", ".", "\u2212");
        yield return comma;
        foreach (var name in (string[])["tr-TR", "de-DE"])
        {
            CultureInfo? named = null;
            try { named = new CultureInfo(name); }
            catch (CultureNotFoundException) { }
            if (named is not null) yield return named;
        }
    }

    [Fact]
    public void Number_is_rounded_to_thousandths_without_exponent_or_minus_zero() =>
        Gen.Double[-5000, 5000].Select(Gen.Int[0, 7], (value, digits) => Math.Round(value, digits) * Math.Pow(10, -digits)).Sample(value =>
        {
            var root = SvgSample.Read(SvgSample.OfSegment(new(new(value, -value), new(value + 1, value / 3 + 1e5))));

            Assert.All(root.DescendantsAndSelf().Attributes().Where(a => a.Name.LocalName is "x1" or "x2" or "y1" or "y2" or "viewBox")
                .SelectMany(a => a.Value.Split(", ")), number => Assert.Matches(@"^(?!-0$)-?\d+(\.\d{1,3})?$", number));
            Assert.Equal(value, root.Only("line").Number("x1"), 0.0007);
        });

    [Fact]
    public void Number_just_below_zero_is_zero() =>
        Assert.Equal("M0 0 L2 0 M1 1 L1 -1", SvgSample.Read(SvgSample.Of(new PointEntity(Any, new(1, 0.0001)))).Only("path").Attribute("d")?.Value);

    [Fact]
    public void Geometry_of_every_entity_is_printed_in_plain_decimals()
    {
        string[] geometry = ["d", "transform", "textLength", "font-size", "x", "y", "x1", "y1", "x2", "y2", "cx", "cy", "r", "width", "height", "stroke-width", "stroke-dasharray"];

        var printed = SvgSample.Read(SvgSample.Sheet()).DescendantsAndSelf().Attributes().Where(a => geometry.Contains(a.Name.LocalName))
            .SelectMany(a => a.Value.Replace("rotate", "", StringComparison.Ordinal).Split([' ', ',', '(', ')', 'M', 'L', 'A', 'Z', 'm'], StringSplitOptions.RemoveEmptyEntries));

        Assert.All(printed, number => Assert.Matches(@"^(?!-0$)-?\d+(\.\d{1,3})?$", number));
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.NegativeInfinity)]
    [InlineData(1e7)]
    public void Number_that_cannot_be_drawn_is_refused(double wrong) =>
        Assert.Throws<ArgumentException>(() => SvgSample.Bytes(SvgSample.Of(new CircleEntity(Any, default, wrong))));
}
