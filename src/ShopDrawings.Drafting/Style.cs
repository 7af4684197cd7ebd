namespace ShopDrawings.Drafting;

/// <summary>A line type of ISO 128-2.</summary>
public enum LinePattern
{
    /// <summary>Unbroken.</summary>
    Continuous,

    /// <summary>Dashes: hidden edges.</summary>
    Dashed,

    /// <summary>Long dash and dot: centre lines.</summary>
    Chain,

    /// <summary>Long dash and two dots: adjacent parts and extreme positions of moving ones.</summary>
    DoubleDotChain,
}

/// <summary>How a role looks.</summary>
/// <param name="WidthMm">Line width in mm.</param>
/// <param name="Pattern">Line type.</param>
/// <param name="ColourIndex">Colour number of the DXF format, 1 to 255; 7 is black on white.</param>
/// <param name="Colour">Colour as <c>#rrggbb</c>.</param>
public sealed record Pen(double WidthMm, LinePattern Pattern, int ColourIndex, string Colour)
{
    /// <summary>Dashes and gaps by turns in mm, none for an unbroken line. ISO 128-2 gives them in line widths (from memory): dash 12, long dash 24, gap 3, dot up to 0.5.</summary>
    internal double[] Dashes => Pattern switch
    {
        LinePattern.Dashed => [12 * WidthMm, 3 * WidthMm],
        LinePattern.Chain => [24 * WidthMm, 3 * WidthMm, 0.5 * WidthMm, 3 * WidthMm],
        LinePattern.DoubleDotChain => [24 * WidthMm, 3 * WidthMm, 0.5 * WidthMm, 3 * WidthMm, 0.5 * WidthMm, 3 * WidthMm],
        _ => [],
    };

    /// <summary>The colour's shares, 0 to 255 each.</summary>
    /// <exception cref="FormatException">The colour is not of its form.</exception>
    internal (byte Red, byte Green, byte Blue) Rgb => Convert.FromHexString(Colour.AsSpan(1)) is [var red, var green, var blue]
        ? (red, green, blue)
        : throw new FormatException($"“{Colour}” is no colour of the form #rrggbb.");
}

/// <summary>How every role looks: the one value an exporter is given.</summary>
public sealed class Style
{
    private readonly Func<Role, Pen> pens;

    private Style(Func<Role, Pen> pens) => this.pens = pens;

    /// <summary>Black on white with two widths, 1:2 (ISO 128-2, series 0.25 and 0.5, from memory); warnings in red, grooves and bores told apart by colour.</summary>
    public static Style Standard { get; } = new(role => role switch
    {
        Role.Outline => new(0.5, LinePattern.Continuous, 7, "#000000"),
        Role.CutOut => new(0.5, LinePattern.Continuous, 30, "#000000"),
        Role.Bore => new(0.25, LinePattern.Continuous, 5, "#000000"),
        Role.Countersink => new(0.25, LinePattern.Continuous, 150, "#000000"),
        Role.Groove => new(0.25, LinePattern.Continuous, 3, "#000000"),
        Role.Mark or Role.Score or Role.Name => new(0.25, LinePattern.Continuous, 6, "#000000"),
        Role.NoTool => new(0.25, LinePattern.Dashed, 1, "#c00000"),
        Role.Tab => new(0.5, LinePattern.Continuous, 1, "#000000"),
        Role.Pin => new(0.25, LinePattern.Continuous, 200, "#000000"),
        Role.EdgeView or Role.Reference or Role.ScaleSquare => new(0.25, LinePattern.Continuous, 8, "#000000"),
        Role.EdgeBore => new(0.25, LinePattern.Continuous, 5, "#000000"),
        Role.Hidden => new(0.25, LinePattern.Dashed, 8, "#000000"),
        Role.Centre => new(0.25, LinePattern.Chain, 4, "#000000"),
        Role.VisibleEdge => new(0.35, LinePattern.Continuous, 7, "#000000"),
        Role.Phantom => new(0.25, LinePattern.DoubleDotChain, 8, "#000000"),
        Role.CuttingPlane => new(0.5, LinePattern.Continuous, 4, "#000000"),
        Role.Hardware => new(0.25, LinePattern.Continuous, 5, "#000000"),
        Role.Hatching => new(0.13, LinePattern.Continuous, 8, "#000000"),
        Role.Dimension => new(0.25, LinePattern.Continuous, 2, "#000000"),
        Role.Lettering => new(0.25, LinePattern.Continuous, 7, "#000000"),
        Role.Frame => new(0.7, LinePattern.Continuous, 7, "#000000"),
        Role.Warning => new(0.5, LinePattern.Continuous, 1, "#c00000"),
        _ => throw new ArgumentOutOfRangeException(nameof(role)),
    });

    /// <summary>The same with the two widths of ASME Y14.2 (from memory): 0.6 mm for edges, frames and warnings, 0.3 mm for everything else.</summary>
    public static Style Asme { get; } = new(role => Standard.For(role) is { WidthMm: var width } pen ? pen with { WidthMm = width >= 0.35 ? 0.6 : 0.3 } : throw new ArgumentOutOfRangeException(nameof(role)));

    /// <summary>Half the size in mm of the cross that shows a point.</summary>
    internal const double PointReach = 1;

    /// <summary>The pen of a role.</summary>
    public Pen For(Role role) => pens(role);

    /// <summary>The same style with one role drawn otherwise.</summary>
    public Style With(Role role, Pen pen) => new(r => r == role ? pen : For(r));
}
