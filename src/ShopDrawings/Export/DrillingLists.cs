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

    /// <summary>
    /// One row for each bore a router makes, in the order of its programs: face by face, tool by tool, depth by depth, each nearest to the one
    /// before; milled ones last. Places count from the machine's origin with that face up. Nothing of panels that must not be cut.
    /// </summary>
    public static IEnumerable<string[]> OnMachines(Job job)
    {
        yield return ["machine", "panel", "face_up", "order", "tool", "number", "tool_mm", "diameter_mm", "depth_mm", "x_mm", "y_mm"];
        var withheld = job.Withheld;
        foreach (var (profile, plan) in job.Design.Machining.Where(m => m.Profile.Machine.Kind == MachineKind.Router))
        {
            var numbers = ToolNumbers.Of(profile.Machine);
            foreach (var program in plan.Programs.Where(p => p.Sheet is null && !withheld.Contains(p.Panels[0].Panel.Id)))
            {
                var order = 0;
                foreach (var operation in ProgramExporter.ToolByTool(program))
                {
                    if (Round(operation) is not var (at, diameter, word)) continue;
                    order++;
                    yield return
                    [
                        profile.Machine.Name, program.Panels[0].Panel.Id, program.Panels[0].Lie.Up.ToString().ToLowerInvariant(), CsvExporter.Count(order), word,
                        numbers.TryGetValue(operation.Tool, out var number) ? CsvExporter.Count(number) : "", operation.Tool.IsKnown ? CsvExporter.Number(operation.Tool.Diameter, 4) : "",
                        CsvExporter.Number(diameter, 4), operation.Depth is { } depth ? CsvExporter.Number(depth, 4) : "through", CsvExporter.Number(at.X, 4), CsvExporter.Number(at.Y, 4),
                    ];
                }
            }
        }
    }

    // What is bored, or milled round; nothing of the rest.
    private static (Point2 At, double Diameter, string Tool)? Round(MachineOperation operation) => operation switch
    {
        DrillOperation { Tool.IsKnown: false } drill => (drill.At, drill.Diameter, "none"),
        DrillOperation { IsForPin: true } pin => (pin.At, pin.Diameter, $"{Word(pin.Tool)} for a pin"),
        DrillOperation drill => (drill.At, drill.Diameter, Word(drill.Tool)),
        PocketOperation { Finished.AsCircle: var (centre, radius) } pocket => (centre, 2 * radius, Word(pocket.Tool)),
        _ => null,
    };

    private static string Word(Tool tool) => tool.Kind.ToString().ToLowerInvariant();

    private static string Remark(double left) =>
        left > Tolerance.Length ? $"mind the depth stop: {CsvExporter.Number(left, 2)} mm left" : "comes through the far face";

    private static string All(IEnumerable<string> texts) => string.Join("; ", texts.Where(t => t.Length > 0).Distinct());

    // As it is printed, so that what reads alike is one setup.
    private static double Rounded(double value) => Math.Round(value, 4);
}
