using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>Sizes of lettering in the font all drawings are measured with, DejaVu Sans.</summary>
public static class Lettering
{
    /// <summary>Height of the capitals as a share of the font size, from the font's own tables.</summary>
    public static double CapitalHeight => FontMetrics.Default.CapitalHeight;

    /// <summary>The font size in mm that gives capitals of a height in mm.</summary>
    public static double FontSize(double height) => height / CapitalHeight;

    /// <summary>Width in mm of a line of text whose capitals are <paramref name="height"/> mm high; kerning is not used.</summary>
    public static double Width(string text, double height) => FontMetrics.Default.Advance(text) * FontSize(height);

    /// <summary>Words in lines no wider than a width in mm; a word that is wider by itself stands alone.</summary>
    internal static IEnumerable<string> Lines(IEnumerable<string> words, double height, double width)
    {
        var line = "";
        foreach (var word in words)
        {
            var longer = line.Length == 0 ? word : $"{line} {word}";
            if (line.Length > 0 && Width(longer, height) > width)
            {
                yield return line;
                longer = word;
            }

            line = longer;
        }

        if (line.Length > 0) yield return line;
    }

    /// <summary>The upright box a text covers, from the descender to the ascender of the tallest letters.</summary>
    public static Box2 Box(TextEntity text)
    {
        var width = Width(text.Text, text.Height);
        var left = text.Anchor switch
        {
            Anchor.BaseLeft => 0,
            Anchor.BaseRight => -width,
            _ => -width / 2,
        };
        var bottom = (text.Anchor == Anchor.Middle ? -text.Height / 2 : 0) - 0.33 * text.Height;
        var (sin, cos) = Math.SinCos(text.AngleDegrees * Math.PI / 180);
        Point2 Turned(double x, double y) => text.Position + new Point2(x * cos - y * sin, x * sin + y * cos);
        var top = bottom + 1.6 * text.Height;
        return Box2.Around([Turned(left, bottom), Turned(left + width, bottom), Turned(left + width, top), Turned(left, top)]);
    }
}
