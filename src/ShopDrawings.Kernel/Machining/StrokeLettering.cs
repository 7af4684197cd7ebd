using System.Collections.Immutable;
using System.Globalization;

namespace ShopDrawings.Kernel;

/// <summary>
/// Lettering of single strokes for engraving, in an upright alphabet of our own. Capitals only: small letters are engraved as capitals,
/// accented ones as their base letter, other characters as a workshop writes them in ASCII (⌀5 as D5, ½ as 1/2), and what has no likeness as a
/// stroke below the line. Letters stand 5/18 of their height apart, words 12/18 (2/10 and 6/10 in ISO 3098,
/// from memory, for a line of a tenth of the height). Thread-safe.
/// </summary>
public static class StrokeLettering
{
    // Height of the capitals in the grid the alphabet is declared on.
    private const int Capitals = 18;

    // Blank between two letters, in grid units.
    private const int Gap = 5;

    // Six chords for a quarter round: on half the height they stay within 0.5 % of the height of the true curve.
    private const int Chords = 6;

    // Width, then the strokes, parted by semicolons: points of the grid from the left end of the base line. A point in brackets is not on the
    // stroke but a corner that it rounds from the point before to the point after, touching both sides, with a quarter of an ellipse.
    private static readonly ImmutableDictionary<char, Glyph> Alphabet = ImmutableDictionary.CreateRange(new KeyValuePair<char, Glyph>[]
    {
        new(' ', new(2, "")),
        new('A', new(12, "0,0 6,18 12,0; 2,6 10,6")),
        new('B', new(11, "0,0 0,18 6,18 (10,18) 10,14 (10,10) 6,10 0,10; 6,10 (11,10) 11,5 (11,0) 6,0 0,0")),
        new('C', new(12, "12,14 (10,18) 6,18 (0,18) 0,12 0,6 (0,0) 6,0 (10,0) 12,4")),
        new('D', new(12, "0,0 0,18 5,18 (12,18) 12,11 12,7 (12,0) 5,0 0,0")),
        new('E', new(10, "10,18 0,18 0,0 10,0; 0,10 8,10")),
        new('F', new(10, "0,0 0,18 10,18; 0,10 8,10")),
        new('G', new(12, "12,14 (10,18) 6,18 (0,18) 0,12 0,6 (0,0) 6,0 (12,0) 12,6 12,8 7,8")),
        new('H', new(12, "0,0 0,18; 12,0 12,18; 0,10 12,10")),
        new('I', new(0, "0,0 0,18")),
        new('J', new(8, "8,18 8,4 (8,0) 4,0 (0,0) 0,4")),
        new('K', new(11, "0,0 0,18; 11,18 0,7; 4,11 11,0")),
        new('L', new(9, "0,18 0,0 9,0")),
        new('M', new(14, "0,0 0,18 7,6 14,18 14,0")),
        new('N', new(12, "0,0 0,18 12,0 12,18")),
        new('O', new(12, "6,18 (0,18) 0,12 0,6 (0,0) 6,0 (12,0) 12,6 12,12 (12,18) 6,18")),
        new('P', new(11, "0,0 0,18 6,18 (11,18) 11,13 (11,8) 6,8 0,8")),
        new('Q', new(12, "6,18 (0,18) 0,12 0,6 (0,0) 6,0 (12,0) 12,6 12,12 (12,18) 6,18; 7,5 12,0")),
        new('R', new(11, "0,0 0,18 6,18 (11,18) 11,13 (11,8) 6,8 0,8; 5,8 11,0")),
        new('S', new(10, "10,14 (9,18) 5,18 (0,18) 0,14 (0,11) 5,9 (10,7) 10,4 (10,0) 5,0 (1,0) 0,4")),
        new('T', new(12, "0,18 12,18; 6,18 6,0")),
        new('U', new(12, "0,18 0,6 (0,0) 6,0 (12,0) 12,6 12,18")),
        new('V', new(12, "0,18 6,0 12,18")),
        new('W', new(18, "0,18 5,0 9,14 13,0 18,18")),
        new('X', new(12, "0,0 12,18; 0,18 12,0")),
        new('Y', new(12, "0,18 6,9 12,18; 6,9 6,0")),
        new('Z', new(11, "0,18 11,18 0,0 11,0")),
        new('0', new(10, "5,18 (0,18) 0,13 0,5 (0,0) 5,0 (10,0) 10,5 10,13 (10,18) 5,18; 3,5 7,13")),
        new('1', new(5, "0,14 5,18 5,0")),
        new('2', new(10, "0,13 (0,18) 5,18 (10,18) 10,13 (10,10) 8,8 0,0 10,0")),
        new('3', new(10, "0,14 (1,18) 5,18 (9,18) 9,14 (9,10) 5,10 3,10; 5,10 (10,10) 10,5 (10,0) 5,0 (1,0) 0,4")),
        new('4', new(11, "8,0 8,18 0,6 11,6")),
        new('5', new(10, "9,18 1,18 0,9 (2,12) 5,12 (10,12) 10,6 (10,0) 5,0 (1,0) 0,4")),
        new('6', new(10, "8,18 (0,14) 0,6 (0,0) 5,0 (10,0) 10,5 (10,11) 5,11 (1,11) 0,6")),
        new('7', new(10, "0,18 10,18 4,0")),
        new('8', new(10, "5,10 (1,10) 1,14 (1,18) 5,18 (9,18) 9,14 (9,10) 5,10 (0,10) 0,5 (0,0) 5,0 (10,0) 10,5 (10,10) 5,10")),
        new('9', new(10, "2,0 (10,4) 10,12 (10,18) 5,18 (0,18) 0,13 (0,7) 5,7 (9,7) 10,12")),
        new('-', new(8, "0,9 8,9")),
        new('_', new(10, "0,-2 10,-2")),
        new('.', new(1, "0,0 1,0 1,1 0,1 0,0")),
        new(',', new(1, "1,1 0,-3")),
        new('/', new(9, "0,0 9,18")),
        new('+', new(10, "0,9 10,9; 5,4 5,14")),
        new('(', new(4, "4,18 (0,15) 0,9 (0,3) 4,0")),
        new(')', new(4, "0,18 (4,15) 4,9 (4,3) 0,0")),
        new('&', new(13, "13,0 3,12 (2,13) 2,14 (2,18) 5,18 (9,18) 9,14 (9,11) 5,9 (0,7) 0,4 (0,0) 5,0 (10,0) 12,8")),
        new('\'', new(0, "0,18 0,14")),
        new('"', new(4, "0,18 0,14; 4,18 4,14")),
        new(':', new(1, "0,3 1,3 1,4 0,4 0,3; 0,12 1,12 1,13 0,13 0,12")),
    });

