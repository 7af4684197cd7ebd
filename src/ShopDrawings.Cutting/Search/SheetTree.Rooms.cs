using System.Numerics;

namespace ShopDrawings.Cutting;

// Where pieces may join: rooms counted from the root down.
internal sealed partial class SheetTree
{
    /// <summary>Counts rooms and slots from the root down.</summary>
    public void Refresh()
    {
        (SlotCount, MostX, MostY) = (0, 0, 0);
        if (Root < 0)
        {
            var across = first == Stacked;
            Add(across ? width : Math.Min(width - extra, cap), across ? Math.Min(height - extra, cap) : height, 0, -1, Leaf);
            Close();
            return;
        }
        if (Slots.Length < 2 * used + 2) Grow(4 * used + 2);
        if (first == 0) Descend(Root, width, height, 0);
        else DescendFirst();
        Close();
    }

    private void Grow(int length) => (Slots, RoomX, RoomY) = (new Slot[length], new long[length + Vector<long>.Count], new long[length + Vector<long>.Count]);

    private void Close()
    {
        RoomX.AsSpan(SlotCount, Vector<long>.Count).Fill(-1);
        RoomY.AsSpan(SlotCount, Vector<long>.Count).Fill(-1);
    }

    // The root that the rules demand: nothing is wrapped round it, and no child grows beyond its cap.
    private void DescendFirst()
    {
        ref var root = ref nodes[Root];
        (root.MostW, root.MostH) = (width, height);
        if (first == Beside)
        {
            var spare = width - root.W;
            if (spare > extra) Add(Math.Min(spare - extra, cap), height, root.H, Root, Beside);
            for (var c = root.First; c >= 0; c = nodes[c].Next) Descend(c, Math.Min(nodes[c].W + spare, cap), height, Beside);
        }
        else
        {
            var spare = height - root.H;
            if (spare > extra) Add(width, Math.Min(spare - extra, cap), root.W, Root, Stacked);
            for (var c = root.First; c >= 0; c = nodes[c].Next) Descend(c, width, Math.Min(nodes[c].H + spare, cap), Stacked);
        }
    }

    private void Descend(int n, long mostW, long mostH, byte above)
    {
        ref var node = ref nodes[n];
        (node.MostW, node.MostH) = (mostW, mostH);
        var (w, h, kind) = (node.W, node.H, node.Kind);
        // Beside a node of a row is the row's own slot, and so for stacks.
        if (above != Beside && mostW > w) Add(mostW - w, mostH, h, n, Beside);
        if (above != Stacked && mostH > h) Add(mostW, mostH - h, w, n, Stacked);
        if (kind == Beside)
        {
            var spare = mostW - w;
            for (var c = node.First; c >= 0; c = nodes[c].Next) Descend(c, nodes[c].W + spare, mostH, Beside);
        }
        else if (kind == Stacked)
        {
            var spare = mostH - h;
            for (var c = node.First; c >= 0; c = nodes[c].Next) Descend(c, mostW, nodes[c].H + spare, Stacked);
        }
    }

    private void Add(long x, long y, long cross, int at, byte kind)
    {
        RoomX[SlotCount] = x;
        RoomY[SlotCount] = y;
        ref var s = ref Slots[SlotCount++];
        (s.Cross, s.At, s.Kind) = (cross, at, kind);
        if (x > MostX) MostX = x;
        if (y > MostY) MostY = y;
    }
}
