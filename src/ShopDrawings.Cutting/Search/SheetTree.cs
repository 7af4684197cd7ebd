using System.Numerics;

namespace ShopDrawings.Cutting;

/// <summary>
/// The cuts of one sheet as a tree: a leaf is a piece, an inner node lays its children side by side (<see cref="Beside"/>) or one above the other
/// (<see cref="Stacked"/>). Nodes keep the least size their contents need and the most they could grow to; where waste lies is not decided before
/// the end. A piece may therefore join any node that has room, also by making it wider, and what a removed piece held open closes by itself.
/// </summary>
internal sealed partial class SheetTree
{
    /// <summary>Kind of a leaf.</summary>
    public const byte Leaf = 0;

    /// <summary>Kind of a node whose children lie side by side along x.</summary>
    public const byte Beside = 1;

    /// <summary>Kind of a node whose children lie one above the other along y.</summary>
    public const byte Stacked = 2;

    /// <summary>A node; links are indices, -1 for none.</summary>
    public struct Node
    {
        public long W, H, MostW, MostH;
        public int Parent, First, Next, Prev;

        /// <summary>Piece number times two, one more where turned.</summary>
        public int Item;
        public byte Kind;
    }

    /// <summary>A place a piece may join: beside or above a node.</summary>
    public struct Slot
    {
        /// <summary>How far the node reaches across the direction of joining, now.</summary>
        public long Cross;
        public int At;
        public byte Kind;
    }

    private const int Least = 16;

    private Node[] nodes = new Node[16];
    private int used;
    private int free = -1;

    /// <summary>Where pieces may join. The rooms there stand apart, so that several are compared at once; behind the last follow rooms for nothing.</summary>
    public Slot[] Slots = new Slot[Least];
    public long[] RoomX = new long[Least + Vector<long>.Count];
    public long[] RoomY = new long[Least + Vector<long>.Count];
    public int SlotCount;
    public int Root = -1;

    /// <summary>Index of the stock size, -1 while closed.</summary>
    public int Stock = -1;
    public int Items;

    /// <summary>Rough area of what lies on it, and of the sheet.</summary>
    public long Filled, Whole;

    /// <summary>Largest room of any slot.</summary>
    public long MostX, MostY;

    private long width, height;

    // Kind of the root where the first cuts have a set direction, what each of its children takes beyond its contents, and the most one may hold.
    private byte first;
    private long extra, cap;

    public ref Node this[int i] => ref nodes[i];

    public long Width => width;

    public long Height => height;

    /// <summary>Nodes ever used; those on the free list have kind 255.</summary>
    public int Used => used;

    /// <summary>A fresh sheet.</summary>
    public void Open(int stock, in Workload.Sheet size, long whole)
    {
        (Stock, width, height, Whole) = (stock, size.W, size.H, whole);
        (first, extra, cap) = (size.First, size.PieceExtra, size.PieceCap);
        (used, free, Root, Items, Filled) = (0, -1, -1, 0, 0);
        Refresh();
    }

    /// <summary>Gives it another size, which must hold what lies on it.</summary>
    public void Resize(int stock, in Workload.Sheet size, long whole)
    {
        (Stock, width, height, Whole) = (stock, size.W, size.H, whole);
        (first, extra, cap) = (size.First, size.PieceExtra, size.PieceCap);
        Refresh();
    }

    public void CopyFrom(SheetTree other)
    {
        if (nodes.Length < other.used) nodes = new Node[other.nodes.Length];
        if (Slots.Length < other.SlotCount) Grow(other.Slots.Length);
        Array.Copy(other.nodes, nodes, other.used);
        Array.Copy(other.Slots, Slots, other.SlotCount);
        Array.Copy(other.RoomX, RoomX, other.SlotCount + Vector<long>.Count);
        Array.Copy(other.RoomY, RoomY, other.SlotCount + Vector<long>.Count);
        (used, free, SlotCount, Root, Stock, Items, Filled, Whole) = (other.used, other.free, other.SlotCount, other.Root, other.Stock, other.Items, other.Filled, other.Whole);
        (MostX, MostY, width, height) = (other.MostX, other.MostY, other.width, other.height);
        (first, extra, cap) = (other.first, other.extra, other.cap);
    }

    private int Take()
    {
        if (free >= 0)
        {
            var n = free;
            free = nodes[n].Next;
            return n;
        }
        if (used == nodes.Length) Array.Resize(ref nodes, 2 * used);
        return used++;
    }

    private void Give(int n)
    {
        nodes[n].Kind = 255;
        nodes[n].Next = free;
        free = n;
    }

    /// <summary>Whether its pieces take more than the sheet; only after some were taken out of blanks.</summary>
    public bool IsTooLarge => Root >= 0 && (nodes[Root].W > width || nodes[Root].H > height);

