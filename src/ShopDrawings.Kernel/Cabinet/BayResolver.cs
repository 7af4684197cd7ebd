namespace ShopDrawings.Kernel;

/// <summary>Divides the inside of a cabinet into bays, lays out the doors before them, and fills them with all that stands and slides in them.</summary>
internal sealed class BayResolver(CabinetSpec spec, CabinetFrame frame, AssemblyBuilder assembly, Faults faults)
{
    private readonly List<string> fixedPanels = [];
    private readonly List<DoorLayout> doors = [];
    private readonly List<(LooseShelvesSpec Spec, Space Space)> looseShelves = [];
    private readonly List<LiningSheet> linings = [];

    /// <summary>Ids of the shelves and dividers added so far.</summary>
    public IReadOnlyList<string> Fixed => fixedPanels;

    /// <summary>The doors laid out so far, to be hung when all behind them is in its place.</summary>
    public IReadOnlyList<DoorLayout> Doors => doors;

    /// <summary>The sheets on inside faces, to be cut when all else is in its place.</summary>
    public IReadOnlyList<LiningSheet> Linings => linings;

    /// <summary>Loose shelves, whose rows of pins give way to all that is fixed.</summary>
    public IReadOnlyList<(LooseShelvesSpec Spec, Space Space)> LooseShelves => looseShelves;

    /// <summary>Adds everything in a bay but its linings.</summary>
    public void Resolve(BaySpec bay, Space space)
    {
        if (bay.Doors is { } hung)
        {
            var layout = new DoorLayout(hung, space, frame, assembly, spec.Step, faults);
            if (faults.All.Count > 0) return;
            doors.Add(layout);
            var behind = layout.Behind;
            space = space with { Doors = layout, Y = behind == Size.Zero ? space.Y : new(behind, (space.Y.From + space.Y.Extent - behind).As("depth-behind-doors")) };
        }

        switch (bay.Split)
        {
            case Split.Stacked:
                Stack(bay, space);
                break;
            case Split.SideBySide:
                Divide(bay, space);
                break;
            default:
                if (bay.Lining is { } lining) space = Line(lining, space, bay);
                if (faults.All.Count > 0) return;
                Shelves(bay, space);
                if (bay.Loose is { } loose) looseShelves.Add((loose with { Bands = spec.Bands }, space));
                if (bay.Sliding is { } sliding) new SlidingShelf(sliding with { Bands = spec.Bands }, spec.Joints, assembly, faults).Build(space);
                if (bay.Drawers is { } drawers) new DrawerStack(drawers, frame, spec.Joints, assembly, faults).Build(space);
                break;
        }
    }

    private void Stack(BaySpec bay, Space space)
    {
        if (Clear(bay, space.Z.Extent, "height") is not { } clear) return;
        var bottom = space.Bottom;
        var from = space.Z.From;
        var spaces = new List<Space>();
        for (var i = 0; i < bay.Bays.Length; i++)
        {
            var isLast = i == bay.Bays.Length - 1;
            var ceiling = isLast ? space.Top : $"{space.Path}{bay.Bays[i + 1].Name}-floor";
            spaces.Add(space with { Path = $"{space.Path}{bay.Bays[i].Name}/", Z = new(from, clear[i]), Bottom = bottom, Top = ceiling });
            if (isLast) break;
            var shelf = from + clear[i];
            if (!Shelf(ceiling, spec.Board, Size.Zero, shelf, space, bay.Source)) return;
            (bottom, from) = (ceiling, shelf + spec.Board.Thickness);
        }

        for (var i = 0; i < spaces.Count; i++) Resolve(bay.Bays[i], spaces[i]);
    }

