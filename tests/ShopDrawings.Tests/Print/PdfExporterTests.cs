using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using CsCheck;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;
using ShopDrawings.Print;
using ShopDrawings.Tests.Dxf;
using ShopDrawings.Tests.Svg;

namespace ShopDrawings.Tests.Print;

public partial class PdfExporterTests
{
    private const string LongLine = "The quick brown fox jumps over the lazy dog, 0123456789 times, and a long line of lettering ends exactly where the drawing says that it ends, not a hair beside.";

    private static readonly string[] Texts =
    [
        "Left side, 110 × 150 mm", "Tür, étagère, ½″ Ø 35 °, İıŞ", "合板 \U0001D538\U0001FA9A", "(brackets) \\ % <1> [2] {3} /Name ((", "<b>&amp;</b> \"quoted\" 'single'",
        "~53 1/2\" 3⁄4 ≤ ≥ ± → ✓", "  two  spaces  ", "tab\tline\nreturn\rend", "nul\0 private \uE000", LongLine, "endstream endobj trailer startxref %%EOF /Metadata 9 0 R",
    ];

    [Theory]
    [InlineData(210, 297)]
    [InlineData(297, 210)]
    [InlineData(420, 297)]
    [InlineData(215.9, 279.4)]
    [InlineData(279.4, 431.8)]
    [InlineData(100, 60)]
    [InlineData(123.4, 567.8)]
    [InlineData(1189, 841)]
    public void Page_is_true_to_scale(double width, double height)
    {
        AssertScale(PrintFiles.Pdf(Marked(width, height)), width, height, "1");
    }

    [Fact]
    public void Every_page_of_several_is_true_to_scale()
    {
        var pdf = PrintFiles.Pdf(Marked(210, 297), Marked(210, 297), Marked(210, 297));

        for (var page = 1; page <= 3; page++) AssertScale(pdf, 210, 297, page.ToString(CultureInfo.InvariantCulture));
    }

    [Fact]
    public void Model_without_paper_is_framed_with_10_mm_around()
    {
        var pdf = PrintFiles.Pdf(new Drawing("Panel", "", null, [new ContourEntity(PrintFiles.Outline, Contour.Rectangle(-1000, 20, -840, 120))]));

        Assert.Equal([[new(10, 10), new(170, 10), new(170, 110), new(10, 110), new(10, 10)]], PdfContent.Paths(pdf));
        AssertScale(pdf, 180, 120, "1", marks: ["10,10", "170,10", "10,110", "170,110"]);
    }

    [Fact]
    public void Sheets_of_different_sizes_keep_their_own()
    {
        var info = PrintFiles.Ask("pdfinfo", PrintFiles.Pdf(Marked(210, 297), Marked(420, 297), Marked(100, 60)), "-f", "1", "-l", "3", "{file}");

        Assert.Equal([(210, 297), (420, 297), (100, 60)], PageSize().Matches(info).Select(m => (Millimetres(m.Groups[1].Value), Millimetres(m.Groups[2].Value))));
    }

    [Fact]
    public void Outside_reader_finds_nothing_to_remark_on()
    {
        PrintFiles.Check(PrintFiles.Pdf(SvgSample.Sheet()));
        PrintFiles.Check(PrintFiles.Pdf(SvgSample.Sheet(), DxfFiles.Everything("wicked (texts) \\ ")));
        PrintFiles.Check(PrintFiles.Pdf(PrintFiles.Sheet()));
    }

    [Fact]
    public void Every_entity_can_be_printed() =>
        Assert.All(typeof(Entity).Assembly.GetTypes().Where(t => t.IsSubclassOf(typeof(Entity)) && !t.IsAbstract),
            type => Assert.Contains(SvgSample.Sheet().Entities, e => e.GetType() == type));

    [Fact]
    public void Every_text_is_found_by_a_reader()
    {
        var pdf = PrintFiles.Pdf(new Drawing("Texts", "", new Point2(500, 200), Texts.Select((text, i) => new TextEntity(PrintFiles.Notes, new(5, 190 - 12 * i), 3.5, text))));

        var read = Words(PrintFiles.Ask("pdftotext", pdf, "-layout", "-enc", "UTF-8", "{file}", "-"));

        // Readers decide by themselves where there is a blank.
        Assert.All(Texts, text => Assert.Contains(Words(text), read, StringComparison.Ordinal));
    }

