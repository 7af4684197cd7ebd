using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>Drawers above each other that fill the front of a space: for each a front, a box of four sides and a bottom, and slides. Lengths in mm.</summary>
internal sealed class DrawerStack(DrawersSpec spec, CabinetFrame frame, CarcassJoints joints, AssemblyBuilder assembly, Faults faults)
{
    // From the lower edge of a front, or the floor, to its box, and left free above it (common practice, no source).
    private static readonly Size BelowBox = Size.Default(12, "below-box");
    private static readonly Size AboveBox = Size.Default(18, "above-box");

    // From the lower edge of the box to the groove for its bottom, the groove's depth and its play (common practice, no source).
    private static readonly Size BelowGroove = Size.Default(12, "below-groove");
    private static readonly Size GrooveDepth = Size.Default(6, "drawer-groove-depth");
    private static readonly Size GroovePlay = Size.Default(0.2, "drawer-groove-play");

    /// <summary>Adds the drawers from the lowest up.</summary>
    public void Build(Space space)
    {
        var area = BesideHinges(FrontArea.Of(space, frame, assembly, spec.Mount, spec.Reveal, spec.Gap), space);
        if (Heights(area, space) is not { } heights) return;
        var fronts = FrontDepth(space);
        var behind = space;
        if (spec.Mount == DoorMount.Inset)
        {
            var back = (fronts.From + fronts.Extent).As("front-back");
            behind = space with { Y = new(back, space.Y.From + space.Y.Extent - back) };
        }

        var slides = new SlidePair(spec.Slides, behind, joints, assembly, faults, passesHinges: true);
        var from = area.Z.From + area.Margins.Bottom;
        for (var i = 0; i < heights.Count; i++)
        {
            var id = FormattableString.Invariant($"{space.Path}drawer-{i + 1}");
            if (!Drawer(id, behind, slides, area, fronts, from, heights[i])) return;
            from = from + heights[i] + spec.Gap;
        }
    }

    // Fronts between the panels begin where the space does, behind its doors; others stand off the carcass as doors do.
    private Stretch FrontDepth(Space space) => spec.Mount == DoorMount.Inset
        ? new(space.Y.From, spec.Front.Thickness)
        : new(Size.Zero - DoorLayout.Buffer - spec.Front.Thickness, spec.Front.Thickness);

    // Behind doors the fronts pass their hinges as the boxes do.
    private static FrontArea BesideHinges(FrontArea area, Space space)
    {
        var (left, right) = (space.HingeReach(true), space.HingeReach(false));
        return left.Value + right.Value == 0 ? area
            : area with { Margins = area.Margins with { Left = left.Value > 0 ? left + area.Margins.Left : area.Margins.Left, Right = right.Value > 0 ? right + area.Margins.Right : area.Margins.Right } };
    }

    private List<Size>? Heights(FrontArea area, Space space)
    {
        var n = spec.Heights.Length;
        var free = area.Z.Extent - area.Margins.Bottom - area.Margins.Top - (double)(n - 1) * spec.Gap;
        var given = spec.Heights.OfType<Size>().Aggregate(Size.Zero, (sum, h) => sum + h);
        var open = spec.Heights.Count(h => h is null);
        var rest = free - given;
        if (open > 0 ? rest.Value > Tolerance.Length : Math.Abs(rest.Value) <= Tolerance.Length)
        {
            var share = open == 0 ? Size.Zero : (rest / open).As("front-height");
            return [.. spec.Heights.Select(h => h ?? share)];
        }

        faults.Add(open > 0
            ? $"the drawer fronts with a height and the gaps take {faults.Print(given)} of {faults.Print(free)}, which leaves nothing for the rest; make one lower"
            : $"the drawer fronts make {faults.Print(given)}, and {faults.Print(free)} are to be covered in {space.Name}; leave the height of one out, so that it takes the rest", spec.Source);
        return null;
    }

