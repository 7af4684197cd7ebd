namespace ShopDrawings.Cutting;

/// <summary>
/// A linear program over patterns so that every kind is covered: a primal simplex with the inverse of its basis kept (numbers here steer the search and decide
/// nothing: bounds are taken anew in whole numbers). Its aim is the least price, with no size used more often than there is, or
/// (<see cref="ForMultiple"/>) the least multiple of given sheets: less than one where a mixture of patterns needs not all of them.
/// </summary>
internal sealed class MasterProgram
{
    private const double Tiny = 1e-9;

    private readonly int rows, kinds;
    private readonly double[,] inverse;
    private readonly double[] basic, cost;
    private readonly Pattern?[] basis;
    private readonly int[] limitRow;

    // The sheets whose multiple is sought; null where prices count.
    private readonly int[]? sheets;

    // A piece that no pattern covers costs what `missing` says; sizes are limited where a limit is not the largest number.
    private MasterProgram(int[] demand, double[] missing, int[] limits, int[]? sheets)
    {
        (kinds, this.sheets) = (demand.Length, sheets);
        limitRow = new int[limits.Length];
        Array.Fill(limitRow, -1);
        rows = kinds;
        for (var t = 0; t < limits.Length; t++)
            if (limits[t] != int.MaxValue) limitRow[t] = rows++;
        (inverse, basic, cost, basis) = (new double[rows, rows], new double[rows], new double[rows], new Pattern?[rows]);
        for (var r = 0; r < rows; r++) inverse[r, r] = 1;
        // To begin with every piece is missing, and all limits are slack.
        for (var k = 0; k < kinds; k++) (basic[k], cost[k]) = (demand[k], missing[k]);
        for (var t = 0; t < limits.Length; t++)
            if (limitRow[t] >= 0) basic[limitRow[t]] = limits[t];
    }

    /// <summary>For so many of each kind at the least price from this stock; a piece that no pattern covers costs ten sheets.</summary>
    public static MasterProgram ForPrice(int[] demand, ReadOnlySpan<Workload.Sheet> stock)
    {
        var (dear, limits) = (0.0, new int[stock.Length]);
        for (var t = 0; t < limits.Length; t++) (dear, limits[t]) = (Math.Max(dear, stock[t].Price), stock[t].Count);
        return new MasterProgram(demand, [.. demand.Select(_ => 10 * dear + 1)], limits, null);
    }

    /// <summary>For so many of each kind from the least multiple of these sheets; a piece that no pattern covers costs so many multiples.</summary>
    public static MasterProgram ForMultiple(int[] demand, int[] sheets, double[] missing) => new(demand, missing, new int[sheets.Length], sheets);

    /// <summary>Price of the present mixture, or the multiple of the sheets.</summary>
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

    /// <summary>What a pattern at a price would gain.</summary>
    public double Gain(Pattern pattern, double price, double[] duals)
    {
        var worth = -price - Scarcity(pattern.Stock, duals);
        for (var k = 0; k < kinds; k++)
            if (pattern.Counts[k] != 0) worth += duals[k] * pattern.Counts[k];
        return worth;
    }

    /// <summary>Lets a pattern in at its price.</summary>
    public bool Enter(Pattern pattern, double price)
    {
        var entries = new double[rows];
        for (var k = 0; k < kinds; k++) entries[k] = pattern.Counts[k];
        if (limitRow[pattern.Stock] is >= 0 and var limit) entries[limit] = 1;
        return Enter(entries, price, pattern);
    }

    /// <summary>Lets a surplus of a kind in.</summary>
    public bool EnterSurplus(int kind)
    {
        var entries = new double[rows];
        entries[kind] = -1;
        return Enter(entries, 0, null);
    }

    /// <summary>Lets in whatever is no pattern and helps; false where nothing does.</summary>
    public bool Settle()
    {
        var entered = false;
        var duals = Duals();
        if (sheets is not null)
        {
            var gain = -1.0;
            for (var t = 0; t < sheets.Length; t++) gain -= sheets[t] * duals[limitRow[t]];
            if (gain > Tiny)
            {
                var entries = new double[rows];
                for (var t = 0; t < sheets.Length; t++) entries[limitRow[t]] = -sheets[t];
                if (Enter(entries, 1, null)) (entered, duals) = (true, Duals());
            }
        }
        for (var k = 0; k < kinds; k++)
            if (duals[k] < -Tiny && EnterSurplus(k)) (entered, duals) = (true, Duals());
        foreach (var row in limitRow)
        {
            if (row < 0 || duals[row] <= Tiny) continue;
            var entries = new double[rows];
            entries[row] = 1;
            if (Enter(entries, 0, null)) (entered, duals) = (true, Duals());
        }
        return entered;
    }

    private bool Enter(double[] entries, double price, Pattern? pattern)
    {
        var column = new double[rows];
        for (var r = 0; r < rows; r++)
        {
            var sum = 0.0;
            for (var k = 0; k < rows; k++)
                if (entries[k] != 0) sum += inverse[r, k] * entries[k];
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
