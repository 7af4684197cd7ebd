using ShopDrawings.Kernel;

namespace ShopDrawings.ProjectFile;

/// <summary>Bought parts and machines by name: those the program ships, over them those of a user's catalogues, over them a project's own.</summary>
internal sealed class Catalogue
{
    private static readonly CatalogueEntries Shipped = Read();

    /// <summary>The shipped parts with others over them, the last on top; a fault in a piece of hardware is noted.</summary>
    public Catalogue(IEnumerable<CatalogueEntries> over, Action<SourceSpan, string> fail)
    {
        foreach (var entries in over.Prepend(Shipped))
        {
            foreach (var (name, part) in entries.Fasteners) Fasteners[name.Text] = part with { Name = name.Text };
            foreach (var (name, part) in entries.Hinges) Hinges[name.Text] = part with { Name = name.Text };
            foreach (var (name, part) in entries.Slides) Slides[name.Text] = part with { Name = name.Text };
            foreach (var (name, part) in entries.Pins) Pins[name.Text] = part with { Name = name.Text };
            foreach (var (name, part) in entries.Castors) Castors[name.Text] = part with { Name = name.Text };
            foreach (var (name, part) in entries.Feet) Feet[name.Text] = part with { Name = name.Text };
            foreach (var (name, machine) in entries.Machines) Machines[name.Text] = machine;
            foreach (var (name, part) in entries.Hardware) Hardware[name.Text] = new OpeningReader(name.Text, fail).Pattern(part);
        }
    }

    /// <summary>Screws, connectors, dowels, cams and brackets.</summary>
    public Dictionary<string, Fastener> Fasteners { get; } = new(StringComparer.Ordinal);

    /// <summary>Cup hinges.</summary>
    public Dictionary<string, Hinge> Hinges { get; } = new(StringComparer.Ordinal);

    /// <summary>Side-mounted slides.</summary>
    public Dictionary<string, Slide> Slides { get; } = new(StringComparer.Ordinal);

    /// <summary>Shelf pins.</summary>
    public Dictionary<string, ShelfPin> Pins { get; } = new(StringComparer.Ordinal);

    /// <summary>Castors.</summary>
    public Dictionary<string, Castor> Castors { get; } = new(StringComparer.Ordinal);

    /// <summary>Levelling feet and glides.</summary>
    public Dictionary<string, Foot> Feet { get; } = new(StringComparer.Ordinal);

    /// <summary>Machines as they are written.</summary>
    public Dictionary<string, MachineEntry> Machines { get; } = new(StringComparer.Ordinal);

    /// <summary>Everything else that is fixed to a face.</summary>
    public Dictionary<string, HardwarePattern> Hardware { get; } = new(StringComparer.Ordinal);

    private static CatalogueEntries Read()
    {
        const string Name = "catalogue.yaml";
        using var reader = new StreamReader(typeof(Catalogue).Assembly.GetManifestResourceStream(Name)!);
        var diagnostics = new List<Diagnostic>();
        var entries = CatalogueFile.Read(reader.ReadToEnd(), Name, diagnostics);
        return diagnostics.Count == 0 ? entries! : throw new InvalidOperationException($"The shipped catalogue is damaged: {diagnostics[0]}");
    }
}
