namespace ShopDrawings;

/// <summary>A file of the result. Immutable.</summary>
public sealed class Output
{
    /// <summary>A file of the result.</summary>
    /// <param name="path">Its place in the output folder: names of the characters A–Z a–z 0–9 . _ - with <c>/</c> between folders.</param>
    /// <param name="write">Writes its content to a stream and leaves the stream open; the same job gives the same bytes.</param>
    /// <exception cref="ArgumentException">The path could lead out of the folder, or is no name on some system.</exception>
    public Output(string path, Action<Stream> write)
    {
        ArgumentNullException.ThrowIfNull(path);
        ArgumentNullException.ThrowIfNull(write);
        if (!FileNames.IsPath(path))
            throw new ArgumentException($"“{path}” is not a path in the output folder; join names of letters, digits, points, dashes and underscores by “/”, like lists/parts.csv");
        (Path, Write) = (path, write);
    }

    /// <summary>Its place in the output folder, with <c>/</c> between folders.</summary>
    public string Path { get; }

    /// <summary>Writes its content to a stream and leaves the stream open; the same job gives the same bytes.</summary>
    public Action<Stream> Write { get; }
}
