using ShopDrawings.Drafting;
using ShopDrawings.Kernel;
using SkiaSharp;

namespace ShopDrawings.Print;

/// <summary>Draws on a picture, smoothed, in pixels from the upper left corner.</summary>
internal sealed class SkiaPlotter : IPlotter, IDisposable
{
    private static readonly Lazy<SKTypeface> Typeface = new(() =>
    {
        using var file = FontMetrics.Open();
        return SKTypeface.FromStream(file) ?? throw new InvalidOperationException("The lettering font cannot be read.");
    });

    private readonly SKCanvas canvas;
    private readonly Box2 paper;
    private readonly double pixelsPerMm;

    // As large as its units, so that outlines come without rounding; hinting would bend them towards the pixels of that size.
    private readonly SKFont font = new(Typeface.Value, FontMetrics.Default.UnitsPerEm) { Hinting = SKFontHinting.None, LinearMetrics = true };
    private readonly Dictionary<int, SKPath?> outlines = [];
    private readonly SKPaint stroke = new() { IsAntialias = true, Style = SKPaintStyle.Stroke, StrokeJoin = SKStrokeJoin.Miter, StrokeMiter = 4 };
    private readonly SKPaint fill = new() { IsAntialias = true, Style = SKPaintStyle.Fill };
    private readonly SKPathBuilder path = new();

    /// <summary>Draws on a canvas.</summary>
    /// <param name="canvas">The picture, as large as the paper.</param>
    /// <param name="paper">What of the drawing the picture shows.</param>
    /// <param name="pixelsPerMm">Its resolution.</param>
    public SkiaPlotter(SKCanvas canvas, Box2 paper, double pixelsPerMm) => (this.canvas, this.paper, this.pixelsPerMm) = (canvas, paper, pixelsPerMm);

    /// <inheritdoc/>
    public void Use(Pen pen)
    {
        var (red, green, blue) = pen.Rgb;
        stroke.Color = fill.Color = new SKColor(red, green, blue);
        stroke.StrokeWidth = Pixels(pen.WidthMm);
        stroke.StrokeCap = pen.Dashes.Length == 0 ? SKStrokeCap.Round : SKStrokeCap.Butt;
        stroke.PathEffect?.Dispose();
        stroke.PathEffect = pen.Dashes is [_, ..] dashes ? SKPathEffect.CreateDash([.. dashes.Select(Pixels)], 0) : null;
    }

    /// <inheritdoc/>
    public void MoveTo(Point2 start) => path.MoveTo(Map(start));

    /// <inheritdoc/>
    public void LineTo(Point2 end) => path.LineTo(Map(end));

    /// <inheritdoc/>
    public void CurveTo(Point2 first, Point2 second, Point2 end) => path.CubicTo(Map(first), Map(second), Map(end));

    /// <inheritdoc/>
    public void Close() => path.Close();

    /// <inheritdoc/>
    public void Stroke() => Draw(stroke);

    /// <inheritdoc/>
    public void Fill() => Draw(fill);

    /// <inheritdoc/>
    public void Letter(TextLine line)
    {
        var units = FontMetrics.Default.UnitsPerEm;
        var start = Map(line.Start);
        var at = 0;
        canvas.Save();
        canvas.Translate(start);
        canvas.RotateDegrees((float)-line.AngleDegrees);
        canvas.Scale(Pixels(line.FontSize / units));
        foreach (var character in line.Characters)
        {
            var (glyph, hasInk) = TextLine.Glyph(character);
            if (hasInk && Outline(glyph) is { } outline)
            {
                canvas.Translate(at, 0);
                canvas.DrawPath(outline, fill);
                at = 0;
            }

            at += FontMetrics.Default.Units(glyph);
        }

        canvas.Restore();
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (var outline in outlines.Values) outline?.Dispose();
        stroke.PathEffect?.Dispose();
        stroke.Dispose();
        fill.Dispose();
        font.Dispose();
        path.Dispose();
    }

    private SKPath? Outline(int glyph)
    {
        if (!outlines.TryGetValue(glyph, out var outline)) outlines[glyph] = outline = font.GetGlyphPath((ushort)glyph);
        return outline;
    }

    private void Draw(SKPaint paint)
    {
        path.FillType = SKPathFillType.EvenOdd;
        using var drawn = path.Detach(); // empties the builder
        canvas.DrawPath(drawn, paint);
    }

    private float Pixels(double mm) => (float)(mm * pixelsPerMm);

    private SKPoint Map(Point2 point) => new(Pixels(point.X - paper.Min.X), Pixels(paper.Max.Y - point.Y));
}
