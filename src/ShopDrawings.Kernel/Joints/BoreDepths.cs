namespace ShopDrawings.Kernel;

/// <summary>Depths of bores for fasteners other than wood screws, and what they leave. Lengths in mm.</summary>
internal static class BoreDepths
{
    /// <summary>What is left under a blind bore: the material behind its surface less its depth (derived, geometry).</summary>
    public static double Floor(double material, double depth) => material - depth;

    /// <summary>
    /// Depth of a dowel's bore in the edge: what the bore in the face leaves of the dowel, and the room for glue and air at both ends together
    /// (common practice, no source).
    /// </summary>
    public static Size DowelInEdge(Size dowelLength, Size faceDepth, Size endClearance) => (dowelLength - faceDepth + endClearance).As("dowel-edge-depth");

    /// <summary>
    /// Depth of the pilot in the edge for a one-piece connector screw: what the panel it passes through leaves of it, and some room before its
    /// point (common practice, no source).
    /// </summary>
    public static Size ConnectorInEdge(Size screwLength, Size throughThickness, Size beyondPoint) =>
        (screwLength - throughThickness + beyondPoint).As("connector-edge-depth");
}
