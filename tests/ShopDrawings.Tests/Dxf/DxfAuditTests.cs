using ShopDrawings.Drafting;
using ShopDrawings.Dxf;
using ShopDrawings.Kernel;
using Xunit;

namespace ShopDrawings.Tests.Dxf;

public class DxfAuditTests
{
    [Theory]
    [InlineData(DxfRelease.R12, DrawingUnit.Millimetre)]
    [InlineData(DxfRelease.R12, DrawingUnit.Inch)]
    [InlineData(DxfRelease.R2000, DrawingUnit.Millimetre)]
    [InlineData(DxfRelease.R2000, DrawingUnit.Inch)]
    [InlineData(DxfRelease.R2010, DrawingUnit.Millimetre)]
    [InlineData(DxfRelease.R2010, DrawingUnit.Inch)]
    public void Drawing_with_every_entity_passes_the_audit(DxfRelease release, DrawingUnit unit) =>
        DxfFiles.Audit(DxfFiles.Write(DxfFiles.Everything("Größe 23½ × Ø5"), release, unit));

    [Theory]
    [InlineData(DxfRelease.R12)]
    [InlineData(DxfRelease.R2000)]
    public void Empty_drawing_passes_the_audit(DxfRelease release) =>
        DxfFiles.Audit(DxfFiles.Write(new Drawing("Empty", "Nothing", null, []), release));

    [Theory]
    [InlineData(DxfRelease.R12)]
    [InlineData(DxfRelease.R2000)]
    public void Panel_for_a_machine_passes_the_audit(DxfRelease release)
    {
        var panel = new Drawing("Side", "A panel", null,
        [
            new ContourEntity(DxfFiles.Outline, Contour.RoundedRectangle(0, 0, 1200, 600, 250)),
            new ContourEntity(new Layer("CUTOUT", Role.CutOut, "Openings"), Contour.Slot(new(400, 300), new(700, 300), 60)),
            new CircleEntity(DxfFiles.Bores, new(37, 37), 2.5),
            new TextEntity(DxfFiles.Notes, new(20, 300), 8, "Side"),
        ]);

        DxfFiles.Audit(DxfFiles.Write(panel, release), "--machine", "--cut", "OUTLINE", "--cut", "CUTOUT");
    }

    [Theory]
    [InlineData(DxfRelease.R12)]
    [InlineData(DxfRelease.R2000)]
    public void Drawing_with_wicked_texts_passes_the_audit(DxfRelease release)
    {
        string[] texts =
        [
            "a\r\n  0\r\nEOF\r\n", "\0\u0001\u001f\u007f\u0085\u2028", "%%c%%%%d%%045", "\\P{\\fArial|b1;x}\\U+00BD \\M+182A0", "^J^M^ ",
            "\ud83e", "\udc00\ud800", new string('W', 100_000), new string('é', 100_000), new string('^', 300), new string('%', 300), new string('\ud83e', 300), "{{{\\\\\\}}}\\H3;\\S1^J2;", "🪚 板 ½", "", "   ", "\t", "999", "  0",
        ];
        var drawing = new Drawing("Wicked", "Texts", null, texts.SelectMany((text, i) => new Entity[]
        {
            new TextEntity(DxfFiles.Notes, new(0, 10 * i), 5, text),
            new LinearDimension(DxfFiles.Dimensions, new(0, 10 * i), new(50, 10 * i), new(0, 10 * i + 5), false, "50 " + text, 2),
        }));

        DxfFiles.Audit(DxfFiles.Write(drawing, release));
    }

    [Fact]
    public void Layer_with_a_name_that_has_a_meaning_passes_the_audit() =>
        DxfFiles.Audit(DxfFiles.Write(new Drawing("Names", "Layers", null, [new PointEntity(new Layer("DEFPOINTS", Role.Mark, "Layer"), new(1, 2))])));
}
