using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>Hangs the doors of a layout when all that stands and slides behind them is in its place. Lengths in mm.</summary>
internal sealed class DoorHanging(DoorLayout layout, CarcassJoints joints, AssemblyBuilder assembly, Faults faults)
{
    // Between a hinge's body and what stands beside it (common practice, no source).
    private const double Clearance = 3;

    // From the ends of the door to its first and last hinge (common practice, no source).
    private static readonly Size FromEnds = Size.Default(100, "hinge-end-distance");

    private readonly DoorsSpec doors = layout.Spec;
    private readonly Space opening = layout.Opening;

    /// <summary>Adds the doors with everything on them.</summary>
    public void Hang()
    {
        var hung = new Dictionary<string, List<string>>(StringComparer.Ordinal);
        foreach (var (id, x, hangsLeft) in layout.Doors)
        {
            (Direction, Size)[] bands = doors.Bands is { } band ? [(Direction.Left, band), (Direction.Right, band), (Direction.Bottom, band), (Direction.Top, band)] : [];
            if (!faults.Fill(assembly, id, doors.Board, (new(x, layout.Width), layout.Depth, new(layout.Bottom, layout.Height)), Direction.Front, Direction.Top, bands, doors.Source)) return;
            Hinges(id, hangsLeft);
            hung[id] = [id];
            if (doors.Strip is { } strip && doors.Count == 2 && !hangsLeft) hung[id].Add(Strip(id, strip.Board, strip.Width));
            if (doors.Handle is { } handle) Fronts.Handle(assembly, handle, id, hangsLeft ? Direction.Right : Direction.Left, isUpright: true);
            if (doors.Catch is { } held) Catch(held, id, hangsLeft);
        }

        // Linings clear all that is on the doors.
        foreach (var (id, x, hangsLeft) in layout.Doors)
        {
            if (doors.Lining is { } lining) hung[id].AddRange(Line(id, lining, hangsLeft));
            var edge = hangsLeft ? x : x + layout.Width;
            assembly.Motions.Add(new Swing(id, [.. hung[id]], edge, layout.Back, hangsLeft, doors.Hinge.OpeningAngle));
        }

        if (doors.Gasket is { } gasket) Gasket(gasket);
        var reach = Math.Max(layout.Back.Value, 0) + doors.Hinge.BodyDepth.Value;
        var depth = opening.Y.From + opening.Y.Extent;
        if (reach > depth.Value + Tolerance.Length)
            assembly.Misfit([opening.Left, opening.Right], $"the hinges {doors.Hinge.Name} reach {faults.Print(Size.Constant(reach))} into {opening.Name}, which is {faults.Print(depth)} deep",
                [new("reach", reach, "mm"), new("depth", depth.Value, "mm")], "make the cabinet deeper, or take smaller hinges", "derived (geometry)");
    }

    private Panel HingeSide(bool hangsLeft) => assembly.Find(hangsLeft ? opening.Left : opening.Right)!;

    // Given cups stay where they are. Others stand the end distance from both ends and evenly between, the outer two moved alike where one of
    // them has to move.
    private void Hinges(string doorId, bool hangsLeft)
    {
        var (from, height) = (layout.Bottom, layout.Height);
        if (!doors.Cups.IsEmpty)
        {
            for (var i = 0; i < doors.Cups.Length; i++) Hang(doorId, hangsLeft, (from + doors.Cups[i]).As("hinge-height"), i + 1);
            return;
        }

        var count = doors.Hinges ?? HingeGeometry.ByMass(assembly.Find(doorId)!.MassKg);
        var body = doors.Hinge.BodyHeight;
        var first = Size.Smallest(FromEnds, height / 4).As("hinge-end-distance");
        var pitch = ((height - 2 * first) / (count - 1)).As("hinge-pitch");
        var (low, high) = (from.Value + body.Value / 2, from.Value + height.Value - body.Value / 2);
        var (lowest, highest) = (from + first, from + height - first);
        var taken = new List<double>();
        var obstacle = Obstacle(hangsLeft);
        string? InTheWay(double z) => taken.Exists(t => Math.Abs(t - z) < body.Value) ? doorId : obstacle(z);

        // Both ends alike, where that keeps them apart: a door is then the same either way up.
        var alike = Dodging.Nearest(first, low - from.Value, height.Value / 2 - body.Value / 2, true, d => InTheWay(from.Value + d) ?? InTheWay(from.Value + height.Value - d));
        var heights = new Size[count];
        if (alike is not null && height.Value - 2 * alike.Value < Math.Min(layout.Width.Value, height.Value / 2)) alike = null;
        heights[0] = Place(alike is null ? lowest : from + alike, true);
        heights[^1] = Place(alike is null ? highest : from + height - alike, false);
        for (var i = 1; i < count - 1; i++) heights[i] = Place(from + first + (double)i * pitch, true);
        for (var i = 0; i < count; i++) Hang(doorId, hangsLeft, heights[i], i + 1);

        Size Place(Size wanted, bool isUpFirst)
        {
            var z = (Dodging.Nearest(wanted, low, high, isUpFirst, InTheWay) ?? wanted).As("hinge-height");
            taken.Add(z.Value);
            return z;
        }
    }

