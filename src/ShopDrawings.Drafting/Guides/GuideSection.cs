using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>A section through a fence in true size: plate above, fence at the panel's edge, the panel between.</summary>
internal static class GuideSection
{
    private const double Length = 38, Deep = 8;

    /// <summary>Its height in mm, words not counted.</summary>
    public static double Height(Guide guide) => guide.Plate.Thickness.Value + Math.Max(guide.Stand, Deep) + 4;

    /// <summary>The section and its words, its upper left corner at a point.</summary>
    public static IEnumerable<Entity> Of(Guide guide, Point2 corner, SheetSettings settings, Layer outline, Layer hatch, Layer panel, Layer words)
    {
        var (thick, stand) = (guide.Plate.Thickness.Value, guide.Stand);
        var top = corner.Y - settings.Small - 3;
        var (left, edge) = (corner.X + 2, corner.X + 2 + Length - thick - FenceLayout.Lip);
        Contour Box(double x1, double y1, double x2, double y2) => Contour.Rectangle(x1, y1, x2, y2);
        var plate = Box(left, top - thick, edge, top);
        var lip = Box(edge + thick, top - thick, edge + thick + FenceLayout.Lip, top);
        var fence = Box(edge, top - thick - stand, edge + thick, top);
        yield return new TextEntity(words, new(corner.X, corner.Y - settings.Small), settings.Small, "Section through a fence, 1:1");
        foreach (var (shape, angle) in new[] { (plate, 45.0), (lip, 45.0), (fence, 135.0) })
        {
            yield return new ContourEntity(outline, shape);
            yield return new HatchEntity(hatch, shape, [], new HatchPattern(angle, 2));
        }

        // The panel goes on to the left and down.
        yield return new SegmentEntity(panel, new(new(left, top - thick - 0.6), new(edge - 0.3, top - thick - 0.6)));
        yield return new SegmentEntity(panel, new(new(edge - 0.3, top - thick - 0.6), new(edge - 0.3, top - thick - Math.Max(stand, Deep))));
        var right = edge + thick + FenceLayout.Lip + 4;
        yield return new TextEntity(words, new(right, top - thick / 2 - settings.Small / 2), settings.Small, "plate");
        yield return new TextEntity(words, new(right, top - thick - Math.Max(settings.Small + 2, stand / 2)), settings.Small, $"fence, {settings.Lengths.PrintFine(stand)}");
        yield return new TextEntity(words, new(left + 1, top - thick - 2.6 - settings.Small), settings.Small, "panel");
    }
}
