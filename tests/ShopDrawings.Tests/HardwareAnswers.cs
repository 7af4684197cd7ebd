using System.Globalization;
using ShopDrawings.Kernel;
using UnitsNet;
using Row = ShopDrawings.Tests.CheckValues.Row;

namespace ShopDrawings.Tests;

/// <summary>How the product answers questions about screws, hinges, slides and castors: a resolved project where one can be asked.</summary>
internal static class HardwareAnswers
{
    /// <summary>The answers, by the name in the file.</summary>
    public static IReadOnlyDictionary<string, Func<Row, double>> ByFunction { get; } = new Dictionary<string, Func<Row, double>>
    {
        ["wood_screw_diameter"] = r => WoodScrewSizes.Diameter((int)r["gauge"]),
        ["clearance_drill_64ths"] = r => WoodScrewSizes.ClearanceDrill((int)r["gauge"]),
        ["countersink_depth"] = r => r.Inputs.ContainsKey("head_d_in")
            ? WoodScrewSizes.CountersinkDepth(Inches(r["head_d_in"]), Inches(r["shank_d_in"]), r["included_angle_deg"])
            : WoodScrewSizes.CountersinkDepth(r["head_d_mm"], r["shank_d_mm"], r["included_angle_deg"]),
        ["withdrawal_pb_face"] = r => ScrewStrength.FromParticleboardFace(r["d_mm"], r["thread_depth_mm"], r["specific_gravity"]),
        ["withdrawal_pb_edge"] = r => ScrewStrength.FromParticleboardEdge(r["d_mm"], r["thread_depth_mm"], r["specific_gravity"]),
        ["withdrawal_pb_face_inch"] = r => Pounds(ScrewStrength.FromParticleboardFace(Inches(r["d_in"]), Inches(r["thread_depth_in"]), r["specific_gravity"])),
        ["edge_to_face_ratio"] = r => (r["k_edge"], r["k_face"]) == (ScrewStrength.ParticleboardEdge, ScrewStrength.ParticleboardFace)
            ? ScrewStrength.FromParticleboardEdge(4, 20, 0.7) / ScrewStrength.FromParticleboardFace(4, 20, 0.7)
            : double.NaN,
        ["withdrawal_wood"] = r => ScrewStrength.FromWood(r["d_mm"], r["thread_depth_mm"], r["specific_gravity"]),
        ["withdrawal_design_nds"] = r => Pounds(ScrewStrength.DesignFromWood(Inches(r["d_in"]), Inches(r["thread_depth_in"]), r["specific_gravity"])),
        ["screw_group_design"] = r => ScrewStrength.GroupDesignLoad(r["ultimate_n"], (int)r["screws"], r["safety_factor"]),
        ["torque_limit_pb"] = r => ScrewStrength.TorqueLimit(r["density_kg_m3"]),

        ["segment_gap"] = r => AxisOf(r.Inputs["a"]).Gap(AxisOf(r.Inputs["b"]), r["d_a_mm"], r["d_b_mm"]),
        ["min_end_distance_same_plane"] = r =>
            CornerRows.LeastEndDistance(Mm(r["other_tip_depth_mm"]), Mm(r["d_b_mm"]), Mm(r["d_a_mm"]), Mm(r["clearance_mm"])).Value,
        ["dowel_edge_depth"] = r => BoreDepths.DowelInEdge(Mm(r["dowel_l_mm"]), Mm(r["face_depth_mm"]), Mm(r["end_clearance_total_mm"])).Value,
        ["connector_edge_hole_depth"] = r => BoreDepths.ConnectorInEdge(Mm(r["screw_l_mm"]), Mm(r["through_t_mm"]), Mm(r["extra_mm"])).Value,
        ["cam_floor"] = r => BoreDepths.Floor(r["panel_t_mm"], r["bore_depth_mm"]),
        ["rows_32mm_balanced_depth"] = r => PinRows.BalancedDepth((int)r["n"], Mm(r["setback_mm"])).Value,
        ["rows_32mm_rear_row"] = r => r["pitch_mm"] == PinRows.Pitch.Value ? PinRows.Last(Mm(r["panel_depth_mm"]), Mm(r["setback_mm"])).Value : double.NaN,

        ["hinge_overlay"] = r => HingeGeometry.Overlay(Mm(r["fixed_distance_mm"]), Mm(r["boring_mm"]), Mm(r["plate_h_mm"])).Value,
        ["hinge_plate_height"] = r => HingedDoor(fixedDistance: r["fixed_distance_mm"], boring: r["boring_mm"], side: r["side_t_mm"], reveal: r["reveal_mm"]).Hardware[0].Size("plate-height")!.Value,
        ["hinge_plate_height_inset"] = r => HingeGeometry.PlateHeightInset(Mm(r["constant_mm"]), Mm(r["boring_mm"]), Mm(r["gap_mm"])).Value,
        ["cup_centre"] = r => CupOf(HingedDoor(boring: r["boring_mm"], cup: r["cup_d_mm"])).X,
        ["cup_screw_line"] = r => FixingsOf(Patterned(r)).Select(p => p.X).Distinct().Single(),
        ["cup_screw_half_spacing"] = r =>
        {
            var assembly = Patterned(r);
            return FixingsOf(assembly).Max(p => p.Y) - CupOf(assembly).Y;
        },
        ["cup_floor"] = r => BoreDepths.Floor(r["door_t_mm"], r["cup_depth_mm"]),
        ["pair_door_width"] = r => BlockOf(Doors(r["outer_w_mm"], 700, 16, $"reveal: {Text(r["outer_reveal_mm"])}, gap: {Text(r["centre_gap_mm"])}"), "left-door").Size.X,
        ["single_inset_door_width"] = r => HingeGeometry.InsetWidth(Mm(r["opening_mm"]), Mm(r["gap_each_mm"])).Value,
        ["hinge_count"] = HingeCount,
        ["hinge_couple_force"] = r => HingeGeometry.CoupleForce(r["mass_kg"], r["door_w_mm"], r["hinge_spacing_mm"]),
        ["inset_swing_gap"] = r => HingeGeometry.SwingGap(r["door_w_mm"], r["door_t_mm"]),
        ["door_side_overhang"] = r => HingeGeometry.SideOverhang(r["door_w_mm"], r["open_deg"]),
        ["plate_line_inset"] = r => HingeGeometry.PlateSetBackInset(Mm(r["setback_mm"]), Mm(r["door_t_mm"]), Mm(r["extra_recess_mm"])).Value,
        ["opening_minus_intrusion"] = r => HingeGeometry.ClearOpening(r["opening_mm"], r["intrusion_each_mm"], r["safety_each_mm"]),
        ["plate_holes"] = PlateHole,

        ["shelf_width_target"] = r => r.Inputs.ContainsKey("packer_each_mm")
            ? SlideGeometry.MovingWidth(Mm(r["opening_mm"]), Mm(r["slide_t_mm"]) + Mm(r["extra_each_mm"]), Mm(r["packer_each_mm"])).Value
            : ShelfWidth(r),
        ["shelf_width_max"] = ShelfWidth,
        ["shelf_width_min"] = ShelfWidth,
        ["slide_length_pick_mm"] = r => SlideGeometry.Longest(Series(250, 700, r["step_mm"]), r["inner_depth_mm"], r["setback_mm"], r["rear_clear_mm"])!.Value,
        ["slide_length_pick_in"] = r =>
            SlideGeometry.Longest(Series(10, 28, r["step_in"]).Select(Inches), Inches(r["inner_depth_in"]), Inches(r["setback_in"]), Inches(r["rear_clear_in"]))!.Value / Inches(1),
        ["slide_travel"] = r => SlideGeometry.Travel(r["length_mm"], r.Inputs["extension"] == "three_quarter" ? SlideExtension.ThreeQuarter : throw new NotSupportedException()),
        ["rating_lb_to_kg_pair"] = r => Sliding(568, 12.7, 0.3, r.Inputs["lb"] + " lb").Hardware[0].Size("slide-rating")!.Value,
        ["slide_utilisation"] = r => r["dynamic_factor"] == SlideGeometry.DynamicFactor ? SlideGeometry.Utilisation(r["payload_kg"] + r["shelf_kg"], r["rating_kg"]) : double.NaN,
        ["slide_front_fixing_down"] = r => SlideGeometry.FrontFixingDown(r["load_kg"], r["load_ahead_of_front_fixing_mm"], r["fixing_span_mm"]),
        ["slide_rear_fixing_up"] = r => SlideGeometry.RearFixingUp(r["load_kg"], r["load_ahead_of_front_fixing_mm"], r["fixing_span_mm"]),

        ["castor_load"] = r => CastorLoads.OnUnevenFloor(r["equipment_kg"] + r["load_kg"], (int)r["n"]),
        ["castor_load_sf"] = r => CastorLoads.WithFactor(r["equipment_kg"] + r["load_kg"], (int)r["n"], r["factor"]),
        ["castor_share"] = r => (r.Inputs["side"], r.Inputs["per"]) == ("front", "castor")
            ? CastorLoads.OfAxle(r["total_kg"], r["wheelbase_mm"], r["wheelbase_mm"] - r["cg_from_front_axle_mm"])
            : throw new NotSupportedException(),
        ["obstacle_force"] = r => CastorLoads.PullOverStep(r["load_kg"], r["wheel_d_mm"], r["step_mm"]),
        ["obstacle_rule"] = r => CastorLoads.HighestObstacle(r["wheel_d_mm"], r["fraction"]),
        ["swivel_radius"] = r => OnCastors(r["wheel_d_mm"], r["offset_mm"], r["tread_w_mm"]).Hardware[0].Size("swivel-radius")!.Value,
    };

