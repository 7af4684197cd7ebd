namespace ShopDrawings.Cutting;

/// <summary>Numbers of pieces side by side in bits: one bit more for each kind than its number needs, which says when it is exceeded.</summary>
internal sealed class PieceFields
{
    private readonly (int Shift, int Mask)[] places;
    private readonly UInt128 slack, guards;

    private PieceFields((int Shift, int Mask)[] places, UInt128 slack, UInt128 guards) => (this.places, this.slack, this.guards) = (places, slack, guards);

    /// <summary>For the kinds that are told apart; null where the bits are too few.</summary>
    public static PieceFields? For(int[] demand, bool[] apart)
    {
        var (places, shift) = (new (int Shift, int Mask)[demand.Length], 0);
        UInt128 slack = 0, guards = 0;
        for (var k = 0; k < demand.Length; k++)
        {
            if (demand[k] == 0 || !apart[k]) continue;
            var bits = 32 - int.LeadingZeroCount(demand[k]);
            if (shift + bits + 1 > 128) return null;
            places[k] = (shift, (1 << bits) - 1);
            slack |= (UInt128)((1 << bits) - 1 - demand[k]) << shift;
            guards |= UInt128.One << (shift + bits);
            shift += bits + 1;
        }
        return new PieceFields(places, slack, guards);
    }

    /// <summary>Kinds in all.</summary>
    public int Kinds => places.Length;

    /// <summary>Whether a kind is told apart.</summary>
    public bool Has(int kind) => places[kind].Mask != 0;

    /// <summary>One piece of a kind; nothing where it is not told apart.</summary>
    public UInt128 One(int kind) => Has(kind) ? UInt128.One << places[kind].Shift : 0;

    /// <summary>So many pieces of each kind, as far as they are told apart.</summary>
    public UInt128 Packed(int[] counts)
    {
        UInt128 sum = 0;
        for (var k = 0; k < counts.Length; k++) sum += (UInt128)counts[k] * One(k);
        return sum;
    }

    /// <summary>Pieces of a kind.</summary>
    public int Of(UInt128 counts, int kind) => (int)((counts >> places[kind].Shift) & (UInt128)places[kind].Mask);

    /// <summary>Whether no kind is there more often than there are pieces, in a sum of two such numbers.</summary>
    public bool Allow(UInt128 counts) => ((counts + slack) & guards) == 0;

    /// <summary>Whether there are at least so many of every kind.</summary>
    public bool Holds(UInt128 counts, UInt128 part) => (((counts | guards) - part) & guards) == guards;
}
