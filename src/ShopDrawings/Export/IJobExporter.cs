namespace ShopDrawings;

/// <summary>Writes files about the whole job. Implementations are immutable and thread-safe.</summary>
public interface IJobExporter
{
    /// <summary>The word a user writes for the format: <c>csv</c>.</summary>
    string Format { get; }

    /// <summary>The files it writes; nothing is written before an <see cref="Output"/> is asked to.</summary>
    IEnumerable<Output> Export(Job job);
}
