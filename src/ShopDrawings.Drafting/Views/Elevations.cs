using System.Collections.Immutable;
using System.Globalization;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>The views of an assembly along its axes, and what is worth a dimension in each.</summary>
internal static class Elevations
{
    private const string Type = "General arrangement";

    /// <summary>Front with and without doors, side, plan and two sections.</summary>
    public static IEnumerable<ViewSheet> Of(Assembly assembly, ViewSizes sizes, LengthStyle lengths)
    {
        var (upright, level) = (sizes.Cut(0), sizes.Cut(2));
        yield return new ViewSheet("front", sizes.Doors.IsEmpty ? "Front view" : "Front view, doors closed", Type, Front(assembly, sizes, out var front), front, [])
        {
            Sections = [new("A", true, upright.Level, 1), new("B", false, level.Level, -1)],
        };
        if (!sizes.Doors.IsEmpty) yield return new ViewSheet("front-open", "Front view without doors", Type, Open(assembly, sizes, out var open), open, []);
        yield return new ViewSheet("side", "View from the left", Type, Side(assembly, sizes, out var side), side, Travels(assembly, lengths));
        yield return new ViewSheet("plan", "Plan, from above", Type, Plan(assembly, sizes, out var plan), plan, Swings(assembly));
        string Place(double from, double to) => lengths.Print(to - from);
        string Seen(AssemblyView view, string from) => $"Seen from {from}.{(view.CutsBores ? " Thin rectangles with centre lines: bores of screws, dowels and fittings in the plane." : "")}";
        var (a, b) = (Section(assembly, sizes, upright, out var ofA), Section(assembly, sizes, level, out var ofB));
        yield return new ViewSheet("section-a", $"Section A–A, {Place(sizes.Carcass.Min.X, upright.Level)} from the left", "Section", a, ofA, [Seen(a, "the left")]) { Letter = "A" };
        yield return new ViewSheet("section-b", $"Section B–B, {Place(sizes.Standing, level.Level)} above the floor", "Section", b, ofB, [Seen(b, "above")]) { Letter = "B" };
    }

    private static AssemblyView Front(Assembly assembly, ViewSizes sizes, out ImmutableArray<Span> spans)
    {
        var view = new AssemblyView(sizes.Bodies, Projection.Front, _ => true);
        var (whole, carcass) = (sizes.Whole, sizes.Carcass);
        var all = ImmutableArray.CreateBuilder<Span>();
        all.Add(new(whole.Min.X, whole.Max.X, ViewSide.Below, "overall width"));
        all.Add(new(carcass.Min.X, carcass.Max.X, ViewSide.Below, "carcass width"));
        all.Add(new(sizes.Standing, whole.Max.Z, ViewSide.Left, "overall height"));
        all.Add(new(carcass.Min.Z, carcass.Max.Z, ViewSide.Left, "carcass height"));
        all.Add(new(sizes.Standing, carcass.Min.Z, ViewSide.Left, "height of the carcass above the floor"));
        foreach (var front in sizes.Fronts.Select(ViewSizes.Box))
        {
            all.Add(new(front.Min.X, front.Max.X, ViewSide.Below, "width of a front"));
            all.Add(new(front.Min.Z, front.Max.Z, ViewSide.Right, "height of a front"));
        }

        if (sizes.Doors.IsEmpty)
        {
            foreach (var (from, to) in sizes.Openings(0)) all.Add(new(from, to, ViewSide.Below, "clear width"));
            foreach (var (from, to) in sizes.Openings(2)) all.Add(new(from, to, ViewSide.Right, "clear height"));
        }

        foreach (var (from, to) in sizes.Reveals(0)) all.Add(new(from, to, ViewSide.Above, "reveal"));
        foreach (var (from, to) in sizes.Reveals(2)) all.Add(new(from, to, ViewSide.Left, "reveal"));
        foreach (var (height, _, piece) in sizes.Heights(HardwareKind.Hinge))
        {
            if (assembly.Motions.OfType<Swing>().FirstOrDefault(s => piece.Mounts.Any(m => s.Panels.Contains(m.Panel))) is not { } swing) continue;
            var door = ViewSizes.Box(assembly.Panel(swing.Panels[0]));
            all.Add(new(door.Min.Z, height, ViewSide.Right, "middle of a hinge above the lower edge of its door"));
            var (edge, inwards) = swing.IsLeft ? (door.Min.X, 1) : (door.Max.X, -1);
            view.AddCentre(new Segment(new(edge - inwards * 12, height), new(edge + inwards * 60, height)));
        }

        spans = all.ToImmutable();
        return view;
    }

