using System.Diagnostics;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;

namespace ShopDrawings.Print;

/// <summary>
/// Makes a PDF file the same each time. The package ends every file with metadata of its own, which hold the time, random numbers and titles
/// that are not escaped, and with a random identifier: the file is cut off before them, and ended anew with an identifier made from its content.
/// </summary>
internal static partial class PdfTail
{
    /// <summary>The file without the metadata, and with an identifier that follows from all the rest.</summary>
    /// <exception cref="UnreachableException">The file is not as the package writes it.</exception>
    public static byte[] Renewed(byte[] file)
    {
        var text = Encoding.Latin1.GetString(file); // byte by byte
        var tail = text[text.LastIndexOf("xref\n0 ", StringComparison.Ordinal)..];
        var lines = tail.Split('\n');
        var last = int.Parse(lines[1].AsSpan(2), CultureInfo.InvariantCulture) - 1;
        int Place(int number) => int.Parse(lines[2 + number].AsSpan(0, 10), CultureInfo.InvariantCulture);
        var trailer = Trailer().Match(tail);
        var (end, reference) = (Place(last), $"/Metadata {last} 0 R");
        var mention = text.IndexOf(reference, Place(int.Parse(trailer.Groups["root"].Value, CultureInfo.InvariantCulture)), StringComparison.Ordinal);
        if (!text.AsSpan(end).StartsWith($"{last} 0 obj\n<</Type/Metadata") || mention < 0)
            throw new UnreachableException("The PDF does not end with its metadata.");

        var body = text[..mention] + new string(' ', reference.Length) + text[(mention + reference.Length)..end];
        var id = Convert.ToHexString(SHA256.HashData(Encoding.Latin1.GetBytes(body)).AsSpan(0, 16));
        var table = string.Concat(lines[2..(2 + last)].Select(line => line + "\n"));
        return Encoding.Latin1.GetBytes($"{body}xref\n0 {last}\n{table}trailer\n<</Size {last}{trailer.Value}/ID[<{id}><{id}>]>>\nstartxref\n{end}\n%%EOF\n");
    }

    [GeneratedRegex(@"/Info \d+ 0 R/Root (?<root>\d+) 0 R")]
    private static partial Regex Trailer();
}
