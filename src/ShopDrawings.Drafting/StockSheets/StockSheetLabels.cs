using System.Collections.Immutable;
using ShopDrawings.Cutting;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>
/// Name and size of what lies on a stock sheet, on the piece itself where they fit: in two lines, in one, upright, or as a letter that a list explains.
/// At one scale; boxes on paper in mm.
/// </summary>
internal sealed class StockSheetLabels
{
    private const double Margin = 1.8;
    private const double Apart = 1.9;

    private static readonly Layer NameLayer = new("NAMES", Role.Lettering, "Names and sizes of the panels");
    private static readonly Layer OffcutTextLayer = new("OFFCUT_SIZES", Role.Lettering, "Sizes of the offcuts");

    private readonly SheetSettings settings;
    private readonly ImmutableArray<string>.Builder list = ImmutableArray.CreateBuilder<string>();
    private readonly ImmutableArray<Entity>.Builder texts = ImmutableArray.CreateBuilder<Entity>();

    /// <summary>Letters all that lies on a sheet.</summary>
    public StockSheetLabels(StockSheet sheet, SheetSettings settings, Func<SheetArea, Box2> onPaper)
    {
        this.settings = settings;
        foreach (var piece in sheet.Pieces)
        {
            var (x, y) = (piece.Area.AlongX, piece.Area.AlongY);
            Letter(onPaper(piece.Area), piece.Name, piece.IsTurned ? Size(y, x) : Size(x, y));
        }

        foreach (var offcut in sheet.Offcuts)
            if (InOneLine(OffcutTextLayer, onPaper(offcut).Grown(-1), Size(offcut.AlongX, offcut.AlongY)) is { } text) texts.Add(text);
    }

    private double Small => settings.Small;

    private double Normal => settings.Normal;

    /// <summary>The texts.</summary>
    public ImmutableArray<Entity> Texts => texts.ToImmutable();

    /// <summary>What the letters on narrow pieces stand for.</summary>
    public ImmutableArray<string> List => list.ToImmutable();

    /// <summary>Whether every panel is named on its own piece or carries a letter.</summary>
    public bool IsComplete { get; private set; } = true;

    private string Size(long a, long b) => $"{settings.Lengths.Print(a / 1e6)} × {settings.Lengths.Print(b / 1e6)}";

    private void Letter(Box2 box, string name, string size)
    {
        var inner = box.Grown(-Margin);
        if (InTwoLines(inner, name, size) || Add(InOneLine(NameLayer, inner, $"{name}  {size}"))) return;
        // A letter, since cuts have numbers.
        var letter = Letters(list.Count);
        list.Add($"{letter}: {name}, {size}");
        IsComplete &= Add(InOneLine(NameLayer, box.Grown(-0.4), letter));
    }

    private static string Letters(int k) => (k >= 26 ? Letters(k / 26 - 1) : "") + (char)('A' + k % 26);

    private bool Add(Entity? text)
    {
        if (text is not null) texts.Add(text);
        return text is not null;
    }

    private bool InTwoLines(Box2 inner, string name, string size)
    {
        foreach (var upright in new[] { false, true })
            foreach (var height in new[] { Normal, Small })
            {
                var (along, across) = upright ? (inner.Height, inner.Width) : (inner.Width, inner.Height);
                if (Math.Max(Lettering.Width(name, height), Lettering.Width(size, Small)) > along || height + Apart + Small > across) continue;
                // The block of both lines stands in the middle.
                var half = (height + Apart + Small) / 2;
                var (first, second) = (half - height, -half);
                Point2 At(double off) => inner.Centre + (upright ? new Point2(-off, 0) : new Point2(0, off));
                texts.Add(new TextEntity(NameLayer, At(first), height, name, Anchor.BaseCentre, upright ? 90 : 0));
                texts.Add(new TextEntity(NameLayer, At(second), Small, size, Anchor.BaseCentre, upright ? 90 : 0));
                return true;
            }

        return false;
    }

    private TextEntity? InOneLine(Layer layer, Box2 inner, string text)
    {
        foreach (var upright in new[] { false, true })
        {
            var (along, across) = upright ? (inner.Height, inner.Width) : (inner.Width, inner.Height);
            if (Lettering.Width(text, Small) > along || Small > across) continue;
            var down = upright ? new Point2(Small / 2, 0) : new Point2(0, -Small / 2);
            return new TextEntity(layer, inner.Centre + down, Small, text, Anchor.BaseCentre, upright ? 90 : 0);
        }

        return null;
    }
}
