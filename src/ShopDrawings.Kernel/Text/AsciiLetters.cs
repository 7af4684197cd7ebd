using System.Text;

namespace ShopDrawings.Kernel;

/// <summary>
/// What stands for a character where only ASCII arrives. A table of our own: Unicode decomposition depends on the platform, and knows
/// neither ⌀ nor ½ the way a workshop writes them.
/// </summary>
internal static class AsciiLetters
{
    // From U+00C0 and U+0100 on, one base letter each; '_' where there is none or one letter is not enough.
    private const string Latin1 = "AAAAAA_CEEEEIIIIDNOOOOOx_UUUUY__aaaaaa_ceeeeiiiidnooooo/_uuuuy_y";
    private const string LatinExtended =
        "AaAaAaCcCcCcCcDdDdEeEeEeEeEeGgGgGgGgHhHhIiIiIiIiIi__JjKkkLlLlLlLlLlNnNnNn___OoOoOo__RrRrRrSsSsSsSsTtTtTtUuUuUuUuUuUuWwYyYZzZzZzs";

    /// <summary>The letters that stand for a character outside ASCII; <c>_</c> for what has no likeness.</summary>
    public static string For(Rune character) => character.Value switch
    {
        0xC6 => "AE",
        0xE6 => "ae",
        0x152 => "OE",
        0x153 => "oe",
        0xDE => "Th",
        0xFE => "th",
        0xDF => "ss",
        '⌀' or '∅' => "D",
        '°' or 'º' => " deg",
        '±' => "+/-",
        '−' or '–' or '—' or '‐' or '‑' or '‒' => "-",
        '≈' or '∼' => "~",
        '≤' => "<=",
        '≥' => ">=",
        '≠' => "<>",
        '→' => "->",
        '←' => "<-",
        '×' or '✕' or '✗' => "x",
        '·' or '∙' => ".",
        '•' => "*",
        '…' => "...",
        '⁄' or '∕' => "/",
        '‘' or '’' or '‚' or '′' or '´' => "'",
        '“' or '”' or '„' or '″' or '«' or '»' => "\"",
        '€' => "EUR",
        '£' => "GBP",
        '©' => "(c)",
        '®' => "(R)",
        '™' => "(TM)",
        'µ' or 'μ' => "u",
        'Ω' or 'Ω' => "Ohm",
        >= 0xC0 and < 0x100 => Latin1[character.Value - 0xC0].ToString(),
        >= 0x100 and < 0x180 => LatinExtended[character.Value - 0x100].ToString(),
        >= 0x300 and < 0x370 => "",
        _ => StackedFraction.Digit(character)?.ToString() ?? "_",
    };

    /// <summary>A vulgar fraction as numerator, slash and denominator; nothing for other characters.</summary>
    public static string? Fraction(Rune character) => character.Value switch
    {
        '½' => "1/2",
        '¼' => "1/4",
        '¾' => "3/4",
        '⅛' => "1/8",
        '⅜' => "3/8",
        '⅝' => "5/8",
        '⅞' => "7/8",
        '⅓' => "1/3",
        '⅔' => "2/3",
        '⅕' => "1/5",
        '⅖' => "2/5",
        '⅗' => "3/5",
        '⅘' => "4/5",
        '⅙' => "1/6",
        '⅚' => "5/6",
        '⅐' => "1/7",
        '⅑' => "1/9",
        '⅒' => "1/10",
        _ => null,
    };
}