    // What a hinge at a height would meet: a panel, hardware, what slides out past it, or what is drilled in the side already.
    private Func<double, string?> Obstacle(bool hangsLeft)
    {
        var side = HingeSide(hangsLeft);
        var column = Body(hangsLeft, layout.Bottom.Value, (layout.Bottom + layout.Height).Value);
        var reach = doors.Hinge.BodyHeight.Value / 2 + Clearance;
        var inTheWay = assembly.Panels
            .Where(p => p != side && p.Placement is not null).Select(p => (p.Id, Box: p.Placement!.ToAssembly(p.Box)))
            .Concat(assembly.Hardware.SelectMany(h => h.Volumes.Select(v => (h.Id, Box: assembly.Find(h.Mounts[0].Panel)!.Placement!.ToAssembly(v)))))
            .Concat(assembly.Motions.OfType<Travel>().SelectMany(m => m.Panels.Select(p => (m.Id, Box: m.Swept(assembly.Find(p)!.Placement!.ToAssembly(assembly.Find(p)!.Box))))))
            .Where(o => o.Box.Intersection(column) is not null).ToList();
        var drilled = new Clearing(side);
        // The whole plate lies on the side, which may end before the door does.
        var (foot, head) = side.Extent(2);
        var plate = (doors.Hinge.PlateSpacing?.Value ?? 0) / 2 + doors.Hinge.PlateDiameter.Value / 2 + Clearance;
        return z => z - plate < foot.Value || z + plate > head.Value ? side.Id : inTheWay.Find(o => z > o.Box.Min.Z - reach + Tolerance.Length && z < o.Box.Max.Z + reach - Tolerance.Length).Id
            ?? PlateBores("", side, hangsLeft, Size.Constant(z)).Select(drilled.Obstacle).FirstOrDefault(o => o is not null);
    }

    private Box3 Body(bool hangsLeft, double low, double high)
    {
        var hinge = doors.Hinge;
        var inside = hangsLeft ? opening.X.From.Value : opening.X.From.Value + opening.X.Extent.Value;
        var back = Math.Max(layout.Back.Value, 0);
        return Box3.Between(new Point3(inside, back, low), new Point3(inside + (hangsLeft ? 1 : -1) * hinge.BodyReach.Value, back + hinge.BodyDepth.Value, high));
    }

    private static Surface FaceTowards(Panel side, bool hangsLeft) =>
        side.Facing(Surface.Inside) == (hangsLeft ? Direction.Right : Direction.Left) ? Surface.Inside : Surface.Outside;

    // A door that a gasket holds further off takes its plates with it.
    private Size PlateSetBack(Size setBack) =>
        doors.Mount == DoorMount.Inset ? HingeGeometry.PlateSetBackInset(setBack, doors.Board.Thickness, doors.Recess)
        : doors.Gasket is { } gasket ? (setBack - (gasket - DoorLayout.Buffer)).As("plate-set-back")
        : setBack;

    private IEnumerable<Bore> PlateBores(string id, Panel side, bool hangsLeft, Size z)
    {
        var hinge = doors.Hinge;
        Position On(Size setBack, Size height) => side.OnFace(new SizePoint(Size.Zero, PlateSetBack(setBack), height));
        Position[] places = hinge.PlateSpacing is { } spacing
            ? [On(hinge.PlateSetBack, z - spacing / 2), On(hinge.PlateSetBack, z + spacing / 2)]
            : [On(hinge.PlateSetBack, z), On(hinge.PlateSecondSetBack!, z)];
        return places.Select(at => Bore.Blind(id, FaceTowards(side, hangsLeft), at, hinge.PlateDiameter, hinge.PlateDepth, BoreUse.Pilot));
    }