    /// <summary>Puts a piece where a slot says, and counts the rooms anew.</summary>
    public int Join(in Slot slot, int item, long x, long y, long area)
    {
        var (at, kind) = (slot.At, slot.Kind);
        var leaf = Take();
        nodes[leaf] = new Node { W = x, H = y, Parent = -1, First = -1, Next = -1, Prev = -1, Item = item, Kind = Leaf };
        Items++;
        Filled += area;
        if (at < 0 && first != 0)
        {
            Root = Take();
            nodes[Root] = new Node { Parent = -1, First = leaf, Next = -1, Prev = -1, Kind = first };
            nodes[leaf].Parent = Root;
            Resize(Root);
        }
        else if (at < 0) Root = leaf;
        else
        {
            var home = at;
            if (nodes[at].Kind != kind)
            {
                home = Take();
                ref var a = ref nodes[at];
                nodes[home] = new Node { Parent = a.Parent, First = at, Next = a.Next, Prev = a.Prev, Kind = kind };
                if (a.Prev >= 0) nodes[a.Prev].Next = home;
                else if (a.Parent >= 0) nodes[a.Parent].First = home;
                if (a.Next >= 0) nodes[a.Next].Prev = home;
                if (Root == at) Root = home;
                (a.Parent, a.Next, a.Prev) = (home, -1, -1);
            }
            var first = nodes[home].First;
            nodes[leaf].Next = first;
            nodes[first].Prev = leaf;
            nodes[home].First = leaf;
            nodes[leaf].Parent = home;
            Resize(home);
        }
        Refresh();
        return leaf;
    }

    /// <summary>Takes a node with all it holds out of the tree; the pieces go to <paramref name="out"/>. Rooms are not counted before <see cref="Refresh"/>.</summary>
    public int Remove(int n, int[] @out, int count, long[] areas)
    {
        var parent = nodes[n].Parent;
        Unlink(n);
        count = Free(n, @out, count, areas);
        if (parent < 0)
        {
            Root = -1;
            return count;
        }
        var only = nodes[parent].First;
        if (only < 0)
        {
            // The last piece of a root that the rules demand.
            Give(parent);
            Root = -1;
            return count;
        }
        if (nodes[only].Next < 0 && (first == 0 || parent != Root))
        {
            // One child is left: it takes its parent's place.
            var grand = nodes[parent].Parent;
            if (grand >= 0 && nodes[only].Kind == nodes[grand].Kind)
            {
                Unlink(parent);
                for (var c = nodes[only].First; c >= 0;)
                {
                    var next = nodes[c].Next;
                    Link(grand, c);
                    c = next;
                }
                Give(only);
            }
            else
            {
                ref var p = ref nodes[parent];
                ref var o = ref nodes[only];
                (o.Parent, o.Next, o.Prev) = (grand, p.Next, p.Prev);
                if (p.Prev >= 0) nodes[p.Prev].Next = only;
                else if (grand >= 0) nodes[grand].First = only;
                if (p.Next >= 0) nodes[p.Next].Prev = only;
                if (Root == parent) Root = only;
            }
            Give(parent);
            parent = grand;
        }
        if (parent >= 0) Resize(parent);
        return count;
    }

    /// <summary>Cuts an empty sheet by a pattern; <paramref name="take"/> gives a piece of a kind.</summary>
    public void Build(Pattern pattern, Workload work, Func<int, int> take)
    {
        Root = Build(pattern, pattern.Root, work, take);
        nodes[Root].Parent = -1;
        Refresh();
    }

    private int Build(Pattern pattern, int at, Workload work, Func<int, int> take)
    {
        var (kind, a, b) = pattern.Nodes[at];
        if (kind == Leaf)
        {
            var item = take(a >> 1);
            var turned = (a & 1) == 1;
            var leaf = Take();
            nodes[leaf] = new Node { W = turned ? work.Y[item] : work.X[item], H = turned ? work.X[item] : work.Y[item], Parent = -1, First = -1, Next = -1, Prev = -1, Item = 2 * item + (a & 1), Kind = Leaf };
            Items++;
            Filled += work.Area[item];
            return leaf;
        }
        var (p, q) = (Build(pattern, a, work, take), Build(pattern, b, work, take));
        var home = Take();
        nodes[home] = new Node { Parent = -1, First = -1, Next = -1, Prev = -1, Kind = (byte)kind };
        Adopt(home, p);
        Adopt(home, q);
        Resize(home);
        return home;
    }

    // Takes a node, or the children of one of its own kind, among its children.
    private void Adopt(int home, int n)
    {
        if (nodes[n].Kind != nodes[home].Kind)
        {
            Link(home, n);
            return;
        }
        for (var c = nodes[n].First; c >= 0;)
        {
            var next = nodes[c].Next;
            Link(home, c);
            c = next;
        }
        Give(n);
    }

