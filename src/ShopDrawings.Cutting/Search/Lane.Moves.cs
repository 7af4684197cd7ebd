using System.Numerics;
using System.Runtime.InteropServices;

namespace ShopDrawings.Cutting;

internal sealed partial class Lane
{
    // Sheets that a step looks at: all of a few, some of many, so that a step costs the same in a large plan.
    private void Look()
    {
        nearCount = 0;
        if (near.Length < sheets.Length) near = new int[sheets.Length];
        if (sheetCount <= AllNear)
        {
            for (var s = 0; s < sheetCount; s++)
                if (sheets[s].Stock >= 0) near[nearCount++] = s;
            return;
        }
        for (var tries = 0; tries < 2 * SomeNear && nearCount < SomeNear; tries++)
        {
            var s = lot.Below(sheetCount);
            if (sheets[s].Stock >= 0 && Array.IndexOf(near, s, 0, nearCount) < 0) near[nearCount++] = s;
        }
    }

    private void LookAtAll()
    {
        nearCount = 0;
        if (near.Length < sheets.Length) near = new int[sheets.Length];
        for (var s = Math.Max(0, sheetCount - LastNear); s < sheetCount; s++)
            if (sheets[s].Stock >= 0) near[nearCount++] = s;
    }

    private void Ruin()
    {
        if (nearCount == 0) return;
        if (work.Stock.Length > 1 && lot.Below(8) == 0) Exchange(near[lot.Below(nearCount)]);
        var wanted = 1 + lot.Below(MostTaken);
        var start = looseCount;
        for (var tries = 0; tries < 12 && looseCount - start < wanted; tries++)
        {
            var s = near[lot.Below(nearCount)];
            var tree = sheets[s];
            if (tree.Stock < 0) continue;
            if (tree.Items <= 1 || (tree.Items <= 2 * wanted && lot.Below(4) == 0)) Give(s);
            else
            {
                var n = lot.Below(tree.Used);
                if (tree[n].Kind == 255 || tree.Leaves(n, 2 * wanted) > 2 * wanted) continue;
                Touch(s);
                looseCount = tree.Remove(n, loose, looseCount, work.Area);
                if (tree.Root < 0) Shut(s);
                else
                {
                    tree.Refresh();
                    // What a removed piece kept apart may now be cut in a way the saw does not allow, or be blanks of its own, which take more room.
                    if (tree.IsTooLarge || work.Rules.Any && !work.Rules.Hold(tree, work.Stock[tree.Stock].Trims)) Give(s);
                }
                Effort += tree.Used;
            }
        }
    }

    // Gives a sheet another size; what does not fit on it comes loose.
    private void Exchange(int s)
    {
        var tree = sheets[s];
        if (tree.Stock < 0) return;
        var (from, to) = (tree.Stock, lot.Below(work.Stock.Length));
        var size = work.Stock[to];
        if (to == from || stockUsed[to] >= size.Count || openPrice - work.Stock[from].Price + size.Price > budget || size.First != work.Stock[from].First || work.Rules.Any || size.PieceExtra != 0 || size.GrainDirection != work.Stock[from].GrainDirection) return;
        Touch(s);
        while (tree.Root >= 0 && (tree[tree.Root].W > size.W || tree[tree.Root].H > size.H))
        {
            var n = lot.Below(tree.Used);
            if (tree[n].Kind == 255 || n == tree.Root && tree.Items > 1) continue;
            looseCount = tree.Remove(n, loose, looseCount, work.Area);
        }
        if (tree.Root < 0)
        {
            Shut(s);
            return;
        }
        tree.Resize(to, size, work.WholeOf(size));
        stockUsed[from]--;
        stockUsed[to]++;
        openPrice += size.Price - work.Stock[from].Price;
        Effort += tree.Used;
    }

    // Puts back what is loose, one after the other, each where it fits best; one place in `blink` is overlooked.
    private void Recreate(int sorting, int blink)
    {
        Sort(sorting);
        failMark++;
        var left = 0;
        for (var k = 0; k < looseCount; k++)
        {
            var i = loose[k];
            if (failedKind[work.KindOf[i]] == failMark || !Place(i, blink))
            {
                failedKind[work.KindOf[i]] = failMark;
                loose[left++] = i;
            }
        }
        looseCount = left;
    }

    private void Sort(int sorting)
    {
        var (count, w) = (looseCount, work);
        for (var k = 0; k < count; k++)
        {
            var i = loose[k];
            keys[k] = sorting switch
            {
                0 or 1 or 2 or 3 => -w.Area[i],
                4 => -Math.Max(w.X[i], w.Y[i]),
                5 => -w.X[i],
                6 => -w.Y[i],
                _ => (long)(lot.Next() >> 2),
            };
        }
        if (count > 48)
        {
            Array.Sort(keys, loose, 0, count);
            return;
        }
        for (var k = 1; k < count; k++)
        {
            var (key, item) = (keys[k], loose[k]);
            var to = k;
            for (; to > 0 && keys[to - 1] > key; to--) (keys[to], loose[to]) = (keys[to - 1], loose[to - 1]);
            (keys[to], loose[to]) = (key, item);
        }
    }

