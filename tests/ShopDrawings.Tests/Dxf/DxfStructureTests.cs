using System.Globalization;
using CsCheck;
using ShopDrawings.Drafting;
using ShopDrawings.Dxf;
using Xunit;
using static ShopDrawings.Tests.Dxf.DxfFiles;

namespace ShopDrawings.Tests.Dxf;

/// <summary>What holds a file together, whatever is drawn.</summary>
public class DxfStructureTests
{
    private static readonly Gen<string> WickedText = Gen.OneOf(
        Gen.String[Gen.Char, 0, 40],
        RandomDrawings.One("\r\n", "\n", "\r", "\0", "\u001a", "\u0085", "\u2028", "%%c", "%%%", "\\P", "\\U+000A", "{\\fArial;", "^J", "^M", "  0\nEOF\n", "\ud83e", "\udc00", "🪚", "½", "é", " ", "a")
            .Array[0, 12].Select(string.Concat),
        Gen.Select(Gen.Char, Gen.Int[200, 3000], (c, n) => new string(c, n)));

    // The whole file for each release; run with RECORD_DXF_SKELETON=1 to renew them, and read the difference.
    [Theory]
    [InlineData(DxfRelease.R12)]
    [InlineData(DxfRelease.R2000)]
    [InlineData(DxfRelease.R2010)]
    public void Skeleton_is_as_recorded(DxfRelease release)
    {
        var path = Path.Combine(OutsideProgram.RepositoryRoot, "tests", "ShopDrawings.Tests", "Data", $"skeleton-{release}.dxf");
        var actual = Write(new Drawing("Empty", "Nothing", null, []), release);

        if (Environment.GetEnvironmentVariable("RECORD_DXF_SKELETON") is { Length: > 0 }) File.WriteAllBytes(path, actual);
        Assert.Equal(File.ReadAllText(path), System.Text.Encoding.UTF8.GetString(actual));
    }

    [Fact]
    public void Structure_of_a_random_drawing_is_sound() => Gen.Select(RandomDrawings.Drawing, Gen.Enum<DxfRelease>(), Gen.Enum<DrawingUnit>(), Gen.Enum<DxfOutlines>(),
        RandomDrawings.One<double?>(null, 0.005, 0.5)).Sample((drawing, release, unit, outlines, tolerance) =>
        {
            using var stream = new MemoryStream();
            new DxfExporter { Release = release, Unit = unit, Outlines = outlines, ChordTolerance = tolerance }.Write(drawing, stream);
            AssertSound(Tags(stream.ToArray()), release);
        }, iter: Fuzz.Iterations(200));

    [Fact]
    public void Structure_is_that_of_plain_texts_whatever_the_texts() => Gen.Select(WickedText.Array[4], Gen.Enum<DxfRelease>()).Sample((texts, release) =>
    {
        var wicked = Shape(texts.Select(t => "a" + t));

        Assert.Equal(Shape(texts.Select(_ => "a")), wicked);

        List<(int, string)> Shape(IEnumerable<string> with)
        {
            var w = with.ToArray();
            using var stream = new MemoryStream();
            new DxfExporter { Release = release, Layout = new SheetLayout(420, 297, 10, w[2], w[3]) }.Write(new Drawing(w[0], w[1], null,
            [
                new TextEntity(Notes, new(0, 0), 5, w[0]), new LinearDimension(Dimensions, new(0, 0), new(50, 0), new(0, 5), false, w[1], 2),
                new InsertEntity(Notes, new Block("B", [new TextEntity(Notes, new(0, 0), 5, w[2])]), new(1, 2)),
            ]), stream);
            var tags = Tags(stream.ToArray());
            AssertSound(tags, release);
            return [.. tags.Select(t => (t.Code, t.Code is 0 or 2 or 100 ? t.Value : ""))];
        }
    }, iter: Fuzz.Iterations(2_000));

    [Fact]
    public void Dimension_of_each_height_has_a_style_that_matches()
    {
        var tags = Tags(Write(new Drawing("Any", "Any", null,
        [
            new LinearDimension(Dimensions, new(0, 0), new(9, 0), new(0, 9), false, "9", 2.5), new LinearDimension(Dimensions, new(0, 0), new(8, 0), new(0, 9), false, "8", 5),
            new LinearDimension(Dimensions, new(0, 0), new(7, 0), new(0, 9), false, "7", 2.5),
        ])));

        Assert.Equal(["2.5", "5.0"], tags.SkipWhile(t => t != (2, "DIMSTYLE")).TakeWhile(t => t != (0, "ENDTAB")).Where(t => t.Code == 140).Select(t => t.Value));
        Assert.Equal((40, "2.5"), tags[tags.FindIndex(t => t == (9, "$DIMTXT")) + 1]);
        Assert.Equal(["Standard", "TEXT_5000_UM", "Standard"], tags.SkipWhile(t => t != (2, "ENTITIES")).TakeWhile(t => t != (0, "ENDSEC")).Where(t => t.Code == 3).Select(t => t.Value));
    }