    private static Kernel.Size Mm(double value) => Kernel.Size.Given(value, "given", default);

    private static double Inches(double inches) => Length.FromInches(inches).Millimeters;

    private static double Pounds(double newtons) => Force.FromNewtons(newtons).PoundsForce;

    private static IEnumerable<double> Series(double first, double last, double step) =>
        Enumerable.Range(0, (int)Math.Round((last - first) / step) + 1).Select(i => first + i * step);

    private static string Text(double value) => value.ToString(CultureInfo.InvariantCulture);

    // Written (x,y,z)-(x,y,z).
    private static Axis AxisOf(string text)
    {
        var ends = text.Split(")-(").Select(end => end.Trim('(', ')').Split(',').Select(n => double.Parse(n, CultureInfo.InvariantCulture)).ToArray()).Select(n => new Point3(n[0], n[1], n[2])).ToArray();
        return new Axis(ends[0], ends[1]);
    }

    private static Assembly Doors(double width, double height, double side, string doors, double door = 16, double density = 650, string parts = "") => Fixtures.DesignOf($$"""
        project: doors
        boards:
          around: {kind: melamine, thickness: {{Text(side)}}}
          front: {kind: melamine, thickness: {{Text(door)}}, density: {{Text(density)}}}
        cabinet: {width: {{Text(width)}}, height: {{Text(height)}}, depth: 560, board: around, doors: {board: front, {{doors}} } }
        {{parts}}
        """).Assembly;

