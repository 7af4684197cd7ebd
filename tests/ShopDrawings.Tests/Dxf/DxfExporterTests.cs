using System.Globalization;
using System.Text;
using ShopDrawings.Drafting;
using ShopDrawings.Dxf;
using ShopDrawings.Kernel;
using Xunit;
using static ShopDrawings.Tests.Dxf.DxfFiles;

namespace ShopDrawings.Tests.Dxf;

public class DxfExporterTests
{
    private static Drawing Of(params Entity[] entities) => new("Any", "Any", null, entities);

    private static string Header(byte[] file, string variable)
    {
        var tags = Tags(file);
        return tags[tags.FindIndex(t => t == (9, variable)) + 1].Value;
    }

    [Theory]
    [InlineData(DxfRelease.R12)]
    [InlineData(DxfRelease.R2000)]
    [InlineData(DxfRelease.R2010)]
    public void Drawing_written_twice_and_in_other_cultures_has_the_same_bytes(DxfRelease release)
    {
        var first = Write(Everything("ı İ i I ß ½"), release);
        var before = CultureInfo.CurrentCulture;
        try
        {
            foreach (var name in (string[])["", "tr-TR", "de-DE", "ar-SA"])
            {
                CultureInfo.CurrentCulture = Culture(name);
                Assert.Equal(first, Write(Everything("ı İ i I ß ½"), release));
            }
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    // Where cultures are switched off, names give none or the invariant one: then its signs are made those of no other culture.
    private static CultureInfo Culture(string name)
    {
        CultureInfo culture;
        try
        {
            culture = (CultureInfo)new CultureInfo(name).Clone();
        }
        catch (CultureNotFoundException)
        {
            culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        }

        culture.NumberFormat.NumberDecimalSeparator = ",";
        culture.NumberFormat.NumberGroupSeparator = ".";
        culture.NumberFormat.NegativeSign = "−";
        return culture;
    }

    [Fact]
    public void Release_not_fixed_becomes_2010_where_a_text_is_not_ascii()
    {
        Assert.Equal("AC1015", Header(Write(Everything("plain")), "$ACADVER"));
        Assert.Equal("AC1024", Header(Write(Everything("Größe")), "$ACADVER"));
        Assert.Equal("AC1009", Header(Write(Everything("Größe"), DxfRelease.R12), "$ACADVER"));
        Assert.Equal("AC1024", Header(Write(Of(new LinearDimension(Dimensions, new(0, 0), new(5, 0), new(0, 9), false, "5½", 3))), "$ACADVER"));
        Assert.Equal("AC1015", Header(Write(Everything("Größe"), DxfRelease.R2000), "$ACADVER"));
        Assert.Contains((1, "Größe"), Tags(Write(Everything("Größe"))));
        Assert.Contains((1, "Grosse"), Tags(Write(Everything("Größe"), DxfRelease.R2000)));
        Assert.True(Ascii.IsValid(Write(Everything("Größe ½ 板"), DxfRelease.R2000)));
        Assert.True(Ascii.IsValid(Write(Everything("Größe ½ 板"), DxfRelease.R12)));
    }

    [Theory]
    [InlineData(DrawingUnit.Millimetre, "4", "1")]
    [InlineData(DrawingUnit.Inch, "1", "0")]
    public void Unit_is_said_twice_and_alike(DrawingUnit unit, string insUnits, string measurement)
    {
        foreach (var release in Enum.GetValues<DxfRelease>())
        {
            var file = Write(Everything(), release, unit);
            Assert.Equal((insUnits, measurement), (Header(file, "$INSUNITS"), Header(file, "$MEASUREMENT")));
        }
    }

    [Fact]
    public void Extents_are_the_box_of_what_is_drawn_with_room_for_wider_lettering()
    {
        var text = new TextEntity(Notes, new(0, 0), 10, "wide enough", Anchor.BaseLeft);
        var file = Write(Of(new SegmentEntity(Outline, new(new(-5, -50), new(5, -50), 1)), text));

        var expected = Lettering.Width(text.Text, text.Height) * 1.2;
        var tags = Tags(file);
        var at = tags.FindIndex(t => t == (9, "$EXTMAX"));
        Assert.Equal((10, expected), (tags[at + 1].Code, double.Parse(tags[at + 1].Value, CultureInfo.InvariantCulture)), (a, b) => a.Item1 == b.Item1 && Math.Abs(a.Item2 - b.Item2) < 1e-6);
        at = tags.FindIndex(t => t == (9, "$EXTMIN"));
        Assert.Equal([(10, "-5.0"), (20, "-55.0"), (30, "0.0")], tags.Skip(at + 1).Take(3));
    }

    [Fact]
    public void Layers_have_the_pens_of_their_roles()
    {
        var style = Style.Standard.With(Role.Hidden, new Pen(0.19, LinePattern.Chain, 8, "#000000"));
        using var stream = new MemoryStream();
        new DxfExporter { Style = style }.Write(Of(new PointEntity(Outline, new(1, 2)), new PointEntity(Hidden, new(1, 2))), stream);

        var tags = Tags(stream.ToArray());
        var layers = tags.Select((t, i) => (t, i)).Where(x => x.t == (100, "AcDbLayerTableRecord"))
            .Select(x => string.Join(' ', tags.Skip(x.i + 1).Take(6).Select(t => t.Value)));
        Assert.Equal(["0 0 7 Continuous 25 6", "OUTLINE 0 7 Continuous 50 6", "HIDDEN 0 8 CENTER 18 6"], layers);
        Assert.DoesNotContain((2, "DASHED"), tags);
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(0.19, 18)]
    [InlineData(0.25, 25)]
    [InlineData(0.51, 50)]
    [InlineData(1, 100)]
    [InlineData(9, 211)]
    public void Lineweight_is_the_nearest_the_format_knows(double widthMm, int expected) => Assert.Equal(expected, Lineweight.Nearest(widthMm));

    [Fact]
    public void Arc_run_clockwise_is_written_anticlockwise()
    {
        var tags = Tags(Write(Of(new SegmentEntity(Outline, new(new(0, 10), new(10, 0), -Math.Tan(Math.PI / 8))))));

        Assert.Contains((50, "0.0"), tags);
        Assert.Contains((51, "90.0"), tags);
    }

    [Fact]
    public void Arc_that_six_decimals_cannot_hold_is_written_in_pieces()
    {
        var tags = Tags(Write(Of(new ContourEntity(Outline, Contour.RoundedRectangle(0, 0, 2000, 2000, 1000)))));

        // Rounding the bulge of a quarter moves the middle of the arc, 1000 mm in radius, by more than is allowed.
        Assert.InRange(Math.Abs(Math.Tan(Math.PI / 8) - 0.414214) * 1000 * Math.Sqrt(2) / 2, 3e-4, 4e-4);
        Assert.Contains((90, "8"), tags);
    }

    [Fact]
    public void Arc_all_but_straight_is_written_as_a_line()
    {
        var tags = Tags(Write(Of(new SegmentEntity(Outline, new(new(0, 0), new(1000, 0), 1e-12)))));

        Assert.Contains((0, "LINE"), tags);
        Assert.Equal([(10, "1000.0"), (20, "0.0")], tags.SkipWhile(t => t != (9, "$EXTMAX")).Skip(1).Take(2));
    }

    [Theory]
    [InlineData(1e-9, "LINE")]
    [InlineData(1e9 - 1, "CIRCLE")]
    public void Arc_whose_angles_have_the_same_digits_is_written_as_what_it_is(double bulge, string expected)
    {
        var chord = bulge < 1 ? 1e-5 : 1e-6;

        var entities = Tags(Write(Of(new SegmentEntity(Outline, new(new(0, 0), new(chord, 0), bulge))))).SkipWhile(t => t != (2, "ENTITIES"));

        Assert.Contains((0, expected), entities);
        Assert.DoesNotContain((0, "ARC"), entities);
    }

    [Fact]
    public void Text_without_a_letter_is_left_out() =>
        Assert.DoesNotContain((0, "TEXT"), Tags(Write(Of(new TextEntity(Notes, new(0, 0), 5, " \r\n\u200b")))));

    private static readonly Entity[] Refused =
    [
        new CircleEntity(Bores, new(double.NaN, 0), 5),
        new CircleEntity(Bores, new(0, 0), double.PositiveInfinity),
        new CircleEntity(Bores, new(0, 0), 0),
        new CircleEntity(Bores, new(0, 0), -5),
        new CircleEntity(Bores, new(1e9, 0), 5),
        new PointEntity(Bores, new(0, -1e9)),
        new SegmentEntity(Bores, new(new(0, 0), new(1, 1), double.NaN)),
        new SegmentEntity(Bores, new(new(0, 0), new(1, double.NaN))),
        new SegmentEntity(Bores, new(new(0, 0), new(1, 1), double.PositiveInfinity)),
        new TextEntity(Bores, new(0, 0), 0, "a"),
        new TextEntity(Bores, new(0, 0), double.NaN, "a"),
        new TextEntity(Bores, new(0, 0), 5, "a", Anchor.Middle, double.NegativeInfinity),
        new TextEntity(Bores, new(double.NaN, 0), 5, "a"),
        new LinearDimension(Bores, new(0, 0), new(double.NaN, 0), new(0, 9), false, "9", 5),
        new LinearDimension(Bores, new(0, 0), new(9, 0), new(0, 9), false, "9", 0),
        new ArrowEntity(Bores, new(0, 0), new(0, 0), new(double.NaN, 0)),
        new LinearDimension(Bores, new(0, 0), new(9, 0), new(double.NaN, 9), false, "9", 5),
        new AlignedDimension(Bores, new(0, 0), new(0, 0), new(0, 9), "0", 5),
        new RadiusDimension(Bores, new(0, 0), new(0, 0), "0", 5),
        new DiameterDimension(Bores, new(0, 0), new(0, double.NaN), "0", 5),
        new AngularDimension(Bores, new(0, 0), new(1, 0), new(2, 0), 5, "0", 5),
        new AngularDimension(Bores, new(0, 0), new(1, 0), new(0, 0), 5, "0", 5),
        new OrdinateDimension(Bores, new(2e9, 0), new(1, 0), new(0, 0), false, "0", 5),
        new EllipseEntity(Bores, new(0, 0), new(1, 0), 1.1),
        new EllipseEntity(Bores, new(0, 0), new(1, 0), 0),
        new EllipseEntity(Bores, new(0, 0), new(0, 0), 1),
        new EllipseEntity(Bores, new(double.NaN, 0), new(1, 0), 1),
        new EllipseEntity(Bores, new(0, 0), new(1, 0), 1, 0, 361),
        new EllipseEntity(Bores, new(0, 0), new(1, 0), 1, double.NaN, 90),
        new LeaderEntity(Bores, [new(0, 0), new(0, 0)], 5),
        new LeaderEntity(Bores, [new(0, 0)], 5),
        new LeaderEntity(Bores, [new(0, 0), new(9, 0)], double.NaN),
        new HatchEntity(Bores, Contour.Circle(new(0, 0), 9), [], new HatchPattern(0, 0)),
        new HatchEntity(Bores, Contour.Circle(new(0, 0), 9), [], new HatchPattern(double.NaN, 1)),
        new InsertEntity(Bores, Cup, new(0, 0), 0, 0),
        new InsertEntity(Bores, Cup, new(0, double.NaN)),
        new InsertEntity(Bores, Cup, new(0, 0), double.PositiveInfinity),
    ];

    [Fact]
    public void Entity_with_a_number_the_format_cannot_hold_is_named_and_nothing_is_written()
    {
        foreach (var entity in Refused)
        {
            using var stream = new MemoryStream();

            var fault = Assert.Throws<ArgumentException>(() => new DxfExporter().Write(Of(new PointEntity(Outline, new(0, 0)), entity), stream));

            Assert.StartsWith($"{entity.GetType().Name} 2 of the drawing, on layer {Bores.Name}, ", fault.Message, StringComparison.Ordinal);
            Assert.Equal(0, stream.Length);
        }
    }

    [Fact]
    public void Pen_without_a_colour_of_the_format_is_refused()
    {
        var style = Style.Standard.With(Role.Bore, new Pen(0.25, LinePattern.Continuous, 0, "#000000"));

        Assert.Throws<ArgumentException>(() => new DxfExporter { Style = style }.Write(Everything(), Stream.Null));
    }

    [Fact]
    public void Large_drawing_arrives_in_pieces_and_leaves_the_stream_open()
    {
        using var stream = new PieceStream();

        new DxfExporter().Write(Of([.. Enumerable.Range(0, 20_000).Select(i => new CircleEntity(Bores, new(i, i), 2.5))]), stream);

        Assert.InRange(stream.LargestPiece, 1, 1 << 16);
        Assert.True(stream.Length > 2_000_000);
        Assert.True(stream.CanWrite);
    }

    private sealed class PieceStream : MemoryStream
    {
        public int LargestPiece { get; private set; }

        public override void Write(byte[] buffer, int offset, int count)
        {
            LargestPiece = Math.Max(LargestPiece, count);
            base.Write(buffer, offset, count);
        }
    }
}
