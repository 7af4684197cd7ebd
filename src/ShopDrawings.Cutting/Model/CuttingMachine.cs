namespace ShopDrawings.Cutting;

/// <summary>What cuts, and its rules. Lengths in nanometres.</summary>
public abstract record CuttingMachine
{
    private protected CuttingMachine(long kerf) => Kerf = kerf;

    /// <summary>The width of the blade's cut; for a router the least gap that its tool needs between parts.</summary>
    public long Kerf { get; }
}

/// <summary>A table saw or panel saw: every cut goes through the whole piece (guillotine).</summary>
public sealed record PanelSaw(long BladeKerf) : CuttingMachine(BladeKerf)
{
    /// <summary>How often the direction of cutting may change, the first counted as one; null: as often as it takes. A cut that only frees a part from the
    /// end of its strip is not counted unless <see cref="FreeingCutCounts"/>.</summary>
    public int? MaxStages { get; init; }

    /// <summary>Whether the cut that frees a part from waste beside it counts as a stage.</summary>
    public bool FreeingCutCounts { get; init; }

    /// <summary>The direction of the first cuts in a sheet; null: either. A part as long as the sheet needs none of them.</summary>
    public CutDirection? FirstCut { get; init; }

    /// <summary>The narrowest piece that may be held between fence and blade; 0: any.</summary>
    public long LeastStrip { get; init; }

    /// <summary>The longest cut the saw can make; null: any.</summary>
    public long? LongestCut { get; init; }

    /// <summary>The most cuts in one sheet, trims included; null: any number.</summary>
    public int? MaxCuts { get; init; }
}

/// <summary>
/// A store's panel saw: few cuts a sheet, each with its price, and each off by as much as <see cref="Error"/> either way. Without <see cref="Home"/> the parts
/// leave the store at their size; with it the store only cuts blanks, and each blank is cut into parts at home.
/// </summary>
public sealed record StoreSaw(long BladeKerf, int MaxCuts) : CuttingMachine(BladeKerf)
{
    /// <summary>How far a cut may be off, either way. Room for it is kept beside every cut, so that the last piece is never short.</summary>
    public long Error { get; init; }

    /// <summary>What one cut costs, in the smallest coin.</summary>
    public long PricePerCut { get; init; }

    /// <summary>The longest side of a piece that can be carried home; null: any.</summary>
    public long? LongestPiece { get; init; }

    /// <summary>The heaviest piece that can be carried home, in grams; null: any. Needs <see cref="MassPerSquareMetre"/>.</summary>
    public long? HeaviestPieceGrams { get; init; }

    /// <summary>The board's mass per area, in grams per square metre.</summary>
    public long MassPerSquareMetre { get; init; }

    /// <summary>The saw at home that cuts the blanks; null: the store cuts all.</summary>
    public PanelSaw? Home { get; init; }

    /// <summary>What is left on every edge of a blank to be trimmed at home, blade included; only with <see cref="Home"/>.</summary>
    public long BlankAllowance { get; init; }

    /// <summary>How long a blank may be at most to be carried and trimmed at home, in nanometres; 0 where none can.</summary>
    /// <param name="other">Its other side, in nanometres.</param>
    internal long LongestBlank(long other)
    {
        // A blank is trimmed all round at home, so that no side of it is longer than the saw there cuts.
        var longest = Math.Min(LongestPiece ?? long.MaxValue / 4, Home?.LongestCut ?? long.MaxValue / 4);
        if (other > longest) return 0;
        return HeaviestPieceGrams is { } grams ? Math.Min(longest, (long)((Int128)grams * 1_000_000_000_000_000_000 / ((Int128)MassPerSquareMetre * other))) : longest;
    }
}

/// <summary>A CNC router: parts lie anywhere, with a gap for the tool between them and a margin for the clamps around the sheet.</summary>
public sealed record Router(long ToolGap) : CuttingMachine(ToolGap)
{
    /// <summary>What is kept clear along every edge of the sheet for clamps, on top of the sheet's own trim.</summary>
    public long ClampMargin { get; init; }
}
