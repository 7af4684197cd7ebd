using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>What templates are printed on. Sizes in mm, upright; a roll's length is as long as needed.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Width">The shorter side, or a roll's width.</param>
/// <param name="Height">The longer side, or nothing for a roll.</param>
public sealed record TemplatePaper(string Name, double Width, double? Height)
{
    /// <summary>A4 (ISO 216).</summary>
    public static TemplatePaper A4 { get; } = new("A4", 210, 297);

    /// <summary>A3 (ISO 216).</summary>
    public static TemplatePaper A3 { get; } = new("A3", 297, 420);

    /// <summary>US Letter, 8 1/2 × 11 in (ASME Y14.1, size A; from memory).</summary>
    public static TemplatePaper Letter { get; } = new("Letter", 215.9, 279.4);

    /// <summary>US Tabloid, 11 × 17 in (ASME Y14.1, size B; from memory).</summary>
    public static TemplatePaper Tabloid { get; } = new("Tabloid", 279.4, 431.8);

    /// <summary>A roll of a width in mm.</summary>
    public static TemplatePaper Roll(double width) => new("roll", width, null);
}

/// <summary>
/// How a printer is off: what it makes of a length divided by what it should be, across and up the page. Drawn lengths are divided by it, so that they come out true.
/// </summary>
/// <param name="X">Across a page that stands upright: 0.996 where the bar of 100 mm measures 99.6.</param>
/// <param name="Y">Up.</param>
public readonly record struct PrinterScale(double X, double Y)
{
    /// <summary>Further off than this no printer is, but a setting that fits pages to paper.</summary>
    public const double Least = 0.95, Greatest = 1.05;

    /// <summary>A printer that is true.</summary>
    public static PrinterScale True { get; } = new(1, 1);

    /// <summary>The same printer for a page that lies on its side, which it prints turned by a quarter.</summary>
    public PrinterScale Turned => new(Y, X);

    /// <summary>Whether both are within what a printer is off by itself.</summary>
    public bool IsSound => X is >= Least and <= Greatest && Y is >= Least and <= Greatest;
}

/// <summary>Which templates are made, and what they are printed on.</summary>
/// <param name="Choice">Which bores they are for.</param>
/// <param name="Paper">The paper.</param>
/// <param name="Printer">How the printer is off.</param>
public sealed record TemplateSettings(TemplateChoice Choice, TemplatePaper Paper, PrinterScale Printer);
