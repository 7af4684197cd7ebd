using System.Globalization;
using CsCheck;

namespace ShopDrawings.Tests.Cabinet;

/// <summary>A plain carcass as a user might write it, in mm, with what it was made from.</summary>
internal sealed record RandomCarcass(double Width, double Height, double Depth, double Board, string Back, double BackBoard, double Inset, int Even, double[] Tops, bool Grain)
{
    private static readonly Gen<double> Sixteenths = Gen.Int[130, 700].Select(n => n * 25.4 / 16);
    private static readonly Gen<double> Tenths = Gen.Int[2000, 11000].Select(n => n / 10.0);
    private static readonly Gen<double> Outside = Gen.OneOf(Sixteenths, Tenths);

    /// <summary>Carcasses of 200 to 1100 mm with every fit of the back and up to four shelves.</summary>
    public static Gen<RandomCarcass> Any { get; } =
        from width in Outside
        from height in Outside
        from depth in Outside
        from board in OneOf(15.9, 18.0, 18.6, 19.05)
        from back in OneOf("none", "groove", "between")
        from thin in OneOf(3.0, 6.35)
        from inset in OneOf(0.0, 9.5, 12.0)
        from even in Gen.Int[0, 3]
        from shares in Gen.Double[0.2, 0.9].Array[0, 2]
        from grain in Gen.Bool
        let tops = even > 0 ? [] : Apart(shares, height, board)
        select new RandomCarcass(width, height, depth, board, back, back == "between" ? board : thin, inset, even, tops, grain);

    /// <summary>The project file, lengths in mm.</summary>
    public string Text => Written("mm", 1);

    /// <summary>The same cabinet in inches.</summary>
    public string TextInInches => Written("in", 25.4);

    /// <summary>The same cabinet with other numbers.</summary>
    private string Written(string unit, double factor)
    {
        string N(double mm) => (mm / factor).ToString("0.###############", CultureInfo.InvariantCulture);
        var back = Back == "none" ? "" : $"\n  back: {{ board: rear, fit: {Back}, inset: {N(Inset)} }}";
        var shelves = Even > 0 ? $"\n  shelves: {Even}" : Tops.Length == 0 ? "" : "\n  shelves:" + string.Concat(Tops.Select(t => $"\n    - top: {N(t)}"));
        return $$"""
            project: Random carcass
            unit: {{unit}}
            boards:
              main: { kind: melamine, thickness: {{N(Board)}}, grain: {{(Grain ? "yes" : "no")}} }
              rear: { kind: hardboard, thickness: {{N(BackBoard)}} }
            cabinet:
              width: {{N(Width)}}
              height: {{N(Height)}}
              depth: {{N(Depth)}}
              board: main
            """ + back + shelves + "\n";
    }

    private static Gen<T> OneOf<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);

    private static double[] Apart(double[] shares, double height, double board)
    {
        var tops = shares.Select(s => Math.Round(board + s * (height - 2 * board), 2)).Order().ToArray();
        return [.. tops.Where((t, i) => t > 2 * board + 20 && t < height - board - 20 && (i == 0 || t - tops[i - 1] > board + 10))];
    }
}
