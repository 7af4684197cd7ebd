using System.Collections.Immutable;
using System.Globalization;
using ShopDrawings.Kernel;
using ShopDrawings.Yaml;

namespace ShopDrawings.ProjectFile;

/// <summary>Makes the specification of a cabinet from what the user wrote: follows references, fills in defaults, refuses what contradicts itself.</summary>
internal sealed class CabinetReader(References references)
{
    // How far a screw through a thin board reaches into the edge behind it, in mm (common practice, no source).
    private const double ReachBehindThin = 30;

    private static readonly string[] CabinetPanels = ["left-side", "right-side", "bottom", "top", "back", "left-door", "right-door", "door", "plinth", "rear-plinth", "applied-top", "applied-top-1", "applied-top-2"];

    /// <summary>The specification, or nothing where a fault was noted.</summary>
    public CabinetSpec? Read(CabinetEntry entry)
    {
        foreach (var (outside, inside, axis) in new[] { (entry.Width, entry.Inside?.Width, "width"), (entry.Height, entry.Inside?.Height, "height"), (entry.Depth, entry.Inside?.Depth, "depth") })
            if (outside is not null && inside is not null) references.Fail(inside.Source, $"the {axis} is given outside and inside; one follows from the other, so leave one out");
        var board = references.Board(entry.Board);
        var joints = Joints(entry);
        var back = entry.Back is { } b ? Back(b, board, joints?.Screwed) : null;
        var bay = joints is null ? null : Bay(entry.Bay, "", board, joints);
        var castors = entry.Castors is { } c ? Castors(c) : null;
        var top = entry.AppliedTop is { } t ? AppliedTop(t, board, joints) : null;
        var feet = entry.Feet is { } f ? Feet(f, entry) : null;
        var plinth = entry.Plinth is { } p ? Plinth(p, entry) : null;
        if (board is null || joints is null || bay is null || (back, castors, top) is var read
            && ((entry.Back is not null && read.back is null)
                || (entry.Castors is not null && read.castors is null) || (entry.AppliedTop is not null && read.top is null))) return null;
        if ((entry.Feet is not null && feet is null) || (entry.Plinth is not null && plinth is null)) return null;
        return new CabinetSpec
        {
            Width = new(entry.Width, entry.Inside?.Width),
            Height = new(entry.Height, entry.Inside?.Height),
            Depth = new(entry.Depth, entry.Inside?.Depth),
            Board = board,
            IsTopOver = entry.IsTopOver,
            IsBottomUnder = entry.IsBottomUnder,
            Recess = entry.Recess,
            Back = back,
            Inside = bay,
            Castors = castors,
            Feet = feet,
            Plinth = plinth,
            AppliedTop = top,
            Bands = entry.Bands,
            Joints = joints,
            Step = entry.Step,
            Source = entry.At,
        };
    }

    // What is always screwed takes the joint's screw where it is one, with its rows.
    private CarcassJoints? Joints(CabinetEntry entry)
    {
        var standard = new JointRule(references.UsualScrew, RowRule.Standard);
        if (references.Joint(entry.Joint, standard) is not { } usual) return null;
        var corners = entry.Corners;
        var (top, bottom) = (references.Joint(corners?.Top, usual), references.Joint(corners?.Bottom, usual));
        var (topLeft, topRight) = (Corner(corners?.TopLeft, top), Corner(corners?.TopRight, top));
        var (bottomLeft, bottomRight) = (Corner(corners?.BottomLeft, bottom), Corner(corners?.BottomRight, bottom));
        var (shelves, dividers) = (Corner(corners?.Shelves, usual), Corner(corners?.Dividers, usual));
        JointRule?[] all = [usual, top, bottom, topLeft, topRight, bottomLeft, bottomRight, shelves, dividers];
        foreach (var rule in all.Where(r => r?.Housing.Operation == Operation.Given).DistinctBy(r => r!.Housing.Source)) Refuse(rule);
        var screwed = new JointRule(usual.Fastener as Screw ?? references.UsualScrew, usual.Row);
        return topLeft is null || topRight is null || bottomLeft is null || bottomRight is null || shelves is null || dividers is null
            ? null
            : new CarcassJoints(topLeft, topRight, bottomLeft, bottomRight, shelves, dividers, screwed, FaceToFace, ThroughThin);

        JointRule FaceToFace(Board through, Board into)
        {
            const double DeepestSunk = 3;
            var (near, far) = (through.Thickness.Value, into.Thickness.Value);
            var screw = references.LongestScrew(((Screw)screwed.Fastener!).Diameter, near + far - BoreInPanel.Floor.Default);
            var missing = HardwareFits.FaceHold.Default - (screw.Length.Value - near);
            var isSunk = missing > Tolerance.Length && missing <= DeepestSunk && HardwareFits.FaceHold.Default <= far - BoreInPanel.Floor.Default;
            return new JointRule(isSunk ? screw with { Sunk = Size.Default(missing, "sunk-to-hold") } : screw, RowRule.Standard);
        }

        JointRule ThroughThin(Board board) => new(references.LongestScrew(((Screw)screwed.Fastener!).Diameter, board.Thickness.Value + ReachBehindThin), RowRule.Standard);

        // A housing as deep as the board is thick cuts it in two.
        void Refuse(JointRule? rule)
        {
            if (rule is not null && references.Board(entry.Board) is { } board && rule.Housing.Value > board.Thickness.Value - BoreInPanel.Floor.Default)
                references.Fail(rule.Housing.Source, $"a housing {references.Print(rule.Housing)} deep cuts a board of {references.Print(board.Thickness)} in two, or nearly; a third of the thickness is usual");
        }

        JointRule? Corner(JointRuleEntry? own, JointRule? usually) => usually is null ? null : references.Joint(own, usually);
    }

