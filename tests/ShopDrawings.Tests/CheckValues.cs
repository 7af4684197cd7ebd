using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using ShopDrawings.Kernel;
using UnitsNet;
using UnitsNet.Units;

namespace ShopDrawings.Tests;

/// <summary>Values worked out by hand or taken from a source, and which part of the product each is about.</summary>
internal static class CheckValues
{
    /// <summary>One row: what goes in, what must come out, how closely.</summary>
    internal sealed record Row(string Id, string Topic, string Function, IReadOnlyDictionary<string, string> Inputs, double Expected, double Tolerance, string Source)
    {
        public double this[string name] => double.Parse(Inputs[name], NumberStyles.Float, CultureInfo.InvariantCulture);
    }

    private static readonly Screw Usual = new("screw", Mm(4), Mm(50), Mm(8), Mm(4.5), Mm(2.8));

    /// <summary>Every row of the file.</summary>
    public static IReadOnlyList<Row> Rows { get; } = Read();

    /// <summary>Rows whose question the product cannot be asked yet, though others of the same name can.</summary>
    public static IReadOnlyDictionary<string, string> Waiting { get; } = new Dictionary<string, string>
    {
    };

    /// <summary>How the product answers, by the name in the file.</summary>
    public static IReadOnlyDictionary<string, Func<Row, double>> Product { get; } = new Dictionary<string, Func<Row, double>>(HardwareAnswers.ByFunction)
    {
        ["in_to_mm"] = r => Tape.Parse(r.Inputs["in"], LengthUnit.Inch).Millimeters,
        ["ft_to_mm"] = r => Tape.Parse(r.Inputs["ft"], LengthUnit.Foot).Millimeters,
        ["letter_width_mm"] = r => Tape.Parse(r.Inputs["in"] + "\"").Millimeters,
        ["nearest_16ths"] = r => Printed(Tape.PrintInches(r["mm"], 16)) / Tape.Parse("1/16\"").Millimeters,
        ["nearest_32nds"] = r => Printed(Tape.PrintInches(r["mm"], 32)) / Tape.Parse("1/32\"").Millimeters,
        ["fraction_error"] = r => Printed(Tape.PrintInches(r["mm"], (int)r["denominator"])) - r["mm"],
        ["max_rounding_error"] = r => Enumerable.Range(0, 4096).Select(i => i * 25.4 / 2048).Max(mm => Math.Abs(Printed(Tape.PrintInches(mm, (int)r["denominator"])) - mm)),

        ["panel_mass"] = PanelMass,
        ["door_mass"] = PanelMass,
        ["areal_mass"] = r => SheetGoods.ArealMass(r["t_mm"], r["density_kg_m3"]),
        ["panel_mass_imperial"] = r => Mass.FromKilograms(SheetGoods.Mass(
            Feet(r, "l_ft") * Feet(r, "w_ft"), Tape.Parse(r.Inputs["t_in"] + "\"").Millimeters, DensityOf(r.Inputs["density_lb_ft3"]))).Pounds,
        ["density_convert"] = r => DensityOf(r.Inputs["lb_ft3"]),
        ["lb_to_kg"] = r => Mass.FromPounds(r["lb"]).Kilograms,
        ["mpa_to_psi"] = r => Pressure.FromMegapascals(r["mpa"]).PoundsForcePerSquareInch,
        ["c_to_f"] = r => Temperature.FromDegreesCelsius(r["c"]).DegreesFahrenheit,
        ["usable_sheet_length"] = r => SheetGoods.Usable(r["sheet_mm"], r["trim_each_end_mm"]),
        ["usable_sheet_area"] = r => r.Inputs["sheet_mm"].Split('x').Select(s => SheetGoods.Usable(Number(s), r["trim_each_side_mm"])).Aggregate(1e-6, (a, b) => a * b),
        ["linear_expansion"] = r => SheetGoods.LinearExpansion(r["length_mm"], r["le_percent_50_to_80RH"], r["rh_change_percent"]),
        ["k_wood_wh4"] = r => SheetGoods.WoodConductivity(r["specific_gravity"], r["moisture_percent"]),

        ["inner_width"] = r => PanelOf(Cabinet(r["outer_mm"], 700, r["side_t_mm"]), "bottom").Length.Value,
        ["height_stack"] = HeightStack,
        ["grooved_back_width"] = GroovedBackWidth,

        ["cut_size"] = r => Loose(r["finished_mm"], 300, 16).WithBands(
            new[] { (Surface.Start, r["band_a_mm"]), (Surface.End, r["band_b_mm"]) }.Where(b => b.Item2 > 0).Select(b => new EdgeBand(b.Item1, Mm(b.Item2)) { PreMilled = Mm(r["premill_each_mm"]) })).CutLength.Value,

        ["band_length"] = r => new EdgeBanding(Size.Zero, Mm(r["allowance_per_edge_mm"]), Mm(r["waste_percent"])).ToBuy(r.Inputs["edges_mm"].Split(' ').Select(Number)) / 1000,
        ["band_overhang_each"] = r => EdgeBanding.OverhangEach(r["tape_w_mm"], r["panel_t_mm"]),

        ["screw_count"] = r => RowOf(r).Count,
        ["screw_pitch"] = r => RowOf(r).Pitch.Value,
        ["screw_row_offset"] = r => Joined(16, r["mating_panel_t_mm"], r["inset_of_panel_mm"], Usual).Clearances[0].At.X.Value,
        ["edge_wall_each_side"] = r =>
        {
            var pilot = Joined(16, r["panel_t_mm"], 0, Usual with { EdgePilot = Mm(r["hole_d_mm"]) }).Pilots[0];
            var walls = new[] { pilot.At.Y.Value, r["panel_t_mm"] - pilot.At.Y.Value }.Select(w => w - pilot.Diameter.Value / 2).ToArray();
            return Math.Abs(walls[0] - walls[1]) < 1e-9 ? walls[0] : double.NaN;
        },
        ["screw_penetration"] = r => Joined(r["through_t_mm"], 16, 0, Usual with { Length = Mm(r["screw_l_mm"]), Sunk = Mm(r["head_below_face_mm"]) }).Pilots[0].Depth!.Value,

        ["laser_outer_path"] = r => WayOf(Loose(r["part_mm"], 80, 4), LaserOf(r["kerf_mm"])).Width,
        ["laser_hole_path"] = r => WayOf(Loose(100, 80, 4).WithFeatures([Bore.Through("test", Surface.Inside, new Position(Mm(50), Mm(40)), Mm(r["hole_mm"]))]), LaserOf(r["kerf_mm"])).Width,
        ["uncompensated_outer"] = r => Square(r["drawn_mm"], -r["kerf_mm"] / 2),
        ["uncompensated_hole"] = r => Round(r["drawn_mm"], r["kerf_mm"] / 2),
        ["router_outer_path"] = r => WayOf(Loose(r["part_mm"], 80, 18), Machines.Milling(r["tool_d_mm"])).Width,
        ["router_pocket_path"] = r => WayOf(Loose(300, 200, 18).WithFeatures([Groove.Along("test", Surface.Inside, new Position(Mm(50), Mm(100)), new Position(Mm(250), Mm(100)), Mm(r["pocket_mm"]), Mm(6))]), Machines.Milling(r["tool_d_mm"]) with { Corners = InnerCorners.Round }).Height,
        ["corner_residue"] = r => CornerRelief.Residue(r["tool_r_mm"]),
        ["dogbone_centre_offset_each_axis"] = r => CornerRelief.FromWall(r["tool_r_mm"]),
        ["dogbone_overcut_each_wall"] = r => CornerRelief.IntoWall(r["tool_r_mm"]),
    };

