using ShopDrawings.Drafting;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.Formats.Png;
using SixLabors.ImageSharp.Formats.Png.Chunks;
using SixLabors.ImageSharp.Metadata;
using SixLabors.ImageSharp.PixelFormats;
using SkiaSharp;

namespace ShopDrawings.Print;

/// <summary>
/// Writes drawings as PNG pictures on white, of the paper's size at a resolution that is stored in the file. Immutable and thread-safe; the
/// same drawing gives the same bytes on one kind of machine.
/// </summary>
public sealed class PngExporter : IDrawingExporter
{
    // A0 at 300 dots per inch has 140 million pixels, four bytes each; the drawing library counts a side in 16 bits.
    private const double MostPixels = 150e6, LongestSide = short.MaxValue;

    private readonly double dotsPerInch = 150;

    /// <inheritdoc/>
    public string Format => "png";

    /// <summary>How the layers look.</summary>
    public Style Style { get; init; } = Style.Standard;

    /// <summary>Pixels to an inch of paper, 1 to 2400.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is less or more.</exception>
    public double DotsPerInch
    {
        get => dotsPerInch;
        init => dotsPerInch = value is >= 1 and <= 2400 ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "The resolution must be 1 to 2400 dots per inch.");
    }

    /// <inheritdoc/>
    /// <remarks>A drawing without paper gets a picture as large as itself and 10 mm all round.</remarks>
    /// <exception cref="ArgumentException">
    /// A number of the drawing is not finite, a coordinate is ten kilometres or more away, or the picture would have more than 150 million
    /// pixels, or more than 32767 on one side.
    /// </exception>
    public void Write(Drawing drawing, Stream output)
    {
        ArgumentNullException.ThrowIfNull(drawing);
        ArgumentNullException.ThrowIfNull(output);
        // The file stores whole pixels to a metre. They are the scale, so that the picture is true to what it says of itself.
        var pixelsPerMetre = Math.Round(DotsPerInch / 0.0254);
        var (paper, scale) = (drawing.Paper, pixelsPerMetre / 1000);
        var (across, down) = (Math.Round(Plot.Sound(paper.Width) * scale), Math.Round(Plot.Sound(paper.Height) * scale));
        if (!(Math.Max(across, down) <= LongestSide && across * down <= MostPixels))
            throw new ArgumentException($"A picture of {across:0} × {down:0} pixels is too large; ask for fewer dots per inch.", nameof(drawing));
        var size = new SKImageInfo(Math.Max(1, (int)across), Math.Max(1, (int)down), SKColorType.Rgba8888, SKAlphaType.Premul);

        using var bitmap = new SKBitmap(size);
        using (var canvas = new SKCanvas(bitmap))
        using (var plotter = new SkiaPlotter(canvas, paper, scale))
        {
            canvas.Clear(SKColors.White);
            Plot.Draw(drawing, Style, plotter);
        }

        using var image = Image.LoadPixelData<Rgba32>(bitmap.GetPixelSpan(), size.Width, size.Height);
        (image.Metadata.ResolutionUnits, image.Metadata.HorizontalResolution, image.Metadata.VerticalResolution) = (PixelResolutionUnit.PixelsPerMeter, pixelsPerMetre, pixelsPerMetre);
        var texts = image.Metadata.GetPngMetadata().TextData;
        if (drawing.Title.Length > 0) texts.Add(new PngTextData("Title", TextLine.Plain(drawing.Title), "", ""));
        if (drawing.Description.Length > 0) texts.Add(new PngTextData("Description", TextLine.Plain(drawing.Description), "", ""));
        // Half as large without colours; filters make drawings of lines larger.
        var isGrey = drawing.Layers.All(layer => Style.For(layer.Role).Rgb is var (red, green, blue) && red == green && green == blue);
        image.SaveAsPng(output, new PngEncoder { ColorType = isGrey ? PngColorType.Grayscale : PngColorType.Rgb, BitDepth = PngBitDepth.Bit8, FilterMethod = PngFilterMethod.None });
    }
}
