namespace ShopDrawings;

/// <summary>Writes files about the whole job. Implementations are immutable and thread-safe.</summary>
public interface IJobExporter
{
    /// <summary>The word a user writes for the format: <c>csv</c>. Small letters a–z, digits and dashes; always the same.</summary>
    string Format { get; }

    /// <summary>The files it writes, at paths that no other exporter uses; nothing is written before an <see cref="Output"/> is asked to.</summary>
    IEnumerable<Output> Export(Job job);
}
