namespace ShopDrawings.Kernel;

/// <summary>Doors over the front of a cabinet and the hinges they hang on. Lengths in mm.</summary>
internal sealed class DoorHanging(CabinetSpec spec, CabinetFrame frame, AssemblyBuilder assembly, Faults faults)
{
    // Closed doors stand off the carcass by the thickness of a buffer (common practice, no source).
    private static readonly Size Buffer = Size.Default(2, "buffer");

    // From the ends of the door to its first and last hinge (common practice, no source).
    private static readonly Size FromEnds = Size.Default(100, "hinge-end-distance");

    /// <summary>Adds the doors, if any, and their hinges.</summary>
    public void Hang()
    {
        if (spec.Doors is not { } doors) return;
        var (width, sideReveal, gap) = AcrossWidth(doors);
        var (height, lowReveal) = AcrossHeight(doors);
        foreach (var (size, what) in new[] { (sideReveal, "wide"), (lowReveal, "high"), (gap, "wide") })
            if (size.Value < -Tolerance.Length) faults.Add($"{(doors.Count == 2 ? "two doors are" : "a door is")} too {what} by {faults.Print(Size.Zero - size)} on each side for this cabinet; change the doors or the cabinet", doors.Source);
        if (sideReveal.Value > frame.Thickness.Value)
            faults.Add($"{(doors.Count == 2 ? "two doors" : "a door")} {faults.Print(width)} wide leave {faults.Print(sideReveal - frame.Thickness)} of the opening uncovered on each side; make them about {faults.Print((frame.Width - 2 * doors.Reveal - gap) / doors.Count)} wide, or the cabinet narrower", doors.Actual.Width?.Source ?? default, doors.Source);
        if (width.Value <= Tolerance.Length || height.Value <= Tolerance.Length) faults.Add("no room is left for the doors; make the cabinet larger or the reveals smaller", doors.Source);
        if (faults.All.Count > 0) return;

        var from = spec.Recess + lowReveal;
        string[] ids = doors.Hanging == Hanging.Pair ? ["left-door", "right-door"] : ["door"];
        for (var i = 0; i < ids.Length; i++)
        {
            var x = i == 0 ? sideReveal : sideReveal + width + gap;
            var y = Size.Zero - Buffer - doors.Board.Thickness;
            (Direction, Size)[] bands = doors.Bands is { } band ? [(Direction.Left, band), (Direction.Right, band), (Direction.Bottom, band), (Direction.Top, band)] : [];
            if (!faults.Fill(assembly, ids[i], doors.Board, (new(x, width), new(y, doors.Board.Thickness), new(from, height)), Direction.Front, Direction.Top, bands, doors.Source)) return;
            var hingesLeft = doors.Hanging == Hanging.Left || (doors.Hanging == Hanging.Pair && i == 0);
            Hinges(doors.Hinge, ids[i], hingesLeft, from, height);
        }
    }

    // Doors of a given size are spread evenly; doors without one fill what reveals and gap leave.
    private (Size Width, Size Reveal, Size Gap) AcrossWidth(DoorsSpec doors)
    {
        var n = doors.Count;
        var gap = n == 1 ? Size.Zero : doors.Gap;
        if (doors.Module.Width is { } module)
        {
            var actual = doors.Actual.Width ?? module - (n == 1 ? 2 * doors.Reveal : doors.Gap);
            var share = ((module - actual) / 2).As("door-reveal");
            var outer = ((frame.Width - (double)n * module) / 2 + share).As("outer-reveal");
            return (actual, outer, n == 1 ? Size.Zero : (2 * share).As("centre-gap"));
        }

        if (doors.Actual.Width is { } given) return (given, ((frame.Width - (double)n * given - gap) / 2).As("outer-reveal"), gap);
        var free = frame.Width - 2 * doors.Reveal - gap;
        var width = (n == 1 ? free : free / n).SnappedDown(spec.Step).As("door-width");
        return (width, spec.Step is null ? doors.Reveal : ((frame.Width - (double)n * width - gap) / 2).As("outer-reveal"), gap);
    }

