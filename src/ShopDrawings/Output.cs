namespace ShopDrawings;

/// <summary>A file of the result.</summary>
/// <param name="Path">Its place in the output folder, with <c>/</c> between folders.</param>
/// <param name="Write">Writes its content to a stream and leaves the stream open; the same job gives the same bytes.</param>
public sealed record Output(string Path, Action<Stream> Write);
