namespace ShopDrawings.Cutting;

/// <summary>
/// The linear program over patterns, least price so that every kind is covered and no size is used more often than there is: a primal simplex with the
/// inverse of its basis kept (numbers here steer the search and decide nothing: the bound is taken anew in whole numbers).
/// </summary>
internal sealed class MasterProgram
{
    private const double Tiny = 1e-9;

    private readonly int rows, kinds;
    private readonly double[,] inverse;
    private readonly double[] basic, cost;
    private readonly Pattern?[] basis;
    private readonly int[] limitRow;

    /// <summary>For so many of each kind from these sheets; a piece that no pattern covers costs ten sheets, or what <paramref name="missing"/> says.</summary>
    public MasterProgram(int[] demand, ReadOnlySpan<Workload.Sheet> stock, double[]? missing = null)
    {
        kinds = demand.Length;
        limitRow = new int[stock.Length];
        Array.Fill(limitRow, -1);
        rows = kinds;
        for (var t = 0; t < stock.Length; t++)
            if (stock[t].Count != int.MaxValue) limitRow[t] = rows++;
        (inverse, basic, cost, basis) = (new double[rows, rows], new double[rows], new double[rows], new Pattern?[rows]);
        var dear = 0.0;
        foreach (var s in stock) dear = Math.Max(dear, s.Price);
        for (var r = 0; r < rows; r++) inverse[r, r] = 1;
        // To begin with every piece is missing, and all limits are slack.
        for (var k = 0; k < kinds; k++) (basic[k], cost[k]) = (demand[k], missing?[k] ?? 10 * dear + 1);
        for (var t = 0; t < stock.Length; t++)
            if (limitRow[t] >= 0) basic[limitRow[t]] = stock[t].Count;
    }

    /// <summary>Price of the present mixture.</summary>
    public double Price
    {
        get
        {
            var sum = 0.0;
            for (var r = 0; r < rows; r++) sum += basic[r] * cost[r];
            return sum;
        }
    }

    /// <summary>What one more of each row is worth; kinds first.</summary>
    public double[] Duals()
    {
        var duals = new double[rows];
        for (var r = 0; r < rows; r++)
            if (cost[r] != 0)
                for (var c = 0; c < rows; c++) duals[c] += cost[r] * inverse[r, c];
        return duals;
    }

    /// <summary>What a sheet of a size costs beyond its price because there are few; not negative.</summary>
    public double Scarcity(int stock, double[] duals) => limitRow[stock] < 0 ? 0 : -Math.Min(0, duals[limitRow[stock]]);

    /// <summary>Lets a column in: a pattern at its price, or, without one, a surplus of a kind at none.</summary>
    public bool Enter(Pattern? pattern, double price, int surplus)
    {
        var column = new double[rows];
        for (var r = 0; r < rows; r++)
        {
            var sum = 0.0;
            if (pattern is null) sum = -inverse[r, surplus];
            else
            {
                for (var k = 0; k < kinds; k++)
                    if (pattern.Counts[k] != 0) sum += inverse[r, k] * pattern.Counts[k];
                if (limitRow[pattern.Stock] is >= 0 and var limit) sum += inverse[r, limit];
            }
            column[r] = sum;
        }
        var (leave, least) = (-1, double.MaxValue);
        for (var r = 0; r < rows; r++)
            if (column[r] > Tiny)
            {
                var ratio = Math.Max(0, basic[r]) / column[r];
                if (ratio < least - Tiny || (ratio < least + Tiny && leave >= 0 && column[r] > column[leave])) (leave, least) = (r, ratio);
            }
        if (leave < 0) return false;
        var pivot = column[leave];
        basic[leave] /= pivot;
        for (var c = 0; c < rows; c++) inverse[leave, c] /= pivot;
        for (var r = 0; r < rows; r++)
        {
            var factor = column[r];
            if (r == leave || Math.Abs(factor) < 1e-14) continue;
            basic[r] -= factor * basic[leave];
            for (var c = 0; c < rows; c++) inverse[r, c] -= factor * inverse[leave, c];
        }
        (cost[leave], basis[leave]) = (price, pattern);
        return true;
    }

    /// <summary>The patterns in use and how often each.</summary>
    public IEnumerable<(Pattern Pattern, double Times)> Mixture()
    {
        for (var r = 0; r < rows; r++)
            if (basis[r] is { } pattern && basic[r] > Tiny) yield return (pattern, basic[r]);
    }
}