    private bool Drawer(string id, Space space, SlidePair slides, FrontArea area, Stretch fronts, Size from, Size height)
    {
        // The box ends at the front's back; it fills the opening behind the front but for the room below and above it.
        var (t, back) = (spec.Box.Thickness, spec.Mount == DoorMount.Inset ? space.Y.From : Size.Zero - DoorLayout.Buffer);
        var (floor, ceiling) = (space.Z.From, space.Z.From + space.Z.Extent);
        var low = (from.Value > floor.Value ? from : floor) + BelowBox;
        var top = ((from + height).Value < ceiling.Value ? from + height : ceiling) - AboveBox;
        var tall = (top - low).As("box-height");
        if (tall.Value < slides.Height.Value || slides.Width.Value <= 2 * t.Value + 20)
        {
            assembly.Misfit(
                [space.Left, space.Right],
                tall.Value < slides.Height.Value
                    ? $"the box of {id} would be {faults.Print(tall)} high and does not hold a slide {faults.Print(slides.Height)} high"
                    : $"between two slides only {faults.Print(slides.Width)} are left for {id}",
                [new("box height", tall.Value, "mm"), new("slide height", slides.Height.Value, "mm"), new("width", slides.Width.Value, "mm")],
                "make the drawer higher or the bay wider, or take lower slides", "derived (geometry)");
            return true;
        }

        var length = slides.Front - back + slides.Length;
        Stretch deep = new(back, length), high = new(low, tall);
        var inner = new Stretch(slides.Left + t, slides.Width - 2 * t);
        (Direction, Size)[] bands = spec.Bands is { } band ? [(Direction.Left, band), (Direction.Right, band), (Direction.Bottom, band), (Direction.Top, band)] : [];
        var x = new Stretch(area.X.From + area.Margins.Left, area.X.Extent - area.Margins.Left - area.Margins.Right);
        var (left, right, fore, rear, bottom, front) = ($"{id}-left", $"{id}-right", $"{id}-box-front", $"{id}-box-back", $"{id}-bottom", $"{id}-front");
        var isAdded = Add(left, spec.Box, new(slides.Left, t), deep, high, Direction.Left, Direction.Back)
            && Add(right, spec.Box, new(slides.Left + slides.Width - t, t), deep, high, Direction.Right, Direction.Back)
            && Add(fore, spec.Box, inner, new(deep.From, t), high, Direction.Front, Direction.Right)
            && Add(rear, spec.Box, inner, new(deep.From + deep.Extent - t, t), high, Direction.Back, Direction.Right)
            && Bottom(bottom, inner, deep, low, [left, right, fore, rear])
            && faults.Fill(assembly, front, spec.Front, (x, fronts, new(from, height)), Direction.Front, Direction.Right, bands, spec.Source);
        if (!isAdded) return false;
        foreach (var side in new[] { left, right })
            foreach (var end in new[] { fore, rear }) assembly.MustJoin(side, end, spec.Joint);
        assembly.JoinFaces(fore, front, joints.FaceToFace(spec.Box, spec.Front));
        slides.Mount(id + "/", id, left, right, low + tall / 2, [left, right, fore, rear, bottom, front]);
        if (spec.Handle is { } handle) Handle(handle, front, fore);
        return true;
    }

    // A bottom in a groove of all four, or under them.
    private bool Bottom(string id, Stretch inner, Stretch deep, Size low, string[] around)
    {
        var (board, t) = (spec.Bottom, spec.Box.Thickness);
        if (spec.IsBottomUnder)
        {
            var under = new Stretch(inner.From - t, inner.Extent + 2 * t);
            if (!Add(id, board, under, deep, new(low - board.Thickness, board.Thickness), Direction.Bottom, Direction.Right)) return false;
            foreach (var side in around) assembly.MustJoin(id, side, joints.ThroughThin(board));
            return true;
        }

        var tongue = (GrooveDepth - Size.Default(0.5, "drawer-end-play")).As("depth-in-groove");
        var width = (board.Thickness + GroovePlay).As("groove-width");
        var middle = low + BelowGroove + width / 2;
        foreach (var panelId in around)
        {
            var panel = assembly.Find(panelId)!;
            var along = panel.Facing(Surface.Inside).Axis() == 0 ? 1 : 0;
            var (from, to) = panel.Extent(along);
            // Sides are grooved from front to back of the box's inside, so that nothing shows at their ends.
            if (along == 1) (from, to) = (from + t - GrooveDepth, to - t + GrooveDepth);
            Position At(Size place) => panel.OnFace(along == 0 ? new SizePoint(place, Size.Zero, middle) : new SizePoint(Size.Zero, place, middle));
            assembly.Write(panelId, Groove.Along(id, Surface.Inside, At(from), At(to), width, GrooveDepth));
        }

        Stretch Held(Size from, Size extent) => new(from - tongue, extent + 2 * tongue);
        return Add(id, board, Held(inner.From, inner.Extent), Held(deep.From + t, deep.Extent - 2 * t), new(low + BelowGroove + GroovePlay / 2, board.Thickness), Direction.Bottom, Direction.Right);
    }

    // Its bolts pass through front and box.
    private void Handle(HandleSpec handle, string frontId, string boxId)
    {
        Fronts.Handle(assembly, handle, frontId, null, isUpright: false);
        var (front, box) = (assembly.Find(frontId)!, assembly.Find(boxId)!);
        var id = $"{frontId}/handle";
        assembly.Write(boxId, front.Features.OfType<Bore>().Where(b => b.Origin == id && b.Depth is null)
            .Select(b => Bore.Through(id, Surface.Outside, box.OnFace(front.ToAssembly(b.At)), b.Diameter, BoreUse.Clearance)).ToImmutableArray());
    }

    private bool Add(string id, Board board, Stretch x, Stretch y, Stretch z, Direction outside, Direction grain) =>
        faults.Fill(assembly, id, board, (x, y, z), outside, grain, [], spec.Source);
}
