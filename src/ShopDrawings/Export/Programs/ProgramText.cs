using System.Globalization;
using System.Text;
using ShopDrawings.Kernel;

namespace ShopDrawings;

/// <summary>
/// The lines of a program: ASCII, capitals, lines end with LF. Numbers of places always carry a decimal point, since some controls count bare ones in
/// thousandths. Knows where the tool is as the control does, rounded, so that arcs close.
/// </summary>
internal sealed class ProgramText(bool isInches, bool hasLineNumbers)
{
    private const int LongestComment = 68;

    private readonly StringBuilder text = new();
    private int line;

    // What the control believes, in its own unit; nothing before the first move.
    private double? x, y, z;

    /// <summary>Whether it counts in inches, else in mm.</summary>
    public bool IsInches => isInches;

    /// <summary>The file so far.</summary>
    public override string ToString() => text.ToString();

    /// <summary>A line as it is, without a number.</summary>
    public void Bare(string words) => text.Append(words).Append('\n');

    /// <summary>A block of words.</summary>
    public void Block(string words)
    {
        line = line >= 99990 ? 10 : line + 10;
        Bare(hasLineNumbers ? string.Create(CultureInfo.InvariantCulture, $"N{line} {words}") : words);
    }

    /// <summary>A comment on lines of its own, each short enough for old controls.</summary>
    public void Comment(string said)
    {
        foreach (var each in Wrapped(Plain(said))) Bare($"({each})");
    }

    /// <summary>A text as a comment may hold it: ASCII, capitals, no brackets that would end it and no percent sign that would end the program.</summary>
    public static string Plain(string said) =>
        string.Concat(PlainText.Ascii(said).ToUpperInvariant().Select(c => c switch { '(' => '[', ')' => ']', ';' => ',', '%' or '~' => '-', < ' ' or > '~' => ' ', _ => c }));

    /// <summary>A rapid move across at the height the tool is at.</summary>
    public void Across(Point2 to)
    {
        var (toX, toY) = (Rounded(to.X), Rounded(to.Y));
        if (x == toX && y == toY) return;
        Block($"G0 X{Word(toX)} Y{Word(toY)}");
        (x, y) = (toX, toY);
    }

    /// <summary>A rapid move up or down.</summary>
    public void Height(double to)
    {
        if (z == Rounded(to)) return;
        z = Rounded(to);
        Block($"G0 Z{Word(z.Value)}");
    }

    /// <summary>A feed move up or down.</summary>
    public void Plunge(double to, double feed)
    {
        if (z == Rounded(to)) return;
        z = Rounded(to);
        Block($"G1 Z{Word(z.Value)} F{Rate(feed)}");
    }

    /// <summary>A feed move along a line or an arc that begins where the tool is.</summary>
    public void Along(Segment segment, double feed)
    {
        // An arc that rises less than this above its chord is a line: its centre would be too far off to be written.
        const double LeastRise = 0.0005;
        var (toX, toY) = (Rounded(segment.End.X), Rounded(segment.End.Y));
        if (x == toX && y == toY) return;
        if (segment.IsLine || Math.Abs(segment.Bulge) * segment.Start.DistanceTo(segment.End) / 2 < LeastRise) Block($"G1 X{Word(toX)} Y{Word(toY)} F{Rate(feed)}");
        else
        {
            var centre = segment.Centre;
            Block($"{(segment.Bulge > 0 ? "G3" : "G2")} X{Word(toX)} Y{Word(toY)} I{Word(Rounded(Rounded(centre.X) - x!.Value, isReckoned: true))} J{Word(Rounded(Rounded(centre.Y) - y!.Value, isReckoned: true))} F{Rate(feed)}");
        }

        (x, y) = (toX, toY);
    }

    /// <summary>Bores of one tool and depth as one cycle, from and back to the height the tool is at.</summary>
    public void Cycle(IReadOnlyList<Point2> places, double depth, double clearance, double? peck, double feed)
    {
        Across(places[0]);
        var way = peck is { } step ? $"G83 {{0}} Z{Word(Rounded(depth))} R{Word(Rounded(clearance))} Q{Word(Rounded(step))} F{Rate(feed)}" : $"G81 {{0}} Z{Word(Rounded(depth))} R{Word(Rounded(clearance))} F{Rate(feed)}";
        for (var i = 0; i < places.Count; i++)
        {
            (x, y) = (Rounded(places[i].X), Rounded(places[i].Y));
            var place = $"X{Word(x.Value)} Y{Word(y.Value)}";
            Block(i == 0 ? "G98 " + string.Format(CultureInfo.InvariantCulture, way, place) : place);
        }

        Block("G80");
    }

    /// <summary>Forgets where the tool is: it was changed, and its length may have.</summary>
    public void Forget() => (x, y, z) = (null, null, null);

    /// <summary>A length as comments print it.</summary>
    public string Print(double mm) => (isInches ? mm / 25.4 : mm).ToString(isInches ? "0.####" : "0.###", CultureInfo.InvariantCulture);

    /// <summary>A feed in the program's unit a minute.</summary>
    public string Rate(double feed) => (isInches ? feed / 25.4 : feed).ToString(isInches ? "0.0" : "0.#", CultureInfo.InvariantCulture);

    // 0.0001 mm, or 0.00001 in, which is 0.00025 mm.
    private double Rounded(double value, bool isReckoned = false) => Math.Round(isInches && !isReckoned ? value / 25.4 : value, isInches ? 5 : 4);

    private string Word(double value) => (value == 0 ? 0 : value).ToString(isInches ? "0.0####" : "0.0###", CultureInfo.InvariantCulture);

    // The mark before what goes on keeps words of the user's from the start of a comment, where some controls take them for orders.
    private static IEnumerable<string> Wrapped(string said)
    {
        var rest = said.Trim();
        while (rest.Length > LongestComment)
        {
            var at = rest.LastIndexOf(' ', LongestComment);
            if (at <= 2) at = LongestComment;
            yield return rest[..at].TrimEnd();
            rest = "- " + rest[at..].TrimStart();
        }

        yield return rest;
    }
}
