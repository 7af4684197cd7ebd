using CsCheck;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;
using Xunit;

namespace ShopDrawings.Tests.Svg;

public class SvgLetteringTests
{
    private static readonly Layer Notes = new("NOTES", Role.Lettering, "Notes");

    [Theory]
    [InlineData("<b>&amp;</b> \"quoted\" 'single' ]]> <!-- -->")]
    [InlineData("Tür, étagère, ½″ Ø 35 °, İıŞ, 合板, \U0001D538\U0001FA9A")]
    [InlineData("  two  spaces  ")]
    [InlineData("tab\tline\nreturn\rend")]
    [InlineData("&#0;&#xD800;")]
    [InlineData("javascript:alert(1) url(http://example.org)")]
    [InlineData("\u0085\u2028\u202e right to left")]
    public void Wicked_text_is_read_back_unchanged(string text)
    {
        var drawing = new Drawing(text, text, null, [new TextEntity(new("NOTES", Role.Lettering, text), default, 3.5, text)]);

        var root = SvgSample.Read(drawing);

        Assert.Equal(text, root.Only("text").Value);
        Assert.Equal(text, root.Only("desc").Value);
        Assert.All(root.Descendants(SvgSample.Ns + "title"), title => Assert.Equal(text, title.Value));
    }

    [Theory]
    [InlineData("nul\0", "nul\ufffd")]
    [InlineData("\u0001\u001f\u007f\ufffe\uffff", "\ufffd\ufffd\u007f\ufffd\ufffd")]
    [InlineData("\uE000 private", "\uE000 private")]
    public void Character_xml_cannot_hold_becomes_the_replacement_character(string text, string expected) =>
        Assert.Equal(expected, SvgSample.Read(SvgSample.OfText(text)).Only("text").Value);

    [Fact]
    public void Half_of_a_surrogate_pair_becomes_the_replacement_character()
    {
        // Not inline data: a test runner cannot pass halves on.
        Assert.Equal("a\ufffdb", SvgSample.Read(SvgSample.OfText("a" + '\ud835' + "b")).Only("text").Value);
        Assert.Equal("a\ufffd", SvgSample.Read(SvgSample.OfText("a" + '\udd38')).Only("text").Value);
    }

    [Fact]
    public void Any_string_gives_a_readable_file() =>
        Gen.String[Gen.Char, 0, 40].Sample(text => SvgSample.Read(new Drawing(text, text, null, [new TextEntity(Notes, default, 3.5, text)])));

    [Theory]
    [InlineData("")]
    [InlineData(" \t")]
    public void Blank_text_draws_nothing(string text) =>
        Assert.Empty(SvgSample.Read(SvgSample.OfText(text)).Descendants(SvgSample.Ns + "text"));

    [Fact]
    public void Text_is_held_to_the_measured_width_and_height()
    {
        var text = SvgSample.Read(SvgSample.OfText("Left side")).Only("text");

        Assert.Equal(Lettering.FontSize(3.5), text.Number("font-size"), 0.0005);
        Assert.Equal(Lettering.Width("Left side", 3.5), text.Number("textLength"), 0.0005);
        Assert.Equal("spacingAndGlyphs", text.Attribute("lengthAdjust")?.Value);
        Assert.StartsWith("'DejaVu Sans'", text.Ancestors().Last().Attribute("font-family")?.Value, StringComparison.Ordinal);
        Assert.Equal(("#000000", "none"), (text.Attribute("fill")?.Value, text.Attribute("stroke")?.Value));
    }

    [Theory]
    [InlineData(Anchor.BaseLeft, "start", -20)]
    [InlineData(Anchor.BaseCentre, "middle", -20)]
    [InlineData(Anchor.BaseRight, "end", -20)]
    [InlineData(Anchor.Middle, "middle", -18)]
    public void Anchor_sets_the_base_line(Anchor anchor, string expected, double y)
    {
        var text = SvgSample.Read(SvgSample.Of(new TextEntity(Notes, new(10, 20), 4, "x", anchor))).Only("text");

        Assert.Equal(expected, text.Attribute("text-anchor")?.Value ?? "start");
        Assert.Equal((10, y), (text.Number("x"), text.Number("y")));
        Assert.Null(text.Attribute("transform"));
    }

    [Fact]
    public void Turned_text_turns_anticlockwise_round_its_position()
    {
        var text = SvgSample.Read(SvgSample.Of(new TextEntity(Notes, new(10, 20), 4, "x", Anchor.Middle, 90))).Only("text");

        Assert.Equal("rotate(-90, 10, -20)", text.Attribute("transform")?.Value);
    }
}
