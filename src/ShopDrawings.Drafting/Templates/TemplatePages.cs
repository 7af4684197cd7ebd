using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>Draws a template in true size on as many pages as it needs: first what to know, then the pages as printed, then the mirrored ones.</summary>
internal sealed class TemplatePages
{
    // White round a pattern, the tab beyond an edge of the panel, arms of a centre's cross beyond its hole, and of a registration cross; in mm.
    private const double Margin = 14, Tab = 25, Arm = 2.5, Register = 5;

    private readonly Template template;
    private readonly TemplateSettings settings;
    private readonly SheetSettings sheets;
    private readonly string project;

    private TemplatePages(Template template, string project, TemplateSettings settings, SheetSettings sheets) =>
        (this.template, this.project, this.settings, this.sheets) = (template, project, settings, sheets);

    /// <summary>All pages of a template.</summary>
    public static ImmutableArray<Drawing> Of(Template template, string project, TemplateSettings settings, SheetSettings sheets)
    {
        var pages = new TemplatePages(template, project, settings, sheets);
        ImmutableArray<Drawing> plain = [.. pages.Version(false, out var plan)];
        ImmutableArray<Drawing> mirrored = template.HasMirror ? [.. pages.Version(true, out _)] : [];
        return [.. TemplateKey.Of(template, project, plan, settings, sheets), .. plain, .. mirrored];
    }

    /// <summary>What the drill is set to at a hole.</summary>
    public static string Drill(TemplateHole hole, LengthStyle lengths)
    {
        var bit = $"⌀{lengths.PrintFine(hole.Diameter)}";
        if (hole.IsSunk) return $"sink to {bit}";
        return hole.Depth is { } depth ? $"{bit}, {lengths.PrintFine(depth)} deep" : $"{bit} through";
    }

    private List<Drawing> Version(bool isMirrored, out TilePlan plan)
    {
        Point2 Seen(Point2 p) => isMirrored ? p with { X = -p.X } : p;
        var pattern = isMirrored ? template.Pattern.Mapped(Seen, true) : template.Pattern;
        ImmutableArray<TemplateEdge> edges = [.. template.Edges.Select(e => e with { Towards = Seen(e.Towards) })];
        var region = RegionOf(pattern, edges);
        plan = TilePlan.Of(region.Paper, settings.Paper, settings.Printer);
        var all = plan;
        return [.. plan.Tiles.Select(tile => Page(tile, all, pattern, edges, region, isMirrored))];
    }

    // The panel's part of the paper, and with the tabs all of it.
    private static (Box2 Panel, Box2 Paper) RegionOf(TemplatePattern pattern, ImmutableArray<TemplateEdge> edges)
    {
        var box = pattern.Bounds.Union(Box2.Around([.. pattern.Holes.SelectMany(h => new[] { h.At - new Point2(h.Diameter / 2, h.Diameter / 2), h.At + new Point2(h.Diameter / 2, h.Diameter / 2) }), .. new[] { pattern.Bounds.Min }])).Grown(Margin);
        // Words beside the outermost holes need room.
        box = new Box2(box.Min - new Point2(22, 0), box.Max + new Point2(22, 0));
        var paper = box;
        foreach (var edge in edges)
        {
            (box, paper) = (Cut(box, edge, 0), Cut(paper, edge, Tab));
        }

        return (box, paper);

        static Box2 Cut(Box2 box, TemplateEdge edge, double beyond) => edge.Towards switch
        {
            { X: > 0.5 } => box with { Max = box.Max with { X = edge.Distance + beyond } },
            { X: < -0.5 } => box with { Min = box.Min with { X = -edge.Distance - beyond } },
            { Y: > 0.5 } => box with { Max = box.Max with { Y = edge.Distance + beyond } },
            _ => box with { Min = box.Min with { Y = -edge.Distance - beyond } },
        };
    }

