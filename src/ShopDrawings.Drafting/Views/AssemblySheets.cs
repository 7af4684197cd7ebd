using System.Collections.Immutable;
using System.Globalization;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>
/// The sheets of a whole assembly: elevations, plan, sections and isometric views to scale, hidden lines removed, with dimensions, and an
/// exploded view with a list of parts. Only placed panels are shown; the list has loose ones too.
/// </summary>
public static class AssemblySheets
{
    private static readonly Layer DimensionLayer = new("DIMENSION", Role.Dimension, "Sizes");
    private static readonly Layer BalloonLayer = new("BALLOON", Role.Lettering, "Numbers of the list of parts");

    /// <summary>All sheets of an assembly, each with the name its file is given; none where no panel is placed.</summary>
    /// <param name="assembly">What is built.</param>
    /// <param name="settings">What all sheets share.</param>
    /// <param name="note">A general note for the title blocks.</param>
    public static ImmutableArray<(string Name, Drawing Drawing)> Of(Assembly assembly, SheetSettings settings, string note = "Work from figures; do not scale.")
    {
        ArgumentNullException.ThrowIfNull(assembly);
        ArgumentNullException.ThrowIfNull(settings);
        if (assembly.Panels.All(p => p.Placement is null)) return [];
        var sizes = new ViewSizes(assembly);
        var sheets = Elevations(assembly, sizes, settings).ToList();
        var count = sheets.Count + 2;
        var drawings = ImmutableArray.CreateBuilder<(string, Drawing)>();
        foreach (var sheet in sheets) drawings.Add((sheet.Name, Plain(sheet, assembly.Name, settings, note, drawings.Count + 1, count)));
        var isometric = new Sheet("isometric", "Isometric view", "Assembly drawing", new AssemblyView(assembly, Projection.Isometric, _ => true), [], []);
        drawings.Add((isometric.Name, Plain(isometric, assembly.Name, settings, note, count - 1, count)));
        drawings.Add(("exploded", Exploded(assembly, sizes, settings, note, count)));
        return drawings.ToImmutable();
    }

    private sealed record Sheet(string Name, string Title, string Type, AssemblyView View, ImmutableArray<Span> Spans, ImmutableArray<string> Notes);

    private static IEnumerable<Sheet> Elevations(Assembly assembly, ViewSizes sizes, SheetSettings settings)
    {
        const string Type = "General arrangement";
        yield return new Sheet("front", sizes.Doors.IsEmpty ? "Front view" : "Front view, doors closed", Type, Front(assembly, sizes, out var front), front, []);
        if (!sizes.Doors.IsEmpty) yield return new Sheet("front-open", "Front view without doors", Type, Open(assembly, sizes, out var open), open, []);
        yield return new Sheet("side", "View from the left", Type, Side(assembly, sizes, out var side), side, Travels(assembly, settings.Lengths));
        yield return new Sheet("plan", "Plan, from above", Type, Plan(assembly, sizes, out var plan), plan, Swings(assembly));
        var (upright, level) = (sizes.Cut(0), sizes.Cut(2));
        string Place(double from, double to) => settings.Lengths.Print(to - from);
        string Seen(AssemblyView view, string from) => $"Seen from {from}.{(view.CutsBores ? " Thin rectangles with centre lines: bores of screws, dowels and fittings in the plane." : "")}";
        var (a, b) = (Section(assembly, sizes, upright, out var ofA), Section(assembly, sizes, level, out var ofB));
        yield return new Sheet("section-a", $"Section A–A, {Place(sizes.Carcass.Min.X, upright.Level)} from the left", "Section", a, ofA, [Seen(a, "the left")]);
        yield return new Sheet("section-b", $"Section B–B, {Place(sizes.Standing, level.Level)} above the floor", "Section", b, ofB, [Seen(b, "above")]);
    }

