namespace ShopDrawings.Kernel;

/// <summary>Loose shelves on pins in rows of holes on the 32 mm grid of the panels beside them. Lengths in mm.</summary>
internal sealed class LooseShelves(LooseShelvesSpec spec, AssemblyBuilder assembly, Faults faults)
{
    /// <summary>
    /// Drills the rows, a hole left out where something is in its way, and lays the shelves at the holes nearest to an even spread. Holes from
    /// both faces of one panel leave material between them.
    /// </summary>
    public void Build(Space space)
    {
        var depth = space.Y.Extent;
        if (depth.Value < 2 * spec.SetBack.Value + spec.Pitch.Value || space.Z.Extent.Value < 2 * spec.FromEnds.Value + spec.Pitch.Value)
        {
            assembly.Misfit([space.Left, space.Right], $"two rows of pins do not fit in {space.Name}, which is {faults.Print(depth)} deep and {faults.Print(space.Z.Extent)} high",
                [new("depth", depth.Value, "mm"), new("height", space.Z.Extent.Value, "mm")], "make the bay larger, or the set-back of the rows less", "common practice, no source");
            return;
        }

        string[] beside = [space.Left, space.Right];
        if (spec.FrontInset.Value > spec.SetBack.Value - spec.Pin.Diameter.Value)
            assembly.Misfit(beside, $"loose shelves that stand {faults.Print(spec.FrontInset)} behind the front miss the front pins, which stand {faults.Print(spec.SetBack)} behind it",
                [new("front inset", spec.FrontInset.Value, "mm"), new("set-back of the pins", spec.SetBack.Value, "mm")], "make “front-inset” less, or “set-back” more", "derived (geometry)");
        if (2 * spec.Play.Value > spec.Pin.Reach.Value)
            assembly.Misfit(beside, $"loose shelves with {faults.Print(spec.Play)} free at each end may slip off pins that reach {faults.Print(spec.Pin.Reach)}",
                [new("play", spec.Play.Value, "mm"), new("reach of the pins", spec.Pin.Reach.Value, "mm")], $"make “play” at most {faults.Print(spec.Pin.Reach / 2)}", "derived (geometry)");
        var front = space.Y.From + spec.SetBack;
        var rear = space.Y.From + PinRows.Last(depth, spec.SetBack);
        var count = (int)Math.Floor((space.Z.Extent.Value - 2 * spec.FromEnds.Value) / spec.Pitch.Value + 1e-9) + 1;
        var free = Enumerable.Range(0, count)
            .Select(i => (Index: i, Z: i == 0 ? space.Z.From + spec.FromEnds : space.Z.From + spec.FromEnds + (double)i * spec.Pitch))
            .Where(hole => Sides(space).All(side => IsFree(side, hole.Z, [front, rear])) && !IsCovered(space, hole.Z)).ToList();
        foreach (var side in Sides(space))
            assembly.Write(side.Panel.Id, free.SelectMany(hole => new[] { front, rear }.Select(y => Pin(side, hole.Z, y))));
        Lay(space, [.. free.Select(h => h.Z)], front, rear);
    }

    private (Panel Panel, Surface Face, string Id)[] Sides(Space space)
    {
        var (left, right) = (assembly.Find(space.Left)!, assembly.Find(space.Right)!);
        Surface Facing(Panel panel, Direction towards) => panel.Facing(Surface.Inside) == towards ? Surface.Inside : Surface.Outside;
        return [(left, Facing(left, Direction.Right), $"{space.Path}left-pins"), (right, Facing(right, Direction.Left), $"{space.Path}right-pins")];
    }

    private Bore Pin((Panel Panel, Surface Face, string Id) side, Size z, Size y) =>
        Bore.Blind(side.Id, side.Face, side.Panel.OnFace(new SizePoint(Size.Zero, y, z)), spec.Pin.Diameter, spec.Pin.Depth, BoreUse.Seat);

    private bool IsFree((Panel Panel, Surface Face, string Id) side, Size z, Size[] rows)
    {
        var others = new Clearing(side.Panel, BoresOfOtherFace(side));
        return rows.All(y => others.Obstacle(Pin(side, z, y)) is null);
    }

    // Behind the end of a fixed shelf no pin is ever used, and its groove may be there.
    private bool IsCovered(Space space, Size z) => assembly.Panels.Any(p =>
        p.Id != space.Left && p.Id != space.Right && p.Placement is not null
        && p.Placement.ToAssembly(p.Box).Intersection(new Box3(
            new(space.X.From.Value, space.Y.From.Value, z.Value - spec.Pin.Diameter.Value / 2 - BoresMeet.Clearance.Default),
            new((space.X.From + space.X.Extent).Value, (space.Y.From + space.Y.Extent).Value, z.Value + spec.Pin.Diameter.Value / 2 + BoresMeet.Clearance.Default))) is not null);

    // Pins from the other face stand at the same places by intention.
    private static Func<Bore, bool> BoresOfOtherFace((Panel Panel, Surface Face, string Id) side) =>
        bore => !(bore.Surface == side.Face.Opposite() && bore.Origin.EndsWith("-pins", StringComparison.Ordinal));

    private void Lay(Space space, List<Size> holes, Size front, Size rear)
    {
        var t = spec.Board.Thickness;
        var x = new Stretch(space.X.From + spec.Play, space.X.Extent - 2 * spec.Play);
        var y = new Stretch(space.Y.From + spec.FrontInset, space.Y.Extent - spec.FrontInset);
        var fixedThere = assembly.Panels.Where(p => p.Placement is not null).Select(p => p.Placement!.ToAssembly(p.Box))
            .Concat(assembly.Hardware.SelectMany(h => h.Volumes.Select(v => assembly.Find(h.Mounts[0].Panel)!.Placement!.ToAssembly(v)))).ToList();
        holes.RemoveAll(hole =>
        {
            var low = hole.Value + spec.Pin.BelowShelf.Value;
            var lying = new Box3(new(x.From.Value, y.From.Value, low), new(x.From.Value + x.Extent.Value, y.From.Value + y.Extent.Value, low + t.Value));
            return fixedThere.Exists(box => box.Intersection(lying) is not null);
        });
        var used = new List<Size>();
        for (var i = 1; i <= spec.Count && holes.Count > 0; i++)
        {
            var even = space.Z.From.Value + space.Z.Extent.Value * i / (spec.Count + 1);
            var hole = holes.MinBy(h => Math.Abs(h.Value - even))!;
            holes.Remove(hole);
            used.Add(hole);
            var id = FormattableString.Invariant($"{space.Path}loose-shelf-{i}");
            if (!faults.Fill(assembly, id, spec.Board, (x, y, new(hole + spec.Pin.BelowShelf, t)), Direction.Bottom, Direction.Right, spec.Bands, spec.Source)) return;
        }

        if (used.Count < spec.Count)
            assembly.Misfit([space.Left, space.Right], $"only {used.Count} of {spec.Count} loose shelves find a row of pins in {space.Name}",
                [new("shelves", spec.Count, ""), new("rows that are free", used.Count, "")], "make the bay higher, or take fewer shelves", "derived (geometry)");
        if (used.Count == 0) return;
        foreach (var side in Sides(space))
        {
            var mounts = used.SelectMany(z => new[] { front, rear }.Select(row => new Mount(side.Panel.Id, side.Face, side.Panel.OnFace(new SizePoint(Size.Zero, row, z)))));
            assembly.Add(new PlacedHardware(side.Id, HardwareKind.Pin, spec.Pin.Name, [.. mounts], [], []) { Count = 2 * used.Count });
        }
    }
}