    // The usual screw through a back is the longest of the carcass screw's diameter that reaches at most 30 mm into the edge behind it
    // (common practice, no source: more meets whatever else is drilled there).
    private BackSpec? Back(BackEntry entry, Board? around, JointRule? screwed)
    {
        var isGroove = entry.Fit == BackFit.Groove;
        foreach (var (key, given) in new[] { ("groove-depth", entry.GrooveDepth), ("groove-play", entry.GroovePlay), ("end-play", entry.EndPlay) })
            if (given is not null && !isGroove) references.Fail(given.Source, $"“{key}” belongs to a back in a groove, and this one is not; leave it out, or write fit: groove");
        if (entry is { Fit: BackFit.Behind, Inset: { } behind }) references.Fail(behind.Source, "a back behind the sides has no inset; leave it out");
        if (references.Board(entry.Board) is not { } board || around is null || screwed is null) return null;
        var screw = entry.Screw is { } word ? references.Screw(word) : references.LongestScrew(((Screw)screwed.Fastener!).Diameter, board.Thickness.Value + ReachBehindThin);
        if (screw is null) return null;
        var inset = entry.Inset ?? (isGroove ? Size.Default(10, "usual-back-inset") : Size.Zero);
        var depth = entry.GrooveDepth ?? Size.Smallest(Size.Default(8, "usual-groove-depth"), around.Thickness / 2).As("groove-depth");
        return new BackSpec(board, entry.Fit, inset, depth, entry.GroovePlay ?? Size.Default(0.3, "usual-groove-play"), entry.EndPlay ?? Size.Default(1, "usual-end-play"), screwed with { Fastener = screw });
    }

    private BaySpec? Bay(BayEntry entry, string name, Board? usual, CarcassJoints joints)
    {
        var split = !entry.Stacked.IsEmpty ? Split.Stacked : !entry.SideBySide.IsEmpty ? Split.SideBySide : Split.None;
        var fills = entry.Sliding is not null || entry.Drawers is not null || entry.Loose is not null || entry.Lining is not null || entry.Shelves.Even > 0 || !entry.Shelves.Each.IsEmpty;
        if (!entry.Stacked.IsEmpty && !entry.SideBySide.IsEmpty || (split != Split.None && fills))
            references.Fail(entry.At, "a space is divided once: by “stacked” or “side-by-side”, and shelves, drawers, sliding shelf and lining then go into its bays");
        if (entry.Drawers is { } full && (entry.Sliding is not null || entry.Loose is not null || entry.Shelves.Even > 0 || !entry.Shelves.Each.IsEmpty || entry.Doors?.Mount == DoorMount.Overlay && full.Mount == DoorMount.Overlay))
            references.Fail(full.At, "drawers fill their bay; put shelves and doors into another, or doors before drawers between the panels");
        var children = split == Split.Stacked ? entry.Stacked : entry.SideBySide;
        if (children.Length == 1) references.Fail(children[0].At, "one bay alone divides nothing; write two or more, or leave the division out");

        var bays = ImmutableArray.CreateBuilder<BaySpec>();
        var taken = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (child, number) in children.Select((c, i) => (c, i + 1)))
        {
            var (clear, wrong, key) = split == Split.Stacked ? (child.Height, child.Width, "width") : (child.Width, child.Height, "height");
            if (wrong is not null) references.Fail(wrong.Source, $"the {key} of {(split == Split.Stacked ? "stacked bays" : "bays side by side")} follows from the space they are in; leave it out");
            var childName = child.Name?.Text ?? Numbered("bay", number);
            if (!taken.Add(childName)) references.Fail(child.Name?.At ?? child.At, $"two bays are called “{childName}”; give one another name");
            if (Bay(child, childName, usual, joints) is { } read) bays.Add(read with { Clear = clear });
        }

