using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>
/// Draws what a machine must know of one panel: true size, in the panel's frame, seen on the inside face, outside features as seen through.
/// Bores in edges, and bores a machine does not make, are not in it; they are in the list of bores and in the panel's sheet.
/// </summary>
public static class MachineDrawing
{
    /// <summary>The 1:1 drawing of a panel, for its sawn size; nothing is drawn twice.</summary>
    public static Drawing Of(Panel panel) => new(
        panel.Id,
        $"Panel {panel.Id}, seen on its inside face, true size in mm.",
        null,
        panel.Features.Select(OfFeature).OfType<Entity>().Prepend(new ContourEntity(MachineLayers.Outline, panel.CutOutline)).Distinct());

    private static Entity? OfFeature(Feature feature) => feature switch
    {
        Bore { Surface: Surface.Inside or Surface.Outside, Method: BoreMethod.Machined } bore => new CircleEntity(MachineLayers.Of(bore), bore.At.Point, bore.Diameter.Value / 2),
        CutOut cutOut => new ContourEntity(MachineLayers.CutOut, cutOut.Outline),
        Groove groove => new ContourEntity(MachineLayers.Of(groove), groove.Outline),
        Mark { To: { } to } mark => new SegmentEntity(MachineLayers.Of(mark), new Segment(mark.From.Point, to.Point)),
        Mark mark => new PointEntity(MachineLayers.Of(mark), mark.From.Point),
        _ => null,
    };
}
