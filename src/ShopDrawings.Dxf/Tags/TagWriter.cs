using System.Globalization;
using System.Numerics;
using System.Text;

namespace ShopDrawings.Dxf;

/// <summary>
/// Writes tags: a group code, right-aligned to three places, and a value, each on a line of its own that ends with LF. Streams through
/// one buffer. Texts are UTF-8, which for ASCII texts is ASCII. It trusts nothing with a line break: one would destroy the whole file.
/// </summary>
/// <param name="output">Receives the bytes; stays open.</param>
internal sealed class TagWriter(Stream output)
{
    /// <summary>Longest text value in UTF-16 units; the format allows 2049 bytes since R2000.</summary>
    public const int MaxText = 682;

    private const int CodeLength = 4;

    // Every group code below 400 as its line; what is written has none above.
    private static readonly byte[] CodeLines = [.. Enumerable.Range(0, 400).SelectMany(CodeLine)];

    private readonly byte[] buffer = new byte[1 << 15];
    private int used;

    /// <summary>Writes a text or name (group codes 0–9, 100, 102, 300–309).</summary>
    /// <exception cref="ArgumentException">The text holds a control character or is longer than <see cref="MaxText"/>.</exception>
    public void Text(int code, string value)
    {
        if (value.AsSpan().ContainsAnyInRange('\0', '\x1f') || value.Length > MaxText)
            throw new ArgumentException("A text value must be one line of reasonable length.", nameof(value));
        Code(code, 3 * value.Length);
        used += Encoding.UTF8.GetBytes(value, buffer.AsSpan(used));
        buffer[used++] = (byte)'\n';
    }

    /// <summary>Writes a whole number (group codes 60–99, 170–179, 270–299, 370–389).</summary>
    public void Integer(int code, long value)
    {
        Code(code, 20);
        value.TryFormat(buffer.AsSpan(used), out var length, default, CultureInfo.InvariantCulture);
        used += length;
        buffer[used++] = (byte)'\n';
    }

    /// <summary>Writes a handle or a reference to one in upper-case hexadecimal (group codes 5, 105, 320–369, 390–399).</summary>
    public void Handle(int code, long handle)
    {
        Code(code, 16);
        for (var shift = 60 - (BitOperations.LeadingZeroCount((ulong)handle | 1) & ~3); shift >= 0; shift -= 4) buffer[used++] = "0123456789ABCDEF"u8[(int)(handle >> shift) & 15];
        buffer[used++] = (byte)'\n';
    }

    /// <summary>Writes a real number (group codes 10–59, 110–149, 210–239).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is not finite or reaches <see cref="FixedPoint.Limit"/>.</exception>
    public void Real(int code, double value)
    {
        Code(code, FixedPoint.MaxLength);
        used += FixedPoint.Write(value, buffer.AsSpan(used));
        buffer[used++] = (byte)'\n';
    }

    /// <summary>Writes a real number with up to twelve decimals, for factors of long lengths.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is not finite or reaches 1000.</exception>
    public void Fine(int code, double value)
    {
        const int Decimals = 12, MaxLength = 18;
        if (!(Math.Abs(value) < 1000)) throw new ArgumentOutOfRangeException(nameof(value), value, "A fine number must be finite and below 1000.");
        Code(code, MaxLength);
        var rounded = Math.Round(value, Decimals) + 0.0;        // adding makes -0 a 0
        rounded.TryFormat(buffer.AsSpan(used), out var length, "0.0###########", CultureInfo.InvariantCulture);
        used += length;
        buffer[used++] = (byte)'\n';
    }

    /// <summary>Writes a real number that is 0.</summary>
    public void Zero(int code)
    {
        var zero = "0.0\n"u8;
        Code(code, zero.Length);
        zero.CopyTo(buffer.AsSpan(used));
        used += zero.Length;
    }

    /// <summary>Writes tags made before by <see cref="Line"/>.</summary>
    public void Put(ReadOnlySpan<byte> tags)
    {
        if (used + tags.Length > buffer.Length) Flush();
        tags.CopyTo(buffer.AsSpan(used));
        used += tags.Length;
    }

    /// <summary>A tag with a fixed text, to be written often.</summary>
    public static byte[] Line(int code, string value) => [.. CodeLine(code), .. Encoding.ASCII.GetBytes(value + "\n")];

    /// <summary>Hands what is still in the buffer to the output.</summary>
    public void Flush()
    {
        output.Write(buffer, 0, used);
        used = 0;
    }

    private void Code(int code, int valueLength)
    {
        const int LineEnd = 1;
        if (used + CodeLength + valueLength + LineEnd > buffer.Length) Flush();
        CodeLines.AsSpan(CodeLength * code, CodeLength).CopyTo(buffer.AsSpan(used));
        used += CodeLength;
    }

    private static byte[] CodeLine(int code) => Encoding.ASCII.GetBytes(code.ToString(CultureInfo.InvariantCulture).PadLeft(3) + "\n");
}
