using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>What is engraved in a plate: its name, which way is up, how it lies, numbers and bits at holes, letters at lines and slots; all clear of each other and of what is cut. In mm.</summary>
internal sealed class GuideWords
{
    private const double Large = 6, Normal = 4, Small = 3, White = 1.2, Arrow = 16;

    private readonly Template template;
    private readonly GuideLie lie;
    private readonly Panel plate;
    private readonly ImmutableArray<GuideHole> holes;
    private readonly ImmutableArray<GuideFence> fences;
    private readonly PlateJoints joints;
    private readonly LengthStyle lengths;

    /// <summary>The words of a plate.</summary>
    public GuideWords(Template template, GuideLie lie, Panel plate, ImmutableArray<GuideHole> holes, ImmutableArray<GuideFence> fences, PlateJoints joints, LengthStyle lengths) =>
        (this.template, this.lie, this.plate, this.holes, this.fences, this.joints, this.lengths) = (template, lie, plate, holes, fences, joints, lengths);

    /// <summary>All words, on the inside face, and on the outside face where the guide is used turned over too.</summary>
    public ImmutableArray<GuideWord> All() => template.HasMirror ? [.. On(Surface.Inside), .. On(Surface.Outside)] : [.. On(Surface.Inside)];

    /// <summary>What is engraved in a fence.</summary>
    public static ImmutableArray<GuideWord> OnFence(GuideFence fence, string name, int number, double stand)
    {
        foreach (var text in new[] { FormattableString.Invariant($"F{number} {name}"), FormattableString.Invariant($"F{number}") })
        {
            var height = Math.Min(Normal, stand - 2 * White - 1);
            var width = StrokeLettering.Width(text, Math.Max(height, Small));
            if (height < Small || width > fence.Panel.Length.Value - 6) continue;
            return [new(Surface.Inside, text, StrokeLettering.Strokes(text, new((fence.Panel.Length.Value - width) / 2, (stand - height) / 2 - White), height))];
        }

        return [];
    }

