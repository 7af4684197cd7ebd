using System.Collections.Immutable;
using System.Globalization;
using ShopDrawings.Kernel;
using ShopDrawings.Yaml;

namespace ShopDrawings.ProjectFile;

/// <summary>Makes the specification of a cabinet from what the user wrote: follows references, fills in defaults, refuses what contradicts itself.</summary>
internal sealed class CabinetReader(References references)
{
    private static readonly string[] CabinetPanels = ["left-side", "right-side", "bottom", "top", "back", "left-door", "right-door", "door", "plinth", "rear-plinth", "applied-top", "applied-top-1", "applied-top-2"];

    /// <summary>The specification, or nothing where a fault was noted.</summary>
    public CabinetSpec? Read(CabinetEntry entry)
    {
        foreach (var (outside, inside, axis) in new[] { (entry.Width, entry.Inside?.Width, "width"), (entry.Height, entry.Inside?.Height, "height"), (entry.Depth, entry.Inside?.Depth, "depth") })
            if (outside is not null && inside is not null) references.Fail(inside.Source, $"the {axis} is given outside and inside; one follows from the other, so leave one out");
        var board = references.Board(entry.Board);
        var joints = Joints(entry);
        var back = entry.Back is { } b ? Back(b, board, joints?.Screwed) : null;
        var bay = Bay(entry.Bay, "", board);
        var doors = entry.Doors is { } d ? Doors(d) : null;
        var castors = entry.Castors is { } c ? Castors(c) : null;
        var feet = entry.Feet is { } f ? Feet(f, entry) : null;
        var plinth = entry.Plinth is { } p ? Plinth(p, entry) : null;
        var top = entry.AppliedTop is { } t ? AppliedTop(t, board, joints?.Screwed) : null;
        if (board is null || joints is null || bay is null || (back, doors, castors, top) is var read
            && ((entry.Back is not null && read.back is null) || (entry.Doors is not null && read.doors is null)
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
            Doors = doors,
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
        var screwed = new JointRule(usual.Fastener as Screw ?? references.UsualScrew, usual.Row);
        return topLeft is null || topRight is null || bottomLeft is null || bottomRight is null || shelves is null || dividers is null
            ? null
            : new CarcassJoints(topLeft, topRight, bottomLeft, bottomRight, shelves, dividers, screwed);

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
        const double Reach = 30;
        if (references.Board(entry.Board) is not { } board || around is null || screwed is null) return null;
        var screw = entry.Screw is { } word ? references.Screw(word) : references.LongestScrew(((Screw)screwed.Fastener!).Diameter, board.Thickness.Value + Reach);
        if (screw is null) return null;
        var inset = entry.Inset ?? (isGroove ? Size.Default(10, "usual-back-inset") : Size.Zero);
        var depth = entry.GrooveDepth ?? Size.Smallest(Size.Default(8, "usual-groove-depth"), around.Thickness / 2).As("groove-depth");
        return new BackSpec(board, entry.Fit, inset, depth, entry.GroovePlay ?? Size.Default(0.3, "usual-groove-play"), entry.EndPlay ?? Size.Default(1, "usual-end-play"), screwed with { Fastener = screw });
    }

    private BaySpec? Bay(BayEntry entry, string name, Board? usual)
    {
        var split = !entry.Stacked.IsEmpty ? Split.Stacked : !entry.SideBySide.IsEmpty ? Split.SideBySide : Split.None;
        var fills = entry.Sliding is not null || entry.Lining is not null || entry.Shelves.Even > 0 || !entry.Shelves.Each.IsEmpty;
        if (!entry.Stacked.IsEmpty && !entry.SideBySide.IsEmpty || (split != Split.None && fills))
            references.Fail(entry.At, "a space is divided once: by “stacked” or “side-by-side”, and shelves, sliding shelf and lining then go into its bays");
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
            if (Bay(child, childName, usual) is { } read) bays.Add(read with { Clear = clear });
        }

        var shelves = Shelves(entry, name.Length == 0 && split == Split.None, usual);
        var sliding = entry.Sliding is { } s ? Sliding(s, usual) : null;
        var lining = entry.Lining is { } l && references.Board(l.Board) is { } board ? new LiningSpec(board, [.. l.Faces.Distinct()]) : null;
        return new BaySpec(name, null, split, bays.ToImmutable(), shelves, sliding, lining, entry.At);
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

    private SlidingShelfSpec? Sliding(SlidingShelfEntry entry, Board? usual)
    {
        var slide = references.Slide(entry.Slide);
        var board = entry.Board is { } name ? references.Board(name) : usual;
        return slide is null || board is null ? null : new SlidingShelfSpec(
            slide, board,
            entry.RunnerHeight ?? Size.Default(70, "usual-runner-height"),
            entry.AboveFloor ?? Size.Default(10, "usual-height-above-floor"),
            entry.SetBack ?? Size.Default(3, "usual-set-back"),
            entry.RearClearance ?? Size.Default(50, "usual-rear-clearance"),
            entry.Load, entry.At);
    }

    private DoorsSpec? Doors(DoorsEntry entry)
    {
        var (board, hinge) = (references.Board(entry.Board), references.Hinge(entry.Hinge));
        foreach (var (actual, module, axis) in new[] { (entry.Width, entry.Module?.Width, "width"), (entry.Height, entry.Module?.Height, "height") })
            if (actual is not null && module is not null && actual.Value > module.Value) references.Fail(actual.Source, $"the actual {axis} of a door is not more than that of its module, which includes the gaps");
        if (entry is { Module.Width: not null, Reveal: { } reveal }) references.Fail(reveal.Source, "with a module the reveals follow from module and actual size; leave “reveal” out");
        return board is null || hinge is null ? null : new DoorsSpec(
            board, entry.Hanging, (entry.Width, entry.Height), (entry.Module?.Width, entry.Module?.Height),
            entry.Reveal ?? Size.Default(1.5, "usual-reveal"), entry.Gap ?? Size.Default(3, "usual-gap"), hinge, entry.Bands, entry.At);
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

    // The usual screw is the longest of the carcass screw's diameter that stays 3 mm under the applied top's face.
    private AppliedTopSpec? AppliedTop(AppliedTopEntry entry, Board? under, JointRule? screwed)
    {
        const double LeastLeft = 3;
        if (references.Board(entry.Board) is not { } board || under is null || screwed is null) return null;
        var screw = entry.Screw is { } word ? references.Screw(word) : references.LongestScrew(((Screw)screwed.Fastener!).Diameter, under.Thickness.Value + board.Thickness.Value - LeastLeft);
        var overhang = entry.Overhang ?? new OverhangEntry(Size.Zero, null, null);
        foreach (var (size, over, key, where) in new[] { (entry.Piece?.Width, overhang.Sides, "width", "at the sides"), (entry.Piece?.Depth, overhang.Back, "depth", "behind") })
            if (size is not null && over is not null) references.Fail(over.Source, $"the overhang {where} follows from the {key} of what is bought; leave one of them out");
        if (entry is { JointLine: { } line, Pieces: 1 }) references.Fail(line.Source, "one piece has no joint line; write pieces: 2, or leave “joint-line” out");
        return screw is null ? null : new AppliedTopSpec(board, (overhang.Front, overhang.Sides ?? Size.Zero, overhang.Back ?? Size.Zero), screwed with { Fastener = screw }, entry.At)
        {
            IsInTwo = entry.Pieces == 2, JointLine = entry.JointLine, Width = entry.Piece?.Width, Depth = entry.Piece?.Depth,
        };
    }

    private static string Numbered(string word, int number) => string.Create(CultureInfo.InvariantCulture, $"{word}-{number}");
}
