using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using ShopDrawings.Kernel;

namespace ShopDrawings.Tests.Print;

/// <summary>The paths on the first page of a PDF of ours, read from its operators, in mm from the lower left corner of the paper.</summary>
internal static partial class PdfContent
{
    private const int StepsOfCurve = 64;

    /// <summary>The operators of the first page.</summary>
    public static string Of(byte[] pdf)
    {
        var text = Encoding.Latin1.GetString(pdf);
        var start = text.IndexOf("stream\n", StringComparison.Ordinal) + "stream\n".Length;
        return text[start..text.IndexOf("endstream", StringComparison.Ordinal)];
    }

    /// <summary>The points of every path part, curves followed in steps.</summary>
    public static List<List<Point2>> Paths(byte[] pdf)
    {
        var paths = new List<List<Point2>>();
        foreach (Match match in Operator().Matches(Of(pdf)))
        {
            var n = match.Groups["numbers"].Value.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(t => double.Parse(t, CultureInfo.InvariantCulture)).ToArray();
            switch (match.Groups["operator"].Value)
            {
                case "m":
                    paths.Add([new(n[0], n[1])]);
                    break;
                case "l":
                    paths[^1].Add(new(n[0], n[1]));
                    break;
                case "c":
                    var (a, b, c, d) = (paths[^1][^1], new Point2(n[0], n[1]), new Point2(n[2], n[3]), new Point2(n[4], n[5]));
                    for (var i = 1; i <= StepsOfCurve; i++)
                    {
                        var (t, u) = (i / (double)StepsOfCurve, 1 - i / (double)StepsOfCurve);
                        paths[^1].Add(a * (u * u * u) + b * (3 * u * u * t) + c * (3 * u * t * t) + d * (t * t * t));
                    }

                    break;
                default:
                    paths[^1].Add(paths[^1][0]);
                    break;
            }
        }

        return paths;
    }

    /// <summary>The length of a path part in mm.</summary>
    public static double Length(List<Point2> path) => path.Zip(path.Skip(1), (a, b) => a.DistanceTo(b)).Sum();

    [GeneratedRegex(@"^(?<numbers>(-?[\d.]+ )*)(?<operator>[mlch])$", RegexOptions.Multiline)]
    private static partial Regex Operator();
}
