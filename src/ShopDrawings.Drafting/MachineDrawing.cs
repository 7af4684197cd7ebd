using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>What stands in machine drawings, and how their layers are called. Lengths in mm. Immutable.</summary>
public sealed record MachineDrawingSettings
{
    /// <summary>Names of the layers.</summary>
    public MachineLayers Layers { get; init; } = MachineLayers.Standard;

    /// <summary>Side of a square beside the panel to check the scale by, or nothing for none.</summary>
    public double? ScaleSquare { get; init; }

    /// <summary>Whether each edge that is drilled is unfolded beside the face.</summary>
    public bool HasEdgeViews { get; init; }

    /// <summary>Whether overall sizes and a table of bores stand beside the panel.</summary>
    public bool IsAnnotated { get; init; }

    /// <summary>Whether the numbers of dimensions and tables are inches; else they are mm.</summary>
    public bool IsInches { get; init; }
}

/// <summary>Draws a machine's program: true size, in the machine's frame, in the order of its operations. No entity is drawn twice; between tabs a cut runs once more, deeper.</summary>
public static class MachineDrawing
{
    /// <summary>Distance of what stands beside a panel from it, in mm.</summary>
    internal const double Beside = 20;

    /// <summary>The 1:1 drawing of a program.</summary>
    public static Drawing Of(FaceProgram program, MachineDrawingSettings settings)
    {
        var form = program.Machine.Paths;
        var entities = new List<Entity>();
        if (program is { Sheet: { } sheet, IsSecond: false }) entities.Add(new ContourEntity(settings.Layers.Reference, Contour.Rectangle(0, 0, sheet.Length.Value, sheet.Width.Value).Moved(program.Origin)));
        if (!program.Operations.Any(o => o is ProfileOperation { IsOutside: true })) entities.AddRange(program.Panels.Select(p => new ContourEntity(settings.Layers.Reference, p.Outline)));
        if (program.IsSecond) entities.AddRange(program.Pins.Select(p => new CircleEntity(settings.Layers.Reference, p.At, p.Diameter / 2)));
        // What edge bands add, where that is more than is milled off before.
        if (program.Machine.Kind == MachineKind.Drawing) entities.AddRange(program.Panels.Where(p => !IsSame(p.Panel.Outline.Bounds, p.Panel.CutOutline.Bounds)).Select(p => new ContourEntity(settings.Layers.Reference, p.Lie.Of(p.Panel.Outline))));
        entities.AddRange(program.Operations.SelectMany(o => Of(o, form, settings.Layers)));
        var isFirstOfPanel = program is { Sheet: null, IsSecond: false };
        if (isFirstOfPanel && settings.HasEdgeViews) entities.AddRange(program.Panels.SelectMany(p => EdgeView.Of(p, settings.Layers, program.Machine.Kind == MachineKind.Drawing)));
        if (isFirstOfPanel && settings.IsAnnotated) entities.AddRange(MachineNotes.Of(program.Panels[0], Box(entities), settings));
        if (settings.ScaleSquare is { } size)
        {
            var corner = new Point2(Box(entities).Max.X + Beside, program.Panels.Select(p => p.Outline.Bounds.Min.Y).DefaultIfEmpty(0).Min());
            entities.Add(new ContourEntity(settings.Layers.OfScaleSquare(size), Contour.Rectangle(corner.X, corner.Y, corner.X + size, corner.Y + size)));
        }

        var what = program.Sheet is null ? "Panel" : "Sheet";
        var up = program.Panels is [var only] ? $" with its {only.Lie.Up.ToString().ToLowerInvariant()} face up" : "";
        return new Drawing(program.Name, $"{what} {program.Name}{up}, true size, for {program.Machine.Name}; lines of cuts are {(form == CutLines.Finished ? "the wanted edge" : "the way of the tool’s middle")}.", null, entities.Distinct());
    }

    private static bool IsSame(Box2 a, Box2 b) => a.Min.DistanceTo(b.Min) <= Tolerance.Length && a.Max.DistanceTo(b.Max) <= Tolerance.Length;

    private static Box2 Box(List<Entity> entities) => entities.Count == 0 ? default : entities.Select(e => e.Bounds).Aggregate((a, b) => a.Union(b));

    private static IEnumerable<Entity> Of(MachineOperation operation, CutLines form, MachineLayers layers)
    {
        var layer = layers.Of(operation, form);
        switch (operation)
        {
            case DrillOperation drill:
                return [new CircleEntity(layer, drill.At, drill.Diameter / 2)];
            case PocketOperation pocket:
                return form == CutLines.Finished || !pocket.Tool.IsKnown ? [Closed(layer, pocket.Finished)] : pocket.Paths.Select(p => Way(layer, p));
            case ProfileOperation profile when form == CutLines.Finished || !profile.Tool.IsKnown:
                var edge = ToolPath.Along(profile.Finished, profile.IsOutside);
                return [Closed(layer, profile.Finished), .. profile.Tabs.Select(t => Way(layers.OfTabs(profile, form), edge.Part(t.From, t.To)))];
            case ProfileOperation { Tabs: [_, ..] tabs, Paths: [var way] } profile:
                // Once round as deep as the tabs allow, then through between them.
                return [Way(layers.Of(profile with { Depth = profile.TabDepth }, form), way), .. tabs.Select((t, i) => Way(layers.OfTabs(profile, form), way.Part(t.To, i + 1 < tabs.Length ? tabs[i + 1].From : tabs[0].From + way.Length)))];
            case ProfileOperation profile:
                return profile.Paths.Select(p => Way(layer, p));
            case EngraveOperation engraved:
                return engraved.Strokes.Select(p => Way(layer, p));
            default:
                throw new InvalidOperationException($"{operation.GetType().Name} cannot be drawn.");
        }
    }

    private static Entity Closed(Layer layer, Contour contour) =>
        contour.AsCircle is var (centre, radius) ? new CircleEntity(layer, centre, radius) : new ContourEntity(layer, contour);

    private static Entity Way(Layer layer, ToolPath path) => path switch
    {
        { IsClosed: true, Segments: [{ IsLine: false } a, { IsLine: false } b] } when a.Centre.DistanceTo(b.Centre) <= Tolerance.Length => new CircleEntity(layer, a.Centre, a.Radius),
        { IsClosed: false, Segments: [var only] } => new SegmentEntity(layer, only),
        _ => new PathEntity(layer, path),
    };
}
