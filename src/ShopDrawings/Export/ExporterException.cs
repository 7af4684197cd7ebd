namespace ShopDrawings;

/// <summary>An exporter failed, or gave a file that cannot stand beside the others. The message says which one, and why.</summary>
public sealed class ExporterException : Exception
{
    internal ExporterException(object exporter, string format, string reason, Exception? cause = null)
        : base($"exporter \"{format}\" failed: {reason}", cause) => Exporter = exporter;

    /// <summary>The exporter: an <see cref="ShopDrawings.Drafting.IDrawingExporter"/> or an <see cref="IJobExporter"/>.</summary>
    public object Exporter { get; }
}