    private bool Place(int item, int blink)
    {
        var (bestSheet, bestSlot, bestTurn, best) = (-1, 0, false, long.MaxValue);
        var (px, py, area) = (work.X[item], work.Y[item], work.Area[item]);
        Effort += nearCount;
        for (var at = 0; at < nearCount; at++)
        {
            var s = near[at];
            var tree = sheets[s];
            if (tree.Stock < 0 || tree.Filled + area > tree.Whole) continue;
            var lies = work.LiesOn(item, tree.Stock);
            for (var turn = 0; turn < 2; turn++)
            {
                if ((lies & (turn == 0 ? Workload.AsIs : Workload.Turned)) == 0) continue;
                var (x, y) = turn == 0 ? (px, py) : (py, px);
                if (x > tree.MostX || y > tree.MostY) continue;
                var (slots, count) = (tree.Slots, tree.SlotCount);
                Effort += count;
                ref var roomX = ref MemoryMarshal.GetArrayDataReference(tree.RoomX);
                ref var roomY = ref MemoryMarshal.GetArrayDataReference(tree.RoomY);
                var (vx, vy) = (new Vector<long>(x), new Vector<long>(y));
                for (var k = 0; k < count; k += Vector<long>.Count)
                {
                    // Behind the last slot lie rooms of -1, so the last load reads no garbage.
                    var fits = Vector.GreaterThanOrEqual(Vector.LoadUnsafe(ref roomX, (nuint)k), vx) & Vector.GreaterThanOrEqual(Vector.LoadUnsafe(ref roomY, (nuint)k), vy);
                    if (fits == Vector<long>.Zero) continue;
                    for (var lane = 0; lane < Vector<long>.Count; lane++)
                    {
                        if (fits[lane] == 0 || (blink > 0 && lot.Below(blink) == 0)) continue;
                        var score = Score(slots[k + lane], tree.RoomX[k + lane], tree.RoomY[k + lane], x, y);
                        if (score < best && (!work.Rules.Any || Allowed(tree, k + lane, item, turn, x, y))) (bestSheet, bestSlot, bestTurn, best) = (s, k + lane, turn == 1, score);
                    }
                }
            }
        }
        if (bestSheet < 0)
        {
            bestSheet = OpenFor(item, out bestTurn);
            bestSlot = 0;
            if (bestSheet < 0) return false;
        }
        else Touch(bestSheet);
        var chosen = sheets[bestSheet];
        chosen.Join(chosen.Slots[bestSlot], 2 * item + (bestTurn ? 1 : 0), bestTurn ? py : px, bestTurn ? px : py, area);
        Effort += chosen.Used;
        return true;
    }

    // Whether the saw's rules hold where a piece joins: tried on a copy.
    private bool Allowed(SheetTree tree, int slot, int item, int turn, long x, long y)
    {
        trial.CopyFrom(tree);
        trial.Join(trial.Slots[slot], 2 * item + turn, x, y, work.Area[item]);
        Effort += 2 * trial.Used;
        return work.Rules.Hold(trial, work.Stock[tree.Stock].Trims);
    }

    private bool AllowedAlone(int stock, int item, bool isTurned)
    {
        Effort += 8;
        return work.Rules.HoldAlone(trial, work, stock, item, isTurned);
    }

    // The less, the better: by turns the narrower of what is left each way, or what large rectangles are lost, as sums of squared areas;
    // while tidying also any place alike.
    private long Score(in SheetTree.Slot slot, long roomX, long roomY, long x, long y)
    {
        if (scoring == AnyPlace) return (long)(lot.Next() >> 2);
        var sh = work.Shift;
        var (a, b) = ((roomX - x) >> sh, (roomY - y) >> sh);
        if (scoring == 0 || slot.Kind == SheetTree.Leaf) return a < b ? a : b;
        var (rx, ry, cx, cy) = (roomX >> sh, roomY >> sh, x >> sh, y >> sh);
        var whole = rx * ry;
        var (p, q) = slot.Kind == SheetTree.Beside ? (a * ry, cx * b) : (rx * b, a * cy);
        return whole * whole - p * p - q * q;
    }

    // Opens another sheet where budget and stock allow one that holds the piece.
    private int OpenFor(int item, out bool turned)
    {
        turned = false;
        var (chosen, count) = (-1, 0);
        for (var t = 0; t < work.Stock.Length; t++)
        {
            var size = work.Stock[t];
            if (stockUsed[t] >= size.Count || size.Price > budget - openPrice) continue;
            var lies = work.LiesOn(item, t);
            var (mostX, mostY) = size.MostPiece;
            var asIs = (lies & Workload.AsIs) != 0 && work.X[item] <= mostX && work.Y[item] <= mostY;
            var over = (lies & Workload.Turned) != 0 && work.Y[item] <= mostX && work.X[item] <= mostY;
            if (!asIs && !over) continue;
            if (work.Rules.Any)
            {
                asIs = asIs && AllowedAlone(t, item, false);
                over = over && AllowedAlone(t, item, true);
                if (!asIs && !over) continue;
            }
            if (lot.Below(++count) != 0) continue;
            chosen = t;
            turned = over && (!asIs || lot.Below(2) == 0);
        }
        if (chosen < 0) return -1;
        var s = NewSheet();
        Open(s, chosen);
        if (near.Length <= nearCount) Array.Resize(ref near, 2 * nearCount + 8);
        // Late sheets stand in for all where there are very many.
        if (nearCount >= LastNear)
        {
            Array.Copy(near, 1, near, 0, nearCount - 1);
            nearCount--;
        }
        near[nearCount++] = s;
        return s;
    }
}
