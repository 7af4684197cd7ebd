using System.Text;
using ShopDrawings.Kernel;

namespace ShopDrawings.Cli;

/// <summary>Reads a file the call names.</summary>
internal static class InputText
{
    /// <summary>Its text, or where it is no text.</summary>
    /// <param name="file">Its path.</param>
    /// <param name="what">What it is, such as <c>a project file</c>.</param>
    /// <exception cref="WrongCallException">There is none, it is too large, or it cannot be read.</exception>
    public static (string? Text, Diagnostic? Fault) Read(string file, string what)
    {
        if (!File.Exists(file)) throw new WrongCallException(Directory.Exists(file) ? $"“{file}” is a folder; name {what.Replace("a ", "the ", StringComparison.Ordinal)} in it" : $"there is no file “{file}”");
        if (new FileInfo(file).Length > Sources.LargestFile) throw new WrongCallException($"“{file}” is too large for {what}");
        byte[] bytes;
        try
        {
            bytes = File.ReadAllBytes(file);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new WrongCallException($"“{file}” cannot be read: {e.Message}");
        }

        try
        {
            return (new UTF8Encoding(false, true).GetString(bytes), null);
        }
        catch (DecoderFallbackException e)
        {
            var line = bytes.AsSpan(0, Math.Max(e.Index, 0)).Count((byte)'\n') + 1;
            return (null, new Diagnostic(new SourceSpan(file, line, 1), "this line is not UTF-8; save the file as UTF-8"));
        }
    }
}