    private static Assembly HingedDoor(
        double fixedDistance = 13, double boring = 5, double cup = 35, string span = "45", string offset = "9.5", string spacing = "32", double side = 16, double reveal = 1.5) =>
        Doors(600, 700, side, $"hang: left, reveal: {Text(reveal)}, hinge: asked", parts: $$"""
            hinges:
              asked: {cup-diameter: {{Text(cup)}}, cup-depth: 12.5, boring-distance: {{Text(boring)}}, fixing-span: {{span}}, fixing-offset: {{offset}}, fixing-diameter: 2.5, fixing-depth: 11, plate-set-back: 37, plate-spacing: {{spacing}}, plate-diameter: 5, plate-depth: 12, fixed-distance: {{Text(fixedDistance)}}, body-depth: 70, body-reach: 20, body-height: 60, intrusion: 0}
            """);

    private static Assembly Patterned(Row r)
    {
        var pattern = r.Inputs["pattern"].Split('/');
        return HingedDoor(boring: r.Inputs.ContainsKey("boring_mm") ? r["boring_mm"] : 5, span: pattern[0], offset: pattern[1]);
    }

    private static Box3 BlockOf(Assembly assembly, string id) => assembly.Panel(id).Placement!.ToAssembly(assembly.Panel(id).Box);