    // A style for each scale and practice: DIMLFAC 144, DIMTIH 73, DIMTAD 77; the first is also in the HEADER.
    [Theory]
    [InlineData(DxfRelease.R12)]
    [InlineData(DxfRelease.R2000)]
    public void Dimension_of_each_scale_and_practice_has_a_style_that_measures_and_letters_so(DxfRelease release)
    {
        Dimension Of(double factor, DrawingStandard standard) => new LinearDimension(Dimensions, new(0, 0), new(9, 0), new(0, 9), false, "9", 2.5) { Factor = factor, Standard = standard };
        var tags = Tags(Write(new Drawing("Any", "Any", null, [Of(5, DrawingStandard.Asme), Of(0.5, DrawingStandard.Asme), Of(5, DrawingStandard.Iso)]), release));

        string[] All(int code) => [.. tags.SkipWhile(t => t != (2, "DIMSTYLE")).TakeWhile(t => t != (0, "ENDTAB")).Where(t => t.Code == code).Select(t => t.Value)];
        Assert.Equal(["5.0", "0.5", "5.0"], All(144));
        Assert.Equal(["1", "1", "0"], All(73));
        Assert.Equal(["0", "0", "1"], All(77));
        Assert.Equal((40, "5.0"), tags[tags.FindIndex(t => t == (9, "$DIMLFAC")) + 1]);
        Assert.Equal(["STANDARD", "TEXT_2500_UM_BY_500_ASME", "TEXT_2500_UM_BY_5000"],
            tags.SkipWhile(t => t != (2, "ENTITIES")).TakeWhile(t => t != (0, "ENDSEC")).Where(t => t.Code == 3).Select(t => t.Value.ToUpperInvariant()));
    }

    [Fact]
    public void Sheet_is_there_only_where_asked_for()
    {
        OutsideProgram.DemandPython("ezdxf");
        foreach (var unit in Enum.GetValues<DrawingUnit>())
        {
            var layout = new SheetLayout(420, 297, 5, "Side", "1:5");
            using var stream = new MemoryStream();
            new DxfExporter { Unit = unit, Layout = layout }.Write(Everything(), stream);
            Audit(stream.ToArray());
            using var old = new MemoryStream();
            new DxfExporter { Release = DxfRelease.R12, Unit = unit, Layout = layout }.Write(Everything(), old);
            Assert.Equal(Write(Everything(), DxfRelease.R12, unit), old.ToArray());

            var read = Read([stream.ToArray(), Write(Everything(), DxfRelease.R2000, unit)]);

            Assert.Empty(read[1].Paper);
            Assert.Equal(["VIEWPORT", "VIEWPORT", "POLYLINE", "LINE", "TEXT", "TEXT"], read[0].Paper.Select(e => e.Type));
            Assert.Equal(["Side", "1:5"], read[0].Paper.Where(e => e.Type == "TEXT").Select(e => e.Text!));
            var window = read[0].Paper[1].Numbers;
            var mm = unit == DrawingUnit.Inch ? 25.4 : 1;
            Assert.Equal(400 / mm, window[2], 1e-5);
            Assert.Equal((297 - 20 - 14) / mm, window[3], 1e-5);
            Assert.Equal(5, window[6] / window[3], 1e-5);
            Assert.Equal(read[1].Entities.Count, read[0].Entities.Count);
        }
    }

    [Fact]
    public void Sheet_that_is_none_is_refused()
    {
        SheetLayout[] wrong = [new(0, 297, 1), new(420, 49, 1), new(420, double.NaN, 1), new(420, 297, 0), new(420, 297, 1, [.. Enumerable.Repeat("a", 9)]), new(420, 60, 1, "a", "b")];

        Assert.All(wrong, layout => Assert.Throws<ArgumentException>(() => new DxfExporter { Layout = layout }.Write(Everything(), Stream.Null)));
    }

    // Handles unique and below the seed, owners there, every block referred to defined once.
    internal static void AssertSound(List<(int Code, string Value)> tags, DxfRelease release)
    {
        Assert.Equal((0, "EOF"), tags[^1]);
        var defined = Records(tags, "BLOCK").Select(r => r.First(t => t.Code == 2).Value).ToList();
        Assert.Equal(defined.Count, defined.Distinct().Count());
        var used = Records(tags, "INSERT").Concat(Records(tags, "DIMENSION")).Select(r => r.First(t => t.Code == 2).Value).ToList();
        Assert.All(used, name => Assert.Contains(name, defined));
        Assert.Equal(Records(tags, "DIMENSION").Count(), defined.Count(name => name.StartsWith("*D", StringComparison.Ordinal)));
        if (release == DxfRelease.R12)
        {
            Assert.DoesNotContain(tags, t => t.Code is 5 or 100 or 330);
            return;
        }

        long Hex(string value) => long.Parse(value, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture);
        var seed = Hex(tags[tags.FindIndex(t => t == (9, "$HANDSEED")) + 1].Value);
        var handles = tags.Skip(tags.FindIndex(t => t == (0, "ENDSEC"))).Where(t => t.Code is 5 or 105).Select(t => Hex(t.Value)).ToList();
        Assert.Equal(handles.Count, handles.Distinct().Count());
        Assert.InRange(handles.Max(), 1, seed - 1);
        var known = handles.Append(0).ToHashSet();
        Assert.All(tags.Where(t => t.Code == 330), t => Assert.Contains(Hex(t.Value), known));
        Assert.Equal(defined.Order(), Records(tags, "BLOCK_RECORD").Select(r => r.First(t => t.Code == 2).Value).Order());
    }

    private static IEnumerable<List<(int Code, string Value)>> Records(List<(int Code, string Value)> tags, string name)
    {
        for (var i = 0; i < tags.Count; i++)
        {
            if (tags[i] == (0, name)) yield return [.. tags.Skip(i + 1).TakeWhile(t => t.Code != 0)];
        }
    }
}