    // Cup and fixing holes in the door, plate holes in the side, all at one height.
    private void Hang(string doorId, bool hangsLeft, Size z, int number)
    {
        var hinge = doors.Hinge;
        var id = FormattableString.Invariant($"{doorId}/hinge-{number}");
        var (door, side) = (assembly.Find(doorId)!, HingeSide(hangsLeft));
        var (edge, other) = door.Extent(0);
        var hingeEdge = hangsLeft ? edge : other;
        var toCup = HingeGeometry.CupCentre(hinge.BoringDistance, hinge.CupDiameter);
        Position OnDoor(Size distance, Size height) => door.OnFace(new SizePoint(hangsLeft ? hingeEdge + distance : hingeEdge - distance, Size.Zero, height));
        var halfSpan = hinge.FixingSpan / 2;
        Bore[] bores =
        [
            Bore.Blind(id, Surface.Inside, OnDoor(toCup, z), hinge.CupDiameter, hinge.CupDepth, BoreUse.Seat),
            Bore.Blind(id, Surface.Inside, OnDoor(toCup + hinge.FixingOffset, z - halfSpan), hinge.FixingDiameter, hinge.FixingDepth, BoreUse.Pilot),
            Bore.Blind(id, Surface.Inside, OnDoor(toCup + hinge.FixingOffset, z + halfSpan), hinge.FixingDiameter, hinge.FixingDepth, BoreUse.Pilot),
        ];
        assembly.Write(doorId, doors.Cups.IsEmpty ? bores : bores.Select(b => b with { Method = BoreMethod.Given }));
        assembly.Write(side.Id, PlateBores(id, side, hangsLeft, z));

        var half = hinge.BodyHeight.Value / 2;
        var box = Body(hangsLeft, z.Value - half, z.Value + half);
        var arm = doors.Mount == DoorMount.Inset ? ", inset arm" : IsShared(side) ? ", cranked arm" : "";
        assembly.Add(new PlacedHardware(id, HardwareKind.Hinge, hinge.Name + arm,
            [new Mount(side.Id, FaceTowards(side, hangsLeft), side.OnFace(new SizePoint(Size.Zero, PlateSetBack(hinge.PlateSetBack), z))), new Mount(doorId, Surface.Inside, OnDoor(toCup, z))],
            [Box3.Between(side.Placement!.ToPanel(box.Min), side.Placement.ToPanel(box.Max))], Sizes(side, hangsLeft, hingeEdge)));
    }

    // The plate that brings the door where it stands: by the straight arm, by the cranked one on a shared panel, by the one for inset doors.
    private ImmutableArray<Size> Sizes(Panel side, bool hangsLeft, Size hingeEdge)
    {
        var hinge = doors.Hinge;
        var face = hangsLeft ? opening.X.From : opening.X.From + opening.X.Extent;
        if (doors.Mount == DoorMount.Inset)
        {
            var gap = (hangsLeft ? hingeEdge - face : face - hingeEdge).As("door-gap");
            if (hinge.InsetConstant is { } constant) return [gap, HingeGeometry.PlateHeightInset(constant, hinge.BoringDistance, gap)];
            Unsuited(side, "doors between the sides", "inset-constant");
            return [gap];
        }

        var overlay = (hangsLeft ? face - hingeEdge : hingeEdge - face).As("overlay");
        var isShared = IsShared(side);
        if (isShared && hinge.HalfFixedDistance is null) Unsuited(side, "doors that share a panel", "half-fixed-distance");
        return [overlay, HingeGeometry.PlateHeight(isShared ? hinge.HalfFixedDistance ?? hinge.FixedDistance : hinge.FixedDistance, hinge.BoringDistance, overlay)];
    }

    private bool IsShared(Panel side) => doors.Mount == DoorMount.HalfOverlay || side.Id is not ("left-side" or "right-side");

    private void Unsuited(Panel side, string doorsInWords, string key) => assembly.Misfit(
        [side.Id], $"the hinge {doors.Hinge.Name} has no arm for {doorsInWords}", [], $"take a hinge that has one; its “{key}” is on its maker's sheet", "hinge makers' sheets");

    // On the back of the right-hand door, behind the gap: it closes the gap and stops the left-hand door.
    private string Strip(string doorId, Board board, Size width)
    {
        var id = $"{opening.Path}centre-strip";
        var end = Size.Default(5, "strip-end-distance");
        var middle = layout.Left + layout.Width + layout.Gap / 2;
        var z = new Stretch(opening.Z.From + end, opening.Z.Extent - 2 * end);
        if (faults.Fill(assembly, id, board, (new(middle - width / 2, width), new(layout.Back, board.Thickness), z), Direction.Back, Direction.Top, [], doors.Source))
            assembly.JoinFaces(id, doorId, joints.FaceToFace(board, doors.Board));
        return id;
    }

