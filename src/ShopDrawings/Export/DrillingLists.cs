using ShopDrawings.Kernel;

namespace ShopDrawings;

/// <summary>Rows of the lists for who drills: one setup of the drill after the other, and what is drilled in a stack. Lengths in mm.</summary>
internal static class DrillingLists
{
    /// <summary>
    /// One row for each bit, stop, panel and surface, sorted by method, bit and stop, so that the drill is set once for all rows that agree;
    /// bores that go through come after those with a stop, and given ones are left out.
    /// </summary>
    public static IEnumerable<string[]> Setups(Assembly assembly)
    {
        yield return ["method", "diameter_mm", "stop_mm", "panel", "surface", "count", "backing", "through", "for", "remark"];
        var holes = new ThroughHoles(assembly.Panels);
        var bores =
            from panel in assembly.Panels
            from bore in panel.Features.OfType<Bore>()
            where bore.Method != BoreMethod.Given
            let drilling = Drilling.Of(panel, bore, holes)
            select (Panel: panel, Bore: bore, Drilling: drilling, Stop: Rounded(drilling.Stop?.Value ?? double.PositiveInfinity));
        var setups = bores.GroupBy(b => (b.Bore.Method, Bit: Rounded(b.Bore.Diameter.Value), b.Stop, b.Panel, b.Bore.Surface));
        foreach (var setup in setups.OrderBy(s => s.Key.Method).ThenBy(s => s.Key.Bit).ThenBy(s => s.Key.Stop).ThenBy(s => assembly.Panels.IndexOf(s.Key.Panel)).ThenBy(s => s.Key.Surface))
            yield return
            [
                setup.Key.Method.Word(), CsvExporter.Number(setup.Key.Bit, 4), double.IsFinite(setup.Key.Stop) ? CsvExporter.Number(setup.Key.Stop, 4) : "",
                setup.Key.Panel.Id, setup.Key.Panel.NameOf(setup.Key.Surface), CsvExporter.Count(setup.Count()), setup.Any(b => b.Drilling.Exit is not null) ? "yes" : "no",
                All(setup.Select(b => string.Join(" and ", b.Drilling.Mates.Select(m => m.Id)))),
                All(setup.Select(b => b.Bore.Origin == b.Panel.Id ? "" : b.Bore.Origin)),
                All(setup.Select(b => Drilling.ScantlyLeft(b.Panel, b.Bore) is { } left ? Remark(left) : "")),
            ];
    }

    /// <summary>One row for each stack and diameter; the places are those of the first panel.</summary>
    public static IEnumerable<string[]> Stacks(Assembly assembly)
    {
        yield return ["panels", "lay", "edges", "diameter_mm", "count", "places_mm", "apart"];
        foreach (var stack in PanelStacks.Find(assembly.Panels))
            foreach (var equal in stack.Through.GroupBy(b => Rounded(b.Diameter.Value)).OrderBy(g => g.Key))
                yield return
                [
                    string.Join("; ", stack.Panels.Select(p => p.Id)), stack.Lay,
                    string.Join("; ", stack.Panels.Skip(1).Select(p => $"{p.Id}: {string.Join(", ", p.Edges.Select(e => $"{e.Own} on {e.First}"))}")),
                    CsvExporter.Number(equal.Key, 4), CsvExporter.Count(equal.Count()),
                    string.Join("; ", equal.Select(b => b.At).OrderBy(p => Rounded(p.X.Value)).ThenBy(p => Rounded(p.Y.Value)).Select(p => $"{CsvExporter.Number(p.X.Value, 4)},{CsvExporter.Number(p.Y.Value, 4)}")),
                    string.Join("; ", stack.Panels.Select(p => $"{p.Id}: {CsvExporter.Count(p.Apart.Length)}")),
                ];
    }

    private static string Remark(double left) =>
        left > Tolerance.Length ? $"mind the depth stop: {CsvExporter.Number(left, 2)} mm left" : "comes through the far face";

    private static string All(IEnumerable<string> texts) => string.Join("; ", texts.Where(t => t.Length > 0).Distinct());

    // As it is printed, so that what reads alike is one setup.
    private static double Rounded(double value) => Math.Round(value, 4);
}
