using System.Buffers.Binary;
using System.Text;
using ShopDrawings.Drafting;

namespace ShopDrawings.Print;

/// <summary>
/// A TrueType font file with some glyphs of the lettering font, for embedding (ISO/IEC 14496-22, Open Font Format; the tables a PDF asks for,
/// ISO 32000-1, 9.9, from memory). Without the instructions for coarse screens, which half of every glyph consists of.
/// </summary>
internal sealed class FontSubset
{
    // Flags of a part of a composite glyph.
    private const int WideArguments = 0x1, HasScale = 0x8, HasMore = 0x20, HasTwoScales = 0x40, HasMatrix = 0x80, HasInstructions = 0x100;

    private readonly byte[] font;
    private readonly Dictionary<string, (int Offset, int Length)> tables = [];
    private readonly List<(int Glyph, bool HasInk)> sources;

    private FontSubset(IEnumerable<(int Glyph, bool HasInk)> glyphs)
    {
        using var stream = FontMetrics.Open();
        font = new byte[stream.Length];
        stream.ReadExactly(font);
        for (var record = 12; record < 12 + 16 * UInt16(4); record += 16)
            tables[Encoding.ASCII.GetString(font, record, 4)] = (Int32(record + 8), Int32(record + 12));
        sources = [.. glyphs];
    }

    /// <summary>The font file with these glyphs in this order; the parts of composed ones follow.</summary>
    /// <param name="glyphs">Numbers of glyphs of the whole font, and whether they are drawn or only as wide; the first is the sign for missing characters.</param>
    public static byte[] Of(IEnumerable<(int Glyph, bool HasInk)> glyphs) => new FontSubset(glyphs).File();

    /// <summary>The box in units of the font around all glyphs of the whole font: left, bottom, right, top.</summary>
    public static (int Left, int Bottom, int Right, int Top) Box(byte[] subset)
    {
        var head = TableOffset(subset, "head");
        short At(int offset) => BinaryPrimitives.ReadInt16BigEndian(subset.AsSpan(head + offset));
        return (At(36), At(38), At(40), At(42));
    }

    private byte[] File()
    {
        var outlines = new MemoryStream();
        var offsets = new MemoryStream();
        var metrics = new MemoryStream();
        // The list grows while parts of composed glyphs are found.
        for (var i = 0; i < sources.Count; i++)
        {
            Append(offsets, (int)outlines.Position);
            var (glyph, hasInk) = sources[i];
            var outline = hasInk ? Outline(glyph) : [];
            outlines.Write(outline);
            while (outlines.Length % 4 != 0) outlines.WriteByte(0);
            Append(metrics, (FontMetrics.Default.Units(glyph) << 16) | (outline.Length > 0 ? BinaryPrimitives.ReadUInt16BigEndian(outline.AsSpan(2)) : 0));
        }

        Append(offsets, (int)outlines.Position);
        var (head, hhea, maxp) = (Table("head"), Table("hhea"), Table("maxp"));
        BinaryPrimitives.WriteInt32BigEndian(head.AsSpan(8), 0);
        BinaryPrimitives.WriteInt16BigEndian(head.AsSpan(50), 1); // offsets of glyphs are long
        BinaryPrimitives.WriteUInt16BigEndian(hhea.AsSpan(34), (ushort)sources.Count);
        BinaryPrimitives.WriteUInt16BigEndian(maxp.AsSpan(4), (ushort)sources.Count);
        return File([("glyf", outlines.ToArray()), ("head", head), ("hhea", hhea), ("hmtx", metrics.ToArray()), ("loca", offsets.ToArray()), ("maxp", maxp)]);
    }

