using ShopDrawings.Kernel;
using ShopDrawings.Yaml;

namespace ShopDrawings.ProjectFile;

/// <summary>Bought parts by name: those the program ships, and over them a project's own.</summary>
internal sealed class Catalogue
{
    private static readonly CatalogueEntries Shipped = Read();

    /// <summary>The shipped parts with a project's own over them.</summary>
    public Catalogue(CatalogueEntries own)
    {
        foreach (var entries in new[] { Shipped, own })
        {
            foreach (var (name, part) in entries.Fasteners) Fasteners[name.Text] = part with { Name = name.Text };
            foreach (var (name, part) in entries.Hinges) Hinges[name.Text] = part with { Name = name.Text };
            foreach (var (name, part) in entries.Slides) Slides[name.Text] = part with { Name = name.Text };
            foreach (var (name, part) in entries.Castors) Castors[name.Text] = part with { Name = name.Text };
        }
    }

    /// <summary>Screws, connectors, dowels, cams and brackets.</summary>
    public Dictionary<string, Fastener> Fasteners { get; } = new(StringComparer.Ordinal);

    /// <summary>Cup hinges.</summary>
    public Dictionary<string, Hinge> Hinges { get; } = new(StringComparer.Ordinal);

    /// <summary>Side-mounted slides.</summary>
    public Dictionary<string, Slide> Slides { get; } = new(StringComparer.Ordinal);

    /// <summary>Castors.</summary>
    public Dictionary<string, Castor> Castors { get; } = new(StringComparer.Ordinal);

    private static CatalogueEntries Read()
    {
        const string Name = "catalogue.yaml";
        using var reader = new StreamReader(typeof(Catalogue).Assembly.GetManifestResourceStream(Name)!);
        var diagnostics = new List<Diagnostic>();
        var root = YamlReader.Read(reader.ReadToEnd(), Name, diagnostics);
        if (root is null || !CatalogueShapes.Catalogue.TryRead(root, new Reading(Measure.Millimetre, diagnostics), out var entries))
            throw new InvalidOperationException($"The shipped catalogue is damaged: {diagnostics[0]}");
        return entries;
    }
}
