using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using PdfSharp.Pdf;
using ShopDrawings.Drafting;

namespace ShopDrawings.Print;

/// <summary>
/// The lettering font in a PDF file: every character used, whether the font has it or not, gets a code, a glyph of its own with its exact
/// width, and an entry in the table by which readers copy and search text (a composite font, ISO 32000-1, 9.7, from memory).
/// </summary>
internal sealed class PdfFont
{
    private const int MostCharacters = 60_000;

    private readonly Dictionary<Rune, int> codes = [];
    private readonly List<Rune> characters = [];

    /// <summary>The code of a character in strings of the page, 1 and up in the order of their first use.</summary>
    /// <exception cref="ArgumentException">The file has more different characters than a font can hold.</exception>
    public int Code(Rune character)
    {
        if (codes.TryGetValue(character, out var code)) return code;
        if (characters.Count == MostCharacters) throw new ArgumentException($"The drawing has more than {MostCharacters} different characters.", nameof(character));
        characters.Add(character);
        return codes[character] = characters.Count;
    }

    /// <summary>Adds the font with the characters asked for so far, or nothing if there are none.</summary>
    public PdfDictionary? AddTo(PdfDocument document)
    {
        if (characters.Count == 0) return null;
        var glyphs = characters.Select(TextLine.Glyph).ToArray();
        var file = FontSubset.Of(glyphs.Prepend((0, true)));
        // Six letters that tell subsets apart.
        var name = "/" + string.Concat(SHA256.HashData(file).Take(6).Select(b => (char)('A' + b % 26))) + "+DejaVuSans";

        var program = Stream(document, file);
        program.Elements.SetInteger("/Length1", file.Length);

        var box = FontSubset.Box(file);
        var descriptor = Add(document, "/FontDescriptor");
        descriptor.Elements.SetName("/FontName", name);
        descriptor.Elements.SetInteger("/Flags", 4); // a character set of its own
        descriptor.Elements["/FontBBox"] = Array(document, new[] { box.Left, box.Bottom, box.Right, box.Top }.Select(PerThousand));
        descriptor.Elements["/Ascent"] = new PdfReal(PerThousand(box.Top));
        descriptor.Elements["/Descent"] = new PdfReal(PerThousand(box.Bottom));
        descriptor.Elements["/CapHeight"] = new PdfReal(1000 * Lettering.CapitalHeight);
        descriptor.Elements.SetInteger("/ItalicAngle", 0);
        descriptor.Elements.SetInteger("/StemV", 90); // the letter l of the font; only fonts made to stand in are drawn with it
        descriptor.Elements.SetReference("/FontFile2", program);

        var system = new PdfDictionary(document);
        system.Elements.SetString("/Registry", "Adobe");
        system.Elements.SetString("/Ordering", "Identity");
        system.Elements.SetInteger("/Supplement", 0);

        var descendant = Add(document, "/Font");
        descendant.Elements.SetName("/Subtype", "/CIDFontType2");
        descendant.Elements.SetName("/BaseFont", name);
        descendant.Elements["/CIDSystemInfo"] = system;
        descendant.Elements.SetName("/CIDToGIDMap", "/Identity");
        descendant.Elements.SetReference("/FontDescriptor", descriptor);
        var widths = new PdfArray(document);
        widths.Elements.Add(new PdfInteger(1));
        widths.Elements.Add(Array(document, glyphs.Select(g => PerThousand(FontMetrics.Default.Units(g.Number)))));
        descendant.Elements["/W"] = widths;

        var descendants = new PdfArray(document);
        descendants.Elements.Add(descendant.Reference!);
        var font = Add(document, "/Font");
        font.Elements.SetName("/Subtype", "/Type0");
        font.Elements.SetName("/BaseFont", name);
        font.Elements.SetName("/Encoding", "/Identity-H");
        font.Elements["/DescendantFonts"] = descendants;
        font.Elements.SetReference("/ToUnicode", Stream(document, Encoding.ASCII.GetBytes(ToUnicode())));
        return font;
    }

    // The table from codes to text.
    private string ToUnicode()
    {
        const int MostInBlock = 100;
        var map = new StringBuilder("""
            /CIDInit /ProcSet findresource begin
            12 dict begin
            begincmap
            /CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def
            /CMapName /Adobe-Identity-UCS def
            /CMapType 2 def
            1 begincodespacerange
            <0000> <FFFF>
            endcodespacerange

            """.ReplaceLineEndings("\n"));
        foreach (var block in characters.Chunk(MostInBlock))
        {
            map.Append(CultureInfo.InvariantCulture, $"{block.Length} beginbfchar\n");
            foreach (var character in block)
            {
                var utf16 = Convert.ToHexString(Encoding.BigEndianUnicode.GetBytes(TextLine.Plain(character).ToString()));
                map.Append(CultureInfo.InvariantCulture, $"<{codes[character]:X4}> <{utf16}>\n");
            }

            map.Append("endbfchar\n");
        }

        return map.Append("endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n").ToString();
    }

    private static PdfDictionary Stream(PdfDocument document, byte[] bytes)
    {
        var stream = new PdfDictionary(document);
        stream.CreateStream(bytes);
        document.Internals.AddObject(stream);
        return stream;
    }

    private static PdfDictionary Add(PdfDocument document, string type)
    {
        var dictionary = new PdfDictionary(document);
        dictionary.Elements.SetName("/Type", type);
        document.Internals.AddObject(dictionary);
        return dictionary;
    }

    private static PdfArray Array(PdfDocument document, IEnumerable<double> numbers)
    {
        var array = new PdfArray(document);
        foreach (var number in numbers) array.Elements.Add(new PdfReal(number));
        return array;
    }

    // Widths of fonts are thousandths of the font size in PDF.
    private static double PerThousand(int units) => 1000.0 * units / FontMetrics.Default.UnitsPerEm;
}
