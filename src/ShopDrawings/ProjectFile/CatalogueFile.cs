using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using ShopDrawings.Kernel;
using ShopDrawings.Yaml;

namespace ShopDrawings.ProjectFile;

/// <summary>Reads files of bought parts: the shipped catalogue and those a project names.</summary>
internal static class CatalogueFile
{
    /// <summary>The parts of a text. Every fault is added to the diagnostics; then some parts may be missing.</summary>
    public static CatalogueEntries? Read(string text, string name, List<Diagnostic> diagnostics)
    {
        if (YamlReader.Read(text, name, "screws:", diagnostics) is not { } root) return null;
        CatalogueShapes.Catalogue.TryRead(root, new Reading(Reading.UnitOf(root), diagnostics), out var entries);
        return entries;
    }

    /// <summary>The parts of the files a project names, in order. A file that cannot be read is a fault where it is named.</summary>
    public static ImmutableArray<CatalogueEntries> ReadAll(ImmutableArray<Word> names, Sources sources, List<Diagnostic> diagnostics)
    {
        var all = ImmutableArray.CreateBuilder<CatalogueEntries>();
        foreach (var name in names)
        {
            var (text, fault) = Text(sources.Read(name.Text));
            if (text is null) diagnostics.Add(new(name.At, $"the catalogue “{name.Text}” cannot be read: {fault}"));
            else if (Read(text, name.Text, diagnostics) is { } entries) all.Add(entries);
        }

        return all.ToImmutable();
    }

    private static (string? Text, string? Fault) Text(SourceFile file)
    {
        if (file.Bytes is not { } bytes) return (null, file.Reason);
        if (bytes.Length > Sources.LargestFile) return (null, string.Create(CultureInfo.InvariantCulture, $"it has {bytes.Length} bytes, and at most {Sources.LargestFile} are read"));
        try
        {
            return (new UTF8Encoding(false, true).GetString(bytes.Span), null);
        }
        catch (DecoderFallbackException e)
        {
            var line = bytes.Span[..Math.Max(e.Index, 0)].Count((byte)'\n') + 1;
            return (null, string.Create(CultureInfo.InvariantCulture, $"its line {line} is not UTF-8; save the file as UTF-8"));
        }
    }
}
