using ShopDrawings.Cutting;

namespace ShopDrawings.Tests.Cutting;

/// <summary>
/// Does what the steps say, cut by cut, with nothing but sizes: pieces lie on a rack by their marks, a cut takes one, sets the fence, loses a kerf and puts
/// back what comes of it. It knows no plan and no tree.
/// </summary>
internal sealed class SawSimulator
{
    private readonly Dictionary<string, (long X, long Y)> rack = new(StringComparer.Ordinal);

    /// <summary>Runs the steps over sheets of the given sizes; what finished parts measure, by label.</summary>
    public static Dictionary<string, (long X, long Y)> Run(IEnumerable<(int Number, long Length, long Width)> sheets, IEnumerable<CutStep> steps, Func<CutStep, long> kerf)
    {
        var saw = new SawSimulator();
        var parts = new Dictionary<string, (long X, long Y)>(StringComparer.Ordinal);
        foreach (var (number, length, width) in sheets) saw.rack[$"{number}"] = (length, width);
        foreach (var step in steps) saw.Cut(step, kerf(step), parts);
        return parts;
    }

    private void Cut(CutStep step, long kerf, Dictionary<string, (long X, long Y)> parts)
    {
        Assert.True(rack.Remove(step.Piece, out var piece), $"step {step.Number}: there is no piece {step.Piece}");
        var across = step.Direction == CutDirection.Across;
        Assert.Equal(across, step.Against is PieceEdge.Start or PieceEdge.End);
        var (side, other) = across ? (piece.X, piece.Y) : (piece.Y, piece.X);
        Assert.InRange(step.Setting, 1, side - 1);
        (long, long) Of(long s) => across ? (s, other) : (other, s);

        Put(step.Comes, step.ComesAs, Of(step.Setting), parts);
        var rest = side - step.Setting - kerf;
        if (step.Stays.Length == 0) Assert.True(step.StaysAs == OutcomeKind.Waste, $"step {step.Number} leaves something without a mark");
        else
        {
            Assert.True(rest > 0, $"step {step.Number} leaves {rest} for {step.Stays}");
            Put(step.Stays, step.StaysAs, Of(rest), parts);
        }
    }

    private void Put(string mark, OutcomeKind kind, (long, long) size, Dictionary<string, (long X, long Y)> parts)
    {
        if (kind == OutcomeKind.Part) Assert.True(parts.TryAdd(mark, size), $"{mark} is cut twice");
        else if (kind == OutcomeKind.Piece) Assert.True(rack.TryAdd(mark, size), $"there are two pieces {mark}");
    }
}