    private static AssemblyView Open(Assembly assembly, ViewSizes sizes, out ImmutableArray<Span> spans)
    {
        var view = new AssemblyView(sizes.Bodies, Projection.Front, p => !sizes.Doors.Contains(p));
        var carcass = sizes.Carcass;
        var all = ImmutableArray.CreateBuilder<Span>();
        all.Add(new(carcass.Min.X, carcass.Max.X, ViewSide.Below, "carcass width"));
        all.Add(new(carcass.Min.Z, carcass.Max.Z, ViewSide.Left, "carcass height"));
        foreach (var (from, to) in sizes.Openings(0)) all.Add(new(from, to, ViewSide.Below, "clear width"));
        foreach (var (from, to) in sizes.Openings(2)) all.Add(new(from, to, ViewSide.Left, "clear height"));
        foreach (var shelf in sizes.Levels()) all.Add(new(carcass.Min.Z, shelf.Max.Z, ViewSide.Right, "top of a shelf above the lower edge of the carcass"));
        Slides(view, sizes, all);
        spans = all.ToImmutable();
        return view;
    }

    private static void Slides(AssemblyView view, ViewSizes sizes, ImmutableArray<Span>.Builder all)
    {
        foreach (var (height, block, _) in sizes.Heights(HardwareKind.Slide))
        {
            all.Add(new(sizes.Carcass.Min.Z, height, ViewSide.Right, "middle of a slide above the lower edge of the carcass"));
            view.AddCentre(new Segment(new(block.Min.X - 20, height), new(block.Max.X + 20, height)));
        }
    }

    private static AssemblyView Side(Assembly assembly, ViewSizes sizes, out ImmutableArray<Span> spans)
    {
        var view = new AssemblyView(sizes.Bodies, Projection.Left, _ => true);
        var (whole, carcass) = (sizes.Whole, sizes.Carcass);
        var all = ImmutableArray.CreateBuilder<Span>();
        void Depth(double front, double back, ViewSide side, string what) => all.Add(new(-back, -front, side, what));
        Depth(whole.Min.Y, whole.Max.Y, ViewSide.Below, "overall depth");
        Depth(carcass.Min.Y, carcass.Max.Y, ViewSide.Below, "depth of the sides");
        all.Add(new(sizes.Standing, whole.Max.Z, ViewSide.Left, "overall height"));
        all.Add(new(sizes.Standing, carcass.Min.Z, ViewSide.Left, "height of the carcass above the floor"));
        foreach (var front in sizes.Fronts.Select(ViewSizes.Box).Where(f => f.Max.Y < carcass.Min.Y + Tolerance.Length)) Depth(front.Max.Y, carcass.Min.Y, ViewSide.Above, "gap behind a front");
        foreach (var top in sizes.Fixed.Where(p => ViewSizes.Normal(p) == 2).Select(ViewSizes.Box).Where(b => b.Min.Z >= carcass.Max.Z - Tolerance.Length))
        {
            all.Add(new(top.Min.Z, top.Max.Z, ViewSide.Left, "thickness of the top"));
            Depth(top.Min.Y, carcass.Min.Y, ViewSide.Above, "overhang at the front");
            Depth(carcass.Max.Y, top.Max.Y, ViewSide.Above, "overhang at the back");
        }

        foreach (var travel in assembly.Motions.OfType<Travel>().Where(t => t.Towards == Direction.Front))
        {
            var boxes = travel.Panels.Select(assembly.Panel).Where(p => p.Placement is not null).Select(ViewSizes.Box).ToList();
            if (boxes.Count == 0) continue;
            var box = boxes.Aggregate((a, b) => a.Union(b));
            // What is pulled out as far as it shows before the front: the rest is behind the side.
            var (front, back) = (box.Min.Y - travel.Distance.Value, Math.Min(box.Max.Y - travel.Distance.Value, whole.Min.Y));
            Phantom(view, [new(-back, box.Min.Z), new(-front, box.Min.Z), new(-front, box.Max.Z), new(-back, box.Max.Z)], isClosed: false);
            Depth(front, whole.Min.Y, ViewSide.Below, "reach before the front when pulled out");
        }

        spans = all.ToImmutable();
        return view;
    }

    private static AssemblyView Plan(Assembly assembly, ViewSizes sizes, out ImmutableArray<Span> spans)
    {
        var view = new AssemblyView(sizes.Bodies, Projection.Plan, _ => true);
        var whole = sizes.Whole;
        foreach (var swing in assembly.Motions.OfType<Swing>())
        {
            var boxes = swing.Panels.Select(assembly.Panel).Where(p => p.Placement is not null).Select(ViewSizes.Box).ToList();
            if (boxes.Count == 0) continue;
            var door = boxes.Aggregate((a, b) => a.Union(b));
            var (hinge, turn) = (new Point2(swing.X.Value, swing.Y.Value), swing.Degrees * Math.PI / 180 * (swing.IsLeft ? -1 : 1));
            var (sin, cos) = Math.SinCos(turn);
            Point2 Turned(Point2 p) => hinge + new Point2((p - hinge).X * cos - (p - hinge).Y * sin, (p - hinge).X * sin + (p - hinge).Y * cos);
            Point2[] corners = [new(door.Min.X, door.Min.Y), new(door.Max.X, door.Min.Y), new(door.Max.X, door.Max.Y), new(door.Min.X, door.Max.Y)];
            Phantom(view, [.. corners.Select(Turned)], isClosed: true);
            var free = swing.IsLeft ? corners[1] : corners[0];
            view.AddPhantom(new Segment(free, Turned(free), Math.Tan(turn / 4)));
        }

        var box = view.Bounds;
        spans =
        [
            new(whole.Min.X, whole.Max.X, ViewSide.Above, "overall width"), new(whole.Min.Y, whole.Max.Y, ViewSide.Left, "overall depth"),
            .. sizes.Doors.IsEmpty ? Array.Empty<Span>() :
            [
                new(box.Min.X, whole.Min.X, ViewSide.Above, "room at the left for a door"), new(whole.Max.X, box.Max.X, ViewSide.Above, "room at the right for a door"),
                new(box.Min.Y, whole.Min.Y, ViewSide.Left, "room at the front for a door"),
            ],
        ];
        return view;
    }

