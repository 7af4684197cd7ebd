namespace ShopDrawings.Dxf;

/// <summary>What closed outlines are written as.</summary>
public enum DxfOutlines
{
    /// <summary>Closed polylines, arcs by their bulges, the default: LWPOLYLINE, in R12 files POLYLINE.</summary>
    Polylines,

    /// <summary>A LINE or an ARC for each part, in joined order, for strict old controllers.</summary>
    Pieces,
}
