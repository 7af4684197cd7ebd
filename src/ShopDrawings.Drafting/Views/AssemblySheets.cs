using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>
/// The sheets of a whole assembly: elevations, plan, sections and isometric views to scale, hidden lines removed, with dimensions, and an
/// exploded view with a list of parts. Only placed panels are shown; the list has loose ones too.
/// </summary>
public static class AssemblySheets
{
    /// <summary>All sheets of an assembly, each with the name its file is given; none where no panel is placed.</summary>
    /// <param name="assembly">What is built.</param>
    /// <param name="settings">What all sheets share.</param>
    /// <param name="note">A general note for the title blocks.</param>
    public static ImmutableArray<(string Name, Drawing Drawing)> Of(Assembly assembly, SheetSettings settings, string note = "Work from figures; do not scale.")
    {
        ArgumentNullException.ThrowIfNull(assembly);
        ArgumentNullException.ThrowIfNull(settings);
        if (assembly.Panels.All(p => p.Placement is null)) return [];
        var sizes = new ViewSizes(assembly);
        var sheets = Elevations.Of(assembly, sizes, settings.Lengths).ToList();
        var details = DetailSheet.Of(sheets, sizes, settings);
        if (details is not null) sheets = details.Marked;
        sheets.Add(new ViewSheet("isometric", "Isometric view", "Assembly drawing", new AssemblyView(sizes.Bodies, Projection.Isometric, _ => true), [], []));
        var count = sheets.Count + (details is null ? 0 : 1) + 1;
        var drawings = ImmutableArray.CreateBuilder<(string, Drawing)>();
        foreach (var sheet in sheets)
        {
            if (sheet.Name == "isometric" && details is not null) drawings.Add(("details", details.Draw(assembly.Name, settings, note, drawings.Count + 1, count)));
            drawings.Add((sheet.Name, sheet.Draw(assembly.Name, settings, note, drawings.Count + 1, count)));
        }

        drawings.Add(("exploded", ExplodedSheet.Of(assembly, sizes, settings, note, count)));
        return drawings.ToImmutable();
    }
}