    [Fact]
    public void Every_text_of_a_sheet_is_found_by_a_reader()
    {
        var sheet = SvgSample.Sheet();
        var texts = sheet.Entities.SelectMany(e => e is Dimension dimension ? DimensionGraphics.Of(dimension) : [e]).OfType<TextEntity>().ToList();

        var read = Words(PrintFiles.Ask("pdftotext", PrintFiles.Pdf(sheet), "-raw", "-enc", "UTF-8", "{file}", "-"));

        Assert.All(texts, text => Assert.Contains(Words(text.Text), read, StringComparison.Ordinal));
    }

    [Fact]
    public void Text_is_as_wide_as_it_was_measured()
    {
        string[] texts = [LongLine.Replace(' ', '_'), "ÉØ½°×⌀", "illiWMW"];
        var entities = texts.Select((text, i) => new TextEntity(PrintFiles.Notes, new(5, 180 - 20 * i), 3.5, text))
            .Concat(texts.Skip(1).Select((text, i) => new TextEntity(PrintFiles.Notes, new(200, 100 - 20 * i), 5, text, Anchor.BaseRight)))
            .Append(new TextEntity(PrintFiles.Notes, new(200, 20), 7, "centred", Anchor.Middle)).ToList();

        var read = Word().Matches(PrintFiles.Ask("pdftotext", PrintFiles.Pdf(new Drawing("Widths", "", new Point2(500, 200), entities)), "-bbox", "-enc", "UTF-8", "{file}", "-"))
            .Select(m => (From: Millimetres(m.Groups[1].Value, 6), To: Millimetres(m.Groups[2].Value, 6))).ToList();

        // The reader prints a millionth of a point; where it splits a line into words their ends still touch.
        Assert.All(entities, text =>
        {
            Assert.Contains(read, word => Math.Abs(word.From - text.Bounds.Min.X) < 0.005);
            Assert.Contains(read, word => Math.Abs(word.To - text.Bounds.Max.X) < 0.005);
        });
    }

    [Fact]
    public void Font_is_embedded_as_a_subset_with_its_text()
    {
        var lines = PrintFiles.Ask("pdffonts", PrintFiles.Pdf(SvgSample.Sheet(), SvgSample.Sheet()), "{file}").TrimEnd().Split('\n');

        Assert.Matches(@"^[A-Z]{6}\+DejaVuSans +CID TrueType +Identity-H +yes yes yes ", Assert.Single(lines.Skip(2)));
    }

    [Fact]
    public void Drawing_without_text_has_no_font() =>
        Assert.Equal(2, PrintFiles.Ask("pdffonts", PrintFiles.Pdf(PrintFiles.Sheet(new PointEntity(PrintFiles.Outline, new(50, 50)))), "{file}").TrimEnd().Split('\n').Length);

