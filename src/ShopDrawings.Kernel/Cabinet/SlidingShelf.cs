namespace ShopDrawings.Kernel;

/// <summary>A shelf on two upright runners that slides between two panels, drawn closed. Lengths in mm.</summary>
internal sealed class SlidingShelf(SlidingShelfSpec spec, CarcassJoints joints, AssemblyBuilder assembly, Faults faults)
{
    /// <summary>
    /// Adds shelf, runners, slides and their holes. The holes of cabinet and runner stand at the slide's own places, counted from its front
    /// end; its centre line is the runner's.
    /// </summary>
    public void Build(Space space)
    {
        var slides = new SlidePair(spec.Slides, space, joints, assembly, faults);
        var (t, from) = (spec.Board.Thickness, space.Z.From + spec.AboveFloor);
        var shelfFrom = from + spec.RunnerHeight;
        Refuse(space, slides, shelfFrom);
        if (slides.Width.Value <= 2 * t.Value) return;
        var (shelf, leftRunner, rightRunner) = ($"{space.Path}sliding-shelf", $"{space.Path}left-runner", $"{space.Path}right-runner");
        Stretch high = new(from, spec.RunnerHeight);
        var isAdded = faults.Fill(assembly, shelf, spec.Board, (new(slides.Left, slides.Width), Deep(slides, spec.Shelf), new(shelfFrom, t)), Direction.Bottom, Direction.Right, spec.Bands, spec.Source)
            & faults.Fill(assembly, leftRunner, spec.Board, (new(slides.Left, t), Deep(slides, spec.Runner), high), Direction.Left, Direction.Back, [], spec.Source)
            & faults.Fill(assembly, rightRunner, spec.Board, (new(slides.Left + slides.Width - t, t), Deep(slides, spec.Runner), high), Direction.Right, Direction.Back, [], spec.Source);
        if (!isAdded) return;
        foreach (var runner in new[] { leftRunner, rightRunner }) assembly.MustJoin(shelf, runner, joints.Screwed);
        slides.Mount(space.Path, shelf, leftRunner, rightRunner, from + spec.RunnerHeight / 2, [shelf, leftRunner, rightRunner]);
        if (spec.Latch is { } latch) Latch(latch, shelf, space);
    }

    // What reaches beyond the slides does so on its own: the slides stay where they are.
    private static Stretch Deep(SlidePair slides, (Size Front, Size Back) beyond)
    {
        var from = beyond.Front == Size.Zero ? slides.Front : slides.Front - beyond.Front;
        return new(from, beyond == (Size.Zero, Size.Zero) ? slides.Length : slides.Length + beyond.Front + beyond.Back);
    }

    private void Refuse(Space space, SlidePair slides, Size shelfFrom)
    {
        const string Geometry = "derived (geometry)";
        string[] beside = [space.Left, space.Right];
        if (slides.Width.Value <= 2 * spec.Board.Thickness.Value)
            assembly.Misfit(beside, $"between two slides only {faults.Print(slides.Width)} are left for the sliding shelf and its runners in {space.Name}", [new("left", slides.Width.Value, "mm")], "make the bay wider", Geometry);
        var (top, ceiling) = (shelfFrom.Value + spec.Board.Thickness.Value, space.Z.From.Value + space.Z.Extent.Value);
        if (top > ceiling + Tolerance.Length)
            assembly.Misfit(beside, $"the sliding shelf with its runners needs {faults.Print(Size.Constant(top - space.Z.From.Value))} of height; {space.Name} has {faults.Print(space.Z.Extent)}",
                [new("needed", top - space.Z.From.Value, "mm"), new("height", space.Z.Extent.Value, "mm")], "make the bay higher, or “runner-height” or “above-floor” less", Geometry);
        if (slides.Height.Value > spec.RunnerHeight.Value + Tolerance.Length)
            assembly.Misfit(beside, $"a runner {faults.Print(spec.RunnerHeight)} high does not hold a slide {faults.Print(slides.Height)} high",
                [new("runner height", spec.RunnerHeight.Value, "mm"), new("slide height", slides.Height.Value, "mm")], $"make “runner-height” at least {faults.Print(slides.Height)}", Geometry);
    }

    // On the shelf beside its right edge; it shoots into the keeper on the panel beside it.
    private void Latch(TwoPartSpec latch, string shelfId, Space space)
    {
        var (shelf, beside) = (assembly.Find(shelfId)!, assembly.Find(space.Right)!);
        var (_, right) = shelf.Extent(0);
        var (front, _) = shelf.Extent(1);
        var (_, top) = shelf.Extent(2);
        var turns = Fronts.Level(shelf);
        var y = front + Size.Default(40, "latch-distance");
        Fronts.Fit(assembly, new($"{shelfId}/latch", latch.Body, shelf, Surface.Inside, shelf.OnFace(new SizePoint(right - latch.Body.Length / 2, y, Size.Zero)), turns));
        var face = beside.Facing(Surface.Inside) == Direction.Left ? Surface.Inside : Surface.Outside;
        Fronts.Fit(assembly, new($"{shelfId}/keeper", latch.Keeper, beside, face, beside.OnFace(new SizePoint(Size.Zero, y, top + latch.Body.Height / 2)), 0));
    }
}
