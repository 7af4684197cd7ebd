using System.Collections.Immutable;
using System.Text;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;

namespace ShopDrawings.Print;

/// <summary>
/// A line of text as it is printed: character by character from the left, each as wide as the font says, without kerning, ligatures or a
/// change of direction, so that it fills exactly the width it was measured with.
/// </summary>
/// <param name="Start">The left end of the base line, in mm.</param>
/// <param name="FontSize">The font size in mm.</param>
/// <param name="AngleDegrees">Direction of the base line, anticlockwise from x.</param>
/// <param name="Characters">The characters in order.</param>
internal sealed record TextLine(Point2 Start, double FontSize, double AngleDegrees, ImmutableArray<Rune> Characters)
{
    /// <summary>The line of a text entity.</summary>
    public static TextLine Of(TextEntity entity)
    {
        var width = Lettering.Width(entity.Text, entity.Height);
        var back = entity.Anchor switch
        {
            Anchor.BaseLeft => 0,
            Anchor.BaseRight => width,
            _ => width / 2,
        };
        var down = entity.Anchor == Anchor.Middle ? entity.Height / 2 : 0;
        var (sin, cos) = Math.SinCos(entity.AngleDegrees * (Math.PI / 180));
        var along = new Point2(cos, sin);
        return new TextLine(entity.Position - along * back - along.Left * down, Lettering.FontSize(entity.Height), entity.AngleDegrees, [.. entity.Text.EnumerateRunes()]);
    }

    /// <summary>The number of a character's glyph, and whether it is drawn: a control character only takes its width.</summary>
    public static (int Number, bool HasInk) Glyph(Rune character) => (FontMetrics.Default.Glyph(character.Value), !Rune.IsControl(character));

    /// <summary>A text as programs may show it elsewhere: control characters are blanks, what is no character is U+FFFD.</summary>
    public static string Plain(string text)
    {
        var plain = new StringBuilder(text.Length);
        // Enumerating turns half a surrogate pair into the replacement character already.
        foreach (var rune in text.EnumerateRunes()) plain.Append(Plain(rune));
        return plain.ToString();
    }

    /// <summary>A character as programs may show it elsewhere.</summary>
    public static Rune Plain(Rune character) => Rune.IsControl(character) ? new Rune(' ')
        : (character.Value & 0xFFFE) == 0xFFFE ? Rune.ReplacementChar
        : character;
}
