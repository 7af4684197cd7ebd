namespace ShopDrawings.Drafting;

/// <summary>The sizes of a dimension's parts as shares of its lettering height (after ISO 129-1, from memory). Formats with dimension styles repeat them there.</summary>
public static class DimensionProportions
{
    /// <summary>Gap between the measured point and its extension line.</summary>
    public const double ObjectGap = 0.4;

    /// <summary>How far an extension line reaches past the dimension line.</summary>
    public const double Overrun = 0.7;

    /// <summary>Length of an arrow.</summary>
    public const double ArrowLength = 0.9;

    /// <summary>Half the width of an arrow.</summary>
    public const double ArrowHalfWidth = 0.16;

    /// <summary>Gap between the dimension line and the text.</summary>
    public const double TextGap = 0.35;
}
