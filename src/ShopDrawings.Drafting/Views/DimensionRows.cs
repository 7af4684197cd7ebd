using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>The side of a view dimensions stand on.</summary>
internal enum ViewSide
{
    /// <summary>Below it, lengths to the right.</summary>
    Below,

    /// <summary>Above it, lengths to the right.</summary>
    Above,

    /// <summary>At its left, lengths upwards.</summary>
    Left,

    /// <summary>At its right, lengths upwards.</summary>
    Right,
}

/// <summary>A length to be shown beside a view, before the scale.</summary>
/// <param name="From">The smaller coordinate along the side.</param>
/// <param name="To">The larger one.</param>
/// <param name="Side">The side wished; one too short for its text goes above or to the left, where the text may stand over the ends.</param>
/// <param name="What">What it is, in words, for a note where no row has room for it.</param>
internal sealed record Span(double From, double To, ViewSide Side, string What);

/// <summary>
/// Sorts lengths into rows beside a view: short ones near it, so that extension lines cross few dimension lines, ten millimetres from the view
/// and then eight apart, or more where level texts stand in upright lines. In a row nothing touches; no extension line runs through a text.
/// </summary>
internal sealed class DimensionRows
{
    private const double Clear = 0.7;
    private const int MostRows = 9;

    private readonly List<Placed> placed = [];
    private readonly List<Span> leftOut = [];
    private readonly SheetSettings settings;
    private readonly int scale;

    private DimensionRows(SheetSettings settings, int scale) => (this.settings, this.scale) = (settings, scale);

    private double Height => settings.Small;

    private double First => 4 * Height;

    private double Apart => 3.2 * Height;

    // A length in its row; all in mm on paper along the side, the width of its text too.
    private sealed record Placed(Span Span, ViewSide Side, int Row, double From, double To, DimensionPlace Place, double Width)
    {
        public (double From, double To) Text => (From + Place.Text - Place.HalfText, From + Place.Text + Place.HalfText);

        /// <summary>What it takes of its row; where its arrows stand inside, nearly all of it up to its neighbour's, so that a chain is one line.</summary>
        public (double From, double To) Reach => Place is { IsWide: false, HasArrowsInside: true } ? (From - 0.1, To + 0.1) : (From + Place.Reach.From - 0.6, From + Place.Reach.To + 0.6);
    }

    /// <summary>Lengths that found no row.</summary>
    public IReadOnlyList<Span> LeftOut => leftOut;

    /// <summary>Rows for lengths at a scale 1:n. Of lengths between the same ends one is left.</summary>
    public static DimensionRows Of(IEnumerable<Span> spans, int scale, SheetSettings settings)
    {
        var rows = new DimensionRows(settings, scale);
        var unique = spans.DistinctBy(s => (s.Side is ViewSide.Below or ViewSide.Above, Math.Round(s.From, 3), Math.Round(s.To, 3)));
        foreach (var span in unique.Where(s => s.To - s.From > 0.05).OrderBy(s => Math.Round(s.To - s.From, 3)).ThenBy(s => s.From)) rows.Place(span);
        return rows;
    }

    /// <summary>How far the rows of a side reach from the view in mm, texts included.</summary>
    public double Reach(ViewSide side)
    {
        var rows = placed.Where(p => p.Side == side).Select(p => p.Row + 1).DefaultIfEmpty().Max();
        return rows == 0 ? 4 : Away(side, rows - 1) + (IsLevelIn(side) ? Half(side, rows - 1) + 2 : 2.4 * Height);
    }

    // Level texts reach out to both sides of an upright line.
    private bool IsLevelIn(ViewSide side) => settings.Standard.IsTextInLine && side is ViewSide.Left or ViewSide.Right;

    private double Half(ViewSide side, int row) => placed.Where(p => p.Side == side && p.Row == row).Select(p => p.Width / 2).DefaultIfEmpty().Max();

    // From the view to the dimension lines of a row.
    private double Away(ViewSide side, int row)
    {
        if (!IsLevelIn(side)) return First + row * Apart;
        var away = Math.Max(First, Half(side, 0) + Apart / 2);
        for (var i = 1; i <= row; i++) away += Math.Max(Apart, Half(side, i - 1) + Half(side, i) + 2);
        return away;
    }

