namespace ShopDrawings.Cutting;

/// <summary>How a part wants the grain of its board.</summary>
public enum Grain
{
    /// <summary>It does not matter: the part may be turned by 90 degrees.</summary>
    Any,

    /// <summary>The grain runs along the part's length.</summary>
    Along,

    /// <summary>The grain runs along the part's width.</summary>
    Across,
}
