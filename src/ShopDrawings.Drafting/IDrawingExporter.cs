namespace ShopDrawings.Drafting;

/// <summary>Writes a neutral drawing in one file format. Implementations are immutable and thread-safe.</summary>
public interface IDrawingExporter
{
    /// <summary>The word a user writes for the format, and the file's extension: <c>dxf</c>. Small letters a–z, digits and dashes; always the same.</summary>
    string Format { get; }

    /// <summary>Writes the drawing. Leaves <paramref name="output"/> open; the same drawing gives the same bytes.</summary>
    void Write(Drawing drawing, Stream output);
}
