using System.Collections.Immutable;

namespace ShopDrawings.Cutting;

/// <summary>What a piece at the saw is in the end.</summary>
public enum PieceKind
{
    /// <summary>It is cut further.</summary>
    Divided,

    /// <summary>It is a part.</summary>
    Part,

    /// <summary>It is left over.</summary>
    Offcut,
}

/// <summary>
/// A piece as it comes to the saw, and how it is cut: a node of the tree of cuts. The root is the whole sheet. First the edges named in
/// <see cref="Trim"/> are cut off; then <see cref="Children"/> are cut off one after the other in <see cref="Cuts"/>, beginning at the start or near edge,
/// with one <see cref="Kerf"/> between them. What the last kerf leaves, if anything, is the last child. Lengths in nanometres, in the sheet's frame.
/// </summary>
public sealed record CutPiece(PieceKind Kind, long X, long Y, long AlongX, long AlongY)
{
    /// <summary>What is cut off its edges before it is divided; blade included.</summary>
    public Trim Trim { get; init; }

    /// <summary>Which way the blade goes; null where nothing is cut.</summary>
    public CutDirection? Cuts { get; init; }

    /// <summary>The pieces it is cut into, in order from the start or near edge.</summary>
    public ImmutableArray<CutPiece> Children { get; init; } = [];

    /// <summary>The part it is; null for others.</summary>
    public Placement? Placement { get; init; }

    /// <summary>Whether a blade that runs off the end still has to part the last child from a sliver thinner than itself.</summary>
    public bool LastIsCutFree { get; init; }

    /// <summary>The width of the blade that divides it.</summary>
    public long Kerf { get; init; }

    /// <summary>Whether it is cut at home, after a store cut the sheet into blanks.</summary>
    public bool AtHome { get; init; }

    /// <summary>How many cuts divide it, trims not counted.</summary>
    public int CutsHere => Kind == PieceKind.Divided ? Children.Length - (LastIsCutFree ? 0 : 1) : 0;

    /// <summary>This piece and all below it, parents first.</summary>
    public IEnumerable<CutPiece> All() => Children.SelectMany(c => c.All()).Prepend(this);
}
