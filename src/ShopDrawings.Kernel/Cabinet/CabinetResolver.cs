namespace ShopDrawings.Kernel;

/// <summary>Works out every panel, joint and piece of hardware of a cabinet: the carcass here, what is in, on and under it by its own class.</summary>
internal sealed class CabinetResolver
{
    private readonly CabinetSpec spec;
    private readonly CabinetFrame frame;
    private readonly AssemblyBuilder assembly;
    private readonly Faults faults;
    private IReadOnlyList<string> fixedInside = [];

    private CabinetResolver(CabinetSpec spec, AssemblyBuilder assembly, Faults faults)
    {
        (this.spec, this.assembly, this.faults) = (spec, assembly, faults);
        frame = new CabinetFrame(spec, faults);
    }

    /// <summary>Adds the cabinet to an assembly.</summary>
    /// <param name="spec">The cabinet.</param>
    /// <param name="assembly">Where its panels, joints and hardware go.</param>
    /// <param name="lengths">How messages print lengths.</param>
    /// <returns>What cannot be built, each with the place to change; then the assembly is of no use.</returns>
    public static IReadOnlyList<(SourceSpan Source, string Message)> Resolve(CabinetSpec spec, AssemblyBuilder assembly, LengthStyle lengths)
    {
        var faults = new Faults(lengths, spec.Source);
        var resolver = new CabinetResolver(spec, assembly, faults);
        resolver.Check();
        if (faults.All.Count == 0) resolver.Build();
        return faults.All;
    }

    private void Check()
    {
        if (spec.IsBottomUnder && spec.Recess.Value > 0) faults.Add("a bottom under the sides cannot be raised; leave “recess” out, or write bottom: between", spec.Recess.Source);
        if (spec.Back is not { Fit: BackFit.Groove } back) return;
        if (back.GrooveDepth.Value >= frame.Thickness.Value - Tolerance.Length)
            faults.Add($"a groove {faults.Print(back.GrooveDepth)} deep cuts a board of {faults.Print(frame.Thickness)} in two; half the thickness is usual", back.GrooveDepth.Source);
        if (back.GrooveDepth.Value - back.EndPlay.Value <= Tolerance.Length)
            faults.Add($"a groove {faults.Print(back.GrooveDepth)} deep does not hold a back that ends {faults.Print(back.EndPlay)} before its bottom; make “groove-depth” more or “end-play” less", back.EndPlay.Source, back.GrooveDepth.Source);
    }

    private void Build()
    {
        Carcass();
        if (faults.All.Count > 0) return;
        var inside = new Space("", new(frame.Thickness, frame.InnerWidth), new(Size.Zero, frame.ClearDepth), new(frame.Floor, frame.InnerHeight), "left-side", "right-side", "bottom", "top");
        var bays = new BayResolver(spec, frame, assembly, faults);
        bays.Resolve(spec.Inside, inside);
        fixedInside = bays.Fixed;
        if (faults.All.Count > 0) return;
        Back();
        if (faults.All.Count > 0) return;
        JoinCarcass();
        if (faults.All.Count > 0) return;
        foreach (var doors in bays.Doors) new DoorHanging(doors, spec.Joints, assembly, faults).Hang();
        foreach (var (loose, space) in bays.LooseShelves) new LooseShelves(loose, assembly, faults).Build(space);
        if (faults.All.Count > 0) return;
        if (spec.Plinth is { } plinth) new PlinthStanding(plinth, spec, frame, assembly, faults).Stand();
        if (faults.All.Count > 0) return;
        if (spec.Castors is { } castors) new CastorMounting(castors, spec, frame, assembly, faults).Mount();
        if (spec.Feet is { } feet) new FootMounting(feet, spec, frame, assembly, faults).Mount();
        if (spec.AppliedTop is { } top) new AppliedTop(top, frame, assembly, faults).Lay();
        if (faults.All.Count > 0) return;
        var cutter = new LiningCutter(assembly, faults);
        foreach (var sheet in bays.Linings) cutter.Cut(sheet);
    }

