namespace ShopDrawings.Kernel;

/// <summary>Four castors bolted through the bottom, clear of everything that goes down around them. Lengths in mm.</summary>
internal sealed class CastorMounting(CastorsSpec spec, CabinetSpec cabinet, CabinetFrame frame, AssemblyBuilder assembly, Faults faults)
{
    /// <summary>
    /// Adds the castors and their bolt holes. Where sides, back or plinth go down beside them, the swivel axis stands one swivel radius and the
    /// clearance away; else the plate stands the clearance inside the bottom's edge. Its bolts come up clear of what stands on the edges.
    /// </summary>
    public void Mount()
    {
        var castor = spec.Castor;
        var swept = (castor.SwivelRadius + spec.Clearance).As("castor-distance");
        var under = Underside.Of(cabinet, frame);
        Size Distance(Size plate, bool beside) => beside && swept.Value > plate.Value / 2 + spec.Clearance.Value ? swept : plate / 2 + spec.Clearance;
        var fromSide = ClearOf(cabinet.IsBottomUnder ? frame.Thickness : Size.Zero, castor.HoleWidth, Distance(castor.PlateWidth, under.IsWalledAtSides));
        var fromFront = Distance(castor.PlateLength, under.IsWalledInFront);
        var behind = cabinet.Back?.Fit is BackFit.Groove or BackFit.Between ? frame.BodyDepth - frame.ClearDepth : Size.Zero;
        var fromRear = ClearOf(behind, castor.HoleLength, Distance(castor.PlateLength, under.IsWalledBehind));
        (Size X, Direction Side)[] axes = [(under.X.From + fromSide, Direction.Left), (under.X.From + under.X.Extent - fromSide, Direction.Right)];
        fromFront = BesideWhatStands(fromFront, d => under.Y.From.Value + d, axes, under);
        fromRear = BesideWhatStands(fromRear, d => (under.Y.From + under.Y.Extent).Value - d, axes, under);
        var (across, along) = (under.X.Extent - 2 * fromSide, under.Y.Extent - fromFront - fromRear);
        if (Math.Min(across.Value, along.Value) < 2 * swept.Value - Tolerance.Length)
        {
            assembly.Misfit(
                ["bottom"],
                $"four castors that sweep {faults.Print(castor.SwivelRadius)} around their axes do not fit under a bottom that is free on {faults.Print(under.X.Extent)} × {faults.Print(under.Y.Extent)}: their axes would stand {faults.Print(across)} and {faults.Print(along)} apart, and need {faults.Print(2 * swept)}; they are left out",
                [new("swivel radius", castor.SwivelRadius.Value, "mm"), new("apart across", across.Value, "mm"), new("apart front to back", along.Value, "mm"), new("least apart", 2 * swept.Value, "mm")],
                $"take smaller ones{(cabinet.Plinth is null ? "" : ", leave the plinth out")} or make the cabinet larger", "derived (geometry)");
            return;
        }

        if (castor.Height.Value <= cabinet.Recess.Value + Tolerance.Length)
            assembly.Misfit(
                ["bottom", "left-side", "right-side"],
                $"castors {faults.Print(castor.Height)} high do not reach below sides that hang down {faults.Print(cabinet.Recess)}",
                [new("castor height", castor.Height.Value, "mm"), new("recess", cabinet.Recess.Value, "mm")],
                "make “recess” less or take higher castors", "derived (geometry)");

        var bottom = assembly.Find("bottom")!;
        foreach (var (x, side) in axes)
            foreach (var (y, end) in new[] { (under.Y.From + fromFront, Direction.Front), (under.Y.From + under.Y.Extent - fromRear, Direction.Back) })
                Mount(bottom, x, y, $"{(end == Direction.Front ? "front" : "rear")}-{side.Word()}-castor", spec.Braked.Contains(side) || spec.Braked.Contains(end));
    }

    // Further in where the bolts would come up under what stands on the bottom, such as doors between the panels.
    private Size BesideWhatStands(Size distance, Func<double, double> y, (Size X, Direction Side)[] axes, Underside under)
    {
        const double Head = 1;
        var castor = spec.Castor;
        var radius = castor.HoleDiameter.Value / 2;
        var standing = assembly.Panels.Where(p => p.Placement is not null && p.Id != "bottom").Select(p => (p.Id, Box: p.Placement!.ToAssembly(p.Box))).ToList();
        string? Above(double d)
        {
            foreach (var (x, _) in axes)
                foreach (var dx in new[] { -1, 1 })
                    foreach (var dy in new[] { -1, 1 })
                    {
                        var at = new Point3(x.Value + dx * castor.HoleWidth.Value / 2, y(d) + dy * castor.HoleLength.Value / 2, frame.Floor.Value + Head);
                        var bolt = new Box3(at - new Point3(radius, radius, Head), at + new Point3(radius, radius, radius));
                        if (standing.Find(p => p.Box.Intersection(bolt) is not null).Id is { } id) return id;
                    }

            return null;
        }

        return Dodging.Nearest(distance, distance.Value, under.Y.Extent.Value / 2, true, Above) ?? distance;
    }

    // Far enough from an edge that the outer bolts come up beside what covers the edge, with 3 mm between (common practice, no source).
    private Size ClearOf(Size covered, Size holeSpan, Size distance)
    {
        var needed = covered + holeSpan / 2 + spec.Castor.HoleDiameter / 2 + Size.Default(3, "beside-a-panel");
        return covered.Value > 0 && needed.Value > distance.Value ? needed.As("castor-distance") : distance;
    }

    private void Mount(Panel bottom, Size x, Size y, string id, bool isBraked)
    {
        var castor = spec.Castor;
        Position At(Size px, Size py) => bottom.OnFace(new SizePoint(px, py, Size.Zero));
        var (dx, dy) = (castor.HoleWidth / 2, castor.HoleLength / 2);
        assembly.Write(bottom.Id,
            from px in new[] { x - dx, x + dx }
            from py in new[] { y - dy, y + dy }
            select Bore.Through(id, Surface.Outside, At(px, py), castor.HoleDiameter, BoreUse.Clearance));

        // The block around everything the wheel can sweep, and the plate above it.
        var radius = Math.Max(castor.SwivelRadius.Value, Math.Max(castor.PlateLength.Value, castor.PlateWidth.Value) / 2);
        var top = cabinet.Recess.Value;
        var box = Box3.Between(
            new Point3(x.Value - radius, y.Value - radius, top - castor.Height.Value), new Point3(x.Value + radius, y.Value + radius, top));
        assembly.Add(new PlacedHardware(id, HardwareKind.Castor, isBraked ? $"{castor.Name} with brake" : castor.Name, [new Mount(bottom.Id, Surface.Outside, At(x, y))],
            [Box3.Between(bottom.Placement!.ToPanel(box.Min), bottom.Placement.ToPanel(box.Max))], [castor.SwivelRadius]));
    }
}