    // Bores of the lowest hinge in a door that hangs left: x from its hinge edge, y from its lower edge.
    private static List<(Bore Bore, Point2 At)> InDoor(Assembly assembly)
    {
        var (door, block) = (assembly.Panel("door"), BlockOf(assembly, "door"));
        return [.. door.Features.OfType<Bore>().Where(b => b.Origin == "door/hinge-1")
            .Select(b => (b, door.Placement!.ToAssembly(door.OnSurface(b.Surface, b.At.Point)) - block.Min)).Select(b => (b.b, new Point2(b.Item2.X, b.Item2.Z)))];
    }

    private static Point2 CupOf(Assembly assembly) => InDoor(assembly).MaxBy(b => b.Bore.Diameter.Value).At;

    private static IEnumerable<Point2> FixingsOf(Assembly assembly) => InDoor(assembly).Where(b => b.Bore.Use == BoreUse.Pilot).Select(b => b.At);

    // Doors 600 mm wide and 18 mm thick of whatever density gives the mass.
    private static double HingeCount(Row r)
    {
        const double Width = 600, Thickness = 18;
        var assembly = Doors(Width, r["h_mm"], 16, "hang: left, reveal: 0", Thickness, r["mass_kg"] / (r["h_mm"] * Width * Thickness * 1e-9));
        if (Math.Abs(assembly.Panel("door").MassKg - r["mass_kg"]) > 1e-6) return double.NaN;
        // The mass decides; what the height asks for beyond that is said in a note.
        var notes = Check.RunAll(assembly, CheckSettings.Standard, LengthStyle.Millimetres).Where(f => f.Severity == Severity.Note).SelectMany(f => f.Numbers).Where(n => n.Name == "by height");
        return notes.Select(n => n.Value).Append(assembly.Hardware.Count(h => h.Kind == HardwareKind.Hinge)).Max();
    }

    // A door without reveal stands on the cabinet's lower edge, its first hinge 100 mm above.
    private static double PlateHole(Row r)
    {
        var assembly = HingedDoor(spacing: r.Inputs["spacing_mm"], reveal: 0);
        var (side, hinge) = (assembly.Panel("left-side"), assembly.Hardware[0]);
        double Height(Point2 at) => side.Placement!.ToAssembly(side.OnSurface(Surface.Inside, at)).Z;
        return Tolerance.Same(Height(hinge.Mounts[0].At.Point), r["hinge_y_mm"]) && r.Inputs["which"] == "upper"
            ? side.Features.OfType<Bore>().Where(b => b.Origin == hinge.Id).Max(b => Height(b.At.Point))
            : double.NaN;
    }

    private static double ShelfWidth(Row r) => BlockOf(Sliding(r["opening_mm"], r["slide_t_mm"], r["extra_each_mm"], "45 kg"), "sliding-shelf").Size.X;

    private static Assembly Sliding(double opening, double thickness, double play, string rating) => Fixtures.DesignOf($$"""
        project: slides
        boards:
          around: {kind: melamine, thickness: 16}
        cabinet: {inside: {width: {{Text(opening)}}}, height: 700, depth: 560, board: around, sliding-shelf: {slide: asked} }
        slides:
          asked: {length: 500, thickness: {{Text(thickness)}}, height: 45, play: {{Text(play)}}, travel: 500, rating: {{rating}}, cabinet-holes: [35, 451], runner-holes: [35, 419], hole-diameter: 2.5, hole-depth: 11}
        """).Assembly;

    private static Assembly OnCastors(double wheelDiameter, double offset, double tread) => Fixtures.DesignOf($$"""
        project: castors
        boards:
          around: {kind: melamine, thickness: 16}
        cabinet: {width: 600, height: 700, depth: 560, board: around, castors: {castor: asked} }
        castors:
          asked: {height: 97, wheel-diameter: {{Text(wheelDiameter)}}, tread-width: {{Text(tread)}}, offset: {{Text(offset)}}, plate-length: 95, plate-width: 70, hole-length: 76, hole-width: 44, hole-diameter: 8.7}
        """).Assembly;
}
