using System.Globalization;
using CsCheck;

namespace ShopDrawings.Tests.Joints;

/// <summary>A cabinet with joints and hardware of every kind, as a user might write it. Lengths in mm.</summary>
internal sealed record FittedCabinet(
    double Width, double Height, double Depth, double Board, string Shape, string Back, string Joint, string Corners, string Inside, string Doors, string Beneath, string Extra)
{
    private static readonly Gen<string> Rule =
        from kind in Gen.Int[0, 8]
        from housing in Gen.Frequency((3, Gen.Const(0)), (1, Gen.Int[4, 7]))
        from pitch in OneOf("", ", pitch: 96", ", pitch: 200", ", end-distance: 37")
        let fastener = kind switch
        {
            0 => "fastener: wood-4x50",
            1 => "fastener: wood-45x50, sunk: 0.5",
            2 => "fastener: wood-4x50, sunk: 0",
            3 => "fastener: connector-7x50",
            4 => "fastener: dowel-8x30",
            5 => "fastener: cam-15",
            6 => "fastener: cam-15-24, beside: dowel-8x30",
            7 => "fastener: cam-15, beside: dowel-6x30",
            _ => "fastener: bracket-30",
        }
        select $"{{{fastener}{(housing > 0 ? $", housing: {housing}" : "")}{pitch}}}";

    private static readonly Gen<string> AnyCorners =
        from chosen in Gen.Int[0, 5].Array[0, 3]
        from rules in Rule.Array[3]
        select string.Join(", ", chosen.Distinct().Select((c, i) => $"{new[] { "top-left", "bottom-right", "top", "bottom", "shelves", "dividers" }[c]}: {rules[i]}"));

    private static readonly Gen<string> AnyDoors =
        from mount in OneOf("overlay", "half-overlay", "inset")
        from hang in OneOf("left", "right", "pair")
        from hinge in OneOf("cup-35", "cup-35-110", "cup-35-in-line")
        from cups in Gen.Frequency((4, Gen.Const("")), (1, Gen.Int[70, 130].Select(c => $", cups: [{c}, {c + 220}]")))
        from more in OneOf(
            "", "", ", bands: 2", ", handle: {hardware: pull-96}", ", catch: {body: catch-body, keeper: catch-keeper}", ", lining: felt", "gasket", ", hinges: 3", "strip", "recess")
        let extra = more switch
        {
            "gasket" => mount == "inset" ? "" : ", gasket: 4",
            "strip" => hang == "pair" ? ", centre-strip: {board: thin}" : "",
            "recess" => mount == "inset" ? ", recess: 4" : "",
            _ => more,
        }
        select $"doors: {{board: main, mount: {mount}, hang: {hang}, hinge: {hinge}{cups}{extra}}}";

    private static readonly Gen<string> MaybeDoors = Gen.Frequency((1, Gen.Const("")), (1, AnyDoors));

    private static readonly Gen<string> Filling =
        from kind in Gen.Int[0, 6]
        from count in Gen.Int[1, 3]
        from slide in OneOf("side-400", "side-450")
        from fit in OneOf("groove", "under")
        from joint in OneOf("", ", joint: dowel-8x30", ", joint: connector-7x50", ", joint: {fastener: wood-4x50, sunk: 0.5}")
        from mount in OneOf("inset", "overlay")
        from beyond in OneOf("", ", beyond: {shelf-front: 20, shelf-back: 30, runner-back: 10}", ", latch: {body: latch-body, keeper: latch-keeper}")
        from setBack in OneOf("", ", set-back: 60")
        select kind switch
        {
            0 => $"shelves: {count}",
            1 => $"loose-shelves: {{count: {count}{setBack}}}",
            2 => $"sliding-shelf: {{slide: {slide}{beyond}}}",
            3 => $"drawers: {{count: {count}, slide: {slide}, bottom: thin, bottom-fit: {fit}, mount: {mount}{joint}, handle: {{hardware: pull-128}}}}",
            4 => "lining: {board: felt, faces: [left, right, back]}",
            5 => $"shelves: 1, loose-shelves: {{count: {count}}}",
            _ => "",
        };

    // Overlay fronts leave no room for doors of any kind; inset ones stand where doors between the panels would.
    private static readonly Gen<(string Filling, string Doors)> Filled =
        from filling in Filling
        from doors in MaybeDoors
        let hasDrawers = filling.StartsWith("drawers", StringComparison.Ordinal)
        let isRoom = !hasDrawers || (filling.Contains("mount: inset", StringComparison.Ordinal) && !doors.Contains("mount: inset", StringComparison.Ordinal))
        select (filling, isRoom ? doors : "");

    private static readonly Gen<(string Inside, string Doors)> AnyInside =
        from split in Gen.Int[0, 3]
        from a in Filled
        from b in Filled
        from whole in MaybeDoors
        let west = Listed("name: west", a.Filling, a.Doors)
        let east = Listed("name: east", b.Filling, b.Doors)
        // Doors before the whole go with bays that have none of their own, and no drawers.
        let isPlain = !(a.Filling + b.Filling).Contains("drawers", StringComparison.Ordinal)
        let undoored = $"[{{{Listed("name: west", a.Filling)}}}, {{{Listed("name: east", b.Filling)}}}]"
        select split switch
        {
            0 => ($"side-by-side: [{{{west}}}, {{{east}}}]", ""),
            1 => ($"stacked: [{{{west}}}, {{{east}}}]", ""),
            2 when isPlain => ($"{(split == 2 ? "side-by-side" : "stacked")}: {undoored}", whole),
            _ => (Listed(a.Filling), a.Doors),
        };

    /// <summary>Cabinets of 16 to 19 mm board with random joints, corners, doors, fillings and castors.</summary>
    public static Gen<FittedCabinet> Any { get; } =
        from width in Gen.Int[4500, 11000].Select(n => n / 10.0)
        from height in Gen.Int[5000, 12000].Select(n => n / 10.0)
        from depth in Gen.Int[4800, 6500].Select(n => n / 10.0)
        from board in OneOf(16.0, 18.0, 18.6, 19.05)
        from shape in OneOf("", "top: over", "bottom: under", "top: over, bottom: under", "recess: 60")
        from back in OneOf("", "back: {board: thin}", "back: {board: main, fit: between}", "back: {board: thin, fit: behind}", "back: {board: main, fit: within-sides}")
        from joint in Rule
        from corners in AnyCorners
        from inside in AnyInside
        from beneath in Gen.Frequency((2, Gen.Const("")), (1, OneOf("castors: {castor: swivel-50}", "castors: {castor: swivel-75}", "applied-top: {board: main, overhang: {front: 20, sides: 10}}")))
        from extra in Gen.Frequency((3, Gen.Const("")), (1, Gen.Const("holes: [{panel: left-side, from: {front: 60, bottom: 200}, diameter: 20}, {panel: right-side, from: {front: 60, bottom: 200}, diameter: 20}]")))
        select new FittedCabinet(width, height, depth, board, shape, back, joint, corners, inside.Inside, inside.Doors, beneath, extra);

    /// <summary>The project file.</summary>
    public string Text
    {
        get
        {
            static string N(double mm) => mm.ToString("0.####", CultureInfo.InvariantCulture);
            var corners = Corners.Length == 0 ? "" : $"corners: {{{Corners}}}";
            return $$"""
                project: Fitted cabinet
                boards:
                  main: {kind: melamine, thickness: {{N(Board)}}}
                  thin: {kind: plywood, thickness: 6.3}
                  felt: {kind: hardboard, thickness: 3}
                cabinet: {{{Listed($"width: {N(Width)}", $"height: {N(Height)}", $"depth: {N(Depth)}", "board: main", Shape, Back, $"joint: {Joint}", corners, Inside, Doors, Beneath)}}}
                {{Extra}}
                """;
        }
    }

    /// <summary>As the project file.</summary>
    public override string ToString() => Text;

    private static Gen<T> OneOf<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);

    private static string Listed(params string[] keys) => string.Join(", ", keys.Where(k => k.Length > 0));
}
