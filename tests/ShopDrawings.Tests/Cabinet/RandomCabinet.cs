using System.Globalization;
using CsCheck;

namespace ShopDrawings.Tests.Cabinet;

/// <summary>A cabinet as a user might write it, lengths in mm.</summary>
internal sealed record RandomCabinet(
    double Width, double Height, double Depth, double Board, bool TopOver, bool BottomUnder, double Recess,
    string Back, double BackBoard, double Inset, string Doors, bool Divider, int Even, double[] Tops, bool Grain, double Band)
{
    private static readonly Gen<double> Sixteenths = Gen.Int[220, 700].Select(n => n * 25.4 / 16);
    private static readonly Gen<double> Tenths = Gen.Int[3500, 11000].Select(n => n / 10.0);
    private static readonly Gen<double> Outside = Gen.OneOf(Sixteenths, Tenths);

    /// <summary>Cabinets of 350 to 1100 mm with every corner rule, fit of the back and kind of doors, with and without a divider.</summary>
    public static Gen<RandomCabinet> Any { get; } =
        from width in Outside
        from height in Outside
        from depth in Outside
        from board in OneOf(15.9, 18.0, 18.6, 19.05)
        from topOver in Gen.Bool
        from bottom in OneOf("between", "raised", "under")
        from back in OneOf("none", "groove", "between", "within-sides", "behind")
        from thin in OneOf(3.0, 6.35)
        from inset in OneOf(0.0, 9.5, 12.0)
        from doors in OneOf("none", "left", "right", "pair")
        from divider in Gen.Bool
        from even in Gen.Int[0, 2]
        from shares in Gen.Double[0.2, 0.9].Array[0, 2]
        from grain in Gen.Bool
        from band in OneOf(0.0, 0.0, 0.5, 2.0)
        let recess = bottom == "raised" ? 76.2 : 0
        let tops = even > 0 || divider ? [] : Apart(shares, recess, height, board)
        select new RandomCabinet(width, height, depth, board, topOver, bottom == "under", recess,
            back, back is "between" || (back is "within-sides" && topOver && bottom == "under") ? board : thin, back is "behind" ? 0 : inset, doors, divider, divider ? 0 : even, tops, grain, band);

    /// <summary>The project file, lengths in mm.</summary>
    public string Text => Written("mm", 1);

    /// <summary>The same cabinet in inches.</summary>
    public string TextInInches => Written("in", 25.4);

    /// <summary>What it is, in one word an axis, for counts.</summary>
    public IEnumerable<string> Kinds =>
    [
        TopOver ? "top over" : "top between",
        BottomUnder ? "bottom under" : Recess > 0 ? "bottom raised" : "bottom between",
        "back " + Back,
        "doors " + Doors,
        Divider ? "divider" : "no divider",
    ];

    private string Written(string unit, double factor)
    {
        string N(double mm) => (mm / factor).ToString("0.###############", CultureInfo.InvariantCulture);
        var lines = new List<string>
        {
            "project: Random cabinet",
            $"unit: {unit}",
            "boards:",
            $"  main: {{ kind: melamine, thickness: {N(Board)}, grain: {(Grain ? "yes" : "no")} }}",
            $"  rear: {{ kind: hardboard, thickness: {N(BackBoard)} }}",
            "cabinet:",
            $"  width: {N(Width)}",
            $"  height: {N(Height)}",
            $"  depth: {N(Depth)}",
            "  board: main",
            $"  top: {(TopOver ? "over" : "between")}",
            $"  bottom: {(BottomUnder ? "under" : "between")}",
            $"  recess: {N(Recess)}",
        };
        if (Back != "none") lines.Add($"  back: {{ board: rear, fit: {Back}{(Back == "behind" ? "" : $", inset: {N(Inset)}")} }}");
        if (Doors != "none") lines.Add($"  doors: {{ board: main, hang: {Doors} }}");
        if (Band > 0) lines.Add($"  bands: {{ front: {N(Band)} }}");
        if (Divider) lines.Add("  side-by-side: [{ name: west }, { name: east, stacked: [{ name: low }, { name: high }] }]");
        else if (Even > 0) lines.Add($"  shelves: {Even}");
        else if (Tops.Length > 0) lines.AddRange(["  shelves:", .. Tops.Select(t => $"    - top: {N(t)}")]);
        return string.Join('\n', lines) + "\n";
    }

    private static Gen<T> OneOf<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);

    private static double[] Apart(double[] shares, double recess, double height, double board)
    {
        var tops = shares.Select(s => Math.Round(recess + board + s * (height - recess - 2 * board), 2)).Order().ToArray();
        return [.. tops.Where((t, i) => t > recess + 2 * board + 20 && t < height - board - 20 && (i == 0 || t - tops[i - 1] > board + 10))];
    }
}