    /// <summary>
    /// Cuts and fence settings, each more than any rectangle that is left, less the largest of those; cuts less deep than <paramref name="paid"/> are paid for
    /// and count as many.
    /// </summary>
    public long Untidiness(int paid)
    {
        if (Root < 0) return 0;
        var largest = 0.0;
        for (var k = 0; k < SlotCount; k++) largest = Math.Max(largest, (double)RoomX[k] / width * RoomY[k] / height);
        return (Handling(Root, width, height, 0, paid) << 20) - (long)(largest * (1 << 20));
    }

    private long Handling(int n, long w, long h, int depth, int paid)
    {
        const int Paid = 1 << 8;
        ref var node = ref nodes[n];
        var cut = 2 + (depth < paid ? Paid : 0);
        if (node.Kind == Leaf) return (w > node.W ? cut : 0) + (h > node.H ? cut : 0);
        var beside = node.Kind == Beside;
        // As the layout may do: the spare strip off first, so that nothing inside has to be freed from it.
        if (depth < 2 && (beside ? h > node.H : w > node.W))
            return Math.Min(Counted(n, w, h, depth, paid, cut), cut + Counted(n, beside ? w : node.W, beside ? node.H : h, depth, paid, cut));
        return Counted(n, w, h, depth, paid, cut);
    }

    private long Counted(int n, long w, long h, int depth, int paid, int cut)
    {
        ref var node = ref nodes[n];
        var beside = node.Kind == Beside;
        var sum = (beside ? w == node.W : h == node.H) ? 1L - cut : 0;
        for (var c = node.First; c >= 0; c = nodes[c].Next)
        {
            var size = beside ? nodes[c].W : nodes[c].H;
            sum += cut + Handling(c, beside ? size : w, beside ? h : size, depth + 1, paid);
            // A setting shared with an earlier child costs nothing more.
            for (var d = node.First; d != c; d = nodes[d].Next)
                if ((beside ? nodes[d].W : nodes[d].H) == size)
                {
                    sum--;
                    break;
                }
        }
        return sum;
    }

    /// <summary>Names its pieces anew.</summary>
    public void Rename(int[] names)
    {
        for (var n = 0; n < used; n++)
            if (nodes[n].Kind == Leaf) nodes[n].Item = 2 * names[nodes[n].Item >> 1] + (nodes[n].Item & 1);
    }

    /// <summary>Pieces at and below a node, counted until they are more than <paramref name="most"/>.</summary>
    public int Leaves(int n, int most)
    {
        if (nodes[n].Kind == Leaf) return 1;
        var count = 0;
        for (var c = nodes[n].First; c >= 0 && count <= most; c = nodes[c].Next) count += Leaves(c, most - count);
        return count;
    }

    private void Link(int parent, int n)
    {
        var first = nodes[parent].First;
        (nodes[n].Parent, nodes[n].Next, nodes[n].Prev) = (parent, first, -1);
        if (first >= 0) nodes[first].Prev = n;
        nodes[parent].First = n;
    }

    private void Unlink(int n)
    {
        ref var x = ref nodes[n];
        if (x.Prev >= 0) nodes[x.Prev].Next = x.Next;
        else if (x.Parent >= 0) nodes[x.Parent].First = x.Next;
        if (x.Next >= 0) nodes[x.Next].Prev = x.Prev;
    }

    private int Free(int n, int[] @out, int count, long[] areas)
    {
        if (nodes[n].Kind == Leaf)
        {
            var item = nodes[n].Item >> 1;
            @out[count++] = item;
            Items--;
            Filled -= areas[item];
        }
        else
            for (var c = nodes[n].First; c >= 0;)
            {
                var next = nodes[c].Next;
                count = Free(c, @out, count, areas);
                c = next;
            }
        Give(n);
        return count;
    }

    // Least sizes from n up to the root.
    private void Resize(int n)
    {
        for (; n >= 0; n = nodes[n].Parent)
        {
            long w = 0, h = 0;
            ref var node = ref nodes[n];
            if (node.Kind == Beside)
                for (var c = node.First; c >= 0; c = nodes[c].Next) (w, h) = (w + nodes[c].W, Math.Max(h, nodes[c].H));
            else
                for (var c = node.First; c >= 0; c = nodes[c].Next) (w, h) = (Math.Max(w, nodes[c].W), h + nodes[c].H);
            if (extra != 0 && n == Root)
                for (var c = node.First; c >= 0; c = nodes[c].Next)
                    if (first == Beside) w += extra;
                    else h += extra;
            if (node.W == w && node.H == h) return;
            (node.W, node.H) = (w, h);
        }
    }
}