    /// <summary>The strokes of a line of text in mm, letter by letter: polylines of two or more points, no point twice in succession.</summary>
    /// <param name="text">The text.</param>
    /// <param name="at">Left end of the base line, in mm.</param>
    /// <param name="height">Height of the capitals in mm; a comma reaches a sixth of it below the base line.</param>
    /// <exception cref="ArgumentOutOfRangeException">The height is not a positive number.</exception>
    public static ImmutableArray<ImmutableArray<Point2>> Strokes(string text, Point2 at, double height)
    {
        var unit = Unit(height);
        var strokes = ImmutableArray.CreateBuilder<ImmutableArray<Point2>>();
        var from = at;
        foreach (var glyph in Glyphs(text))
        {
            foreach (var stroke in glyph.Strokes) strokes.Add([.. stroke.Select(p => from + p * unit)]);
            from += new Point2(glyph.Advance * unit, 0);
        }

        return strokes.ToImmutable();
    }

    /// <summary>The width of a line of text in mm: the sum of its letters, each with the blank after it.</summary>
    /// <param name="text">The text.</param>
    /// <param name="height">Height of the capitals in mm.</param>
    /// <exception cref="ArgumentOutOfRangeException">The height is not a positive number.</exception>
    public static double Width(string text, double height) => Glyphs(text).Sum(g => g.Advance) * Unit(height);

    private static double Unit(double height) => height > 0 && double.IsFinite(height) ? height / Capitals : throw new ArgumentOutOfRangeException(nameof(height), height, "Lettering needs a height.");

    private static IEnumerable<Glyph> Glyphs(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return PlainText.Ascii(text).Select(c => Alphabet.GetValueOrDefault(char.ToUpperInvariant(c)) ?? Alphabet['_']);
    }

    /// <summary>A character: its strokes on the grid, and how far the next one stands from it.</summary>
    private sealed class Glyph(int width, string strokes)
    {
        /// <summary>From its left to the left of the next, in grid units.</summary>
        public int Advance { get; } = width + Gap;

        /// <summary>Its strokes in grid units, rounds as chords.</summary>
        public ImmutableArray<ImmutableArray<Point2>> Strokes { get; } = [.. strokes.Split("; ", StringSplitOptions.RemoveEmptyEntries).Select(Stroke)];

        private static ImmutableArray<Point2> Stroke(string declared)
        {
            var places = declared.Split(' ');
            var points = ImmutableArray.CreateBuilder<Point2>();
            for (var i = 0; i < places.Length; i++)
            {
                if (!places[i].StartsWith('(')) points.Add(Place(places[i]));
                else points.AddRange(Round(Place(places[i - 1]), Place(places[i].Trim('(', ')')), Place(places[i + 1])));
            }

            return points.ToImmutable();
        }

        // The image of a quarter circle: it leaves the one side of the corner and arrives on the other. Ends left out.
        private static IEnumerable<Point2> Round(Point2 from, Point2 corner, Point2 to) =>
            Enumerable.Range(1, Chords - 1).Select(i => i * Math.PI / 2 / Chords)
                .Select(angle => corner + (from - corner) * (1 - Math.Sin(angle)) + (to - corner) * (1 - Math.Cos(angle)));

        private static Point2 Place(string declared)
        {
            var comma = declared.IndexOf(',');
            return new(int.Parse(declared.AsSpan(0, comma), CultureInfo.InvariantCulture), int.Parse(declared.AsSpan(comma + 1), CultureInfo.InvariantCulture));
        }
    }
}
