namespace ShopDrawings;

/// <summary>
/// The files a project file may name. Whoever gives them roots each name at the project file's folder and refuses one that leaves it.
/// </summary>
/// <param name="read">
/// The file of a name, which is relative, has <c>/</c> between folders and no <c>..</c>; the same name must always give the same file.
/// </param>
/// <exception cref="ArgumentNullException">Nothing reads.</exception>
public sealed class Sources(Func<string, SourceFile> read)
{
    private readonly Func<string, SourceFile> read = read ?? throw new ArgumentNullException(nameof(read));

    /// <summary>Largest file in bytes: four for each character at most.</summary>
    public const int LargestFile = 4 << 20;

    /// <summary>No files at all.</summary>
    public static Sources None { get; } = new(_ => SourceFile.Missing("no files were given beside the project file"));

    /// <summary>The file of a name.</summary>
    public SourceFile Read(string name) => read(name);
}

/// <summary>A file a project names, or why there is none. Immutable as long as nobody writes into its bytes.</summary>
public sealed class SourceFile
{
    private SourceFile(ReadOnlyMemory<byte>? bytes, string? reason) => (Bytes, Reason) = (bytes, reason);

    /// <summary>Its content, or nothing where there is none.</summary>
    public ReadOnlyMemory<byte>? Bytes { get; }

    /// <summary>Why there is none, in a few words for the message; nothing where there is one.</summary>
    public string? Reason { get; }

    /// <summary>A file with some content.</summary>
    public static SourceFile Of(ReadOnlyMemory<byte> bytes) => new(bytes, null);

    /// <summary>No file, and why.</summary>
    public static SourceFile Missing(string reason) => new(null, reason);
}
