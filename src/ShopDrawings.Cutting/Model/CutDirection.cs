namespace ShopDrawings.Cutting;

/// <summary>Which way the blade goes through a piece, in the sheet's frame.</summary>
public enum CutDirection
{
    /// <summary>Parallel to the sheet's length, so it divides the width: a rip, where the grain runs along the length.</summary>
    Along,

    /// <summary>Parallel to the sheet's width, so it divides the length: a cross-cut.</summary>
    Across,
}
