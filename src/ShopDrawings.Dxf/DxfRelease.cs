namespace ShopDrawings.Dxf;

/// <summary>A release of the DXF format (<c>$ACADVER</c>).</summary>
public enum DxfRelease
{
    /// <summary>AC1015, the usual one: read by everything but old controllers. Text is made to fit ASCII.</summary>
    R2000,

    /// <summary>AC1009, for old CNC and laser controllers: no lineweights, no handles; text is made to fit ASCII.</summary>
    R12,

    /// <summary>AC1024, for text outside ASCII: written as UTF-8 without a byte order mark.</summary>
    R2010,
}
