namespace ShopDrawings.Kernel;

/// <summary>A shelf on two upright runners that slides between two panels, drawn closed. Lengths in mm.</summary>
internal sealed class SlidingShelf(SlidingShelfSpec spec, JointRule screwed, DoorsSpec? doors, AssemblyBuilder assembly, Faults faults)
{
    // Between an open door and what slides past it, in mm (common practice, no source).
    private const double PastDoor = 3;

    /// <summary>
    /// Adds shelf, runners, slides and their holes. Moving width = clear width − 2 × side clearance (thickness and play of the slide). The
    /// holes of cabinet and runner stand at the slide's own places, counted from its front end; its centre line is the runner's.
    /// </summary>
    public void Build(Space space)
    {
        var slide = spec.Slide;
        var width = SlideGeometry.MovingWidth(space.X.Extent, slide.SideClearance, Size.Zero);
        var runnerFrom = space.Z.From + spec.AboveFloor;
        var shelfFrom = runnerFrom + spec.RunnerHeight;
        var needed = (spec.SetBack + slide.Length + spec.RearClearance).As("needed-depth");
        if (width.Value <= 2 * spec.Board.Thickness.Value)
            faults.Add($"between two slides only {faults.Print(width)} are left for the sliding shelf and its runners; make the bay wider", spec.Source);
        if (needed.Value > space.Depth.Value + Tolerance.Length)
            faults.Add($"a slide {faults.Print(slide.Length)} long needs {faults.Print(needed)} with its set-back and the room for cables behind it; the bay is {faults.Print(space.Depth)} deep: take a shorter slide", spec.Source);
        if (shelfFrom.Value + spec.Board.Thickness.Value > space.Z.From.Value + space.Z.Extent.Value + Tolerance.Length)
            faults.Add($"the sliding shelf with its runners does not fit into a bay {faults.Print(space.Z.Extent)} high", spec.Source);
        if (slide.Height.Value > spec.RunnerHeight.Value + Tolerance.Length)
            faults.Add($"a runner {faults.Print(spec.RunnerHeight)} high does not hold a slide {faults.Print(slide.Height)} high; make “runner-height” more", spec.RunnerHeight.Source, spec.Source);
        if (doors is { Hinge.Intrusion: { Value: > 0 } intrusion } && intrusion.Value + PastDoor > slide.SideClearance.Value)
            faults.Add($"open doors stand {faults.Print(intrusion)} into the opening, and what slides past them is only {faults.Print(slide.SideClearance)} away from the sides; take hinges that leave the opening free", doors.Source);
        if (faults.All.Count > 0) return;

        var left = space.X.From + slide.SideClearance;
        Stretch deep = new(spec.SetBack, slide.Length), high = new(runnerFrom, spec.RunnerHeight);
        var (shelf, leftRunner, rightRunner) = ($"{space.Path}sliding-shelf", $"{space.Path}left-runner", $"{space.Path}right-runner");
        var isAdded = faults.Fill(assembly, shelf, spec.Board, (new(left, width), deep, new(shelfFrom, spec.Board.Thickness)), Direction.Bottom, Direction.Right, [], spec.Source)
            & faults.Fill(assembly, leftRunner, spec.Board, (new(left, spec.Board.Thickness), deep, high), Direction.Left, Direction.Back, [], spec.Source)
            & faults.Fill(assembly, rightRunner, spec.Board, (new(left + width - spec.Board.Thickness, spec.Board.Thickness), deep, high), Direction.Right, Direction.Back, [], spec.Source);
        if (!isAdded) return;
        foreach (var runner in new[] { leftRunner, rightRunner }) assembly.MustJoin(shelf, runner, screwed);

        var centre = runnerFrom + spec.RunnerHeight / 2;
        Mount(space.Left, Direction.Right, leftRunner, shelf, centre, $"{space.Path}left-slide");
        Mount(space.Right, Direction.Left, rightRunner, shelf, centre, $"{space.Path}right-slide");
    }

    private void Mount(string cabinetPanel, Direction looks, string runner, string shelf, Size centre, string id)
    {
        var slide = spec.Slide;
        Mount Holes(string panelId, Direction towards, IEnumerable<Size> holes)
        {
            var panel = assembly.Find(panelId)!;
            var face = panel.Facing(Surface.Inside) == towards ? Surface.Inside : Surface.Outside;
            Position At(Size y) => panel.OnFace(new SizePoint(Size.Zero, y, centre));
            assembly.Write(panelId, holes.Select(h => Bore.Blind(id, face, At(spec.SetBack + h), slide.HoleDiameter, slide.HoleDepth, BoreUse.Pilot)));
            return new Mount(panelId, face, At(spec.SetBack));
        }

        var outer = Holes(cabinetPanel, looks, slide.CabinetHoles);
        var inner = Holes(runner, looks.Opposite(), slide.RunnerHoles);
        var owner = assembly.Find(cabinetPanel)!;
        var onFace = owner.OnSurface(outer.Surface, outer.At.Point);
        var half = slide.Height.Value / 2;
        var near = owner.Placement!.ToAssembly(onFace);
        var far = near + new Point3(0, slide.Length.Value, 0) + looks.Vector() * slide.Thickness.Value;
        var box = Box3.Between(near - new Point3(0, 0, half), far + new Point3(0, 0, half));
        Box3 InOwner(Box3 block) => Box3.Between(owner.Placement!.ToPanel(block.Min), owner.Placement.ToPanel(block.Max));
        Box3 PulledOut(string panelId)
        {
            var panel = assembly.Find(panelId)!;
            var block = panel.Placement!.ToAssembly(panel.Box);
            return block with { Min = block.Min - new Point3(0, slide.Travel.Value, 0) };
        }

        var load = spec.LoadKg is { } kg ? new[] { kg, slide.RatingKg } : [slide.RatingKg];
        assembly.Add(new PlacedHardware(id, HardwareKind.Slide, slide.Name, [outer, inner],
            [InOwner(box)], [slide.SideClearance, .. load]) { Swept = [InOwner(PulledOut(runner)), InOwner(PulledOut(shelf))] });
    }
}