    private void Divide(BaySpec bay, Space space)
    {
        if (Clear(bay, space.X.Extent, "width") is not { } clear) return;
        var left = space.Left;
        var from = space.X.From;
        var spaces = new List<Space>();
        for (var i = 0; i < bay.Bays.Length; i++)
        {
            var isLast = i == bay.Bays.Length - 1;
            var right = isLast ? space.Right : $"{space.Path}{bay.Bays[i + 1].Name}-divider";
            spaces.Add(space with { Path = $"{space.Path}{bay.Bays[i].Name}/", X = new(from, clear[i]), Left = left, Right = right });
            if (isLast) break;
            var divider = from + clear[i];
            if (!Add(right, spec.Board, new(divider, spec.Board.Thickness), space.Y, Housed(space.Z, spec.Joints.Dividers), Direction.Right, Direction.Top, bay.Source)) return;
            assembly.MustJoin(space.Bottom, right, spec.Joints.Dividers);
            assembly.MustJoin(space.Top, right, spec.Joints.Dividers);
            (left, from) = (right, divider + spec.Board.Thickness);
        }

        for (var i = 0; i < spaces.Count; i++) Resolve(bay.Bays[i], spaces[i]);
    }

    // The clear size of each bay: what the user gave, and equal shares of the rest.
    private List<Size>? Clear(BaySpec bay, Size whole, string axis)
    {
        var between = (double)(bay.Bays.Length - 1) * spec.Board.Thickness;
        var given = bay.Bays.Where(b => b.Clear is not null).Aggregate(Size.Zero, (sum, b) => sum + b.Clear!);
        var open = bay.Bays.Count(b => b.Clear is null);
        var rest = whole - between - given;
        if (open > 0 && rest.Value <= Tolerance.Length || open == 0 && Math.Abs(rest.Value) > Tolerance.Length)
        {
            faults.Add(open > 0
                ? $"the bays and the boards between them need {faults.Print(between + given)} of a clear {axis} of {faults.Print(whole)}, which leaves nothing for the rest; make one smaller"
                : $"the bays and the boards between them make {faults.Print(between + given)}, and the clear {axis} is {faults.Print(whole)}; leave the {axis} of one bay out, so that it takes the rest", bay.Source);
            return null;
        }

        var share = open == 0 ? rest : (rest / open).As($"clear-{axis}");
        return [.. bay.Bays.Select(b => b.Clear ?? share)];
    }

    private void Shelves(BaySpec bay, Space space)
    {
        var even = bay.Shelves.Where(s => s.Top is null).ToList();
        var filled = even.Aggregate(Size.Zero, (sum, s) => sum + s.Board.Thickness);
        if (even.Count > 0 && space.Z.Extent.Value <= filled.Value + Tolerance.Length)
        {
            faults.Add($"{(even.Count == 1 ? "a shelf does" : $"{even.Count} shelves do")} not fit into a space {faults.Print(space.Z.Extent)} high", even[0].Source);
            return;
        }

        var clear = even.Count == 0 ? Size.Zero : ((space.Z.Extent - filled) / (even.Count + 1)).As("clear-height");
        var floor = space.Z.From;
        var ceiling = space.Z.From + space.Z.Extent;
        foreach (var shelf in bay.Shelves)
        {
            if (shelf.Top is { } top && (top.Value - shelf.Board.Thickness.Value < space.Z.From.Value - Tolerance.Length || top.Value > ceiling.Value + Tolerance.Length))
            {
                faults.Add($"a shelf with its upper face at {faults.Print(top)} is not inside {space.Name}; it can stand from {faults.Print(space.Z.From + shelf.Board.Thickness)} to {faults.Print(ceiling)}", top.Source);
                continue;
            }

            var underside = shelf.Top is { } given ? given - shelf.Board.Thickness : floor + clear;
            if (shelf.Top is null) floor = underside + shelf.Board.Thickness;
            if (shelf.Top is null && space.Doors is { } hung) underside = ClearOfHinges(underside, shelf.Board.Thickness, space, hung);
            Shelf(space.Path + shelf.Name, shelf.Board, shelf.FrontInset, underside, space, shelf.Source);
        }
    }

