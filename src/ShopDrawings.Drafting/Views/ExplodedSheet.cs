using System.Collections.Immutable;
using System.Globalization;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>The sheet that shows an assembly pulled apart, its parts numbered, with their list.</summary>
internal static class ExplodedSheet
{
    private static readonly Layer BalloonLayer = new("BALLOON", Role.Lettering, "Numbers of the list of parts");

    /// <summary>The sheet, the last of all.</summary>
    /// <param name="assembly">What is built.</param>
    /// <param name="sizes">Its sizes.</param>
    /// <param name="settings">What all sheets share.</param>
    /// <param name="note">A general note for the title block.</param>
    /// <param name="count">How many sheets there are.</param>
    public static Drawing Of(Assembly assembly, ViewSizes sizes, SheetSettings settings, string note, int count)
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
            var pulled = new AssemblyView(sizes.Bodies, Projection.Isometric, _ => true, moved: new Explosion(sizes, factors).Shift);
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
