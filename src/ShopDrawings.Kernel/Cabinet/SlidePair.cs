namespace ShopDrawings.Kernel;

/// <summary>A pair of side-mounted slides in a space: what they leave for what slides, their packers and their holes. Lengths in mm.</summary>
internal sealed class SlidePair
{
    // Between an open door and what slides past it (common practice, no source).
    private const double PastDoor = 3;

    // How much higher a packer is than the slide on it (common practice, no source).
    private static readonly Size AroundSlide = Size.Default(15, "packer-margin");

    private readonly SlidePairSpec spec;
    private readonly Space space;
    private readonly CarcassJoints joints;
    private readonly AssemblyBuilder assembly;
    private readonly Faults faults;
    private readonly bool passesHinges;
    private readonly int leftLayers;
    private readonly int rightLayers;

    /// <summary>Works out what is left between the slides; what does not fit is noted as a misfit.</summary>
    /// <param name="spec">The slides.</param>
    /// <param name="space">The space.</param>
    /// <param name="joints">The screws of packers.</param>
    /// <param name="assembly">Where packers and slides go.</param>
    /// <param name="faults">How messages print lengths.</param>
    /// <param name="passesHinges">Whether what slides passes the hinges of doors at every height, so that these cannot give way.</param>
    public SlidePair(SlidePairSpec spec, Space space, CarcassJoints joints, AssemblyBuilder assembly, Faults faults, bool passesHinges = false)
    {
        this.passesHinges = passesHinges;
        (this.spec, this.space, this.joints, this.assembly, this.faults) = (spec, space, joints, assembly, faults);
        (leftLayers, rightLayers) = (Layers(true), Layers(false));
        var between = SlideGeometry.MovingWidth(space.X.Extent, spec.Slide.SideClearance, Size.Zero);
        Width = leftLayers + rightLayers == 0 ? between : (between - (double)(leftLayers + rightLayers) * spec.Packer.Thickness).As("moving-width");
        Left = Packed(space.X.From, leftLayers, 1) + spec.Slide.SideClearance;
        Front = space.Y.From == Size.Zero ? spec.SetBack : Size.Largest(spec.SetBack, space.Y.From).As("slide-front");
        var needed = (Front + spec.Slide.Length + spec.RearClearance).As("needed-depth");
        var end = space.Y.From + space.Y.Extent;
        if (needed.Value <= end.Value + Tolerance.Length) return;
        var longest = end.Value - Front.Value - spec.RearClearance.Value;
        assembly.Misfit(
            [space.Left, space.Right],
            $"slides {faults.Print(spec.Slide.Length)} long need {faults.Print(needed)} with the set-back before and the room for cables behind them; {space.Name} is {faults.Print(end)} deep",
            [new("slide length", spec.Slide.Length.Value, "mm"), new("needed", needed.Value, "mm"), new("depth", end.Value, "mm")],
            longest > 0 ? $"take slides at most {faults.Print(Size.Constant(longest))} long" : "make the cabinet deeper", "derived (geometry); room for cables: common practice, no source");
    }

    /// <summary>Width of what slides: the clear width less thickness and play of both slides, and the packers.</summary>
    public Size Width { get; }

    /// <summary>Left edge of what slides.</summary>
    public Size Left { get; }

    /// <summary>Front end of the slides.</summary>
    public Size Front { get; }

    /// <summary>Length of the slides.</summary>
    public Size Length => spec.Slide.Length;

    /// <summary>Height of the slides.</summary>
    public Size Height => spec.Slide.Height;

    /// <summary>Adds packers and slides, their holes on both sides, and what they move.</summary>
    /// <param name="path">What their ids begin with.</param>
    /// <param name="id">What moves.</param>
    /// <param name="leftMover">The panel on the left slide.</param>
    /// <param name="rightMover">The panel on the right slide.</param>
    /// <param name="centre">Height of their centre line.</param>
    /// <param name="moving">Every panel that moves.</param>
    public void Mount(string path, string id, string leftMover, string rightMover, Size centre, IEnumerable<string> moving)
    {
        foreach (var (cabinetPanel, mover, isLeft) in new[] { (space.Left, leftMover, true), (space.Right, rightMover, false) })
        {
            if (Pack(path, cabinetPanel, isLeft, centre) is not { } holder) return;
            Mount(holder, mover, isLeft ? Direction.Right : Direction.Left, centre, $"{path}{(isLeft ? "left" : "right")}-slide");
        }

        assembly.Motions.Add(new Travel(id, [.. moving], Direction.Front, spec.Slide.Travel));
    }

