using System.Globalization;
using ShopDrawings.Kernel;
using ShopDrawings.Tests.Joints;

namespace ShopDrawings.Tests.Hardware;

/// <summary>Cabinets to fix hardware in, 600 wide and 700 high, and what of them is compared with numbers worked by hand.</summary>
internal static class InACabinet
{
    /// <summary>A cabinet of one board; sheets called <c>thin</c> (6 mm) beside it.</summary>
    public static Design Of(double t, double depth, string keys, string parts = "") => Fixtures.DesignOf(
        $$$"""
        project: Hardware
        boards: {main: {kind: melamine, thickness: {{{t.ToString(CultureInfo.InvariantCulture)}}}}, thin: {kind: plywood, thickness: 6}}
        cabinet: {width: 600, height: 700, depth: {{{depth.ToString(CultureInfo.InvariantCulture)}}}, board: main, {{{keys}}}}
        {{{parts}}}
        """);

    /// <summary>The bores some piece of hardware or joint wrote, one line each, in order.</summary>
    public static string[] Bores(this Design design, string origin) =>
        [.. Hole.Of(design.Assembly).Where(h => h.Bore.Origin == origin).Select(h => h.ToString()).Order(StringComparer.Ordinal)];

    /// <summary>The block a panel fills: from and to along x, y and z.</summary>
    public static double[] Block(this Design design, string id)
    {
        var panel = design.Assembly.Panel(id);
        var box = panel.Placement!.ToAssembly(panel.Box);
        return [.. new[] { box.Min.X, box.Max.X, box.Min.Y, box.Max.Y, box.Min.Z, box.Max.Z }.Select(v => Math.Round(v, 6))];
    }

    /// <summary>A size of a piece of hardware.</summary>
    public static double SizeOf(this Design design, string hardware, string rule) => Math.Round(design.Assembly.Hardware.Single(h => h.Id == hardware).Size(rule)!.Value, 9);

    /// <summary>What the checks say that is worse than a note.</summary>
    public static IEnumerable<string> Faults(this Design design) => Shop.Check(design).Where(f => f.Severity != Severity.Note).Select(f => f.Message);

    /// <summary>Compares lines whatever their order.</summary>
    public static void Same(IEnumerable<string> byHand, IEnumerable<string> bores) => Assert.Equal(byHand.Order(StringComparer.Ordinal), bores.Order(StringComparer.Ordinal));
}