    private static AssemblyView Section(Assembly assembly, ViewSizes sizes, CuttingPlane plane, out ImmutableArray<Span> spans)
    {
        var isUpright = plane.Axis == 0;
        var view = new AssemblyView(sizes.Bodies, isUpright ? Projection.Left : Projection.Plan, _ => true, plane);
        var (whole, carcass) = (sizes.Whole, sizes.Carcass);
        var all = ImmutableArray.CreateBuilder<Span>();
        void Depth(double front, double back, ViewSide side, string what) => all.Add(isUpright ? new(-back, -front, side, what) : new(front, back, ViewSide.Left, what));
        Depth(carcass.Min.Y, carcass.Max.Y, ViewSide.Below, "depth of the sides");
        bool IsCut(Box3 b) => b.Min.Along(plane.Axis) < plane.Level && b.Max.Along(plane.Axis) > plane.Level;
        foreach (var panel in sizes.Panels.Where(p => IsCut(ViewSizes.Box(p))))
        {
            var (box, normal) = (ViewSizes.Box(panel), ViewSizes.Normal(panel));
            if (normal == 1 && box.Min.Y > carcass.Min.Y + (carcass.Max.Y - carcass.Min.Y) / 2 && sizes.Fixed.Contains(panel))
            {
                Depth(carcass.Min.Y, box.Min.Y, ViewSide.Below, "clear depth");
                Depth(box.Max.Y, carcass.Max.Y, ViewSide.Above, "set-back of the back");
            }

            if (normal != 2 || box.Min.Z >= carcass.Max.Z - Tolerance.Length) continue;
            Depth(box.Min.Y, box.Max.Y, ViewSide.Below, "depth of a level panel");
            Depth(carcass.Min.Y, box.Min.Y, ViewSide.Above, "set-back");
        }

        foreach (var front in sizes.Fronts.Select(ViewSizes.Box).Where(f => IsCut(f) && f.Max.Y < carcass.Min.Y + Tolerance.Length)) Depth(front.Max.Y, carcass.Min.Y, ViewSide.Above, "gap behind a front");
        if (isUpright)
        {
            foreach (var (from, to) in sizes.Openings(2, plane.Level)) all.Add(new(from, to, ViewSide.Left, "clear height"));
            all.Add(new(sizes.Standing, whole.Max.Z, ViewSide.Left, "overall height"));
            foreach (var (height, block, _) in sizes.Heights(HardwareKind.Slide).Where(s => s.Block.Min.X >= plane.Level))
            {
                all.Add(new(carcass.Min.Z, height, ViewSide.Right, "middle of a slide above the lower edge of the carcass"));
                view.AddCentre(new Segment(new(-block.Max.Y - 20, height), new(-block.Min.Y + 20, height)));
            }
        }
        else
        {
            all.Add(new(carcass.Min.X, carcass.Max.X, ViewSide.Below, "carcass width"));
            foreach (var (from, to) in sizes.Openings(0, plane.Level)) all.Add(new(from, to, ViewSide.Below, "clear width"));
        }

        spans = all.ToImmutable();
        return view;
    }

    private static ImmutableArray<string> Travels(Assembly assembly, LengthStyle lengths) =>
        [.. assembly.Motions.OfType<Travel>().GroupBy(t => lengths.Describe(t.Distance.Value)).Select(g => $"Pulled out (double-dot chain): {string.Join(", ", g.Select(t => t.Id))} by {g.Key}.")];

    private static ImmutableArray<string> Swings(Assembly assembly) =>
        [.. assembly.Motions.OfType<Swing>().GroupBy(s => s.Degrees).Select(g => string.Create(CultureInfo.InvariantCulture, $"Open (double-dot chain): {string.Join(", ", g.Select(s => s.Id))} by {g.Key:0.#}°."))];

    private static void Phantom(AssemblyView view, ReadOnlySpan<Point2> corners, bool isClosed)
    {
        for (var i = 1; i < corners.Length; i++) view.AddPhantom(new Segment(corners[i - 1], corners[i]));
        if (isClosed) view.AddPhantom(new Segment(corners[^1], corners[0]));
    }
}