    private static AssemblyView Front(Assembly assembly, ViewSizes sizes, out ImmutableArray<Span> spans)
    {
        var view = new AssemblyView(assembly, Projection.Front, _ => true);
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
        var view = new AssemblyView(assembly, Projection.Front, p => !sizes.Doors.Contains(p));
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
        var view = new AssemblyView(assembly, Projection.Left, _ => true);
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
        var view = new AssemblyView(assembly, Projection.Plan, _ => true);
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
        var view = new AssemblyView(assembly, isUpright ? Projection.Left : Projection.Plan, _ => true, plane);
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

    // One view with its dimensions in the middle of the room.
    private static Drawing Plain(Sheet sheet, string project, SheetSettings settings, string note, int number, int count)
    {
        var bounds = sheet.View.Bounds;
        var spans = sheet.Spans.Select(s => s.Side is ViewSide.Below or ViewSide.Above ? s with { From = s.From - bounds.Min.X, To = s.To - bounds.Min.X } : s with { From = s.From - bounds.Min.Y, To = s.To - bounds.Min.Y }).ToList();
        var byScale = new Dictionary<int, DimensionRows>();
        DimensionRows Rows(int scale) => byScale.TryGetValue(scale, out var rows) ? rows : byScale[scale] = DimensionRows.Of(spans, scale, settings);
        Box2 Around(int scale)
        {
            var size = new Point2(bounds.Width, bounds.Height) * (1.0 / scale);
            var (left, below, right, above) = Rows(scale).Beyond(size);
            return new Box2(
                new(-Math.Max(left + 2, Rows(scale).Reach(ViewSide.Left)), -Math.Max(below + 2, Rows(scale).Reach(ViewSide.Below))),
                size + new Point2(Math.Max(right + 2, Rows(scale).Reach(ViewSide.Right)), Math.Max(above + 2, Rows(scale).Reach(ViewSide.Above))));
        }

        List<string> Notes(int scale) => [.. sheet.Notes, .. Rows(scale).LeftOut.GroupBy(s => s.What).Select(g => $"{char.ToUpperInvariant(g.Key[0])}{g.Key[1..]}: {string.Join(", ", g.Select(s => settings.Lengths.Print(s.To - s.From)).Distinct())}.")];
        var choice = SheetChoice.Of(settings, sheet.Notes, (scale, size) =>
        {
            var around = Around(scale);
            var more = SheetFrame.Wrapped(size, Notes(scale), settings).Length - SheetFrame.Wrapped(size, sheet.Notes, settings).Length;
            return (new Point2(around.Width, around.Height + (size.HasRoomBesideTitle ? 0 : more * SheetFrame.NotePitch)), around.Width * around.Height);
        });
        var notes = SheetFrame.Wrapped(choice.Size, Notes(choice.Scale), settings);
        var (room, box) = (choice.Size.Room(notes.Length), Around(choice.Scale));
        var corner = room.Centre - box.Centre;
        var view = new Box2(corner, corner + new Point2(bounds.Width, bounds.Height) * (1.0 / choice.Scale));
        var fields = new TitleFields(sheet.Title, sheet.Type, project, number, count, choice.Scale, note);
        return new Drawing($"{project}: {sheet.Title}", string.Create(CultureInfo.InvariantCulture, $"{sheet.Title} of {project}, scale 1:{choice.Scale}."), choice.Size.Page,
            [.. SheetFrame.Of(choice.Size, fields, settings, notes), .. PaperLines.Of(sheet.View.Draw(choice.Scale, corner)), .. Rows(choice.Scale).Draw(DimensionLayer, view)]);
    }

    private static Drawing Exploded(Assembly assembly, ViewSizes sizes, SheetSettings settings, string note, int count)
    {
        const double Margin = 24;
        const double Gap = 3;
        const string Title = "Exploded view with list of parts";
        var list = new PartsList(assembly, settings);
        var (view, shown, hidden) = Pulled(Explosion.Factors[0]);
        for (var i = 1; i < Explosion.Factors.Length && hidden > 0; i++)
        {
            var further = Pulled(Explosion.Factors[i]);
            if (further.Hidden < hidden) (view, shown, hidden) = further;
        }

        var bounds = view.Bounds;
        (AssemblyView View, Dictionary<int, Point2?> Shown, int Hidden) Pulled(Point3 factors)
        {
            var pulled = new AssemblyView(assembly, Projection.Isometric, _ => true, moved: new Explosion(sizes, factors).Shift);
            var lines = pulled.Lines().Select(l => l.Line).ToList();
            var points = list.Rows.Where(r => r.Panels.Any(p => p.Placement is not null))
                .ToDictionary(r => r.Number, r => r.Panels.Where(p => p.Placement is not null).Select(p => pulled.Showing(p, lines)).FirstOrDefault(p => p is not null));
            return (pulled, points, points.Values.Count(p => p is null));
        }

        // On lying sheets the list stands on the title block, and the view has all the height beside both.
        static bool IsLying(SheetSize size) => size.Page.X > size.Page.Y;
        var choice = SheetChoice.Of(settings, [], (scale, size) =>
        {
            var drawn = new Point2(bounds.Width / scale + 2 * Margin, bounds.Height / scale + 2 * Gap);
            return (IsLying(size)
                ? new Point2(drawn.X + size.TitleBlock.Width, Math.Max(drawn.Y - SheetFrame.TitleHeight, list.Size.Y + Gap))
                : new Point2(Math.Max(drawn.X, list.Size.X + 4), drawn.Y + list.Size.Y + Gap), drawn.X * drawn.Y + list.Size.X * list.Size.Y);
        });
        var room = choice.Size.Room(0);
        var corner = IsLying(choice.Size) ? new Point2(room.Max.X - (choice.Size.TitleBlock.Width + list.Size.X) / 2, room.Max.Y - Gap) : new Point2(room.Centre.X - list.Size.X / 2, room.Min.Y + list.Size.Y + Gap);
        var free = IsLying(choice.Size) ? new Box2(choice.Size.Frame.Min, new(choice.Size.TitleBlock.Min.X, room.Max.Y)) : room with { Min = new(room.Min.X, corner.Y) };
        var drawnSize = new Point2(bounds.Width, bounds.Height) * (1.0 / choice.Scale);
        var origin = free.Centre - drawnSize * 0.5;
        var drawing = new Box2(origin, origin + drawnSize);
        Point2 Place(Point2 p) => origin + (p - bounds.Min) * (1.0 / choice.Scale);

        var marks = new List<(int Number, Point2 At)>();
        var behind = new List<int>();
        foreach (var row in list.Rows)
        {
            var placed = row.Panels.Where(p => p.Placement is not null).ToList();
            if (placed.Count == 0) continue;
            if (shown[row.Number] is null) behind.Add(row.Number);
            var at = shown[row.Number] ?? view.Projection.Map(view.Items.First(i => i.Panel == placed[0]).Body.Bounds is var b ? (b.Min + b.Max) * 0.5 : default);
            marks.Add((row.Number, Place(at)));
        }

        var fields = new TitleFields(Title, "Assembly drawing", assembly.Name, count, count, choice.Scale, behind.Count == 0 ? note : $"{note} Behind others: {string.Join(", ", behind)}.");
        return new Drawing($"{assembly.Name}: {Title}", string.Create(CultureInfo.InvariantCulture, $"{assembly.Name} pulled apart, {list.Rows.Length} kinds of panels, scale 1:{choice.Scale}."), choice.Size.Page,
            [.. SheetFrame.Of(choice.Size, fields, settings, []), .. PaperLines.Of(view.Draw(choice.Scale, origin)), .. list.Draw(corner), .. Balloons(marks, drawing, free, settings)]);
    }

    // Numbers in circles in a column at either side of the view, in the order of the heights they point at.
    private static IEnumerable<Entity> Balloons(List<(int Number, Point2 At)> marks, Box2 view, Box2 room, SheetSettings settings)
    {
        const double Radius = 4;
        const double Pitch = 10;
        var half = (marks.Count + 1) / 2;
        var left = marks.OrderBy(m => m.At.X).Take(half).OrderBy(m => m.At.Y).ToList();
        var right = marks.OrderBy(m => m.At.X).Skip(half).OrderBy(m => m.At.Y).ToList();
        foreach (var (column, edge, outwards) in new[] { (left, view.Min.X, -1), (right, view.Max.X, 1) })
        {
            // The nearest column whose leaders pass no other circle.
            var heights = Spread([.. column.Select(m => m.At.Y)], Pitch, room.Min.Y + Radius + 2, room.Max.Y - Radius - 2);
            ImmutableArray<Point2> Centres(double away) => [.. heights.Select(y => new Point2(edge + outwards * away, y))];
            bool IsClear(double away) => Centres(away) is var all && column.Zip(all).All(m => all.All(c => c == m.Second || new Segment(m.First.At, m.Second).DistanceTo(c) > Radius + 0.5));
            var away = new[] { 8.0, 10, 12, 14, 16, 18 }.Where(IsClear).DefaultIfEmpty(18).First();
            foreach (var ((number, at), centre) in column.Zip(Centres(away)))
            {
                var towards = (at - centre) * (1 / at.DistanceTo(centre));
                yield return new CircleEntity(BalloonLayer, centre, Radius);
                yield return new TextEntity(BalloonLayer, centre, settings.Normal, number.ToString(CultureInfo.InvariantCulture), Anchor.Middle);
                yield return new LeaderEntity(BalloonLayer, [at, centre + towards * Radius], settings.Small);
            }
        }
    }

    // Heights in order, at least a pitch apart and between two ends: the mean of pushing upwards and pushing downwards.
    private static double[] Spread(double[] wanted, double pitch, double low, double high)
    {
        pitch = Math.Min(pitch, (high - low) / Math.Max(1, wanted.Length - 1));
        var (up, down) = (wanted.ToArray(), wanted.ToArray());
        void Raise(double[] heights)
        {
            for (var i = 0; i < heights.Length; i++) heights[i] = Math.Max(heights[i], i == 0 ? low : heights[i - 1] + pitch);
        }

        void Lower(double[] heights)
        {
            for (var i = heights.Length - 1; i >= 0; i--) heights[i] = Math.Min(heights[i], i == heights.Length - 1 ? high : heights[i + 1] - pitch);
        }

        Raise(up);
        Lower(up);
        Lower(down);
        Raise(down);
        return [.. up.Zip(down, (a, b) => (a + b) / 2)];
    }
}