    private (Size Height, Size Reveal) AcrossHeight(DoorsSpec doors)
    {
        var front = spec.Recess == Size.Zero ? frame.Height : (frame.Height - spec.Recess).As("front-height");
        if (doors.Actual.Height is { } given) return (given, ((front - given) / 2).As("end-reveal"));
        if (doors.Module.Height is { } module) return ((module - 2 * doors.Reveal).As("door-height"), ((front - module) / 2 + doors.Reveal).As("end-reveal"));
        var height = (front - 2 * doors.Reveal).SnappedDown(spec.Step).As("door-height");
        return (height, spec.Step is null ? doors.Reveal : ((front - height) / 2).As("end-reveal"));
    }

    private void Hinges(Hinge hinge, string doorId, bool hangsLeft, Size from, Size height)
    {
        var door = assembly.Find(doorId)!;
        var side = assembly.Find(hangsLeft ? "left-side" : "right-side")!;
        var count = Math.Max(HingeGeometry.ByHeight(height.Value), HingeGeometry.ByMass(door.MassKg));
        var first = (height.Value < 2 * FromEnds.Value + hinge.BodyHeight.Value ? height / 4 : FromEnds).As("hinge-end-distance");
        var pitch = ((height - 2 * first) / (count - 1)).As("hinge-pitch");
        var blocked = Blocked(side, hinge, hangsLeft);
        for (var i = 0; i < count; i++)
        {
            var wanted = i == 0 ? from + first : i == count - 1 ? from + height - first : from + first + (double)i * pitch;
            var z = Clear(wanted, blocked, from.Value + hinge.BodyHeight.Value / 2, (from + height).Value - hinge.BodyHeight.Value / 2);
            Hang(hinge, door, side, hangsLeft, z, $"{doorId}/hinge-{i + 1}");
            blocked.Add((z - hinge.BodyHeight, z + hinge.BodyHeight));
        }
    }

    // The stretches of height where a hinge's body would meet a panel, a slide, or what slides out past it.
    private List<(Size From, Size To)> Blocked(Panel side, Hinge hinge, bool hangsLeft)
    {
        const double Clearance = 3;
        var reach = hinge.BodyHeight / 2 + Size.Default(Clearance, "hinge-clearance");
        var inside = hangsLeft ? frame.Thickness.Value : frame.Width.Value - frame.Thickness.Value;
        var body = Box3.Between(new Point3(inside, 0, 0), new Point3(inside + (hangsLeft ? 1 : -1) * hinge.BodyReach.Value, hinge.BodyDepth.Value, frame.Height.Value));
        var panels = assembly.Panels
            .Where(p => p != side && p.Placement is { } at && at.ToAssembly(p.Box).Intersection(body) is not null)
            .Select(p => p.Extent(2));
        var hardware = assembly.Hardware
            .Where(h => h.Kind != HardwareKind.Hinge)
            .SelectMany(h => h.Volumes.Concat(h.Swept).Select(v => assembly.Find(h.Mounts[0].Panel)!.Placement!.ToAssembly(v)))
            .Where(v => v.Intersection(body) is not null)
            .Select(v => (From: Size.Constant(v.Min.Z), To: Size.Constant(v.Max.Z)));
        var stretches = panels.Concat(hardware).Select(z => (From: z.From - reach, To: z.To + reach)).OrderBy(z => z.From.Value).ToList();

        // Those that meet are one, so that an end of one never lies inside another.
        var merged = new List<(Size From, Size To)>();
        foreach (var stretch in stretches)
            if (merged.Count > 0 && stretch.From.Value <= merged[^1].To.Value) merged[^1] = (merged[^1].From, stretch.To.Value > merged[^1].To.Value ? stretch.To : merged[^1].To);
            else merged.Add(stretch);
        return merged;
    }

