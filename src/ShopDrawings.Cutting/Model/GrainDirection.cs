namespace ShopDrawings.Cutting;

/// <summary>Which way the grain of a stock sheet runs.</summary>
public enum GrainDirection
{
    /// <summary>Along the sheet's length.</summary>
    AlongLength,

    /// <summary>Along the sheet's width.</summary>
    AlongWidth,

    /// <summary>The board has none: every part may be turned on it.</summary>
    None,
}
