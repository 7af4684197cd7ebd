namespace ShopDrawings.Cutting;

/// <summary>What a saw allows, in the search's own lengths; whatever is not limited is at its largest.</summary>
internal sealed record SawRules
{
    /// <summary>No rule but that every cut goes through.</summary>
    public static SawRules None { get; } = new();

    /// <summary>Changes of direction from the sheet to a part, the cut that frees a part not counted.</summary>
    public int Stages { get; init; } = int.MaxValue;

    /// <summary>Direction of the first cuts: <see cref="SheetTree.Beside"/>, <see cref="SheetTree.Stacked"/>, or 0 for either.</summary>
    public byte First { get; init; }

    /// <summary>Most cuts within the trimmed sheet.</summary>
    public int MaxCuts { get; init; } = int.MaxValue;

    /// <summary>Narrowest piece that holds a part, kerf added.</summary>
    public long LeastStrip { get; init; }

    /// <summary>Longest cut, kerf added.</summary>
    public long LongestCut { get; init; } = long.MaxValue;

    /// <summary>Longest side of a piece of the first stage, kerf added.</summary>
    public long LongestPiece { get; init; } = long.MaxValue;

    /// <summary>Largest area of a piece of the first stage, in square units without kerf.</summary>
    public Int128 LargestPiece { get; init; } = Int128.MaxValue;

    /// <summary>What every piece of the first stage takes beyond its contents, in the direction it is counted off.</summary>
    public long PieceExtra { get; init; }

    /// <summary>The kerf in the search's lengths.</summary>
    public long Kerf { get; init; }

    /// <summary>Whether a placement must be asked about at all.</summary>
    public bool Any => Stages != int.MaxValue || First != 0 || MaxCuts != int.MaxValue || LeastStrip > 0 || LongestCut != long.MaxValue
        || LongestPiece != long.MaxValue || LargestPiece != Int128.MaxValue || PieceExtra != 0;
}
