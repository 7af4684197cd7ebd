namespace ShopDrawings.Kernel;

/// <summary>Panels that are drilled from both faces at the same places, by what stands on either side of them.</summary>
internal static class BothFaces
{
    /// <summary>Whether a panel of the carcass has a space on either side of it: a divider.</summary>
    public static bool IsShared(Panel panel) => panel.Id.EndsWith("-divider", StringComparison.Ordinal);

    /// <summary>The deepest bore that leaves as much between it and its like from the other face as a limit demands.</summary>
    public static Size Half(Panel panel, CheckLimit least) => ((panel.Thickness - Size.Default(least.Default, "least-between")) / 2).As("half-depth");
}