    private static Size Mm(double value) => Size.Given(value, "given", default);

    private static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);

    private static double Printed(string text) => Tape.Parse(text.TrimStart(Tape.RoundedMark)).Millimeters;

    private static double Feet(Row r, string name) => Tape.Parse(r.Inputs[name] + " ft").Millimeters;

    private static double DensityOf(string poundsPerCubicFoot) =>
        ((Literal)ExpressionReader.Read(poundsPerCubicFoot + " lb/ft3", Measure.Density, Measure.KilogramPerCubicMetre).Expression!).Value;

    private static Board BoardOf(double thickness, double density = 650) =>
        Board.Create("board", BoardKind.Melamine, Length.FromMillimeters(thickness), density: Density.FromKilogramsPerCubicMeter(density));

    private static Panel Loose(double length, double width, double thickness, double density = 650) =>
        Panel.Rectangular("panel", BoardOf(thickness, density), Mm(length), Mm(width));

    private static double PanelMass(Row r) => Loose(r.Inputs.ContainsKey("l_mm") ? r["l_mm"] : r["h_mm"], r["w_mm"], r["t_mm"], r["density_kg_m3"]).MassKg;

    private static FastenerRow RowOf(Row r) => new RowRule(Mm(r["end_distance_mm"]), Mm(r["max_pitch_mm"])).On(Mm(r["row_length_mm"]));

    private static double Square(double size, double distance) => Contour.Rectangle(0, 0, size, size).Offset(distance, 0.01).Single().Bounds.Width;

    private static double Round(double diameter, double distance) => 2 * Contour.Circle(new(40, 30), diameter / 2).Offset(distance, 0.01).Single().AsCircle!.Value.Radius;

    // A real cabinet, all the way from a project file in millimetres.
    private static Assembly Cabinet(double width, double height, double thickness, string more = "")
    {
        var text = string.Create(CultureInfo.InvariantCulture, $$"""
            project: cabinet
            unit: mm
            boards:
              around: {kind: melamine, thickness: {{thickness}}}
              thin: {kind: hardboard, thickness: 6}
            cabinet:
              width: {{width}}
              height: {{height}}
              depth: 560
              board: around
            {{more}}
            """);
        var loaded = Shop.Load(text, "cabinet.yaml");
        var resolved = loaded.Value is { } project ? Shop.Resolve(project) : throw new InvalidOperationException(string.Join('\n', loaded.Diagnostics));
        return resolved.Value?.Assembly ?? throw new InvalidOperationException(string.Join('\n', resolved.Diagnostics));
    }

    private static Panel PanelOf(Assembly assembly, string id) => assembly.Panels.Single(p => p.Id == id);

    // A bay above the bottom and a chamber above the divider; what they come to is measured on the panels.
    private static double HeightStack(Row r)
    {
        if (r["divider_mm"] != r["bottom_mm"] || r["top_mm"] != r["bottom_mm"]) throw new NotSupportedException("One board for all.");
        var top = r["bottom_mm"] + r["bay_mm"] + r["divider_mm"];
        var assembly = Cabinet(600, top + r["chamber_mm"] + r["top_mm"], r["bottom_mm"], string.Create(CultureInfo.InvariantCulture, $"  shelves: [{{name: divider, top: {top}}}]"));
        Box3 Block(string id) => PanelOf(assembly, id).Placement!.ToAssembly(PanelOf(assembly, id).Box);
        var (bay, chamber) = (Block("divider").Min.Z - Block("bottom").Max.Z, Block("top").Min.Z - Block("divider").Max.Z);
        return Tolerance.Same(bay, r["bay_mm"]) && Tolerance.Same(chamber, r["chamber_mm"]) ? r["castor_mm"] + Block("left-side").Max.Z : double.NaN;
    }

    private static double GroovedBackWidth(Row r)
    {
        var panel = PanelOf(Cabinet(r["inner_w_mm"] + 2 * 16, 700, 16, string.Create(CultureInfo.InvariantCulture,
            $"  back: {{board: thin, groove-depth: {r["groove_depth_mm"]}, end-play: {r["clearance_each_mm"]}}}")), "back");
        return panel.Placement!.ToAssembly(panel.Box).Size.X;
    }

    // A panel stands on the inside of a side, its lower face a distance above the side's lower end.
    private static (ImmutableArray<Bore> Clearances, ImmutableArray<Bore> Pilots) Joined(double throughThickness, double receivingThickness, double inset, Screw screw)
    {
        var side = Panel.Rectangular("side", BoardOf(throughThickness), Mm(700), Mm(560), Placement.Facing(Mm(0), Mm(560), Mm(0), Direction.Left, Direction.Top));
        var bottom = Panel.Rectangular("bottom", BoardOf(receivingThickness), Mm(568), Mm(560), Placement.Facing(Mm(throughThickness), Mm(0), Mm(inset), Direction.Bottom, Direction.Right));
        var written = JointWriter.Butt(side, bottom, new JointRule(screw, RowRule.Standard)) ?? throw new InvalidOperationException("The panels do not touch.");
        return ([.. written.OfThrough.Cast<Bore>()], [.. written.OfReceiving.Cast<Bore>()]);
    }

    private static Machine LaserOf(double kerf) => new() { Name = "laser", Kind = MachineKind.Laser, Paths = CutLines.ToolCentre, Tools = [new Tool(ToolKind.Beam, kerf)] };

    // The box of the tool's way for the one pocket or hole of a panel, or for its outline where there is none.
    private static Box2 WayOf(Panel panel, Machine machine) => Machines.ProgramOf(panel, machine).Operations[0] switch
    {
        PocketOperation pocket => pocket.Paths[^1].Bounds,
        ProfileOperation profile => profile.Paths.Single().Bounds,
        var other => throw new InvalidOperationException(other.ToString()),
    };

    private static List<Row> Read()
    {
        var lines = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "Data", "check-values.csv")).Where(l => l.Length > 0).Select(Fields).ToList();
        return lines[0] is ["id", "topic", "inputs", "expected", "tolerance", "unit", "source"]
            ? [.. lines.Skip(1).Select(ToRow)]
            : throw new InvalidDataException("The columns of check-values.csv are not the ones known here.");
    }

    private static Row ToRow(List<string> f)
    {
        if (f.Count != 7) throw new InvalidDataException($"Row {f[0]} has {f.Count} columns.");
        // Some inputs are only words; they belong to rows no part of the product answers yet.
        var inputs = f[2].Split(';', StringSplitOptions.TrimEntries).Where(p => p.Contains('=')).ToDictionary(p => p[..p.IndexOf('=')], p => p[(p.IndexOf('=') + 1)..]);
        return new Row(f[0], f[1], inputs["fn"], inputs, Number(f[3]), Number(f[4]), f[6]);
    }

    // Commas apart; a field in double quotes may hold commas, and two quotes for one.
    private static List<string> Fields(string line)
    {
        var fields = new List<string>();
        var field = new StringBuilder();
        var quoted = false;
        for (var i = 0; i < line.Length; i++)
        {
            if (line[i] == '"' && quoted && i + 1 < line.Length && line[i + 1] == '"') field.Append(line[i++]);
            else if (line[i] == '"') quoted = !quoted;
            else if (line[i] == ',' && !quoted)
            {
                fields.Add(field.ToString());
                field.Clear();
            }
            else field.Append(line[i]);
        }

        fields.Add(field.ToString());
        return fields;
    }
}