    private void Carcass()
    {
        var t = frame.Thickness;
        Stretch sideDepth = new(Size.Zero, frame.BodyDepth), levelDepth = new(Size.Zero, frame.LevelDepth);
        Stretch over = new(Size.Zero, frame.Width);
        Add("left-side", new(Size.Zero, t), sideDepth, SideHeight(true), Direction.Left, Direction.Top);
        Add("right-side", new(frame.Width - t, t), sideDepth, SideHeight(false), Direction.Right, Direction.Top);
        Add("bottom", spec.IsBottomUnder ? over : Between(spec.Joints.Bottom), spec.IsBottomUnder ? sideDepth : levelDepth, new(spec.Recess, t), Direction.Bottom, Direction.Right);
        Add("top", spec.IsTopOver ? over : Between(spec.Joints.Top), spec.IsTopOver ? sideDepth : levelDepth, new(frame.Ceiling, t), Direction.Top, Direction.Right);
    }

    // A panel between two others reaches into the housing at either end.
    private Stretch Between(Func<bool, JointRule> joint)
    {
        var (left, right) = (joint(true).Housing, joint(false).Housing);
        return new(frame.Thickness - left, frame.InnerWidth + left + right);
    }

    private Stretch SideHeight(bool isLeft)
    {
        var (low, high) = (spec.IsBottomUnder ? spec.Joints.Bottom(isLeft).Housing : Size.Zero, spec.IsTopOver ? spec.Joints.Top(isLeft).Housing : Size.Zero);
        return new(frame.SideBottom - low, (frame.SideTop - frame.SideBottom + low + high).As("side-height"));
    }

    private void Back()
    {
        if (spec.Back is not { } back) return;
        var t = frame.Thickness;
        Stretch between = new(t, frame.InnerWidth);
        var (x, y, z) = back.Fit switch
        {
            BackFit.Between => (between, BackFrom(back), new(frame.Floor, frame.InnerHeight)),
            BackFit.WithinSides => (between, BackFrom(back), new Stretch(frame.SideBottom, frame.SideTop - frame.SideBottom)),
            BackFit.Behind => (new(Size.Zero, frame.Width), new(frame.BodyDepth, back.Board.Thickness), new(Size.Zero, frame.Height)),
            _ => InGroove(back),
        };
        faults.Fill(assembly, "back", back.Board, (x, y, z), Direction.Back, Direction.Top, [], spec.Source);
    }

    private Stretch BackFrom(BackSpec back) => new(frame.BodyDepth - back.Inset - back.Board.Thickness, back.Board.Thickness);

    // The grooves of the sides stop where the back ends, so that nothing shows from above or below, unless top or bottom cover them;
    // those of top and bottom run through where these stand between the sides, and stop like those of the sides where they run over them.
    private (Stretch X, Stretch Y, Stretch Z) InGroove(BackSpec back)
    {
        var t = frame.Thickness;
        var tongue = (back.GrooveDepth - back.EndPlay).As("depth-in-groove");
        var middle = frame.BodyDepth - back.Inset - frame.GrooveWidth / 2;
        var (low, high) = (frame.Floor - back.GrooveDepth, frame.Ceiling + back.GrooveDepth);
        foreach (var (side, isLeft) in new[] { ("left-side", true), ("right-side", false) })
        {
            var foot = spec.IsBottomUnder ? frame.SideBottom - spec.Joints.Bottom(isLeft).Housing : low;
            var head = spec.IsTopOver ? frame.SideTop + spec.Joints.Top(isLeft).Housing : high;
            Groove(side, new(Size.Zero, middle, foot), new(Size.Zero, middle, head), back.GrooveDepth);
        }

        foreach (var (level, runsOver, joint) in new (string, bool, Func<bool, JointRule>)[] { ("bottom", spec.IsBottomUnder, spec.Joints.Bottom), ("top", spec.IsTopOver, spec.Joints.Top) })
        {
            var between = Between(joint);
            var (left, right) = runsOver ? (t - back.GrooveDepth, frame.Width - t + back.GrooveDepth) : (between.From, between.From + between.Extent);
            Groove(level, new(left, middle, Size.Zero), new(right, middle, Size.Zero), back.GrooveDepth);
        }

        var front = frame.BodyDepth - back.Inset - frame.GrooveWidth + back.GroovePlay / 2;
        return (Held(t, frame.InnerWidth, tongue), new(front, back.Board.Thickness), Held(frame.Floor, frame.InnerHeight, tongue));
    }

