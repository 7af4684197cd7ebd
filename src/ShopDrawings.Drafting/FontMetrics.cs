using System.Buffers.Binary;
using System.Text;

namespace ShopDrawings.Drafting;

/// <summary>
/// Advance widths and capital height of the embedded font, read from its own tables (ISO/IEC 14496-22, Open Font Format).
/// Results are shares of the font size unless they say otherwise. Immutable; reads only what that font has: a format 12 character map, and
/// an OS/2 table too old to give the height of capitals, which is therefore taken from the letter H.
/// </summary>
internal sealed class FontMetrics
{
    private const string ResourceName = "DejaVuSans.ttf";

    private readonly ushort[] advances;
    private readonly (int First, int Last, int Glyph)[] groups;

    // Widths of the characters nearly all texts are written with.
    private readonly int[] usual = new int[0x250];

    private FontMetrics(Stream font)
    {
        var tables = TableOffsets(font);
        var head = Read(font, tables["head"], 54);
        UnitsPerEm = UInt16(head, 18);
        var longOffsets = UInt16(head, 50) != 0;
        var metrics = UInt16(Read(font, tables["hhea"], 36), 34);
        var hmtx = Read(font, tables["hmtx"], 4 * metrics);
        advances = [.. Enumerable.Range(0, metrics).Select(i => UInt16(hmtx, 4 * i))];
        groups = CharacterGroups(font, tables["cmap"]);
        for (var i = 0; i < usual.Length; i++) usual[i] = Units(Glyph(i));

        var glyph = Glyph('H');
        var size = longOffsets ? 4 : 2;
        var loca = Read(font, tables["loca"] + size * glyph, size);
        var outline = tables["glyf"] + (longOffsets ? Int32(loca, 0) : 2 * UInt16(loca, 0));
        CapitalHeight = (double)BinaryPrimitives.ReadInt16BigEndian(Read(font, outline, 10).AsSpan(8)) / UnitsPerEm;
    }

    /// <summary>The font all drawings are measured with.</summary>
    public static FontMetrics Default { get; } = Load();

    /// <summary>How many units of the font's tables make the font size.</summary>
    public int UnitsPerEm { get; }

    /// <summary>Height of the capitals.</summary>
    public double CapitalHeight { get; }

    /// <summary>
    /// The width of a line of text without kerning. A character the font lacks is as wide as its sign for missing ones,
    /// half a surrogate pair as wide as the replacement character.
    /// </summary>
    public double Advance(string text)
    {
        var sum = 0;
        foreach (var rune in text.EnumerateRunes()) sum += rune.Value < usual.Length ? usual[rune.Value] : Units(Glyph(rune.Value));
        return (double)sum / UnitsPerEm;
    }

    /// <summary>The width of a glyph in units of the font.</summary>
    public int Units(int glyph) => advances[Math.Min(glyph, advances.Length - 1)]; // glyphs past the table's end share its last width

    /// <summary>The font file itself.</summary>
    public static Stream Open() => typeof(FontMetrics).Assembly.GetManifestResourceStream(ResourceName)
        ?? throw new InvalidOperationException($"The resource {ResourceName} is missing from the assembly.");

    private static FontMetrics Load()
    {
        using var font = Open();
        return new FontMetrics(font);
    }

    private static Dictionary<string, int> TableOffsets(Stream font)
    {
        var count = UInt16(Read(font, 0, 12), 4);
        var records = Read(font, 12, 16 * count);
        return Enumerable.Range(0, count).ToDictionary(
            i => Encoding.ASCII.GetString(records, 16 * i, 4),
            i => Int32(records, 16 * i + 8));
    }

    private static (int First, int Last, int Glyph)[] CharacterGroups(Stream font, int cmap)
    {
        var count = UInt16(Read(font, cmap, 4), 2);
        var records = Read(font, cmap + 4, 8 * count);
        for (var i = 0; i < count; i++)
        {
            var map = cmap + Int32(records, 8 * i + 4);
            var header = Read(font, map, 16);
            if (UInt16(header, 0) != 12) continue;
            var entries = Int32(header, 12);
            var data = Read(font, map + 16, 12 * entries);
            return [.. Enumerable.Range(0, entries).Select(e => (Int32(data, 12 * e), Int32(data, 12 * e + 4), Int32(data, 12 * e + 8)))];
        }

        throw new InvalidOperationException("The font has no character map of format 12.");
    }

    /// <summary>The number of a character's glyph; 0, the sign for missing characters, where the font has none.</summary>
    public int Glyph(int character)
    {
        int low = 0, high = groups.Length - 1;
        while (low <= high)
        {
            var middle = (low + high) / 2;
            var (first, last, glyph) = groups[middle];
            if (character < first) high = middle - 1;
            else if (character > last) low = middle + 1;
            else return glyph + character - first;
        }

        return 0;
    }

    private static byte[] Read(Stream font, int offset, int length)
    {
        var bytes = new byte[length];
        font.Position = offset;
        font.ReadExactly(bytes);
        return bytes;
    }

    private static ushort UInt16(byte[] bytes, int offset) => BinaryPrimitives.ReadUInt16BigEndian(bytes.AsSpan(offset));

    private static int Int32(byte[] bytes, int offset) => BinaryPrimitives.ReadInt32BigEndian(bytes.AsSpan(offset));
}