    private bool Shelf(string id, Board board, Size frontInset, Size underside, Space space, SourceSpan source)
    {
        var deep = (frontInset == Size.Zero ? space.Y.Extent : space.Y.Extent - frontInset).SnappedDown(spec.Step);
        if (deep.Value <= Tolerance.Length)
        {
            faults.Add($"a shelf {faults.Print(frontInset)} behind the front has no depth left; the space is {faults.Print(space.Y.Extent)} deep", frontInset.Source, source);
            return false;
        }

        if (!Add(id, board, Housed(space.X, spec.Joints.Shelves), new(space.Y.From + frontInset, deep), new(underside, board.Thickness), Direction.Bottom, Direction.Right, source)) return false;
        assembly.MustJoin(space.Left, id, spec.Joints.Shelves);
        assembly.MustJoin(space.Right, id, spec.Joints.Shelves);
        return true;
    }

    // Sheets against the inside faces: the one behind covers all, those on floor and ceiling end before it, those on left and right between
    // these. What is in the bay stands before the first three, and in openings of those on left and right, where it is fixed to the sides.
    private Space Line(LiningSpec lining, Space space, BaySpec bay)
    {
        var t = lining.Board.Thickness;
        Size Less(Direction face) => lining.Faces.Contains(face) ? t : Size.Zero;
        var deep = new Stretch(space.Y.From, space.Y.Extent - Less(Direction.Back));
        var high = new Stretch(space.Z.From + Less(Direction.Bottom), space.Z.Extent - Less(Direction.Bottom) - Less(Direction.Top));
        if (high.Extent.Value <= Tolerance.Length || deep.Extent.Value <= Tolerance.Length)
            faults.Add($"linings {faults.Print(t)} thick leave nothing of a bay {faults.Print(space.Z.Extent)} high", bay.Source);
        if ((space.X.Extent - Less(Direction.Left) - Less(Direction.Right)).Value <= Tolerance.Length)
            faults.Add($"linings {faults.Print(t)} thick leave nothing of a bay {faults.Print(space.X.Extent)} wide", bay.Source);
        if (faults.All.Count > 0) return space;
        foreach (var face in lining.Faces)
        {
            var (x, y, z, grain, behind) = face switch
            {
                Direction.Left => (new(space.X.From, t), deep, high, Direction.Top, space.Left),
                Direction.Right => (new(space.X.From + space.X.Extent - t, t), deep, high, Direction.Top, space.Right),
                Direction.Bottom => (space.X, deep, new(space.Z.From, t), Direction.Right, space.Bottom),
                Direction.Top => (space.X, deep, new Stretch(space.Z.From + space.Z.Extent - t, t), Direction.Right, space.Top),
                _ => (space.X, new(deep.From + deep.Extent, t), space.Z, Direction.Top, "back"),
            };
            linings.Add(new LiningSheet($"{space.Path}{face.Word()}-lining", lining.Board, (x, y, z), face, grain, behind, lining.Joint, bay.Source));
        }

        return space with { Y = deep, Z = high };
    }

    // A shelf without a height of its own gives way to the hinges of doors that come bored.
    private static Size ClearOfHinges(Size underside, Size thickness, Space space, DoorLayout hung)
    {
        const double Clearance = 3;
        var hinges = hung.FixedHinges.ToList();
        string? Obstacle(double z) => hinges.Exists(h => z + thickness.Value > h.Low - Clearance && z < h.High + Clearance) ? "hinges" : null;
        return Dodging.Nearest(underside, space.Z.From.Value, space.Z.From.Value + space.Z.Extent.Value - thickness.Value, true, Obstacle) ?? underside;
    }

    // The stretch with what both ends of a panel sit in the grooves of its neighbours.
    private static Stretch Housed(Stretch clear, JointRule joint) =>
        joint.Housing.Value > 0 ? new(clear.From - joint.Housing, clear.Extent + 2 * joint.Housing) : clear;

    private bool Add(string id, Board board, Stretch x, Stretch y, Stretch z, Direction outside, Direction grain, SourceSpan source)
    {
        if (!faults.Fill(assembly, id, board, (x, y, z), outside, grain, spec.Bands, source)) return false;
        fixedPanels.Add(id);
        return true;
    }
}