    private Drawing Page(Tile tile, TilePlan plan, TemplatePattern pattern, ImmutableArray<TemplateEdge> edges, (Box2 Panel, Box2 Paper) region, bool isMirrored)
    {
        var canvas = new PageCanvas(tile.Window, tile.Corner, plan.Printer);
        var (panel, paper) = region;
        canvas.Outline(PageCanvas.Cut, Contour.Rectangle(paper.Min.X, paper.Min.Y, paper.Max.X, paper.Max.Y));
        foreach (var edge in edges)
        {
            var (from, to) = Across(edge, panel);
            canvas.Line(PageCanvas.Edge, from, to);
        }

        // Where two tabs meet, one is cut free of the other, or neither folds.
        foreach (var beside in edges.Where(e => Math.Abs(e.Towards.X) > 0.5))
            foreach (var level in edges.Where(e => Math.Abs(e.Towards.Y) > 0.5))
            {
                var corner = beside.Towards * beside.Distance + level.Towards * level.Distance;
                canvas.Line(PageCanvas.Cut, corner, corner + beside.Towards * Tab);
            }

        canvas.Line(PageCanvas.Reference, new(0, panel.Min.Y), new(0, panel.Max.Y));
        canvas.Line(PageCanvas.Reference, new(panel.Min.X, 0), new(panel.Max.X, 0));
        foreach (var opening in pattern.Openings) canvas.Outline(PageCanvas.Opening, opening);
        foreach (var (from, to) in pattern.Lines)
            if (from.DistanceTo(to) > Tolerance.Length) canvas.Line(PageCanvas.Scribed, from, to);
            else canvas.Cross(PageCanvas.Centre, from, Arm);
        foreach (var hole in pattern.Holes) canvas.Circle(PageCanvas.Hole, hole.At, hole.Diameter / 2);
        foreach (var place in pattern.Holes.GroupBy(h => PanelTurn.Key(h.At))) canvas.Cross(PageCanvas.Centre, place.First().At, place.Max(h => h.Diameter) / 2 + Arm);
        Joints(canvas, plan, paper, pattern);

        var unnamed = new List<string>();
        foreach (var place in pattern.Holes.GroupBy(h => PanelTurn.Key(h.At)))
        {
            var drill = string.Join("; ", place.Select(h => Drill(h, sheets.Lengths)));
            if (canvas.Shows(place.First().At) && !canvas.Label(place.First().At, place.Min(h => h.Diameter) / 2 + Arm, sheets.Small, drill)) unnamed.Add(drill);
        }

        canvas.Label(new(0, panel.Max.Y - 4), 1, sheets.Normal, "A");
        canvas.Label(new(panel.Max.X - 4, 0), 1, sheets.Normal, "B");
        foreach (var edge in edges) TabWords(canvas, edge, panel);
        Header(canvas, tile, plan, isMirrored, [.. unnamed.Distinct()]);
        var title = $"{template.Name}{(isMirrored ? ", mirrored" : "")}, page {tile.Name}";
        return new Drawing(title, "A template in true size: print at 100 %.", plan.Page, canvas.Entities);
    }

    private static (Point2 From, Point2 To) Across(TemplateEdge edge, Box2 box) => Math.Abs(edge.Towards.X) > 0.5
        ? (new(edge.Towards.X * edge.Distance, box.Min.Y), new(edge.Towards.X * edge.Distance, box.Max.Y))
        : (new(box.Min.X, edge.Towards.Y * edge.Distance), new(box.Max.X, edge.Towards.Y * edge.Distance));

    // Lines along which pages are joined, with two crosses each, as far from the holes as they can be.
    private static void Joints(PageCanvas canvas, TilePlan plan, Box2 paper, TemplatePattern pattern)
    {
        void Joint(Point2 from, Point2 to)
        {
            canvas.Line(PageCanvas.Trim, from, to);
            foreach (var half in (ReadOnlySpan<double>)[0, 0.5])
            {
                var at = Enumerable.Range(2, 7).Select(i => from + (to - from) * (half + i * 0.05)).MaxBy(p => Math.Min(25, pattern.Holes.Select(h => h.At.DistanceTo(p)).DefaultIfEmpty(25).Min()));
                canvas.Cross(PageCanvas.Register, at, Register);
            }
        }

        foreach (var x in plan.TrimX)
            for (var row = 0; row < plan.Rows; row++) Joint(new(x, Within(plan.TrimY, row - 1, paper.Min.Y)), new(x, Within(plan.TrimY, row, paper.Max.Y)));
        foreach (var y in plan.TrimY)
            for (var column = 0; column < plan.Columns; column++) Joint(new(Within(plan.TrimX, column - 1, paper.Min.X), y), new(Within(plan.TrimX, column, paper.Max.X), y));
        static double Within(ImmutableArray<double> trims, int index, double otherwise) => index >= 0 && index < trims.Length ? trims[index] : otherwise;
    }

