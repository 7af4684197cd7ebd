namespace ShopDrawings.Kernel;

/// <summary>Four castors bolted through the bottom, clear of everything that hangs down around them. Lengths in mm.</summary>
internal sealed class CastorMounting(CastorsSpec spec, CabinetSpec cabinet, CabinetFrame frame, AssemblyBuilder assembly, Faults faults)
{
    /// <summary>
    /// Adds the castors and their bolt holes. Where sides or back hang down beside them, the swivel axis stands one swivel radius and the
    /// clearance away; else the plate stands the clearance inside the bottom's edge. Its bolts come up clear of what stands on the edges.
    /// </summary>
    public void Mount()
    {
        var castor = spec.Castor;
        var swept = (castor.SwivelRadius + spec.Clearance).As("castor-distance");
        var bottom = assembly.Find("bottom")!;
        var hangsDown = cabinet.Recess.Value > 0;
        // What of the bottom sits in housings of the sides counts as theirs.
        var (left, right) = bottom.Extent(0);
        if (!cabinet.IsBottomUnder) (left, right) = (left + cabinet.Joints.Bottom(true).Housing, right - cabinet.Joints.Bottom(false).Housing);
        var (front, rear) = bottom.Extent(1);
        Size Distance(Size plate, bool beside) => beside && swept.Value > plate.Value / 2 + spec.Clearance.Value ? swept : plate / 2 + spec.Clearance;
        var fromSide = ClearOf(cabinet.IsBottomUnder ? frame.Thickness : Size.Zero, castor.HoleWidth, Distance(castor.PlateWidth, hangsDown));
        var fromFront = Distance(castor.PlateLength, false);
        var behind = cabinet.Back?.Fit is BackFit.Groove or BackFit.Between ? frame.BodyDepth - frame.ClearDepth : Size.Zero;
        var fromRear = ClearOf(behind, castor.HoleLength, Distance(castor.PlateLength, hangsDown && cabinet.Back?.Fit is BackFit.WithinSides or BackFit.Behind));
        var needed = 2 * swept;
        if ((right - left - 2 * fromSide).Value < needed.Value || (rear - front - fromFront - fromRear).Value < needed.Value)
        {
            faults.Add($"four castors that sweep {faults.Print(castor.SwivelRadius)} around their axes do not fit under a bottom of {faults.Print(right - left)} × {faults.Print(rear - front)}; take smaller ones", spec.Source);
            return;
        }

        if (castor.Height.Value <= cabinet.Recess.Value + Tolerance.Length)
        {
            faults.Add($"castors {faults.Print(castor.Height)} high do not reach below sides that hang down {faults.Print(cabinet.Recess)}; make “recess” less or take higher castors", cabinet.Recess.Source, spec.Source);
            return;
        }

        foreach (var (x, side) in new[] { (left + fromSide, "left"), (right - fromSide, "right") })
            foreach (var (y, end) in new[] { (front + fromFront, "front"), (rear - fromRear, "rear") })
                Mount(bottom, x, y, $"{end}-{side}-castor");
    }

    // Far enough from an edge that the outer bolts come up beside what covers the edge, with 3 mm between (common practice, no source).
    private Size ClearOf(Size covered, Size holeSpan, Size distance)
    {
        var needed = covered + holeSpan / 2 + spec.Castor.HoleDiameter / 2 + Size.Default(3, "beside-a-panel");
        return covered.Value > 0 && needed.Value > distance.Value ? needed.As("castor-distance") : distance;
    }

    private void Mount(Panel bottom, Size x, Size y, string id)
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
        var top = frame.Floor.Value - frame.Thickness.Value;
        var box = Box3.Between(
            new Point3(x.Value - radius, y.Value - radius, top - castor.Height.Value), new Point3(x.Value + radius, y.Value + radius, top));
        assembly.Add(new PlacedHardware(id, HardwareKind.Castor, castor.Name, [new Mount(bottom.Id, Surface.Outside, At(x, y))],
            [Box3.Between(bottom.Placement!.ToPanel(box.Min), bottom.Placement.ToPanel(box.Max))], [castor.SwivelRadius]));
    }
}
