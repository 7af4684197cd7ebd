using System.Globalization;
using System.Text.Json;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;

namespace ShopDrawings.Tests.Drafting;

/// <summary>The sheets of a project after other practices, in other units and formats, as outside readers see them.</summary>
public class DrawingSettingsTests
{
    private const string All = "formats: [svg, pdf, png, dxf], resolution: 72, title-block: {owner: North Street Workshop, number: WC-7, revision: B, date: 2 November, drawn-by: A. Maker, approved-by: B. Buyer}";

    public static TheoryData<string, string, string> Cases => new()
    {
        { "wall-cupboard", $"{{standard: asme, lengths: both, {All}}}", "mm [inches]; ~ is rounded" },
        { "wall-cupboard", $"{{lengths: in, fractions: decimal, release: R12, {All}}}", "inches; ~ is rounded" },
        { "single-panel", $"{{standard: iso, denominator: 16, release: R2010, {All}}}", "inches; ~ is rounded" },
        { "single-panel", $"{{lengths: both, fractions: plain, {All}}}", "inches [mm]; ~ is rounded" },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void Sheets_in_every_format_are_sound(string fixture, string drawings, string statement)
    {
        OutsideProgram.DemandPython("ezdxf shapely");
        using var folder = new TemporaryFolder();
        var files = Made(folder, fixture, drawings);

        var svg = files.Where(f => f.EndsWith(".svg", StringComparison.Ordinal) && !f.Contains("/templates/", StringComparison.Ordinal)).ToList();
        Assert.Equal(svg, files.Where(f => f.EndsWith(".png", StringComparison.Ordinal)).Select(f => Path.ChangeExtension(f, ".svg")));
        SvgOracle.AssertSound(svg);
        foreach (var file in svg)
        {
            Assert.Contains(statement, File.ReadAllText(file), StringComparison.Ordinal);
            var (width, height) = Size(file);
            var picture = OutsideProgram.RunOracle("png_check.py", "json", Path.ChangeExtension(file, ".png"), "--size", $"{width}x{height}", "--dpi", "72", "--ink", "0.2,20");
            Assert.True(picture.ExitCode == 0, file + picture.Output + picture.Errors);
        }

        // The frame's corners: 20 mm from the left, 10 from the other edges.
        var book = files.Single(f => f.EndsWith("/drawings/sheets.pdf", StringComparison.Ordinal));
        var (pageWidth, pageHeight) = Size(svg.Find(f => f.EndsWith("/front.svg", StringComparison.Ordinal)) ?? svg[0]);
        var marks = new[] { ("20", "10"), (Less(pageWidth), "10"), ("20", Less(pageHeight)) }.SelectMany(m => new[] { "--mark", $"{m.Item1},{m.Item2}" });
        var printed = OutsideProgram.RunOracle("pdf_scale.py", "json", [book, "--no-scaling", .. marks]);
        Assert.True(printed.ExitCode == 0, printed.Output + printed.Errors);

        var dxf = files.Where(f => f.Contains("/dxf-to-scale-not-for-machines/", StringComparison.Ordinal)).ToArray();
        Assert.Equal(svg.Count, dxf.Length);
        var audit = OutsideProgram.RunOracle("dxf_audit.py", "ezdxf shapely", [.. dxf, "--denominator", drawings.Contains("16", StringComparison.Ordinal) ? "16" : "32"]);
        Assert.True(audit.ExitCode == 0, audit.Output + audit.Errors);
        using var report = JsonDocument.Parse(audit.Output);
        JsonElement[] sheets = dxf.Length == 1 ? [report.RootElement] : [.. report.RootElement.EnumerateArray()];
        var dimensions = sheets.SelectMany(s => s.GetProperty("dimensions").EnumerateArray()).ToList();
        Assert.NotEmpty(dimensions);
        // On paper, so each measures by the scale of its view.
        Assert.All(dimensions, d => Assert.True(d.GetProperty("factor").GetDouble() >= 1 && d.GetProperty("match").GetBoolean()));
    }

    [Fact]
    public void Formats_that_are_not_asked_for_are_not_written()
    {
        using var folder = new TemporaryFolder();

        Assert.DoesNotContain(Made(folder, "wall-cupboard", "{formats: [png]}"), f => Path.GetExtension(f) is ".svg" or ".pdf" || f.Contains("/drawings/dxf", StringComparison.Ordinal));
        Assert.DoesNotContain(Made(folder, "wall-cupboard", "{formats: []}"), f => f.Contains("/drawings/", StringComparison.Ordinal));
        Assert.Equal(["sheets.pdf"], Made(folder, "wall-cupboard", "{formats: [pdf]}").Where(f => f.Contains("/drawings/", StringComparison.Ordinal)).Select(f => Path.GetFileName(f)!));
    }

    [Theory]
    [InlineData("mm", "ISO", false)]
    [InlineData("cm", "ISO", false)]
    [InlineData("in", "ASME", true)]
    [InlineData("ft", "ASME", true)]
    public void Practice_follows_from_the_unit(string unit, string standard, bool isInches)
    {
        var sheets = Fixtures.DesignOf($"project: p\nunit: {unit}\nboards: {{ply: {{kind: plywood, thickness: 18 mm}}}}\npanels: {{a: {{board: ply, length: 400 mm, width: 200 mm}}}}\n").Drawings.Sheets;

        Assert.Equal((standard, isInches, FractionForm.Stacked, 32), (sheets.Standard.Name, sheets.Lengths.IsInches, sheets.Lengths.Fractions, sheets.Lengths.Denominator));
    }

    // The digits of a stacked fraction are 0.56 of the capitals: 1.96 mm in 3.5 mm lettering, 1.68 in 3 mm, but 1.4 in 2.5 mm.
    [Fact]
    public void Lettering_keeps_the_digits_of_fractions_readable()
    {
        var stacked = LengthStyle.Inches with { Fractions = FractionForm.Stacked };

        Assert.Equal(3.5, new SheetSettings(DrawingStandard.Iso, stacked).Small);
        Assert.Equal(3.5, new SheetSettings(DrawingStandard.Iso, LengthStyle.Millimetres with { Fractions = FractionForm.Stacked, HasBoth = true }).Small);
        Assert.Equal(3, new SheetSettings(DrawingStandard.Asme, stacked).Small);
        Assert.Equal(2.5, new SheetSettings(DrawingStandard.Iso, LengthStyle.Inches).Small);
        Assert.Equal(2.5, new SheetSettings(DrawingStandard.Iso, LengthStyle.Millimetres with { Fractions = FractionForm.Stacked }).Small);
    }

    // ISO 128-2: 0.25 and 0.5 mm, the frame 0.7 (ISO 5457), hatching and what is only to be understood between; ASME Y14.2: 0.3 and 0.6 mm (from memory).
    [Fact]
    public void Lines_have_the_widths_of_their_practice()
    {
        Assert.Equal((0.5, 0.25), (Style.Standard.For(Role.Outline).WidthMm, Style.Standard.For(Role.Dimension).WidthMm));
        Assert.Equal([0.3, 0.6], Enum.GetValues<Role>().Select(r => Style.Asme.For(r).WidthMm).Distinct().Order());
        Assert.Equal((0.6, 0.3), (Style.Asme.For(Role.Outline).WidthMm, Style.Asme.For(Role.Dimension).WidthMm));
        Assert.All(Enum.GetValues<Role>(), r => Assert.Equal(Style.Standard.For(r).Pattern, Style.Asme.For(r).Pattern));
    }

    // ASME Y14.5 (from memory): all texts level, in a gap of the line or beyond its end. ISO 129-1 (from memory): along the line and above it.
    [Theory]
    [InlineData(100, false)]
    [InlineData(100, true)]
    [InlineData(9, false)]
    [InlineData(2, false)]
    [InlineData(2, true)]
    public void Text_stands_as_its_practice_says(double length, bool isUpright)
    {
        var layer = new Layer("DIMENSION", Role.Dimension, "Sizes");
        var iso = new LinearDimension(layer, new(0, 0), new(length, length), new(-20, -20), isUpright, "12", 3);
        foreach (var dimension in new[] { iso, iso with { Standard = DrawingStandard.Asme } })
        {
            var parts = DimensionGraphics.Of(dimension).ToList();
            var text = parts.OfType<TextEntity>().Single();
            var isAsme = dimension.Standard == DrawingStandard.Asme;

            Assert.Equal(isUpright && !isAsme ? 90 : 0, text.AngleDegrees, 6);
            // No line and no arrow runs through the capitals.
            var capitals = isUpright && !isAsme ? text.Bounds : new Box2(new(text.Bounds.Min.X, text.Bounds.Min.Y + 1), new(text.Bounds.Max.X, text.Bounds.Max.Y - 0.8));
            Assert.All(parts.Where(p => p is SegmentEntity or ArrowEntity), p => Assert.False(Overlap(p.Bounds, capitals), $"{p} runs through {text}"));
            Assert.Equal(2, parts.OfType<ArrowEntity>().Count());
        }
    }

    private static bool Overlap(Box2 a, Box2 b) => a.Min.X < b.Max.X - 1e-6 && b.Min.X < a.Max.X - 1e-6 && a.Min.Y < b.Max.Y - 1e-6 && b.Min.Y < a.Max.Y - 1e-6;

    private static List<string> Made(TemporaryFolder folder, string fixture, string drawings)
    {
        var file = folder["p.yaml"];
        File.WriteAllText(file, $"{Fixtures.Text(fixture)}\ndrawings: {drawings}\n");
        var call = Call.Of("make", file, "--out", folder["out"]);
        Assert.Equal((0, ""), (call.ExitCode, call.Errors));
        return [.. Directory.GetFiles(folder["out"], "*", SearchOption.AllDirectories).Select(f => f.Replace('\\', '/')).Where(f => !f.Contains("/labels/", StringComparison.Ordinal)).Order(StringComparer.Ordinal)];
    }

    private static (string Width, string Height) Size(string svg)
    {
        var root = System.Xml.Linq.XDocument.Load(svg).Root!;
        return (((string)root.Attribute("width")!)[..^2], ((string)root.Attribute("height")!)[..^2]);
    }

    private static string Less(string mm) => (double.Parse(mm, CultureInfo.InvariantCulture) - 10).ToString("0.###", CultureInfo.InvariantCulture);
}