    private void TabWords(PageCanvas canvas, TemplateEdge edge, Box2 panel)
    {
        var (from, to) = Across(edge, panel);
        var isUpright = Math.Abs(edge.Towards.X) > 0.5;
        foreach (var words in (ReadOnlySpan<string>)["fold here and lay the tab over the panel's edge", "fold over the panel's edge", "fold"])
            foreach (var share in (ReadOnlySpan<double>)[0.5, 0.3, 0.7, 0.15, 0.85])
            {
                var text = new TextEntity(PageCanvas.Words, canvas.OnPage(from + (to - from) * share + edge.Towards * (Tab / 2)), sheets.Small, words, Anchor.Middle, isUpright ? 90 : 0);
                if (!canvas.IsFree(text.Bounds)) continue;
                canvas.Text(text.Position, text.Height, words, Anchor.Middle, text.AngleDegrees);
                return;
            }
    }

    // Above the window: what it is, which way up, where the next page goes.
    private void Header(PageCanvas canvas, Tile tile, TilePlan plan, bool isMirrored, ImmutableArray<string> unnamed)
    {
        const double ArrowRoom = 16;
        var (left, right, top) = (TilePlan.Side, plan.Page.X - TilePlan.Side, plan.Page.Y - TilePlan.Side);
        var y = top - sheets.Normal;
        canvas.Text(new(left, y), sheets.Normal, $"{template.Name}{(isMirrored ? ", MIRRORED" : template.HasMirror ? ", as it is" : "")}: page {tile.Name}{(plan.Tiles.Length > 1 ? FormattableString.Invariant($" of {plan.Tiles.Length}") : "")}");
        string[] joins =
        [
            .. tile.Column > 0 ? [$"{(tile with { Column = tile.Column - 1 }).Name} to the left"] : Array.Empty<string>(),
            .. tile.Column + 1 < plan.Columns ? [$"{(tile with { Column = tile.Column + 1 }).Name} to the right"] : Array.Empty<string>(),
            .. tile.Row > 0 ? [$"{(tile with { Row = tile.Row - 1 }).Name} below"] : Array.Empty<string>(),
            .. tile.Row + 1 < plan.Rows ? [$"{(tile with { Row = tile.Row + 1 }).Name} above"] : Array.Empty<string>(),
        ];
        string[] words =
        [
            $"{project}. Print at 100 %, never “fit”. Looking at the face that is drilled; prick the crosses with an awl.",
            .. unnamed.IsEmpty ? Array.Empty<string>() : [$"Crosses without words: {string.Join("; or ", unnamed)}."],
            .. joins.Length > 0 ? [$"Joins {string.Join(", ", joins)}: cut one page along the dashed line, lay it on that line of the other, cross on cross."] : Array.Empty<string>(),
        ];
        foreach (var line in words.SelectMany(w => TemplateKey.Wrapped(w, sheets.Small, right - left - ArrowRoom)))
            canvas.Text(new(left, y -= 1.7 * sheets.Small), sheets.Small, line);

        var foot = new Point2(right - 4, top - 16);
        canvas.OnPaper(PageCanvas.Centre, foot, foot + new Point2(0, 14));
        canvas.OnPaper(PageCanvas.Centre, foot + new Point2(0, 14), foot + new Point2(-2, 9));
        canvas.OnPaper(PageCanvas.Centre, foot + new Point2(0, 14), foot + new Point2(2, 9));
        canvas.Text(foot + new Point2(-3, 2), sheets.Small, "up", Anchor.BaseRight);
    }
}
