using ShopDrawings.Drafting;

namespace ShopDrawings.Dxf;

/// <summary>
/// Writes a neutral drawing as an ASCII DXF file with everything in model space, as large as it is drawn: a model at 1:1, a sheet as large as its paper,
/// where dimensions carry the factor of their view, so that they measure what they say. Coordinates have six decimals; arcs and outlines lie
/// within 1e-4 mm of the drawing's. The same drawing and settings give the same bytes, whatever the culture. Immutable and thread-safe.
/// </summary>
public sealed record DxfExporter : IDrawingExporter
{
    /// <inheritdoc/>
    public string Format => "dxf";

    /// <summary>
    /// The release to write; texts are made to fit it. Nothing, as by default: <see cref="DxfRelease.R2000"/>, or <see cref="DxfRelease.R2010"/>
    /// where a text is not ASCII.
    /// </summary>
    public DxfRelease? Release { get; init; }

    /// <summary>The unit of the file's coordinates.</summary>
    public DrawingUnit Unit { get; init; } = DrawingUnit.Millimetre;

    /// <summary>Colour, line type and lineweight of the layers, by their roles.</summary>
    public Style Style { get; init; } = Style.Standard;

    /// <summary>What closed outlines are written as.</summary>
    public DxfOutlines Outlines { get; init; } = DxfOutlines.Polylines;

    /// <summary>
    /// How far, in mm, chords may be off the arcs they stand for, from 0.005 to 100, for controllers that know no arcs; nothing, as by
    /// default, where arcs stay arcs. Round outlines become chords too; circles, which are bores, stay circles.
    /// </summary>
    public double? ChordTolerance { get; init; }

    /// <summary>A sheet of paper beside the model, or nothing, as by default: many readers draw it over the model. R12 files do without.</summary>
    public SheetLayout? Layout { get; init; }

    /// <inheritdoc/>
    /// <remarks>A text without any visible letter is left out. Nothing is written when the drawing is refused.</remarks>
    /// <exception cref="ArgumentException">
    /// An entity has a number that is not finite or reaches 1e9, a radius or a lettering height below 1e-6 units, or is otherwise not what its description asks for; the factor of a dimension is not above 0.001 and below 1e6; a pen's colour is not 1 to 255; the layout is no sheet; the chord tolerance is out of range.
    /// </exception>
    public void Write(Drawing drawing, Stream output)
    {
        ArgumentNullException.ThrowIfNull(drawing);
        ArgumentNullException.ThrowIfNull(output);
        var layout = Release == DxfRelease.R12 ? null : Layout;
        if (layout is not null) PaperSheet.Check(layout);
        var form = new PathForm(Outlines, ChordTolerance);
        form.Check();
        var survey = Survey.Of(drawing, Release, Unit, form, layout?.Title ?? []);
        var layers = new LayerTable([.. drawing.Layers, .. PaperSheet.LayersOf(layout).Except(drawing.Layers)], Style);
        DxfDocument.Write(drawing, survey, layers, layout, output);
    }
}
