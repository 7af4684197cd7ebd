using System.Collections.Immutable;
using System.Globalization;
using ShopDrawings.Cutting;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>
/// The drawing of a stock sheet for who stands at the saw: the sheet as it lies, its length from left to right, every panel with name and sawn size,
/// an arrow along the grain, a bar inside each banded edge, offcuts hatched and sized, and the numbers of the cuts where they find room.
/// </summary>
public sealed class StockSheetDrawing
{
    private const double Rim = 3;
    private const double DimensionDistance = 5;
    private const double Beside = 13;

    private static readonly Layer HeadingLayer = new("HEADING", Role.Lettering, "Name of the sheet");
    private static readonly Layer SheetLayer = new("SHEET", Role.VisibleEdge, "Edges of the stock sheet");
    private static readonly Layer TrimLayer = new("TRIM", Role.Hidden, "Where factory edges are trimmed off");
    private static readonly Layer BlankLayer = new("BLANKS", Role.Hidden, "Edges of the blanks a store cuts");
    private static readonly Layer PieceLayer = new("PANELS", Role.VisibleEdge, "Edges of the panels as sawn");
    private static readonly Layer BandLayer = new("BANDS", Role.Outline, "Bars inside the edges that are banded");
    private static readonly Layer OffcutLayer = new("OFFCUTS", Role.Hatching, "What is left over");
    private static readonly Layer GrainLayer = new("GRAIN", Role.Mark, "The way the grain runs");
    private static readonly Layer CutLayer = new("CUTS", Role.Dimension, "Numbers of the cuts, beside the cut");
    private static readonly Layer SizeLayer = new("DIMENSIONS", Role.Dimension, "Size of the sheet");
    private static readonly Layer ListLayer = new("LIST", Role.Lettering, "What the letters on narrow panels stand for, and the cuts of a slip");
    private static readonly Layer WarningLayer = new("WARNING", Role.Warning, "What the checks found");

    private readonly StockSheet sheet;
    private readonly SheetSettings settings;

    private StockSheetDrawing(StockSheet sheet, SheetSettings settings) => (this.sheet, this.settings) = (sheet, settings);

