using System.Globalization;
using ShopDrawings.Kernel;

namespace ShopDrawings.Tests.Svg;

/// <summary>Reads the paths we write, arcs by the rules of the standard (SVG 1.1, F.6.5), and turns y up again.</summary>
internal static class SvgPathReader
{
    /// <summary>The lines and arcs of a path of absolute M, L, A and Z, in mm with y up.</summary>
    public static List<Segment> Read(string data)
    {
        var tokens = data.Split(' ');
        var segments = new List<Segment>();
        Point2 start = default, at = default;
        for (var i = 0; i < tokens.Length;)
        {
            var command = tokens[i][0];
            double Next() => double.Parse(tokens[i++].TrimStart(command), CultureInfo.InvariantCulture);
            Point2 Point() => new(Next(), -Next());
            switch (command)
            {
                case 'M':
                    at = start = Point();
                    break;
                case 'L':
                    var end = Point();
                    segments.Add(new(at, end));
                    at = end;
                    break;
                case 'A':
                    var (rx, ry, tilt, large, sweep) = (Next(), Next(), Next(), Next() == 1, Next() == 1);
                    if (rx != ry || tilt != 0) throw new FormatException("not a circle");
                    end = Point();
                    segments.Add(Arc(at, end, rx, large, sweep));
                    at = end;
                    break;
                case 'Z':
                    i++;
                    if (at != start) segments.Add(new(at, start));
                    break;
                default:
                    throw new FormatException(tokens[i]);
            }
        }

        return segments;
    }

    // A radius too small for its ends is enlarged until it fits. The sweep flag turns with y down, so against us.
    private static Segment Arc(Point2 from, Point2 to, double radius, bool large, bool sweep)
    {
        var half = Math.Asin(Math.Min(1, from.DistanceTo(to) / 2 / radius));
        var turn = large ? 2 * Math.PI - 2 * half : 2 * half;
        return new(from, to, Math.Tan(turn / 4) * (sweep ? -1 : 1));
    }
}
