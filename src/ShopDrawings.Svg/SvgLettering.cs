using System.Text;
using System.Xml;
using global::Svg;
using global::Svg.Transforms;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;

namespace ShopDrawings.Svg;

/// <summary>Texts as SVG.</summary>
internal static class SvgLettering
{
    private static readonly Rune Replacement = Rune.ReplacementChar;

    /// <summary>The text with what XML 1.0 cannot hold (control characters, halves of surrogate pairs) replaced by U+FFFD.</summary>
    public static string Legal(string text)
    {
        var legal = new StringBuilder(text.Length);
        // Enumerating turns a lone surrogate into the replacement character already.
        foreach (var rune in text.EnumerateRunes()) legal.Append(rune.IsBmp && !XmlConvert.IsXmlChar((char)rune.Value) ? Replacement : rune);
        return legal.ToString();
    }

    /// <summary>One line of text, as wide in every reader as it was measured, whichever font the reader has.</summary>
    public static SvgText Of(TextEntity entity, Pen pen, SvgPlane plane)
    {
        var content = Legal(entity.Text);
        var at = plane.Map(entity.Position);
        // The base line of a text held by its middle lies half a capital below; turning comes after, round the position itself.
        var drop = entity.Anchor == Anchor.Middle ? entity.Height / 2 : 0;
        var text = new SvgText(content)
        {
            X = [at.X],
            Y = [SvgPlane.Number(plane.Top - entity.Position.Y + drop)],
            FontSize = SvgPlane.Number(Lettering.FontSize(entity.Height)),
            TextLength = SvgPlane.Number(Lettering.Width(content, entity.Height)),
            LengthAdjust = SvgTextLengthAdjust.SpacingAndGlyphs,
            TextAnchor = entity.Anchor switch
            {
                Anchor.BaseLeft => SvgTextAnchor.Start,
                Anchor.BaseRight => SvgTextAnchor.End,
                _ => SvgTextAnchor.Middle,
            },
        };
        SvgShapes.Fill(text, pen);
        var angle = SvgPlane.Number(-entity.AngleDegrees);
        if (angle != 0) text.Transforms = [new SvgRotate(angle, at.X, at.Y)];
        if (content.Any(char.IsControl) || content.StartsWith(' ') || content.EndsWith(' ') || content.Contains("  ", StringComparison.Ordinal))
            text.SpaceHandling = XmlSpaceHandling.Preserve; // else readers drop spaces that were measured
        return text;
    }
}