    [Fact]
    public void Title_description_language_and_scaling_are_in_the_file()
    {
        const string title = "Left (“wicked”) <side> \\ é 合板 \U0001FA9A";

        var pdf = PrintFiles.Pdf(new Drawing(title, "A sentence\nor two.", new Point2(210, 297), []));

        var (info, catalogue) = (Objects(pdf, "/Title"), Objects(pdf, "/Catalog"));
        Assert.Equal("u:" + title, info.GetProperty("/Title").GetString());
        Assert.Equal("u:A sentence or two.", info.GetProperty("/Subject").GetString());
        Assert.Equal("u:en-GB", catalogue.GetProperty("/Lang").GetString());
        var text = Encoding.Latin1.GetString(pdf);
        Assert.Contains("/PrintScaling/None/DisplayDocTitle true", text, StringComparison.Ordinal);
        Assert.DoesNotContain("/PageMode", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Sheets_have_a_bookmark_each()
    {
        var titles = new[] { "left-side", "Étagère (½) \U0001FA9A", "a\tb" };
        var pdf = PrintFiles.Pdf([.. titles.Select(t => new Drawing(t, "", new Point2(210, 297), [new TextEntity(PrintFiles.Notes, new(20, 20), 5, t)]))]);

        using var json = JsonDocument.Parse(PrintFiles.Ask("qpdf", pdf, "--json", "--json-key=outlines", "{file}"));
        var outlines = json.RootElement.GetProperty("outlines").EnumerateArray().ToList();

        Assert.Equal(["left-side", "Étagère (½) \U0001FA9A", "a b"], outlines.Select(o => o.GetProperty("title").GetString()));
        Assert.Equal([1, 2, 3], outlines.Select(o => o.GetProperty("destpageposfrom1").GetInt32()));
        Assert.Contains("All sheets", PrintFiles.Ask("pdfinfo", pdf, "{file}"), StringComparison.Ordinal);
    }

    [Fact]
    public void No_sheet_is_refused() => Assert.Throws<ArgumentException>(() => new PdfExporter().Write([], Stream.Null, "Nothing"));

    [Fact]
    public void Page_longer_than_readers_show_is_refused()
    {
        PrintFiles.Pdf(new Drawing("Long", "", new Point2(5080, 100), []));
        Assert.Throws<ArgumentException>(() => PrintFiles.Pdf(new Drawing("Too long", "", new Point2(5081, 100), [])));
    }

    [Fact]
    public void Style_of_the_caller_decides_width_colour_and_dashes()
    {
        var exporter = new PdfExporter { Style = Style.Standard.With(Role.Outline, new(0.5, LinePattern.Chain, 1, "#3366ff")) };

        var content = PdfContent.Of(PrintFiles.Written(s => exporter.Write(PrintFiles.Sheet(new PointEntity(PrintFiles.Outline, new(3, 5))), s)));

        Assert.Contains("0.5 w 0 J [12 1.5 0.25 1.5] 0 d 0.2 0.4 1 RG 0.2 0.4 1 rg\n2 5 m\n4 5 l\n3 6 m\n3 4 l\nS\n", content, StringComparison.Ordinal);
    }

    [Fact]
    public void Solid_fill_leaves_islands_out() =>
        Assert.EndsWith("1 1 m\n9 1 l\n9 9 l\n1 9 l\nh\n3 3 m\n6 3 l\n6 6 l\n3 6 l\nh\nf*\n",
            PdfContent.Of(PrintFiles.Pdf(PrintFiles.Sheet(new HatchEntity(PrintFiles.Outline, Contour.Rectangle(1, 1, 9, 9), [Contour.Rectangle(3, 3, 6, 6)], null)))).TrimEnd() + "\n", StringComparison.Ordinal);

    [Fact]
    public void Numbers_are_plain_decimals_without_minus_zero() =>
        Assert.DoesNotMatch(@"(^|[ \[])(-0(?![.\d])|\S*[eE]-?\d|\.|NaN)( |$)", Strings().Replace(PdfContent.Of(PrintFiles.Pdf(DxfFiles.Everything(), SvgSample.Sheet())), ""));

    [Fact]
    public void File_knows_no_clock_and_no_chance()
    {
        var text = Encoding.Latin1.GetString(PrintFiles.Pdf(SvgSample.Sheet()));

        Assert.DoesNotContain("Date", text, StringComparison.Ordinal);
        Assert.DoesNotContain("uuid", text, StringComparison.Ordinal);
        Assert.DoesNotContain("/Metadata", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Identifier_follows_from_the_content()
    {
        static string Id(string text) => Identifier().Match(Encoding.Latin1.GetString(PrintFiles.Pdf(PrintFiles.Sheet(new TextEntity(PrintFiles.Notes, new(20, 20), 5, text))))).Value;

        Assert.Matches(@"^/ID\[<[0-9A-F]{32}><[0-9A-F]{32}>\]$", Id("a"));
        Assert.Equal(Id("a"), Id("a"));
        Assert.NotEqual(Id("a"), Id("b"));
    }

    [Fact]
    public void Random_drawings_are_sound_files()
    {
        var sheets = new List<Drawing>();
        RandomDrawings.Drawing.Sample(drawing =>
        {
            var sheet = new Drawing("Random", "", new Point2(420, 297), drawing.Entities);
            lock (sheets) sheets.Add(sheet);
        }, iter: Fuzz.Iterations(60));

        PrintFiles.Check(PrintFiles.Pdf([.. sheets]));
    }

    [Fact]
    public void Any_string_gives_a_sound_file()
    {
        var sheets = new List<Drawing>();
        Gen.String[Gen.Char, 0, 40].Sample(text =>
        {
            var sheet = new Drawing(text, text, new Point2(210, 297), [new TextEntity(PrintFiles.Notes, new(20, 20), 3.5, text)]);
            Assert.NotEmpty(PrintFiles.Pdf(sheet));
            lock (sheets) sheets.Add(sheet);
        }, iter: Fuzz.Iterations(60));

        PrintFiles.Check(PrintFiles.Pdf([.. sheets]));
    }

    // Crosses 10 mm from the edges, and upright and level lines between.
    private static Drawing Marked(double width, double height)
    {
        Point2[] corners = [new(10, 10), new(width - 10, 10), new(10, height - 10), new(width - 10, height - 10)];
        return new Drawing("Marked", "A sheet with marks.", new Point2(width, height), corners.SelectMany(c => new Entity[]
        {
            new SegmentEntity(PrintFiles.Outline, new(c - new Point2(5, 0), c + new Point2(5, 0))),
            new SegmentEntity(PrintFiles.Outline, new(c - new Point2(0, 5), c + new Point2(0, 5))),
        }).Append(new CircleEntity(PrintFiles.Outline, new(width / 2, 15), 1.5)).Append(new CircleEntity(PrintFiles.Outline, new(width / 2, height - 15), 1.5)));
    }

    private static void AssertScale(byte[] pdf, double width, double height, string page, string[]? marks = null)
    {
        OutsideProgram.DemandPrograms("qpdf", "pdftoppm");
        string N(double value) => value.ToString(CultureInfo.InvariantCulture);
        marks ??= [$"10,10", $"{N(width - 10)},10", $"10,{N(height - 10)}", $"{N(width - 10)},{N(height - 10)}", $"{N(width / 2)},15,dot", $"{N(width / 2)},{N(height - 15)},dot"];
        using var folder = new TemporaryFolder();
        File.WriteAllBytes(folder["marked.pdf"], pdf);

        var result = OutsideProgram.RunOracle("pdf_scale.py", "json",
            [folder["marked.pdf"], "--no-scaling", "--page", page, "--expect-page", $"{N(width)}x{N(height)}", "--tol", "0.1", .. marks.SelectMany(m => new[] { "--mark", m })]);

        Assert.True(result.ExitCode == 0, result.Output + result.Errors);
    }

    // The one object with a key or a type.
    private static JsonElement Objects(byte[] pdf, string mention)
    {
        using var json = JsonDocument.Parse(PrintFiles.Ask("qpdf", pdf, "--json", "--json-key=qpdf", "{file}"));
        return json.RootElement.GetProperty("qpdf")[1].EnumerateObject()
            .Where(o => o.Value.TryGetProperty("value", out var value) && value.ValueKind == JsonValueKind.Object
                && (value.TryGetProperty(mention, out _) || (value.TryGetProperty("/Type", out var type) && type.GetString() == mention)))
            .Select(o => o.Value.GetProperty("value").Clone()).Single();
    }

    private static string Words(string text) => Blanks().Replace(text, "").Replace("\0", "", StringComparison.Ordinal);

    private static double Millimetres(string points, int digits = 2) => Math.Round(double.Parse(points, CultureInfo.InvariantCulture) / 72 * 25.4, digits);

    [GeneratedRegex(@"Page +\d+ size: +([\d.]+) x ([\d.]+) pts")]
    private static partial Regex PageSize();

    [GeneratedRegex(@"<word xMin=""([\d.]+)"" yMin=""[\d.]+"" xMax=""([\d.]+)""")]
    private static partial Regex Word();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Blanks();

    [GeneratedRegex(@"<[0-9A-F]*>")]
    private static partial Regex Strings();

    [GeneratedRegex(@"/ID\[<\w+><\w+>\]")]
    private static partial Regex Identifier();
}