        var shelves = Shelves(entry, name.Length == 0 && split == Split.None, usual);
        return new BaySpec(name, null, split, bays.ToImmutable(), entry.At)
        {
            Shelves = shelves,
            Loose = entry.Loose is { } loose ? Loose(loose, usual) : null,
            Sliding = entry.Sliding is { } sliding ? Sliding(sliding, usual) : null,
            Drawers = entry.Drawers is { } drawers ? Drawers(drawers, usual, joints) : null,
            Lining = entry.Lining is { } lining ? Lining(lining, joints.Screwed) : null,
            Doors = entry.Doors is { } doors ? Doors(doors) : null,
        };
    }

    private ImmutableArray<ShelfSpec> Shelves(BayEntry entry, bool isWhole, Board? usual)
    {
        var even = Enumerable.Range(1, entry.Shelves.Even).Select(i => new ShelfEntry(null, null, null, Size.Zero, entry.Shelves.At));
        var shelves = ImmutableArray.CreateBuilder<ShelfSpec>();
        var taken = new HashSet<string>(isWhole ? CabinetPanels : [], StringComparer.Ordinal);
        foreach (var (shelf, number) in even.Concat(entry.Shelves.Each).Select((s, i) => (s, i + 1)))
        {
            var id = shelf.Name?.Text ?? Numbered("shelf", number);
            if (!taken.Add(id))
                references.Fail(shelf.Name?.At ?? shelf.At, CabinetPanels.Contains(id)
                    ? $"“{id}” is kept for the cabinet's own panel; give the shelf another name"
                    : shelf.Name is null ? $"this shelf would be called “{id}” by its place in the list, as another is; give it a name" : $"two shelves are called “{id}”; give one another name");
            var board = shelf.Board is { } name ? references.Board(name) : usual;
            if (board is not null) shelves.Add(new ShelfSpec(id, board, shelf.Top, shelf.FrontInset, shelf.At));
        }

        return shelves.ToImmutable();
    }

    private LooseShelvesSpec? Loose(LooseShelvesEntry entry, Board? usual)
    {
        var pin = references.Pin(entry.Pin);
        var board = entry.Board is { } name ? references.Board(name) : usual;
        return pin is null || board is null ? null : new LooseShelvesSpec(
            entry.Count, board, pin, entry.SetBack ?? PinRows.SetBack, PinRows.Pitch,
            entry.FromEnds ?? Size.Default(96, "usual-pin-end-distance"), entry.Play ?? Size.Default(1, "usual-shelf-play"),
            entry.FrontInset ?? Size.Default(5, "usual-front-inset"), entry.At);
    }

    private SlidePairSpec? Slides(SlidesEntry entry, double rearClearance, Board? usual, SourceSpan at)
    {
        var slide = references.Slide(entry.Slide);
        var packer = entry.Packer is { } name ? references.Board(name) : usual;
        return slide is null || packer is null ? null : new SlidePairSpec(
            slide, entry.SetBack ?? Size.Default(3, "usual-set-back"), entry.RearClearance ?? Size.Default(rearClearance, "usual-rear-clearance"), packer, entry.Load, at);
    }

    private SlidingShelfSpec? Sliding(SlidingShelfEntry entry, Board? usual)
    {
        const double CableRoom = 50;
        var slides = Slides(entry.Slides, CableRoom, usual, entry.At);
        var board = entry.Board is { } name ? references.Board(name) : usual;
        var latch = entry.Latch is { } l ? TwoPart(l) : null;
        var beyond = entry.Beyond ?? new BeyondEntry(Size.Zero, Size.Zero, Size.Zero, Size.Zero);
        return slides is null || board is null ? null : new SlidingShelfSpec(
            slides, board,
            entry.RunnerHeight ?? Size.Default(70, "usual-runner-height"),
            entry.AboveFloor ?? Size.Default(10, "usual-height-above-floor"),
            (beyond.ShelfFront, beyond.ShelfBack), (beyond.RunnerFront, beyond.RunnerBack), latch, entry.At);
    }

    private DrawersSpec? Drawers(DrawersEntry entry, Board? usual, CarcassJoints joints)
    {
        const double Free = 5;
        if (entry.Count is null == entry.Heights.IsEmpty) references.Fail(entry.At, "drawers are so many, “count”, or each has its height, “heights”; give one of the two");
        var slides = Slides(entry.Slides, Free, usual, entry.At);
        var box = entry.Board is { } name ? references.Board(name) : usual;
        var bottom = references.Board(entry.Bottom);
        var front = entry.Front is { } f ? references.Board(f) : box;
        if (entry is { Mount: DoorMount.Inset, Reveal: { } hidden }) references.Fail(hidden.Source, "fronts between the panels have a gap all round and no reveal; leave “reveal” out, or write “gap”");
        if (entry.Handle?.FromEdge is { } fromEdge) references.Fail(fromEdge.Source, "a drawer's handle is in the middle of its front; leave “from-edge” out");
        var joint = references.Joint(entry.Joint, joints.Screwed with { Row = RowRule.Standard });
        if (joint is { Housing.Value: > 0 }) references.Fail(entry.Joint!.Housing?.Source ?? entry.At, "the corners of a drawer box have no housing; leave it out");
        var handle = entry.Handle is { } h ? Handle(h) : null;
        return slides is null || box is null || bottom is null || front is null || joint is null ? null : new DrawersSpec(
            entry.Heights.IsEmpty ? [.. Enumerable.Repeat<Size?>(null, entry.Count ?? 1)] : entry.Heights, slides, box, bottom, entry.IsBottomUnder, joint, front, entry.Mount,
            entry.Reveal ?? Size.Default(1.5, "usual-reveal"), entry.Gap ?? UsualGap(entry.Mount), entry.Bands, handle, entry.At);
    }

    private static Size UsualGap(DoorMount mount) => mount == DoorMount.Inset ? Size.Default(2, "usual-inset-gap") : Size.Default(3, "usual-gap");

    private HandleSpec? Handle(HandleEntry entry)
    {
        if (entry is { FromTop: not null, FromBottom: { } bottom }) references.Fail(bottom.Source, "a handle is placed from the top or from the bottom; leave one out");
        return references.Hardware(entry.Hardware) is { } pattern
            ? new HandleSpec(pattern, entry.FromEdge ?? Size.Default(40, "usual-handle-distance"), entry.FromTop, entry.FromBottom)
            : null;
    }

    private TwoPartSpec? TwoPart(TwoPartEntry entry) =>
        (references.Hardware(entry.Body), references.Hardware(entry.Keeper)) is ({ } body, { } keeper) ? new TwoPartSpec(body, keeper) : null;

    private LiningSpec? Lining(LiningEntry entry, JointRule screwed)
    {
        var (board, screw) = (references.Board(entry.Board), entry.Screw is { } word ? references.Screw(word) : null);
        return board is null ? null : new LiningSpec(board, [.. entry.Faces.Distinct()], screw is null ? null : screwed with { Fastener = screw });
    }

    private DoorsSpec? Doors(DoorsEntry entry)
    {
        var (board, hinge) = (references.Board(entry.Board), references.Hinge(entry.Hinge));
        foreach (var (actual, module, axis) in new[] { (entry.Width, entry.Module?.Width, "width"), (entry.Height, entry.Module?.Height, "height") })
            if (actual is not null && module is not null && actual.Value > module.Value) references.Fail(actual.Source, $"the actual {axis} of a door is not more than that of its module, which includes the gaps");
        if (entry is { Module.Width: not null, Reveal: { } reveal }) references.Fail(reveal.Source, "with a module the reveals follow from module and actual size; leave “reveal” out");
        if (entry is { Mount: DoorMount.Inset, Reveal: { } hidden }) references.Fail(hidden.Source, "doors between the panels have a gap all round and no reveal; leave “reveal” out, or write “gap”");
        if (entry is { Mount: not DoorMount.Inset, Recess: { } recess }) references.Fail(recess.Source, "only doors between the panels stand behind the front; leave “recess” out, or write mount: inset");
        if (entry is { Mount: DoorMount.Inset, Gasket: { } gasket }) references.Fail(gasket.Source, "a gasket closes the gap behind doors that lie over the front edges; leave it out, or write mount: overlay");
        if (entry is { Hanging: not Hanging.Pair, Strip: not null }) references.Fail(entry.At, "a centre strip covers the gap between two doors, and this is one; leave it out");
        if (entry.Hinges is not null && !entry.Cups.IsEmpty) references.Fail(entry.At, "doors that come bored have as many hinges as cups; leave “hinges” out");
        var handle = entry.Handle is { } h ? Handle(h) : null;
        var held = entry.Catch is { } c ? TwoPart(c) : null;
        var strip = entry.Strip is { } s ? references.Board(s.Board) : null;
        var lining = entry.Lining is { } l ? references.Board(l) : null;
        return board is null || hinge is null ? null : new DoorsSpec(
            board, entry.Hanging, entry.Mount, entry.Reveal ?? Size.Default(1.5, "usual-reveal"), entry.Gap ?? UsualGap(entry.Mount), hinge, entry.At)
        {
            Actual = (entry.Width, entry.Height),
            Module = (entry.Module?.Width, entry.Module?.Height),
            Recess = entry.Recess ?? Size.Zero,
            Cups = entry.Cups,
            Hinges = entry.Hinges,
            Bands = entry.Bands,
            Handle = handle,
            Catch = held,
            Strip = strip is null ? null : (strip, entry.Strip!.Width),
            Gasket = entry.Gasket,
            Lining = lining,
        };
    }

    private CastorsSpec? Castors(CastorsEntry entry) =>
        references.Castor(entry.Castor) is { } castor ? new CastorsSpec(castor, entry.Clearance ?? Size.Default(5, "usual-castor-clearance"), entry.Braked) : null;

    private FeetSpec? Feet(FeetEntry entry, CabinetEntry cabinet)
    {
        if (cabinet.Castors is not null) references.Fail(entry.At, "a cabinet stands on castors or on feet; leave one of them out");
        return references.Foot(entry.Foot) is { } foot
            ? new FeetSpec(foot, entry.Inset ?? Size.Default(40, "usual-foot-inset"), entry.MoreAt ?? Size.Default(800, "usual-foot-distance"))
            : null;
    }

    private PlinthSpec? Plinth(PlinthEntry entry, CabinetEntry cabinet)
    {
        if (cabinet.Feet is null && cabinet.Recess.Value == 0) references.Fail(entry.At, "a plinth stands under a raised bottom or before feet; give “recess” or “feet”, or leave it out");
        return references.Board(entry.Board) is { } board ? new PlinthSpec(board, entry.SetBack ?? Size.Default(40, "usual-plinth-set-back"), entry.HasRear, entry.At) : null;
    }

    private AppliedTopSpec? AppliedTop(AppliedTopEntry entry, Board? under, CarcassJoints? joints)
    {
        if (references.Board(entry.Board) is not { } board || under is null || joints is null) return null;
        var usual = joints.FaceToFace(under, board);
        var screw = entry.Screw is { } word ? references.Screw(word) : usual.Fastener;
        var overhang = entry.Overhang ?? new OverhangEntry(Size.Zero, null, null);
        foreach (var (size, over, key, where) in new[] { (entry.Piece?.Width, overhang.Sides, "width", "at the sides"), (entry.Piece?.Depth, overhang.Back, "depth", "behind") })
            if (size is not null && over is not null) references.Fail(over.Source, $"the overhang {where} follows from the {key} of what is bought; leave one of them out");
        if (entry is { JointLine: { } line, Pieces: 1 }) references.Fail(line.Source, "one piece has no joint line; write pieces: 2, or leave “joint-line” out");
        return screw is null ? null : new AppliedTopSpec(board, (overhang.Front, overhang.Sides ?? Size.Zero, overhang.Back ?? Size.Zero), usual with { Fastener = screw }, entry.At)
        {
            IsInTwo = entry.Pieces == 2, JointLine = entry.JointLine, Width = entry.Piece?.Width, Depth = entry.Piece?.Depth,
        };
    }

    private static string Numbered(string word, int number) => string.Create(CultureInfo.InvariantCulture, $"{word}-{number}");
}
