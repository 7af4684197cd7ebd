using System.Globalization;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>
/// Layers of machine drawings, one for each kind of machining. Their names can be read aloud: the face first, then the kind, then sizes
/// in hundredths of a millimetre: <c>INSIDE_BORE_500_DEEP_1200</c> is a 5 mm bore 12 mm deep in the inside face, <c>THRU</c> goes through.
/// </summary>
public static class MachineLayers
{
    /// <summary>The outer edge.</summary>
    public static Layer Outline { get; } = new("OUTLINE", Role.Outline, "Outer edge of the panel");

    /// <summary>Openings.</summary>
    public static Layer CutOut { get; } = new("CUTOUT", Role.CutOut, "Openings through the panel");

    /// <summary>The layer of a bore in a face.</summary>
    public static Layer Of(Bore bore) => new(
        $"{Face(bore.Surface)}_BORE_{Hundredths(bore.Diameter)}_{(bore.Use == BoreUse.Countersink ? $"SINK_{Hundredths(bore.Depth!)}" : Depth(bore.Depth))}", Role.Bore,
        $"{(bore.Use == BoreUse.Countersink ? "Countersinks" : "Bores")} of {Mm(bore.Diameter)}{(bore.Depth is { } depth ? $", {Mm(depth)} deep" : " through")}, from the {Word(bore.Surface)} face");

    /// <summary>The layer of a groove.</summary>
    public static Layer Of(Groove groove) => new(
        $"{Face(groove.Face)}_GROOVE_{Hundredths(groove.Width)}_{Depth(groove.Depth)}", Role.Groove,
        $"Grooves {Mm(groove.Width)} wide, {Mm(groove.Depth)} deep, in the {Word(groove.Face)} face");

    /// <summary>The layer of a mark.</summary>
    public static Layer Of(Mark mark) => new($"{Face(mark.Face)}_MARK", Role.Mark, $"Scribed lines and centres on the {Word(mark.Face)} face");

    private static string Face(Surface face) => Word(face).ToUpperInvariant();

    private static string Word(Surface face) => face == Surface.Inside ? "inside" : "outside";

    private static string Depth(Size? depth) => depth is null ? "THRU" : $"DEEP_{Hundredths(depth)}";

    private static string Hundredths(Size size) => Math.Round(size.Value * 100, MidpointRounding.AwayFromZero).ToString("0", CultureInfo.InvariantCulture);

    private static string Mm(Size size) => Tape.PrintMillimetres(size.Value, 2) + " mm";
}
