using System.Text.Json;
using ShopDrawings.Kernel;

namespace ShopDrawings;

/// <summary>Writes the assembly as JSON, as its schema says.</summary>
internal static class AssemblyJson
{
    /// <summary>The whole model.</summary>
    public static void Write(Utf8JsonWriter json, Assembly assembly)
    {
        json.WriteStartObject();
        json.WriteString("format", "shopdrawings-assembly");
        json.WriteNumber("version", 1);
        json.WriteString("name", assembly.Name);
        json.WriteStartArray("panels");
        var holes = new ThroughHoles(assembly.Panels);
        foreach (var panel in assembly.Panels) Panel(json, panel, holes);
        json.WriteEndArray();
        json.WriteStartArray("joints");
        foreach (var joint in assembly.Joints) Joint(json, assembly, joint);
        json.WriteEndArray();
        json.WriteStartArray("hardware");
        foreach (var piece in assembly.Hardware) Hardware(json, assembly, piece);
        json.WriteEndArray();
        json.WriteStartArray("motions");
        foreach (var motion in assembly.Motions) Motion(json, motion);
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Panel(Utf8JsonWriter json, Panel panel, ThroughHoles holes)
    {
        json.WriteStartObject();
        json.WriteString("id", panel.Id);
        json.WriteStartObject("board");
        json.WriteString("name", panel.Board.Name);
        json.WriteString("kind", panel.Board.Kind.ToString().ToLowerInvariant());
        json.WriteString("label", panel.Board.Label);
        json.WriteBoolean("has_grain", panel.Board.HasGrain);
        json.WriteNumber("density_kg_m3", JsonNumbers.Rounded(panel.Board.DensityKgPerM3));
        json.WriteEndObject();
        Size(json, "length_mm", panel.Length);
        Size(json, "width_mm", panel.Width);
        Size(json, "thickness_mm", panel.Thickness);
        Size(json, "cut_length_mm", panel.CutLength);
        Size(json, "cut_width_mm", panel.CutWidth);
        json.WriteNumber("mass_kg", JsonNumbers.Rounded(panel.MassKg));
        json.WriteStartObject("edges");
        foreach (var edge in Surfaces.Edges) json.WriteString(edge.ToString().ToLowerInvariant(), panel.NameOf(edge));
        json.WriteEndObject();
        Placement(json, panel.Placement);
        Contour(json, "outline", panel.Outline);
        json.WriteStartArray("bands");
        foreach (var band in panel.Bands)
        {
            json.WriteStartObject();
            json.WriteString("edge", panel.NameOf(band.Edge));
            json.Mm("thickness_mm", band.Thickness.Value);
            json.Mm("pre_milled_mm", band.PreMilled.Value);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("features");
        foreach (var feature in panel.Features) Feature(json, panel, feature, holes);
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Placement(Utf8JsonWriter json, Placement? placement)
    {
        if (placement is null)
        {
            json.WriteNull("placement");
            return;
        }

        json.WriteStartObject("placement");
        json.Mm("origin_mm", placement.Origin);
        json.WriteString("along_length", placement.AlongLength.Word());
        json.WriteString("along_width", placement.AlongWidth.Word());
        json.WriteString("inwards", placement.Inwards.Word());
        json.WriteStartArray("derivation");
        foreach (var size in new[] { placement.X, placement.Y, placement.Z }) json.WriteStringValue(size.ToString());
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Feature(Utf8JsonWriter json, Panel panel, Feature feature, ThroughHoles holes)
    {
        json.WriteStartObject();
        switch (feature)
        {
            case Bore bore:
                Bore(json, panel, bore, Drilling.Of(panel, bore, holes));
                break;
            case Groove groove:
                json.WriteString("type", "groove");
                json.WriteString("surface", panel.NameOf(groove.Face));
                json.Mm("from_mm", groove.From.Point);
                json.Mm("to_mm", groove.To.Point);
                json.Mm("width_mm", groove.Width.Value);
                json.Mm("depth_mm", groove.Depth.Value);
                break;
            case CutOut cutOut:
                json.WriteString("type", "cut-out");
                Contour(json, "outline", cutOut.Outline);
                break;
            case Mark mark:
                json.WriteString("type", "mark");
                json.WriteString("surface", panel.NameOf(mark.Face));
                json.Mm("from_mm", mark.From.Point);
                if (mark.To is { } to) json.Mm("to_mm", to.Point);
                break;
            default:
                throw new InvalidOperationException($"{feature.GetType().Name} has no JSON form.");
        }

        json.WriteString("origin", feature.Origin);
        json.WriteStartArray("derivation");
        foreach (var size in feature.Sizes) json.WriteStringValue(size.ToString());
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Bore(Utf8JsonWriter json, Panel panel, Bore bore, Drilling drilling)
    {
        json.WriteString("type", "bore");
        json.WriteString("surface", panel.NameOf(bore.Surface));
        json.Mm("at_mm", bore.At.Point);
        json.Mm("diameter_mm", bore.Diameter.Value);
        if (bore.Depth is { } depth) json.Mm("depth_mm", depth.Value);
        else json.WriteNull("depth_mm");
        json.WriteString("use", bore.Use.ToString().ToLowerInvariant());
        json.WriteString("method", bore.Method.Word());
        if (drilling.Exit is { } exit) json.WriteString("exits", panel.NameOf(exit));
        else json.WriteNull("exits");
        if (drilling.Stop is { } stop) json.Mm("stop_mm", stop.Value);
        else json.WriteNull("stop_mm");
        if (panel.Placement is not { } placement) return;
        json.Mm("entry_mm", placement.ToAssembly(panel.OnSurface(bore.Surface, bore.At.Point)));
        json.WriteString("into", panel.Facing(bore.Surface).Opposite().Word());
    }

    private static void Joint(Utf8JsonWriter json, Assembly assembly, Joint joint)
    {
        json.WriteStartObject();
        json.WriteString("id", joint.Id);
        json.WriteString("type", joint.Held.IsFace() ? "faces" : joint.Housing is null ? "butt" : "housed");
        json.WriteString("through", joint.Through);
        json.WriteString("entry", assembly.Panel(joint.Through).NameOf(joint.Entry));
        json.WriteString("into", joint.Receiving);
        json.WriteString("held", assembly.Panel(joint.Receiving).NameOf(joint.Held));
        if (joint.Housing is { } housing) Size(json, "housing_mm", housing);
        if (joint.Row is { } row)
        {
            Size(json, "end_distance_mm", row.EndDistance);
            Size(json, "pitch_mm", row.Pitch);
        }

        json.WriteStartArray("fasteners");
        foreach (var fastener in joint.Fasteners)
        {
            json.WriteStartObject();
            json.WriteString("kind", fastener.Fastener.Kind);
            json.WriteString("name", fastener.Fastener.Name);
            Size(json, "along_mm", fastener.Along);
            json.Mm("head_mm", fastener.Head);
            json.Mm("tip_mm", fastener.Tip);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Hardware(Utf8JsonWriter json, Assembly assembly, PlacedHardware piece)
    {
        json.WriteStartObject();
        json.WriteString("id", piece.Id);
        json.WriteString("kind", piece.Kind.ToString().ToLowerInvariant());
        json.WriteString("name", piece.Name);
        json.WriteNumber("count", piece.Count);
        json.WriteStartArray("mounts");
        foreach (var mount in piece.Mounts)
        {
            json.WriteStartObject();
            json.WriteString("panel", mount.Panel);
            json.WriteString("surface", assembly.Panel(mount.Panel).NameOf(mount.Surface));
            json.Mm("at_mm", mount.At.Point);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("volumes");
        foreach (var block in piece.Volumes)
        {
            json.WriteStartObject();
            json.Mm("min_mm", block.Min);
            json.Mm("max_mm", block.Max);
            json.WriteEndObject();
        }

        json.WriteEndArray();

        json.WriteStartArray("derivation");
        foreach (var size in piece.Sizes) json.WriteStringValue(size.ToString());
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Motion(Utf8JsonWriter json, Motion motion)
    {
        json.WriteStartObject();
        json.WriteString("id", motion.Id);
        json.WriteString("type", motion is Travel ? "travel" : "swing");
        json.WriteStartArray("panels");
        foreach (var panel in motion.Panels) json.WriteStringValue(panel);
        json.WriteEndArray();
        switch (motion)
        {
            case Travel travel:
                json.WriteString("towards", travel.Towards.Word());
                Size(json, "distance_mm", travel.Distance);
                break;
            case Swing swing:
                Size(json, "axis_x_mm", swing.X);
                Size(json, "axis_y_mm", swing.Y);
                json.WriteString("hangs", swing.IsLeft ? "left" : "right");
                json.WriteNumber("degrees", JsonNumbers.Rounded(swing.Degrees));
                break;
        }

        json.WriteEndObject();
    }

    private static void Size(Utf8JsonWriter json, string name, Size size)
    {
        json.WriteStartObject(name);
        json.WriteNumber("value", JsonNumbers.Rounded(size.Value));
        json.WriteString("derivation", size.ToString());
        json.WriteEndObject();
    }

    private static void Contour(Utf8JsonWriter json, string name, Contour contour)
    {
        json.WriteStartArray(name);
        foreach (var segment in contour.Segments)
        {
            json.WriteStartObject();
            json.Mm("at_mm", segment.Start);
            json.WriteNumber("bulge", Math.Round(segment.Bulge, 9));
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
