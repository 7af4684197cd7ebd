namespace ShopDrawings;

/// <summary>Names of files that every system takes.</summary>
internal static class FileNames
{
    private const int Longest = 128;

    private static readonly HashSet<string> Devices =
        new(["con", "prn", "aux", "nul", .. Enumerable.Range(1, 9).SelectMany(n => new[] { $"com{n}", $"lpt{n}" })], StringComparer.OrdinalIgnoreCase);

    /// <summary>Whether some system keeps a name, without extension, for a device.</summary>
    public static bool IsDevice(string name) => Devices.Contains(name);

    /// <summary>
    /// Whether a text is a path below a folder: names joined by slashes, each of the portable characters A–Z a–z 0–9 . _ - (POSIX, from memory),
    /// that begin with a letter, a digit or an underscore and do not end with a point.
    /// </summary>
    public static bool IsPath(string text) => text.Split('/').All(IsName);

    private static bool IsName(string text) =>
        text.Length is > 0 and <= Longest && text[0] is not ('.' or '-') && text[^1] != '.'
        && text.All(c => char.IsAsciiLetterOrDigit(c) || c is '.' or '_' or '-') && !IsDevice(text.Split('.')[0]);
}