    // The wanted height, or the nearest one on the door at which nothing is in the way; where there is none, a check will say so.
    private static Size Clear(Size wanted, List<(Size From, Size To)> blocked, double lowest, double highest)
    {
        Size? best = null;
        foreach (var candidate in blocked.SelectMany(b => new[] { b.From, b.To }).Prepend(wanted))
            if (candidate.Value >= lowest - Tolerance.Length && candidate.Value <= highest + Tolerance.Length && !blocked.Exists(b => candidate.Value > b.From.Value + Tolerance.Length && candidate.Value < b.To.Value - Tolerance.Length)
                && (best is null || Math.Abs(candidate.Value - wanted.Value) < Math.Abs(best.Value - wanted.Value) - Tolerance.Length)) best = candidate;
        return (best ?? wanted).As(best == wanted || best is null ? "hinge-height" : "hinge-height-clear-of-what-is-in-the-way");
    }

    // Cup and fixing holes in the door, plate holes in the side, all at one height.
    private void Hang(Hinge hinge, Panel door, Panel side, bool hangsLeft, Size z, string id)
    {
        var (edge, other) = door.Extent(0);
        var hingeEdge = hangsLeft ? edge : other;
        Size Inwards(Size distance) => hangsLeft ? hingeEdge + distance : hingeEdge - distance;
        var toCup = HingeGeometry.CupCentre(hinge.BoringDistance, hinge.CupDiameter);
        Position OnDoor(Size distance, Size height) => door.OnFace(new SizePoint(Inwards(distance), Size.Zero, height));
        var halfSpan = hinge.FixingSpan / 2;
        assembly.Write(door.Id,
            Bore.Blind(id, Surface.Inside, OnDoor(toCup, z), hinge.CupDiameter, hinge.CupDepth),
            Bore.Blind(id, Surface.Inside, OnDoor(toCup + hinge.FixingOffset, z - halfSpan), hinge.FixingDiameter, hinge.FixingDepth, BoreUse.Pilot),
            Bore.Blind(id, Surface.Inside, OnDoor(toCup + hinge.FixingOffset, z + halfSpan), hinge.FixingDiameter, hinge.FixingDepth, BoreUse.Pilot));

        Position OnSide(Size height) => side.OnFace(new SizePoint(Size.Zero, hinge.PlateSetBack, height));
        var halfSpacing = hinge.PlateSpacing / 2;
        assembly.Write(side.Id,
            Bore.Blind(id, Surface.Inside, OnSide(z - halfSpacing), hinge.PlateDiameter, hinge.PlateDepth, BoreUse.Pilot),
            Bore.Blind(id, Surface.Inside, OnSide(z + halfSpacing), hinge.PlateDiameter, hinge.PlateDepth, BoreUse.Pilot));

        // The door covers the side's edge from its hinge edge inwards.
        var overlay = (hangsLeft ? frame.Thickness - hingeEdge : hingeEdge - (frame.Width - frame.Thickness)).As("overlay");
        var plate = HingeGeometry.PlateHeight(hinge.FixedDistance, hinge.BoringDistance, overlay);
        var inside = hangsLeft ? frame.Thickness.Value : frame.Width.Value - frame.Thickness.Value;
        var reach = (hangsLeft ? 1 : -1) * hinge.BodyReach.Value;
        var half = hinge.BodyHeight.Value / 2;
        var box = Box3.Between(new Point3(inside, 0, z.Value - half), new Point3(inside + reach, hinge.BodyDepth.Value, z.Value + half));
        assembly.Add(new PlacedHardware(id, HardwareKind.Hinge, hinge.Name,
            [new Mount(side.Id, Surface.Inside, OnSide(z)), new Mount(door.Id, Surface.Inside, OnDoor(toCup, z))],
            [Box3.Between(side.Placement!.ToPanel(box.Min), side.Placement.ToPanel(box.Max))], [overlay, plate]));
    }
}