    /// <summary>How far texts reach beyond the view's ends along the sides, in mm: to the left, below, to the right, above.</summary>
    public (double Left, double Below, double Right, double Above) Beyond(Point2 viewSize)
    {
        double Over(bool isUpright, bool isEnd) => placed.Where(p => (p.Side is ViewSide.Left or ViewSide.Right) == isUpright)
            .Select(p => isEnd ? p.Reach.To - (isUpright ? viewSize.Y : viewSize.X) : -p.Reach.From).Append(0).Max();
        return (Over(false, false), Over(true, false), Over(false, true), Over(true, true));
    }

    /// <summary>Where extension lines run on a side, in mm on paper along it.</summary>
    public IEnumerable<double> Extensions(ViewSide side) => placed.Where(p => p.Side == side).SelectMany(p => new[] { p.From, p.To });

    /// <summary>The dimensions beside a view.</summary>
    /// <param name="layer">Their layer.</param>
    /// <param name="view">Where the view lies on paper.</param>
    public IEnumerable<Entity> Draw(Layer layer, Box2 view) => placed.Select(p =>
    {
        var away = Away(p.Side, p.Row);
        var text = settings.Lengths.Print(p.Span.To - p.Span.From);
        var isUpright = p.Side is ViewSide.Left or ViewSide.Right;
        var (edge, line) = p.Side switch
        {
            ViewSide.Below => (view.Min.Y, view.Min.Y - away),
            ViewSide.Above => (view.Max.Y, view.Max.Y + away),
            ViewSide.Left => (view.Min.X, view.Min.X - away),
            _ => (view.Max.X, view.Max.X + away),
        };
        Point2 At(double along, double across) => isUpright ? new(across, view.Min.Y + along) : new(view.Min.X + along, across);
        return new LinearDimension(layer, At(p.From, edge), At(p.To, edge), At(p.From, line), isUpright, text, Height) { Factor = scale, Standard = settings.Standard };
    });

    private void Place(Span span)
    {
        var (from, to) = (span.From / scale, span.To / scale);
        var width = Lettering.Width(settings.Lengths.Print(span.To - span.From), Height);
        var isUpright = span.Side is ViewSide.Left or ViewSide.Right;
        var place = DimensionPlace.Of(to - from, width, Height, settings.Standard, isUpright ? 0 : 1, isUpright ? 1 : 0);
        // A text over the ends of its extension lines only stands free above and at the left; one in the line stands free everywhere.
        var mustTurn = place.IsWide && !settings.Standard.IsTextInLine;
        var side = (mustTurn, span.Side) switch
        {
            (true, ViewSide.Below) => ViewSide.Above,
            (true, ViewSide.Right) => ViewSide.Left,
            _ => span.Side,
        };
        foreach (var at in mustTurn ? [side] : new[] { side, Opposite(side) })
            for (var row = 0; row < MostRows; row++)
            {
                var candidate = new Placed(span, at, row, from, to, place, width);
                if (!Fits(candidate)) continue;
                placed.Add(candidate);
                return;
            }

        leftOut.Add(span);
    }

    private static ViewSide Opposite(ViewSide side) => side switch
    {
        ViewSide.Below => ViewSide.Above,
        ViewSide.Above => ViewSide.Below,
        ViewSide.Left => ViewSide.Right,
        _ => ViewSide.Left,
    };

    private bool Fits(Placed candidate)
    {
        static bool Runs(Placed line, Placed text) =>
            new[] { line.From, line.To }.Any(x => x > text.Text.From - Clear && x < text.Text.To + Clear);
        foreach (var other in placed.Where(p => p.Side == candidate.Side))
        {
            if (other.Row == candidate.Row && candidate.Reach.From < other.Reach.To - 1e-6 && other.Reach.From < candidate.Reach.To - 1e-6) return false;
            if (other.Row < candidate.Row && Runs(candidate, other)) return false;
            if (other.Row > candidate.Row && Runs(other, candidate)) return false;
        }

        return true;
    }
}
