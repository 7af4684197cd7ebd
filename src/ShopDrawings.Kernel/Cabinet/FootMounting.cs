namespace ShopDrawings.Kernel;

/// <summary>Levelling feet under the bottom, in a row at the front and one at the rear, at least two in each. Lengths in mm.</summary>
internal sealed class FootMounting(FeetSpec spec, CabinetSpec cabinet, CabinetFrame frame, AssemblyBuilder assembly, Faults faults)
{
    /// <summary>
    /// Adds the feet and their holes. Their plates stand the inset away from the bottom's edges, or from the sides that hang down, and behind a
    /// plinth. Feet hold the clips of a plinth that stands before them.
    /// </summary>
    public void Mount()
    {
        var foot = spec.Foot;
        var under = Underside.Of(cabinet, frame);
        var bottomEnd = cabinet.IsBottomUnder ? frame.BodyDepth : frame.LevelDepth;
        var (left, right) = (under.X.From + spec.Inset + Width / 2, under.X.From + under.X.Extent - spec.Inset - Width / 2);
        var front = (under.IsWalledInFront ? Size.Largest(spec.Inset, under.Y.From) : spec.Inset) + Length / 2;
        var last = under.Y.From + under.Y.Extent;
        var rear = (cabinet.Plinth is { HasRear: true } ? Size.Smallest(bottomEnd - spec.Inset, last) : last - spec.Inset) - Length / 2;
        if (right.Value - left.Value < Width.Value - Tolerance.Length || rear.Value - front.Value < Length.Value - Tolerance.Length)
        {
            assembly.Misfit(
                ["bottom"],
                $"four feet with plates of {faults.Print(Length)} × {faults.Print(Width)} do not fit under a bottom that is free on {faults.Print(under.X.Extent)} × {faults.Print(under.Y.Extent)}, {faults.Print(spec.Inset)} inside its edges; they are left out",
                [
                    new("plate width", Width.Value, "mm"), new("apart across", right.Value - left.Value, "mm"),
                    new("plate length", Length.Value, "mm"), new("apart front to back", rear.Value - front.Value, "mm"),
                ],
                "make “inset” less, take smaller feet or make the cabinet larger", "derived (geometry)");
            return;
        }

        if (foot.Height.Value <= cabinet.Recess.Value + Tolerance.Length)
            assembly.Misfit(
                ["bottom", "left-side", "right-side"],
                $"feet {faults.Print(foot.Height)} high do not reach below sides that hang down {faults.Print(cabinet.Recess)}",
                [new("foot height", foot.Height.Value, "mm"), new("recess", cabinet.Recess.Value, "mm")],
                "make “recess” less or take higher feet", "derived (geometry)");

        var gaps = Size.Largest(((right - left) / spec.MoreAt).RoundedUp(), Size.Constant(1)).As("gaps");
        var pitch = ((right - left) / gaps).As("foot-pitch");
        var count = (int)Math.Round(gaps.Value) + 1;
        foreach (var (y, end, plinth) in new[] { (front, "front", "plinth"), (rear, "rear", "rear-plinth") })
            for (var i = 0; i < count; i++)
            {
                var place = i == 0 ? "left" : i == count - 1 ? "right" : count == 3 ? "middle" : FormattableString.Invariant($"middle-{i}");
                var x = i == 0 ? left : i == count - 1 ? right : left + (double)i * pitch;
                Mount(x, y, $"{end}-{place}-foot");
                if (i == 0 || i == count - 1) Clip(plinth, x, $"{end}-{place}-clip");
            }
    }

    // What stands on the floor may be wider than its plate.
    private Size Width => Size.Largest(spec.Foot.PlateWidth, spec.Foot.Diameter).As("foot-width");

    private Size Length => Size.Largest(spec.Foot.PlateLength, spec.Foot.Diameter).As("foot-length");

    private void Mount(Size x, Size y, string id)
    {
        var foot = spec.Foot;
        var bottom = assembly.Find("bottom")!;
        Position At(Size px, Size py) => bottom.OnFace(new SizePoint(px, py, Size.Zero));
        static Size[] Around(Size middle, Size span) => span.Value > 0 ? [middle - span / 2, middle + span / 2] : [middle];
        // In a thin bottom the bores are shallower, as its screws are shorter.
        var most = (bottom.Thickness - Size.Default(BoreInPanel.Floor.Default, "least-above-a-foot")).As("foot-hole-depth");
        var depth = foot.HoleDepth.Value <= most.Value ? foot.HoleDepth : most;
        assembly.Write(bottom.Id,
            from px in Around(x, foot.HoleWidth)
            from py in Around(y, foot.HoleLength)
            select Bore.Blind(id, Surface.Outside, At(px, py), foot.HoleDiameter, depth, BoreUse.Pilot));

        var (half, top) = (new Point3(Width.Value / 2, Length.Value / 2, 0), new Point3(x.Value, y.Value, cabinet.Recess.Value));
        var box = Box3.Between(top - half - new Point3(0, 0, foot.Height.Value), top + half);
        assembly.Add(new PlacedHardware(id, HardwareKind.Foot, foot.Name, [new Mount(bottom.Id, Surface.Outside, At(x, y))],
            [Box3.Between(bottom.Placement!.ToPanel(box.Min), bottom.Placement.ToPanel(box.Max))], foot.Heights));
    }

    // A plinth between the sides is screwed; one before the feet is clipped to the outer two. Nothing is drilled for a clip; its place is marked.
    private void Clip(string plinthId, Size x, string id)
    {
        if (cabinet.Recess.Value > 0 || assembly.Find(plinthId) is not { } plinth) return;
        var middle = plinth.OnFace(new SizePoint(x, Size.Zero, Size.Zero - spec.Foot.Height / 2));
        assembly.Write(plinth.Id, new Mark(id, Surface.Inside, middle, null));
        assembly.Add(new PlacedHardware(id, HardwareKind.Clip, $"clip for {spec.Foot.Name}", [new Mount(plinth.Id, Surface.Inside, middle)], [], [spec.Foot.Diameter.As("foot-diameter")]));
    }
}
