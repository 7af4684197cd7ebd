using System.Collections.Immutable;
using ShopDrawings.Kernel;
using ShopDrawings.Yaml;

namespace ShopDrawings.ProjectFile;

/// <summary>The bought parts the program ships, by their dimensions, in the form a user would write them.</summary>
internal static class Catalogue
{
    /// <summary>Screws by name.</summary>
    public static ImmutableArray<(Word Name, ScrewEntry Value)> Screws { get; } = Read();

    private static ImmutableArray<(Word Name, ScrewEntry Value)> Read()
    {
        using var reader = new StreamReader(typeof(Catalogue).Assembly.GetManifestResourceStream("screws.yaml")!);
        var diagnostics = new List<Diagnostic>();
        var root = YamlReader.Read(reader.ReadToEnd(), "screws.yaml", diagnostics);
        if (root is null || !ProjectShapes.ScrewCatalogue.TryRead(root, new Reading(Measure.Millimetre, diagnostics), out var screws))
            throw new InvalidOperationException($"The shipped catalogue is damaged: {diagnostics[0]}");
        return screws;
    }
}
