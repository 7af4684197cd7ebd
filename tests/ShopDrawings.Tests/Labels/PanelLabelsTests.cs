using System.Collections.Immutable;
using CsCheck;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;
using Size = ShopDrawings.Kernel.Size;

namespace ShopDrawings.Tests.Labels;

public class PanelLabelsTests
{
    private static readonly ImmutableArray<LabelSheet> Sheets =
        [LabelSheet.PlainA4, LabelSheet.PlainLetter, LabelSheet.A4By3X8, LabelSheet.LetterBy3X10, new(new(210, 297), 4, 10, LabelSheet.Least, new(25, 48.5), default)];

    private static readonly ImmutableArray<SheetSettings> Settings =
    [
        .. from style in new[] { LengthStyle.Millimetres, LengthStyle.Inches }
           from both in new[] { false, true }
           from fractions in Enum.GetValues<FractionForm>()
           from standard in new[] { DrawingStandard.Iso, DrawingStandard.Asme }
           select new SheetSettings(standard, style with { HasBoth = both, Fractions = fractions, Denominator = 64 }),
    ];

    // Names of up to forty characters in up to three bays.
    private static readonly Gen<Panel> Panels =
        from name in Gen.String[Gen.Char.AlphaNumeric, 1, 120]
        from label in Gen.String[Gen.Char[' ', '~'], 0, 60]
        from length in Gen.Double[10, 3000]
        from width in Gen.Double[10, 2000]
        from bands in Gen.Int[0, 15]
        select Panel.Rectangular(name, Board.Create("board", BoardKind.Plywood, Size.Given(18.5, "thickness", default), label, null, null), Size.Given(length, "length", default), Size.Given(width, "width", default))
            .WithBands(Surfaces.Edges.Where((_, i) => (bands >> i & 1) == 1).Select((e, i) => new EdgeBand(e, Size.Given(0.5 + i * 0.3, "band", default))));

    [Fact]
    public void Nothing_leaves_its_label_and_no_text_lies_on_another() =>
        Gen.Select(Panels, Gen.String[Gen.Char[' ', '~'], 1, 200], Gen.Int[0, Settings.Length - 1], Gen.Int[0, Sheets.Length - 1]).Sample((panel, project, settings, sheet) =>
        {
            var page = PanelLabels.Of([panel], project, Settings[settings], Sheets[sheet]).Single();
            var label = Sheets[sheet].Place(0);
            var inside = page.Entities.Where(e => e.Layer.Name != "CUT_LINES").ToList();

            Assert.All(inside, e => Assert.True(Holds(label.Grown(-1), e.Bounds.Min) && Holds(label.Grown(-1), e.Bounds.Max), $"{e} leaves {label}"));
            var texts = inside.OfType<TextEntity>().ToList();
            for (var i = 0; i < texts.Count; i++)
                for (var k = 0; k < i; k++)
                    Assert.False(Overlap(texts[i].Bounds.Grown(-0.01), texts[k].Bounds.Grown(-0.01)), $"“{texts[i].Text}” lies on “{texts[k].Text}”");
            Assert.All(texts, t => Assert.True(t.Height >= 2.5));
        }, iter: Fuzz.Iterations(2000));

    // The finished sizes stand whole on every label, on one line or several.
    [Fact]
    public void Sizes_are_never_cut_short() =>
        Gen.Select(Panels, Gen.Int[0, Settings.Length - 1], Gen.Int[0, Sheets.Length - 1]).Sample((panel, settings, sheet) =>
        {
            var texts = string.Join(' ', PanelLabels.Of([panel], "x", Settings[settings], Sheets[sheet]).Single().Entities.OfType<TextEntity>().Select(t => t.Text));
            var lengths = Settings[settings].Lengths;
            var ways = new[] { lengths, lengths.InOneUnit, lengths.InOneUnit with { Fractions = FractionForm.Plain }, lengths with { Fractions = FractionForm.Plain } };

            // A fraction never stands apart from its inches.
            var lines = PanelLabels.Of([panel], "x", Settings[settings], Sheets[sheet]).Single().Entities.OfType<TextEntity>().Select(t => t.Text).ToList();
            Assert.True(Array.Exists(ways, w => new[] { panel.Length, panel.Width, panel.Thickness }.All(s => lines.Exists(l => l.Contains(w.Print(s.Value), StringComparison.Ordinal)))), string.Join('\n', lines));
            Assert.True(Array.Exists(ways, w => texts.Contains(string.Join(" × ", new[] { panel.Length, panel.Width, panel.Thickness }.Select(s => w.Print(s.Value))), StringComparison.Ordinal)), texts);
        }, iter: Fuzz.Iterations(2000));

    [Theory]
    [InlineData(0, 1, 0)]
    [InlineData(23, 2, 23)]
    [InlineData(22, 1, 22)]
    public void Labels_begin_after_those_that_are_used_up(int skip, int pages, int first)
    {
        var sheet = LabelSheet.A4By3X8 with { Skip = skip };

        var drawings = PanelLabels.Of([.. new[] { "one", "two" }.Select((n, i) => Plain(n, 300 + i))], "x", Settings[0], sheet);

        Assert.Equal(pages, drawings.Length);
        Assert.True(Holds(sheet.Place(first), drawings[0].Entities.OfType<TextEntity>().Single(t => t.Text == "one").Position));
        Assert.True(Holds(sheet.Place((first + 1) % 24), drawings[^1].Entities.OfType<TextEntity>().Single(t => t.Text == "two").Position));
    }

    [Fact]
    public void Like_parts_are_counted() =>
        Assert.Equal(
            ["inside up, 1 of 2", "inside up", "inside up, 2 of 2"],
            PanelLabels.Of([Plain("a", 300), Plain("b", 301), Plain("c", 300)], "x", Settings[0], LabelSheet.PlainA4).Single().Entities.OfType<TextEntity>().Select(t => t.Text).Where(t => t.StartsWith("inside", StringComparison.Ordinal)));

    // 3 × 70 is the width of A4; 8 × 37 leave half a millimetre above and below. Ten inches of labels leave half an inch.
    [Fact]
    public void Sheets_are_as_large_as_their_labels_say()
    {
        Assert.Equal((new Point2(0, 0.5), new Point2(210, 296.5)), (LabelSheet.A4By3X8.Bounds.Min, LabelSheet.A4By3X8.Bounds.Max));
        Assert.Equal(12.7, LabelSheet.LetterBy3X10.Bounds.Min.Y, 1e-9);
        Assert.Equal(215.9 - 4.7625, LabelSheet.LetterBy3X10.Bounds.Max.X, 1e-9);
    }

    private static bool Holds(Box2 box, Point2 p) => p.X >= box.Min.X && p.X <= box.Max.X && p.Y >= box.Min.Y && p.Y <= box.Max.Y;

    private static bool Overlap(Box2 a, Box2 b) => a.Min.X < b.Max.X && b.Min.X < a.Max.X && a.Min.Y < b.Max.Y && b.Min.Y < a.Max.Y;

    private static Panel Plain(string name, double length) =>
        Panel.Rectangular(name, Board.Create("board", BoardKind.Plywood, Size.Given(18, "thickness", default), "", null, null), Size.Given(length, "length", default), Size.Given(200, "width", default));
}
