using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>Something cut, drilled or marked in one panel.</summary>
public abstract record Feature
{
    private protected Feature(string origin) => Origin = origin;

    /// <summary>Who wrote it: the id of the panel itself for what the user asked for, or of the joint, the fitting or the panel it is for.</summary>
    public string Origin { get; }

    /// <summary>Every number it is made of, with its derivation.</summary>
    public abstract ImmutableArray<Size> Sizes { get; }
}