    // Layers of the packer's board that bring the slide past an open door.
    private int Layers(bool isLeft)
    {
        var intrusion = passesHinges ? space.HingeReach(isLeft) : space.Intrusion(isLeft);
        var needed = intrusion.Value > 0 ? intrusion.Value + PastDoor - spec.Slide.SideClearance.Value : 0;
        return needed > Tolerance.Length ? (int)Math.Ceiling(needed / spec.Packer.Thickness.Value - 1e-9) : 0;
    }

    private Size Packed(Size from, int layers, int sign) =>
        layers == 0 ? from : sign > 0 ? from + (double)layers * spec.Packer.Thickness : from - (double)layers * spec.Packer.Thickness;

    private string? Pack(string path, string cabinetPanel, bool isLeft, Size centre)
    {
        var (t, behind) = (spec.Packer.Thickness, cabinetPanel);
        var high = (spec.Slide.Height + AroundSlide).As("packer-height");
        for (var i = 0; i < (isLeft ? leftLayers : rightLayers); i++)
        {
            var id = FormattableString.Invariant($"{path}{(isLeft ? "left" : "right")}-packer{(i == 0 ? "" : $"-{i + 1}")}");
            var x = isLeft ? Packed(space.X.From, i, 1) : Packed(space.X.From + space.X.Extent, i + 1, -1);
            if (!faults.Fill(assembly, id, spec.Packer, (new(x, t), new(Front, spec.Slide.Length), new(centre - high / 2, high)), isLeft ? Direction.Left : Direction.Right, Direction.Back, [], spec.Source)) return null;
            assembly.JoinFaces(id, behind, joints.FaceToFace(spec.Packer, assembly.Find(behind)!.Board));
            behind = id;
        }

        return behind;
    }

    // In a thin board the screws are shorter.
    private static Size PilotDepth(Panel panel, Size wanted)
    {
        var most = panel.Thickness - Size.Default(BoreInPanel.Floor.Default, "least-under-a-pilot");
        return wanted.Value <= most.Value ? wanted : most.As("pilot-depth");
    }

    private void Mount(string cabinetPanel, string mover, Direction looks, Size centre, string id)
    {
        var slide = spec.Slide;
        Mount Holes(string panelId, Direction towards, IEnumerable<Size> holes)
        {
            var panel = assembly.Find(panelId)!;
            var face = panel.Facing(Surface.Inside) == towards ? Surface.Inside : Surface.Outside;
            Position At(Size y) => panel.OnFace(new SizePoint(Size.Zero, y, centre));
            var depth = PilotDepth(panel, slide.HoleDepth);
            assembly.Write(panelId, holes.Select(h => Bore.Blind(id, face, At(Front + h), slide.HoleDiameter, depth, BoreUse.Pilot)));
            return new Mount(panelId, face, At(Front));
        }

        var outer = Holes(cabinetPanel, looks, slide.CabinetHoles);
        var inner = Holes(mover, looks.Opposite(), slide.RunnerHoles);
        var owner = assembly.Find(cabinetPanel)!;
        var half = slide.Height.Value / 2;
        var near = owner.Placement!.ToAssembly(owner.OnSurface(outer.Surface, outer.At.Point));
        var far = near + new Point3(0, slide.Length.Value, 0) + looks.Vector() * slide.Thickness.Value;
        var box = Box3.Between(near - new Point3(0, 0, half), far + new Point3(0, 0, half));
        var load = spec.LoadKg is { } kg ? new[] { kg, slide.RatingKg } : [slide.RatingKg];
        assembly.Add(new PlacedHardware(id, HardwareKind.Slide, slide.Name, [outer, inner],
            [Box3.Between(owner.Placement.ToPanel(box.Min), owner.Placement.ToPanel(box.Max))], [slide.SideClearance, .. load]));
    }
}
