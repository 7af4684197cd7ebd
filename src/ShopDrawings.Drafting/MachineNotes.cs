using System.Globalization;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>What stands beside a panel in a drawing for other programs: its overall sizes, what it is, and a table of its bores.</summary>
internal static class MachineNotes
{
    private static readonly Layer Dimensions = new("DIMENSION", Role.Dimension, "Overall sizes");
    private static readonly Layer Notes = new("NOTES", Role.Lettering, "What the panel is, and its bores");

    // Numbers in a table stand to the right of their column.
    private static readonly (string Head, double Width)[] Columns = [("x", 6), ("y", 6), ("diameter", 8), ("depth", 7), ("surface", 8), ("use", 8), ("method", 10)];

    /// <summary>The dimensions and notes.</summary>
    /// <param name="lying">The panel where it lies.</param>
    /// <param name="drawn">The box of what is drawn already.</param>
    /// <param name="settings">Whether numbers are inches.</param>
    public static IEnumerable<Entity> Of(LyingPanel lying, Box2 drawn, MachineDrawingSettings settings)
    {
        var panel = lying.Panel;
        var box = lying.Lie.Of(panel.Outline).Bounds;
        var height = Math.Clamp(Math.Max(box.Width, box.Height) / 90, 2.5, 20);
        string Print(double mm) => (settings.IsInches ? Math.Round(mm / 25.4, 4) : Math.Round(mm, 3)).ToString("0.####", CultureInfo.InvariantCulture);

        yield return new LinearDimension(Dimensions, box.Min, new(box.Max.X, box.Min.Y), drawn.Min - new Point2(0, 5 * height), false, Print(box.Width), height);
        yield return new LinearDimension(Dimensions, box.Min, new(box.Min.X, box.Max.Y), drawn.Min - new Point2(5 * height, 0), true, Print(box.Height), height);

        var line = 2.2 * height;
        var at = new Point2(drawn.Max.X + 4 * height, drawn.Max.Y - height);
        var bands = string.Join(", ", panel.Bands.Select(b => $"{panel.NameOf(b.Edge)} {Print(b.Thickness.Value)}"));
        string[] sawn = bands.Length > 0 ? [$"sawn {Print(panel.CutLength.Value)} x {Print(panel.CutWidth.Value)}, bands: {bands}"] : [];
        foreach (var text in new[] { $"{panel.Id}, {lying.Lie.Up.ToString().ToLowerInvariant()} face up", $"{panel.Board.Name}, {Print(panel.Thickness.Value)} thick; {(settings.IsInches ? "inches" : "mm")} from the lower left corner, finished" }.Concat(sawn))
        {
            yield return new TextEntity(Notes, at, height, text);
            at -= new Point2(0, line);
        }

        var rows = Rows(lying, Print).ToList();
        if (rows.Count == 0) yield break;
        var top = at.Y - line;
        var perBlock = Math.Max(20, (int)((top - drawn.Min.Y) / line) - 1);
        var width = Columns.Sum(c => c.Width) * height;
        for (var block = 0; block * perBlock < rows.Count; block++)
        {
            var left = at.X + block * (width + 4 * height);
            var y = top;
            foreach (var row in rows.Skip(block * perBlock).Take(perBlock).Prepend([.. Columns.Select(c => c.Head)]))
            {
                var x = left;
                for (var i = 0; i < row.Length; i++)
                {
                    x += Columns[i].Width * height;
                    yield return i < 4
                        ? new TextEntity(Notes, new(x, y), height, row[i], Anchor.BaseRight)
                        : new TextEntity(Notes, new(x - (Columns[i].Width - 1) * height, y), height, row[i]);
                }

                y -= line;
            }
        }
    }

    private static IEnumerable<string[]> Rows(LyingPanel lying, Func<double, string> print)
    {
        var panel = lying.Panel;
        var corner = lying.Lie.Of(panel.Outline).Bounds.Min;
        return
            from bore in panel.Features.OfType<Bore>()
            let isInFace = bore.Surface.IsFace()
            let at = isInFace ? lying.Lie.Of(bore.At.Point) - corner : bore.At.Point
            orderby bore.Surface, bore.Diameter.Value, Math.Round(at.X, 3), Math.Round(at.Y, 3)
            select new[]
            {
                print(at.X), print(at.Y), print(bore.Diameter.Value), bore.Depth is { } depth ? print(depth.Value) : "through",
                isInFace ? panel.NameOf(bore.Surface) : $"{panel.NameOf(bore.Surface)} edge", bore.Use.ToString().ToLowerInvariant(), bore.Method.Word(),
            };
    }
}