    private List<GuideWord> On(Surface face)
    {
        var width = plate.Length.Value;
        Point2 View(Point2 p) => face == Surface.Outside ? p with { X = width - p.X } : p;
        Box2 Seen(Box2 b) => Box2.Around([View(b.Min), View(b.Max)]);
        var room = new Box2(default, new(width, plate.Width.Value)).Grown(-2);
        List<Box2> taken =
        [
            .. holes.Select(h => Seen(new Box2(h.At, h.At).Grown(h.Diameter / 2))), .. fences.SelectMany(f => f.Slots).Select(Seen), .. joints.Taken.Select(Seen),
            .. plate.Features.OfType<Mark>().Where(m => m.Face == face).Select(m => Seen(Box2.Around([m.From.Point, m.To!.Value.Point]))),
        ];
        var words = new List<GuideWord>();
        bool IsFree(Box2 box) => box.Min.X >= room.Min.X && box.Min.Y >= room.Min.Y && box.Max.X <= room.Max.X && box.Max.Y <= room.Max.Y
            && !taken.Exists(t => t.Min.X < box.Max.X + White && box.Min.X < t.Max.X + White && t.Min.Y < box.Max.Y + White && box.Min.Y < t.Max.Y + White);
        // Strokes reach a sixth of their height below the line.
        Box2 BoxOf(string text, Point2 at, double height) => new(at - new Point2(0, height / 6), at + new Point2(StrokeLettering.Width(text, height), height));
        void Engrave(string text, Point2 at, double height, params ReadOnlySpan<ImmutableArray<Point2>> more)
        {
            taken.Add(BoxOf(text, at, height));
            words.Add(new(face, text, [.. StrokeLettering.Strokes(text, at, height).Concat([.. more]).Select(s => s.Select(View).ToImmutableArray())]));
        }

        foreach (var hole in holes)
        {
            var text = FormattableString.Invariant($"{hole.Number} ⌀{lengths.PrintFine(hole.Bit)}{(hole.Bush is { } bush ? $" B{lengths.PrintFine(bush.Outside)}" : "")}");
            Beside(text, new Box2(hole.At, hole.At).Grown(hole.Diameter / 2));
        }

        foreach (var (fence, i) in fences.Select((f, i) => (f, i)))
            foreach (var slot in fence.Slots) Beside(FormattableString.Invariant($"F{i + 1}"), slot);
        foreach (var (letter, isUpright) in new[] { ("A", true), ("B", false) })
            foreach (var tick in Ticks(face, isUpright)) Beside(letter, Box2.Around([tick.From.Point, tick.To!.Value.Point]));
        Up();
        foreach (var (text, height) in Lines(face)) Anywhere(text, height);
        if (joints.Pieces.Length > 1)
            foreach (var (piece, i) in joints.Pieces.Select((p, i) => (p, i))) if (!Beside(FormattableString.Invariant($"{template.Name} P{i + 1}"), new Box2(piece.Bounds.Centre, piece.Bounds.Centre))) Beside(FormattableString.Invariant($"P{i + 1}"), new Box2(piece.Bounds.Centre, piece.Bounds.Centre));
        return words;

        bool Beside(string text, Box2 what)
        {
            var box = Seen(what);
            foreach (var height in (ReadOnlySpan<double>)[Normal, Small])
                foreach (var away in (ReadOnlySpan<double>)[0, 3, 6, 10, 16])
                {
                    var (w, d) = (StrokeLettering.Width(text, height), White + 0.1 + away);
                    var (below, beside) = (height + d, box.Centre.Y - height / 2);
                    foreach (var at in (ReadOnlySpan<Point2>)
                    [
                        new(box.Max.X + d, beside), new(box.Min.X - d - w, beside), new(box.Centre.X - w / 2, box.Max.Y + d + height / 6), new(box.Centre.X - w / 2, box.Min.Y - below),
                        new(box.Max.X + d, box.Max.Y + d), new(box.Min.X - d - w, box.Max.Y + d), new(box.Max.X + d, box.Min.Y - below), new(box.Min.X - d - w, box.Min.Y - below),
                    ])
                    {
                        if (!IsFree(BoxOf(text, at, height))) continue;
                        Engrave(text, at, height);
                        return true;
                    }
                }

            return false;
        }

        void Anywhere(string text, double height)
        {
            foreach (var high in (ReadOnlySpan<double>)[height, Normal, Small])
            {
                if (Nearest(StrokeLettering.Width(text, high), high) is not { } at) continue;
                Engrave(text, at, high);
                return;
            }
        }

        // The place nearest to the middle where a box of a width and height is free, by steps of two millimetres.
        Point2? Nearest(double w, double h)
        {
            const double Step = 2;
            var (columns, rows) = ((int)((room.Width - w) / Step), (int)((room.Height - h * 7 / 6) / Step));
            if (columns < 0 || rows < 0) return null;
            var middle = room.Centre - new Point2(w / 2, h / 2);
            return Enumerable.Range(0, (columns + 1) * (rows + 1)).Select(i => room.Min + new Point2(i % (columns + 1) * Step, h / 6 + i / (columns + 1) * Step))
                .OrderBy(p => Math.Round(p.DistanceTo(middle), 3)).Where(p => IsFree(new Box2(p - new Point2(0, h / 6), p + new Point2(w, h)))).Select(p => (Point2?)p).FirstOrDefault();
        }

        void Up()
        {
            const string Word = "UP";
            var up = lie.Turned(new(0, 1));
            up = (View(up) - View(default)) * (1 / up.Length);
            var size = new Point2(Math.Max(Arrow, StrokeLettering.Width(Word, Normal) + 2), Arrow + Normal + 2);
            if (Nearest(size.X, size.Y) is not { } corner) return;
            var (middle, side) = (corner + new Point2(size.X / 2, size.Y - Arrow / 2), up.Left);
            var (foot, tip) = (middle - up * (Arrow / 2 - 1), middle + up * (Arrow / 2 - 1));
            taken.Add(new Box2(corner, corner + size));
            Engrave(Word, corner + new Point2((size.X - StrokeLettering.Width(Word, Normal)) / 2, 0), Normal, [foot, tip], [tip - up * 4 + side * 2.5, tip, tip - up * 4 - side * 2.5]);
        }
    }

    private IEnumerable<Mark> Ticks(Surface face, bool isLineA)
    {
        // Line A is upright in the template's frame.
        var isUpright = isLineA != (lie.Quarters == 1);
        return plate.Features.OfType<Mark>().Where(m => m.Face == face && (isUpright
            ? Tolerance.Same(m.From.X.Value, lie.Shift.X) && Tolerance.Same(m.To!.Value.X.Value, lie.Shift.X)
            : Tolerance.Same(m.From.Y.Value, lie.Shift.Y) && Tolerance.Same(m.To!.Value.Y.Value, lie.Shift.Y)));
    }

    private IEnumerable<(string Text, double Height)> Lines(Surface face)
    {
        if (joints.Pieces.Length == 1) yield return (template.Name, Large);
        if (template.HasMirror) yield return (face == Surface.Inside ? "AS IT IS" : "TURNED OVER", Large);
        foreach (var bush in holes.Select(h => h.Bush).OfType<GuideBush>().Distinct().OrderBy(b => b.Bit))
            yield return ($"B{lengths.PrintFine(bush.Outside)}: BUSH FOR ⌀{lengths.PrintFine(bush.Bit)}", Normal);
    }
}
