namespace ShopDrawings.Kernel;

/// <summary>How and when a bore is made.</summary>
public enum BoreMethod
{
    /// <summary>By the machine, from its file.</summary>
    Machined,

    /// <summary>Marked from the drawing and drilled by hand.</summary>
    Marked,

    /// <summary>Drilled in place, through the hole of the panel that lies before it.</summary>
    InPlace,

    /// <summary>Marked from a part that lies fitted on it, then drilled.</summary>
    Transferred,

    /// <summary>There already, such as the cups of a bought, bored door.</summary>
    Given,
}

/// <summary>Words for the ways bores are made.</summary>
public static class BoreMethods
{
    /// <summary>The word of files and lists: <c>in-place</c>.</summary>
    public static string Word(this BoreMethod method) => method == BoreMethod.InPlace ? "in-place" : method.ToString().ToLowerInvariant();
}