    // The back in two opposite grooves, in the middle between them. It snaps to the step where at least half the tongue is left.
    private Stretch Held(Size from, Size inner, Size tongue)
    {
        var whole = inner + 2 * tongue;
        if (spec.Step is null) return new(from - tongue, whole);
        var snapped = whole.SnappedDown(spec.Step);
        return whole.Value - snapped.Value > tongue.Value ? new(from - tongue, whole) : new(from - (snapped - inner) / 2, snapped);
    }

    private void Groove(string panelId, SizePoint from, SizePoint to, Size depth)
    {
        var panel = assembly.Find(panelId)!;
        assembly.Write(panelId, Kernel.Groove.Along("back", Surface.Inside, panel.OnFace(from), panel.OnFace(to), frame.GrooveWidth, depth));
    }

    private void JoinCarcass()
    {
        string[] sides = ["left-side", "right-side"];
        foreach (var side in sides)
        {
            var isLeft = side == sides[0];
            Join(spec.IsBottomUnder, "bottom", side, spec.Joints.Bottom(isLeft));
            Join(spec.IsTopOver, "top", side, spec.Joints.Top(isLeft));
        }

        switch (spec.Back?.Fit)
        {
            case BackFit.Between:
                if (!HoldsInEdge(spec.Back.Board))
                {
                    faults.Add($"the edge of a back {faults.Print(spec.Back.Board.Thickness)} thick is too thin for screws; write fit: groove, within-sides or behind", spec.Source);
                    break;
                }

                foreach (var around in (string[])[.. sides, "bottom", "top"]) assembly.MustJoin(around, "back", spec.Joints.Screwed);
                break;
            case BackFit.WithinSides:
                if (!HoldsInEdge(spec.Back.Board) && spec.IsTopOver && spec.IsBottomUnder && fixedInside.Count == 0)
                {
                    faults.Add($"nothing holds a back {faults.Print(spec.Back.Board.Thickness)} thick between a top over the sides and a bottom under them: its edge is too thin for screws; write fit: groove or behind", spec.Source);
                    break;
                }

                string[] between = [.. spec.IsBottomUnder ? Array.Empty<string>() : ["bottom"], .. spec.IsTopOver ? Array.Empty<string>() : ["top"]];
                if (HoldsInEdge(spec.Back.Board)) foreach (var around in sides.Concat(new[] { "bottom", "top" }.Except(between))) assembly.MustJoin(around, "back", spec.Joints.Screwed);
                ThroughBack([.. between, .. fixedInside]);
                break;
            case BackFit.Behind:
                ThroughBack([.. sides, "bottom", "top", .. fixedInside]);
                break;
        }
    }

    // A thin back is held through its face alone: its edge would split.
    private bool HoldsInEdge(Board board) =>
        spec.Joints.Screwed.Fastener is Screw screw && board.Thickness.Value >= screw.EdgePilot.Value + 2 * JointWriter.LeastWall;

    // Through the back into whatever ends at it; a shelf snapped short of it does not.
    private void ThroughBack(IEnumerable<string> panels)
    {
        foreach (var panel in panels) assembly.Join("back", panel, spec.Back!.Joint);
    }

    private void Join(bool isLevelOutside, string level, string side, JointRule rule)
    {
        if (isLevelOutside) assembly.MustJoin(level, side, rule);
        else assembly.MustJoin(side, level, rule);
    }

    private void Add(string id, Stretch x, Stretch y, Stretch z, Direction outside, Direction grain) =>
        faults.Fill(assembly, id, spec.Board, (x, y, z), outside, grain, spec.Bands, spec.Source);
}
