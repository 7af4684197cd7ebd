using System.Collections.Immutable;
using System.Globalization;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>Bores of one kind in a face in one line at even distances, and the lines beside it that hold the same places.</summary>
/// <param name="IsAlong">Whether it runs along the panel, else across.</param>
/// <param name="From">The first bore's place along the row.</param>
/// <param name="To">The last one's.</param>
/// <param name="Spaces">How many distances there are, one less than bores.</param>
/// <param name="Radius">Radius of the bores.</param>
/// <param name="Lines">Where the row and its like lie, the other coordinate.</param>
internal sealed record PitchRow(bool IsAlong, double From, double To, int Spaces, double Radius, ImmutableArray<double> Lines)
{
    /// <summary>The fewest bores that count as a row, here and in the list.</summary>
    public const int Least = 4;

    private double Pitch => (To - From) / Spaces;

    /// <summary>Spaces, pitch and total in the manner of ISO 129-1 (from memory): <c>8 × 32 (= 256)</c>.</summary>
    public string Text(LengthStyle lengths) => string.Create(CultureInfo.InvariantCulture, $"{Spaces} × {lengths.PrintPlace(Pitch)} (= {lengths.PrintPlace(To - From)})");

    /// <summary>Whether a place along the row is one of its bores but neither the first nor the last.</summary>
    public bool IsBetween(double at)
    {
        var steps = (at - From) / Pitch;
        var nearest = Math.Round(steps);
        return nearest > 0 && nearest < Spaces && Math.Abs(steps - nearest) * Pitch <= Tolerance.Length;
    }

    /// <summary>How many places from the first stand at even distances; 0 where they are too few for a row. Places in order.</summary>
    public static int EvenFrom(ReadOnlySpan<double> at)
    {
        if (at.Length < Least) return 0;
        var count = 2;
        // Measured over the whole run, so that no small error adds up.
        while (count < at.Length && IsEven(at[..(count + 1)])) count++;
        return count < Least ? 0 : count;
    }

    private static bool IsEven(ReadOnlySpan<double> at)
    {
        var pitch = (at[^1] - at[0]) / (at.Length - 1);
        for (var i = 0; i < at.Length; i++)
            if (Math.Abs(at[i] - at[0] - i * pitch) > Tolerance.Length) return false;
        return pitch > Tolerance.Length;
    }

    /// <summary>The rows of a panel whose pitch is printed exactly; a rounded one would add up its error from hole to hole.</summary>
    public static ImmutableArray<PitchRow> Find(IEnumerable<FeatureGroup> groups, LengthStyle lengths)
    {
        var rows = new List<PitchRow>();
        foreach (var group in groups)
        {
            ImmutableArray<Bore> bores = [.. group.Features.OfType<Bore>().Where(b => b.Surface.IsFace())];
            rows.AddRange(Of(bores, true));
            rows.AddRange(Of(bores, false));
        }

        return
        [
            .. rows.Where(r => !r.Text(lengths).Contains(Tape.RoundedMark, StringComparison.Ordinal))
                .GroupBy(r => (r.IsAlong, Key(r.From), Key(r.To), r.Spaces))
                .Select(g => g.First() with { Radius = g.Max(r => r.Radius), Lines = [.. g.SelectMany(r => r.Lines).Distinct().Order()] }),
        ];
    }

    private static IEnumerable<PitchRow> Of(ImmutableArray<Bore> bores, bool isAlong)
    {
        double Along(Bore b) => isAlong ? b.At.X.Value : b.At.Y.Value;
        double Across(Bore b) => isAlong ? b.At.Y.Value : b.At.X.Value;
        foreach (var line in bores.GroupBy(b => Key(Across(b))).OrderBy(g => g.Key))
        {
            double[] at = [.. line.Select(Along).Order()];
            var (across, radius) = (Across(line.First()), line.First().Diameter.Value / 2);
            for (var start = 0; start < at.Length;)
            {
                var count = EvenFrom(at.AsSpan(start));
                if (count > 0) yield return new(isAlong, at[start], at[start + count - 1], count - 1, radius, [across]);
                start += Math.Max(1, count);
            }
        }
    }

    private static long Key(double mm) => (long)Math.Round(mm * 1e4);
}
