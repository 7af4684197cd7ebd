namespace ShopDrawings.Kernel;

/// <summary>Finds the nearest place at which nothing is in the way.</summary>
internal static class Dodging
{
    // Places that had to move stand on whole millimetres beside the wanted one.
    private const double Step = 1;

    /// <summary>The wanted place if it is free, else the nearest one that is; its derivation names what it moved clear of.</summary>
    /// <param name="wanted">Where it would stand, in mm.</param>
    /// <param name="low">Lowest place allowed.</param>
    /// <param name="high">Highest place allowed.</param>
    /// <param name="isUpFirst">Whether of two places equally far the higher one is taken.</param>
    /// <param name="obstacle">What is in the way of a place, by its id, or nothing.</param>
    /// <param name="furthest">How far it may move.</param>
    /// <returns>Nothing where no place is free.</returns>
    public static Size? Nearest(Size wanted, double low, double high, bool isUpFirst, Func<double, string?> obstacle, double furthest = double.PositiveInfinity)
    {
        if (obstacle(wanted.Value) is not { } met) return wanted;
        for (var distance = Step; distance <= furthest && (wanted.Value + distance <= high || wanted.Value - distance >= low); distance += Step)
            foreach (var shift in isUpFirst ? new[] { distance, -distance } : [-distance, distance])
            {
                var place = wanted.Value + shift;
                if (place < low - Tolerance.Length || place > high + Tolerance.Length || obstacle(place) is not null) continue;
                return (shift > 0 ? wanted + Size.Constant(shift) : wanted - Size.Constant(-shift)).As($"moved-clear-of-{met}");
            }

        return null;
    }
}
