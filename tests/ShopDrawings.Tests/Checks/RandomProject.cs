using System.Globalization;

namespace ShopDrawings.Tests.Checks;

/// <summary>
/// A cabinet with hardware as a user might write it, lengths in mm: bays with doors, drawers, shelves that lie, lie loose and slide, linings,
/// castors and an applied top; then fittings and panels thrown in anywhere, many of them in the way.
/// </summary>
internal sealed class RandomProject
{
    private static readonly string[] Patterns = ["fan-120", "power-strip-300", "knob", "grommet-60", "light-strip-500", "catch-body", "block", "slab"];

    private readonly Random random;
    private readonly double board;
    private readonly double width;
    private readonly double height;
    private readonly double depth;
    private readonly List<string> lines;

    /// <summary>The cabinet alone; the same seed gives the same one.</summary>
    public RandomProject(int seed)
    {
        random = new Random(seed);
        (board, width, height, depth) = (Of(15.9, 18, 19.05), Between(380, 1000), Between(450, 1300), Between(430, 620));
        lines =
        [
            "project: Random",
            "boards:",
            $"  main: {{kind: plywood, thickness: {N(board)}}}",
            $"  rear: {{kind: plywood, thickness: {N(Of(6, 9))}}}",
            "  sheet: {kind: hardboard, thickness: 6}",
            "hardware:",
            "  block: {length: 60, width: 80, height: 120}",
            "  slab: {length: 200, width: 40, height: 15, cut-outs: [{rectangle: {at: [-80, -10], length: 160, width: 20}}]}",
            "cabinet:",
            $"  width: {N(width)}",
            $"  height: {N(height)}",
            $"  depth: {N(depth)}",
            "  board: main",
            $"  top: {Of("between", "over")}",
        ];
        var hasCastors = Chance(0.4);
        lines.Add(Chance(0.5) ? $"  recess: {N(Of(0, 0, 50))}" : $"  bottom: {Of("between", "under")}");
        if (Chance(0.7))
        {
            var fit = Of("groove", "between", "within-sides", "behind");
            lines.Add($"  back: {{board: {(fit == "groove" ? "rear" : "main")}, fit: {fit}}}");
        }

        if (Chance(0.5)) lines.Add($"  joint: {Of("connector-7x50", "dowel-8x30", "bracket-30", "{housing: 6}", "{fastener: cam-15, beside: dowel-8x30}", "{fastener: wood-4x50, housing: 5}")}");
        if (hasCastors) lines.Add($"  castors: {{castor: {Of("swivel-50", "swivel-75")}}}");
        if (Chance(0.3)) lines.Add($"  applied-top: {{board: main, overhang: {{front: {N(Between(0, 40))}, sides: {N(Between(0, 20))}}}}}");
        lines.Add(random.Next(4) switch
        {
            0 => $"  side-by-side: [{{name: a{Bay()}}}, {{name: b{Bay()}}}]",
            1 => $"  stacked: [{{name: a{Bay()}}}, {{name: b{Bay()}}}]",
            2 => $"  stacked: [{{name: a{Bay()}}}, {{name: b, side-by-side: [{{name: c{Bay()}}}, {{name: d{Bay()}}}]}}]",
            _ => "  " + (Bay() is { Length: > 2 } bay ? string.Join("\n  ", Keys(bay[2..])) : "shelves: 1"),
        });
        if (Chance(0.3) && !lines[^1].Contains("doors", StringComparison.Ordinal) && lines[^1].Contains("[{name", StringComparison.Ordinal)) lines.Add($"  {Doors()}");
    }

    /// <summary>The project file.</summary>
    public string Text => string.Join('\n', lines) + "\n";

