using System.Collections.Immutable;
using System.Globalization;
using ShopDrawings.Drafting;

namespace ShopDrawings.Dxf;

/// <summary>
/// The blocks of a file: those the drawing inserts, then an anonymous one for each dimension. Their handles are known beforehand, since
/// records, definitions and inserts stand in three places: nothing has to be kept of the dimensions but how many there are.
/// </summary>
internal sealed class BlockTable
{
    private const int HandlesOfOne = 3;

    private readonly ImmutableArray<string> names;
    private readonly Dictionary<Block, string> nameOf = [];
    private long dimensions;

    /// <summary>Names the blocks of a drawing.</summary>
    /// <param name="blocks">The blocks inserted.</param>
    /// <param name="dimensions">How many dimensions the drawing has.</param>
    public BlockTable(ImmutableArray<Block> blocks, long dimensions)
    {
        names = LayerNames.Fit([.. blocks.Select(b => b.Name)]);
        for (var i = 0; i < blocks.Length; i++) nameOf.Add(blocks[i], names[i]);
        Count = blocks.Length + dimensions;
    }

    /// <summary>How many blocks there are.</summary>
    public long Count { get; }

    /// <summary>How many handles they take, from <see cref="SkeletonHandle.FirstFree"/> on.</summary>
    public long Handles => HandlesOfOne * Count;

    /// <summary>What a block is called in the file.</summary>
    public string NameOf(Block block) => nameOf[block];

    /// <summary>What a block is called by its number, counted from 0.</summary>
    public string NameOf(long number) => number < names.Length ? names[(int)number] : Dimension(number - names.Length + 1);

    /// <summary>The handle of a block's record.</summary>
    public static long Record(long number) => SkeletonHandle.FirstFree + HandlesOfOne * number;

    /// <summary>The handle of a block's beginning.</summary>
    public static long Begin(long number) => Record(number) + 1;

    /// <summary>The handle of a block's end.</summary>
    public static long End(long number) => Record(number) + 2;

    /// <summary>The name of the next dimension's block, in the drawing's order.</summary>
    public string NextDimension() => Dimension(++dimensions);

    private static string Dimension(long number) => "*D" + number.ToString(CultureInfo.InvariantCulture);
}