    /// <summary>Draws a sheet.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="settings">What all sheets share.</param>
    /// <param name="number">The number of this drawing among those of its kind, from 1.</param>
    /// <param name="count">How many there are.</param>
    public static Drawing Of(StockSheet sheet, SheetSettings settings, int number, int count)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(settings);
        return new StockSheetDrawing(sheet, settings).Draw(number, count);
    }

    private double Small => settings.Small;

    private double Normal => settings.Normal;

    private double Large => settings.Standard.Large;

    private double ListPitch => Small + 2;

    private double HeadingHeight => Rim + Large;

    private double Above => DimensionDistance + Normal + 1.5;

    private double Below => Small + 1.7;

    private double Length => sheet.Stock.Length / 1e6;

    private double Width => sheet.Stock.Width / 1e6;

    private Drawing Draw(int number, int count)
    {
        var notes = Notes();
        var choice = SheetChoice.Of(settings, notes, Needed, sheet.IsOnSmallestPaper ? 1 : null);
        var (size, scale) = (choice.Size, choice.Scale);
        var lines = SheetFrame.Wrapped(size, notes, settings);
        var room = size.Room(lines.Length);
        var list = ListOf([.. Labels(scale, default).List, .. sheet.List], size, lines.Length);
        var corner = new Point2(room.Centre.X - (Length / scale + Beside) / 2, room.Min.Y + list.Above + Below + (room.Height - list.Above - HeadingHeight - Width / scale - Above - Below) / 2);
        var labels = Labels(scale, corner);
        var fields = new TitleFields(sheet.Name, sheet.Kind, sheet.Project, number, count, scale, sheet.Material) { NoteLabel = "Material" };
        return new Drawing(
            $"{sheet.Name} of {sheet.Project}",
            string.Create(CultureInfo.InvariantCulture, $"Stock sheet {sheet.Name}, {Print(sheet.Stock.Length)} by {Print(sheet.Stock.Width)} ({settings.Lengths.Statement}), {sheet.Material}, with {sheet.Pieces.Length} pieces, drawn 1:{scale}."),
            size.Page,
            [.. SheetFrame.Of(size, fields, settings, lines), .. Heading(room), .. Picture(scale, corner, labels), .. Listed(list), .. Stamp(room)]);
    }

    // What a scale needs on a sheet of paper; one at which a narrow panel would bear no letter needs too much.
    private (Point2 Size, double Area) Needed(int scale, SheetSize size)
    {
        var labels = Labels(scale, default);
        var (w, h) = (Length / scale, Width / scale);
        var isLast = scale >= 20;
        if (!labels.IsComplete && !isLast) return (new(double.PositiveInfinity, 0), 0);
        var list = ListOf([.. labels.List, .. sheet.List], size, SheetFrame.Wrapped(size, Notes(), settings).Length);
        return (new(w + Beside + 8, h + HeadingHeight + Above + Below + list.Above), w * h);
    }

    private StockSheetLabels Labels(int scale, Point2 corner) => new(sheet, settings, a => OnPaper(a, scale, corner));

    private static Box2 OnPaper(SheetArea a, int scale, Point2 corner) =>
        new(corner + new Point2(a.X, a.Y) * (1e-6 / scale), corner + new Point2(a.X + a.AlongX, a.Y + a.AlongY) * (1e-6 / scale));

    private List<Entity> Picture(int scale, Point2 corner, StockSheetLabels labels)
    {
        var stock = sheet.Stock;
        var whole = OnPaper(new(0, 0, stock.Length, stock.Width), scale, corner);
        var entities = new List<Entity> { Box(SheetLayer, whole) };
        entities.AddRange(Trims(stock, whole, scale, corner));
        foreach (var piece in sheet.Pieces)
        {
            var box = OnPaper(piece.Area, scale, corner);
            entities.Add(Box(PieceLayer, box));
            entities.AddRange(piece.Bands.Select(edge => Bar(box, edge)));
        }

        entities.AddRange(sheet.Blanks.Select(blank => Box(BlankLayer, OnPaper(blank, scale, corner))));
        entities.AddRange(labels.Texts);
        foreach (var offcut in sheet.Offcuts)
        {
            var box = OnPaper(offcut, scale, corner);
            entities.Add(Box(OffcutLayer, box));
            var text = labels.Texts.Where(t => Within(t.Bounds.Centre, box)).Select(t => t.Bounds.Grown(0.8)).Select(b => new Box2(new(Math.Max(b.Min.X, box.Min.X), Math.Max(b.Min.Y, box.Min.Y)), new(Math.Min(b.Max.X, box.Max.X), Math.Min(b.Max.Y, box.Max.Y))));
            entities.Add(new HatchEntity(OffcutLayer, Outline(box), [.. text.Select(Outline)], new HatchPattern(45, 2.5)));
        }

        entities.Add(new LinearDimension(SizeLayer, new(whole.Min.X, whole.Max.Y), whole.Max, whole.Max + new Point2(0, DimensionDistance), false, Print(stock.Length), Normal) { Factor = scale, Standard = settings.Standard });
        entities.Add(new LinearDimension(SizeLayer, new(whole.Max.X, whole.Min.Y), whole.Max, whole.Max + new Point2(DimensionDistance + 1, 0), true, Print(stock.Width), Normal) { Factor = scale, Standard = settings.Standard });
        var space = new FreeSpace(entities.Where(e => e is not HatchEntity));
        foreach (var hatch in entities.OfType<HatchEntity>()) space.Take(hatch.Bounds);
        foreach (var piece in sheet.Pieces) Take(space, entities, Grain(OnPaper(piece.Area, scale, corner), space));
        foreach (var cut in sheet.Cuts)
            if (Number(cut, scale, corner, space, whole) is { } text) Take(space, entities, [text]);
        return entities;
    }

    private static void Take(FreeSpace space, List<Entity> entities, ImmutableArray<Entity> more)
    {
        entities.AddRange(more);
        foreach (var entity in more) space.Take(entity.Bounds);
    }

    private static IEnumerable<Entity> Trims(StockSize stock, Box2 whole, int scale, Point2 corner)
    {
        var t = stock.Trim;
        if (t == default) yield break;
        var inner = OnPaper(new(t.Start, t.Near, stock.UsableLength, stock.UsableWidth), scale, corner);
        if (t.Start > 0) yield return Line(TrimLayer, new(inner.Min.X, whole.Min.Y), new(inner.Min.X, whole.Max.Y));
        if (t.End > 0) yield return Line(TrimLayer, new(inner.Max.X, whole.Min.Y), new(inner.Max.X, whole.Max.Y));
        if (t.Near > 0) yield return Line(TrimLayer, new(whole.Min.X, inner.Min.Y), new(whole.Max.X, inner.Min.Y));
        if (t.Far > 0) yield return Line(TrimLayer, new(whole.Min.X, inner.Max.Y), new(whole.Max.X, inner.Max.Y));
    }

    // A bar just inside a banded edge, from corner to corner but for a little.
    private static HatchEntity Bar(Box2 box, PieceEdge edge)
    {
        const double Off = 0.5, Thick = 0.6;
        var (a, b) = (box.Min + new Point2(Off, Off), box.Max - new Point2(Off, Off));
        var bar = edge switch
        {
            PieceEdge.Start => new Box2(a, new(a.X + Thick, b.Y)),
            PieceEdge.End => new Box2(new(b.X - Thick, a.Y), b),
            PieceEdge.Near => new Box2(a, new(b.X, a.Y + Thick)),
            _ => new Box2(new(a.X, b.Y - Thick), b),
        };
        return new HatchEntity(BandLayer, Outline(bar), [], null);
    }

    // A double arrow beside the lettering, along the grain of the sheet.
    private ImmutableArray<Entity> Grain(Box2 box, FreeSpace space)
    {
        const double Head = 2.2, Half = 0.7, Clear = 0.8;
        if (sheet.Stock.Grain == GrainDirection.None) return [];
        var along = sheet.Stock.Grain == GrainDirection.AlongLength;
        foreach (var length in new[] { 16.0, 10, 7 })
            foreach (var off in new[] { -6.5, 6.5, -9.0, 9.0, -4.5, 4.5, 0, -12, 12 })
                foreach (var shift in new[] { 0, -0.32, 0.32 })
                {
                    var middle = box.Centre + (along ? new Point2(shift * box.Width, off) : new Point2(off, shift * box.Height));
                    var half = along ? new Point2(length / 2, 0) : new Point2(0, length / 2);
                    var side = along ? new Point2(0, Half) : new Point2(Half, 0);
                    var needed = Box2.Around([middle - half - side, middle + half + side]).Grown(Clear);
                    if (!Contains(box, needed) || !space.IsFree(needed)) continue;
                    var back = half * (Head / half.Length);
                    return
                    [
                        Line(GrainLayer, middle - half, middle + half),
                        new ArrowEntity(GrainLayer, middle - half, middle - half + back + side, middle - half + back - side),
                        new ArrowEntity(GrainLayer, middle + half, middle + half - back + side, middle + half - back - side),
                    ];
                }

        return [];
    }

    // The number of a cut: outside the sheet where the cut runs out of it, else beside its line, first on the side of what comes off.
    private TextEntity? Number(PlacedCut cut, int scale, Point2 corner, FreeSpace space, Box2 whole)
    {
        const double Clear = 1.1, Out = 1.4, Outside = 8, Near = 3.2;
        var (piece, comes) = (OnPaper(cut.Piece, scale, corner), OnPaper(cut.Comes, scale, corner));
        var text = cut.Step.Number.ToString(CultureInfo.InvariantCulture);
        var half = new Point2(Lettering.Width(text, Small) / 2, Small / 2);
        var isAcross = cut.Step.Direction == CutDirection.Across;
        var isLow = cut.Step.Against is PieceEdge.End or PieceEdge.Far;
        var line = isAcross ? isLow ? comes.Min.X : comes.Max.X : isLow ? comes.Min.Y : comes.Max.Y;
        var (from, to) = isAcross ? (piece.Min.Y, piece.Max.Y) : (piece.Min.X, piece.Max.X);
        var edge = isAcross ? whole.Min.Y : whole.Min.X;
        var places = new List<Point2>();
        if (from - edge < Near)
            foreach (var aside in new[] { 0, -half.X, half.X }) places.Add(isAcross ? new(line + aside, whole.Min.Y - Out - half.Y) : new(whole.Min.X - Out - half.X, line + aside * half.Y / half.X));
        foreach (var off in new[] { 1.4, 2.4 })
            foreach (var share in new[] { 0.0, 1, 0.5, 0.25, 0.75, 0.1, 0.9 })
                foreach (var side in isLow ? new[] { 1, -1 } : [-1, 1])
                    places.Add(isAcross
                        ? new(line + side * (off + half.X), from + 2.7 + share * (to - from - 5.4))
                        : new(from + 1.4 + half.X + share * (to - from - 2.8 - 2 * half.X), line + side * (off + half.Y)));
        foreach (var at in places)
            if (new Box2(at - half, at + half).Grown(Clear) is var box && Contains(whole.Grown(Outside), box) && space.IsFree(box))
                return new TextEntity(CutLayer, at - new Point2(0, half.Y), Small, text, Anchor.BaseCentre);
        return null;
    }

    private ImmutableArray<string> Notes()
    {
        var notes = ImmutableArray.CreateBuilder<string>();
        notes.AddRange(sheet.Notes);
        if (sheet.Pieces.Any(p => !p.Bands.IsEmpty)) notes.Add("Sizes are those to saw; an edge with a bar inside it is banded.");
        var signs = new[] { sheet.Stock.Grain == GrainDirection.None ? "" : "Arrows run along the grain.", sheet.Cuts.IsEmpty ? "" : sheet.List.IsEmpty ? "Small numbers are those of the cuts in lists/cuts.csv." : "Small numbers are those of the cuts in the list." };
        if (string.Join(' ', signs.Where(s => s.Length > 0)) is { Length: > 0 } words) notes.Add(words);
        return notes.ToImmutable();
    }

    private IEnumerable<Entity> Heading(Box2 room)
    {
        var at = new Point2(room.Min.X + Rim, room.Max.Y - Rim + 1 - Large);
        yield return new TextEntity(HeadingLayer, at, Large, SheetFrame.Fitted(sheet.Name, Large, room.Width / 2));
        var from = Math.Min(Lettering.Width(sheet.Name, Large), room.Width / 2) + 5;
        yield return new TextEntity(HeadingLayer, at + new Point2(from, 0), Normal, SheetFrame.Fitted(sheet.Summary, Normal, room.Width - from - 2 * Rim));
    }

    private IEnumerable<Entity> Stamp(Box2 room)
    {
        if (sheet.Withheld.IsEmpty) yield break;
        var (low, high) = (new Point2(room.Centre.X - 70, room.Min.Y + 2), new Point2(room.Centre.X + 70, room.Min.Y + 14));
        yield return Box(WarningLayer, new Box2(low, high));
        yield return new TextEntity(WarningLayer, new(room.Centre.X, high.Y - 1.8 - Normal), Normal, "DO NOT CUT", Anchor.BaseCentre);
        yield return new TextEntity(WarningLayer, new(room.Centre.X, low.Y + 1.6), Small, SheetFrame.Fitted($"{string.Join(", ", sheet.Withheld)}: see findings.json", Small, 136), Anchor.BaseCentre);
    }

    // The list beside the title block below the notes where it finds room there, else above it; in as many columns as the width holds.
    private (ImmutableArray<string> Lines, int Rows, double Pitch, Point2 Corner, double Width, double Above) ListOf(ImmutableArray<string> lines, SheetSize size, int notes)
    {
        if (lines.IsEmpty) return (lines, 0, 0, default, 0, 0);
        var pitch = lines.Max(l => Lettering.Width(l, Small)) + 6;
        int Rows(double width) => (int)Math.Ceiling(lines.Length / Math.Max(1, Math.Floor((width + 6) / pitch)));
        var (frame, block) = (size.Frame, size.TitleBlock);
        var (width, high) = (block.Min.X - frame.Min.X - 2 * Rim, block.Height - Rim - notes * SheetFrame.NotePitch - Rim);
        if (size.HasRoomBesideTitle && pitch - 6 <= width && Rows(width) is var rows && rows * ListPitch <= high)
            return (lines, rows, pitch, new(frame.Min.X + Rim, block.Max.Y - Rim - notes * SheetFrame.NotePitch - Small), width, 0);
        var (room, all) = (size.Room(notes), Rows(frame.Width - 2 * Rim));
        return (lines, all, pitch, new(room.Min.X + Rim, room.Min.Y + 2 + (all - 1) * ListPitch), frame.Width - 2 * Rim, all * ListPitch + 3);
    }

    private IEnumerable<Entity> Listed((ImmutableArray<string> Lines, int Rows, double Pitch, Point2 Corner, double Width, double Above) list) => list.Lines.Select((line, i) =>
        new TextEntity(ListLayer, list.Corner + new Point2(i / list.Rows * list.Pitch, -(i % list.Rows) * ListPitch), Small, SheetFrame.Fitted(line, Small, list.Width)));

    private string Print(long nanometres) => settings.Lengths.Print(nanometres / 1e6);

    private static bool Within(Point2 p, Box2 box) => p.X > box.Min.X && p.X < box.Max.X && p.Y > box.Min.Y && p.Y < box.Max.Y;

    private static bool Contains(Box2 outer, Box2 inner) => inner.Min.X >= outer.Min.X && inner.Min.Y >= outer.Min.Y && inner.Max.X <= outer.Max.X && inner.Max.Y <= outer.Max.Y;

    private static Contour Outline(Box2 box) => Contour.Rectangle(box.Min.X, box.Min.Y, box.Max.X, box.Max.Y);

    private static ContourEntity Box(Layer layer, Box2 box) => new(layer, Outline(box));

    private static SegmentEntity Line(Layer layer, Point2 from, Point2 to) => new(layer, new Segment(from, to));
}