    /// <summary>Throws up to four fittings onto any of some panels, and up to two panels into the cabinet or before it.</summary>
    /// <param name="panels">The panels there are, with their length and width.</param>
    public void Throw(IReadOnlyList<(string Id, double Length, double Width)> panels)
    {
        var fittings = random.Next(5);
        if (fittings > 0) lines.Add("fittings:");
        for (var i = 0; i < fittings; i++)
        {
            var (id, long_, wide) = panels[random.Next(panels.Count)];
            lines.Add($"  thing-{i + 1}: {{hardware: {Of(Patterns)}, panel: {id}, face: {Of("inside", "outside")}, at: [{N(Between(0, long_))}, {N(Between(0, wide))}], turn: {Of("0", "90", "180", "270")}}}");
        }

        var thrown = random.Next(3);
        if (thrown > 0) lines.Add("panels:");
        for (var i = 0; i < thrown; i++)
        {
            var (l, w) = (Between(60, 300), Between(40, 200));
            var spring = N(Math.Round(w - Math.Min(w / 2, l / 3), 1));
            var hollow = random.Next(5) switch
            {
                0 => $", cut-outs: [{{circle: {{at: [{N(l / 2)}, {N(w / 2)}], diameter: {N(Math.Round(Math.Min(l, w) * 0.7, 1))}}}}}]",
                1 => $", grooves: [{{from: [0, {N(w / 2)}], to: [{N(l)}, {N(w / 2)}], width: {N(w / 3)}, depth: 8}}]",
                2 => $", outline: [[0, 0], [{N(l)}, 0], [{N(l)}, {spring}], {{through: [{N(l / 2)}, {N(w)}], to: [0, {spring}]}}]",
                _ => "",
            };
            lines.Add($"  panel-{i + 1}: {{board: main, length: {N(l)}, width: {N(w)}{hollow}, place: {{corner: [{N(Between(-100, width))}, {N(Between(-200, depth))}, {N(Between(-50, height))}], outside: {Of("left", "right", "front", "back", "bottom", "top")}}}}}");
        }
    }

    // The keys of a bay that is not divided, each after a comma.
    private string Bay()
    {
        var keys = random.Next(7) switch
        {
            0 or 1 => $", sliding-shelf: {{slide: side-400, rear-clearance: 5{(Chance(0.3) ? ", latch: {body: latch-body, keeper: latch-keeper}" : "")}}}",
            2 or 3 => $", drawers: {{count: {random.Next(1, 4)}, slide: side-400, bottom: sheet, mount: {Of("overlay", "inset")}{(Chance(0.3) ? ", bottom-fit: under" : "")}{(Chance(0.4) ? ", handle: {hardware: pull-96}" : "")}}}",
            4 => $", loose-shelves: {{count: {random.Next(1, 4)}}}",
            5 => $", shelves: {random.Next(1, 4)}",
            _ => "",
        };
        if (Chance(0.3)) keys += $", lining: {{board: sheet, faces: {Of("[left, right]", "[back, top]", "[left, right, back, bottom, top]")}}}";
        return !keys.Contains("drawers", StringComparison.Ordinal) && Chance(0.5) ? keys + ", " + Doors() : keys;
    }

    private string Doors()
    {
        var hang = Of("left", "right", "pair");
        var more = (Chance(0.3) ? ", lining: sheet" : "") + (Chance(0.3) && hang == "pair" ? ", centre-strip: {board: sheet}" : "")
            + (Chance(0.3) ? ", handle: {hardware: pull-128}" : "") + (Chance(0.3) ? ", catch: {body: catch-body, keeper: catch-keeper}" : "") + (Chance(0.2) ? ", hinge: cup-35-110" : "");
        return $"doors: {{board: main, hang: {hang}, mount: {Of("overlay", "half-overlay", "inset")}{more}}}";
    }

    // A bay's keys, which stand in one group of braces, as lines of their own.
    private static IEnumerable<string> Keys(string bay)
    {
        var (from, open) = (0, 0);
        for (var i = 0; i < bay.Length; i++)
        {
            open += bay[i] is '{' or '[' ? 1 : bay[i] is '}' or ']' ? -1 : 0;
            if (bay[i] != ',' || open > 0) continue;
            yield return bay[from..i];
            from = i + 2;
        }

        yield return bay[from..];
    }

    private bool Chance(double of) => random.NextDouble() < of;

    private double Between(double from, double to) => Math.Round(from + random.NextDouble() * (to - from), 1);

    private T Of<T>(params ReadOnlySpan<T> values) => values[random.Next(values.Length)];

    private static string N(double mm) => mm.ToString(CultureInfo.InvariantCulture);
}
