namespace ShopDrawings.Kernel;

/// <summary>The pull of the earth.</summary>
internal static class Gravity
{
    /// <summary>Standard gravity in m/s², exact by definition: the weight of 1 kg in N.</summary>
    public const double Standard = 9.80665;
}