    // The tables in the order of their names behind their directory.
    private static byte[] File((string Name, byte[] Bytes)[] tables)
    {
        var size = 12 + 16 * tables.Length + tables.Sum(t => (t.Bytes.Length + 3) / 4 * 4);
        var file = new byte[size];
        BinaryPrimitives.WriteInt32BigEndian(file, 0x00010000);
        BinaryPrimitives.WriteUInt16BigEndian(file.AsSpan(4), (ushort)tables.Length);
        var power = (int)Math.Log2(tables.Length);
        BinaryPrimitives.WriteUInt16BigEndian(file.AsSpan(6), (ushort)(16 << power));
        BinaryPrimitives.WriteUInt16BigEndian(file.AsSpan(8), (ushort)power);
        BinaryPrimitives.WriteUInt16BigEndian(file.AsSpan(10), (ushort)(16 * tables.Length - (16 << power)));
        var (record, at) = (12, 12 + 16 * tables.Length);
        foreach (var (name, bytes) in tables)
        {
            bytes.CopyTo(file, at);
            var padded = (bytes.Length + 3) / 4 * 4;
            Encoding.ASCII.GetBytes(name).CopyTo(file, record);
            BinaryPrimitives.WriteUInt32BigEndian(file.AsSpan(record + 4), Sum(file.AsSpan(at, padded)));
            BinaryPrimitives.WriteInt32BigEndian(file.AsSpan(record + 8), at);
            BinaryPrimitives.WriteInt32BigEndian(file.AsSpan(record + 12), bytes.Length);
            (record, at) = (record + 16, at + padded);
        }

        BinaryPrimitives.WriteUInt32BigEndian(file.AsSpan(TableOffset(file, "head") + 8), unchecked(0xB1B0AFBA - Sum(file)));
        return file;
    }

    // The outline of a glyph, its parts renumbered, its instructions left out.
    private byte[] Outline(int glyph)
    {
        var loca = tables["loca"].Offset;
        var isLong = UInt16(tables["head"].Offset + 50) != 0;
        int Offset(int index) => isLong ? Int32(loca + 4 * index) : 2 * UInt16(loca + 2 * index);
        var (start, end) = (Offset(glyph), Offset(glyph + 1));
        var outline = font.AsSpan(tables["glyf"].Offset + start, end - start).ToArray();
        if (outline.Length == 0) return outline;

        var contours = BinaryPrimitives.ReadInt16BigEndian(outline);
        if (contours >= 0)
        {
            var length = 10 + 2 * contours;
            var instructions = BinaryPrimitives.ReadUInt16BigEndian(outline.AsSpan(length));
            return [.. outline[..length], 0, 0, .. outline[(length + 2 + instructions)..]];
        }

        for (var at = 10; ;)
        {
            var flags = BinaryPrimitives.ReadUInt16BigEndian(outline.AsSpan(at));
            BinaryPrimitives.WriteUInt16BigEndian(outline.AsSpan(at), (ushort)(flags & ~HasInstructions));
            BinaryPrimitives.WriteUInt16BigEndian(outline.AsSpan(at + 2), (ushort)sources.Count);
            sources.Add((UInt16(tables["glyf"].Offset + start + at + 2), true));
            at += 4 + ((flags & WideArguments) != 0 ? 4 : 2) + ((flags & HasScale) != 0 ? 2 : (flags & HasTwoScales) != 0 ? 4 : (flags & HasMatrix) != 0 ? 8 : 0);
            if ((flags & HasMore) == 0) return outline[..at];
        }
    }

    private byte[] Table(string name) => font.AsSpan(tables[name].Offset, tables[name].Length).ToArray();

    private static int TableOffset(byte[] file, string name)
    {
        var record = 12;
        while (!file.AsSpan(record, 4).SequenceEqual(Encoding.ASCII.GetBytes(name))) record += 16;
        return BinaryPrimitives.ReadInt32BigEndian(file.AsSpan(record + 8));
    }

    private static uint Sum(ReadOnlySpan<byte> words)
    {
        var sum = 0u;
        for (var at = 0; at < words.Length; at += 4) sum = unchecked(sum + BinaryPrimitives.ReadUInt32BigEndian(words[at..]));
        return sum;
    }

    private static void Append(MemoryStream stream, int value)
    {
        Span<byte> bytes = stackalloc byte[4];
        BinaryPrimitives.WriteInt32BigEndian(bytes, value);
        stream.Write(bytes);
    }

    private ushort UInt16(int offset) => BinaryPrimitives.ReadUInt16BigEndian(font.AsSpan(offset));

    private int Int32(int offset) => BinaryPrimitives.ReadInt32BigEndian(font.AsSpan(offset));
}