    // The body hangs under the panel above the opening, near the edge that opens, and the keeper is on the back of the door before it.
    private void Catch(TwoPartSpec held, string doorId, bool hangsLeft)
    {
        var fromEdge = Size.Default(60, "catch-distance");
        var (door, above) = (assembly.Find(doorId)!, assembly.Find(opening.Top)!);
        var (low, high) = door.Extent(0);
        var wanted = hangsLeft ? high - fromEdge : low + fromEdge;
        // The body begins where the keeper ends, or just inside the edge it hangs from.
        var y = Size.Largest(layout.Back + held.Keeper.Height, Size.Default(1, "beside-an-edge")) + held.Body.Width / 2;
        var face = above.Facing(Surface.Inside) == Direction.Bottom ? Surface.Inside : Surface.Outside;
        var standing = assembly.Panels.Where(p => p != above && p.Placement is not null).Select(p => (p.Id, Box: p.Placement!.ToAssembly(p.Box))).ToList();
        string? InTheWay(double at)
        {
            var ceiling = (opening.Z.From + opening.Z.Extent).Value;
            var half = held.Body.Length.Value / 2;
            var body = new Box3(new(at - half, y.Value - held.Body.Width.Value / 2, ceiling - held.Body.Height.Value), new(at + half, y.Value + held.Body.Width.Value / 2, ceiling));
            return standing.Find(p => p.Box.Intersection(body) is not null).Id;
        }

        var margin = held.Body.Length.Value / 2;
        var x = Dodging.Nearest(wanted, low.Value + margin, high.Value - margin, !hangsLeft, InTheWay) ?? wanted;
        // Before the middle of the body, or as high as the door allows.
        var z = Size.Smallest(opening.Z.From + opening.Z.Extent - held.Body.Height / 2, door.Extent(2).To - held.Keeper.Width / 2 - Size.Default(1, "beside-an-edge"));
        Fronts.Fit(assembly, new($"{doorId}/catch", held.Body, above, face, above.OnFace(new SizePoint(x, y, Size.Zero)), Fronts.Level(above)));
        Fronts.Fit(assembly, new($"{doorId}/keeper", held.Keeper, door, Surface.Inside, door.OnFace(new SizePoint(x, Size.Zero, z)), Fronts.Level(door)));
    }

    // Inside the opening, clear of the cups and arms of the hinges.
    private IReadOnlyList<string> Line(string doorId, Board board, bool hangsLeft)
    {
        var free = Size.Default(3, "lining-in-opening");
        var door = assembly.Find(doorId)!;
        var (left, right) = door.Extent(0);
        var (low, high) = (opening.X.From, opening.X.From + opening.X.Extent);
        var from = (left.Value > low.Value ? left : low) + free;
        var to = (right.Value < high.Value ? right : high) - free;
        var (floor, ceiling) = (layout.Bottom.Value > opening.Z.From.Value ? layout.Bottom : opening.Z.From, opening.Z.From + opening.Z.Extent);
        var top = (layout.Bottom + layout.Height).Value < ceiling.Value ? layout.Bottom + layout.Height : ceiling;
        var sheet = new LiningSheet(
            $"{doorId}-lining", board, (new(from, to - from), new(layout.Back, board.Thickness), new(floor + free, top - floor - 2 * free)), Direction.Front, Direction.Top, doorId, null, doors.Source);
        var hinge = doors.Hinge;
        var reach = hinge.BoringDistance.Value + hinge.CupDiameter.Value + hinge.FixingOffset.Value;
        var edge = hangsLeft ? left.Value : right.Value;
        var cups = assembly.Hardware.Where(h => h.Kind == HardwareKind.Hinge && h.Mounts[1].Panel == doorId).Select(h =>
        {
            var z = door.Placement!.ToAssembly(door.OnSurface(Surface.Inside, h.Mounts[1].At.Point)).Z;
            var half = hinge.BodyHeight.Value / 2;
            return (h.Id, Box3.Between(
                new Point3(edge, layout.Back.Value - 1, z - half), new Point3(edge + (hangsLeft ? reach : -reach), layout.Back.Value + board.Thickness.Value, z + half)));
        });
        return new LiningCutter(assembly, faults).Cut(sheet, cups.ToList());
    }

    // All round the opening, on the front edges of the carcass.
    private void Gasket(Size thickness)
    {
        var length = (2 * (opening.X.Extent + opening.Z.Extent)).As("gasket-length");
        var side = assembly.Find(opening.Left)!;
        var at = side.OnFace(new SizePoint(Size.Zero, Size.Zero, opening.Z.From));
        assembly.Add(new PlacedHardware($"{opening.Path}gasket", HardwareKind.Gasket, "gasket", [new Mount(side.Id, FaceTowards(side, true), at)], [], [thickness.As("gasket-thickness"), length]));
    }
}
